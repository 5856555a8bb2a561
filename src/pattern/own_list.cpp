#include "pattern/own_list.hpp"

#include "pattern/colour.hpp"

#include "pattern/signless.hpp"
#include "pattern/text_words.hpp"
#include "words/ascii.hpp"
#include "words/fold.hpp"
#include "words/lattice.hpp"

#include <algorithm>
#include <array>

namespace whorl::pattern {

namespace {

constexpr std::size_t longest_name = 40;
constexpr std::size_t longest_heading = 60;
constexpr int words_of_name = 5;
constexpr std::size_t none = std::string_view::npos;

bool is_blank(char c) { return c == ' ' || c == '\t'; }
using words::is_digit;
using words::small;
bool is_letter(char c) {
  return (small(c) >= 'a' && small(c) <= 'z') || static_cast<unsigned char>(c) >= 0x80;
}

std::string small_letters(std::string_view text) {
  std::string out(text);
  std::transform(out.begin(), out.end(), out.begin(), small);
  return out;
}

constexpr std::array<std::string_view, 4> bullets{"\xE2\x80\xA2", "\xC2\xB7", "\xE2\x97\x8F", "\xE2\x96\xAA"};

/// Bytes of blanks and list marks at the head of a text.
std::size_t head_marks(std::string_view text) {
  std::size_t at = 0;
  while (at < text.size()) {
    const auto bullet = std::find_if(bullets.begin(), bullets.end(), [&](std::string_view mark) {
      return text.substr(at, mark.size()) == mark;
    });
    const bool mark = (text[at] == '-' || text[at] == '*') && at + 1 < text.size() && is_blank(text[at + 1]);
    const bool bold = text.substr(at, 2) == "**";
    if (bullet != bullets.end())
      at += bullet->size();
    else if (is_blank(text[at]) || mark || bold)
      at += bold ? 2 : 1;
    else
      break;
  }
  return at;
}

/// `• = sl st`: the mark is itself the name.
std::size_t head_of_list(std::string_view text) {
  const std::size_t head = head_marks(text);
  const std::size_t mark = std::min(text.find_first_not_of(" \t"), text.size());
  return head < text.size() && text[head] == '=' && mark < head ? mark : head;
}

std::size_t without_tail(std::string_view text) {
  std::size_t end = text.size();
  while (end > 0 && (is_blank(text[end - 1]) || text[end - 1] == '*')) --end;
  return end;
}

/// Bytes of a mark between two entries, a wide one being as good as a narrow one; 0 if none stands there.
std::size_t entry_mark_at(std::string_view text, std::size_t at) {
  if (std::string_view(",;/|.").find(text[at]) != none) return 1;
  for (const std::string_view wide : {"\xEF\xBC\x8C", "\xEF\xBC\x9B", "\xE3\x80\x81", "\xE3\x80\x82"})
    if (text.substr(at, wide.size()) == wide) return wide.size();
  return 0;
}

/// The first such mark from a place on, or the end.
std::size_t find_entry_mark(std::string_view text, std::size_t at) {
  while (at < text.size() && entry_mark_at(text, at) == 0) ++at;
  return at;
}

std::string_view trimmed(std::string_view text) {
  const std::size_t head = std::min(text.find_first_not_of(" \t"), text.size());
  return text.substr(head, std::max(without_tail(text), head) - head);
}

/// Where a name ends and what it means begins.
struct Separator {
  std::size_t at = none;
  std::size_t end = none;
  bool equals = false;
};

/// The separator at a place, if there is one: ` = `, `: `, ` - `, a tab.
Separator separator_at(std::string_view text, std::size_t at) {
  if (text[at] == '=') return {at, at + 1, true};
  if (text[at] == '\t') return {at, at + 1, false};
  if (text.substr(at, 3) == "\xEF\xBC\x9D") return {at, at + 3, true};  // ＝
  if (text.substr(at, 3) == "\xEF\xBC\x9A") return {at, at + 3, false}; // ：
  const auto behind = [&](std::size_t next) {
    return next >= text.size() || is_blank(text[next]) || text[next] == '*';
  };
  if (text[at] == ':' && behind(at + 1)) return {at, at + 1, false};
  const bool blank = at > 0 && is_blank(text[at - 1]);
  const bool letter = at > 0 && (is_letter(text[at - 1]) || text[at - 1] == ')');
  if (text[at] == '-' && (blank || letter) && at + 1 < text.size() && is_blank(text[at + 1]))
    return {at, at + 1, false};
  for (const std::string_view dash : {"\xE2\x80\x93", "\xE2\x80\x94", "\xE2\x86\x92", "--"})
    if (text.substr(at, dash.size()) == dash && blank && behind(at + dash.size()))
      return {at, at + dash.size(), false};
  return {};
}

/// The first separator outside brackets.
Separator find_separator(std::string_view text, std::size_t from = 0) {
  int depth = 0;
  for (std::size_t at = from; at < text.size(); ++at) {
    if (text[at] == '(' || text[at] == '[') ++depth;
    if (text[at] == ')' || text[at] == ']') --depth;
    if (depth > 0) continue;
    if (const Separator found = separator_at(text, at); found.at != none) return found;
  }
  return {};
}

/// A word that begins with a figure (`4`, `2nd`) or a label (`R4`, `Rnds`).
bool is_of_label(std::string_view word, const words::Vocabulary& vocabulary) {
  if (word.empty()) return false;
  if (is_digit(word.front())) return true;
  std::size_t letters = 0;
  while (letters < word.size() && is_letter(word[letters])) ++letters;
  const bool label =
      is_text_word(vocabulary, words::fold(word.substr(0, letters)).text, TextWord::label_word);
  return label && (letters == word.size() || is_digit(word[letters]));
}

/// A name that begins with how many: "3dccl", "3-dc bobble"; no "2nd".
bool begins_with_count(std::string_view name) {
  const std::size_t figures = std::min(name.find_first_not_of("0123456789"), name.size());
  const std::size_t dash = figures < name.size() && name[figures] == '-' ? 1 : 0;
  const std::size_t begin = figures + dash;
  std::size_t end = begin;
  while (end < name.size() && is_letter(name[end])) ++end;
  const std::string_view word = name.substr(begin, end - begin);
  const auto ending = {std::string_view("st"), std::string_view("nd"), std::string_view("rd"),
                       std::string_view("th")};
  return figures > 0 && figures < 3 && word.size() > 1 &&
         std::find(ending.begin(), ending.end(), small_letters(word)) == ending.end();
}

/// A sign that stands for a stitch: `+ = sc`.
bool is_sign(std::string_view name) {
  return name.size() == 1 && std::string_view("+^#%@~&<>").find(name.front()) != none;
}

/// Words that the language knows as one, abbreviated: "verl. fM".
bool is_cut_phrase(std::string_view name, const words::Vocabulary& vocabulary) {
  if (name.empty() || name.size() > longest_name || name.find('.') == none) return false;
  const words::Folded folded = words::fold(name);
  const words::Lattice lattice = words::lattice(folded, vocabulary);
  return !lattice.words.empty() && lattice.words.front().kind == words::WordKind::phrase &&
         lattice.words.front().begin == 0 && lattice.words.front().end == folded.text.size();
}

/// "Eyes: between Rnds 4 & 5": no word that is explained.
bool names_eyes(std::string_view name, const words::Vocabulary& vocabulary) {
  const words::Folded folded = words::fold(name);
  const words::Lattice lattice = words::lattice(folded, vocabulary);
  const words::Concept eye = words::find_concept(vocabulary, "eye");
  return std::any_of(lattice.words.begin(), lattice.words.end(), [&](const words::Word& word) {
    return word.begin == 0 && word.end == folded.text.size() && word.kind == words::WordKind::phrase &&
           word.means == eye;
  });
}

/// Whether a text may be the name of a stitch or word: a few words, none a figure or a round's label.
bool may_be_name(std::string_view name, const words::Vocabulary& vocabulary) {
  if (is_sign(name)) return true;
  const bool counts = begins_with_count(name);
  if (name.empty() || name.size() > longest_name || !(is_letter(name.front()) || counts)) return false;
  int words = 0;
  for (std::size_t at = 0; at < name.size();) {
    const std::size_t end = std::min(name.find_first_of(" \t", at), name.size());
    const std::string_view word = name.substr(at, end - at);
    const bool alone = name.size() == word.size() && word.size() == 1; // `R = round`
    if (!alone && !(at == 0 && counts) && is_of_label(word, vocabulary)) return false;
    words += word.empty() ? 0 : 1;
    at = end + 1;
  }
  return words <= words_of_name && name.find_first_of(",;!?\"") == none && !names_eyes(name, vocabulary) &&
         (name.find('.') == none || is_cut_phrase(name, vocabulary));
}

bool has_letter(std::string_view text) { return std::any_of(text.begin(), text.end(), is_letter); }

bool is_list_heading(std::string_view text, const words::Vocabulary& vocabulary) {
  if (text.size() > longest_heading || !has_letter(text)) return false;
  const std::string low = words::fold(text).text;
  constexpr std::ptrdiff_t most_blanks = 3;
  const bool sentence = text.back() == '.' && std::count(text.begin(), text.end(), ' ') > most_blanks;
  if (sentence || low.find(" are used") != std::string::npos) return false; // "UK crochet terms are used."
  if (low == "key" || low == "stitches" || low == "terms") return true;
  return has_text_word(vocabulary, low, TextWord::list_heading);
}

/// Cuts the text into lines of definitions.
class ListFinder {
public:
  ListFinder(const Source& source, const words::Vocabulary& vocabulary)
      : source_(source), vocabulary_(vocabulary) {}

