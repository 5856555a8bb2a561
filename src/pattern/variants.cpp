#include "pattern/variants.hpp"

#include "pattern/dot_leaders.hpp"
#include "pattern/variant_names.hpp"

#include "words/ascii.hpp"

#include <optional>

namespace whorl::pattern {

using namespace variant;

namespace {

using words::is_digit;

constexpr std::size_t longest_label = 14; ///< bytes before a name that are only the label of its line

/// Where a number ends that begins at `at`, decimals and all; `at` if none does.
std::size_t behind_number(std::string_view text, std::size_t at) {
  std::size_t end = at;
  while (end < text.size() && (is_digit(text[end]) || (text[end] == '.' && end > at &&
                                                       end + 1 < text.size() && is_digit(text[end + 1]))))
    ++end;
  return end;
}

/// Where a range of rounds ends that begins at `at`: "8-10"; `at` if none does.
std::size_t behind_range(std::string_view text, std::size_t at) {
  const std::size_t first = behind_number(text, at);
  for (const std::string_view dash : {"-", "\u2013"})
    if (first > at && text.substr(first, dash.size()) == dash)
      if (const std::size_t last = first + dash.size(), end = behind_number(text, last); end > last)
        return end;
  return at;
}

/// Behind "Large:", "Large =" or "Large" and a blank before a number; `at` if the name does not stand there.
std::size_t behind_name(std::string_view text, std::size_t at, const std::string& name) {
  if (!same_letters(text.substr(at, name.size()), name)) return at;
  std::size_t next = behind_blanks(text, at + name.size());
  const bool mark = next < text.size() && (text[next] == ':' || text[next] == '=');
  if (mark) next = behind_blanks(text, next + 1);
  const bool parted = next > at + name.size();
  return parted && next < text.size() && is_digit(text[next]) ? next : at;
}

/// The numbers of all variants that begin at a place: "6 (8, 10)", "6 (8) (10)", "6/8/10", "6 (Large: 8)",
/// "6; Large: 8", "8-10 (8-11, 8-12)"; none if they are not as many. `behind`: where one of them ends.
std::vector<Part> numbers_at(std::string_view text, std::size_t at, const std::vector<std::string>& names,
                             std::size_t (*behind)(std::string_view, std::size_t)) {
  const std::size_t many = names.size();
  std::vector<Part> numbers;
  const std::size_t first = behind(text, at);
  if (first == at) return {};
  numbers.push_back({at, first});
  const std::size_t open = behind_blanks(text, first);
  const bool slashes = first < text.size() && text[first] == '/';
  const auto is_named = [&](std::size_t next, std::size_t i) {
    return i < many && behind_name(text, behind_blanks(text, next), names[i]) != behind_blanks(text, next);
  };
  const bool listed = open < text.size() && (text[open] == ';' || text[open] == ',') && is_named(open + 1, 1);
  if (!slashes && !listed && (open >= text.size() || (text[open] != '(' && text[open] != '['))) return {};
  for (std::size_t next = slashes ? first + 1 : open + 1; numbers.size() < most_names;) {
    next = behind_blanks(text, next);
    if (is_named(next, numbers.size())) next = behind_name(text, next, names[numbers.size()]);
    const std::size_t end = behind(text, next);
    if (end == next) return {};
    numbers.push_back({next, end});
    next = behind_blanks(text, end);
    if (next >= text.size() || (listed && numbers.size() == many)) break;
    if (slashes && text[next] != '/') break;
    if (text[next] == ')' || text[next] == ']') {
      const std::size_t more = behind_blanks(text, next + 1);
      if (numbers.size() == many || more >= text.size() || text[more] != '(') break;
      next = more + 1;
      continue;
    }
    if (std::string_view(",;/:|").find(text[next]) == none) return {};
    ++next;
  }
  return numbers.size() == many ? numbers : std::vector<Part>{};
}

/// "sc around (24, 30, 36)": the numbers of all variants alone in a bracket; none if they are not as many.
std::vector<Part> bracketed_numbers(std::string_view text, std::size_t open, std::size_t many) {
  std::vector<Part> numbers;
  if (text[open] != '(' && text[open] != '[') return {};
  for (std::size_t at = open + 1; at < text.size() && numbers.size() < most_names;) {
    const std::size_t begin = behind_blanks(text, at), end = behind_number(text, begin);
    if (end == begin) return {};
    numbers.push_back({begin, end});
    at = behind_blanks(text, end);
    if (at < text.size() && (text[at] == ')' || text[at] == ']')) break;
    if (at >= text.size() || (text[at] != ',' && text[at] != ';')) return {};
    ++at;
  }
  return numbers.size() == many ? numbers : std::vector<Part>{};
}

std::size_t end_of_numbers(std::string_view text, const std::vector<Part>& numbers) {
  const std::string_view between =
      text.substr(numbers.front().end, numbers.back().begin - numbers.front().end);
  if (between.find_first_of("([") == none) return numbers.back().end; // "(12; Large: 18)"
  const std::size_t end = behind_blanks(text, numbers.back().end);
  return end < text.size() && (text[end] == ')' || text[end] == ']') ? end + 1 : numbers.back().end;
}

/// Whether names stand before the numbers behind the first.
bool have_names(std::string_view text, const std::vector<Part>& numbers) {
  const std::string_view between =
      text.substr(numbers.front().end, numbers.back().begin - numbers.front().end);
  return std::any_of(between.begin(), between.end(), is_letter);
}

/// "inc x 6 (12)": with two variants a number and another in brackets may be a count; sizes go on with a
/// word, or stand in brackets themselves.
bool may_be_count(std::string_view text, const std::vector<Part>& numbers) {
  if (numbers.size() != 2 || text[numbers.front().end] == '/') return false;
  const std::size_t behind = behind_blanks(text, end_of_numbers(text, numbers));
  std::size_t before = numbers.front().begin;
  while (before > 0 && is_blank(text[before - 1])) --before;
  if (have_names(text, numbers)) return false;
  const bool sentence =
      before > 1 && text[before - 1] == '.' && !is_digit(text[before - 2]); // "around. 24 (30)"
  const bool inside = sentence || (before > 0 && std::string_view("([=").find(text[before - 1]) != none);
  return !inside && (behind >= text.size() || !is_letter(text[behind]));
}

/// Choosing one variant of a text.
class Choosing {
public:
  Choosing(std::string_view text, const std::vector<std::string>& names, std::size_t chosen)
      : text_(text), out_(text), names_(names), chosen_(chosen) {}

