#include "pattern/dot_leaders.hpp"

#include <algorithm>
#include <string_view>
#include <vector>

namespace whorl::pattern {

namespace {

constexpr std::string_view ellipsis = "\xE2\x80\xA6";
constexpr std::size_t fewest_dots = 3; ///< an ellipsis counts as three
constexpr std::size_t fewest_lines = 2;

/// A run of dots that leads from one column to the next: [begin, end) in bytes.
struct Leader {
  std::size_t begin = 0, end = 0;
};

bool is_blank(char c) { return c == ' ' || c == '\t'; }

/// Where a run of one mark ends that begins at `at`, with what it is worth in dots.
std::size_t end_of_run(std::string_view line, std::size_t at, std::size_t& dots) {
  const char mark = line[at];
  std::size_t end = at;
  for (dots = 0; end < line.size();) {
    if ((mark == '_' || mark == '.') && line[end] == mark) {
      ++end, ++dots;
    } else if (mark != '_' && line.compare(end, ellipsis.size(), ellipsis) == 0) {
      end += ellipsis.size(), dots += fewest_dots;
    } else {
      break;
    }
  }
  return end;
}

/// The leaders of a line: runs with something before and behind them. Of three dots only ("and so on ...") a
/// blank stands on both sides.
std::vector<Leader> leaders_of(std::string_view line) {
  std::vector<Leader> leaders;
  for (std::size_t at = 0; at < line.size();) {
    std::size_t dots = 0;
    const std::size_t end = end_of_run(line, at, dots);
    if (dots < fewest_dots) {
      ++at;
      continue;
    }
    const bool between =
        line.find_first_not_of(" \t") < at && line.find_first_not_of(" \t", end) < line.size();
    const bool apart = at > 0 && is_blank(line[at - 1]) && end < line.size() && is_blank(line[end]);
    if (between && (dots > fewest_dots || apart)) leaders.push_back({at, end});
    at = end;
  }
  return leaders;
}

} // namespace

void rule_dot_leaders(std::string& text) {
  std::vector<Leader> all;
  std::size_t lines = 0;
  for (std::size_t begin = 0; begin < text.size();) {
    const std::size_t end = std::min(text.find_first_of("\r\n", begin), text.size());
    const std::vector<Leader> leaders = leaders_of(std::string_view(text).substr(begin, end - begin));
    lines += leaders.empty() ? 0 : 1;
    for (const Leader& leader : leaders) all.push_back({begin + leader.begin, begin + leader.end});
    begin = end + 1;
  }
  if (lines < fewest_lines) return;
  for (const Leader& leader : all) {
    text.replace(leader.begin, leader.end - leader.begin, leader.end - leader.begin, ' ');
    text[leader.begin + (leader.begin > 0 && is_blank(text[leader.begin - 1]) ? 0 : 1)] = '|';
  }
}

} // namespace whorl::pattern
