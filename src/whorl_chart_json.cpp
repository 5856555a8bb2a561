#include "whorl_json.hpp"

#include <cmath>
#include <cstdint>

namespace whorl {
namespace {

const char* name_of(pattern::RoundKind kind) {
  switch (kind) {
  case pattern::RoundKind::round:
    return "round";
  case pattern::RoundKind::row:
    return "row";
  case pattern::RoundKind::chain:
    return "chain";
  }
  return "round";
}

/// The place of a leg as the chart's reader knows it: which loop, or what else the hook goes into.
const char* loop_of(const fabric::Place& place) {
  switch (place.what) {
  case fabric::On::top:
    break;
  case fabric::On::post:
    return "front-post";
  case fabric::On::space:
    return "space";
  case fabric::On::between:
    return "between";
  case fabric::On::ring:
    return "ring";
  case fabric::On::chain_side:
    return "chain";
  case fabric::On::row_end:
    return "row-end";
  }
  switch (place.loops) {
  case stitch::front:
    return "front";
  case stitch::back:
    return "back";
  case stitch::third:
    return "third";
  default:
    return "both";
  }
}

Json stitch_json(const Chart::Content& chart, fabric::StitchId id) {
  const fabric::Fabric& fabric = chart.pattern->fabric;
  const fabric::Stitch& stitch = fabric.stitches[id];
  Json one = {{"id", fabric::id_of(fabric, id)},
              {"round", fabric.rounds[stitch.round].number},
              {"kind", fabric.kinds[stitch.kind].name},
              {"yarn", std::string(1, static_cast<char>('A' + (stitch.yarn > 0 ? stitch.yarn - 1 : 0) % 26))},
              {"counts", (stitch.flags & fabric::counts) != 0},
              {"legs", Json::array()}};
  for (const fabric::Leg& leg : fabric::legs_of(fabric, id))
    one["legs"].push_back({{"into", fabric::id_of(fabric, leg.into)}, {"loop", loop_of(leg.into)}});
  if (stitch.origin < chart.pattern->tree.nodes.size()) {
    const pattern::Span span = chart.pattern->tree.nodes[stitch.origin].span;
    const pattern::Position at = chart.pattern->source.position(span.begin);
    one["line"] = at.line;
    one["column"] = at.column;
    one["length"] = chart.pattern->source.length(span);
  }
  return one;
}

Json round_json(const Pattern::Content& pattern, const fabric::Round& round) {
  Json one = {{"number", round.number},
              {"label", round.text < pattern.tree.rounds.size() ? pattern.tree.rounds[round.text].label : ""},
              {"kind", name_of(round.kind)},
              {"uses", round.uses},
              {"counted", round.counted},
              {"stated", stated_json(round.stated)},
              {"stitches", Json::array()}};
  for (std::uint32_t i = 0; i < round.count; ++i)
    one["stitches"].push_back(fabric::id_of(pattern.fabric, round.first_stitch + i));
  return one;
}

void add_round(Json& part, const Chart::Content& chart, std::uint32_t index) {
  const fabric::Round& round = chart.pattern->fabric.rounds[index];
  part["rounds"].push_back(round_json(*chart.pattern, round));
  for (std::uint32_t i = 0; i < round.count; ++i)
    part["stitches"].push_back(stitch_json(chart, round.first_stitch + i));
}

Json part_json(const Chart::Content& chart, const fabric::Part& part) {
  Json one = {{"key", part.key},
              {"name", part.name},
              {"make", part.make},
              {"rounds", Json::array()},
              {"stitches", Json::array()}};
  if (part.foundation != fabric::none) add_round(one, chart, part.foundation);
  for (std::uint32_t i = 0; i < part.rounds; ++i) add_round(one, chart, part.first_round + i);
  return one;
}

/// Where a figure's own coordinates (W, y upward) lie on the sheet.
struct OnSheet {
  drawing::Frame frame;

