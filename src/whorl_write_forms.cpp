#include "whorl_write.hpp"

#include "pattern/own_list.hpp"
#include "words/fold.hpp"
#include "words/telling.hpp"
#include "writing/abbreviations.hpp"
#include "writing/name.hpp"
#include "writing/placing_words.hpp"
#include "writing/word_for_word.hpp"

#include <algorithm>

namespace whorl {
namespace {

using writing::Passage;
using writing::Tongue;
using Sort = Passage::Sort;
using Words = std::optional<std::string>;

std::string in_small(std::string_view text) { return words::fold(text).text; }

/// The words of an id that are parted by bars.
std::vector<std::string> alternatives(const std::string& text) {
  std::vector<std::string> all{""};
  for (const char c : text)
    if (c == '|')
      all.emplace_back();
    else
      all.back() += c;
  return all;
}

/// What colours are called, and the parts of the pattern, which keep their names.
writing::Names names_of(const Writing& w) {
  constexpr const char* colours[] = {"amber",  "beige",  "black",  "blue",   "brown",   "chestnut", "cream",
                                     "gold",   "green",  "grey",   "moss",   "mustard", "oat",      "olive",
                                     "orange", "pink",   "purple", "red",    "rose",    "russet",   "rust",
                                     "sand",   "silver", "violet", "walnut", "white",   "yellow"};
  writing::Names names;
  if (w.same_language) return names;
  for (const pattern::Part& part : w.pattern.tree.parts) names.emplace(in_small(part.name), "");
  for (const char* colour : colours) {
    const std::string id = std::string("say-colour-") + colour;
    if (!writing::has_words(w.from_say, id) || !writing::has_words(w.say, id)) continue;
    for (const std::string& name : alternatives(w.from_say(id, {})))
      names.insert_or_assign(in_small(name), alternatives(w.say(id, {})).front());
  }
  return names;
}

/// Forms of the passages of one pattern.
class Forms {
public:
  explicit Forms(const Writing& writing)
      : w_(writing), tree_(writing.pattern.tree), source_(writing.pattern.source),
        brief_(w_.to, w_.say, false, names_of(w_)), full_(w_.to, w_.say, true, names_of(w_)) {}

  Draft draft(Passage passage) {
    Draft draft;
    draft.passage = std::move(passage);
    const std::string typed = typed_of(draft.passage);
    if (const auto filled = w_.filled.find(typed); filled != w_.filled.end())
      draft.forms.push_back(filled->second);
    draft.filled = !draft.forms.empty();
    add_forms(draft);
    // What the language would write as it is typed needs no other form behind it.
    const auto alike = std::find(draft.forms.begin(), draft.forms.end(), typed);
    draft.typed = alike == draft.forms.end();
    if (draft.typed)
      draft.forms.push_back(typed);
    else
      draft.forms.erase(alike + 1, draft.forms.end());
    return draft;
  }

  /// A passage that the pattern does not have, before the text at `at`.
  Draft added(std::uint32_t at, Sort sort, std::vector<std::string> forms) const {
    Draft draft;
    draft.passage.sort = sort;
    draft.passage.span = {at, at};
    draft.forms = std::move(forms);
    draft.typed = false;
    return draft;
  }

  /// The line that states the language, or the terms.
  std::string language_line() const {
    const std::string name = w_.say("language-name", {});
    const bool known = words::language_called(in_small(name)) == w_.to.language;
    const std::string said = known ? name : w_.to.language;
    if (writing::has_words(w_.say, "write-language")) return w_.say("write-language", {said});
    return "Language: " + said;
  }

  /// "Abbreviations: sc = single crochet, inc = …", of what the pattern uses; "": it uses none, or all stands in
  /// full words.
  std::string abbreviations() const {
    if (w_.form == WriteForm::full) return {};
    const std::string list = writing::abbreviations_of(tree_, brief_);
    if (list.empty()) return list;
    const bool named = writing::has_words(w_.say, "write-abbreviations");
    return (named ? w_.say("write-abbreviations", {}) : w_.from_say("write-abbreviations", {})) + ": " + list;
  }

private:
  std::string typed_of(const Passage& passage) const { return std::string(source_.at(passage.span)); }

  std::string word_for_word(std::string_view text) const {
    return writing::word_for_word(text, w_.from, brief_).text;
  }

  void add_forms(Draft& draft) const {
    const Passage& passage = draft.passage;
    switch (passage.sort) {
    case Sort::round:
      draft.work = true;
      return add_round_forms(draft, w_, brief_, full_);
    case Sort::placing:
      draft.work = true;
      return add_placing(draft);
    case Sort::heading:
      draft.prose = w_.same_language;
      return add_heading(draft);
    case Sort::header:
      draft.prose = true;
      return add_header(draft);
    case Sort::list:
      draft.prose = w_.same_language;
      return add_list(draft);
    case Sort::language:
      return draft.forms.push_back(language_line());
    case Sort::note:
    case Sort::prose:
      draft.prose = w_.same_language;
      return;
    }
  }

