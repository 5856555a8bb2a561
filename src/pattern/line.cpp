#include "pattern/line.hpp"

#include "pattern/chain_habit.hpp"
#include "pattern/chain_told.hpp"
#include "pattern/colour.hpp"
#include "pattern/costs.hpp"
#include "pattern/edging.hpp"
#include "pattern/joining_chain.hpp"
#include "pattern/limits.hpp"
#include "pattern/named_place.hpp"
#include "pattern/pieces.hpp"
#include "pattern/typed.hpp"
#include "pattern/yarn.hpp"
#include "pattern/yarn_list.hpp"
#include "words/ascii.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

constexpr std::size_t longest_subtitle = 160;
constexpr std::string_view points[] = {"-", "*", "\u2022", "\u2013"}; ///< before each of a list
constexpr std::size_t longest_start = 160; ///< bytes of a line that only makes a ring or a chain
constexpr std::size_t words_of_name_below_title = 2;
constexpr int most_notes_between = 2; ///< between a chain and its first row

using words::is_digit;

/// Sorts the typed lines of a text into the lines of a pattern.
class Cutter {
public:
  explicit Cutter(const Reader& reader) : reader_(reader), typed_(typed_lines(reader, cut_.too_long)) {}

  Cut cut() {
    std::size_t at = 0;
    while (at < typed_.size()) at = take_round_or_block(at);
    return std::move(cut_);
  }

private:
  std::string_view text(const Typed& typed) const { return reader_.source.at(typed.span); }

  std::size_t take_round_or_block(std::size_t at) {
    if (typed_[at].begins_round) return take_round(at);
    std::size_t end = at;
    while (end < typed_.size() && !typed_[end].begins_round) ++end;
    std::size_t start = find_start(at, end);
    auto named = start < end ? named_place(reader_, typed_[start].span) : std::nullopt;
    if (start < end && !named) named = named_start(reader_, typed_[start].span);
    const Span from = start < end ? start_in(reader_, named ? named->place : typed_[start].span) : Span{};
    const bool used = start < end && use_start(end, from);
    if (start < end && !used && (named || from != typed_[start].span)) start = end;
    if (start == end) join_by_chain(reader_, typed_, at, end);
    take_block(at, start, end);
    if (start < end) take_rest_of_start(start, end, used ? from : Span{}, named ? named->name : Span{});
    return end;
  }

  /// What stands around the ring or chain above a round, and the lines between it and the round; `name` is
  /// that of the part, if the line has one.
  void take_rest_of_start(std::size_t start, std::size_t round, Span used, Span name) {
    const Span line = typed_[start].span;
    const Span front = used.empty() ? line : trimmed(reader_.source, {line.begin, used.begin});
    const bool heading = !used.empty() && !name.empty();
    if (!front.empty()) add_front(heading ? name : front, heading);
    if (heading) cut_.lines.back().heading.make = read_heading(text(typed_[start]), reader_.vocabulary).make;
    if (!used.empty() && says_more({used.end, line.end}))
      add(LineKind::sentence, trimmed(reader_.source, {used.end, line.end}));
    for (std::size_t at = start + 1; at < round; ++at)
      if (!typed_[at].blank) add(LineKind::sentence, typed_[at].span);
  }

  /// More than the mark or bracket that closes what stands before.
  bool says_more(Span rest) const {
    return reader_.source.at(rest).find_first_not_of(" \t.:;,)") != std::string_view::npos;
  }

  /// The line above a first round that makes its ring or chain; `round` if there is none.
  std::size_t find_start(std::size_t begin, std::size_t round) const {
    if (round >= typed_.size() || (any_round_ && typed_[round].ways.front().label.from != 1)) return round;
    std::size_t at = round;
    for (int notes = 0; at > begin && notes <= most_notes_between; --at) {
      const Typed& above = typed_[at - 1];
      if (above.blank) continue;
      const bool habit = only_tells_habit(reader_, above.span);
      if (!habit && may_start(above)) return at - 1;
      if (!habit && !is_note(above)) return round;
      ++notes;
    }
    return round;
  }

  bool may_start(const Typed& above) const {
    if (above.underlined || above.span.length() > longest_start) return false;
    const auto header = read_header(text(above), above.span);
    const bool names = header && !header->value.empty() && !names_start(header->name, reader_.vocabulary) &&
                       chain_told(text(above), 0, reader_.vocabulary).empty() &&
                       !named_place(reader_, above.span);
    return !names && !start_in(reader_, above.span).empty();
  }

