#include "whorl_json.hpp"

#include "fabric/slips.hpp"
#include "words/ascii.hpp"

#include <algorithm>

namespace whorl {
namespace {

using words::small;

bool same_name(std::string_view a, std::string_view b) {
  return a.size() == b.size() &&
         std::equal(a.begin(), a.end(), b.begin(), [](char x, char y) { return small(x) == small(y); });
}

/// The rounds of this number, in the part of this name or, without a name, in any.
std::vector<std::uint32_t> rounds_of(const fabric::Fabric& fabric, std::string_view part, int number) {
  std::vector<std::uint32_t> found;
  for (std::uint32_t i = 0; i < fabric.rounds.size(); ++i) {
    const fabric::Round& round = fabric.rounds[i];
    if (round.number == number && (part.empty() || same_name(fabric.parts[round.part].name, part)))
      found.push_back(i);
  }
  return found;
}

std::string named_parts(const fabric::Fabric& fabric, const std::vector<std::uint32_t>& rounds) {
  std::string names;
  for (const std::uint32_t round : rounds) {
    const std::string& name = fabric.parts[fabric.rounds[round].part].name;
    names += (names.empty() ? "" : ", ") + (name.empty() ? std::string("a part without a name") : name);
  }
  return names;
}

bool in_one_part(const fabric::Fabric& fabric, const std::vector<std::uint32_t>& rounds) {
  return std::all_of(rounds.begin(), rounds.end(), [&](std::uint32_t round) {
    return fabric.rounds[round].part == fabric.rounds[rounds.front()].part;
  });
}

} // namespace

std::string Slips::json() const {
  return text_of(Json{
      {"whorl", 1}, {"round", round}, {"have", have}, {"should_have", should_have}, {"slips", sentences}});
}

Slips Pattern::slips(int number, std::uint32_t have, std::string_view part) const {
  const fabric::Fabric& fabric = content_->fabric;
  const std::vector<std::uint32_t> rounds = rounds_of(fabric, part, number);
  Slips slips;
  slips.round = number;
  slips.have = have;
  if (rounds.empty()) {
    slips.problem = "there is no round " + std::to_string(number) + " in " +
                    (part.empty() ? std::string("this pattern") : std::string(part));
  } else if (!in_one_part(fabric, rounds)) {
    slips.problem = "round " + std::to_string(number) + " stands in several parts (" +
                    named_parts(fabric, rounds) + "): say which is meant";
  } else {
    slips.should_have = fabric.rounds[rounds.front()].counted;
    for (const fabric::Slip& slip : fabric::slips(fabric, rounds.front(), have))
      slips.sentences.push_back(fabric::told(fabric, slip));
  }
  return slips;
}

} // namespace whorl
