#pragma once

#include "pattern/meaning.hpp"
#include "pattern/reading.hpp"

#include <cstdint>
#include <vector>

namespace whorl::pattern {

/// What one step of a reading does with the text.
enum class Taken : std::uint8_t {
  nothing,
  separator,
  row,
  passed,
  placing,
  aside,
  yarn,       ///< what follows is in the yarn it names
  yarn_behind ///< the piece before is
};

inline constexpr std::int32_t no_path = -1;

/// The best way so far to read a stretch up to `end`, as the last step and the way before it.
struct Path {
  int cost = 0;
  int lost = 0; ///< what of it stands for stitches and numbers passed over
  std::uint16_t habits = 0;
  Taken taken = Taken::nothing;
  bool loose = false; ///< no separator stands since the last piece
  std::int32_t before = no_path;
  std::int32_t match = no_path; ///< row: index into WorkReader::matches
  std::int32_t inner = no_path; ///< the way its passage is read
  std::int32_t next = no_path;  ///< the next best that ends at the same place
  std::uint32_t begin = 0;
  std::uint32_t end = 0;
  Effect effect;
};

/// Everything found out while one line is read.
struct WorkReader {
  Sentence& sentence;
  Kinds kinds;
  bool lenient = false; ///< words may be passed over in passages too: for finding out where reading got stuck
  std::size_t most = 1; ///< readings kept at each place
  std::uint32_t stop = 0; ///< where the work ends: the stated count, or the line's end
  std::vector<Path> paths = {};
  std::vector<Match> matches = {};
  std::vector<Piece> pieces = {};                     ///< beside matches
  std::vector<std::vector<std::int32_t>> inside = {}; ///< per passage: its readings, once read
  std::vector<std::uint8_t> inside_read = {};
  std::vector<Meaning> meanings = {}; ///< per row, once asked for
  std::vector<std::uint8_t> meaning_known = {};
};

/// The way a passage's first steps are read, up to where its last pass ends; no_path if it does not end
/// there.
std::int32_t last_pass(const WorkReader& reader, std::int32_t inner, std::int32_t bracket);

/// What a stretch of text is. In a passage that is repeated no word of an instruction may be passed over.
enum class Extent : std::uint8_t { line, passage, list };

/// Every way to read [begin, end), the cheapest first, as indices of paths.
std::vector<std::int32_t> read_stretch(WorkReader& reader, std::uint32_t begin, std::uint32_t end,
                                       Extent extent);

} // namespace whorl::pattern
