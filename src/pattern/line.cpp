#include "pattern/line.hpp"

#include "pattern/limits.hpp"
#include "words/lattice.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

constexpr std::size_t longest_subtitle = 160;
constexpr std::size_t words_of_name_below_title = 2;

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_blank(char c) { return c == ' ' || c == '\t' || c == '\r' || c == '\n'; }

/// A line as typed, and what it may be by itself.
struct Typed {
  Span span;
  bool blank = false;
  bool underlined = false;
  bool begins_round = false; ///< with a label, or as a start without one
  Ways ways;
};

Span trimmed(const Source& source, Span span) {
  const std::string_view text = source.at(span);
  const std::string_view inner = trim(text);
  const auto begin = span.begin + static_cast<std::uint32_t>(inner.data() - text.data());
  return {begin, begin + static_cast<std::uint32_t>(inner.size())};
}

/// `-----`, `=====`: it underlines the line above it, or divides.
bool is_rule(std::string_view text) {
  return text.size() >= 3 && text.find_first_not_of("-=_~* ") == std::string_view::npos;
}

/// Marks that only begin a step of a list.
std::size_t list_mark_bytes(std::string_view line) {
  for (const std::string_view mark : {"- ", "• ", "– "})
    if (line.substr(0, mark.size()) == mark) return mark.size();
  return 0;
}

/// The work's text with its line ends and the marks of list steps made blanks; every byte keeps its place.
std::string on_one_line(std::string_view text) {
  std::string line(text);
  for (std::size_t i = 0; i < line.size(); ++i) {
    if (line[i] != '\n' && line[i] != '\r') continue;
    line[i] = ' ';
    std::size_t step = i + 1;
    while (step < line.size() && (line[step] == ' ' || line[step] == '\t')) ++step;
    std::fill_n(line.begin() + static_cast<std::ptrdiff_t>(step),
                list_mark_bytes(std::string_view(line).substr(step)), ' ');
  }
  return line;
}

bool is_clean(const Way& way) {
  return !way.readings.empty() && way.readings.front().passed_over.empty() &&
         way.readings.front().cost <= cost::clean;
}

bool does_work(const Way& way) {
  if (way.readings.empty()) return false;
  const Effect& effect = way.readings.front().effect;
  return effect.uses + effect.makes + effect.pass_uses + effect.pass_makes > 0 || effect.starts;
}

bool starts_something(const Way& way) {
  return is_clean(way) && way.readings.front().effect.starts && way.readings.front().effect.makes > 0;
}

bool names_stitches(const Reader& reader, Span span) {
  const auto lattice = words::lattice(words::fold(reader.source.at(span), span.begin), reader.vocabulary);
  const words::Concept increase = words::find_concept(reader.vocabulary, "increase");
  const auto is_stitch = [&](const words::Word& word) {
    if (word.kind != words::WordKind::phrase || word.means >= reader.vocabulary.concepts.size()) return false;
    const words::ConceptClass sort = reader.vocabulary.concepts[word.means].sort;
    return sort == words::ConceptClass::stitch || sort == words::ConceptClass::decrease ||
           word.means == increase;
  };
  return std::any_of(lattice.words.begin(), lattice.words.end(), is_stitch);
}

bool places_something(const Reader& reader, Span span) {
  const auto placings = read_placings(reader.source.at(span), span, reader.vocabulary);
  return std::any_of(placings.begin(), placings.end(), [](const Placing& p) { return p.what != What::note; });
}

Way way_of(const Reader& reader, const Label& label, std::uint32_t end) {
  Way way;
  way.label = label;
  way.work = {std::min(label.work, end), end};
  read_way(reader, way, Effort::cheapest);
  return way;
}

/// A typed line on its way to becoming a line of the pattern.
class Cutter {
public:
  explicit Cutter(const Reader& reader) : reader_(reader) {}

  Cut cut() {
    type_lines();
    for (Typed& typed : typed_) guess(typed);
    std::size_t at = 0;
    while (at < typed_.size()) at = take_round_or_block(at);
    return std::move(cut_);
  }

private:
  std::string_view text(const Typed& typed) const { return reader_.source.at(typed.span); }

  // Typed lines

  void type_lines() {
    for (std::size_t i = 0; i < reader_.source.line_count(); ++i) type_line(reader_.source.line(i));
  }

