#include "pattern/choice.hpp"

#include "pattern/costs.hpp"
#include "pattern/effect.hpp"
#include "pattern/limits.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

/// Where a path stands behind a line, and how it came there.
struct State {
  std::int64_t open = unknown;
  std::int64_t spaces = unknown; ///< chain spaces
  bool carried = false;          ///< a turning chain waits to be the next row's first stitch
  int last = 0;
  int cost = 0;
  std::size_t from = 0; ///< state of the line before
  std::size_t way = 0;
  std::size_t reading = not_read;
  std::int64_t chains = 0; ///< in the chain spaces
};

/// What a reading does to an edge, through all rounds of its label.
struct Step {
  std::int64_t open = unknown;
  std::int64_t spaces = unknown;
  std::int64_t chains = 0;
  std::int64_t apart = 0; ///< stitches back along chains
  bool carries = false;
  int cost = 0;
  bool uses_all = true;
  bool states = false;
  bool meets = true;
  bool doubtful = false; ///< loops are taken for stitches where there are loops of chains
};

struct Numbers {
  int from = 0;
  int to = 0;
  bool in_step = true;
};

Numbers numbers_of(const Label& label, int last) {
  if (label.relative) return {last + 1, last + label.to, true};
  const bool follows = label.from == last + 1 || (label.again > 0 && label.from == last);
  return {label.from, label.to, follows || last == 0};
}

/// Whether an edge has what a reading's figures depend on.
bool is_known(const Effect& effect, const Open& open) {
  if (effect.starts || open.stitches == unknown) return !runs_to_end(effect);
  const bool by_spaces = effect.passes_any || (effect.pass_uses == 0 && effect.pass_spaces != 0);
  return !by_spaces || (open.spaces != unknown && !effect.in_gaps);
}

Outcome worked_on(const Effect& effect, const Open& open) {
  const bool known = is_known(effect, open);
  if (open.stitches != unknown && !effect.starts && known) return outcome(effect, open);
  Outcome result;
  result.makes = known ? static_cast<std::int64_t>(effect.makes) : unknown;
  const bool by_passes = effect.pass_makes_spaces != 0; // along a chain nobody has counted them
  result.spaces = known && !by_passes ? std::max<std::int64_t>(0, effect.makes_spaces) : unknown;
  result.chains = known ? std::max<std::int64_t>(0, effect.makes_chains) : 0;
  result.apart = effect.apart;
  result.carries = effect.carries;
  return result;
}

int cost_of(const Outcome& result) {
  int sum = 0;
  if (result.remainder != 0) {
    sum += cost::does_not_divide;
  } else if (result.left_over != 0) {
    sum += cost::left_over;
  }
  if (result.past_end != 0) sum += cost::past_end;
  return sum;
}

/// The rounds of a label one after the other; what does not fit counts once.
Step work_rounds(const Effect& effect, Open open, int rounds) {
  Step step;
  for (int round = 0; round < std::min(rounds, limit::rounds); ++round) {
    const Outcome result = worked_on(effect, open);
    step.cost = std::max(step.cost, cost_of(result));
    step.open = std::min<std::int64_t>(result.makes, limit::stitches);
    step.spaces = std::min<std::int64_t>(result.spaces, limit::stitches);
    step.chains = result.chains;
    step.apart = result.apart;
    step.carries = result.carries;
    if (step.open == open.stitches && step.spaces == open.spaces && step.carries == open.carried) break;
    open = {step.open, step.spaces, step.carries, step.chains};
  }
  step.uses_all = step.cost == 0;
  return step;
}

bool begins_with(std::string_view text, std::string_view head) { return text.substr(0, head.size()) == head; }

/// Whether a count of `kind` speaks of only a part of the reading's stitches ("6 bobbles").
bool names_a_part(const Reading& reading, stitch::KindId kind, const std::vector<stitch::StitchKind>& kinds) {
  const auto name_of = [&](stitch::KindId id) {
    const std::size_t made = static_cast<std::size_t>(id) - reading.first_new_kind;
    if (id < reading.first_new_kind && id < kinds.size()) return std::string_view(kinds[id].name);
    return made < reading.new_kinds.size() ? std::string_view(reading.new_kinds[made].name)
                                           : std::string_view();
  };
  const auto is_other = [&](const Node& node) {
    const bool stitch = node.kind == NodeKind::work && node.work.act == Act::stitch;
    return stitch && (node.work.counts || name_of(node.work.kind) != "ch") &&
           !begins_with(name_of(node.work.kind), name_of(kind));
  };
  return std::any_of(reading.nodes.begin(), reading.nodes.end(), is_other);
}

