#include "pictures/floor.hpp"

#include "layout/lace_by_chance.hpp"
#include "pictures/spread_rows.hpp"
#include "pictures/work.hpp"

#include <algorithm>

namespace whorl::pictures {
namespace {

std::string number(int n) { return std::to_string(n); }

const char* const joined_kinds[] = {"sc", "hdc", "dc", "tr"};

/// Writes one pattern.
class Writing {
public:
  explicit Writing(std::uint64_t seed) : dice_(seed) {}

  std::string pattern(Shape shape) {
    text_ = "Mosswort\n\n";
    if (dice_.one_in(2)) text_ += "Yarn: white and grey\n\n", yarns_ = true;
    part(shape, "BODY");
    if (dice_.one_in(4)) part(all_shapes[dice_.below(8)], "CROWN");
    return text_;
  }

private:
  void part(Shape shape, const std::string& name) {
    switch (shape) {
    case Shape::ball:
      return ball(name);
    case Shape::tube:
      return tube(name);
    case Shape::oval:
      return oval(name);
    case Shape::rows:
      return rows(name);
    case Shape::frill:
      return frill(name);
    case Shape::legs:
      return legs(name);
    case Shape::folded:
      return folded(name);
    case Shape::flaps:
      return flaps(name);
    case Shape::joined:
      return joined(name);
    case Shape::lace:
      return lace(name);
    case Shape::eared:
      return eared(name);
    case Shape::sewn:
      return sewn(name);
    case Shape::fans:
      return fans(name);
    }
  }

  void head(const std::string& name) {
    text_ += name + (dice_.one_in(4) ? " (make 2)\n" : "\n");
    round_ = 0, spaces_ = 0, deep_from_ = 1;
    counts_.clear();
  }

  void line(const std::string& work, int made) {
    open_ = made;
    counts_.push_back(made);
    text_ += (flat_ ? "Row " : "Rnd ") + number(++round_) + ": " + work + " (" + number(made) + ")\n";
  }

  // Starts.

  void start_at_centre(const std::string& name) {
    head(name);
    const int many = dice_.between(4, 10);
    const char* const kind = dice_.one_in(5) ? "dc" : dice_.one_in(5) ? "hdc" : "sc";
    if (dice_.one_in(4))
      line("Ch 2, " + number(many) + " sc in 2nd ch from hook", many);
    else
      line(number(many) + " " + kind + " in MR", many);
  }

  /// Rounds that grow as a disc does.
  void grow(int rounds) {
    const int each = open_;
    for (int i = 0; i < rounds && open_ < 70; ++i) {
      const int plain = open_ / each - 1;
      const std::string stitches = plain == 0 ? "" : "sc " + number(plain) + ", ";
      line(open_ % each == 0 ? "(" + stitches + "inc) x " + number(each) : "sc around",
           open_ % each == 0 ? open_ + each : open_);
    }
  }

  void even(int rounds, const char* kind = "sc") {
    for (int i = 0; i < rounds; ++i) line(std::string(kind) + " around", open_);
  }

  // Rounds of all sorts.

  void any_round() {
    if (spaces_ > 0) return over_spaces();
    Mood mood = mood_by_chance(dice_, open_, round_ - deep_from_ + 1);
    mood.chains = dice_.one_in(5);
    if (yarns_ && dice_.one_in(6)) return in_two_yarns();
    mood.loops = mood.fancy == 0 && !mood.chains && dice_.one_in(3);
    const Work work = work_by_chance(dice_, mood, open_);
    if (work.made == 0) return even(1);
    spaces_ = work.spaces;
    line((!mood.loops ? "" : dice_.one_in(2) ? "BLO: " : "FLO: ") + work.text, work.made);
  }

  void over_spaces() {
    const std::string kind = dice_.one_in(3) ? "hdc" : "sc";
    line(kind + " in each st and ch-1 sp around", open_ + spaces_);
    spaces_ = 0, deep_from_ = round_ + 1;
  }

  void in_two_yarns() {
    std::string work;
    for (int left = open_, turn = 0; left > 0; ++turn) {
      const int run = std::min(left, dice_.between(1, 9));
      work += (turn > 0 ? ", " : "") + std::string(turn % 2 == 0 ? "in white " : "in grey ") + "sc " +
              number(run);
      left -= run;
    }
    line(work, open_);
  }

  void any_rounds(int rounds) {
    for (int i = 0; i < rounds; ++i) {
      any_round();
      if (yarns_ && dice_.one_in(8)) text_ += dice_.one_in(2) ? "Change to grey.\n" : "Change to white.\n";
    }
    if (spaces_ > 0) over_spaces();
  }

