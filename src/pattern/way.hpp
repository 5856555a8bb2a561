#pragma once

#include "pattern/choice.hpp"
#include "pattern/source.hpp"

#include <optional>
#include <string_view>

namespace whorl::pattern {

/// What is needed to read a line's work.
struct Reader {
  const Source& source;
  const words::Vocabulary& vocabulary;
  const std::vector<stitch::StitchKind>& kinds;
};

/// A span without the blanks around it.
Span trimmed(const Source& source, Span span);

/// The way that begins with `label` and ends at byte `end`, its cheapest reading made.
Way way_of(const Reader& reader, const Label& label, std::uint32_t end);

/// Makes the readings of a way's work.
void read_way(const Reader& reader, Way& way, Effort effort);

/// Lets the readings state the count that stands before the work, beside its label.
void state_count_before(const Reader& reader, Way& way);

/// Whether a way reads with hardly a word passed over.
bool is_clean(const Way& way);

/// Whether its likeliest reading uses or makes anything.
bool does_work(const Way& way);

/// Whether a line does nothing but make a ring or a chain: "Start with a magic ring", "Ch 2."
bool only_starts(const Reader& reader, Span line);

/// Whether a line names the loops of a round: "Join yarn in a free front loop of Rnd 3."
bool names_free_loops(const Reader& reader, Span line);

/// The stretch of a line above a first round that makes its ring or chain, or names the loops it goes into:
/// "ch 2." of "Begin at the lower end with tan, ch 2."; empty if there is none.
Span start_in(const Reader& reader, Span line);

/// Works a way that brings no ring or chain into the one of the line above it; whether it reads so.
bool work_into(const Reader& reader, Way& way, Span above);

/// Whether a line names a stitch, an increase or a decrease.
bool names_stitches(const Reader& reader, Span span);

/// Whether a line names a magic ring.
/// Whether the words of a line may mean the concept of this name.
bool names_concept(const Reader& reader, Span span, const char* name);
bool names_ring(const Reader& reader, Span span);

/// Whether a line places something: eyes, a marker, stuffing.
bool places_something(const Reader& reader, Span span);

/// Whether it speaks of eyes, beads or markers only: alone on a line, `NOSE` or `BUTTON` is the name of a
/// part.
bool names_a_thing(const Reader& reader, Span span);

/// The count at the end of a line's work, found by its form alone: `(18)`, `[18]`, `= 18`.
std::optional<std::uint32_t> count_at_end(std::string_view work);

} // namespace whorl::pattern
