#pragma once
/// Trees for tests, built in a few words: `sample::ball({6, 12, 18, 12, 6})` is a ball with these rounds,
/// worked with `fabric::work(sample::ball(...)).fabric`. A `Maker` builds anything else:
///
///   sample::Maker m;
///   m.part("Cap");
///   m.round({m.ring(), m.sc(6)}, 6);
///   m.round({m.around({m.inc(1)})}, 12);
///   m.round({m.blo({m.sc(2), m.repeat(5, {m.sc(1), m.inc(1)})})});
///   m.rounds(4, 8, {m.sc_around()}, 17);
///   fabric::work(m.tree)
///
/// A node may stand in one place only. Spans are made up: every node and count has its own, in order.

#include "pattern/effect.hpp"
#include "pattern/reading.hpp"
#include "pattern/tree.hpp"
#include "stitch/kind.hpp"

#include <algorithm>
#include <cstdint>
#include <string>
#include <utility>
#include <vector>

namespace sample {

namespace pattern = whorl::pattern;
namespace stitch = whorl::stitch;
using pattern::NodeId;
using pattern::NodeKind;
using pattern::Where;
using Nodes = std::vector<NodeId>;

class Maker {
public:
  Maker() {
    tree.title = "Sample";
    tree.kinds = stitch::standard_kinds();
  }

  pattern::Tree tree;

  /// Begins a part; rounds are numbered from 1 again.
  void part(const std::string& name, std::uint32_t make = 1) {
    pattern::Part part;
    part.name = name;
    part.make = make;
    part.first_round = static_cast<std::uint32_t>(tree.rounds.size());
    part.span = next_span();
    tree.parts.push_back(part);
    number_ = 1;
  }

  /// The next round of the part; a stated count of -1 is none.
  pattern::RoundText& round(const Nodes& nodes, std::int64_t stated = -1) {
    return rounds(number_, number_, nodes, stated);
  }

  /// One line that gives the rounds `from` to `to`.
  pattern::RoundText& rounds(int from, int to, const Nodes& nodes, std::int64_t stated = -1) {
    if (tree.parts.empty()) part("");
    pattern::RoundText text;
    text.part = static_cast<std::uint32_t>(tree.parts.size() - 1);
    text.from = from;
    text.to = to;
    text.label = from == to ? "Rnd " + std::to_string(from)
                            : "Rnds " + std::to_string(from) + "-" + std::to_string(to);
    text.label_span = next_span();
    text.body = add(NodeKind::sequence, {}, nodes);
    text.span = {text.label_span.begin, tree.nodes[text.body].span.end};
    if (stated >= 0)
      text.stated.push_back(
          {static_cast<std::uint32_t>(stated), pattern::Unit::any, stitch::no_kind, next_span()});
    number_ = to + 1;
    tree.rounds.push_back(text);
    return tree.rounds.back();
  }

  /// A line that was not read.
  pattern::RoundText& unread(std::int64_t stated = -1) {
    pattern::RoundText& text = round({}, stated);
    text.read = false;
    text.body = pattern::no_node;
    return text;
  }

  /// Something placed or done behind the last round so far.
  pattern::Placing& place(pattern::What what) {
    pattern::Placing placing;
    placing.what = what;
    placing.part = static_cast<std::uint32_t>(tree.parts.size() - 1);
    placing.after_round = static_cast<std::uint32_t>(tree.rounds.size());
    placing.span = next_span();
    tree.placings.push_back(placing);
    return tree.placings.back();
  }

  /// The yarn is cut and the last stitches gathered.
  void gather() { place(pattern::What::cut).gather = true; }

  NodeId work(const char* kind, std::uint32_t times, std::uint16_t in_one = 1, Where where = Where::next) {
    pattern::Work work;
    work.kind = *stitch::find_kind(tree.kinds, kind);
    work.times = times;
    work.in_one = in_one;
    work.where = where;
    return add(NodeKind::work, work, {});
  }
  NodeId act(pattern::Act act, std::uint32_t times = 1) {
    pattern::Work work;
    work.act = act;
    work.times = times;
    return add(NodeKind::work, work, {});
  }

