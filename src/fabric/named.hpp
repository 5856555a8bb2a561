#pragma once

#include "pattern/tree.hpp"

#include <cstdint>
#include <vector>

namespace whorl::fabric {

/// How many places of a kind the text names: "in next 2 sc".
struct NamedPlaces {
  stitch::KindId kind = stitch::no_kind;
  std::uint64_t count = 0;
};

/// What is named by the work from `first` to the end of its chain of nodes, once through each repeat that
/// runs to the end; the least kind first.
std::vector<NamedPlaces> named_from(const pattern::Tree& tree, pattern::NodeId first);

/// What one pass of a piece of work, a group or a repeat names.
std::vector<NamedPlaces> named_in_pass(const pattern::Tree& tree, const pattern::Node& node);

/// Whether a stitch of a kind is one of those that the word for `named` means: "sc" speaks of decreases too;
/// chains stand for whatever stitch they count as.
bool is_named(const std::vector<stitch::StitchKind>& kinds, stitch::KindId kind, stitch::KindId named);

} // namespace whorl::fabric
