#include "whorl_content.hpp"

#include "drawing/marks.hpp"
#include "drawing/number.hpp"
#include "drawing/sheet.hpp"
#include "drawing/svg.hpp"
#include "layout/place.hpp"

#include <algorithm>

namespace whorl {
namespace {

drawing::Paper size_of(Paper paper) {
  if (paper == Paper::a4) return {210, 297};
  return paper == Paper::letter ? drawing::Paper{215.9, 279.4} : drawing::Paper{};
}

/// What of straight figures stands on paper of a size, title, heads and captions being left out.
layout::Leaf leaf_of(const ChartOptions& options) {
  constexpr double margins = 30, besides = 80, beside_a_line = 6, line = 1.45;
  const drawing::Paper paper = size_of(options.paper);
  if (paper.width == 0) return {};
  const auto lines = [&](double height) {
    return static_cast<std::uint32_t>(std::max(2.0, (height - besides) / (line * options.stitch)));
  };
  const double wide = (paper.width - margins) / options.stitch - beside_a_line;
  return {static_cast<std::uint32_t>(std::max(0.0, wide)), lines(paper.height), lines(paper.width)};
}

layout::Page page_of(const ChartOptions& options, const layout::Wanted& wanted) {
  layout::Page page;
  page.hand = options.left_handed ? layout::Hand::left : layout::Hand::right;
  page.fold = options.fold;
  page.strips = options.strips;
  page.wanted = wanted;
  page.leaf = leaf_of(options);
  return page;
}

drawing::Style style_of(const ChartOptions& options) {
  drawing::Style style;
  if (options.plus) style.single = drawing::Style::Single::plus;
  style.stroked = options.stroked;
  return style;
}

drawing::SheetOptions sheet_options(const ChartOptions& options) {
  drawing::SheetOptions sheet;
  sheet.stitch = options.stitch;
  sheet.legend = options.legend;
  sheet.table = options.table;
  sheet.side_view = options.side_view;
  sheet.figures_only = options.figures_only;
  sheet.paper = !options.clear;
  sheet.size = size_of(options.paper);
  sheet.style = style_of(options);
  return sheet;
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
    std::vector<std::uint32_t> missing;
    for (std::uint32_t round = part.first_round; round < part.first_round + part.rounds; ++round)
      if ((!drawn[round] || !missing.empty()) && layout::is_wanted(placement.wanted, fabric.rounds[round]))
        missing.push_back(round);
    if (missing.empty()) continue;
    sentences.push_back(drawing::say(wording, "not-drawn",
                                     {part.name, fabric::name_of(fabric.rounds[missing.front()]),
                                      fabric::name_of(fabric.rounds[missing.back()])}));
  }
  return sentences;
}

// What is asked for.

std::string lowered(std::string_view text) {
  std::string low(text);
  for (char& c : low)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return low;
}

/// "NUT, CAP": parts by their names, those without by their ids.
std::string parts_in_words(const fabric::Fabric& fabric) {
  std::string words;
  for (const fabric::Part& part : fabric.parts)
    words += (words.empty() ? "" : ", ") + (part.name.empty() ? part.key : part.name);
  return words;
}

/// Finds the parts that are named; "" or what is wrong.
std::string find_parts(const fabric::Fabric& fabric, const ChartOptions& options, layout::Wanted& wanted,
                       const drawing::Wording& wording) {
  for (const std::string& name : options.parts) {
    const std::string low = lowered(name);
    const std::size_t found = wanted.parts.size();
    for (std::uint32_t part = 0; part < fabric.parts.size(); ++part)
      if (lowered(fabric.parts[part].name) == low || fabric.parts[part].key == low)
        wanted.parts.push_back(part);
    if (wanted.parts.size() == found)
      return drawing::say(wording, "no-such-part", {name, parts_in_words(fabric)});
  }
  return "";
}

/// "NUT: round 1 to round 11": the rounds of each part that is wanted.
std::string rounds_in_words(const fabric::Fabric& fabric, const layout::Wanted& wanted,
                            const drawing::Wording& wording) {
  std::string words;
  for (std::uint32_t i = 0; i < fabric.parts.size(); ++i) {
    const fabric::Part& part = fabric.parts[i];
    if (!layout::is_wanted(wanted, i) || part.rounds == 0) continue;
    const std::string from = fabric::name_of(fabric.rounds[part.first_round]);
    const std::string to = fabric::name_of(fabric.rounds[part.first_round + part.rounds - 1]);
    words += (words.empty() ? "" : "; ") + (part.name.empty() ? "" : part.name + ": ") +
             (part.rounds == 1 ? from : drawing::say(wording, "rounds-of-part", {from, to}));
  }
  return words;
}

/// "" or what is wrong with the rounds that are asked for.
std::string look_for_rounds(const fabric::Fabric& fabric, const layout::Wanted& wanted,
                            const drawing::Wording& wording) {
  if (!layout::leaves_rounds_out(wanted)) return "";
  for (const fabric::Round& round : fabric.rounds)
    if (round.count > 0 && round.kind != pattern::RoundKind::chain && layout::is_wanted(wanted, round))
      return "";
  const std::string from = std::to_string(std::max(1, wanted.from)), to = std::to_string(wanted.to);
  const std::string asked = wanted.to == 0 ? drawing::say(wording, "rounds-from", {from}) : from + "–" + to;
  return drawing::say(wording, "no-such-rounds",
                      {wanted.from == wanted.to ? from : asked, rounds_in_words(fabric, wanted, wording)});
}

/// "4.4".
std::string tenths(double number, const drawing::Wording& wording) {
  const std::int64_t rounded = drawing::thousandths(number) + 50;
  return std::to_string(rounded / 1000) + drawing::say(wording, "decimal") +
         std::to_string(rounded % 1000 / 100);
}

/// How large a stitch is on the sheets.
double stitch_of(const Chart::Content& chart) {
  for (const drawing::Scene& sheet : chart.sheets)
    for (const drawing::Frame& frame : sheet.figures)
      if (frame.scale > 0) return frame.scale;
  return chart.options.stitch;
}

std::vector<std::string> remarks_of(const Chart::Content& chart, const drawing::Wording& wording) {
  constexpr double least_stitch = 3.8;
  std::vector<std::string> remarks;
  const double stitch = stitch_of(chart);
  if (stitch < chart.options.stitch)
    remarks.push_back(drawing::say(wording, "stitch-made-smaller", {tenths(stitch, wording)}));
  if (tenths(stitch, wording) != tenths(least_stitch, wording) && stitch < least_stitch)
    remarks.push_back(
        drawing::say(wording, "stitch-too-small", {tenths(stitch, wording), tenths(least_stitch, wording)}));
  const drawing::Paper paper = size_of(chart.options.paper);
  for (const drawing::Scene& sheet : chart.sheets) {
    const bool upright = sheet.width <= paper.width && sheet.height <= paper.height;
    const bool turned = sheet.width <= paper.height && sheet.height <= paper.width;
    if (paper.width == 0 || upright || turned) continue;
    remarks.push_back(drawing::say(wording, "paper-too-small"));
    break;
  }
  return remarks;
}

/// Places everything and composes the sheets.
void draw(const layout::Wanted& wanted, const drawing::Wording& wording, Chart::Content& chart) {
  const Pattern::Content& pattern = *chart.pattern;
  const std::vector<drawing::Mark>& marks = drawing::built_in_marks();
  chart.extents = drawing::extents_of(pattern.fabric, marks, style_of(chart.options));
  layout::Page page = page_of(chart.options, wanted);
  put_words(page, wording);
  page.main_yarn = plain_yarn(pattern, wording_for(pattern.tree.language));
  chart.placement = layout::place(pattern.fabric, chart.extents, page);
  chart.not_drawn = not_drawn_of(pattern.fabric, chart.placement, wording);
  drawing::SheetText text = sheet_text_of(pattern, wanted, language_or(chart.options.language, pattern.tree));
  text.closing.insert(text.closing.end(), chart.not_drawn.begin(), chart.not_drawn.end());
  text.caution =
      chart.options.language.empty() ? pattern.caution : caution_of(pattern.cautions, text.language);
  chart.sheets = drawing::sheets(pattern.tree, pattern.fabric, chart.placement, marks, text, wording,
                                 sheet_options(chart.options));
  chart.remarks = remarks_of(chart, wording);
}

} // namespace

