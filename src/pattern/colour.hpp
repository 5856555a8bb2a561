#pragma once

#include "pattern/sentence.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace whorl::pattern {

/// The name of a yarn in a line: [begin, end) in folded bytes.
struct YarnName {
  std::uint32_t begin = 0;
  std::uint32_t end = 0;
};

/// The name that begins at `at`: a colour ("dark brown"), "yarn A", or where `led` by another word a letter
/// too.
std::optional<YarnName> yarn_name_at(const Sentence& sentence, std::uint32_t at, bool led);

/// The first name in [begin, end); a letter at the head of the line only if `letter_first`.
std::optional<YarnName> find_yarn_name(const Sentence& sentence, std::uint32_t begin, std::uint32_t end,
                                       bool letter_first = false);

/// A name as it is kept: colours in small letters, letters as capitals.
std::string written_name(const Sentence& sentence, const YarnName& name);

/// Whether "in", "with", "using" stands at a place, or another word that leads to a yarn.
bool leads_to_yarn(const Sentence& sentence, std::uint32_t at);

/// What tells at a place of a line in which yarn its stitches are worked.
struct YarnMark {
  YarnName name;
  std::uint32_t end = 0; ///< of its words
  bool behind = false;   ///< it is said of the piece before, not of what follows
};

/// The mark that begins at `at`, if one does: "(white)", "with A", "white:", "in brown". `clause`: a clause
/// begins there; `loose`: a piece stands right before it; `stop`: where the work ends.
std::optional<YarnMark> yarn_mark_at(const Sentence& sentence, std::uint32_t at, bool clause, bool loose,
                                     std::uint32_t stop);

/// Whether a text in small letters is nothing but the name of a colour: "dark brown".
bool is_colour(std::string_view text, const words::Vocabulary& vocabulary);

/// Whether some word of a line may name a yarn; asked once, so that most lines are not looked at further.
bool may_name_yarn(const Sentence& sentence);

} // namespace whorl::pattern
