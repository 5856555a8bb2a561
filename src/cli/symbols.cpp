#include "cli/commands.hpp"
#include "cli/files.hpp"
#include "cli/format.hpp"
#include "cli/numbers.hpp"
#include "whorl_paint.hpp"

#include <CLI/CLI.hpp>

#include <memory>

namespace whorl::cli {
namespace {

struct SymbolsCall {
  std::string pattern;
  Wanted wanted;
  std::string output;
  SymbolOptions options;
  bool uk = false;
  bool json = false;
  double dots_per_inch = 200;
};

/// What is wrong with the call itself, or "".
std::string trouble_of(const SymbolsCall& call) {
  if (call.uk && !call.pattern.empty()) return "a pattern says itself which terms it is in: leave --uk out";
  if (call.output.empty()) return "";
  if (format_of(call.output) == Format::unknown) return unknown_format(call.output);
  if (!call.pattern.empty() && same_file(call.pattern, call.output))
    return "the symbols would be written over their own pattern: " + call.output;
  return "";
}

int put_out(const Symbols& symbols, const SymbolsCall& call, int status) {
  std::string problem;
  const bool draws = !call.output.empty();
  const std::string bytes = draws ? bytes_of(symbols, format_of(call.output), call.dots_per_inch, problem)
                            : call.json ? symbols.json()
                                        : symbols.text();
  if (!bytes.empty() && write_file(draws ? call.output : "-", bytes, problem)) return status;
  complain(problem);
  return file_trouble;
}

int symbols_of_pattern(const SymbolsCall& call) {
  const std::optional<Pattern> pattern = read_pattern(call.pattern, call.wanted);
  if (!pattern) return file_trouble;
  if (!has_wanted(*pattern, call.wanted)) return call_is_wrong;
  if (!call.json) say_findings(*pattern, false);
  if (!pattern->can_be_drawn()) return pattern_has_errors;
  return put_out(pattern->symbols(call.options), call, pattern->has_errors() ? pattern_has_errors : done);
}

int symbols(const SymbolsCall& call) {
  const std::string trouble = trouble_of(call);
  if (!trouble.empty()) {
    complain(trouble);
    return call_is_wrong;
  }
  if (!are_known(call.wanted)) return call_is_wrong;
  if (!call.pattern.empty()) return symbols_of_pattern(call);
  return put_out(whorl::symbols(call.options), call, done);
}

} // namespace

Command declare_symbols(CLI::App& app) {
  auto call = std::make_shared<SymbolsCall>();
  app.add_option("PATTERN", call->pattern,
                 "a pattern's text, - for standard input: only what its chart uses; without it, everything");
  app.add_option("-o,--output", call->output, "draw them; the ending says what: .svg .png .pdf .json");
  declare_wanted(app, call->wanted);
  app.add_flag("--uk", call->uk, "name the stitches in UK terms");
  app.add_flag("--plus", call->options.plus, "single crochet as + instead of x");
  app.add_flag("--json", call->json, "print one object for programs, and nothing else");
  app.add_option("--dpi", call->dots_per_inch, "dots to the inch of a .png")->check(number_between(20, 1200));
  return [call] {
    call->options.language = call->uk ? "en-GB" : language_of(call->wanted.language);
    return symbols(*call);
  };
}

} // namespace whorl::cli
