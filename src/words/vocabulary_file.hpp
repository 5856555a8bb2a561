#pragma once

#include "words/vocabulary.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace whorl::words {

/// Something wrong in a vocabulary file, in words for whoever wrote it.
struct FileFault {
  std::string file;
  std::string message;
  bool operator==(const FileFault&) const = default;
};

/// A vocabulary file: its name and its text.
struct VocabularyFile {
  std::string name;
  std::string text;
};

/// The vocabularies that files give: `<rows>` files hold concepts and the shared rows, `<words>` files a
/// language each, or what a dialect (`extends`) says otherwise than its base. Several files of one language
/// add to each other. Files are taken in the order given; what is broken is passed over and said. Not yet
/// ready for looking up (make_ready).
std::vector<Vocabulary> read_vocabulary_files(const std::vector<VocabularyFile>& files,
                                              std::vector<FileFault>& faults);

/// The same for files that are read while the program runs: concepts and shared rows are those of `shared`, a
/// vocabulary built in, and a dialect may extend any language that `known` finds.
std::vector<Vocabulary> read_more_vocabulary_files(const std::vector<VocabularyFile>& files,
                                                   const Vocabulary& shared,
                                                   const Vocabulary* (*known)(std::string_view language),
                                                   std::vector<FileFault>& faults);

} // namespace whorl::words
