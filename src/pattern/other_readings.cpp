#include "pattern/other_readings.hpp"

#include "pattern/build.hpp"
#include "pattern/costs.hpp"
#include "pattern/effect.hpp"
#include "pattern/text_words.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

/// The kind of a stitch of a reading, which may have made it itself.
const stitch::StitchKind& kind_in(const WorkReader& reader, const Reading& reading, const Work& work) {
  const std::size_t known = reader.kinds.known.size();
  return work.kind < known ? reader.kinds.known[work.kind] : reading.new_kinds[work.kind - known];
}

std::vector<stitch::StitchKind> all_kinds(const WorkReader& reader, const Reading& reading) {
  std::vector<stitch::StitchKind> all = reader.kinds.known;
  all.insert(all.end(), reading.new_kinds.begin(), reading.new_kinds.end());
  return all;
}

/// Acts that stand at the head or the end of a round and are not repeated with its stitches.
bool is_outside(const WorkReader& reader, const Reading& reading, const Node& node) {
  if (node.kind != NodeKind::work) return false;
  const Act act = node.work.act;
  return act == Act::join || act == Act::turn || act == Act::start_here ||
         (act == Act::stitch && kind_in(reader, reading, node.work).takes == 0);
}

/// What the words behind a turning chain say of it: "ch 3 (counts as dc), turn".
bool says(const Sentence& sentence, std::uint32_t from_byte, words::Concept what) {
  for (std::uint32_t at = 0; at < sentence.size(); ++at)
    if (sentence.span(at, at + 1).begin >= from_byte && word_meaning(sentence, at, what) != nullptr)
      return true;
  return false;
}

} // namespace

Effect effect_of(const WorkReader& reader, const Reading& reading) {
  if (reading.new_kinds.empty()) return effect_of(reading.nodes, reading.body, reader.kinds.known);
  return effect_of(reading.nodes, reading.body, all_kinds(reader, reading));
}

Reading repeated_to_end(const WorkReader& reader, Reading reading) {
  NodeId* first = &reading.nodes[reading.body].child;
  while (*first != no_node && is_outside(reader, reading, reading.nodes[*first]))
    first = &reading.nodes[*first].next;
  NodeId last = *first;
  for (NodeId id = *first; id != no_node; id = reading.nodes[id].next)
    if (!is_outside(reader, reading, reading.nodes[id])) last = id;
  if (last == no_node) return reading;
  const Span span = cover(reading.nodes[*first].span, reading.nodes[last].span);
  Node repeat = make_node(NodeKind::repeat, {.to_end = true}, span);
  repeat.child = *first;
  repeat.next = reading.nodes[last].next;
  reading.nodes[last].next = no_node;
  *first = static_cast<NodeId>(reading.nodes.size());
  reading.nodes.push_back(repeat);
  reading.effect = effect_of(reader, reading);
  reading.cost += costs.repeated_to_end;
  return reading;
}

std::optional<Reading> all_round(const WorkReader& reader, const Reading& reading) {
  const Sentence& sentence = reader.sentence;
  const words::Concept next = words::find_concept(sentence.vocabulary, "next");
  const auto tells_one = [next](const words::Word& word) {
    return word.kind == words::WordKind::number ||
           (word.kind == words::WordKind::phrase && word.means == next);
  };
  if (reading.effect.uses != 1 || reading.effect.makes != 1 || reading.effect.starts ||
      reading.effect.pass_uses != 0 || !reading.passed_over.empty())
    return std::nullopt;
  const Node* only = nullptr;
  for (const Node& node : reading.nodes) {
    if (node.kind == NodeKind::sequence || node.kind == NodeKind::loops || is_outside(reader, reading, node))
      continue;
    if (node.kind != NodeKind::work || only != nullptr) return std::nullopt;
    only = &node;
  }
  if (only == nullptr || only->work.act != Act::stitch || only->work.where != Where::next)
    return std::nullopt;
  if (kind_in(reader, reading, only->work).name == "sl st") return std::nullopt;
  for (std::uint32_t at = 0; at < sentence.size(); ++at)
    if (sentence.span(at, at + 1).begin >= only->span.begin &&
        sentence.span(at, at + 1).end <= only->span.end) {
      const WordsAt words = words_at(sentence, at);
      if (std::any_of(words.begin(), words.end(), tells_one)) return std::nullopt;
    }
  Reading around = repeated_to_end(reader, reading);
  around.cost = reading.cost;
  return around;
}

std::optional<Reading> joined_at_end(const WorkReader& reader, const Reading& reading) {
  const NodeId first = reading.nodes[reading.body].child;
  if (first == no_node) return std::nullopt;
  const auto is_kind = [&](const Node& node, std::string_view name) {
    return node.kind == NodeKind::work && node.work.act == Act::stitch &&
           kind_in(reader, reading, node.work).name == name;
  };
  constexpr std::uint32_t most_chains = 5; // that a round stands on
  const auto does = [&](NodeId id, Act act) {
    return id != no_node && reading.nodes[id].kind == NodeKind::work && reading.nodes[id].work.act == act;
  };
  NodeId begin = first;
  if (is_kind(reading.nodes[begin], "ch") && does(reading.nodes[begin].next, Act::join))
    begin = reading.nodes[reading.nodes[begin].next].next; // "ch 6, join to a ring"
  while (does(begin, Act::ring)) begin = reading.nodes[begin].next;
  if (begin == no_node || !is_kind(reading.nodes[begin], "ch") ||
      reading.nodes[begin].work.times > most_chains)
    return std::nullopt;
  NodeId last = begin;
  while (reading.nodes[last].next != no_node) last = reading.nodes[last].next;
  const Work& slip = reading.nodes[last].work;
  if (last == begin || !is_kind(reading.nodes[last], "sl st") || slip.times != 1 || slip.to_end ||
      slip.where != Where::next)
    return std::nullopt;
  Reading other = reading;
  other.nodes[last].work.act = Act::join;
  other.effect = effect_of(reader, other);
  return other;
}

