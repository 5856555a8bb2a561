#include "pattern/number_round.hpp"

#include "pattern/header.hpp"
#include "pattern/limits.hpp"
#include "words/ascii.hpp"
#include "words/lattice.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

/// Behind the words for loops at the head of a text; 0 if it has none.
std::size_t behind_loops(const Reader& reader, std::string_view text) {
  if (text.empty() || words::is_digit(text.front())) return 0;
  const words::Folded folded = words::fold(text);
  const auto lattice = words::lattice(folded, reader.vocabulary);
  std::size_t end = 0;
  for (const words::Word& word : lattice.words) {
    if (word.begin != 0 || word.kind != words::WordKind::phrase) continue;
    if (reader.vocabulary.concepts[word.means].sort == words::ConceptClass::loops)
      end = std::max<std::size_t>(end, folded.from[word.end]);
  }
  return end;
}

std::string_view pass_mark(std::string_view text) {
  if (!text.empty() && (text.front() == ':' || text.front() == ',')) text.remove_prefix(1);
  return trim(text);
}

/// A number by itself is a round where its label is surely one: with the word for round, or closed by a mark.
bool is_sure(const Label& label) { return label.word || (label.closed && label.cost == 0); }

/// Behind the 目 of "7目 すじ編み", where no blanks divide the words; 0 if none stands there.
std::size_t behind_unit(const Reader& reader, std::string_view rest) {
  if (reader.vocabulary.blanks_between_words) return 0;
  const words::Folded folded = words::fold(rest);
  const auto lattice = words::lattice(folded, reader.vocabulary);
  std::size_t end = 0;
  for (const words::Word& word : lattice.words)
    if (word.kind == words::WordKind::phrase && word.begin == 0 &&
        reader.vocabulary.concepts[word.means].sort == words::ConceptClass::place)
      end = std::max<std::size_t>(end, folded.from[word.end]);
  return end;
}

} // namespace

std::string without_unit(const Reader& reader, std::string_view work) {
  std::string text(work);
  if (reader.vocabulary.blanks_between_words) return text;
  const words::Folded folded = words::fold(work);
  std::size_t digits = 0;
  while (digits < folded.text.size() && words::is_digit(folded.text[digits])) ++digits;
  const std::size_t rest = folded.from[digits];
  if (const std::size_t unit = digits == 0 ? 0 : behind_unit(reader, work.substr(rest)); unit != 0)
    std::fill_n(text.begin() + static_cast<std::ptrdiff_t>(rest), unit, ' ');
  return text;
}

bool is_number_alone(const Reader& reader, const Way& way, std::string_view work) {
  if (!way.above.empty() || way.label.span.empty()) return false;
  const std::string plain = words::fold(work).text; // wide figures are as good as narrow ones
  work = plain;
  std::string_view text = pass_mark(work.substr(behind_loops(reader, work)));
  while (!text.empty() && text.back() == '.') text.remove_suffix(1);
  const std::size_t end = std::min(text.find_first_not_of("0123456789"), text.size());
  if (end == 0 || end > limit::digits) return false;
  std::string_view rest = trim(text.substr(end));
  rest = trim(rest.substr(behind_unit(reader, rest)));
  while (rest.substr(0, 3) == "\xE3\x80\x80") rest.remove_prefix(3); // a wide blank
  if (const std::size_t loops = behind_loops(reader, rest)) rest = trim(rest.substr(loops));
  if (rest.empty()) return is_sure(way.label);
  if (rest.front() == '=') return trim(rest.substr(1)) == text.substr(0, end);
  const bool brackets = rest.size() > 2 && (rest.front() == '(' || rest.front() == '[');
  return brackets && rest.substr(1, rest.size() - 2) == text.substr(0, end);
}

} // namespace whorl::pattern
