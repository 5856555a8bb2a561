#include "whorl_write.hpp"

#include "pattern/hold.hpp"
#include "pattern/own_list.hpp"
#include "pattern/own_names.hpp"
#include "words/fold.hpp"
#include "words/telling.hpp"
#include "writing/abbreviations.hpp"
#include "writing/begun_words.hpp"
#include "writing/header_words.hpp"
#include "writing/name.hpp"
#include "writing/own_stitch_words.hpp"
#include "writing/placing_words.hpp"
#include "writing/said_wholly.hpp"
#include "writing/word_for_word.hpp"

#include <algorithm>

namespace whorl {
namespace {

using writing::alternatives;
using writing::Passage;
using writing::Tongue;
using Sort = Passage::Sort;
using Words = std::optional<std::string>;

std::string in_small(std::string_view text) { return words::fold(text).text; }

/// Forms of the passages of one pattern.
class Forms {
public:
  explicit Forms(const Writing& writing)
      : w_(writing), tree_(writing.pattern.tree), source_(writing.pattern.source),
        brief_(w_.to, w_.say, false, names_of(w_), own_names(w_)), usual_(w_.to, w_.say, false),
        typed_(w_.from, w_.from_say, false), full_(w_.to, w_.say, true, names_of(w_)), parts_(part_names(w_)),
        book_(stock_sentences(w_), all_names(), w_.from, tongue()) {}

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

