#pragma once
/// Whole sheets for tests, from trees of tests/fabric/sample.hpp, and ways to look at what is on them.

#include "drawing/box.hpp"
#include "drawing/copy.hpp"
#include "drawing/sheet.hpp"
#include "drawing/symbol_case.hpp"
#include "fabric/sample.hpp"

#include <functional>
#include <string>
#include <vector>

namespace sheets {

namespace drawing = whorl::drawing;
namespace fabric = whorl::fabric;
namespace layout = whorl::layout;
namespace pattern = whorl::pattern;

/// Everything that a sheet is made from, and the sheet.
struct Made {
  pattern::Tree tree;
  fabric::Fabric fabric;
  layout::Placement placement;
  drawing::SheetText text;
  drawing::SheetOptions options;
  drawing::Scene scene;

  drawing::Copy copy() const;
};

const drawing::Wording& english();

/// Works, places and composes a tree; the title is the tree's.
Made made(const pattern::Tree& tree, const drawing::SheetText& text = {},
          const drawing::SheetOptions& options = {});

/// Composes again what has been changed by hand.
void compose(Made& made);

/// A gnome of one piece with a neck: four figures.
pattern::Tree gnome();
/// A beetle: started from a chain, front loops, three small parts.
pattern::Tree beetle();

/// Every item of a scene that is no group, with the kinds of the groups it lies in ("figure round label").
struct Found {
  const drawing::Item* item;
  std::string within;
};
std::vector<Found> items_of(const drawing::Scene& scene);
std::vector<const drawing::Text*> texts_of(const drawing::Scene& scene);
std::vector<const drawing::Group*> groups_of(const drawing::Scene& scene, const std::string& kind);

/// All texts within groups of a kind, one after the other, a blank between.
std::string words_of(const drawing::Scene& scene, const std::string& kind);

bool overlap(const drawing::Box& a, const drawing::Box& b);

} // namespace sheets