  /// What stands in front of the start that a line tells.
  void add_front(Span front, bool heading) {
    Line& line = add(heading ? LineKind::heading : LineKind::sentence, front);
    if (heading) line.heading = read_heading(reader_.source.at(front), reader_.vocabulary);
  }

  /// A whole sentence that names no stitch may stand between a chain and its first row, and "Tip: …".
  bool is_note(const Typed& typed) const {
    const char last = text(typed).back();
    const auto header = read_header(text(typed), typed.span);
    if (header && is_name_of_note(header->name)) return true;
    return !typed.underlined && (last == '.' || last == '!' || last == ')') &&
           !read_header(text(typed), typed.span) && !names_stitches(reader_, typed.span);
  }

  bool use_start(std::size_t round, Span start) {
    bool used = false;
    for (Way& way : typed_[round].ways) used = use_start(way, round, start) || used;
    return used;
  }

  /// The work of a label that stands on a line of its own is read with the lines below it.
  bool use_start(Way& way, std::size_t round, Span start) const {
    if (!way.work.empty()) return work_into(reader_, way, start);
    Way whole = way;
    whole.work = trimmed(reader_.source, {way.work.begin, end_of_lines_below(round)});
    read_way(reader_, whole, Effort::cheapest);
    if (!work_into(reader_, whole, start)) return false;
    way.above = start;
    return true;
  }

  /// Where the lines end that stand below a label on a line of its own.
  std::uint32_t end_of_lines_below(std::size_t round) const {
    std::size_t next = round + 1;
    const auto goes_on = [&](const Typed& typed) {
      return !typed.blank && !typed.underlined &&
             !(typed.begins_round && !typed.ways.front().label.span.empty());
    };
    while (next < typed_.size() && next <= round + limit::joined_lines && goes_on(typed_[next])) ++next;
    return typed_[next - 1].span.end;
  }

  Line& add(LineKind kind, Span span) {
    Line line;
    line.kind = kind;
    line.span = span;
    cut_.lines.push_back(std::move(line));
    return cut_.lines.back();
  }

  /// A round and the typed lines that go on with it.
  std::size_t take_round(std::size_t at) {
    Line& line = add(LineKind::round, typed_[at].span);
    line.ways = std::move(typed_[at].ways);
    std::size_t next = at + 1;
    const bool bare = line.ways.front().work.empty();
    for (int joined = 0; joined < limit::joined_lines && goes_on(line, next, bare); ++joined) {
      join(line, typed_[next].span.end);
      ++next;
    }
    part_has_unlabelled_ = line.ways.front().label.relative; // "Next round:" gives no number either
    any_round_ = true;
    return next;
  }

  void join(Line& line, std::uint32_t end) const {
    line.span.end = end;
    for (Way& way : line.ways) {
      way.work = trimmed(reader_.source, {way.work.begin, end});
      read_way(reader_, way, Effort::cheapest);
    }
  }

  bool goes_on(const Line& line, std::size_t next, bool bare) const {
    if (next >= typed_.size() || typed_[next].blank || typed_[next].underlined) return false;
    const Typed& typed = typed_[next];
    if (typed.begins_round && !typed.ways.front().label.span.empty()) return false;
    const std::string_view before = reader_.source.at(line.ways.front().work);
    if (bare || is_open(before) || is_count(text(typed)) || is_divided(before, text(typed))) return true;
    if (typed.begins_round && (has_ended(before) || typed.ways.front().reference)) return false;
    if (line.ways.front().label.span.empty() && is_whole_round(typed)) return false;
    return joined_reads_better(line, typed);
  }

  /// A full stop or a bracket at its end: the line is not wrapped.
  static bool has_ended(std::string_view work) {
    return work.empty() || std::string_view(".)]!;").find(work.back()) != std::string_view::npos;
  }

  /// A word is divided at the line's end: "on-", "ly".
  static bool is_divided(std::string_view before, std::string_view line) {
    return before.size() > 1 && before.back() == '-' && words::is_small(before[before.size() - 2]) &&
           words::is_small(line.front());
  }

  /// Whether a bracket is open at the end of a text, or a comma stands there.
  static bool is_open(std::string_view work) {
    constexpr std::string_view from = " from"; // "repeat from" above "* around"
    if (work.size() > from.size() && work.substr(work.size() - from.size()) == from) return true;
    if (!work.empty() && (work.back() == ',' || work.back() == '(' || work.back() == '[')) return true;
    int open = 0;
    for (const char c : work) open += (c == '(' || c == '[') ? 1 : (c == ')' || c == ']') ? -1 : 0;
    return open > 0;
  }

