#include "pattern/speech.hpp"

#include "pattern/alphabet.hpp"
#include "pattern/own_list.hpp"
#include "pattern/own_words.hpp"
#include "pattern/part_word.hpp"
#include "pattern/round_word.hpp"
#include "pattern/text_words.hpp"
#include "pattern/yarn_list.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

void blank(std::string& text, Span span) {
  for (std::uint32_t at = span.begin; at < span.end; ++at)
    if (text[at] != '\n' && text[at] != '\r') text[at] = ' ';
}

/// The list is taken out of the text that is read, byte for byte a blank, and kept among the headers.
void take_out_list(Speech& speech, const Source& source, const OwnList& list,
                   const std::vector<bool>& explains) {
  std::string text(source.text());
  for (std::size_t i = 0; i < list.definitions.size(); ++i) {
    const Definition& definition = list.definitions[i];
    if (!explains[i]) continue;
    blank(text, definition.whole);
    if (definition.in_line) continue;
    speech.headers.push_back({std::string(source.at(definition.name)),
                              std::string(source.at(definition.value)),
                              {definition.name.begin, definition.value.end}});
  }
  for (const Span heading : list.headings) blank(text, heading);
  speech.without_list.emplace(text);
}

/// "7 sc, bark: 1 sc" defines nothing where the materials call a yarn so.
void drop_yarns(OwnList& list, const Source& source, const words::Vocabulary& vocabulary) {
  const auto is_in_line = [](const Definition& definition) { return definition.in_line; };
  auto& definitions = list.definitions;
  if (std::none_of(definitions.begin(), definitions.end(), is_in_line)) return;
  const std::vector<ListedYarn> yarns = yarns_listed(source, vocabulary);
  const auto names_yarn = [&](const Definition& definition) {
    const std::string name = words::fold(source.at(definition.name)).text;
    return definition.in_line &&
           std::any_of(yarns.begin(), yarns.end(), [&](const ListedYarn& yarn) { return yarn.name == name; });
  };
  definitions.erase(std::remove_if(definitions.begin(), definitions.end(), names_yarn), definitions.end());
}

void hear_list(Speech& speech, const Source& source) {
  OwnList list = find_own_list(source, *speech.terms.vocabulary);
  drop_yarns(list, source, *speech.terms.vocabulary);
  OwnWords own;
  if (!list.definitions.empty()) own = own_words(source, list, *speech.terms.vocabulary);
  add_found_letters(source, *speech.terms.vocabulary, own);
  add_round_words(source, *speech.terms.vocabulary, own);
  add_part_words(source, *speech.terms.vocabulary, own);
  add_piece_words(source, *speech.terms.vocabulary, own);
  if (!own.phrases.empty())
    speech.own_words = words::with_own_words(*speech.terms.vocabulary, own.phrases, own.concepts);
  if (!own.kinds.empty()) speech.own_kinds = std::move(own.kinds);
  speech.own_names = std::move(own.own_names);
  speech.findings = std::move(own.findings);
  const bool any = std::find(own.explains.begin(), own.explains.end(), true) != own.explains.end();
  if (any) take_out_list(speech, source, list, own.explains);
}

/// What her materials call a yarn is a colour wherever it is worked in.
void hear_colours(Speech& speech, const Source& source) {
  const words::Vocabulary& known = speech.vocabulary();
  if (known.text == nullptr || !known.blanks_between_words) return;
  std::vector<words::PhraseEntry> own;
  for (const OwnColour& colour : own_colours(source, known)) {
    words::PhraseEntry entry;
    entry.phrase = colour.word;
    entry.cost = 1; // beside whatever else it is
    entry.means = static_cast<words::Concept>(
        known.text->first_text_concept +
        static_cast<words::Concept>(colour.shade ? TextWord::shade : TextWord::colour));
    own.push_back(std::move(entry));
  }
  if (own.empty()) return;
  speech.own_text = std::make_unique<words::Vocabulary>(words::with_own_words(*known.text, own, {}));
  if (!speech.own_words) speech.own_words = known;
  speech.own_words->text = speech.own_text.get();
}

} // namespace

Speech listen(const Source& source, const words::Vocabulary& given) {
  Speech speech;
  speech.terms = find_terms(source, given);
  hear_list(speech, source);
  hear_colours(speech, source);
  return speech;
}

void add_speech(Read& read, const Speech& speech) {
  read.tree.own_names = speech.own_names;
  auto& headers = read.tree.headers;
  headers.insert(headers.end(), speech.headers.begin(), speech.headers.end());
  std::stable_sort(headers.begin(), headers.end(),
                   [](const Header& a, const Header& b) { return a.span.begin < b.span.begin; });
  read.findings.insert(read.findings.end(), speech.findings.begin(), speech.findings.end());
  if (read.tree.rounds.empty()) return;
  if (const auto told = tell_terms(speech.terms)) read.findings.push_back(*told);
}

} // namespace whorl::pattern
