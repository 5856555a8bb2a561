#include "fabric/placing.hpp"

#include <algorithm>

namespace whorl::fabric {
namespace {

using pattern::What;

std::string name_of(What what) {
  switch (what) {
  case What::eye:
    return "eyes";
  case What::marker:
    return "markers";
  case What::bead:
    return "beads";
  case What::embroider:
    return "stitches of the embroidery";
  default:
    return "these";
  }
}

/// The first drawn or counted round of the part with this number.
std::uint32_t find_round(const Fabric& fabric, std::uint32_t part, int number) {
  const Part& owner = fabric.parts[part];
  const std::uint32_t end = owner.first_round + owner.rounds + owner.counted_only;
  for (std::uint32_t i = owner.first_round; i < end; ++i)
    if (fabric.rounds[i].number == number) return i;
  return none;
}

/// Stitches of a round that are places for what is worked or put in next.
std::uint32_t width(const Round& round) { return round.makes; }

pattern::Finding finding(pattern::Severity severity, const pattern::Placing& text, std::string message) {
  pattern::Finding finding;
  finding.severity = severity;
  finding.code = "placing";
  finding.span = text.span;
  finding.message = std::move(message);
  return finding;
}

std::string stitches(std::uint32_t count) {
  return std::to_string(count) + (count == 1 ? " stitch" : " stitches");
}

/// Every hole from the first to the last.
void fill(std::vector<std::uint32_t>& holes) {
  const std::uint32_t first = holes.front(), last = holes.back();
  holes.clear();
  for (std::uint32_t hole = first; hole <= last; ++hole) holes.push_back(hole);
}

/// Two posts in the round; what could not be done as said is a finding.
void place_posts(const Fabric& fabric, const pattern::Placing& text, Placing& placing,
                 std::vector<pattern::Finding>& findings) {
  using pattern::Severity;
  const Round& round = fabric.rounds[placing.round];
  const auto after = holes(width(round), text.apart);
  if (!after) {
    // What is sewn on may belong to another part than the one taken.
    const bool posts = text.what == What::eye || text.what == What::bead;
    findings.push_back(finding(posts ? Severity::error : Severity::note, text,
                               name_of(text.what) + " " + stitches(text.apart) + " apart do not fit: " +
                                   fabric::name_of(round) + " has " + stitches(width(round))));
    return;
  }
  placing.after = *after;
  if (text.across) fill(placing.after);
  if ((width(round) - text.apart) % 2 == 0) return;
  findings.push_back(finding(Severity::note, text,
                             name_of(text.what) +
                                 " cannot be centred: they are put half a stitch aside, after stitches " +
                                 std::to_string((*after)[0]) + " and " + std::to_string((*after)[1]) +
                                 " of " + fabric::name_of(round)));
}

/// Posts in the holes that the text numbers.
void place_in_holes(const Fabric& fabric, const pattern::Placing& text, Placing& placing,
                    std::vector<pattern::Finding>& findings) {
  const Round& round = fabric.rounds[placing.round];
  const std::uint32_t last = *std::max_element(text.holes.begin(), text.holes.end());
  if (last <= width(round)) {
    placing.after = text.holes;
    return;
  }
  findings.push_back(finding(pattern::Severity::error, text,
                             "there is no stitch " + std::to_string(last) + ": " + fabric::name_of(round) +
                                 " has " + stitches(width(round))));
}

void place(const pattern::Tree& tree, Fabric& fabric, std::uint32_t index,
           std::vector<pattern::Finding>& findings) {
  const pattern::Placing& text = tree.placings[index];
  Placing placing;
  placing.what = text.what;
  placing.part = text.part;
  placing.text = index;
  if (text.from > 0) placing.round = find_round(fabric, text.part, text.from);
  if (placing.round != none && !text.holes.empty())
    place_in_holes(fabric, text, placing, findings);
  else if (placing.round != none && text.apart > 0)
    place_posts(fabric, text, placing, findings);
  fabric.placings.push_back(placing);
}

/// A part is gathered or cut by what stands behind its last round.
void end_part(const pattern::Tree& tree, const pattern::Placing& text, Fabric& fabric) {
  Part& part = fabric.parts[text.part];
  if (!part.whole || text.after_round < pattern::end_round(tree, part.text)) return;
  if (text.gather)
    part.end = End::gathered;
  else if (text.what == What::cut && part.end == End::open)
    part.end = End::cut;
}

} // namespace

std::optional<std::vector<std::uint32_t>> holes(std::uint32_t stitches, std::uint32_t apart) {
  if (apart == 0 || apart >= stitches) return std::nullopt;
  const std::uint32_t first = (stitches - apart) / 2;
  return std::vector<std::uint32_t>{first, first + apart};
}

void place_all(const pattern::Tree& tree, Fabric& fabric, std::vector<pattern::Finding>& findings) {
  for (std::uint32_t i = 0; i < tree.placings.size(); ++i) {
    if (tree.placings[i].part >= fabric.parts.size()) continue;
    place(tree, fabric, i, findings);
    end_part(tree, tree.placings[i], fabric);
  }
}

} // namespace whorl::fabric