  OwnList find() {
    for (std::size_t i = 0; i < source_.line_count(); ++i) take_line(source_.line(i));
    return std::move(list_);
  }

private:
  void take_line(Span line) {
    const std::string_view typed = source_.at(line);
    const std::size_t head = head_of_list(typed);
    const std::string_view text = typed.substr(head, std::max(without_tail(typed), head) - head);
    const Span span{line.begin + static_cast<std::uint32_t>(head),
                    line.begin + static_cast<std::uint32_t>(head + text.size())};
    if (text.empty()) return end_list();
    const std::size_t before = list_.definitions.size();
    if (is_work(text)) {
      in_list_ = false;
      take_brackets(span);
      take_sentences(span);
    } else if (const Separator first = find_separator(text); first.at == none) {
      take_bare(span, text);
    } else if (text.substr(first.end).find_first_not_of(" \t*") == none) {
      take_bare(span, text);
    } else {
      take_entries(span, line);
    }
    any_in_list_ = any_in_list_ || list_.definitions.size() > before;
  }

  /// A blank line ends a list that has begun.
  void end_list() {
    if (any_in_list_) in_list_ = false;
  }

  /// A line that begins with a round's label, be it in the first cell of a table.
  bool is_work(std::string_view text) const {
    while (!text.empty() && (text.front() == '|' || is_blank(text.front()))) text.remove_prefix(1);
    if (text.empty()) return true;
    constexpr std::size_t one_letter = 3; // bytes of "③" and "３"
    const std::string head = words::fold(text.substr(0, one_letter)).text;
    if (!head.empty() && is_digit(head.front())) return !(in_list_ && begins_with_count(text));
    const std::size_t end = std::min(text.find_first_of(" \t.:)-"), text.size());
    const std::string_view word = text.substr(0, end);
    if (!is_of_label(word, vocabulary_)) return false;
    if (is_digit(word.back())) return true;
    const std::size_t next = text.find_first_not_of(" \t.:-", end);
    return next != none && is_digit(text[next]);
  }

