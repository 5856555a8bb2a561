#include "reading_lines.hpp"

namespace {
const TypedLine lines[] = {
    {"sc around (12) (counts as dc)", 12, 12, 12},
    {"1 sc in each st around. You still have 28 sts.", 28, 28, 28},
    {"*Sc in next st, pc in next st; rep from * around. [16 sts: 8 sc, 8 pc]", 16, 16, 16},
    {"(sc, inc) x 6 - that is 3 sts per repeat. Total: 18 sts.", 12, 18, 18},
    {"now we work 2 sc in every single stitch, so you get 12! (12)", 6, 12, 12},
    {"2 sc in every stitch, so you get 12!", 6, 12, 12},
    {"(1 dc in next st, 1 ch, miss 1 st) to end. Do not join. (14 dc and 14 1-ch sps)", 28, 14, 14},
    {"8 sc, 3 sc in next, 5 sc (8 + 3 + 5 = 16)", 14, 16, 16},
    {"(sl st, (hdc, dc, dtr, dc, hdc) in next sc) x 5 (5 petals, 30 sts)", 10, 30, 30},
    {"[sc in next 4 sts, picot] 5 times; join. (20 sc, 5 picots)", 20, 20, 20},
    {"(sc, dec) x 6 (12 sts left)", 18, 12, 12},
    {"dec x 6 (6 sts remain)", 12, 6, 6},
    {"sc around (12 sts all round)", 12, 12, 12},
    {"Decrease six times. Six stitches remain.", 12, 6, 6},
    {"inc, 3 sc :5", 4, 5, 5},
    {"sc in each = 12 again", 12, 12, 12},
    {"(sc, dec) x 6 /12/", 18, 12, 12},
    {"MR 6 // 6", 0, 6, 6},
    {"(sc, inc) x3 // 9 sts", 6, 9, 9},
    {"(sc, inc) x 6 ~ 18", 12, 18, 18},
    {"*sc 1, bobble in next st (bobble = 5 dc in the same st, closed together), repeat from * around (6 "
     "bobbles). Total: 12 sts",
     12, 12, 12},
    {"2 sc in each sc, sl st in first sc. 24 sc.", 12, 24, 24},
    {"Ch 1. Decrease twice. Fasten off. 2 sc.", 4, 2, 2},
    {"Ch 1, (1 sc in next sc, 2 sc in next sc) 4 times. 12 sc. Fasten off.", 8, 12, 12},
    {"work 1 sc into each stitch around, still 18 stitches.", 18, 18, 18},
    {"1 sc in the first stitch and 2 sc in the second. Do so 3 times in all. Count them: 9.", 6, 9, 9},
    {"3 sc. inc. 3 sc.", 7, 8, -1},
    {"sc in next 3, 2 sc in last st. 5 sc.", 4, 5, 5},
    {"1 ch, turn, miss first dc, 1 dc in each of next 3 dc (3)", 4, 3, 3},
    // the count of the round before leads to this one's; sizes, of which the first is worked
    {"(2 sc, inc)×4 [12→16]", 12, 16, 16},
    {"4 sc in MR [0→4]", 0, 4, 4},
    {"(sc, dec) x 5 (15 -> 10)", 15, 10, 10},
    {"(3 sc, inc) x 3 (12 sts to 15 sts)", 12, 15, 15},
    {"6 (7, 8) sc in a magic ring. 6 (7, 8) sts", 0, 6, 6},
    {"Inc in each st around. 12 (14, 16) sts", 6, 12, 12},
    {"sc in next 5 [6, 7, 8] sts, inc (7)", 6, 7, 7},
    // a remark behind the count, and chains that are among it
    {"sc around (21, and that's 6 toes)", 21, 21, 21},
    {"(sc, dec) x 6 (12 - just like a doughnut)", 18, 12, 12},
    {"Ch 1, turn, sc 3, ch 3, skip 3, sc 6. 12 sts, counting the chains.", 12, 9, 12},
    {"sc 30 in each round (30)", 30, 30, 30, true},
    {"30 sc in every round (30)", 30, 30, 30, true},
    // a last sentence of figures
    {"2 d.c. into each d.c. 16 d.c.", 8, 16, 16, true},
    {"Turn with 1 ch, dc2tog, 1 dc in each of next 2, dc2tog. 4 dc.", 6, 4, 4, true},
    {"hdc in 3, hdc2tog, hdc in 3. 7 hdc", 8, 7, 7, true},
    {"Make an adjustable ring, ch 3 (counts as first dc), 9 dc in ring; join with sl st in 3rd ch of beg "
     "ch-3—10 dc.",
     0, 10, 10},
    // prose before a colon, what is counted beside the whole
    {"Two nights he walked and nothing changed: sc around (8)", 8, 8, 8},
    {"Once there was a beetle with no hat at all, so we begin at the very tip: magic ring, 4 sc (4)", 0, 4,
     4},
    {"And wider still: (4 sc, inc) x 2 (12)", 10, 12, 12},
    {"2 sc, bo, 6 sc, bo, 2 sc (2 bobbles each side)", 12, 12, -1},
    {"sc in each st until the leg is 4.5 cm long (14)", 14, 14, 14},
    {"sc around till the tail reaches your thumb (9)", 9, 9, 9},
    {"(sc, dec) x 6 = 18 → 12", 18, 12, 12},
    {"(2 sc, dec) x 6. (18) To hide a decrease, put the hook under the front loops only, then pull through",
     24, 18, 18},
};
} // namespace

const TypedLines count_lines{lines, static_cast<int>(sizeof lines / sizeof lines[0])};
