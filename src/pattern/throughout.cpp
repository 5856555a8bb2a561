#include "pattern/throughout.hpp"

#include "pattern/sentence.hpp"

#include <algorithm>
#include <string>

namespace whorl::pattern {

namespace {

constexpr std::string_view for_all[] = {"throughout",    "all rounds",    "every round",    "all rows",
                                        "every row",     "whole piece",   "entire piece",   "unless",
                                        "everything",    "always work",   "always crochet", "whole toy",
                                        "whole pattern", "entire pattern"};

std::uint8_t loops_named(const Sentence& sentence, std::uint32_t at) {
  for (const auto& [name, loops] :
       {std::pair("back loops", stitch::back), std::pair("front loops", stitch::front),
        std::pair("third loop", stitch::third)})
    if (word_meaning(sentence, at, words::find_concept(sentence.vocabulary, name)) != nullptr)
      return static_cast<std::uint8_t>(loops);
  return 0;
}

std::uint8_t loops_of(std::string_view line, const words::Vocabulary& vocabulary) {
  const std::string low = words::fold(line).text;
  const bool all = std::any_of(std::begin(for_all), std::end(for_all), [&low](std::string_view words) {
    return low.find(words) != std::string::npos;
  });
  if (!all) return 0;
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
