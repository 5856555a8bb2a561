#include "drawing/literal.hpp"
#include "drawing/mark_file.hpp"
#include "drawing/wording_file.hpp"
#include "words/vocabulary_file.hpp"

#include <fstream>
#include <iostream>
#include <iterator>
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

void write_concepts(std::ostream& out, const Vocabulary& vocabulary, std::size_t number) {
  out << "constexpr ConceptRow concepts_" << number << "[] = {\n";
  for (const ConceptEntry& entry : vocabulary.concepts)
    out << "  {" << quoted(entry.name) << ", static_cast<ConceptClass>(" << static_cast<int>(entry.sort)
        << ")},\n";
  out << "};\n";
}

void write_phrases(std::ostream& out, const Vocabulary& vocabulary, std::size_t number) {
  out << "constexpr PhraseRow phrases_" << number << "[] = {\n";
  for (const PhraseEntry& entry : vocabulary.phrases)
    out << "  {" << quoted(entry.phrase) << ", " << entry.means << ", " << (entry.write ? "true" : "false")
        << ", " << entry.cost << ", " << entry.number << "},\n";
  out << "};\n";
}

void write_rows(std::ostream& out, const Vocabulary& vocabulary, std::size_t number) {
  out << "constexpr RowRow rows_" << number << "[] = {\n";
  for (const RowEntry& row : vocabulary.rows)
    out << "  {" << quoted(row.id) << ", " << quoted(row.pattern) << ", " << quoted(row.meaning) << ", "
        << quoted(row.write) << ", " << row.cost << ", " << row.habit << "},\n";
  out << "};\n";
}

void write_language(std::ostream& out, const Vocabulary& vocabulary, std::size_t number) {
  const auto table = [&out, number](const char* name, std::size_t size) {
    out << name << number << ", " << size << ", ";
  };
  out << "  {" << quoted(vocabulary.language) << ", " << quoted(vocabulary.extends) << ", "
      << (vocabulary.blanks_between_words ? "true" : "false") << ", ";
  table("concepts_", vocabulary.concepts.size());
  table("phrases_", vocabulary.phrases.size());
  table("rows_", vocabulary.rows.size());
  out << "},\n";
}

std::string table_of(const std::vector<Vocabulary>& all) {
  std::ostringstream out;
  out << "#include \"words/vocabulary_table.hpp\"\n\nnamespace whorl::words {\nnamespace {\n";
  for (std::size_t i = 0; i < all.size(); ++i) {
    write_concepts(out, all[i], i);
    write_phrases(out, all[i], i);
    write_rows(out, all[i], i);
  }
  out << "} // namespace\nextern const LanguageTable language_tables[] = {\n";
  for (std::size_t i = 0; i < all.size(); ++i) write_language(out, all[i], i);
  out << "};\nextern const std::size_t language_table_count = " << all.size()
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
  for (const FileFault& fault : faults) std::cerr << fault.file << ": " << fault.message << '\n';
  if (!faults.empty()) return 1;
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
