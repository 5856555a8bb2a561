#include "pattern/starting_chain.hpp"

#include "pattern/arches.hpp"
#include "pattern/aside.hpp"
#include "pattern/costs.hpp"
#include "pattern/reading.hpp"
#include "pattern/word_names.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

using words::Word;

/// What the words behind chains tell of them.
struct Behind {
  bool counts = false, does_not = false; ///< said in so many words
  int height = 0;                        ///< of the stitch that follows; 0: none that chains stand for
  std::uint32_t beside = 0;              ///< "counts as dc and ch 1": chains beside the stitch
};

int height_of(const Sentence& sentence, const Word& word, const Kinds& kinds) {
  const std::string_view name = sentence.vocabulary.concepts[word.means].name;
  const auto kind =
      kinds.find(name.substr(0, 2) == "fp" || name.substr(0, 2) == "bp" ? name.substr(2) : name);
  return kind ? stitch::shape_of(kinds.at(*kind)).height : 0;
}

/// Whether a word ends the look behind chains: they are worked along, or joined to a ring.
bool is_edge(const Sentence& sentence, const Word& word) {
  if (word.kind != words::WordKind::phrase) return false;
  const std::string_view name = sentence.vocabulary.concepts[word.means].name;
  return name == "from hook" || name == "join" || name == "form" || name == "ch" || name == "sl st" ||
         word.means == sentence.leg;
}

/// Whether a ring is named at a place.
bool names_start(const Sentence& sentence, std::uint32_t at) {
  const WordsAt words = words_at(sentence, at);
  return std::any_of(words.begin(), words.end(),
                     [&](const Word& word) { return sort_of(sentence, word) == words::ConceptClass::start; });
}

/// Takes one place of the text; false where the look ends.
bool look(const Sentence& sentence, std::uint32_t at, const Kinds& kinds, Behind& behind) {
  for (const Word& word : words_at(sentence, at)) {
    if (word.kind != words::WordKind::phrase) continue;
    if (word.means == sentence.not_counted) behind.does_not = true;
    if (word.means == sentence.counted) behind.counts = true;
    const bool ring = names_start(sentence, at) && name_of(sentence, word) == "form"; // 輪に長編み15目
    if (is_edge(sentence, word) && !ring) return false;
    if (sort_of(sentence, word) != words::ConceptClass::stitch) continue;
    behind.height = height_of(sentence, word, kinds);
    return false;
  }
  return true;
}

/// The bracket that tells of what stands before it, or nullptr.
const Bracket* aside_at(const Sentence& sentence, std::uint32_t at) {
  const std::int32_t index = at < sentence.size() ? sentence.brackets.at[at] : no_bracket;
  if (index == no_bracket) return nullptr;
  const Bracket& bracket = sentence.brackets.all[static_cast<std::size_t>(index)];
  return is_aside(sentence, bracket) ? &bracket : nullptr;
}

std::uint32_t behind_link(const Sentence& sentence, std::uint32_t at) {
  at = skip_blanks(sentence.text(), at);
  if (at < sentence.size() && (sentence.text()[at] == '+' || sentence.text()[at] == ','))
    at = skip_blanks(sentence.text(), at + 1);
  const Word* link = word_meaning(sentence, at, sentence.conjunction);
  return link == nullptr ? at : skip_blanks(sentence.text(), link->end);
}

/// "dc and ch 1", "dc + 1 ch": how many chains stand beside the stitch at `at`; 0: none.
std::uint32_t chains_beside(const Sentence& sentence, std::uint32_t at, std::uint32_t end) {
  const words::Concept chain = words::find_concept(sentence.vocabulary, "ch");
  for (const Word& stitch : words_at(sentence, at)) {
    if (sort_of(sentence, stitch) != words::ConceptClass::stitch || stitch.means == chain) continue;
    const std::uint32_t next = behind_link(sentence, stitch.end);
    const Word* before = number_at(sentence, next);
    const std::uint32_t name = before == nullptr ? next : skip_blanks(sentence.text(), before->end);
    const Word* word = word_meaning(sentence, name, chain);
    if (next >= end || next == skip_blanks(sentence.text(), stitch.end) || word == nullptr) continue;
    if (before != nullptr) return before->number;
    const bool hyphen = word->end < sentence.size() && sentence.text()[word->end] == '-';
    const Word* behind = number_at(sentence, skip_blanks(sentence.text(), word->end + (hyphen ? 1U : 0U)));
    if (behind != nullptr) return behind->number;
  }
  return 0;
}

