#include "pattern/typed.hpp"

#include "pattern/header.hpp"
#include "pattern/limits.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

/// `-----`, `=====`: it underlines the line above it, or divides.
bool is_rule(std::string_view text) {
  return text.size() >= 3 && text.find_first_not_of("-=_~* ") == std::string_view::npos;
}

bool starts_something(const Way& way) {
  if (way.readings.empty()) return false;
  const Reading& likeliest = way.readings.front();
  return likeliest.effect.starts && likeliest.effect.makes > 0 && likeliest.passed_over.empty() &&
         likeliest.cost <= cost::clean_start;
}

/// Typing the lines of one text.
class Typist {
public:
  Typist(const Reader& reader, std::vector<Span>& too_long) : reader_(reader), too_long_(too_long) {}

  std::vector<Typed> type() {
    for (std::size_t i = 0; i < reader_.source.line_count(); ++i) type_line(reader_.source.line(i));
    for (Typed& typed : lines_) guess(typed);
    return std::move(lines_);
  }

private:
  std::string_view text(const Typed& typed) const { return reader_.source.at(typed.span); }

  void type_line(Span line) {
    if (line.length() > limit::line_bytes) {
      too_long_.push_back(line);
      return;
    }
    const Span span = trimmed(reader_.source, line);
    const std::string_view typed = reader_.source.at(span);
    const bool rule = is_rule(typed);
    if (rule && !lines_.empty() && !lines_.back().blank) lines_.back().underlined = true;
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
    lines_.push_back(std::move(typed));
  }

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

  const Reader& reader_;
  std::vector<Span>& too_long_;
  std::vector<Typed> lines_;
  bool rounds_seen_ = false;
};

} // namespace

std::vector<Typed> typed_lines(const Reader& reader, std::vector<Span>& too_long) {
  return Typist(reader, too_long).type();
}

} // namespace whorl::pattern
