#pragma once

#include "pattern/tree.hpp"
#include "writing/running.hpp"
#include "writing/step.hpp"
#include "writing/tongue.hpp"

#include <optional>
#include <set>
#include <string>

namespace whorl::writing {

/// How plainly an instruction is put.
enum class Plainness : std::uint8_t {
  usual,  ///< as the trade does: "6 inc", "BLO: …"
  rows,   ///< as usual, but that a row goes round nothing: "sc in each st"
  places, ///< each stitch with its place and its loops: "(2 sc in next st) x 6"
};

/// What of a line's look its author chose, or whoever asked for it.
struct Manner {
  /// Repeats that are written with stars; nullptr: none, all stand in brackets.
  const std::set<pattern::NodeId>* stars = nullptr;
  /// A step a line, each with how far the round has come; nullptr: the steps stand behind one another.
  const Running* lines = nullptr;
  /// Chains of which the line says that they do not count.
  const std::set<pattern::NodeId>* not_counting = nullptr;
  bool count_behind = false; ///< the last step has the line's count behind it
};

/// The work of a line in a language, groups and repeats as its author has them; none where the language has
/// no form for something in it. What is typed before `from` is left out.
std::optional<std::string> instruction(const pattern::Tree& tree, pattern::NodeId body, std::uint32_t from,
                                       const Tongue& tongue, Plainness plainness, const Manner& manner = {});

/// … and of what is typed before `from`, alone: a starting chain above the line.
std::optional<std::string> instruction_above(const pattern::Tree& tree, pattern::NodeId body,
                                             std::uint32_t from, const Tongue& tongue);

/// The same of a line that is written out in steps.
std::optional<std::string> instruction(const pattern::Tree& tree, const std::vector<Step>& steps,
                                       const Tongue& tongue, Plainness plainness);

/// One step alone.
std::optional<std::string> work_in_words(const pattern::Tree& tree, const pattern::Work& work,
                                         const Tongue& tongue, Plainness plainness);

/// "BLO"; none of both loops, or where they are not said.
std::optional<std::string> loops_in_words(std::uint8_t loops, const Tongue& tongue);

/// "Rnds 4-6:"; none where it is no number that the line begins with: "Next rnd".
std::optional<std::string> label_in_words(const pattern::RoundText& round, const Tongue& tongue);

/// "(18)", "(12 sc, 3 ch-sp)"; "" where the line states nothing; none where the language cannot tell the
/// unit. Plainly, one count stands without its unit.
std::optional<std::string> count_in_words(const pattern::Tree& tree, const pattern::RoundText& round,
                                          const Tongue& tongue, Plainness plainness);

} // namespace whorl::writing
