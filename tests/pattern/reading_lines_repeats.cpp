#include "reading_lines.hpp"

namespace {
const TypedLine lines[] = {
    {"Two in every third stitch (8)", 6, 8, 8},
    {"Two in every other stitch. (9)", 6, 9, 9},
    // every nth
    {"every 4th and 5th st together =28", 35, 28, 28},
    {"decrease every 5th and 6th - 20", 24, 20, 20},
    {"every 4th st inc =35", 28, 35, 35},
    {"every 3rd and 4th together =21", 28, 21, 21},
    {"increase in every third stitch (24)", 18, 24, 24},
    {"Single crochet every 4th and 5th stitch together (24)", 30, 24, 24},
    {"1 sc, 1 inc. Do so 3 times in all (9)", 6, 9, 9},
    {"sc in the next 3 stitches, decrease; do this twice (8)", 10, 8, 8},
    {"Now increase in each of the six stitches, so that you have 12.", 6, 12, 12},
    {"dec 1 over next 2 sc, sc in next 2 sc (3)", 4, 3, 3},
    // a repeat told ahead, in brackets, by the name of its stars, with what is left behind it
    {"6 times: 2 sc, inc (24)", 18, 24, 24},
    {"Repeat 6 times: 2 sc, inc", 18, 24, -1},
    {"repeat 2 sc, inc 6 times (24)", 18, 24, 24, true},
    {"2 sc, inc (x6) (24)", 18, 24, 24, true},
    {"2 sc, inc (6 times)", 18, 24, -1, true},
    {"(2 sc, inc), x 6 (24)", 18, 24, 24},
    {"*2 sc, inc* Repeat between the stars 6 times (24)", 18, 24, 24},
    {"*2 sc, inc* rep *-* around (24)", 18, 24, 24},
    {"*3 sc, dec; rep from * to last 4 sts, sc to end (20)", 24, 20, 20},
    {"6 * (2 sc, inc) (24)", 18, 24, 24},
    {"4xsc, 2xinc, 4xsc, 2xinc (16)", 12, 16, 16},
    {"incx6 (12)", 6, 12, 12},
    {"scx4, decx4 (8)", 12, 8, 8},
    {"sc in every other st (6)", 12, 6, 6},
    // a list without a number that goes round
    {"sc, inc all round", 6, 9, -1},
    {"sc, sc, inc around", 6, 8, -1},
    {"2 sc, inc to end", 9, 12, -1},
    {"1 sc 1 inc around", 6, 9, -1},
    {"ch 1, sc, inc around, join", 6, 9, -1},
    {"sc then inc all the way round", 6, 9, -1},
    {"4 sc, inc around (16)", 10, 16, 16, true},
    // two stars, bars, numbers alone
    {"*Inc in next st **, sc in next 2 sts; rep from * around, ending last repeat at **, sc in last 2 sts. "
     "(24 sts)",
     18, 24, 24},
    {"Sc in next 2 sts, *inc in next st **, sc in next 3 sts; rep from * around, ending last repeat at **, "
     "sc in last st (30)",
     24, 30, 30},
    {"* 2 dc in next stitch, 1 dc in each of next 4 stitches, 2 dc in each of next 2 stitches **, repeat "
     "from * to ** once (20)",
     14, 20, 20},
    {"* 1 dc in each of next 3 stitches, dec **, repeat from * to ** 3 times more (16)", 20, 16, 16},
    {"* 1 sc in next st, 2 sc in next st *. Repeat from * to * 6 more times (21)", 14, 21, 21},
    {"| 3, inc | x 3 (15)", 12, 15, 15},
    {"{ 3, dec } x 3 (12)", 15, 12, 12},
    {"(1, inc) x 6 (18)", 12, 18, 18},
    {"(miss 1, 2) 6 times (12)", 18, 12, 12},
    {"(sc, inc) 6 (18)", 12, 18, 18},
    {"*3 sc, 2dc/ch2/2dc in sp* x 4 (28)", 16, 28, 28},
    {"dec around until u have 6", 12, 6, 6},
    {"Decrease around until you have 9 sts", 18, 9, 9},
    // signs glued to a word, stitches worked off together, full stops before "tog"
    {"6×inc (12)", 6, 12, 12},
    {"4×dec = 4", 8, 4, 4},
    {"* S c in next s c, work off next 2 s c as 1 s c. Repeat from * around (12 s c)", 18, 12, 12},
    {"* 2 hdc in next st, working off 2 sts together as one st; repeat from * around (12 hdc)", 12, 12, 12},
    {"Sc. 2 tog., s.c. in next 6 s.c., sc. 2 tog. (8 sts.)", 10, 8, 8},
    {"* 1 s. c. in each of next 3 s. c., 2 s. c. in next s. c.; repeat from * twice. (15 s. c.)", 12, 15, 15},
    {"* 3 h. d. c., h. d. c. 2 tog., rep from * all round (12)", 15, 12, 12},
    {"*Sc in each of next 2 sts, puff in next st**, sc in each of next 2 sts; repeat from * to ** once, sc "
     "in "
     "each of last 4 sts. (12 sts)",
     12, 12, 12},
    {"*2 sc, inc**, 4 sc, rep from * to ** twice, sc (17)", 14, 17, 17},
    {"* Work off 2 s c as 1, s c in next s c; repeat from * around. 14 s c", 21, 14, 14},
    {"repeat *2 sc, inc* 6 times (24)", 18, 24, 24},
    {"repeat (2 sc, inc) 6 times (24)", 18, 24, 24},
    {"*3 sc, inc around", 24, 30, -1},
    {"sc(4), dec, repeat", 36, 30, -1, true},
    {"sc(4), inc(2)", 6, 8, -1, true},
    {"inc(6)", 6, 12, -1, true},
};
} // namespace

const TypedLines repeat_lines{lines, static_cast<int>(sizeof lines / sizeof lines[0])};
