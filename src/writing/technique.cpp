#include "writing/technique.hpp"

namespace whorl::writing {
namespace {

using pattern::How;
using pattern::Technique;

bool is_everywhere(const Technique& technique) {
  return technique.part == pattern::every_part && technique.from == 0;
}

std::string in_rounds(const Technique& technique, const Say& say) {
  const std::string from = std::to_string(technique.from), to = std::to_string(technique.to);
  if (technique.from == 0) return {};
  if (technique.to == 0) return say("technique-from-round", {from});
  return say(technique.from == technique.to ? "technique-in-round" : "technique-in-rounds", {from, to});
}

/// Whether a stitch's own moves show it.
bool shows(const Technique& technique) {
  return pattern::is_of_moves(technique.how) && is_everywhere(technique);
}

std::vector<Technique> holding(const Used& used, const pattern::Tree& tree) {
  std::vector<Technique> all;
  for (const std::size_t i : pattern::holding(tree.techniques, used.kind, used.in_one, tree.kinds))
    all.push_back(tree.techniques[i]);
  return all;
}

} // namespace

std::string scope_of(const Technique& technique, const pattern::Tree& tree, const Say& say) {
  const std::string rounds = in_rounds(technique, say);
  const bool named = technique.part < tree.parts.size() && !tree.parts[technique.part].name.empty();
  if (!named) return rounds;
  const std::string part = say("technique-in-part", {tree.parts[technique.part].name});
  return rounds.empty() ? part : say("technique-in-part-rounds", {part, rounds});
}

std::string technique_fact(const Used& used, const pattern::Tree& tree, const Say& say) {
  std::string all;
  for (const Technique& technique : holding(used, tree)) {
    if (shows(technique)) continue;
    std::string words = say("technique-" + std::string(pattern::word_of(technique.how)), {});
    const std::string scope = scope_of(technique, tree, say);
    if (!scope.empty()) words = say("technique-in", {words, scope});
    all = all.empty() ? words : say("technique-with", {all, words});
  }
  return all.empty() ? all : say("describe-technique", {all});
}

OtherMoves other_moves(const Used& used, const pattern::Tree& tree) {
  OtherMoves others;
  for (const Technique& technique : holding(used, tree)) {
    if (!shows(technique)) continue;
    if (technique.how == How::yarn_under) others.yarn = "-under";
    if (technique.how == How::between_legs) others.hook = "-between";
  }
  return others;
}

} // namespace whorl::writing
