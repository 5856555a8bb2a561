#pragma once

#include "drawing/box.hpp"

#include <vector>

namespace whorl::drawing {

/// The ink of symbols and words, for finding room beside them.
class Around {
public:
  void add(const Symbol& symbol, const SymbolDefinition& definition);
  void add(const Text& text);
  void add(Point middle, double radius);

  /// Whether nothing inked is nearer than `air` to a point, to a text's letters.
  bool is_free(Point point, double air) const;
  bool is_free(const Text& text, double air) const;

private:
  struct Line {
    Point from, to;
    double reach; ///< half the pen
  };
  void add(const Path& path, double reach);

  std::vector<Line> lines_;
  std::vector<Box> boxes_;
};

} // namespace whorl::drawing
