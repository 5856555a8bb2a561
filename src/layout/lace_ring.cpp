#include "layout/lace_ring.hpp"

#include "layout/stand.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace whorl::layout {
namespace {

constexpr double least_air = 0.10; ///< between any two inks
constexpr double more = 0.02;      ///< than what was missing
constexpr double fullness = 0.985;
constexpr double first_guess = 0.8; ///< of the ink of neighbours; what is missing is measured
constexpr double push = 0.1;
constexpr int most_pushes = 100000, pushes_to_places = 100, most_widenings = 60, most_turns = 12,
              most_doublings = 8;
constexpr double far_from_seat = 0.25,
                 far_at_most = 0.05; ///< before springs are made stronger; where feet must
constexpr double mean_height = 0.6;  ///< of a stitch, where places along the ring count
constexpr double further_on = 0.3;   ///< of a turn the next place is looked for
constexpr double label_pull = 6, opening_pull = 50;
constexpr double pointer_slot = 0.5;
constexpr double hung_head = 0.8; ///< where nothing stands that it could hang beside

/// What is strung along a ring: its bunches, then its label and pointer where they have a place of their own.
class Laying {
public:
  Laying(const Extents& extents, const Rounded& contour, const Obstacles& inside, const InPlace& in_place,
         LaceRing& ring)
      : extents_(extents), contour_(contour), inside_(inside), in_place_(in_place), ring_(ring),
        bunches_(ring.bunches.size()) {}

  void lay() {
    label_in_ring_ = ring_.pointed && !is_open();
    push_out();
    draw_taut();
    ring_.pushed = pushed_;
    if (is_open()) return label_row(contour_, inside_, ink_, label_r(), ring_);
    if (label_in_ring_) return;
    if (const std::optional<Point> start = free_label_start(contour_, ring_, inside_, ink_)) {
      ring_.label_start = *start;
      return;
    }
    label_in_ring_ = true;
    push_out();
    draw_taut();
    ring_.pushed = pushed_;
  }

private:
  /// A ring that does not go all round has an opening in the place of label and pointer.
  bool is_open() const { return ring_.part < 1; }
  bool is_opening(std::size_t i) const { return is_open() && i == bunches_; }
  double opening() const { return (1 - ring_.part) * length(); }

  std::size_t size() const {
    return bunches_ + (is_open() ? 1 : (label_in_ring_ ? 1 : 0) + (ring_.pointed ? 1 : 0));
  }
  bool is_label(std::size_t i) const { return label_in_ring_ && i == bunches_; }
  bool is_pointer(std::size_t i) const { return ring_.pointed && i == bunches_ + 1; }
  bool stands(std::size_t i) const { return i < bunches_ && ring_.feet[i] > 0; }
  bool stays_low(std::size_t i) const {
    return ring_.valleys && stands(i) && !ring_.bunches[i].group && ring_.bunches[i].most_rise <= 0;
  }

  /// Until everything has room, then until all stand in their places; what never does stays where it had
  /// room.
  void push_out() {
    int first = 0;
    bool has_room = fits(push * first);
    while (!has_room && first < most_pushes) first += 1 + first / 8, has_room = fits(push * first);
    if (!has_room) settle(), set_stands();
    if (!has_room || stand_in_place()) return;
    const int had_room = first;
    to_places_ = true;
    for (; first < had_room + pushes_to_places; first += 1 + (first - had_room) / 3)
      if (fits(push * first) && stand_in_place()) return;
    to_places_ = false;
    fits(push * had_room);
  }

  bool stand_in_place() const {
    for (std::size_t i = 0; i < bunches_; ++i)
      if (!in_place_(standing_items(contour_, ring_, i))) return false;
    return true;
  }

  bool fits(double pushed) {
    lifts_.assign(size(), 0);
    pushed_ = ring_.least_pushed + pushed;
    set_radius();
    if (!bend_bows()) return false;
    string();
    for (int i = 0; i < most_widenings; ++i) {
      double least = 0;
      for (const double gap : ring_.strung.least) least += gap;
      if (least > fullness * length()) return false;
      settle();
      set_stands();
      if (!widen()) return true;
    }
    return false;
  }

  double length() const { return length_of(contour_, ring_.r); }

  /// Places count along the mean of all that stands.
  void set_radius() {
    double sum = 0;
    int many = 0;
    for (std::size_t i = 0; i < bunches_; ++i)
      if (stands(i)) sum += ring_.feet[i] + mean_height * ring_.bunches[i].low_head, ++many;
    ring_.r = pushed_ + (many > 0 ? sum / many : hung_head + ring_.feet_if_none);
  }