void hear(const Sentence& sentence, const Bracket& aside, Behind& behind) {
  if (says_first_stitch(sentence, aside)) {
    behind.counts = true;
    for (std::uint32_t at = aside.inner_begin; at < aside.inner_end && behind.beside == 0; ++at)
      behind.beside = chains_beside(sentence, at, aside.inner_end);
  }
  for (std::uint32_t at = aside.inner_begin; at < aside.inner_end; ++at) {
    if (word_meaning(sentence, at, sentence.not_counted) != nullptr) behind.does_not = true;
    if (word_meaning(sentence, at, sentence.counted) != nullptr) behind.counts = true;
    if (behind.counts && behind.beside == 0) behind.beside = chains_beside(sentence, at, aside.inner_end);
  }
}

/// "Ch 4, 11 dc in 4th ch from hook": the chain is what is worked into.
bool is_worked_into(const Sentence& sentence, std::uint32_t at) {
  const words::Concept from_hook = words::find_concept(sentence.vocabulary, "from hook");
  for (int marks = 0; at < sentence.size() && marks < 2; ++at) {
    const char c = sentence.text()[at];
    const std::int32_t index = sentence.brackets.at[at];
    if (c == '(' && index != no_bracket && marks < 2) { // "(2 dc, ch 2, 3 dc) in 4th ch from hook"
      at = sentence.brackets.all[static_cast<std::size_t>(index)].end - 1;
      marks = 1;
      continue;
    }
    if (c == '.' || c == ',' || c == ';') ++marks;
    if (word_meaning(sentence, at, from_hook) != nullptr) return true;
  }
  return false;
}

Behind look_behind(const Sentence& sentence, std::uint32_t at, const Kinds& kinds) {
  Behind behind;
  while (at < sentence.size()) {
    const WordsAt words = words_at(sentence, at);
    const Bracket* aside = aside_at(sentence, at);
    if (aside != nullptr) hear(sentence, *aside, behind);
    if (aside == nullptr && !words.empty() && !look(sentence, at, kinds, behind)) break;
    at = aside != nullptr ? aside->end : words.empty() ? at + 1 : std::max(words.first->end, at + 1);
  }
  if (behind.does_not) behind.counts = false;
  return behind;
}

/// What is said of the chains skipped at the hook stands in brackets right behind.
Behind said_behind(const Sentence& sentence, std::uint32_t at) {
  Behind behind;
  if (const Bracket* aside = aside_at(sentence, skip_blanks(sentence.text(), at)))
    hear(sentence, *aside, behind);
  if (behind.does_not) behind.counts = false;
  return behind;
}

/// The cost of taking `chains` for a stitch of `height`, or of not taking them so, whichever `counts` asks.
int cost_of(const Behind& behind, std::uint32_t chains, int height, bool counts) {
  if (behind.counts || behind.does_not) return behind.counts == counts ? 0 : costs.against_its_words;
  const bool likely = height >= 3 && static_cast<int>(chains) >= height;
  return likely == counts ? 0 : costs.starting_chain;
}

/// "Ss into a ring": "a ring" is formed, and not worked into.
bool closes_to_ring(const Sentence& sentence, const Match& match, const Piece& piece, const Kinds& kinds) {
  if (piece.work.where != Where::ring || kinds.at(piece.work.kind).name != "sl st") return false;
  const words::Concept form = words::find_concept(sentence.vocabulary, "form");
  for (std::uint32_t at = match.begin; at < match.end; ++at)
    if (word_meaning(sentence, at, form) != nullptr) return true;
  return false;
}