std::optional<Reading> carrying(const WorkReader& reader, Reading& reading) {
  const NodeId id = turning_chain(reading.nodes, reading.body, reader.kinds.known);
  if (id == no_node || reading.nodes[id].work.counts || reading.nodes[id].work.times < 2 ||
      reading.effect.uses + reading.effect.makes + reading.effect.pass_uses == 0)
    return std::nullopt;
  const std::uint32_t chains = reading.nodes[id].work.times, end = reading.nodes[id].span.end;
  const bool denied = says(reader.sentence, end, reader.sentence.not_counted);
  const bool said = !denied && says(reader.sentence, end, reader.sentence.counted);
  Reading other = reading;
  other.nodes[id].work.counts = true;
  other.effect = effect_of(reader, other);
  const bool likely = said || (!denied && chains > 2);
  (likely ? reading : other).cost += said || denied ? costs.against_its_words : costs.starting_chain;
  reading.turning_chains = other.turning_chains = chains;
  reading.habits |= starting_chain_does_not;
  other.habits |= starting_chain_counts;
  return other;
}

std::optional<Reading> into_chains_too(const WorkReader& reader, const Reading& reading) {
  if (reading.effect.starts || reading.effect.spaces + reading.effect.pass_spaces > 0) return std::nullopt;
  Reading other = reading;
  for (Node& node : other.nodes) {
    if (node.kind == NodeKind::group || node.work.act == Act::skip) return std::nullopt;
    const bool stitch = node.kind == NodeKind::work && node.work.act == Act::stitch;
    if (!stitch || kind_in(reader, reading, node.work).takes == 0) continue;
    if (node.work.where != Where::next || node.work.into != Into::loops) return std::nullopt;
    node.work.where = Where::any_chain;
  }
  other.effect = effect_of(reader, other);
  other.cost += costs.into_chains_too;
  return other;
}

namespace {

/// "Press flat and crochet together with 4 sc": no four are made one, it is four through both layers. Whether
/// it was so.
bool part_together(const WorkReader& reader, const Reading& reading, Work& work) {
  constexpr std::string_view tog = "tog";
  constexpr int least = 3; // two together are a decrease there too
  const stitch::StitchKind& kind = kind_in(reader, reading, work);
  const std::size_t number = kind.name.find_first_of("0123456789");
  const bool closed = kind.makes == 1 && kind.takes >= least && number != std::string::npos &&
                      kind.name.size() > tog.size() && kind.name.substr(kind.name.size() - tog.size()) == tog;
  const auto base = closed ? reader.kinds.find(kind.name.substr(0, number)) : std::nullopt;
  if (!base) return false;
  work.times *= static_cast<std::uint32_t>(kind.takes);
  work.kind = *base;
  return true;
}

/// The reading with every stitch that goes in as `from` going in as `to`.
std::optional<Reading> gone_into(const WorkReader& reader, const Reading& reading, Into from, Into to) {
  if (reading.effect.starts) return std::nullopt;
  Reading other = reading;
  bool any = false;
  for (Node& node : other.nodes) {
    const Work& work = node.work;
    const bool stitch = node.kind == NodeKind::work && work.act == Act::stitch;
    if (!stitch || work.into != from || work.where != Where::next ||
        kind_in(reader, reading, work).takes == 0)
      continue;
    node.work.into = to;
    any = true;
  }
  if (!any) return std::nullopt;
  other.effect = effect_of(reader, other);
  other.cost += costs.other_layers;
  return other;
}

} // namespace

std::optional<Reading> through_two_pieces(const WorkReader& reader, const Reading& reading) {
  return gone_into(reader, reading, Into::both_layers, Into::loops);
}

bool part_layers(const WorkReader& reader, Reading& reading) {
  bool parted = false;
  for (Node& node : reading.nodes)
    if (node.kind == NodeKind::work && node.work.act == Act::stitch && node.work.into == Into::both_layers)
      parted = part_together(reader, reading, node.work) || parted;
  if (parted) reading.effect = effect_of(reader, reading);
  return parted;
}

bool lies_double(const Sentence& sentence) {
  return has_text_word(sentence.vocabulary, sentence.text(), TextWord::flattened);
}

std::optional<Reading> through_fold(const WorkReader& reader, const Reading& reading) {
  Reading other = reading;
  bool parted = false;
  for (Node& node : other.nodes)
    if (node.kind == NodeKind::work && node.work.act == Act::stitch)
      parted = part_together(reader, reading, node.work) || parted;
  if (auto plain = gone_into(reader, other, Into::loops, Into::both_layers)) return plain;
  if (!parted) return std::nullopt;
  other.effect = effect_of(reader, other);
  --other.cost; // nobody closes a fold by making all of it one stitch
  return other;
}

} // namespace whorl::pattern
