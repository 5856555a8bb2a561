#include "writing/own_stitch_words.hpp"

namespace whorl::writing {
namespace {

using stitch::StitchKind;
using Words = std::optional<std::string>;

constexpr int most = 20; ///< stitches or chains in one

bool is_made_so(const StitchKind& kind, const std::optional<StitchKind>& other) {
  return other && kind.moves == other->moves && kind.takes == other->takes && kind.makes == other->makes;
}

/// Made of `n` of a standard stitch, or of one and `n` chains.
Words made_of(const StitchKind& kind, const StitchKind& base, stitch::KindId id, int n,
              const pattern::Tree& tree, const Tongue& tongue) {
  const std::string number = std::to_string(n);
  const auto called = [&](std::uint64_t count) { return tongue.stitch(tree, id, count).value_or(""); };
  if (n > 1 && is_made_so(kind, stitch::cluster(base, n))) {
    const Words place = tongue.row("in-same", {number, called(static_cast<std::uint64_t>(n)), {}, {}}),
                closed = tongue.word("closed together");
    return place && closed ? Words{*place + std::string(tongue.comma()) + *closed} : std::nullopt;
  }
  if (n > 1 && is_made_so(kind, stitch::together(base, n)))
    return tongue.row("together", {number, called(static_cast<std::uint64_t>(n)), {}, {}});
  if (is_made_so(kind, stitch::with_chains(base, n)))
    return tongue.sentence("say-own-stalk", {called(1), number});
  return std::nullopt;
}

} // namespace

std::optional<std::string> own_stitch_in_words(const StitchKind& kind, const pattern::Tree& tree,
                                               const Tongue& tongue) {
  for (int n = 1; n <= most; ++n) {
    if (is_made_so(kind, stitch::picot(n))) return tongue.sentence("say-own-picot", {std::to_string(n)});
    for (const StitchKind& base : stitch::standard_kinds()) {
      const auto id = stitch::find_kind(tree.kinds, base.name);
      if (!id || base.takes != 1 || base.name == "ch") continue;
      if (Words words = made_of(kind, base, *id, n, tree, tongue)) return words;
    }
  }
  return std::nullopt;
}

} // namespace whorl::writing
