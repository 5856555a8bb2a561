#include "words/telling.hpp"

#include "words/ascii.hpp"
#include "words/letters.hpp"
#include "words/vocabulary.hpp"
#include "words/vocabulary_table.hpp"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <map>
#include <span>

namespace whorl::words {

namespace {

constexpr std::size_t most_words = 160;    ///< different words of a text that are looked at
constexpr std::size_t most_times = 4;      ///< a word that stands more often tells no more
constexpr std::size_t shortest_open = 3;   ///< letters before an open ending
constexpr double of_single_letter = 0.5;   ///< what a letter by itself weighs: a sign, or typed for another
constexpr double letters_told = 1.0 / 3.0; ///< what a letter of a script without blanks weighs

bool is_language(std::string_view tag, std::string_view extends) {
  return extends.empty() && tag.find("-x-") == std::string_view::npos;
}

/// A language being weighed.
struct Candidate {
  LanguageWeight said;
  const Vocabulary* added = nullptr;    ///< one that was added while the program runs …
  const LanguageTable* table = nullptr; ///< … or one built in
  std::vector<std::pair<double, std::string>> told;
};

std::vector<Candidate> candidates() {
  std::vector<Candidate> all;
  for (const LanguageTable& table : std::span(language_tables, language_table_count))
    if (is_language(table.language, table.extends)) {
      all.emplace_back();
      all.back().said.language = table.language;
      all.back().table = &table;
    }
  for (const Vocabulary* vocabulary : added_vocabularies())
    if (is_language(vocabulary->language, vocabulary->extends)) {
      const auto same = std::find_if(all.begin(), all.end(), [&](const Candidate& candidate) {
        return candidate.said.language == vocabulary->language;
      });
      Candidate& candidate = same == all.end() ? all.emplace_back() : *same;
      candidate.said.language = vocabulary->language;
      candidate.added = vocabulary;
    }
  return all;
}

/// The built-in languages that have a phrase which begins with a word.
std::uint32_t languages_of(std::string_view word) {
  const std::span rows(word_rows, word_row_count);
  const auto at = std::lower_bound(rows.begin(), rows.end(), word,
                                   [](const WordRow& row, std::string_view key) { return row.word < key; });
  return at != rows.end() && at->word == word ? at->languages : 0;
}

/// The same with endings left open: `nächst~`.
std::uint32_t languages_of_open(std::string_view word) {
  std::uint32_t languages = languages_of(word);
  for (std::size_t end = shortest_open; end <= word.size(); ++end)
    languages |= languages_of(std::string(word.substr(0, end)) + '~');
  return languages;
}

bool has_word(const Vocabulary& vocabulary, std::string_view word) {
  auto at =
      std::lower_bound(vocabulary.phrases.begin(), vocabulary.phrases.end(), word,
                       [](const PhraseEntry& entry, std::string_view key) { return entry.phrase < key; });
  const auto begins = [&](const PhraseEntry& entry) {
    return entry.phrase.compare(0, word.size(), word) == 0 &&
           (entry.phrase.size() == word.size() || entry.phrase[word.size()] == ' ');
  };
  for (; at != vocabulary.phrases.end() && at->phrase.compare(0, word.size(), word) == 0; ++at)
    if (!at->write && begins(*at)) return true;
  return false;
}

bool is_of_script_without_blanks(std::string_view word) { return letter_at(word, 0).code >= 0x2E80; }

bool has_figures(const std::string& line) { return std::any_of(line.begin(), line.end(), is_digit); }

/// "x: maglia bassa", "v - increase", "x sc / v inc": a short name, and what it means.
bool may_be_definition(const std::string& line) {
  constexpr std::size_t longest_name = 4;
  if (line.find(" / ") != std::string::npos) return true;
  const std::size_t comma = line.find(", ");
  const auto letter_alone = [&line](std::size_t at) { return at + 1 < line.size() && line[at + 1] == ' '; };
  if (comma != std::string::npos && letter_alone(0) && letter_alone(comma + 2)) return true;
  const std::size_t end = line.find_first_of(" :");
  if (end == std::string::npos || end > longest_name) return false;
  return line[end] == ':' || line.compare(end, 3, " - ") == 0 || line.compare(end, 2, " :") == 0;
}

/// "Kulak", "left ear": a word or two without a figure may be the name of a part.
bool may_be_name(const std::string& line) {
  constexpr std::ptrdiff_t most_blanks = 1;
  constexpr std::size_t longest = 40;
  return !line.empty() && line.size() <= longest && std::count(line.begin(), line.end(), ' ') <= most_blanks;
}

/// Whether a line may be work: it has a figure in it, or is of a script whose numbers may be words.
bool may_be_work(const std::string& line) {
  if (may_be_definition(line) || may_be_name(line)) return true;
  // the heading of a table and a list of abbreviations too
  return line.find_first_of("0123456789|\t=") != std::string::npos ||
         std::any_of(line.begin(), line.end(), [](char c) { return static_cast<unsigned char>(c) >= 0xE2; });
}

/// The words of lines that may be work, with how often they stand there.
std::map<std::string, std::size_t, std::less<>> words_of(const std::vector<std::string>& lines) {
  const auto figures = std::count_if(lines.begin(), lines.end(), has_figures);
  const bool any = figures == 0 || (figures == 1 && lines.size() > 3); // all numbers are words
  std::map<std::string, std::size_t, std::less<>> words;
  for (const std::string& line : lines) {
    if (!any && !may_be_work(line)) continue;
    for (std::size_t at = 0; at < line.size() && words.size() < most_words;) {
      std::size_t end = at;
      while (end < line.size() && !is_digit(line[end])) {
        const Letter letter = letter_at(line, end);
        if (letter.code < 0x80 ? !(line[end] >= 'a' && line[end] <= 'z') : !is_letter(letter.code)) break;
        end += letter.length;
      }
      if (end > at) ++words[line.substr(at, end - at)];
      at = end > at ? end : at + letter_at(line, at).length;
    }
  }
  return words;
}

/// How many letters of a run the phrases of a language without blanks cover.
std::size_t covered(std::string_view run, const LanguageTable& table) {
  const std::span phrases(table.phrases, table.phrase_count);
  std::size_t letters = 0;
  for (std::size_t at = 0; at < run.size();) {
    std::size_t longest = 0;
    const std::string_view first = run.substr(at, letter_at(run, at).length);
    auto entry =
        std::lower_bound(phrases.begin(), phrases.end(), first,
                         [](const PhraseRow& row, std::string_view key) { return row.phrase < key; });
    for (; entry != phrases.end() && std::strncmp(entry->phrase, first.data(), first.size()) == 0; ++entry) {
      const std::string_view phrase = entry->phrase;
      if (phrase.size() > longest && run.substr(at, phrase.size()) == phrase) longest = phrase.size();
    }
    if (longest > first.size()) letters += longest / first.size();
    at += std::max(longest, first.size());
  }
  return letters;
}

void weigh(std::vector<Candidate>& all, std::string_view word, std::size_t times) {
  const std::uint32_t built_in = languages_of_open(word);
  std::vector<Candidate*> know;
  std::uint32_t bit = 0;
  for (Candidate& candidate : all) {
    const bool of_table = candidate.table != nullptr && (built_in >> bit & 1U) != 0;
    if (candidate.table != nullptr) ++bit;
    if (candidate.added != nullptr ? has_word(*candidate.added, word) : of_table) know.push_back(&candidate);
  }
  const bool single = letter_at(word, 0).length == word.size();
  const double whole =
      (single ? of_single_letter : 1) * std::sqrt(static_cast<double>(std::min(times, most_times)));
  const double weight = whole / static_cast<double>(std::max<std::size_t>(know.size(), 1));
  for (Candidate* candidate : know) {
    candidate->said.weight += weight;
    candidate->said.known += whole;
    candidate->told.emplace_back(weight, word);
  }
}

void weigh_without_blanks(std::vector<Candidate>& all, std::string_view word, std::size_t times) {
  for (Candidate& candidate : all)
    if (candidate.table != nullptr && !candidate.table->blanks_between_words)
      candidate.said.weight += letters_told * static_cast<double>(covered(word, *candidate.table)) *
                               static_cast<double>(std::min(times, most_times));
}

} // namespace

std::vector<LanguageWeight> weigh_languages(const std::vector<std::string>& lines) {
  std::vector<Candidate> all = candidates();
  for (const auto& [word, times] : words_of(lines)) {
    if (is_of_script_without_blanks(word)) weigh_without_blanks(all, word, times);
    weigh(all, word, times);
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const Candidate& a, const Candidate& b) { return a.said.weight > b.said.weight; });
  std::vector<LanguageWeight> said;
  for (Candidate& candidate : all) {
    std::stable_sort(candidate.told.begin(), candidate.told.end(),
                     [](const auto& a, const auto& b) { return a.first > b.first; });
    for (const auto& [weight, word] : candidate.told)
      if (candidate.said.only.size() < 3) candidate.said.only.push_back(word);
    said.push_back(std::move(candidate.said));
  }
  return said;
}

namespace {

bool is_called(std::string_view called, std::string_view name) {
  for (std::size_t at = 0; at < called.size();) {
    const std::size_t bar = std::min(called.find('|', at), called.size());
    if (called.substr(at, bar - at) == name) return true;
    at = bar + 1;
  }
  return false;
}

bool is_tag(std::string_view tag, std::string_view name) {
  return std::equal(tag.begin(), tag.end(), name.begin(), name.end(),
                    [](char a, char b) { return small(a) == small(b); });
}

} // namespace

std::string_view language_called(std::string_view name) {
  if (name.empty()) return {};
  for (const Vocabulary* vocabulary : added_vocabularies())
    if (is_tag(vocabulary->language, name) ||
        std::find(vocabulary->called.begin(), vocabulary->called.end(), name) != vocabulary->called.end())
      return vocabulary->language;
  for (const LanguageTable& table : std::span(language_tables, language_table_count))
    if (is_tag(table.language, name) || is_called(table.called, name)) return table.language;
  return {};
}

} // namespace whorl::words