  /// `(18)`, `[18 sts]`, `= 18` on a line of its own.
  static bool is_count(std::string_view line) {
    const std::string_view marks = "([= ";
    std::size_t digit = line.find_first_not_of(marks);
    if (digit == 0 || digit == std::string_view::npos || !is_digit(line[digit])) return false;
    return line.front() == '=' || line.find_first_of(")]") + 1 == line.size();
  }

  bool joined_reads_better(const Line& line, const Typed& typed) const {
    const Way& before = line.ways.front();
    const bool stated = count_at_end(reader_.source.at(before.work)).has_value();
    const bool places = places_something(reader_, typed.span) && !goes_on_small(line, typed);
    if (stated || places || !names_stitches(reader_, typed.span)) return false;
    if (tells_joining_chain(reader_, typed.span) || names_concept(reader_, typed.span, "both layers"))
      return false;
    Way joined = before;
    joined.work = {before.work.begin, typed.span.end};
    read_way(reader_, joined, Effort::cheapest);
    if (is_clean(joined) && joined.readings.front().effect != effect_before(before)) return true;
    return goes_on_small(line, typed) && !joined.readings.empty() &&
           joined.readings.front().passed_over.empty() && !joined.readings.front().stated.empty() &&
           !before.readings.empty() && before.readings.front().stated.empty();
  }

  /// Whether a line goes on in the middle of a sentence: "2 dc in each" above "remaining dc around".
  bool goes_on_small(const Line& line, const Typed& typed) const {
    const char first = text(typed).front();
    return first >= 'a' && first <= 'z' && !has_ended(reader_.source.at(line.span));
  }

  static Effect effect_before(const Way& way) {
    return way.readings.empty() ? Effect{} : way.readings.front().effect;
  }

  /// The lines [begin, end) above a round.
  void take_block(std::size_t begin, std::size_t end, std::size_t round) {
    const bool first = cut_.lines.empty() || !any_round_;
    const std::size_t heading = find_heading(begin, end, round, first);
    for (std::size_t at = begin; at < end;) {
      if (typed_[at].blank) {
        ++at;
      } else if (at == heading) {
        take_heading(at++);
      } else if (first && at < heading &&
                 !(has_title_ && only_names_yarn(text(typed_[at]), reader_.vocabulary))) {
        at = take_front_matter(at, end);
      } else {
        at = take_sentence(at, std::min(end, at < heading ? heading : end));
      }
    }
    any_round_ = any_round_ || round < typed_.size();
  }

  static constexpr std::size_t none = static_cast<std::size_t>(-1);
  static constexpr std::size_t longest_stitch = 5; ///< letters of an abbreviation

  bool begins_part(std::size_t round) const {
    if (round >= typed_.size()) return false;
    if (!any_round_) return true;
    const Way& way = typed_[round].ways.front();
    if (way.reference && way.label.span.empty()) return true;
    const bool starts = !way.readings.empty() && way.readings.front().effect.starts &&
                        !goes_along_edges(way.readings.front());
    return way.label.from == 1 || (starts && !way.label.relative) || (starts && way.label.span.empty());
  }

  /// The line of a block that names the part which begins behind it: a marked one, else the first that looks
  /// like a name in the paragraph nearest to the round.
  std::size_t find_heading(std::size_t begin, std::size_t end, std::size_t round, bool first) const {
    if (!begins_part(round)) return find_name_alone(begin, end, round);
    const std::size_t title = first ? first_title(begin, end) : none;
    std::size_t found = none;
    for (std::size_t at = end; at-- > begin;) {
      const Typed& typed = typed_[at];
      if (typed.blank && found != none) break;
      if (typed.blank || at == title || !may_name_part(at, title)) continue;
      found = at;
      if (is_marked(typed)) return at;
    }
    for (std::size_t at = begin; found == none && at < end; ++at)
      if (at != title && !typed_[at].blank && is_marked(typed_[at])) found = at;
    for (std::size_t at = end; found == none && any_round_ && at-- > begin;)
      if (!typed_[at].blank && names_part_and_more(typed_[at])) found = at;
    return found == none && title != none && title + 1 == round && names_first_part(title) ? title : found;
  }

