#include "pattern/one_line.hpp"

#include "pattern/header.hpp"
#include "words/ascii.hpp"
#include "words/lattice.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

using words::is_digit;
using words::is_small;

/// Marks that only begin a step of a list.
std::size_t list_mark_bytes(std::string_view line) {
  const bool lettered =
      line.size() > 3 && line[0] >= 'a' && line[0] <= 'h' && line[1] == ')' && line[2] == ' ';
  if (lettered) return 3;
  for (const std::string_view mark : {"- ", "• ", "– "})
    if (line.substr(0, mark.size()) == mark) return mark.size();
  return 0;
}

/// "16 sts total": a number, "st", "sts" or "stitches", and perhaps "total".
bool only_counts(std::string_view step) {
  std::size_t at = 0;
  while (at < step.size() && is_digit(step[at])) ++at;
  if (at == 0) return false;
  const std::string_view unit = trim(step.substr(at));
  for (const std::string_view word : {"sts", "st", "stitches", "sts total", "stitches total", "sts in total",
                                      "stitches in total", "sts altogether"})
    if (unit == word) return true;
  return false;
}

/// The work's text with its line ends made blanks, those before a step of a list commas; every byte keeps its
/// place.
std::string on_one_line(std::string_view text) {
  std::string line(text);
  std::fill_n(line.begin(), list_mark_bytes(line), ' ');
  for (std::size_t i = 0; i < line.size(); ++i) {
    if (line[i] != '\n' && line[i] != '\r') continue;
    line[i] = ' ';
    std::size_t step = i + 1;
    while (step < line.size() && (line[step] == ' ' || line[step] == '\t')) ++step;
    const std::size_t mark = list_mark_bytes(std::string_view(line).substr(step));
    std::fill_n(line.begin() + static_cast<std::ptrdiff_t>(step), mark, ' ');
    if (mark == 0) continue;
    line[i] = ','; // each step is a piece of its own
    const std::size_t end = line.find('\n', step);
    if (end == std::string::npos ||
        !only_counts(std::string_view(line).substr(step + mark, end - step - mark)))
      continue;
    line[i] = ' ';
    line[step] = '('; // a count among the steps
    line[end] = ')';
  }
  return line;
}

/// Whether a word is one that the vocabulary has.
bool is_known(const Reader& reader, std::string_view word) {
  const auto lattice = words::lattice(words::fold(word, 0), reader.vocabulary);
  return std::any_of(lattice.words.begin(), lattice.words.end(), [&](const words::Word& found) {
    return found.kind == words::WordKind::phrase && found.begin == 0 && found.end == word.size();
  });
}

/// Words divided at line ends ("on-", "ly") are put together; every byte keeps its place: what stood between
/// becomes a soft hyphen. "Half-", "double" stays two words.
void join_divided_words(const Reader& reader, std::string& text) {
  for (std::size_t at = 1; at + 2 < text.size(); ++at) {
    if (text[at] != '-' || text[at + 1] != '\n' || !(is_small(text[at - 1]) || is_digit(text[at - 1])) ||
        !is_small(text[at + 2]))
      continue;
    std::size_t begin = at, end = at + 2;
    while (begin > 0 && (is_small(text[begin - 1]) || is_digit(text[begin - 1]))) --begin;
    while (end < text.size() && is_small(text[end])) ++end;
    const std::string behind = text.substr(at + 2, end - at - 2);
    const std::string whole = text.substr(begin, at - begin) + behind;
    const bool one = is_known(reader, whole) || !is_known(reader, behind) || is_digit(text[at - 1]);
    text[at] = one ? '\xC2' : ' ';
    text[at + 1] = one ? '\xAD' : ' ';
  }
}

