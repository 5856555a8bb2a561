#include "fabric/check.hpp"

#include "fabric/work.hpp"
#include "ids.hpp"
#include "sample.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using sample::Maker;
using Said = std::vector<std::string>;

namespace {

std::vector<pattern::Finding> checked(const pattern::Tree& tree) {
  return fabric::check(tree, fabric::work(tree).fabric);
}

Said said(const pattern::Tree& tree) { return ids::said(checked(tree)); }

Maker ring_of(std::uint32_t count) {
  Maker m;
  m.part("Cap");
  m.round({m.ring(), m.sc(count)}, count);
  return m;
}

void state(pattern::RoundText& round, std::uint32_t count, const char* kind) {
  round.stated.push_back(
      {count, pattern::Unit::kind, *stitch::find_kind(stitch::standard_kinds(), kind), {1, 2}});
}

} // namespace

TEST_CASE("A right pattern has no findings") { CHECK(said(sample::acorn()) == Said{}); }

TEST_CASE("A stated count that is not the counted one is an error at that count") {
  Maker m = ring_of(20);
  const pattern::RoundText& round = m.round({m.around({m.sc(3), m.inc(1)})}, 24);
  const auto findings = checked(m.tree);
  CHECK(ids::said(findings) == Said{"error count: round 2 makes 25 stitches, the pattern says 24"});
  CHECK(findings.at(0).span == round.stated.front().span);
}

TEST_CASE("A count of a kind is told in the terms of the pattern") {
  Maker m = ring_of(20);
  m.tree.language = "en-GB";
  state(m.round({m.around({m.sc(1)})}), 18, "sc");
  CHECK(said(m.tree) == Said{"error count: round 2 has 20 dc, the pattern says 18"});
}

TEST_CASE("One stitch is one stitch") {
  Maker m = ring_of(2);
  m.round({m.dec(1)}, 2);
  CHECK(said(m.tree) == Said{"error count: round 2 makes 1 stitch, the pattern says 2"});
}

TEST_CASE("A wrong count that all stitches went into has no mend") {
  Maker m = ring_of(20);
  m.round({m.repeat(5, {m.sc(3), m.inc(1)})}, 24);
  CHECK(checked(m.tree).at(0).mend.empty());
}

TEST_CASE("A round worked to the end is not blamed for the miscounted one before it") {
  Maker m = ring_of(12);
  m.round({m.repeat(5, {m.sc(1), m.inc(1)}), m.sc(2)}, 18);
  m.round({m.sc_around()}, 18);
  CHECK(said(m.tree) == Said{"error count: round 2 makes 17 stitches, the pattern says 18"});
}

TEST_CASE("A range with a wrong count is told once") {
  Maker m = ring_of(6);
  m.rounds(2, 5, {m.sc_around()}, 7);
  CHECK(said(m.tree) == Said{"error count: round 2 makes 6 stitches, the pattern says 7"});
}

TEST_CASE("A count is compared behind a round that could not be worked") {
  Maker m = ring_of(6);
  m.unread(12);
  m.round({m.around({m.sc(1), m.inc(1)})}, 17);
  CHECK(said(m.tree) == Said{"error count: round 3 makes 18 stitches, the pattern says 17"});
}

TEST_CASE("A line that was not read is not said to have a wrong count") {
  Maker m = ring_of(6);
  m.unread(99);
  CHECK(said(m.tree) == Said{});
}

TEST_CASE("A count of a kind is compared with that kind") {
  Maker m = ring_of(6);
  state(m.round({m.repeat(3, {m.work("bo", 1), m.sc(1)})}), 4, "bo");
  CHECK(said(m.tree) == Said{"error count: round 2 has 3 bo, the pattern says 4"});
}

TEST_CASE("A count of bobbles is not compared with the whole round") {
  Maker m = ring_of(6);
  state(m.round({m.repeat(3, {m.work("bo", 1), m.sc(1)})}), 3, "bo");
  CHECK(said(m.tree) == Said{});
}

