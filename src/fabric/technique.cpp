#include "fabric/technique.hpp"

#include "pattern/terms.hpp"

#include <algorithm>
#include <string>

namespace whorl::fabric {
namespace {

using pattern::How;
using pattern::Of;
using pattern::Technique;
using pattern::Tree;

std::string words_of(How how) {
  switch (how) {
  case How::yarn_under:
    return "yarn under";
  case How::yarn_over:
    return "yarn over";
  case How::inside_out:
    return "inside out";
  case How::over_wire:
    return "over a wire";
  case How::tightly:
    return "tightly";
  case How::loosely:
    return "loosely";
  case How::two_strands:
    return "with two strands";
  case How::between_legs:
    return "between the legs";
  }
  return "";
}

/// "sc", "the increases".
std::string stitches_of(const Technique& technique, const Tree& tree) {
  if (technique.of == Of::increases) return "the increases";
  if (technique.of == Of::decreases) return "the decreases";
  return pattern::spoken(tree.kinds[technique.kind].name, tree.language);
}

/// Whether a stitch is the first of several in its place.
bool is_increase(const Fabric& fabric, StitchId id) {
  if (id + 1 >= fabric.stitches.size()) return false;
  const Legs own = legs_of(fabric, id), next = legs_of(fabric, id + 1);
  return own.size() == 1 && next.size() == 1 && own.first->into.of == next.first->into.of &&
         own.first->into.what == next.first->into.what;
}

bool is_worked(const Technique& technique, const Fabric& fabric) {
  for (StitchId id = 0; id < fabric.stitches.size(); ++id) {
    const Stitch& stitch = fabric.stitches[id];
    const int in_one = is_increase(fabric, id) ? 2 : 1;
    const bool here =
        technique.part == pattern::every_part || technique.part == fabric.rounds[stitch.round].part;
    if (here && pattern::concerns(technique, stitch.kind, in_one, fabric.kinds)) return true;
  }
  return false;
}

/// Whether everything that is charted was worked: where a round was not, its stitches are not known.
bool is_whole(const Fabric& fabric) {
  return std::all_of(fabric.rounds.begin(), fabric.rounds.end(),
                     [](const Round& round) { return round.worked; });
}

/// Whether two are told of the same stitches and some rounds in common; one that is told of fewer only says
/// what is otherwise there.
bool meet(const Technique& a, const Technique& b) {
  const bool same = a.of == b.of && a.kind == b.kind && a.part == b.part;
  const bool apart = (a.to > 0 && b.from > a.to) || (b.to > 0 && a.from > b.to);
  return same && (a.from > 0) == (b.from > 0) && !apart;
}

pattern::Finding warning(const Technique& technique, std::string message) {
  pattern::Finding finding;
  finding.severity = pattern::Severity::warning;
  finding.code = "technique";
  finding.span = technique.span;
  finding.message = std::move(message);
  return finding;
}

std::string where(const Technique& technique, const Fabric& fabric) {
  if (technique.part >= fabric.parts.size()) return "no round has one";
  return "no round of " + fabric.parts[technique.part].name + " has one";
}

} // namespace

std::vector<pattern::Finding> check_techniques(const Tree& tree, const Fabric& fabric) {
  std::vector<pattern::Finding> findings;
  const std::vector<Technique>& all = tree.techniques;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const bool told = all[i].of != Of::all && !all[i].listed;
    if (told && is_whole(fabric) && !is_worked(all[i], fabric))
      findings.push_back(warning(all[i], words_of(all[i].how) + " is said of " + stitches_of(all[i], tree) +
                                             ", and " + where(all[i], fabric)));
    for (std::size_t j = 0; j < i; ++j)
      if (pattern::are_opposed(all[i].how, all[j].how) && meet(all[i], all[j]))
        findings.push_back(warning(all[i], "the text says " + words_of(all[j].how) + " and " +
                                               words_of(all[i].how) + " of the same stitches"));
  }
  return findings;
}

} // namespace whorl::fabric
