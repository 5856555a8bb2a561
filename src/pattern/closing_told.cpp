#include "pattern/closing_told.hpp"

#include "pattern/header.hpp"
#include "pattern/text_words.hpp"
#include "words/fold.hpp"

namespace whorl::pattern {
namespace {

/// The last node of a round that is a sequence, and the one before it; no_node if there are no two.
struct Ending {
  NodeId before = no_node;
  NodeId last = no_node;
};

Ending ending_of(const Tree& tree, NodeId body) {
  Ending ending;
  if (body == no_node) return ending;
  for (NodeId id = tree.nodes[body].child; id != no_node; id = tree.nodes[id].next)
    ending = {ending.last, id};
  return ending;
}

/// Whether a sentence of its own only closes: a full stop stands before it.
bool closes_alone(Span span, std::string_view text, const words::Vocabulary& vocabulary) {
  const std::string_view before = trim(text.substr(0, span.begin));
  const std::string word = words::fold(text.substr(span.begin, span.length())).text;
  return !before.empty() && before.back() == '.' && is_text_word(vocabulary, word, TextWord::close);
}

} // namespace

void gather_last_round(Tree& tree, std::string_view text, const words::Vocabulary& vocabulary) {
  if (tree.rounds.empty()) return;
  RoundText& round = tree.rounds.back();
  const Ending ending = ending_of(tree, round.body);
  if (ending.before == no_node) return;
  const Node& close = tree.nodes[ending.last];
  const bool joins = close.kind == NodeKind::work && close.work.act == Act::join;
  const std::uint64_t uses = round.effect.uses + round.effect.pass_uses;
  const std::uint64_t makes = round.effect.makes + round.effect.pass_makes;
  if (!joins || round.effect.starts || uses < 2 * makes || !closes_alone(close.span, text, vocabulary))
    return;
  tree.nodes[ending.before].next = no_node;
  Placing gathered;
  gathered.what = What::cut;
  gathered.gather = true;
  gathered.part = round.part;
  gathered.after_round = static_cast<std::uint32_t>(tree.rounds.size());
  gathered.span = close.span;
  gathered.text = text.substr(close.span.begin, close.span.length());
  tree.placings.push_back(std::move(gathered));
}

} // namespace whorl::pattern
