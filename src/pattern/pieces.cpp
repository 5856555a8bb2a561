#include "pattern/pieces.hpp"

#include "pattern/byte_before.hpp"
#include "pattern/costs.hpp"
#include "pattern/edging.hpp"
#include "pattern/header.hpp"
#include "pattern/limits.hpp"
#include "pattern/named_place.hpp"
#include "pattern/text_words.hpp"
#include "pattern/unlabelled.hpp"
#include "pattern/wide_mark.hpp"
#include "words/ascii.hpp"
#include "words/lattice.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

using words::Concept;
using words::ConceptClass;
using words::Word;
using words::WordKind;

constexpr std::size_t longest_name = 80;   ///< bytes of what names a part before its first round
constexpr std::size_t longest_start = 400; ///< the same where it makes the ring or chain, too
constexpr std::size_t least_piece = 3;

using words::is_digit;
bool is_blank(char c) { return c == ' ' || c == '\t'; }
bool is_letter(char c) {
  return words::is_small(c) || words::is_capital(c) || static_cast<unsigned char>(c) >= 0x80;
}

/// Cutting one typed line.
class LineCutter {
public:
  LineCutter(const Reader& reader, Span line) : reader_(reader), line_(line), text_(reader.source.at(line)) {}

  std::vector<Span> cut() {
    labels_ = read_labels(text_, line_.begin, reader_.vocabulary);
    labelled_ = !labels_.empty() && (labels_.front().word || labels_.front().closed);
    if (labelled_) take_label(labels_.front());
    for (std::size_t place = first_place(); place + least_piece <= text_.size(); ++place)
      if (may_begin(place) && begins_round(place)) cut_at(place);
    if (!labelled_ && !edging_label(text_, line_.begin, reader_.vocabulary)) cut_behind_name();
    add_piece({begin_, line_.end});
    return std::move(pieces_);
  }

private:
  std::size_t first_place() const { return labelled_ ? labels_.front().work - line_.begin + 1 : 1; }

  void take_label(const Label& label) {
    last_ = label.relative ? last_ + label.to : label.to;
    word_ = label.word;
    work_ = label.work;
    mark_ = mark_behind(label);
  }

  /// The mark that closes a label.
  char mark_behind(const Label& label) const {
    std::size_t place = (label.aside.empty() ? label.span.end : label.aside.end) - line_.begin;
    while (place < text_.size() && (is_blank(text_[place]) || text_[place] == '*')) ++place;
    return place < text_.size() ? text_[place] : '\0';
  }

  /// The mark before a place: '\0' if a word stands there.
  char mark_before(std::size_t place) const {
    constexpr std::string_view passed = " \t*";
    while (place > 0 && passed.find(text_[place - 1]) != std::string_view::npos) --place;
    if (const char wide = wide_mark_before(text_, place); wide != '\0') return wide;
    const char c = byte_before(text_, place, 0, passed);
    return is_letter(c) || is_digit(c) ? '\0' : c;
  }

  /// A word or a number begins here that labels begin with, looked at cheaply.
  bool may_begin(std::size_t place) const {
    const char before = text_[place - 1];
    if (wide_mark_before(text_, place) != '\0') return true;
    if (!is_blank(before) && before != '*' && before != '/' && before != '|' && before != ';') return false;
    const char c = text_[place];
    if (!is_digit(c) && !is_letter(c)) return false;
    const std::string_view near = text_.substr(place, 12);
    if (std::any_of(near.begin(), near.end(), is_digit)) return true;
    const char mark = mark_before(place);
    return (mark == '\0' && (may_be_dictated() || ends_with_number(place))) || (mark != '\0' && mark != ',');
  }

  /// A whole pattern in one breath is long, and has no label at its head.
  bool may_be_dictated() const {
    constexpr std::size_t least = 200; // bytes
    return !labelled_ && text_.size() > least;
  }

  /// A number stands right before a place, in digits or as a word: "that's twelve | round three".
  bool ends_with_number(std::size_t place) const {
    std::size_t end = place;
    while (end > 0 && is_blank(text_[end - 1])) --end;
    std::size_t begin = end;
    while (begin > 0 && (is_letter(text_[begin - 1]) || is_digit(text_[begin - 1]))) --begin;
    const words::Folded word = words::fold(text_.substr(begin, end - begin));
    const words::Lattice lattice = words::lattice(word, reader_.vocabulary);
    return std::any_of(lattice.words.begin(), lattice.words.end(), [&word](const Word& one) {
      return one.kind == WordKind::number && one.begin == 0 && one.end == word.text.size();
    });
  }

