#include "drawing/step_words.hpp"

#include "drawing/caption.hpp"
#include "drawing/figure.hpp"
#include "drawing/lettering.hpp"
#include "drawing/lines.hpp"
#include "drawing/table_rows.hpp"
#include "drawing/technique.hpp"
#include "layout/label.hpp"

#include <algorithm>

namespace whorl::drawing {
namespace {

constexpr double least_text = 3.2, number_size = 7.2, line_size = 5.4, part_size = 3.6;

bool is_start(const Step& step) { return step.ring == fabric::none; }

const layout::Figure& figure_of(const Copy& copy, const Step& step) {
  return copy.placement.figures[step.figure];
}
const layout::Ring& ring_of(const Copy& copy, const Step& step) {
  return figure_of(copy, step).rings[step.ring];
}
const fabric::Part& part_of(const Copy& copy, const Step& step) {
  return copy.fabric.parts[figure_of(copy, step).part];
}

/// Stitches of a round that count, up to one of its stitches.
std::uint32_t counting(const fabric::Fabric& fabric, const fabric::Round& round, fabric::StitchId end) {
  std::uint32_t count = 0;
  for (fabric::StitchId stitch = round.first_stitch; stitch < end; ++stitch)
    count += (fabric.stitches[stitch].flags & fabric::counts) != 0 ? 1 : 0;
  return count;
}

/// "7 of 24".
std::string running_count(const Copy& copy, const Step& step) {
  const fabric::Round& round = copy.fabric.rounds[ring_of(copy, step).round];
  const std::uint32_t worked = counting(copy.fabric, round, step.stitch + step.stitches),
                      all = counting(copy.fabric, round, round.first_stitch + round.count);
  return say(copy.wording, "step-of", {std::to_string(worked), std::to_string(all)});
}

/// The count at the right, and the change behind it; where they begin.
double add_count(const Copy& copy, const Step& step, Point end, Group& words) {
  if (is_start(step)) return end.x;
  const TableRow row = table_row(copy, ring_of(copy, step));
  const Lettering bold_count{line_size, Typeface::sans, true, false, ink::black};
  const Lettering pale{line_size * 0.9, Typeface::sans, false, false, ink::grey};
  const bool bare = step.stitches > 0 || row.change.empty() || row.change == say(copy.wording, "table-start");
  const std::string change = bare ? "" : "(" + row.change + ")";
  const std::string id = row.stitches == "1" ? "step-stitch" : "step-stitches";
  const std::string count =
      step.stitches > 0 ? running_count(copy, step) : say(copy.wording, id, {row.stitches});
  if (!bare) words.items.push_back(written(change, pale, end, Anchor::end));
  if (!bare) end.x -= width_of(change, pale) + 2;
  words.items.push_back(written(count, bold_count, end, Anchor::end));
  return end.x - width_of(count, bold_count);
}

/// How a text is set in a box: on one line if it is no smaller so than four fifths, else on several, and so
/// small that nothing of it is lost.
Lettering fitting(const std::string& line, const Box& box) {
  Lettering set{line_size, Typeface::sans, false, false, ink::black};
  const auto lines = [&] { return wrap(line, set, box.width(), 0, 99).size(); };
  while (set.size > line_size * 0.8 && lines() > 1) set.size -= 0.3;
  while (set.size > 1.5 && lines() > 1 && static_cast<double>(lines()) * 1.24 * set.size > box.height())
    set.size -= 0.2;
  return set;
}

/// The author's line; several lines of it about the base line of one.
void add_line(const std::string& line, const Box& box, double base, Group& words) {
  const Lettering set = fitting(line, box);
  const std::vector<std::string> lines = wrap(line, set, box.width(), 0, 99);
  const double more = (static_cast<double>(lines.size()) - 1) * set.size * 1.24;
  double y = std::max(base - more / 2, box.top + 0.76 * set.size);
  y = std::min(y, box.bottom - more - 0.24 * set.size);
  for (const std::string& one : lines) {
    words.items.push_back(written(one, set, {box.left, y}));
    y += set.size * 1.24;
  }
}

} // namespace

std::string step_number(const Copy& copy, const Step& step) {
  if (is_start(step)) {
    const std::string& name = part_of(copy, step).name;
    return name.empty() ? say(copy.wording, "step-start") : name;
  }
  const bool row = copy.fabric.rounds[ring_of(copy, step).round].kind == pattern::RoundKind::row;
  return say(copy.wording, row ? "step-row" : "step-round",
             {layout::number_of(copy.fabric, ring_of(copy, step))});
}

namespace {

/// What the author says on a line of its own that the part begins with; "": on none.
std::string line_before(const Copy& copy, const fabric::Part& part) {
  return part.text < copy.text.beginnings.size() ? copy.text.beginnings[part.text] : "";
}

/// "Cup, round 4": what stands in the middle of a part that is begun on others.
std::string worked_on(const Copy& copy, const Step& step) {
  std::string words;
  for (const layout::Run& run : figure_of(copy, step).centre_text)
    words += (words.empty() ? "" : ", ") + run.text;
  return words.empty() ? say(copy.wording, "step-start") : words;
}

/// What a part is begun on.
std::string start_line(const Copy& copy, const Step& step) {
  const fabric::Part& part = part_of(copy, step);
  const std::string_view mark = centre_mark(figure_of(copy, step).centre);
  const bool ring = mark == "magic-ring" || mark == "second-chain";
  const std::string line = ring ? "" : line_before(copy, part);
  if (!line.empty()) return line;
  if (!mark.empty()) return say(copy.wording, "title-" + std::string(mark));
  if (part.foundation == fabric::none) return worked_on(copy, step);
  return say(copy.wording, "step-chain", {std::to_string(copy.fabric.rounds[part.foundation].count)});
}

} // namespace

std::string step_line(const Copy& copy, const Step& step) {
  if (!is_start(step)) return table_row(copy, ring_of(copy, step)).line;
  std::string line = start_line(copy, step);
  for (const std::string& technique : part_techniques(copy, figure_of(copy, step).part))
    line = say(copy.wording, "technique-with", {line, technique});
  return line;
}

namespace {

/// The part and the variant, above the number: "Head · Arctic fox".
std::string name_over(const Copy& copy, const Step& step) {
  std::string name = is_start(step) || copy.fabric.parts.size() < 2 ? "" : part_of(copy, step).name;
  const std::string& variant = copy.text.variant;
  return name + (name.empty() || variant.empty() ? "" : " · ") + variant;
}

} // namespace

Group draw_step_words(const Copy& copy, const Step& step, const StepAreas& areas) {
  const Box& area = areas.words;
  Group words{"", "words", "", {}};
  words.items.push_back(
      Stroke{line_through({{area.left, area.top}, {area.right, area.top}}), 0.13, ink::hairline, 0, {}});
  const Lettering serif{number_size, Typeface::serif, false, false, ink::black};
  const Lettering part{part_size, Typeface::serif, false, true, ink::grey};
  const std::string number = step_number(copy, step);
  const std::string name = name_over(copy, step);
  const double base = area.top + (name.empty() ? 11.5 : 13.2);
  if (!name.empty()) words.items.push_back(written(name, part, {area.left, area.top + 5.2}));
  words.items.push_back(written(number, serif, {area.left, base}));
  const double count = add_count(copy, step, {area.right, base}, words);
  Box box{area.left + width_of(number, serif) + 6, area.top + 1.5, count - 6, area.bottom};
  if (areas.narrow) box = {area.left, base + 3, area.right, area.bottom};
  if (!areas.narrow && !name.empty()) box.left = std::max(box.left, area.left + width_of(name, part) + 6);
  add_line(step_line(copy, step), box, areas.narrow ? (box.top + box.bottom) / 2 + 1.5 : base, words);
  return words;
}

} // namespace whorl::drawing
