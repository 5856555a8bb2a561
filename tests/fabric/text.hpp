#pragma once

#include "fabric/check.hpp"
#include "fabric/work.hpp"
#include "pattern/read.hpp"

#include <string>

namespace test {

/// What a pattern comes to: its fabric, and every error and warning.
struct Text {
  explicit Text(const std::string& text) {
    const whorl::pattern::Source source(text);
    read = whorl::pattern::read(source, *whorl::words::find_vocabulary("en-US"));
    worked = whorl::fabric::work(read.tree);
    for (const auto& list : {read.findings, worked.findings, whorl::fabric::check(read.tree, worked.fabric)})
      for (const whorl::pattern::Finding& finding : list)
        if (finding.severity != whorl::pattern::Severity::note) said += finding.message + "\n";
  }
  const whorl::fabric::Round& last() const { return worked.fabric.rounds.back(); }
  std::string into(std::uint32_t index) const {
    const auto legs = whorl::fabric::legs_of(worked.fabric, last().first_stitch + index);
    return legs.size() == 0 ? "" : whorl::fabric::id_of(worked.fabric, legs.begin()->into);
  }
  /// What the nth leg of a part's round goes into.
  std::string into(const std::string& part, int number, std::uint32_t nth) const {
    for (const whorl::fabric::Round& round : worked.fabric.rounds) {
      if (round.number != number || worked.fabric.parts[round.part].key != part) continue;
      for (std::uint32_t i = 0; i < round.count; ++i)
        for (const whorl::fabric::Leg& leg : whorl::fabric::legs_of(worked.fabric, round.first_stitch + i))
          if (--nth == 0) return whorl::fabric::id_of(worked.fabric, leg.into);
    }
    return "";
  }

  whorl::pattern::Read read;
  whorl::fabric::Worked worked;
  std::string said;
};

} // namespace test