  /// A sentence of the language; where the author says more than that, her own words stand behind it.
  void add_placing(Draft& draft) const {
    const pattern::Placing& placing = tree_.placings[draft.passage.placings.front()];
    const std::string_view typed = source_.at(draft.passage.span);
    // What links it to the sentence before is no word of it.
    const std::size_t begin =
        std::max(draft.passage.span.begin, placing.span.begin) - draft.passage.span.begin;
    const std::string_view link = typed.substr(0, std::min<std::size_t>(begin, typed.size()));
    const bool links = writing::word_for_word(link, w_.from, brief_).whole;
    std::string_view own = typed.substr(links ? link.size() : 0);
    own.remove_prefix(std::min(own.find_first_not_of(" .,;"), own.size()));
    const std::string lead = begin > 0 ? " " : "";
    const writing::WordForWord words = writing::word_for_word(typed, w_.from, brief_);
    const bool whole = writing::word_for_word(own, w_.from, brief_).whole;
    const Words sentence = draft.passage.placings.size() == 1 && !w_.same_language
                               ? writing::placing_in_words(tree_, placing, brief_)
                               : std::nullopt;
    if (sentence && whole) draft.add(lead + *sentence, true);
    if (sentence && !whole)
      for (const std::string& rest : {" [" + std::string(own) + "]", std::string()})
        draft.add(lead + *sentence + rest, false);
    draft.add(words.text, words.whole);
  }

  void add_heading(Draft& draft) const {
    const pattern::Part& part = tree_.parts[draft.passage.part];
    if (w_.same_language || part.make == 1) return;
    const std::string number = std::to_string(part.make);
    const std::string note = part.note.empty() || typed_of(draft.passage).find(part.note) == std::string::npos
                                 ? std::string()
                                 : ", " + part.note;
    draft.forms.push_back(part.name + " (" + w_.say("make", {number}) + ")" + note);
    draft.forms.push_back(part.name + " (x" + number + ")" + note);
  }

  /// What a header is called in the other language, or "".
  std::string header_name(std::string_view name) const {
    for (const char* id : {"yarn", "hook", "gauge", "materials", "size", "note", "level"}) {
      const std::string key = std::string("write-header-") + id;
      if (!writing::has_words(w_.from_say, key) || !writing::has_words(w_.say, key)) continue;
      for (const std::string& known : alternatives(w_.from_say(key, {})))
        if (in_small(known) == in_small(name)) return alternatives(w_.say(key, {})).front();
    }
    return {};
  }

  void add_header(Draft& draft) const {
    const std::string typed = typed_of(draft.passage);
    const pattern::Header& header = tree_.headers[draft.passage.header];
    const std::size_t mark = typed.find_first_of(":=");
    if (mark == std::string::npos) return;
    if (const std::string name = header_name(header.name); !name.empty() && !w_.same_language)
      draft.forms.push_back(name + brief_.named(typed.substr(mark)));
    if (explains_own(typed))
      draft.forms.push_back(typed.substr(0, mark + 1) + " " + word_for_word(typed.substr(mark + 1)));
  }

  bool explains_own(std::string_view text) const {
    return std::any_of(tree_.kinds.begin(), tree_.kinds.end(), [text](const stitch::StitchKind& kind) {
      return kind.own && text.find(kind.name) != std::string_view::npos;
    });
  }

  /// The list anew, and the stitches of the pattern's own, which keep their names.
  void add_list(Draft& draft) const {
    const pattern::OwnList list = pattern::find_own_list(source_, w_.from);
    std::string own;
    for (const pattern::Definition& definition : list.definitions) {
      if (definition.name.begin < draft.passage.span.begin || definition.value.end > draft.passage.span.end)
        continue;
      const std::string name(source_.at(definition.name));
      if (!explains_own(name)) continue;
      own += "\n" + name + (definition.equals ? " = " : ": ") + word_for_word(source_.at(definition.value));
    }
    const std::string brief = abbreviations();
    if (!brief.empty()) draft.forms.push_back(brief + own);
    draft.forms.push_back(own.empty() ? own : own.substr(1));
  }

  const Writing& w_;
  const pattern::Tree& tree_;
  const pattern::Source& source_;
  Tongue brief_, full_;
};

} // namespace

std::vector<Draft> drafts_of(const Writing& writing) {
  Forms forms(writing);
  const pattern::Tree& tree = writing.pattern.tree;
  std::vector<Draft> drafts;
  bool language = false, list = false;
  for (Passage& passage : writing::passages_of(writing.pattern.source, tree, writing.from)) {
    language = language || passage.sort == Sort::language;
    list = list || passage.sort == Sort::list;
    drafts.push_back(forms.draft(std::move(passage)));
  }
  const auto first = [&drafts](std::initializer_list<Sort> sorts) {
    return std::find_if(drafts.begin(), drafts.end(), [sorts](const Draft& draft) {
      return std::find(sorts.begin(), sorts.end(), draft.passage.sort) != sorts.end();
    });
  };
  if (!list) {
    const auto at = first({Sort::heading, Sort::round});
    const std::string text = forms.abbreviations();
    if (at != drafts.end() && !text.empty())
      drafts.insert(at, forms.added(at->passage.span.begin, Sort::list, {text + "\n\n", ""}));
  }
  if (!language) {
    const auto at = first({Sort::header, Sort::list, Sort::heading, Sort::round});
    if (at != drafts.end())
      drafts.insert(at,
                    forms.added(at->passage.span.begin, Sort::language, {forms.language_line() + "\n\n"}));
  }
  return drafts;
}

} // namespace whorl
