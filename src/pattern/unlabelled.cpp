#include "pattern/unlabelled.hpp"

#include "pattern/costs.hpp"
#include "pattern/edging.hpp"
#include "pattern/effect.hpp"

#include <algorithm>

namespace whorl::pattern {
namespace {

/// "Ch 1, sc evenly around the edge of the ear (18)" behind rows.
std::optional<Way> along_edges(const Reader& reader, Span line) {
  Label label = no_label(line);
  label.behind_rows = true;
  Way way = way_of(reader, label, line.end);
  const bool goes = is_clean(way) && does_work(way) && goes_along_edges(way.readings.front()) &&
                    !way.readings.front().stated.empty();
  return goes ? std::optional(std::move(way)) : std::nullopt;
}

/// Stitches through both layers, so many or all along.
bool is_closing(const Node& node) {
  return node.kind == NodeKind::work && node.work.act == Act::stitch && node.work.into == Into::both_layers;
}

/// "Press flat and sc through both layers across (5)": its count, or a number of stitches, says that it is
/// worked.
bool closes_flat(const Reading& reading) {
  return std::any_of(reading.nodes.begin(), reading.nodes.end(), [&](const Node& node) {
    return is_closing(node) && (!reading.stated.empty() || node.work.to_end || node.work.times > 1);
  });
}

/// "Attach yarn to any front loop of Rnd 4, ch 1, 2 sc in each front loop around (24)"; all round without a
/// count.
bool goes_into_free_loops(const Reading& reading) {
  const bool opens = std::any_of(reading.nodes.begin(), reading.nodes.end(), [](const Node& node) {
    return node.kind == NodeKind::work && node.work.act == Act::free_loops && node.round != 0;
  });
  const bool whole = !reading.stated.empty() || runs_to_end(reading.effect);
  return opens && whole && reading.cost <= cost::clean_start;
}

/// "Sc in next 12, skip 12, join": the piece is divided, and goes on along the stitches that were worked.
bool divides(const Reading& reading) {
  constexpr std::uint32_t least_skipped = 4;
  const auto is = [](const Node& node, Act act) {
    return node.kind == NodeKind::work && node.work.act == act;
  };
  const auto skips = [&](const Node& node) {
    return is(node, Act::skip) && node.work.where == Where::next && node.work.times >= least_skipped;
  };
  const auto joins = [&](const Node& node) { return is(node, Act::join); };
  const auto& nodes = reading.nodes;
  return reading.cost <= cost::clean && std::any_of(nodes.begin(), nodes.end(), skips) &&
         std::any_of(nodes.begin(), nodes.end(), joins);
}

} // namespace

std::optional<Way> round_without_label(const Reader& reader, Span line, bool behind_rows) {
  if (!names_stitches(reader, line)) return std::nullopt;
  if (behind_rows)
    if (auto way = along_edges(reader, line)) return way;
  Way way = way_of(reader, no_label(line), line.end);
  if (way.readings.empty() || !way.readings.front().passed_over.empty()) return std::nullopt;
  const Reading& reading = way.readings.front();
  const bool into_loops = does_work(way) && names_free_loops(reader, line) && goes_into_free_loops(reading);
  const bool divided = does_work(way) && divides(reading);
  return closes_flat(reading) || into_loops || divided ? std::optional(std::move(way)) : std::nullopt;
}

std::optional<Way> round_below_loops(const Reader& reader, Span line, Span above) {
  if (!names_stitches(reader, line)) return std::nullopt;
  Way way = way_of(reader, no_label(line), line.end);
  if (way.readings.empty() || !way.readings.front().passed_over.empty() || !does_work(way))
    return std::nullopt;
  if (!way.readings.front().effect.starts && !work_into(reader, way, above)) return std::nullopt;
  return goes_into_free_loops(way.readings.front()) ? std::optional(std::move(way)) : std::nullopt;
}

} // namespace whorl::pattern
