#pragma once
/// What the values of the public face hold. Not installed.

#include "whorl.hpp"

#include "drawing/scene.hpp"
#include "drawing/sheet.hpp"
#include "drawing/steps.hpp"
#include "drawing/wording.hpp"
#include "fabric/fabric.hpp"
#include "layout/place.hpp"
#include "pattern/source.hpp"
#include "pattern/tree.hpp"
#include "writing/telling.hpp"

namespace whorl {

struct Pattern::Content {
  pattern::Source source; ///< as its variant has it
  pattern::Tree tree;
  fabric::Fabric fabric;
  std::vector<Finding> findings;
  std::vector<RoundLine> rounds;
  std::vector<Caution> cautions;
  std::string caution;
  std::vector<std::string> variants;
  std::string variant;
};

struct Chart::Content {
  std::shared_ptr<const Pattern::Content> pattern;
  ChartOptions options;
  layout::Extents extents;
  layout::Placement placement;
  std::string problem;
  std::vector<std::string> not_drawn;
  std::vector<std::string> remarks;
  std::vector<drawing::Scene> sheets; ///< at least one
};

struct Moves::Content {
  std::shared_ptr<const Pattern::Content> pattern;
  std::string language; ///< of the words
  std::vector<writing::ToldStitch> told;
  std::vector<StitchMoves> stitches;
  std::string problem;
  drawing::Scene scene;
};

struct Symbols::Content {
  std::vector<SymbolEntry> entries;
  std::string title;
  std::string language;
  drawing::Scene scene;
};

struct Steps::Content {
  std::shared_ptr<const Pattern::Content> pattern;
  StepOptions options;
  layout::Placement placement;
  drawing::SheetText text;
  std::string problem;
  std::vector<drawing::Step> steps;
  std::vector<std::size_t> numbers; ///< of each of them among all, from 1
  std::size_t all = 0;
  std::vector<std::size_t> figures; ///< that they are of
};

/// A line of a pattern written out, and what its author typed there.
struct WrittenLine {
  enum class Sort : std::uint8_t { plain, title, heading, round, blank };
  Sort sort = Sort::plain;
  std::string typed, written;
};

struct Written::Content {
  std::string language, from;      ///< tags
  std::vector<WrittenLine> lines;
  std::vector<LeftPassage> left, refused;
  bool same = false;
};

/// The words of the sheet in a language; English where there are none.
const drawing::Wording& wording_for(std::string_view language);

/// The language that is asked for, or the pattern's where none is.
std::string_view language_or(std::string_view asked, const pattern::Tree& tree);

/// What stands within a figure, in words: "neck", "front", "BLO".
void put_words(layout::Page& page, const drawing::Wording& wording);

/// The texts of a sheet that come from the pattern.
drawing::SheetText sheet_text_of(const Pattern::Content& pattern, const layout::Wanted& wanted,
                                 std::string_view language);

/// Of which parts and rounds each technique of a tree holds, in words; "": of all.
std::vector<std::string> technique_scopes(const pattern::Tree& tree, const drawing::Wording& wording);

/// The yarn that has no ground on the sheets: the one that most stitches are in, or a pale one that is not
/// much rarer.
std::uint8_t plain_yarn(const Pattern::Content& pattern, const drawing::Wording& wording);

/// The tone of each yarn's ground: as pale or dark as its name says, no two alike.
std::vector<std::uint8_t> ground_tones(const Pattern::Content& pattern, const drawing::Wording& wording);

/// Whether a text says one of the things that stand in the wording under `id`: "pale|white|off white"; the
/// words of "from … up" stand in one sentence, in this order.
bool says(const std::string& text, const drawing::Wording& wording, std::string_view id);

/// The few words that stand for "…" in one of them; "": the text says none.
std::string said_between(const std::string& text, const drawing::Wording& wording, std::string_view id);

/// The parts and rounds that are asked for; "", or what is wrong with what was asked.
std::string find_wanted(const fabric::Fabric& fabric, const ChartOptions& options,
                        const drawing::Wording& wording, layout::Wanted& wanted);

/// The chart of a pattern.
std::shared_ptr<const Chart::Content> chart_of(std::shared_ptr<const Pattern::Content> pattern,
                                               const ChartOptions& options);

/// What `moves` says of a pattern, the name of a stitch or "" given.
std::shared_ptr<const Moves::Content> moves_of(std::shared_ptr<const Pattern::Content> pattern,
                                               std::string_view stitch, std::string_view language);

/// The object that `moves --json` prints.
std::string moves_json(const Moves::Content& moves);

/// A pattern written out in another language, or anew in its own.
std::shared_ptr<const Written::Content> written_of(const Pattern::Content& pattern, const WriteOptions& options);

/// The cautions of a pattern, and what is to be said of them.
std::vector<Caution> cautions_of(const pattern::Source& source, const pattern::Tree& tree);
std::string caution_of(const std::vector<Caution>& cautions, std::string_view language);

/// The object that `check --json` prints; see README.
std::string check_json(const Pattern::Content& pattern);

/// The object of `chart -o x.json`: the fabric, then the figures in millimetres on the sheet, y downward.
std::string chart_json(const Chart::Content& chart);

} // namespace whorl