bool is_comparable(const Reading& reading, const Stated& stated, std::int64_t open,
                   const std::vector<stitch::StitchKind>& kinds) {
  if (stated.unit == Unit::spaces || stated.unit == Unit::chains || stated.unit == Unit::group) return false;
  return stated.unit != Unit::kind || stated.count == open || !names_a_part(reading, stated.kind, kinds);
}

const Stated* count_of(const Reading& reading, std::int64_t open,
                       const std::vector<stitch::StitchKind>& kinds) {
  for (const Stated& stated : reading.stated)
    if (is_comparable(reading, stated, open, kinds)) return &stated;
  return nullptr;
}

/// A line that only reads with something left out may rather not be read.
bool may_stay_unread(const Way& way) {
  return way.readings.empty() || !way.readings.front().passed_over.empty();
}

/// A line that is not read goes on with its stated count.
Step unread_step(const Way& way) {
  Step step;
  step.cost = cost::not_read;
  if (way.stated) step.open = *way.stated;
  return step;
}

/// Some count the chains between stitches, or the spaces, with them, or what is worked back along chains.
bool meets(const Step& step, const Stated& stated) {
  const auto count = static_cast<std::int64_t>(stated.count);
  if (step.open == count) return true;
  const bool of_all = stated.unit == Unit::any || stated.unit == Unit::stitches;
  if ((of_all || stated.unit == Unit::kind) && step.apart > 0 && step.open + step.apart == count) return true;
  return of_all && step.spaces + step.chains > 0 &&
         (step.open + step.chains == count || step.open + step.spaces == count);
}

Step compare_count(Step step, const Stated* stated) {
  if (stated == nullptr) return step;
  if (step.open == unknown) step.open = stated->count;
  step.states = true;
  step.meets = meets(step, *stated);
  // A line that is wrong anyhow is not the better for dividing: the likelier reading stays.
  if (!step.meets) step.cost = std::max(step.cost, cost::count_not_met);
  return step;
}

/// A number at the end that is met by what the line makes of all that is open is hardly anything else.
Step met_by_bare_count(Step step) {
  if (step.uses_all && step.states && step.meets) step.cost -= cost::bare_count_met;
  return step;
}

bool may_start(const Way& way) {
  return std::any_of(way.readings.begin(), way.readings.end(),
                     [](const Reading& reading) { return reading.effect.starts; });
}

/// One choice over one part.
class Paths {
public:
  Paths(const std::vector<Ways>& lines, const std::vector<stitch::StitchKind>& kinds)
      : lines_(lines), kinds_(kinds) {}

  std::vector<Settled> cheapest(std::int64_t open, int last) {
    State start;
    start.open = open;
    start.last = last;
    behind_.assign(1, {start});
    for (const Ways& line : lines_) behind_.push_back(states_behind(line, behind_.back()));
    return walk_back();
  }

private:
  std::vector<State> states_behind(const Ways& line, const std::vector<State>& before) const {
    std::vector<State> states;
    for (std::size_t from = 0; from < before.size(); ++from)
      for (std::size_t way = 0; way < line.size(); ++way)
        add_states(line[way], way, before[from], from, states);
    return keep_cheapest(std::move(states));
  }

  Step step_of(const Way& way, std::size_t reading, const State& state, const Numbers& numbers) const {
    if (reading == not_read) return unread_step(way);
    const Reading& chosen = way.readings[reading];
    const Step step = work_rounds(chosen.effect, {state.open, state.spaces, state.carried, state.chains},
                                  numbers.to - numbers.from + 1);
    Step compared = compare_count(step, count_of(chosen, step.open, kinds_));
    compared.doubtful =
        chosen.loops_as_stitches && !chosen.effect.starts && state.spaces > 0 && state.chains > state.spaces;
    if (compared.doubtful) compared.cost += cost::loops_as_stitches;
    return chosen.bare_count ? met_by_bare_count(compared) : compared;
  }

