#include "fabric/edge.hpp"

#include <catch2/catch.hpp>

using namespace whorl::fabric;

namespace {

Place top(StitchId stitch) { return {stitch, On::top, whorl::stitch::both}; }
Place space(std::uint32_t arch) { return {arch, On::space, whorl::stitch::both}; }

/// An edge on which these places are open.
Edge edge_of(std::initializer_list<Place> places) {
  Edge edge;
  for (const Place& place : places) edge.put(place);
  edge.close_round();
  return edge;
}

} // namespace

TEST_CASE("Places are taken from the front in the order in which they were put") {
  Edge edge = edge_of({top(4), top(5)});
  CHECK(edge.take_next() == top(4));
  CHECK(edge.take_next() == top(5));
  CHECK_FALSE(edge.take_next());
}

TEST_CASE("What a round makes is open only when it ends") {
  Edge edge = edge_of({top(4)});
  edge.put(top(7));
  CHECK(edge.left() == 1);
  edge.close_round();
  CHECK(edge.take_next() == top(7));
}

TEST_CASE("The stream of a spiral runs on into the round itself") {
  Edge edge = edge_of({top(4)});
  edge.take_next();
  edge.put(top(7));
  edge.put(top(8));
  CHECK(edge.take_own() == top(7));
  CHECK(edge.take_own() == top(8));
  CHECK_FALSE(edge.take_own());
}

TEST_CASE("A ring never runs out") {
  Edge edge;
  edge.open_ring(3);
  for (int i = 0; i < 100; ++i) CHECK(edge.take_next() == Place{3, On::ring, whorl::stitch::both});
}

TEST_CASE("A round that made nothing leaves the edge as it was") {
  Edge edge;
  edge.open_ring(3);
  edge.close_round();
  CHECK(edge.is_ring());
}

TEST_CASE("A chain is open from the chain at the hook to the first that was made") {
  Edge edge;
  edge.open_chain(10, 4, 2);
  CHECK(edge.left() == 3);
  CHECK(edge.take_next()->of == 12);
  CHECK(edge.take_next()->of == 11);
  CHECK(edge.take_next()->of == 10);
}

TEST_CASE("The next stitch passes chain spaces by, the next space passes stitches") {
  Edge edge = edge_of({space(0), top(4), top(5), space(1), top(6)});
  CHECK(edge.left() == 3);
  CHECK(edge.spaces_left() == 2);
  CHECK(edge.take_next() == top(4));
  CHECK(edge.take_space() == space(1));
  CHECK(edge.left() == 1);
  CHECK(edge.take_next() == top(6));
}

TEST_CASE("The last stitch is taken from the end") {
  Edge edge = edge_of({top(4), top(5), space(1)});
  CHECK(edge.take_last() == top(5));
  CHECK(edge.left() == 1);
}

TEST_CASE("Turning reads what was made backwards") {
  Edge edge = edge_of({top(1)});
  edge.put(top(4));
  edge.put(top(5));
  edge.turn();
  CHECK(edge.take_next() == top(5));
  CHECK(edge.take_next() == top(4));
}

TEST_CASE("A moved start works again at its end what was made before it") {
  Edge edge = edge_of({top(1), top(2)});
  edge.take_next();
  edge.put(top(4));
  edge.start_here();
  CHECK(edge.left() == 2);
  CHECK(edge.take_next() == top(2));
  CHECK(edge.take_next() == top(4));
}

TEST_CASE("Stitches that were only counted are places of no stitch") {
  Edge edge;
  edge.open_counted(2);
  edge.lengthen(1);
  CHECK(edge.left() == 3);
  CHECK(edge.take_next()->of == none);
}

TEST_CASE("Nothing is open before a part has begun") {
  Edge edge;
  CHECK(edge.is_empty());
  CHECK_FALSE(edge.take_next());
  CHECK_FALSE(edge.take_last());
  CHECK_FALSE(edge.take_space());
}