void put_words(layout::Page& page, const drawing::Wording& wording) {
  const auto word = [&wording](const char* id) { return drawing::say(wording, id, {"{}"}); };
  page.rounds = word("figure-rounds");
  page.rows = word("figure-rows");
  page.back_loops = word("name-back");
  page.front_loops = word("name-front");
  page.both_layers = word("figure-both-layers");
  page.neck = word("figure-neck");
  page.neck_open = word("figure-neck-open");
  page.neck_from = word("figure-neck-from");
  page.owner_round = word("figure-owner-round");
  page.joined_edges = word("figure-joined-edges");
  page.front = word("figure-front");
}

std::string find_wanted(const fabric::Fabric& fabric, const ChartOptions& options,
                        const drawing::Wording& wording, layout::Wanted& wanted) {
  wanted = {{}, options.first_round, options.last_round};
  const std::string problem = find_parts(fabric, options, wanted, wording);
  return problem.empty() ? look_for_rounds(fabric, wanted, wording) : problem;
}

std::shared_ptr<const Chart::Content> chart_of(std::shared_ptr<const Pattern::Content> pattern,
                                               const ChartOptions& options) {
  const drawing::Wording& wording = wording_for(language_or(options.language, pattern->tree));
  auto chart = std::make_shared<Chart::Content>();
  chart->pattern = std::move(pattern);
  chart->options = options;
  const fabric::Fabric& fabric = chart->pattern->fabric;
  layout::Wanted wanted;
  chart->problem = find_wanted(fabric, options, wording, wanted);
  if (chart->problem.empty()) draw(wanted, wording, *chart);
  if (chart->sheets.empty()) chart->sheets.emplace_back();
  return chart;
}

Chart::Chart(std::shared_ptr<const Content> content) : content_(std::move(content)) {}
const std::string& Chart::problem() const { return content_->problem; }
std::size_t Chart::sheets() const { return content_->sheets.size(); }
double Chart::width(std::size_t sheet) const { return scene(sheet).width; }
double Chart::height(std::size_t sheet) const { return scene(sheet).height; }
const std::vector<std::string>& Chart::not_drawn() const { return content_->not_drawn; }
const std::vector<std::string>& Chart::remarks() const { return content_->remarks; }
std::string Chart::json() const { return chart_json(*content_); }

const drawing::Scene& Chart::scene(std::size_t sheet) const {
  return content_->sheets[std::min(sheet, content_->sheets.size() - 1)];
}

std::string Chart::svg(std::size_t sheet) const {
  const Pattern::Content& pattern = *content_->pattern;
  return drawing::svg(scene(sheet), {content_->options.id_prefix, &pattern.fabric, &pattern.source});
}

} // namespace whorl
