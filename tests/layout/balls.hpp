#pragma once
/// Fabrics built directly, for the tests of this room: rounds of sc, increases and decreases.

#include "fabric/fabric.hpp"
#include "layout/extents.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace whorl::layout::test {

/// What is done in one step round the ball: stitches of a kind, `in_one` in each place.
struct Step {
  std::string kind = "sc";
  std::uint32_t in_one = 1;
  std::uint8_t loops = stitch::both;
};
using Steps = std::vector<Step>;

/// Grows a fabric round by round.
class Ball {
public:
  Ball();

  /// Begins a part in a magic ring (or as said).
  Ball& begin(const std::string& name, fabric::Start start = fabric::Start::magic_ring);
  /// The next round, step by step; each takes what its kind takes of the round before.
  Ball& round(const Steps& steps);
  /// A round of so many sc: increases and decreases spread evenly.
  Ball& to(std::uint32_t count, std::uint8_t loops = stitch::both, const std::string& kind = "sc");
  /// The same count again, so many rounds.
  Ball& even(std::uint32_t rounds);
  Ball& gather();

  fabric::Fabric fabric;

private:
  std::uint32_t tops() const;
  void work(const Step& step, std::uint32_t& place);
  void leg(std::uint32_t place, std::uint8_t loops);
};

/// A ball of these counts.
fabric::Fabric ball(const std::vector<std::uint32_t>& counts, bool gathered = false);

/// The gnome of the sheet: head, neck, body, closing.
fabric::Fabric gnome();

/// The acorn's cap: grows to 36, a round in back loops, an even one, one of thirty.
fabric::Fabric cap();

/// Extents of the symbols of these tests, after `sheet.md` section 4, and widths of a plain sans.
Extents extents_of(const fabric::Fabric& fabric);

/// A generator of numbers that is the same everywhere.
struct Dice {
  std::uint64_t state = 1;
  std::uint32_t next();
  std::uint32_t below(std::uint32_t sides) { return next() % sides; }
};

/// A ball at random: rounds of sc, inc and dec that grow, stay and shrink; loop marks now and then.
fabric::Fabric random_ball(std::uint64_t seed);

} // namespace whorl::layout::test
