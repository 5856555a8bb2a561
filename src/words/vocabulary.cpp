#include "words/vocabulary.hpp"

#include "words/vocabulary_table.hpp"

#include <algorithm>
#include <numeric>
#include <span>

namespace whorl::words {

namespace {

Vocabulary from_table(const LanguageTable& table) {
  Vocabulary vocabulary;
  vocabulary.language = table.language;
  vocabulary.extends = table.extends;
  vocabulary.blanks_between_words = table.blanks_between_words;
  vocabulary.concepts.reserve(table.concept_count);
  for (const ConceptRow& row : std::span(table.concepts, table.concept_count))
    vocabulary.concepts.push_back({row.name, row.sort});
  vocabulary.phrases.reserve(table.phrase_count);
  for (const PhraseRow& row : std::span(table.phrases, table.phrase_count))
    vocabulary.phrases.push_back({row.phrase, row.means, row.write, row.cost, row.number});
  vocabulary.rows.reserve(table.row_count);
  for (const RowRow& row : std::span(table.rows, table.row_count))
    vocabulary.rows.push_back({row.id, row.pattern, row.meaning, row.write, row.cost, row.habit});
  make_ready(vocabulary);
  return vocabulary;
}

std::vector<Vocabulary> read_tables() {
  std::vector<Vocabulary> all;
  for (std::size_t i = 0; i < language_table_count; ++i) all.push_back(from_table(language_tables[i]));
  return all;
}

} // namespace

namespace {

/// Phrases are sorted as bytes; so each first byte has a stretch of them.
std::vector<std::uint32_t> first_by_byte(const std::vector<PhraseEntry>& phrases) {
  std::vector<std::uint32_t> first(257, 0);
  for (const PhraseEntry& entry : phrases)
    if (!entry.phrase.empty()) ++first[static_cast<unsigned char>(entry.phrase.front()) + 1U];
  std::partial_sum(first.begin(), first.end(), first.begin());
  return first;
}

std::vector<Concept> sorted_by_name(const std::vector<ConceptEntry>& concepts) {
  std::vector<Concept> sorted(concepts.size());
  std::iota(sorted.begin(), sorted.end(), Concept{0});
  std::sort(sorted.begin(), sorted.end(),
            [&concepts](Concept a, Concept b) { return concepts[a].name < concepts[b].name; });
  return sorted;
}

} // namespace

void make_ready(Vocabulary& vocabulary) {
  std::stable_sort(vocabulary.phrases.begin(), vocabulary.phrases.end(),
                   [](const PhraseEntry& a, const PhraseEntry& b) { return a.phrase < b.phrase; });
  for (const PhraseEntry& entry : vocabulary.phrases)
    if (!entry.phrase.empty() && entry.phrase.back() == '~') vocabulary.open_endings = true;
  vocabulary.by_byte = first_by_byte(vocabulary.phrases);
  vocabulary.by_name = sorted_by_name(vocabulary.concepts);
  vocabulary.row_tree = grow_row_tree(vocabulary);
}

Concept find_concept(const Vocabulary& vocabulary, std::string_view name) {
  const auto at = std::lower_bound(
      vocabulary.by_name.begin(), vocabulary.by_name.end(), name,
      [&vocabulary](Concept c, std::string_view key) { return vocabulary.concepts[c].name < key; });
  return at != vocabulary.by_name.end() && vocabulary.concepts[*at].name == name ? *at : no_concept;
}

const std::vector<Vocabulary>& built_in_vocabularies() {
  static const std::vector<Vocabulary> all = read_tables();
  return all;
}

const Vocabulary* find_vocabulary(std::string_view language) {
  for (const Vocabulary& vocabulary : built_in_vocabularies())
    if (vocabulary.language == language) return &vocabulary;
  return nullptr;
}

} // namespace whorl::words
