#include "pattern/spread.hpp"

#include "pattern/rounds_told.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

/// A round, and the sentences that stand behind it.
struct Stretch {
  int number = 0;
  Ways ways;
  std::vector<PartLine> lines;
};

Label& label_of(Ways& ways) { return ways.front().label; }

/// One of the rounds that a label gives with its numbers; what the line places is done once.
Ways only_number(const Ways& ways, int number, bool first) {
  Ways one = ways;
  for (Way& way : one) {
    way.label.from = way.label.to = number;
    way.label.spread.clear();
    for (Reading& reading : way.readings)
      if (!first) reading.placings.clear();
  }
  return one;
}

/// Where the stretch begins that has to be sorted; the number of lines if nothing is spread.
std::size_t first_spread(PartLines& part) {
  std::size_t at = 0;
  while (at < part.lines.size() && (part.lines[at].round == PartLine::no_round ||
                                    label_of(part.rounds[part.lines[at].round]).spread.empty()))
    ++at;
  return at;
}

std::vector<Stretch> stretches_from(PartLines& part, std::size_t begin) {
  std::vector<Stretch> all;
  int last = 0;
  for (std::size_t at = begin; at < part.lines.size(); ++at) {
    const PartLine& line = part.lines[at];
    if (line.round == PartLine::no_round) {
      all.back().lines.push_back(line);
      continue;
    }
    const Ways& ways = part.rounds[line.round];
    const Label label = ways.front().label;
    std::vector<int> numbers = label.spread;
    if (numbers.empty()) numbers.push_back(label.relative ? last + 1 : label.from);
    last = label.relative ? last + label.to : numbers.back();
    for (const int number : numbers)
      all.push_back({number,
                     label.spread.empty() ? ways : only_number(ways, number, number == numbers.front()),
                     {line}});
  }
  return all;
}

void put(PartLines& part, Stretch& stretch) {
  for (PartLine line : stretch.lines) {
    if (line.round != PartLine::no_round) {
      line.round = part.rounds.size();
      part.rounds.push_back(std::move(stretch.ways));
    }
    part.lines.push_back(line);
  }
}

void sort_spread(PartLines& part) {
  const std::size_t begin = first_spread(part);
  if (begin == part.lines.size()) return;
  std::vector<Stretch> stretches = stretches_from(part, begin);
  std::stable_sort(stretches.begin(), stretches.end(),
                   [](const Stretch& a, const Stretch& b) { return a.number < b.number; });
  part.rounds.resize(part.lines[begin].round);
  part.lines.resize(begin);
  for (Stretch& stretch : stretches) put(part, stretch);
}

/// How far the rounds go of which the label does not say it: as many as the line does ("3+: sc for 6
/// rounds"), or to the next number.
void close_open_ends(const Reader& reader, PartLines& part) {
  for (std::size_t round = 0; round < part.rounds.size(); ++round)
    for (Way& way : part.rounds[round]) {
      if (!way.label.open_end) continue;
      const Label* next = round + 1 < part.rounds.size() ? &label_of(part.rounds[round + 1]) : nullptr;
      if (const auto told = rounds_told(reader.source.at(way.work), way.work.begin, reader.vocabulary))
        way.label.to = way.label.from + told->to - 1;
      else if (next != nullptr && !next->relative && next->from > way.label.from)
        way.label.to = next->from - 1;
    }
}

} // namespace

void spread_rounds(const Reader& reader, PartLines& part) {
  sort_spread(part);
  close_open_ends(reader, part);
}

} // namespace whorl::pattern
