#pragma once

#include <random>
#include <string>

namespace whorl::pictures {

/// The text of a ball or cone by chance: growing, even and shrinking rounds, increases and decreases where
/// they fall, some rounds in one loop. The same seed gives the same text.
class ChanceBall {
public:
  explicit ChanceBall(unsigned seed) : chance_(seed) {}

  std::string text() {
    std::string all = "Puffball\n\n";
    open_ = 5 + below(4);
    all += "Rnd 1: " + std::to_string(open_) + " sc in magic ring (" + std::to_string(open_) + ")\n";
    const int rounds = 4 + below(12);
    for (number_ = 2; number_ <= rounds; ++number_) all += round(number_ < rounds / 2 ? 1 : below(3) - 1);
    return all + (below(2) == 0 ? "Fasten off, gather the last stitches and close.\n" : "Fasten off.\n");
  }

private:
  int below(int limit) { return static_cast<int>(chance_() % static_cast<unsigned>(limit)); }

  /// One round that grows (1), stays (0) or shrinks (-1), typed out.
  std::string round(int change) {
    std::string work;
    int makes = 0;
    const int every = 2 + below(5);
    for (int used = 0; used < open_;) {
      const bool shaped = change != 0 && below(every) == 0 && (change > 0 || used + 2 <= open_) && makes < 60;
      work += work.empty() ? "" : ", ";
      work += !shaped ? "sc" : change > 0 ? "inc" : "dec";
      used += shaped && change < 0 ? 2 : 1;
      makes += shaped && change > 0 ? 2 : 1;
    }
    const char* loops[] = {"BLO: ", "FLO: ", "", "", "", "", "", ""};
    open_ = makes;
    return "Rnd " + std::to_string(number_) + ": " + loops[below(8)] + work + " (" + std::to_string(makes) +
           ")\n";
  }

  std::mt19937 chance_;
  int open_ = 6;
  int number_ = 1;
};

} // namespace whorl::pictures