  void place_things() {
    static const char* const things[] = {"Insert safety eyes", "Insert safety eyes", "Place markers",
                                         "Sew beads"};
    for (int i = dice_.below(3); i > 0 && round_ - deep_from_ >= 3; --i) {
      const int lower = dice_.between(deep_from_ + 1, round_ - 1);
      const int held = counts_.at(counts_.size() - 1 - static_cast<std::size_t>(round_ - lower));
      if (held < 5) continue;
      text_ += std::string(dice_.any(things)) + " between rounds " + number(lower) + " and " +
               number(lower + 1) + ", " + number(dice_.between(1, std::min(6, held - 2))) +
               " stitches apart.\n";
    }
  }

  void end() {
    static const char* const ends[] = {"Fasten off.\n\n", "Fasten off.\n\n",
                                       "Fasten off, gather the last stitches and close.\n\n"};
    place_things();
    text_ += dice_.any(ends);
    flat_ = false;
  }

  // Forms.

  void ball(const std::string& name) {
    start_at_centre(name);
    grow(dice_.below(5));
    any_rounds(dice_.between(2, 8));
    end();
  }

  void folded(const std::string& name) {
    start_at_centre(name);
    grow(dice_.between(1, 4));
    for (int i = dice_.between(1, 3); i > 0; --i) {
      const int from = round_ + 1;
      round_ += dice_.between(3, 9);
      counts_.insert(counts_.end(), static_cast<std::size_t>(round_ - from + 1), open_);
      text_ += "Rnds " + number(from) + "-" + number(round_) + ": " + (dice_.one_in(4) ? "dc" : "sc") +
               " around (" + number(open_) + ")\n";
      any_rounds(1);
    }
    end();
  }

  void tube(const std::string& name) {
    head(name);
    open_ = dice_.between(8, 40);
    text_ += "Ch " + number(open_) + ", join with sl st to form a ring.\n";
    even(1);
    any_rounds(dice_.between(4, 12));
    end();
  }

  void oval(const std::string& name) {
    head(name);
    const int chains = dice_.between(3, 11), side = chains - 2;
    const char* const kind = dice_.one_in(4) ? "dc" : dice_.one_in(4) ? "hdc" : "sc";
    const int skip = kind[0] == 's'   ? 1
                     : kind[0] == 'h' ? 2
                                      : 3,
              far = dice_.between(2, 5), near = dice_.between(1, 4);
    const std::string k = kind;
    line("Ch " + number(chains + skip) + ", " + k + " in " +
             (skip == 1   ? "2nd"
              : skip == 2 ? "3rd"
                          : "4th") +
             " ch from hook, " + k + " in next " + number(side) + " ch, " + number(far) + " " + k +
             " in last ch; on other side of chain, " + k + " in next " + number(side) + " ch, " +
             number(near) + " " + k + " in last ch",
         1 + side + far + side + near);
    any_rounds(dice_.between(1, 6));
    end();
  }

  void rows(const std::string& name) {
    head(name);
    flat_ = true;
    const int width = dice_.between(2, 18);
    first_ = width;
    line("Ch " + number(width + 1) + ", sc in 2nd ch from hook and in each ch across, turn", width);
    for (int i = dice_.between(1, 8); i > 0; --i) row();
    if (dice_.one_in(2)) edging();
    flat_ = false;
    text_ += "Fasten off.\n\n";
  }

  void row() {
    static const char* const kinds[] = {"sc", "sc", "hdc", "dc", "tr"};
    static const int chains[] = {1, 1, 2, 3, 4};
    const int which = dice_.below(5);
    Mood mood = mood_by_chance(dice_, open_, 2);
    mood.kind = kinds[which], mood.deep = 0, mood.chains = spaces_ == 0 && dice_.one_in(4);
    if (spaces_ > 0) {
      line("Ch 1, sc in each st and ch-1 sp across, turn", open_ + spaces_);
      spaces_ = 0;
      return;
    }
    const bool counts = which > 2 && dice_.one_in(2) && open_ > 2;
    const Work work = work_by_chance(dice_, mood, open_ - (counts ? 1 : 0));
    if (work.made == 0) return;
    spaces_ = work.spaces;
    line("Ch " + number(chains[which]) +
             (counts ? " (counts as " + std::string(kinds[which]) + "), " : " (does not count), ") +
             work.text + ", turn",
         work.made + (counts ? 1 : 0));
  }

