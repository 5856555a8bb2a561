#include "pattern/named_place.hpp"

#include "pattern/header.hpp"
#include "pattern/pieces.hpp"
#include "pattern/word_names.hpp"
#include "words/ascii.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

constexpr std::ptrdiff_t most_blanks = 2; ///< in a name that no colon sets off

struct Cut {
  std::size_t at = std::string_view::npos; ///< where the name ends
  std::size_t behind = 0;                  ///< where the place begins
};

/// The first mark that may stand between a name and what is said of it.
Cut cut_behind_name(std::string_view line) {
  Cut first;
  for (const std::string_view mark : {": ", " - ", " \xE2\x80\x93 ", " \xE2\x80\x94 ", " (", ". ", ", "})
    if (const std::size_t at = line.find(mark); at < first.at) first = {at, at + mark.size()};
  return first;
}

std::uint32_t byte_of(Span line, std::size_t at) { return line.begin + static_cast<std::uint32_t>(at); }

/// Without the bracket, colon or full stop that closes it.
Span without_end(const Reader& reader, Span place) {
  const auto closes = [&] {
    const std::string_view text = reader.source.at(place);
    if (text.empty()) return false;
    const bool bracket = text.back() == ')' && text.find('(') == std::string_view::npos;
    return bracket || std::string_view(":. ").find(text.back()) != std::string_view::npos;
  };
  while (closes()) --place.end;
  return trimmed(reader.source, place);
}

/// "make 2, | worked in the front loops of Rnd 3"
Span without_make(const Reader& reader, Span place) {
  const std::string_view text = reader.source.at(place);
  const std::size_t comma = text.find(", ");
  if (comma == std::string_view::npos || !read_heading(text.substr(0, comma), reader.vocabulary).says_make)
    return place;
  return trimmed(reader.source, {byte_of(place, comma + 2), place.end});
}

bool may_be_name(const Reader& reader, Span name, Span line, char mark) {
  const std::string_view text = reader.source.at(name);
  if (is_name_of_note(text) || names_start(text, reader.vocabulary)) return false;
  if (mark == ':') return read_header(reader.source.at(line), line).has_value();
  return looks_like_heading(text) && std::count(text.begin(), text.end(), ' ') <= most_blanks &&
         !names_stitches(reader, name) && (!places_something(reader, name) || names_a_thing(reader, name));
}

} // namespace

namespace {

/// The name at the head of a line and what is said of it, whatever that is.
std::optional<NamedPlace> name_and_place(const Reader& reader, Span line) {
  const std::string_view text = reader.source.at(line);
  const Cut cut = cut_behind_name(text);
  if (cut.at == std::string_view::npos) return std::nullopt;
  const Span name = trimmed(reader.source, {line.begin, byte_of(line, cut.at)});
  const Span place = without_make(reader, without_end(reader, {byte_of(line, cut.behind), line.end}));
  if (name.empty() || place.empty() || !may_be_name(reader, name, line, text[cut.at])) return std::nullopt;
  return NamedPlace{name, place};
}

bool speaks_of(const Reader& reader, Span place, std::initializer_list<std::string_view> names) {
  const Sentence sentence = look_up(reader.source.at(place), place.begin, reader.vocabulary);
  for (std::uint32_t at = 0; at < sentence.size(); ++at)
    if (is_named(sentence, at, names)) return true;
  return false;
}

} // namespace

std::optional<NamedPlace> named_place(const Reader& reader, Span line) {
  const auto named = name_and_place(reader, line);
  return named && names_free_loops(reader, named->place) ? named : std::nullopt;
}

std::optional<NamedPlace> named_round(const Reader& reader, Span line) {
  const auto named = name_and_place(reader, line);
  if (!named || names_stitches(reader, named->place)) return std::nullopt;
  const bool last = speaks_of(reader, named->place, {"last"});
  const bool round = speaks_of(reader, named->place, {"round", "row"});
  return last && round ? named : std::nullopt;
}

std::optional<NamedPlace> named_start(const Reader& reader, Span line) {
  constexpr std::string_view wide_open = "\xEF\xBC\x88", wide_close = "\xEF\xBC\x89"; // （）
  const std::string_view text = reader.source.at(line);
  for (const auto& [open, close] :
       {std::pair<std::string_view, std::string_view>{"(", ")"}, {wide_open, wide_close}}) {
    const std::size_t at = text.rfind(open);
    if (at == text.npos || at == 0 || text.size() < at + open.size() + close.size() ||
        text.substr(text.size() - close.size()) != close)
      continue;
    const Span name = trimmed(reader.source, {line.begin, byte_of(line, at)});
    const Span start =
        trimmed(reader.source, {byte_of(line, at + open.size()), byte_of(line, text.size() - close.size())});
    if (!name.empty() && !start.empty() && !names_stitches(reader, name) && only_starts(reader, start))
      return NamedPlace{name, start};
  }
  return std::nullopt;
}

bool is_name_of_note(std::string_view name) {
  std::string low(name);
  for (char& c : low) c = words::small(c);
  for (const std::string_view word : {"note", "notes", "please note", "tip", "tips", "hint", "nb", "n.b.",
                                      "n.b", "ps", "p.s.", "remember", "reminder", "important", "careful"})
    if (low == word) return true;
  return false;
}

} // namespace whorl::pattern
