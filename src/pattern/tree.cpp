#include "pattern/tree.hpp"

#include "pattern/limits.hpp"

#include <array>

namespace whorl::pattern {

namespace {

const char* name(NodeKind kind) {
  constexpr std::array names{"sequence", "work", "repeat", "loops", "yarn", "group", "reference", "unread"};
  return names[static_cast<std::size_t>(kind)];
}

const char* name(Act act) {
  constexpr std::array names{"stitch",     "skip",       "ring",           "join",     "turn",
                             "start here", "other side", "row ends",       "top edge", "all edges",
                             "free loops", "skipped",    "edge of a part", "travel"};
  return names[static_cast<std::size_t>(act)];
}

const char* name(Where where) {
  constexpr std::array names{"next",  "same",    "ring", "chain",     "last",
                             "space", "between", "any",  "any chain", "centre"};
  return names[static_cast<std::size_t>(where)];
}

const char* name(Into into) {
  constexpr std::array names{"",       " round the front post", " round the back post",
                             " below", " through both layers",  " through two parts"};
  return names[static_cast<std::size_t>(into)];
}

const char* name(What what) {
  constexpr std::array names{"eye",   "marker", "join", "cut",       "change",
                             "stuff", "sew",    "bead", "embroider", "note"};
  return names[static_cast<std::size_t>(what)];
}

const char* name(RoundKind kind) {
  constexpr std::array names{"round", "row", "chain"};
  return names[static_cast<std::size_t>(kind)];
}

std::string number(std::uint64_t value) { return std::to_string(value); }

std::string how_often(const Work& work) {
  if (!work.to_end) return " x " + number(work.times);
  return work.leave == 0 ? " to the end" : " to the last " + number(work.leave);
}

std::string loops(std::uint8_t set) {
  std::string text;
  if (set & stitch::front) text += " front";
  if (set & stitch::back) text += " back";
  if (set & stitch::third) text += " third";
  return text.empty() ? text : " in" + text;
}

std::string kind_name(const Tree& tree, stitch::KindId kind) {
  return kind < tree.kinds.size() ? tree.kinds[kind].name : "?";
}

std::string place(const Work& work) {
  if (work.where == Where::next) return {};
  std::string text = std::string(" into ") + name(work.where);
  return work.where == Where::chain ? text + " " + number(work.nth) : text;
}

std::string show_work(const Tree& tree, const Work& work) {
  std::string text = work.act == Act::stitch ? kind_name(tree, work.kind) : name(work.act);
  if (work.in_one > 1) text += " (" + number(work.in_one) + " in one)";
  text += place(work) + loops(work.loops) + name(work.into);
  if (work.into == Into::below) text += " " + number(work.down);
  if (work.counts) text += " counted";
  if (work.yarn != 0) text += " yarn " + number(work.yarn);
  return text + how_often(work);
}

/// The round whose loops, stitches or edge are opened.
std::string show_owner(const Node& node) {
  if (node.work.act < Act::free_loops) return {};
  return " of entry " + number(node.round) + (node.number == 0 ? "" : " round " + number(node.number));
}

std::string show_node(const Tree& tree, const Node& node) {
  std::string text = name(node.kind);
  switch (node.kind) {
  case NodeKind::work:
    return show_work(tree, node.work) + show_owner(node);
  case NodeKind::repeat:
    return text + how_often(node.work);
  case NodeKind::loops:
    return text + loops(node.work.loops);
  case NodeKind::yarn:
    return text + " " + number(node.work.yarn);
  case NodeKind::group:
    if (node.name != 0) text += " " + tree.group_names[node.name - 1U];
    return text + place(node.work) + how_often(node.work);
  case NodeKind::reference:
    return text + " to " + number(node.round) + (node.number == 0 ? "" : " round " + number(node.number));
  case NodeKind::sequence:
  case NodeKind::unread:
    break;
  }
  return text;
}

void show_below(const Tree& tree, NodeId id, std::size_t depth, std::string& text) {
  for (; id != no_node && depth < limit::depth; id = tree.nodes[id].next) {
    text += std::string(2 * depth, ' ') + show_node(tree, tree.nodes[id]) + "\n";
    show_below(tree, tree.nodes[id].child, depth + 1, text);
  }
}

std::string show_range(int from, int to) {
  return from == to ? std::to_string(from) : std::to_string(from) + "-" + std::to_string(to);
}

std::string show_round(const RoundText& round) {
  std::string text = std::string("  ") + name(round.kind) + " " + show_range(round.from, round.to);
  if (round.again > 0) text += " again " + std::to_string(round.again);
  text += round.read ? "" : " unread";
  text += ": uses " + number(round.effect.uses) + ", makes " + number(round.effect.makes);
  if (round.effect.pass_uses > 0)
    text += ", a pass " + number(round.effect.pass_uses) + " to " + number(round.effect.pass_makes);
  for (const Stated& stated : round.stated) text += ", stated " + number(stated.count);
  return text + "\n";
}

std::string show_placing(const Placing& placing) {
  std::string text = std::string("  ") + name(placing.what);
  if (placing.from > 0) text += " " + show_range(placing.from, placing.to);
  if (placing.apart > 0) text += " apart " + number(placing.apart);
  for (const std::uint16_t hole : placing.after) text += " hole " + number(hole);
  if (placing.gather) text += " gathered";
  return text + ": " + placing.text + "\n";
}

std::string show_part(const Tree& tree, std::uint32_t index) {
  const Part& part = tree.parts[index];
  std::string text = "part " + part.name + " x " + number(part.make);
  if (!part.note.empty()) text += " (" + part.note + ")";
  if (part.yarn != 0) text += " in yarn " + number(part.yarn);
  return text + "\n";
}

} // namespace

std::uint32_t end_round(const Tree& tree, std::uint32_t part) {
  const bool last = part + 1 >= tree.parts.size();
  return last ? static_cast<std::uint32_t>(tree.rounds.size()) : tree.parts[part + 1].first_round;
}

std::string show(const Tree& tree) {
  std::string text = "title " + tree.title + "\n";
  if (!tree.subtitle.empty()) text += "subtitle " + tree.subtitle + "\n";
  for (const Header& header : tree.headers) text += "header " + header.name + ": " + header.value + "\n";
  std::size_t placing = 0;
  const auto show_placings_up_to = [&](std::uint32_t round, std::uint32_t part) {
    for (; placing < tree.placings.size(); ++placing) {
      const Placing& next = tree.placings[placing];
      if (next.part > part || (next.part == part && next.after_round > round)) return;
      text += show_placing(next);
    }
  };
  for (std::uint32_t part = 0; part < tree.parts.size(); ++part) {
    text += show_part(tree, part);
    for (auto round = tree.parts[part].first_round; round < end_round(tree, part); ++round) {
      show_placings_up_to(round, part);
      text += show_round(tree.rounds[round]);
      show_below(tree, tree.rounds[round].body, 2, text);
    }
    show_placings_up_to(end_round(tree, part), part);
  }
  return text;
}

} // namespace whorl::pattern
