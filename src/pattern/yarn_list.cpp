#include "pattern/yarn_list.hpp"

#include "pattern/colour.hpp"
#include "pattern/header.hpp"
#include "pattern/reading.hpp"
#include "pattern/sentence.hpp"
#include "pattern/text_words.hpp"
#include "words/ascii.hpp"

#include <algorithm>
#include <optional>

namespace whorl::pattern {

namespace {

using words::is_digit;
using words::is_folded_letter;

constexpr std::size_t longest_list = 300; ///< bytes of a line that lists yarns
constexpr std::uint32_t most_words = 3;   ///< of what a yarn is called

/// One item of a list, [begin, end) in folded bytes.
struct Item {
  std::uint32_t begin = 0, end = 0;
};

/// A line that lists yarns, and the letter that its name tells.
struct YarnLine {
  std::string letter, value;
};

bool is_separator_of_yarns(char c) { return std::string_view(",;/+&|").find(c) != std::string_view::npos; }

std::vector<Item> items_of(const Sentence& sentence) {
  std::vector<Item> items;
  std::uint32_t begin = 0;
  const auto close = [&](std::uint32_t end, std::uint32_t next) {
    if (end > begin) items.push_back({begin, end});
    begin = next;
  };
  int depth = 0;
  for (std::uint32_t at = 0; at < sentence.size();) {
    const char c = sentence.text()[at];
    depth += c == '(' || c == '[' ? 1 : c == ')' || c == ']' ? -1 : 0;
    const words::Word* both = word_meaning(sentence, at, sentence.conjunction);
    if (depth == 0 && is_separator_of_yarns(c))
      close(at, at + 1), ++at;
    else if (depth == 0 && both != nullptr)
      close(at, both->end), at = both->end;
    else
      at = std::max(end_of_letters(sentence, at), at + 1);
  }
  close(sentence.size(), sentence.size());
  return items;
}

/// Letters that stand for a yarn: "A", "MC".
bool is_letter_name(const std::string& name) {
  return !name.empty() && name.size() <= 2 &&
         std::all_of(name.begin(), name.end(), [](char c) { return (c >= 'A' && c <= 'Z') || is_digit(c); });
}

/// The colour that an item names; a letter that it is known by.
ListedYarn named_in(const Sentence& sentence, const Item& item) {
  ListedYarn yarn;
  for (std::uint32_t at = item.begin; at < item.end; at = std::max(end_of_letters(sentence, at), at + 1)) {
    const auto name = yarn_name_at(sentence, at, true);
    if (!name || name->end > item.end) continue;
    const std::string written = written_name(sentence, *name);
    std::string& told = is_letter_name(written) ? yarn.letter : yarn.name;
    if (told.empty()) told = written;
    at = name->end;
  }
  return yarn;
}

bool has_digit(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  const std::string_view text = sentence.text().substr(begin, end - begin);
  return std::any_of(text.begin(), text.end(), words::is_digit);
}

/// The few words of an item but for brackets, numbers and a letter: "moss" of "moss (10 g)"; "" for more.
std::string words_of(const Sentence& sentence, const Item& item) {
  std::string name;
  std::uint32_t words = 0;
  for (std::uint32_t at = item.begin; at < item.end;) {
    const char c = sentence.text()[at];
    if (c == '(' || c == '[') break;
    const std::uint32_t end = std::min(end_of_letters(sentence, at), item.end);
    if (!name.empty() && word_meaning(sentence, at, sentence.in) != nullptr) { // "cotton in rust"
      name.clear();
      words = 0;
      at = end;
      continue;
    }
    const bool letter = end == at + 1 || is_text_word(sentence.vocabulary,
                                                      sentence.text().substr(at, end - at), TextWord::yarn);
    if (words::is_digit(c) && !name.empty()) break;                                       // "moss 50 g"
    const bool unit = words == 0 && end <= at + 2 && has_digit(sentence, item.begin, at); // "50 g moss"
    if (end > at && !letter && !unit) {
      name += (name.empty() ? "" : " ") + std::string(sentence.text().substr(at, end - at));
      ++words;
    }
    at = std::max(end, at + 1);
  }
  return words > 0 && words <= most_words ? name : std::string();
}

/// Whether a line begins with a word for yarn; asked of most lines, so that few are looked up.
bool begins_with_yarn(std::string_view line, const words::Vocabulary& vocabulary) {
  constexpr std::size_t longest_word = 24;
  const std::string folded = words::fold(line.substr(0, longest_word)).text;
  return end_of_text_word(vocabulary, folded, 0, TextWord::yarn) > 0;
}

/// The letter that stands in a bracket behind words that are no stitches: "A" of "4ply in tawny (A)".
std::string letter_behind(const Sentence& sentence, const Item& item) {
  std::uint32_t at = item.begin;
  for (; at < item.end && sentence.text()[at] != '('; at = std::max(end_of_letters(sentence, at), at + 1))
    for (const words::Word& word : words_at(sentence, at))
      if (is_work(sentence, word)) return {};
  const auto name = at < item.end ? yarn_name_at(sentence, at + 1, true) : std::nullopt;
  const std::string letter = name ? written_name(sentence, *name) : std::string();
  const bool alone = name && sentence.text().substr(name->end, 1) == ")";
  return alone && is_letter_name(letter) && !words_of(sentence, item).empty() ? letter : std::string();
}

/// Whether a line names yarns by letters in brackets, whatever it calls them: "cotton in rust (A) and cream
/// (B)". Asked of every line, so most are not looked up.
bool letters_yarns(std::string_view line, const words::Vocabulary& vocabulary) {
  const std::size_t first = line.find(')');
  if (first == std::string_view::npos || line.find(')', first + 1) == std::string_view::npos) return false;
  const Sentence sentence = look_up(line, 0, vocabulary);
  std::vector<std::string> letters;
  for (const Item& item : items_of(sentence))
    if (std::string letter = letter_behind(sentence, item); !letter.empty()) letters.push_back(letter);
  constexpr std::size_t fewest = 2;
  return letters.size() >= fewest && (letters[0] == "A" || letters[0] == "MC") && letters[1] != letters[0];
}

/// "Yarn", "Yarn A", "Wool and colours"; a letter alone too, if what it stands for is a colour.
std::optional<YarnLine> yarn_line(std::string_view line, const words::Vocabulary& vocabulary) {
  constexpr std::size_t longest_letter = 2;
  if (line.empty() || line.size() > longest_list) return std::nullopt;
  if (lists_yarns(line, vocabulary)) return YarnLine{"", std::string(line)};
  const auto header = read_header(line, {});
  const bool yarns = header && begins_with_yarn(header->name, vocabulary);
  const std::string_view told = line.substr(std::min(line.find(':'), line.size() - 1) + 1);
  if (const std::string_view list = line.find(':') == line.npos ? line : told;
      letters_yarns(list, vocabulary))
    return YarnLine{"", std::string(list)};
  if (!header || header->value.empty() || !(yarns || header->name.size() <= longest_letter))
    return std::nullopt;
  const Sentence name = look_up(header->name, 0, vocabulary);
  const auto letter = yarn_name_at(name, 0, true);
  const std::string written = letter ? written_name(name, *letter) : std::string();
  if (!yarns && (!is_letter_name(written) || !yarn_name_at(look_up(header->value, 0, vocabulary), 0, false)))
    return std::nullopt;
  return YarnLine{is_letter_name(written) ? written : "", header->value};
}

template <class Each> void for_each_line(std::string_view text, Each each) {
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    each(trim(text.substr(at, end - at)));
    at = end + 1;
  }
}

/// The lines of a text that list yarns.
std::vector<YarnLine> yarn_lines(const Source& source, const words::Vocabulary& vocabulary) {
  std::vector<YarnLine> lines;
  for_each_line(source.text(), [&](std::string_view line) {
    if (auto found = yarn_line(line, vocabulary)) lines.push_back(std::move(*found));
  });
  return lines;
}

/// Whether a line's word [begin, end) stands where a yarn tells in what stitches are worked: "(moss)", "moss:
/// 7 sc", "moss 7 sc", "7 sc moss".
bool stands_for_yarn(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  const std::string_view text = sentence.text();
  const auto is_one_of = [](std::string_view marks, char c) {
    return marks.find(c) != std::string_view::npos;
  };
  std::uint32_t before = begin;
  while (before > 0 && text[before - 1] == ' ') --before;
  const std::uint32_t next = skip_blanks(text, end);
  const char head = before > 0 ? text[before - 1] : '\0', tail = next < text.size() ? text[next] : '\0';
  const bool opens = is_one_of(":,;*([", head), closes = is_one_of(":,;*)]", tail);
  if (is_one_of("([", head) && is_one_of(")]", tail)) return true;
  if (opens && (tail == ':' || is_digit(tail))) return true;
  std::uint32_t word = before;
  while (word > 0 && is_folded_letter(text[word - 1])) --word;
  const WordsAt words = words_at(sentence, word);
  return closes && word < before && std::any_of(words.begin(), words.end(), [&](const words::Word& one) {
           return is_work(sentence, one);
         });
}

/// Whether the work is led into what a line calls so: "in moss", "with moss", "change to moss".
bool works_in(std::string_view line, const std::string& name, const words::Vocabulary& vocabulary) {
  const Sentence sentence = look_up(line, 0, vocabulary);
  for (std::size_t at = sentence.text().find(name); at != std::string_view::npos;
       at = sentence.text().find(name, at + 1)) {
    const std::size_t end = at + name.size();
    if (at == 0 || is_folded_letter(sentence.text()[at - 1]) ||
        (end < sentence.size() && is_folded_letter(sentence.text()[end])))
      continue;
    if (stands_for_yarn(sentence, static_cast<std::uint32_t>(at), static_cast<std::uint32_t>(end)))
      return true;
    if (sentence.text()[at - 1] != ' ') continue;
    std::size_t word = at - 1;
    while (word > 0 && is_folded_letter(sentence.text()[word - 1])) --word;
    const auto begin = static_cast<std::uint32_t>(word);
    if (leads_to_yarn(sentence, begin)) return true;
    const auto placings = read_placings(line, {0, static_cast<std::uint32_t>(line.size())}, vocabulary);
    if (std::any_of(placings.begin(), placings.end(),
                    [](const Placing& p) { return p.what == What::change || p.what == What::join; }))
      return true;
  }
  return false;
}

/// What an item calls its yarn in words that are not all known.
struct ToldName {
  std::string name;
  std::vector<OwnColour> own;
  bool used = false;
};

/// The words of a name that are not known: "oak" of "oak brown", which ends in a colour; "moss", which is
/// one.
std::vector<OwnColour> unknown_words(const std::string& name, const words::Vocabulary& vocabulary) {
  std::vector<OwnColour> own;
  std::size_t begin = 0, last = 0;
  for (std::size_t end = 0; end < name.size(); begin = end + 1) {
    end = std::min(name.find(' ', begin), name.size());
    last = begin;
    const std::string word = name.substr(begin, end - begin);
    if (!is_colour(word, vocabulary) && !is_text_word(vocabulary, word, TextWord::shade))
      own.push_back({word, true});
  }
  const bool ends_in_colour = is_colour(name.substr(last), vocabulary);
  if (ends_in_colour) return own;
  if (last > 0) return {};
  for (OwnColour& word : own) word.shade = false;
  return own;
}

std::vector<ToldName> names_told(const Source& source, const words::Vocabulary& vocabulary) {
  std::vector<ToldName> names;
  for (const YarnLine& line : yarn_lines(source, vocabulary)) {
    const Sentence sentence = look_up(line.value, 0, vocabulary);
    for (const Item& item : items_of(sentence)) {
      ToldName told{words_of(sentence, item), {}, false};
      told.own = unknown_words(told.name, vocabulary);
      if (!told.own.empty()) names.push_back(std::move(told));
    }
  }
  return names;
}

void add(std::vector<ListedYarn>& yarns, ListedYarn yarn) {
  const auto is_it = [&](const ListedYarn& other) { return other.name == yarn.name; };
  if (!yarn.name.empty() && std::none_of(yarns.begin(), yarns.end(), is_it)) yarns.push_back(std::move(yarn));
}

/// Where the longest colour ends that begins at a byte, whatever stands behind it; `at` if none does.
std::uint32_t end_of_colour_among(const Sentence& sentence, std::uint32_t at) {
  constexpr std::size_t longest = 24; // bytes
  const std::string_view rest = sentence.text().substr(at);
  for (std::size_t length = std::min(longest, rest.size()); length > 0; --length)
    if (is_colour(rest.substr(0, length), sentence.vocabulary))
      return at + static_cast<std::uint32_t>(length);
  return at;
}

/// Where no blanks part words: every colour of a list, "白とグレー"; whether it has some.
bool add_colours(const Sentence& sentence, std::vector<ListedYarn>& yarns) {
  const std::size_t before = yarns.size();
  for (std::uint32_t at = 0; at < sentence.size();) {
    const std::uint32_t end = end_of_colour_among(sentence, at);
    if (end > at) add(yarns, {std::string(sentence.text().substr(at, end - at)), ""});
    at = std::max(end, at + 1);
  }
  return yarns.size() > before;
}

} // namespace

