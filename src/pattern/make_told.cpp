#include "pattern/make_told.hpp"

#include "pattern/colour.hpp"
#include "pattern/sentence.hpp"
#include "pattern/text_words.hpp"
#include "words/ascii.hpp"
#include "words/fold.hpp"
#include "words/lattice.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

using words::Word;
using words::WordKind;

constexpr std::uint32_t most_to_make = 1000;
constexpr std::uint32_t most_alike = 12; ///< "Wings (2)": a larger number counts stitches

/// A line that may name a part, looked up.
class Told {
public:
  Told(const Told&) = delete;
  Told& operator=(const Told&) = delete;

  Told(std::string_view text, const words::Vocabulary& vocabulary)
      : vocabulary_(vocabulary), sentence_(sentence_of(text, vocabulary)), line_(sentence_.folded),
        lattice_(sentence_.lattice) {}

  MakeTold make() const {
    const MakeTold told = named_behind();
    return told.count > 0 ? told : make_anywhere();
  }

  /// What the line says if its first words, but for a bracket, are a number of times or of pieces, or make
  /// them: "There are 12." counts stitches.
  MakeTold alone() const {
    MakeTold told = make_anywhere();
    const std::size_t first = std::min(line_.text.find_first_not_of(" ([*-"), line_.text.size());
    if (told.count == 0 || told.count > most_alike || line_.from[first] != told.begin) return {};
    const bool verb = end_of_text_word(vocabulary_, line_.text, first, TextWord::make) > first;
    const bool number = is_times(first) || word_from(first, WordKind::number) != nullptr;
    if (!verb && !number) return {};
    std::size_t behind = 0;
    while (line_.from[behind] < told.end) ++behind;
    told.end = line_.from[std::min(line_.text.find_first_not_of(" )].", behind), line_.text.size())];
    return told;
  }

private:
  MakeTold make_anywhere() const {
    for (const Word& word : lattice_.words)
      if (const MakeTold told = make_at(word); told.count > 0) return told;
    return in_bracket();
  }

  static bool is_one_of(char c, std::string_view marks) { return marks.find(c) != std::string_view::npos; }

  /// The folded line; "×", and a star right before a last number, are an "x".
  static words::Folded with_signs(std::string_view text) {
    words::Folded line = words::fold(text);
    for (std::size_t i = 0; i + 1 < line.text.size(); ++i) {
      if (line.text.compare(i, 2, "×") == 0) line.text[i] = 'x', line.text[i + 1] = ' ';
      const bool last = std::all_of(line.text.begin() + static_cast<std::ptrdiff_t>(i) + 1, line.text.end(),
                                    words::is_digit);
      if (i > 0 && line.text[i] == '*' && last && is_one_of(line.text[i - 1], " )")) line.text[i] = 'x';
    }
    return line;
  }

  static Sentence sentence_of(std::string_view text, const words::Vocabulary& vocabulary) {
    Sentence sentence{vocabulary, with_signs(text), {}, {}};
    sentence.lattice = words::lattice(sentence.folded, vocabulary);
    sentence.in = words::find_concept(vocabulary, "in");
    sentence.with = words::find_concept(vocabulary, "with");
    return sentence;
  }

  std::size_t pass_blanks(std::size_t place) const {
    while (place < line_.text.size() && line_.text[place] == ' ') ++place;
    return place;
  }

  bool is_times(std::size_t place) const {
    const auto letter = [&](std::size_t at) {
      return words::is_small(line_.text[at]) || static_cast<unsigned char>(line_.text[at]) >= 0x80;
    };
    return place < line_.text.size() && line_.text[place] == 'x' &&
           (place + 1 == line_.text.size() || !letter(place + 1)) && (place == 0 || !letter(place - 1));
  }

  const Word* word_from(std::size_t place, WordKind kind) const {
    place = pass_blanks(place);
    if (place >= line_.text.size()) return nullptr;
    for (auto i = lattice_.at[place]; i < lattice_.at[place + 1]; ++i)
      if (lattice_.words[i].kind == kind) return &lattice_.words[i];
    return nullptr;
  }

  bool is(const Word* word, std::string_view name) const {
    return word != nullptr && word->means < vocabulary_.concepts.size() &&
           vocabulary_.concepts[word->means].name == name;
  }

  words::ConceptClass sort(const Word& word) const { return vocabulary_.concepts[word.means].sort; }

  /// "make", "work", "crochet", which change nothing elsewhere.
  bool is_making(const Word& word) const {
    return word.kind == WordKind::phrase && word.means < vocabulary_.concepts.size() &&
           sort(word) == words::ConceptClass::filler;
  }

  /// "make 2 each"
  std::size_t behind_each(std::size_t place) const {
    const Word* next = word_from(place, WordKind::phrase);
    return is(next, "each") ? next->end : place;
  }

