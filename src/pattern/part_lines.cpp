#include "pattern/part_lines.hpp"

#include "pattern/edging.hpp"
#include "pattern/limits.hpp"
#include "pattern/make_told.hpp"
#include "pattern/on_part.hpp"
#include "pattern/references.hpp"
#include "pattern/spread.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

/// "Rnd 0": the chain that the first round is worked along.
bool is_round_0(const Label& label) { return !label.span.empty() && !label.relative && label.to == 0; }

bool begins_part(const Line& line, const PartLines& part) {
  if (line.kind == LineKind::heading) return !part.rounds.empty() || part.heading != nullptr;
  if (line.kind != LineKind::round || part.rounds.empty()) return false;
  const Label& label = line.ways.front().label;
  const bool first = label.from == 1 || is_round_0(label);
  return first && starts(line.ways) && !is_round_0(part.rounds.back().front().label);
}

/// "(make 2)" below a part's name, "Make 4 (legs)." below its rounds; true if the line says no more.
bool take_make(const Reader& reader, const Line& line, PartLines& part) {
  if (line.kind != LineKind::sentence || (part.heading != nullptr && part.heading->heading.says_make))
    return false;
  const MakeTold told = make_alone(reader.source.at(line.span), reader.vocabulary);
  if (told.count == 0) return false;
  part.make = told.count;
  return told.end == line.span.length();
}

void add_line(const Line& line, PartLines& part) {
  PartLine added{&line, PartLine::no_round};
  if (line.kind == LineKind::round) {
    added.round = part.rounds.size();
    part.rounds.push_back(line.ways);
  }
  part.lines.push_back(added);
}

/// "12 sc around this leg, ch 2, 12 sc around the first leg": the leg on the hook is worked along first, then
/// another part is opened.
bool begins_on_own(const Reader& reader, const Ways& ways) {
  if (ways.front().readings.empty() || ways.front().readings.front().body == no_node) return false;
  const Reading& reading = ways.front().readings.front();
  bool worked = false;
  for (NodeId id = reading.nodes[reading.body].child; id != no_node; id = reading.nodes[id].next) {
    const Node& node = reading.nodes[id];
    if (opens(node)) return worked && node.work.act == Act::part_edge;
    if (node.work.where == Where::chain || node.work.where == Where::ring) return false;
    const bool chain = node.kind == NodeKind::work && node.work.kind < reader.kinds.size() &&
                       reader.kinds[node.work.kind].takes == 0;
    worked = worked || !chain;
  }
  return false;
}

/// Whether the yarn is cut at the end of a part.
bool is_cut(const Reader& reader, const PartLines& part) {
  return std::any_of(part.lines.begin(), part.lines.end(), [&](const PartLine& line) {
    const Span span = line.line->span;
    const auto placings = read_placings(reader.source.at(span), span, reader.vocabulary);
    return std::any_of(placings.begin(), placings.end(),
                       [](const Placing& placing) { return placing.what == What::cut; });
  });
}

/// "Flap. Row 1: sc in next 10, leave the others, turn": rows on the last round of one piece, whose yarn was
/// not cut.
bool is_flap(const Reader& reader, const PartLines& before, const PartLines& part) {
  const Label& label = part.rounds.front().front().label;
  return label.kind == RoundKind::row && label.from == 1 && before.make == 1 &&
         before.rounds.back().front().label.kind == RoundKind::round && !is_cut(reader, before);
}

/// A part whose numbers run on, and which begins nothing, is worked on from the part before; so is one that
/// begins along the leg on the hook.
bool goes_on(const Reader& reader, const PartLines& before, const PartLines& part) {
  if (before.rounds.empty() || part.rounds.empty()) return false;
  if (begins_on_own(reader, part.rounds.front())) return true;
  if (starts(part.rounds.front())) return false;
  if (is_flap(reader, before, part)) return true;
  const Label& label = part.rounds.front().front().label;
  return label.relative ? !label.span.empty() : label.from == last_number(before) + 1;
}

} // namespace

bool starts(const Ways& ways) {
  const auto any = [](const Reading& reading) { return reading.effect.starts; };
  return std::any_of(ways.begin(), ways.end(), [&](const Way& way) {
    return std::any_of(way.readings.begin(), way.readings.end(), any);
  });
}

int last_number(const PartLines& part) {
  int last = 0;
  for (const Ways& ways : part.rounds) {
    const Label& label = ways.front().label;
    last = label.relative ? last + label.to : label.to;
  }
  return last;
}

std::vector<PartLines> parts_of(const Reader& reader, const Cut& cut) {
  std::vector<PartLines> parts(1);
  for (const Line& line : cut.lines) {
    if (begins_part(line, parts.back())) parts.emplace_back();
    if (line.kind == LineKind::heading) parts.back().heading = &line;
    if (line.kind == LineKind::heading) parts.back().make = line.heading.make;
    if (take_make(reader, line, parts.back())) continue;
    if (line.kind == LineKind::title) parts.front().title = line.span;
    if (line.kind == LineKind::round || line.kind == LineKind::sentence) add_line(line, parts.back());
  }
  for (PartLines& part : parts) spread_rounds(reader, part);
  follow_references(reader, parts);
  for (std::size_t part = 1; part < parts.size(); ++part) {
    parts[part].goes_on = goes_on(reader, parts[part - 1], parts[part]);
    parts[part].on = part_worked_on(reader, parts, part).value_or(PartLines::nothing);
    if (parts[part].on == PartLines::nothing)
      parts[part].on_chain = part_with_chain(reader, parts, part).value_or(PartLines::nothing);
  }
  return parts;
}

} // namespace whorl::pattern
