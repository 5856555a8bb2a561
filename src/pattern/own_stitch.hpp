#pragma once

#include "pattern/told_moves.hpp"
#include "stitch/kind.hpp"
#include "words/vocabulary.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace whorl::pattern {

/// How many of which stitch: "4 dc" in "4 dc in same st, joined".
struct ManyOf {
  std::uint32_t count = 0;
  std::string stitch; ///< name of its kind
};
std::optional<ManyOf> many_of(std::string_view text, const words::Vocabulary& vocabulary);

/// The first plain stitch that a text names: sc of "pull up a long loop, finish as sc".
std::optional<stitch::StitchKind> stitch_told(std::string_view text, const words::Vocabulary& vocabulary,
                                              const std::vector<stitch::StitchKind>& kinds);

/// Stitches that are made alike whatever their name.
enum class Family : std::uint8_t { none, bobble, puff, popcorn, loop, picot };

/// The family that a name belongs to: "Bobble (bo)", "lp st", "MP (make popcorn)".
Family family_of(std::string_view name);

/// The same, where also a word of the language says so: "Noppe" is a bobble.
Family family_of(std::string_view name, const words::Vocabulary& vocabulary);

/// Whether an explanation puts its stitches into one place: "in the same st", "into one stitch".
bool says_same_place(std::string_view text, const words::Vocabulary& vocabulary);

/// Whether it works into several places: "over the next 3 sts".
bool says_places(std::string_view text, const words::Vocabulary& vocabulary);

/// Whether it closes them together at their top.
bool says_closed(std::string_view text, const words::Vocabulary& vocabulary);

/// The name of the kind that a family's usual stitch is; "" for no family.
const char* usual_name(Family family);

/// What is said of a stitch of the pattern's own.
struct OwnStitch {
  stitch::StitchKind kind;
  int left = 1; ///< loops that its words leave on the hook; not one: they are not followed
};

/// The stitch called `name` that `text` explains; none if the text explains no stitch. `kinds` are those
/// known.
std::optional<OwnStitch> own_stitch(std::string_view name, Family family, std::string_view text,
                                    const words::Vocabulary& vocabulary,
                                    const std::vector<stitch::StitchKind>& kinds);

/// "sc, ch 4, sl st back into that sc": a stitch and chains closed back into it, which are one stitch; none
/// if the words tell anything else.
std::optional<stitch::StitchKind> stitch_with_chains(std::string_view text,
                                                     const words::Vocabulary& vocabulary,
                                                     const std::vector<stitch::StitchKind>& kinds);

} // namespace whorl::pattern
