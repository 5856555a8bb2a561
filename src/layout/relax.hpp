#pragma once

#include <cstddef>
#include <vector>

namespace whorl::layout {

/// Items strung along an arc from 0 to `length`, both ends held fast. Gap k lies before item k, the last gap
/// behind the last item. Every gap wants to be `wanted` and is never under `least`; item i is pulled to
/// `target` by a spring of strength `pull` (the gaps' is 1).
struct Strung {
  double length = 0;
  std::vector<double> wanted, least; ///< one more than there are items
  std::vector<double> pull, target;  ///< one an item
  bool free_ends = false;            ///< nothing holds the first and last gap: a row as wide as it likes
};

/// Gives the lists of a problem that nobody needs any more to the next one.
void hand_on(Strung& done, Strung& next);

/// Empties them, with room for so many items and some more: most rounds are a little larger than the last.
void begin_anew(std::size_t items, Strung& strung);

/// Where the items stand: the exact least of sum (gap - wanted)^2 + sum pull (s - target)^2 with every gap at
/// least `least`. The least gaps must leave room to spare; where they do not, the items stand as their least
/// gaps share it. With free ends some spring must pull.
std::vector<double> relax(const Strung& strung);

/// The same, quicker where the gaps that stand at their least are nearly known: `at_least` has a mark for
/// each of them, as guessed before and as found after.
std::vector<double> relax(const Strung& strung, std::vector<char>& at_least);

/// What a problem is worked out on. One problem after another needs it only once.
struct Slate {
  struct Row {
    std::size_t first = 0; ///< of the items that it stands for
    double factor = 0, at = 0;
  };
  struct Pool {
    std::size_t first = 0; ///< of the items that it holds together
    double pull = 0, drawn = 0;
    double place() const { return drawn / pull; }
  };
  std::vector<Row> rows;
  std::vector<Pool> pools;
  std::vector<std::size_t> wrong;
};
void relax(const Strung& strung, std::vector<char>& at_least, Slate& slate, std::vector<double>& at);

/// The half multipliers of the gaps at a solution: 0 where a gap is free, positive where it is held at its
/// least. What no gap takes up is left as an error of the optimum's conditions.
struct Optimum {
  double worst_gap = 0;   ///< how far a gap is under its least
  double worst_force = 0; ///< largest unbalanced force on an item, or pull of a gap that should push
};
Optimum check_optimum(const Strung& strung, const std::vector<double>& at);

} // namespace whorl::layout
