#include "writing/said_wholly.hpp"

#include "words/lattice.hpp"
#include "writing/placing_words.hpp"

#include <algorithm>
#include <iterator>

namespace whorl::writing {
namespace {

using pattern::Placing;
using pattern::What;
using words::Word;
using words::WordKind;

/// Concepts that say what is done; how a thread is cut and how firmly is stuffed stands in their words too.
bool tells(What what, bool gather, std::string_view name) {
  switch (what) {
  case What::eye:
    return name == "eye" || name == "attach";
  case What::marker:
    return name == "marker";
  case What::bead:
    return name == "bead" || name == "sew";
  case What::cut:
    return gather && (name == "gather" || name == "cut");
  case What::change:
    return name == "change";
  case What::join:
    return name == "attach" || name == "join" || name == "link";
  case What::sew:
    return name == "sew";
  case What::embroider:
    return name == "embroider";
  case What::stuff:
  case What::note:
    break;
  }
  return false;
}

bool is_small(std::string_view name) {
  constexpr std::string_view small[] = {"filler",  "and",   "in",    "to",  "over", "from", "with",
                                        "between", "apart", "round", "row", "st",   "as",   "ordinal"};
  return std::find(std::begin(small), std::end(small), name) != std::end(small);
}

bool is_told_number(const Placing& placing, std::uint32_t number) {
  return static_cast<int>(number) == placing.from || static_cast<int>(number) == placing.to ||
         number == placing.apart;
}

/// Marks and blanks at the end say nothing.
std::string_view without_stop(std::string_view text) {
  while (!text.empty() && std::string_view(" .!").find(text.back()) != std::string_view::npos)
    text.remove_suffix(1);
  return text;
}

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80; }

std::size_t end_of_word(std::string_view text, std::size_t at) {
  while (at < text.size() && is_letter(text[at])) ++at;
  return at;
}

/// Where the word at `at` ends, if the language's own sentence has that word; else `at`.
std::uint32_t behind_word_of(std::string_view own, std::string_view text, std::uint32_t at) {
  const std::size_t end = end_of_word(text, at);
  const std::string_view word = text.substr(at, end - at);
  if (word.empty() || (at > 0 && is_letter(text[at - 1]))) return at;
  for (std::size_t begin = 0; begin < own.size();) {
    const std::size_t stop = end_of_word(own, begin);
    if (own.substr(begin, stop - begin) == word) return static_cast<std::uint32_t>(end);
    begin = stop + 1;
  }
  return at;
}

} // namespace

bool is_said_wholly(const pattern::Tree& tree, const Placing& placing, std::string_view text,
                    const Tongue& from_tongue, const Tongue& tongue) {
  const words::Vocabulary& from = from_tongue.words();
  const std::string own = words::fold(placing_in_words(tree, placing, from_tongue).value_or("")).text;
  const words::Folded folded = words::fold(text);
  if (without_stop(folded.text) == without_stop(own)) return true;
  const words::Lattice lattice = words::lattice(folded, from);
  for (std::uint32_t at = 0; at < folded.text.size();) {
    const bool names =
        placing.what == What::sew || placing.what == What::change || placing.what == What::join;
    if (const auto* const name = names ? tongue.name_at(folded.text, at) : nullptr; name != nullptr) {
      at += static_cast<std::uint32_t>(name->first.size());
      continue;
    }
    std::uint32_t end = folded.text[at] == ' ' ? at + 1 : at;
    if (from.blanks_between_words) end = std::max(end, behind_word_of(own, folded.text, at));
    for (std::uint32_t i = lattice.at[at]; i < lattice.at[at + 1]; ++i) {
      const Word& word = lattice.words[i];
      const bool phrase = word.kind == WordKind::phrase && word.means < from.concepts.size();
      const std::string_view name =
          phrase ? std::string_view(from.concepts[word.means].name) : std::string_view();
      const bool known = word.kind == WordKind::mark ||
                         (phrase && (is_small(name) || tells(placing.what, placing.gather, name))) ||
                         (word.kind == WordKind::number && is_told_number(placing, word.number));
      if (known) end = std::max(end, word.end);
    }
    if (end == at) return false;
    at = end;
  }
  return true;
}

} // namespace whorl::writing
