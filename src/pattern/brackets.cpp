#include "pattern/brackets.hpp"

#include "pattern/costs.hpp"
#include "pattern/told_place.hpp"
#include "words/ascii.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

using words::Concept;
using words::Word;
using words::WordKind;

using words::is_digit;

/// A bracket or star still waiting for its other half.
struct Open {
  char mark;
  std::uint32_t at;
};

/// The pairing under way.
struct Pairing {
  std::string_view text;
  const words::Lattice& lattice;
  const words::Vocabulary& vocabulary;
  Concept repeat, from, to, conjunction, around, increase;
  Brackets& out;
  std::vector<Open> open;
  bool two_seen = false; ///< two stars stood before that close a passage or end its last pass

  /// A stitch, an increase, a decrease or a number.
  bool works(const Word& word) const {
    if (word.kind != WordKind::phrase) return word.kind == WordKind::number;
    const words::ConceptClass sort = vocabulary.concepts[word.means].sort;
    return sort == words::ConceptClass::stitch || sort == words::ConceptClass::decrease ||
           word.means == increase;
  }
};

char partner(char closing) { return closing == ')' ? '(' : closing == ']' ? '[' : closing == '}' ? '{' : 0; }

Passage passage_of(char mark) {
  return mark == '('   ? Passage::round
         : mark == '[' ? Passage::square
         : mark == '{' ? Passage::curly
                       : Passage::stars;
}

bool has_concept(const Pairing& pairing, std::uint32_t at, Concept wanted) {
  for (std::uint32_t i = pairing.lattice.at[at]; i < pairing.lattice.at[at + 1]; ++i)
    if (pairing.lattice.words[i].kind == WordKind::phrase && pairing.lattice.words[i].means == wanted)
      return true;
  return false;
}

/// The byte before `at` that is no blank.
char byte_before(std::string_view text, std::uint32_t at) {
  while (at > 0 && text[at - 1] == ' ') --at;
  return at == 0 ? '\0' : text[at - 1];
}

/// The first word of `wanted` in [begin, end), or end.
std::uint32_t find_word(const Pairing& pairing, std::uint32_t begin, std::uint32_t end, Concept wanted) {
  for (std::uint32_t at = begin; at < end; ++at)
    if (has_concept(pairing, at, wanted)) return at;
  return end;
}

void put(Pairing& pairing, Passage kind, std::uint32_t begin, std::uint32_t inner_end, std::uint32_t end) {
  pairing.out.at[begin] = static_cast<std::int32_t>(pairing.out.all.size());
  const bool two = pairing.text.substr(begin, 2) == "**";
  pairing.out.all.push_back(
      {kind, begin, skip_blanks(pairing.text, begin + (two ? 2U : 1U)), inner_end, end});
}

/// "*3 sc, inc around": the passage goes round where the word stands right behind a stitch or number of it;
/// where the passage ends then, else `end`.
std::uint32_t before_around(const Pairing& pairing, std::uint32_t begin, std::uint32_t end) {
  const std::uint32_t around = find_word(pairing, begin, end, pairing.around);
  if (around == end || pairing.text.substr(begin, around - begin).find(',') == std::string_view::npos)
    return end;
  for (std::uint32_t at = begin; at < around; ++at)
    for (std::uint32_t i = pairing.lattice.at[at]; i < pairing.lattice.at[at + 1]; ++i) {
      const Word& word = pairing.lattice.words[i];
      const bool last = skip_blanks(pairing.text, word.end) == around;
      if (last && pairing.works(word)) return around;
    }
  return end;
}

bool may_be_filler(const Pairing& pairing, std::uint32_t at) {
  for (std::uint32_t i = pairing.lattice.at[at]; i < pairing.lattice.at[at + 1]; ++i) {
    const Word& word = pairing.lattice.words[i];
    if (word.kind == WordKind::phrase &&
        pairing.vocabulary.concepts[word.means].sort == words::ConceptClass::filler)
      return true;
  }
  return false;
}

/// The first word in [begin, end) that says how a passage is repeated, or end; "das", which is "that" and
/// "the", only behind a mark or where no other does.
std::uint32_t find_repeat(const Pairing& pairing, std::uint32_t begin, std::uint32_t end) {
  const std::uint32_t first = find_word(pairing, begin, end, pairing.repeat);
  for (std::uint32_t at = first; at < end; at = find_word(pairing, at + 1, end, pairing.repeat))
    if (!may_be_filler(pairing, at) || is_separator(byte_before(pairing.text, at))) return at;
  return first;
}