  std::string choose() {
    for (std::size_t at = 0; at < out_.size();) at = take_numbers(at, true);
    counted_ = out_, text_ = counted_; // "6 sc (12; Large: 18)": such a name heads no clause
    const std::vector<Part> lines = lines_of(text_);
    for (std::size_t i = 0; i < lines.size();) i = take_lines(lines, i);
    for (std::size_t at = 0; at < out_.size();) at = take_numbers(at, false);
    return std::move(out_);
  }

  bool tells_apart() const { return apart_; }

private:
  /// A name and what leads and follows it: "Large:", "(winter only)", "for small:".
  struct Marker {
    std::size_t begin = 0, end = 0;
    std::uint32_t names = 0; ///< a bit for each that is named: "Medium and large only:"
  };

  bool is_chosen(const Marker& marker) const { return (marker.names >> chosen_ & 1U) != 0; }

  /// A line, and where it heads a paragraph that is one variant's, that paragraph.
  std::size_t take_lines(const std::vector<Part>& lines, std::size_t i) {
    const Part line = lines[i];
    const std::string_view text = text_.substr(line.begin, line.end - line.begin);
    if (!names_in_header(text).empty()) return i + 1;
    const std::vector<Marker> markers = markers_in(line);
    if (markers.empty()) return i + 1;
    const auto of_all = [this](const Marker& marker) { return marker.names == all(); };
    apart_ = apart_ || !std::all_of(markers.begin(), markers.end(), of_all);
    if (!heads_paragraph(line, markers)) return take_segments(line, markers), i + 1;
    const std::size_t end = end_of_paragraph(lines, i);
    if (is_chosen(markers.front()))
      blank(markers.front().begin, markers.front().end);
    else
      blank_lines(line.begin, lines[end - 1].end);
    return end;
  }

  std::uint32_t all() const { return (std::uint32_t{1} << names_.size()) - 1; }

  /// The line behind a paragraph that line `i` heads: it ends at an empty line, or at the next such head.
  std::size_t end_of_paragraph(const std::vector<Part>& lines, std::size_t i) const {
    const auto empty = [&](std::size_t at) {
      return trimmed(text_.substr(lines[at].begin, lines[at].end - lines[at].begin)).empty();
    };
    const auto heads = [&](std::size_t at) {
      const std::vector<Marker> markers = markers_in(lines[at]);
      return heads_paragraph(lines[at], markers) ||
             (!markers.empty() && markers.front().names == all() && markers.front().begin == lines[at].begin);
    };
    std::size_t end = i + 1;
    while (end < lines.size() && empty(end)) ++end;
    while (end < lines.size() && !empty(end) && !heads(end)) ++end;
    return end;
  }

