#include "pattern/on_part.hpp"

#include "pattern/effect.hpp"
#include "pattern/named_loop.hpp"
#include "pattern/opening.hpp"
#include "pattern/reference.hpp"
#include "words/lattice.hpp"

#include <algorithm>

namespace whorl::pattern {
namespace {

constexpr std::size_t most_lines = 6; ///< above the first round

/// What a text says of where its work goes.
struct Said {
  bool joins = false, last = false, round = false, rim = false, edge = false, against = false;
  int number = 0; ///< of a round; 0: none is named

  /// Whether it can be the last round of a part whose last number is so; `flat`: that part is worked in rows,
  /// whose edges are other places.
  bool means_last(int last_number, bool flat) const {
    return (last && round) || (number != 0 && number == last_number) || (!flat && (rim || edge));
  }
};

Said said_in(std::string_view text, const words::Vocabulary& vocabulary) {
  Said said;
  bool round_before = false;
  std::uint32_t end = 0;
  for (const words::Word& word : words::lattice(words::fold(text), vocabulary).words) {
    if (word.kind == words::WordKind::number && word.begin >= end && round_before)
      said.number = static_cast<int>(std::min(word.number, 1'000'000U));
    if (word.begin >= end) end = word.end, round_before = false;
    if (word.kind != words::WordKind::phrase) continue;
    const std::string& name = vocabulary.concepts[word.means].name;
    said.joins = said.joins || name == "attach" || name == "link" || name == "join";
    said.last = said.last || name == "last";
    said.round = said.round || name == "round" || name == "row";
    said.rim = said.rim || name == "rim";
    said.edge = said.edge || name == "edge";
    said.against = said.against || name == "against";
    round_before = round_before || name == "round" || name == "row";
  }
  return said;
}

/// The heading, the sentences above the first round, and that round.
std::vector<Span> places_of(const PartLines& part) {
  std::vector<Span> places;
  if (part.heading != nullptr) places.push_back(part.heading->span);
  for (const PartLine& line : part.lines) {
    if (places.size() > most_lines) break;
    places.push_back(line.line->span);
    if (line.round != PartLine::no_round) break;
  }
  return places;
}

/// The earlier part that a text names best, the later of two; `number` where it names none.
std::size_t part_named(const Reader& reader, const std::vector<PartLines>& parts, std::size_t number,
                       std::string_view text) {
  std::size_t best = number;
  int most = 0;
  for (std::size_t part = 0; part < number; ++part) {
    if (parts[part].rounds.empty() || parts[part].heading == nullptr) continue;
    const int shared = names_part(text, parts[part].name(), reader.vocabulary);
    if (shared > 0 && shared >= most) best = part, most = shared;
  }
  return best;
}

bool is_flat(const PartLines& part) { return part.rounds.back().front().label.kind == RoundKind::row; }

} // namespace

std::optional<std::size_t> part_worked_on(const Reader& reader, const std::vector<PartLines>& parts,
                                          std::size_t number) {
  const PartLines& part = parts[number];
  if (number == 0 || part.rounds.empty() || part.goes_on || starts(part.rounds.front())) return std::nullopt;
  if (part.rounds.front().front().label.from > 1) return std::nullopt;
  for (const Span place : places_of(part)) {
    const std::string_view text = reader.source.at(place);
    const Said said = said_in(text, reader.vocabulary);
    if (!said.last && !said.round && opens_other_side(text, reader.vocabulary)) continue; // of a chain
    const bool heading = part.heading != nullptr && place.begin == part.heading->span.begin;
    const std::size_t named = part_named(reader, parts, number, text);
    const bool before = said.joins || (heading && said.last && said.round); // "Cuff (along the last round)"
    const std::size_t on = named == number && before ? number - 1 : named;
    if (on == number || parts[on].rounds.empty()) continue;
    const bool last = said.means_last(last_number(parts[on]), is_flat(parts[on]));
    if (last || (said.joins && named != number && !heading && said.number == 0 && !is_flat(parts[on])))
      return on;
  }
  return std::nullopt;
}

namespace {

/// Whether some reading of a round makes a ring or opens loops, or does so with a chain of its own: "sc in
/// 2nd ch from hook".
bool begins_otherwise(const Ways& ways) {
  const auto begins = [](const Node& node) {
    return node.kind == NodeKind::work &&
           (node.work.where == Where::chain || node.work.where == Where::ring ||
            (opens_edge(node.work.act) && node.work.act != Act::other_side));
  };
  return std::any_of(ways.begin(), ways.end(), [&](const Way& way) {
    return std::any_of(way.readings.begin(), way.readings.end(), [&](const Reading& reading) {
      return std::any_of(reading.nodes.begin(), reading.nodes.end(), begins);
    });
  });
}

} // namespace

std::optional<std::size_t> part_with_chain(const Reader& reader, const std::vector<PartLines>& parts,
                                           std::size_t number) {
  const PartLines& part = parts[number];
  if (number == 0 || part.rounds.empty() || part.goes_on || begins_otherwise(part.rounds.front()))
    return std::nullopt;
  if (part.rounds.front().front().label.from > 1) return std::nullopt;
  for (const Span place : places_of(part)) {
    const std::string_view text = reader.source.at(place);
    if (!opens_other_side(text, reader.vocabulary)) continue;
    const std::size_t named = part_named(reader, parts, number, text);
    if (named != number) return named;
    for (std::size_t before = number; before-- > 0;)
      if (!parts[before].rounds.empty()) return before;
  }
  return std::nullopt;
}

std::uint16_t stitch_begun_in(const Reader& reader, const PartLines& part) {
  for (const PartLine& line : part.lines) {
    std::string_view text = reader.source.at(line.line->span);
    const bool work = line.round != PartLine::no_round;
    if (work) text = text.substr(0, text.find(',')); // "Row 1: join yarn in st 5 of the last round, …"
    if (work && !said_in(text, reader.vocabulary).joins) return 0;
    const std::uint16_t stitch = stitch_named(text, reader.vocabulary);
    if (stitch != 0 || work) return stitch;
  }
  return 0;
}

bool runs_against(const Reader& reader, const PartLines& part) {
  std::vector<Span> places = places_of(part);
  places.push_back(part.rounds.front().front().above);
  return std::any_of(places.begin(), places.end(), [&reader](Span place) {
    return said_in(reader.source.at(place), reader.vocabulary).against;
  });
}

} // namespace whorl::pattern
