#pragma once
/// Lace and ripples in rows, as they are typed.

#include <string>

namespace whorl::test {

inline const std::string shells =
    "Scarf\n\nCh 26.\nRow 1: Sc in 2nd ch from hook, *sk 2 ch, 5 dc in next ch, sk 2 ch, sc in next ch; rep "
    "from * across, turn.\nRow 2: Ch 3 (counts as dc), 2 dc in first sc, (sk 2 dc, sc in next dc, sk 2 dc, 5 "
    "dc in "
    "next sc) 3 times, sk 2 dc, sc in next dc, sk 2 dc, 3 dc in last sc, turn.\nRow 3: Ch 1, sc in first dc, "
    "*sk 2 "
    "dc, 5 dc in next sc, sk 2 dc, sc in next dc; rep from * across.\n";
inline const std::string shells_between = "Trim\n\nCh 25.\nRow 1: Sc in 2nd ch from hook and in each ch across, "
                                   "turn. (24)\nRow 2: Ch 1, sc in first 3 "
                                   "sts, (sk 2, 5 dc in next st, sk 2, sc in next st) 3 times, sc in last 3 "
                                   "sts, turn.\nRow 3: Ch 1, sc in each "
                                   "st across, turn.\nRow 4: Ch 1, sc in first 3 sts, (sk 2, 5 dc in next "
                                   "st, sk 2, sc in next st) 3 times, sc "
                                   "in last 3 sts.\n";
inline const std::string vees =
    "Stole\n\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20)\nRow 2: Ch 3 (counts "
    "as "
    "dc), sk 1, (dc, ch 1, dc) in next st, (sk 2, (dc, ch 1, dc) in next st) 5 times, sk 1, dc in last st, "
    "turn.\nRow 3: Ch 3 (counts as dc), (dc, ch 1, dc) in each ch-1 sp across, dc in top of ch-3, turn.\nRow "
    "4: Ch "
    "3 (counts as dc), (dc, ch 1, dc) in each ch-1 sp across, dc in top of ch-3.\n";
inline const std::string mesh = "Panel\n\nCh 22.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. "
                         "(21)\nRow 2: Ch 3 (counts as "
                         "dc), *ch 1, sk 1, dc in next st; rep from * across, turn.\nRow 3: Ch 3 (counts as "
                         "dc), *ch 1, sk next ch-1 "
                         "sp, dc in next dc; rep from * across, turn.\nRow 4: Ch 3 (counts as dc), *ch 1, sk "
                         "next ch-1 sp, dc in next "
                         "dc; rep from * across.\n";
inline const std::string strap = "Bag\n\nCh 31.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. "
                          "(30)\nRow 2: Ch 1, sc in next 9 "
                          "sts, ch 12, sk 12, sc in next 9 sts, turn.\nRow 3: Ch 1, sc in next 9 sts, 12 sc "
                          "in ch-12 sp, sc in next 9 "
                          "sts. (30)\n";
inline const std::string net = "Net\n\nCh 22.\nRow 1: Sc in 2nd ch from hook, *ch 5, sk 3, sc in next; rep from * "
                        "across, turn.\nRow 2: Ch 5, "
                        "sc in first ch-5 sp, *ch 5, sc in next ch-5 sp; rep from * across, ch 2, dc in last "
                        "sc, turn.\nRow 3: Ch 1, sc "
                        "in first dc, *ch 5, sc in next ch-5 sp; rep from * across.\n";
inline const std::string tight_net =
    "Net\n\nCh 20.\nRow 1: Sc in 2nd ch from hook, *ch 5, sk 2, sc in next; rep from * across.\n";
inline const std::string picots =
    "Edge\n\nCh 16.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (15)\nRow 2: Ch 1, sc in "
    "first st, "
    "*picot, sc in next 2 sts; rep from * across, turn. (15)\nRow 3: Ch 1, sc in each st across. (15)\n";
inline const std::string ripple = "Mat\n\nCh 32.\nRow 1: 2 sc in 2nd ch from hook, sc in next 3 ch, sc3tog, sc in "
                           "next 3 ch, *3 sc in next ch, "
                           "sc in next 3 ch, sc3tog, sc in next 3 ch; rep from * to last ch, 2 sc in last "
                           "ch, turn. (31)\nRows 2-4: Ch 1, "
                           "2 sc in first st, sc in next 3 sts, sc3tog, sc in next 3 sts, *3 sc in next st, "
                           "sc in next 3 sts, sc3tog, sc "
                           "in next 3 sts; rep from * to last st, 2 sc in last st, turn. (31)\n";
inline const std::string tall_ripple = "Rug\n\nWith moss (A), ch 34.\nRow 1: Dc in 4th ch from hook, dc in next 3 "
                                "ch, dc3tog, dc in next 3 ch, *3 dc "
                                "in next ch, dc in next 3 ch, dc3tog, dc in next 3 ch; rep from * to last "
                                "ch, 2 dc in last ch, turn.\nRow 2: "
                                "With fern (B), ch 3, dc in first st, dc in next 3 sts, dc3tog, dc in next 3 "
                                "sts, *3 dc in next st, dc in next 3 "
                                "sts, dc3tog, dc in next 3 sts; rep from * to last st, 2 dc in last st.\n";
inline const std::string half_circle =
    "Fan\n\nMagic ring.\nRow 1: Ch 3 (counts as dc), 7 dc in ring, turn. (8)\nRow 2: Ch 3 (counts as dc), dc in same "
    "st, 2 dc in each st across, turn. (16)\nRow 3: Ch 3 (counts as dc), 2 dc in next st, *dc in next st, 2 dc in next "
    "st; rep from * across. (24)\n";

inline const std::string lace_rows[] = {shells, shells_between, vees,   mesh,       strap, tight_net,
                           net,    picots,         ripple, tall_ripple, half_circle};

} // namespace whorl::test
