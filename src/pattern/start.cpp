#include "pattern/named_place.hpp"
#include "pattern/way.hpp"

namespace whorl::pattern {

namespace {

constexpr std::size_t most_cuts = 8;

bool is_blank_at(std::string_view text, std::size_t at) { return at < text.size() && text[at] == ' '; }

/// Where sentences and clauses of a line may begin: its front, and behind marks that a blank follows.
std::vector<std::uint32_t> fronts_of(const Reader& reader, Span line) {
  const std::string_view text = reader.source.at(line);
  std::vector<std::uint32_t> fronts{line.begin};
  for (std::size_t at = 0; at < text.size() && fronts.size() < most_cuts; ++at) {
    const bool mark = std::string_view(".,;:!)").find(text[at]) != std::string_view::npos;
    if (mark && is_blank_at(text, at + 1)) fronts.push_back(line.begin + static_cast<std::uint32_t>(at) + 1);
  }
  return fronts;
}

/// The end of the line, and the ends of the sentences before that `begin` stands in or before.
std::vector<std::uint32_t> ends_of(const Reader& reader, Span line, std::uint32_t begin) {
  const std::string_view text = reader.source.at(line);
  std::vector<std::uint32_t> ends{line.end};
  for (std::size_t at = begin - line.begin; at < text.size() && ends.size() < most_cuts; ++at)
    if ((text[at] == '.' || text[at] == '!') && is_blank_at(text, at + 1))
      ends.push_back(line.begin + static_cast<std::uint32_t>(at) + 1);
  return ends;
}

/// The last sentence that names the loops.
Span sentence_with_loops(const Reader& reader, Span line) {
  Span found;
  for (const std::uint32_t begin : fronts_of(reader, line)) {
    const Span sentence = trimmed(reader.source, {begin, line.end});
    const std::string_view before = begin == line.begin ? "." : reader.source.at({begin - 1, begin});
    const bool whole = before == "." || before == ":";
    if (whole && names_free_loops(reader, sentence)) found = sentence;
  }
  return found;
}

} // namespace

Span start_in(const Reader& reader, Span line) {
  if (only_starts(reader, line)) return line;
  if (names_free_loops(reader, line)) return sentence_with_loops(reader, line);
  if (!names_stitches(reader, line) && !names_ring(reader, line)) return {};
  if (const auto named = named_start(reader, line)) return named->place;
  for (const std::uint32_t begin : fronts_of(reader, line)) {
    if (begin > line.begin && names_stitches(reader, {line.begin, begin})) break;
    for (const std::uint32_t end : ends_of(reader, line, begin)) {
      const Span stretch = trimmed(reader.source, {begin, end});
      if (!stretch.empty() && only_starts(reader, stretch)) return stretch;
    }
  }
  return {};
}

} // namespace whorl::pattern
