#include "pattern/signless.hpp"

#include "pattern/colour.hpp"
#include "pattern/own_names.hpp"
#include "pattern/text_words.hpp"
#include "words/ascii.hpp"
#include "words/letters.hpp"

#include <algorithm>
#include <array>

namespace whorl::pattern {

namespace {

constexpr std::size_t none = std::string_view::npos;
constexpr std::size_t longest_capitals = 4;
constexpr std::size_t longest_abbreviation = 6;
constexpr std::size_t most_entries = 40;

using words::is_capital;
using words::is_digit;
using words::is_small;
bool is_letter(char c) { return is_small(c) || is_capital(c) || static_cast<unsigned char>(c) >= 0x80; }
using words::small;

std::string small_letters(std::string_view text) {
  std::string out(text);
  std::transform(out.begin(), out.end(), out.begin(), small);
  return out;
}

Span part(Span line, std::size_t begin, std::size_t end) {
  return {line.begin + static_cast<std::uint32_t>(begin), line.begin + static_cast<std::uint32_t>(end)};
}

// Entries without a sign

/// A single letter or sign, or an abbreviation in capitals.
bool is_letter_name(std::string_view word) {
  if (word.empty() || is_digit(word.front())) return false;
  if (words::letter_at(word, 0).length == word.size())
    return is_letter(word.front()) || std::string_view("+^#%@~&<>").find(word.front()) != none;
  return word.size() <= longest_capitals && std::all_of(word.begin(), word.end(), is_capital);
}

bool is_abbreviation(std::string_view word) {
  return !word.empty() && word.size() <= longest_abbreviation &&
         std::all_of(word.begin(), word.end(), [](char c) { return is_letter(c) || is_digit(c); }) &&
         is_letter(word.front());
}

/// `sc`, `sl st`, `double crochet`: the value begins with a word that nobody types for anything else.
bool names_stitch(std::string_view value) {
  constexpr std::array<std::string_view, 18> words{
      "sc",     "hdc",  "dc",     "tr",     "inc",      "dec",      "ch",    "sl",   "slst",
      "single", "half", "double", "treble", "increase", "decrease", "chain", "slip", "invdec"};
  const std::string first = small_letters(value.substr(0, value.find(' ')));
  return std::find(words.begin(), words.end(), first) != words.end() &&
         std::count(value.begin(), value.end(), ' ') <= 2;
}

/// `sc`, `three sc in one`, `2X in 1`: it has a word of two letters, or a figure before a letter.
bool may_be_meaning(std::string_view text) {
  if (text.empty() || !(is_letter(text.front()) || is_digit(text.front()))) return false;
  for (std::size_t at = 0; at + 1 < text.size(); ++at)
    if ((is_letter(text[at]) || is_digit(text[at])) && is_letter(text[at + 1])) return true;
  return false;
}

/// Bytes of the mark between two entries: a dot half way up or a bullet has several.
std::size_t mark_length(std::string_view text, std::size_t at) {
  for (const std::string_view mark : {"\xC2\xB7", "\xE2\x80\xA2", "\xE2\x88\x99"})
    if (text.substr(at, mark.size()) == mark) return mark.size();
  return 1;
}

/// What ends at a comma, semicolon, bar, slash or dot outside brackets.
std::size_t end_of_piece(std::string_view text, std::size_t from) {
  int depth = 0;
  for (std::size_t at = from; at < text.size(); ++at) {
    if (text[at] == '(' || text[at] == '[') ++depth;
    if (text[at] == ')' || text[at] == ']') --depth;
    if (depth <= 0 && std::string_view(",;/|").find(text[at]) != none) return at;
    if (depth <= 0 && mark_length(text, at) > 1) return at;
  }
  return text.size();
}

struct Pieces {
  std::vector<Definition> found;
  std::vector<std::string> names;
  bool strange = false; ///< a piece is no entry
  bool told = false;    ///< a name is known for one by its meaning alone: "Zun inc"
};

/// Where a definition without a sign is looked for.
struct Looked {
  const Source& source;
  Span line;
  bool in_list = false;
  const words::Vocabulary& vocabulary;
};

void take_piece(const Looked& looked, std::size_t begin, std::size_t end, Pieces& out) {
  const Span line = looked.line;
  const bool in_list = looked.in_list;
  const std::string_view text = looked.source.at(line);
  const std::size_t whole = std::min(end + mark_length(text, end), text.size());
  while (begin < end && text[begin] == ' ') ++begin;
  while (end > begin && (text[end - 1] == ' ' || text[end - 1] == '.')) --end;
  if (begin == end) return;
  const std::size_t blank = text.find(' ', begin);
  const std::size_t value = blank < end ? text.find_first_not_of(' ', blank) : none;
  const std::string_view name = text.substr(begin, std::min(blank, end) - begin);
  const bool told = value != none && is_abbreviation(name) &&
                    !is_colour(small_letters(name), looked.vocabulary) &&
                    names_stitch(text.substr(value, end - value));
  const bool whole_name =
      value != none && !meanings_of(text.substr(begin, end - begin), looked.vocabulary).empty();
  const bool letter = is_letter_name(name) || (in_list && is_abbreviation(name) && !whole_name);
  const bool named = letter || told;
  out.told = out.told || (told && !letter);
  if (value == none || !named || !may_be_meaning(text.substr(value, end - value))) {
    out.strange = true;
    return;
  }
  Definition found;
  found.name = part(line, begin, begin + name.size());
  found.value = part(line, value, end);
  found.whole = part(line, begin, whole);
  found.equals = true;
  found.in_list = in_list;
  out.found.push_back(found);
  out.names.push_back(small_letters(name));
}

/// Where the entries may begin: at the head, or behind the first full stop or colon.
std::size_t behind_title(std::string_view text) {
  for (std::size_t at = 0; at + 1 < text.size(); ++at)
    if ((text[at] == '.' || text[at] == ':') && text[at + 1] == ' ') return at + 2;
  return none;
}

Pieces pieces_from(const Looked& looked, std::size_t from) {
  Pieces pieces;
  const std::string_view text = looked.source.at(looked.line);
  for (std::size_t at = from; at < text.size() && !pieces.strange && pieces.found.size() < most_entries;) {
    const std::size_t end = end_of_piece(text, at);
    take_piece(looked, at, end, pieces);
    at = end + mark_length(text, end);
  }
  return pieces;
}

/// Two names at least, no two alike, and not all of them articles; three where only meanings tell.
bool is_list(const Pieces& pieces, bool in_list) {
  if (pieces.strange || pieces.found.empty()) return false;
  if (in_list) return true;
  if (pieces.told && pieces.found.size() < 3) return false;
  std::vector<std::string> names = pieces.names;
  std::sort(names.begin(), names.end());
  const bool distinct = std::adjacent_find(names.begin(), names.end()) == names.end();
  const auto articles = std::count_if(names.begin(), names.end(),
                                      [](const std::string& name) { return name == "a" || name == "i"; });
  return distinct && names.size() >= 2 && static_cast<std::size_t>(articles) < names.size();
}

// Definitions in sentences

struct Separator {
  std::string text;
  bool verb = false;
};

/// " = ", ": ", and the verbs of the language: " is ", " means ".
std::vector<Separator> separators_of(const words::Vocabulary& vocabulary) {
  std::vector<Separator> all{{" = ", false}, {"=", false}, {": ", false}};
  for (const std::string_view verb : text_phrases(vocabulary, TextWord::means))
    all.push_back({" " + std::string(verb) + " ", true});
  return all;
}
/// A word or two that may be a stitch's name, at the head of a sentence.
bool may_be_name(std::string_view name, const words::Vocabulary& vocabulary) {
  if (name.empty() || name.size() > 24 || !is_letter(name.front())) return false;
  if (std::count(name.begin(), name.end(), ' ') > 1) return false;
  const std::string low = small_letters(name.substr(0, name.find(' ')));
  if (is_text_word(vocabulary, low, TextWord::pronoun)) return false;
  return std::all_of(name.begin(), name.end(),
                     [](char c) { return is_letter(c) || c == ' ' || c == '-' || c == '"'; });
}

/// "white: inc, brown: 3 sc", "B: 3 sc" tell in which yarn.
bool names_yarn(std::string_view name, std::string_view separator, const words::Vocabulary& vocabulary) {
  return is_colour(small_letters(name), vocabulary) || (name.size() == 1 && separator == ": ");
}

std::size_t behind_article(std::string_view text, std::size_t at, const words::Vocabulary& vocabulary) {
  const std::size_t end = std::min(text.find(' ', at), text.size());
  const std::string word = small_letters(text.substr(at, end - at));
  const bool passed = is_text_word(vocabulary, word, TextWord::article) ||
                      is_text_word(vocabulary, word, TextWord::definition_lead);
  return passed && end < text.size() ? end + 1 : at;
}

/// Where a sentence ends: at a full stop, or before a count in brackets.
std::size_t end_of_sentence(std::string_view text, std::size_t from) {
  for (std::size_t at = from; at < text.size(); ++at) {
    if (text[at] == '.' && (at + 1 == text.size() || text[at + 1] == ' ')) return at;
    const bool bracket = text[at] == '(' || text[at] == '[';
    if (bracket && at + 1 < text.size() && is_digit(text[at + 1]) && text.find_first_of("*x", at) == none)
      return at;
    if (text[at] == ')' || text[at] == ';') return at;
  }
  return text.size();
}

/// The definition that begins at a place; its value is empty if none does.
Definition definition_at(std::string_view text, Span line, std::size_t from, bool own_line,
                         const words::Vocabulary& vocabulary) {
  const std::size_t begin = behind_article(text, from, vocabulary);
  const std::size_t clause = std::min(text.find_first_of(".,;()[]*", begin), text.size());
  Definition found;
  for (const Separator& separator : separators_of(vocabulary)) {
    const std::size_t at = text.substr(0, clause).find(separator.text, begin);
    if (at == none || (own_line && !separator.verb) ||
        !may_be_name(text.substr(begin, at - begin), vocabulary))
      continue;
    if (names_yarn(text.substr(begin, at - begin), separator.text, vocabulary)) continue;
    const std::size_t value = text.find_first_not_of(' ', at + separator.text.size());
    if (value == none || value >= clause) continue;
    std::size_t end = end_of_sentence(text, value);
    found.whole =
        part(line, from, std::min(end + (end < text.size() && text[end] == '.' ? 1 : 0), text.size()));
    while (end > value && text[end - 1] == ' ') --end;
    if (end <= value || !may_be_meaning(text.substr(value, end - value))) continue;
    found.name = part(line, begin, at);
    found.value = part(line, value, end);
    found.equals = separator.text.find('=') != none;
    found.in_line = found.behind_work = true;
    return found;
  }
  return {};
}

/// Whether the point at a place stands behind a number.
bool is_ordinal(std::string_view text, std::size_t at) {
  return text[at] == '.' && at > 0 && is_digit(text[at - 1]);
}

/// Where the work of a line begins, behind its label.
std::size_t behind_label(std::string_view text) {
  std::size_t at = 0;
  while (at < text.size() && is_letter(text[at])) ++at;
  const std::size_t work = text.find_first_not_of(" .:)-0123456789", at);
  return work == none ? text.size() : work;
}

} // namespace

std::vector<Definition> definitions_without_signs(const Source& source, Span line, bool in_list,
                                                  const words::Vocabulary& vocabulary) {
  const std::string_view text = source.at(line);
  const Looked looked{source, line, in_list, vocabulary};
  Pieces pieces = pieces_from(looked, 0);
  if (is_list(pieces, in_list)) return pieces.found;
  const std::size_t title = behind_title(text);
  if (title == none) return {};
  pieces = pieces_from(looked, title);
  return is_list(pieces, in_list) ? pieces.found : std::vector<Definition>{};
}

std::vector<Definition> definitions_in_sentences(const Source& source, Span line,
                                                 const words::Vocabulary& vocabulary) {
  const std::string_view text = source.at(line);
  std::vector<Definition> found;
  if (text.empty()) return found;
  const bool labelled = is_digit(text.front()) || text.find_first_of("0123456789") < 8;
  int depth = 0;
  for (std::size_t at = labelled ? behind_label(text) : 0; at < text.size(); ++at) {
    if (text[at] == '(' || text[at] == '[') ++depth;
    if (text[at] == ')' || text[at] == ']') --depth;
    const bool head = at == 0 && !labelled;
    const bool mark = std::string_view(".,;)]").find(text[at]) != none && text.substr(at + 1, 1) == " ";
    const bool ordinal = text[at] == '.' && at > 0 && is_digit(text[at - 1]); // "begynd i 2. lm: 1 km"
    if (depth > 0 || ordinal || !(head || mark)) continue;
    const std::size_t begin = head ? 0 : text.find_first_not_of(' ', at + 1);
    if (begin == none) break;
    if (is_ordinal(text, at) && !is_capital(text[begin])) continue; // "from the 2. | ch: 1 sc, 1 hdc"
    const Definition definition = definition_at(text, line, begin, !labelled, vocabulary);
    if (definition.value.empty()) continue;
    found.push_back(definition);
    at = std::max<std::size_t>(at, definition.whole.end - line.begin - 1);
  }
  return found;
}

} // namespace whorl::pattern
