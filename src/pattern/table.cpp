#include "pattern/table.hpp"

#include "pattern/header.hpp"

#include <algorithm>
#include <optional>

namespace whorl::pattern {

namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// The cells of a line, without blanks around them; empty ones are left out.
std::vector<Span> cells_of(const Reader& reader, Span line) {
  const std::string_view text = reader.source.at(line);
  const bool tabs = text.find('\t') != std::string_view::npos;
  std::vector<Span> cells;
  std::uint32_t begin = line.begin;
  for (std::uint32_t at = line.begin; at <= line.end; ++at) {
    const char c = at < line.end ? text[at - line.begin] : '\n';
    if (c != '\n' && c != (tabs ? '\t' : '|')) continue;
    const Span cell = trimmed(reader.source, {begin, at});
    if (!cell.empty()) cells.push_back(cell);
    begin = at + 1;
  }
  return cells;
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

Columns columns_of(const Reader& reader, const std::vector<Span>& cells) {
  Columns columns;
  for (std::size_t i = 1; i < cells.size(); ++i) {
    if (names_stitches(reader, cells[i]))
      columns.work = columns.work ? cover(*columns.work, cells[i]) : cells[i];
    else if (is_count(reader.source.at(cells[i])))
      columns.count = cells[i];
    else
      columns.aside = cells[i];
  }
  if (!columns.work) columns.work.swap(columns.aside);
  return columns;
}

bool may_be_row(const Reader& reader, Span line, const std::vector<Span>& cells) {
  const std::string_view text = reader.source.at(line);
  if (cells.size() < 2) return false;
  return text.find('\t') != std::string_view::npos || text.front() == '|' ||
         is_digit(reader.source.at(cells.front()).back());
}

} // namespace

bool is_table_heading(const Reader& reader, Span line) {
  const std::vector<Span> cells = cells_of(reader, line);
  const std::string_view text = reader.source.at(line);
  const bool bars = text.find_first_of("\t|") != std::string_view::npos;
  if (!bars || cells.size() < 2 || std::any_of(text.begin(), text.end(), is_digit)) return false;
  const std::string label = std::string(reader.source.at(cells.front())) + " 1:";
  const auto labels = read_labels(label, cells.front().begin, reader.vocabulary);
  return text.front() == '#' || (!labels.empty() && labels.front().word);
}

Ways table_row(const Reader& reader, Span line) {
  const std::vector<Span> cells = cells_of(reader, line);
  if (!may_be_row(reader, line, cells)) return {};
  const Columns columns = columns_of(reader, cells);
  if (!columns.work) return {};
  Ways ways;
  for (Label& label : labels_in(reader, cells.front())) {
    label.work = columns.work->begin;
    if (columns.count) label.count = *columns.count;
    if (columns.aside) label.aside = *columns.aside;
    ways.push_back(way_of(reader, label, columns.work->end));
  }
  return ways;
}

} // namespace whorl::pattern
