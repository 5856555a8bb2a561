#include "pattern/reference.hpp"

#include "pattern/label_numbers.hpp"
#include "pattern/sentence.hpp"
#include "pattern/stated.hpp"
#include "pattern/text_words.hpp"
#include "words/ascii.hpp"

namespace whorl::pattern {

namespace {

using words::Concept;
using words::ConceptClass;
using words::Word;
using words::WordKind;

constexpr std::size_t most_words_of_part = 5;

using words::is_folded_letter;

/// Reading one reference from its front to its end.
class ReferenceReader {
public:
  ReferenceReader(std::string_view text, std::uint32_t begin, const words::Vocabulary& vocabulary)
      : text_(text), begin_(begin), head_(head_of(text, begin, vocabulary)) {
    as_ = find("as");
    repeat_ = find("repeat");
    from_ = find("from");
    star_ = find("around");
    more_ = find("more");
  }

  std::optional<Reference> read() {
    const std::size_t first = before_same(pass_blanks(head_, 0));
    const std::size_t same = pass_same(first);
    if (same != first && is_end_or_mark(same)) return only_rounds(); // "同上", of which 同 is "as"
    std::size_t place = pass_lead();
    if (place == none && takes_rounds_before_as()) return reference_;
    if (place == none) return only_rounds();
    std::size_t behind = take_rounds_before(pass_blanks(head_, place));
    if (reference_.back == 0) behind = take_rounds_before(pass_fillers(place));
    if (reference_.back > 0) {
      take_rest(take_loops(take_times(behind)));
      return reference_;
    }
    place = pass_fillers(place);
    place = take_rounds(place);
    if (reference_.from == 0) place = take_number_alone(place);
    if (reference_.from == 0)
      place = take_part_then_rounds(place);
    else
      place = take_part_behind(place);
    if (reference_.from == 0 && (reference_.part.empty() || is_colour(reference_.part))) return std::nullopt;
    place = pass_as(pass_blanks(head_, place)); // "与第3圈|相同"
    if (works_at(place)) return std::nullopt;
    place = take_times(place);
    place = take_loops(place);
    take_rest(place);
    return reference_;
  }

private:
  static constexpr std::size_t none = static_cast<std::size_t>(-1);

  /// "2. sıra gibi", "前段と同じ", "1. bacak gibi": the rounds or their part stand before what says that they
  /// are repeated.
  bool takes_rounds_before_as() {
    const std::size_t begin = pass_fillers(0);
    std::size_t end = take_rounds_before(begin);
    if (end == begin) end = take_rounds(begin);
    if (end == begin) end = take_leg(begin);
    const std::size_t behind = end == begin ? end : pass_as(pass_fillers(end));
    if (end == begin || behind == pass_fillers(end) || works_at(behind)) return reference_ = {}, false;
    if (!reference_.part.empty() && !is_end_or_mark(behind)) return reference_ = {}, false; // "… like it"
    take_rest(take_loops(take_times(pass_fillers(behind))));
    if (!reference_.tail.empty()) reference_ = {};
    return reference_.from > 0 || reference_.back > 0 || !reference_.part.empty();
  }

  /// "1. bacak gibi": a word for another part; `place` if none stands there.
  std::size_t take_leg(std::size_t place) {
    const Word* leg = phrase_at(head_, place, find("leg"));
    if (leg == nullptr) return place;
    reference_.part = line().substr(place, leg->end - place);
    return leg->end;
  }

  /// Passes a word that says "as" or "repeat"; `place` if none stands there.
  std::size_t pass_as(std::size_t place) const {
    const Word* as = phrase_at(head_, place, as_);
    if (as == nullptr) as = phrase_at(head_, place, repeat_);
    return as == nullptr ? place : as->end;
  }

