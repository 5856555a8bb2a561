#pragma once

#include "pattern/own_list.hpp"
#include "pattern/source.hpp"
#include "stitch/kind.hpp"
#include "words/vocabulary.hpp"

#include <optional>
#include <vector>

namespace whorl::pattern {

/// "Y = yarn under sc" where the list has a plain sc too: the stitch that is told to be worked in another
/// way, for which the name then stands alone; none if the definition tells anything else.
std::optional<stitch::StitchKind> stitch_in_other_way(const Source& source, const OwnList& list,
                                                      const Definition& definition,
                                                      const words::Vocabulary& vocabulary,
                                                      const std::vector<stitch::StitchKind>& kinds);

} // namespace whorl::pattern
