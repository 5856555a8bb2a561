#include "layout/draw_near.hpp"

#include "layout/items.hpp"
#include "layout/turn.hpp"

#include <algorithm>
#include <optional>

namespace whorl::layout {
namespace {

using fabric::Fabric;

constexpr int most_times = 2;
constexpr double strongest = 16; ///< spring, of one between neighbours

/// A head as seen from the middle, and which of its ring's items it belongs to.
struct SeenHead {
  double angle = 0, far = 1;
  std::size_t item = 0;
};

/// The heads of a ring, in the order of its round's stitches; none where some are no plain places.
std::vector<SeenHead> plain_heads(const Fabric& fabric, const RingLaid& laid, const std::vector<double>& at,
                                  const std::vector<Seen>& tips) {
  const fabric::Round& round = fabric.rounds[laid.ring.round];
  std::vector<SeenHead> heads(round.count);
  std::size_t known = 0;
  for (std::size_t i = 0; i < laid.items.size(); ++i) {
    const Item& item = laid.items[i];
    if ((fabric.stitches[item.first].flags & fabric::counts) == 0) return {};
    const Seen& seen = tips[laid.band.shape_of[i]];
    for (std::uint32_t j = 0; j < item.count; ++j) {
      const std::size_t place = item.first + j - round.first_stitch;
      const SeenPoint& tip = seen.or_last(j);
      if (place >= heads.size()) return {};
      heads[place] = {at[i] / laid.size.middle + tip.angle, tip.far, i};
      ++known;
    }
  }
  if (known != heads.size() || laid.ring.against) return {};
  return heads;
}

/// Whether what is at an angle is nearest to the n-th.
bool is_by(const std::vector<SeenHead>& heads, std::size_t n, double angle) {
  const SeenHead own = heads[n], before = n > 0 ? heads[n - 1] : heads.back(),
                 behind = n + 1 < heads.size() ? heads[n + 1] : heads.front();
  const double from = n > 0 ? before.angle : before.angle - 2 * pi;
  const double to = n + 1 < heads.size() ? behind.angle : behind.angle + 2 * pi;
  return (angle - own.angle) * own.far < (to - angle) * behind.far &&
         (own.angle - angle) * own.far < (angle - from) * before.far;
}

/// The items of the ring being laid that must move to bring feet to their own places. None at all: this
/// cannot be told so simply.
std::optional<std::vector<std::size_t>> misplaced(const Fabric& fabric, const Standing& feet,
                                                  const Standing& tops, bool feet_move) {
  const std::vector<SeenHead> heads = plain_heads(fabric, tops.ring, tops.at, tops.seen);
  const fabric::StitchId first = fabric.rounds[tops.ring.ring.last_round].first_stitch;
  std::vector<std::size_t> found;
  for (std::size_t i = 0; i < feet.ring.items.size(); ++i) {
    const Seen& seen = feet.seen[feet.ring.band.shape_of[i]];
    std::size_t foot = 0;
    const fabric::Legs legs = legs_of(fabric, feet.ring.items[i]);
    const LegsHeld held = legs_held(feet.ring.items[i], legs.size());
    for (const fabric::Leg& leg : legs) {
      const std::size_t place = leg.into.of - first;
      if (!is_stitch(leg.into) || leg.into.of < first || place >= heads.size()) return std::nullopt;
      const double angle = feet.at[i] / feet.ring.size.middle + seen.or_last(foot).angle;
      if (!held.holds(foot++) || is_by(heads, place, angle)) continue;
      found.push_back(feet_move ? i : heads[place].item);
    }
  }
  return found;
}

/// Makes the springs of items stronger and lets the ring settle.
void draw(const std::vector<std::size_t>& items, const Laid* inside, Laid& laid) {
  for (const std::size_t item : items) {
    double& pull = laid.strung.pull[item];
    pull = std::max(pull, std::min(8 * pull, strongest));
  }
  relax_drawn(inside, laid);
}

} // namespace

bool draw_to_places(const Fabric& fabric, const Standing& feet, const Standing& tops, const Turn& turn,
                    const Laid* inside, Laid& laid) {
  for (int times = most_times;; --times) {
    const auto items = misplaced(fabric, feet, tops, !turn.inward);
    if (!items || items->empty()) return items.has_value();
    if (times == 0) return false;
    draw(*items, inside, laid);
  }
}

void draw_nearer(const Fabric& fabric, const Standing& feet, const Standing& tops, const Turn& turn,
                 const Laid* inside, Laid& laid) {
  const auto items = misplaced(fabric, feet, tops, !turn.inward);
  if (items && !items->empty()) draw(*items, inside, laid);
}

} // namespace whorl::layout