TEST_CASE("A count of single crochets speaks of decreases too") {
  Maker m = ring_of(6);
  state(m.round({m.repeat(2, {m.sc(1), m.dec(1)})}), 4, "sc");
  m.round({m.sc(2), m.invdec(1)}, 3);
  CHECK(said(m.tree) == Said{});
}

TEST_CASE("A count of chain spaces is compared with the spaces") {
  Maker m = ring_of(4);
  pattern::RoundText& round = m.round({m.around({m.sc(1), m.ch(2)})}, 4);
  round.stated.push_back({3, pattern::Unit::spaces, stitch::no_kind, {1, 2}});
  CHECK(said(m.tree) == Said{"error count: round 2 has 4 chain spaces, the pattern says 3"});
}

TEST_CASE("A count of chains is compared with the chains") {
  Maker m = ring_of(4);
  pattern::RoundText& round = m.round({m.around({m.sc(1), m.ch(2)})}, 4);
  round.stated.push_back({9, pattern::Unit::chains, stitch::no_kind, {1, 2}});
  CHECK(said(m.tree) == Said{"error count: round 2 has 8 chains, the pattern says 9"});
}

TEST_CASE("Stitches that no word skipped are left over") {
  Maker m = ring_of(24);
  m.round({m.repeat(5, {m.sc(3), m.inc(1)})}, 25);
  const auto findings = checked(m.tree);
  CHECK(ids::said(findings) ==
        Said{"warning left-over: round 2 leaves 4 of the 24 stitches of round 1 unworked"});
  CHECK(findings.at(0).mend.empty());
}

TEST_CASE("A repeat number that uses up the round and meets the count is the mend") {
  Maker m = ring_of(24);
  m.round({m.repeat(5, {m.sc(3), m.inc(1)})}, 30);
  const auto findings = checked(m.tree);
  CHECK(ids::said(findings) ==
        Said{"error count: round 2 makes 25 stitches and leaves 4 of the 24 stitches of round 1 unworked, "
             "the pattern says 30"});
  CHECK(findings.at(0).mend == "repeat 6 times instead of 5");
}

TEST_CASE("A few slip stitches at the end leave nothing over") {
  Maker m = ring_of(24);
  m.round({m.slip(2)});
  CHECK(said(m.tree) == Said{});
}

TEST_CASE("A row may stop before the end") {
  Maker m;
  m.part("Leaf");
  m.round({m.ch(7), m.in_chain(1, 2), m.sc_around(), m.turn()}).kind = pattern::RoundKind::row;
  m.round({m.ch(1), m.sc(4)}).kind = pattern::RoundKind::row;
  CHECK(said(m.tree) == Said{});
}

TEST_CASE("A number that is missing is a warning") {
  Maker m = ring_of(6);
  m.rounds(4, 4, {m.sc_around()});
  CHECK(said(m.tree) == Said{"warning number: 4 stands after 1: 2 to 3 are missing"});
}

TEST_CASE("One number that is missing is named") {
  Maker m = ring_of(6);
  m.rounds(3, 3, {m.sc_around()});
  CHECK(said(m.tree) == Said{"warning number: 3 stands after 1: 2 is missing"});
}

TEST_CASE("A number that stands twice is a warning") {
  Maker m = ring_of(6);
  m.rounds(1, 1, {m.sc_around()});
  CHECK(said(m.tree) == Said{"warning number: number 1 stands twice"});
}

TEST_CASE("A number with a letter stands twice on purpose") {
  Maker m = ring_of(6);
  m.rounds(1, 1, {m.sc_around()}).label = "1b";
  CHECK(said(m.tree) == Said{});
}

TEST_CASE("Numbers that run back are a warning") {
  Maker m = ring_of(6);
  m.rounds(2, 5, {m.sc_around()});
  m.rounds(3, 3, {m.sc_around()});
  CHECK(said(m.tree) == Said{"warning number: 3 stands after 5: the numbers do not follow on"});
}

TEST_CASE("A range that runs backwards is a warning") {
  Maker m = ring_of(6);
  m.rounds(5, 2, {m.sc_around()}).from = 2;
  m.tree.rounds.back().to = 1;
  CHECK(said(m.tree) == Said{"warning number: this range runs backwards: from 2 to 1"});
}