  double slot(std::size_t i) const {
    if (is_opening(i)) return opening();
    if (is_pointer(i)) return pointer_slot;
    return is_label(i) ? ring_.label.width + 2 * label_air : ring_.bunches[i].slot;
  }

  double slots() const {
    double sum = 0;
    for (std::size_t i = 0; i < size(); ++i) sum += slot(i);
    return sum;
  }

  /// Bows are pulled or pressed until they fill the ring.
  bool bend_bows() {
    const double room = fullness * length();
    for (const bool few : {false, true}) {
      const double loose = few ? 1 : least_stretch, taut = few ? greatest_spread : greatest_stretch;
      const double from = to_places_ ? (loose + taut) / 2 : taut, to = loose;
      for (double stretch = from; stretch > to - 0.025; stretch -= 0.05) {
        for (Bunch& bunch : ring_.bunches)
          if (is_bow(bunch) && is_short(bunch) == few) bend(extents_, stretch, contour_.way, bunch);
        if (slots() <= room) break;
      }
    }
    return slots() * first_guess <= room;
  }

  double before(std::size_t i) const { return i < bunches_ ? ring_.bunches[i].before : slot(i) / 2; }
  double behind(std::size_t i) const { return i < bunches_ ? ring_.bunches[i].behind : slot(i) / 2; }

  /// The gap before the first closes the ring, and is the last.
  void string() {
    Strung& strung = ring_.strung = {};
    strung.length = length();
    const double fixed = is_open() ? opening() : 0, scale = (length() - fixed) / (slots() - fixed);
    const auto wanted = [&](std::size_t i) { return (is_opening(i) ? 1 : scale) * slot(i) / 2; };
    const auto least = [&](std::size_t i, double ink) { return (is_opening(i) ? 1 : first_guess) * ink; };
    for (std::size_t k = 1; k <= size(); ++k) {
      const std::size_t next = k % size();
      const bool over = stays_low(k - 1) || stays_low(next);
      strung.wanted.push_back(wanted(k - 1) + wanted(next));
      strung.least.push_back(over ? 0 : least(k - 1, behind(k - 1)) + least(next, before(next)));
    }
    set_targets();
  }

  void set_targets() {
    targets_.assign(size(), std::nullopt);
    std::optional<double> before;
    for (std::size_t i = 0; i < bunches_; ++i) {
      if (!ring_.seats[i]) continue;
      const double own = carried(contour_, ring_.seats[i]->r, ring_.seats[i]->at, ring_.r);
      const double first = is_open() ? turned_near(own, ring_.start) : own;
      before = before ? turned_near(own, *before + further_on) : first;
      targets_[i] = *before * length();
    }
    spread_fans();
    if (is_open()) keep_from_opening();
  }

  /// The opening lies at 6 o'clock, and nothing wants to stand in it.
  void keep_from_opening() {
    const double edge = ring_.part * length() / 2;
    for (std::size_t i = 0; i < bunches_; ++i)
      if (targets_[i]) targets_[i] = std::min(edge - behind(i), std::max(before(i) - edge, *targets_[i]));
    targets_[bunches_] = length() / 2;
  }

  double pull(std::size_t i) const { return is_opening(i) ? opening_pull : ring_.pull[i]; }

  /// Chains that a row begins with stand for a stitch in the place of the next where both want the same.
  bool share(std::size_t one, std::size_t other) const {
    if (is_open() && ring_.bunches[one].sort == Bunch::Sort::column)
      return other == one + 1 && targets_[one] == targets_[other];
    return ring_.bunches[one].base && ring_.bunches[one].base == ring_.bunches[other].base;
  }

  /// The next behind it that has a seat, round the ring.
  std::size_t next_seated(std::size_t i) const {
    do i = (i + 1) % bunches_;
    while (!targets_[i]);
    return i;
  }

  /// Bunches that go into one place share it, with what hangs between them.
  void spread_fans() {
    const std::vector<std::optional<double>> seats = targets_;
    for (std::size_t i = 0; i < bunches_; ++i) {
      if (!seats[i]) continue;
      for (std::size_t last = i, next = next_seated(i); next != i && share(last, next);
           next = next_seated(next)) {
        double apart = slot(last) / 2 + slot(next) / 2;
        for (std::size_t k = (last + 1) % bunches_; k != next; k = (k + 1) % bunches_) apart += slot(k);
        // each of the two makes way by half
        targets_[last] = *targets_[last] - apart / 2;
        targets_[next] = *targets_[next] + apart / 2;
        break;
      }
    }
  }

  /// Where bunches would slide off their seats, the springs are made stronger.
  void settle() {
    stronger_ = 1;
    find_start();
    for (int i = 0; i < most_doublings && strays(); ++i) {
      stronger_ *= 2;
      find_start();
    }
    for (double& at : ring_.at) at /= length();
  }