  /// Dictated, without a mark: the word for round, its number and work behind a count.
  bool follows_dictated(const Label& label, std::size_t place) const {
    return !label.closed && label.from == last_ + 1 && ends_with_number(place) && !is_between(place) &&
           names_stitches(reader_, {label.work, line_.end});
  }

  bool begins_round(std::size_t place) const {
    const auto labels =
        read_labels(text_.substr(place), line_.begin + static_cast<std::uint32_t>(place), reader_.vocabulary);
    if (labels.empty() || line_.begin + place <= work_ || is_between(place)) return false;
    const Label& label = labels.front();
    const bool second = !labelled_ && label.from == 2;            // the first has no label
    const bool first = !labelled_ && label.word && label.ordinal; // "Stuff. | In the 3rd round …"
    const bool led = mark_before(place) == '.' && (label.from == last_ + 1 || second || first);
    if ((label.span.begin != line_.begin + place && !led) || !has_work(label)) return false;
    if (!labelled_) return begins_first_round(label, place);
    if (label.relative) return leads_next(label, place);
    return label.word ? follows_with_word(label, place) : follows_as_number(label, place);
  }

  /// "… in the ring. | Next round: …", 「…編みます。| 次の段は…」, where no blank ends a word.
  bool leads_next(const Label& label, std::size_t place) const {
    if (mark_before(place) != '.') return false;
    return !reader_.vocabulary.blanks_between_words || (label.closed && mark_behind(label) == ':');
  }

  /// "eyes between Rnd 5 and Rnd 6", "eyes between 7 and | 8 rounds": the words before a place say that
  /// rounds are only named.
  bool is_between(std::size_t place) const {
    constexpr std::size_t most = 48; // bytes that are looked back over
    std::size_t begin = place > most ? place - most : 0;
    while (begin > 0 && begin < place && !is_blank(text_[begin - 1])) ++begin;
    const words::Folded before = words::fold(text_.substr(begin, place - begin));
    const words::Lattice lattice = words::lattice(before, reader_.vocabulary);
    const words::Concept between = words::find_concept(reader_.vocabulary, "between");
    std::uint32_t behind = 0;
    for (const Word& word : lattice.words)
      if (word.kind == WordKind::phrase && word.means == between && letters_end(before.text, word))
        behind = std::max(behind, word.end);
    if (behind == 0) return false;
    std::uint32_t at = behind; // nothing but numbers and small words may stand behind
    while (at < before.text.size()) {
      std::uint32_t end = at;
      for (const Word& word : lattice.words)
        if (word.begin == at && only_names(word)) end = std::max(end, word.end);
      const char c = before.text[at];
      if (end == at && c != ' ' && c != '.' && c != '-') return false;
      at = std::max(end, at + 1);
    }
    return true;
  }

  /// Whether no letter goes on behind a word.
  static bool letters_end(std::string_view text, const Word& word) {
    return word.end >= text.size() || !words::is_folded_letter(text[word.end]);
  }

  /// A number, the word for round, or one that links two.
  bool only_names(const Word& word) const {
    if (word.kind == WordKind::number) return true;
    if (word.kind != WordKind::phrase) return false;
    static constexpr std::string_view names[] = {"round", "row", "and", "to", "ordinal"};
    const words::ConceptEntry& entry = reader_.vocabulary.concepts[word.means];
    return entry.sort == ConceptClass::filler ||
           std::find(std::begin(names), std::end(names), entry.name) != std::end(names);
  }

  /// "eyes between rounds 6 and 7": the rounds are named to tell where something is put.
  bool names_between(Span span) const {
    const words::Concept between = words::find_concept(reader_.vocabulary, "between");
    const words::Lattice lattice = words::lattice(words::fold(reader_.source.at(span)), reader_.vocabulary);
    return std::any_of(lattice.words.begin(), lattice.words.end(), [between](const Word& word) {
      return word.kind == WordKind::phrase && word.means == between;
    });
  }

  bool has_work(const Label& label) const { return label.work < line_.end; }

