#pragma once

#include "pattern/finding.hpp"
#include "pattern/own_list.hpp"
#include "pattern/tree.hpp"
#include "words/vocabulary.hpp"

#include <vector>

namespace whorl::pattern {

/// What the definitions of a text come to.
struct OwnWords {
  std::vector<words::PhraseEntry> phrases;   ///< before those of the language
  std::vector<std::string> as_known;         ///< names explained as the language has them, folded
  std::vector<words::ConceptEntry> concepts; ///< behind those of the language
  std::vector<stitch::StitchKind> kinds;     ///< the standard kinds and her own; empty: the standard ones
  std::vector<bool> explains;                ///< per definition: it is one, and no work
  std::vector<OwnName> own_names;            ///< other words for what the language has a word for
  std::vector<Finding> findings;
};

/// Finds out what each definition means, in the words of `vocabulary` and of the definitions before it.
OwnWords own_words(const Source& source, const OwnList& list, const words::Vocabulary& vocabulary);

} // namespace whorl::pattern
