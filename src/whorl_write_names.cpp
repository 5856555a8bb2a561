#include "whorl_write.hpp"

#include "words/fold.hpp"
#include "words/letters.hpp"

#include <algorithm>
#include <set>

namespace whorl {
namespace {

using writing::alternatives;
using writing::Names;

std::string in_small(std::string_view text) { return words::fold(text).text; }

/// The texts of both languages whose ids begin so.
writing::Phrases phrases_of(const Writing& w, std::string_view head) {
  writing::Phrases all;
  for (auto at = w.from_texts.lower_bound(head); at != w.from_texts.end(); ++at) {
    if (std::string_view(at->first).substr(0, head.size()) != head) break;
    const auto other = w.texts.find(at->first);
    if (other != w.texts.end()) all.emplace_back(at->second, other->second);
  }
  return all;
}

/// Names of things: the first is that of several, where there is another of one, which stands second; any
/// more are of one.
void add_things(Names& names, const writing::Phrases& phrases) {
  for (const auto& [known, written] : phrases) {
    const std::vector<std::string> from = alternatives(known), to = alternatives(written);
    for (std::size_t i = 0; i < from.size(); ++i)
      names.emplace(in_small(from[i]),
                    (i > 0 || from.size() == 1 || from[0] == from[1]) && to.size() > 1 ? to[1] : to[0]);
  }
}

void add_colours(Names& names, const Writing& w) {
  for (const auto& [known, written] : phrases_of(w, "say-colour-"))
    for (const std::string& name : alternatives(known))
      names.insert_or_assign(in_small(name), alternatives(written).front());
}

} // namespace

std::string with_capitals_of(std::string_view typed, const std::string& name) {
  std::string capitals;
  bool any = false, all = true;
  for (std::size_t at = 0; at < typed.size(); at += words::letter_at(typed, at).length) {
    const char32_t c = words::letter_at(typed, at).code;
    any = any || words::lower(c) != c;
    all = all && words::upper(c) == c;
  }
  bool first = true;
  for (std::size_t at = 0; at < name.size();) {
    const words::Letter letter = words::letter_at(name, at);
    words::append_utf8(capitals, (all && any) || (first && any) ? words::upper(letter.code) : letter.code);
    first = false;
    at += letter.length;
  }
  return capitals;
}

namespace {

std::string text_of(const drawing::Wording& texts, const char* id) {
  const auto found = texts.find(id);
  return found == texts.end() ? std::string() : found->second;
}

std::string with_first(std::string form, const std::string& first) {
  if (const std::size_t at = form.find("{1}"); at != std::string::npos) form.replace(at, 3, first);
  if (const std::size_t at = form.find("{2}"); at != std::string::npos) form.replace(at, 3, "{1}");
  return form;
}

/// "Brown wool", "in brown": a sentence for each colour, so that nothing else is taken for one.
void add_coloured(writing::Phrases& all, const Writing& w, const char* id) {
  const std::string written = text_of(w.texts, id);
  if (written.empty()) return;
  for (const std::string& form : alternatives(text_of(w.from_texts, id)))
    for (const auto& [known, other] : phrases_of(w, "say-colour-"))
      for (const std::string& colour : alternatives(known))
        all.emplace_back(with_first(form, colour),
                         with_first(alternatives(written).front(), alternatives(other).front()));
}

} // namespace

Names thing_names(const Writing& w) {
  Names names;
  if (w.same_language) return names;
  add_things(names, phrases_of(w, "say-noun-"));
  add_things(names, phrases_of(w, "say-thing-"));
  add_colours(names, w);
  return names;
}

writing::Phrases stock_sentences(const Writing& w) {
  if (w.same_language) return {};
  writing::Phrases all;
  for (auto& [known, written] : phrases_of(w, "say-stock-")) {
    const bool of_colour = known == text_of(w.from_texts, "say-stock-coloured") ||
                           known == text_of(w.from_texts, "say-stock-in-colour");
    if (!of_colour) all.emplace_back(std::move(known), std::move(written));
  }
  for (const char* id : {"say-stock-coloured", "say-stock-in-colour"}) add_coloured(all, w, id);
  return all;
}

std::map<std::string, std::string> part_names(const Writing& w) {
  std::map<std::string, std::string> names;
  if (w.same_language) return names;
  const writing::Tongue tongue(w.to, w.say, false);
  const writing::Phrasebook book({}, thing_names(w), w.from, tongue);
  std::map<std::string, std::string> by_written;
  std::set<std::string> twice;
  for (const pattern::Part& part : w.pattern.tree.parts) {
    const auto known = w.kept_names.count(part.name) > 0 ? std::nullopt : book.name(part.name);
    if (!known || part.name.empty()) continue;
    const auto [at, is_new] = by_written.emplace(*known, part.name);
    if (!is_new && at->second != part.name) twice.insert(*known);
    names[part.name] = *known;
  }
  for (auto at = names.begin(); at != names.end();)
    if (twice.count(at->second) > 0)
      at = names.erase(at);
    else
      at->second = with_capitals_of(at->first, at->second), ++at;
  return names;
}

namespace {

/// Whether everybody who writes the language takes an abbreviation for something else: "mb" in Italian, "M"
/// in German. Other letters are what a list makes of them.
bool means_another(const words::Vocabulary& to, const pattern::OwnName& own) {
  const std::string folded = in_small(own.name);
  return std::any_of(to.phrases.begin(), to.phrases.end(), [&](const words::PhraseEntry& entry) {
    if (entry.phrase != folded || entry.means >= to.concepts.size()) return false;
    const words::ConceptEntry& means = to.concepts[entry.means];
    return means.name != own.means && (own.name.size() > 1 || means.sort == words::ConceptClass::place);
  });
}

} // namespace

std::vector<pattern::OwnName> own_names(const Writing& w) {
  if (w.keeps == Writing::Keeps::none || w.form == WriteForm::full) return {};
  std::vector<pattern::OwnName> names;
  for (const pattern::OwnName& own : w.pattern.tree.own_names)
    if (!means_another(w.to, own) && (own.in_one == 1 || w.keeps == Writing::Keeps::all))
      names.push_back(own);
  return names;
}

Names names_of(const Writing& w) {
  Names names;
  if (w.same_language) return names;
  const std::map<std::string, std::string> translated = part_names(w);
  for (const pattern::Part& part : w.pattern.tree.parts) {
    const auto known = translated.find(part.name);
    names.emplace(in_small(part.name), known != translated.end() ? known->second : "");
  }
  add_colours(names, w);
  return names;
}

} // namespace whorl