TEST_CASE("Numbering may run on over parts or begin again") {
  Maker m = ring_of(6);
  m.part("Stalk");
  m.rounds(2, 2, {m.ring(), m.sc(6)});
  m.part("Gill");
  m.rounds(1, 1, {m.ring(), m.sc(6)});
  CHECK(said(m.tree) == Said{});
}

TEST_CASE("Eyes in a round that does not exist are an error") {
  Maker m = ring_of(6);
  m.rounds(2, 5, {m.sc_around()}, 6);
  pattern::Placing& eyes = m.place(pattern::What::eye);
  eyes.from = 5;
  eyes.to = 6;
  CHECK(said(m.tree) == Said{"error placing: there is no round 6 in Cap: its last is round 5"});
}

TEST_CASE("A note may name any round") {
  Maker m = ring_of(6);
  m.place(pattern::What::note).from = 40;
  CHECK(said(m.tree) == Said{});
}

TEST_CASE("Eyes in a round that was only counted are not said to be missing") {
  Maker m = ring_of(6);
  m.unread(12);
  m.round({m.sc_around()}, 12);
  m.place(pattern::What::eye).from = 3;
  CHECK(said(m.tree) == Said{});
}

TEST_CASE("An own stitch has to come down to one loop") {
  Maker m = ring_of(6);
  stitch::StitchKind tuft;
  tuft.name = "tuft";
  tuft.moves = "o i d p2";
  tuft.own = true;
  m.tree.kinds.push_back(tuft);
  CHECK(said(m.tree) == Said{"error hook: \"tuft\" leaves 2 loops on the hook: it has to come down to one"});
}

TEST_CASE("An own stitch cannot pull through loops that are not there") {
  Maker m = ring_of(6);
  stitch::StitchKind tuft;
  tuft.name = "tuft";
  tuft.moves = "i d p4";
  tuft.own = true;
  m.tree.kinds.push_back(tuft);
  CHECK(said(m.tree) == Said{"error hook: \"tuft\" pulls through more loops than there are on the hook"});
}

// Counts that are right in another way of counting

TEST_CASE("A count that is right with the joining slip stitch says so") {
  Maker m = ring_of(6);
  m.round({m.sc_around(), m.join()}, 7);
  CHECK(said(m.tree) ==
        Said{"error count: round 2 makes 6 stitches, the pattern says 7: that is right only if "
             "the joining slip stitch is counted"});
}

TEST_CASE("A count that is right with the starting chain says so") {
  Maker m = ring_of(6);
  m.round({m.ch(3), m.to_end(m.work("dc", 1))}, 7);
  CHECK(said(m.tree) ==
        Said{"error count: round 2 makes 6 stitches, the pattern says 7: that is right only if "
             "the starting chain is counted"});
}

TEST_CASE("A count that the starting chain or the join would meet names both") {
  Maker m = ring_of(6);
  m.round({m.ch(1), m.sc_around(), m.join()}, 7);
  CHECK(said(m.tree) ==
        Said{"error count: round 2 makes 6 stitches, the pattern says 7: that is right only if "
             "the starting chain or the joining slip stitch is counted"});
}

TEST_CASE("A count that is right without the starting chain says so") {
  Maker m = ring_of(6);
  m.round({m.counted_ch(3), m.work("dc", 5), m.join()}, 5);
  CHECK(said(m.tree) ==
        Said{"error count: round 2 makes 6 stitches, the pattern says 5: that is right only if "
             "the starting chain is not counted"});
}

TEST_CASE("A count that is right with the chains skipped at the hook says so") {
  // Ch 17; dc in 4th ch from hook and across = 15 dc (Leinhauser, S): here they are not said to count
  Maker m;
  m.part("Leaf");
  m.round({m.ch(17), m.at_chain(m.work("dc", 1), 4), m.to_end(m.work("dc", 1))}, 15).kind =
      pattern::RoundKind::row;
  CHECK(said(m.tree) ==
        Said{"error count: row 1 makes 14 stitches, the pattern says 15: that is right only if "
             "the chains skipped at the hook are counted as a stitch"});
}

