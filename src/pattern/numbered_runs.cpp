#include "pattern/numbered_runs.hpp"

#include "pattern/costs.hpp"
#include "pattern/edging.hpp"
#include "pattern/lettered.hpp"
#include "pattern/limits.hpp"
#include "pattern/pieces.hpp"

#include <algorithm>

namespace whorl::pattern {
namespace {

/// Marking the runs of one text.
class Runs {
public:
  Runs(const Reader& reader, std::vector<Typed>& lines) : reader_(reader), lines_(lines) {}

  void mark() {
    for (std::size_t at = 0; at < lines_.size(); at = mark_numbers(at)) {
    }
    for (std::size_t at = 0; at < lines_.size(); ++at) number_by_letters(at);
  }

private:
  static constexpr std::size_t least_unmarked = 3; ///< lines whose numbers run on without a mark

  /// "1 mc, 6 sc", "2 6 inc 12", "3 to 5 sc all round 12": numbers that run on from 1 are labels, be there no
  /// mark behind any; rounds whose numbers have one, and notes, may stand among them. Where the next line
  /// stands that is none of them.
  std::size_t mark_numbers(std::size_t at) {
    std::vector<std::pair<std::size_t, Way>> run;
    int number = 1, notes = 0;
    std::size_t behind = at + 1;
    for (std::size_t line = at; line < lines_.size() && notes <= most_notes; ++line) {
      if (auto way = unmarked_way(lines_[line], number)) {
        number = way->label.to + 1;
        run.emplace_back(line, std::move(*way));
      } else if (run.empty() || !may_stand_in_run(lines_[line], number, notes)) {
        break;
      }
      behind = line + 1;
    }
    const bool starts = !run.empty() && may_be_first(run.front().second.readings.front());
    if (run.size() < least_unmarked || !starts) return at + 1;
    for (auto& [line, way] : run) lines_[line].begin_round(std::move(way));
    return behind;
  }

  /// "1 6 sc": a ring, or stitches of which nothing says where they go.
  static bool may_be_first(const Reading& reading) {
    const Effect& effect = reading.effect;
    constexpr std::int64_t least = 3;
    return effect.starts || (reading.cost <= cost::clean && effect.pass_uses == 0 &&
                             effect.uses == effect.makes && effect.uses >= least);
  }

  static constexpr int most_notes = 3;

  /// "6-9 sc around" goes on with the numbers of a run, and a line that works nothing does not end it.
  bool may_stand_in_run(const Typed& typed, int& number, int& notes) const {
    if (typed.blank) return false;
    if (!typed.begins_round) return ++notes <= most_notes && !names_stitches(reader_, typed.span);
    const Label& label = typed.ways.front().label;
    const bool follows = !label.span.empty() && !label.word && label.from == number;
    if (follows) number = label.to + 1;
    return follows;
  }

  /// A line that works behind this number, which no mark closes.
  std::optional<Way> unmarked_way(const Typed& typed, int number) const {
    if (typed.blank || typed.span.length() > limit::mended_bytes) return std::nullopt;
    if (typed.begins_round && !typed.ways.front().label.span.empty()) return std::nullopt;
    const auto label = unmarked_label(text(typed), typed.span.begin, number, reader_.vocabulary);
    if (!label) return std::nullopt;
    Way way = way_of(reader_, *label, typed.span.end);
    const bool reads = !way.readings.empty() && way.readings.front().passed_over.empty() && does_work(way);
    return reads ? std::optional(std::move(way)) : std::nullopt;
  }

  /// "a) 6 sc in MR", "b) inc around": letters that run on from a are labels where no round above goes on.
  void number_by_letters(std::size_t at) {
    if (lines_[at].blank) return;
    std::size_t above = at;
    while (above > 0 && lines_[above - 1].blank) --above;
    const bool steps =
        above > 0 && lines_[above - 1].begins_round && lines_[above - 1].ways.front().work.empty();
    std::vector<std::pair<std::size_t, Way>> run;
    for (std::size_t line = at; line < lines_.size() && !steps; ++line) {
      if (lines_[line].blank && line > at) continue;
      auto way = lettered_way(lines_[line], static_cast<int>(run.size()) + 1);
      if (!way) break;
      run.emplace_back(line, std::move(*way));
    }
    if (run.size() < 2 || !run.front().second.readings.front().effect.starts) return;
    for (auto& [line, way] : run) lines_[line].begin_round(std::move(way));
  }

  std::optional<Way> lettered_way(const Typed& typed, int number) const {
    if (typed.blank || (typed.begins_round && !typed.ways.front().label.span.empty())) return std::nullopt;
    const auto label = letter_label(text(typed), typed.span.begin, number);
    if (!label) return std::nullopt;
    Way way = way_of(reader_, *label, typed.span.end);
    return is_clean(way) && does_work(way) ? std::optional(std::move(way)) : std::nullopt;
  }

  std::string_view text(const Typed& typed) const { return reader_.source.at(typed.span); }

  const Reader& reader_;
  std::vector<Typed>& lines_;
};

} // namespace

void mark_runs(const Reader& reader, std::vector<Typed>& lines) { Runs(reader, lines).mark(); }

} // namespace whorl::pattern