  void add_states(const Way& way, std::size_t index, const State& state, std::size_t from,
                  std::vector<State>& states) const {
    const Numbers numbers = numbers_of(way.label, state.last);
    const int before = state.cost + way.label.cost + (numbers.in_step ? 0 : cost::out_of_step);
    const auto add = [&](std::size_t reading, int own) {
      const Step step = step_of(way, reading, state, numbers);
      states.push_back({step.open, step.spaces, step.carries, numbers.to, before + own + step.cost, from,
                        index, reading, step.chains});
      if (!step.meets) go_on_with_stated(way.readings[reading], step, states);
    };
    if (may_stay_unread(way)) add(not_read, 0);
    const bool goes_on = state.open > 0 && numbers.in_step && way.label.from > 1;
    const bool begins = state.open == unknown && way.label.from == 1 && may_start(way);
    for (std::size_t reading = 0; reading < way.readings.size(); ++reading) {
      const Effect& effect = way.readings[reading].effect;
      int own = begins && !effect.starts ? cost::begins_nothing : 0;
      if (goes_on && effect.starts) own = cost::starts_again;
      if (goes_on && effect.starts && effect.pass_uses > 0) own += cost::edge_unproved;
      add(reading, way.readings[reading].cost + own);
    }
  }

  /// Where a count is not met, either it or the work is the slip: the next line decides.
  void go_on_with_stated(const Reading& reading, const Step& step, std::vector<State>& states) const {
    State state = states.back();
    state.open = count_of(reading, step.open, kinds_)->count;
    states.push_back(state);
  }

  static std::vector<State> keep_cheapest(std::vector<State> states) {
    std::stable_sort(states.begin(), states.end(),
                     [](const State& a, const State& b) { return a.cost < b.cost; });
    std::vector<State> kept;
    for (const State& state : states) {
      const auto is_same = [&](const State& other) {
        return other.open == state.open && other.spaces == state.spaces && other.carried == state.carried &&
               other.last == state.last;
      };
      if (std::none_of(kept.begin(), kept.end(), is_same)) kept.push_back(state);
      if (kept.size() == limit::states) break;
    }
    return kept;
  }

  std::vector<Settled> walk_back() const {
    std::vector<Settled> settled(lines_.size());
    std::size_t at = 0;
    for (std::size_t line = lines_.size(); line-- > 0;) {
      const State& state = behind_[line + 1][at];
      settled[line] = settle(lines_[line], state, behind_[line][state.from]);
      at = state.from;
    }
    return settled;
  }

  Settled settle(const Ways& line, const State& state, const State& before) const {
    Settled settled;
    settled.way = state.way;
    settled.reading = state.reading;
    settled.opened = before.open;
    settled.opened_spaces = before.spaces;
    settled.open = state.open;
    const Numbers numbers = numbers_of(line[state.way].label, before.last);
    settled.from = numbers.from;
    settled.to = numbers.to;
    settled.in_step = numbers.in_step;
    const Step step = step_of(line[state.way], state.reading, before, numbers);
    settled.uses_all = step.uses_all;
    settled.states = step.states;
    settled.meets = step.meets;
    settled.doubtful = step.doubtful;
    compare_others(line, before, settled);
    return settled;
  }

  /// Counts the readings that agree as well, and keeps the one worth naming: the likeliest where it was not
  /// taken, else the first that agrees too.
  void compare_others(const Ways& line, const State& before, Settled& settled) const {
    settled.agreeing = 1;
    const bool likeliest = settled.way == 0 && (settled.reading == 0 || settled.reading == not_read);
    if (!likeliest && !line.front().readings.empty()) settled.other = {0, 0};
    for (std::size_t way = 0; settled.agrees() && way < line.size(); ++way)
      for (std::size_t reading = 0; reading < line[way].readings.size(); ++reading) {
        if (!agrees_otherwise(line, way, reading, before, settled)) continue;
        ++settled.agreeing;
        if (!settled.other) settled.other = {way, reading};
      }
  }

  /// Whether another reading, which does something else, agrees with the counts.
  bool agrees_otherwise(const Ways& line, std::size_t way, std::size_t reading, const State& before,
                        const Settled& settled) const {
    const Reading& chosen = line[settled.way].readings[settled.reading];
    const Effect& effect = line[way].readings[reading].effect;
    if (way == settled.way && (effect == chosen.effect || chosen.effect.starts)) return false;
    if (effect.passes_chains != chosen.effect.passes_chains && before.chains == 0) return false;
    if (line[way].readings[reading].cost > chosen.cost + cost::worth_naming) return false;
    const Numbers numbers = numbers_of(line[way].label, before.last);
    const Step step = step_of(line[way], reading, before, numbers);
    return step.uses_all && step.meets && numbers.in_step;
  }

  const std::vector<Ways>& lines_;
  const std::vector<stitch::StitchKind>& kinds_;
  std::vector<std::vector<State>> behind_;
};

bool read_line_again(Ways& line, const ReadAll& read_all) {
  bool more = false;
  for (Way& way : line) {
    if (way.effort == Effort::all) continue;
    read_all(way);
    way.effort = Effort::all;
    more = true;
  }
  return more;
}

