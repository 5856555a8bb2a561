#include "stitch/steps.hpp"

#include <algorithm>

namespace whorl::stitch {
namespace {

using Moves = std::vector<Move>;
using Steps = std::vector<Step>;

constexpr std::size_t least_passes = 3, spared_steps = 5;

bool is_leg(const Move& move) {
  return (move.act == Act::insert && !move.into_made) || move.act == Act::take_loop;
}

/// Whether leg number `leg` of so many begins another of the `takes` places.
bool begins_place(std::size_t leg, std::size_t legs, std::size_t takes) {
  return leg == 0 || leg * takes / legs != (leg - 1) * takes / legs;
}

/// What a stitch just made is that a move goes back into: where the last thing made was a chain, the first of
/// them, or the stitch that they stand on.
Goes made_before(Moves::const_iterator first, Moves::const_iterator at) {
  bool chains = false;
  while (at != first) {
    --at;
    if (is_leg(*at)) return chains ? Goes::stitch_made : Goes::first_made;
    chains = chains || at->act == Act::chain;
  }
  return chains ? Goes::chain_made : Goes::first_made;
}

/// The steps before any is told as a repeat.
class Telling {
public:
  Telling(const Moves& moves, const StitchKind& kind)
      : moves_(moves), legs_(static_cast<std::size_t>(std::count_if(moves.begin(), moves.end(), is_leg))),
        takes_(static_cast<std::size_t>(std::max(0, kind.takes))) {}

  std::optional<Steps> told() {
    for (auto move = moves_.begin(); move != moves_.end(); ++move)
      if (!tell(move)) return std::nullopt;
    return std::move(steps_);
  }

private:
  bool tell(Moves::const_iterator move) {
    const bool wraps_on = move->act == Act::yarn_over && !steps_.empty() && steps_.back().move == *move;
    if (!wraps_on) {
      settle(hook_);
      steps_.push_back(step_of(move));
    } else {
      ++steps_.back().times;
    }
    if (!make(*move, hook_)) return false;
    steps_.back().loops = {hook_.count()};
    steps_.back().hook = hook_;
    return true;
  }

  Step step_of(Moves::const_iterator move) {
    Step step;
    step.move = *move;
    if (is_leg(*move)) step.goes = begins_place(leg_++, legs_, takes_) ? Goes::next : Goes::same;
    if (move->into_made) step.goes = made_before(moves_.begin(), move);
    step.all = move->act == Act::pull_through && (move->loops == 0 || move->loops == hook_.count());
    step.through_work = hook_.inserted && (move->act == Act::pull_through || move->act == Act::pick_up);
    return step;
  }

  const Moves& moves_;
  std::size_t legs_, takes_, leg_ = 0;
  Hook hook_;
  Steps steps_;
};

bool alike(const Step& a, const Step& b) {
  return a.move == b.move && a.times == b.times && a.all == b.all && a.through_work == b.through_work;
}

/// The first step from `from` on that goes somewhere, within a pass of so many.
std::size_t first_leg(const Steps& steps, std::size_t from, std::size_t length) {
  std::size_t at = from;
  while (at < from + length && !is_leg(steps[at].move)) ++at;
  return at;
}

/// Whether the pass at `at` is the pass at `from` once more; only its first leg may go elsewhere.
bool is_pass(const Steps& steps, std::size_t from, std::size_t at, std::size_t length) {
  if (at + length > steps.size()) return false;
  const std::size_t leg = first_leg(steps, from, length) - from;
  for (std::size_t i = 0; i < length; ++i) {
    const Step &a = steps[from + i], &b = steps[at + i];
    if (!alike(a, b) || (i != leg && a.goes != b.goes)) return false;
  }
  return true;
}

/// How many passes stand from `from` on, the later ones all going to the same sort of place.
std::size_t passes_at(const Steps& steps, std::size_t from, std::size_t length) {
  std::size_t passes = 1;
  const std::size_t leg = first_leg(steps, from, length) - from;
  for (std::size_t at = from + length; is_pass(steps, from, at, length); at += length, ++passes)
    if (leg < length && steps[at + leg].goes != steps[from + length + leg].goes) break;
  return passes;
}

struct Passes {
  std::size_t length = 0, number = 1;
  std::size_t steps() const { return length * number; }
};

/// The stretch of passes from `from` on that is worth telling as a repeat, the longest; else none.
Passes repeat_at(const Steps& steps, std::size_t from) {
  Passes best;
  for (std::size_t length = 1; from + length * least_passes <= steps.size(); ++length) {
    const Passes here{length, passes_at(steps, from, length)};
    if (here.number < least_passes || here.steps() - length < spared_steps) continue;
    if (here.steps() > best.steps()) best = here;
  }
  return best;
}

Step repeat_of(const Steps& steps, std::size_t from, const Passes& passes, std::size_t first_number) {
  Step repeat = steps[from + passes.steps() - 1];
  repeat.times = static_cast<int>(passes.number) - 1;
  repeat.first = first_number;
  repeat.last = first_number + passes.length - 1;
  const std::size_t leg = first_leg(steps, from + passes.length, passes.length);
  repeat.goes = leg < from + 2 * passes.length ? steps[leg].goes : Goes::same;
  repeat.loops.clear();
  for (std::size_t pass = 2; pass <= passes.number; ++pass)
    repeat.loops.push_back(steps[from + pass * passes.length - 1].loops.front());
  return repeat;
}

Steps with_repeats(const Steps& steps) {
  Steps told;
  for (std::size_t at = 0; at < steps.size();) {
    const Passes passes = repeat_at(steps, at);
    const std::size_t once = std::max<std::size_t>(1, passes.length);
    const std::size_t number = told.size() + 1;
    for (std::size_t i = 0; i < once; ++i) told.push_back(steps[at + i]);
    if (passes.length > 0) told.push_back(repeat_of(steps, at, passes, number));
    at += passes.length > 0 ? passes.steps() : 1;
  }
  return told;
}

} // namespace

std::optional<std::vector<Step>> steps_of(const StitchKind& kind) {
  const auto moves = parse_moves(kind.moves);
  if (!moves) return std::nullopt;
  const auto steps = Telling(*moves, kind).told();
  if (!steps) return std::nullopt;
  return with_repeats(*steps);
}

} // namespace whorl::stitch
