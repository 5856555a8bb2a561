#include "pattern/joining_chain.hpp"

#include "pattern/sentence.hpp"
#include "pattern/word_names.hpp"

#include <algorithm>

namespace whorl::pattern {
namespace {

using words::Word;

constexpr int most_lines = 4;             ///< that are looked at above the round
constexpr std::uint32_t most_chains = 20; ///< between two parts

bool is_chain(const Reader& reader, const Node& node) {
  return node.kind == NodeKind::work && node.work.act == Act::stitch &&
         node.work.kind < reader.kinds.size() && reader.kinds[node.work.kind].name == "ch";
}

/// Whether a way works around parts, and makes no chain before.
bool lacks_chain(const Reader& reader, const Way& way) {
  if (way.readings.empty() || way.work.empty() || !way.above.empty()) return false;
  const Node* first = nullptr;
  bool parts = false;
  for (const Node& node : way.readings.front().nodes) {
    parts = parts || node.work.act == Act::part_edge;
    const bool stitch = node.kind == NodeKind::work && node.work.act == Act::stitch;
    if (stitch && (first == nullptr || node.span.begin < first->span.begin)) first = &node;
  }
  return parts && first != nullptr && !is_chain(reader, *first);
}

const Word* number_before(const Sentence& sentence, std::uint32_t place) {
  for (const Word& word : sentence.lattice.words)
    if (word.kind == words::WordKind::number && skip_blanks(sentence.text(), word.end) == place) return &word;
  return nullptr;
}

/// The number that stands behind a word, be a small word between them: "ch 3", "łańcuszkiem z 3".
const Word* number_behind(const Sentence& sentence, const Word& word) {
  std::uint32_t at = behind(sentence, word);
  if (is_named(sentence, at, {"with", "from", "in", "filler"}))
    at = behind(sentence, *words_at(sentence, at).first);
  return number_at(sentence, at);
}

/// What a line says of a chain that joins parts.
struct Said {
  Span chain; ///< "ch 3", "3 ch", 鎖3目; empty: none
  bool joins = false;
};

/// Whether the words for another part stand in a line.
bool names_part(const Reader& reader, Span line) {
  const Sentence sentence = look_up(reader.source.at(line), line.begin, reader.vocabulary);
  return std::any_of(sentence.lattice.words.begin(), sentence.lattice.words.end(), [&](const Word& word) {
    return word.kind == words::WordKind::phrase && word.means == sentence.leg;
  });
}

Said said_in(const Reader& reader, Span line) {
  const Sentence sentence = look_up(reader.source.at(line), line.begin, reader.vocabulary);
  Said said;
  for (std::uint32_t at = 0; at < sentence.size(); ++at) {
    said.joins = said.joins || is_named(sentence, at, {"leg", "link", "join", "hop", "unfinished"});
    for (const Word& word : words_at(sentence, at)) {
      if (!said.chain.empty() || name_of(sentence, word) != "ch") continue;
      const Word* before = number_before(sentence, at);
      const Word* number = before != nullptr ? before : number_behind(sentence, word);
      if (number == nullptr || number->number == 0 || number->number > most_chains) continue;
      said.chain = sentence.span(std::min(at, number->begin), std::max(word.end, number->end));
    }
  }
  return said;
}

} // namespace

bool tells_joining_chain(const Reader& reader, Span line) {
  const Said said = said_in(reader, line);
  return said.joins && !said.chain.empty() && names_part(reader, line);
}

void join_by_chain(const Reader& reader, std::vector<Typed>& lines, std::size_t begin, std::size_t round) {
  if (round >= lines.size()) return;
  Span chain;
  bool joins = false;
  int looked = 0;
  for (std::size_t at = round; at-- > begin && !(joins && !chain.empty()) && looked < most_lines;) {
    if (lines[at].blank) continue;
    const Said said = said_in(reader, lines[at].span);
    if (chain.empty()) chain = said.chain;
    joins = joins || said.joins;
    ++looked;
  }
  if (chain.empty() || !joins) return;
  for (Way& way : lines[round].ways) {
    if (!lacks_chain(reader, way)) continue;
    Way joined = way;
    joined.above = chain;
    read_way(reader, joined, way.effort);
    if (!joined.readings.empty() && joined.readings.front().passed_over.empty()) way = std::move(joined);
  }
}

} // namespace whorl::pattern