/// Chains at a row's end tell nothing of its own count, only of the next row's.
bool ends_with_turning_chain(const Ways& line) {
  return std::any_of(line.begin(), line.end(), [](const Way& way) {
    return !way.readings.empty() && way.readings.front().turning_chains != 0;
  });
}

/// Whether a round begins a new edge although its number follows on.
bool starts_again(const Ways& line, const Settled& settled) {
  if (settled.reading == not_read || settled.opened <= 0 || settled.from <= 1) return false;
  return line[settled.way].readings[settled.reading].effect.starts;
}

/// Whether a first round has nothing to work into, as it was read: it may begin a ring.
bool begins_nothing(const Ways& line, const Settled& settled) {
  if (settled.reading == not_read || settled.opened != unknown || settled.from != 1) return false;
  return !line[settled.way].readings[settled.reading].effect.starts;
}

/// Makes all readings of the lines whose counts disagree, and of those before them that no count confirmed.
bool read_more(std::vector<Ways>& lines, const std::vector<Settled>& settled, const ReadAll& read_all) {
  bool more = false;
  for (std::size_t line = 0; line < lines.size(); ++line) {
    const bool sure = settled[line].agrees() && !settled[line].doubtful;
    if (sure && !starts_again(lines[line], settled[line]) && !begins_nothing(lines[line], settled[line]))
      continue;
    more = read_line_again(lines[line], read_all) || more;
    if (settled[line].agrees()) continue;
    for (int back = 1; back <= limit::lines_back && static_cast<std::size_t>(back) <= line; ++back) {
      const Settled& before = settled[line - static_cast<std::size_t>(back)];
      if (before.states && before.agrees() &&
          !ends_with_turning_chain(lines[line - static_cast<std::size_t>(back)]))
        break;
      more = read_line_again(lines[line - static_cast<std::size_t>(back)], read_all) || more;
    }
  }
  return more;
}

void vote(std::uint16_t habits, Votes& votes) {
  for (std::size_t bit = 0; bit < votes.size(); ++bit)
    if (habits & (1U << bit)) ++votes[bit];
}

bool is_settled_by_counts(const Settled& line) { return line.states && line.agrees() && line.agreeing == 1; }

void lean(Way& way, std::uint16_t habits) {
  for (Reading& reading : way.readings)
    if (reading.habits & habits) reading.cost -= cost::habit;
  std::stable_sort(way.readings.begin(), way.readings.end(),
                   [](const Reading& a, const Reading& b) { return a.cost < b.cost; });
}

bool has_habits(const Ways& line) {
  const auto any = [](const Way& way) {
    return std::any_of(way.readings.begin(), way.readings.end(),
                       [](const Reading& r) { return r.habits != 0; });
  };
  return std::any_of(line.begin(), line.end(), any);
}

} // namespace

std::vector<Settled> choose(std::vector<Ways>& lines, std::int64_t open, int last,
                            const std::vector<stitch::StitchKind>& kinds, const ReadAll& read_all) {
  std::vector<Settled> settled = Paths(lines, kinds).cheapest(open, last);
  for (int pass = 0; pass < limit::passes && read_more(lines, settled, read_all); ++pass)
    settled = Paths(lines, kinds).cheapest(open, last);
  return settled;
}

void count_votes(const std::vector<Ways>& lines, const std::vector<Settled>& settled, Votes& votes) {
  for (std::size_t line = 0; line < lines.size(); ++line) {
    if (!is_settled_by_counts(settled[line])) continue;
    const Way& way = lines[line][settled[line].way];
    vote(way.readings[settled[line].reading].habits, votes);
  }
}

std::uint16_t winners(const Votes& votes) {
  std::uint16_t habits = 0;
  for (std::size_t bit = 0; bit + 1 < votes.size(); bit += 2) {
    if (votes[bit] > votes[bit + 1]) habits = static_cast<std::uint16_t>(habits | (1U << bit));
    if (votes[bit] < votes[bit + 1]) habits = static_cast<std::uint16_t>(habits | (2U << bit));
  }
  return habits;
}

bool lean_unsettled(std::vector<Ways>& lines, const std::vector<Settled>& settled, std::uint16_t habits,
                    const ReadAll& read_all) {
  bool any = false;
  for (std::size_t line = 0; habits != 0 && line < lines.size(); ++line) {
    if (settled[line].states || !has_habits(lines[line])) continue;
    read_line_again(lines[line], read_all);
    for (Way& way : lines[line]) lean(way, habits);
    any = true;
  }
  return any;
}

} // namespace whorl::pattern
