#include "reading_lines.hpp"

namespace {
const TypedLine lines[] = {
    // loops told behind the work
    {"Work sc in every stitch, in the back loop only.", 10, 10, -1},
    {"Sc in each st around, working in the front loops only. (21)", 21, 21, 21},
    {"s c in each st around, taking up back loops only. (24 s c)", 24, 24, 24},
    // old books
    {"* 1 s c in each of next 2 s c, work next 2 s c together; repeat from * around. 24 s c.", 32, 24, 24},
    {"(1 sc in next sc, take next 2 sc together) six times. (12 sc)", 18, 12, 12},
    {"5 sc in 2nd ch of ch-2. - 5 sc", 0, 5, 5},
    {"6 sc in 2nd ch from hook of a ch-2 (6 sc)", 0, 6, 6},
    {"Ch 1, work 2 together, sc in next sc, work 2 together. (3)", 5, 3, 3},
    {"work two together, five times. 5 stitches.", 10, 5, 5},
    {"1 ch, work all three together. Fasten off. 1 stitch.", 3, 1, 1},
    {"Inc. in each sc. (12)", 6, 12, 12},
    {"* 1 S.C. IN NEXT S.C., DEC. OVER NEXT 2 S.C.; REP. FROM * 5 TIMES. (12 S.C.)", 18, 12, 12},
    {"* 1 sc, inc. *, repeat between * * 6 times in all. (18)", 12, 18, 18},
    {"Ch 4, join with sl st to form ring, ch 1, 8 SC in ring. 8 SC.", 0, 8, 8},
    {"Into a loop of wool work 8 hdc, draw up the loop. (8)", 0, 8, 8},
    {"Make 2 ch., work 7 sc into 2nd ch. from hook. 7 sc.", 0, 7, 7},
    {"2 s.c. into each s.c. 14 s.c.", 7, 14, 14},
    // in sentences
    {"Chain one and crochet all three stitches together, so that only 1 stitch is left.", 3, 1, 1},
    {"Begin with one single crochet and an increase, then work two single crochet and an increase five "
     "times, and finish with one single crochet. (24)",
     18, 24, 24, true},
    {"Work five single crochet and then crochet two stitches together; do the same once more. (12)", 14, 12,
     12},
    {"In each st work 2 sc. (12)", 6, 12, 12},
    {"In first st work 2 sc, in each of next 3 sts 1 sc, in last st 2 sc. (7)", 5, 7, 7},
    {"Work one sc into the first stitch and two into the next, and carry on like that to the end of the "
     "round. "
     "You should now have 21 stitches.",
     14, 21, 21},
    {"*1 sc into the next stitch, 2 sc into the one after*, five times in all. 15 stitches.", 10, 15, 15},
    {"1 ch, work 1 sc into each of the next 3 stitches, then sc2tog; four times in all. Slip stitch to the "
     "first sc. 16 stitches.",
     20, 16, 16},
    {"dec all the way around, 7 times. (7)", 14, 7, 7},
    {"(sc, bo) around (12), bo = bobble of 4 dc", 12, 12, 12},
    {"(3 sc, 1 dec) 4 times. A dec is 2 stitches together. (16 stitches)", 20, 16, 16},
    {"6 sc in KA (amigurumi ring) = 6", 0, 6, 6},
    {"24sc =24 dont forget the wings", 24, 24, 24},
    // along a chain
    {"on a chain of 5 air loops, from the second loop from the hook: 3 sc, 3 sc in the last loop, on the "
     "other "
     "side of the chain: 2 sc, inc (10)",
     0, 10, 10},
    {"ch 5, 4 sc starting in 2nd ch, then 4 sc on the other side of the chain (8)", 0, 8, 8},
    {"Ch 7, miss 1 ch, 1 sc in each ch to end. (6 sc)", 0, 6, 6},
    {"ch 6 sc in 2nd from hook and 4 more = 5", 0, 5, 5, true},
    {"Ch 5. Inc in 2nd ch from hook, 2 sc, 4 sc in last ch, turn the piece, 2 sc, inc in the ch you began "
     "in. "
     "{12}",
     0, 12, 12},
    {"Ch 4, 11 dc in 4th ch from hook, sl st in top of ch. (12 dc, counting ch)", 0, 12, 12},
    // chains that stand for a stitch, and those that do not
    {"ch 3 (first dc), turn, dc2tog, dc in next 5 sts, dc2tog, dc in top of ch 3 = 9", 11, 9, 9},
    {"Ch 2 (does not count), dc2tog 6 times, sl st to first dc2tog. (6)", 12, 6, 6},
    {"ch 2, (dc3tog) 4 times, join with sl st to top of first dc3tog (4)", 12, 4, 4},
    {"ch 3 (counts as dc), turn, miss first st, 1 dc in each of next 3 sts. (4 dc)", 4, 4, 4},
    {"ch 1 (no stitch), turn, sc across = 7", 7, 7, 7},
    {"Turn, ch 2, 2 hdc in first st, hdc in next 3 sts, 2 hdc in last st\xE2\x80\x94"
     "7 hdc.",
     5, 7, 7},
    {"Ch 1, turn, sc in first 6 sts; leave remaining 3 sts unworked\xE2\x80\x94"
     "6 sts.",
     9, 6, 6},
    {"sc in next 8 sts, skip the last 4 sts (they become the tail) [8]", 12, 8, 8},
    {"sc in next 6 ch, 2 sc in the last ch (the one your first sc is in)", 7, 8, -1},
    {"2 sc in next st (where you joined the yarn), 4 sc (6)", 5, 6, 6},
    // machine translations
    {"(4 columns without yarn over, decrease) x 2 = 10 loops", 12, 10, 10},
    {"double every 2nd st (18)", 12, 18, 18},
    {"crochet every 3rd and 4th stitch together (18)", 24, 18, 18},
    // typed in a hurry
    {"ch 6 sc in 2nd ch from hook and across 5", 0, 5, 5, true},
    {"ch 1, 1 hdc 1 inc x8, join 24", 16, 24, 24, true},
    {"ch 1, 4 sc 1 dec x4 join 20", 24, 20, 20, true},
    {"sc, inc (repeat 3x) (9)", 6, 9, 9},
    {"ch2 2dc in each slst 18", 9, 18, 18},
    {"dec all 5", 10, 5, 5},
    {"sc 1 inc 1 rep 15", 10, 15, 15, true},
    {"ch 1, dec, dec 2 sts", 4, 2, 2, true},
    // yarns
    {"(white) 3 sc, (brown) inc, 2 sc (7)", 6, 7, 7},
    {"A: (sc, inc) x 3, B: sc, inc, A: (sc, inc) x 3 (21)", 14, 21, 21},
    {"3 sc in white, 2 sc in brown (5)", 5, 5, 5},
    {"*with A sc in next 2 sts, with B sc in next st; rep from * around (18)", 18, 18, 18},
    // as translators say it
    {"Into each stitch there comes an increase. Totally 12.", 6, 12, 12},
    {"Into each stitch comes 1 sc. Totally 24.", 24, 24, 24},
    {"(2 sc, 1 increase), this is worked 6 times. Totally 24.", 18, 24, 24},
    {"just sc, no incs (24)", 24, 24, 24},
    {"ch8, sc in 2nd ch + next 5, 3sc in last ch, other side sc 5, inc in last [16]", 0, 16, 16},
    {"inc in each st, that's twenty four", 12, 24, 24},
    {"single crochet all the way around, that's thirty-six", 36, 36, 36},
    // worked the other way round
    {"crab stitch in each st around (12)", 12, 12, 12},
    {"ch 1, work crab st (sc from left to right) in each st, sl st to join (12)", 12, 12, 12},
    {"reverse sc around, join (18)", 18, 18, 18},
    {"work crab stitch (reverse sc, from left to right) in each st back along the edge (20)", 20, 20, 20},
};
} // namespace

const TypedLines word_lines{lines, static_cast<int>(sizeof lines / sizeof lines[0])};
