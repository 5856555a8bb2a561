#include "pattern/opened.hpp"

#include "words/ascii.hpp"

#include <optional>
#include <string_view>

namespace whorl::pattern {

namespace {

using words::ConceptClass;
using words::Folded;
using words::Lattice;
using words::Vocabulary;
using words::Word;
using words::WordKind;

std::uint32_t behind_blanks(std::string_view text, std::uint32_t at) {
  while (at < text.size() && text[at] == ' ') ++at;
  return at;
}

/// What brackets hold that a line may as well say without them.
struct Held {
  bool only = true; ///< nothing but the words asked for
  bool loops = false, number = false, times = false, repeat = false, around = false;
};

/// Whether one of the words at a place has this name.
bool has_name(const Lattice& lattice, const Vocabulary& vocabulary, std::uint32_t at, std::string_view name) {
  for (std::uint32_t i = lattice.at[at]; i < lattice.at[at + 1]; ++i)
    if (lattice.words[i].kind == WordKind::phrase && vocabulary.concepts[lattice.words[i].means].name == name)
      return true;
  return false;
}

/// Whether one of the words at a place is a stitch: the "x" of "(12x)", where it is no times sign alone.
bool has_stitch(const Lattice& lattice, const Vocabulary& vocabulary, std::uint32_t at) {
  for (std::uint32_t i = lattice.at[at]; i < lattice.at[at + 1]; ++i)
    if (lattice.words[i].kind == WordKind::phrase &&
        vocabulary.concepts[lattice.words[i].means].sort == ConceptClass::stitch)
      return true;
  return false;
}

/// Takes the word at a place into account; where it ends.
std::uint32_t hold(const Lattice& lattice, const Vocabulary& vocabulary, std::uint32_t at, Held& held) {
  if (lattice.at[at] == lattice.at[at + 1]) {
    held.only = false;
    return at + 1;
  }
  const Word& word = lattice.words[lattice.at[at]];
  const bool phrase = word.kind == WordKind::phrase;
  const auto named = [&](std::string_view name) { return has_name(lattice, vocabulary, at, name); };
  const bool loops = phrase && vocabulary.concepts[word.means].sort == ConceptClass::loops;
  const bool number = word.kind == WordKind::number;
  const bool times = word.mark == '*' || (named("times") && !has_stitch(lattice, vocabulary, at));
  const bool repeat = named("repeat"), around = named("around");
  const bool only = phrase && vocabulary.concepts[word.means].sort == ConceptClass::filler; // "(only BLO)"
  held.loops = held.loops || loops;
  held.number = held.number || number;
  held.times = held.times || times;
  held.repeat = held.repeat || repeat;
  held.around = held.around || around;
  held.only = held.only && (loops || number || times || repeat || around || only || named("total"));
  return word.end;
}

Held held_in(const Folded& line, const Lattice& lattice, const Vocabulary& vocabulary, std::uint32_t begin,
             std::uint32_t end) {
  Held held;
  for (std::uint32_t at = behind_blanks(line.text, begin); held.only && at < end;
       at = behind_blanks(line.text, at))
    at = hold(lattice, vocabulary, at, held);
  return held;
}

bool holds_loops(const Held& held) {
  return held.only && held.loops && !held.number && !held.times && !held.repeat && !held.around;
}

bool holds_repeat(const Held& held) {
  if (!held.only || held.loops) return false;
  return held.number ? held.times || held.repeat : held.repeat && held.around;
}

bool works_at(const Lattice& lattice, const Vocabulary& vocabulary, std::uint32_t at) {
  for (std::uint32_t i = lattice.at[at]; i < lattice.at[at + 1]; ++i) {
    if (lattice.words[i].kind != WordKind::phrase) continue;
    const words::ConceptEntry& entry = vocabulary.concepts[lattice.words[i].means];
    if (entry.sort == ConceptClass::stitch || entry.sort == ConceptClass::decrease ||
        entry.name == "increase")
      return true;
  }
  return false;
}

/// "1 x dec": the word for times tells how many of the stitch behind it.
bool multiplies_stitch(const Folded& line, const Lattice& lattice, const Vocabulary& vocabulary,
                       std::uint32_t times) {
  const std::uint32_t behind = behind_blanks(line.text, lattice.words[lattice.at[times]].end);
  return behind < line.text.size() && works_at(lattice, vocabulary, behind);
}

/// Whether a repeat is told before a place.
bool repeats_before(const Folded& line, const Lattice& lattice, const Vocabulary& vocabulary,
                    std::uint32_t place) {
  for (std::uint32_t at = 0; at < place; ++at) {
    if (has_name(lattice, vocabulary, at, "repeat")) return true;
    if (has_name(lattice, vocabulary, at, "times") && !multiplies_stitch(line, lattice, vocabulary, at))
      return true;
  }
  return false;
}

bool works_before(const Lattice& lattice, const Vocabulary& vocabulary, std::uint32_t place) {
  for (std::uint32_t at = 0; at < place; ++at)
    if (works_at(lattice, vocabulary, at)) return true;
  return false;
}

bool is_mark(char c) { return std::string_view(",;.").find(c) != std::string_view::npos; }

/// Whether a bracket stands among the pieces of a round by itself: between marks, or before a word that is
/// none of the craft, "(…) paw".
bool stands_alone(const Folded& line, const Lattice& lattice, const Vocabulary& vocabulary,
                  std::uint32_t begin, std::uint32_t end) {
  while (begin > 0 && line.text[begin - 1] == ' ') --begin;
  if (begin == 0 || !is_mark(line.text[begin - 1])) return false;
  const std::uint32_t next = behind_blanks(line.text, end);
  if (next >= line.text.size() || is_mark(line.text[next])) return true;
  if (lattice.at[next] == lattice.at[next + 1]) return false;
  return lattice.words[lattice.at[next]].kind == WordKind::unknown ||
         has_name(lattice, vocabulary, next, "piece");
}

/// "(ch 3, sc in same st)": chains, and a stitch that goes where the one before the bracket went.
bool holds_more_in_same(const Folded& line, const Lattice& lattice, const Vocabulary& vocabulary,
                        std::uint32_t begin, std::uint32_t end) {
  int stitches = 0;
  bool same = false;
  if (!has_name(lattice, vocabulary, behind_blanks(line.text, begin), "ch")) return false;
  for (std::uint32_t at = behind_blanks(line.text, begin); at < end; at = behind_blanks(line.text, at)) {
    if (lattice.at[at] == lattice.at[at + 1]) return false;
    const Word& word = lattice.words[lattice.at[at]];
    const auto named = [&](std::string_view name) { return has_name(lattice, vocabulary, at, name); };
    const ConceptClass sort =
        word.kind == WordKind::phrase ? vocabulary.concepts[word.means].sort : ConceptClass::word;
    same = same || named("same");
    stitches += sort == ConceptClass::stitch && !named("ch");
    const bool fits = word.kind == WordKind::number || (word.kind == WordKind::mark && is_mark(word.mark)) ||
                      sort == ConceptClass::stitch || sort == ConceptClass::filler || named("same") ||
                      named("in") || named("st") || named("and");
    if (!fits) return false;
    at = word.end;
  }
  return same && stitches == 1;
}

char partner(char open) { return open == '(' ? ')' : open == '[' ? ']' : '\0'; }

/// Where letters typed as one part: behind "x" that a figure stands before, before "x" that a figure stands
/// behind, behind or before short loops, before "inc" or "dec"; 0: nowhere.
std::uint32_t parting(const Folded& line, const Word& word, const Vocabulary& vocabulary) {
  const std::string_view letters = std::string_view(line.text).substr(word.begin, word.end - word.begin);
  const auto knows = [&](std::string_view part, auto wanted) {
    const Lattice lattice = words::lattice(words::fold(part), vocabulary);
    if (lattice.words.empty()) return false;
    const Word& first = lattice.words.front();
    return first.kind == WordKind::phrase && first.end == part.size() &&
           wanted(vocabulary.concepts[first.means]);
  };
  const auto works = [](const words::ConceptEntry& entry) {
    return entry.sort == ConceptClass::stitch || entry.sort == ConceptClass::decrease ||
           entry.name == "increase";
  };
  const auto loops = [](const words::ConceptEntry& entry) { return entry.sort == ConceptClass::loops; };
  const auto shapes = [](const words::ConceptEntry& entry) {
    return entry.sort == ConceptClass::decrease || entry.name == "increase";
  };
  const auto stitch = [](const words::ConceptEntry& entry) { return entry.sort == ConceptClass::stitch; };
  for (const std::size_t length : {4U, 3U}) { // "hdcinc", "scdec"
    if (letters.size() < length + 2) continue;
    const std::size_t rest = letters.size() - length;
    if (knows(letters.substr(rest), shapes) && knows(letters.substr(0, rest), stitch))
      return static_cast<std::uint32_t>(rest);
  }
  const bool counted = word.begin > 0 && words::is_digit(line.text[word.begin - 1]);
  if (counted && letters.size() > 2 && letters.front() == 'x' && knows(letters.substr(1), works)) return 1;
  const bool times = word.end < line.text.size() && words::is_digit(line.text[word.end]);
  if (times && letters.size() > 2 && letters.back() == 'x' &&
      knows(letters.substr(0, letters.size() - 1), works))
    return static_cast<std::uint32_t>(letters.size() - 1);
  for (const std::size_t length : {3U, 2U}) {
    if (letters.size() < length + 2) continue;
    if (knows(letters.substr(0, length), loops) && knows(letters.substr(length), works))
      return static_cast<std::uint32_t>(length);
    const std::size_t rest = letters.size() - length;
    if (knows(letters.substr(rest), loops) && knows(letters.substr(0, rest), works))
      return static_cast<std::uint32_t>(rest);
  }
  return 0;
}

} // namespace

bool open_brackets(Folded& line, const Lattice& lattice, const Vocabulary& vocabulary) {
  bool opened = false;
  for (std::uint32_t at = 0; at < line.text.size(); ++at) {
    const char closing = partner(line.text[at]);
    if (closing == '\0') continue;
    const std::size_t end = line.text.find_first_of("()[]", at + 1);
    if (end == std::string::npos || line.text[end] != closing) continue;
    const auto last = static_cast<std::uint32_t>(end);
    const Held held = held_in(line, lattice, vocabulary, at + 1, last);
    const bool repeat = holds_repeat(held) && works_before(lattice, vocabulary, at) &&
                        !repeats_before(line, lattice, vocabulary, at);
    const bool more = works_before(lattice, vocabulary, at) &&
                      stands_alone(line, lattice, vocabulary, at, last + 1) &&
                      holds_more_in_same(line, lattice, vocabulary, at + 1, last);
    if (!holds_loops(held) && !repeat && !more) continue;
    line.text[at] = line.text[end] = ' ';
    opened = true;
  }
  return opened;
}

bool part_words(Folded& line, const Lattice& lattice, const Vocabulary& vocabulary) {
  bool parted = false;
  for (std::size_t i = lattice.words.size(); i-- > 0;) {
    const Word& word = lattice.words[i];
    if (word.kind != WordKind::unknown) continue;
    const std::uint32_t length = parting(line, word, vocabulary);
    if (length == 0) continue;
    const std::uint32_t at = word.begin + length;
    line.text.insert(at, 1, ' ');
    line.from.insert(line.from.begin() + at, line.from[at]);
    line.capital.insert(line.capital.begin() + at, false);
    parted = true;
  }
  return parted;
}

} // namespace whorl::pattern