  NodeId ring() { return act(pattern::Act::ring); }
  NodeId join() { return act(pattern::Act::join); }
  NodeId turn() { return act(pattern::Act::turn); }
  NodeId skip(std::uint32_t times) { return act(pattern::Act::skip, times); }
  NodeId ch(std::uint32_t times) { return work("ch", times); }
  NodeId sc(std::uint32_t times) { return work("sc", times); }
  NodeId inc(std::uint32_t times) { return work("sc", times, 2); }
  NodeId dec(std::uint32_t times) { return work("sc2tog", times); }
  NodeId invdec(std::uint32_t times) { return work("invdec", times); }
  NodeId slip(std::uint32_t times) { return work("sl st", times); }
  NodeId in_chain(std::uint32_t times, std::uint16_t nth) {
    const NodeId node = work("sc", times, 1, Where::chain);
    tree.nodes[node].work.nth = nth;
    return node;
  }
  /// `times` chains that count as a stitch.
  NodeId counted_ch(std::uint32_t times) { return counted(ch(times)); }
  NodeId counted(NodeId node) {
    tree.nodes[node].work.counts = true;
    return node;
  }
  NodeId at_chain(NodeId node, std::uint16_t nth) {
    tree.nodes[node].work.where = Where::chain;
    tree.nodes[node].work.nth = nth;
    return node;
  }
  NodeId at(NodeId node, Where where) {
    tree.nodes[node].work.where = where;
    return node;
  }
  NodeId into(NodeId node, pattern::Into into, std::uint8_t down = 1) {
    tree.nodes[node].work.into = into;
    tree.nodes[node].work.down = down;
    return node;
  }
  /// Opens what the line with this index (from 0) has: its free loops, its skipped stitches, its edge.
  NodeId open(pattern::Act how, std::uint32_t text, std::uint8_t loops = 0, std::uint16_t number = 0) {
    const NodeId node = in_loops(act(how), loops);
    tree.nodes[node].round = text;
    tree.nodes[node].number = number;
    return node;
  }
  NodeId free_loops(std::uint32_t text, std::uint8_t loops) {
    return open(pattern::Act::free_loops, text, loops);
  }
  NodeId part_edge(std::uint32_t text) { return open(pattern::Act::part_edge, text); }
  NodeId other_side() { return act(pattern::Act::other_side); }
  NodeId sc_around() { return to_end(sc(1)); }
  /// A piece of work that runs to the end of the round, but for the last `leave`.
  NodeId to_end(NodeId node, std::uint32_t leave = 0) {
    tree.nodes[node].work.to_end = true;
    tree.nodes[node].work.leave = leave;
    return node;
  }
  NodeId in_loops(NodeId node, std::uint8_t loops) {
    tree.nodes[node].work.loops = loops;
    return node;
  }

  NodeId repeat(std::uint32_t times, const Nodes& nodes) {
    pattern::Work work;
    work.times = times;
    return add(NodeKind::repeat, work, nodes);
  }
  NodeId around(const Nodes& nodes, std::uint32_t leave = 0) { return to_end(repeat(1, nodes), leave); }
  NodeId group(const Nodes& nodes, Where where = Where::next) {
    pattern::Work work;
    work.where = where;
    return add(NodeKind::group, work, nodes);
  }
  /// A group that is counted under a name.
  NodeId named(const std::string& name, NodeId group) {
    const auto& names = tree.group_names;
    const auto found = std::find(names.begin(), names.end(), name);
    tree.nodes[group].name = static_cast<std::uint16_t>(found - names.begin() + 1);
    if (found == names.end()) tree.group_names.push_back(name);
    return group;
  }
  NodeId loops(std::uint8_t loops, const Nodes& nodes) {
    pattern::Work work;
    work.loops = loops;
    return add(NodeKind::loops, work, nodes);
  }
  NodeId blo(const Nodes& nodes) { return loops(stitch::back, nodes); }
  NodeId flo(const Nodes& nodes) { return loops(stitch::front, nodes); }
  NodeId yarn(std::uint8_t yarn, const Nodes& nodes) {
    pattern::Work work;
    work.yarn = yarn;
    return add(NodeKind::yarn, work, nodes);
  }
  /// As the line with this index (from 0) was worked.
  NodeId as(std::uint32_t text) {
    const NodeId node = add(NodeKind::reference, {}, {});
    tree.nodes[node].round = text;
    return node;
  }