  void edging() {
    const int ends = round_, top = open_ + spaces_;
    flat_ = dice_.one_in(4);
    if (flat_) return line("Ch 1, do not turn, sc in each row end", ends);
    const int places = 2 * ends + first_ + top;
    const int around =
        std::max(6, dice_.one_in(2) ? places + 4 * dice_.between(0, 2) : places + dice_.between(-3, 9));
    static const char* const kinds[] = {"sc", "sc", "sc", "hdc", "dc"};
    line(std::string(dice_.any(kinds)) + " evenly around, join with sl st to first st", around);
    open_ = around, spaces_ = 0;
    for (int i = dice_.below(3); i > 0; --i)
      line("Ch 1, " + std::string(dice_.any(kinds)) + " in each st around, join with sl st to first st",
           open_);
  }

  void frill(const std::string& name) {
    start_at_centre(name);
    grow(dice_.between(1, 4));
    const int kept = round_, loops = open_;
    line("BLO: sc around", open_);
    deep_from_ = round_;
    any_rounds(dice_.between(0, 4));
    end();
    if (dice_.one_in(3))
      text_ += "Hold the " + name + " with its start " + (dice_.one_in(2) ? "up" : "down") + ".\n";
    head("FRILL OF " + name);
    const bool doubled = dice_.one_in(2);
    const std::string kind = dice_.one_in(2) ? "dc" : "sc";
    line("working in the free front loops of Rnd " + number(kept) + " of the " + name + ", " +
             (doubled ? "2 " + kind + " in each st around" : kind + " around"),
         doubled ? 2 * loops : loops);
    any_rounds(dice_.between(0, 3));
    end();
  }

  /// Rows begun in free loops, along the last round, along a last row or the other side of a chain.
  void flaps(const std::string& name) {
    if (dice_.one_in(3)) return fronds(name);
    start_at_centre(name);
    grow(dice_.between(2, 4));
    const int kept = round_, loops = open_;
    line("BLO: sc around", open_);
    deep_from_ = round_;
    even(dice_.between(1, 3));
    text_ += "Fasten off.\n\n";
    const int wide = dice_.between(2, std::min(loops, 12)), begun = dice_.between(1, loops);
    head("FLAP");
    if (dice_.one_in(3)) text_ += "Hold the " + name + " with its start up. ";
    const bool last = dice_.one_in(3);
    text_ += last ? "Join yarn in stitch " + number(begun) + " of the last round of the " + name + ".\n"
                  : "Join yarn in the " + number(begun) + "th free front loop of Rnd " + number(kept) +
                        " of the " + name + ".\n";
    flap(wide, last ? " sts" : " free loops");
  }

  void fronds(const std::string& name) {
    head(name);
    flat_ = true;
    const int wide = dice_.between(3, 14);
    line("Ch " + number(wide + 1) + ", sc in 2nd ch from hook and in each ch across, turn", wide);
    for (int i = dice_.below(3); i > 0; --i) line("Ch 1, sc in each st across, turn", wide);
    text_ += "Fasten off.\n\n";
    head("FROND");
    const bool chain = dice_.one_in(2);
    text_ += chain ? "Join yarn in the other side of the starting chain.\n"
                   : "Join yarn in the last row of the " + name + ".\n";
    flap(wide, chain ? " ch" : " sts");
  }

  /// A few rows on so many places.
  void flap(int wide, const std::string& places) {
    static const char* const kinds[] = {"sc", "sc", "hdc", "dc"};
    flat_ = true;
    line("Ch 1, " + std::string(dice_.any(kinds)) + " in next " + number(wide) + places + ", turn", wide);
    for (int i = dice_.between(0, 3); i > 0; --i) row();
    flat_ = false;
    text_ += "Fasten off.\n\n";
  }

  void legs(const std::string& name) {
    int around = 0;
    for (const char* leg : {"LEG 1", "LEG 2"}) {
      if (around == 0)
        start_at_centre(leg);
      else
        head(leg), line(number(around / 2) + " sc in MR", around / 2), line("inc around", around);
      if (around == 0) line("inc around", 2 * open_), around = open_;
      even(dice_.between(1, 3));
      text_ += leg[4] == '1' ? "Fasten off.\n\n" : "Do not fasten off.\n\n";
    }
    const int before = round_, chains = dice_.between(2, 5);
    head(name);
    round_ = before, deep_from_ = before + 1;
    line("Ch " + number(chains) + ", sc in next " + number(around) + " sts of leg 1, sc in next " +
             number(chains) + " ch, sc in next " + number(around) + " sts of leg 2, " + number(chains) +
             " sc in other side of ch",
         2 * around + 2 * chains);
    any_rounds(dice_.between(2, 6));
    end();
  }

  void joined(const std::string& name) {
    head(name);
    const int which = dice_.below(4);
    const int first = dice_.between(6, 14);
    text_ += "Rnd 1: " + start_of(which) + number(first - counted(which)) + " " + joined_kinds[which] +
             " in MR, " + join_of(which) + " (" + number(first) + ")\n";
    round_ = 1, open_ = first, counts_ = {first};
    for (int i = dice_.between(1, 6); i > 0; --i) joined_round(dice_.below(4));
    end();
  }

