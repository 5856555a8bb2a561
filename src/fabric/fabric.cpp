#include "fabric/fabric.hpp"

namespace whorl::fabric {
namespace {

static_assert(sizeof(Stitch) == 16);
static_assert(sizeof(Leg) == 8);

std::uint32_t end_of_legs(const Fabric& fabric, StitchId stitch) {
  if (stitch + 1 < fabric.stitches.size()) return fabric.stitches[stitch + 1].first_leg;
  return static_cast<std::uint32_t>(fabric.legs.size());
}

/// "b" behind a number that stands a second time; from the 26th on a number.
std::string again_mark(int again) {
  if (again <= 0) return {};
  if (again < 26) return std::string(1, static_cast<char>('a' + again));
  return "x" + std::to_string(again);
}

std::string number_of(const Round& round) { return std::to_string(round.number) + again_mark(round.again); }

void begin_id(std::string& out, const Fabric& fabric, std::uint32_t part, std::string_view prefix) {
  out.append(prefix).append(fabric.parts[part].key) += '-';
}

void begin_id(std::string& out, const Fabric& fabric, const Round& round, std::string_view prefix) {
  begin_id(out, fabric, round.part, prefix);
  out += std::to_string(round.number);
  if (round.again > 0) out += again_mark(round.again);
}

/// The chains of a starting chain are numbered from the hook, others with their round.
void append_chain_id(std::string& out, const Fabric& fabric, StitchId chain, std::string_view prefix) {
  const Round& round = fabric.rounds[fabric.stitches[chain].round];
  if (round.kind != pattern::RoundKind::chain) return append_id(out, fabric, chain, prefix);
  const std::uint32_t from_hook = round.first_stitch + round.count - chain;
  begin_id(out, fabric, round, prefix);
  out.append("-ch-").append(std::to_string(from_hook));
}

std::uint32_t first_arch(const Fabric& fabric, std::uint32_t round) {
  std::uint32_t low = 0, high = static_cast<std::uint32_t>(fabric.arches.size());
  while (low < high) {
    const std::uint32_t middle = (low + high) / 2;
    if (fabric.arches[middle].first_chain < fabric.rounds[round].first_stitch)
      low = middle + 1;
    else
      high = middle;
  }
  return low;
}

void append_space_id(std::string& out, const Fabric& fabric, std::uint32_t arch, std::string_view prefix) {
  const std::uint32_t number = fabric.stitches[fabric.arches[arch].first_chain].round;
  begin_id(out, fabric, fabric.rounds[number], prefix);
  out.append("-sp-").append(std::to_string(arch - first_arch(fabric, number) + 1));
}

const char* name_of(std::uint8_t loops) {
  switch (loops) {
  case stitch::front:
    return " front";
  case stitch::back:
    return " back";
  case stitch::third:
    return " third";
  default:
    return "";
  }
}

const char* name_of(Start start) {
  static constexpr const char* names[] = {"nothing",    "magic ring", "second chain",
                                          "chain ring", "chain",      "free loops"};
  return names[static_cast<int>(start)];
}

const char* name_of(End end) {
  static constexpr const char* names[] = {"open", "cut", "gathered"};
  return names[static_cast<int>(end)];
}

std::string show(const Fabric& fabric, StitchId id) {
  const Stitch& stitch = fabric.stitches[id];
  std::string line = "  " + id_of(fabric, id) + " " + fabric.kinds[stitch.kind].name;
  if (stitch.flags & joins)
    line += " (joins)";
  else if (stitch.flags & starts_chain)
    line += stitch.flags & counts ? " (starting chain, counts)" : " (starting chain)";
  else if (!(stitch.flags & counts))
    line += " (not counted)";
  if (stitch.yarn != 1) line += " yarn " + std::to_string(stitch.yarn);
  const char* between = " -> ";
  for (const Leg& leg : legs_of(fabric, id)) {
    line += between + id_of(fabric, leg.into) + (leg.into.what == On::post ? " post" : "");
    line += name_of(leg.into.loops);
    between = ", ";
  }
  return line + "\n";
}

std::string show_head(const Round& round) {
  std::string line = fabric::name_of(round) + ": uses " + std::to_string(round.uses) + ", makes " +
                     std::to_string(round.makes) + ", counted " + std::to_string(round.counted);
  if (round.stated >= 0) line += ", stated " + std::to_string(round.stated);
  if (round.left_over > 0) line += ", left over " + std::to_string(round.left_over);
  if (round.joined) line += ", joined";
  if (round.turned) line += ", turned";
  if (!round.worked) line += ", only counted";
  return line + "\n";
}

std::string show(const Fabric& fabric, const Round& round) {
  std::string text = show_head(round);
  for (StitchId id = round.first_stitch; id < round.first_stitch + round.count; ++id)
    text += show(fabric, id);
  return text;
}

std::string show_head(const Part& part) {
  std::string line = "part " + part.key + " \"" + part.name + "\"";
  if (part.make != 1) line += ", make " + std::to_string(part.make);
  line += std::string(", starts: ") + name_of(part.start) + ", ends: " + name_of(part.end);
  return line + (part.whole ? "\n" : ", not whole\n");
}

std::string show(const Fabric& fabric, const Placing& placing) {
  static constexpr const char* names[] = {"eye",   "marker", "join", "cut", "change",
                                          "stuff", "sew",    "bead", "note"};
  std::string line = std::string("placing ") + names[static_cast<int>(placing.what)];
  if (placing.round != none) line += " in " + fabric::name_of(fabric.rounds[placing.round]);
  for (std::uint32_t after : placing.after) line += " after " + std::to_string(after);
  return line + "\n";
}

} // namespace

Legs legs_of(const Fabric& fabric, StitchId stitch) {
  const Leg* legs = fabric.legs.data();
  return {legs + fabric.stitches[stitch].first_leg, legs + end_of_legs(fabric, stitch)};
}

StitchId before_gap(const Fabric& fabric, const Place& gap) {
  const Round& round = fabric.rounds[fabric.stitches[gap.of].round];
  const auto is_plain = [&](StitchId id) { return (fabric.stitches[id].flags & (joins | starts_chain)) == 0; };
  for (StitchId id = gap.of; id-- > round.first_stitch;)
    if (is_plain(id)) return id;
  for (StitchId id = round.first_stitch + round.count; id-- > gap.of;)
    if (is_plain(id)) return id;
  return gap.of;
}

namespace {

/// The first of a stitch's legs that goes through a part held against it; where there is none, their end.
const Leg* first_held(const Fabric& fabric, StitchId stitch) {
  const Legs legs = legs_of(fabric, stitch);
  if ((fabric.stitches[stitch].flags & holds_part) == 0) return legs.end();
  const auto part_of = [&fabric](const Leg& leg) {
    const bool stands = leg.into.what == On::top && leg.into.of < fabric.stitches.size();
    return stands ? fabric.rounds[fabric.stitches[leg.into.of].round].part : none;
  };
  const Leg* held = legs.begin();
  while (held != legs.end() && part_of(*held) == part_of(*legs.begin())) ++held;
  return held;
}

} // namespace

Legs own_legs_of(const Fabric& fabric, StitchId stitch) {
  return {legs_of(fabric, stitch).begin(), first_held(fabric, stitch)};
}

Legs held_legs_of(const Fabric& fabric, StitchId stitch) {
  return {first_held(fabric, stitch), legs_of(fabric, stitch).end()};
}

std::uint8_t free_loops(const Fabric& fabric, StitchId stitch) {
  if (stitch >= fabric.taken.size()) return stitch::both;
  return static_cast<std::uint8_t>(stitch::both & ~fabric.taken[stitch]);
}

std::uint32_t index_in_round(const Fabric& fabric, StitchId stitch) {
  return stitch - fabric.rounds[fabric.stitches[stitch].round].first_stitch + 1;
}

std::string name_of(const Round& round) {
  return (round.kind == pattern::RoundKind::row ? "row " : "round ") + number_of(round);
}

void append_id(std::string& out, const Fabric& fabric, StitchId stitch, std::string_view prefix) {
  begin_id(out, fabric, fabric.rounds[fabric.stitches[stitch].round], prefix);
  out += '-';
  out += std::to_string(index_in_round(fabric, stitch));
}

void append_id(std::string& out, const Fabric& fabric, const Place& place, std::string_view prefix) {
  switch (place.what) {
  case On::ring:
    begin_id(out, fabric, place.of, prefix);
    out += "ring";
    return;
  case On::space:
    return append_space_id(out, fabric, place.of, prefix);
  case On::chain_side:
    return append_chain_id(out, fabric, place.of, prefix);
  case On::row_end:
    begin_id(out, fabric, fabric.rounds[place.of], prefix);
    out += place.loops == stitch::front ? "-start" : "-end";
    return;
  case On::top:
  case On::post:
  case On::between:
    break;
  }
  append_id(out, fabric, place.of, prefix);
  if (place.what == On::between) out += "-gap";
}

std::string id_of(const Fabric& fabric, StitchId stitch, std::string_view prefix) {
  std::string id;
  append_id(id, fabric, stitch, prefix);
  return id;
}

std::string id_of(const Fabric& fabric, const Place& place, std::string_view prefix) {
  std::string id;
  append_id(id, fabric, place, prefix);
  return id;
}

Workers workers_of(const Fabric& fabric) {
  const auto of_stitch = [](const Place& place) {
    return place.what != On::ring && place.what != On::space && place.what != On::row_end &&
           place.what != On::between;
  };
  Workers workers;
  workers.first.assign(fabric.stitches.size() + 1, 0);
  for (const Leg& leg : fabric.legs)
    if (of_stitch(leg.into)) ++workers.first[leg.into.of + 1];
  for (std::size_t i = 1; i < workers.first.size(); ++i) workers.first[i] += workers.first[i - 1];
  workers.stitch.resize(workers.first.back());
  std::vector<std::uint32_t> next(workers.first.begin(), workers.first.end() - 1);
  for (StitchId id = 0; id < fabric.stitches.size(); ++id)
    for (const Leg& leg : legs_of(fabric, id))
      if (of_stitch(leg.into)) workers.stitch[next[leg.into.of]++] = id;
  return workers;
}

std::string show(const Fabric& fabric) {
  std::string text;
  for (const Part& part : fabric.parts) {
    text += show_head(part);
    if (part.foundation != none) text += show(fabric, fabric.rounds[part.foundation]);
    const std::uint32_t end = part.first_round + part.rounds + part.counted_only;
    for (std::uint32_t round = part.first_round; round < end; ++round)
      text += show(fabric, fabric.rounds[round]);
  }
  for (const Placing& placing : fabric.placings) text += show(fabric, placing);
  return text;
}

} // namespace whorl::fabric
