#include "drawing/section.hpp"

#include <algorithm>
#include <map>
#include <tuple>

namespace whorl::drawing {
namespace {

constexpr double gap_beside = 10, gap_above = 8.5;
constexpr std::size_t most_cells = 6, most_blocks = 3; ///< all ways are tried of so many; others follow them

/// Some things of a part: a run of its cells, and furniture as a set.
struct Share {
  std::size_t first = 0, end = 0;
  std::uint32_t blocks = 0;

  bool has_figures() const { return first < end; }
  bool is_empty() const { return !has_figures() && blocks == 0; }
  bool operator<(const Share& o) const {
    return std::tie(first, end, blocks) < std::tie(o.first, o.end, o.blocks);
  }
};

/// Finds the ways to set a part.
class Cutting {
public:
  Cutting(const Section& section, const std::vector<Block>& blocks, double most)
      : made_{Slicing(gap_beside, gap_above, most), {}, {}} {
    for (const Cell& cell : section.cells)
      things_.push_back(made_.slicing.keep({piece_of(cell, things_.size())}));
    cells_ = things_.size();
    for (const std::size_t block : section.blocks) {
      made_.forms.push_back(settings_of(blocks[block], most));
      things_.push_back(made_.slicing.keep(pieces_of(made_.forms.back(), things_.size())));
    }
  }

  /// All ways where a part is small; what goes beyond that comes above and below.
  SectionSlices cut() {
    std::size_t at = 0;
    Front front;
    for (; cells_ - at > most_cells; at += most_cells) append(front, of({at, at + most_cells, 0}), false);
    const std::size_t furniture = things_.size() - cells_, few = std::min(furniture, most_blocks);
    append(front, of({at, cells_, (1U << few) - 1}), false);
    for (std::size_t block = few; block < furniture; ++block) append(front, things_[cells_ + block], true);
    made_.front = std::move(front);
    return std::move(made_);
  }

private:
  static Piece piece_of(const Cell& cell, std::size_t thing) {
    const double high = cell.box.height();
    return {
        Piece::Kind::thing, static_cast<std::uint32_t>(thing), 0, 2 * cell.side, high + below(cell), high, 1};
  }

  static std::vector<Piece> pieces_of(const std::vector<Setting>& forms, std::size_t thing) {
    std::vector<Piece> pieces;
    for (std::size_t form = 0; form < forms.size(); ++form)
      pieces.push_back({Piece::Kind::thing, static_cast<std::uint32_t>(thing),
                        static_cast<std::uint32_t>(form), forms[form].width, forms[form].height, 0});
    return pieces;
  }

  void append(Front& front, const Front& more, bool also_beside) {
    if (more.empty()) return;
    if (front.empty()) {
      front = more;
      return;
    }
    std::vector<Piece> offers;
    made_.slicing.offer_above(front, more, offers);
    if (also_beside) made_.slicing.offer_beside(front, more, offers);
    front = made_.slicing.keep(std::move(offers));
  }

  const Front& of(const Share& share) {
    const auto found = known_.find(share);
    if (found != known_.end()) return found->second;
    Front front = front_of(share);
    return known_[share] = std::move(front);
  }

  Front front_of(const Share& share) {
    if (share.is_empty()) return {};
    if (share.blocks == 0 && share.end - share.first == 1) return things_[share.first];
    if (!share.has_figures() && (share.blocks & (share.blocks - 1)) == 0) return only_block(share.blocks);
    std::vector<Piece> offers;
    // Of ways that take the same room the first is kept: furniture stands behind the figures.
    for (std::size_t cut = share.end + 1; cut-- > share.first;)
      for (std::uint32_t some = 0;; some = (some - share.blocks) & share.blocks) {
        offer({share.first, cut, some}, {cut, share.end, share.blocks & ~some}, offers);
        if (some == share.blocks) break;
      }
    return made_.slicing.keep(std::move(offers));
  }

  const Front& only_block(std::uint32_t set) const {
    std::size_t block = 0;
    while ((set >> block & 1U) == 0) ++block;
    return things_[cells_ + block];
  }

  /// Furniture follows its figures; above a later figure, but beside an earlier one, it may fill what is
  /// free.
  void offer(const Share& first, const Share& second, std::vector<Piece>& offers) {
    if (first.is_empty() || second.is_empty()) return;
    const bool furniture_first = !first.has_figures() && second.has_figures();
    if (furniture_first && (second.first == 0 || second.blocks != 0 || second.end - second.first > 1)) return;
    const Front a = of(first), b = of(second);
    made_.slicing.offer_above(a, b, offers);
    if (!furniture_first) made_.slicing.offer_beside(a, b, offers);
  }

  SectionSlices made_;
  std::vector<Front> things_;
  std::size_t cells_ = 0;
  std::map<Share, Front> known_;
};

} // namespace

SectionSlices slices_of(const Section& section, const std::vector<Block>& blocks, double most) {
  return Cutting(section, blocks, most).cut();
}

} // namespace whorl::drawing
