#include "pattern/part_word.hpp"

#include "pattern/header.hpp"
#include "pattern/label.hpp"
#include "pattern/sentence.hpp"
#include "words/ascii.hpp"

#include <algorithm>
#include <set>

namespace whorl::pattern {

namespace {

constexpr std::size_t least_name = 3, longest_part_name = 24;

bool is_name(const std::string& name) {
  return name.size() >= least_name && name.size() <= longest_part_name &&
         std::all_of(name.begin(), name.end(), words::is_folded_letter);
}

bool is_unknown(const std::string& name, const words::Vocabulary& vocabulary) {
  const Sentence sentence = look_up(name, 0, vocabulary);
  const WordsAt words = words_at(sentence, 0);
  return std::all_of(words.begin(), words.end(),
                     [](const words::Word& w) { return w.kind == words::WordKind::unknown; });
}

bool has_label(std::string_view line, const words::Vocabulary& vocabulary) {
  const auto labels = read_labels(line, 0, vocabulary);
  return !labels.empty() && labels.front().closed;
}

/// The single words that stand above a first round.
std::set<std::string> names_above_rounds(const Source& source, const words::Vocabulary& vocabulary) {
  std::set<std::string> names;
  std::string above;
  for (std::size_t i = 0; i < source.line_count(); ++i) {
    const std::string_view line = trim(source.at(source.line(i)));
    if (line.empty()) continue;
    const auto labels = read_labels(line, 0, vocabulary);
    const bool first = !labels.empty() && labels.front().closed && labels.front().from == 1;
    if (first && is_name(above) && is_unknown(above, vocabulary)) names.insert(above);
    above = words::fold(read_heading(line, vocabulary).name).text;
  }
  return names;
}

bool goes_round(std::string_view line, const std::string& name) {
  for (const std::string_view before : {"around the ", "round the ", "across the ", "along the "}) {
    const std::size_t at = line.find(std::string(before) + name);
    const std::size_t end = at + before.size() + name.size();
    if (at != std::string_view::npos && (end == line.size() || !words::is_folded_letter(line[end])))
      return true;
  }
  return false;
}

} // namespace

void add_part_words(const Source& source, const words::Vocabulary& vocabulary, OwnWords& own) {
  const std::set<std::string> names = names_above_rounds(source, vocabulary);
  if (names.size() < 2) return;
  std::set<std::string> joined;
  for (std::size_t i = 0; i < source.line_count(); ++i) {
    const std::string_view line = source.at(source.line(i));
    if (!has_label(line, vocabulary)) continue;
    const std::string text = words::fold(line).text;
    std::set<std::string> here;
    for (const std::string& name : names)
      if (goes_round(text, name)) here.insert(name);
    if (here.size() > 1) joined.insert(here.begin(), here.end());
  }
  for (const std::string& name : joined) {
    words::PhraseEntry entry;
    entry.phrase = name;
    entry.means = words::find_concept(vocabulary, "leg");
    own.phrases.push_back(std::move(entry));
  }
}

namespace {

constexpr std::size_t most_between = 3; ///< lines between a part's name and its first round

/// The words of a name, each by itself, that the language does not know.
void add_words(std::string_view name, const words::Vocabulary& vocabulary, std::set<std::string>& names) {
  const std::string folded = words::fold(name).text;
  for (std::size_t at = 0; at < folded.size();) {
    std::size_t end = at;
    while (end < folded.size() && words::is_folded_letter(folded[end])) ++end;
    const std::string word = folded.substr(at, end - at);
    if (is_name(word) && is_unknown(word, vocabulary)) {
      names.insert(word);
      names.insert(word.back() == 's' ? word.substr(0, word.size() - 1) : word + "s");
    }
    at = std::max(end, at + 1);
  }
}

/// The words of the names that stand above first rounds, a few lines between.
std::set<std::string> words_of_names(const Source& source, const words::Vocabulary& vocabulary) {
  std::set<std::string> names;
  std::vector<std::string_view> above;
  for (std::size_t i = 0; i < source.line_count(); ++i) {
    const std::string_view line = trim(source.at(source.line(i)));
    if (line.empty()) continue;
    const auto labels = read_labels(line, 0, vocabulary);
    const bool first = !labels.empty() && labels.front().closed && labels.front().from == 1;
    if (first)
      for (const std::string_view heading : above)
        add_words(read_heading(heading, vocabulary).name, vocabulary, names);
    if (!labels.empty()) above.clear();
    if (labels.empty() && looks_like_heading(line)) above.push_back(line);
    if (above.size() > most_between) above.erase(above.begin());
  }
  return names;
}

/// Whether a text may join parts without sewing, looked at cheaply: it has some word that such work is told
/// by.
bool may_hold_parts(std::string_view text, const words::Vocabulary& vocabulary) {
  constexpr std::size_t least = 4; // "of" is everywhere
  std::string low(text);
  for (char& c : low) c = words::small(c);
  if (low.find(" + ") != std::string::npos) return true; // "[ear + head] 6 sc"
  std::vector<words::Concept> telling;
  for (const char* name : {"through", "join on", "two parts", "both layers", "together"})
    telling.push_back(words::find_concept(vocabulary, name));
  return std::any_of(
      vocabulary.phrases.begin(), vocabulary.phrases.end(), [&](const words::PhraseEntry& entry) {
        if (entry.phrase.size() < least || entry.means == words::no_concept) return false;
        if (std::find(telling.begin(), telling.end(), entry.means) == telling.end()) return false;
        const std::size_t open = entry.phrase.back() == '~' ? 1 : 0;
        return low.find(entry.phrase.data(), 0, entry.phrase.size() - open) != std::string::npos;
      });
}

} // namespace

void add_piece_words(const Source& source, const words::Vocabulary& vocabulary, OwnWords& own) {
  if (!may_hold_parts(source.text(), vocabulary)) return;
  const words::Concept piece = words::find_concept(vocabulary, "piece");
  for (const std::string& name : words_of_names(source, vocabulary)) {
    const auto is_it = [&name](const words::PhraseEntry& entry) { return entry.phrase == name; };
    if (std::any_of(own.phrases.begin(), own.phrases.end(), is_it)) continue;
    words::PhraseEntry entry;
    entry.phrase = name;
    entry.means = piece;
    own.phrases.push_back(std::move(entry));
  }
}

} // namespace whorl::pattern