  void type_line(Span line) {
    if (line.length() > limit::line_bytes) {
      cut_.too_long.push_back(line);
      return;
    }
    const Span span = trimmed(reader_.source, line);
    const std::string_view typed = reader_.source.at(span);
    const bool rule = is_rule(typed);
    if (rule && !typed_.empty() && !typed_.back().blank) typed_.back().underlined = true;
    if (rule) return;
    type_rounds(span);
  }

  /// Two rounds in one typed line are two lines.
  void type_rounds(Span span) {
    const std::string_view line = reader_.source.at(span);
    const auto labels = read_labels(line, span.begin, reader_.vocabulary);
    const bool labelled = !labels.empty() && labels.front().word && labels.front().closed;
    std::uint32_t begin = span.begin;
    for (std::size_t i = 0; labelled && i + 2 < line.size(); ++i) {
      if ((line[i] != ';' && line[i] != '.') || line[i + 1] != ' ' || !begins_label(line, span.begin, i + 2))
        continue;
      const auto end = span.begin + static_cast<std::uint32_t>(i) + 1;
      if (end <= labels.front().work) continue;
      add_typed(trimmed(reader_.source, {begin, end}));
      begin = end;
    }
    add_typed(trimmed(reader_.source, {begin, span.end}));
  }

  bool begins_label(std::string_view line, std::uint32_t first, std::size_t place) const {
    const auto labels =
        read_labels(line.substr(place), first + static_cast<std::uint32_t>(place), reader_.vocabulary);
    return !labels.empty() && labels.front().word && labels.front().closed && !labels.front().relative;
  }

  void add_typed(Span span) {
    Typed typed;
    typed.span = span;
    typed.blank = span.empty();
    typed_.push_back(std::move(typed));
  }

  // What a typed line may be by itself

  void guess(Typed& typed) {
    if (typed.blank) return;
    const auto labels = read_labels(text(typed), typed.span.begin, reader_.vocabulary);
    for (const Label& label : labels) typed.ways.push_back(way_of(reader_, label, typed.span.end));
    if (!labels.empty()) {
      typed.begins_round = is_round(typed);
    } else if (may_start(typed)) {
      typed.ways = {way_of(reader_, no_label(typed.span), typed.span.end)};
      typed.begins_round = starts_something(typed.ways.front());
    }
    rounds_seen_ = rounds_seen_ || typed.begins_round;
    if (!typed.begins_round) typed.ways.clear();
  }

  bool is_round(const Typed& typed) const {
    const Way& first = typed.ways.front();
    const auto reads = [](const Way& way) { return is_clean(way) && does_work(way); };
    if (std::any_of(typed.ways.begin(), typed.ways.end(), reads)) return true;
    if (first.label.word && first.label.closed) return true;
    if (places_something(reader_, first.work)) return false;
    return names_stitches(reader_, first.work) && (rounds_seen_ || first.label.from == 1);
  }

  /// Whether a line without a label may be a part's first round.
  bool may_start(const Typed& typed) const {
    return !read_header(text(typed), typed.span) && names_stitches(reader_, typed.span);
  }

  // Lines of the pattern

  std::size_t take_round_or_block(std::size_t at) {
    if (typed_[at].begins_round) return take_round(at);
    std::size_t end = at;
    while (end < typed_.size() && !typed_[end].begins_round) ++end;
    take_block(at, end);
    return end;
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
    part_has_unlabelled_ = line.ways.front().label.span.empty();
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
    if (bare || is_open(before) || is_count(text(typed))) return true;
    if (typed.begins_round) return false;
    return joined_reads_better(line, typed);
  }

  /// Whether a bracket is open at the end of a text, or a comma stands there.
  static bool is_open(std::string_view work) {
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
    if (stated || places_something(reader_, typed.span) || !names_stitches(reader_, typed.span)) return false;
    Way joined = before;
    joined.work = {before.work.begin, typed.span.end};
    read_way(reader_, joined, Effort::cheapest);
    return is_clean(joined) && joined.readings.front().effect != effect_before(before);
  }

  static Effect effect_before(const Way& way) {
    return way.readings.empty() ? Effect{} : way.readings.front().effect;
  }

  // Blocks of lines without rounds

  void take_block(std::size_t begin, std::size_t end) {
    const bool first = cut_.lines.empty() || !any_round_;
    const std::size_t heading = find_heading(begin, end, first);
    for (std::size_t at = begin; at < end;) {
      if (typed_[at].blank) {
        ++at;
      } else if (at == heading) {
        take_heading(at++);
      } else if (first && at < heading) {
        at = take_front_matter(at, end);
      } else {
        at = take_sentence(at, std::min(end, at < heading ? heading : end));
      }
    }
    any_round_ = any_round_ || end < typed_.size();
  }

