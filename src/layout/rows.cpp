#include "layout/rows.hpp"

#include "layout/beneath.hpp"
#include "layout/course_lean.hpp"
#include "layout/course_places.hpp"
#include "layout/cut.hpp"
#include "layout/edging.hpp"
#include "layout/flag.hpp"
#include "layout/ground.hpp"
#include "layout/items.hpp"
#include "layout/long_legs.hpp"
#include "layout/owner.hpp"
#include "layout/placed.hpp"
#include "layout/row_bows.hpp"
#include "layout/row_items.hpp"
#include "layout/spike.hpp"
#include "layout/zigzag.hpp"

#include <algorithm>
#include <optional>
#include <utility>

namespace whorl::layout {
namespace {

using fabric::Fabric;
using fabric::StitchId;

constexpr double pointer_at = 0.55, label_at = 0.97; ///< beyond the widest row
constexpr double second_space = 0.20;
constexpr double centre_ink = 0.67;
constexpr double centre_reach = 0.92; ///< of a magic ring under the first row, with its air
constexpr double least_chain_slot = 0.78;
constexpr std::size_t most_edged = 60; ///< rows that stand one by one for an edging's sake
constexpr Pulls pulls{0.3, 1.0};

/// The rows that are asked for, and what is before them.
std::vector<std::uint32_t> shown_rows(const Fabric& fabric, const Section& section, const Wanted& wanted) {
  const Places places = wanted_places(fabric, section.rounds, wanted);
  if (places.empty()) return {};
  std::vector<std::uint32_t> shown(section.rounds.begin() + static_cast<std::ptrdiff_t>(places.first),
                                   section.rounds.begin() + static_cast<std::ptrdiff_t>(places.last) + 1);
  const std::uint32_t before = places.first > 0 ? section.rounds[places.first - 1] : section.before;
  if (before != fabric::none) shown.insert(shown.begin(), before);
  return shown;
}

/// Whether an edging stands round the rows: near to its places, or however far out there is room.
enum class Edge { none, near, anywhere };

/// A flat piece while it is put together.
class Laying {
public:
  Laying(const Fabric& fabric, std::uint32_t part, const Section& section, const Folding& folding,
         const Extents& extents, const Page& page, Edge edge, std::vector<std::uint32_t> arrows, double slot)
      : fabric_(fabric), part_(fabric.parts[part]), extents_(extents), page_(page),
        arrows_(std::move(arrows)),
        rows_(edge != Edge::none ? section.rounds : shown_rows(fabric, section, page.wanted)),
        edging_(edge != Edge::none ? section.edging : std::vector<std::uint32_t>()),
        faint_(section.owner != fabric::none),
        from_start_(section.before == fabric::none &&
                    (edge != Edge::none || wanted_places(fabric, section.rounds, page.wanted).first == 0)),
        kept_(kept_of(fabric, part_, folding.kept_loops())),
        owner_(owner_beneath(fabric, part, rows_.front())),
        footing_(fabric, part, owner_ ? owner_->round : fabric::none), slot_(slot), edge_(edge) {
    drawn_.figure.form = Form::rows;
    drawn_.figure.part = part;
    drawn_.figure.clockwise = page.hand == Hand::left;
    drawn_.figure.first_round = rows_[from_start_ ? 0 : 1];
    drawn_.figure.last_round = edging_.empty() ? rows_.back() : edging_.back();
    if (faint_) {
      drawn_.figure.part = fabric.rounds[edging_.front()].part;
      drawn_.figure.first_round = edging_.front();
    }
    fold_rows(folding);
    set_centre();
    if (from_start_ && edge_ == Edge::none && part_.foundation != fabric::none &&
        drawn_.figure.centre == Centre::nothing)
      zigzag_ = zigzag_of(fabric, part_.foundation, rows_);
  }

