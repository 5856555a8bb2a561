#include "pattern/hold.hpp"

#include "pattern/sentence.hpp"

namespace whorl::pattern {

Hold hold_said(std::string_view text, const words::Vocabulary& vocabulary) {
  const Sentence sentence = look_up(text, 0, vocabulary);
  const words::Concept hold = words::find_concept(vocabulary, "hold");
  const words::Concept down = words::find_concept(vocabulary, "start down");
  const words::Concept up = words::find_concept(vocabulary, "start up");
  bool held = false; // the word for it stands before or behind
  Hold said = Hold::unsaid;
  for (std::uint32_t at = 0; at < sentence.size(); ++at) {
    held = held || word_meaning(sentence, at, hold) != nullptr;
    if (said != Hold::unsaid) continue;
    if (word_meaning(sentence, at, down) != nullptr) said = Hold::start_down;
    if (word_meaning(sentence, at, up) != nullptr) said = Hold::start_up;
  }
  return held ? said : Hold::unsaid;
}

} // namespace whorl::pattern
