#include "writing/word_for_word.hpp"

#include "words/ascii.hpp"
#include "words/lattice.hpp"

namespace whorl::writing {
namespace {

using words::Word;
using words::WordKind;

/// The longest word at a place, of those the cheapest; nullptr if none begins there. Figures are a number.
const Word* word_at(const words::Lattice& lattice, std::string_view text, std::uint32_t at) {
  const Word* best = nullptr;
  for (std::uint32_t i = lattice.at[at]; i < lattice.at[at + 1]; ++i) {
    const Word& word = lattice.words[i];
    if (words::is_digit(text[at]) && word.kind == WordKind::number) return &word;
    if (best == nullptr || word.end > best->end || (word.end == best->end && word.cost < best->cost))
      best = &word;
  }
  return best;
}

std::string_view first_part(std::string_view tag) { return tag.substr(0, tag.find('-')); }

/// In the other language; none: it stays.
std::optional<std::string> in_tongue(const Word& word, const words::Vocabulary& from, const Tongue& tongue,
                                     bool dialect) {
  if (word.kind == WordKind::number)
    return dialect ? std::nullopt : std::optional(std::to_string(word.number));
  if (word.kind != WordKind::phrase || word.means >= from.concepts.size()) return std::nullopt;
  const words::ConceptEntry& means = from.concepts[word.means];
  const std::optional<std::string> written = tongue.word(means.name);
  if (dialect) return written == words::written_form(from, word.means) ? std::nullopt : written;
  return means.name == "filler" ? std::optional<std::string>(std::string()) : written;
}

bool is_ascii_mark(char c) {
  const bool digit = c >= '0' && c <= '9';
  const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
  return static_cast<unsigned char>(c) < 0x80 && !digit && !letter && c != ' ';
}

} // namespace

WordForWord word_for_word(std::string_view text, const words::Vocabulary& from, const Tongue& tongue) {
  const words::Folded folded = words::fold(text);
  const words::Lattice lattice = words::lattice(folded, from);
  const bool dialect = first_part(from.language) == first_part(tongue.words().language);
  std::string out;
  bool whole = true;
  for (std::uint32_t at = 0; at < folded.text.size();) {
    const auto* const name = tongue.name_at(folded.text, at);
    const Word* const word = name == nullptr ? word_at(lattice, folded.text, at) : nullptr;
    const std::uint32_t end = name != nullptr   ? at + static_cast<std::uint32_t>(name->first.size())
                              : word != nullptr ? std::max(word->end, at + 1)
                                                : at + 1;
    const words::Span typed = folded.span(at, end);
    auto words = word != nullptr ? in_tongue(*word, from, tongue, dialect) : std::nullopt;
    if (name != nullptr) words = tongue.named(text.substr(typed.begin, typed.length()));
    const std::string piece = words ? *words : std::string(text.substr(typed.begin, typed.length()));
    whole = whole && (dialect || words || (word != nullptr && word->kind == WordKind::mark) || piece == " ");
    const bool blank = piece == " ";
    const bool after_blank = out.empty() || out.back() == ' ';
    // Words that were one in the first language are parted in the other: "sc2tog".
    const bool parts = words && !from.blanks_between_words && !piece.empty() && !after_blank &&
                       !is_ascii_mark(out.back()) && tongue.words().blanks_between_words && out.back() != '-';
    if (parts) out += ' ';
    if (!(blank && after_blank)) out += piece;
    at = end;
  }
  while (!out.empty() && out.back() == ' ') out.pop_back();
  return {std::move(out), whole};
}

} // namespace whorl::writing
