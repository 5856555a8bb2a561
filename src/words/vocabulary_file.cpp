#include "words/vocabulary_file.hpp"

#include "words/fold.hpp"

#include <algorithm>
#include <iterator>
#include <pugixml.hpp>
#include <sstream>

namespace whorl::words {

namespace {

struct SortName {
  std::string_view name;
  ConceptClass sort;
};
constexpr SortName sort_names[] = {
    {"word", ConceptClass::word},     {"stitch", ConceptClass::stitch}, {"decrease", ConceptClass::decrease},
    {"loops", ConceptClass::loops},   {"place", ConceptClass::place},   {"start", ConceptClass::start},
    {"ending", ConceptClass::ending}, {"thing", ConceptClass::thing},   {"filler", ConceptClass::filler},
};

/// In the order of the bits of pattern::Habit.
constexpr std::string_view habit_names[] = {
    "glued-number-increases", "glued-number-repeats", "star-times-in-all",     "star-times-more",
    "bracket-repeats",        "bracket-one-place",    "starting-chain-counts", "starting-chain-does-not",
};

/// What has been read of the files so far.
struct Reader {
  std::string file;
  std::vector<ConceptEntry> concepts;
  std::vector<RowEntry> rows;
  std::vector<Vocabulary> languages;
  std::vector<FileFault>& faults;
  /// The languages that are known besides; nullptr: none.
  const Vocabulary* (*known)(std::string_view language) = nullptr;

