#include "whorl_content.hpp"
#include "whorl_json.hpp"

#include "writing/technique.hpp"

namespace whorl {

std::vector<std::string> technique_scopes(const pattern::Tree& tree, const drawing::Wording& wording) {
  const writing::Say say = [&wording](std::string_view id, const std::vector<std::string>& with) {
    return drawing::say(wording, id, with);
  };
  std::vector<std::string> scopes;
  for (const pattern::Technique& technique : tree.techniques)
    scopes.push_back(writing::scope_of(technique, tree, say));
  return scopes;
}

Json techniques_json(const Pattern::Content& pattern) {
  static constexpr const char* sorts[] = {"all", "stitch", "increases", "decreases"};
  Json all = Json::array();
  for (const pattern::Technique& technique : pattern.tree.techniques) {
    Json one = {{"line", pattern.source.position(technique.span.begin).line},
                {"what", std::string(pattern::word_of(technique.how))},
                {"of", sorts[static_cast<int>(technique.of)]}};
    if (technique.kind < pattern.tree.kinds.size()) one["stitch"] = pattern.tree.kinds[technique.kind].name;
    if (technique.part < pattern.tree.parts.size()) one["part"] = pattern.tree.parts[technique.part].name;
    if (technique.from > 0)
      one["rounds"] = {Json(technique.from), technique.to > 0 ? Json(technique.to) : Json(nullptr)};
    all.push_back(one);
  }
  return all;
}

} // namespace whorl
