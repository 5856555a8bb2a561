#include "layout/width.hpp"

#include "layout/items.hpp"

#include <algorithm>

namespace whorl::layout {
namespace {

using fabric::Fabric;
using fabric::StitchId;

constexpr std::uint64_t stitch_width = 100;
constexpr std::uint64_t chain_bowed = 37, chain_pulled = 100; ///< of a chain in a space
constexpr std::uint32_t least_shell = 4;                      ///< tall stitches in one place
constexpr std::uint64_t shell_crowds = 50;                    ///< of each but the first

/// Measures the rounds of a fabric.
class Measuring {
public:
  explicit Measuring(const Fabric& fabric) : fabric_(fabric), tall_(fabric.kinds.size(), Tall::unknown) {}

  Width width(const fabric::Round& round) {
    const std::uint64_t chains = chains_in_spaces(round);
    Width width = width_of(round.makes);
    width.least += chain_bowed * chains;
    width.greatest += chain_pulled * chains;
    std::uint32_t shell = 0;
    fabric::Place before;
    for (StitchId i = round.first_stitch; i < round.first_stitch + round.count; ++i) {
      const fabric::Place into = place_of_tall(i);
      shell = into.of != fabric::none && into == before ? shell + 1 : 1;
      before = into;
      if (shell >= least_shell) width.least -= shell_crowds * (shell == least_shell ? least_shell - 1 : 1);
    }
    return width;
  }

private:
  std::uint64_t chains_in_spaces(const fabric::Round& round) const {
    const auto before = [](const fabric::Arch& arch, StitchId stitch) { return arch.first_chain < stitch; };
    auto arch = std::lower_bound(fabric_.arches.begin(), fabric_.arches.end(), round.first_stitch, before);
    std::uint64_t chains = 0;
    for (; arch != fabric_.arches.end() && arch->first_chain < round.first_stitch + round.count; ++arch)
      chains += arch->count;
    return chains;
  }

  /// The one place that a tall stitch goes into, but for a ring; none of other stitches.
  fabric::Place place_of_tall(StitchId id) {
    const fabric::Stitch& stitch = fabric_.stitches[id];
    if (!is_tall(stitch.kind) || (stitch.flags & fabric::counts) == 0) return {};
    const fabric::Legs legs = legs_of_one(fabric_, id);
    return legs.size() == 1 && legs.begin()->into.what != fabric::On::ring ? legs.begin()->into
                                                                           : fabric::Place{};
  }

  bool is_tall(stitch::KindId kind) {
    Tall& known = tall_[kind];
    if (known == Tall::unknown)
      known = stitch::shape_of(fabric_.kinds[kind]).height > 1 ? Tall::yes : Tall::no;
    return known == Tall::yes;
  }

  enum class Tall : char { unknown, no, yes };
  const Fabric& fabric_;
  std::vector<Tall> tall_; ///< of each kind
};

} // namespace

Width width_of(std::uint32_t stitches) { return {stitch_width * stitches, stitch_width * stitches}; }

std::vector<Width> widths_of(const Fabric& fabric, const std::vector<std::uint32_t>& rounds) {
  Measuring measuring(fabric);
  std::vector<Width> widths;
  for (const std::uint32_t round : rounds) widths.push_back(measuring.width(fabric.rounds[round]));
  return widths;
}

bool is_lace(const Width& width) { return width.least != width.greatest; }
bool is_narrower(const Width& one, const Width& other) { return one.greatest < other.least; }
bool is_wider(const Width& one, const Width& other) { return is_narrower(other, one); }

std::uint32_t stitches_wide(const Width& width) {
  return static_cast<std::uint32_t>((width.least + width.greatest) / (2 * stitch_width));
}

} // namespace whorl::layout
