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

namespace {

constexpr int displaced_cost = 3; ///< a word of the language in letters that the pattern's own list took

bool is_before(const PhraseEntry& a, const PhraseEntry& b) { return a.phrase < b.phrase; }

/// What is left of the meanings of a phrase once the pattern's own list gives it another.
void displace(Vocabulary& vocabulary, const PhraseEntry& own) {
  const auto same = std::equal_range(vocabulary.phrases.begin(), vocabulary.phrases.end(), own, is_before);
  if (own.letters == Capitals::either) {
    vocabulary.phrases.erase(
        std::remove_if(same.first, same.second, [](const PhraseEntry& e) { return !e.write; }), same.second);
    return;
  }
  std::vector<PhraseEntry> dear(same.first, same.second);
  dear.erase(std::remove_if(dear.begin(), dear.end(), [](const PhraseEntry& e) { return e.write; }),
             dear.end());
  for (PhraseEntry& entry : dear) entry.letters = own.letters, entry.cost += displaced_cost;
  const Capitals others = own.letters == Capitals::capital ? Capitals::small : Capitals::capital;
  for (auto entry = same.first; entry != same.second; ++entry)
    if (!entry->write) entry->letters = others;
  vocabulary.phrases.insert(same.second, dear.begin(), dear.end());
}

} // namespace

Vocabulary with_own_words(const Vocabulary& base, const std::vector<PhraseEntry>& own,
                          const std::vector<ConceptEntry>& concepts) {
  Vocabulary vocabulary = base;
  vocabulary.concepts.insert(vocabulary.concepts.end(), concepts.begin(), concepts.end());
  for (const PhraseEntry& entry : own)
    if (entry.cost == 0) displace(vocabulary, entry);
  for (const PhraseEntry& entry : own)
    vocabulary.phrases.insert(
        std::upper_bound(vocabulary.phrases.begin(), vocabulary.phrases.end(), entry, is_before), entry);
  vocabulary.by_byte = first_by_byte(vocabulary.phrases);
  if (!concepts.empty()) vocabulary.by_name = sorted_by_name(vocabulary.concepts);
  return vocabulary;
}

std::string_view written_form(const Vocabulary& vocabulary, Concept means) {
  for (const PhraseEntry& entry : vocabulary.phrases)
    if (entry.means == means && entry.write) return entry.phrase;
  return vocabulary.concepts[means].name;
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
