#include "fabric/named.hpp"

#include "fabric/need.hpp"
#include "fabric/tally.hpp"
#include "pattern/effect.hpp"

#include <algorithm>
#include <map>

namespace whorl::fabric {
namespace {

using pattern::Node;
using pattern::NodeId;
using pattern::NodeKind;

using Named = std::map<stitch::KindId, std::uint64_t>;

std::uint64_t places_each(const pattern::Tree& tree, const Node& node) {
  const bool stitch = node.kind == NodeKind::work && node.work.act == pattern::Act::stitch;
  if (!stitch || node.work.kind >= tree.kinds.size()) return 1;
  return static_cast<std::uint64_t>(std::max(tree.kinds[node.work.kind].takes, 0));
}

void add(const pattern::Tree& tree, NodeId first, std::uint64_t times, int depth, Named& named) {
  if (depth > deepest) return;
  for (NodeId id = first; id != pattern::no_node; id = tree.nodes[id].next) {
    const Node& node = tree.nodes[id];
    const std::uint64_t each = node.work.to_end ? times : std::min(beyond, times * node.work.times);
    if (node.work.named != stitch::no_kind) {
      std::uint64_t& count = named[node.work.named];
      count = std::min(beyond, count + each * places_each(tree, node));
    }
    if (node.kind != NodeKind::group) add(tree, node.child, each, depth + 1, named);
  }
}

std::vector<NamedPlaces> listed(const Named& named) {
  std::vector<NamedPlaces> places;
  for (const auto& [kind, count] : named) places.push_back(NamedPlaces{kind, count});
  return places;
}

} // namespace

std::vector<NamedPlaces> named_from(const pattern::Tree& tree, NodeId first) {
  Named named;
  add(tree, first, 1, 0, named);
  return listed(named);
}

std::vector<NamedPlaces> named_in_pass(const pattern::Tree& tree, const Node& node) {
  Named named;
  if (node.work.named != stitch::no_kind) named[node.work.named] = places_each(tree, node);
  if (node.kind != NodeKind::group) add(tree, node.child, 1, 0, named);
  return listed(named);
}

bool is_named(const std::vector<stitch::StitchKind>& kinds, stitch::KindId kind, stitch::KindId named) {
  if (kind == named || pattern::is_chain(kinds[kind])) return true;
  return is_of(kinds[kind], kinds[named]);
}

} // namespace whorl::fabric
