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

} // namespace whorl::pattern
