#include "pattern/chain_told.hpp"
#include "pattern/effect.hpp"
#include "pattern/label.hpp"
#include "pattern/named_place.hpp"
#include "pattern/way.hpp"
#include "pattern/wide_mark.hpp"
#include "pattern/word_names.hpp"
#include "words/letters.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

constexpr std::size_t most_cuts = 8;

bool is_blank_at(std::string_view text, std::size_t at) { return at < text.size() && text[at] == ' '; }

/// Whether a wide mark ends at a place behind which other words may stand.
bool is_wide_end(std::string_view text, std::size_t place) { return wide_mark_before(text, place) != '\0'; }

/// "鼻子（1个）| 起4锁针"
bool closes_wide_bracket(std::string_view text, std::size_t place) {
  constexpr std::string_view bracket = "\xEF\xBC\x89";
  return place >= bracket.size() && text.substr(place - bracket.size(), bracket.size()) == bracket;
}

/// Where sentences and clauses of a line may begin: its front, and behind marks that a blank follows.
std::vector<std::uint32_t> fronts_of(const Reader& reader, Span line) {
  const std::string_view text = reader.source.at(line);
  std::vector<std::uint32_t> fronts{line.begin};
  for (std::size_t at = 0; at < text.size() && fronts.size() < most_cuts; ++at) {
    const bool mark = std::string_view(".,;:!)").find(text[at]) != std::string_view::npos;
    if ((mark && is_blank_at(text, at + 1)) || is_wide_end(text, at + 1) || closes_wide_bracket(text, at + 1))
      fronts.push_back(line.begin + static_cast<std::uint32_t>(at) + 1);
  }
  return fronts;
}

/// Where words for "and" stand behind a blank: "Ch 6 | and work around the chain".
std::vector<std::uint32_t> before_and(const Reader& reader, Span stretch) {
  const Sentence sentence = look_up(reader.source.at(stretch), stretch.begin, reader.vocabulary);
  std::vector<std::uint32_t> places;
  for (const words::Word& word : sentence.lattice.words)
    if (word.means == sentence.conjunction && word.begin > 0 && sentence.text()[word.begin - 1] == ' ')
      places.push_back(word.span.begin);
  return places;
}

/// The end of the line, and the ends of the sentences and clauses before that `begin` stands in or before,
/// the last first.
std::vector<std::uint32_t> ends_of(const Reader& reader, Span line, std::uint32_t begin) {
  const std::string_view text = reader.source.at(line);
  std::vector<std::uint32_t> ends = before_and(reader, {begin, line.end});
  for (std::size_t at = begin - line.begin; at < text.size() && ends.size() < most_cuts; ++at) {
    const bool mark = std::string_view(".!,;").find(text[at]) != std::string_view::npos;
    if ((mark && is_blank_at(text, at + 1)) || is_wide_end(text, at + 1))
      ends.push_back(line.begin + static_cast<std::uint32_t>(at) + 1);
  }
  ends.push_back(line.end);
  std::sort(ends.rbegin(), ends.rend());
  return ends;
}

/// Whether the mark before a place ends no sentence: what stands behind goes with it.
bool ends_clause(const Reader& reader, std::uint32_t place) {
  const std::string_view before = reader.source.at({0, place});
  const char wide = wide_mark_before(before, before.size());
  const char mark = wide != '\0' ? wide : before.back();
  return mark == ',' || mark == ';' || mark == ' ';
}

/// Whether a stretch names a stitch that is no chain.
bool works_more(const Reader& reader, Span span) {
  const Sentence sentence = look_up(reader.source.at(span), span.begin, reader.vocabulary);
  return std::any_of(
      sentence.lattice.words.begin(), sentence.lattice.words.end(),
      [&](const words::Word& word) { return is_work(sentence, word) && name_of(sentence, word) != "ch"; });
}

/// The last sentence that names the loops.
Span sentence_with_loops(const Reader& reader, Span line) {
  Span found;
  for (const std::uint32_t begin : fronts_of(reader, line)) {
    const Span sentence = trimmed(reader.source, {begin, line.end});
    const std::string_view before = begin == line.begin ? "." : reader.source.at({begin - 1, begin});
    const bool whole = before == "." || before == ":";
    if (whole && names_free_loops(reader, sentence)) found = sentence;
  }
  return found;
}

/// "6 catenelle e lavorare intorno alla | catenella": behind a chain of some length the word stands without a
/// number, for that chain.
bool names_chain_again(const Reader& reader, Span stretch) {
  const Way way = way_of(reader, no_label(stretch), stretch.end);
  if (way.readings.empty()) return false;
  bool chain = false;
  for (const Node& node : way.readings.front().nodes) {
    if (node.kind != NodeKind::work || node.work.act != Act::stitch) continue;
    const auto& words =
        look_up(reader.source.at(node.span), node.span.begin, reader.vocabulary).lattice.words;
    const bool numbered = std::any_of(words.begin(), words.end(), [](const words::Word& word) {
      return word.kind == words::WordKind::number;
    });
    if (chain && !numbered) return true;
    chain = true;
  }
  return false;
}

