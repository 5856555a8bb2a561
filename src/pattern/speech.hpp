#pragma once

#include "pattern/terms.hpp"
#include "pattern/tree.hpp"

#include <memory>
#include <optional>
#include <vector>

namespace whorl::pattern {

/// How a pattern speaks: its terms, its own words and stitches. Found before its lines are cut.
class Speech {
public:
  Terms terms;
  std::optional<words::Vocabulary> own_words;               ///< the language with words of her own before it
  std::unique_ptr<words::Vocabulary> own_text;              ///< its words around the rounds, with her colours
  std::optional<std::vector<stitch::StitchKind>> own_kinds; ///< the standard kinds and her own
  std::optional<Source> without_list; ///< the text with blanks where it explains its words
  std::vector<Header> headers;        ///< what it explains
  std::vector<OwnName> own_names;     ///< her words for stitches that the language has
  std::vector<Finding> findings;

  const words::Vocabulary& vocabulary() const { return own_words ? *own_words : *terms.vocabulary; }
  const std::vector<stitch::StitchKind>& kinds() const {
    return own_kinds ? *own_kinds : stitch::standard_kinds();
  }
  const Source& text(const Source& typed) const { return without_list ? *without_list : typed; }
};
Speech listen(const Source& source, const words::Vocabulary& given);

/// Puts what is known of the speech into what was read: its list among the headers, what is to be said of it.
void add_speech(Read& read, const Speech& speech);

} // namespace whorl::pattern