  /// "Winter:" or "Scarf (winter only)" on a line of its own.
  bool heads_paragraph(Part line, const std::vector<Marker>& markers) const {
    if (markers.size() != 1) return false;
    const bool last = trimmed(text_.substr(markers.front().end, line.end - markers.front().end)).empty();
    const std::string_view before = trimmed(text_.substr(line.begin, markers.front().begin - line.begin));
    return last && std::none_of(before.begin(), before.end(), is_digit);
  }

  std::vector<Marker> markers_in(Part line) const {
    std::vector<Marker> markers;
    for (std::size_t at = line.begin; at < line.end; ++at) {
      const auto marker = marker_at(line, at);
      if (!marker) continue;
      markers.push_back(*marker);
      at = marker->end - 1;
    }
    return markers;
  }

  std::optional<Marker> marker_at(Part line, std::size_t at) const {
    const bool bracket = text_[at] == '(' || text_[at] == '[';
    if (!bracket && !begins_clause(line, at)) return std::nullopt;
    std::size_t begin = behind_blanks(text_, bracket ? at + 1 : at);
    for (const std::string_view lead : {"for ", "in ", "sizes ", "size "})
      if (same_letters(text_.substr(begin, lead.size()), lead)) begin += lead.size();
    const std::optional<Named> first = name_at(line, begin);
    if (!first) return std::nullopt;
    Named named = *first;
    while (const auto next = name_at(line, behind_link(named.end))) {
      if (behind_link(named.end) == named.end) break;
      named = {next->end, named.names | next->names};
    }
    for (const Named& one : {named, *first})
      if (const auto closed = behind_marker(line, one.end, bracket)) return Marker{at, *closed, one.names};
    return std::nullopt;
  }

  /// Names, one or several, and where they end.
  struct Named {
    std::size_t end = 0;
    std::uint32_t names = 0;
  };

  std::optional<Named> name_at(Part line, std::size_t begin) const {
    for (const std::string_view word :
         {"all sizes", "both sizes", "every size", "all versions", "both versions"})
      if (begin + word.size() <= line.end && same_letters(text_.substr(begin, word.size()), word))
        return Named{begin + word.size(), all()};
    for (std::size_t i = 0; i < names_.size(); ++i) {
      const std::size_t end = begin + names_[i].size();
      const bool runs_on = end < line.end && is_letter(text_[end]);
      if (end <= line.end && !runs_on && is_name(text_.substr(begin, names_[i].size()), i))
        return Named{end, std::uint32_t{1} << i};
    }
    return std::nullopt;
  }

  /// Behind "and", "&", a comma or a stroke that links two names; `at` if none stands there.
  std::size_t behind_link(std::size_t at) const {
    const std::size_t link = behind_blanks(text_, at);
    for (const std::string_view word : {"and ", "& ", "+ ", ", and ", ", ", "/", "or "})
      if (same_letters(text_.substr(link, word.size()), word))
        return behind_blanks(text_, link + word.size());
    return at;
  }

  /// A name of one letter is told by its capital.
  bool is_name(std::string_view word, std::size_t i) const {
    return names_[i].size() < 3 ? word == names_[i] : same_letters(word, names_[i]);
  }

  bool begins_clause(Part line, std::size_t at) const {
    std::size_t before = at;
    while (before > line.begin && is_blank(text_[before - 1])) --before;
    return before == line.begin || (before < at && std::string_view(".:;-)").find(text_[before - 1]) != none);
  }

  /// Behind "Large:", "Large only:", "large size -", "winter only)"; none if a name is not used so.
  std::optional<std::size_t> behind_marker(Part line, std::size_t end, bool bracket) const {
    bool only = false;
    for (const std::string_view word : {" size", " version", " variant", " yarn", " only"}) {
      if (!same_letters(text_.substr(end, word.size()), word) || end + word.size() > line.end) continue;
      end += word.size();
      only = only || word == " only";
    }
    const std::size_t mark = behind_blanks(text_, end);
    if (mark >= line.end) return !bracket && only ? std::optional(line.end) : std::nullopt;
    if (bracket) {
      if (text_[mark] != ')' && text_[mark] != ']') return std::nullopt;
      const bool square = text_[mark] == ']';
      return only || square ? std::optional(mark + 1) : std::nullopt;
    }
    return text_[mark] == ':' ? std::optional(mark + 1) : std::nullopt;
  }