  /// Puts everything together; returns the rows above which something found no room.
  std::vector<int> put_together(const std::vector<double>& room, int again) {
    room_ = room;
    lay_chain();
    for (const Fold& fold : folds_) lay_rows(fold);
    make_room(drawn_.courses, drawn_.figure);
    for (std::uint32_t i = 0; i < drawn_.courses.size(); ++i)
      stand_course(fabric_, extents_, drawn_.courses[i], 0, drawn_.figure.rings[i], drawn_.figure);
    if (zigzag_) bend_lines(*zigzag_, drawn_);
    draw_kept();
    add_owner_numbers(fabric_, extents_, drawn_.figure);
    stemless_ = add_stems(fabric_, extents_, drawn_.figure);
    if (!stemless_.empty()) return {};
    if (!edging_.empty()) lay_edging();
    if (!has_room_) return {};
    bound();
    for (const Course& course : drawn_.courses)
      if (course.band.break_outside)
        add_break(course, drawn_.figure.low.x, drawn_.figure.high.x, drawn_.figure);
    const double left = drawn_.figure.low.x, right = drawn_.figure.high.x;
    for (std::uint32_t i = 0; i < drawn_.courses.size(); ++i)
      if (has_label(drawn_.figure.rings[i])) add_label(i, left, right);
    add_edging_labels(extents_, drawn_);
    add_cut(fabric_, extents_, drawn_.figure);
    std::vector<int> crowded = add_posts(fabric_, extents_, drawn_.figure, again);
    for (const int ring : add_flags(fabric_, extents_, drawn_.figure, again)) crowded.push_back(ring);
    bound();
    add_front(fabric_, extents_, page_, 0, drawn_.figure);
    add_grounds(fabric_, std::vector<double>(drawn_.figure.rings.size(), 0), page_.main_yarn, drawn_.figure);
    if (zigzag_) bend_grounds(*zigzag_, drawn_);
    bound();
    return crowded;
  }

  /// Lets lines lead from feet to their places; the rows above which one found no room.
  std::vector<int> lengthen() {
    return lengthen_legs(fabric_, extents_, Lines::of_every_foot, drawn_.figure);
  }
  std::size_t lines() const { return drawn_.courses.size(); }
  bool has_room() const { return has_room_; }
  /// How many stitches have no room by their own places.
  std::size_t not_held() const { return not_held_; }
  std::vector<std::uint32_t> bends() const { return rings_at_bends(drawn_.figure); }
  const std::vector<std::uint32_t>& stemless() const { return stemless_; }
  Straight drawn() { return std::move(drawn_); }

private:
  /// Letters at the stitches in which other parts are begun, or through which they are joined.
  void draw_kept() {
    std::vector<Band> bands;
    for (Course& course : drawn_.courses) bands.push_back(std::move(course.band));
    add_loops({kept_, owner_ ? &owner_->kept : nullptr}, bands, extents_, page_.hand, drawn_.figure);
    for (std::size_t i = 0; i < bands.size(); ++i) drawn_.courses[i].band = std::move(bands[i]);
  }

  void lay_edging() {
    const Edging edging{edging_, std::move(lead_), inked_, edge_ == Edge::anywhere};
    const Edged edged = add_edging(fabric_, extents_, page_, edging, footing_, drawn_);
    has_room_ = edged == Edged::aside || edged == Edged::by_places;
    if (edged != Edged::by_places && edged != Edged::nowhere) ++not_held_;
  }

  /// The ring or chain under the first row stands round (0, 0).
  void bound() {
    bound_straight(extents_, drawn_.figure);
    if (drawn_.figure.centre == Centre::nothing) return;
    drawn_.figure.low = {std::min(drawn_.figure.low.x, -centre_ink),
                         std::min(drawn_.figure.low.y, -centre_ink)};
    drawn_.figure.high.x = std::max(drawn_.figure.high.x, centre_ink);
  }

  /// The order of an owner's own stitches is not that of the rows: grey numbers tell it.
  static bool has_label(const Ring& ring) { return !ring.chain && !ring.edging && !ring.owner; }

  void set_centre() {
    if (!from_start_) return;
    if (part_.start == fabric::Start::magic_ring) drawn_.figure.centre = Centre::magic_ring;
    if (goes_into_chain_ring(fabric_, part_)) drawn_.figure.centre = Centre::chain_ring;
    if (part_.start == fabric::Start::second_chain) drawn_.figure.centre = Centre::second_chain;
  }

  bool right_handed() const { return page_.hand == Hand::right; }
  bool by_side(const fabric::Round& row) const { return (row.side == fabric::Side::right) == right_handed(); }