  /// `X sc, V inc`, without a sign between name and meaning.
  bool take_signless(Span span) {
    const std::vector<Definition> found = definitions_without_signs(source_, span, in_list_, vocabulary_);
    list_.definitions.insert(list_.definitions.end(), found.begin(), found.end());
    return !found.empty();
  }

  void take_sentences(Span span) {
    const std::vector<Definition> found = definitions_in_sentences(source_, span, vocabulary_);
    list_.definitions.insert(list_.definitions.end(), found.begin(), found.end());
  }

  /// A heading of a list, or a line that goes on with the definition above.
  void take_bare(Span span, std::string_view text) {
    if (is_list_heading(text, vocabulary_)) {
      list_.headings.push_back(span);
      in_list_ = true;
      any_in_list_ = false;
      return;
    }
    const bool goes_on =
        in_list_ && any_in_list_ && !list_.definitions.empty() &&
        (small(text.front()) == text.front() || source_.at(list_.definitions.back().value).back() == ',');
    if (take_signless(span)) return;
    if (!goes_on) {
      take_brackets(span);
      return take_sentences(span);
    }
    list_.definitions.back().value.end = span.end;
    list_.definitions.back().whole.end = span.end;
  }

  Span part(Span span, std::size_t begin, std::size_t end) const {
    const std::string_view text = source_.at(span);
    while (begin < end && (is_blank(text[begin]) || text[begin] == '*')) ++begin;
    while (end > begin && (is_blank(text[end - 1]) || text[end - 1] == '*')) --end;
    return {span.begin + static_cast<std::uint32_t>(begin), span.begin + static_cast<std::uint32_t>(end)};
  }

