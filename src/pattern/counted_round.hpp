#pragma once

#include "pattern/way.hpp"

#include <optional>
#include <string>

namespace whorl::pattern {

/// A round that a table tells by its count and its change alone, "14目(+7目)", "12 | +6", "35 (even)": its
/// work in US terms, the increases or decreases spread evenly ("(1 sc, inc) x 7"); nothing where it is told
/// otherwise. `work` is what stands behind its label.
std::optional<std::string> work_by_count(const Reader& reader, const Way& way, std::string_view work);

/// A row whose work is told by its ends alone, "ch 1, increase at each end (10)": its work in US terms with
/// the plain stitches that the count tells between them; nothing where it is told otherwise.
std::optional<std::string> work_at_both_ends(const Reader& reader, const Way& way, std::string_view work);

/// "Increase 6 stitches evenly (18)", in whatever order the words stand: its work in US terms; nothing where it
/// is told otherwise.
std::optional<std::string> work_evenly(const Reader& reader, const Way& way, std::string_view work);

/// "12 sc (inc in each st)", "9 (1 sc, inc x 3)": the work that brackets at the end tell, behind it the number
/// before them as its count; nothing where the brackets tell no increase or decrease.
std::optional<std::string> work_explained(const Reader& reader, const Way& way, std::string_view work);

/// "Just keep going – 24": a round of which nothing is told but its count, in words that shape nothing: so many
/// stitches in US terms; nothing where some word works, counts or places otherwise.
std::optional<std::string> work_plainly(const Reader& reader, const Way& way, std::string_view work);

/// Makes a reading of such work: every piece of it points at the whole line, in `span`.
void point_at(std::vector<Reading>& readings, Span span);

/// Makes every stitch of the readings whatever the rounds before are worked in.
void take_stitch_before(std::vector<Reading>& readings);

/// "6 increases, evenly spaced (24)": adds the reading that the count tells, whose increases or decreases are
/// spread over the round; the stitches between them are whatever the rounds before are worked in.
void spread_evenly(const Reader& reader, std::vector<Reading>& readings, Span span, Effort effort);

} // namespace whorl::pattern
