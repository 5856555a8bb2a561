#include "drawing/caption.hpp"

#include "drawing/sheets.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using namespace whorl::drawing;
using sheets::Made;
using sheets::made;

namespace {

/// A placement of two figures of one part, for captions only.
Made two_figures(layout::Figure first, layout::Figure second) {
  Made it;
  it.tree = sample::ball({6, 12, 18, 18, 18, 18});
  fabric::Part part;
  part.name = "Ball";
  part.rounds = 6;
  it.fabric.parts = {part};
  for (int number = 1; number <= 6; ++number) {
    fabric::Round round;
    round.number = number;
    round.counted = 18;
    it.fabric.rounds.push_back(round);
  }
  first.first_round = 0, first.last_round = 2;
  second.first_round = 3, second.last_round = 5;
  it.placement.figures = {first, second};
  return it;
}

layout::Figure figure(layout::Form form, layout::Centre centre = layout::Centre::nothing) {
  layout::Figure figure;
  figure.form = form;
  figure.centre = centre;
  return figure;
}

using layout::Centre;
using layout::Form;
using Lines = std::vector<std::string>;

} // namespace

TEST_CASE("A disc outward is seen from the start") {
  const Made it =
      two_figures(figure(Form::disc, Centre::magic_ring), figure(Form::disc_inward, Centre::gathered));
  CHECK(caption(it.copy(), 0) == Lines{"rounds 1–3, seen from the start"});
}

TEST_CASE("A disc inward that closes is seen from the closing end") {
  const Made it =
      two_figures(figure(Form::disc, Centre::magic_ring), figure(Form::disc_inward, Centre::gathered));
  CHECK(caption(it.copy(), 1) == Lines{"rounds 4–6, seen from the closing end"});
}

TEST_CASE("A disc inward that ends in a neck says so") {
  const Made it = two_figures(figure(Form::disc_inward, Centre::open), figure(Form::disc, Centre::open));
  CHECK(caption(it.copy(), 0) == Lines{"rounds 1–3, to the neck, seen from the other end"});
}

TEST_CASE("A disc inward that stays open is seen from the other end") {
  const Made it =
      two_figures(figure(Form::disc, Centre::magic_ring), figure(Form::disc_inward, Centre::open));
  CHECK(caption(it.copy(), 1) == Lines{"rounds 4–6, seen from the other end"});
}

TEST_CASE("A disc outward from a neck says so") {
  const Made it = two_figures(figure(Form::disc_inward, Centre::open), figure(Form::disc, Centre::open));
  CHECK(caption(it.copy(), 1) == Lines{"rounds 4–6, from the neck on, seen from the start"});
}

TEST_CASE("A disc whose first round goes along the ends of rows says so") {
  Made it = two_figures(figure(Form::rows), figure(Form::disc, Centre::open));
  it.fabric.stitches.resize(1);
  it.fabric.legs.push_back(fabric::Leg{fabric::Place{2, fabric::On::row_end, stitch::back}});
  it.fabric.rounds[3].count = 1;
  CHECK(caption(it.copy(), 1) == Lines{"rounds 4–6, around the edge of the piece, right side"});
}

TEST_CASE("A strip says which way its rounds run") {
  layout::Figure left = figure(Form::strip);
  left.clockwise = true;
  const Made it = two_figures(figure(Form::strip), left);
  CHECK(caption(it.copy(), 0) == Lines{"rounds 1–3, seen from outside; each round runs from right to left"});
  CHECK(caption(it.copy(), 1) == Lines{"rounds 4–6, seen from outside; each round runs from left to right"});
}

TEST_CASE("A disc that is worked to and fro says so") {
  layout::Figure disc = figure(Form::disc, Centre::magic_ring);
  disc.rings.resize(2);
  disc.rings[1].against = true;
  const Made it = two_figures(disc, figure(Form::disc));
  CHECK(caption(it.copy(), 0).at(1) == "turned after each round; each begins at its number");
}

TEST_CASE("A figure of one round names that round") {
  Made it = two_figures(figure(Form::disc), figure(Form::disc));
  it.placement.figures[0].last_round = 0;
  CHECK(caption(it.copy(), 0) == Lines{"round 1, seen from the start"});
}

TEST_CASE("Rows are called rows") {
  Made it = two_figures(figure(Form::rows), figure(Form::disc));
  for (fabric::Round& round : it.fabric.rounds) round.kind = pattern::RoundKind::row;
  CHECK(caption(it.copy(), 0) == Lines{"rows 1–3, right side; each row begins at its number"});
}

TEST_CASE("A round that its part has twice carries a letter") {
  Made it = two_figures(figure(Form::disc), figure(Form::disc));
  it.fabric.rounds[3].number = 3;
  it.fabric.rounds[3].again = 1;
  CHECK(round_number(it.fabric, 3) == "3b");
}

