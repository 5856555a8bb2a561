#include "whorl.hpp"

#include "drawing/sheet.hpp"
#include "drawing/svg.hpp"
#include "drawing/wording_file.hpp"
#include "fabric/check.hpp"
#include "fabric/work.hpp"
#include "layout/place.hpp"
#include "pattern/read.hpp"
#include "pattern/report.hpp"
#include "whorl_content.hpp"
#include "words/vocabulary.hpp"

#include <algorithm>

namespace whorl {
namespace {

Finding face_of(const pattern::Finding& finding, const pattern::Source& source, std::string_view file) {
  const pattern::Position at = source.position(finding.span.begin);
  return {static_cast<Severity>(finding.severity),
          finding.code,
          at.line,
          at.column,
          source.length(finding.span),
          finding.message,
          finding.mend,
          pattern::show(finding, source, file)};
}

std::vector<Finding> faces_of(std::vector<pattern::Finding> findings, const pattern::Source& source,
                              std::string_view file) {
  std::stable_sort(
      findings.begin(), findings.end(),
      [](const pattern::Finding& a, const pattern::Finding& b) { return a.span.begin < b.span.begin; });
  std::vector<Finding> faces;
  for (const pattern::Finding& finding : findings) faces.push_back(face_of(finding, source, file));
  return faces;
}

/// The lines of instruction, each with the counts of the first round that it gives.
std::vector<RoundLine> lines_of(const pattern::Source& source, const pattern::Tree& tree,
                                const fabric::Fabric& fabric) {
  std::vector<RoundLine> lines;
  for (const pattern::RoundText& text : tree.rounds) {
    RoundLine line{source.position(text.span.begin).line, text.read, {}, text.label, text.from, text.to};
    if (text.part < tree.parts.size()) line.part = tree.parts[text.part].name;
    if (!text.stated.empty()) line.stated = text.stated.front().count;
    lines.push_back(line);
  }
  for (auto round = fabric.rounds.rbegin(); round != fabric.rounds.rend(); ++round) {
    if (round->text >= lines.size()) continue;
    lines[round->text].uses = round->uses;
    lines[round->text].counted = round->counted;
  }
  return lines;
}

std::shared_ptr<const Pattern::Content> content_of(std::string_view text, const ReadOptions& options) {
  pattern::Source source(text);
  const words::Vocabulary* vocabulary = words::find_vocabulary(options.language);
  if (vocabulary == nullptr) vocabulary = words::find_vocabulary("en-US");
  pattern::Read read = pattern::read(source, *vocabulary);
  fabric::Worked worked = fabric::work(read.tree);
  std::vector<pattern::Finding> findings = std::move(read.findings);
  const std::vector<pattern::Finding> checked = fabric::check(read.tree, worked.fabric);
  findings.insert(findings.end(), worked.findings.begin(), worked.findings.end());
  findings.insert(findings.end(), checked.begin(), checked.end());
  std::vector<Finding> faces = faces_of(std::move(findings), source, options.file);
  std::vector<RoundLine> lines = lines_of(source, read.tree, worked.fabric);
  std::vector<Caution> cautions = cautions_of(source, read.tree);
  std::string caution = caution_of(cautions);
  return std::make_shared<const Pattern::Content>(
      Pattern::Content{std::move(source), std::move(read.tree), std::move(worked.fabric), std::move(faces),
                       std::move(lines), std::move(cautions), std::move(caution)});
}

layout::Page page_of(const ChartOptions& options) {
  layout::Page page;
  page.hand = options.left_handed ? layout::Hand::left : layout::Hand::right;
  page.fold = options.fold;
  return page;
}

drawing::Style style_of(const ChartOptions& options) {
  drawing::Style style;
  if (options.plus) style.single = drawing::Style::Single::plus;
  return style;
}

drawing::SheetOptions sheet_options(const ChartOptions& options) {
  drawing::SheetOptions sheet;
  sheet.stitch = options.stitch;
  sheet.legend = options.legend;
  sheet.table = options.table;
  sheet.side_view = options.side_view;
  sheet.style = style_of(options);
  return sheet;
}

/// The whole sentence of its line that a clause belongs to.
std::string sentence_around(const pattern::Source& source, pattern::Span clause) {
  const pattern::Span line = source.line(source.line_of(clause.begin));
  const std::string_view text = source.at(line);
  const std::size_t at = clause.begin - line.begin;
  const std::size_t stop = at == 0 ? std::string_view::npos : text.rfind(". ", at - 1);
  std::size_t begin = stop == std::string_view::npos ? 0 : stop + 2;
  std::size_t end =
      std::min(text.find(". ", std::max(at, std::size_t{clause.end - line.begin} - 1)), text.size());
  if (end < text.size()) ++end;
  while (begin < end && std::string_view(" \t-*").find(text[begin]) != std::string_view::npos) ++begin;
  while (end > begin && (text[end - 1] == ' ' || text[end - 1] == '\t')) --end;
  return std::string(text.substr(begin, end - begin));
}

/// Sewing and other making-up that stands behind the last round of its part.
std::vector<std::string> closing_of(const pattern::Source& source, const pattern::Tree& tree) {
  std::vector<std::string> lines;
  for (const pattern::Placing& placing : tree.placings) {
    if (placing.what != pattern::What::sew || placing.after_round < pattern::end_round(tree, placing.part))
      continue;
    std::string sentence = sentence_around(source, placing.span);
    if (lines.empty() || lines.back() != sentence) lines.push_back(std::move(sentence));
  }
  return lines;
}

/// What stands behind the label of a round, in one line.
std::string line_of(const pattern::Source& source, const pattern::RoundText& round) {
  const std::uint32_t begin = std::max(round.span.begin, round.label_span.end);
  const std::string_view typed = source.at({begin, std::max(begin, round.span.end)});
  std::string line;
  for (const char c : typed) {
    const bool blank = c == ' ' || c == '\t' || c == '\n' || c == '\r';
    if (!blank)
      line += c;
    else if (!line.empty() && line.back() != ' ')
      line += ' ';
  }
  const std::size_t first = line.find_first_not_of(":.-) ");
  line.erase(0, first == std::string::npos ? line.size() : first);
  while (!line.empty() && line.back() == ' ') line.pop_back();
  return line;
}

drawing::SheetText text_of(const pattern::Source& source, const pattern::Tree& tree,
                           const drawing::Wording& wording) {
  drawing::SheetText text;
  text.title = tree.title;
  text.subtitle = tree.subtitle;
  text.terms = drawing::say(wording, "terms-us");
  for (const pattern::Part& part : tree.parts) text.part_notes.push_back(part.note);
  for (const pattern::RoundText& round : tree.rounds) text.round_lines.push_back(line_of(source, round));
  text.closing = closing_of(source, tree);
  return text;
}

std::vector<bool> drawn_rounds(const fabric::Fabric& fabric, const layout::Placement& placement) {
  std::vector<bool> drawn(fabric.rounds.size(), false);
  for (const layout::Figure& figure : placement.figures)
    for (const layout::Ring& ring : figure.rings)
      for (std::uint32_t round = ring.round; round <= ring.last_round; ++round) drawn[round] = true;
  return drawn;
}

/// For each part whose last rounds the layout cannot place yet (rows, turned work), a sentence.
std::vector<std::string> not_drawn_of(const fabric::Fabric& fabric, const layout::Placement& placement,
                                      const drawing::Wording& wording) {
  const std::vector<bool> drawn = drawn_rounds(fabric, placement);
  std::vector<std::string> sentences;
  for (const fabric::Part& part : fabric.parts) {
    std::uint32_t first = part.first_round;
    const std::uint32_t end = part.first_round + part.rounds;
    while (first < end && drawn[first]) ++first;
    if (first == end) continue;
    sentences.push_back(drawing::say(
        wording, "not-drawn",
        {part.name, fabric::name_of(fabric.rounds[first]), fabric::name_of(fabric.rounds[end - 1])}));
  }
  return sentences;
}

} // namespace

const drawing::Wording& wording_for(const std::string& language) {
  static const drawing::Wording none;
  const drawing::Wording* wording = drawing::find_wording(language);
  if (wording == nullptr) wording = drawing::find_wording("en");
  return wording == nullptr ? none : *wording;
}

const char* version() { return WHORL_VERSION; }

Pattern read(std::string_view text, const ReadOptions& options) { return Pattern(content_of(text, options)); }

Pattern::Pattern(std::shared_ptr<const Content> content) : content_(std::move(content)) {}
const std::string& Pattern::title() const { return content_->tree.title; }
const std::vector<Finding>& Pattern::findings() const { return content_->findings; }
const std::vector<RoundLine>& Pattern::rounds() const { return content_->rounds; }
const std::vector<Caution>& Pattern::cautions() const { return content_->cautions; }
const std::string& Pattern::caution() const { return content_->caution; }
bool Pattern::can_be_drawn() const { return !content_->fabric.stitches.empty(); }
std::string Pattern::check_json() const { return whorl::check_json(*content_); }

Moves Pattern::moves(std::string_view stitch) const { return Moves(moves_of(content_, stitch)); }

bool Pattern::has_errors() const {
  const std::vector<Finding>& all = content_->findings;
  return std::any_of(all.begin(), all.end(), [](const Finding& f) { return f.severity == Severity::error; });
}

Chart Pattern::chart(const ChartOptions& options) const {
  const drawing::Wording& wording = wording_for(content_->tree.language);
  const std::vector<drawing::Mark>& marks = drawing::built_in_marks();
  auto chart = std::make_shared<Chart::Content>();
  chart->pattern = content_;
  chart->options = options;
  chart->extents = drawing::extents_of(content_->fabric, marks, style_of(options));
  chart->placement = layout::place(content_->fabric, chart->extents, page_of(options));
  chart->not_drawn = not_drawn_of(content_->fabric, chart->placement, wording);
  drawing::SheetText text = text_of(content_->source, content_->tree, wording);
  text.closing.insert(text.closing.end(), chart->not_drawn.begin(), chart->not_drawn.end());
  text.caution = content_->caution;
  chart->scene = drawing::sheet(content_->tree, content_->fabric, chart->placement, marks, text, wording,
                                sheet_options(options));
  return Chart(std::move(chart));
}

Chart::Chart(std::shared_ptr<const Content> content) : content_(std::move(content)) {}
double Chart::width() const { return content_->scene.width; }
double Chart::height() const { return content_->scene.height; }
const drawing::Scene& Chart::scene() const { return content_->scene; }
const std::vector<std::string>& Chart::not_drawn() const { return content_->not_drawn; }
std::string Chart::json() const { return chart_json(*content_); }

std::string Chart::svg() const {
  const Pattern::Content& pattern = *content_->pattern;
  return drawing::svg(content_->scene, {content_->options.id_prefix, &pattern.fabric, &pattern.source});
}

} // namespace whorl