  bool follows_with_word(const Label& label, std::size_t place) const {
    const char before = mark_before(place);
    if (label.closed && (before == '.' || before == ';')) return true;
    if (!word_ || label.from != last_ + 1) return false;
    if (before == ',' && !reader_.vocabulary.blanks_between_words) return label.closed;
    if (before == '\0' && !label.closed) // "r1 6 sc in MR r2 inc x 6"
      return names_work(label, place) || follows_dictated(label, place);
    if (before == '\0' || before == ',') return label.closed && mark_behind(label) == ':';
    return label.closed || before == '.' || before == ';' || before == '/';
  }

  /// A word glued to its number, with work right behind: no round that is only named.
  bool names_work(const Label& label, std::size_t place) const {
    const std::size_t digits = text_.find_first_of("0123456789", place);
    const bool glued = text_.substr(place, digits - place).find(' ') == std::string_view::npos;
    const Span work{label.work, line_.end};
    return glued && names_stitches(reader_, work) && is_clean(way_of(reader_, label, work.end));
  }

  /// "1. Ch 2. In second ch": the number right behind a chain tells how long it is.
  bool is_length(std::size_t place) const {
    std::size_t begin = place;
    while (begin > 0 && is_blank(text_[begin - 1])) --begin;
    const std::size_t end = begin;
    while (begin > 0 && is_letter(text_[begin - 1])) --begin;
    std::string word(text_.substr(begin, end - begin));
    for (char& c : word) c = static_cast<char>(c >= 'A' && c <= 'Z' ? c + ('a' - 'A') : c);
    return word == "ch" || word == "chain";
  }

  bool follows_as_number(const Label& label, std::size_t place) const {
    return !is_length(place) && !word_ && label.closed && label.from == last_ + 1 &&
           mark_behind(label) == mark_ && mark_before(place) != ',' &&
           names_stitches(reader_, {label.work, line_.end});
  }

  /// "ACORN, WITHOUT CUP. 1st Round: Ch 2": what stands before names the part.
  bool begins_first_round(const Label& label, std::size_t place) const {
    const std::string_view name = trim(text_.substr(0, place));
    const char before = mark_before(place);
    if (begins_dictated(label, name, place)) return true;
    if (label.from != 1 &&
        names_concept(reader_, {line_.begin, line_.begin + static_cast<std::uint32_t>(place)}, "eye"))
      return false; // "装眼睛，| 5圈6圈中间隔4针"
    if (label.relative) return leads_next(label, place) && makes_start(label, place);
    const bool sure = label.word && (label.closed || (label.ordinal && before == '.'));
    if (!sure || (before == '\0' && label.from != 1)) return false;
    return may_name(name, place) || (before != '\0' && makes_start(label, place));
  }

  /// "pine cone round one six sc in a ring that's six round two …", all in one breath.
  bool begins_dictated(const Label& label, std::string_view name, std::size_t place) const {
    if (!label.word || label.closed || label.from != 1 || !may_name(name, place)) return false;
    for (std::size_t next = label.work - line_.begin + 1; next + least_piece <= text_.size(); ++next) {
      if (!is_blank(text_[next - 1]) || !ends_with_number(next)) continue;
      const auto labels =
          read_labels(text_.substr(next), line_.begin + static_cast<std::uint32_t>(next), reader_.vocabulary);
      const bool second = !labels.empty() && labels.front().word && labels.front().from == 2;
      if (second) return labels.front().span.begin == line_.begin + next;
    }
    return false;
  }

  /// "Cap. With brown, ch 4 and join to a ring. 1st round: …": what stands before makes the ring or chain; or
  /// the whole of a first round that has no label.
  bool makes_start(const Label& label, std::size_t place) const {
    const Span before{line_.begin, line_.begin + static_cast<std::uint32_t>(place)};
    if (place > longest_start) return false;
    if (label.from == 1) return !start_in(reader_, trimmed(reader_.source, before)).empty();
    return (label.from == 2 || label.relative) && names_ring(reader_, before) &&
           names_stitches(reader_, before);
  }

  bool may_name(std::string_view name, std::size_t place) const {
    if (names_start(name, reader_.vocabulary)) return false;
    if (has_text_word(reader_.vocabulary, words::fold(name).text, TextWord::list_heading)) return false;
    return name.size() <= longest_name && !name.empty() &&
           !names_stitches(reader_, {line_.begin, line_.begin + static_cast<std::uint32_t>(place)});
  }

