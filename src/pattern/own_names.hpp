#pragma once

#include "words/vocabulary.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace whorl::pattern {

/// Text in small letters, hyphens as blanks, without blanks and full stops at its end.
std::string folded(std::string_view text);

/// A stitch, a decrease or an increase.
bool is_work(const words::Vocabulary& vocabulary, words::Concept means);

/// The phrase at the head of an explanation, and what stands behind it.
struct Lead {
  words::Concept means = words::no_concept;
  std::string_view rest;
};
Lead leading(std::string_view text, const words::Vocabulary& vocabulary);

/// Whether an explanation ends with the phrase at its head, but for an aside.
bool is_aside(std::string_view rest, const words::Vocabulary& vocabulary);

/// The names that a definition gives: `Bobble (bo)`, `inc/increase`, `st(s)`.
std::vector<std::string> names_of(std::string_view typed);

/// A name and the other ways to type it: "spine stitch", "spine st".
std::vector<std::string> spellings_of(const std::string& name);

/// "spike" of "to make a spike": a name without words before it that name no stitch; else the name.
std::string without_lead(const std::string& name, const words::Vocabulary& vocabulary);

/// "two rounds below", anywhere in an explanation: how many rounds; 0: it does not say.
std::uint8_t depth_told(std::string_view text, const words::Vocabulary& vocabulary);

/// "Bobble stitch" is a bobble: what a name means in the language, whole.
std::vector<words::Concept> meanings_of(std::string_view name, const words::Vocabulary& vocabulary);

} // namespace whorl::pattern