TEST_CASE("Eyes are said with their rounds and stitches under the figure that has the round") {
  Made it = two_figures(figure(Form::disc), figure(Form::disc));
  fabric::Placing eyes;
  eyes.what = pattern::What::eye;
  eyes.round = 4;
  eyes.after = {7, 11};
  it.fabric.placings = {eyes};
  CHECK(caption(it.copy(), 0).size() == 1);
  CHECK(caption(it.copy(), 1) ==
        Lines{"rounds 4–6, seen from the start", "eyes in round 5, after stitches 7 and 11 (4 between)"});
}

TEST_CASE("Eyes between two rounds are said so") {
  Made it = two_figures(figure(Form::disc), figure(Form::disc));
  pattern::Placing text;
  text.from = 5;
  text.to = 6;
  it.tree.placings = {text};
  fabric::Placing eyes;
  eyes.what = pattern::What::eye;
  eyes.round = 4;
  eyes.after = {7, 11};
  it.fabric.placings = {eyes};
  CHECK(caption(it.copy(), 1)[1] == "eyes between rounds 5 and 6, after stitches 7 and 11 (4 between)");
}

TEST_CASE("A folded ring is named with all its rounds") {
  const Made it = two_figures(figure(Form::disc), figure(Form::disc));
  layout::Ring ring;
  ring.round = 2;
  ring.last_round = 5;
  CHECK(ring_title(it.copy(), ring) == "Rounds 3 to 6: 18 stitches each");
}

TEST_CASE("A repeated round is named as one") {
  const Made it = two_figures(figure(Form::disc), figure(Form::disc));
  layout::Ring ring;
  ring.round = ring.last_round = 2;
  ring.echo = true;
  CHECK(ring_title(it.copy(), ring) == "Round 3 again, as the figure before shows it");
}

TEST_CASE("Markers and beads are said as eyes are") {
  Made it = two_figures(figure(Form::disc), figure(Form::disc));
  fabric::Placing posts;
  posts.round = 4;
  posts.after = {7, 11};
  posts.what = pattern::What::marker;
  it.fabric.placings = {posts};
  CHECK(caption(it.copy(), 1)[1] == "markers in round 5, after stitches 7 and 11 (4 between)");
  it.fabric.placings.front().what = pattern::What::bead;
  CHECK(caption(it.copy(), 1)[1] == "beads in round 5, after stitches 7 and 11 (4 between)");
}

TEST_CASE("Embroidery is said by the holes that it begins and ends in") {
  Made it = two_figures(figure(Form::disc), figure(Form::disc));
  fabric::Placing thread;
  thread.round = 4;
  thread.after = {7, 8, 9, 10};
  thread.what = pattern::What::embroider;
  it.fabric.placings = {thread};
  CHECK(caption(it.copy(), 1)[1] == "embroidery in round 5, after stitches 7 to 10 (over 3)");
  it.fabric.placings.front().after = {7, 10};
  CHECK(caption(it.copy(), 1)[1] == "embroidery in round 5, after stitches 7 and 10 (3 between)");
}

namespace {

/// A figure in the loops of a round of the same part.
layout::Figure in_loops(bool against) {
  layout::Figure it = figure(Form::disc, Centre::open);
  layout::Ring owner;
  owner.echo = owner.owner = true;
  owner.against = against;
  it.rings = {owner};
  return it;
}

/// What is said of the hold.
std::string hold_of(bool against) {
  Made it = two_figures(figure(Form::disc), in_loops(against));
  it.fabric.stitches.resize(1);
  return caption(it.copy(), 1)[1];
}

} // namespace

TEST_CASE("A part in free loops says how to hold the piece that has them") {
  CHECK(hold_of(false) == "hold Ball with its start down");
  CHECK(hold_of(true) == "hold Ball with its start up");
}

TEST_CASE("A round along the edges of other parts names them") {
  Made it = two_figures(figure(Form::disc, Centre::open), figure(Form::disc));
  fabric::Part leg;
  leg.name = "Leg";
  it.fabric.parts.push_back(leg);
  fabric::Round edge;
  edge.part = 1;
  it.fabric.rounds.push_back(edge);
  it.fabric.stitches.resize(2);
  it.fabric.stitches[0].round = 6;
  it.fabric.stitches[1].first_leg = 0;
  it.fabric.stitches[0].first_leg = 0;
  it.fabric.legs = {{{0, fabric::On::top, stitch::both}}};
  it.fabric.rounds[0].first_stitch = 1;
  it.fabric.rounds[0].count = 1;
  it.fabric.rounds[0].joined_open = 30;
  CHECK(caption(it.copy(), 0) == Lines{"rounds 1–3, on the edges of Leg, seen from the start"});
}