  bool strays() const {
    for (std::size_t i = 0; i < bunches_; ++i)
      if (targets_[i] && std::abs(*targets_[i] - ring_.at[i]) > (to_places_ ? far_at_most : far_from_seat))
        return true;
    return false;
  }

  /// Nothing holds the first bunch but its own spring: the whole ring is turned until all springs together
  /// rest.
  void find_start() {
    ring_.at.assign(size(), 0);
    double start = targets_[0].value_or(ring_.start * length());
    for (int turn = 0; turn < most_turns; ++turn) {
      place_from(start);
      double shift = 0, pulls = 0;
      for (std::size_t i = 0; i < size(); ++i)
        if (targets_[i]) shift += pull(i) * (*targets_[i] - ring_.at[i]), pulls += pull(i);
      if (pulls <= 0 || std::abs(shift) < 1e-4 * pulls) break;
      start += shift / pulls;
    }
  }

  /// How far before the first stitch its pointer or label wants to be.
  double before_first(std::size_t i) const {
    double far = before(0) + label_air + slot(size() - 1) / 2;
    if (i + 1 < size()) far += slot(size() - 1) / 2 + label_air + slot(i) / 2;
    return far;
  }

  void place_from(double start) {
    Strung& strung = ring_.strung;
    strung.target.clear(), strung.pull.clear();
    for (std::size_t i = 1; i < size(); ++i) {
      const bool seated = targets_[i].has_value();
      strung.target.push_back(seated ? *targets_[i] - start : i < bunches_ ? 0 : length() - before_first(i));
      strung.pull.push_back(seated ? stronger_ * pull(i) : i < bunches_ ? 0 : label_pull);
    }
    ring_.at[0] = start;
    if (size() == 1) return;
    const std::vector<double> behind = relax(strung, at_least_);
    for (std::size_t i = 1; i < size(); ++i) ring_.at[i] = start + behind[i - 1];
  }

  /// Heads beside the i-th, on one side: those of the next that stands.
  std::optional<double> head_beside(std::size_t i, bool ahead) const {
    for (std::size_t k = 1; k < bunches_; ++k) {
      const std::size_t next = (ahead ? i + k : i + bunches_ - k) % bunches_;
      if (stands(next)) return ring_.stands[next] + ring_.bunches[next].low_head;
    }
    return std::nullopt;
  }

  void set_stands() {
    ring_.stands.resize(bunches_);
    for (std::size_t i = 0; i < bunches_; ++i)
      if (stands(i)) ring_.stands[i] = ring_.feet[i] + (stays_low(i) ? 0 : pushed_) + lifts_[i];
    for (std::size_t i = 0; i < bunches_; ++i)
      if (!stands(i)) ring_.stands[i] = level(i) - sunk(ring_.bunches[i]) + lifts_[i];
    ring_.whole = to_places_;
    lean_to_places(contour_, targets_, pushed_, ring_);
    if (label_in_ring_) set_label();
  }

  double level(std::size_t i) const {
    const std::optional<double> one = head_beside(i, true), other = head_beside(i, false);
    if (!one || !other) return pushed_ + ring_.feet_if_none + hung_head;
    return (*one + *other) / 2;
  }

  double sunk(const Bunch& bunch) const {
    const SymbolExtent& shape = extent(extents_, bunch.standing.front().key);
    return shape.on_heads ? 0 : shape.height;
  }

  /// The first stitch's middle is that of its label's height.
  double label_r() const {
    for (std::size_t i = 0; i < bunches_; ++i)
      if (stands(i)) return ring_.stands[i] + ring_.bunches[i].low_head / 2;
    return ring_.r;
  }

  Point on_ring(double r, double at) const {
    return point_on(contour_, r, carried(contour_, ring_.r, at, r));
  }

  void set_label() {
    const double r = label_r() + lifts_[bunches_];
    ring_.label_start = label_start_at(ring_.label, on_ring(r, ring_.at[bunches_]));
    if (!ring_.pointed) return;
    const double at = ring_.at[bunches_ + 1], pr = label_r() + lifts_[bunches_ + 1];
    const Point out = outward(contour_, carried(contour_, ring_.r, at, pr));
    ring_.pointer_direction =
        contour_.way == Way::anticlockwise ? Point{0 - out.y, out.x} : Point{out.y, 0 - out.x};
    ring_.pointer_tip = on_ring(pr, at) + (pointer_length / 2) * ring_.pointer_direction;
  }

  std::vector<Convex> label_ink() const { return ink_of_label(ring_.label, ring_.label_start); }

