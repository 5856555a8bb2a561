#pragma once
/// Whorl: text of a crochet pattern in; its counts, its findings and its chart as SVG or JSON out.
/// This header is the whole of the library's face. Nothing here throws, reads a file, or asks for the time or
/// place.

#include <cstddef>
#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace whorl {

namespace drawing {
struct Scene;
}

/// Version of the library: "0.1.0".
const char* version();

enum class Severity : std::uint8_t { error, warning, note };

/// Something to tell the designer. Lines, columns and lengths in code points, from 1.
struct Finding {
  Severity severity = Severity::error;
  std::string code; ///< one word for programs: "count", "unread", "left-over"
  std::uint32_t line = 1;
  std::uint32_t column = 1;
  std::uint32_t length = 0;
  std::string message; ///< in trade words
  std::string mend;    ///< the smallest change that would mend it, or ""
  std::string shown;   ///< as a person reads it: position, the line, a caret, the mend
};

/// A thing in the text that small children can swallow or be caught in. No finding: the pattern is not wrong.
struct Caution {
  std::string what;  ///< what sort of thing, in the pattern's language: "safety eyes"
  std::string thing; ///< the same for all languages: "thing eyes"
  std::uint32_t line = 1;
  std::uint32_t column = 1;
  std::uint32_t length = 0;
  std::string text; ///< as typed
};

/// One line of instruction with its counts; a range (`Rnds 6-10`) is one.
struct RoundLine {
  std::uint32_t line = 1;
  bool read = true; ///< false: what it says was not understood
  std::string part;
  std::string label; ///< as typed
  int from = 0;
  int to = 0;
  std::uint32_t uses = 0;    ///< stitches of the round before that it uses
  std::uint32_t counted = 0; ///< stitches that it makes
  std::int64_t stated = -1;  ///< what the text says; -1: nothing
};

/// How a text is to be read.
struct ReadOptions {
  std::string language;         ///< that it is written in, BCP 47; "": the text states it or its words tell
  std::string file = "pattern"; ///< what findings call the text
  std::string variant;          ///< the size or yarn wanted, by its name; "": the first the text names
};

/// Paper to draw on.
enum class Paper : std::uint8_t { as_needed, a4, letter };

/// What is wanted of a chart.
struct ChartOptions {
  std::vector<std::string> parts;      ///< their names; none: all parts
  int first_round = 0, last_round = 0; ///< 0: from the first, to the last
  bool left_handed = false;            ///< positions mirror, symbols do not
  bool fold = true;                    ///< draw three or more alike rounds once
  bool strips = true;                  ///< false: rounds are always rings, never lines
  bool plus = false;                   ///< single crochet as + instead of x
  bool stroked = false;                ///< V of an increase or decrease with a short stroke on each leg
  bool legend = true;
  bool table = true;              ///< of the rounds of each part
  bool side_view = true;          ///< of parts that are drawn in several figures
  bool figures_only = false;      ///< for placing on a page: no title, captions, legend, tables
  bool clear = false;             ///< no white under it (SVG and PNG)
  Paper paper = Paper::as_needed; ///< else as many sheets as it takes
  std::string language;           ///< of the sheet's own words, BCP 47; "": the pattern's
  double stitch = 4.4;            ///< millimetres for one single crochet
  std::string id_prefix;          ///< before every id of the SVG, for several charts on one page
};

/// A drawn chart: one sheet, or several where it was to stand on paper of a size.
class Chart {
public:
  struct Content;
  explicit Chart(std::shared_ptr<const Content> content);

  /// "", or a sentence that says which part or rounds were asked for and are not there, and what is.
  const std::string& problem() const;
  /// How many sheets it takes; they are numbered from 0.
  std::size_t sheets() const;
  /// A sheet as an SVG document; same bytes on every machine.
  std::string svg(std::size_t sheet = 0) const;
  /// The fabric and the drawing as one JSON object, millimetres on the sheet, y downward.
  std::string json() const;
  /// Width and height of a sheet in millimetres.
  double width(std::size_t sheet = 0) const;
  double height(std::size_t sheet = 0) const;
  /// What of the pattern is not on the sheet, a sentence each; it says so itself too.
  const std::vector<std::string>& not_drawn() const;
  /// What else is not as one would wish, a sentence each: stitches too small to read, paper too small.
  const std::vector<std::string>& remarks() const;
  /// The display list of a sheet, for whorl-paint.
  const drawing::Scene& scene(std::size_t sheet = 0) const;

private:
  std::shared_ptr<const Content> content_; // shared: charts are values, and what they hold never changes
};

