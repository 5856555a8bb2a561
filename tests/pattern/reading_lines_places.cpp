#include "reading_lines.hpp"

namespace {
const TypedLine lines[] = {
    // loops and stitches that an earlier round left
    {"30 sc in the left over back loops of R39 (30)", 0, 30, 30},
    {"Join yarn in a free front loop of Rnd 6, sc in next 18 free loops (18)", 0, 18, 18},
    {"sc in the 8 skipped sts of Rnd 9 (8)", 0, 8, 8},
    {"Join yarn in the first of the 8 skipped sts of Rnd 3, sc in each of the 8 skipped sts (8)", 0, 8, 8},
    {"join yarn in first of the 6 missed sts of r2, 6 sc (6)", 0, 6, 6},
    // brackets round more stitches in the place of the one before
    {"5 sc, (ch 3, sc in same st), 7 sc (13)", 12, 13, 13},
    {"sc in 5 sts, (ch 3, sc in same st) paw, sc in next 7 (13)", 12, 13, 13},
    {"5 sc, (ch 3, sl st in same st), 7 sc (12)", 12, 12, 12},
    {"5 sc, inc (2 sc in same st), 6 sc (13)", 12, 13, 13},
    // legs joined
    {"ch 3, sc in the first leg, sc in the next 13 sts of the first leg, sc in each of the 3 ch, sc in the "
     "next 14 sts of the "
     "second leg, sc in the 3 ch on their other side (34)",
     0, 34, 34},
    {"ch 2, sc 12 around the first leg, sc 2 over the chain, sc 12 around the second leg, sc 2 over the back "
     "of the chain (28)",
     0, 28, 28},
    {"sc in next st of foot 1 (this is the join, no chain), sc in the other 11 sts of foot 1, sc in all 12 "
     "sts of foot 2 (24)",
     0, 24, 24},
    {"from 2nd leg ch 3, sc in 1st leg, 13 sc more around it, 3 sc along ch, 14 sc around 2nd leg, 3 sc on "
     "other side of ch (34)",
     0, 34, 34},
    {"connect the legs: 12 sc on the first leg, 12 sc on the second leg (24)", 0, 24, 24},
    {"with leg 2 on the hook ch 4 and attach to leg 1 with a sc, sc in the 14 sts left on leg 1, sc in 4 ch, "
     "sc in "
     "15 sts of leg 2, sc in 4 ch on the other side (38)",
     0, 38, 38},
    {"holding leg 2, ch 4, join with a sc to leg 1, sc in the remaining 14 sts of leg 1, 4 sc along the ch, "
     "15 sc "
     "around leg 2, 4 sc along other side of ch (38)",
     0, 38, 38},
    {"ch 4, connect to leg 1 with sc, 14 sc around leg 1, sc in 4 ch, 15 sc around leg 2, sc in other side "
     "of 4 "
     "ch (38)",
     0, 38, 38},
    {"keep leg 2 on the hook, ch 4, insert hook in leg 1 and sc, 14 sc on leg 1, 4 sc over the ch, 15 sc on "
     "leg "
     "2, 4 sc over the ch (38)",
     0, 38, 38},
    {"ch 4 and join to the first leg with a sc, sc in the rest of leg 1 (14 sts), sc in each of the 4 ch, sc "
     "around leg 2 (15 sts), sc in the 4 ch (38)",
     0, 38, 38},
    {"join leg 1 and leg 2 with ch 4, 15 sc around leg 1, 4 sc in ch, 15 sc around leg 2, 4 sc on the other "
     "side "
     "of ch (38)",
     0, 38, 38},
    // posts, spikes, layers, picots, spaces
    {"[FPdc around next st, BPdc around next st] 12 times (24 sts)", 24, 24, 24},
    {"(FPhdc, BPhdc) x 6 (12)", 12, 12, 12},
    {"dc around the post of each st around (12)", 12, 12, 12},
    {"front post dc in next 4 sts, 8 sc (12)", 12, 12, 12},
    {"fold flat, sc 4 through both layers (4)", 8, 4, 4},
    {"sc through both layers across (5)", 10, 5, 5},
    {"[sc in next 2 sts, spike st] 4 times (12 sts)", 12, 12, 12},
    {"sc in 3rd loop of each st around (12)", 12, 12, 12},
    {"[sc in next 4 sts, ch 3, sl st in 3rd ch from hook] 5 times (20)", 20, 20, 20},
    {"(4 sc, ch 3, sl st in first ch) x 5 (20)", 20, 20, 20},
    {"(sc in next 4 sts, picot) x 5 (20)", 20, 20, 20},
    {"5 dc in next st, sl st in next st (6)", 2, 6, 6},
    {"sc in next 2, hdc in next st, dc in next, tr in next, dtr in next, trtr in next (7)", 7, 7, 7},
    {"esc in each st around (12)", 12, 12, 12},
    // places told in more words
    {"sc in all 16 [16]", 16, 16, 16},
    {"2 sc in each of the first 6 stitches, then 1 sc in each of the remaining 12 stitches (24)", 18, 24, 24},
    {"7 hdc, 2 hdc in each of next 5, 6 hdc, 2 hdc in each of last 4 (31)", 22, 31, 31},
    {"Work the first two stitches together, 1 sc in each of the next 3 stitches, work the last two stitches "
     "together (5)",
     7, 5, 5},
    {"sc in next 2, work next 2 sc together (3)", 4, 3, 3},
    {"(1 sc in the first stitch and 2 sc in the second) x 3 (9)", 6, 9, 9},
    {"sc in each of the next 8, leave the other 8 unworked (8)", 16, 8, 8},
    {"make a loop and work 7 sc into it (7)", 0, 7, 7},
    {"1 dc in each dc and in each ch around, sl st to first dc (18 dc)", 18, 18, 18},
    {"ch 1, sc in each st and ch around, join (12)", 12, 12, 12},
    {"14 hdc in ring, join with sl st to top of first hdc (14 hdc)", 0, 14, 14},
    {"hdc in each st around, sl st in top of first hdc (14)", 14, 14, 14},
    {"Dec over first 2 sc, sc in each of next 3 sc, dec over last 2 sc—5 sc", 7, 5, 5},
    {"5 sc thru both sides (5)", 10, 5, 5},
    {"sc 4 through the two layers to close (4)", 8, 4, 4},
    {"4 sc through both edges (4)", 8, 4, 4},
    {"pinch closed, 6 sc through front and back (6)", 12, 6, 6},
    {"sc in each of the 12 sts of this leg (12)", 12, 12, 12},
    {"join yarn in the free front loops of round 3 of the foot, sc in next 12 (12)", 0, 12, 12},
};
} // namespace

const TypedLines place_lines{lines, static_cast<int>(sizeof lines / sizeof lines[0])};
