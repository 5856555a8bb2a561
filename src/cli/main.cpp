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

Pattern pattern_of(const std::string& text, const std::string& path, const Wanted& wanted) {
  ReadOptions options;
  options.file = path == "-" ? "standard input" : path;
  options.variant = wanted.variant;
  options.language = language_of(wanted.written_in);
  return read(text, options);
}

std::optional<Pattern> read_pattern(const std::string& path, const Wanted& wanted) {
  const std::optional<std::string> text = read_text(path);
  return text ? std::optional(pattern_of(*text, path, wanted)) : std::nullopt;
}

bool are_known(const Wanted& wanted) {
  for (const std::string& language : {wanted.written_in, wanted.language}) {
    if (language.empty() || !language_of(language).empty()) continue;
    complain("I do not know the words of the language " + language);
    return false;
  }
  return true;
}

bool has_wanted(const Pattern& pattern, const Wanted& wanted) {
  if (!are_known(wanted)) return false;
  if (wanted.variant.empty() || pattern.variant() == wanted.variant) return true;
  for (const Finding& finding : pattern.findings())
    if (finding.code == "variant") complain(finding.message);
  return false;
}

void declare_written_in(CLI::App& app, Wanted& wanted) {
  app.add_option("--written-in", wanted.written_in,
                 "the language that the pattern is written in (de, fr, pt-BR …); without it the text tells")
      ->type_name("LANGUAGE");
}

void declare_wanted(CLI::App& app, Wanted& wanted) {
  app.add_option("--variant", wanted.variant, "a size or yarn that the pattern names; without it the first")
      ->type_name("NAME");
  declare_written_in(app, wanted);
  declare_language(app, wanted);
}

void declare_language(CLI::App& app, Wanted& wanted) {
  app.add_option(
         "--language", wanted.language,
         "the language of the words beside the pattern's own (de, fr, ja …); without it the pattern's")
      ->type_name("LANGUAGE");
}

void say_findings(const Pattern& pattern, bool notes) {
  for (const Finding& finding : pattern.findings())
    if (notes || finding.severity != Severity::note) std::fputs(finding.shown.c_str(), stderr);
}

namespace {

/// Adds the words of a folder's files; what is wrong in them is said. False if they cannot be read.
bool add_words_of(const std::string& folder) {
  std::vector<WordFile> files;
  std::string problem;
  for (const std::string& path : files_in(folder, ".xml", problem)) {
    files.push_back({path, {}});
    if (!read_file(path, files.back().text, problem)) break;
  }
  if (!problem.empty()) {
    complain(problem);
    return false;
  }
  for (const std::string& said : add_words(files)) complain("warning: " + said);
  return true;
}

int run(int argc, char** argv) {
  // A reader that closes the pipe early is a file that cannot be written, not a crash.
  std::signal(SIGPIPE, SIG_IGN);
  CLI::App app{"Whorl reads a crochet pattern as it is written, checks every stitch and draws the chart."};
  app.name("whorl");
  app.set_version_flag("--version", std::string("whorl ") + version());
  app.require_subcommand(1);
  app.fallthrough();
  std::string words;
  app.add_option(
         "--words", words,
         "a folder of word files (.xml) that add to the languages, or take the place of those built in")
      ->type_name("FOLDER");
  CLI::App* check = app.add_subcommand("check", "count and check a pattern; a table of its rounds");
  CLI::App* chart = app.add_subcommand("chart", "draw the chart of a pattern: .svg, .png, .pdf or .json");
  CLI::App* moves = app.add_subcommand("moves", "how the stitches are made, move by move");
  CLI::App* symbols = app.add_subcommand("symbols", "the symbols of the charts, as a list or a sheet");
  CLI::App* steps = app.add_subcommand("steps", "a picture a round for teaching, into a folder");
  CLI::App* write = app.add_subcommand("write", "the instructions in words, in any language");
  const std::vector<std::pair<CLI::App*, Command>> commands = {
      {check, declare_check(*check)},       {chart, declare_chart(*chart)}, {moves, declare_moves(*moves)},
      {symbols, declare_symbols(*symbols)}, {steps, declare_steps(*steps)}, {write, declare_write(*write)}};
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    return app.exit(error) == 0 ? done : call_is_wrong;
  }
  if (!words.empty() && !add_words_of(words)) return file_trouble;
  for (const auto& command : commands)
    if (command.first->parsed()) return command.second();
  return call_is_wrong;
}

} // namespace
} // namespace whorl::cli

int main(int argc, char** argv) { return whorl::cli::run(argc, argv); }
