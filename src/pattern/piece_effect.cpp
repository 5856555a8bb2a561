#include "pattern/effect.hpp"
#include "pattern/meaning.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

/// Along a chain, the first into the one that is named.
Effect onward_effect(const Work& work, const stitch::StitchKind& kind) {
  Work along = work;
  along.where = Where::next;
  along.counts = false;
  Effect effect = effect_of_work(along, kind);
  effect.uses -= std::min<std::uint32_t>(effect.uses, 1);
  effect.makes += work.counts ? 1 : 0; // the chains skipped at the hook
  effect.starts = true;
  return effect;
}

/// Plain stitches, then the increase or decrease that takes up the nth.
Effect every_effect(const Piece& piece, const stitch::StitchKind& kind) {
  const Work& work = piece.work;
  Effect once;
  once.uses = work.nth;
  once.makes = work.in_one;
  if (!piece.skipping) once.makes += work.nth - static_cast<std::uint32_t>(kind.takes);
  return work.times == 1 ? to_end(once, 0) : times(once, work.times);
}

} // namespace

Effect effect_of(const Piece& piece, const Effect& inner, const Kinds& kinds) {
  if (piece.onward) return onward_effect(piece.work, kinds.at(piece.work.kind));
  switch (piece.verb) {
  case Verb::under_chain:
    return piece.work.times > 0 ? effect_of_work(piece.work, kinds.at(piece.work.kind)) : Effect{};
  case Verb::stitch:
  case Verb::again:
  case Verb::starting_chain:
  case Verb::skip:
  case Verb::ring:
  case Verb::other_side:
    return effect_of_work(piece.work, kinds.at(piece.work.kind));
  case Verb::every:
    return every_effect(piece, kinds.at(piece.work.kind));
  case Verb::repeat:
    return piece.work.to_end ? to_end(inner, piece.work.leave) : times(inner, piece.work.times);
  case Verb::foundation: {
    Effect begun;
    begun.makes = piece.work.times;
    begun.starts = true;
    return begun;
  }
  case Verb::opening:
  case Verb::from_chain:
  case Verb::side_behind:
  case Verb::part_here:
  case Verb::part_behind: {
    Effect starts;
    starts.starts = true;
    starts.makes = piece.work.counts ? 1 : 0; // the chains skipped at the hook
    return starts;
  }
  case Verb::group:
    return into_one_place(piece.work, inner);
  default:
    return {};
  }
}

} // namespace whorl::pattern
