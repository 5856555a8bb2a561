#include "writing/begun_words.hpp"

namespace whorl::writing {
namespace {

using pattern::Act;
using pattern::Node;
using pattern::NodeId;
using pattern::Tree;
using Words = std::optional<std::string>;

/// The first thing that a part does, if it is to open a round of another; nullptr: it begins otherwise.
const Node* opening_of(const Tree& tree, std::uint32_t part) {
  if (part >= tree.parts.size() || tree.parts[part].first_round >= tree.rounds.size()) return nullptr;
  const NodeId body = tree.rounds[tree.parts[part].first_round].body;
  const NodeId first = body < tree.nodes.size() ? tree.nodes[body].child : pattern::no_node;
  if (first >= tree.nodes.size()) return nullptr;
  const Node& node = tree.nodes[first];
  const bool opens = node.kind == pattern::NodeKind::work && node.work.act == Act::free_loops;
  return opens && node.round < tree.rounds.size() ? &node : nullptr;
}

/// What the part is called whose round is opened.
std::string owner_of(const Tree& tree, std::uint32_t round, const Tongue& tongue) {
  return round < tree.rounds.size() ? tongue.named(tree.parts[tree.rounds[round].part].name) : std::string();
}

} // namespace

Words joined_in_loop(const Tree& tree, const pattern::Work& opened, std::uint32_t round,
                     const std::string& number, const Tongue& tongue) {
  const char* const side = opened.loops == stitch::front  ? "front"
                           : opened.loops == stitch::back ? "back"
                                                          : nullptr;
  if (side == nullptr) return std::nullopt;
  const std::string id = std::string("say-join-") + side + "-loop", owner = owner_of(tree, round, tongue);
  const std::vector<std::string> with{std::to_string(opened.nth), number, owner};
  return tongue.sentence(owner.empty() ? id : id + "-of", with);
}

Words joined_at_edge(const Tree& tree, std::uint32_t part, const Tongue& tongue) {
  const Node* const opening = opening_of(tree, part);
  const std::string owner = opening == nullptr ? "" : owner_of(tree, opening->round, tongue);
  if (owner.empty() || !is_said_above(opening->work)) return std::nullopt;
  if (opening->work.nth != 0)
    return tongue.sentence("say-join-stitch", {std::to_string(opening->work.nth), owner});
  const bool row = tree.rounds[opening->round].kind == pattern::RoundKind::row;
  return tongue.sentence(row ? "say-join-last-row" : "say-join-last-round", {owner});
}

Words held_in_words(const Tree& tree, std::uint32_t part, const Tongue& tongue) {
  const Node* const opening = opening_of(tree, part);
  const std::string owner = opening == nullptr ? "" : owner_of(tree, opening->round, tongue);
  if (owner.empty() || tree.parts[part].hold == pattern::Hold::unsaid) return std::nullopt;
  return tongue.sentence(tree.parts[part].hold == pattern::Hold::start_up ? "say-hold-start-up"
                                                                          : "say-hold-start-down",
                         {owner});
}

bool is_said_above(const pattern::Work& work) { return work.act == Act::free_loops && work.loops == 0; }

} // namespace whorl::writing
