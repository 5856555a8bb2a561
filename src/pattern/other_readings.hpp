#pragma once

#include "pattern/passage.hpp"

#include <optional>

namespace whorl::pattern {

/// What a reading does to the edge, the kinds made on the way known.
Effect effect_of(const WorkReader& reader, const Reading& reading);

/// The reading with its list repeated to the end of the round, as those mean it who type no repeat mark.
Reading repeated_to_end(const WorkReader& reader, Reading reading);

/// "sc", "fm in the front loops": a round of one stitch without a number, and not in the next place, goes on
/// to its end; none if the reading is any other.
std::optional<Reading> all_round(const WorkReader& reader, const Reading& reading);

/// "ch 3, 15 dc in ring, sl st": the reading whose last slip stitch by itself joins the round that stands on
/// chains; none if the reading is any other.
std::optional<Reading> joined_at_end(const WorkReader& reader, const Reading& reading);

/// The reading whose chains before the turn at its end stand for the next row's first stitch; as the row is
/// typed, of dc and taller they do unless the words say otherwise, of hdc the counts tell.
std::optional<Reading> carrying(const WorkReader& reader, Reading& reading);

/// The reading that goes into the chains of the round before too, each being a place: "ch 4, skip 4" and "sc
/// around" behind it. None where it says itself what it goes into.
std::optional<Reading> into_chains_too(const WorkReader& reader, const Reading& reading);

/// The reading of a line that works through both layers as through those of two pieces laid together, each
/// stitch taking one place: "place one ear behind the other". None where nothing is worked through both.
std::optional<Reading> through_two_pieces(const WorkReader& reader, const Reading& reading);

/// "Crochet together with 5 sc through both layers" makes no five stitches one; whether it was read so.
bool part_layers(const WorkReader& reader, Reading& reading);

/// Whether a line says that the piece lies double: "fold", "press flat".
bool lies_double(const Sentence& sentence);

/// The reading of a line that says so, "fold the opening and close it with 4 sc", with its plain
/// stitches through both layers. None where it has none.
std::optional<Reading> through_fold(const WorkReader& reader, const Reading& reading);

} // namespace whorl::pattern