  /// A small part of its own, made twice, open at its end; how many stitches it ends with.
  int small_part(const std::string& name, int most) {
    text_ += name + " (make 2)\n";
    round_ = 0, spaces_ = 0;
    const int many = dice_.between(3, std::max(3, most / 2));
    line(number(many) + " sc in MR", many);
    if (2 * many <= most && dice_.one_in(2)) line("inc x " + number(many), 2 * many);
    even(dice_.between(1, 3));
    text_ += "Fasten off.\n\n";
    return open_;
  }

  /// Ears are joined without sewing, in one round or in two.
  void eared(const std::string& name) {
    const int ear = small_part("EAR", 14);
    start_at_centre(name);
    grow(dice_.between(2, 4));
    while (open_ < 2 * ear + 4) line("inc around", 2 * open_);
    if (dice_.one_in(2)) any_rounds(dice_.between(1, 3));
    if (open_ < 2 * ear + 4) return end();
    const int flat = (ear + 1) / 2, rest = open_ - 2 * flat;
    const int before = dice_.between(0, rest / 2), between = dice_.between(1, rest - before);
    const std::string through = number(flat) + " sc through ear and " + name;
    std::string work = before > 0 ? "sc " + number(before) + ", " : "";
    work += through + ", sc " + number(between) + ", " + through;
    if (rest > before + between) work += ", sc " + number(rest - before - between);
    line(work, open_);
    deep_from_ = round_ + 1;
    any_rounds(dice_.between(0, 5));
    end();
  }

  /// Parts are sewn on over rounds that the text names.
  void sewn(const std::string& name) {
    small_part("EAR", 12);
    start_at_centre(name);
    grow(dice_.between(2, 4));
    even(dice_.between(4, 9));
    any_rounds(dice_.between(0, 3));
    const int last = round_ - 1, first = dice_.between(2, std::max(2, last - 3));
    if (first + 2 < last)
      text_ += "Sew the ears to the " + name + " between rounds " + number(first) + " and " +
               number(dice_.between(first + 2, std::min(last, first + 5))) +
               (dice_.one_in(2) ? ", " + number(dice_.between(2, 8)) + " sts apart" : "") + ".\n";
    end();
  }

  void lace(const std::string& name) {
    head(name);
    text_ += layout::test::LaceByChance<Dice>(dice_).rounds() + (dice_.one_in(2) ? "Fasten off.\n\n" : "\n");
  }

  void fans(const std::string& name) {
    head(name);
    text_ += spread_rows_by_chance(dice_) + (dice_.one_in(2) ? "Fasten off.\n\n" : "\n");
  }

  static int counted(int which) { return which == 0 ? 0 : 1; }
  static std::string start_of(int which) {
    static const char* const starts[] = {"Ch 1, ", "Ch 2 (counts as hdc), ", "Ch 3 (counts as dc), ",
                                         "Ch 4 (counts as tr), "};
    return starts[which];
  }
  static std::string join_of(int which) {
    static const char* const joins[] = {"join with sl st to first sc", "join with sl st to top of ch-2",
                                        "join with sl st to top of ch-3", "join with sl st to top of ch-4"};
    return joins[which];
  }

  void joined_round(int which) {
    if (spaces_ > 0) {
      line("Ch 1, sc in each st and ch-1 sp around, " + join_of(0), open_ + spaces_);
      spaces_ = 0;
      return;
    }
    Mood mood = mood_by_chance(dice_, open_, 2);
    mood.kind = joined_kinds[which], mood.deep = 0, mood.chains = dice_.one_in(3);
    const Work work = work_by_chance(dice_, mood, open_ - counted(which));
    if (work.made == 0) return;
    spaces_ = work.spaces;
    line(start_of(which) + work.text + ", " + join_of(which), work.made + counted(which));
  }

  Dice dice_;
  std::string text_;
  std::vector<int> counts_; ///< of the part's rounds
  bool yarns_ = false, flat_ = false;
  int open_ = 0, round_ = 0, spaces_ = 0, deep_from_ = 1, first_ = 0;
};

} // namespace

const char* name(Shape shape) {
  static const char* const names[] = {"ball",   "tube", "oval",  "rows", "frill", "legs", "folded",
                                      "joined", "lace", "eared", "sewn", "flaps", "fans"};
  return names[static_cast<std::size_t>(shape)];
}

std::string pattern_by_chance(Shape shape, std::uint64_t seed) {
  return Writing(seed * 8 + static_cast<std::uint64_t>(shape)).pattern(shape);
}

} // namespace whorl::pictures
