#pragma once

#include "layout/relax.hpp"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace whorl::layout {

/// Whether what stands between the ends of a line gives way where these leave no room for what is asked.
enum class Ends : std::uint8_t { hold, yield };

/// Between which strung items may stand: each for itself, and each together with the one before it.
class Bounds {
public:
  explicit Bounds(std::size_t items) : low_(items, -1e300), high_(items, 1e300), pairs_(items) {}

  /// An item stands no lower, or no higher, than this.
  void rise(std::size_t item, double low);
  void sink(std::size_t item, double high);

  /// So much an item and the one before it count where both are asked together.
  struct Weights {
    double before = 1, own = 1;
  };
  /// The places of both, each as often as it counts, come to no less, or to no more, than this.
  void rise_with_before(std::size_t item, Weights weights, double low);
  void sink_with_before(std::size_t item, Weights weights, double high);

  /// Finds between which places all can stand at once with the least gaps between them; false: they cannot.
  /// What is bound to two places at once may stand half way between, and where it yields to an end as near to
  /// what is asked as that lets it.
  bool fit(const Strung& strung, Ends ends = Ends::hold);

  /// The same where not all can: those behind others that push them stand as near to their bounds as these
  /// let them. False: they have no room at all. No item may be bound together with another.
  bool fit_most(const Strung& strung);

  /// After that: stands every item where all can, near to where it stands.
  void stand(const Strung& strung, std::vector<double>& at) const;

private:
  void yield_to_ends(const Strung& strung);
  void bind(std::size_t item, const Strung& strung);

  struct Pair {
    Weights weights;
    double low = -1e300, high = 1e300;
  };

  std::vector<double> low_, high_;
  std::vector<Pair> pairs_; ///< of each item and the one before it
};

} // namespace whorl::layout
