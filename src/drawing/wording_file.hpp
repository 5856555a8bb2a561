#pragma once

#include "drawing/wording.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace whorl::drawing {

/// The words of a sheet in one language, or in plain words why they could not be read.
struct WordingReading {
  std::string language; ///< BCP 47: "en"
  Wording wording;
  std::string problem; ///< "": they were read
};

/// Reads `<sheet language="en"><text id="figure">Fig. {1}</text> … </sheet>`, alone or in a `<language>`;
/// blanks at either end do not count.
WordingReading read_wording(std::string_view xml);

/// Whether a file has words of a sheet, besides others.
bool has_wording(std::string_view xml);

/// The languages and dialects of a file: its words, those under `figure@en-GB` in the place of those under
/// `figure` for that dialect.
std::vector<WordingReading> with_dialects(const WordingReading& reading);

/// The wordings as C++ source, a table a language.
std::string wording_table(const std::vector<WordingReading>& wordings);

/// Reads the files and writes the table to `out`, both by path; complaints go to standard error. The exit
/// status.
int write_wording_table(const std::string& out, const std::vector<std::string>& files);

/// What `wording_table` writes.
struct WordingText {
  const char* id;
  const char* text;
};
struct WordingTable {
  const char* language;
  const WordingText* texts;
  std::size_t count;
};
extern const WordingTable wording_tables[];
extern const std::size_t wording_table_count;

/// Whether a language may do without a text: a sentence of a pattern written out ("say-cut"), or a colour, is then written
/// word for word, or left to the translator.
inline bool may_be_missing(std::string_view id) { return id.substr(0, 4) == "say-"; }

/// What a language's words lack of those of another (the texts of `complete`), by id. Of a language with one
/// way to call its stitches also those that English has for UK terms only.
std::vector<std::string> missing_texts(const Wording& wording, const Wording& complete);

/// The words for a language: of its tag, else of the tag's first part ("en" for "en-US"), added or built in;
/// nullptr if there are none.
const Wording* find_wording(std::string_view language);

/// Adds words to those that find_wording knows; those of the same tag take the place of others. To be called
/// before anything is drawn.
void add_wordings(std::vector<WordingReading> wordings);

} // namespace whorl::drawing
