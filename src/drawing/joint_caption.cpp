#include "drawing/joint_caption.hpp"

#include "drawing/caption.hpp"
#include "fabric/joint.hpp"

#include <algorithm>

namespace whorl::drawing {
namespace {

using fabric::Joint;
using layout::Figure;

bool shows(const Figure& figure, std::uint32_t round) {
  return std::any_of(figure.rings.begin(), figure.rings.end(), [round](const layout::Ring& ring) {
    return !ring.echo && ring.round <= round && round <= ring.last_round;
  });
}

/// "5–11", "5".
std::string stretch_of(const Copy& copy, const Joint& joint) {
  const std::string first = std::to_string(joint.first);
  if (joint.first == joint.last) return first;
  return say(copy.wording, "caption-from-to", {first, std::to_string(joint.last)});
}

/// "5–11 and 20–26": all stretches in which a round takes up the same part.
std::string stretches_of(const Copy& copy, const std::vector<Joint>& joints, const Joint& first) {
  std::string words;
  for (const Joint& joint : joints) {
    if (joint.round != first.round || joint.held != first.held) continue;
    const std::string stretch = stretch_of(copy, joint);
    words = words.empty() ? stretch : say(copy.wording, "caption-and", {words, stretch});
  }
  return words;
}

std::string held(const Copy& copy, const Joint& joint) {
  return say(copy.wording, joint.flat ? "caption-held-flat" : "caption-held",
             {round_of_part(copy, joint.round)});
}

std::string takes_up(const Copy& copy, const std::vector<Joint>& joints, const Joint& joint) {
  return say(copy.wording, "caption-takes-up",
             {copy.fabric.parts[joint.held].name, round_of_part(copy, joint.round, false),
              stretches_of(copy, joints, joint)});
}

/// Each of a kind is said once: a round that takes a part up again, a part that is taken up by several.
bool is_first(const std::vector<Joint>& joints, std::size_t at) {
  return std::none_of(
      joints.begin(), joints.begin() + static_cast<std::ptrdiff_t>(at),
      [&](const Joint& one) { return one.round == joints[at].round && one.held == joints[at].held; });
}

} // namespace

std::vector<std::string> joints_said(const Copy& copy, const Figure& figure) {
  const std::vector<Joint> joints = fabric::joints_of(copy.fabric);
  std::vector<std::string> sentences;
  for (std::size_t at = 0; at < joints.size(); ++at) {
    const Joint& joint = joints[at];
    if (!is_first(joints, at)) continue;
    const std::uint32_t held_in =
        copy.fabric.stitches[fabric::held_legs_of(copy.fabric, joint.begins).begin()->into.of].round;
    if (joint.held == figure.part && shows(figure, held_in)) sentences.push_back(held(copy, joint));
    if (copy.fabric.rounds[joint.round].part == figure.part && shows(figure, joint.round))
      sentences.push_back(takes_up(copy, joints, joint));
  }
  return sentences;
}

} // namespace whorl::drawing
