#include "pattern/one_work.hpp"

#include "pattern/reading.hpp"

#include <algorithm>
#include <string>

namespace whorl::pattern {
namespace {

using words::Vocabulary;

constexpr int clean_cost = 6; ///< at most, of words that explain a stitch as work

/// The only work of a reading; none if it has several.
const Work* only_work(const Reading& reading) {
  NodeId id = reading.body;
  while (id != no_node && reading.nodes[id].kind == NodeKind::sequence) {
    const NodeId child = reading.nodes[id].child;
    if (child == no_node || reading.nodes[child].next != no_node) return nullptr;
    id = child;
  }
  return id != no_node && reading.nodes[id].kind == NodeKind::work ? &reading.nodes[id].work : nullptr;
}

bool is_one_stitch(const Work& work) {
  return work.act == Act::stitch && work.times == 1 && !work.to_end && work.loops == 0 &&
         (work.into == Into::loops || work.into == Into::below) &&
         (work.where == Where::next || work.where == Where::same);
}

std::optional<OneWork> one_work(std::string_view value, const Vocabulary& vocabulary,
                                const std::vector<stitch::StitchKind>& kinds) {
  Stuck stuck;
  const Span span{0, static_cast<std::uint32_t>(value.size())};
  const auto readings = read_work(value, span, vocabulary, kinds, Effort::cheapest, stuck);
  if (readings.empty() || !readings.front().passed_over.empty() || readings.front().cost > clean_cost)
    return std::nullopt;
  const Reading& reading = readings.front();
  const Work* work = only_work(reading);
  if (work == nullptr || !is_one_stitch(*work)) return std::nullopt;
  const bool made = work->kind >= reading.first_new_kind && !reading.new_kinds.empty();
  const stitch::StitchKind& kind =
      made ? reading.new_kinds[static_cast<std::size_t>(work->kind - reading.first_new_kind)]
           : kinds[work->kind];
  const std::uint16_t in_one = work->where == Where::same && work->in_one == 1 ? 1 : work->in_one;
  const std::uint8_t down = work->into == Into::below ? work->down : std::uint8_t{0};
  if (in_one < 2 && kind.takes < 2 && down == 0) return std::nullopt;
  return OneWork{kind, in_one, down};
}

} // namespace

std::optional<OneWork> one_work_of(std::string_view value, const Vocabulary& vocabulary,
                                   const std::vector<stitch::StitchKind>& kinds) {
  if (const auto work = one_work(value, vocabulary, kinds)) return work;
  if (const std::size_t comma = value.find(", "); comma != std::string_view::npos) { // "dc, 2 rounds down"
    std::string joined(value);
    joined[comma] = ' ';
    if (const auto work = one_work(joined, vocabulary, kinds); work && work->down > 0) return work;
  }
  const std::size_t clause = std::min({value.find(". "), value.find(": "), value.find("; ")});
  if (clause == std::string_view::npos) return std::nullopt;
  return one_work(value.substr(0, clause), vocabulary, kinds);
}

} // namespace whorl::pattern
