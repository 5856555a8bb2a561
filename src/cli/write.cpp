#include "cli/commands.hpp"
#include "cli/files.hpp"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <memory>

namespace whorl::cli {
namespace {

enum class Shape { text, markdown, html, unknown };

struct WriteCall {
  std::string pattern;
  Wanted wanted;
  std::string output = "-";
  std::string as;
  std::string left, filled;
  bool full = false, shortest = false, side_by_side = false;
};

Shape shape_named(const std::string& ending) {
  if (ending == "txt") return Shape::text;
  if (ending == "md") return Shape::markdown;
  return ending == "html" ? Shape::html : Shape::unknown;
}

/// By `--as`, else by the ending of the file; standard output is text.
Shape shape_of(const WriteCall& call) {
  if (!call.as.empty()) return shape_named(call.as);
  if (call.output == "-") return call.side_by_side ? Shape::markdown : Shape::text;
  const std::size_t dot = call.output.find_last_of("./");
  return dot == std::string::npos ? Shape::unknown : shape_named(call.output.substr(dot + 1));
}

/// What is wrong with the call itself, or "".
std::string trouble_of(const WriteCall& call) {
  const Shape shape = shape_of(call);
  if (shape == Shape::unknown)
    return "I write .txt, .md or .html, and cannot tell which from " +
           (call.as.empty() ? call.output : call.as);
  if (call.side_by_side && shape == Shape::text)
    return "side by side goes into .md or .html, not into plain text";
  if (call.full && call.shortest) return "in full words and as short as can be: I can write only one of them";
  for (const std::string& file : {call.output, call.left})
    if (!file.empty() && same_file(call.pattern, file))
      return "the instructions would be written over their own pattern: " + file;
  return "";
}

std::string bytes_of(const Written& written, const WriteCall& call) {
  switch (shape_of(call)) {
  case Shape::markdown:
    return call.side_by_side ? written.markdown_side_by_side() : written.markdown();
  case Shape::html:
    return call.side_by_side ? written.html_side_by_side() : written.html();
  default:
    return written.text();
  }
}

bool leaves_work(const Written& written) {
  return std::any_of(written.left().begin(), written.left().end(),
                     [](const LeftPassage& left) { return left.work; });
}

/// What is left, a line each; a translator's words are asked for, not the designer's.
void say_left(const Written& written, const std::string& file) {
  for (const LeftPassage& left : written.left())
    if (left.work)
      complain(file + ":" + std::to_string(left.line) + ": left as typed, I cannot say this in " +
               written.language() + ": " + left.text);
  const std::size_t notes = static_cast<std::size_t>(std::count_if(
      written.left().begin(), written.left().end(), [](const LeftPassage& left) { return !left.work; }));
  if (notes > 0)
    complain(std::to_string(notes) + (notes == 1 ? " note is" : " notes are") + " left as typed");
}

/// A translator's words that do not stand in the text.
void say_refused(const Written& written, const std::string& pattern, const std::string& table) {
  for (const LeftPassage& refused : written.refused())
    if (refused.line == 0)
      complain(table + ": the pattern has no such passage: " + refused.text);
    else
      complain(pattern + ":" + std::to_string(refused.line) +
               ": this translation says something else than the pattern and is not taken: " + refused.text);
}

int put_out(const Pattern& pattern, const Written& written, const WriteCall& call) {
  std::string problem;
  const bool done_so_far = write_file(call.output, bytes_of(written, call), problem) &&
                           (call.left.empty() || write_file(call.left, written.left_table(), problem));
  if (!done_so_far) {
    complain(problem);
    return file_trouble;
  }
  if (call.left.empty()) say_left(written, call.pattern);
  say_refused(written, call.pattern, call.filled);
  if (!written.same_work() && !leaves_work(written))
    complain("what is written does not read back as the same work in every stitch; look at it with "
             "--side-by-side");
  return pattern.has_errors() ? pattern_has_errors : done;
}

int write(const WriteCall& call) {
  const std::string trouble = trouble_of(call);
  if (!trouble.empty()) {
    complain(trouble);
    return call_is_wrong;
  }
  WriteOptions options;
  if (!call.filled.empty()) {
    const std::optional<std::string> table = read_text(call.filled);
    if (!table) return file_trouble;
    options.filled = *table;
  }
  const std::optional<Pattern> pattern = read_pattern(call.pattern, call.wanted);
  if (!pattern) return file_trouble;
  if (!has_wanted(*pattern, call.wanted)) return call_is_wrong;
  say_findings(*pattern, false);
  options.language = language_of(call.wanted.language);
  options.form = call.full ? WriteForm::full : call.shortest ? WriteForm::shortest : WriteForm::kept;
  return put_out(*pattern, pattern->written(options), call);
}

} // namespace

Command declare_write(CLI::App& app) {
  auto call = std::make_shared<WriteCall>();
  app.add_option("PATTERN", call->pattern, "the pattern's text, - for standard input")->required();
  app.add_option("-o,--output", call->output, "the file to write; the ending says what: .txt .md .html");
  app.add_option("--as", call->as, "what to write, whatever the file is called: txt, md or html")
      ->type_name("KIND");
  declare_wanted(app, call->wanted);
  app.add_flag("--full", call->full, "in full words, without abbreviations");
  app.add_flag("--shortest", call->shortest, "with the shortest repeats");
  app.add_flag("--side-by-side", call->side_by_side,
               "as typed and as written in two columns, for proof-reading");
  app.add_option("--left", call->left,
                 "put what is left for the translator into this file, as a table to fill in")
      ->type_name("FILE");
  app.add_option("--filled", call->filled, "that table, filled in: as written, a tab, its translation")
      ->type_name("FILE");
  return [call] { return write(*call); };
}

} // namespace whorl::cli