  void cut_at(std::size_t place) {
    const auto at = line_.begin + static_cast<std::uint32_t>(place);
    add_piece({begin_, at});
    begin_ = at;
    labelled_ = true;
    take_label(read_labels(text_.substr(place), at, reader_.vocabulary).front());
  }

  /// A piece without blanks and the marks that set it off from the next.
  void add_piece(Span span) {
    std::string_view text = reader_.source.at(span);
    while (!text.empty() && (is_blank(text.back()) || text.back() == '/' || text.back() == '|' ||
                             (text.back() == '-' && span.end != line_.end)))
      text.remove_suffix(1);
    span.end = span.begin + static_cast<std::uint32_t>(text.size());
    span = trimmed(reader_.source, span);
    if (!span.empty() || pieces_.empty()) pieces_.push_back(span);
  }

  /// "TAIL: Ch 9, sc in 2nd ch from hook": a name, and a first round without a label.
  void cut_behind_name() {
    if (names_between(line_)) return; // "Eyes between the 5. and 6. rnd."
    for (std::size_t place = 1; place + least_piece < text_.size() && place < longest_name; ++place) {
      const char c = text_[place];
      if ((c != ':' && c != '.') || !is_blank(text_[place + 1])) continue;
      const auto behind = line_.begin + static_cast<std::uint32_t>(place) + 1;
      if (!may_name(text_.substr(0, place), place)) return;
      if (!starts_clearly({behind, line_.end})) continue;
      add_piece({line_.begin, behind});
      begin_ = behind;
      return;
    }
  }

  /// Whether a stretch makes a ring or chain and stitches in it, or a chain with not a word more.
  bool starts_clearly(Span span) const {
    const Span work = trimmed(reader_.source, span);
    const bool colon = text_[span.begin - line_.begin - 1] == ':';
    if (colon && round_without_label(reader_, work, false)) return true;
    const Way way = way_of(reader_, no_label(work), work.end);
    const bool only_label = // "eyes betw. Rd 5 a. | Rd 6"
        text_[span.begin - line_.begin - 1] != ':' &&
        !read_labels(reader_.source.at(work), work.begin, reader_.vocabulary).empty();
    if (way.reference) return !only_label && !names_between(work);
    const std::size_t before = span.begin - line_.begin;
    const bool named =
        before > 0 && text_[before - 1] == ':' && !is_name_of_note(text_.substr(0, before - 1)) &&
        (names_ring(reader_, work) ||
         std::any_of(text_.begin() + static_cast<std::ptrdiff_t>(before), text_.end(), is_digit));
    if (only_starts(reader_, work)) return way.readings.front().cost <= (named ? cost::clean_start : 0);
    return starts_something(way);
  }

  const Reader& reader_;
  Span line_;
  std::string_view text_;
  std::vector<Label> labels_;
  std::vector<Span> pieces_;
  std::uint32_t begin_ = line_.begin;
  std::uint32_t work_ = 0; ///< where the work of the last label begins
  bool labelled_ = false;
  bool word_ = false; ///< the last label has the word for round
  char mark_ = '\0';  ///< and is closed by this mark
  int last_ = 0;      ///< its number
};

} // namespace

bool names_start(std::string_view name, const words::Vocabulary& vocabulary) {
  const words::Folded folded = words::fold(name);
  const std::string_view low = folded.text;
  for (const std::string_view word : text_phrases(vocabulary, TextWord::start_name))
    if (low.substr(0, word.size()) == word) return true;
  const words::Concept foundation = words::find_concept(vocabulary, "foundation");
  const words::Lattice lattice = words::lattice(folded, vocabulary);
  return std::any_of(lattice.words.begin(), lattice.words.end(), [foundation](const Word& word) {
    return word.kind == WordKind::phrase && word.means == foundation && word.begin == 0;
  });
}

bool starts_something(const Way& way) {
  if (way.readings.empty()) return false;
  const Reading& likeliest = way.readings.front();
  return likeliest.effect.starts && likeliest.effect.makes + likeliest.effect.pass_makes > 0 &&
         likeliest.passed_over.empty() && likeliest.cost <= cost::clean_start;
}

std::vector<Span> pieces_of(const Reader& reader, Span line) { return LineCutter(reader, line).cut(); }

} // namespace whorl::pattern
