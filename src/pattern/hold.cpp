#include "pattern/hold.hpp"

#include "pattern/sentence.hpp"

namespace whorl::pattern {

Hold hold_said(std::string_view text, const words::Vocabulary& vocabulary) {
  const Sentence sentence = look_up(text, 0, vocabulary);
  const words::Concept hold = words::find_concept(vocabulary, "hold");
  const words::Concept down = words::find_concept(vocabulary, "start down");
  const words::Concept up = words::find_concept(vocabulary, "start up");
  bool held = false;
  for (std::uint32_t at = 0; at < sentence.size(); ++at) {
    held = held || word_meaning(sentence, at, hold) != nullptr;
    if (held && word_meaning(sentence, at, down) != nullptr) return Hold::start_down;
    if (held && word_meaning(sentence, at, up) != nullptr) return Hold::start_up;
  }
  return Hold::unsaid;
}

} // namespace whorl::pattern