  /// Whether the line at the head of the text, right above a round, names a part and no whole: it says how
  /// many are made, or the other parts have lines like it.
  bool names_first_part(std::size_t head) const {
    if (read_heading(text(typed_[head]), reader_.vocabulary).says_make) return true;
    if (!is_name(typed_[head])) return false;
    const auto in_capitals = [](std::string_view line) {
      return std::none_of(line.begin(), line.end(), words::is_small);
    };
    for (std::size_t at = head + 2; at + 1 < typed_.size(); ++at)
      if (!typed_[at].blank && typed_[at - 1].blank && typed_[at + 1].begins_round && is_name(typed_[at]) &&
          !typed_[at + 1].ways.empty() && typed_[at + 1].ways.front().label.from == 1)
        return in_capitals(text(typed_[at])) == in_capitals(text(typed_[head]));
    return false;
  }

  /// Above a round whose number runs on, a marked line or a name with a blank line above it begins a part
  /// only if the part before is made several times or its yarn was cut; else one piece is worked on.
  std::size_t find_name_alone(std::size_t begin, std::size_t end, std::size_t round) const {
    if (round >= typed_.size() || !part_is_done(begin)) return none;
    for (std::size_t at = begin; at < end; ++at) {
      if (typed_[at].blank) continue;
      const bool alone = at > 0 && typed_[at - 1].blank && is_name(typed_[at]);
      if (is_marked(typed_[at]) || (alone && at + 1 == end)) return at;
    }
    return none;
  }

  bool part_is_done(std::size_t begin) const {
    const auto heading = std::find_if(cut_.lines.rbegin(), cut_.lines.rend(),
                                      [](const Line& line) { return line.kind == LineKind::heading; });
    if (heading != cut_.lines.rend() && heading->heading.make > 1) return true;
    const auto cuts = [&](Span span) {
      const auto placings = read_placings(reader_.source.at(span), span, reader_.vocabulary);
      return std::any_of(placings.begin(), placings.end(),
                         [](const Placing& p) { return p.what == What::cut; });
    };
    const bool in_round = !cut_.lines.empty() && cuts(cut_.lines.back().span);
    const bool behind = begin < typed_.size() && !typed_[begin].blank && cuts(typed_[begin].span);
    return in_round || behind;
  }

  /// One to three words with a capital that place nothing: "Body", "Second leg".
  bool is_name(const Typed& typed) const {
    const std::string_view line = text(typed);
    const auto blanks = std::count(line.begin(), line.end(), ' ');
    return looks_like_heading(line) && blanks < 3 && !places_something(reader_, typed.span) &&
           !names_stitches(reader_, typed.span) && !read_header(line, typed.span);
  }

  bool is_marked(const Typed& typed) const {
    const Heading heading = read_heading(text(typed), reader_.vocabulary);
    return typed.underlined || typed.before_round || heading.marked ||
           (heading.says_make && !heading.name.empty() && looks_like_heading(text(typed)));
  }

  /// "SKIRT: Join the yarn in a free front loop of Rnd 5.", "CUFF (worked along the last round of the body)"
  bool names_part_and_more(const Typed& typed) const {
    if (named_round(reader_, typed.span)) return true;
    const auto header = read_header(text(typed), typed.span);
    return header && !header->value.empty() && looks_like_heading(header->name) &&
           text(typed).find('=') == std::string_view::npos;
  }

  bool may_name_part(std::size_t at, std::size_t title) const {
    const Typed& typed = typed_[at];
    if (only_names_yarn(text(typed), reader_.vocabulary) || lists_yarns(text(typed), reader_.vocabulary))
      return false;
    if (is_marked(typed) || is_made_name(at)) return true;
    if (!looks_like_heading(text(typed)) && !is_small_name(at)) return false;
    const auto blanks = std::count(text(typed).begin(), text(typed).end(), ' ');
    const auto length = static_cast<std::uint32_t>(without_aside(text(typed)).size());
    const Span name{typed.span.begin, typed.span.begin + length};
    if (places_something(reader_, name) && (blanks > 0 || !names_a_thing(reader_, name))) return false;
    const bool below_title = title != none && at == title + 1;
    if (below_title && static_cast<std::size_t>(blanks) + 1 > words_of_name_below_title) return false;
    const auto header = read_header(text(typed), typed.span);
    return !header || (header->value.empty() && !opens_list(at));
  }