  void lay_chain() {
    if (!from_start_ || drawn_.figure.centre != Centre::nothing || part_.foundation == fabric::none) return;
    const fabric::Round &chain = fabric_.rounds[part_.foundation], &row = fabric_.rounds[rows_.front()];
    const Worked worked = worked_of(fabric_, row, chain);
    std::vector<Item> items = items_of(fabric_, part_.foundation);
    if (worked.descending && worked.first != fabric::none) {
      const std::uint32_t skipped = chain.first_stitch + chain.count - 1 - worked.last;
      const std::uint32_t turned = std::min(skipped, chains_high(fabric_, row));
      lead_.assign(items.end() - turned, items.end());
      std::reverse(lead_.begin(), lead_.end());
      items.resize(items.size() - turned);
    }
    Course course;
    course.leftward = by_side(row) != worked.descending;
    course.items = std::move(items);
    course.band = band_of(course.items, extents_, false);
    draw_loops(course.items, {kept_, page_.hand, false, true}, course.band);
    set_stands(extents_, 0, false, course);
    const double chains = static_cast<double>(std::max<std::size_t>(1, course.items.size()));
    const double slot = row.spaces > 0 ? 1 : std::max(least_chain_slot, std::min(1.0, row.makes / chains));
    for (Stand& stand : course.stands) stand.slot = slot;
    Ring ring;
    ring.round = ring.last_round = part_.foundation;
    ring.chain = true;
    ring.echo = faint_;
    settle(std::move(course), ring);
  }

  /// What the figure goes on from is a line of its own.
  void fold_rows(const Folding& folding) {
    const std::size_t own = from_start_ ? 0 : 1;
    if (own > 0) folds_.push_back({rows_.front(), rows_.front()});
    const std::vector<std::uint32_t> rows(rows_.begin() + static_cast<std::ptrdiff_t>(own), rows_.end());
    if (page_.fold && edging_.empty())
      for (const Fold& fold : folding.fold(rows)) folds_.push_back(fold);
    else
      for (const std::uint32_t row : rows) folds_.push_back({row, row});
  }

  /// The chains at the end of a row, with which the work is turned.
  std::vector<Item> turning_chains(std::uint32_t row) const {
    const std::vector<Item> items = items_of(fabric_, row);
    return {items.end() - trailing_chains(fabric_, items), items.end()};
  }

  /// The loops of another part in which the rows are begun run as the first row does.
  void lay_owner() {
    Course course;
    course.items = owner_->items;
    course.backward = owner_->against;
    course.leftward = by_side(fabric_.rounds[rows_[1]]);
    Ring ring;
    ring.round = ring.last_round = owner_->round;
    ring.echo = ring.owner = true;
    ring.against = owner_->against;
    course.band = band_of(course.items, extents_, true);
    course.band.label = letter(fabric_, ring, marked_loops(course.items), false, extents_, page_);
    course.band.against = owner_->against;
    draw_loops(course.items, {owner_->kept, hand_of(course.leftward), true}, course.band);
    set_stands(extents_, 0, false, course);
    settle(std::move(course), ring);
  }

  void lay_rows(const Fold& fold) {
    const std::uint32_t number = fold.first;
    if (owner_ && number == owner_->round) return lay_owner();
    const fabric::Round& row = fabric_.rounds[number];
    Course course;
    const bool beneath = !from_start_ && number == rows_.front() && row.kind == pattern::RoundKind::round;
    std::vector<Item> own = beneath ? items_beneath(fabric_, number, rows_[1]) : items_of(fabric_, number);
    std::vector<Item> next_lead;
    if (fold.last != rows_.back() ||
        !edging_.empty()) { // else nothing stands on it: they stay where they are
      own.resize(own.size() - trailing_chains(fabric_, own));
      next_lead = turning_chains(fold.last);
    }
    const auto chains = static_cast<std::uint32_t>(lead_.size()) + leading_chains(fabric_, own);
    course.items = std::move(lead_);
    give(own, number);
    part_fans(fabric_, extents_, own);
    course.items.insert(course.items.end(), own.begin(), own.end());
    lead_ = std::move(next_lead);
    Ring ring;
    ring.round = fold.first;
    ring.last_round = fold.last;
    ring.echo = faint_ || (!from_start_ && number == rows_.front());
    if (!ring.echo) ring.ink = static_cast<std::uint8_t>(inked_++ % 2);
    course.band = band_of(course.items, extents_, false);
    course.band.break_outside = ring.last_before_break = fold.first != fold.last;
    course.band.label = letter(fabric_, ring, marked_loops(own), false, extents_, page_);
    course.leftward = runs_leftward(course, row);
    course.band.against = course.leftward != right_handed();
    if (!ring.echo) draw_loops(course.items, {kept_, page_.hand, false}, course.band);
    const std::uint32_t on_end = chains_on_end(fabric_, row, chains);
    set_stands(extents_, on_end, row.counting_chain != fabric::none || on_end < chains, course);
    settle(std::move(course), ring);
  }

