#include "pattern/typed.hpp"

#include "pattern/chain_habit.hpp"
#include "pattern/compared_lines.hpp"
#include "pattern/costs.hpp"
#include "pattern/edging.hpp"
#include "pattern/flat_told.hpp"
#include "pattern/header.hpp"
#include "pattern/limits.hpp"
#include "pattern/pieces.hpp"
#include "pattern/rounds_told.hpp"
#include "pattern/table.hpp"
#include "pattern/unlabelled.hpp"
#include "words/ascii.hpp"
#include "words/letters.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

/// `-----`, `=====`: it underlines the line above it, or divides.
bool is_rule(std::string_view text) {
  return text.size() >= 3 && text.find_first_not_of("-=_~*|:+ ") == std::string_view::npos;
}

/// Bytes of pictures, boxes, ticks, arrows, bullets and `>` at the head of a line, with the blanks behind.
std::size_t bytes_of_signs(std::string_view text) {
  std::size_t at = 0;
  bool any = false;
  while (at < text.size()) {
    const words::Letter letter = words::letter_at(text, at);
    const bool sign = letter.code == '>' || (letter.code >= 0x2190 && letter.code < 0x2C00) ||
                      letter.code == 0x2022 || letter.code == 0xB7 || letter.code == 0xFE0F ||
                      (letter.code >= 0x1F000 && letter.code < 0x1FB00);
    if (!sign && !(any && letter.code == ' ')) break;
    any = true;
    at += letter.length;
  }
  return at;
}

/// Typing the lines of one text.
class Typist {
  static constexpr std::uint32_t longest_name = 60; ///< bytes of a line that may name a part

public:
  Typist(const Reader& reader, std::vector<Span>& too_long) : reader_(reader), too_long_(too_long) {}

  std::vector<Typed> type() {
    for (std::size_t i = 0; i < reader_.source.line_count(); ++i) type_line(reader_.source.line(i));
    for (Typed& typed : lines_) guess(typed);
    compare_lines(reader_, lines_);
    tell_rows(lines_);
    return std::move(lines_);
  }

private:
  std::string_view text(const Typed& typed) const { return reader_.source.at(typed.span); }

  void type_line(Span line) {
    if (line.length() > limit::line_bytes) {
      too_long_.push_back(line);
      return;
    }
    const Span span = behind_star(behind_sign(trimmed(reader_.source, line)));
    const std::string_view typed = reader_.source.at(span);
    const bool rule = is_rule(typed);
    if (rule && !lines_.empty() && !lines_.back().blank) lines_.back().underlined = true;
    if (rule) return;
    type_rounds(span);
  }

  /// A picture, a box to tick or a quoting mark before a label is the mark of a list.
  Span behind_sign(Span line) const {
    const std::size_t signs = bytes_of_signs(reader_.source.at(line));
    if (signs == 0) return line;
    const Span behind = trimmed(reader_.source, {line.begin + static_cast<std::uint32_t>(signs), line.end});
    return read_labels(text_of(behind), behind.begin, reader_.vocabulary).empty() ? line : behind;
  }

  std::string_view text_of(Span span) const { return reader_.source.at(span); }

  /// A star at the head of a line that has no other is the mark of a list.
  Span behind_star(Span line) const {
    const std::string_view text = reader_.source.at(line);
    const bool listed = text.size() > 2 && text[0] == '*' && text[1] == ' ' &&
                        text.find('*', 1) == std::string_view::npos && names_round_or_part(line);
    return listed ? trimmed(reader_.source, {line.begin + 1, line.end}) : line;
  }

  bool names_round_or_part(Span line) const {
    const std::string_view text = reader_.source.at(line).substr(2);
    const auto labels = read_labels(text, line.begin + 2, reader_.vocabulary);
    return (!labels.empty() && labels.front().closed) || read_header(text, line);
  }

  /// A row of a table is one round; other lines are cut where a round begins inside them.
  void type_rounds(Span span) {
    if (const auto form = table_form(reader_, span)) {
      table_ = *form;
      return;
    }
    Ways row = table_row(reader_, span, table_);
    if (!row.empty()) {
      add_typed(span);
      lines_.back().ways = std::move(row);
      return;
    }
    const std::vector<Span> pieces = pieces_of(reader_, span);
    for (const Span piece : pieces) add_typed(piece);
    if (pieces.size() > 1) lines_[lines_.size() - pieces.size()].before_round = true;
  }

  void add_typed(Span span) {
    Typed typed;
    typed.span = span;
    typed.blank = span.empty();
    lines_.push_back(std::move(typed));
  }

