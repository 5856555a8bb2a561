#include "pattern/effect.hpp"
#include "pattern/reading.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

/// Sums stop at the largest number.
std::int64_t multiply(std::int64_t times, std::uint64_t each) {
  constexpr std::uint64_t largest = 0xFFFFFFFF;
  const auto n = static_cast<std::uint64_t>(times);
  return static_cast<std::int64_t>(each != 0 && n > largest / each ? largest : n * each);
}

/// How often what runs to the end is worked, and what is left then.
struct Passes {
  std::int64_t times = 0;
  std::int64_t remainder = 0;
};

Passes passes_of(const Effect& effect, std::int64_t stitches, std::int64_t spaces) {
  if (!runs_to_end(effect)) return {};
  const bool in_stitches = effect.pass_uses != 0;
  std::int64_t room = std::max<std::int64_t>(0, in_stitches ? stitches : spaces);
  if (effect.passes_any && !effect.passes_chains) room += std::max<std::int64_t>(0, spaces);
  const std::int64_t each = in_stitches ? effect.pass_uses : effect.pass_spaces;
  const Passes passes{room / each, room % each};
  const bool by_spaces = in_stitches && effect.pass_spaces > 0 && spaces >= 0;
  if (by_spaces && spaces / effect.pass_spaces < passes.times) return {spaces / effect.pass_spaces, 0};
  return passes;
}

/// How many of the spaces are corners, guessed from the chains in them: others have one, corners two or
/// three.
std::int64_t corners_among(std::int64_t spaces, std::int64_t chains) {
  const std::int64_t more = chains - spaces;
  if (more <= 0 || more >= spaces) return std::max<std::int64_t>(spaces, 0);
  return more == 8 || more == 12 ? more / 2 : more;
}

} // namespace

Outcome outcome(const Effect& effect, std::int64_t open) { return outcome(effect, Open{open}); }

Outcome outcome(const Effect& effect, const Open& open) {
  Outcome out;
  const std::int64_t carried = open.carried && !effect.starts ? 1 : 0;
  const std::int64_t chains = effect.passes_chains ? std::max<std::int64_t>(0, open.chains) : 0;
  const std::int64_t rest = open.stitches + chains - static_cast<std::int64_t>(effect.uses) - carried;
  const std::int64_t spaces = open.spaces - static_cast<std::int64_t>(effect.spaces);
  const Passes passes = effect.starts ? Passes{} : passes_of(effect, rest, spaces);
  const auto in_passes = [&](std::uint64_t each) { return multiply(passes.times, each); };
  const auto in_all = [&](std::int64_t once, std::uint64_t each) { return once + in_passes(each); };
  out.makes = in_all(effect.makes, effect.pass_makes) + carried;
  if (passes.times > 0) out.makes += std::max<std::int64_t>(spaces, 0) * effect.pass_more_in_space;
  if (passes.times > 0) out.makes += corners_among(spaces, open.chains) * effect.pass_more_in_corner;
  out.spaces = in_all(effect.makes_spaces, effect.pass_makes_spaces);
  out.chains = in_all(effect.makes_chains, effect.pass_makes_chains);
  out.apart = in_all(effect.apart, effect.pass_apart);
  out.carries = effect.carries;
  if (effect.starts) return out;
  // the stitches between spaces are not missed
  const bool passes_by = effect.spaces + effect.pass_spaces > 0 || effect.in_gaps;
  const std::int64_t spaces_past = in_passes(effect.pass_spaces) - spaces;
  out.past_end = std::max<std::int64_t>(-rest, 0);
  if (passes_by && open.spaces >= 0 && !effect.in_gaps)
    out.past_end += std::max<std::int64_t>(spaces_past, 0);
  const std::int64_t alone = effect.folded ? 1 : 0;
  if (runs_to_end(effect)) {
    out.remainder = passes.remainder <= alone ? 0 : passes.remainder;
  } else if (!passes_by && rest > alone) {
    out.left_over = rest;
  }
  return out;
}

} // namespace whorl::pattern