  void fault(const std::string& message) { faults.push_back({file, message}); }
};

std::string_view trim(std::string_view text) {
  const std::size_t first = text.find_first_not_of(" \t\r\n");
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t\r\n") - first + 1);
}

/// The alternatives of `a|b|c`, blanks brought to one.
std::vector<std::string> alternatives(std::string_view text) {
  std::vector<std::string> all;
  for (std::size_t at = 0; at <= text.size();) {
    const std::size_t bar = std::min(text.find('|', at), text.size());
    std::istringstream words{std::string(text.substr(at, bar - at))};
    std::string one, word;
    while (words >> word) one += (one.empty() ? "" : " ") + word;
    if (!one.empty()) all.push_back(one);
    at = bar + 1;
  }
  return all;
}

ConceptClass sort_of(Reader& reader, std::string_view name) {
  for (const SortName& entry : sort_names)
    if (entry.name == name) return entry.sort;
  reader.fault("there is no sort of word called \"" + std::string(name) + "\"");
  return ConceptClass::word;
}

std::uint16_t habit_of(Reader& reader, std::string_view name) {
  if (name.empty()) return 0;
  const auto at = std::find(std::begin(habit_names), std::end(habit_names), name);
  if (at != std::end(habit_names)) return static_cast<std::uint16_t>(1U << (at - std::begin(habit_names)));
  reader.fault("there is no habit called \"" + std::string(name) + "\"");
  return 0;
}

Concept concept_of(const Reader& reader, std::string_view name) {
  for (std::size_t i = 0; i < reader.concepts.size(); ++i)
    if (reader.concepts[i].name == name) return static_cast<Concept>(i);
  return no_concept;
}

RowEntry row_of(Reader& reader, const pugi::xml_node& node) {
  RowEntry row;
  row.id = node.attribute("id").value();
  row.pattern = trim(node.text().get());
  row.meaning = node.attribute("means").value();
  row.write = node.attribute("write").value();
  row.cost = node.attribute("cost").as_int();
  row.habit = habit_of(reader, node.attribute("habit").value());
  return row;
}

void read_rows(Reader& reader, const pugi::xml_node& root) {
  for (const pugi::xml_node& node : root.children()) {
    const std::string_view kind = node.name();
    if (kind == "concepts") {
      const ConceptClass sort = sort_of(reader, node.attribute("sort").value());
      const std::string works = node.attribute("works").value();
      const auto in_one = static_cast<std::uint16_t>(node.attribute("in-one").as_uint(1));
      for (const std::string& name : alternatives(node.text().get()))
        reader.concepts.push_back({name, sort, works, in_one});
    } else if (kind == "row") {
      reader.rows.push_back(row_of(reader, node));
    }
  }
}

void read_say(Reader& reader, Vocabulary& vocabulary, const pugi::xml_node& node) {
  PhraseEntry entry;
  entry.number = node.attribute("number").as_uint();
  entry.cost = node.attribute("cost").as_int();
  const std::string_view name = node.attribute("concept").value();
  if (!name.empty()) entry.means = concept_of(reader, name);
  if (!name.empty() && entry.means == no_concept)
    return reader.fault("no rows file has the concept \"" + std::string(name) + "\"");
  const std::vector<std::string> phrases = alternatives(node.text().get());
  if (phrases.empty()) return reader.fault("\"" + std::string(name) + "\" has no words");
  const auto add = [&](const std::string& phrase) {
    entry.phrase = phrase;
    vocabulary.phrases.push_back(entry);
  };
  std::vector<std::string> folded;
  for (const std::string& phrase : phrases) folded.emplace_back(trim(fold(phrase).text));
  const auto write = node.attribute("write");
  const bool of_things =
      vocabulary.language.find("-x-") != std::string::npos; // its written forms are no phrases
  if (write && !of_things) {
    std::string own = fold(write.value()).text;
    if (!own.empty()) std::replace(own.begin() + 1, own.end(), '-', ' '); // but for the "-й" of an ordinal
    folded.emplace_back(trim(own));
  }
  std::sort(folded.begin(), folded.end());
  folded.erase(std::unique(folded.begin(), folded.end()), folded.end());
  for (const std::string& phrase : folded)
    if (!phrase.empty()) add(phrase); // a list mark by itself folds to nothing
  entry.write = true;
  if (write) add(write.value());
}

/// A language's row adds the written form to a shared row of the same id, or is a row of its own.
void read_language_row(Reader& reader, Vocabulary& vocabulary, const pugi::xml_node& node) {
  RowEntry own = row_of(reader, node);
  const auto shared =
      std::find_if(vocabulary.rows.begin(), vocabulary.rows.end(),
                   [&own](const RowEntry& row) { return row.id == own.id && !own.id.empty(); });
  if (own.pattern.empty() && shared == vocabulary.rows.end())
    return reader.fault("there is no shared row \"" + own.id + "\"");
  if (own.pattern.empty())
    shared->write = own.write;
  else
    vocabulary.rows.push_back(own);
}

Vocabulary* language_named(Reader& reader, std::string_view tag) {
  for (Vocabulary& vocabulary : reader.languages)
    if (vocabulary.language == tag) return &vocabulary;
  return nullptr;
}

void read_entries(Reader& reader, Vocabulary& vocabulary, const pugi::xml_node& root) {
  for (const pugi::xml_node& node : root.children()) {
    const std::string_view kind = node.name();
    if (kind == "say") read_say(reader, vocabulary, node);
    if (kind == "row") read_language_row(reader, vocabulary, node);
  }
}

/// A phrase of a dialect takes the place of the same phrase of its base, and of the written form of what it
/// means.
void take_over(Vocabulary& dialect, const Vocabulary& base) {
  const std::vector<PhraseEntry> own = dialect.phrases;
  for (const PhraseEntry& entry : base.phrases) {
    const bool replaced = std::any_of(own.begin(), own.end(), [&entry](const PhraseEntry& mine) {
      return mine.write == entry.write &&
             (entry.write ? mine.means == entry.means && mine.number == entry.number
                          : mine.phrase == entry.phrase);
    });
    if (!replaced) dialect.phrases.push_back(entry);
  }
}

/// A file without `extends` adds to the language of its name, so that a language may have several files.
void read_words(Reader& reader, const pugi::xml_node& root) {
  const std::string_view tag = root.attribute("language").value();
  if (tag.empty()) reader.fault("the file does not say which language it is");
  if (language_named(reader, tag) == nullptr) {
    Vocabulary fresh;
    fresh.language = tag;
    fresh.called = alternatives(root.attribute("called").value());
    fresh.shared_rows = reader.rows.size();
    fresh.blanks_between_words = root.attribute("blanks").as_bool(true);
    fresh.rows = reader.rows;
    reader.languages.push_back(std::move(fresh));
  }
  read_entries(reader, *language_named(reader, tag), root);
}

void read_dialect(Reader& reader, const pugi::xml_node& root) {
  Vocabulary dialect;
  dialect.language = root.attribute("language").value();
  dialect.extends = root.attribute("extends").value();
  const Vocabulary* base = language_named(reader, dialect.extends);
  if (base == nullptr && reader.known != nullptr) base = reader.known(dialect.extends);
  if (base == nullptr)
    return reader.fault("no file has the language \"" + dialect.extends + "\" that it extends");
  dialect.blanks_between_words = base->blanks_between_words;
  dialect.rows = base->rows;
  dialect.shared_rows = base->shared_rows;
  read_entries(reader, dialect, root);
  take_over(dialect, *base);
  reader.languages.push_back(std::move(dialect));
}

/// One element of a file, where it is of the wanted kind: rows, words of a language or of a dialect.
void read_element(Reader& reader, const pugi::xml_node& element, std::string_view wanted) {
  const std::string_view name = element.name();
  const bool dialect = !element.attribute("extends").empty();
  if (name == "rows" && wanted == "rows") read_rows(reader, element);
  if (name == "words" && wanted == "words" && !dialect) read_words(reader, element);
  if (name == "words" && wanted == "dialect" && dialect) read_dialect(reader, element);
}

/// What the files of a kind hold; `<rows>` come before the languages and these before their dialects,
/// whatever the order of the files. The words of the sheet (`<sheet>`) are read elsewhere.
void read_file(Reader& reader, const VocabularyFile& file, std::string_view wanted) {
  pugi::xml_document document;
  const auto result =
      document.load_buffer(file.text.data(), file.text.size(), pugi::parse_default, pugi::encoding_utf8);
  reader.file = file.name;
  const pugi::xml_node root = document.document_element();
  const std::string_view name = root.name();
  if (!result) {
    if (wanted == "rows") reader.fault(std::string("is no XML: ") + result.description());
  } else if (name == "language") {
    for (const pugi::xml_node& element : root.children()) read_element(reader, element, wanted);
  } else if (name == "rows" || name == "words" || name == "sheet") {
    read_element(reader, root, wanted);
  } else if (wanted == "rows") {
    reader.fault("begins with <" + std::string(name) + ">, not with <language>, <words>, <sheet> or <rows>");
  }
}

std::vector<Vocabulary> read_all(Reader& reader, const std::vector<VocabularyFile>& files) {
  for (const char* wanted : {"rows", "words", "dialect"})
    for (const VocabularyFile& file : files) read_file(reader, file, wanted);
  for (Vocabulary& vocabulary : reader.languages) vocabulary.concepts = reader.concepts;
  std::sort(reader.languages.begin(), reader.languages.end(),
            [](const Vocabulary& a, const Vocabulary& b) { return a.language < b.language; });
  return std::move(reader.languages);
}

} // namespace

std::vector<Vocabulary> read_vocabulary_files(const std::vector<VocabularyFile>& files,
                                              std::vector<FileFault>& faults) {
  Reader reader{{}, {}, {}, {}, faults};
  return read_all(reader, files);
}

std::vector<Vocabulary> read_more_vocabulary_files(const std::vector<VocabularyFile>& files,
                                                   const Vocabulary& shared,
                                                   const Vocabulary* (*known)(std::string_view language),
                                                   std::vector<FileFault>& faults) {
  Reader reader{{}, shared.concepts, {}, {}, faults, known};
  reader.rows.assign(shared.rows.begin(),
                     shared.rows.begin() + static_cast<std::ptrdiff_t>(shared.shared_rows));
  for (RowEntry& row : reader.rows) row.write.clear();
  return read_all(reader, files);
}

} // namespace whorl::words
