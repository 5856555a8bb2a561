#include "fabric/loops.hpp"

#include "fabric/opening.hpp"

#include <algorithm>

namespace whorl::fabric {
namespace {

using pattern::Finding;
using pattern::Into;
using pattern::Tree;

std::string of_part(const Fabric& fabric, std::uint32_t index) {
  const Round& round = fabric.rounds[index];
  const std::string& part = fabric.parts[round.part].name;
  return fabric::name_of(round) + (part.empty() ? "" : " of " + part);
}

pattern::Span span_of(const Tree& tree, const Fabric& fabric, StitchId id) {
  const Stitch& stitch = fabric.stitches[id];
  if (stitch.origin < tree.nodes.size() && !tree.nodes[stitch.origin].span.empty())
    return tree.nodes[stitch.origin].span;
  const std::uint32_t text = fabric.rounds[stitch.round].text;
  return text < tree.rounds.size() ? tree.rounds[text].span : pattern::Span{};
}

Finding warning(const char* code, pattern::Span span, std::string message) {
  Finding finding;
  finding.severity = pattern::Severity::warning;
  finding.code = code;
  finding.span = span;
  finding.message = std::move(message);
  return finding;
}

/// A join closes its own round, a spike reaches past what is there: neither takes a loop for itself.
bool takes_loops(const Tree& tree, const Stitch& stitch) {
  if (stitch.flags & joins) return false;
  return stitch.origin >= tree.nodes.size() || tree.nodes[stitch.origin].work.into != Into::below;
}

/// Which round was worked into each loop first.
class Visits {
public:
  Visits(const Tree& tree, const Fabric& fabric)
      : tree_(tree), fabric_(fabric), front_(fabric.stitches.size(), none),
        back_(fabric.stitches.size(), none) {}

  std::vector<Finding> twice() {
    for (StitchId id = 0; id < fabric_.stitches.size(); ++id)
      if (takes_loops(tree_, fabric_.stitches[id]))
        for (const Leg& leg :
             own_legs_of(fabric_, id)) // a part held against it was counted when it was joined
          if (leg.into.what == On::top && leg.into.of < front_.size()) visit(id, leg.into);
    return std::move(findings_);
  }

private:
  void visit(StitchId id, const Place& place) {
    const std::uint32_t round = fabric_.stitches[id].round;
    std::uint32_t before = none;
    if ((place.loops & stitch::front) != 0) before = enter(front_[place.of], round);
    if ((place.loops & stitch::back) != 0) before = std::min(before, enter(back_[place.of], round));
    if (before == none || fabric_.rounds[round].text == said_) return;
    said_ = fabric_.rounds[round].text;
    findings_.push_back(warning("loops", span_of(tree_, fabric_, id),
                                of_part(fabric_, round) + " goes into " + name_of_loops(place.loops) +
                                    " of " + of_part(fabric_, fabric_.stitches[place.of].round) + " that " +
                                    of_part(fabric_, before) + " is worked into already"));
  }

  /// The other round that was there before; `none` where there was none.
  static std::uint32_t enter(std::uint32_t& first, std::uint32_t round) {
    if (first == none) first = round;
    return first == round ? none : first;
  }