  /// "eyes (make 2)" right above a first round, be it in small letters and without a blank line.
  bool is_made_name(std::size_t at) const {
    if (at + 1 >= typed_.size() || !typed_[at + 1].begins_round || typed_[at + 1].ways.empty()) return false;
    const Heading heading = read_heading(text(typed_[at]), reader_.vocabulary);
    const bool short_name = std::count(heading.name.begin(), heading.name.end(), ' ') < 2;
    return heading.says_make && heading.make > 1 && short_name && !heading.name.empty() &&
           typed_[at + 1].ways.front().label.from == 1 && !names_stitches(reader_, typed_[at].span);
  }

  /// "stalk", "nut (sand)", "ears 2x" in small letters, a blank line above it and its first round below.
  bool is_small_name(std::size_t at) const {
    const Typed& typed = typed_[at];
    if (at == 0 || !typed_[at - 1].blank || at + 1 >= typed_.size() || !typed_[at + 1].begins_round)
      return false;
    const std::string_view line = text(typed);
    const Heading heading = read_heading(line, reader_.vocabulary);
    const std::string_view name = heading.says_make ? heading.name : line.substr(0, line.find(" ("));
    const bool letters =
        std::count(name.begin(), name.end(), ' ') < 2 && words::fold(name).text == name &&
        std::all_of(name.begin(), name.end(), [](char c) { return c == ' ' || words::is_folded_letter(c); });
    const std::size_t closing = line.rfind(')');
    const bool in_colour = closing != line.npos && closing + 2 < line.size() &&
                           is_colour(line.substr(closing + 2), reader_.vocabulary);
    const bool bracket = heading.says_make || name.size() == line.size() || line.back() == ')' || in_colour;
    return letters && bracket && name.size() > 2 && !names_stitches(reader_, typed.span) &&
           yarn_named(name, reader_.vocabulary).empty();
  }

  /// `Materials:` with lines below it that a blank line ends before the next round.
  bool opens_list(std::size_t at) const {
    std::size_t next = at + 1;
    while (next < typed_.size() && !typed_[next].blank && !typed_[next].begins_round) ++next;
    return next > at + 1 && (next == typed_.size() || typed_[next].blank);
  }

  /// The first line that is no header.
  std::size_t first_title(std::size_t begin, std::size_t end) const {
    if (has_title_) return none;
    for (std::size_t at = begin; at < end; ++at)
      if (!typed_[at].blank && (!read_header(text(typed_[at]), typed_[at].span) || is_colon_title(at)))
        return at;
    return none;
  }

  /// "Ladder fungus: three frills on one stem", alone at the head of the text.
  bool is_colon_title(std::size_t at) const {
    const auto is_text = [](const Typed& typed) { return !typed.blank; };
    const bool first =
        std::none_of(typed_.begin(), typed_.begin() + static_cast<std::ptrdiff_t>(at), is_text);
    const bool alone = at + 1 < typed_.size() && (typed_[at + 1].blank || typed_[at].underlined);
    return first && alone && is_title_with_colon(text(typed_[at]), typed_[at].span, reader_.vocabulary);
  }

  void take_heading(std::size_t at) {
    Line& line = add(LineKind::heading, typed_[at].span);
    line.heading = read_heading(text(typed_[at]), reader_.vocabulary);
    part_has_unlabelled_ = true;
  }

  /// Title, a line of introduction below it, header lines; other text stays a header without a name.
  std::size_t take_front_matter(std::size_t at, std::size_t end) {
    const Typed& typed = typed_[at];
    const auto header = read_header(text(typed), typed.span);
    if (header && (has_title_ || !is_colon_title(at))) return take_header(*header, at, end);
    if (!has_title_) {
      has_title_ = true;
      add(LineKind::title, typed.span);
      return take_subtitle(at + 1, end);
    }
    const std::size_t next = end_of_sentence(at, end);
    Line& line = add(LineKind::header, {typed.span.begin, typed_[next - 1].span.end});
    line.header = {"", std::string(reader_.source.at(line.span)), line.span};
    return next;
  }

  /// "- brown yarn": one of a list.
  bool is_point(std::size_t at) const {
    const std::string_view line = trim(text(typed_[at]));
    return std::any_of(std::begin(points), std::end(points), [line](std::string_view point) {
      return line.size() > point.size() && line.substr(0, point.size()) == point && line[point.size()] == ' ';
    });
  }

