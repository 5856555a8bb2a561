#include "pattern/table.hpp"

#include "pattern/counted_round.hpp"
#include "pattern/header.hpp"
#include "pattern/sentence.hpp"
#include "words/ascii.hpp"

#include <algorithm>
#include <optional>

namespace whorl::pattern {

namespace {

using words::is_digit;

/// A cell without blanks and quotes around it.
Span cell_in(const Reader& reader, Span span) {
  Span cell = trimmed(reader.source, span);
  const std::string_view text = reader.source.at(cell);
  const bool quoted = text.size() > 1 && text.front() == '"' && text.back() == '"';
  return quoted ? trimmed(reader.source, {cell.begin + 1, cell.end - 1}) : cell;
}

constexpr std::string_view wide_bar = "\xEF\xBD\x9C"; ///< ｜
constexpr char one_blank = '_';                       ///< a mark of cells: one blank sets them off
constexpr std::string_view wide_blank = "\xE3\x80\x80";

/// Bytes of the mark between two cells at `at`; 0 if none stands there. Of blanks it takes two or a wide one,
/// and a bar may be a wide one.
std::size_t divider_at(std::string_view text, std::size_t at, char mark) {
  if (mark == '|' && text.substr(at, wide_bar.size()) == wide_bar) return wide_bar.size();
  if (mark == ' ' && text.substr(at, wide_blank.size()) == wide_blank) return wide_blank.size();
  if (mark == one_blank) return text[at] == ' ' ? 1 : 0;
  return text[at] == mark && (mark != ' ' || text.substr(at, 2) == "  ") ? 1 : 0;
}

bool has_bars(std::string_view text) {
  return text.find_first_of("\t|") != std::string_view::npos || text.find(wide_bar) != std::string_view::npos;
}

/// The cells of a line; empty ones are left out. `mark` stands between them; '\0': tabs, or else bars; ' ':
/// two blanks or more.
std::vector<Span> cells_of(const Reader& reader, Span line, char mark) {
  const std::string_view text = reader.source.at(line);
  if (mark == '\0') mark = text.find('\t') != std::string_view::npos ? '\t' : '|';
  std::vector<Span> cells;
  std::uint32_t begin = line.begin;
  bool quoted = false;
  for (std::uint32_t at = line.begin; at <= line.end; ++at) {
    const char c = at < line.end ? text[at - line.begin] : '\n';
    if (c == '"') quoted = !quoted;
    const std::size_t divider = c == '\n' ? 1 : divider_at(text, at - line.begin, mark);
    if (divider == 0 || (quoted && c != '\n')) continue;
    const Span cell = cell_in(reader, {begin, at});
    if (!cell.empty()) cells.push_back(cell);
    at += static_cast<std::uint32_t>(divider - 1);
    begin = at + 1;
  }
  return cells;
}

/// Whether a word for round is what a cell holds, and all of it.
bool names_rounds(const Reader& reader, Span cell) {
  if (reader.source.at(cell) == "#") return true;
  const std::string label = std::string(reader.source.at(cell)) + " 7:"; // "Round two" has its number
  const auto labels = read_labels(label, cell.begin, reader.vocabulary);
  return !labels.empty() && labels.front().word && labels.front().from == 7;
}

constexpr std::size_t longest_title = 24; ///< bytes of a column's title

bool are_titles(const std::vector<Span>& cells) {
  return std::all_of(cells.begin(), cells.end(), [](Span cell) { return cell.length() <= longest_title; });
}

/// "18", "[18 sts]", "= 18": a count and nothing else.
bool is_count(std::string_view cell) {
  const std::size_t digit = cell.find_first_of("0123456789");
  if (digit == std::string_view::npos ||
      cell.substr(0, digit).find_first_not_of("([= ") != std::string_view::npos)
    return false;
  const std::size_t behind = cell.find_first_not_of("0123456789", digit);
  const std::string_view rest = behind == std::string_view::npos ? std::string_view() : cell.substr(behind);
  const auto letters = std::count_if(rest.begin(), rest.end(), [](char c) { return c >= 'a' && c <= 'z'; });
  return letters <= 8 && std::none_of(rest.begin(), rest.end(), is_digit) &&
         rest.find_first_of("(,*") == std::string_view::npos;
}

/// The labels that a cell holds and nothing besides.
std::vector<Label> labels_in(const Reader& reader, Span cell) {
  std::string text(reader.source.at(cell));
  if (is_digit(text.back())) text += ':';
  std::vector<Label> labels = read_labels(text, cell.begin, reader.vocabulary);
  const auto more = [&](const Label& label) { return label.work < cell.end || !label.closed; };
  labels.erase(std::remove_if(labels.begin(), labels.end(), more), labels.end());
  return labels;
}

/// What stands in which cell behind the label.
struct Columns {
  std::optional<Span> work, count, aside;
};

/// "+6", "-6", "±0": how many stitches a round has more or less than the one before.
bool is_change(std::string_view cell) {
  for (const std::string_view sign : {"+", "-", "\xC2\xB1", "\xE2\x88\x92", "\xEF\xBC\x8B", "\xEF\xBC\x8D"})
    if (cell.substr(0, sign.size()) == sign && cell.size() > sign.size() &&
        std::all_of(cell.begin() + static_cast<std::ptrdiff_t>(sign.size()), cell.end(), is_digit))
      return true;
  return false;
}

Columns columns_of(const Reader& reader, const std::vector<Span>& cells, std::size_t round) {
  Columns columns;
  std::optional<Span> change;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    if (i == round) continue;
    if (is_change(reader.source.at(cells[i])))
      change = cells[i];
    else if (names_stitches(reader, cells[i]))
      columns.work = columns.work ? cover(*columns.work, cells[i]) : cells[i];
    else if (is_count(reader.source.at(cells[i])))
      columns.count = cells[i];
    else
      columns.aside = cells[i];
  }
  if (!columns.work) columns.work = change;
  if (!columns.work) columns.work.swap(columns.aside);
  return columns;
}

/// The mark of an exported row without a heading: `1,"6 sc in MR",6`, `2;inc x 6;12`; else '\0'.
char export_mark(std::string_view text) {
  const std::size_t at = text.find_first_not_of("0123456789-");
  if (at == 0 || at == std::string_view::npos || (text[at] != ';' && text[at] != ',')) return '\0';
  const std::string_view last = trim(text.substr(text.rfind(text[at]) + 1));
  const bool counted = text[at] == ';' && text.rfind(text[at]) > at && !last.empty() &&
                       last.find_first_not_of("0123456789") == std::string_view::npos;
  return counted || text.substr(at + 1, 1) == "\"" ? text[at] : '\0';
}

bool may_be_row(const Reader& reader, Span line, const std::vector<Span>& cells, char mark) {
  const std::string_view text = reader.source.at(line);
  if (cells.size() < 2) return false;
  if (mark != '\0') return true;
  if (text.find('\t') != std::string_view::npos || text.front() == '|' ||
      is_digit(reader.source.at(cells.front()).back()))
    return true;
  const bool closed = std::string_view(":.)-").find(reader.source.at(cells.front()).back()) != text.npos;
  const auto labels = has_bars(text) && !closed ? labels_in(reader, cells.front()) : std::vector<Label>{};
  return !labels.empty() && labels.front().word; // "1段 | わに細編み5目 | 5目"
}

/// The column whose title is a word for round; the number of columns if there is none.
std::size_t round_column(const Reader& reader, const std::vector<Span>& titles) {
  std::size_t at = 0;
  while (at < titles.size() && !names_rounds(reader, titles[at])) ++at;
  return at;
}

/// The column whose title is a word for times; 0 if there is none.
std::size_t times_column(const Reader& reader, const std::vector<Span>& titles) {
  for (std::size_t at = 1; at < titles.size(); ++at) {
    const Sentence title = look_up(reader.source.at(titles[at]), titles[at].begin, reader.vocabulary);
    const words::Word* word = word_meaning(title, 0, title.times);
    if (word != nullptr && word->end == title.size()) return at;
  }
  return 0;
}

bool is_number(std::string_view cell) {
  return !cell.empty() && std::all_of(cell.begin(), cell.end(), is_digit);
}

/// "sc 1, inc | 6 | 18": the work so many times.
void repeat_work(const Reader& reader, Way& way, Span work, std::string_view times) {
  Stuck stuck;
  const std::string text = "(" + std::string(reader.source.at(work)) + ") x " + std::string(times);
  std::vector<Reading> told = read_work(text, {0, 0}, reader.vocabulary, reader.kinds, Effort::all, stuck);
  if (told.empty() || !told.front().passed_over.empty()) return;
  point_at(told, work);
  way.readings = std::move(told);
  way.effort = Effort::all;
  state_count_before(reader, way);
}

/// "1段目：6目": the label and what stands behind its colon are cells of their own.
void part_at_colon(const Reader& reader, std::vector<Span>& cells) {
  constexpr std::string_view wide_colon = "\xEF\xBC\x9A";
  const std::string_view first = reader.source.at(cells.front());
  for (const std::string_view colon : {std::string_view(":"), wide_colon}) {
    const std::size_t at = first.find(colon);
    if (at == first.npos || at == 0 || at + colon.size() == first.size()) continue;
    const auto place = cells.front().begin + static_cast<std::uint32_t>(at);
    const Span rest{place + static_cast<std::uint32_t>(colon.size()), cells.front().end};
    cells.front().end = place;
    cells.insert(cells.begin() + 1, trimmed(reader.source, rest));
    return;
  }
}

/// "1段目　6目　わの中に細編み6目", "Rnd 2  12 sts  inc x 6": the round, its count and the work, set off by
/// blanks; empty if a line is no such row. Where no blanks divide words, one is enough.
std::vector<Span> counted_row(const Reader& reader, Span line) {
  if (has_bars(reader.source.at(line))) return {};
  std::vector<Span> cells = cells_of(reader, line, ' ');
  if (cells.size() < 2 && !reader.vocabulary.blanks_between_words) cells = cells_of(reader, line, one_blank);
  if (cells.size() > 1) part_at_colon(reader, cells);
  if (cells.size() < 3 || names_stitches(reader, cells[1]) || !is_count(reader.source.at(cells[1])))
    return {};
  if (is_digit(reader.source.at(cells[1]).back())) return {}; // "Rnd 1: 6        sc": a number of the work
  const std::vector<Label> labels = labels_in(reader, cells[0]);
  if (labels.empty() || !labels.front().word) return {};
  return {cells[0], cells[1], {cells[2].begin, cells.back().end}};
}

} // namespace

