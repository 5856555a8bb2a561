#include "pattern/references.hpp"

#include "pattern/limits.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

/// A round that is named, and the numbers that its entry gives.
struct Named {
  Target target;
  int from = 0;
  int to = 0;
};

/// Following the references of one text from its front to its end.
class Follower {
public:
  Follower(const Reader& reader, std::vector<PartLines>& parts) : reader_(reader), parts_(parts) {}

  void follow() {
    for (part_ = 0; part_ < parts_.size(); ++part_) follow_part();
  }

private:
  /// The lines of a part once more, each reference as the rounds that it names.
  void follow_part() {
    PartLines& part = parts_[part_];
    const std::vector<PartLine> lines = std::move(part.lines);
    const std::vector<Ways> rounds = std::move(part.rounds);
    part.lines.clear();
    part.rounds.clear();
    for (const PartLine& line : lines) {
      if (line.round == PartLine::no_round) {
        part.lines.push_back(line);
      } else if (rounds[line.round].front().reference) {
        follow_line(line, rounds[line.round]);
      } else {
        add(line, rounds[line.round]);
      }
    }
  }

  void add(const PartLine& line, Ways ways) {
    PartLines& part = parts_[part_];
    part.lines.push_back({line.line, part.rounds.size()});
    part.rounds.push_back(std::move(ways));
  }

  void follow_line(const PartLine& line, const Ways& ways) {
    const Way& way = ways.front();
    const std::vector<Named> named = rounds_named(*way.reference, way.label);
    if (named.empty()) return add(line, ways);
    const std::vector<Label> labels = labels_of(way, named);
    for (std::size_t i = 0; i < labels.size(); ++i) {
      const bool last = i + 1 == labels.size();
      add(line, as_named(way, labels[i], named[i % named.size()].target, last));
    }
  }

  /// One label for each round that is repeated; one alone keeps the range as it is.
  static std::vector<Label> labels_of(const Way& way, const std::vector<Named>& named) {
    const Label& label = way.label;
    if (named.size() == 1 && way.reference->times == 1 && !label.span.empty()) return {label};
    const bool unlabelled = label.span.empty();
    const int given = label.relative ? label.to : label.to - label.from + 1;
    const int rounds = static_cast<int>(
        std::min<std::uint64_t>(std::max<std::uint64_t>(unlabelled ? 1 : static_cast<std::uint64_t>(given),
                                                        named.size() * std::uint64_t{way.reference->times}),
                                limit::rounds));
    std::vector<Label> labels;
    for (int i = 0; i < rounds; ++i) {
      Label one = label;
      const Named& its = named[static_cast<std::size_t>(i) % named.size()];
      one.to = label.relative ? 1 : label.from + i;
      one.from = label.relative ? 0 : one.to;
      if (unlabelled) one.to = its.to - its.from + 1;
      labels.push_back(one);
    }
    return labels;
  }

  /// The rounds that a reference names, in order; none if they are not all there.
  std::vector<Named> rounds_named(Reference reference, const Label& label) const {
    if (reference.back > 0) {
      reference.to = last_number(parts_[part_]);
      reference.from = reference.to - reference.back + 1;
      if (reference.from < 1) return {};
    }
    const std::size_t part = part_named(reference);
    if (part == parts_.size()) return {};
    if (reference.from == 0 && label.span.empty()) return all_rounds(part);
    const int from = reference.from == 0 ? label.from : reference.from;
    const int to = reference.from == 0 ? label.to : reference.to;
    std::vector<Named> named;
    for (int number = from; number <= to && number - from < limit::rounds; ++number) {
      const Named one = find_round(part, number);
      if (one.from == 0) return {};
      const bool same = !named.empty() && named.back().target.entry == one.target.entry;
      if (same && label.span.empty())
        named.back().to = number;
      else
        named.push_back({one.target, number, number});
    }
    return named;
  }