  /// Spikes have stems to rows that stand already, unless that did not go well.
  void give(std::vector<Item>& own, std::uint32_t row) const {
    std::vector<Ring> rings = drawn_.figure.rings;
    rings.emplace_back();
    rings.back().round = rings.back().last_round = row;
    const std::size_t number = rings.size() - 1;
    if (std::find(arrows_.begin(), arrows_.end(), number) == arrows_.end())
      give_stems(fabric_, rings, number, own);
  }

  /// A row runs as what it is worked into tells, else as its side does.
  bool runs_leftward(const Course& course, const fabric::Round& row) const {
    std::optional<double> first, last;
    for (const Item& item : course.items) {
      const std::optional<double> base = base_of(fabric_, item, footing_);
      if (!base) continue;
      if (!first) first = base;
      last = base;
    }
    if (!first || *first == *last) return by_side(row);
    return *last < *first;
  }

  void settle(Course course, Ring ring) {
    const std::size_t number = drawn_.courses.size();
    course.band.room_outside = (number < room_.size() ? room_[number] : 0) + (zigzag_ ? zigzag_room : 0);
    set_height(drawn_.figure.centre == Centre::nothing ? 0 : centre_reach, course);
    if (!drawn_.courses.empty())
      set_height(drawn_.courses.back().outer + gap_above(drawn_.courses.back(), course), course);
    const Room room{0, true, slot_, pulls};
    lay_course(fabric_, footing_, room, slate_, course);
    if (zigzag_)
      stand_on_zigzag(fabric_, *zigzag_, course);
    else if (!drawn_.courses.empty())
      not_held_ += hold_by_places(fabric_, drawn_.courses.back(), drawn_.figure.rings.back(), course);
    if (!zigzag_) lean_to_places(fabric_, extents_, footing_, course), bow_chains(extents_, course);
    keep_places(fabric_, ring, course, room, footing_);
    drawn_.courses.push_back(std::move(course));
    drawn_.figure.rings.push_back(ring);
  }

  /// Number and count beyond the widest row, on the side where their own row begins.
  void add_label(std::uint32_t number, double left, double right) {
    const Course& course = drawn_.courses[number];
    const Ring& ring = drawn_.figure.rings[number];
    const Tone tone = ring.echo ? Tone::grey : Tone::ink;
    std::vector<Run> runs = course.band.label.first;
    double end = line_width(runs) + second_space;
    for (Run run : course.band.label.below) {
      run.x = end;
      end += run.width;
      runs.push_back(run);
    }
    const double side = course.leftward ? 1 : -1;
    const double middle =
        ring.middle + (zigzag_ ? rise_at(*zigzag_, drawn_, course.leftward ? right : left) : 0);
    const double base = middle - letter_height * number_size / 2;
    const double x = course.leftward ? right + label_at : left - label_at - line_width(runs);
    drawn_.figure.labels.push_back(straight_label({x, base}, std::move(runs), number, tone));
    const double tip = (course.leftward ? right : left) + side * (pointer_at - pointer_length / 2);
    drawn_.figure.pointers.push_back({{tip, middle}, {0 - side, 0}, pointer_length, number, tone});
    add_yarn_signs(number, x + (course.leftward ? end - second_space : 0), middle);
  }

  /// Flag and mark for joined yarn beyond the label of a row, which ends at `edge`.
  void add_yarn_signs(std::uint32_t number, double edge, double middle) {
    const Course& course = drawn_.courses[number];
    Lettering signs;
    signs.flag = course.band.label.flag;
    signs.attached = course.band.label.attached;
    put_signs_behind(signs);
    const Point start{course.leftward ? edge : edge - signs.width, middle};
    for (Placed& sign : yarn_signs(signs, start, !course.leftward, number))
      drawn_.figure.placed.push_back(std::move(sign));
  }

  const Fabric& fabric_;
  const fabric::Part& part_;
  const Extents& extents_;
  const Page& page_;
  std::vector<std::uint32_t> arrows_; ///< lines whose spikes keep their arrows
  std::vector<std::uint32_t> rows_;
  std::vector<std::uint32_t> edging_;
  bool faint_ = false;         ///< the rows are those of another part
  std::vector<Fold> folds_;    ///< of the rows
  bool from_start_ = true;     ///< false: the first row is the faint one that it goes on from
  std::vector<Kept> kept_;     ///< stitches in which other parts are begun, or through which they are joined
  std::optional<Owner> owner_; ///< the loops of another part in which they are begun
  Footing footing_;
  Slate slate_;
  Straight drawn_;
  std::vector<Item> lead_; ///< chains that stand on end where the next row begins
  std::vector<double> room_;
  std::uint32_t inked_ = 0;
  bool has_room_ = true; ///< for the edging
  std::vector<std::uint32_t> stemless_;
  double slot_ = 1; ///< of a stitch
  Edge edge_ = Edge::none;
  std::size_t not_held_ = 0; ///< stitches that are not by their own places
  std::optional<Zigzag> zigzag_;
};

/// Looks for the least width of a stitch with which all stitches are by their own places, or most are.
class Widening {
public:
  double slot() const { return slot_; }