std::optional<TableForm> table_form(const Reader& reader, Span line) {
  const std::string_view text = reader.source.at(line);
  if (std::any_of(text.begin(), text.end(), is_digit)) return std::nullopt;
  const bool ruled = has_bars(text);
  for (const char mark : {'\0', ' ', ';', ','}) {
    if (ruled != (mark == '\0')) continue;
    const std::vector<Span> cells = cells_of(reader, line, mark);
    const std::size_t round = round_column(reader, cells);
    const std::size_t least = mark == ',' || round > 0 ? 3 : 2;
    if (cells.size() >= least && round < cells.size() && (are_titles(cells) || (ruled && round == 0)))
      return TableForm{mark, round, times_column(reader, cells)};
  }
  if (ruled && text.front() == '#' && cells_of(reader, line, '\0').size() > 1) return TableForm{};
  return std::nullopt;
}

Ways table_row(const Reader& reader, Span line, const TableForm& form) {
  const char mark = form.mark == '\0' ? export_mark(reader.source.at(line)) : form.mark;
  std::vector<Span> cells = cells_of(reader, line, mark);
  const std::vector<Span> counted = mark == '\0' ? counted_row(reader, line) : std::vector<Span>{};
  if (!counted.empty()) cells = counted;
  std::string_view times;
  if (form.times > 0 && form.times < cells.size() && is_number(reader.source.at(cells[form.times]))) {
    times = reader.source.at(cells[form.times]);
    cells.erase(cells.begin() + static_cast<std::ptrdiff_t>(form.times));
  }
  if (counted.empty() && !may_be_row(reader, line, cells, mark) &&
      !(form.round > 0 && cells.size() > form.round))
    return {};
  std::size_t round = form.round < cells.size() ? form.round : 0;
  std::vector<Label> labels = labels_in(reader, cells[round]);
  if (labels.empty() && round > 0) labels = labels_in(reader, cells[round = 0]);
  const Columns columns = columns_of(reader, cells, round);
  if (!columns.work) return {};
  Ways ways;
  for (Label& label : labels) {
    label.work = columns.work->begin;
    if (columns.count) label.count = *columns.count;
    if (columns.aside) label.aside = *columns.aside;
    ways.push_back(way_of(reader, label, columns.work->end));
    if (!times.empty()) repeat_work(reader, ways.back(), *columns.work, times);
  }
  return ways;
}

} // namespace whorl::pattern