  void guess(Typed& typed) {
    if (typed.blank) return;
    if (!typed.ways.empty()) typed.begins_round = rounds_seen_ = true;
    if (typed.begins_round) return;
    auto labels = loose_in_step(typed);
    loose_ = loose_ || !labels.empty();
    if (labels.empty()) labels = read_labels(text(typed), typed.span.begin, reader_.vocabulary);
    for (Label& label : labels) {
      label.behind_rows = behind_rows_ && label.kind == RoundKind::round;
      typed.ways.push_back(way_of(reader_, label, typed.span.end));
    }
    if (!labels.empty()) {
      typed.begins_round = is_round(typed);
    } else if (is_edging(typed)) {
      typed.begins_round = true;
    } else if (rounds_seen_ && is_round_without_label(typed)) {
      typed.begins_round = true;
    } else if (repeats_part(typed)) {
      typed.ways = {way_of(reader_, no_label(typed.span), typed.span.end)};
      typed.begins_round = true;
    } else if (may_start_round(reader_, typed)) {
      typed.ways = {way_of(reader_, no_label(typed.span), typed.span.end)};
      if (!starts_something(typed.ways.front()) && is_below_name(typed)) read_as_piece(typed);
      typed.begins_round = starts_something(typed.ways.front()) && !only_joins_yarn(typed);
      if (typed.begins_round) last_ = 1;
    }
    rounds_seen_ = rounds_seen_ || typed.begins_round;
    if (typed.begins_round) watch_rows(typed.ways.front());
    if (typed.begins_round && !labels.empty() && !labels.front().relative) {
      last_ = labels.front().to;
      told_ = 0;
    }
    if (typed.begins_round && !labels.empty() && labels.front().relative) told_ += labels.front().to;
    if (const auto told = rounds_told(text(typed), typed.span.begin, reader_.vocabulary);
        told && labels.empty())
      told_ += told->to;
    if (!typed.begins_round && typed.span.length() <= longest_name) names_.push_back(typed.span);
    if (!typed.begins_round) typed.ways.clear();
  }

  /// "12 row 24 sc" behind round 11, where round 13 or no other comes next; none if the line has no such
  /// label.
  std::vector<Label> loose_in_step(const Typed& typed) const {
    std::vector<Label> labels = read_loose_labels(text(typed), typed.span.begin, reader_.vocabulary);
    const auto is_out_of_step = [&](const Label& label) {
      const Span work{std::min(label.work, typed.span.end), typed.span.end};
      const bool works =
          !work.empty() && (names_stitches(reader_, work) || names_ring(reader_, work) ||
                            has_digit(text_of(work)) || is_clean(way_of(reader_, label, work.end)));
      return !works || !(label.from == last_ + 1 || label.from == last_ + told_ + 1 || label.from == 1) ||
             !goes_on_behind(typed, label.to);
    };
    labels.erase(std::remove_if(labels.begin(), labels.end(), is_out_of_step), labels.end());
    for (Label& label : labels) label.closed = true;
    return labels;
  }

  static bool has_digit(std::string_view text) {
    return std::any_of(text.begin(), text.end(), words::is_digit);
  }

  /// Whether the next label below a line goes on behind a number and the rounds told between ("5 rounds
  /// even"); where none does, labels before were loose.
  bool goes_on_behind(const Typed& typed, int number) const {
    int rounds = 0;
    for (const Typed* below = &typed + 1; below < lines_.data() + lines_.size(); ++below) {
      if (below->blank) continue;
      auto labels = read_loose_labels(text(*below), below->span.begin, reader_.vocabulary);
      if (labels.empty()) labels = read_labels(text(*below), below->span.begin, reader_.vocabulary);
      if (labels.empty() || labels.front().relative) {
        const auto told = rounds_told(text(*below), below->span.begin, reader_.vocabulary);
        if (told) rounds += told->to;
        continue;
      }
      if (labels.front().from == number + 1 || labels.front().from == number + rounds + 1) return true;
      if (labels.front().from > number) return false;
      break;
    }
    return loose_;
  }

  /// "Edging: ch 1, sc evenly along the side" behind rows or rounds; one with a count is worked, be it
  /// understood or not.
  bool is_edging(Typed& typed) const {
    auto label = edging_label(text(typed), typed.span.begin, reader_.vocabulary);
    if (!label || !rounds_seen_) return false;
    label->behind_rows = behind_rows_;
    typed.ways = {way_of(reader_, *label, typed.span.end)};
    const Way& way = typed.ways.front();
    return (is_clean(way) && does_work(way)) || (way.stated && names_stitches(reader_, way.work));
  }

  bool is_round_without_label(Typed& typed) const {
    auto way = round_without_label(reader_, typed.span, behind_rows_);
    if (!way && is_below_free_loops(typed)) way = round_below_loops(reader_, typed.span, (&typed - 1)->span);
    // Without a count it may stand for nothing that the rounds around it are worked into.
    if (way && way->readings.front().stated.empty() && goes_on_behind(typed, last_)) return false;
    if (way) typed.ways = {std::move(*way)};
    return way.has_value();
  }

  /// Whether the line above is the name of a part, alone below a blank line or with how many are made.
  bool is_below_name(const Typed& typed) const {
    const std::ptrdiff_t at = &typed - lines_.data();
    if (!rounds_seen_ || at < 2 || lines_[static_cast<std::size_t>(at) - 1].blank) return false;
    const Typed& above = *(&typed - 1);
    if (above.begins_round || above.span.length() > longest_name) return false;
    const Heading heading = read_heading(text(above), reader_.vocabulary);
    const bool alone = (&typed - 2)->blank && heading.name.size() == without_aside(text(above)).size();
    return (alone || heading.says_make) && !heading.name.empty() &&
           std::count(heading.name.begin(), heading.name.end(), ' ') < 2 &&
           !names_stitches(reader_, above.span) && !places_something(reader_, above.span);
  }

