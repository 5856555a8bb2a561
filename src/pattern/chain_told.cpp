#include "pattern/chain_told.hpp"

#include "pattern/sentence.hpp"
#include "pattern/word_names.hpp"

namespace whorl::pattern {

namespace {

using words::ConceptClass;
using words::Word;
using words::WordKind;

constexpr std::uint32_t least_chain = 4;   ///< shorter ones turn a row or stand for a stitch
constexpr std::uint32_t most_chain = 1000; ///< "2000 m" is no chain
constexpr int most_words_between = 2;      ///< between the chain and its number: "of", "long"

std::uint32_t next_word(const Sentence& sentence, std::uint32_t at) {
  while (at < sentence.size() && (sentence.text()[at] == ' ' || sentence.text()[at] == '-')) ++at;
  return at;
}

const Word* chain_at(const Sentence& sentence, std::uint32_t at) {
  for (const Word& word : words_at(sentence, at))
    if (is_work(sentence, word) && name_of(sentence, word) == "ch") return &word;
  return nullptr;
}

const Word* long_number_at(const Sentence& sentence, std::uint32_t at) {
  const Word* number = number_at(sentence, at);
  return number != nullptr && number->number >= least_chain && number->number <= most_chain ? number
                                                                                            : nullptr;
}

/// "8 ch": where it ends; `at` if it does not stand there.
std::uint32_t behind_counted_chain(const Sentence& sentence, std::uint32_t at) {
  const Word* number = long_number_at(sentence, at);
  const Word* chain = number == nullptr ? nullptr : chain_at(sentence, next_word(sentence, number->end));
  return chain == nullptr ? at : chain->end;
}

/// A word that may stand between a chain and its number.
const Word* link_at(const Sentence& sentence, std::uint32_t at) {
  for (const Word& word : words_at(sentence, at)) {
    const ConceptClass sort = sort_of(sentence, word);
    const bool small =
        sort == ConceptClass::filler || word.means == sentence.with || word.means == sentence.in;
    if (word.kind == WordKind::unknown || (word.kind == WordKind::phrase && small)) return &word;
  }
  return nullptr;
}

/// "chain of 8 stitches": where it ends; `at` if it does not stand there.
std::uint32_t behind_chain_of(const Sentence& sentence, std::uint32_t at) {
  const Word* chain = chain_at(sentence, at);
  if (chain == nullptr) return at;
  std::uint32_t next = next_word(sentence, chain->end);
  if (next < sentence.size() && (sentence.text()[next] == ',' || sentence.text()[next] == ':'))
    next = next_word(sentence, next + 1); // "a chain, 8 stitches"
  for (int words = 0; words < most_words_between && number_at(sentence, next) == nullptr; ++words) {
    const Word* link = link_at(sentence, next);
    if (link == nullptr) return at;
    next = next_word(sentence, link->end);
  }
  const Word* number = long_number_at(sentence, next);
  if (number == nullptr) return at;
  const std::uint32_t behind = next_word(sentence, number->end);
  for (const Word& word : words_at(sentence, behind))
    if (sort_of(sentence, word) == ConceptClass::place || chain_at(sentence, behind) != nullptr)
      return word.end;
  return number->end;
}

/// "6 sc": a number of stitches that are no chains.
bool works_at(const Sentence& sentence, std::uint32_t at) {
  const Word* number = number_at(sentence, at);
  if (number == nullptr) return false;
  const std::uint32_t next = next_word(sentence, number->end);
  for (const Word& word : words_at(sentence, next))
    if (is_work(sentence, word)) return chain_at(sentence, next) == nullptr;
  return false;
}

bool stands_free(const Sentence& sentence, std::uint32_t at) {
  return at == 0 || !sentence.vocabulary.blanks_between_words || sentence.text()[at - 1] == ' ' ||
         std::string_view("(:.,").find(sentence.text()[at - 1]) != std::string_view::npos;
}

} // namespace

Span chain_told(std::string_view line, std::uint32_t begin, const words::Vocabulary& vocabulary) {
  const Sentence sentence = look_up(line, begin, vocabulary);
  Span found;
  for (std::uint32_t at = 0; at < sentence.size(); ++at) {
    if (!stands_free(sentence, at)) continue;
    if (works_at(sentence, at)) return {};
    if (!found.empty()) continue;
    std::uint32_t end = behind_counted_chain(sentence, at);
    if (end == at) end = behind_chain_of(sentence, at);
    if (end != at) found = sentence.span(at, end);
  }
  return found;
}

} // namespace whorl::pattern
