#include "pattern/variant_rounds.hpp"

#include "words/ascii.hpp"

#include <algorithm>
#include <string>

namespace whorl::pattern {

namespace {

/// Whether a number stands in a stretch of the typed text, and was left out of the chosen one.
bool is_left_out(std::string_view typed, std::string_view chosen, Span stretch, int wanted) {
  const std::string digits = std::to_string(wanted);
  for (std::size_t at = typed.find(digits, stretch.begin); at < stretch.end;
       at = typed.find(digits, at + 1)) {
    const std::size_t end = at + digits.size();
    const bool whole =
        (at == 0 || !words::is_digit(typed[at - 1])) && (end == typed.size() || !words::is_digit(typed[end]));
    if (whole && typed.substr(at, digits.size()) != chosen.substr(at, digits.size())) return true;
  }
  return false;
}

/// Whether the numbers between a round and the one before it in its part are those of other variants.
bool others_work(const Tree& tree, std::size_t round, std::string_view typed, std::string_view chosen) {
  const RoundText& before = tree.rounds[round - 1];
  const RoundText& text = tree.rounds[round];
  const int last = std::max(before.from, before.to);
  if (before.part != text.part || text.from <= last + 1) return false;
  const Span stretch{before.span.begin, text.label_span.begin};
  return is_left_out(typed, chosen, stretch, text.from - 1);
}

} // namespace

void forgive_rounds_of_others(std::vector<Finding>& findings, const Tree& tree, std::string_view typed,
                              std::string_view chosen) {
  if (typed.size() != chosen.size()) return;
  const auto forgiven = [&](const Finding& finding) {
    if (finding.code != "number") return false;
    const auto is_it = [&](const RoundText& round) { return round.label_span.begin == finding.span.begin; };
    const auto round = std::find_if(tree.rounds.begin(), tree.rounds.end(), is_it);
    const auto index = static_cast<std::size_t>(round - tree.rounds.begin());
    return index > 0 && index < tree.rounds.size() && others_work(tree, index, typed, chosen);
  };
  findings.erase(std::remove_if(findings.begin(), findings.end(), forgiven), findings.end());
}

} // namespace whorl::pattern