  /// Whether it is found; else all is put together once more.
  bool is_found(const Laying& laying) {
    constexpr double wider = 1.06, widest = 4;
    constexpr std::size_t few_more = 2;
    if (found_ || laying.not_held() == 0) return true;
    if (laying.has_room() && laying.not_held() < fewest_) fewest_ = laying.not_held(), best_ = slot_;
    least_ = std::min(least_, laying.not_held());
    slot_ *= wider;
    found_ = slot_ >= widest;
    if (found_ && fewest_ <= least_ + few_more) slot_ = best_; // else an edging has no room
    return false;
  }

private:
  static constexpr std::size_t nowhere = static_cast<std::size_t>(-1) / 2;
  double slot_ = 1, best_ = 1;
  std::size_t fewest_ = nowhere, least_ = nowhere; ///< the first where an edging has room
  bool found_ = false;
};

std::optional<Straight> draw(const Fabric& fabric, std::uint32_t part, const Section& section,
                             const Folding& folding, const Extents& extents, const Page& page, Edge edge) {
  constexpr int most_times = 10;
  constexpr double more = 0.2;
  std::vector<double> room;
  std::vector<std::uint32_t> arrows;
  int bent = 0; ///< times that stems were given room
  Widening widening;
  for (int i = 0;; ++i) {
    Laying laying(fabric, part, section, folding, extents, page, edge, arrows, widening.slot());
    std::vector<int> crowded = laying.put_together(room, i);
    if (!widening.is_found(laying)) {
      --i;
      continue;
    }
    if (const std::vector<std::uint32_t> bends = laying.bends();
        bent < most_bends && !bends.empty() && (bent == 0 || !laying.stemless().empty())) {
      room.resize(laying.lines(), 0);
      for (const std::uint32_t line : bends) room[line] += bend_room;
      ++bent;
      --i;
      continue;
    }
    if (!laying.stemless().empty()) {
      arrows.insert(arrows.end(), laying.stemless().begin(), laying.stemless().end());
      room.clear();
      bent = 0;
      --i;
      continue;
    }
    if (!laying.has_room() || (edge == Edge::near && !crowded.empty() && i == most_times))
      return std::nullopt;
    for (const int line : laying.lengthen()) crowded.push_back(line);
    if (crowded.empty() || i == most_times) return laying.drawn();
    room.resize(laying.lines(), 0);
    for (const int line : crowded)
      if (line >= 0) room[static_cast<std::size_t>(line)] += more;
  }
}

} // namespace

Straight draw_rows(const Fabric& fabric, std::uint32_t part, const Section& section, const Folding& folding,
                   const Extents& extents, const Page& page) {
  return *draw(fabric, part, section, folding, extents, page, Edge::none);
}

std::optional<Straight> draw_edged_rows(const Fabric& fabric, std::uint32_t part, const Section& section,
                                        const Folding& folding, const Extents& extents, const Page& page) {
  Section edged = section;
  if (section.owner != fabric::none) {
    const std::vector<Section> owners = sections_of(fabric, section.owner);
    if (owners.size() != 1 || !owners[0].rows || !owners[0].edging.empty()) return std::nullopt;
    edged.rounds = owners[0].rounds;
    part = section.owner;
  }
  const bool begun = edged.before == fabric::none && fabric.parts[part].foundation != fabric::none;
  if (edged.edging.empty() || edged.rounds.size() > most_edged || !begun) return std::nullopt;
  std::optional<Straight> drawn = draw(fabric, part, edged, folding, extents, page, Edge::near);
  const bool only_here = std::any_of(edged.edging.begin(), edged.edging.end(), [&](std::uint32_t round) {
    return fabric.rounds[round].kind != pattern::RoundKind::round;
  });
  if (!drawn && only_here) drawn = draw(fabric, part, edged, folding, extents, page, Edge::anywhere);
  return drawn;
}

} // namespace whorl::layout
