#include "words/vocabulary.hpp"

#include "words/ascii.hpp"
#include "words/made_once.hpp"
#include "words/vocabulary_table.hpp"

#include <algorithm>
#include <memory>
#include <numeric>
#include <span>

namespace whorl::words {

namespace {

RowEntry entry_of(const RowRow& row) {
  return {row.id, row.pattern, row.meaning, row.write, row.cost, row.habit};
}

/// A language's rows: the written forms that it has for shared rows, and rows of its own.
void add_rows(Vocabulary& vocabulary, std::span<const RowRow> rows) {
  for (const RowRow& row : rows) {
    if (*row.pattern != '\0') {
      vocabulary.rows.push_back(entry_of(row));
      continue;
    }
    const auto shared = std::find_if(vocabulary.rows.begin(), vocabulary.rows.end(),
                                     [&row](const RowEntry& entry) { return entry.id == row.id; });
    if (shared != vocabulary.rows.end()) shared->write = row.write;
  }
}

std::vector<std::string> names_in(std::string_view called) {
  std::vector<std::string> names;
  for (std::size_t at = 0; at < called.size();) {
    const std::size_t bar = std::min(called.find('|', at), called.size());
    names.emplace_back(called.substr(at, bar - at));
    at = bar + 1;
  }
  return names;
}

Vocabulary from_table(const LanguageTable& table) {
  Vocabulary vocabulary;
  vocabulary.language = table.language;
  vocabulary.extends = table.extends;
  vocabulary.called = names_in(table.called);
  vocabulary.blanks_between_words = table.blanks_between_words;
  vocabulary.concepts.reserve(shared_table.concept_count);
  for (const ConceptRow& row : std::span(shared_table.concepts, shared_table.concept_count))
    vocabulary.concepts.push_back({row.name, row.sort, row.works, row.in_one});
  vocabulary.phrases.reserve(table.phrase_count);
  for (const PhraseRow& row : std::span(table.phrases, table.phrase_count))
    vocabulary.phrases.push_back({row.phrase, row.means, row.write, row.cost, row.number});
  vocabulary.rows.reserve(shared_table.row_count + table.row_count);
  for (const RowRow& row : std::span(shared_table.rows, shared_table.row_count))
    vocabulary.rows.push_back(entry_of(row));
  vocabulary.shared_rows = vocabulary.rows.size();
  add_rows(vocabulary, {table.rows, table.row_count});
  make_ready(vocabulary);
  return vocabulary;
}

using BuiltIn = MadeOnce<LanguageTable, Vocabulary>;

std::vector<BuiltIn>& built_in() {
  static std::vector<BuiltIn> all =
      made_once<LanguageTable, Vocabulary>({language_tables, language_table_count});
  return all;
}

/// Those that were added while the program runs; none is ever taken away.
std::vector<std::unique_ptr<const Vocabulary>>& added() {
  static std::vector<std::unique_ptr<const Vocabulary>> all;
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

std::vector<std::uint32_t> first_written(const Vocabulary& vocabulary) {
  const auto none = static_cast<std::uint32_t>(vocabulary.phrases.size());
  std::vector<std::uint32_t> first(vocabulary.concepts.size(), none);
  for (std::uint32_t i = 0; i < none; ++i) {
    const PhraseEntry& entry = vocabulary.phrases[i];
    if (entry.write && entry.means < first.size() && first[entry.means] == none) first[entry.means] = i;
  }
  return first;
}

/// The words for times of at least three letters, where blanks divide words.
std::vector<std::string> times_endings_of(const Vocabulary& vocabulary) {
  constexpr std::size_t shortest = 3;
  std::vector<std::string> endings;
  const Concept times = find_concept(vocabulary, "times");
  if (!vocabulary.blanks_between_words || times == no_concept) return endings;
  for (const PhraseEntry& entry : vocabulary.phrases) {
    const bool word = std::none_of(entry.phrase.begin(), entry.phrase.end(), [](char c) {
      return static_cast<unsigned char>(c) < 0x80 && !(c >= 'a' && c <= 'z');
    });
    if (entry.means == times && !entry.write && entry.cost == 0 && word && entry.phrase.size() >= shortest)
      endings.push_back(entry.phrase);
  }
  return endings;
}

} // namespace

void make_ready(Vocabulary& vocabulary) {
  std::stable_sort(vocabulary.phrases.begin(), vocabulary.phrases.end(),
                   [](const PhraseEntry& a, const PhraseEntry& b) { return a.phrase < b.phrase; });
  for (const PhraseEntry& entry : vocabulary.phrases)
    if (!entry.phrase.empty() && entry.phrase.back() == '~') vocabulary.open_endings = true;
  vocabulary.by_byte = first_by_byte(vocabulary.phrases);
  vocabulary.by_name = sorted_by_name(vocabulary.concepts);
  vocabulary.times_endings = times_endings_of(vocabulary);
  vocabulary.written = first_written(vocabulary);
  vocabulary.row_tree = grow_row_tree(vocabulary);
  vocabulary.first_text_concept = find_concept(vocabulary, "text colour");
  if (vocabulary.language.find("-x-") == std::string::npos)
    vocabulary.text = find_vocabulary_of(vocabulary.language, "text");
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
  vocabulary.written = first_written(vocabulary);
  return vocabulary;
}

constexpr std::uint32_t no_phrase = 0xFFFFFFFF;

std::string_view written_form(const Vocabulary& vocabulary, Concept means) {
  const std::uint32_t phrase = means < vocabulary.written.size() ? vocabulary.written[means] : no_phrase;
  return phrase < vocabulary.phrases.size() ? vocabulary.phrases[phrase].phrase
                                            : vocabulary.concepts[means].name;
}

Concept find_concept(const Vocabulary& vocabulary, std::string_view name) {
  const auto at = std::lower_bound(
      vocabulary.by_name.begin(), vocabulary.by_name.end(), name,
      [&vocabulary](Concept c, std::string_view key) { return vocabulary.concepts[c].name < key; });
  return at != vocabulary.by_name.end() && vocabulary.concepts[*at].name == name ? *at : no_concept;
}

const Vocabulary* find_vocabulary(std::string_view language) {
  const auto& own = added();
  for (auto at = own.rbegin(); at != own.rend(); ++at)
    if ((*at)->language == language) return at->get();
  for (BuiltIn& entry : built_in())
    if (entry.table->language == language) return entry.get(from_table);
  return nullptr;
}

const Vocabulary* find_vocabulary_of(std::string_view language, std::string_view things) {
  const std::string ending = "-x-" + std::string(things);
  const Vocabulary* own = find_vocabulary(std::string(language) + ending);
  return own != nullptr ? own : find_vocabulary(std::string(language.substr(0, language.find('-'))) + ending);
}

std::vector<LanguageName> known_vocabularies() {
  std::vector<LanguageName> all;
  for (const auto& vocabulary : added()) all.push_back({vocabulary->language, vocabulary->extends});
  for (const BuiltIn& entry : built_in()) all.push_back({entry.table->language, entry.table->extends});
  const auto by_tag = [](const LanguageName& a, const LanguageName& b) { return a.language < b.language; };
  const auto same = [](const LanguageName& a, const LanguageName& b) { return a.language == b.language; };
  std::stable_sort(all.begin(), all.end(), by_tag);
  all.erase(std::unique(all.begin(), all.end(), same), all.end());
  return all;
}

std::string_view closest_language(std::string_view tag) {
  const auto same = [](std::string_view a, std::string_view b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [](char x, char y) { return small(x) == small(y); });
  };
  if (tag.empty()) return {};
  const std::vector<LanguageName> all = known_vocabularies();
  for (const LanguageName& name : all)
    if (same(name.language, tag)) return name.language;
  const std::string_view first = tag.substr(0, tag.find('-'));
  for (const LanguageName& name : all)
    if (name.extends.empty() && same(name.language.substr(0, name.language.find('-')), first))
      return name.language;
  return {};
}

std::vector<const Vocabulary*> added_vocabularies() {
  std::vector<const Vocabulary*> all;
  for (const auto& vocabulary : added())
    if (find_vocabulary(vocabulary->language) == vocabulary.get()) all.push_back(vocabulary.get());
  return all;
}

void add_vocabularies(std::vector<Vocabulary> vocabularies) {
  // those of things first: a language holds on to its words of the text
  std::stable_partition(vocabularies.begin(), vocabularies.end(), [](const Vocabulary& vocabulary) {
    return vocabulary.language.find("-x-") != std::string::npos;
  });
  for (Vocabulary& vocabulary : vocabularies) {
    make_ready(vocabulary);
    added().push_back(std::make_unique<const Vocabulary>(std::move(vocabulary)));
  }
}

} // namespace whorl::words
