#include "pictures/work.hpp"

#include <algorithm>

namespace whorl::pictures {
namespace {

constexpr int most_open = 84; ///< rounds that are longer shrink

const char* const plain_kinds[] = {"sc",  "sc",   "sc",  "sc",   "hdc", "dc", "tr",
                                   "dtr", "trtr", "esc", "ehdc", "edc", "etr"};
const char* const fancy_kinds[] = {"bo",      "puff",    "pc",      "cl",         "loop st", "FPsc",
                                   "FPhdc",   "FPdc",    "FPtr",    "FPdtr",      "BPsc",    "BPhdc",
                                   "BPdc",    "BPtr",    "sc",      "hdc",        "dc",      "tr",
                                   "3-dc cl", "4-tr cl", "5-tr pc", "3-hdc puff", "5-dc bo"};

std::string number(int n) { return std::to_string(n); }

/// Adds steps until the stitches that are open are used up.
class Stepping {
public:
  Stepping(Dice& dice, const Mood& mood, int open) : dice_(dice), mood_(mood), left_(open) {}

  Work work() {
    while (left_ > 0) step();
    return work_;
  }

private:
  void step() {
    const int what = dice_.below(10);
    if (what < mood_.grow) return grow();
    if (what < mood_.grow + mood_.shrink && left_ >= 2) return shrink();
    if (dice_.below(10) < mood_.fancy) return fancy();
    const int run = std::min(left_, dice_.between(1, 4));
    add(std::string(mood_.kind) + " " + number(run), run, run);
  }

  void grow() {
    const std::string kind = mood_.kind;
    if (dice_.one_in(12)) return shell();
    const int many = dice_.one_in(6) ? dice_.between(3, 7) : 2;
    if (many == 2) return add(kind == "sc" ? "inc" : kind + " inc", 1, 2);
    add(number(many) + " " + kind + " in next st", 1, many);
  }

  void shell() {
    static const char* const shells[] = {"(2 dc, ch 1, 2 dc) in next st", "(dc, ch 1, dc) in next st",
                                         "(hdc, dc, hdc) in next st", "(sc, ch 1, sc) in next st"};
    const int which = dice_.below(mood_.chains ? 4 : 1);
    if (!mood_.chains) return add(shells[2], 1, 3);
    static const int makes[] = {4, 2, 3, 2};
    if (which != 2) ++work_.spaces;
    add(shells[which], 1, makes[which]);
  }

  void shrink() {
    const std::string kind = mood_.kind;
    if (left_ >= 3 && dice_.one_in(6)) return add(kind + "3tog", 3, 1);
    if (kind == "sc" && dice_.one_in(2)) return add(mood_.loops || dice_.one_in(2) ? "dec" : "invdec", 2, 1);
    add(kind + "2tog", 2, 1);
  }

  void fancy() {
    const int what = dice_.below(12);
    if (what == 0 && mood_.chains && left_ >= 3) return chain();
    if (what == 1 && work_.made > 0) return add("sc 1, picot", 1, 1);
    if (what == 2 && mood_.deep > 0)
      return add("sc in next st " + number(dice_.between(1, mood_.deep)) + " rounds below", 1, 1);
    if (what == 3 && left_ >= 4) return add("sk 1", 1, 0);
    if (what == 4) return add(std::string(dice_.one_in(2) ? "BLO " : "FLO ") + mood_.kind + " 1", 1, 1);
    add(dice_.any(fancy_kinds), 1, 1);
  }

  void chain() {
    ++work_.spaces;
    add("sc 1, ch 1, sk 1", 2, 1);
  }

  void add(const std::string& text, int used, int made) {
    work_.text += (work_.text.empty() ? "" : ", ") + text;
    left_ -= used, work_.made += made;
  }

  Dice& dice_;
  const Mood& mood_;
  int left_;
  Work work_;
};

/// A number that the open stitches can be divided by, or 1.
int repeats_of(Dice& dice, int open) {
  static const int tries[] = {6, 4, 3, 8, 2, 5, 7};
  const int times = dice.any(tries);
  return open % times == 0 && open / times >= 2 ? times : 1;
}

} // namespace

int Dice::below(int sides) {
  state_ = state_ * 6364136223846793005ULL + 1442695040888963407ULL;
  std::uint64_t mixed = state_;
  mixed ^= mixed >> 33U, mixed *= 0xFF51AFD7ED558CCDULL, mixed ^= mixed >> 33U;
  return static_cast<int>(mixed % static_cast<std::uint64_t>(sides));
}

Mood mood_by_chance(Dice& dice, int open, int round) {
  Mood mood;
  mood.kind = dice.any(plain_kinds);
  const int way = open > most_open ? 2 : open < 6 ? 1 : dice.below(4);
  if (way == 1) mood.grow = dice.between(1, 5);
  if (way == 2) mood.shrink = dice.between(1, 4);
  if (way == 3 && dice.one_in(3)) mood.grow = mood.shrink = 2;
  if (dice.one_in(2)) mood.fancy = dice.between(1, 7);
  mood.deep = std::min(round - 2, 3);
  return mood;
}

Work work_by_chance(Dice& dice, const Mood& mood, int open) {
  const int times = dice.one_in(2) ? repeats_of(dice, open) : 1;
  Work work = Stepping(dice, mood, open / times).work();
  if (times == 1) return work;
  return {"(" + work.text + ") x " + number(times), work.made * times, work.spaces * times};
}

} // namespace whorl::pictures