  /// Passages of one sentence that the language has a sentence for are one.
  std::vector<Passage> joined(std::vector<Passage> passages) const {
    for (std::size_t i = 0; i + 1 < passages.size(); ++i)
      while (i + 1 < passages.size() && may_be_one(passages[i], passages[i + 1])) {
        Passage& one = passages[i];
        const Passage& next = passages[i + 1];
        one.span = words::cover(one.span, next.span);
        one.placings.insert(one.placings.end(), next.placings.begin(), next.placings.end());
        if (one.sort != Sort::placing && next.sort == Sort::placing) one.sort = Sort::placing;
        passages.erase(passages.begin() + static_cast<std::ptrdiff_t>(i) + 1);
      }
    return passages;
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

  /// "Abbreviations: sc = single crochet, inc = …", of what the pattern uses; "": it uses none, or all stands
  /// in full words.
  std::string abbreviations() const {
    if (w_.form == WriteForm::full) return {};
    const std::string list = writing::abbreviations_of(tree_, brief_, usual_);
    if (list.empty()) return list;
    const bool named = writing::has_words(w_.say, "write-abbreviations");
    return (named ? w_.say("write-abbreviations", {}) : w_.from_say("write-abbreviations", {})) + colon() +
           " " + list;
  }

private:
  const Tongue& tongue() const { return w_.form == WriteForm::full ? full_ : brief_; }

  /// Of things, colours and the pattern's parts.
  writing::Names all_names() const {
    writing::Names names = thing_names(w_);
    for (const pattern::Part& part : tree_.parts) {
      if (!part.name.empty() && !w_.same_language) names.emplace(in_small(part.name), part.name);
    }
    return names;
  }

  bool may_be_one(const Passage& a, const Passage& b) const {
    const auto is_talk = [](Sort sort) {
      return sort == Sort::note || sort == Sort::prose || sort == Sort::placing;
    };
    if (!is_talk(a.sort) || !is_talk(b.sort) ||
        source_.line_of(a.span.begin) != source_.line_of(b.span.begin))
      return false;
    return book_.piece(source_.at(words::cover(a.span, b.span))).has_value();
  }

  std::string typed_of(const Passage& passage) const { return std::string(source_.at(passage.span)); }

  std::string word_for_word(std::string_view text) const {
    return writing::word_for_word(text, w_.from, brief_).text;
  }

  void add_forms(Draft& draft) const {
    const Passage& passage = draft.passage;
    switch (passage.sort) {
    case Sort::round:
      draft.work = true;
      return add_round_forms(draft, w_, brief_, full_, book_);
    case Sort::placing:
      draft.work = true;
      return add_placing(draft);
    case Sort::heading:
      draft.prose = w_.same_language;
      return add_heading(draft);
    case Sort::header:
      draft.prose = w_.same_language;
      return add_header(draft);
    case Sort::list:
      draft.prose = w_.same_language;
      return add_list(draft);
    case Sort::language:
      return draft.forms.push_back(language_line());
    case Sort::note:
      draft.prose = w_.same_language;
      add_hold(draft);
      return add_stock(draft);
    case Sort::prose:
      draft.prose = w_.same_language;
      return add_stock(draft);
    }
  }

  /// How another part is held.
  void add_hold(Draft& draft) const {
    const pattern::Placing& placing = tree_.placings[draft.passage.placings.front()];
    const bool holds =
        pattern::hold_said(source_.at(draft.passage.span), w_.from) == tree_.parts[placing.part].hold;
    const Words words =
        holds && !w_.same_language ? writing::held_in_words(tree_, placing.part, tongue()) : std::nullopt;
    if (words) draft.add(*words, true);
  }

  /// A sentence that the language has for what is typed.
  void add_stock(Draft& draft) const {
    const std::string_view typed = source_.at(draft.passage.span);
    const bool whole_line = source_.at(source_.line(source_.line_of(draft.passage.span.begin))) == typed;
    if (const Words name = whole_line && !w_.same_language ? book_.name(typed) : std::nullopt) // "ASSEMBLY"
      return draft.add(with_capitals_of(typed, *name), true);
    const pattern::Span title = tree_.title_span;
    if (!title.empty() && title.begin == draft.passage.span.begin) return; // "Moss square": no colour
    if (const Words known = book_.text(typed)) return draft.add(*known, true);
    if (const Words partly = book_.text_partly(typed)) draft.add(*partly, false);
  }

  /// A sentence of the language; where the author says more than that, her own words stand behind it.
  void add_placing(Draft& draft) const {
    if (draft.passage.placings.empty()) return add_stock(draft);
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
    if (w_.same_language) return draft.add(word_for_word(typed), true);
    add_header_words(draft, std::string(typed)); // "Yarn: moss" changes to it
    if (const Words known = book_.text(own)) draft.add(lead + *known, true);
    Words sentence = draft.passage.placings.size() == 1 ? writing::placing_in_words(tree_, placing, tongue())
                                                        : std::nullopt;
    if (sentence && goes_on(draft.passage.span)) *sentence = without_stop(*sentence);
    const bool wholly = sentence && writing::is_said_wholly(tree_, placing, own, typed_, brief_);
    if (wholly) draft.add(lead + *sentence, true);
    if (!wholly && writing::may_be_a_name(placing)) return;
    for (const std::string& rest : {" [" + std::string(own) + "]", std::string()}) // the table has it
      if (sentence) draft.add(lead + *sentence + rest, false);
  }

  /// "…, 5 sts apart; they look cross."
  bool goes_on(pattern::Span span) const {
    const std::string_view text = source_.text();
    return span.end < text.size() && (text[span.end] == ',' || text[span.end] == ';');
  }

  static std::string without_stop(std::string text) {
    for (const std::string_view stop : {".", "\xE3\x80\x82"})
      if (text.size() > stop.size() && text.compare(text.size() - stop.size(), stop.size(), stop) == 0)
        text.resize(text.size() - stop.size());
    return text;
  }

  void add_heading(Draft& draft) const {
    const pattern::Part& part = tree_.parts[draft.passage.part];
    const auto known = parts_.find(part.name);
    draft.renamed = known != parts_.end();
    if (w_.same_language || (part.make == 1 && !draft.renamed)) return;
    const std::string number = std::to_string(part.make), name = draft.renamed ? known->second : part.name;
    const bool has_note = !part.note.empty() && typed_of(draft.passage).find(part.note) != std::string::npos;
    const Words note = has_note ? note_in_words(part.note) : Words("");
    const std::string behind = !has_note ? "" : ", " + note.value_or(part.note);
    const bool whole = note.has_value() && (draft.renamed || w_.same_language);
    if (part.make == 1) return draft.add(name + behind, whole);
    draft.add(name + " (" + w_.say("make", {number}) + ")" + behind, whole);
    draft.add(name + " (x" + number + ")" + behind, whole);
  }

  Words note_in_words(std::string_view note) const {
    const Words name = book_.name(note);
    return name ? name : book_.piece(note);
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
    add_header_words(draft, typed);
    const std::size_t mark = typed.find_first_of(":=");
    const std::string explained = typed.substr(0, std::min(mark, typed.size()));
    if (mark == std::string::npos || !explains_own(explained)) return;
    const std::string value = typed.substr(mark + 1);
    const std::string name = usual_in(explained).value_or(explained) + typed[mark] + " ";
    for (const bool square : {true, false})
      if (const auto made = own_explained(explained, value, square))
        draft.add(name + made->text, made->whole);
    const writing::WordForWord words = writing::word_for_word(value, w_.from, brief_);
    draft.add(name + words.text, words.whole);
  }

  /// How a stitch of the pattern's own is made, and what its author says of it besides, in brackets: square
  /// ones may be taken for the name of a part.
  std::optional<writing::WordForWord> own_explained(std::string_view name, std::string_view value,
                                                    bool square) const {
    if (w_.same_language) return std::nullopt;
    for (const stitch::StitchKind& kind : tree_.kinds) {
      if (!is_explained(kind, name)) continue;
      const Words made = writing::own_stitch_in_words(kind, tree_, brief_);
      if (!made) continue;
      const std::size_t stop = value.find(". ");
      if (stop == std::string_view::npos) return writing::WordForWord{*made, true};
      const std::string_view rest = value.substr(stop + 2);
      const Words known = book_.text(rest);
      return writing::WordForWord{
          *made + (known ? ". " + *known
                         : "\n" + (square ? "[" + std::string(rest) + "]" : "(" + std::string(rest) + ")")),
          known.has_value()};
    }
    return std::nullopt;
  }

  /// "Garn: Moos, 30 g" of "Yarn: moss, 30 g".
  void add_header_words(Draft& draft, const std::string& typed) const {
    const std::size_t mark = typed.find_first_of(":=");
    if (mark == std::string::npos || w_.same_language) return;
    const std::string name = header_name(std::string_view(typed).substr(0, mark));
    if (name.empty()) return;
    if (name == alternatives(w_.say("write-header-note", {})).front())
      return add_note_words(draft, name, typed);
    const bool hook = name == alternatives(w_.say("write-header-hook", {})).front();
    const writing::HeaderWords value =
        writing::header_in_words(std::string_view(typed).substr(mark + 1), hook, book_, tongue(),
                                 measuring(w_.from_say), measuring(w_.say));
    draft.add(name + colon() + " " + value.text, value.whole);
  }

  /// "Hinweis: In Spiralrunden." of "Note: Worked in a spiral."
  void add_note_words(Draft& draft, const std::string& name, std::string_view typed) const {
    const std::string_view value = typed.substr(std::min(typed.find_first_of(":=") + 1, typed.size()));
    const Words whole = book_.text(value), partly = whole ? whole : book_.text_partly(value);
    if (partly)
      draft.add(name + colon() + " " + *partly, whole.has_value());
    else
      draft.add(name + colon() + " " +
                    std::string(value.substr(std::min(value.find_first_not_of(' '), value.size()))),
                false);
  }

  std::string colon() const {
    return writing::has_words(w_.say, "say-colon") ? w_.say("say-colon", {""}) : ":";
  }

  static writing::Measuring measuring(const writing::Say& say) {
    const auto has = [&say](const char* id) { return writing::has_words(say, id) && !say(id, {}).empty(); };
    const auto unit = [&](const char* id, const char* usual) {
      return has(id) ? say(id, {}) : std::string(usual);
    };
    return {has("say-decimal-comma"), has("say-inches"), unit("say-mm", "mm"), unit("say-cm", "cm"),
            unit("say-g", "g")};
  }

  /// Whether the language calls a stitch so: "Bobble", "Bobble (bo)".
  bool is_called(const stitch::StitchKind& kind, std::string_view text) const {
    const std::vector<std::string> names = pattern::names_of(text);
    return std::any_of(names.begin(), names.end(),
                       [&](const std::string& name) { return typed_.understands(name, kind.name); });
  }

  /// A stitch of the pattern's own, by its name or by the language's word for it; a picot, of so many chains.
  bool is_explained(const stitch::StitchKind& kind, std::string_view text) const {
    if (!kind.own && !stitch::is_picot(kind)) return false;
    if (is_called(kind, text)) return true;
    const bool letters = kind.name.size() < 3; // "X" is another than "x"
    return letters ? text.find(kind.name) != std::string_view::npos
                   : in_small(text).find(in_small(kind.name)) != std::string::npos;
  }

  bool explains_own(std::string_view text) const {
    return std::any_of(tree_.kinds.begin(), tree_.kinds.end(),
                       [&](const stitch::StitchKind& kind) { return is_explained(kind, text); });
  }

  /// The list anew, and the stitches of the pattern's own, which keep their names.
  void add_list(Draft& draft) const {
    const std::string brief = abbreviations();
    for (const bool made : {true, false}) {
      bool whole = true;
      const std::string own = own_stitches(draft.passage.span, made, whole);
      if (made && own.empty()) continue;
      if (!brief.empty()) draft.add(brief + own, whole);
      draft.add(own.empty() ? own : own.substr(1), whole);
    }
  }

  /// What the language calls a picot or another stitch that it has a word for, where a name is one.
  Words usual_in(std::string_view name) const {
    for (std::uint32_t i = 0; i < tree_.kinds.size(); ++i) {
      const stitch::StitchKind& kind = tree_.kinds[i];
      if ((stitch::is_picot(kind) || is_called(kind, name)) && is_explained(kind, name))
        return in_language(name, brief_.stitch(tree_, static_cast<stitch::KindId>(i)));
    }
    return std::nullopt;
  }

  /// "Noppe" for "Bobble", but "Bobble (bo)" where its author's "bo" is kept.
  static Words in_language(std::string_view name, const Words& usual) {
    const std::vector<std::string> names = pattern::names_of(name);
    if (!usual || std::find(names.begin(), names.end(), *usual) != names.end()) return std::nullopt;
    return with_capitals_of(name, *usual);
  }

  /// A line for each stitch of the pattern's own that is explained there; `made`: by how it is made, else
  /// word for word.
  std::string own_stitches(pattern::Span span, bool made, bool& whole) const {
    std::string own;
    for (const pattern::Definition& definition : pattern::find_own_list(source_, w_.from).definitions) {
      if (definition.name.begin < span.begin || definition.value.end > span.end) continue;
      const std::string typed(source_.at(definition.name));
      if (!explains_own(typed)) continue;
      const std::string name = usual_in(typed).value_or(typed);
      const std::string_view value = source_.at(definition.value);
      const auto explained = made ? own_explained(typed, value, true) : std::nullopt;
      const writing::WordForWord words =
          explained ? *explained : writing::word_for_word(value, w_.from, brief_);
      whole = whole && words.whole;
      own += "\n" + name + (definition.equals ? " = " : ": ") + words.text;
    }
    return own;
  }

  const Writing& w_;
  const pattern::Tree& tree_;
  const pattern::Source& source_;
  Tongue brief_, usual_, typed_, full_;
  std::map<std::string, std::string> parts_;
  writing::Phrasebook book_;
};

} // namespace

std::vector<Draft> drafts_of(const Writing& writing) {
  Forms forms(writing);
  const pattern::Tree& tree = writing.pattern.tree;
  std::vector<Draft> drafts;
  bool language = false, list = false;
  for (Passage& passage : forms.joined(writing::passages_of(writing.pattern.source, tree, writing.from))) {
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
