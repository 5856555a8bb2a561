#include "pictures/touching.hpp"
#include "whorl.hpp"

#include <catch2/catch.hpp>

#include <cstdint>
#include <string>
#include <vector>

using namespace whorl;

namespace {

/// A basket at random in which stitches of every kind stand beside one another.
class Basket {
public:
  explicit Basket(std::uint64_t seed) : state_(seed * 7919 + 17) {
    text_ = "Basket\n\nBasket\nRnd 1: MR 6 sc (6)\nRnd 2: inc x 6 (12)\nRnd 3: (sc 1, inc) x 6 (18)\n";
    text_ += "Rnd 4: (sc 2, inc) x 6 (24)\n";
    for (int round = 5; round < 12; ++round) text_ += line(round);
    text_ += "Fasten off.\n";
  }
  const std::string& text() const { return text_; }

private:
  std::uint32_t below(std::uint32_t sides) {
    state_ = state_ * 6364136223846793005ULL + 1442695040888963407ULL;
    return static_cast<std::uint32_t>(state_ >> 33U) % sides;
  }

  std::string kind() {
    static const char* const kinds[] = {"sc",   "hdc",     "dc",   "tr",   "esc",     "edc",
                                        "bo",   "cl",      "pc",   "puff", "FPdc",    "BPdc",
                                        "FPsc", "loop st", "FPtr", "sc",   "spike sc"};
    return kinds[below(sizeof kinds / sizeof kinds[0])];
  }

  /// Six times the same: some stitches, now and then more or fewer, and a picot on the last.
  std::string line(int round) {
    const int each = count_ / 6;
    const std::uint32_t way = below(5);
    std::string work = kind() + " 1, sc 1";
    int made = each;
    if (way == 0) work += ", dc inc", ++made;
    if (way == 1) work += ", 3 dc in next st", made += 2;
    if (way == 2) work += ", 5 hdc in next st", made += 4;
    if (way == 3 && each > 4) work += ", dc2tog", --made;
    if (way == 4) work += ", " + kind() + " 1";
    const int used = 3 + (way == 3 && each > 4 ? 1 : 0) - (way == 3 && each <= 4 ? 1 : 0);
    if (each > used) work += ", sc " + std::to_string(each - used);
    if (below(4) == 0) work += ", picot";
    count_ = 6 * made;
    return "Rnd " + std::to_string(round) + ": (" + work + ") x 6 (" + std::to_string(count_) + ")\n";
  }

  std::uint64_t state_;
  int count_ = 24;
  std::string text_;
};

} // namespace

TEST_CASE("nothing touches on sheets with stitches of every kind beside one another") {
  for (std::uint64_t seed = 1; seed <= 100; ++seed) {
    const Basket basket(seed);
    const Pattern pattern = read(basket.text());
    INFO("seed " << seed << '\n' << basket.text());
    REQUIRE_FALSE(pattern.has_errors());
    const Chart chart = pattern.chart();
    const auto contacts = pictures::touching(chart.scene(), nullptr);
    INFO(pictures::show(contacts));
    CHECK(contacts.empty());
  }
}
