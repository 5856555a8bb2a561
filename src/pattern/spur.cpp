#include "pattern/spur.hpp"

#include "pattern/effect.hpp"

#include <algorithm>
#include <optional>

namespace whorl::pattern {

namespace {

/// Chains and what goes back along them, among the pieces of one list.
struct Spur {
  std::uint32_t chains = 0;
  std::vector<stitch::StitchKind> back;
  NodeId last = no_node; ///< its last piece
  bool whole = false;    ///< every chain is worked into
};

class Taking {
public:
  explicit Taking(Building& b) : b_(b), nodes_(b.reading.nodes) {}

  /// In a list and the passages in it; `worked`: something of the round stands before.
  void take(NodeId parent, bool worked) {
    for (NodeId id = nodes_[parent].child; id != no_node; id = nodes_[id].next) {
      const auto spur = spur_at(id);
      if (spur && (worked || goes_on(*spur, nodes_[parent]))) put(id, *spur);
      worked = worked || works(id);
      if (nodes_[id].child == no_node) continue;
      take(id, worked);
      open_brackets_of_spur(id);
      worked = true;
    }
  }

private:
  const stitch::StitchKind& kind_of(NodeId id) const {
    const stitch::KindId kind = nodes_[id].work.kind;
    const bool made = kind >= b_.reading.first_new_kind;
    return made ? b_.reading.new_kinds[kind - b_.reading.first_new_kind] : b_.reader.kinds.known[kind];
  }

  bool is(NodeId id, Act act) const {
    return id != no_node && nodes_[id].kind == NodeKind::work && nodes_[id].work.act == act;
  }

  bool is_stitch(NodeId id) const { return is(id, Act::stitch) && kind_of(id).takes == 1; }

  /// "[Ch 4, sc back along it], sc in next 5": brackets round nothing but a spur repeat nothing.
  void open_brackets_of_spur(NodeId repeat) {
    const NodeId only = nodes_[repeat].child;
    if (nodes_[repeat].kind == NodeKind::repeat && nodes_[only].next == no_node && is(only, Act::stitch) &&
        stitch::is_picot(kind_of(only)) && nodes_[repeat].work.to_end)
      nodes_[repeat].work = {};
  }

  /// A stitch of the round, or the ring that it is worked into.
  bool works(NodeId id) const {
    if (is(id, Act::stitch)) return kind_of(id).takes > 0 && nodes_[id].work.where != Where::chain;
    return is(id, Act::ring) || nodes_[id].kind == NodeKind::reference;
  }

  /// One plain stitch in each of some places that the words before it lead to.
  bool goes_along(NodeId id) const {
    if (!is_stitch(id)) return false;
    const Work& work = nodes_[id].work;
    const bool leads = work.where == Where::next || work.where == Where::last;
    return leads && work.into == Into::loops && work.loops == 0 && work.in_one == 1 &&
           stitch::shape_of(kind_of(id)).legs == 1;
  }

  bool names_chain(NodeId id) const {
    return std::find(b_.along_chain.begin(), b_.along_chain.end(), id) != b_.along_chain.end();
  }

  /// The first stitch back, behind the chains and perhaps a turn.
  NodeId first_back(NodeId chains) const {
    NodeId id = nodes_[chains].next;
    while (is(id, Act::turn)) id = nodes_[id].next;
    if (!is_stitch(id) || nodes_[id].work.where != Where::chain) return no_node;
    const Work& work = nodes_[id].work;
    return work.nth > 1 && work.nth <= nodes_[chains].work.times && work.in_one == 1 && work.times == 1 &&
                   !work.counts
               ? id
               : no_node;
  }

  /// "Sl st into the same st": the end of the chain is fastened where it began.
  bool closes(NodeId id) const {
    return is_stitch(id) && kind_of(id).name == "sl st" && nodes_[id].work.where == Where::same &&
           nodes_[id].work.times == 1;
  }

  std::optional<Spur> spur_at(NodeId id) const {
    if (!is(id, Act::stitch) || !is_chain(kind_of(id)) || nodes_[id].work.counts) return std::nullopt;
    const NodeId first = first_back(id);
    if (first == no_node) return std::nullopt;
    Spur spur{nodes_[id].work.times, {kind_of(first)}, first};
    Spur named = spur; // up to the last piece that says it goes into a chain
    const std::size_t room = spur.chains - nodes_[first].work.nth + 1U;
    spur.whole = room == 1;
    for (NodeId next = nodes_[first].next; !spur.whole && goes_along(next); next = nodes_[next].next) {
      const Work& work = nodes_[next].work;
      if (work.to_end && !names_chain(next)) break;
      const std::size_t left = room - spur.back.size(), many = work.to_end ? left : work.times;
      if (many > left) break;
      spur.back.insert(spur.back.end(), many, kind_of(next));
      spur.last = next;
      spur.whole = many == left;
      if (names_chain(next)) named = spur;
    }
    if (!spur.whole) spur = named;
    if (closes(nodes_[spur.last].next)) spur.last = nodes_[spur.last].next;
    return spur.chains <= most_chains ? std::optional(spur) : std::nullopt;
  }

  /// At the head of a line a chain begins a piece, unless all of it is worked into and the round goes on.
  bool goes_on(const Spur& spur, const Node& parent) const {
    const NodeId next = nodes_[spur.last].next;
    if (parent.kind == NodeKind::repeat && next == no_node) return spur.whole;
    const bool to_end = nodes_[spur.last].work.to_end; // a first row
    if (!spur.whole || to_end || next == no_node || nodes_[next].kind != NodeKind::work) return false;
    const Where where = nodes_[next].work.where;
    return works(next) && (where == Where::next || where == Where::same) && !names_chain(next);
  }

  void put(NodeId id, const Spur& spur) {
    Kinds kinds{b_.reader.kinds.known, b_.reading.new_kinds};
    Node& node = nodes_[id];
    node.span.end = nodes_[spur.last].span.end;
    node.next = nodes_[spur.last].next;
    const int chains = static_cast<int>(spur.chains);
    const bool closed = spur.back.size() == 1 && spur.back.front().name == "sl st";
    const auto kind = kinds.add(closed ? stitch::picot(chains) : stitch::spur(chains, spur.back));
    node.work = {.yarn = node.work.yarn, .kind = kind};
    b_.reading.new_kinds = kinds.made;
  }

  static constexpr std::uint32_t most_chains = 40;

  Building& b_;
  std::vector<Node>& nodes_;
};

} // namespace

void take_spurs(Building& b) { Taking(b).take(b.reading.body, false); }

} // namespace whorl::pattern
