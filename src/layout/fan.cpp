#include "layout/fan.hpp"

#include "layout/bunch.hpp"
#include "layout/sign.hpp"
#include "layout/stand.hpp"
#include "layout/turn.hpp"

#include <algorithm>

namespace whorl::layout {
namespace {

constexpr double step_of_few = 0.42, step = 0.30; ///< between feet in a space of up to three chains, of more
constexpr double of_space = 0.98;                 ///< feet take no more of it
constexpr double few_chains = 2.1;                ///< the length of a space of three
constexpr double step_in_stitch = 0.25;
constexpr double widest = 2.1, roundest = 3.0;  ///< angles of a fan
constexpr double least_step = 0.18;             ///< between feet of a round one
constexpr double air = 0.10, least_air = 0.075; ///< between heads; between any two inks
constexpr double wider = 0.06;
constexpr int most_times = 24;
constexpr double low_stitch = 1.2;
constexpr double few_legs = 5; ///< they stand in line
constexpr double bow_stretch = 0.6, low_bow_stretch = 0.9, bow_under_heads = 0.1;

class Fan {
public:
  Fan(const std::vector<Member>& members, const Spread& spread, const Extents& extents, Way way)
      : members_(members), extents_(extents), side_(way == Way::anticlockwise ? -1 : 1) {
    double legs = 0;
    for (const Member& member : members) {
      if (!member.on_heads) height_ = std::max(height_, member.height);
      legs += member.hangs ? 0 : 1;
    }
    const double own = spread.length > few_chains ? step : step_of_few;
    const double along =
        spread.space ? std::min(own, of_space * spread.length / std::max(1.0, legs)) : step_in_stitch;
    const double gathered = std::min(along, least_step);
    feet_ = (along + spread.round * (gathered - along)) * std::max(0.0, legs - 1);
    widest_ = widest + spread.round * (roundest - widest);
    bowed_ = spread.length > few_chains && legs > few_legs;
    for (std::size_t i = 0; i + 1 < members.size(); ++i) pitch_.push_back(pitch(i));
  }

  std::vector<Item> stand() {
    set();
    for (int i = 0; i < most_times && widen(); ++i) set();
    std::vector<Item> all;
    for (const std::vector<Item>& items : standing_) all.insert(all.end(), items.begin(), items.end());
    return all;
  }

private:
  double half_of(const Member& member) const {
    if (member.bows) return bowed(member).before;
    const SymbolExtent& shape = extent(extents_, member.items.front().key);
    double half = 0;
    for (const Convex& piece : shape.ink)
      for (const Point& p : piece)
        half = std::max(half, member.on_end ? std::abs(p.y - shape.height / 2) : std::abs(p.x));
    return half;
  }

  /// One picot alone between stitches stands over the gap between them, or at the end over the last.
  bool is_over(std::size_t member) const {
    const auto on_heads = [this](std::size_t i) { return i < members_.size() && members_[i].on_heads; };
    return member > 0 && on_heads(member) && !on_heads(member - 1) && !on_heads(member + 1);
  }

  double pitch(std::size_t one) const {
    const std::size_t over = is_over(one) ? one : one + 1;
    if (!is_over(over)) return half_of(members_[one]) + half_of(members_[one + 1]) + air;
    if (over + 1 == members_.size()) return 0;
    return (half_of(members_[over - 1]) + half_of(members_[over + 1]) + air) / 2;
  }

  /// Height of the heads on which a picot stands.
  double heads_under(std::size_t picot) const {
    if (!is_over(picot)) return height_;
    const double behind = picot + 1 < members_.size() ? members_[picot + 1].height : 0;
    return std::max(members_[picot - 1].height, behind);
  }