bool lists_yarns(std::string_view line, const words::Vocabulary& vocabulary) {
  if (line.size() > longest_list || line.find(':') != std::string_view::npos ||
      !begins_with_yarn(line, vocabulary))
    return false;
  const Sentence sentence = look_up(line, 0, vocabulary);
  const auto first = yarn_name_at(sentence, 0, false);
  if (!first || first->begin == 0 || !is_letter_name(written_name(sentence, *first))) return false;
  const std::vector<Item> items = items_of(sentence);
  return std::all_of(items.begin(), items.end(), [&](const Item& item) {
    const ListedYarn yarn = named_in(sentence, item);
    return !yarn.letter.empty() && (!yarn.name.empty() || !words_of(sentence, item).empty());
  });
}

std::vector<ListedYarn> yarns_listed(const Source& source, const words::Vocabulary& vocabulary) {
  std::vector<ListedYarn> yarns;
  for (const YarnLine& line : yarn_lines(source, vocabulary)) {
    const Sentence sentence = look_up(line.value, 0, vocabulary);
    const std::vector<Item> items = items_of(sentence);
    if (!vocabulary.blanks_between_words && line.letter.empty() &&
        line.value.find('(') == std::string::npos && add_colours(sentence, yarns))
      continue;
    for (std::size_t i = 0; i < items.size(); ++i) {
      ListedYarn yarn = named_in(sentence, items[i]);
      if (i == 0 && !line.letter.empty()) yarn.letter = line.letter;
      if (yarn.name.empty() && !yarn.letter.empty()) yarn.name = words_of(sentence, items[i]);
      add(yarns, std::move(yarn));
      if (!line.letter.empty()) break;
    }
  }
  return yarns;
}

std::vector<OwnColour> own_colours(const Source& source, const words::Vocabulary& vocabulary) {
  std::vector<ToldName> names = names_told(source, vocabulary);
  if (names.empty()) return {};
  for_each_line(source.text(), [&](std::string_view line) {
    const std::string folded = words::fold(line).text;
    for (ToldName& told : names)
      if (!told.used && folded.find(told.name) != std::string::npos && !yarn_line(line, vocabulary))
        told.used = works_in(line, told.name, vocabulary);
  });
  std::vector<OwnColour> own;
  for (const ToldName& told : names)
    for (const OwnColour& word : told.own)
      if (told.used &&
          std::none_of(own.begin(), own.end(), [&](const OwnColour& o) { return o.word == word.word; }))
        own.push_back(word);
  return own;
}

} // namespace whorl::pattern
