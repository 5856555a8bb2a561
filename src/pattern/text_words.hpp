#pragma once

#include "words/vocabulary.hpp"

#include <cstdint>
#include <string_view>
#include <vector>

namespace whorl::pattern {

/// What the words of the text around the rounds tell; in the order of `symbols/words/text.xml`. They are no
/// words of the vocabulary that reads rounds, so that notes keep them.
enum class TextWord : std::uint8_t {
  colour,
  shade,         ///< beside a colour, part of its name: "dark"
  yarn,          ///< "yarn", "wool"
  list_heading,  ///< anywhere in the heading of a list of stitches: "abbreviation"
  same_again,    ///< as the round before: "ditto"
  rounds_before, ///< "previous" round
  above,         ///< as "above"
  inclusive,     ///< behind a range: both ends belong to it
  open_end,      ///< behind a number: the rounds go on to the "end"
  label_lead,    ///< small words before a label that a colon closes: "for" rounds 3 to 5:
  told_lead,     ///< before a label that is told in a sentence: "In der" dritten Runde …
  range_link,    ///< between the numbers of a range, besides the words for "to"
  number,        ///< round "no." 3
  article,
  start_name,      ///< what a starting chain is called before a colon: "start"
  of_start,        ///< in a clause that speaks of the chains a round begins with: "turning"
  label_word,      ///< no name of a stitch, but the word of a label or a remark
  pronoun,         ///< no name of a stitch at the head of a sentence: "this"
  definition_lead, ///< before the name that a sentence explains: "where"
  means,           ///< between a name and what it means: "stands for"
  yarn_lead,       ///< before a yarn that is no item of a list: "using"
  of_which,        ///< behind a count, before the number of a part of it: "of which" 6 are bobbles
  fresh,           ///< "new" yarn
  count_lead,      ///< behind a count, before a remark about it: "plus" the tip
  so,              ///< talk leads to the work: "so" begin with 1 sc
  but,             ///< as Rnd 3, "but" increasing in every 4th st
  stands_for,      ///< in an aside, before the stitch that chains are as good as: "for the" first dc
  place_told,      ///< at the head of an aside that tells which place was meant: "where" you began
  counted_with,    ///< behind a count, before chains that are among it: "including"
  throughout,      ///< the loops named in the sentence hold for all rounds: "unless"
  range_end,       ///< behind the last number of a range and its word: 14段目"まで"
  rounds_counted,  ///< the form of the word for round that stands behind a number of them: 5 "rounds"
  round_initial,   ///< a letter for the word for round, right before its number: "O1:", "o.1"
  flattened,       ///< anywhere in a line, be it within a word: a piece lies double, "fold", "press flat"
  part_name,       ///< what parts of toys are called, "ear": only tells which language a text is in
  tail,            ///< in a sentence that cuts the yarn: an end of it is left "long"
  gap,             ///< before the stitches that two things lie apart: "with a gap of" 6 stitches
  keep,            ///< … where the things are put into holes: "leaving" 6 stitches
  gap_behind,    ///< behind them, besides the words for between and apart: 6 stitches "away from each other"
  counted_so,    ///< between a number of stitches and their word, or before it: 6 "visible" stitches
  hole,          ///< what lies between two stitches: with 5 "holes" between
  after_stitch,  ///< before the number of a stitch: "after" stitch 12
  before_stitch, ///< "before" stitch 13
  in_middle,     ///< in a sentence that places one thing: "between the eyes"
  opposite,      ///< in a sentence that sews parts on: "on both sides", "evenly spaced"
  at_sides,      ///< in the name of a part: one of a pair that sits at both sides, "ear"
  at_front,      ///< … or of what sits in the middle of the face, "snout"
  pair,          ///< behind how many are made: two of them
  make,          ///< at the head of a line: so many pieces are made
  close,         ///< a whole clause: the last stitches are gathered, "Close."
  put_on,        ///< before the name of a part that others are put on: sew "to" the head
  then,          ///< between what begins a round and what is repeated: "then" 1 dc, 2 dc in next st
};

/// What a word or phrase (folded) is, as a set of 1 << TextWord.
std::uint64_t text_words(const words::Vocabulary& vocabulary, std::string_view phrase);

bool is_text_word(const words::Vocabulary& vocabulary, std::string_view phrase, TextWord kind);

/// Where the longest phrase of a kind that stands at `place` of a folded text ends, letters not running on;
/// `place` if none stands there.
std::size_t end_of_text_word(const words::Vocabulary& vocabulary, std::string_view text, std::size_t place,
                             TextWord kind);

/// The phrases of a kind.
std::vector<std::string_view> text_phrases(const words::Vocabulary& vocabulary, TextWord kind);

/// Whether a phrase of a kind stands anywhere in a folded text, be it within a word.
bool has_text_word(const words::Vocabulary& vocabulary, std::string_view text, TextWord kind);

} // namespace whorl::pattern
