#include "whorl_content.hpp"

#include "pattern/caution.hpp"

#include <algorithm>

namespace whorl {
namespace {

/// The sorts of things, each once, as a sentence begins: "Safety eyes, buttons".
std::string list_of(const std::vector<Caution>& cautions) {
  std::vector<std::string> sorts;
  for (const Caution& caution : cautions)
    if (std::find(sorts.begin(), sorts.end(), caution.what) == sorts.end()) sorts.push_back(caution.what);
  std::string list;
  for (const std::string& sort : sorts) list += (list.empty() ? "" : ", ") + sort;
  if (!list.empty() && list.front() >= 'a' && list.front() <= 'z') list.front() -= 'a' - 'A';
  return list;
}

} // namespace

std::vector<Caution> cautions_of(const pattern::Source& source, const pattern::Tree& tree) {
  std::vector<Caution> faces;
  for (const pattern::Caution& caution : pattern::cautions(source, tree)) {
    const pattern::Position at = source.position(caution.span.begin);
    faces.push_back({caution.what, at.line, at.column, source.length(caution.span),
                     std::string(source.at(caution.span))});
  }
  return faces;
}

std::string caution_of(const std::vector<Caution>& cautions) {
  if (cautions.empty()) return "";
  return drawing::say(wording_for("en"), "caution", {list_of(cautions)});
}

} // namespace whorl
