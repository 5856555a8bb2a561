#pragma once

#include "fabric/fabric.hpp"
#include "layout/relax.hpp"
#include "layout/ring.hpp"

#include <optional>
#include <vector>

namespace whorl::layout {

/// Where the stitches of a round would like what is joined to them on the next ring out, and what each item
/// of that ring would like: fractions of the open arc from gutter edge to gutter edge.
struct Seats {
  fabric::StitchId first = 0;
  std::vector<double> sum;          ///< of the places given
  std::vector<std::uint32_t> given; ///< how many; 0: none
  double turned = 0;                ///< of the ring that offers them
  std::vector<std::optional<double>> wanted;
};

/// A ring strung along its circle.
struct Laid {
  Strung strung;
  std::vector<double> at; ///< arc length from the gutter's middle to each item's ray
  int doubled = 0;        ///< how often its springs were made twice as strong
  /// The gaps that came to stand at their least: a bit for when it had settled, and one for each time that it
  /// was drawn to its places since.
  std::vector<std::uint8_t> at_least;
  int drawn = 0;     ///< how often that was
  bool plain = true; ///< it is by its places, as is quickly told
  std::vector<char> now_at_least;
  Slate slate;
};

/// What a ring that is laid needs no more goes to the next one.
void hand_on(bool keeps_problem, Laid& inside, Laid& laid);

/// Lets a ring settle that is drawn to its places once more. Mostly the gaps stand at their least that did so
/// at the same angle of the ring inside when that was drawn so often.
void relax_drawn(const Laid* inside, Laid& laid);

/// The gaps between the items of a ring; nothing draws these anywhere yet.
void string_gaps(const Band& band, const Size& size, Strung& strung);

/// Strings the items of a ring, each drawn to the seats of what it is joined to inside it, and lets them
/// settle. `inside`: the ring inside it, if any; the result does not depend on it, only the time.
void lay_ring(const fabric::Fabric& fabric, const std::vector<Item>& items, const Band& band,
              const Size& size, const Seats& seats, const Turn& turn, const Laid* inside, Laid& laid);

/// How far a ring is turned: as the one inside it, and on by as much as its stitches stand off their seats
/// when they share it evenly, if they do so about alike. So the line on which rounds begin leans as it does
/// in the piece where increases lie on one another; a line held upright would press the last stitches of each
/// round together and draw the first ones apart.
double turn_of(const Band& band, const Size& size, const Seats& seats);

/// The seats that a laid ring offers: outward the tops of its stitches, inward the places its legs go into,
/// which are stitches of `outside`.
void find_seats(const fabric::Fabric& fabric, const Ring& ring, const std::vector<Item>& items,
                const Band& band, const Size& size, const std::vector<double>& at, const Turn& turn,
                const fabric::Round& outside, Seats& seats);

/// What the items of a ring want of the seats inside it: the mean of those of all that an item is joined to.
void find_wanted(const fabric::Fabric& fabric, const Ring& ring, const std::vector<Item>& items,
                 const Turn& turn, Seats& seats);

} // namespace whorl::layout
