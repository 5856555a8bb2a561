#include "cli/commands.hpp"
#include "cli/files.hpp"
#include "whorl.hpp"

#include <CLI/CLI.hpp>

#include <csignal>
#include <cstdio>
#include <utility>
#include <vector>

namespace whorl::cli {

std::optional<std::string> read_text(const std::string& path) {
  std::string text, problem;
  if (read_file(path, text, problem)) return text;
  complain(problem);
  return std::nullopt;
}

Pattern pattern_of(const std::string& text, const std::string& path, const std::string& variant) {
  ReadOptions options;
  options.file = path == "-" ? "standard input" : path;
  options.variant = variant;
  return read(text, options);
}

std::optional<Pattern> read_pattern(const std::string& path, const std::string& variant) {
  const std::optional<std::string> text = read_text(path);
  return text ? std::optional(pattern_of(*text, path, variant)) : std::nullopt;
}

bool has_variant(const Pattern& pattern, const std::string& variant) {
  if (variant.empty() || pattern.variant() == variant) return true;
  for (const Finding& finding : pattern.findings())
    if (finding.code == "variant") complain(finding.message);
  return false;
}

void declare_variant(CLI::App& app, std::string& variant) {
  app.add_option("--variant", variant, "a size or yarn that the pattern names; without it the first")
      ->type_name("NAME");
}

void say_findings(const Pattern& pattern, bool notes) {
  for (const Finding& finding : pattern.findings())
    if (notes || finding.severity != Severity::note) std::fputs(finding.shown.c_str(), stderr);
}

namespace {

int run(int argc, char** argv) {
  // A reader that closes the pipe early is a file that cannot be written, not a crash.
  std::signal(SIGPIPE, SIG_IGN);
  CLI::App app{"Whorl reads a crochet pattern as it is written, checks every stitch and draws the chart."};
  app.name("whorl");
  app.set_version_flag("--version", std::string("whorl ") + version());
  app.require_subcommand(1);
  CLI::App* check = app.add_subcommand("check", "count and check a pattern; a table of its rounds");
  CLI::App* chart = app.add_subcommand("chart", "draw the chart of a pattern: .svg, .png, .pdf or .json");
  CLI::App* moves = app.add_subcommand("moves", "how the stitches are made, move by move");
  CLI::App* symbols = app.add_subcommand("symbols", "the symbols of the charts, as a list or a sheet");
  CLI::App* steps = app.add_subcommand("steps", "a picture a round for teaching, into a folder");
  const std::vector<std::pair<CLI::App*, Command>> commands = {{check, declare_check(*check)},
                                                               {chart, declare_chart(*chart)},
                                                               {moves, declare_moves(*moves)},
                                                               {symbols, declare_symbols(*symbols)},
                                                               {steps, declare_steps(*steps)}};
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    return app.exit(error) == 0 ? done : call_is_wrong;
  }
  for (const auto& command : commands)
    if (command.first->parsed()) return command.second();
  return call_is_wrong;
}

} // namespace
} // namespace whorl::cli

int main(int argc, char** argv) { return whorl::cli::run(argc, argv); }
