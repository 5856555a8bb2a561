#include "words/lattice.hpp"

#include "words/ascii.hpp"
#include "words/costs.hpp"
#include "words/letters.hpp"
#include "words/scanned.hpp"

#include <algorithm>

namespace whorl::words {

namespace {

constexpr std::size_t longest_scanned = 4; ///< letters of a number
constexpr std::uint32_t largest_number = 999'999'999;

/// One line being looked up.
struct Search {
  const Folded& line;
  const Vocabulary& vocabulary;
  Lattice& out;
  std::size_t grown =
      std::string_view::npos; ///< where a word begins that is grown together with the one before
  std::string_view text() const { return line.text; }
};

bool is_ascii_letter(char c) { return c >= 'a' && c <= 'z'; }

/// Bytes of the letter at `at`, 0 if there is none.
std::uint32_t letter_length(std::string_view text, std::size_t at) {
  if (at >= text.size()) return 0;
  if (static_cast<unsigned char>(text[at]) < 0x80) return is_ascii_letter(text[at]) ? 1 : 0;
  const Letter letter = letter_at(text, at);
  return is_letter(letter.code) ? letter.length : 0;
}

std::size_t end_of_letters(std::string_view text, std::size_t at) {
  for (std::uint32_t step = letter_length(text, at); step != 0; step = letter_length(text, at)) at += step;
  return at;
}

/// An apostrophe with letters on both sides belongs to the word.
std::size_t end_of_unknown(std::string_view text, std::size_t at) {
  std::size_t end = end_of_letters(text, at);
  while (end < text.size() && text[end] == '\'' && letter_length(text, end + 1) != 0)
    end = end_of_letters(text, end + 1);
  return end;
}

/// A blank of a phrase is any run of blanks in the text, or one hyphen.
std::size_t pass_blank(std::string_view text, std::size_t at) {
  if (at < text.size() && text[at] == '-') return at + 1;
  std::size_t end = at;
  while (end < text.size() && text[end] == ' ') ++end;
  return end;
}

/// A phrase that is a sign ("×") may have letters right behind it.
bool ends_in_letter(std::string_view phrase) {
  std::size_t last = phrase.size();
  while (last > 0 && (static_cast<unsigned char>(phrase[last - 1]) & 0xC0) == 0x80) --last;
  return last > 0 && letter_length(phrase, last - 1) != 0;
}

/// Where `phrase` ends if the text reads so from `at`; 0 if it does not.
std::size_t end_of_phrase(std::string_view text, std::size_t at, std::string_view phrase, bool blanks) {
  if (phrase.empty()) return 0;
  const bool open = phrase.size() > 1 && phrase.back() == '~'; // by itself it is a mark: "6~9"
  if (open) phrase.remove_suffix(1);
  for (const char c : phrase) {
    if (c == ' ') {
      const std::size_t next = pass_blank(text, at);
      if (next == at) return 0;
      at = next;
    } else {
      if (at >= text.size() || text[at] != c) return 0;
      ++at;
    }
  }
  if (open) return end_of_letters(text, at);
  const bool inside = blanks && letter_length(text, at) != 0 && ends_in_letter(phrase);
  return inside ? 0 : at;
}

void put(Search& search, Word word) {
  word.span = search.line.span(word.begin, word.end);
  word.glued = word.begin > 0 && search.text()[word.begin - 1] != ' ';
  search.out.words.push_back(word);
}

Word word_of(const PhraseEntry& entry, std::size_t begin, std::size_t end) {
  Word word;
  word.begin = static_cast<std::uint32_t>(begin);
  word.end = static_cast<std::uint32_t>(end);
  word.kind = entry.means == no_concept ? WordKind::number : WordKind::phrase;
  word.means = entry.means;
  word.number = entry.number;
  word.cost = entry.cost;
  return word;
}

bool has_capitals(const Search& search, std::size_t at, Capitals letters) {
  return letters == Capitals::either || search.line.capital[at] == (letters == Capitals::capital);
}

/// Every phrase that begins with the letters `first` and reads on in `text` from `at`; `base` is where `at`
/// stands in the line.
void put_phrases(Search& search, std::string_view text, std::size_t at, std::size_t base,
                 std::string_view first, int cost) {
  const auto& all = search.vocabulary.phrases;
  const auto byte = static_cast<unsigned char>(first.front());
  const auto place = [&](std::size_t b) {
    return all.begin() + static_cast<std::ptrdiff_t>(search.vocabulary.by_byte[b]);
  };
  auto entry = place(byte);
  const auto last = place(byte + 1U);
  if (last - entry > 8)
    entry = std::lower_bound(entry, last, first,
                             [](const PhraseEntry& e, std::string_view key) { return e.phrase < key; });
  for (; entry != last; ++entry) {
    const int order = std::string_view(entry->phrase).substr(0, first.size()).compare(first);
    if (order > 0) break;
    if (order < 0 || entry->write || !has_capitals(search, base, entry->letters)) continue;
    const std::size_t end = end_of_phrase(text, at, entry->phrase, search.vocabulary.blanks_between_words);
    if (end == 0) continue;
    Word word = word_of(*entry, base, base + (end - at));
    word.cost += cost;
    put(search, word);
  }
}

/// Phrases whose ending is left open, by every beginning of the letters at `at`.
void put_open_phrases(Search& search, std::size_t at, std::size_t end) {
  for (std::size_t stop = at; stop < end;) {
    stop += letter_length(search.text(), stop);
    const std::string key = std::string(search.text().substr(at, stop - at)) + "~";
    put_phrases(search, search.text(), at, at, key, 0);
  }
}

std::string latin_key(std::string_view letters) {
  std::string key;
  for (std::size_t at = 0; at < letters.size();) {
    const Letter letter = letter_at(letters, at);
    append_utf8(key, look_alike(letter.code));
    at += letter.length;
  }
  return key;
}

/// Letters that nobody knows, looked up once more as the Latin letters they look like.
void put_look_alikes(Search& search, std::size_t begin, std::size_t end) {
  const std::string key = latin_key(search.text().substr(begin, end - begin));
  if (key.size() == end - begin) return;
  const std::size_t before = search.out.words.size();
  put_phrases(search, key, 0, begin, key, cost::look_alike);
  for (std::size_t i = before; i < search.out.words.size(); ++i) {
    search.out.words[i].end = static_cast<std::uint32_t>(end);
    search.out.words[i].span = search.line.span(begin, end);
  }
}

/// A run of `letters` figures and letters that is a number by one of its figures, or `l`, `lO` and `з`.
bool is_scanned(std::string_view run, std::size_t letters) {
  const bool figure = std::any_of(run.begin(), run.end(), [](char c) { return is_digit(c) && c != '0'; });
  const bool letter = std::any_of(run.begin(), run.end(), [](char c) { return !is_digit(c); });
  const bool short_one = !run.empty() && !is_digit(run.front()) && scanned_digit(run, 0).value > 0;
  return letters <= longest_scanned && letter && (figure || (short_one && letters <= 2));
}

/// `l` for 1, `lO` for 10, `2O` for 20: scanning takes figures for letters.
void put_scanned_number(Search& search, std::size_t at) {
  const std::string_view text = search.text();
  std::uint64_t value = 0;
  std::size_t end = at, count = 0;
  for (; end < text.size() && count < longest_scanned; ++count) {
    const ScannedDigit digit = scanned_digit(text, end);
    if (digit.value < 0) break;
    value = value * 10 + static_cast<std::uint64_t>(digit.value);
    end += digit.length;
  }
  const bool elided = end < text.size() && text[end] == '\''; // l'anneau
  const std::uint32_t letter = letter_length(text, end);
  const bool runs_on = search.vocabulary.blanks_between_words ? letter != 0 : letter == 1; // "l2目"
  if (value == 0 || elided || runs_on || !is_scanned(text.substr(at, end - at), count)) return;
  Word number;
  number.kind = WordKind::number;
  number.begin = static_cast<std::uint32_t>(at);
  number.end = static_cast<std::uint32_t>(end);
  number.number = static_cast<std::uint32_t>(value);
  number.cost = cost::scanned;
  put(search, number);
}

/// "Зх" for "3х": a Cyrillic letter that is typed for a 3, one letter of the craft glued to it.
void put_glued_three(Search& search, std::size_t at, std::size_t end) {
  const ScannedDigit digit = scanned_digit(search.text(), at);
  const std::size_t behind = at + digit.length;
  if (digit.length != 2 || digit.value <= 0 || behind + letter_length(search.text(), behind) != end) return;
  Word number;
  number.kind = WordKind::number;
  number.begin = static_cast<std::uint32_t>(at);
  number.end = static_cast<std::uint32_t>(behind);
  number.number = static_cast<std::uint32_t>(digit.value);
  number.cost = cost::scanned;
  search.grown = behind;
  put(search, number);
}

/// "sechsmal": the number, and the word for times behind it.
void put_number_of_times(Search& search, std::size_t at, std::size_t end) {
  const std::string_view run = search.text().substr(at, end - at);
  for (const std::string& ending : search.vocabulary.times_endings) {
    if (run.size() <= ending.size() || run.substr(run.size() - ending.size()) != ending) continue;
    const std::string_view head = run.substr(0, run.size() - ending.size());
    const auto& all = search.vocabulary.phrases;
    auto entry = std::lower_bound(all.begin(), all.end(), head,
                                  [](const PhraseEntry& e, std::string_view key) { return e.phrase < key; });
    for (; entry != all.end() && entry->phrase == head; ++entry) {
      if (entry->write || entry->means != no_concept) continue;
      search.grown = end - ending.size();
      put(search, word_of(*entry, at, search.grown));
    }
  }
}

void put_letters(Search& search, std::size_t at) {
  const std::size_t before = search.out.words.size();
  const std::size_t end = end_of_letters(search.text(), at);
  const std::size_t first =
      search.vocabulary.blanks_between_words ? end - at : letter_length(search.text(), at);
  put_phrases(search, search.text(), at, at, search.text().substr(at, first), 0);
  if (scanned_digit(search.text(), at).value >= 0) put_scanned_number(search, at);
  if (search.vocabulary.open_endings) put_open_phrases(search, at, end);
  if (!search.vocabulary.times_endings.empty()) put_number_of_times(search, at, end);
  if (search.out.words.size() == before) put_look_alikes(search, at, end);
  if (search.out.words.size() == before) put_glued_three(search, at, end);
  if (search.out.words.size() != before) return;
  Word unknown;
  unknown.begin = static_cast<std::uint32_t>(at);
  unknown.end = static_cast<std::uint32_t>(end_of_unknown(search.text(), at));
  unknown.cost = cost::unknown;
  put(search, unknown);
}

void put_number(Search& search, std::size_t at) {
  put_scanned_number(search, at);
  put_phrases(search, search.text(), at, at, search.text().substr(at, 1), 0);
  Word number;
  number.kind = WordKind::number;
  number.begin = static_cast<std::uint32_t>(at);
  std::uint64_t value = 0;
  for (; at < search.text().size() && is_digit(search.text()[at]); ++at)
    value = std::min<std::uint64_t>(value * 10 + static_cast<std::uint64_t>(search.text()[at] - '0'),
                                    largest_number);
  number.end = static_cast<std::uint32_t>(at);
  number.number = static_cast<std::uint32_t>(value);
  put(search, number);
}

void put_mark(Search& search, std::size_t at) {
  const std::uint32_t length = letter_at(search.text(), at).length;
  const std::size_t before = search.out.words.size();
  put_phrases(search, search.text(), at, at, search.text().substr(at, length), 0);
  // a sign that no sentence needs is only what the pattern's own list says
  const bool only_own =
      length > 1 || std::string_view("^#%@~").find(search.text()[at]) != std::string_view::npos;
  if (only_own && search.out.words.size() > before) return;
  Word mark;
  mark.kind = WordKind::mark;
  mark.mark = length == 1 ? search.text()[at] : '?';
  mark.begin = static_cast<std::uint32_t>(at);
  mark.end = mark.begin + length;
  if (mark.mark == '*' && search.text().substr(at + 1, 1) == "*") ++mark.end;
  put(search, mark);
}

/// True if a word may begin at `at`: not inside a run of letters or digits, not on a blank or inside a
/// character.
bool may_begin(const Search& search, std::size_t at) {
  const std::string_view text = search.text();
  if (text[at] == ' ' || (static_cast<unsigned char>(text[at]) & 0xC0) == 0x80) return false;
  if (at == 0) return true;
  if (is_digit(text[at])) return !is_digit(text[at - 1]);
  if (letter_length(text, at) == 0 || !search.vocabulary.blanks_between_words) return true;
  std::size_t before = at - 1;
  while (before > 0 && (static_cast<unsigned char>(text[before]) & 0xC0) == 0x80) --before;
  return letter_length(text, before) == 0;
}

/// A word's length, without a full stop that may as well end a sentence: `st.`, at a cost.
std::uint32_t sure_end(const Search& search, const Word& word) {
  return word.cost > 0 && search.text()[word.end - 1] == '.' ? word.end - 1 : word.end;
}

void longest_first(const Search& search, std::vector<Word>& words, std::size_t first) {
  for (std::size_t i = first + 1; i < words.size(); ++i)
    for (std::size_t j = i; j > first && sure_end(search, words[j]) > sure_end(search, words[j - 1]); --j)
      std::swap(words[j], words[j - 1]);
}

} // namespace

std::vector<Span> scanned_figures(std::string_view text, std::uint32_t begin) {
  std::vector<Span> spans;
  const Folded line = fold(text, begin);
  const auto length = [&line](std::size_t at) {
    if (at >= line.text.size()) return std::size_t{0};
    return is_digit(line.text[at]) ? std::size_t{1} : letter_length(line.text, at);
  };
  for (std::size_t at = 0; at < line.text.size();) {
    std::size_t end = at, count = 0;
    bool all = true;
    for (; const std::size_t bytes = length(end); end += bytes, ++count)
      all = all && scanned_digit(line.text, end).value >= 0;
    if (end > at && all && is_scanned(std::string_view(line.text).substr(at, end - at), count))
      spans.push_back(line.span(at, end));
    at = std::max(end, at + 1);
  }
  return spans;
}

Lattice lattice(const Folded& line, const Vocabulary& vocabulary) {
  Lattice out;
  out.at.reserve(line.text.size() + 1);
  out.words.reserve(line.text.size() / 2 + 8);
  Search search{line, vocabulary, out, std::string_view::npos};
  for (std::size_t at = 0; at < line.text.size(); ++at) {
    const std::size_t first = out.words.size();
    out.at.push_back(static_cast<std::uint32_t>(first));
    if (!may_begin(search, at) && at != search.grown) continue;
    if (is_digit(line.text[at]))
      put_number(search, at);
    else if (letter_length(line.text, at) != 0)
      put_letters(search, at);
    else
      put_mark(search, at);
    longest_first(search, out.words, first);
  }
  out.at.push_back(static_cast<std::uint32_t>(out.words.size()));
  return out;
}

} // namespace whorl::words
