#pragma once

#include "pattern/tree.hpp"
#include "writing/tongue.hpp"

#include <optional>
#include <string>

namespace whorl::writing {

using Words = std::optional<std::string>;

/// "(list) x 3", "(list) around".
Words repeated(const pattern::Work& work, const std::string& list, const Tongue& tongue);

/// "with moss ", where another yarn is taken.
Words with_yarn(const pattern::Tree& tree, std::uint8_t number, const Tongue& tongue);

/// "with moss 3 sc", but "join with moss".
std::string in_yarn_said(const std::string& with, const std::string& words, pattern::Act act);

/// Several stitches into one place.
Words in_one_place(const pattern::Work& work, const std::string& list, const Tongue& tongue);

/// What a step says of another round or part: an index into Tree::rounds, and the number that is meant.
struct Named {
  std::uint32_t round = 0;
  std::uint16_t number = 0;
};

bool is_of_other(const pattern::Work& work);

/// Into loops that another round left free, or through another part.
Words of_other(const pattern::Tree& tree, const pattern::Work& work, const Named& named,
               const Tongue& tongue);

/// "same as Rnd 3".
Words as_round(const pattern::Tree& tree, const Named& named, const Tongue& tongue);

} // namespace whorl::writing