  /// Whether a bracket, a comma or a colour ("in pink") stands behind a number, or nothing, so that
  /// it counts the pieces.
  bool counts_pieces(std::size_t place) const {
    place = pass_blanks(place);
    if (place >= line_.text.size() || is_one_of(line_.text[place], "()[],;/.")) return true;
    const auto at = static_cast<std::uint32_t>(place);
    const std::size_t behind = std::min(line_.text.find(' ', place), line_.text.size());
    const auto begin = static_cast<std::uint32_t>(pass_blanks(behind));
    return leads_to_yarn(sentence_, at) && yarn_name_at(sentence_, begin, true).has_value();
  }

  /// The stretch [begin, end) as typed, with the blanks behind it.
  MakeTold told(std::size_t begin, std::size_t end, std::uint32_t count) const {
    end = pass_blanks(end);
    return {line_.from[begin], line_.from[end], std::min(count, most_to_make)};
  }

  MakeTold make_at(const Word& word) const {
    const bool times = is_times(word.begin), making = !times && is_making(word);
    const Word* number = times    ? word_from(word.begin + 1, WordKind::number)
                         : making ? word_from(word.end, WordKind::number)
                                  : nullptr;
    if (making)
      if (const MakeTold pair = pair_at(pass_blanks(word.end), word.begin); pair.count > 0) return pair;
    if (number != nullptr && (times || counts_pieces(behind_each(number->end))))
      return told(word.begin, behind_each(number->end), number->number);
    if (word.kind != WordKind::number) return {};
    const std::size_t behind = pass_blanks(word.end);
    if (is_times(behind)) return told(word.begin, behind + 1, word.number);
    const bool bracket = word.begin > 0 && is_one_of(line_.text[word.begin - 1], "([");
    const Word* pieces = word_from(behind, WordKind::phrase);
    if (bracket && is(pieces, "pieces made") && counts_pieces(pieces->end))
      return told(word.begin, pieces->end, word.number);
    return bracket ? pair_at(word.begin, word.begin) : MakeTold{};
  }

  /// "a pair", "2 pairs", "pair" at a place; what is said begins at `begin`.
  MakeTold pair_at(std::size_t place, std::size_t begin) const {
    const Word* number = word_from(place, WordKind::number);
    std::size_t at = number == nullptr ? place : pass_blanks(number->end);
    if (number == nullptr)
      at = pass_blanks(end_of_text_word(vocabulary_, line_.text, place, TextWord::article));
    const std::size_t end = end_of_text_word(vocabulary_, line_.text, at, TextWord::pair);
    if (end == at || !counts_pieces(end)) return {};
    return told(begin, end, 2 * std::min(number == nullptr ? 1 : number->number, most_to_make / 2));
  }

  /// "Make 2 wings", "Two wings", "2 wings": at the head of the line, the name of a part behind.
  MakeTold named_behind() const {
    const Word* making = word_from(0, WordKind::phrase);
    const Word* number =
        word_from(making != nullptr && is_making(*making) ? making->end : 0, WordKind::number);
    if (number == nullptr || number->number < 2) return {};
    const std::size_t name = pass_blanks(number->end);
    const std::size_t end = end_of_text_word(vocabulary_, line_.text, name, TextWord::part_name);
    if (name == number->end || end == name || !counts_pieces(end)) return {};
    return told(0, number->end, number->number);
  }

  /// Whether a word may stand in the name of a part.
  bool may_name(const Word& word) const {
    if (word.kind == WordKind::number) return false;
    if (word.kind != WordKind::phrase || is(&word, "piece") || is(&word, "leg")) return true;
    return sort(word) == words::ConceptClass::filler || sort(word) == words::ConceptClass::thing;
  }

  /// "Wings (2)": a small number alone in a last bracket, behind words that name no stitch.
  MakeTold in_bracket() const {
    const std::size_t open = line_.text.find_last_of("([");
    if (open == std::string::npos || open == 0) return {};
    const Word* number = word_from(open + 1, WordKind::number);
    if (number == nullptr || number->number < 2 || number->number > most_alike) return {};
    const std::size_t close = pass_blanks(number->end);
    if (close + 1 != line_.text.size() || !is_one_of(line_.text[close], ")]")) return {};
    const bool works = std::any_of(lattice_.words.begin(), lattice_.words.end(),
                                   [&](const Word& word) { return word.begin < open && !may_name(word); });
    return works ? MakeTold{} : told(number->begin, number->end, number->number);
  }

  const words::Vocabulary& vocabulary_;
  Sentence sentence_;
  const words::Folded& line_;
  const words::Lattice& lattice_;
};

} // namespace

MakeTold make_told(std::string_view line, const words::Vocabulary& vocabulary) {
  return Told(line, vocabulary).make();
}

MakeTold make_alone(std::string_view line, const words::Vocabulary& vocabulary) {
  return Told(line, vocabulary).alone();
}

} // namespace whorl::pattern