  std::size_t take_subtitle(std::size_t at, std::size_t end) {
    if (at >= end || typed_[at].blank || typed_[at].underlined) return at;
    const Typed& typed = typed_[at];
    if (read_header(text(typed), typed.span) || text(typed).size() > longest_subtitle || is_marked(typed))
      return at;
    if (at + 1 == end && may_name_part(at, at - 1)) return at;
    if (at + 1 < end && is_point(at + 1) && !is_point(at)) return at; // "Materials" above a list
    add(LineKind::subtitle, typed.span);
    return at + 1;
  }

  /// `Materials:` and the lines below it, up to a blank line or the next header.
  std::size_t take_header(Header header, std::size_t at, std::size_t end) {
    std::size_t next = at + 1;
    while (header.value.empty() && next < end && !typed_[next].blank) ++next;
    Line& line = add(LineKind::header, {typed_[at].span.begin, typed_[next - 1].span.end});
    if (next > at + 1) header.value = reader_.source.at({typed_[at + 1].span.begin, line.span.end});
    header.span = line.span;
    line.header = std::move(header);
    return next;
  }

  /// Where a sentence ends that is wrapped over several typed lines.
  std::size_t end_of_sentence(std::size_t at, std::size_t end) const {
    std::size_t next = at + 1;
    while (next < end && !typed_[next].blank && is_wrapped(text(typed_[next - 1]), text(typed_[next])))
      ++next;
    return next;
  }

  static bool is_wrapped(std::string_view before, std::string_view line) {
    const bool ended = std::string_view(".!?:;").find(before.back()) != std::string_view::npos;
    const bool small =
        (line.front() >= 'a' && line.front() <= 'z') || is_digit(line.front()) || line.front() == '(';
    return before.back() == ',' || (!ended && small);
  }

  std::size_t take_sentence(std::size_t at, std::size_t end) {
    if (reads_as_round(typed_[at])) return take_unlabelled(at);
    const std::size_t next = end_of_sentence(at, end);
    add(LineKind::sentence, {typed_[at].span.begin, typed_[next - 1].span.end});
    return next;
  }

  /// In a part without labels every line that reads as work and states its count, or only counts stitches, is
  /// a round.
  bool reads_as_round(const Typed& typed) const { return part_has_unlabelled_ && is_whole_round(typed); }

  bool is_whole_round(const Typed& typed) const {
    if (!names_stitches(reader_, typed.span)) return false;
    Way way = way_of(reader_, no_label(typed.span), typed.span.end);
    if (makes_last_number(typed, way)) return true;
    const bool told = is_clean(way) || (part_has_unlabelled_ && is_nearly_clean(way));
    return told && does_work(way) && (!way.readings.front().stated.empty() || is_only_counted(typed));
  }

  /// "For the brim, working in the front loops only, put 2 hdc in every stitch (30)."
  static bool is_nearly_clean(const Way& way) {
    return !way.readings.empty() && way.readings.front().passed_over.empty() &&
           way.readings.front().cost <= cost::clean_start;
  }

  /// `(x v)*6 18`: the last number is what the line makes.
  bool makes_last_number(const Typed& typed, Way& way) const {
    if (!is_digit(text(typed).back())) return false;
    read_way(reader_, way, Effort::all);
    return std::any_of(way.readings.begin(), way.readings.end(), [](const Reading& reading) {
      return reading.passed_over.empty() && reading.stated.size() == 1 && reading.effect.pass_uses == 0 &&
             reading.effect.makes == reading.stated.front().count;
    });
  }

  /// `18x`, `24 sc`: a number, one word and nothing else.
  bool is_only_counted(const Typed& typed) const {
    const std::string_view line = text(typed);
    const std::size_t word = line.find_first_not_of("0123456789");
    if (word == 0 || word == std::string_view::npos) return false;
    const std::string_view rest = line.substr(line[word] == ' ' ? word + 1 : word);
    return rest.size() <= longest_stitch && rest.find_first_of(" ,;([*") == std::string_view::npos;
  }

  std::size_t take_unlabelled(std::size_t at) {
    typed_[at].ways = {way_of(reader_, no_label(typed_[at].span), typed_[at].span.end)};
    return take_round(at);
  }

  const Reader& reader_;
  Cut cut_;
  std::vector<Typed> typed_;
  bool any_round_ = false;
  bool has_title_ = false;
  bool part_has_unlabelled_ = false;
};

} // namespace

Cut cut(const Reader& reader) { return Cutter(reader).cut(); }

} // namespace whorl::pattern