  std::vector<Named> all_rounds(std::size_t part) const {
    std::vector<Named> all;
    int last = 0;
    for (std::size_t entry = 0; entry < parts_[part].rounds.size(); ++entry) {
      all.push_back(entry_of(part, entry, last));
      last = all.back().to;
      all.back().target.number = 0;
    }
    return all;
  }

  Named entry_of(std::size_t part, std::size_t entry, int last) const {
    const Label& label = parts_[part].rounds[entry].front().label;
    Named named{{part, entry, 0, 0}, label.from, label.to};
    if (label.relative) named.from = last + 1, named.to = last + label.to;
    return named;
  }

  /// The last round of this number that stands before.
  Named find_round(std::size_t part, int number) const {
    Named found;
    int last = 0;
    for (std::size_t entry = 0; entry < parts_[part].rounds.size(); ++entry) {
      Named one = entry_of(part, entry, last);
      last = one.to;
      if (number < one.from || number > one.to) continue;
      one.target.number = one.from == one.to ? 0 : number;
      found = one;
    }
    return found;
  }

  /// The part whose rounds are meant: the one that is named, else this one, else the nearest before that has
  /// them; the number of parts if there is none.
  std::size_t part_named(const Reference& reference) const {
    if (!reference.part.empty())
      if (const std::size_t named = part_of_name(reference.part); named != parts_.size()) return named;
    if (reference.from == 0) return reference.part.empty() ? parts_.size() : part_like_this(reference.part);
    for (std::size_t part = part_ + 1; part-- > 0;)
      if (find_round(part, reference.to).from != 0) return part;
    return parts_.size();
  }

  std::size_t part_of_name(std::string_view words) const {
    std::size_t best = parts_.size();
    int most = 0;
    for (std::size_t part = 0; part < part_; ++part) {
      const int shared = names_part(words, name_of(part), reader_.vocabulary);
      if (shared >= most && shared > 1) best = part;
      most = std::max(most, shared);
    }
    return best;
  }

  /// The first part may have no name but the title.
  std::string_view name_of(std::size_t part) const {
    const bool titled = part == 0 && parts_[part].heading == nullptr;
    return titled ? reader_.source.at(parts_[part].title) : parts_[part].name();
  }

  /// "as the first": the part that is called like this one.
  std::size_t part_like_this(std::string_view words) const {
    return part_of_name(std::string(words) + " " + std::string(name_of(part_)));
  }

  Ways as_named(const Way& way, const Label& label, Target target, bool last) const {
    Ways ways = parts_[target.part].rounds[target.entry];
    target.loops = way.reference->loops;
    for (Way& one : ways) {
      if (one.effort != Effort::all) read_way(reader_, one, Effort::all);
      one.label = label;
      one.work = way.work;
      one.above = {};
      one.effort = Effort::all;
      one.reference = way.reference;
      one.target = target;
      one.stated = last ? way.stated : std::nullopt;
      for (Reading& reading : one.readings) restate(reading, *way.reference, last);
    }
    return ways;
  }

  /// A reading as the line that repeats it has it: with the counts and notes of that line.
  void restate(Reading& reading, const Reference& reference, bool last) const {
    reading.stated = last ? reference.stated : std::vector<Stated>{};
    reading.placings.clear();
    reading.passed_over.clear();
    if (!last || reference.tail.empty()) return;
    if (names_stitches(reader_, reference.tail) && !places_something(reader_, reference.tail)) {
      reading.passed_over = {reference.tail};
      return;
    }
    reading.placings = read_placings(reader_.source.at(reference.tail), reference.tail, reader_.vocabulary);
  }

  const Reader& reader_;
  std::vector<PartLines>& parts_;
  std::size_t part_ = 0;
};

} // namespace

void follow_references(const Reader& reader, std::vector<PartLines>& parts) {
  Follower(reader, parts).follow();
}

} // namespace whorl::pattern
