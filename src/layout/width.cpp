#include "layout/width.hpp"

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
  explicit Measuring(const Fabric& fabric) : fabric_(fabric) {
    std::vector<bool> occurs(fabric.kinds.size(), false);
    for (const fabric::Stitch& stitch : fabric.stitches) occurs[stitch.kind] = true;
    for (std::size_t i = 0; i < occurs.size(); ++i)
      tall_.push_back(occurs[i] && stitch::shape_of(fabric.kinds[i]).height > 1);
  }

  Width width(const fabric::Round& round) const {
    const std::uint64_t chains = chains_in_spaces(round);
    Width width = width_of(round.makes);
    width.least += chain_bowed * chains;
    width.greatest += chain_pulled * chains;
    std::uint32_t shell = 0;
    for (StitchId i = round.first_stitch; i < round.first_stitch + round.count; ++i) {
      shell = i > round.first_stitch && are_of_one_shell(i - 1, i) ? shell + 1 : 1;
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

  bool are_of_one_shell(StitchId one, StitchId other) const {
    return is_tall(one) && is_tall(other) && into(one) == into(other);
  }

  bool is_tall(StitchId stitch) const {
    return tall_[fabric_.stitches[stitch].kind] && fabric::own_legs_of(fabric_, stitch).size() == 1 &&
           into(stitch).what != fabric::On::ring && (fabric_.stitches[stitch].flags & fabric::counts) != 0;
  }

  const fabric::Place& into(StitchId stitch) const {
    return fabric::own_legs_of(fabric_, stitch).begin()->into;
  }

  const Fabric& fabric_;
  std::vector<bool> tall_; ///< of each kind
};

} // namespace

Width width_of(std::uint32_t stitches) { return {stitch_width * stitches, stitch_width * stitches}; }

std::vector<Width> widths_of(const Fabric& fabric, const std::vector<std::uint32_t>& rounds) {
  const Measuring measuring(fabric);
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