  /// Millimetres, rounded once to whole thousandths; never -0.
  static double rounded(double value) {
    return static_cast<double>(static_cast<std::int64_t>(std::llround(value * 1000))) / 1000.0;
  }
  Json point(layout::Point p) const {
    return {rounded(frame.origin.x + frame.scale * p.x), rounded(frame.origin.y - frame.scale * p.y)};
  }
  Json box(const layout::Convex& corners) const {
    Json all = Json::array();
    for (const layout::Point& corner : corners) all.push_back(point(corner));
    return all;
  }
};

/// The head and marks of a symbol, turned with it.
layout::Convex box_of(const layout::Item& item, const layout::SymbolExtent& extent) {
  const layout::Point across{item.up.y, -item.up.x};
  const double half = extent.width / 2;
  const double low = std::max(item.height - extent.height, 0.0) - extent.below;
  const auto corner = [&](double x, double y) { return item.foot + x * across + y * item.up; };
  return {corner(-half, low), corner(half, low), corner(half, item.height), corner(-half, item.height)};
}

/// The stitches of the rounds folded into a ring that stand where stitch `index` (from 0) of its first round
/// stands.
Json stands_for(const fabric::Fabric& fabric, const layout::Ring& ring, std::uint32_t index) {
  Json all = Json::array();
  for (std::uint32_t round = ring.round + 1; round <= ring.last_round; ++round)
    all.push_back(fabric::id_of(fabric, fabric.rounds[round].first_stitch + index));
  return all;
}

/// One entry a stitch, also where one symbol shows several.
void add_item(Json& drawn, const Chart::Content& chart, const layout::Figure& figure,
              const layout::Ring& ring, const layout::Item& item, const OnSheet& sheet) {
  const fabric::Fabric& fabric = chart.pattern->fabric;
  const Json box = sheet.box(box_of(item, layout::extent(chart.extents, item.key)));
  std::uint32_t foot = item.first_foot;
  for (std::uint32_t i = 0; i < item.count; ++i) {
    const fabric::StitchId stitch = item.first + i;
    Json feet = Json::array();
    for (std::size_t leg = 0;
         leg < fabric::legs_of(fabric, stitch).size() && foot < item.first_foot + item.feet; ++leg)
      feet.push_back(sheet.point(figure.feet[foot++]));
    drawn.push_back(
        {{"stitch", fabric::id_of(fabric, stitch)},
         {"echo", ring.echo},
         {"stands_for", stands_for(fabric, ring, stitch - fabric.rounds[ring.round].first_stitch)},
         {"feet", std::move(feet)},
         {"top", sheet.point(figure.tips[item.first_tip + i])},
         {"box", box}});
  }
}

Json labels_json(const layout::Figure& figure, const OnSheet& sheet) {
  Json labels = Json::array();
  for (const layout::Label& label : figure.labels) {
    std::string text;
    for (const layout::Run& run : label.runs) text += (text.empty() ? "" : " ") + run.text;
    labels.push_back({{"text", text}, {"box", sheet.box(label.box)}});
  }
  return labels;
}

/// Which sheet a figure stands on.
std::size_t sheet_of(const Chart::Content& chart, std::size_t figure) {
  std::size_t sheet = 0;
  while (sheet + 1 < chart.sheets.size() && chart.sheets[sheet].figures.at(figure).scale == 0) ++sheet;
  return sheet;
}

Json sheets_json(const Chart::Content& chart) {
  Json sheets = Json::array();
  for (const drawing::Scene& sheet : chart.sheets)
    sheets.push_back({{"width", OnSheet::rounded(sheet.width)}, {"height", OnSheet::rounded(sheet.height)}});
  return sheets;
}

Json figure_json(const Chart::Content& chart, std::size_t index) {
  const layout::Figure& figure = chart.placement.figures[index];
  const std::size_t number = sheet_of(chart, index);
  const OnSheet sheet{chart.sheets[number].figures.at(index)};
  const layout::Convex corners = {
      figure.low, {figure.high.x, figure.low.y}, figure.high, {figure.low.x, figure.high.y}};
  Json drawn = Json::array();
  for (const layout::Ring& ring : figure.rings)
    for (std::uint32_t i = 0; i < ring.items; ++i)
      add_item(drawn, chart, figure, ring, figure.items[ring.first_item + i], sheet);
  return {{"part", chart.pattern->fabric.parts[figure.part].key},
          {"form", layout::name(figure.form)},
          {"sheet", number + 1},
          {"box", sheet.box(corners)},
          {"drawn", std::move(drawn)},
          {"labels", labels_json(figure, sheet)}};
}

} // namespace

std::string chart_json(const Chart::Content& chart) {
  const std::string& name = chart.pattern->variant;
  const Json variant = name.empty() ? Json(nullptr) : Json(name);
  Json json = {{"whorl", 1},
               {"title", chart.pattern->tree.title},
               {"unit", "mm"},
               {"width", OnSheet::rounded(chart.sheets.front().width)},
               {"height", OnSheet::rounded(chart.sheets.front().height)},
               {"sheets", sheets_json(chart)},
               {"variant", variant},
               {"hand", chart.options.left_handed ? "left" : "right"},
               {"parts", Json::array()},
               {"figures", Json::array()}};
  const fabric::Fabric& fabric = chart.pattern->fabric;
  for (std::uint32_t part = 0; part < fabric.parts.size(); ++part)
    if (layout::is_wanted(chart.placement.wanted, part))
      json["parts"].push_back(part_json(chart, fabric.parts[part]));
  for (std::size_t i = 0; i < chart.placement.figures.size(); ++i)
    json["figures"].push_back(figure_json(chart, i));
  return text_of(json);
}

} // namespace whorl
