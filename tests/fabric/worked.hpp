#pragma once
/// Small right trees, and their fabrics.

#include "fabric/check.hpp"
#include "ids.hpp"
#include "sample.hpp"

#include <catch2/catch.hpp>

/// The fabric of a tree that is right.
inline whorl::fabric::Fabric worked(const whorl::pattern::Tree& tree) {
  using Said = std::vector<std::string>;
  whorl::fabric::Worked worked = whorl::fabric::work(tree);
  CHECK(ids::said(worked.findings) == Said{});
  CHECK(ids::said(whorl::fabric::check(tree, worked.fabric)) == Said{});
  return std::move(worked.fabric);
}

/// A cap of one round: that many of `kind` in a magic ring.
inline sample::Maker ring_of(std::uint32_t count, const char* kind = "sc") {
  sample::Maker m;
  m.part("Cap");
  m.round({m.ring(), m.work(kind, count)}, count);
  return m;
}