/// A star that nothing closes runs to the words that say how it is repeated, or to `limit`.
void put_open_star(Pairing& pairing, std::uint32_t begin, std::uint32_t limit) {
  const std::uint32_t repeat = find_repeat(pairing, begin + 1, limit);
  const std::uint32_t stop = repeat == limit ? before_around(pairing, begin + 1, limit) : repeat;
  const std::uint32_t end = trim_separators(pairing.text, begin + 1, stop);
  put(pairing, Passage::open_star, begin, end, end);
}

void close_bracket(Pairing& pairing, std::uint32_t at) {
  const char wanted = partner(pairing.text[at]);
  const auto match = std::find_if(pairing.open.rbegin(), pairing.open.rend(),
                                  [wanted](const Open& open) { return open.mark == wanted; });
  if (match == pairing.open.rend()) return;
  while (pairing.open.back().mark != wanted) {
    if (pairing.open.back().mark == '*') put_open_star(pairing, pairing.open.back().at, at);
    pairing.open.pop_back();
  }
  put(pairing, passage_of(wanted), pairing.open.back().at, at, at + 1);
  pairing.open.pop_back();
}

/// Two stars inside a passage: its end where the text goes on "to **", else the end of its last pass; behind
/// those they refer to them.
StarRole role_of_two(const Pairing& pairing, std::uint32_t at) {
  const std::string_view rest = pairing.text.substr(at + 2);
  if (rest.find("to **") != std::string_view::npos) return StarRole::closes;
  return rest.find("**") != std::string_view::npos ? StarRole::last : StarRole::closes;
}

/// "Between * *": the second star refers as the first does.
bool follows_reference(const Pairing& pairing, std::uint32_t at) {
  std::uint32_t before = at;
  while (before > 0 && pairing.text[before - 1] == ' ') --before;
  if (before > 3 && pairing.text.substr(before - 3, 3) == "and") {
    before -= 3;
    while (before > 0 && pairing.text[before - 1] == ' ') --before;
  }
  if (before > 1 && pairing.text[before - 1] == '-') --before;
  return before > 0 && pairing.text[before - 1] == '*' &&
         pairing.out.stars[before - 1] == StarRole::reference;
}

/// "Repeat * to *", "rep *-*", "* bis *".
bool leads_to_star(const Pairing& pairing, std::uint32_t at) {
  const std::uint32_t next = skip_blanks(pairing.text, at + 1);
  const std::string_view rest = pairing.text.substr(next);
  if (rest.substr(0, 2) == "-*" || rest.substr(0, 3) == "- *") return true;
  const std::size_t star = rest.find('*');
  if (star == rest.npos || star < 2 || rest[star - 1] != ' ') return false;
  const std::size_t letters = rest.find(' ');
  return letters + 1 == star && (has_concept(pairing, next, pairing.to) ||
                                 has_concept(pairing, next, words::find_concept(pairing.vocabulary, "and")));
}

/// Whether a passage between two stars stands before.
bool stars_stand_before(const Pairing& pairing) {
  return std::any_of(pairing.out.all.begin(), pairing.out.all.end(),
                     [](const Bracket& passage) { return passage.kind == Passage::stars; });
}

/// "6*inc", "6 * (2 sc, inc)": a number before a star that no other star answers.
bool multiplies(const Pairing& pairing, std::uint32_t at) {
  const char last = byte_before(pairing.text, at);
  if (!is_digit(last) || pairing.text.find('*', at + 1) != std::string_view::npos) return false;
  const std::uint32_t next = skip_blanks(pairing.text, at + 1);
  const char first = next < pairing.text.size() ? pairing.text[next] : '\0';
  const bool glued = pairing.text[at - 1] != ' ' && next == at + 1 && first >= 'a' && first <= 'z';
  return first == '(' || first == '[' || glued;
}

/// "(red) *1 sc, inc* x 6": behind the number a word stands that is no "times", and another star comes.
bool begins_passage(const Pairing& pairing, std::uint32_t at) {
  std::uint32_t next = skip_blanks(pairing.text, at + 1);
  while (next < pairing.text.size() && is_digit(pairing.text[next])) ++next;
  next = skip_blanks(pairing.text, next);
  const bool letter = next < pairing.text.size() && pairing.text[next] >= 'a' && pairing.text[next] <= 'z';
  return letter && !has_concept(pairing, next, words::find_concept(pairing.vocabulary, "times")) &&
         pairing.text.find('*', at + 1) != std::string_view::npos;
}