  /// What brings a round of `before` stitches to `after`, as evenly as whole numbers go; `after` is from half
  /// to twice `before`.
  NodeId change(std::uint32_t before, std::uint32_t after) {
    if (before == after) return sc_around();
    const std::uint32_t times = after > before ? after - before : before - after;
    const std::uint32_t takes = after > before ? 1 : 2;
    if (before % times == 0) return repeat(times, pass(before / times, takes));
    Nodes passes;
    for (std::uint32_t i = 0; i < times; ++i)
      for (NodeId node : pass((i + 1) * before / times - i * before / times, takes)) passes.push_back(node);
    return add(NodeKind::sequence, {}, passes);
  }

private:
  /// A few single crochets and a change at their end; `takes` 1: an increase, 2: a decrease.
  Nodes pass(std::uint32_t width, std::uint32_t takes) {
    Nodes nodes;
    if (width > takes) nodes.push_back(sc(width - takes));
    nodes.push_back(takes == 1 ? inc(1) : dec(1));
    return nodes;
  }

  NodeId add(NodeKind kind, const pattern::Work& work, const Nodes& children) {
    pattern::Node node;
    node.kind = kind;
    node.work = work;
    node.span = next_span();
    if (!children.empty()) {
      node.child = children.front();
      node.span.begin = tree.nodes[children.front()].span.begin;
    }
    for (std::size_t i = 0; i + 1 < children.size(); ++i) tree.nodes[children[i]].next = children[i + 1];
    tree.nodes.push_back(node);
    return static_cast<NodeId>(tree.nodes.size() - 1);
  }

  pattern::Span next_span() {
    at_ += 10;
    return {at_, at_ + 8};
  }

