#include "cli/commands.hpp"
#include "cli/files.hpp"
#include "cli/format.hpp"
#include "whorl_paint.hpp"

#include <CLI/CLI.hpp>

#include <memory>

namespace whorl::cli {
namespace {

struct ChartCall {
  std::string pattern;
  std::string output;
  ChartOptions options;
  bool unfolded = false;
  bool no_legend = false;
  bool no_table = false;
  bool no_side_view = false;
  double dots_per_inch = 200;
};

int draw(const Pattern& pattern, Format format, const ChartCall& call) {
  std::string problem;
  const Chart chart = pattern.chart(call.options);
  for (const std::string& sentence : chart.not_drawn()) complain("warning: " + sentence);
  const std::string bytes = bytes_of(chart, format, call.dots_per_inch, problem);
  if (!bytes.empty() && write_file(call.output, bytes, problem))
    return pattern.has_errors() ? pattern_has_errors : done;
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
  const std::optional<Pattern> pattern = read_pattern(call.pattern);
  if (!pattern) return file_trouble;
  say_findings(*pattern, false);
  if (!pattern->can_be_drawn()) return pattern_has_errors;
  return draw(*pattern, format, call);
}

} // namespace

Command declare_chart(CLI::App& app) {
  auto call = std::make_shared<ChartCall>();
  app.add_option("PATTERN", call->pattern, "the pattern's text, - for standard input")->required();
  app.add_option("-o,--output", call->output,
                 "the file to write; its ending says what: .svg .png .pdf .json; - is SVG "
                 "to standard output")
      ->required();
  app.add_flag("--left-handed", call->options.left_handed, "work runs the other way round");
  app.add_flag("--every-round", call->unfolded, "draw alike rounds one by one");
  app.add_flag("--no-legend", call->no_legend, "leave the legend out");
  app.add_flag("--no-table", call->no_table, "leave the tables of rounds out");
  app.add_flag("--no-side-view", call->no_side_view, "leave the side views out");
  app.add_flag("--plus", call->options.plus, "single crochet as + instead of x");
  app.add_option("--stitch", call->options.stitch, "millimetres for one single crochet")
      ->check(CLI::Range(3.8, 20.0));
  app.add_option("--dpi", call->dots_per_inch, "dots to the inch of a .png")->check(CLI::Range(20.0, 1200.0));
  return [call] {
    call->options.fold = !call->unfolded;
    call->options.legend = !call->no_legend;
    call->options.table = !call->no_table;
    call->options.side_view = !call->no_side_view;
    return chart(*call);
  };
}

} // namespace whorl::cli
