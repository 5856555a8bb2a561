#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace whorl::drawing {

/// The words of a sheet in one language, by id: "caption-rounds" → "rounds {1}–{2}". Handed in by the face.
using Wording = std::map<std::string, std::string, std::less<>>;

/// The words of `id` with {1}, {2} … filled in; the id itself where the language lacks it.
/// `{1:stitch|stitches}` is the form of a word beside the number in {1}; the text "number-classes" says how
/// many there are.
std::string say(const Wording& wording, std::string_view id, const std::vector<std::string>& with = {});

} // namespace whorl::drawing