  static constexpr std::size_t none = static_cast<std::size_t>(-1);

  bool begins_part(std::size_t round) const {
    if (round >= typed_.size()) return false;
    if (!any_round_) return true;
    const Way& way = typed_[round].ways.front();
    const bool starts = !way.readings.empty() && way.readings.front().effect.starts;
    return way.label.from == 1 || (starts && !way.label.relative) || (starts && way.label.span.empty());
  }

  /// The line of a block that names the part which begins behind it: a marked one, else the first that looks
  /// like a name in the paragraph nearest to the round.
  std::size_t find_heading(std::size_t begin, std::size_t end, bool first) const {
    if (!begins_part(end)) return none;
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
    return found;
  }

  bool is_marked(const Typed& typed) const {
    const Heading heading = read_heading(text(typed), reader_.vocabulary);
    return typed.underlined || heading.marked || (heading.says_make && looks_like_heading(text(typed)));
  }

  bool may_name_part(std::size_t at, std::size_t title) const {
    const Typed& typed = typed_[at];
    if (is_marked(typed)) return true;
    if (!looks_like_heading(text(typed)) || places_something(reader_, typed.span)) return false;
    const bool below_title = title != none && at == title + 1;
    const auto blanks = std::count(text(typed).begin(), text(typed).end(), ' ');
    if (below_title && static_cast<std::size_t>(blanks) + 1 > words_of_name_below_title) return false;
    const auto header = read_header(text(typed), typed.span);
    return !header || (header->value.empty() && !opens_list(at));
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
      if (!typed_[at].blank && !read_header(text(typed_[at]), typed_[at].span)) return at;
    return none;
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
    if (header) return take_header(*header, at, end);
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

  std::size_t take_subtitle(std::size_t at, std::size_t end) {
    if (at >= end || typed_[at].blank || typed_[at].underlined) return at;
    const Typed& typed = typed_[at];
    if (read_header(text(typed), typed.span) || text(typed).size() > longest_subtitle || is_marked(typed))
      return at;
    if (at + 1 == end && may_name_part(at, at - 1)) return at;
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

  /// In a part without labels every line that reads as work and states its count is a round.
  bool reads_as_round(const Typed& typed) const {
    if (!part_has_unlabelled_ || !names_stitches(reader_, typed.span)) return false;
    const Way way = way_of(reader_, no_label(typed.span), typed.span.end);
    return is_clean(way) && does_work(way) && !way.readings.front().stated.empty();
  }

  std::size_t take_unlabelled(std::size_t at) {
    typed_[at].ways = {way_of(reader_, no_label(typed_[at].span), typed_[at].span.end)};
    return take_round(at);
  }

  const Reader& reader_;
  std::vector<Typed> typed_;
  Cut cut_;
  bool rounds_seen_ = false;
  bool any_round_ = false;
  bool has_title_ = false;
  bool part_has_unlabelled_ = false;
};

} // namespace

void read_way(const Reader& reader, Way& way, Effort effort) {
  const std::string_view text = reader.source.at(way.work);
  const bool several = text.find_first_of("\r\n") != std::string_view::npos;
  const std::string joined = several ? on_one_line(text) : std::string();
  way.stuck = {};
  way.readings = read_work(several ? std::string_view(joined) : text, way.work, reader.vocabulary,
                           reader.kinds, effort, way.stuck);
  way.effort = effort;
  way.stated = count_at_end(text);
}

std::optional<std::uint32_t> count_at_end(std::string_view work) {
  std::string_view text = work;
  while (!text.empty() && (is_blank(text.back()) || text.back() == '.')) text.remove_suffix(1);
  const bool bracket = !text.empty() && (text.back() == ')' || text.back() == ']');
  const std::size_t mark = bracket ? text.find_last_of("([") : text.find_last_of('=');
  if (mark == std::string_view::npos) return std::nullopt;
  const std::string_view count = trim(text.substr(mark + 1));
  std::uint32_t value = 0;
  std::size_t digits = 0;
  for (; digits < count.size() && is_digit(count[digits]) && digits < 7; ++digits)
    value = value * 10 + static_cast<std::uint32_t>(count[digits] - '0');
  return digits == 0 ? std::nullopt : std::optional(value);
}

Cut cut(const Reader& reader) { return Cutter(reader).cut(); }

} // namespace whorl::pattern