  /// One or several definitions of a line: `sc - single crochet, inc - increase`.
  void take_entries(Span span, Span line) {
    const std::string_view text = source_.at(span);
    const Separator first = find_separator(text);
    const Separator second = find_separator(text, first.end);
    if (!first.equals && is_list_heading(text.substr(0, first.end), vocabulary_) && second.at != none) {
      in_list_ = true;
      any_in_list_ = false;
      list_.headings.push_back(part(span, 0, first.end));
      return take_entries({span.begin + static_cast<std::uint32_t>(first.end), span.end}, line);
    }
    if (second.at == none && take_behind_heading(span, first)) return;
    const std::size_t before = list_.definitions.size();
    for (std::size_t at = behind_signless(span, first); at < text.size();) {
      const std::size_t end = end_of_entry(text, at);
      take_entry(span, at, end);
      at = end + (end < text.size() ? std::max<std::size_t>(1, entry_mark_at(text, end)) : 1);
    }
    const bool several = list_.definitions.size() > before + 1;
    for (std::size_t i = before; several && i < list_.definitions.size(); ++i)
      list_.definitions[i].in_list = true;
    if (list_.definitions.size() == before) take_brackets(span);
  }

  /// `x sc, v inc, w = 3 sc in 1 st`: the entries without a sign before the first that has one; where they
  /// end.
  std::size_t behind_signless(Span span, const Separator& first) {
    const std::string_view text = source_.at(span);
    const std::size_t mark = text.substr(0, first.at).find_last_of(",;|");
    return mark != none && take_signless(part(span, 0, mark)) ? mark + 1 : 0;
  }

  /// `Symbols: X sc, V inc`, `Acorn: X sc / V inc`.
  bool take_behind_heading(Span span, const Separator& first) {
    if (first.equals) return false;
    const std::string_view text = source_.at(span);
    const bool heading = is_list_heading(text.substr(0, first.end), vocabulary_);
    const std::vector<Definition> found =
        definitions_without_signs(source_, part(span, first.end, text.size()), heading, vocabulary_);
    if (found.empty()) return heading && take_name_and_bracket(span, first);
    if (heading) list_.headings.push_back(part(span, 0, first.end));
    list_.definitions.insert(list_.definitions.end(), found.begin(), found.end());
    return true;
  }

  /// `Special stitch: bud (bobble of 4 dc)`.
  bool take_name_and_bracket(Span span, const Separator& first) {
    const std::string_view text = source_.at(span);
    const std::size_t open = text.find('(', first.end);
    if (open == none || end_of_bracket(text, open) + 1 != without_tail(text)) return false;
    Definition found;
    found.name = part(span, first.end, open);
    found.value = part(span, open + 1, end_of_bracket(text, open));
    found.whole = {found.name.begin, span.end};
    if (!may_be_name(source_.at(found.name), vocabulary_) || !has_letter(source_.at(found.value)))
      return false;
    found.in_list = true;
    list_.headings.push_back(part(span, 0, first.end));
    list_.definitions.push_back(found);
    return true;
  }

  /// Where an entry ends: at a comma, a full stop or the like behind which another entry or a sentence about
  /// rounds begins.
  std::size_t end_of_entry(std::string_view text, std::size_t from) const {
    int depth = 0;
    bool separated = false;
    for (std::size_t at = from; at < text.size(); ++at) {
      if (text[at] == '(' || text[at] == '[') ++depth;
      if (text[at] == ')' || text[at] == ']') --depth;
      if (depth > 0) continue;
      if (separator_at(text, at).at != none) separated = true;
      if (separated && text[at] == ' ' && is_glued_entry(text, at + 1)) return at;
      const std::size_t mark = separated ? entry_mark_at(text, at) : 0;
      if (mark == 0) continue;
      if (text[at] == '.' && at + 1 < text.size() && !is_blank(text[at + 1])) continue;
      if (begins_other(text, at + mark, text[at] == '.')) return at;
    }
    return text.size();
  }

  /// `x=sc v=inc` has no mark between its entries.
  bool is_glued_entry(std::string_view text, std::size_t at) const {
    const std::string_view word = text.substr(at, std::min(text.find(' ', at), text.size()) - at);
    const std::size_t equals = word.find('=');
    const std::size_t sign = text.find_first_not_of(' ', at + word.size());
    if (equals == none && sign != none && text[sign] == '=' && word.size() <= 8 &&
        may_be_name(word, vocabulary_))
      return true;
    return equals != none && equals > 0 && equals + 1 < word.size() && is_letter(word[equals + 1]);
  }