  /// "= R4 (15)", "do Round 4 again", behind the label: rounds and perhaps a count, not a word more.
  std::optional<Reference> only_rounds() {
    std::size_t place = pass_blanks(head_, 0);
    if (place < line().size() && line()[place] == '=') place = pass_blanks(head_, place + 1);
    place = before_same(place);
    const std::size_t same = pass_same(place);
    const Word* even = phrase_at(head_, pass_blanks(head_, 0), find("even")); // "all the same" is worked even
    if (even != nullptr && even->end >= same && same != place) return std::nullopt;
    std::size_t end = take_rounds(same == place ? place : pass_fillers(same)); // "idem rang 2"
    if (same != place && reference_.from == 0) end = same;
    if (const Word* again = phrase_at(head_, pass_blanks(head_, end), more_)) end = again->end;
    if (same != place && reference_.from == 0) reference_.back = 1;
    if (reference_.from == 0 && reference_.back == 0) return std::nullopt;
    if (reference_.back == 0 && works_behind_number(place)) return std::nullopt;
    take_rest(take_loops(same == place ? take_part_behind(end) : end));
    if (!reference_.tail.empty()) return std::nullopt;
    return reference_;
  }

  /// "6V", where the pattern's own list says that the letter for "round" is an increase.
  bool works_behind_number(std::size_t place) const {
    const Word* number = find_word(head_, place, [](const Word& w) { return w.kind == WordKind::number; });
    if (number == nullptr) return false;
    const Word* increase = phrase_at(head_, pass_blanks(head_, number->end), find("increase"));
    return increase != nullptr || works_at(number->end);
  }

  /// Behind the fillers at a place, unless "the same" begins with one of them: "tak samo".
  std::size_t before_same(std::size_t place) const {
    return pass_same(place) != place ? place : pass_fillers(place);
  }

  /// "same", "ditto": as the round before; `place` if no such word stands there.
  std::size_t pass_same(std::size_t place) const {
    return end_of_text_word(head_.vocabulary, line(), place, TextWord::same_again);
  }

  /// Passes words as they are typed, up to a blank, a mark or the end.
  std::size_t pass_typed(std::size_t place, std::string_view words) const {
    const std::string_view text = line();
    const std::size_t end = place + words.size();
    const bool stands = place < text.size() && text.substr(place, words.size()) == words;
    return stands && (end == text.size() || !is_folded_letter(text[end])) ? end : place;
  }

  /// "the last 2 rounds", "previous row", "above": the rounds right before; `place` if they are not named.
  std::size_t take_rounds_before(std::size_t place) {
    const auto pass = [this](std::size_t from, TextWord kind) {
      return end_of_text_word(head_.vocabulary, line(), from, kind);
    };
    if (const std::size_t end = pass(place, TextWord::above); end != place && is_end_or_mark(end))
      return reference_.back = 1, end;
    std::size_t at = place;
    if (const std::size_t article = pass(at, TextWord::article); article != at)
      at = pass_blanks(head_, article);
    std::size_t behind = pass(at, TextWord::rounds_before);
    if (behind == at) return place;
    behind = pass_blanks(head_, behind);
    const LabelNumber number = label_number_at(head_, behind, NumberForm::any);
    const std::size_t word = number.end == 0 ? behind : pass_blanks(head_, number.end);
    bool row = false;
    const std::size_t end = pass_round_word(head_, word, row);
    if (end == word) return place;
    reference_.back = number.end == 0 ? 1 : number.value;
    return end;
  }

  bool is_end_or_mark(std::size_t place) const {
    const std::size_t at = pass_blanks(head_, place);
    return at >= line().size() || std::string_view(".(),;[=-").find(line()[at]) != std::string_view::npos;
  }

  Concept find(const char* name) const { return words::find_concept(head_.vocabulary, name); }

  const std::string& line() const { return head_.line.text; }

  ConceptClass sort_of(const Word& word) const {
    if (word.kind != WordKind::phrase || word.means >= head_.vocabulary.concepts.size())
      return ConceptClass::word;
    return head_.vocabulary.concepts[word.means].sort;
  }

  const Word* filler_at(std::size_t place) const {
    return find_word(head_, place, [&](const Word& w) {
      return w.kind == WordKind::phrase &&
             (sort_of(w) == ConceptClass::filler || w.means == head_.through || w.means == head_.to);
    });
  }

  bool works_at(std::size_t place) const {
    return find_word(head_, pass_blanks(head_, place), [&](const Word& w) {
             return sort_of(w) == ConceptClass::stitch || sort_of(w) == ConceptClass::decrease;
           }) != nullptr;
  }