/// Where a label has a line of its own, cells of a table stand one under another: "Round 2", "inc, sc 3",
/// "5 sts". An equals sign in place of the line end says what the last is.
void mark_count_below(const Reader& reader, const Way& way, std::string& text) {
  const Span gap{way.label.span.end, way.work.begin};
  if (way.label.span.empty() || gap.end <= gap.begin ||
      reader.source.at(gap).find('\n') == std::string_view::npos)
    return;
  const std::size_t line = text.rfind('\n');
  if (line == std::string::npos || line == 0) return;
  const std::string_view last = trim(std::string_view(text).substr(line + 1));
  const std::size_t unit = last.find_first_not_of("0123456789");
  const std::string_view name = unit == std::string_view::npos ? "" : trim(last.substr(unit));
  if (unit == 0 || !(name.empty() || name == "sts" || name == "stitches" || name == "st" || name == "sts."))
    return;
  const std::string_view before = trim(std::string_view(text).substr(0, line));
  for (const std::string_view word :
       {",", "next", "last", "first", "in", "each", "the", "and", "x", "*", "rep"})
    if (before.size() >= word.size() && before.substr(before.size() - word.size()) == word) return;
  text[line] = '=';
}

/// "Join yarn with a sl st in a free front loop": the stitch that only holds the yarn is taken out of `text`.
void blank_joining_stitch(const Reader& reader, Span above, std::string& text) {
  const words::Concept slip = words::find_concept(reader.vocabulary, "sl st");
  const words::Folded folded = words::fold(reader.source.at(above));
  const auto lattice = words::lattice(folded, reader.vocabulary);
  for (const words::Word& word : lattice.words) {
    if (word.kind != words::WordKind::phrase || word.means != slip) continue;
    const std::size_t with = folded.text.rfind("with", word.begin);
    const std::size_t begin = with != std::string::npos && word.begin - with <= 8 ? with : word.begin;
    std::fill(text.begin() + folded.from[begin], text.begin() + folded.from[word.end], ' ');
    return;
  }
}

/// Whether the full stop at byte `end` of a line is that of an abbreviation: "2 o. łańc."
bool is_abbreviated(const Reader& reader, Span above, std::size_t end) {
  const words::Folded folded = words::fold(reader.source.at(above));
  const auto lattice = words::lattice(folded, reader.vocabulary);
  bool with = false, without = false;
  for (const words::Word& word : lattice.words) {
    if (word.kind != words::WordKind::phrase) continue;
    with = with || folded.from[word.end] == end + 1;
    without = without || folded.from[word.end] == end;
  }
  return with && !without;
}

/// Of a line above a round, which ends at `end`, only the words that open loops are left.
void blank_but_opening(const Way& way, std::size_t end, std::string& text) {
  const auto at = [&](std::uint32_t byte) {
    return text.begin() + static_cast<std::ptrdiff_t>(std::min<std::size_t>(byte - way.above.begin, end));
  };
  std::fill(text.begin(), at(way.opened.begin), ' ');
  std::fill(at(way.opened.end), text.begin() + static_cast<std::ptrdiff_t>(end), ' ');
}

/// A line above a round and the round's work as one line, what stands between them a comma; every byte keeps
/// its place.
std::string with_above(const Reader& reader, const Way& way) {
  std::string text(reader.source.at({way.above.begin, way.work.end}));
  std::size_t end = way.above.length();
  while (end > 1 && std::string_view(".:;,! ").find(text[end - 1]) != std::string_view::npos) --end;
  if (end < way.above.length() && text[end] == '.' && is_abbreviated(reader, way.above, end)) ++end;
  std::fill(text.begin() + static_cast<std::ptrdiff_t>(end),
            text.begin() + static_cast<std::ptrdiff_t>(way.work.begin - way.above.begin), ' ');
  text[end] = ',';
  if (!way.opened.empty()) blank_but_opening(way, end, text);
  if (names_free_loops(reader, way.above)) blank_joining_stitch(reader, way.above, text);
  return text;
}

} // namespace

std::string text_to_read(const Reader& reader, const Way& way) {
  std::string text = way.above.empty() ? std::string(reader.source.at(way.work)) : with_above(reader, way);
  const std::uint32_t begin = way.above.empty() ? way.work.begin : way.above.begin;
  if (way.label.loops_aside) text[way.label.aside.end - 1 - begin] = ' ';
  if (way.above.empty()) mark_count_below(reader, way, text);
  join_divided_words(reader, text);
  return on_one_line(text);
}

} // namespace whorl::pattern
