#include "cli/commands.hpp"
#include "cli/files.hpp"
#include "cli/format.hpp"
#include "cli/numbers.hpp"
#include "whorl_paint.hpp"

#include <CLI/CLI.hpp>

#include <memory>

namespace whorl::cli {
namespace {

struct MovesCall {
  std::string pattern;
  Wanted wanted;
  std::string stitch;
  std::string output;
  bool json = false;
  double dots_per_inch = 200;
};

/// What is wrong with the call itself, or "".
std::string trouble_of(const MovesCall& call) {
  if (call.output.empty()) return "";
  if (format_of(call.output) == Format::unknown) return unknown_format(call.output);
  if (same_file(call.pattern, call.output))
    return "the moves would be written over their own pattern: " + call.output;
  return "";
}

int put_out(const Pattern& pattern, const Moves& moves, const MovesCall& call) {
  std::string problem;
  const bool draws = !call.output.empty();
  const std::string bytes = draws       ? bytes_of(moves, format_of(call.output), call.dots_per_inch, problem)
                            : call.json ? moves.json()
                                        : moves.text();
  if (!bytes.empty() && write_file(draws ? call.output : "-", bytes, problem))
    return pattern.has_errors() ? pattern_has_errors : done;
  complain(problem);
  return file_trouble;
}

int moves(const MovesCall& call) {
  const std::string trouble = trouble_of(call);
  if (!trouble.empty()) {
    complain(trouble);
    return call_is_wrong;
  }
  const std::optional<Pattern> pattern = read_pattern(call.pattern, call.wanted);
  if (!pattern) return file_trouble;
  if (!has_wanted(*pattern, call.wanted)) return call_is_wrong;
  if (!call.json) say_findings(*pattern, false);
  const Moves told = pattern->moves(call.stitch, language_of(call.wanted.language));
  if (!told.problem().empty()) {
    complain(told.problem());
    return call_is_wrong;
  }
  if (told.stitches().empty()) return pattern_has_errors;
  return put_out(*pattern, told, call);
}

} // namespace

Command declare_moves(CLI::App& app) {
  auto call = std::make_shared<MovesCall>();
  app.add_option("PATTERN", call->pattern, "the pattern's text, - for standard input")->required();
  app.add_option("STITCH", call->stitch, "one stitch, as the pattern or US terms call it");
  app.add_option("-o,--output", call->output,
                 "draw it as strips of small pictures; the ending says what: .svg .png .pdf .json");
  declare_wanted(app, call->wanted);
  app.add_flag("--json", call->json, "print one object for programs, and nothing else");
  app.add_option("--dpi", call->dots_per_inch, "dots to the inch of a .png")->check(number_between(20, 1200));
  return [call] { return moves(*call); };
}

} // namespace whorl::cli
