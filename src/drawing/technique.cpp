#include "drawing/technique.hpp"

#include <algorithm>

namespace whorl::drawing {
namespace {

using pattern::How;
using pattern::Of;
using pattern::Technique;

bool holds_in(const Technique& technique, std::uint32_t part) {
  return technique.part == pattern::every_part || technique.part == part;
}

bool is_of_sheet(const Copy& copy, const Technique& technique) {
  const auto& figures = copy.placement.figures;
  for (std::size_t i = 0; i < figures.size(); ++i)
    if (is_on_sheet(copy, i) && holds_in(technique, figures[i].part)) return true;
  return false;
}

std::string scope_of(const Copy& copy, std::size_t technique) {
  const auto& scopes = copy.text.technique_scopes;
  return technique < scopes.size() ? scopes[technique] : std::string();
}

} // namespace

std::vector<std::size_t> techniques_on(const Copy& copy) {
  std::vector<std::size_t> all;
  for (std::size_t i = 0; i < copy.tree.techniques.size(); ++i)
    if (is_of_sheet(copy, copy.tree.techniques[i])) all.push_back(i);
  return all;
}

std::string technique_words(const Copy& copy, std::size_t technique) {
  const std::string id = "technique-" + std::string(pattern::word_of(copy.tree.techniques[technique].how));
  const std::string what = say(copy.wording, id), scope = scope_of(copy, technique);
  return scope.empty() ? what : say(copy.wording, "technique-in", {what, scope});
}

std::string with_techniques(const Copy& copy, stitch::KindId kind, int in_one, std::string words) {
  const auto& all = copy.tree.techniques;
  for (const std::size_t i : pattern::holding(all, kind, in_one, copy.fabric.kinds))
    if (all[i].of != Of::all && is_of_sheet(copy, all[i]))
      words = say(copy.wording, "technique-with", {words, technique_words(copy, i)});
  return words;
}

std::string inside_out_words(const Copy& copy, std::size_t figure) {
  const std::uint32_t part = copy.placement.figures[figure].part;
  for (const Technique& technique : copy.tree.techniques)
    if (technique.how == How::inside_out && technique.of == Of::all && holds_in(technique, part))
      return say(copy.wording, "caption-inside-out");
  return {};
}

std::vector<std::string> part_techniques(const Copy& copy, std::uint32_t part) {
  std::vector<std::string> all;
  for (const Technique& technique : copy.tree.techniques)
    if (technique.of == Of::all && technique.from == 0 && holds_in(technique, part))
      all.push_back(say(copy.wording, "technique-" + std::string(pattern::word_of(technique.how))));
  return all;
}

} // namespace whorl::drawing
