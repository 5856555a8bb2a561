#pragma once
/// What tests of this room ask of a fabric, in words.

#include "fabric/work.hpp"

#include <string>
#include <vector>

namespace ids {

namespace fabric = whorl::fabric;

/// "cap-1-1 back, cap-1-2": the legs of one stitch.
inline std::string into(const fabric::Fabric& it, fabric::StitchId stitch) {
  std::string text;
  for (const fabric::Leg& leg : fabric::legs_of(it, stitch)) {
    if (!text.empty()) text += ", ";
    text += fabric::id_of(it, leg.into);
    if (leg.into.what == fabric::On::post) text += " post";
    if (leg.into.loops == whorl::stitch::front) text += " front";
    if (leg.into.loops == whorl::stitch::back) text += " back";
    if (leg.into.loops == whorl::stitch::third) text += " third";
  }
  return text;
}

/// The legs of all stitches of a round, "a | b, c | d".
inline std::string into(const fabric::Fabric& it, const fabric::Round& round) {
  std::string text;
  for (auto id = round.first_stitch; id < round.first_stitch + round.count; ++id) {
    if (id != round.first_stitch) text += " | ";
    text += into(it, id);
  }
  return text;
}

/// The legs of the fabric's last round.
inline std::string last_legs(const fabric::Fabric& it) { return into(it, it.rounds.back()); }

/// The counts of the rounds of a part, in order.
inline std::vector<std::uint32_t> counts_of(const fabric::Fabric& it, std::size_t part = 0) {
  std::vector<std::uint32_t> counts;
  const fabric::Part& owner = it.parts[part];
  for (std::uint32_t i = 0; i < owner.rounds + owner.counted_only; ++i)
    counts.push_back(it.rounds[owner.first_round + i].counted);
  return counts;
}

/// The messages of findings, "error past-end: …".
inline std::vector<std::string> said(const std::vector<whorl::pattern::Finding>& findings) {
  std::vector<std::string> text;
  for (const auto& finding : findings)
    text.push_back(std::string(whorl::pattern::name(finding.severity)) + " " + finding.code + ": " +
                   finding.message);
  return text;
}

} // namespace ids
