#pragma once

#include "words/vocabulary.hpp"
#include "writing/tongue.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace whorl::writing {

/// What patterns say again and again, in two languages; where there are several ways to say it, bars stand
/// between them, and the first is written.
using Phrases = std::vector<std::pair<std::string, std::string>>;

/// Stock sentences ("Do not stuff.", "Sew on the {1}.") and names of things (head, stuffing, moss) of one
/// language in another. Nothing is said that is not wholly known.
class Phrasebook {
public:
  /// `names`: by what they are called, folded. `tongue`: writes what stands between them.
  Phrasebook(Phrases sentences, Names names, const words::Vocabulary& from, const Tongue& tongue);

  /// One or several sentences, or pieces of one between commas.
  std::optional<std::string> text(std::string_view typed) const;
  /// … in which sentences that are not known stay as they are; none where no sentence is known.
  std::optional<std::string> text_partly(std::string_view typed) const;
  /// One sentence or a piece of one, without its stop.
  std::optional<std::string> piece(std::string_view typed) const;
  /// The number that a word stands for: "two".
  std::optional<std::uint32_t> number(std::string_view typed) const;
  /// Two texts that a word for "and" links; none: no such word is there.
  std::vector<std::pair<std::string, std::string>> parted(std::string_view typed) const;
  /// A name, a number, a measure, or several: "the head and the body".
  std::optional<std::string> name(std::string_view typed) const;

private:
  std::optional<std::string> sentence(std::string_view typed) const;
  std::optional<std::string> whole_sentence(std::string_view folded) const;
  std::optional<std::string> filled(std::string_view form, const std::string& to,
                                    const std::string& folded) const;
  std::optional<std::string> one_name(std::string_view folded) const;
  std::string_view without_article(std::string_view folded) const;

  Phrases sentences_;
  Names names_;
  std::vector<std::string> links_; ///< words for "and"
  const words::Vocabulary& from_;
  const Tongue& tongue_;
};

/// The first letter as a capital.
std::string as_sentence(std::string text);

/// The words of a text that are parted by bars.
std::vector<std::string> alternatives(std::string_view text);

} // namespace whorl::writing
