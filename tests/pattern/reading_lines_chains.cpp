#include "reading_lines.hpp"

namespace {
const TypedLine lines[] = {
    {"Ch 6. Sl st in 2nd ch from hook, sc, dc, sc, 3 sc in last ch. Rotate. On the other side: sc, dc, sc, "
     "sl st in "
     "last ch. (11)",
     0, 11, 11},
    // along a chain, each of its chains a place
    {"Ch 4, sc in 2nd ch from hook and in next 2 ch, turn. (3 sc)", 0, 3, 3},
    {"Ch 9, sc in 2nd ch from hook and in each ch across (8)", 0, 8, 8},
    {"ch 5, sc in 2nd ch from hook and next 3, turn 4 sts", 0, 4, 4},
    {"ch 6, sc in 2nd ch and next 4 (5)", 0, 5, 5},
    {"Chain 7, skip 1 ch, sc in the remaining 6 ch. (6)", 0, 6, 6},
    {"ch 11. Single crochet in the second chain from the hook and in each chain across. (10)", 0, 10, 10},
    {"ch 7, sc in 2nd ch from hook, sc in next ch, hdc in each of next 2 ch, dc in last 2 ch (6)", 0, 6, 6},
    {"Chain 7. Skip the first chain, then 1 sc in each of the 6 chains. Turn your work. (6 sc)", 0, 6, 6},
    {"ch 8, dc in 4th ch from hook and in each ch across (6)", 0, 6, 6},
    {"ch 8, hdc in 3rd ch from hook (skipped chs do not count) and in each ch across (6)", 0, 6, 6},
    {"ch 8, hdc in 3rd ch from hook (skipped chs count as hdc) and in each ch across (7)", 0, 7, 7},
    {"ch 4, 11 dc in 4th ch from hook (12)", 0, 12, 12},
    // starting chains that stand for a stitch, and those that do not
    {"Magic ring, ch 3 (counts as dc), 11 dc in ring; join with sl st in top of beginning ch-3. (12 dc)", 0,
     12, 12},
    {"mr, ch 3, 9 dc, sl st to top of ch 3 (10)", 0, 10, 10},
    {"MR, ch 4 (counts as dc and ch 1), (dc in ring, ch 1) 7 times, sl st to 3rd ch of ch 4. (8 dc, 8 ch-1 "
     "sps)",
     0, 8, 8},
    {"Ch 5 (counts as dc + 2 ch), *dc in next st, ch 2* around, sl st to 3rd ch of ch 5. (12 dc)", 12, 12,
     12},
    {"Ch 3 (counts as 1 dc), dc in same place, 2 dc in each remaining dc around, sl st in top of ch-3. (24 "
     "dc)",
     12, 24, 24},
    {"ch 3, dc in same st, 2 dc in next 9, sl st to top of ch 3 (20)", 10, 20, 20},
    {"ch 3, 2 dc in next, *dc, 2 dc in next* x9, sl st to top of ch 3 (30)", 20, 30, 30},
    {"Ch 4 (counts as tr), tr in same st, 2 tr in each tr around, ss in 4th of 4 ch (24 tr)", 12, 24, 24},
    {"ch 3 (does not count as a stitch), dc in same st, dc in next 11, join (12)", 12, 12, 12},
    {"Ch 1, sc in same place and in each dc around, sl st in first sc. (24 sc)", 24, 24, 24},
    {"ch 1, sc in same st as join, sc in next 29, sl st to first sc (30)", 30, 30, 30},
    {"Ch 2 (I never count this one), 10 dc in ring, sl st to first dc (10)", 0, 10, 10},
    {"Ch 2, 2 dc in each st around, sl st to first dc (20)", 10, 20, 20},
    {"ch 2, hdc in each st around, join with a sl st to first hdc made (12)", 12, 12, 12},
    {"ch 2, hdc in next 11, join to top of ch 2 (12)", 12, 12, 12, true},
    {"1 sl st, 1 ch, 12 sc (12)", 12, 12, 12, true},
    // ovals
    {"Ch 7. Sc in 2nd ch from hook and in each of next 4 ch, 3 sc in last ch; rotate to work along the other "
     "side of the "
     "chain, sc in each of next 4 ch, 2 sc in last ch (the one that holds your first sc). Do not join. [14 "
     "sts]",
     0, 14, 14},
    {"ch 6, sc in 2nd ch from hook, sc in next 3 ch, 3 sc in last ch, on the other side sc in next 3 ch, inc "
     "in last ch (12)",
     0, 12, 12},
    {"Ch 7. Start in 2nd ch from hook: 5 sc, 3 sc in last ch, rotate, 4 sc, inc in last (14)", 0, 14, 14},
    {"ch 7, sc in 2nd ch from hook, sc in next 4, 3 sc in last ch. Turn the work so that the foundation edge "
     "is uppermost "
     "and carry on: sc in next 4, inc in last ch (14)",
     0, 14, 14},
    {"ch 5, 2 sc in 2nd ch from hook, sc in next 2 ch, 4 sc in last ch, working in the free loops of the "
     "chain now: sc in "
     "next 2 ch, 2 sc in last (12)",
     0, 12, 12},
    {"ch 10, hdc in 3rd ch from hook, hdc in next 6, 5 hdc in last ch, turn upside down, hdc in next 6, 4 "
     "hdc in last (22)",
     0, 22, 22},
    {"ch 7, sc in 2nd ch from hook, 4 sc, 3 sc in last ch, 4 sc, inc in last ch (14)", 0, 14, 14},
    {"ch 6, sc in 2nd ch from hook, 3 sc, inc in last, working along the opposite side of the chain 4 sc, "
     "inc (12)",
     0, 12, 12},
    {"Ch 7; 2 sc in 2nd ch from hook, sc in each of next 4 ch, 4 sc in last ch; rotate to work along the "
     "other "
     "side of the chain: sc in each of next 4 ch, 2 sc in the same ch as the first 2 sc (16)",
     0, 16, 16},
    {"CH 6, 4 sc from 2nd CH, 3 sc in last CH, other side 3 sc, inc in the last (12)", 0, 12, 12},
    {"Ch 8. Sl st in 2nd ch from hook, hdc in next ch, sc in next 5 ch (7)", 0, 7, 7},
    {"ch 8, sc in 2nd ch from hook, 5 sc, 3 sc in last ch, we turn to the other side of the chain: 5 sc, inc "
     "(16)",
     0, 16, 16},
    {"ch 12, hdc in 3rd ch from hook (skipped ch dont count) n in every ch across (10)", 0, 10, 10},
    {"ch 12, dc in 4th ch from hook (missed 3ch = 1dc), 1 dc in each ch to end (10)", 0, 10, 10},
    {"ch 3 (= 1dc), miss the first dc, 1 dc in each of next 8 dc, 1 dc in top of turning ch (10)", 10, 10,
     10},
};
} // namespace

const TypedLines chain_lines{lines, static_cast<int>(sizeof lines / sizeof lines[0])};