  /// Stands all members for the pitches as they are.
  void set() {
    double width = 0;
    for (const double pitch : pitch_) width += pitch;
    double angle = height_ > 0 ? (width - feet_) / height_ : 0;
    double feet = feet_;
    if (angle > widest_) angle = widest_, feet = width - widest_ * height_;
    angle = std::max(0.0, angle);
    const double bow = bowed_ && angle > 0 ? feet / angle : 0; // the radius on which feet stand
    standing_.clear();
    double at = -width / 2;
    for (std::size_t i = 0; i < members_.size(); ++i) {
      const double place = width > 0 ? at / width : 0;
      const double lean = side_ * angle * place;
      const Point up{sine(lean), cosine(lean)};
      standing_.push_back(stood(i, bow > 0 ? bow * (up - Point{0, 1}) : Point{side_ * feet * place, 0}, up));
      if (i < pitch_.size()) at += pitch_[i];
    }
  }

  std::vector<Item> stood(std::size_t number, Point foot, Point up) const {
    const Member& member = members_[number];
    std::vector<Item> items = member.items;
    if (member.bows) return stood_bow(member, foot, up);
    const double own = extent(extents_, items.front().key).height;
    const double from = member.on_heads ? heads_under(number) : member.hangs ? height_ - own : 0;
    const double pitch = member.height / static_cast<double>(items.size());
    for (std::size_t i = 0; i < items.size(); ++i) {
      items[i].foot = foot + from * up;
      items[i].up = up;
      items[i].height = own;
      if (!member.on_end) continue;
      const Point middle = foot + (static_cast<double>(i) + 0.5) * pitch * up;
      items[i].up = {side_ * up.y, 0.0 - side_ * up.x};
      items[i].foot = middle - own / 2 * items[i].up;
    }
    return items;
  }

  Bunch bowed(const Member& member) const {
    Bunch bow;
    bow.standing = member.items;
    bend(extents_, member.items.size() > 2 ? bow_stretch : low_bow_stretch,
         side_ < 0 ? Way::anticlockwise : Way::clockwise, bow, 2);
    return bow;
  }

  /// Its ends beside the heads.
  std::vector<Item> stood_bow(const Member& member, Point foot, Point up) const {
    std::vector<Item> items = bowed(member).standing;
    Item frame;
    frame.foot = foot + (height_ - bow_under_heads) * up;
    frame.up = up;
    for (Item& item : items) {
      item.up = layout::stood(frame, item.foot + item.up) - layout::stood(frame, item.foot);
      item.foot = layout::stood(frame, item.foot);
    }
    return items;
  }

  double air_between(std::size_t one, std::size_t other) const {
    double least = 1;
    for (const Item& a : standing_[one])
      for (const Item& b : standing_[other])
        for (const Convex& p : ink_of(extents_, a))
          for (const Convex& q : ink_of(extents_, b)) least = std::min(least, distance(p, q));
    return least;
  }

  bool is_low(std::size_t member) const {
    return members_[member].height < low_stitch && !members_[member].hangs;
  }

  /// Whether the loop that it goes into is marked beneath it.
  bool is_marked(std::size_t member) const {
    return members_[member].items.front().key.loops != stitch::both;
  }

  /// Spreads heads, or where low stitches or marks meet the feet too; whether any were too near.
  bool widen() {
    bool missing = false;
    for (std::size_t i = 0; i + 1 < members_.size(); ++i) {
      if (is_over(i + 1)) continue;
      bool near = air_between(i, i + 1) < least_air;
      near = near || (i + 2 < members_.size() && air_between(i, i + 2) < least_air);
      if (!near) continue;
      pitch_[i] += wider;
      if (is_low(i) || is_low(i + 1) || is_marked(i) || is_marked(i + 1)) feet_ += wider;
      missing = true;
    }
    return missing;
  }

  const std::vector<Member>& members_;
  const Extents& extents_;
  double side_;
  double height_ = 0, feet_ = 0, widest_ = widest;
  bool bowed_ = false; ///< its feet stand along a bow
  std::vector<double> pitch_;
  std::vector<std::vector<Item>> standing_;
};

} // namespace

std::vector<Item> fanned(const std::vector<Member>& members, const Spread& spread, const Extents& extents,
                         Way way) {
  return Fan(members, spread, extents, way).stand();
}

} // namespace whorl::layout
