#include "cli/commands.hpp"
#include "cli/files.hpp"
#include "cli/format.hpp"
#include "cli/numbers.hpp"
#include "cli/rounds.hpp"
#include "whorl_paint.hpp"

#include <CLI/CLI.hpp>

#include <memory>
#include <string_view>

namespace whorl::cli {
namespace {

struct ChartCall {
  std::string pattern;
  Wanted wanted;
  std::string output;
  ChartOptions options;
  std::string rounds;
  std::string paper;
  bool unfolded = false;
  bool rings = false;
  bool no_legend = false;
  bool no_table = false;
  bool no_side_view = false;
  double dots_per_inch = 200;
};

/// "nut-2.svg": the name of one of several sheets.
std::string numbered(const std::string& path, std::size_t sheet) {
  const std::size_t dot = path.rfind('.');
  return path.substr(0, dot) + "-" + std::to_string(sheet + 1) + path.substr(dot);
}

bool write_sheet(const Chart& chart, Format format, std::size_t sheet, const ChartCall& call,
                 std::string& problem) {
  const std::string path = chart.sheets() > 1 ? numbered(call.output, sheet) : call.output;
  const std::string bytes =
      format == Format::svg ? chart.svg(sheet) : bytes_of(png(chart, call.dots_per_inch, sheet), problem);
  return !bytes.empty() && write_file(path, bytes, problem);
}

/// A file a sheet; a PDF holds them all, and an object of JSON has them all.
bool write_chart(const Chart& chart, Format format, const ChartCall& call, std::string& problem) {
  if (format == Format::svg || format == Format::png) {
    for (std::size_t sheet = 0; sheet < chart.sheets(); ++sheet)
      if (!write_sheet(chart, format, sheet, call, problem)) return false;
    return true;
  }
  const std::string bytes = format == Format::json ? chart.json() : bytes_of(pdf(chart), problem);
  return !bytes.empty() && write_file(call.output, bytes, problem);
}

int draw(const Pattern& pattern, Format format, const ChartCall& call) {
  const Chart chart = pattern.chart(call.options);
  std::string problem = chart.problem();
  if (problem.empty() && call.output == "-" && chart.sheets() > 1)
    problem =
        "standard output takes one sheet, this chart has " + std::to_string(chart.sheets()) + ": name a file";
  if (!problem.empty()) {
    complain(problem);
    return call_is_wrong;
  }
  for (const std::string& sentence : chart.not_drawn()) complain("warning: " + sentence);
  for (const std::string& sentence : chart.remarks()) complain("warning: " + sentence);
  if (write_chart(chart, format, call, problem)) return pattern.has_errors() ? pattern_has_errors : done;
  complain(problem);
  return file_trouble;
}

int chart(const ChartCall& call) {
  const Format format = format_of(call.output);
  if (format == Format::unknown) {
    complain(unknown_format(call.output));
    return call_is_wrong;
  }
  if (same_file(call.pattern, call.output)) {
    complain("the chart would be written over its own pattern: " + call.output);
    return call_is_wrong;
  }
  const std::optional<Pattern> pattern = read_pattern(call.pattern, call.wanted);
  if (!pattern) return file_trouble;
  if (!has_wanted(*pattern, call.wanted)) return call_is_wrong;
  say_findings(*pattern, false);
  if (!pattern->can_be_drawn()) return pattern_has_errors;
  return draw(*pattern, format, call);
}

} // namespace

namespace {

void declare_what(CLI::App& app, ChartCall& call) {
  app.add_option("PATTERN", call.pattern, "the pattern's text, - for standard input")->required();
  app.add_option("-o,--output", call.output,
                 "the file to write; its ending says what: .svg .png .pdf .json; - is SVG "
                 "to standard output")
      ->required();
  app.add_option("--part", call.options.parts, "only this part; again for another")
      ->type_name("NAME")
      ->allow_extra_args(false);
  declare_wanted(app, call.wanted);
  app.add_option("--rounds", call.rounds, "only these rounds (or rows): 5-12, 5-, 7")->type_name("N-M");
}

void declare_figures(CLI::App& app, ChartCall& call) {
  app.add_flag("--left-handed", call.options.left_handed, "work runs the other way round");
  app.add_flag("--every-round", call.unfolded, "draw alike rounds one by one");
  app.add_flag("--rings", call.rings, "draw rounds always as rings, never as the lines of a strip");
  app.add_flag("--plus", call.options.plus, "single crochet as + instead of x");
  app.add_flag("--stroked", call.options.stroked,
               "increases and decreases of single crochet with a short stroke on each leg");
  app.add_option("--stitch", call.options.stitch, "millimetres for one single crochet, as a rule 4.4")
      ->type_name("MM")
      ->check(number_between(1, 20));
}

void declare_sheet(CLI::App& app, ChartCall& call) {
  app.add_flag("--no-legend", call.no_legend, "leave the legend out");
  app.add_flag("--no-table", call.no_table, "leave the tables of rounds out");
  app.add_flag("--no-side-view", call.no_side_view, "leave the side views out");
  app.add_flag("--figures", call.options.figures_only,
               "nothing but the figures, for placing on a page: no title, captions, legend or tables");
  app.add_flag("--transparent", call.options.clear, "no white under a .svg or .png");
  app.add_option("--paper", call.paper,
                 "A4 or Letter: as many sheets as it takes (FILE-1, FILE-2 …; pages of a .pdf); "
                 "without it one sheet, as large as needed")
      ->type_name("SIZE")
      ->check(CLI::IsMember({"A4", "Letter"}, CLI::ignore_case));
  app.add_option("--dpi", call.dots_per_inch, "dots to the inch of a .png")->check(number_between(20, 1200));
}

void settle(ChartCall& call) {
  call.options.language = language_of(call.wanted.language);
  call.options.fold = !call.unfolded;
  call.options.strips = !call.rings;
  call.options.legend = !call.no_legend;
  call.options.table = !call.no_table;
  call.options.side_view = !call.no_side_view;
  if (!call.paper.empty())
    call.options.paper = call.paper.front() == 'A' || call.paper.front() == 'a' ? Paper::a4 : Paper::letter;
}

} // namespace

Command declare_chart(CLI::App& app) {
  auto call = std::make_shared<ChartCall>();
  declare_what(app, *call);
  declare_figures(app, *call);
  declare_sheet(app, *call);
  return [call] {
    settle(*call);
    if (!call->rounds.empty() &&
        !read_rounds(call->rounds, call->options.first_round, call->options.last_round)) {
      complain(unclear_rounds(call->rounds));
      return static_cast<int>(call_is_wrong);
    }
    return chart(*call);
  };
}

} // namespace whorl::cli
