#pragma once

#include "words/vocabulary.hpp"

#include <cstddef>

namespace whorl::words {

/// The vocabularies as the table maker writes them into the program: plain constants.
struct ConceptRow {
  const char* name;
  ConceptClass sort;
  const char* works;
  std::uint16_t in_one;
};
struct PhraseRow {
  const char* phrase;
  Concept means;
  bool write;
  int cost;
  std::uint32_t number;
};
struct RowRow {
  const char* id;
  const char* pattern;
  const char* meaning;
  const char* write;
  int cost;
  std::uint16_t habit;
};
/// A language; of its rows those without a pattern are the written forms of shared rows.
struct LanguageTable {
  const char* language;
  const char* extends;
  const char* called;
  bool blanks_between_words;
  const PhraseRow* phrases; ///< sorted by phrase
  std::size_t phrase_count;
  const RowRow* rows;
  std::size_t row_count;
};

/// What all languages share.
struct SharedTable {
  const ConceptRow* concepts;
  std::size_t concept_count;
  const RowRow* rows;
  std::size_t row_count;
};

extern const SharedTable shared_table;
extern const LanguageTable language_tables[];
extern const std::size_t language_table_count;

/// A word that some phrase begins with, and the languages whose phrase it is: a bit each in the order of
/// language_tables, dialects and vocabularies of things left out. Sorted by word.
struct WordRow {
  const char* word;
  std::uint32_t languages;
};
extern const WordRow word_rows[];
extern const std::size_t word_row_count;

/// The tree of a vocabulary's rows.
RowTree grow_row_tree(const Vocabulary& vocabulary);

/// True if every element of a row is a slot or a concept of the vocabulary.
bool is_row_known(const Vocabulary& vocabulary, std::string_view pattern);

} // namespace whorl::words
