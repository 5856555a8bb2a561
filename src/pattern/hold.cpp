#include "pattern/hold.hpp"

#include "pattern/sentence.hpp"
#include "pattern/word_names.hpp"

#include <algorithm>

namespace whorl::pattern {
namespace {

/// "opening | of the cap facing up": which end is down, as where the opening points to says it.
Hold hold_of_rim(const Sentence& sentence, std::uint32_t at) {
  constexpr int most_between = 4; // "of", "the", two words of a name
  for (int word = 0; word <= most_between && at < sentence.size(); ++word) {
    const WordsAt words = words_at(sentence, at);
    if (words.empty() || words.first->kind == words::WordKind::mark) return Hold::unsaid;
    if (is_named(sentence, at, {"upward"})) return Hold::start_down;
    if (is_named(sentence, at, {"downward"})) return Hold::start_up;
    at = behind(sentence, *words.first);
  }
  return Hold::unsaid;
}

Hold hold_at(const Sentence& sentence, std::uint32_t at) {
  if (is_named(sentence, at, {"start down"})) return Hold::start_down;
  if (is_named(sentence, at, {"start up"})) return Hold::start_up;
  const words::Word* rim = word_meaning(sentence, at, words::find_concept(sentence.vocabulary, "rim"));
  return rim == nullptr ? Hold::unsaid : hold_of_rim(sentence, behind(sentence, *rim));
}

} // namespace

Hold hold_said(std::string_view text, const words::Vocabulary& vocabulary) {
  const Sentence sentence = look_up(text, 0, vocabulary);
  const words::Concept hold = words::find_concept(vocabulary, "hold");
  bool held = false, told = false; // the word for it stands before, or behind
  Hold said = Hold::unsaid;
  for (std::uint32_t at = 0; at < sentence.size(); ++at) {
    held = held || is_named(sentence, at, {"hold", "with"});
    told = told || word_meaning(sentence, at, hold) != nullptr;
    const Hold here = hold_at(sentence, at);
    if (here == Hold::unsaid) continue;
    if (held || is_named(sentence, at, {"rim"})) return here; // "from the crown down" is how it was worked
    if (said == Hold::unsaid) said = here;
  }
  return told ? said : Hold::unsaid;
}

} // namespace whorl::pattern
