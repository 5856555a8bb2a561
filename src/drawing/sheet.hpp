#pragma once

#include "drawing/marks.hpp"
#include "drawing/scene.hpp"
#include "drawing/symbol.hpp"
#include "drawing/wording.hpp"
#include "fabric/fabric.hpp"
#include "layout/place.hpp"

#include <string>
#include <vector>

namespace whorl::drawing {

/// A size of paper, upright, in mm.
struct Paper {
  double width = 0, height = 0; ///< 0: one sheet, as large as needed
};

/// What stands on the sheet besides the figures, and how large.
struct SheetOptions {
  double stitch = 4.4;      ///< mm per W (3.85-5.0; never under 3.8)
  double least_width = 160; ///< mm; the sheet grows to what it needs
  bool legend = true;
  bool table = true;         ///< of the rounds of each part
  bool side_view = true;     ///< of parts that are drawn in several figures
  bool figures_only = false; ///< nothing but the figures, close to the edge, for placing on a page
  bool paper = true;         ///< white under everything
  Paper size;                ///< of several sheets
  Style style;
};

/// What the pattern's author calls a stitch, or so many in one place.
struct TypedName {
  stitch::KindId kind = 0;
  std::uint16_t in_one = 1;
  std::string name; ///< "X", "dc2tog"
};

/// The texts of a sheet that come from the pattern.
struct SheetText {
  std::string title;
  std::string subtitle;
  std::string variant;                  ///< "large"; "": the text has one
  std::string terms;                    ///< "US terms"
  std::string yarns;                    ///< "yarn 1 moss, yarn 2 cream"; "": there is one
  std::vector<std::uint8_t> tones;      ///< per yarn, the first first: of its ground; {}: its number
  std::vector<std::string> part_notes;  ///< per part: behind its name
  std::vector<std::string> starts;      ///< per part: "the crown", where its note says so; else ""
  std::vector<bool> from_below;         ///< per part: worked from its lower end up
  std::vector<std::string> beginnings;  ///< per part: what it says before its first round
  std::vector<std::string> round_lines; ///< per round of the text: what stands behind its label, as typed
  std::vector<std::string> technique_scopes; ///< per technique of the tree: "in Body"; "": of everything
  std::vector<TypedName> names;              ///< of the stitches that are called by one word, each once
  std::vector<std::string> closing;          ///< lines at the foot: making-up
  std::string caution;                       ///< about parts that can come off; "": there are none
  std::string language = "en-US";            ///< of the sheet's words, BCP 47
};

/// Composes the sheet, as large as needed: title, parts, figures with captions, legend of exactly what is on
/// it.
Scene sheet(const pattern::Tree& tree, const fabric::Fabric& fabric, const layout::Placement& placement,
            const std::vector<Mark>& marks, const SheetText& text, const Wording& wording,
            const SheetOptions& options = {});

/// Composes as many sheets of a size of paper as it takes, upright or turned. No figure is ever cut: the
/// stitch is drawn smaller where one would be larger than the paper, and the paper grows before nobody could
/// read it.
std::vector<Scene> sheets(const pattern::Tree& tree, const fabric::Fabric& fabric,
                          const layout::Placement& placement, const std::vector<Mark>& marks,
                          const SheetText& text, const Wording& wording, const SheetOptions& options);

} // namespace whorl::drawing