  /// From each name on to the next, or to the line's end, is said of that variant.
  void take_segments(Part line, const std::vector<Marker>& markers) {
    bool any = false;
    for (std::size_t i = 0; i < markers.size(); ++i) {
      const std::size_t end = i + 1 < markers.size() ? markers[i + 1].begin : line.end;
      any = any || is_chosen(markers[i]);
      blank(markers[i].begin, is_chosen(markers[i]) ? markers[i].end : end);
    }
    if (!any && markers.front().begin - line.begin <= longest_label) blank(line.begin, line.end);
  }

  /// `named`: only numbers that have names among them, else all.
  std::size_t take_numbers(std::size_t at, bool named) {
    const bool begins =
        is_digit(out_[at]) && (at == 0 || (!is_digit(out_[at - 1]) && !is_letter(out_[at - 1]) &&
                                           out_[at - 1] != '.' && out_[at - 1] != '/'));
    std::vector<Part> numbers = bracketed_numbers(out_, at, names_.size());
    if (!numbers.empty() && !named) return choose_in_bracket(numbers);
    numbers = begins ? numbers_at(out_, at, names_, behind_range) : std::vector<Part>{};
    if (begins && numbers.empty()) numbers = numbers_at(out_, at, names_, behind_number);
    if (numbers.empty() || may_be_count(out_, numbers)) return at + 1;
    if (named && !have_names(out_, numbers)) return at + 1;
    apart_ = true;
    const std::size_t end = end_of_numbers(out_, numbers);
    put(numbers, behind_first_name(at), end);
    return end;
  }

  /// The chosen number takes the place of the first; the others and what stands among them in [begin, end)
  /// go.
  void put(const std::vector<Part>& numbers, std::size_t begin, std::size_t end) {
    const Part one = numbers[chosen_];
    const std::string own = out_.substr(one.begin, one.end - one.begin);
    blank(begin, end);
    std::copy(own.begin(), own.end(), out_.begin() + static_cast<std::ptrdiff_t>(numbers.front().begin));
  }

  std::size_t choose_in_bracket(const std::vector<Part>& numbers) {
    apart_ = true;
    put(numbers, numbers.front().begin, numbers.back().end);
    return numbers.back().end;
  }

  /// "Small: 6; Large: 8": where the name before the first number begins; `at` if none stands there.
  std::size_t behind_first_name(std::size_t at) const {
    for (std::size_t back = 1; back <= names_.front().size() + 2 && back <= at; ++back)
      if (behind_name(out_, at - back, names_.front()) == at &&
          (back == at || !is_letter(out_[at - back - 1])))
        return at - back;
    return at;
  }

  void blank(std::size_t begin, std::size_t end) {
    std::fill(out_.begin() + static_cast<std::ptrdiff_t>(begin),
              out_.begin() + static_cast<std::ptrdiff_t>(end), ' ');
  }

  void blank_lines(std::size_t begin, std::size_t end) {
    for (std::size_t at = begin; at < end; ++at)
      if (out_[at] != '\n' && out_[at] != '\r') out_[at] = ' ';
  }

  std::string_view text_;
  std::string counted_; ///< the text in which numbers behind names are chosen
  std::string out_;
  const std::vector<std::string>& names_;
  std::size_t chosen_;
  bool apart_ = false; ///< something is said of one variant
};

} // namespace

std::vector<std::string> variants_in(std::string_view text) {
  for (const Part line : lines_of(text)) {
    const std::string_view typed = text.substr(line.begin, line.end - line.begin);
    std::vector<std::string> names = names_in_header(typed);
    if (names.size() < 2 && line.begin == 0) names = sizes_in_title(typed);
    if (names.size() < 2) names = sizes_in_brackets(typed);
    if (names.size() < 2) continue;
    Choosing choosing(text, names, 0);
    choosing.choose();
    if (choosing.tells_apart()) return names;
  }
  std::vector<std::string> names = numbered_names(text);
  if (names.size() < 2) return {};
  Choosing choosing(text, names, 0);
  choosing.choose();
  return choosing.tells_apart() ? names : std::vector<std::string>{};
}

std::string in_variant(std::string_view text, const std::vector<std::string>& names, std::size_t chosen) {
  std::string chosen_text =
      chosen < names.size() ? Choosing(text, names, chosen).choose() : std::string(text);
  rule_dot_leaders(chosen_text);
  return chosen_text;
}

} // namespace whorl::pattern
