#include "writing/shortest.hpp"

#include <algorithm>

namespace whorl::writing {
namespace {

/// How often the steps [begin, begin + length) stand one behind the other from `begin` on.
std::size_t passes_of(const std::vector<Step>& steps, std::size_t begin, std::size_t length) {
  std::size_t passes = 1;
  while (begin + (passes + 1) * length <= steps.size() &&
         std::equal(steps.begin() + static_cast<std::ptrdiff_t>(begin),
                    steps.begin() + static_cast<std::ptrdiff_t>(begin + length),
                    steps.begin() + static_cast<std::ptrdiff_t>(begin + passes * length)))
    ++passes;
  return passes;
}

bool is_plain(const Step& step) { return step.sort == Step::Sort::work; }

/// The repeat from `begin` on that saves most steps: its length and its passes; {1, 1}: there is none.
struct Repeat {
  std::size_t length = 1, passes = 1;
  std::size_t saves() const { return length * (passes - 1); }
};
Repeat repeat_at(const std::vector<Step>& steps, std::size_t begin) {
  constexpr std::size_t longest = 64;
  Repeat best;
  for (std::size_t length = 2; length <= longest && begin + 2 * length <= steps.size(); ++length) {
    if (!is_plain(steps[begin + length - 1]) || !is_plain(steps[begin])) break;
    const Repeat one{length, passes_of(steps, begin, length)};
    if (one.saves() > best.saves()) best = one;
  }
  return best;
}

} // namespace

std::optional<std::string> shortest_instruction(const pattern::Tree& tree, const std::vector<Step>& steps,
                                                const Tongue& tongue) {
  if (!std::all_of(steps.begin(), steps.end(), is_plain))
    return instruction(tree, steps, tongue, Plainness::usual);
  std::string text;
  for (std::size_t at = 0; at < steps.size();) {
    const Repeat repeat = repeat_at(steps, at);
    std::size_t end = at + repeat.length;
    // A ring is named by what goes into it.
    if (repeat.passes == 1 && steps[at].work.act == pattern::Act::ring) end = std::min(at + 2, steps.size());
    const std::vector<Step> pass(steps.begin() + static_cast<std::ptrdiff_t>(at),
                                 steps.begin() + static_cast<std::ptrdiff_t>(end));
    auto words = instruction(tree, pass, tongue, Plainness::usual);
    if (words && repeat.passes > 1)
      words = tongue.row("group-times", {std::to_string(repeat.passes), {}, *words, {}});
    if (!words) return words;
    text += (text.empty() ? std::string_view{} : tongue.comma());
    text += *words;
    at = repeat.passes > 1 ? at + repeat.length * repeat.passes : end;
  }
  return text.empty() ? std::nullopt : std::optional(text);
}

} // namespace whorl::writing
