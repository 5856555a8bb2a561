#pragma once
/// Ovals built directly: a starting chain and rounds along both its sides.

#include "balls.hpp"

namespace whorl::layout::test {

/// How a first round goes round its chain.
struct Round1 {
  std::uint32_t chains = 8;             ///< those that it is worked into
  std::uint32_t skipped = 1;            ///< at the hook
  std::uint32_t far = 3;                ///< stitches in the chain at the far end
  std::uint32_t near = 2;               ///< at last in the one nearest the hook, into which the first went
  std::vector<std::string> kinds{"sc"}; ///< of the stitches of a side, in turn
  bool joined = false;
};

/// Grows an oval round by round.
class Oblong {
public:
  explicit Oblong(const Round1& first);

  /// The next round; it is joined if the first was.
  Oblong& round(const Steps& steps);
  /// Increases at both ends, after as many plain stitches as there were rounds of them.
  Oblong& grow(std::uint8_t loops = stitch::both, const std::string& kind = "sc");
  Oblong& even(std::uint8_t loops = stitch::both, const std::string& kind = "sc");

  std::uint32_t open() const { return static_cast<std::uint32_t>(open_.size()); }

  fabric::Fabric fabric;

private:
  fabric::StitchId stitch(const std::string& kind, std::uint8_t flags);
  void leg(fabric::StitchId into, fabric::On what, std::uint8_t loops);
  void begin_round();
  void end_round(const std::vector<fabric::StitchId>& tops);

  Round1 first_;
  std::uint32_t grown_ = 0;
  std::vector<fabric::StitchId> open_;
};

/// An oval at random: 3 to 12 chains, growing rounds with increases at the ends, then even ones, loop marks
/// now and then; in spirals or joined rounds, of one height or several.
fabric::Fabric random_oval(std::uint64_t seed);

} // namespace whorl::layout::test
