#include "pattern/header.hpp"

#include "pattern/make_told.hpp"
#include "pattern/text_words.hpp"
#include "words/ascii.hpp"
#include "words/fold.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

constexpr std::size_t longest_name = 40;    ///< bytes of a header's name
constexpr std::size_t longest_heading = 60; ///< bytes of a line that names a part
constexpr std::size_t words_of_name = 4;
constexpr std::size_t words_of_heading = 6;

bool is_blank(char c) { return c == ' ' || c == '\t' || c == '\r' || c == '\n'; }
using words::is_digit;
using words::is_small;
using words::small;
bool is_letter(char c) { return is_small(small(c)) || static_cast<unsigned char>(c) >= 0x80; }

std::size_t count_words(std::string_view text) {
  std::size_t count = 0;
  for (std::size_t i = 0; i < text.size(); ++i)
    count += !is_blank(text[i]) && (i == 0 || is_blank(text[i - 1]));
  return count;
}

/// Whether some word of the text begins with a digit.
bool has_number(std::string_view text) {
  for (std::size_t i = 0; i < text.size(); ++i)
    if (is_digit(text[i]) && (i == 0 || is_blank(text[i - 1]))) return true;
  return false;
}

constexpr std::string_view wide_blanks[] = {"\xC2\xA0", "\xE3\x80\x80", "\xE2\x80\x8B"};

/// Bytes of what may be stripped at the front (or at the back) of the text; 0: nothing.
std::size_t strippable(std::string_view text, std::string_view marks, bool at_front) {
  if (text.empty()) return 0;
  const char c = at_front ? text.front() : text.back();
  if (is_blank(c) || marks.find(c) != std::string_view::npos) return 1;
  for (const std::string_view blank : wide_blanks) {
    if (text.size() < blank.size()) continue;
    const std::size_t place = at_front ? 0 : text.size() - blank.size();
    if (text.substr(place, blank.size()) == blank) return blank.size();
  }
  return 0;
}

std::string_view strip(std::string_view text, std::string_view marks) {
  while (const std::size_t bytes = strippable(text, marks, true)) text.remove_prefix(bytes);
  while (const std::size_t bytes = strippable(text, marks, false)) text.remove_suffix(bytes);
  return text;
}

constexpr std::string_view dashes[] = {" - ", " – ", " — "};

/// Where a dash between blanks ends a name; "Part 2 - Wings" goes on behind a number.
std::size_t dash_behind_name(std::string_view line) {
  std::size_t end = line.size();
  for (const std::string_view dash : dashes) end = std::min(end, line.find(dash));
  const std::size_t behind = line.find_first_not_of(" -–—", end);
  const bool numbered = end > 0 && end < line.size() && is_digit(line[end - 1]) &&
                        behind != std::string_view::npos && is_letter(line[behind]) &&
                        !is_small(line[behind]);
  return numbered ? line.size() : end;
}

/// Where a heading's name ends: at a bracket, a colon, a dash between blanks or the words that say how many.
std::size_t end_of_name(std::string_view line, const MakeTold& make) {
  std::size_t end = std::min(line.find_first_of("([:,"), dash_behind_name(line));
  for (const std::string_view wide : {"（", "［", "：", "、"}) end = std::min(end, line.find(wide));
  return make.count > 0 && make.begin > 0 ? std::min(end, make.begin) : end;
}

/// What stands behind a heading's name, without the words that say how many.
std::string note_behind(std::string_view text, std::size_t end, const MakeTold& make) {
  std::string left(text.substr(end));
  if (make.count > 0 && make.begin >= end) left.erase(make.begin - end, make.end - make.begin);
  for (const std::string_view brackets : {"()", "[]", "（）", "［］"})
    if (const std::size_t at = left.find(brackets); at != std::string::npos) left.erase(at, brackets.size());
  std::string_view note = strip(left, {});
  for (const std::string_view dash : {"–", "—", "-", ":", ","})
    if (note.substr(0, dash.size()) == dash) note = strip(note.substr(dash.size()), {});
  if (!note.empty() && (note.front() == '(' || note.front() == '[') &&
      note.find_first_of(")]") == note.size() - 1)
    note = note.substr(1, note.size() - 2);
  return std::string(make.count > 0 ? strip(note, ",;:.") : strip(note, {}));
}

/// "Cap" of `[Cap] in red`, `[Cap]`; empty if brackets hold no few words.
std::string_view name_in_brackets(std::string_view typed) {
  const std::size_t close = typed.find(']');
  if (typed.empty() || typed.front() != '[' || close == std::string_view::npos) return {};
  const std::string_view name = trim(typed.substr(1, close - 1));
  const bool letters = std::all_of(name.begin(), name.end(), [](char c) { return is_letter(c) || c == ' '; });
  const bool worked = has_number(typed.substr(close + 1)); // "[sc inc] x 6"
  return letters && !worked && count_words(name) <= words_of_heading ? name : std::string_view{};
}

