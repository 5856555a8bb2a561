#pragma once

#include "pattern/source.hpp"
#include "pattern/tree.hpp"
#include "words/vocabulary.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace whorl::pattern {

/// Text without the blanks around it.
std::string_view trim(std::string_view text);

/// The line that names a part, taken apart: `Ears (make 2)`, `## Cap`, `Nut: make 2`, `Ear 2x`.
struct Heading {
  std::string name;
  std::string note; ///< what stands behind the name, but for how many to make
  std::uint32_t make = 1;
  bool says_make = false;
  bool marked = false; ///< typed as a heading: `## Cap`, `**Cap**`
};
Heading read_heading(std::string_view line, const words::Vocabulary& vocabulary);

/// Whether a line of its own may name a part: a few words, no sentence.
bool looks_like_heading(std::string_view line);

/// A line `Name: value` or `sc = single crochet`; none if it is neither. `span` is the line's.
std::optional<Header> read_header(std::string_view line, Span span);

/// Whether a header line may as well be a title that says more behind a colon: words, no list, no figures,
/// nothing of yarn or stitches in front.
bool is_title_with_colon(std::string_view line, Span span, const words::Vocabulary& vocabulary);

/// The value of the first header of this name, whatever its capitals; "" if there is none.
std::string_view value_of(const std::vector<Header>& headers, std::string_view name);

/// A line without the marks that only set it off: `# Acorn` is `Acorn`.
std::string_view without_marks(std::string_view line);

/// A line without the bracket that closes it: "HEAD AND BODY (from the nose, in beige)".
std::string_view without_aside(std::string_view line);

/// The text without the marks of bold words inside it.
std::string without_bold(std::string_view line);

} // namespace whorl::pattern
