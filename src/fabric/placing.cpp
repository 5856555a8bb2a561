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

/// Posts behind the stitches that the text names.
void place_after(const Fabric& fabric, const pattern::Placing& text, Placing& placing,
                 std::vector<pattern::Finding>& findings) {
  const Round& round = fabric.rounds[placing.round];
  const std::uint32_t last = *std::max_element(text.after.begin(), text.after.end());
  if (last <= width(round)) {
    placing.after.assign(text.after.begin(), text.after.end());
    return;
  }
  findings.push_back(finding(pattern::Severity::error, text,
                             "there is no stitch " + std::to_string(last) + ": " + fabric::name_of(round) +
                                 " has " + stitches(width(round))));
}

/// One post in the middle of the front: between the eyes where the part has two, else opposite the start.
void place_centred(const Fabric& fabric, Placing& placing) {
  const std::uint32_t stitches = width(fabric.rounds[placing.round]);
  std::uint32_t middle = stitches / 2;
  for (const Placing& eyes : fabric.placings) {
    if (eyes.what != What::eye || eyes.part != placing.part || eyes.after.size() != 2) continue;
    const std::uint32_t all = width(fabric.rounds[eyes.round]), both = eyes.after[0] + eyes.after[1];
    if (all > 0) middle = (both * stitches + all) / (2 * all);
  }
  if (middle > 0 && middle <= stitches) placing.after = {middle};
}

/// What is put into holes by its round alone.
void say_unplaced(const Fabric& fabric, const pattern::Placing& text, const Placing& placing,
                  std::vector<pattern::Finding>& findings) {
  findings.push_back(finding(pattern::Severity::note, text,
                             "where on " + fabric::name_of(fabric.rounds[placing.round]) + " the " +
                                 name_of(text.what) +
                                 " go is not told in words that are understood, so no figure shows them; "
                                 "understood are `6 stitches apart` and `after stitches 12 and 18`"));
}

void place(const pattern::Tree& tree, Fabric& fabric, std::uint32_t index,
           std::vector<pattern::Finding>& findings) {
  const pattern::Placing& text = tree.placings[index];
  Placing placing;
  placing.what = text.what;
  placing.part = text.part;
  placing.text = index;
  if (text.from > 0) placing.round = find_round(fabric, text.part, text.from);
  if (placing.round != none && text.apart > 0)
    place_posts(fabric, text, placing, findings);
  else if (placing.round != none && !text.after.empty())
    place_after(fabric, text, placing, findings);
  else if (placing.round != none && text.centred)
    place_centred(fabric, placing);
  else if (placing.round != none && (text.what == What::eye || text.what == What::bead))
    say_unplaced(fabric, text, placing, findings);
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