/// "Every round is closed with a slip stitch": what is told of each round starts no piece.
bool tells_of_every_round(const Reader& reader, Span stretch) {
  const Sentence sentence = look_up(reader.source.at(stretch), stretch.begin, reader.vocabulary);
  const words::Concept each = words::find_concept(reader.vocabulary, "each");
  const words::Concept all = words::find_concept(reader.vocabulary, "all");
  const words::Concept round = words::find_concept(reader.vocabulary, "round");
  const words::Concept row = words::find_concept(reader.vocabulary, "row");
  return std::any_of(sentence.lattice.words.begin(), sentence.lattice.words.end(), [&](const auto& word) {
    if (word.means != each && word.means != all) return false;
    const std::uint32_t next = skip_blanks(sentence.text(), word.end);
    return word_meaning(sentence, next, round) != nullptr || word_meaning(sentence, next, row) != nullptr;
  });
}

bool starts_plainly(const Reader& reader, Span stretch) {
  return only_starts(reader, stretch) && !names_chain_again(reader, stretch) &&
         !tells_of_every_round(reader, stretch);
}

/// Whether a stretch makes nothing but a chain of some length, hardly a word passed over.
bool only_tells_chain(const Reader& reader, Span stretch) {
  constexpr std::uint32_t least_chain = 4;
  const Way way = way_of(reader, no_label(stretch), stretch.end);
  if (!is_clean(way)) return false;
  const auto& nodes = way.readings.front().nodes;
  const bool chain = std::any_of(nodes.begin(), nodes.end(), [](const Node& node) {
    return node.kind == NodeKind::work && node.work.act == Act::stitch && node.work.times >= least_chain;
  });
  return chain && starts_plainly(reader, stretch);
}

/// Where the next word begins, or the next letter where no blanks divide words; npos behind the last.
std::size_t next_word(const Reader& reader, std::string_view text, std::size_t at) {
  const std::size_t letter = at + words::letter_at(text, at).length;
  if (!reader.vocabulary.blanks_between_words) return letter < text.size() ? letter : text.npos;
  const std::size_t blank = text.find(' ', at);
  return blank == text.npos ? blank : text.find_first_not_of(' ', blank);
}

/// "We work the leaf around | a chain of 7": the chain in the middle of a sentence, no number before it;
/// empty if none is told.
Span chain_told_in(const Reader& reader, Span line) {
  constexpr int most_words = 12;
  const std::string_view text = reader.source.at(line);
  std::size_t at = 0;
  for (int word = 0; word < most_words && at < text.size(); ++word) {
    const std::uint32_t begin = line.begin + static_cast<std::uint32_t>(at);
    if (names_stitches(reader, {line.begin, begin})) return {};
    for (const std::uint32_t end : ends_of(reader, line, begin)) {
      const Span stretch = trimmed(reader.source, {begin, end});
      const bool goes_on = end < line.end && names_stitches(reader, {end, line.end}); // "…, and 1 ch to turn"
      if (!goes_on && !stretch.empty() && only_tells_chain(reader, stretch)) return stretch;
    }
    const std::size_t next = next_word(reader, text, at);
    if (next == text.npos || text.substr(at, next - at).find_first_of("0123456789") != text.npos) return {};
    at = next;
  }
  return {};
}

/// The first sentence or clause of a line that is nothing but the start; empty if there is none.
Span start_clause(const Reader& reader, Span line) {
  for (const std::uint32_t begin : fronts_of(reader, line)) {
    if (begin > line.begin && names_stitches(reader, {line.begin, begin})) break;
    for (const std::uint32_t end : ends_of(reader, line, begin)) {
      const Span stretch = trimmed(reader.source, {begin, end});
      if (end < line.end && ends_clause(reader, end) && works_more(reader, {end, line.end})) continue;
      if (!stretch.empty() && starts_plainly(reader, stretch)) return stretch;
    }
  }
  return {};
}

/// The stretch of a line that is nothing but the start.
Span start_typed(const Reader& reader, Span line) {
  if (only_starts(reader, line) && !tells_of_every_round(reader, line)) {
    if (const Span told = chain_told_in(reader, line); !told.empty()) return told;
    const Span loops = names_free_loops(reader, line) ? sentence_with_loops(reader, line) : Span{};
    if (!loops.empty()) return loops;
    const Span clause = names_chain_again(reader, line) ? start_clause(reader, line) : Span{};
    return clause.empty() ? line : clause;
  }
  if (names_free_loops(reader, line)) return sentence_with_loops(reader, line);
  if (!names_stitches(reader, line) && !names_ring(reader, line)) return {};
  if (const auto named = named_start(reader, line)) return named->place;
  const Span clause = start_clause(reader, line);
  return clause.empty() ? chain_told_in(reader, line) : clause;
}

/// "a chain", of which the number stands elsewhere, if at all.
bool makes_one_chain(const Reader& reader, Span start) {
  const Way way = way_of(reader, no_label(start), start.end);
  if (way.readings.empty()) return false;
  std::uint32_t chains = 0;
  for (const Node& node : way.readings.front().nodes) {
    if (node.kind != NodeKind::work) continue;
    if (node.work.act != Act::stitch || !is_chain(reader.kinds[node.work.kind])) return false;
    chains += node.work.times;
  }
  return chains == 1;
}

} // namespace

Span start_in(const Reader& reader, Span line) {
  const Span typed = start_typed(reader, line);
  if (!typed.empty() && !makes_one_chain(reader, typed)) return typed;
  const Span told = chain_told(reader.source.at(line), line.begin, reader.vocabulary);
  return told.empty() || !only_starts(reader, told) ? typed : told;
}

} // namespace whorl::pattern
