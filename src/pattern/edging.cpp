#include "pattern/edging.hpp"

#include "pattern/costs.hpp"
#include "pattern/label_numbers.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

constexpr std::size_t longest_aside = 24; ///< bytes between the name and its mark

/// Behind the mark that closes the name of an edging: "Edging:", "Border in cream:"; or behind the name where
/// "ch 1" follows it with no mark. `end` if neither stands there.
std::size_t behind_edging(const Head& head, std::size_t end) {
  if (const std::size_t behind = pass_closing(head, end, ":-"); behind != end) return behind;
  const std::string_view text = head.line.text;
  const std::size_t next = pass_blanks(head, end);
  if (next == end) return end;
  if (phrase_at(head, next, words::find_concept(head.vocabulary, "ch")) != nullptr) return next;
  const std::size_t colon = text.find(':', end);
  const std::string_view between = text.substr(end, std::min(colon, text.size()) - end);
  const bool aside = colon != std::string_view::npos && between.size() <= longest_aside &&
                     between.find_first_of("0123456789,.;") == std::string_view::npos;
  return aside ? pass_closing(head, colon, ":") : end;
}

} // namespace

std::optional<Label> edging_label(std::string_view text, std::uint32_t begin,
                                  const words::Vocabulary& vocabulary) {
  const Head head = head_of(text, begin, vocabulary);
  const std::size_t place = pass_blanks(head, 0);
  if (place >= head.line.text.size()) return std::nullopt;
  const words::Word* name = phrase_at(head, place, words::find_concept(vocabulary, "edging"));
  if (name == nullptr) return std::nullopt;
  const std::size_t behind = behind_edging(head, name->end);
  if (behind == name->end || is_end(head, behind)) return std::nullopt;
  Label label;
  label.word = label.closed = label.relative = true;
  label.to = 1;
  label.span = head.line.span(place, name->end);
  label.work = head.line.from[pass_blanks(head, behind)];
  return label;
}

std::optional<Label> unmarked_label(std::string_view text, std::uint32_t begin, int number,
                                    const words::Vocabulary& vocabulary) {
  const Head head = head_of(text, begin, vocabulary);
  const std::size_t place = pass_blanks(head, 0);
  LabelNumbers typed = label_numbers_at(head, place, NumberForm::digits);
  const bool range = typed.ranges() && !typed.comma && (typed.word || !typed.spaced); // "6 to 12", "6-12"
  if (const LabelNumber only = label_number_at(head, place, NumberForm::digits); !range)
    typed = {only.value, only.value, only.end, only.ordinal};
  if (typed.end == 0 || typed.ordinal || typed.from != number) return std::nullopt;
  const std::size_t behind = pass_blanks(head, typed.end);
  if (behind == typed.end || is_end(head, behind)) return std::nullopt;
  Label label;
  label.from = number;
  label.to = typed.to;
  label.unmarked = true;
  label.span = head.line.span(place, typed.end);
  label.work = head.line.from[behind];
  return label;
}

bool opens(const Node& node) {
  return node.kind == NodeKind::work && node.work.act != Act::stitch && node.work.act != Act::skip &&
         node.work.act != Act::join && node.work.act != Act::turn;
}

bool goes_along_edges(const Reading& reading) {
  return std::any_of(reading.nodes.begin(), reading.nodes.end(), [](const Node& node) {
    const Act act = node.work.act;
    return node.kind == NodeKind::work &&
           (act == Act::row_ends || act == Act::all_edges || act == Act::top_edge);
  });
}

namespace {

bool goes_to_end(const Node& node) {
  const bool stitch = node.kind == NodeKind::work && node.work.act == Act::stitch;
  return (stitch || node.kind == NodeKind::repeat) && node.work.to_end && node.work.where == Where::next;
}

/// The same, all edges being opened before its first piece that runs to the end; none if no piece does.
std::optional<Reading> along_all_edges(Reading reading) {
  if (std::any_of(reading.nodes.begin(), reading.nodes.end(), opens) || reading.effect.pass_uses == 0)
    return std::nullopt;
  NodeId* link = &reading.nodes[reading.body].child;
  while (*link != no_node && !goes_to_end(reading.nodes[*link])) link = &reading.nodes[*link].next;
  if (*link == no_node) return std::nullopt;
  Node edges;
  edges.kind = NodeKind::work;
  edges.work.act = Act::all_edges;
  edges.work.times = 0;
  edges.span = reading.nodes[*link].span;
  edges.next = *link;
  *link = static_cast<NodeId>(reading.nodes.size());
  reading.nodes.push_back(edges); // `link` is not valid from here on
  reading.effect.starts = true;
  reading.effect.uses = 0;
  reading.cost += cost::edges_unsaid;
  return reading;
}

} // namespace

void prefer_edges(std::vector<Reading>& readings) {
  const std::size_t read = readings.size();
  for (std::size_t i = 0; i < read; ++i) {
    if (goes_along_edges(readings[i])) continue;
    if (auto along = along_all_edges(readings[i])) readings.push_back(std::move(*along));
    readings[i].cost += cost::past_edges;
  }
  std::stable_sort(readings.begin(), readings.end(),
                   [](const Reading& a, const Reading& b) { return a.cost < b.cost; });
}

} // namespace whorl::pattern
