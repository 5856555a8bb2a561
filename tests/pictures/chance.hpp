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

protected:
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

protected:
  std::mt19937 chance_;
  int open_ = 6;
  int number_ = 1;
};

/// The text of a toy by chance: a ball with eyes, in two yarns, with a frill in the free loops of one of its
/// rounds.
class ChanceToy : private ChanceBall {
public:
  explicit ChanceToy(unsigned seed) : ChanceBall(seed) {}

  std::string text() {
    std::string all = "Puffball\n\nYarn: white and grey\n\nBALL\nRnd 1: 6 sc in magic ring (6)\n";
    const int grows = 3 + below(4);
    for (number_ = 2; number_ <= grows; ++number_) all += grown();
    const int kept = number_ - 1;
    all += even("BLO: ") + "Change to grey.\n" + even("") + even("") + eyes() + even("");
    return all + "Fasten off.\n\n" + frill(kept);
  }

private:
  std::string line(const std::string& work) {
    return "Rnd " + std::to_string(number_) + ": " + work + " (" + std::to_string(open_) + ")\n";
  }
  std::string grown() {
    const int plain = number_ - 2;
    open_ = 6 * number_;
    if (plain == 0) return line("inc x 6");
    return line("(" + std::to_string(plain) + " sc, inc) x 6");
  }
  std::string even(const std::string& loops) {
    std::string text = line(loops + "sc around");
    ++number_;
    return text;
  }
  std::string eyes() {
    const std::string first = std::to_string(number_ - 2), second = std::to_string(number_ - 1);
    return "Insert safety eyes between rounds " + first + " and " + second + ", " +
           std::to_string(2 + below(9)) + " stitches apart.\n";
  }
  std::string frill(int kept) {
    const std::string loops =
        "working in the free front loops of Rnd " + std::to_string(kept) + " of the ball, ";
    open_ = 6 * kept, number_ = 1;
    std::string all = "FRILL\n";
    if (below(2) == 0)
      all += line(loops + "sc around");
    else
      open_ *= 2, all += line(loops + "inc x " + std::to_string(open_ / 2));
    number_ = 2;
    return all + even("") + "Fasten off.\n";
  }
};

} // namespace whorl::pictures
