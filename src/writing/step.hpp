#pragma once

#include "pattern/tree.hpp"

#include <string>
#include <vector>

namespace whorl::writing {

/// One step of a round as it is worked, repeats of a number written out. Steps between an opening and its
/// closing are repeated to the end, or go into one place.
struct Step {
  enum class Sort : std::uint8_t { work, open_repeat, open_group, close, unread };
  Sort sort = Sort::work;
  pattern::Work work; ///< with the loops and the yarn that surround it
  std::string kind;   ///< the name of its stitch
  std::string group;  ///< open_group: what it is counted as
  std::uint32_t round = 0;
  std::uint16_t number = 0;
  bool operator==(const Step&) const = default;
};

/// The steps of a line; equal ones side by side are one, so that (sc, sc) is 2 sc. What is typed before
/// `from` (a starting chain above the line) is none of them.
std::vector<Step> steps_of(const pattern::Tree& tree, pattern::NodeId body, std::uint32_t from = 0);

/// Whether a node is typed before a place of the text.
bool is_before(const pattern::Node& node, std::uint32_t from);

/// Where the work of a round begins to be typed: its label, or a starting chain in a line above.
std::uint32_t begin_of_work(const pattern::Tree& tree, const pattern::RoundText& round);

} // namespace whorl::writing