/// One numbered move of a stitch.
struct MoveStep {
  int number = 1;
  std::string text;       ///< "Yarn over and draw up a loop: 3 loops on the hook."
  std::vector<int> loops; ///< on the hook after it; a repeat of moves: after each pass
};

/// How a stitch is made.
struct StitchMoves {
  std::string name;  ///< as the pattern's terms write it: "dc2tog"
  std::string title; ///< in full words
  std::vector<MoveStep> moves;
};

/// How stitches of a pattern are made, move by move, in words and in pictures.
class Moves {
public:
  struct Content;
  explicit Moves(std::shared_ptr<const Content> content);

  /// The stitches in the order in which the pattern uses them; none if it has none of the name asked for …
  const std::vector<StitchMoves>& stitches() const;
  /// … and then a sentence that says so and names those that it has.
  const std::string& problem() const;
  /// All of it as a text for reading.
  std::string text() const;
  /// All of it as one JSON object.
  std::string json() const;
  /// The strips of pictures as an SVG document.
  std::string svg() const;
  /// The display list, for whorl-paint.
  const drawing::Scene& scene() const;

private:
  std::shared_ptr<const Content> content_; // shared: what it holds never changes
};

/// How a list of symbols is made.
struct SymbolOptions {
  std::string language; ///< of the names, BCP 47; "": the pattern's, else US English
  bool plus = false;    ///< single crochet as + instead of x
};

/// A symbol of a chart and what it means.
struct SymbolEntry {
  std::string group;   ///< one word for programs: "stitches", "increases", "marks" …
  std::string heading; ///< the same in words
  std::string key;     ///< one word for programs: "sc_2", "pointer"
  std::string name;    ///< "inc"; "" for a mark without a name
  std::string words;   ///< "2 sc in one stitch"
};

/// Symbols with their names, as a list and as a sheet.
class Symbols {
public:
  struct Content;
  explicit Symbols(std::shared_ptr<const Content> content);

  const std::vector<SymbolEntry>& entries() const;
  /// All of it as a text for reading.
  std::string text() const;
  /// All of it as one JSON object.
  std::string json() const;
  /// The symbols drawn, each over its name, as an SVG document.
  std::string svg() const;
  /// The display list, for whorl-paint.
  const drawing::Scene& scene() const;

private:
  std::shared_ptr<const Content> content_; // shared: what it holds never changes
};

/// Every symbol that charts may have.
Symbols symbols(const SymbolOptions& options = {});

/// What may have happened where somebody counts other stitches in a round than its pattern.
struct Slips {
  int round = 0;
  std::uint32_t have = 0;
  std::uint32_t should_have = 0;
  std::vector<std::string>
      sentences;       ///< single slips of the hand, the likeliest first; none: nothing explains it
  std::string problem; ///< "": the round was found

  /// All of it as one JSON object.
  std::string json() const;
};

/// The shape of pictures that teach.
enum class StepShape : std::uint8_t {
  wide, ///< 1920 x 1080 at ten dots a millimetre
  tall, ///< 1080 x 1920
  square
};

/// What is wanted of them.
struct StepOptions {
  std::vector<std::string> parts;      ///< their names; none: all parts
  int first_round = 0, last_round = 0; ///< 0: from the first, to the last
  bool left_handed = false;
  bool plus = false;    ///< single crochet as + instead of x
  std::string language; ///< of the words beside the author's own, BCP 47; "": the pattern's
  StepShape shape = StepShape::wide;
  bool each_stitch = false; ///< a picture a stitch, not a round
  bool clear = false;       ///< no white under them
  bool picture = true;      ///< false: only the words, as a layer to lie over the pictures
  bool words = true;        ///< false: without line and count
};

/// Pictures that teach a pattern: for each part its start, then a picture a round. In all that show one
/// figure it stands in the same place, so that they play as a film.
class Steps {
public:
  struct Content;
  explicit Steps(std::shared_ptr<const Content> content);

  /// "", or a sentence that says which part or rounds were asked for and are not there.
  const std::string& problem() const;
  std::size_t count() const;
  /// What a picture shows, for the name of its file; they sort as they are worked: "007-cap-5".
  std::string name(std::size_t step) const;
  std::string svg(std::size_t step) const;
  /// The display list, for whorl-paint.
  drawing::Scene scene(std::size_t step) const;
  /// All of them side by side on one sheet, like a strip of film.
  std::string strip_svg() const;
  drawing::Scene strip() const;

private:
  std::shared_ptr<const Content> content_; // shared: what it holds never changes
};

