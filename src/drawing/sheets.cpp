#include "drawing/furniture.hpp"
#include "drawing/one_sheet.hpp"

#include <algorithm>
#include <string>
#include <utility>

namespace whorl::drawing {
namespace {

constexpr double smallest_stitch = 2.5, stitch_step = 0.05;

Paper turned(const Paper& paper) { return {paper.height, paper.width}; }

double inner_width(const Paper& paper) { return paper.width - 2 * margin; }

/// One sheet of several: its figures, and what else it carries.
struct Share {
  std::size_t first = 0, end = 0;
  Carried carried;
  bool fits = true;
};

/// Divides a chart among sheets.
class Sharing {
public:
  Sharing(const Copy& copy, const std::vector<Mark>& marks) : copy_(copy), marks_(marks) {
    const Paper& paper = copy.options.size;
    const double room = paper.height - height(share(0, 0, paper));
    for (const Block& block : blocks_of(copy)) split(block, inner_width(paper), room);
  }

  /// In the fewest sheets; each explains what is on it unless that takes more paper than a legend at the end.
  std::vector<Share> shares() {
    std::vector<Share> own = shared(Explains::its_own), whole = shared(Explains::nothing);
    add_legend(whole);
    const bool all_fit = std::all_of(own.begin(), own.end(), [](const Share& s) { return s.fits; });
    std::vector<Share>& made = all_fit && own.size() <= whole.size() ? own : whole;
    add_closing(made);
    return std::move(made);
  }

  Scene composed(const Share& share, const SheetText& text) const {
    Copy copy = copy_of(share);
    const Copy titled{copy.tree,    copy.fabric,  copy.placement,    text,
                      copy.wording, copy.options, copy.first_figure, copy.end_figure};
    return compose(titled, marks_, share.carried, arranged(titled, share));
  }

private:
  std::size_t figures() const { return copy_.placement.figures.size(); }

  Copy copy_of(const Share& share) const {
    Copy copy = copy_;
    copy.first_figure = share.first;
    copy.end_figure = share.end;
    return copy;
  }

  static Share share(std::size_t first, std::size_t end, const Paper& paper) {
    return {first, end, {{}, Explains::nothing, false, paper}, true};
  }

  static Arrangement arranged(const Copy& copy, const Share& share) {
    return lowest_arrangement(copy, cells_of(copy), share.carried.blocks, inner_width(share.carried.paper));
  }

  double height(const Share& share) const {
    const Copy copy = copy_of(share);
    return height_of(copy, marks_, share.carried, arranged(copy, share));
  }

  /// `spare`: how far it may reach into the lower margin.
  bool fits(const Share& share, double spare = 0) const {
    const double room = inner_width(share.carried.paper);
    for (const Cell& cell : cells_of(copy_of(share)))
      if (2 * cell.side > room) return false;
    return height(share) <= share.carried.paper.height + spare;
  }

  /// A table that is longer than a sheet goes on in another.
  void split(const Block& block, double width, double room) {
    const std::size_t rows = block.table.rows.size();
    if (block.kind != Block::Kind::table || rows < 2 || set_block(block, width).height <= room) {
      blocks_.push_back(block);
      return;
    }
    Block first = block, second = block;
    first.table = rows_of(block.table, 0, rows / 2);
    second.table = rows_of(block.table, rows / 2, rows);
    split(first, width, room);
    split(second, width, room);
  }

  std::size_t first_figure_of(std::uint32_t part) const {
    const auto& all = copy_.placement.figures;
    const auto of_part = [part](const layout::Figure& figure) { return figure.part == part; };
    return static_cast<std::size_t>(std::find_if(all.begin(), all.end(), of_part) - all.begin());
  }

  /// The furniture of the parts that begin in these figures.
  std::vector<Block> own_blocks(std::size_t first, std::size_t end) const {
    std::vector<Block> own;
    for (const Block& block : blocks_) {
      const std::size_t at = first_figure_of(block.part);
      if (first <= at && at < end) own.push_back(block);
    }
    return own;
  }

  std::vector<Share> shared(Explains legend) const {
    std::vector<Share> made;
    std::vector<Block> waiting;
    for (std::size_t at = 0; at < figures() || !waiting.empty() || made.empty();) {
      made.push_back(at < figures() ? next_share(at, legend, waiting) : furniture(waiting));
      at = made.back().end;
    }
    return made;
  }

  Paper paper_for(std::size_t figure) const {
    const Paper upright = copy_.options.size;
    return fits(share(figure, figure + 1, upright)) || !fits(share(figure, figure + 1, turned(upright)))
               ? upright
               : turned(upright);
  }

