#pragma once

#include <cstdint>
#include <vector>

namespace whorl::drawing {

/// A rectangle of a sheet: a thing, or two pieces beside or above one another.
struct Piece {
  enum class Kind : std::uint8_t { thing, beside, above } kind = Kind::thing;
  std::uint32_t first = 0, second = 0; ///< the two pieces; of a thing: which, and which of its forms
  double width = 0, height = 0;
  double rise = 0;         ///< from its top to the lower edge of the figures at its foot; 0: none stand there
  std::uint32_t lines = 0; ///< of figures, one above the other
};

/// Ways to set the same things, each wider and lower than the one before it; numbers of pieces.
using Front = std::vector<std::uint32_t>;

/// Pieces of pieces: all ways worth having to set things one after the other, cut by cut.
class Slicing {
public:
  /// `most`: nothing wider is looked at where there is anything narrower.
  Slicing(double gap_beside, double gap_above, double most)
      : beside_(gap_beside), above_(gap_above), most_(most) {}

  const Piece& operator[](std::uint32_t piece) const { return pieces_[piece]; }
  double gap_beside() const { return beside_; }
  double gap_above() const { return above_; }

  /// Pieces that are set from one of each of two fronts. Beside one another stand only figures that are read
  /// in their order, line by line.
  void offer_beside(const Front& first, const Front& second, std::vector<Piece>& offers) const;
  void offer_above(const Front& first, const Front& second, std::vector<Piece>& offers) const;

  /// Keeps what is lower, and worth it, than everything that is no wider.
  Front keep(std::vector<Piece> offers);

  /// The pieces of a run of cuts of one kind, in order; a piece of another kind alone.
  std::vector<std::uint32_t> chain(std::uint32_t piece, Piece::Kind kind) const;

private:
  bool are_read_in_order(std::uint32_t first, std::uint32_t second) const;
  Piece beside(std::uint32_t first, std::uint32_t second) const;
  Piece above(std::uint32_t first, std::uint32_t second) const;

  double beside_, above_, most_;
  std::vector<Piece> pieces_;
};

} // namespace whorl::drawing