TEST_CASE("A chain skipped before single crochet is not said to be a stitch") {
  Maker m;
  m.part("Leaf");
  m.round({m.ch(15), m.in_chain(1, 2), m.sc_around()}, 15).kind = pattern::RoundKind::row;
  CHECK(said(m.tree) == Said{"error count: row 1 makes 14 stitches, the pattern says 15"});
}

TEST_CASE("An oval's first round that is out by two names both sides") {
  Maker m;
  m.part("Sole");
  m.round({m.ch(7), m.in_chain(1, 2), m.sc(4), m.work("sc", 1, 3), m.sc(4), m.work("sc", 1, 2)}, 12);
  CHECK(said(m.tree) ==
        Said{"error count: round 1 makes 14 stitches, the pattern says 12: 8 on the first side of the chain "
             "and 6 on the other, where each end should be gone round once"});
}

// One slip is told once

TEST_CASE("A repeat number too high is told once and its count is not blamed") {
  Maker m = ring_of(24);
  m.round({m.repeat(7, {m.sc(3), m.inc(1)})}, 30);
  m.round({m.repeat(6, {m.sc(4), m.inc(1)})}, 36);
  const fabric::Worked worked = fabric::work(m.tree);
  CHECK(ids::said(worked.findings) ==
        Said{"error past-end: round 2 needs 28 stitches, round 1 has 24",
             "warning stopped: Cap is drawn up to round 1: round 2 could not be worked"});
  CHECK(ids::said(fabric::check(m.tree, worked.fabric)) == Said{});
}

TEST_CASE("A repeat number too low is told once for the rounds that follow as stated") {
  Maker m = ring_of(24);
  m.round({m.repeat(5, {m.sc(3), m.inc(1)})}, 30);
  m.round({m.repeat(6, {m.sc(4), m.inc(1)})}, 36);
  m.round({m.sc_around()}, 36);
  CHECK(said(m.tree) ==
        Said{"error count: round 2 makes 25 stitches and leaves 4 of the 24 stitches of round 1 "
             "unworked, the pattern says 30"});
}

TEST_CASE("A count stated short does not blame the next round") {
  Maker m = ring_of(12);
  m.round({m.repeat(6, {m.sc(1), m.inc(1)})}, 16);
  m.round({m.repeat(6, {m.sc(2), m.inc(1)})}, 24);
  CHECK(said(m.tree) == Said{"error count: round 2 makes 18 stitches, the pattern says 16"});
}

TEST_CASE("A repeat that divides what the text says of the round before is not blamed") {
  Maker m = ring_of(12);
  m.round({m.repeat(5, {m.sc(1), m.inc(1)}), m.sc(2)}, 18);
  m.round({m.around({m.sc(2), m.inc(1)})}, 24);
  const fabric::Worked worked = fabric::work(m.tree);
  CHECK(ids::said(worked.findings) == Said{});
  CHECK(ids::said(fabric::check(m.tree, worked.fabric)) ==
        Said{"error count: round 2 makes 17 stitches, the pattern says 18"});
}

TEST_CASE("A repeat that does not divide is told once") {
  Maker m = ring_of(80);
  m.round({m.around({m.sc(5), m.dec(1)})}, 70);
  const fabric::Worked worked = fabric::work(m.tree);
  CHECK(ids::said(worked.findings) ==
        Said{"error divide: round 2: the repeat takes 7 stitches a time and has 80 "
             "to go into: 3 stitches would be left over"});
  CHECK(ids::said(fabric::check(m.tree, worked.fabric)) == Said{});
}

TEST_CASE("The mend that the reader found is the one that is told") {
  Maker m = ring_of(24);
  m.round({m.repeat(5, {m.sc(3), m.inc(1)})}, 30).mend = "(3 sc, inc) x 6 (30)";
  CHECK(checked(m.tree).at(0).mend == "(3 sc, inc) x 6 (30)");
}