  /// A stitch, or "sts", stands there.
  bool counts_at(std::size_t place) const {
    return works_at(place) || find_word(head_, pass_blanks(head_, place), [&](const Word& w) {
                                return sort_of(w) == ConceptClass::place;
                              }) != nullptr;
  }

  std::size_t pass_fillers(std::size_t place) const {
    place = pass_blanks(head_, place);
    while (const Word* filler = filler_at(place)) {
      if (is_round_at(place)) break;
      place = pass_blanks(head_, filler->end);
    }
    return place;
  }

  bool is_round_at(std::size_t place) const {
    bool row = false;
    return pass_round_word(head_, place, row) != place;
  }

  /// "as", "same as", "repeat", "work as for": where it ends, `none` if the text begins otherwise.
  std::size_t pass_lead() const {
    std::size_t place = pass_blanks(head_, 0);
    bool seen = false;
    for (;;) {
      const Word* lead = phrase_at(head_, place, as_);
      if (lead == nullptr) lead = phrase_at(head_, place, repeat_);
      seen = seen || lead != nullptr;
      const Word* word = lead != nullptr ? lead : seen ? nullptr : filler_at(place);
      if (word == nullptr) return seen ? place : none;
      place = pass_blanks(head_, word->end);
    }
  }

  /// "Rnd 11", "rnds 3 and 4", "5th row", "R1-R6".
  std::size_t take_rounds(std::size_t place) {
    bool row = false;
    std::size_t at = pass_blanks(head_, pass_round_word(head_, place, row));
    if (at > place && at < line().size() && line()[at] == '.') at = pass_blanks(head_, at + 1);
    const bool word = at != pass_blanks(head_, place);
    at = pass_ordinal_lead(head_, at);
    const NumberForm form = word ? NumberForm::any : NumberForm::scanned;
    LabelNumbers numbers = label_numbers_at(head_, at, form);
    if (numbers.end == 0 && !head_.vocabulary.blanks_between_words) // "同第二行"
      numbers = label_numbers_at(head_, at, NumberForm::any);
    if (numbers.end == 0) return place;
    if (numbers.dash && numbers.spaced && counts_at(numbers.end)) { // "as Rnd 14 - 18 sc": the count
      const LabelNumber only = label_number_at(head_, at, form);
      numbers.from = numbers.to = only.value;
      numbers.end = only.end;
    }
    std::size_t end = numbers.end;
    if (!word) {
      const Word* mark = phrase_at(head_, numbers.end, head_.ordinal); // "wie die 3. Runde"
      const std::size_t behind = pass_blanks(head_, mark != nullptr ? mark->end : numbers.end);
      end = pass_round_word(head_, behind, row);
      if (end == behind) return place;
    }
    reference_.from = numbers.from;
    reference_.to = numbers.to;
    return end;
  }

  /// "repeat 2", "same as 8-9", where rounds are called by their numbers; `place` if more stands behind.
  std::size_t take_number_alone(std::size_t place) {
    const std::size_t at = pass_blanks(head_, place);
    LabelNumbers numbers = label_numbers_at(head_, at, NumberForm::digits);
    if (numbers.dash && numbers.spaced) { // "repeat 2 - 18": the count
      const LabelNumber only = label_number_at(head_, at, NumberForm::digits);
      numbers.from = numbers.to = only.value;
      numbers.end = only.end;
    }
    const bool times = numbers.to > numbers.from && take_times(numbers.end) != numbers.end;
    if (numbers.end == 0 || !(times || is_end_or_mark(numbers.end))) return place;
    reference_.from = numbers.from;
    reference_.to = numbers.to;
    return numbers.end;
  }

  /// "the head to Rnd 5", "the first leg".
  std::size_t take_part_then_rounds(std::size_t place) {
    place = take_part(place);
    const Word* to = phrase_at(head_, pass_blanks(head_, place), head_.to);
    if (reference_.part.empty() || to == nullptr) return place;
    const std::size_t behind = take_rounds(pass_fillers(to->end));
    if (reference_.from == 0) return place;
    reference_.from = 1;
    return behind;
  }

  /// "of the head".
  std::size_t take_part_behind(std::size_t place) {
    const std::size_t at = pass_blanks(head_, place);
    return filler_at(at) == nullptr || is_round_at(at) ? place : take_part(pass_fillers(at));
  }

