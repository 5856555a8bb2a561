#include "typed_lace.hpp"

namespace whorl::layout::test {

const std::vector<std::string>& lace() {
  static const std::vector<std::string> patterns = {
      "Forest square\n"
      "\n"
      "Terms: US\n"
      "\n"
      "Rnd 1: MR, ch 3 (counts as dc), 2 dc in ring, (ch 2, 3 dc in ring) 3 times, ch 2, join with sl st in "
      "top of ch 3. (12 dc, 4 ch-2 sp)\n"
      "Rnd 2: ch 1, [(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1] 4 times, join\n"
      "Rnd 3: ch 1, [(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, 3 dc in next ch-1 sp, ch 1] 4 times, join\n",
      "Forest square\n"
      "\n"
      "Ch 4, join with sl st to form a ring.\n"
      "Rnd 1: ch 3 (counts as dc), 2 dc in ring, (ch 2, 3 dc in ring) 3 times, ch 2, join with sl st in top "
      "of ch 3. (12 dc, 4 ch-2 sp)\n"
      "Rnd 2: sl st in next 2 dc and into ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, [ch 1, (3 dc, ch 2, "
      "3 dc) in next ch-2 sp] 3 times, ch 1, join. \n"
      "Rnd 3: sl st in next 2 dc and into ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, [ch 1, 3 dc in next "
      "ch-1 sp, ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp] 3 times, ch 1, 3 dc in next ch-1 sp, ch 1, join.\n",
      "Moss doily\n"
      "\n"
      "Rnd 1: MR, ch 3 (counts as dc), 15 dc in ring, join with sl st (16)\n"
      "Rnd 2: ch 4 (counts as dc and ch 1), (dc in next dc, ch 1) 15 times, join with sl st in 3rd ch of ch "
      "4\n"
      "Rnd 3: ch 1, (sc in next ch-1 sp, ch 3) 16 times, join with sl st in first sc\n"
      "Rnd 4: ch 1, (sc in next ch-3 sp, ch 5) 16 times, join with sl st in first sc\n"
      "Rnd 5: ch 1, (5 dc in next ch-5 sp, sc in next ch-5 sp) 8 times, join with sl st\n",
      "Clover mandala\n"
      "\n"
      "Rnd 1: MR, 8 sc in ring, join (8)\n"
      "Rnd 2: ch 1, (sc in next st, ch 2) 8 times, join (8 sc, 8 ch-2 sp)\n"
      "Rnd 3: ch 1, (3 dc in next ch-2 sp, ch 1) 8 times, join\n"
      "Rnd 4: ch 1, (sc in next ch-1 sp, ch 5) 8 times, join\n"
      "Rnd 5: ch 1, (sc, hdc, 3 dc, hdc, sc) in each ch-5 sp around, join\n",
      "Bluebell bowl\n"
      "\n"
      "Rnd 1: MR, ch 4 (counts as tr), 17 tr in ring, join (18)\n"
      "Rnd 2: ch 4 (counts as tr), tr in same st, 2 tr in each st around, join (36)\n"
      "Rnd 3: ch 1, sc in each st around, join (36)\n"
      "Rnd 4: ch 1, (sc in next st, ch 2, skip 1) 18 times, join (18 sc, 18 ch-2 sp)\n"
      "Rnd 5: ch 1, (sc in next ch-2 sp, ch 2) 18 times, join\n"
      "Rnd 6: ch 1, 2 sc in each ch-2 sp around, join (36)\n",
      "Toadstool square\n"
      "\n"
      "Rnd 1: MR, ch 3 (counts as dc), 3 dc in ring, ch 2, (4 dc in ring, ch 2) 3 times, join with sl st in "
      "top of ch 3 (16 dc, 4 ch-2 sp)\n"
      "Rnd 2: ch 1, [(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 2] 4 times, join\n"
      "Rnd 3: ch 1, [(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, 3 dc in next ch-2 sp, ch 1] 4 times, join\n"
      "Rnd 4: ch 1, sc in each st and each ch around, join\n",
      "Beetle hexagon\n"
      "\n"
      "Terms: US\n"
      "\n"
      "Rnd 1: MR, ch 3 (counts as dc), dc in ring, (ch 2, 2 dc in ring) 5 times, ch 2, join (12 dc, 6 ch-2 "
      "sp)\n"
      "Rnd 2: ch 1, [(2 dc, ch 2, 2 dc) in next ch-2 sp, ch 1] 6 times, join\n"
      "Rnd 3: ch 1, [(2 dc, ch 2, 2 dc) in next ch-2 sp, ch 1, 2 dc in next ch-1 sp, ch 1] 6 times, join\n",
      "Fern fan doily\n"
      "\n"
      "Rnd 1: MR, 12 sc in ring, join (12)\n"
      "Rnd 2: ch 1, (sc in next st, ch 3, skip 1) 6 times, join (6 sc, 6 ch-3 sp)\n"
      "Rnd 3: ch 1, (sc in next sc, 5 dc in next ch-3 sp) 6 times, join\n"
      "Rnd 4: ch 1, (sc in next sc, ch 2, skip 2, sc in next dc, ch 2, skip 2) 6 times, join\n"
      "Rnd 5: ch 3 (counts as dc), 2 dc in next ch-2 sp, (dc in next sc, 2 dc in next ch-2 sp) 11 times, "
      "join (36)\n"
      "Rnd 6: ch 1, (sc in next st, skip 2, 7 dc in next st, skip 2) 6 times, join\n",
      "Hazel wreath\n"
      "\n"
      "Rnd 1: MR, ch 3 (counts as dc), 15 dc in ring, join (16)\n"
      "Rnd 2: ch 3, (popcorn in next st, ch 2, skip 1) 8 times, join\n"
      "Rnd 3: ch 1, (4 dc in next ch-2 sp) 8 times, join (32)\n"
      "Rnd 4: ch 1, (sc in next st, picot, sc in next st) 16 times, join\n",
      "Spider web\n"
      "\n"
      "Rnd 1: MR, 6 sc in ring, join (6)\n"
      "Rnd 2: ch 1, (sc in next st, ch 4) 6 times, join\n"
      "Rnd 3: ch 1, (sc in next ch-4 sp, ch 6) 6 times, join\n"
      "Rnd 4: ch 1, [(sc, ch 6, sc) in next ch-6 sp, ch 4] 6 times, join\n"
      "Rnd 5: ch 1, (sc in next ch-6 sp, ch 6, sc in next ch-4 sp, ch 6) 6 times, join\n",
      "Acorn post mandala\n"
      "\n"
      "Rnd 1: MR, ch 3 (counts as dc), 11 dc in ring, join (12)\n"
      "Rnd 2: ch 3, (FPdc around next dc, ch 1) 12 times, join\n"
      "Rnd 3: ch 3 (counts as dc), (2 dc in next ch-1 sp, FPdc around next FPdc) 11 times, 2 dc in next ch-1 "
      "sp, join\n"
      "Rnd 4: ch 1, (dc3tog over next 3 sts, ch 5) 12 times, join\n"
      "Rnd 5: ch 1, 6 sc in each ch-5 sp around, join (72)\n",
      "Net bag for cones\n"
      "\n"
      "Rnd 1: MR, ch 3 (counts as dc), 11 dc in ring, join (12)\n"
      "Rnd 2: ch 3, dc in same st, 2 dc in each st around, join (24)\n"
      "Rnd 3: ch 1, (sc in next st, ch 3, skip 1) 12 times, join\n"
      "Rnd 4: ch 1, (sc in next ch-3 sp, ch 3) 12 times, join\n"
      "Rnd 5: ch 1, (sc in next ch-3 sp, ch 3) 12 times, join\n"
      "Rnd 6: ch 1, (sc in next ch-3 sp, ch 1) 12 times, join\n"
      "Rnd 7: ch 1, sc in each st and each ch-1 sp around, join (24)\n",
      "Fern mandala\n"
      "\n"
      "Rnd 1: MR, ch 3 (counts as dc), 11 dc in ring, join with sl st (12)\n"
      "Rnd 2: ch 3, dc in same st, 2 dc in each st around, join (24)\n"
      "Rnd 3: ch 1, (sc in next st, ch 3, skip 1) 12 times, join (12 sc, 12 ch-3 sp)\n"
      "Rnd 4: ch 3, (popcorn, ch 3) in each ch-3 sp around, join\n"
      "Rnd 5: ch 1, (sc, hdc, dc, tr, dc, hdc, sc) in each ch-3 sp around, join\n",
  };
  return patterns;
}

} // namespace whorl::layout::test
