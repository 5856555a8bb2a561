#include "pattern/alphabet.hpp"

#include "words/letters.hpp"

#include <algorithm>
#include <array>

namespace whorl::pattern {

namespace {

/// What a letter means where nobody says.
struct HabitualLetter {
  char letter;
  const char* means; ///< name of a concept
  std::uint16_t in_one = 1;
  const char* said; ///< as it is told
};
constexpr std::array<HabitualLetter, 7> habitual{{{'x', "sc", 1, "sc"},
                                                  {'v', "increase", 1, "inc"},
                                                  {'a', "dec", 1, "dec"},
                                                  {'w', "sc", 3, "3 sc in one stitch"},
                                                  {'m', "sc3tog", 1, "sc3tog"},
                                                  {'t', "hdc", 1, "hdc"},
                                                  {'f', "dc", 1, "dc"}}};
using Seen = std::array<int, habitual.size()>;

constexpr int most_words = 3; ///< of two letters and more, in a line that works in letters

std::size_t place_of(char32_t small) {
  for (std::size_t i = 0; i < habitual.size(); ++i)
    if (static_cast<char32_t>(habitual[i].letter) == small) return i;
  return habitual.size();
}

/// A line of work: it begins with a figure or with a label and a figure.
bool begins_with_label(std::string_view line) {
  std::size_t at = line.find_first_not_of(" \t-*");
  for (int letters = 0; at != std::string_view::npos && at < line.size() && letters < 6; ++letters) {
    const words::Letter letter = words::letter_at(line, at);
    if (line[at] >= '0' && line[at] <= '9') return true;
    if (letter.code != ' ' && !words::is_letter(words::lower(letter.code))) return false;
    at += letter.length;
  }
  return false;
}

/// Lines counted, and the letters that stand alone in those that work in letters.
struct Counted {
  int lines = 0;
  int in_letters = 0;
  Seen seen{};
};

void count_line(std::string_view line, Counted& counted) {
  Seen seen{};
  int words = 0;
  char32_t first = 0;
  std::size_t run = 0;
  const auto end_run = [&] {
    const char32_t small = words::lower(first);
    const std::size_t place =
        run == 1 && small != first ? place_of(words::look_alike(small)) : habitual.size();
    if (place < habitual.size()) ++seen[place];
    if (run > 1) ++words;
    run = 0;
  };
  for (std::size_t at = 0; at < line.size();) {
    const words::Letter letter = words::letter_at(line, at);
    if (letter.valid && words::is_letter(words::lower(letter.code))) {
      if (run++ == 0) first = letter.code;
    } else {
      end_run();
    }
    at += letter.length;
  }
  end_run();
  ++counted.lines;
  const int alone = seen[0] + seen[1] + seen[2];
  if (alone == 0 || words > most_words) return;
  ++counted.in_letters;
  for (std::size_t i = 0; i < seen.size(); ++i) counted.seen[i] += seen[i];
}

bool is_explained(const OwnWords& own, char letter) {
  if (std::find(own.as_known.begin(), own.as_known.end(), std::string(1, letter)) != own.as_known.end())
    return true;
  return std::any_of(own.phrases.begin(), own.phrases.end(), [letter](const words::PhraseEntry& entry) {
    return entry.phrase.size() == 1 && entry.phrase.front() == letter;
  });
}

words::Concept concept_of(const HabitualLetter& letter, const words::Vocabulary& vocabulary, OwnWords& own) {
  const words::Concept known = words::find_concept(vocabulary, letter.means);
  if (letter.in_one == 1 && known != words::no_concept) return known;
  words::ConceptEntry entry{letter.in_one == 1 ? letter.means : std::string(1, letter.letter),
                            words::ConceptClass::stitch};
  if (letter.in_one > 1) entry.works = letter.means, entry.in_one = letter.in_one;
  own.concepts.push_back(std::move(entry));
  return static_cast<words::Concept>(vocabulary.concepts.size() + own.concepts.size() - 1);
}

void tell_letters(const std::vector<const HabitualLetter*>& letters, OwnWords& own) {
  std::string told;
  for (std::size_t i = 0; i < letters.size(); ++i) {
    told += i == 0 ? "" : i + 1 == letters.size() ? " and " : ", ";
    told += "`" + std::string(1, static_cast<char>(letters[i]->letter - 32)) + "` as " + letters[i]->said;
  }
  Finding finding;
  finding.severity = Severity::note;
  finding.code = "letters";
  finding.message = "I read " + told + ", as is the habit; a list in the pattern (`X = sc`) says so";
  own.findings.push_back(std::move(finding));
}

} // namespace

bool add_found_letters(const Source& source, const words::Vocabulary& vocabulary, OwnWords& own) {
  Counted counted;
  for (std::size_t i = 0; i < source.line_count(); ++i) {
    const std::string_view line = source.at(source.line(i));
    if (!line.empty() && begins_with_label(line)) count_line(line, counted);
  }
  if (counted.in_letters < 2 || counted.in_letters * 2 <= counted.lines || counted.seen[0] == 0) return false;
  std::vector<const HabitualLetter*> found;
  for (std::size_t i = 0; i < habitual.size(); ++i)
    if (counted.seen[i] > 0 && !is_explained(own, habitual[i].letter)) found.push_back(&habitual[i]);
  for (const HabitualLetter* letter : found) {
    words::PhraseEntry entry;
    entry.phrase = std::string(1, letter->letter);
    entry.means = concept_of(*letter, vocabulary, own);
    entry.letters = words::Capitals::capital;
    own.phrases.push_back(std::move(entry));
  }
  if (!found.empty()) tell_letters(found, own);
  return !found.empty();
}

} // namespace whorl::pattern
