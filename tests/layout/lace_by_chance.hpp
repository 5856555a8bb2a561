#pragma once

#include <string>

namespace whorl::layout::test {

/// Writes rounds of lace by chance: rounds of stitches, arches over skipped ones, stitches, groups, fans and
/// picots in the spaces of the round before.
template <class Dice> class LaceByChance {
public:
  explicit LaceByChance(Dice& dice) : dice_(dice) {}

  /// At least one round is worked into spaces.
  std::string rounds() {
    begin();
    const int rounds = 3 + below(4);
    for (int i = 1; i < rounds || spaces_ > 0; ++i) {
      if (i > 9) break;
      if (spaces_ > 0)
        into_spaces();
      else
        below(3) == 0 && stitches_<40 && i> 1 ? over_stitches() : arches();
    }
    return text_;
  }

private:
  int below(int sides) { return static_cast<int>(dice_.below(static_cast<decltype(dice_.below(1))>(sides))); }
  static std::string number(int n) { return std::to_string(n); }

  void line(const std::string& work) { text_ += "Rnd " + number(++round_) + ": " + work + ", join\n"; }

  void begin() {
    static const int counts[] = {8, 12, 16, 18};
    stitches_ = counts[below(4)];
    if (below(3) == 0)
      line("MR, " + number(stitches_) + " sc in ring");
    else
      line("MR, ch 3 (counts as dc), " + number(stitches_ - 1) + " dc in ring");
  }

  void over_stitches() {
    if (below(2) == 0) return line("ch 1, sc in each st around");
    line("ch 3 (counts as dc), dc in same st, 2 dc in each st around");
    stitches_ *= 2;
  }

  void arches() {
    const int every = stitches_ % 3 == 0 && below(2) == 0 ? 3 : 2;
    static const char* const kinds[] = {"sc", "sc", "dc", "popcorn", "tr", "hdc"};
    const int times = stitches_ / every;
    line("ch 1, (" + std::string(kinds[below(6)]) + " in next st, ch " + number(1 + below(6)) + ", skip " +
         number(every - 1) + ") " + number(times) + " times");
    spaces_ = times, stitches_ = times;
  }

  void into_spaces() {
    static const char* const works[] = {"sc",
                                        "3 dc",
                                        "2 hdc",
                                        "5 dc",
                                        "popcorn",
                                        "dc",
                                        "2 tr",
                                        "(2 dc, ch 2, 2 dc)",
                                        "(sc, hdc, dc, hdc, sc)",
                                        "(dc, ch 3, dc)",
                                        "4 sc"};
    static const int made[] = {1, 3, 2, 5, 1, 1, 2, 4, 5, 2, 4};
    const int which = below(11);
    const bool own_space = which == 7 || which == 9;
    const int chains = own_space ? 0 : below(6);
    const std::string after = chains > 0 ? ", ch " + number(chains) : "";
    line("ch 1, (" + std::string(works[which]) + " in next ch sp" + after + ") " + number(spaces_) +
         " times");
    stitches_ = made[which] * spaces_;
    if (chains == 0 && !own_space) spaces_ = 0;
  }

  Dice& dice_;
  std::string text_;
  int stitches_ = 0, spaces_ = 0, round_ = 0;
};

} // namespace whorl::layout::test