  /// "ch 6, sl st, sc, hdc, sc, sl st": a whole piece on one line, worked back along its chain.
  void read_as_piece(Typed& typed) const {
    Label first = no_label(typed.span);
    first.relative = false;
    first.kind = RoundKind::row;
    first.from = 1;
    Way way = way_of(reader_, first, typed.span.end);
    if (starts_something(way)) typed.ways = {std::move(way)};
  }

  /// Below "Attach cream to a front loop left on Rnd 9", which is no round itself.
  bool is_below_free_loops(const Typed& typed) const {
    if (&typed == lines_.data()) return false;
    const Typed& above = *(&typed - 1);
    return !above.blank && !above.begins_round && names_free_loops(reader_, above.span);
  }

  /// Whether a flat piece is being worked: some row of the part, or a round that turns.
  void watch_rows(const Way& way) {
    const auto turns = [](const Node& node) {
      return node.kind == NodeKind::work && node.work.act == Act::turn;
    };
    const bool turned = !way.readings.empty() && std::any_of(way.readings.front().nodes.begin(),
                                                             way.readings.front().nodes.end(), turns);
    const bool row = way.label.kind == RoundKind::row || turned;
    behind_rows_ = row || (behind_rows_ && way.label.from != 1);
  }

  bool is_round(const Typed& typed) const {
    const Way& first = typed.ways.front();
    const bool named = first.label.word && first.label.closed; // "Sıra başındaki 3 zincir …" is none
    if (!named && only_tells_habit(reader_, typed.span)) return false;
    const auto reads = [](const Way& way) { return way.reference || (is_clean(way) && does_work(way)); };
    if (std::any_of(typed.ways.begin(), typed.ways.end(), reads)) return true;
    const bool follows = last_ > 0 && first.label.from == last_ + 1;
    const bool reads_whole = !first.readings.empty() && first.readings.front().passed_over.empty() &&
                             first.readings.front().cost <= cost::clean_in_step && does_work(first);
    const bool begins = first.label.from == 1 && first.label.ordinal; // "1. sırada 6 sık iğne yapıyoruz"
    if (first.label.word && (follows || begins) && reads_whole) return true; // "Rnd 2 2 in each (12)"
    if (!follows && !begins && last_ > 0 && first.label.from <= last_ && only_places(first.work))
      return false; // "На 2 р. вшить глазки."
    if (first.label.word && first.label.closed && !first.label.unclosed) return true;
    const bool works = names_stitches(reader_, first.work);
    const bool told = works || has_digit(text_of(first.work));
    if (first.label.word && first.label.closed) return works || !places_something(reader_, first.work);
    if (first.label.word && first.label.ordinal && follows && told) return true; // "2. sıra …"
    if (first.label.closed && follows && names_concept(reader_, first.work, "even"))
      return true; // "6) - 8) even, 30"
    const bool in_step = (first.label.closed || first.label.word) && follows;
    if (places_something(reader_, first.work) && !in_step) return false;
    return (names_stitches(reader_, first.work) && (rounds_seen_ || first.label.from == 1)) ||
           (first.label.from == 1 && names_ring(reader_, first.work));
  }

  bool only_places(Span work) const {
    return places_something(reader_, work) && !names_stitches(reader_, work);
  }

  /// "As the first leg." below the name of a second: a whole part that is told by naming one before.
  bool repeats_part(const Typed& typed) const {
    const auto reference = read_reference(text(typed), typed.span.begin, reader_.vocabulary);
    if (!reference || !rounds_seen_ || places_something(reader_, typed.span)) return false;
    if (reference->back > 0)
      return text(typed).find(' ') != std::string_view::npos && reference->tail.empty();
    return reference->from != 0 || std::any_of(names_.begin(), names_.end(), [&](Span name) {
             return names_part(reference->part, reader_.source.at(name), reader_.vocabulary) > 0;
           });
  }

  /// "Join with a sl st in any free front loop of Rnd 3."
  bool only_joins_yarn(const Typed& typed) const {
    return typed.ways.front().readings.front().effect.makes <= 1 && names_free_loops(reader_, typed.span);
  }

  const Reader& reader_;
  std::vector<Span>& too_long_;
  std::vector<Typed> lines_;
  std::vector<Span> names_; ///< short lines that are no rounds
  bool rounds_seen_ = false;
  bool behind_rows_ = false; ///< the rounds before are rows of a flat piece
  TableForm table_;          ///< of the table whose heading was seen last
  bool loose_ = false;       ///< some label is loose
  int last_ = 0;             ///< number of the last round seen
  int told_ = 0;             ///< rounds told behind it without a number: "5 rounds even"
};

} // namespace

std::vector<Typed> typed_lines(const Reader& reader, std::vector<Span>& too_long) {
  return Typist(reader, too_long).type();
}

} // namespace whorl::pattern