/// "Ch 4, (dc in next st, ch 1) x 11": chains above what the stitch asks for, where the line goes on to make
/// as many between its stitches, stand beside the one that counts; 0: none do.
std::uint32_t chains_implied(const Sentence& sentence, std::uint32_t at, const Behind& behind,
                             std::uint32_t chains) {
  if (behind.height < 3 || static_cast<int>(chains) <= behind.height) return 0;
  const std::uint32_t more = chains - static_cast<std::uint32_t>(behind.height);
  const std::string_view rest = sentence.text().substr(at);
  const std::string number = std::to_string(more);
  for (const std::string& run : {"ch " + number, "ch" + number, number + " ch", number + "ch"}) {
    const std::size_t found = rest.find(run);
    if (found == std::string_view::npos) continue;
    const std::string_view behind_run = rest.substr(found + run.size());
    const bool ends =
        behind_run.empty() || std::string_view(",;.)]* ").find(behind_run[0]) != std::string_view::npos;
    if (ends && behind_run.substr(0, 3) != " sp") return more;
  }
  return 0;
}

bool stands(std::uint32_t chains, int height) {
  return height >= 2 && chains >= 2 && static_cast<int>(chains) <= height + 1;
}

bool put_cost(const Behind& behind, std::uint32_t chains, int height, bool counts, Piece& piece) {
  const bool may = stands(chains, height);
  if (counts && !may && !behind.counts) return false;
  if (!may && !behind.counts) return true;
  piece.cost = cost_of(behind, chains, height, counts);
  piece.habits = counts ? starting_chain_counts : starting_chain_does_not;
  return true;
}

/// The height of the first stitch behind a place that is no chain; 0: none follows.
int height_behind(const Sentence& sentence, std::uint32_t at, const Kinds& kinds) {
  for (; at < sentence.size(); ++at)
    for (const Word& word : words_at(sentence, at))
      if (is_work(sentence, word) && name_of(sentence, word) != "ch") return height_of(sentence, word, kinds);
  return 0;
}

/// "Beginning in the 4th ch: …": whether the chains before it count.
bool settle_beginning(const Sentence& sentence, const Match& match, const Kinds& kinds, Piece& piece) {
  const Behind behind = piece.work.nth < 3 ? Behind{} : said_behind(sentence, match.end);
  return put_cost(behind, piece.work.nth - 1U, height_behind(sentence, match.end, kinds), piece.work.counts,
                  piece);
}

} // namespace

bool settle_chains(const Sentence& sentence, const Match& match, const Kinds& kinds, Piece& piece) {
  if (closes_to_ring(sentence, match, piece, kinds)) piece.cost += costs.starting_chain;
  if (piece.verb == Verb::from_chain) return settle_beginning(sentence, match, kinds, piece);
  if (piece.verb != Verb::stitch && piece.verb != Verb::starting_chain) return true;
  const Work& work = piece.work;
  if (work.to_end && kinds.at(work.kind).name == "ch") return false; // "in every ch across" names places
  if (work.where == Where::chain) {
    const int height = stitch::shape_of(kinds.at(work.kind)).height;
    const Behind behind = work.nth < 3 ? Behind{} : said_behind(sentence, match.end);
    if (chains_of_first_space(work.nth, height, true) > 0)
      return piece.cost = work.counts ? 0 : costs.starting_chain, true;
    return put_cost(behind, work.nth - 1U, height, work.counts, piece);
  }
  const bool chains = kinds.at(work.kind).takes == 0 && work.in_one == 1 && !work.to_end;
  if (!chains) return true;
  if (piece.verb == Verb::starting_chain && is_worked_into(sentence, match.end)) return false;
  const Behind behind = look_behind(sentence, match.end, kinds);
  const bool counts = piece.verb == Verb::starting_chain;
  const bool said = behind.counts || behind.does_not;
  const std::uint32_t beside = said ? behind.beside : chains_implied(sentence, match.end, behind, work.times);
  if (counts && (behind.counts || beside > 0) && beside < work.times) {
    piece.chains = beside;
    piece.work.times -= beside;
  }
  piece.work.as_high = !counts && behind.height > 0 && static_cast<int>(work.times) == behind.height;
  return put_cost(behind, work.times, behind.height, counts, piece);
}

std::optional<Piece> with_skipped_counted(const Sentence& sentence, const Match& match, const Kinds& kinds,
                                          Piece piece) {
  if ((piece.verb != Verb::from_chain && !piece.onward) || piece.work.counts) return std::nullopt;
  piece.work.counts = true;
  return settle_chains(sentence, match, kinds, piece) ? std::optional(piece) : std::nullopt;
}

} // namespace whorl::pattern