  int number_ = 1;
  std::uint32_t at_ = 0;
};

/// Adds rounds of these counts to the maker's part: the first into a ring, each stated.
inline void add_rounds(Maker& maker, const std::vector<std::uint32_t>& counts) {
  std::uint32_t before = 0;
  for (std::uint32_t count : counts) {
    if (before == 0)
      maker.round({maker.ring(), maker.work("sc", count, 1, Where::ring)}, count);
    else
      maker.round({maker.change(before, count)}, count);
    before = count;
  }
}

/// A part "Ball" of single crochet with rounds of these counts, each from half to twice the one before.
inline pattern::Tree ball(const std::vector<std::uint32_t>& counts) {
  Maker maker;
  maker.part("Ball");
  add_rounds(maker, counts);
  return maker.tree;
}

/// The counts of a ball of about `stitches`: add six a round, some even, take six off again.
inline std::vector<std::uint32_t> ball_counts(std::uint32_t stitches) {
  std::uint32_t widest = 1;
  while (6 * widest * widest + 6 * widest * widest < stitches) ++widest;
  std::vector<std::uint32_t> counts;
  for (std::uint32_t i = 1; i <= widest; ++i) counts.push_back(6 * i);
  for (std::uint32_t i = 0; i < widest; ++i) counts.push_back(6 * widest);
  for (std::uint32_t i = widest - 1; i >= 1; --i) counts.push_back(6 * i);
  return counts;
}

/// Numbers that are the same in every run and on every machine.
class Chance {
public:
  explicit Chance(std::uint32_t seed) : state_(seed * 2654435761u + 12345u) {}
  /// A number from `low` to `high`.
  std::uint32_t pick(std::uint32_t low, std::uint32_t high) {
    state_ = state_ * 1664525u + 1013904223u;
    return low + (state_ >> 8) % (high - low + 1);
  }

private:
  std::uint32_t state_;
};

/// Counts that grow by chance, stay and shrink again; `closing` false: a cone, which only grows or stays.
inline std::vector<std::uint32_t> random_counts(Chance& chance, bool closing) {
  std::vector<std::uint32_t> counts{chance.pick(4, 8)};
  for (std::uint32_t i = chance.pick(3, 8); i > 0; --i)
    counts.push_back(counts.back() + chance.pick(0, std::min(8u, counts.back())));
  for (std::uint32_t i = chance.pick(0, 4); i > 0; --i) counts.push_back(counts.back());
  while (closing && counts.back() > 8) {
    const std::uint32_t last = counts.back();
    counts.push_back(last - chance.pick(1, std::min(8u, last / 2)));
  }
  return counts;
}

/// A ball or cone of random rounds; some of its rounds in back or front loops.
inline pattern::Tree random_piece(std::uint32_t seed, bool closing) {
  Chance chance(seed);
  Maker maker;
  maker.part(closing ? "Ball" : "Cone");
  std::uint32_t before = 0;
  for (std::uint32_t count : random_counts(chance, closing)) {
    const std::uint32_t way = chance.pick(0, 9);
    if (before == 0)
      maker.round({maker.ring(), maker.work("sc", count, 1, Where::ring)}, count);
    else if (way == 0)
      maker.round({maker.blo({maker.change(before, count)})}, count);
    else if (way == 1)
      maker.round({maker.flo({maker.change(before, count)})}, count);
    else
      maker.round({maker.change(before, count)}, count);
    before = count;
  }
  if (closing) maker.gather();
  return maker.tree;
}

inline pattern::Tree random_ball(std::uint32_t seed) { return random_piece(seed, true); }
inline pattern::Tree random_cone(std::uint32_t seed) { return random_piece(seed, false); }

/// One piece of work chosen by chance that uses at most `open` places; takes what it uses off it.
inline NodeId random_work(Maker& m, Chance& chance, std::uint32_t& open) {
  const std::uint32_t few = chance.pick(1, std::min(3u, open));
  const auto uses = [&open](std::uint32_t places) { open -= places; };
  switch (chance.pick(0, open >= 4 ? 10 : 6)) {
  case 0:
    return uses(few), m.sc(few);
  case 1:
    return uses(few), m.work("sc", few, static_cast<std::uint16_t>(chance.pick(2, 3)));
  case 2:
    return uses(few), m.into(m.work("dc", few), pattern::Into::front_post);
  case 3:
    return uses(few), m.into(m.sc(few), pattern::Into::below);
  case 4:
    return uses(1), m.named("shell", m.group({m.work("dc", 2), m.ch(1), m.work("dc", chance.pick(1, 3))}));
  case 5:
    return uses(few), m.in_loops(m.work("hdc", few), chance.pick(0, 1) == 0 ? stitch::third : stitch::back);
  case 6:
    return uses(1), m.loops(stitch::front, {m.sc(1), m.work("sc", 2, 1, Where::same)});
  case 7:
    return uses(2), m.dec(1);
  case 8:
    return uses(4), m.repeat(2, {m.sc(1), m.inc(1)});
  case 9:
    return uses(2), m.loops(stitch::both, {m.sc(1), m.skip(1), m.ch(2)});
  default:
    return uses(2), m.into(m.sc(1), pattern::Into::both_layers);
  }
}

/// A round into `open` stitches: a start, work by chance, and the rest of it to the end.
inline Nodes random_work_round(Maker& m, Chance& chance, std::uint32_t open) {
  Nodes nodes;
  switch (chance.pick(0, 4)) {
  case 0:
    nodes = {m.counted_ch(3)};
    --open;
    break;
  case 1:
    nodes = {m.ch(1), m.work("sc", 1, 1, Where::same)};
    --open;
    break;
  case 2:
    nodes = {m.counted_ch(2), m.work("hdc", 1, 1, Where::same)};
    --open;
    break;
  default:
    break;
  }
  for (std::uint32_t i = chance.pick(0, 5); i > 0 && open > 0; --i)
    nodes.push_back(random_work(m, chance, open));
  const std::uint32_t kept = open > 2 ? chance.pick(0, 2) : 0;
  if (open > kept) nodes.push_back(chance.pick(0, 1) == 0 ? m.sc_around() : m.sc(open - kept));
  if (kept > 0) nodes.push_back(m.inc(kept));
  if (chance.pick(0, 2) == 0) nodes.push_back(m.join());
  if (chance.pick(0, 3) == 0) nodes.insert(nodes.end(), {m.counted_ch(3), m.turn()});
  return nodes;
}

/// A round into the chain spaces of the one before, or into its stitches and spaces.
inline Nodes random_space_round(Maker& m, Chance& chance) {
  const auto in_space = [&m](NodeId node) { return m.at(node, Where::space); };
  switch (chance.pick(0, 4)) {
  case 0:
    return {m.ch(1), m.to_end(in_space(m.work("sc", 1, 2))), m.join()};
  case 1:
    return {in_space(m.slip(1)), m.ch(1), m.to_end(in_space(m.work("sc", 1, 3))), m.join()};
  case 2:
    return {in_space(m.slip(1)),
            m.counted_ch(3),
            m.at(m.work("dc", 2), Where::same),
            m.ch(2),
            m.to_end(m.group({m.work("dc", 3), m.ch(2)}, Where::space)),
            m.join()};
  case 3:
    return {in_space(m.work("sc", 1)), m.around({m.ch(2), in_space(m.work("sc", 1))})};
  default:
    return {m.ch(1), m.at(m.sc_around(), Where::any), m.join()};
  }
}

/// A first round along both sides of a chain, its ends and sides told in one of several ways.
inline Nodes random_oval(Maker& m, Chance& chance) {
  const std::uint32_t chain = chance.pick(4, 9), side = chain - 3;
  Nodes nodes{m.ch(chain), m.at_chain(m.work("sc", 1, static_cast<std::uint16_t>(chance.pick(1, 2))), 2)};
  const bool told = chance.pick(0, 1) == 0;
  nodes.push_back(told ? m.sc(side) : m.to_end(m.sc(1), 1));
  const auto end = static_cast<std::uint16_t>(chance.pick(2, 5));
  nodes.push_back(m.work("sc", 1, end, chance.pick(0, 1) == 0 ? Where::next : Where::last));
  if (chance.pick(0, 1) == 0) nodes.push_back(m.other_side());
  nodes.push_back(chance.pick(0, 1) == 0 ? m.sc(side) : m.to_end(m.sc(1), 1));
  if (chance.pick(0, 1) == 0) nodes.push_back(m.work("sc", 1, 2, Where::last));
  if (chance.pick(0, 1) == 0) nodes.push_back(chance.pick(0, 1) == 0 ? m.join() : m.slip(1));
  return nodes;
}

inline Nodes random_start(Maker& m, Chance& chance) {
  switch (chance.pick(0, 4)) {
  case 0:
    return {m.ring(), m.counted_ch(3), m.work("dc", chance.pick(5, 11)), m.join()};
  case 1:
    return {m.ch(8), m.join(), chance.pick(0, 1) == 0 ? m.sc(chance.pick(6, 9)) : m.sc_around()};
  case 2:
    return {m.ch(chance.pick(9, 14)), m.counted(m.at_chain(m.work("dc", 1), 4)), m.to_end(m.work("dc", 1))};
  case 3:
    return {m.ring(), m.sc(chance.pick(6, 12))};
  default:
    return random_oval(m, chance);
  }
}

/// Two parts of rounds by chance with every act of the tree: legs that are joined, or a second part in the
/// loops that the first left free.
inline pattern::Tree random_deep(std::uint32_t seed) {
  Chance chance(seed);
  Maker m;
  const auto makes = [&m] {
    return pattern::effect_of(m.tree.nodes, m.tree.rounds.back().body, m.tree.kinds).makes;
  };
  std::uint32_t open = 0;
  for (const char* name : {"Burr", "Stalk"}) {
    m.part(name);
    m.round(random_start(m, chance));
    open = makes();
    m.round({m.blo({m.sc(open)})});
    pattern::Open edge{open, 0, false};
    for (std::uint32_t i = chance.pick(1, 4); i > 0; --i) {
      const bool spaces = edge.spaces > 0 && !edge.carried && chance.pick(0, 1) == 0;
      m.round(spaces
                  ? random_space_round(m, chance)
                  : random_work_round(m, chance, static_cast<std::uint32_t>(edge.stitches) - edge.carried));
      const pattern::Effect effect =
          pattern::effect_of(m.tree.nodes, m.tree.rounds.back().body, m.tree.kinds);
      const pattern::Outcome out = pattern::outcome(effect, edge);
      edge = {out.makes, out.spaces, out.carries};
    }
    if (chance.pick(0, 1) == 0) m.place(pattern::What::change).yarn = 2;
  }
  if (chance.pick(0, 1) == 0) {
    m.round({m.ch(3), m.part_edge(m.tree.parts[1].first_round - 1), m.sc_around()});
  } else {
    m.part("Frill");
    m.round({m.free_loops(0, stitch::front), m.to_end(m.inc(1))});
  }
  return m.tree;
}

/// An acorn of the Forest floor: a nut with a closing, and a cap with a back-loop round and a range of even
/// rounds.
inline pattern::Tree acorn() {
  Maker maker;
  maker.tree.title = "Acorn";
  maker.part("Nut");
  add_rounds(maker, {6, 12, 18, 24});
  maker.rounds(5, 9, {maker.sc_around()}, 24);
  maker.round({maker.repeat(6, {maker.sc(2), maker.dec(1)})}, 18);
  maker.round({maker.repeat(6, {maker.sc(1), maker.dec(1)})}, 12);
  maker.round({maker.dec(6)}, 6);
  maker.gather();
  maker.part("Cap");
  add_rounds(maker, {6, 12, 18, 24, 30});
  maker.round({maker.blo({maker.sc_around()})}, 30);
  maker.rounds(7, 8, {maker.sc_around()}, 30);
  maker.place(pattern::What::cut);
  return maker.tree;
}

} // namespace sample