/// "*1 fm, 2 tills*": a word for until means together too, and no other star comes.
bool closes_together(const Pairing& pairing, std::uint32_t at, std::uint32_t word) {
  return !pairing.open.empty() && pairing.open.back().mark == '*' &&
         has_concept(pairing, word, words::find_concept(pairing.vocabulary, "together")) &&
         pairing.text.find('*', at + 1) == std::string_view::npos;
}

StarRole role_of(const Pairing& pairing, std::uint32_t at, const Word* before) {
  const bool longer = before && skip_blanks(pairing.text, before->end) == at &&
                      pairing.text.find(' ', before->begin) < before->end; // "between next 2 petals*"
  if (before && !longer &&
      (has_concept(pairing, before->begin, pairing.from) ||
       has_concept(pairing, before->begin, pairing.to)) &&
      !closes_together(pairing, at, before->begin))
    return StarRole::reference;
  if (longer && before->means == pairing.from) return StarRole::reference; // "a partir de *"
  const bool in_stars = !pairing.open.empty() && pairing.open.back().mark == '*';
  const bool named_again = !in_stars && stars_stand_before(pairing); // "*2 sc, inc*, work | * to * 6 times"
  const bool repeated = before && has_concept(pairing, before->begin, pairing.repeat);
  if ((repeated || named_again) && leads_to_star(pairing, at)) return StarRole::reference;
  if (pairing.two_seen && pairing.text.substr(at, 2) == "**") return StarRole::reference;
  if (follows_reference(pairing, at)) return StarRole::reference;
  const char last = byte_before(pairing.text, at);
  const std::uint32_t next = skip_blanks(pairing.text, at + 1);
  const bool number_next = next < pairing.text.size() && is_digit(pairing.text[next]);
  if (number_next && last == ')' && !begins_passage(pairing, at)) return StarRole::times;
  if (number_next && (last == ']' || last == '}' || last == '|')) return StarRole::times;
  const bool piece_before =
      last != '\0' && !is_separator(last) && partner(last) == 0 && last != '(' && last != '[';
  const bool repeats =
      before && has_concept(pairing, before->begin, pairing.repeat) &&
      pairing.text.find('*', at + 1) != std::string_view::npos; // "repeat *2 sc, inc* 6 times"
  if (number_next && piece_before && !in_stars && before && !repeats) return StarRole::times;
  if (!in_stars && multiplies(pairing, at)) return StarRole::times;
  if (in_stars && pairing.text.substr(at, 2) == "**") return role_of_two(pairing, at);
  return in_stars ? StarRole::closes : StarRole::opens;
}

void meet_star(Pairing& pairing, std::uint32_t at, const Word* before) {
  const StarRole role = role_of(pairing, at, before);
  const std::uint32_t length = pairing.text.substr(at, 2) == "**" ? 2 : 1;
  pairing.out.stars[at] = role;
  if (length == 2 && role != StarRole::opens) pairing.two_seen = true;
  if (role == StarRole::opens) pairing.open.push_back({'*', at});
  if (role != StarRole::closes) return;
  put(pairing, Passage::stars, pairing.open.back().at, at, at + length);
  pairing.open.pop_back();
}

/// Bars are brackets in pairs.
void meet_bar(Pairing& pairing, std::uint32_t at) {
  if (pairing.open.empty() || pairing.open.back().mark != '|') return pairing.open.push_back({'|', at});
  put(pairing, Passage::curly, pairing.open.back().at, at, at + 1);
  pairing.open.pop_back();
}

bool is_letter(char c) { return c >= 'a' && c <= 'z'; }

std::size_t end_of(std::string_view text, std::size_t at, bool (*is)(char)) {
  while (at < text.size() && is(text[at])) ++at;
  return at;
}

bool is_letter_or_digit(char c) { return is_letter(c) || is_digit(c); }

/// Where the item of a list with slashes ends that begins at `at`: "2dc", "2 dc", "ch 2" before another
/// slash or a place.
std::size_t end_of_slashed(std::string_view text, std::size_t at) {
  const std::size_t end = end_of(text, at, is_letter_or_digit);
  if (end == at || end >= text.size() || text[end] != ' ') return end;
  const bool number = end_of(text, at, is_digit) == end;
  const std::size_t more = end_of(text, end + 1, number ? is_letter : is_digit);
  const bool whole =
      more > end + 1 && (number || more == text.size() || text[more] == '/' || text[more] == ' ');
  return whole ? more : end;
}

