#include "pattern/gathered.hpp"

#include "pattern/own_stitch.hpp"
#include "words/fold.hpp"
#include "words/lattice.hpp"

#include <algorithm>
#include <string>

namespace whorl::pattern {
namespace {

using words::Word;
using words::WordKind;

constexpr std::uint32_t most_together = 20;

/// What the words say, one after the other.
class Telling {
public:
  explicit Telling(const words::Vocabulary& vocabulary) : vocabulary_(vocabulary) {}

  void hear(const Word& word) {
    if (pulled_) return; // "… all 4 loops" are no places
    if (word.kind == WordKind::number) {
      number_ = word.number;
      return;
    }
    if (word.kind != WordKind::phrase) return;
    const words::ConceptEntry& means = vocabulary_.concepts[word.means];
    if (means.name == "unfinished") unfinished_ = true;
    if (means.name == "through" && unfinished_) pulled_ = true;
    if (means.name == "closed together" || means.name == "together") closed_ = true;
    if (family_of(means.name) != Family::none)
      closed_ = true; // "a cluster of 3 unfinished tr"
    else if (means.sort == words::ConceptClass::stitch)
      take_stitch(means.name);
    if (means.sort == words::ConceptClass::place) take_places();
  }

  std::optional<Gathered> gathered(const std::vector<stitch::StitchKind>& kinds) const {
    const auto id = stitches_ == 1 ? stitch::find_kind(kinds, stitch_) : std::nullopt;
    const std::uint32_t n = std::max(count_, places_);
    const bool agree = count_ <= 1 || places_ <= 1 || count_ == places_;
    if (!id || !(unfinished_ || closed_) || !agree || n < 2 || n > most_together) return std::nullopt;
    const stitch::StitchKind& base = kinds[*id];
    if (base.takes != 1 || base.makes != 1) return std::nullopt;
    const auto kind = places_ > 1 ? stitch::together(base, static_cast<int>(n))
                                  : stitch::cluster(base, static_cast<int>(n));
    return kind ? std::optional(Gathered{*kind, unfinished_, closed_ || pulled_}) : std::nullopt;
  }

private:
  void take_stitch(const std::string& name) {
    if (stitches_ > 0 && name == stitch_) return;
    ++stitches_;
    stitch_ = name;
    count_ = std::max(1U, number_);
    number_ = 0;
  }

  /// "over the next 3 sts", "in each of the next 3 sts".
  void take_places() {
    if (places_ == 0) places_ = number_;
    number_ = 0;
  }

  const words::Vocabulary& vocabulary_;
  std::string stitch_;
  int stitches_ = 0; ///< different ones that are named
  std::uint32_t number_ = 0, count_ = 0, places_ = 0;
  bool unfinished_ = false, closed_ = false;
  bool pulled_ = false; ///< "… and pull through all 4 loops"
};

} // namespace

std::optional<Gathered> gathered_told(std::string_view text, const words::Vocabulary& vocabulary,
                                      const std::vector<stitch::StitchKind>& kinds) {
  Telling telling(vocabulary);
  std::uint32_t end = 0;
  for (const Word& word : words::lattice(words::fold(text), vocabulary).words) {
    if (word.begin < end) continue;
    end = word.end;
    telling.hear(word);
  }
  return telling.gathered(kinds);
}

} // namespace whorl::pattern