  bool begins_other(std::string_view text, std::size_t at, bool sentence) const {
    const std::size_t sign = text.find('=', at);
    if (sign != none && is_cut_phrase(trimmed(text.substr(at, sign - at)), vocabulary_)) return true;
    const std::size_t end = find_entry_mark(text, at);
    const std::string_view next = text.substr(at, end - at);
    const Separator separator = find_separator(next);
    const std::size_t head = std::min(next.find_first_not_of(" \t"), next.size());
    if (separator.at != none && separator.at > head &&
        may_be_name(next.substr(head, without_tail(next.substr(0, separator.at)) - head), vocabulary_))
      return true;
    return sentence && small_letters(next).find("count") != std::string::npos;
  }

  /// `Beetle head. X = sc`, `Foot (US) X = sc`: the name is what stands behind a full stop or bracket.
  std::size_t behind_title(std::string_view text, std::size_t begin, std::size_t end) const {
    const std::string_view title = text.substr(begin, without_tail(text.substr(begin, end - begin)));
    const std::size_t stop = std::max(title.rfind(". ") + 1, title.rfind(") ") + 1);
    if (stop == 0 || is_cut_phrase(title.substr(head_marks(title)), vocabulary_)) return begin;
    const std::size_t name = title.find_first_not_of(" \t", stop);
    const bool one =
        name != none && title.find(' ', name) == none && may_be_name(title.substr(name), vocabulary_);
    return one ? begin + name : begin;
  }

  void take_entry(Span span, std::size_t begin, std::size_t end) {
    const std::string_view text = source_.at(span).substr(0, end);
    begin += head_of_list(text.substr(begin));
    const Separator separator = find_separator(text, begin);
    if (separator.at == none || separator.at <= begin) return;
    if (separator.equals) begin = behind_title(text, begin, separator.at);
    Definition found;
    found.name = part(span, begin, separator.at);
    found.value = part(span, separator.end, end);
    if (!found.value.empty() && source_.text()[found.value.end - 1] == '.') --found.value.end;
    // "brown: inc" says in which yarn, "A = brown" what a yarn is called; "Rose = dc, ch 1, dc in same st" is
    // a stitch all the same.
    const std::string_view value = source_.at(found.value);
    const bool tells_work = separator.equals && std::count(value.begin(), value.end(), ' ') > 2;
    if ((is_colour(small_letters(source_.at(found.name)), vocabulary_) && !tells_work) ||
        is_colour(small_letters(source_.at(found.value)), vocabulary_))
      return;
    if (found.value.empty() || !may_be_name(source_.at(found.name), vocabulary_) ||
        !has_letter(source_.at(found.value)))
      return;
    const std::string_view line = source_.at(span);
    const std::size_t mark = end < line.size() ? std::max<std::size_t>(1, entry_mark_at(line, end)) : 1;
    found.whole = {found.name.begin,
                   span.begin + static_cast<std::uint32_t>(std::min(end + mark, std::size_t{span.length()}))};
    found.equals = separator.equals;
    found.in_list = in_list_;
    list_.definitions.push_back(found);
  }

  /// `(bobble: 4 dc in same st, joined)` within a line.
  void take_brackets(Span span) {
    const std::string_view text = source_.at(span);
    for (std::size_t open = text.find('('); open != none; open = text.find('(', open + 1)) {
      const std::size_t close = end_of_bracket(text, open);
      if (close == none) return;
      take_inside(span, open, close);
    }
  }

  /// The definitions between two brackets; the brackets go with them.
  void take_inside(Span span, std::size_t open, std::size_t close) {
    const std::size_t before = list_.definitions.size();
    const std::string_view text = source_.at(span).substr(0, close);
    for (std::size_t at = open + 1; at < close;) {
      const std::size_t end = end_of_entry(text, at);
      take_entry(span, at, end);
      at = end + (end < text.size() ? std::max<std::size_t>(1, entry_mark_at(text, end)) : 1);
    }
    for (std::size_t i = before; i < list_.definitions.size(); ++i) list_.definitions[i].in_line = true;
    if (list_.definitions.size() == before) return;
    list_.definitions[before].whole.begin = span.begin + static_cast<std::uint32_t>(open);
    list_.definitions.back().whole.end = span.begin + static_cast<std::uint32_t>(close + 1);
  }

  static std::size_t end_of_bracket(std::string_view text, std::size_t open) {
    int depth = 0;
    for (std::size_t at = open; at < text.size(); ++at) {
      if (text[at] == '(') ++depth;
      if (text[at] == ')' && --depth == 0) return at;
    }
    return none;
  }

  const Source& source_;
  const words::Vocabulary& vocabulary_;
  OwnList list_;
  bool in_list_ = false;
  bool any_in_list_ = false;
};

} // namespace

OwnList find_own_list(const Source& source, const words::Vocabulary& vocabulary) {
  return ListFinder(source, vocabulary).find();
}

} // namespace whorl::pattern
