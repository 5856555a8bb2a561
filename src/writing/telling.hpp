#pragma once

#include "stitch/steps.hpp"
#include "stitch/turning.hpp"
#include "writing/used.hpp"

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace whorl::writing {

/// The words of an id with {1}, {2} … filled in, in the language and the terms of the pattern; the id itself
/// where there are none.
using Say = std::function<std::string(std::string_view id, const std::vector<std::string>& with)>;

/// A numbered move in words.
struct ToldMove {
  int number = 1;
  std::string words;      ///< "Yarn over and draw up a loop"
  std::string sentence;   ///< "Yarn over and draw up a loop: 3 loops on the hook."
  std::vector<int> loops; ///< on the hook after it; a repeat: after each pass
  stitch::Hook hook;      ///< the hook after it
};

/// A stitch told to a beginner.
struct ToldStitch {
  std::string name;  ///< as the pattern's terms write it: "dc2tog"
  std::string title; ///< in full words: "double crochet 2 together"
  int takes = 1, makes = 1, height = 0;
  bool counts = true;
  bool own = false;
  std::optional<stitch::Turning> turning;
  std::vector<std::string> facts; ///< what it uses and makes, its height, its turning chain; a sentence each
  std::vector<ToldMove> moves;    ///< none if its row does not come out
};

ToldStitch tell(const Used& used, const pattern::Tree& tree, const words::Vocabulary& terms, const Say& say);

/// All of it as a text: heading, facts, numbered moves.
std::string as_text(const ToldStitch& stitch, const Say& say);

} // namespace whorl::writing