  /// A few words up to a mark, a number of times, "to" or "but".
  std::size_t take_part(std::size_t place) {
    std::size_t end = place, at = place;
    for (std::size_t words = 0; words < most_words_of_part && at < line().size(); ++words) {
      if (phrase_at(head_, at, head_.to) != nullptr || is_round_at(at)) break;
      std::size_t behind = at;
      while (behind < line().size() &&
             (is_folded_letter(line()[behind]) || (line()[behind] >= '0' && line()[behind] <= '9')))
        ++behind;
      const bool number = line()[at] >= '0' && line()[at] <= '9';
      if (behind == at || (number && words == 0) || is_break(at, behind)) break;
      end = behind;
      at = pass_blanks(head_, behind);
    }
    reference_.part = line().substr(place, end - place);
    return end;
  }

  /// "Take up the brown again": a colour is no part.
  bool is_colour(std::string_view words) const {
    const std::size_t last = words.find_last_of(' ');
    return is_text_word(head_.vocabulary, words.substr(last == words.npos ? 0 : last + 1), TextWord::colour);
  }

  /// Words that name no part: stitches, loops, stars, "around", "but".
  bool is_break(std::size_t at, std::size_t end) const {
    const Word* known = find_word(head_, at, [&](const Word& w) {
      const ConceptClass sort = sort_of(w);
      return w.kind == WordKind::phrase &&
             (sort != ConceptClass::word || w.means == star_ || w.means == from_ || w.means == head_.times ||
              w.means == head_.conjunction);
    });
    const std::string_view word = std::string_view(line()).substr(at, end - at);
    return (known != nullptr && sort_of(*known) != ConceptClass::filler &&
            sort_of(*known) != ConceptClass::thing) ||
           word == "but";
  }

  /// "twice", "x 3", "2 more times".
  std::size_t take_times(std::size_t place) {
    std::size_t at = pass_blanks(head_, place);
    if (at < line().size() && line()[at] == ',') at = pass_blanks(head_, at + 1);
    const Word* times = phrase_at(head_, at, head_.times);
    if (times != nullptr) at = pass_blanks(head_, times->end);
    const Word* number = find_word(head_, at, [](const Word& w) { return w.kind == WordKind::number; });
    if (number == nullptr) return place;
    std::size_t end = number->end;
    const bool spelled = line()[at] < '0' || line()[at] > '9';
    if (const Word* before = phrase_at(head_, pass_blanks(head_, end), more_)) // "2 more times"
      if (const Word* said = phrase_at(head_, pass_blanks(head_, before->end), head_.times))
        end = said->begin;
    const Word* behind = phrase_at(head_, pass_blanks(head_, end), head_.times);
    const std::size_t next = pass_blanks(head_, end);
    const bool stands_alone = is_end_or_mark(end) || next >= line().size() ||
                              !is_folded_letter(line()[next]) ||
                              phrase_at(head_, next, more_) != nullptr; // not "in the two loops"
    if (times == nullptr && behind == nullptr && !(spelled && stands_alone)) return place;
    if (behind != nullptr) end = behind->end;
    const Word* more = phrase_at(head_, pass_blanks(head_, end), more_); // "twice more"
    if (more != nullptr) end = more->end;
    reference_.times = std::max<std::uint32_t>(1, number->number);
    return end;
  }

  /// "but in BLO".
  std::size_t take_loops(std::size_t place) {
    std::size_t at = pass_blanks(head_, place);
    for (int words = 0; words < 4 && at < line().size(); ++words) {
      const Word* loops =
          find_word(head_, at, [&](const Word& w) { return sort_of(w) == ConceptClass::loops; });
      if (loops != nullptr) {
        reference_.loops = loops_of(head_.vocabulary.concepts[loops->means].name);
        return reference_.loops == 0 ? place : loops->end;
      }
      if (line()[at] == '(' || line()[at] == '[') return place;
      while (at < line().size() && line()[at] != ' ') ++at;
      at = pass_blanks(head_, at);
    }
    return place;
  }

  static std::uint8_t loops_of(std::string_view name) {
    if (name == "back loops") return stitch::back;
    if (name == "front loops") return stitch::front;
    if (name == "both loops") return stitch::both;
    return static_cast<std::uint8_t>(name == "third loop" ? stitch::third : 0);
  }

