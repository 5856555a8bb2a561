#pragma once

#include "drawing/marks.hpp"
#include "drawing/symbol.hpp"

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

namespace whorl::drawing {

/// The symbols of a sheet, like the type in a printer's case: each is composed once, when it is first asked
/// for, and is then only pointed at.
class SymbolCase {
public:
  /// `stitch`: mm per W.
  SymbolCase(const std::vector<stitch::StitchKind>& kinds, const std::vector<Mark>& marks, const Style& style,
             double stitch);

  /// The symbol of a stitch as high as given, in W (0: its own height). Number of its definition.
  std::uint32_t stitch(const layout::SymbolKey& key, double height = 0);

  /// A mark by its name; none if there is no such mark.
  std::optional<std::uint32_t> mark(std::string_view name);

  const SymbolDefinition& definition(std::uint32_t symbol) const { return definitions_[symbol]; }
  const std::vector<SymbolDefinition>& definitions() const { return definitions_; }
  double scale() const { return scale_; }

private:
  using StitchKey =
      std::tuple<stitch::KindId, std::uint16_t, std::uint8_t, layout::Base, std::uint8_t, std::int64_t>;

  std::uint32_t add(std::string id, const std::vector<Pen>& pens);
  std::string unused(std::string id) const;

  const std::vector<stitch::StitchKind>& kinds_;
  const std::vector<Mark>& marks_;
  Style style_;
  double scale_;
  std::vector<SymbolDefinition> definitions_;
  std::map<StitchKey, std::uint32_t> stitches_;
  std::map<std::string, std::uint32_t, std::less<>> named_;
};

/// "sc", "sc_2" (two in one place), "sc_back", "dc_h2300": the id of a stitch's symbol. Its underscore keeps
/// it apart from the ids of rounds and stitches.
std::string symbol_id(const stitch::StitchKind& kind, const layout::SymbolKey& key, std::int64_t thousandths);

} // namespace whorl::drawing
