#include "pattern/throughout.hpp"

#include "pattern/sentence.hpp"
#include "pattern/text_words.hpp"
#include "pattern/word_names.hpp"

#include <algorithm>
#include <string>

namespace whorl::pattern {

using words::Word;

namespace {

std::uint8_t loops_named(const Sentence& sentence, std::uint32_t at) {
  for (const auto& [name, loops] :
       {std::pair("back loops", stitch::back), std::pair("front loops", stitch::front),
        std::pair("third loop", stitch::third)})
    if (word_meaning(sentence, at, words::find_concept(sentence.vocabulary, name)) != nullptr)
      return static_cast<std::uint8_t>(loops);
  return 0;
}

bool speaks_of_all(std::string_view line, const words::Vocabulary& vocabulary) {
  return has_text_word(vocabulary, words::fold(line).text, TextWord::throughout);
}

std::uint8_t loops_of(std::string_view line, const words::Vocabulary& vocabulary) {
  if (!speaks_of_all(line, vocabulary)) return 0;
  const Sentence sentence = look_up(line, 0, vocabulary);
  std::uint8_t loops = 0;
  for (std::uint32_t at = 0; loops == 0 && at < sentence.size(); ++at) loops = loops_named(sentence, at);
  return loops;
}

} // namespace

std::uint8_t loops_throughout(const Reader& reader, const Cut& cut) {
  std::uint8_t loops = 0;
  for (const Line& line : cut.lines)
    if (loops == 0 && line.kind != LineKind::round)
      loops = loops_of(reader.source.at(line.span), reader.vocabulary);
  return loops;
}

namespace {

/// Words that tell of loops what is not worked in the next round: which are free, which round has them.
bool speaks_of_others(const Sentence& sentence, const Word& word) {
  static constexpr std::string_view names[] = {"round", "row",  "leave off", "join",  "between", "behind",
                                               "leg",   "hold", "each",      "times", "repeat"};
  const std::string_view name = name_of(sentence, word);
  const words::ConceptClass sort = sort_of(sentence, word);
  return word.means == sentence.unused || word.means == sentence.skipped || is_work(sentence, word) ||
         sort == words::ConceptClass::start ||
         std::find(std::begin(names), std::end(names), name) != std::end(names);
}

} // namespace

std::uint8_t loops_above(const Reader& reader, Span line) {
  constexpr int most_unknown = 3;
  const std::string_view text = reader.source.at(line);
  if (speaks_of_all(text, reader.vocabulary)) return 0;
  const auto placings = read_placings(text, line, reader.vocabulary);
  if (std::any_of(placings.begin(), placings.end(),
                  [](const Placing& p) { return p.what != What::note && p.what != What::change; }))
    return 0;
  const Sentence sentence = look_up(text, 0, reader.vocabulary);
  std::uint8_t loops = 0;
  int strange = 0;
  for (std::uint32_t at = 0; at < sentence.size();) {
    const WordsAt words = words_at(sentence, at);
    if (loops == 0) loops = loops_named(sentence, at);
    for (const Word& word : words)
      if (word.end < words.first->end)
        break; // a part of a longer phrase
      else if (word.kind == words::WordKind::number ||
               (word.kind == words::WordKind::phrase && speaks_of_others(sentence, word)))
        return 0;
    strange += !words.empty() && words.first->kind == words::WordKind::unknown;
    at = words.empty() ? at + 1 : std::max(words.first->end, at + 1);
  }
  return strange > most_unknown ? std::uint8_t{0} : loops;
}

namespace {

bool names_invisible(std::string_view line, const words::Vocabulary& vocabulary) {
  const Sentence sentence = look_up(line, 0, vocabulary);
  const words::Concept invisible = words::find_concept(vocabulary, "invdec");
  for (std::uint32_t at = 0; at < sentence.size(); ++at)
    if (word_meaning(sentence, at, invisible) != nullptr) return true;
  return false;
}

bool speaks_of_all_decreases(std::string_view line) {
  const std::string low = words::fold(line).text;
  return low.find("all decreases") != std::string::npos || low.find("every decrease") != std::string::npos;
}

/// `dec`, "decrease" and the like, where "sc2tog" says how it is made.
bool is_bare_decrease(std::string_view typed) {
  const std::string low = words::fold(typed).text;
  return low.find("dec") != std::string::npos && low.find("tog") == std::string::npos;
}

} // namespace

void decrease_invisibly(Tree& tree, const Reader& reader, const Cut& cut) {
  const auto says = [&reader](const Line& line) {
    const std::string_view text = reader.source.at(line.span);
    return line.kind != LineKind::round &&
           (speaks_of_all(text, reader.vocabulary) || speaks_of_all_decreases(text)) &&
           names_invisible(text, reader.vocabulary);
  };
  if (std::none_of(cut.lines.begin(), cut.lines.end(), says)) return;
  const auto plain = stitch::find_kind(tree.kinds, "sc2tog"),
             invisible = stitch::find_kind(tree.kinds, "invdec");
  if (!plain || !invisible) return;
  for (Node& node : tree.nodes)
    if (node.kind == NodeKind::work && node.work.act == Act::stitch && node.work.kind == *plain &&
        is_bare_decrease(reader.source.at(node.span)))
      node.work.kind = *invisible;
}

void work_in_loops(Tree& tree, std::uint8_t loops) {
  RoundText& round = tree.rounds.back();
  if (loops == 0 || round.body == no_node || round.effect.starts) return;
  Node all;
  all.kind = NodeKind::loops;
  all.work.loops = loops;
  all.child = round.body;
  all.span = round.span;
  tree.nodes.push_back(all);
  round.body = static_cast<NodeId>(tree.nodes.size() - 1);
}

} // namespace whorl::pattern
