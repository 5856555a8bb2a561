#include "pattern/compared_lines.hpp"

#include "pattern/edging.hpp"
#include "pattern/header.hpp"
#include "pattern/limits.hpp"
#include "pattern/numbered_runs.hpp"
#include "pattern/pieces.hpp"
#include "pattern/rounds_told.hpp"
#include "pattern/sentence.hpp"
#include "pattern/text_words.hpp"
#include "words/ascii.hpp"

#include <algorithm>

namespace whorl::pattern {
namespace {

/// Comparing the lines of one text.
class Comparing {
public:
  Comparing(const Reader& reader, std::vector<Typed>& lines) : reader_(reader), lines_(lines) {}

  void compare() {
    keep_title();
    for (std::size_t at = 0; at + 1 < lines_.size(); ++at) compare_labels(lines_[at], lines_[at + 1]);
    for (std::size_t at = 1; at < lines_.size(); ++at) mark_number(at);
    mark_runs(reader_, lines_);
    for (std::size_t at = 1; at < lines_.size(); ++at) begin_without_label(at);
    for (std::size_t at = 1; at < lines_.size(); ++at) work_told_rounds(at);
  }

private:
  /// "Hazel popcorn ring" at the head of a text, a blank line and a first round that starts by itself below.
  void keep_title() {
    const auto typed_text = [](const Typed& typed) { return !typed.blank; };
    const auto first = std::find_if(lines_.begin(), lines_.end(), typed_text);
    if (first == lines_.end() || !first->begins_round || !first->ways.front().label.span.empty()) return;
    const std::string_view line = text(*first);
    const bool figures = std::any_of(line.begin(), line.end(), words::is_digit);
    const auto below = std::find_if(first + 1, lines_.end(), typed_text);
    if (figures || below == first + 1 || below == lines_.end() || !below->begins_round) return;
    if (below->ways.front().label.from != 1 || !starts_something(below->ways.front())) return;
    first->begin_none();
  }

  /// "2 inc x 6 (12)" between "1." and "3.".
  void mark_number(std::size_t at) {
    Typed& typed = lines_[at];
    if (typed.blank || typed.begins_round || lines_[at].span.length() > limit::mended_bytes) return;
    std::size_t above = at, below = at + 1;
    while (above > 0 && !lines_[above - 1].begins_round) --above;
    while (below < lines_.size() && !lines_[below].begins_round) ++below;
    if (above == 0 || below == lines_.size()) return;
    const Label& last = lines_[above - 1].ways.front().label;
    const Label& next = lines_[below].ways.front().label;
    const int number = last.to + 1;
    const bool bare = !last.word && !next.word && !last.relative && !next.relative && last.to > 0;
    if (!bare || next.from != number + 1) return;
    const auto label = unmarked_label(text(typed), typed.span.begin, number, reader_.vocabulary);
    if (!label) return;
    Way way = way_of(reader_, *label, typed.span.end);
    if (!is_clean(way) || !does_work(way)) return;
    typed.begin_round(std::move(way));
  }

  /// "1. We start with a ring!" above "2. Round 1: …" has the number of a list; "4." below "4-7." goes on.
  void compare_labels(Typed& above, Typed& below) const {
    if (!above.begins_round || !below.begins_round) return;
    const Label& first = above.ways.front().label;
    const Label label = below.ways.front().label;
    if (first.word) return;
    if (first.span.empty() && !label.span.empty() && label.from == 1 &&
        only_starts(reader_, above.ways.front().work)) {
      above.begin_none();
      return;
    }
    const bool start_of_list = label.word && label.listed == 0 && label.from == 1 && first.from == 1;
    if (start_of_list && only_starts(reader_, above.ways.front().work)) {
      above.begin_none();
    } else if (label.listed != 0 && label.listed == first.to + 1 && first.listed == 0) {
      above.begin_none();
    } else if (!label.word && first.to > first.from && label.from <= first.to) {
      go_on(below);
    } else if (!label.word && above.ways.size() > 1 && above.ways.front().label.relative &&
               label.from == above.ways[1].label.to + 1) {
      go_on(below);
    }
  }

  /// "With brown make a loop and work 7 sc into it." above "2nd Round": the first round has no label.
  void begin_without_label(std::size_t second) {
    const bool is_second = lines_[second].begins_round && lines_[second].ways.front().label.from == 2;
    std::size_t above = second;
    while (is_second && above > 0 && lines_[above - 1].blank) --above;
    if (!is_second || above == 0 || lines_[above - 1].begins_round) return;
    Typed& first = lines_[--above];
    const bool ring = names_ring(reader_, first.span) && !read_header(text(first), first.span);
    const auto label = start_label(first);
    if (!(may_start_round(reader_, first) || ring || label) || first_is_told(above)) return;
    Way way = way_of(reader_, label ? *label : no_label(first.span), first.span.end);
    if (!starts_work(way)) read_way(reader_, way, Effort::all);
    if (!starts_work(way) && !only_works_plain(way)) return;
    first.begin_round(std::move(way));
  }

  /// "Work even for 3 rounds." between numbered rounds, where the numbers leave room for them.
  void work_told_rounds(std::size_t at) {
    Typed& typed = lines_[at];
    if (typed.blank || typed.begins_round || !has_room(at)) return;
    const auto label = rounds_told(text(typed), typed.span.begin, reader_.vocabulary);
    if (!label || !has_room(at, label->to)) return;
    Way way = way_of(reader_, *label, typed.span.end);
    if (!works_even(way)) return;
    typed.begin_round(std::move(way));
  }