  /// As many figures as stand on a sheet with their furniture and what waits; else one, and its furniture
  /// waits.
  Share next_share(std::size_t at, Explains legend, std::vector<Block>& waiting) const {
    const Paper paper = paper_for(at);
    Share best = share(at, at, paper);
    for (std::size_t end = at + 1; end <= figures(); ++end) {
      Share more = share(at, end, paper);
      more.carried.legend = legend;
      more.carried.blocks = waiting;
      for (Block& block : own_blocks(at, end)) more.carried.blocks.push_back(std::move(block));
      if (!fits(more)) break;
      best = std::move(more);
    }
    if (best.end > at) return waiting.clear(), best;
    best.end = at + 1;
    best.carried.legend = legend;
    best.fits = fits(best);
    for (Block& block : own_blocks(at, at + 1)) waiting.push_back(std::move(block));
    if (best.fits) fill(best, waiting);
    return best;
  }

  /// A sheet of what waits.
  Share furniture(std::vector<Block>& waiting) const {
    Share best = share(figures(), figures(), copy_.options.size);
    if (waiting.empty()) return best;
    best.carried.blocks.push_back(waiting.front()); // one that is too large for any sheet too
    waiting.erase(waiting.begin());
    fill(best, waiting);
    return best;
  }

  /// As much of what waits as there is room for, in its order.
  void fill(Share& best, std::vector<Block>& waiting) const {
    while (!waiting.empty()) {
      Share more = best;
      more.carried.blocks.push_back(waiting.front());
      if (!fits(more)) return;
      best = std::move(more);
      waiting.erase(waiting.begin());
    }
  }

  void add_legend(std::vector<Share>& made) const {
    Share last = made.back();
    last.carried.legend = Explains::everything;
    if (fits(last)) {
      made.back() = last;
      return;
    }
    made.push_back(share(figures(), figures(), copy_.options.size));
    made.back().carried.legend = Explains::everything;
  }

  /// A line or two under everything are worth no sheet of their own: they stand on the last with room.
  void add_closing(std::vector<Share>& made) const {
    for (auto one = made.rbegin(); one != made.rend(); ++one) {
      Share closing = *one;
      closing.carried.closing = true;
      if (!fits(closing, margin / 2)) continue;
      *one = std::move(closing);
      return;
    }
    made.push_back(share(figures(), figures(), copy_.options.size));
    made.back().carried.closing = true;
  }

  Copy copy_;
  const std::vector<Mark>& marks_;
  std::vector<Block> blocks_;
};

/// Whether every figure stands on the paper, upright or turned, below title and head.
bool all_fit(const Copy& copy) {
  constexpr double besides = 45;
  const auto fits = [](const Cell& cell, const Paper& paper) {
    return 2 * cell.side <= inner_width(paper) && cell.box.height() + besides <= paper.height - 2 * margin;
  };
  const Paper upright = copy.options.size, across = turned(upright);
  for (const Cell& cell : cells_of(copy))
    if (!fits(cell, upright) && !fits(cell, across)) return false;
  return true;
}

/// As large as asked for, or so small that all figures stand on the paper.
double fitting_stitch(Copy copy, SheetOptions options) {
  const double asked = options.stitch;
  for (; options.stitch >= std::min(asked, smallest_stitch); options.stitch -= stitch_step) {
    const Copy smaller{copy.tree, copy.fabric, copy.placement, copy.text, copy.wording, options};
    if (all_fit(smaller)) return options.stitch;
  }
  return std::min(asked, smallest_stitch);
}

/// "US terms · sheet 1 of 3", at the end of the title's line.
SheetText numbered(const Copy& copy, std::size_t sheet, std::size_t sheets) {
  SheetText text = copy.text;
  if (sheets < 2) return text;
  const std::string number =
      say(copy.wording, "sheet-of", {std::to_string(sheet + 1), std::to_string(sheets)});
  text.terms += (text.terms.empty() ? "" : " · ") + number;
  return text;
}

} // namespace

std::vector<Scene> sheets(const pattern::Tree& tree, const fabric::Fabric& fabric,
                          const layout::Placement& placement, const std::vector<Mark>& marks,
                          const SheetText& text, const Wording& wording, const SheetOptions& asked) {
  if (asked.size.width == 0) return {sheet(tree, fabric, placement, marks, text, wording, asked)};
  SheetOptions options = asked;
  options.stitch = fitting_stitch({tree, fabric, placement, text, wording, asked}, asked);
  const Copy copy{tree, fabric, placement, text, wording, options};
  Sharing sharing(copy, marks);
  const std::vector<Share> shares = sharing.shares();
  std::vector<Scene> made;
  for (std::size_t i = 0; i < shares.size(); ++i)
    made.push_back(sharing.composed(shares[i], numbered(copy, i, shares.size())));
  return made;
}

} // namespace whorl::drawing
