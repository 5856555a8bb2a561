#include "whorl_content.hpp"

#include "pattern/caution.hpp"
#include "words/letters.hpp"

#include <algorithm>

namespace whorl {
namespace {

/// As a sentence begins.
std::string with_capital(const std::string& text) {
  if (text.empty()) return text;
  const words::Letter first = words::letter_at(text, 0);
  std::string out;
  words::append_utf8(out, words::upper(first.code));
  return out + text.substr(first.length);
}

/// The sorts of things, each once, as a sentence begins: "Safety eyes, buttons".
std::string list_of(const std::vector<Caution>& cautions, std::string_view language) {
  std::vector<std::string> sorts;
  for (const Caution& caution : cautions) {
    const std::string sort = pattern::thing_in(language, caution.thing).value_or(caution.what);
    if (std::find(sorts.begin(), sorts.end(), sort) == sorts.end()) sorts.push_back(sort);
  }
  std::string list;
  for (const std::string& sort : sorts) list += (list.empty() ? "" : ", ") + sort;
  return with_capital(list);
}

} // namespace

std::vector<Caution> cautions_of(const pattern::Source& source, const pattern::Tree& tree) {
  std::vector<Caution> faces;
  for (const pattern::Caution& caution : pattern::cautions(source, tree)) {
    const pattern::Position at = source.position(caution.span.begin);
    faces.push_back({caution.what, caution.thing, at.line, at.column, source.length(caution.span),
                     std::string(source.at(caution.span))});
  }
  return faces;
}

std::string caution_of(const std::vector<Caution>& cautions, std::string_view language) {
  if (cautions.empty()) return "";
  return drawing::say(wording_for(language), "caution", {list_of(cautions, language)});
}

} // namespace whorl
