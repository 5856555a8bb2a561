#include "layout/ahead.hpp"

#include "layout/items.hpp"

#include <algorithm>

namespace whorl::layout {
namespace {

using fabric::Fabric;
using fabric::StitchId;

std::vector<double> own_slots(const Band& band) {
  std::vector<double> slots;
  for (const std::uint32_t shape : band.shape_of) slots.push_back(band.slot[shape]);
  return slots;
}

/// Which of a ring's items stands for each stitch of its last round.
class Holders {
public:
  Holders(const Fabric& fabric, const Ring& ring, const std::vector<Item>& items)
      : first_(fabric.rounds[ring.last_round].first_stitch) {
    const StitchId onto_last = first_ - fabric.rounds[ring.round].first_stitch;
    item_of_.resize(fabric.rounds[ring.last_round].count, fabric::none);
    for (std::size_t i = 0; i < items.size(); ++i)
      for (StitchId stitch = items[i].first; stitch < items[i].first + items[i].count; ++stitch)
        if (stitch + onto_last - first_ < item_of_.size())
          item_of_[stitch + onto_last - first_] = static_cast<std::uint32_t>(i);
  }

  std::uint32_t of(StitchId stitch) const {
    return stitch >= first_ && stitch - first_ < item_of_.size() ? item_of_[stitch - first_] : fabric::none;
  }

private:
  StitchId first_;
  std::vector<std::uint32_t> item_of_;
};

/// An item that has the feet and one that has the head they go into.
struct Tie {
  std::size_t feet = 0, head = 0;
};

std::vector<Tie> ties_of(const Fabric& fabric, const std::vector<Item>& feet, const Holders& heads) {
  std::vector<Tie> ties;
  for (std::size_t i = 0; i < feet.size(); ++i)
    for (const fabric::Leg& leg : legs_of(fabric, feet[i])) {
      const std::uint32_t head = is_stitch(leg.into) ? heads.of(leg.into.of) : fabric::none;
      const bool known = !ties.empty() && ties.back().feet == i && ties.back().head == head;
      if (head != fabric::none && !known) ties.push_back({i, head});
    }
  return ties;
}

/// The widths of a ring's items, each in equal shares given to those inside that it is tied to.
std::vector<double> handed_in(const std::vector<double>& outside, const std::vector<Tie>& ties, bool inward,
                              std::size_t items) {
  std::vector<double> shares(outside.size(), 0), inside(items, 0);
  for (const Tie& tie : ties) shares[inward ? tie.head : tie.feet] += 1;
  for (const Tie& tie : ties) {
    const std::size_t outer = inward ? tie.head : tie.feet, inner = inward ? tie.feet : tie.head;
    inside[inner] += outside[outer] / shares[outer];
  }
  return inside;
}

void scale_to(double sum, std::vector<double>& all) {
  double now = 0;
  for (const double one : all) now += one;
  for (double& one : all) one *= now > 0 ? sum / now : 1;
}

} // namespace

void look_ahead(const Fabric& fabric, const std::vector<Ring>& rings, const std::vector<Size>& sizes,
                const Turn& turn, Rungs& rungs) {
  std::vector<double> outside;
  for (std::size_t i = rings.size(); i-- > 0;) {
    std::vector<double> wants = own_slots(rungs.bands[i]);
    if (i + 1 < rings.size()) {
      const std::size_t heads = turn.inward ? i + 1 : i, feet = turn.inward ? i : i + 1;
      const Holders holders(fabric, rings[heads], rungs.items[heads]);
      const std::vector<double> handed =
          handed_in(outside, ties_of(fabric, rungs.items[feet], holders), turn.inward, wants.size());
      const double nearer = sizes[i].middle / sizes[i + 1].middle;
      for (std::size_t k = 0; k < wants.size(); ++k) wants[k] = std::max(wants[k], nearer * handed[k]);
    }
    outside = wants;
    scale_to(rungs.bands[i].slots, wants);
    rungs.bands[i].wants = std::move(wants);
  }
}

} // namespace whorl::layout
