#include "pattern/sentence.hpp"

#include "pattern/colour.hpp"
#include "pattern/held_part.hpp"
#include "pattern/opened.hpp"
#include "pattern/own_group.hpp"
#include "words/ascii.hpp"

namespace whorl::pattern {

using words::Word;
using words::WordKind;

namespace {

/// Whether some word tells of places that the round before does not have.
bool tells_of_opening(const Sentence& sentence) {
  for (const Word& word : sentence.lattice.words) {
    if (word.kind != WordKind::phrase) continue;
    if (word.means == sentence.side || word.means == sentence.skipped || word.means == sentence.unused ||
        word.means == sentence.leg || sort_of(sentence, word) == words::ConceptClass::loops)
      return true;
  }
  return false;
}

} // namespace

Sentence look_up(std::string_view text, std::uint32_t begin, const words::Vocabulary& vocabulary) {
  words::Folded folded = words::fold(text, begin);
  words::Lattice lattice = words::lattice(folded, vocabulary);
  if (tell_groups(folded, lattice, vocabulary)) lattice = words::lattice(folded, vocabulary);
  if (open_brackets(folded, lattice, vocabulary)) lattice = words::lattice(folded, vocabulary);
  if (part_words(folded, lattice, vocabulary)) lattice = words::lattice(folded, vocabulary);
  if (tell_held_parts(folded, lattice, vocabulary) && open_brackets(folded, lattice, vocabulary)) {
    lattice = words::lattice(folded, vocabulary);
    tell_held_parts(folded, lattice, vocabulary);
  }
  Brackets brackets = pair_brackets(folded, lattice, vocabulary);
  const auto named = [&vocabulary](const char* name) { return words::find_concept(vocabulary, name); };
  Sentence sentence{vocabulary,           std::move(folded),   std::move(lattice), std::move(brackets),
                    named("increase"),    named("times"),      named("and"),       named("counted"),
                    named("not counted"), named("other side"), named("skipped"),   named("unused"),
                    named("leg")};
  sentence.in = named("in");
  sentence.with = named("with");
  sentence.space = named("space");
  sentence.chain = named("chain");
  sentence.chain_loop = named("chain loop");
  sentence.next = named("next");
  sentence.yarns = may_name_yarn(sentence);
  sentence.opens = tells_of_opening(sentence);
  return sentence;
}

WordsAt words_at(const Sentence& sentence, std::uint32_t at) {
  if (at >= sentence.size()) return {};
  const Word* words = sentence.lattice.words.data();
  return {words + sentence.lattice.at[at], words + sentence.lattice.at[at + 1]};
}

const Word* word_meaning(const Sentence& sentence, std::uint32_t at, words::Concept wanted) {
  for (const Word& word : words_at(sentence, at))
    if (word.kind == WordKind::phrase && word.means == wanted) return &word;
  return nullptr;
}

const Word* number_at(const Sentence& sentence, std::uint32_t at) {
  for (const Word& word : words_at(sentence, at))
    if (word.kind == WordKind::number) return &word;
  return nullptr;
}

std::uint32_t end_of_letters(const Sentence& sentence, std::uint32_t at) {
  while (at < sentence.size() && words::is_folded_letter(sentence.text()[at])) ++at;
  return at;
}

words::ConceptClass sort_of(const Sentence& sentence, const Word& word) {
  if (word.kind != WordKind::phrase) return words::ConceptClass::word;
  return sentence.vocabulary.concepts[word.means].sort;
}

bool is_work(const Sentence& sentence, const Word& word) {
  if (word.kind != WordKind::phrase) return false;
  const words::ConceptClass sort = sentence.vocabulary.concepts[word.means].sort;
  return sort == words::ConceptClass::stitch || sort == words::ConceptClass::decrease ||
         word.means == sentence.increase;
}

} // namespace whorl::pattern