/// How instructions are put that are written out in words.
enum class WriteForm : std::uint8_t {
  kept,     ///< groups and repeats as the author has them
  full,     ///< in full words, no abbreviation
  shortest, ///< with the shortest repeats
};

/// What is wanted of a pattern written out.
struct WriteOptions {
  std::string language; ///< to write in, BCP 47; "": the pattern's
  WriteForm form = WriteForm::kept;
  std::string
      filled; ///< the table of what was left, filled in: a line each, as written, a tab, its translation
};

/// A passage that nobody but a translator can write in the other language; it stands in it as its author
/// typed it.
struct LeftPassage {
  std::uint32_t line = 1;
  std::string text;
  bool work =
      false; ///< it is instruction, and so the written pattern is not the same work until it is translated
};

/// A pattern written out in words of a language.
class Written {
public:
  struct Content;
  explicit Written(std::shared_ptr<const Content> content);

  /// The tag of the language.
  const std::string& language() const;
  std::string text() const;
  std::string markdown() const;
  std::string html() const;
  /// As typed on the left, as written on the right.
  std::string markdown_side_by_side() const;
  std::string html_side_by_side() const;
  /// What is left for the translator, in the order of the text …
  const std::vector<LeftPassage>& left() const;
  /// … and as a table to fill in.
  std::string left_table() const;
  /// Translations that were filled in and do not stand in the text: they would be other work, or translate
  /// nothing that the pattern has (line 0).
  const std::vector<LeftPassage>& refused() const;
  /// Whether what is written reads back as the same work, stitch by stitch.
  bool same_work() const;

private:
  std::shared_ptr<const Content> content_; // shared: what it holds never changes
};

/// A pattern that has been read, worked and checked. A value; copies share what never changes.
class Pattern {
public:
  struct Content;
  explicit Pattern(std::shared_ptr<const Content> content);

  const std::string& title() const;
  /// The variants that the text names and tells apart, by name: sizes, yarns; none: it is one piece.
  const std::vector<std::string>& variants() const;
  /// The one that was read; "": there are none.
  const std::string& variant() const;
  /// Findings in the order of the text; a wanted variant that the text does not have is one.
  const std::vector<Finding>& findings() const;
  /// Things that call for a caution, in the order of the text …
  const std::vector<Caution>& cautions() const;
  /// … and what is to be said of them, or "".
  const std::string& caution() const;
  /// The rounds, a line each.
  const std::vector<RoundLine>& rounds() const;
  /// Whether a finding is an error.
  bool has_errors() const;
  /// Whether there is a round to draw.
  bool can_be_drawn() const;
  /// Everything that checking knows, as one JSON object.
  std::string check_json() const;
  /// The chart of all that can be drawn.
  Chart chart(const ChartOptions& options = {}) const;
  /// The pictures that teach it round by round.
  Steps steps(const StepOptions& options = {}) const;
  /// "I have 22 in round 4": the single slips that explain it. `part` may be "" where only one has the round.
  Slips slips(int round, std::uint32_t have, std::string_view part = {}) const;
  /// How its stitches are made: all that it uses, or those that it, or US terms, call so.
  /// `language`: of the words, BCP 47; "": the pattern's.
  Moves moves(std::string_view stitch = {}, std::string_view language = {}) const;
  /// The instructions in words, in any language.
  Written written(const WriteOptions& options = {}) const;
  /// The symbols on its chart, and no others.
  Symbols symbols(const SymbolOptions& options = {}) const;

private:
  std::shared_ptr<const Content> content_;
};

/// A file of words by its name: a language, or the words of the sheet.
struct WordFile {
  std::string name;
  std::string text;
};

/// Adds the words of files to those that are built in, or puts them in the place of those of the same
/// language. What is wrong or missing in them, a sentence each; none: they are all right. A file that is
/// broken is passed over. To be called before anything is read, not while another thread reads.
std::vector<std::string> add_words(const std::vector<WordFile>& files);

/// The known language that a tag (BCP 47) comes closest to: "pt-BR" for "pt", "de" for "de-AT"; "" if none
/// does.
std::string language_of(std::string_view tag);

/// Reads, works and checks a pattern. Never fails: what is wrong with the text is a finding.
Pattern read(std::string_view text, const ReadOptions& options = {});

} // namespace whorl
