#pragma once

#include "words/vocabulary.hpp"

#include <cstddef>

namespace whorl::words {

/// The vocabularies as the table maker writes them into the program: plain constants.
struct ConceptRow {
  const char* name;
  ConceptClass sort;
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
struct LanguageTable {
  const char* language;
  const char* extends;
  bool blanks_between_words;
  const ConceptRow* concepts;
  std::size_t concept_count;
  const PhraseRow* phrases;
  std::size_t phrase_count;
  const RowRow* rows;
  std::size_t row_count;
};

extern const LanguageTable language_tables[];
extern const std::size_t language_table_count;

/// The tree of a vocabulary's rows.
RowTree grow_row_tree(const Vocabulary& vocabulary);

/// True if every element of a row is a slot or a concept of the vocabulary.
bool is_row_known(const Vocabulary& vocabulary, std::string_view pattern);

} // namespace whorl::words