/// `## Cap`, `**Cap**`, `== Cap ==`, `~*~ Cap ~*~`, `-- Cap --`, `[Cap]`.
bool is_marked(std::string_view typed) {
  if (!name_in_brackets(typed).empty()) return true;
  const std::size_t name = std::min(typed.find_first_not_of("#*_=~-+. "), typed.size());
  return name > 0 && (typed.front() == '#' || typed.find_first_of(" .+") >= 2) &&
         typed.substr(0, 2) != "- " && typed.front() != ' ' && typed.front() != '.' && name < typed.size();
}

} // namespace

std::string_view trim(std::string_view text) { return strip(text, {}); }

std::string_view without_aside(std::string_view line) {
  const std::size_t open = line.find(" (");
  return open < line.size() && line.find(')') + 1 == line.size() ? line.substr(0, open) : line;
}

std::string_view without_marks(std::string_view line) { return strip(line, "#*_=~"); }

std::string without_bold(std::string_view line) {
  std::string text(line);
  for (const char* mark : {"**", "__"})
    for (std::size_t at = text.find(mark); at != std::string::npos; at = text.find(mark)) text.erase(at, 2);
  return text;
}

Heading read_heading(std::string_view line, const words::Vocabulary& vocabulary) {
  const std::string_view typed = trim(line);
  if (const std::string_view name = name_in_brackets(typed); !name.empty()) {
    Heading heading = read_heading(typed.substr(typed.find(']') + 1), vocabulary);
    heading.note = trim(heading.name + ' ' + heading.note);
    heading.name = name;
    heading.marked = true;
    return heading;
  }
  const std::string_view text = strip(strip(typed, "#*_=~-"), ":");
  const MakeTold make = make_told(text, vocabulary);
  const bool leads = make.count > 0 && make.begin == 0; // "Make 2 wings"
  const std::size_t begin = leads ? make.end : 0;
  const std::size_t end = std::max(end_of_name(text, make), begin);
  Heading heading;
  heading.marked = is_marked(typed);
  heading.says_make = make.count > 0;
  heading.make = std::max(make.count, 1U);
  heading.name = strip(text.substr(begin, end - begin), "-:,#*_=~.)]");
  heading.note = note_behind(text, end, make);
  return heading;
}

bool looks_like_heading(std::string_view line) {
  const std::string_view text = strip(strip(trim(line), "#*_=~-"), ":");
  if (text.empty() || text.size() > longest_heading || count_words(without_aside(text)) > words_of_heading)
    return false;
  if (!is_letter(text.front()) || is_small(text.front())) return false;
  return std::string_view(".,;!?").find(text.back()) == std::string_view::npos;
}

namespace {

bool may_be_name(std::string_view name) {
  return !name.empty() && name.size() <= longest_name && is_letter(name.front()) &&
         count_words(name) <= words_of_name;
}

std::optional<Header> with_colon(std::string_view line, Span span) {
  const std::size_t colon = line.find(':');
  if (colon == std::string_view::npos) return std::nullopt;
  if (colon + 1 < line.size() && !is_blank(line[colon + 1]) && line[colon + 1] != '*') return std::nullopt;
  const std::string_view name = without_marks(line.substr(0, colon));
  if (!may_be_name(name)) return std::nullopt;
  return Header{std::string(name), std::string(without_marks(line.substr(colon + 1))), span};
}

/// `sc = single crochet`; `inc around = 12` is no definition.
std::optional<Header> with_equals(std::string_view line, Span span) {
  const std::size_t equals = line.find('=');
  if (equals == std::string_view::npos) return std::nullopt;
  const std::string_view name = without_marks(line.substr(0, equals));
  const std::string_view value = trim(line.substr(equals + 1));
  const bool is_count = has_number(value) && count_words(value) <= 2 && count_words(name) > 1;
  if (!may_be_name(name) || has_number(name) || is_count) return std::nullopt;
  return Header{std::string(name), std::string(value), span};
}

bool same_but_for_capitals(std::string_view a, std::string_view b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](char x, char y) { return small(x) == small(y); });
}

} // namespace

std::optional<Header> read_header(std::string_view line, Span span) {
  std::optional<Header> header = with_colon(line, span);
  return header ? header : with_equals(line, span);
}

bool is_title_with_colon(std::string_view line, Span span, const words::Vocabulary& vocabulary) {
  const auto header = with_colon(line, span);
  if (!header || header->value.find(' ') == std::string::npos) return false;
  if (line.find_first_of("0123456789,=;/") != std::string_view::npos) return false;
  const std::string name = words::fold(header->name).text;
  return !has_text_word(vocabulary, name, TextWord::yarn) &&
         !has_text_word(vocabulary, name, TextWord::list_heading);
}

std::string_view value_of(const std::vector<Header>& headers, std::string_view name) {
  for (const Header& header : headers)
    if (same_but_for_capitals(header.name, name)) return header.value;
  return {};
}

} // namespace whorl::pattern
