#pragma once

#include "layout/contour.hpp"
#include "layout/fold.hpp"
#include "layout/lay.hpp"
#include "layout/owner.hpp"
#include "layout/sector.hpp"

#include <optional>
#include <vector>

namespace whorl::layout {

/// What a disc shall show, decided on whole numbers.
struct Plan {
  std::uint32_t part = 0;
  bool inward = false;
  bool oval = false;       ///< round a chain: what is inmost is no ring of it
  Sector sector;           ///< of rows that spread from a small start
  bool strip = false;      ///< a strip: no disc; its rings are lines from the bottom up
  std::vector<Ring> rings; ///< from the centre outward; rounds, echo and ink are set
  Centre centre = Centre::nothing;
  std::vector<Run> centre_text; ///< face, size and text are set
  std::vector<Kept> kept;       ///< loops of its rounds in which later parts are begun, in order of stitches
  std::vector<std::uint32_t> arrows; ///< rings whose spikes keep their arrows: stems would touch something
  bool groups = true;                ///< stitches that share a place stand as one where chains are among them
  bool outlines = true;              ///< of parts sewn on, as far as stitches leave them room
  bool grows = true;                 ///< until a line can lead from every foot to its place
  bool keep_problems = false;        ///< by which its rings are laid, for those who want to look at them
  std::optional<Owner> owner;        ///< of a part that is itself begun in loops, in its first figure
};

/// A disc and what the tests look at: every ring's size and the problem it was laid by.
struct Drawn {
  Figure figure;
  std::vector<Size> sizes;
  std::vector<Laid> laid;
  /// All stitches are plainly by their own places, but for some beside the gutter of a disc of very many
  /// rings.
  bool held = true;
  std::vector<char> plain; ///< of every ring: whether that is told of it without a look at each foot
};

/// A disc in which nothing stands yet, and how much of its middle is taken.
Figure begin_figure(const Plan& plan, const Extents& extents, const Page& page);
double centre_reach(const Figure& figure);

/// How often a figure is laid again with more room for what found none, and for lines from its feet.
inline constexpr int most_layings = 10, most_layings_for_feet = 40;

/// The rings outside which a figure, laid so many times, still needs room: for what is placed on it for a
/// while, for lines that lead from feet until it is given up.
std::vector<int> rings_to_widen(const Plan& plan, int times, std::vector<int> crowded,
                                const std::vector<int>& footless);

/// The same plan for a figure in which no growing helps: without the outlines of parts sewn on, if it shows
/// some, which may part a foot from its place; else as it is.
Plan given_up(const Plan& plan, const Figure& figure);

/// Draws one disc.
Drawn draw_disc(const fabric::Fabric& fabric, const Plan& plan, const Extents& extents, const Page& page);

} // namespace whorl::layout