  std::vector<Convex> ink_at(std::size_t i) const {
    if (is_opening(i)) return {};
    if (is_label(i)) return label_ink();
    if (is_pointer(i)) return {ink_of_pointer(ring_.pointer_tip, ring_.pointer_direction)};
    std::vector<Convex> ink;
    for (const Item& item : standing_items(contour_, ring_, i))
      for (Convex& piece : ink_of(extents_, item)) ink.push_back(std::move(piece));
    return ink;
  }

  double air_wanted(std::size_t one, std::size_t other) const {
    return is_label(one) || is_label(other) ? label_air : least_air;
  }

  /// More room where ink is too near, along the ring or from what is inside it; whether any was missing.
  bool widen() {
    ink_.clear();
    for (std::size_t i = 0; i < size(); ++i) ink_.push_back(ink_at(i));
    bool missing = false;
    for (std::size_t i = 0; i < size(); ++i) {
      for (std::size_t k = 1; k <= 3 && 2 * k <= size() + 1; ++k) missing |= part(i, k);
      const double air = is_label(i) ? label_air : least_air;
      const double short_of = air - inside_.air_around(ink_[i], air);
      if (short_of <= 1e-6) continue;
      lifts_[i] += short_of + more;
      missing = true;
    }
    return missing;
  }

  bool part(std::size_t i, std::size_t ahead) {
    const std::size_t next = (i + ahead) % size();
    if (next == i) return false;
    const double air = air_wanted(i, next);
    const double short_of = air - air_between(ink_[i], ink_[next], air);
    if (short_of <= 1e-6) return false;
    for (std::size_t k = 0; k < ahead; ++k) {
      const std::size_t gap = (i + k) % size();
      double own = ring_.at[(gap + 1) % size()] - ring_.at[gap];
      if (gap + 1 == size()) own += 1;
      double& least = ring_.strung.least[gap];
      least = std::max(least, own * length()) + (short_of + more) / static_cast<double>(ahead);
    }
    return true;
  }

  /// Each bow reaches from head to head as far as it goes and there is room.
  void draw_taut() {
    for (std::size_t i = 0; i < bunches_; ++i) {
      if (is_open() && (i == 0 || i + 1 == bunches_)) continue;
      const std::size_t one = (i + bunches_ - 1) % bunches_, other = (i + 1) % bunches_;
      if (!is_bow(ring_.bunches[i]) || !stands(one) || !stands(other) || bunches_ < 3) continue;
      const Bunch loose = ring_.bunches[i];
      const double at = ring_.at[i];
      ring_.at[i] = middle_between(one, other, at);
      const double most = is_short(loose) ? greatest_spread : greatest_stretch;
      bool clear = false;
      for (double stretch = most; stretch >= loose.stretch && !clear; stretch -= 0.05) {
        bend(extents_, stretch, contour_.way, ring_.bunches[i]);
        ink_[i] = ink_at(i);
        clear = is_clear(i);
      }
      if (clear) continue;
      ring_.bunches[i] = loose, ring_.at[i] = at;
      ink_[i] = ink_at(i);
    }
  }

  double middle_between(std::size_t one, std::size_t other, double near) const {
    const double from = ring_.at[one] + ring_.bunches[one].behind / length(),
                 to = ring_.at[other] - ring_.bunches[other].before / length();
    return (turned_near(from, near) + turned_near(to, near)) / 2;
  }

  bool is_clear(std::size_t i) const {
    if (inside_.air_around(ink_[i], least_air) < least_air) return false;
    for (std::size_t k = 1; k <= 4 && k < size(); ++k)
      for (const std::size_t near : {(i + k) % size(), (i + size() - k) % size()})
        if (air_between(ink_[i], ink_[near], air_wanted(i, near)) < air_wanted(i, near)) return false;
    return true;
  }

  const Extents& extents_;
  const Rounded& contour_;
  const Obstacles& inside_;
  const InPlace& in_place_;
  LaceRing& ring_;
  std::size_t bunches_;
  bool label_in_ring_ = false;
  double pushed_ = 0, stronger_ = 1;
  bool to_places_ = false; ///< it grows until all stand in their places
  std::vector<double> lifts_;
  std::vector<char> at_least_; ///< the gaps that stood at their least before: mostly they do again
  std::vector<std::optional<double>> targets_;
  std::vector<std::vector<Convex>> ink_;
};

} // namespace

void lay_lace_ring(const Extents& extents, const Rounded& contour, const Obstacles& inside,
                   const InPlace& in_place, LaceRing& ring) {
  Laying(extents, contour, inside, in_place, ring).lay();
}

} // namespace whorl::layout