TEST_CASE("The mend that the reader found is told where the round asks for too much") {
  Maker m = ring_of(24);
  m.round({m.repeat(7, {m.sc(3), m.inc(1)})}, 30).mend = "(3 sc, inc) x 6 (30)";
  CHECK(fabric::work(m.tree).findings.at(0).mend == "(3 sc, inc) x 6 (30)");
}

TEST_CASE("A count copied from the line above is an error of that line alone") {
  Maker m = ring_of(6);
  m.round({m.to_end(m.inc(1))}, 12);
  m.round({m.around({m.sc(1), m.inc(1)})}, 12);
  m.round({m.around({m.sc(2), m.inc(1)})}, 24);
  CHECK(said(m.tree) == Said{"error count: round 3 makes 18 stitches, the pattern says 12"});
}

TEST_CASE("A count that is out by one repeat is told") {
  // Ten times (3 sc) is 30, the line says 33 (errors authors make: notation habits)
  Maker m = ring_of(30);
  m.round({m.repeat(10, {m.sc(3)})}, 33);
  CHECK(said(m.tree) == Said{"error count: round 2 makes 30 stitches, the pattern says 33"});
}

TEST_CASE("A staggered round whose tail was forgotten leaves stitches over") {
  Maker m = ring_of(36);
  m.round({m.sc(2), m.inc(1), m.repeat(5, {m.sc(5), m.inc(1)})}, 42);
  CHECK(said(m.tree) ==
        Said{"error count: round 2 makes 39 stitches and leaves 3 of the 36 stitches of round 1 "
             "unworked, the pattern says 42"});
}

TEST_CASE("The wrong kind in a repeat leaves stitches over") {
  // dc for dec (errors authors make: notation habits)
  Maker m = ring_of(18);
  m.round({m.repeat(6, {m.sc(1), m.work("dc", 1)})}, 12);
  CHECK(said(m.tree) == Said{"warning left-over: round 2 leaves 6 of the 18 stitches of round 1 unworked"});
}

// Loops

TEST_CASE("Loops that two parts are worked into are a warning") {
  Maker m = ring_of(3);
  m.round({m.blo({m.sc_around()})}, 3);
  m.part("Frill");
  m.round({m.free_loops(0, stitch::front), m.sc_around()}, 3);
  m.part("Skirt");
  m.round({m.free_loops(0, stitch::front), m.sc_around()}, 3);
  CHECK(said(m.tree) ==
        Said{"warning loops: round 1 of Skirt goes into front loops of round 1 of Cap that round "
             "1 of Frill is worked into already"});
}

TEST_CASE("A spike into loops that are taken is no warning") {
  Maker m = ring_of(3);
  m.round({m.sc_around()}, 3);
  m.round({m.into(m.to_end(m.sc(1)), pattern::Into::below)}, 3);
  CHECK(said(m.tree) == Said{});
}

TEST_CASE("A part grown from loops inside a closed piece is a warning") {
  Maker m = ring_of(6);
  m.round({m.flo({m.sc_around()})}, 6);
  m.gather();
  m.part("Frill");
  m.round({m.free_loops(0, stitch::back), m.sc_around()}, 6);
  CHECK(said(m.tree) ==
        Said{"warning inside: Frill grows from the back loops of round 1, which lie inside Cap, and that is "
             "closed: work the round in back loops to leave the loops outside"});
}

TEST_CASE("Loops outside a closed piece are where parts grow") {
  Maker m = ring_of(6);
  m.round({m.blo({m.sc_around()})}, 6);
  m.gather();
  m.part("Frill");
  m.round({m.free_loops(0, stitch::front), m.sc_around()}, 6);
  CHECK(said(m.tree) == Said{});
}

TEST_CASE("A brim in front loops and the body in back loops behind it are everyday practice") {
  Maker m = ring_of(6);
  m.round({m.flo({m.to_end(m.inc(1))})}, 12);
  m.round({m.free_loops(0, stitch::back), m.sc_around()}, 6);
  m.gather();
  CHECK(said(m.tree) == Said{});
}
