#pragma once
/// How a pattern is written out: passages of its text, the forms that each may be written in, and the judge
/// who reads what is written and compares it with what was read. Not installed.

#include "drawing/wording.hpp"
#include "fabric/fabric.hpp"
#include "pattern/source.hpp"
#include "pattern/tree.hpp"
#include "whorl_content.hpp"
#include "writing/passage.hpp"
#include "writing/phrasebook.hpp"
#include "writing/tongue.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <vector>

namespace whorl {

/// A text as it is read.
struct ReadWork {
  pattern::Source source;
  pattern::Tree tree;
  fabric::Fabric fabric;
};
ReadWork read_work(std::string_view text, const words::Vocabulary& words);

/// A passage and the ways to write it, the one that is wished most first. The last is the author's own text.
struct Draft {
  writing::Passage passage;
  std::vector<std::string> forms;
  std::size_t chosen = 0;
  std::size_t least = 0;           ///< the first that may be chosen
  pattern::Span out;               ///< where it stands in what is written
  bool typed = true;               ///< the last form is the author's own text
  bool work = false;               ///< it is instruction
  bool filled = false;             ///< the first form is what a translator filled in
  std::vector<std::string> partly; ///< the forms in which words of the first language are left
  bool unread = false;             ///< nobody understood it
  bool renamed = false; ///< heading: the forms give the part the name that it has in the other language
  bool prose = false;   ///< its last form is nothing to worry about in the language that it is written in

  /// Adds a form; `whole`: no word of the first language is left in it.
  void add(std::string form, bool whole) {
    if (std::find(forms.begin(), forms.end(), form) != forms.end()) return;
    if (!whole) partly.push_back(form);
    forms.push_back(std::move(form));
  }
};

/// Makes the forms.
struct Writing {
  const Pattern::Content& pattern;
  const words::Vocabulary& from;
  const words::Vocabulary& to;
  writing::Say from_say, say;
  bool same_language = false; ///< but for the dialect
  WriteForm form = WriteForm::kept;
  std::map<std::string, std::string> filled;  ///< translations that were filled in
  const drawing::Wording &from_texts, &texts; ///< where the words come from
  std::set<std::string> kept_names = {}; ///< of parts: what they would be called is not read as their name
  /// Which of the pattern's own abbreviations are kept, which its list explains.
  enum class Keeps : std::uint8_t { all, plain, none } keeps = Keeps::all; ///< plain: those of one stitch
};

/// Names of things and colours in the other language, by what they are called, folded.
writing::Names thing_names(const Writing& writing);
/// What patterns say again and again, in both languages.
writing::Phrases stock_sentences(const Writing& writing);
/// What parts are called in the other language, where it has a word for them.
std::map<std::string, std::string> part_names(const Writing& writing);
/// What colours are called, and parts; "": they keep their names.
writing::Names names_of(const Writing& writing);

/// Capitals as the author has them: "EAR", "Ear".
std::string with_capitals_of(std::string_view typed, const std::string& name);

/// The pattern's own abbreviations, where they are kept.
std::vector<pattern::OwnName> own_names(const Writing& writing);

std::vector<Draft> drafts_of(const Writing& writing);

/// The forms of lines of instruction: label, work, count, and what else stands in them. `full`: the tongue
/// without abbreviations.
void add_round_forms(Draft& draft, const Writing& writing, const writing::Tongue& brief,
                     const writing::Tongue& full, const writing::Phrasebook& book);

/// Puts the chosen forms together and says where each stands.
std::string composed(const pattern::Source& source, std::vector<Draft>& drafts);

/// What of a written text is not what was read.
class Judge {
public:
  Judge(const Pattern::Content& pattern, const ReadWork& read, const std::vector<Draft>& drafts);
  /// Whether a passage says the same; strictly: stitch by stitch in the fabric, else by its own steps is
  /// enough.
  bool is_same(std::size_t draft, bool strictly) const;

private:
  bool same_rounds(std::size_t draft, bool strictly) const;
  bool same_labels(const std::vector<std::uint32_t>& typed, const std::vector<std::uint32_t>& read) const;
  bool same_placings(std::size_t draft, bool strictly) const;
  bool same_heading(std::size_t draft) const;
  bool same_list(std::size_t draft) const;

  const Pattern::Content& pattern_;
  const ReadWork& read_;
  const std::vector<Draft>& drafts_;
  std::vector<std::vector<std::uint32_t>> rounds_, placings_, parts_; ///< of what was read, per draft
};

} // namespace whorl