/// Where the item in front of a slash begins: "2dc", "2 dc".
std::size_t begin_of_slashed(std::string_view text, std::size_t slash) {
  const auto behind_last = [text](std::string_view marks, std::size_t end) {
    const std::size_t mark = text.substr(0, end).find_last_of(marks);
    return mark == std::string_view::npos ? 0 : mark + 1;
  };
  const std::size_t begin = behind_last(" *([{,;", slash);
  if (begin == 0 || text[begin - 1] != ' ' || end_of(text, begin, is_letter) != slash) return begin;
  const std::size_t number = behind_last(" *([{,;", begin - 1);
  return number + 1 < begin && end_of(text, number, is_digit) == begin - 1 ? number : begin;
}

/// "2dc/ch2/2dc in the sp", "2 dc/ch 2/2 dc in the sp": what slashes join is a passage if a place follows.
void pair_slashes(Pairing& pairing, Concept in) {
  const std::string_view text = pairing.text;
  for (std::size_t slash = text.find('/'); slash != std::string_view::npos;
       slash = text.find('/', slash + 1)) {
    const std::size_t begin = begin_of_slashed(text, slash);
    std::size_t end = slash;
    while (end < text.size() && text[end] == '/') end = end_of_slashed(text, end + 1);
    const auto next = skip_blanks(text, static_cast<std::uint32_t>(end));
    const bool joined = slash > begin && end > slash + 1 && is_letter(text[slash - 1]);
    if (joined && next < text.size() && has_concept(pairing, next, in) &&
        pairing.out.at[begin] == no_bracket) {
      pairing.out.at[begin] = static_cast<std::int32_t>(pairing.out.all.size());
      const auto first = static_cast<std::uint32_t>(begin), last = static_cast<std::uint32_t>(end);
      pairing.out.all.push_back({Passage::slashes, first, first, last, last});
    }
    slash = std::max(slash, end - 1);
    if (slash + 1 >= text.size()) return;
  }
}

void meet(Pairing& pairing, std::uint32_t at, const Word* before) {
  const char mark = pairing.text[at];
  if (mark == '(' || mark == '[' || mark == '{') pairing.open.push_back({mark, at});
  if (partner(mark) != 0) close_bracket(pairing, at);
  if (mark == '*') meet_star(pairing, at, before);
  if (mark == '|') meet_bar(pairing, at);
  const bool deep = static_cast<int>(pairing.open.size()) > reading_limits.nesting;
  if (deep && !pairing.out.too_deep) pairing.out.deep_at = at;
  pairing.out.too_deep = pairing.out.too_deep || deep;
}

} // namespace

bool is_separator(char c) {
  return c == ',' || c == ';' || c == '.' || c == ':' || c == '-' || c == '+' || c == '/';
}

std::uint32_t skip_blanks(std::string_view text, std::uint32_t at) {
  while (at < text.size() && text[at] == ' ') ++at;
  return at;
}

std::uint32_t trim_separators(std::string_view text, std::uint32_t begin, std::uint32_t end) {
  while (end > begin && (text[end - 1] == ' ' || is_separator(text[end - 1]))) --end;
  return end;
}

Brackets pair_brackets(const words::Folded& text, const words::Lattice& lattice,
                       const words::Vocabulary& vocabulary) {
  Brackets out;
  const auto size = static_cast<std::uint32_t>(text.text.size());
  out.at.assign(size + 1, no_bracket);
  out.stars.assign(size + 1, StarRole::none);
  const auto named = [&vocabulary](const char* name) { return words::find_concept(vocabulary, name); };
  Pairing pairing{text.text,   lattice,      vocabulary,      named("repeat"),   named("from"),
                  named("to"), named("and"), named("around"), named("increase"), out,
                  {}};
  const Word* before = nullptr;
  for (std::uint32_t at = 0; at < size && !out.too_deep;) {
    if (lattice.at[at] == lattice.at[at + 1]) {
      ++at;
      continue;
    }
    const Word& word = lattice.words[lattice.at[at]];
    if (word.kind == WordKind::mark) meet(pairing, at, before);
    before = &word;
    if (word.kind == WordKind::mark && word.mark != '*') before = nullptr;
    at = std::max(word.end, at + 1);
  }
  if (out.too_deep) return out;
  pair_slashes(pairing, named("in"));
  for (; !pairing.open.empty(); pairing.open.pop_back())
    if (pairing.open.back().mark == '*') put_open_star(pairing, pairing.open.back().at, size);
  pair_told_places(text, lattice, vocabulary, out);
  return out;
}

} // namespace whorl::pattern