  /// The count behind it, and what is left.
  void take_rest(std::size_t place) {
    const std::uint32_t behind = head_.line.from[place];
    reference_.span = {begin_, behind};
    const Sentence sentence = look_up(text_, begin_, head_.vocabulary);
    const StatedCount count = find_stated(sentence, stitch::standard_kinds());
    reference_.stated = count.stated;
    std::uint32_t from = 0;
    while (from < sentence.size() && sentence.folded.from[from] < behind) ++from;
    const bool counted = !count.stated.empty();
    const Span between = rest_of(sentence, from, counted ? count.begin : sentence.size());
    reference_.tail = between.empty() && counted ? rest_of(sentence, count.end, sentence.size()) : between;
    if (!counted) take_count_behind();
  }

  /// "As 2nd row. 4 sc.": a tail that is nothing but a number of stitches is the count.
  void take_count_behind() {
    constexpr std::string_view before = "sc ("; // a count is only looked for behind work
    const Span tail = reference_.tail;
    if (tail.empty() || tail.begin < before.size()) return;
    const std::string_view typed = text_.substr(tail.begin - begin_, tail.length());
    if (typed.front() < '0' || typed.front() > '9') return;
    const std::string text = std::string(before) + std::string(typed) + ")";
    const auto at = static_cast<std::uint32_t>(tail.begin - before.size());
    const StatedCount count = find_stated(look_up(text, at, head_.vocabulary), stitch::standard_kinds());
    if (count.stated.empty()) return;
    reference_.stated = count.stated;
    reference_.tail = {};
  }

  /// What stands in [begin, end) but for blanks and separators.
  static Span rest_of(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
    while (begin < end && (sentence.text()[begin] == ' ' || is_separator(sentence.text()[begin]))) ++begin;
    if (begin >= end) return {};
    return sentence.span(begin, trim_separators(sentence.text(), begin, end));
  }

  std::string_view text_;
  std::uint32_t begin_;
  Head head_;
  Concept as_, repeat_, from_, star_, more_;
  Reference reference_;
};

/// The words of a name that tell parts apart: small letters, numbers as digits, without an s at the end.
std::vector<std::string> telling_words(std::string_view text, const words::Vocabulary& vocabulary) {
  const Head head = head_of(text, 0, vocabulary);
  std::vector<std::string> words;
  const std::string& line = head.line.text;
  for (std::size_t at = 0; at < line.size();) {
    std::size_t end = at;
    while (end < line.size() && (is_folded_letter(line[end]) || (line[end] >= '0' && line[end] <= '9')))
      ++end;
    if (end == at) {
      ++at;
      continue;
    }
    const LabelNumber number = label_number_at(head, at, NumberForm::any);
    const Word* filler = find_word(head, at, [&](const Word& w) {
      return w.kind == WordKind::phrase && w.end == end &&
             vocabulary.concepts[w.means].sort == ConceptClass::filler;
    });
    std::string word = number.end == end ? std::to_string(number.value) : line.substr(at, end - at);
    if (word.size() > 3 && word.back() == 's') word.pop_back();
    const bool tells = number.end == end && number.ordinal; // "prima" is "first", and "before"
    if (filler == nullptr || tells) words.push_back(std::move(word));
    at = end;
  }
  return words;
}

} // namespace

std::optional<Reference> read_reference(std::string_view text, std::uint32_t begin,
                                        const words::Vocabulary& vocabulary) {
  return ReferenceReader(text, begin, vocabulary).read();
}

int names_part(std::string_view words, std::string_view name, const words::Vocabulary& vocabulary) {
  const auto wanted = telling_words(words, vocabulary);
  const auto has = telling_words(name, vocabulary);
  int shared = 0;
  for (const std::string& word : wanted)
    if (std::find(has.begin(), has.end(), word) != has.end()) shared += word.size() > 1 ? 2 : 1;
  if (shared > 0 || vocabulary.blanks_between_words) return shared;
  const std::string whole = words::fold(name).text; // no blank parts it from what stands beside it
  return !whole.empty() && words::fold(words).text.find(whole) != std::string::npos ? 2 : 0;
}

} // namespace whorl::pattern
