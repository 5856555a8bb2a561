#include "pictures/spread_rows.hpp"

#include "pictures/work.hpp"

#include <algorithm>

namespace whorl::pictures {
namespace {

std::string number(int n) { return std::to_string(n); }

struct Tall {
  const char* kind;
  const char* turning; ///< chains that count for none
  int growth;          ///< of a half circle, a row
  const char* start;   ///< of one chain, all stitches in its first
};
constexpr Tall talls[] = {{"sc", "ch 1, ", 3, "Ch 2."},
                          {"hdc", "ch 2 (does not count as a stitch), ", 5, "Ch 3."},
                          {"dc", "ch 3 (does not count as a stitch), ", 7, "Ch 4."},
                          {"tr", "ch 4 (does not count as a stitch), ", 8, "Ch 5."}};

class Writing {
public:
  explicit Writing(Dice& dice) : dice_(dice), tall_(dice.any(talls)), kind_(tall_.kind) {}

  std::string rows() {
    start();
    if (dice_.one_in(3))
      triangle();
    else
      half_circle();
    return text_;
  }

private:
  void start() {
    in_chain_ = dice_.one_in(3);
    if (in_chain_)
      text_ += std::string(tall_.start) + "\n";
    else
      text_ += dice_.one_in(2) ? "Make a magic ring.\n" : "Ch 4, join with sl st to form a ring.\n";
  }

  std::string into_start() const {
    if (!in_chain_) return " in ring";
    return std::string(" in ") + number(tall_.start[3] - '0') +
           (tall_.start[3] == '2'   ? "nd"
            : tall_.start[3] == '3' ? "rd"
                                    : "th") +
           " ch from hook";
  }

  void row(const std::string& work, int made, bool told = true) {
    const std::string yarn = striped_ && dice_.one_in(3) ? (other_ ? "with moss, " : "with bark, ") : "";
    if (!yarn.empty()) other_ = !other_;
    text_ += "Row " + number(++row_) + ": " + yarn + work + ", turn." +
             (told ? " (" + number(made) + ")" : "") + "\n";
    open_ = made;
  }

  std::string times(int n, const std::string& work) const {
    return n == 1 ? work : "(" + work + ") " + number(n) + " times";
  }

  std::string plain(int n, const std::string& behind = ", ") const {
    return n > 0 ? kind_ + " in next " + (n == 1 ? "st" : number(n) + " sts") + behind : "";
  }

  void half_circle() {
    striped_ = dice_.one_in(4);
    const int growth = tall_.growth + dice_.between(-1, tall_.growth / 2);
    const std::string turning = in_chain_ ? "" : tall_.turning;
    row(turning + number(growth) + " " + kind_ + into_start(), growth, !in_chain_ || tall_.start[3] == '2');
    if (in_chain_ && tall_.start[3] != '2') open_ = growth + 1, grow_evenly(open_);
    for (int i = dice_.between(1, 5); i > 0; --i) {
      if (dice_.one_in(4))
        any();
      else if (open_ % growth == 0)
        grow(growth);
      else
        grow_evenly(dice_.between(2, growth));
    }
  }

  void grow(int many) {
    const int between = open_ / many - 1;
    row(tall_.turning + times(many, plain(between) + "2 " + kind_ + " in next st"), open_ + many);
  }

  void grow_evenly(int many) {
    many = std::min(many, open_);
    const int each = open_ / many - 1, rest = open_ - many * (each + 1);
    row(tall_.turning + times(many, plain(each) + "2 " + kind_ + " in next st") +
            (rest > 0 ? ", " + plain(rest, "") : ""),
        open_ + many);
  }

  /// Stitches of every kind, more than there were.
  void any() {
    Mood mood = mood_by_chance(dice_, open_, 2);
    mood.kind = tall_.kind, mood.deep = 0, mood.shrink = 0, mood.chains = false, mood.loops = false;
    mood.grow = dice_.between(1, 4);
    const Work work = work_by_chance(dice_, mood, open_);
    if (work.made >= open_) row(tall_.turning + work.text, work.made);
  }

  void triangle() {
    const bool in_space = dice_.one_in(2), at_ends = !dice_.one_in(4);
    const int half = dice_.between(1, 3), in_end = at_ends ? dice_.between(2, 3) : 1;
    const int in_spine = in_space ? dice_.between(1, 2) : 1;
    const std::string ends = (in_end == 1 ? "" : number(in_end) + " ") + kind_,
                      spine = (in_spine == 1 ? "" : number(in_spine) + " ") + kind_;
    in_chain_ = false;
    text_ = "Make a magic ring.\n";
    const std::string first = number(half) + " " + kind_;
    row(tall_.turning + first + " in ring, " + (in_space ? "ch 2" : kind_ + " in ring") + ", " + first +
            " in ring",
        2 * half + 1, false);
    for (int side = half, i = dice_.between(1, 4); i > 0; --i) {
      const std::string middle =
          in_space ? "(" + spine + ", ch 2, " + spine + ") in ch-2 sp, " : "3 " + kind_ + " in next st, ";
      if (side < 2) {
        row(tall_.turning + plain(side) + middle + plain(side, ""), 0, false);
        side += in_spine;
        continue;
      }
      row(tall_.turning + ends + " in first st, " + plain(side - 1) + middle + plain(side - 1) + ends +
              " in last st",
          0, false);
      side += in_end - 1 + in_spine;
    }
  }

  Dice& dice_;
  const Tall& tall_;
  std::string kind_, text_;
  bool in_chain_ = false, striped_ = false, other_ = true;
  int row_ = 0, open_ = 0;
};

} // namespace

std::string spread_rows_by_chance(Dice& dice) { return Writing(dice).rows(); }

} // namespace whorl::pictures