  /// Whether numbers are missing between the rounds above and below a line: `rounds` of them, or any.
  bool has_room(std::size_t at, int rounds = 0) const {
    std::size_t above = at, below = at + 1;
    while (above > 0 && !lines_[above - 1].begins_round) --above;
    while (below < lines_.size() && !lines_[below].begins_round) ++below;
    if (above == 0 || below == lines_.size()) return above > 0;
    const Label& last = lines_[above - 1].ways.front().label;
    const Label& next = lines_[below].ways.front().label;
    if (last.relative || next.relative || next.from <= 1) return true;
    const int missing = next.from - last.to - 1;
    return rounds == 0 ? missing > 0 : missing == rounds;
  }

  static bool works_even(const Way& way) {
    if (!is_clean(way)) return false;
    const Effect& effect = way.readings.front().effect;
    const bool all = effect.pass_uses > 0 && effect.uses == 0 && effect.makes == 0;
    return !effect.starts &&
           (all ? effect.pass_uses == effect.pass_makes : effect.uses > 0 && effect.uses == effect.makes);
  }

  static bool starts_work(const Way& way) {
    return std::any_of(way.readings.begin(), way.readings.end(), [](const Reading& reading) {
      return reading.effect.starts && reading.effect.makes > 2 && reading.passed_over.empty();
    });
  }

  /// "Sc 6": stitches that nothing says where they go.
  static bool only_works_plain(const Way& way) {
    if (!is_clean(way)) return false;
    const Reading& reading = way.readings.front();
    return reading.cost == 0 && reading.effect.uses > 2 && reading.effect.uses == reading.effect.makes &&
           reading.effect.pass_uses == 0;
  }

  /// Whether the round before a line is the first of its part.
  bool first_is_told(std::size_t at) const {
    while (at > 0 && !lines_[at - 1].begins_round) --at;
    return at > 0 && lines_[at - 1].ways.front().label.to <= 1;
  }

  /// The number may be a list's: then the round is the next one.
  static void go_on(Typed& typed) {
    Way next = typed.ways.front();
    next.label.to = next.label.to - next.label.from + 1;
    next.label.relative = true;
    typed.ways.insert(typed.ways.begin(), std::move(next));
  }

  /// "Foundation row: 10 ch, sc in 2nd ch from hook, …": the label of a first row without a number.
  std::optional<Label> start_label(const Typed& typed) const {
    const auto header = read_header(text(typed), typed.span);
    if (!header || !names_start(header->name, reader_.vocabulary) || !names_stitches(reader_, typed.span))
      return std::nullopt;
    const std::size_t colon = text(typed).find_first_of(":-");
    if (colon == std::string_view::npos) return std::nullopt;
    Label label = no_label(typed.span);
    label.work = typed.span.begin + static_cast<std::uint32_t>(colon) + 1;
    return label;
  }

  std::string_view text(const Typed& typed) const { return reader_.source.at(typed.span); }

  const Reader& reader_;
  std::vector<Typed>& lines_;
};

} // namespace

void compare_lines(const Reader& reader, std::vector<Typed>& lines) { Comparing(reader, lines).compare(); }

namespace {

/// "MR, SC, INC, DEC - you know them all": names of the craft one after the other, without a number or a word
/// of how often or where, are a list of them.
bool only_lists_names(const Reader& reader, Span line) {
  constexpr int least = 3;
  const Sentence sentence = look_up(reader.source.at(line), line.begin, reader.vocabulary);
  int names = 0, marks = 0;
  for (std::uint32_t at = 0; at < sentence.size();) {
    const WordsAt words = words_at(sentence, at);
    if (words.empty()) {
      ++at;
      continue;
    }
    const words::ConceptClass sort = sort_of(sentence, *words.first);
    const bool name = is_work(sentence, *words.first) || sort == words::ConceptClass::start ||
                      sort == words::ConceptClass::loops;
    const bool other = words.first->kind == words::WordKind::number ||
                       (words.first->kind == words::WordKind::phrase && !name && marks < least - 1 &&
                        sort != words::ConceptClass::filler);
    if (other) return false;
    names += name;
    marks += words.first->kind == words::WordKind::mark;
    at = std::max(words.first->end, at + 1);
  }
  return names >= least && marks >= least - 1;
}

/// "fm fasta maskor / mr magisk ring": how many words of a line are said once more in full right behind them.
int names_explained(const Reader& reader, Span line) {
  const Sentence sentence = look_up(reader.source.at(line), line.begin, reader.vocabulary);
  int explained = 0;
  for (std::uint32_t at = 0; at < sentence.size(); ++at) {
    const WordsAt words = words_at(sentence, at);
    const bool short_name = std::any_of(words.begin(), words.end(), [&](const words::Word& word) {
      if (word.kind != words::WordKind::phrase || sort_of(sentence, word) == words::ConceptClass::filler)
        return false;
      const std::uint32_t next = skip_blanks(sentence.text(), word.end);
      const words::Word* full = word_meaning(sentence, next, word.means);
      return next > word.end && full != nullptr && full->end - full->begin > word.end - word.begin;
    });
    explained += short_name;
    if (!words.empty()) at = std::max(words.first->end, at + 1) - 1;
  }
  return explained;
}

} // namespace

bool may_start_round(const Reader& reader, const Typed& typed) {
  const std::string_view line = reader.source.at(typed.span);
  const bool of_all =
      end_of_text_word(reader.vocabulary, words::fold(line).text, 0, TextWord::throughout) > 0;
  if (of_all || only_lists_names(reader, typed.span)) return false; // "Every round begins with 2 chains …"
  if (names_explained(reader, typed.span) > 1) return false;        // a list of abbreviations
  return !read_header(line, typed.span) && names_stitches(reader, typed.span);
}

} // namespace whorl::pattern
