#include "drawing/literal.hpp"
#include "drawing/mark_file.hpp"
#include "drawing/wording_file.hpp"
#include "words/vocabulary_file.hpp"

#include <algorithm>
#include <fstream>
#include <iostream>
#include <iterator>
#include <map>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

namespace whorl::words {

namespace {

std::string quoted(std::string_view text) {
  std::string out;
  drawing::append_quoted(out, text);
  return out;
}

void write_concepts(std::ostream& out, const Vocabulary& vocabulary) {
  out << "constexpr ConceptRow concepts[] = {\n";
  for (const ConceptEntry& entry : vocabulary.concepts)
    out << "  {" << quoted(entry.name) << ", static_cast<ConceptClass>(" << static_cast<int>(entry.sort)
        << "), " << quoted(entry.works) << ", " << entry.in_one << "},\n";
  out << "};\n";
}

void write_row(std::ostream& out, const RowEntry& row) {
  out << "  {" << quoted(row.id) << ", " << quoted(row.pattern) << ", " << quoted(row.meaning) << ", "
      << quoted(row.write) << ", " << row.cost << ", " << row.habit << "},\n";
}

/// Concepts and rows that all languages share, from any of them.
void write_shared(std::ostream& out, const Vocabulary& any) {
  write_concepts(out, any);
  out << "constexpr RowRow shared_rows[] = {\n";
  for (std::size_t i = 0; i < any.shared_rows; ++i) {
    RowEntry row = any.rows[i];
    row.write.clear();
    write_row(out, row);
  }
  out << "};\n";
}

void write_phrases(std::ostream& out, Vocabulary vocabulary, std::size_t number) {
  std::stable_sort(vocabulary.phrases.begin(), vocabulary.phrases.end(),
                   [](const PhraseEntry& a, const PhraseEntry& b) { return a.phrase < b.phrase; });
  out << "constexpr PhraseRow phrases_" << number << "[] = {\n";
  for (const PhraseEntry& entry : vocabulary.phrases)
    out << "  {" << quoted(entry.phrase) << ", " << entry.means << ", " << (entry.write ? "true" : "false")
        << ", " << entry.cost << ", " << entry.number << "},\n";
  out << "};\n";
}

/// What a language has besides the shared rows; how many those are.
std::size_t write_rows(std::ostream& out, const Vocabulary& vocabulary, std::size_t number) {
  std::vector<RowEntry> own;
  for (std::size_t i = 0; i < vocabulary.rows.size(); ++i) {
    const RowEntry& row = vocabulary.rows[i];
    if (i >= vocabulary.shared_rows) own.push_back(row);
    if (i < vocabulary.shared_rows && !row.write.empty()) own.push_back({row.id, {}, {}, row.write});
  }
  out << "[[maybe_unused]] constexpr RowRow rows_" << number << "[] = {\n";
  for (const RowEntry& row : own) write_row(out, row);
  if (own.empty()) write_row(out, {});
  out << "};\n";
  return own.size();
}

/// A language whose words tell that a text is written in it.
bool is_language(const Vocabulary& vocabulary) {
  return vocabulary.extends.empty() && vocabulary.language.find("-x-") == std::string::npos;
}

/// The words that phrases begin with (open endings as they stand) and the languages that have them.
std::map<std::string, std::uint32_t> languages_by_word(const std::vector<Vocabulary>& all) {
  std::map<std::string, std::uint32_t> words;
  std::size_t bit = 0;
  for (const Vocabulary& vocabulary : all) {
    if (!is_language(vocabulary)) continue;
    const std::string first = vocabulary.language.substr(0, vocabulary.language.find('-'));
    for (const Vocabulary& own : all) {
      // its colours and other words of the text tell of it too
      const bool text = own.language == vocabulary.language + "-x-text" || own.language == first + "-x-text";
      if (&own != &vocabulary && !text) continue;
      for (const PhraseEntry& entry : own.phrases)
        if (!entry.write) words[entry.phrase.substr(0, entry.phrase.find(' '))] |= 1U << bit;
    }
    ++bit;
  }
  return words;
}

std::size_t write_words(std::ostream& out, const std::vector<Vocabulary>& all) {
  const auto words = languages_by_word(all);
  out << "extern const WordRow word_rows[] = {\n";
  for (const auto& [word, languages] : words) out << "  {" << quoted(word) << ", " << languages << "U},\n";
  out << "};\n";
  return words.size();
}

std::string joined(const std::vector<std::string>& all) {
  std::string out;
  for (const std::string& one : all) out += (out.empty() ? "" : "|") + one;
  return out;
}

std::string table_of(const std::vector<Vocabulary>& all) {
  std::ostringstream out, languages;
  out << "#include \"words/vocabulary_table.hpp\"\n\nnamespace whorl::words {\nnamespace {\n";
  write_shared(out, all.front());
  for (std::size_t i = 0; i < all.size(); ++i) {
    write_phrases(out, all[i], i);
    const std::size_t rows = write_rows(out, all[i], i);
    languages << "  {" << quoted(all[i].language) << ", " << quoted(all[i].extends) << ", "
              << quoted(joined(all[i].called)) << ", " << (all[i].blanks_between_words ? "true" : "false")
              << ", phrases_" << i << ", " << all[i].phrases.size() << ", rows_" << i << ", " << rows
              << "},\n";
  }
  out << "} // namespace\n";
  const std::size_t words = write_words(out, all);
  out << "extern const std::size_t word_row_count = " << words
      << ";\nextern const SharedTable shared_table{concepts, " << all.front().concepts.size()
      << ", shared_rows, " << all.front().shared_rows
      << "};\nextern const LanguageTable language_tables[] = {\n"
      << languages.str() << "};\nextern const std::size_t language_table_count = " << all.size()
      << ";\n} // namespace whorl::words\n";
  return out.str();
}

bool load(const std::string& path, VocabularyFile& file) {
  std::ifstream in(path, std::ios::binary);
  file.text.assign(std::istreambuf_iterator<char>(in), {});
  const std::size_t slash = path.find_last_of('/');
  file.name = slash == std::string::npos ? path : path.substr(slash + 1);
  return static_cast<bool>(in);
}

} // namespace

/// Writes the vocabularies of the files as C++ tables.
static int write_word_table(const std::string& out, const std::vector<std::string>& files) {
  std::vector<VocabularyFile> loaded(files.size());
  std::vector<FileFault> faults;
  for (std::size_t i = 0; i < files.size(); ++i)
    if (!load(files[i], loaded[i])) faults.push_back({files[i], "cannot be read"});
  const std::vector<Vocabulary> all = read_vocabulary_files(loaded, faults);
  if (std::count_if(all.begin(), all.end(), is_language) > 32)
    faults.push_back({"symbols/words", "has more than 32 languages: WordRow::languages has no bit for all"});
  for (const FileFault& fault : faults) std::cerr << fault.file << ": " << fault.message << '\n';
  if (!faults.empty() || all.empty()) return 1;
  std::ofstream stream(out, std::ios::binary);
  stream << table_of(all);
  return stream.flush() ? 0 : 1;
}

} // namespace whorl::words

/// Run by the build: `table_maker words|marks|sheet OUT.cpp FILES…` writes the files of symbols/ as C++
/// tables.
int main(int count, char** words) {
  const std::vector<std::string> call(words + 1, words + count);
  if (call.size() >= 2 && call[0] == "words")
    return whorl::words::write_word_table(call[1], {call.begin() + 2, call.end()});
  if (call.size() >= 2 && call[0] == "marks")
    return whorl::drawing::write_mark_table(call[1], {call.begin() + 2, call.end()});
  if (call.size() >= 2 && call[0] == "sheet")
    return whorl::drawing::write_wording_table(call[1], {call.begin() + 2, call.end()});
  std::cerr << "table_maker words|marks|sheet OUT.cpp FILES...\n";
  return 2;
}