  const Tree& tree_;
  const Fabric& fabric_;
  std::vector<std::uint32_t> front_, back_;
  std::vector<Finding> findings_;
  std::uint32_t said_ = none;
};

/// The first leg of a part, or nothing.
const Leg* first_leg(const Fabric& fabric, const Part& part) {
  if (part.rounds == 0) return nullptr;
  const Round& round = fabric.rounds[part.first_round];
  for (StitchId id = round.first_stitch; id < round.first_stitch + round.count; ++id)
    if (legs_of(fabric, id).size() > 0) return legs_of(fabric, id).begin();
  return nullptr;
}

/// Work in the front loops leaves the back loops inside the piece; once it is closed nobody works there.
void check_inside(const Tree& tree, const Fabric& fabric, std::uint32_t index, std::vector<Finding>& out) {
  const Part& part = fabric.parts[index];
  const Leg* leg = part.start == Start::free_loops ? first_leg(fabric, part) : nullptr;
  if (leg == nullptr || leg->into.what != On::top || leg->into.loops != stitch::back) return;
  const std::uint32_t round = fabric.stitches[leg->into.of].round;
  const Part& owner = fabric.parts[fabric.rounds[round].part];
  if (&owner == &part || owner.end != End::gathered) return;
  const auto id = static_cast<StitchId>(fabric.rounds[part.first_round].first_stitch);
  const std::string name = part.name.empty() ? "this part" : part.name;
  const std::string piece = owner.name.empty() ? "a piece" : owner.name;
  out.push_back(warning("inside", span_of(tree, fabric, id),
                        name + " grows from the back loops of " + fabric::name_of(fabric.rounds[round]) +
                            ", which lie inside " + piece +
                            ", and that is closed: work the round in back loops to leave the loops outside"));
}

/// A part that was joined: by which stitch first, and its round that is worked through.
struct Joined {
  StitchId first = none;
  std::uint32_t round = none;
};

std::vector<Joined> joined_parts(const Fabric& fabric) {
  std::vector<Joined> joined(fabric.parts.size());
  for (StitchId id = 0; id < fabric.stitches.size(); ++id)
    for (const Leg& leg : held_legs_of(fabric, id)) {
      const std::uint32_t round = fabric.stitches[leg.into.of].round;
      Joined& part = joined[fabric.rounds[round].part];
      if (part.first == none) part = {id, round};
    }
  return joined;
}

/// Stitches of a part that was joined through some of its last round, and that nothing goes through.
void tell_left_beside(const Tree& tree, const Fabric& fabric, const Joined& joined,
                      std::vector<Finding>& out) {
  if (joined.first == none) return;
  const std::vector<Place> tops = tops_of(fabric, joined.round);
  const auto is_free = [&](const Place& top) { return fabric.taken[top.of] == stitch::no_loop; };
  const auto free = std::count_if(tops.begin(), tops.end(), is_free);
  if (free == 0) return;
  const Part& owner = fabric.parts[fabric.rounds[fabric.stitches[joined.first].round].part];
  Finding left = warning("joining", span_of(tree, fabric, joined.first),
                         std::to_string(free) + " of the " + std::to_string(tops.size()) + " stitches of " +
                             of_part(fabric, joined.round) + " stay free beside those joined to " +
                             (owner.name.empty() ? "the piece" : owner.name));
  left.severity = pattern::Severity::note;
  out.push_back(std::move(left));
}

/// Loops of a round that parts are begun in, that none of them takes or skips.
struct LeftFree {
  std::uint32_t round = none;
  std::uint8_t loops = 0;
  StitchId last = none; ///< the first stitch of the last part begun there
};

std::vector<LeftFree> rounds_with_parts(const Fabric& fabric) {
  std::vector<LeftFree> found;
  for (const Part& part : fabric.parts) {
    const Leg* leg = part.start == Start::free_loops ? first_leg(fabric, part) : nullptr;
    if (leg == nullptr || leg->into.what != On::top || leg->into.loops == stitch::both) continue;
    const std::uint32_t round = fabric.stitches[leg->into.of].round;
    const auto same = [&](const LeftFree& one) { return one.round == round && one.loops == leg->into.loops; };
    const auto known = std::find_if(found.begin(), found.end(), same);
    const StitchId first = fabric.rounds[part.first_round].first_stitch;
    if (known != found.end())
      known->last = first;
    else
      found.push_back({round, leg->into.loops, first});
  }
  return found;
}

void tell_left_free(const Tree& tree, const Fabric& fabric, const LeftFree& left, std::vector<Finding>& out) {
  std::vector<bool> skipped(fabric.stitches.size(), false);
  for (const Unworked& one : fabric.unworked)
    if (one.on_purpose && one.place.of < skipped.size()) skipped[one.place.of] = true;
  const std::vector<Place> tops = tops_of(fabric, left.round);
  const auto free = std::count_if(tops.begin(), tops.end(), [&](const Place& top) {
    return (fabric.taken[top.of] & left.loops) == 0 && !skipped[top.of];
  });
  if (free == 0) return;
  const std::string& name = fabric.parts[fabric.rounds[fabric.stitches[left.last].round].part].name;
  Finding finding = warning("left-free", span_of(tree, fabric, left.last),
                            std::to_string(free) + " of the " + std::to_string(tops.size()) + " " +
                                name_of_loops(left.loops) + " of " + of_part(fabric, left.round) +
                                " stay free" + (name.empty() ? "" : " behind " + name));
  finding.severity = pattern::Severity::note;
  out.push_back(std::move(finding));
}

} // namespace

std::vector<Finding> check_loops(const Tree& tree, const Fabric& fabric) {
  std::vector<Finding> findings = Visits(tree, fabric).twice();
  for (std::uint32_t part = 0; part < fabric.parts.size(); ++part) check_inside(tree, fabric, part, findings);
  for (const Joined& joined : joined_parts(fabric)) tell_left_beside(tree, fabric, joined, findings);
  for (const LeftFree& left : rounds_with_parts(fabric)) tell_left_free(tree, fabric, left, findings);
  return findings;
}

} // namespace whorl::fabric
