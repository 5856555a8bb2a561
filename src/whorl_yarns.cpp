#include "whorl_content.hpp"

#include <algorithm>
#include <array>

namespace whorl {
namespace {

using Counts = std::array<std::size_t, 256>;

Counts stitches_of(const fabric::Fabric& fabric) {
  Counts counts{};
  for (const fabric::Stitch& stitch : fabric.stitches) ++counts[stitch.yarn];
  return counts;
}

/// Whether the name of a yarn is among the words of an id.
bool is_called(const pattern::Tree& tree, std::size_t yarn, const drawing::Wording& wording,
               std::string_view id) {
  return yarn >= 1 && yarn <= tree.yarns.size() && says(tree.yarns[yarn - 1], wording, id);
}

constexpr std::uint8_t palest = 1, usual = 2, darkest = 3, most_tones = 4;

/// A tone that no other yarn has, as long as there is one.
std::uint8_t free_tone(std::uint8_t wanted, const std::vector<std::uint8_t>& taken) {
  for (std::uint8_t i = 0; i < most_tones; ++i) {
    const auto tone = static_cast<std::uint8_t>((wanted + i - 1) % most_tones + 1);
    if (std::find(taken.begin(), taken.end(), tone) == taken.end()) return tone;
  }
  return wanted;
}

} // namespace

std::uint8_t plain_yarn(const Pattern::Content& pattern, const drawing::Wording& wording) {
  constexpr std::size_t part = 3, of = 4; ///< so many of the most at least are in a pale yarn left plain
  const Counts counts = stitches_of(pattern.fabric);
  const auto most = std::max_element(counts.begin(), counts.end());
  if (*most == 0) return 1;
  std::size_t plain = static_cast<std::size_t>(most - counts.begin());
  if (is_called(pattern.tree, plain, wording, "yarns-pale")) return static_cast<std::uint8_t>(plain);
  std::size_t of_pale = 0;
  for (std::size_t yarn = 1; yarn < counts.size(); ++yarn) {
    if (counts[yarn] <= of_pale || of * counts[yarn] < part * *most) continue;
    if (!is_called(pattern.tree, yarn, wording, "yarns-pale")) continue;
    of_pale = counts[yarn];
    plain = yarn;
  }
  return static_cast<std::uint8_t>(plain);
}

std::vector<std::uint8_t> ground_tones(const Pattern::Content& pattern, const drawing::Wording& wording) {
  const Counts counts = stitches_of(pattern.fabric);
  const std::uint8_t plain = plain_yarn(pattern, wording);
  std::vector<std::size_t> grounded;
  for (std::size_t yarn = 1; yarn < counts.size(); ++yarn)
    if (counts[yarn] > 0 && yarn != plain) grounded.push_back(yarn);
  if (grounded.empty()) return {};
  std::vector<std::uint8_t> tones(grounded.back(), 0);
  for (const std::size_t yarn : grounded) {
    std::uint8_t wanted = usual;
    if (grounded.size() > 1 && is_called(pattern.tree, yarn, wording, "yarns-pale")) wanted = palest;
    if (grounded.size() > 1 && is_called(pattern.tree, yarn, wording, "yarns-dark")) wanted = darkest;
    tones[yarn - 1] = free_tone(wanted, tones);
  }
  return tones;
}

} // namespace whorl
