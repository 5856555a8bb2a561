#include "cli/commands.hpp"
#include "cli/files.hpp"
#include "cli/format.hpp"
#include "cli/rounds.hpp"
#include "whorl_paint.hpp"

#include <CLI/CLI.hpp>

#include <cstdio>
#include <filesystem>
#include <memory>
#include <system_error>
#include <unistd.h>

namespace whorl::cli {
namespace {

namespace fs = std::filesystem;

struct StepsCall {
  std::string pattern;
  Wanted wanted;
  std::string folder;
  std::string rounds;
  std::string shape = "wide";
  bool svg = false;
  bool go_on = false;
  bool layers = false;
  std::string pdf, strip;
  StepOptions options;
};

/// Makes the folder where there is none; false with `problem`.
bool make_folder(const std::string& folder, std::string& problem) {
  std::error_code error;
  fs::create_directories(folder, error);
  if (fs::is_directory(folder, error)) return true;
  problem = "the folder " + folder + " cannot be made";
  return false;
}

/// On a terminal, which picture of how many is drawn.
void say_progress(std::size_t drawn, std::size_t all) {
  if (::isatty(STDERR_FILENO) == 0) return;
  std::fprintf(stderr, "\r%zu of %zu pictures%s", drawn, all, drawn == all ? "\n" : "");
  std::fflush(stderr);
}

bool write_picture(const Steps& steps, std::size_t step, const std::string& path, bool svg,
                   std::string& problem) {
  const std::string bytes = svg ? steps.svg(step) : bytes_of(png(steps, step), problem);
  return !bytes.empty() && write_file(path, bytes, problem);
}

/// A file a picture; with layers the words lie in files of their own.
bool write_pictures(const Pattern& pattern, const Steps& steps, const StepsCall& call, std::string& problem) {
  StepOptions picture = call.options, words = call.options;
  picture.words = false;
  words.picture = false, words.clear = true;
  const Steps under = call.layers ? pattern.steps(picture) : steps,
              layer = call.layers ? pattern.steps(words) : steps;
  const std::string ending = call.svg ? ".svg" : ".png";
  for (std::size_t i = 0; i < steps.count(); ++i) {
    const std::string path = (fs::path(call.folder) / steps.name(i)).string();
    for (const bool over : {false, true}) {
      if (over && !call.layers) continue;
      const std::string file = path + (over ? "-words" : "") + ending;
      std::error_code error;
      if (call.go_on && fs::exists(file, error)) continue;
      if (!write_picture(over ? layer : under, i, file, call.svg, problem)) return false;
    }
    say_progress(i + 1, steps.count());
  }
  return true;
}

bool write_pdf(const Steps& steps, const std::string& path, std::string& problem) {
  const std::string bytes = bytes_of(pdf(steps), problem);
  return !bytes.empty() && write_file(path, bytes, problem);
}

bool write_strip(const Steps& steps, const std::string& path, std::string& problem) {
  const Format format = format_of(path);
  const std::string bytes =
      format == Format::svg ? steps.strip_svg()
                            : bytes_of(format == Format::png ? strip_png(steps) : strip_pdf(steps), problem);
  return !bytes.empty() && write_file(path, bytes, problem);
}

int draw(const Pattern& pattern, StepsCall& call) {
  const Steps steps = pattern.steps(call.options);
  std::string problem = steps.problem();
  if (!problem.empty()) {
    complain(problem);
    return call_is_wrong;
  }
  const bool whole = (call.folder.empty() ||
                      (make_folder(call.folder, problem) && write_pictures(pattern, steps, call, problem))) &&
                     (call.pdf.empty() || write_pdf(steps, call.pdf, problem)) &&
                     (call.strip.empty() || write_strip(steps, call.strip, problem));
  if (whole) return pattern.has_errors() ? pattern_has_errors : done;
  complain(problem);
  return file_trouble;
}

/// What is wrong with where the pictures shall go, or "".
std::string unclear_target(const StepsCall& call) {
  if (call.folder.empty() && call.pdf.empty() && call.strip.empty())
    return "say where the pictures go: -o FOLDER, --pdf FILE or --strip FILE";
  const Format format = call.strip.empty() ? Format::svg : format_of(call.strip);
  return format == Format::unknown || format == Format::json ? unknown_format(call.strip) : "";
}

int steps(StepsCall& call) {
  if (const std::string unclear = unclear_target(call); !unclear.empty()) {
    complain(unclear);
    return call_is_wrong;
  }
  const std::optional<Pattern> pattern = read_pattern(call.pattern, call.wanted);
  if (!pattern) return file_trouble;
  if (!has_wanted(*pattern, call.wanted)) return call_is_wrong;
  say_findings(*pattern, false);
  if (!pattern->can_be_drawn()) return pattern_has_errors;
  return draw(*pattern, call);
}

/// What is wrong with the name of a shape, or "".
std::string known_shape(const std::string& name) {
  if (name == "wide" || name == "tall" || name == "square") return "";
  return "there is no shape " + name + ": write wide, tall or square";
}

StepShape shape_of(const std::string& name) {
  return name == "wide" ? StepShape::wide : name == "tall" ? StepShape::tall : StepShape::square;
}

void declare_what(CLI::App& app, StepsCall& call) {
  app.add_option("PATTERN", call.pattern, "the pattern's text, - for standard input")->required();
  declare_wanted(app, call.wanted);
  app.add_option("-o,--output", call.folder, "the folder that the pictures go into; it is made if need be")
      ->type_name("FOLDER");
  app.add_option("--part", call.options.parts, "only this part; again for another")
      ->type_name("NAME")
      ->allow_extra_args(false);
  app.add_option("--rounds", call.rounds, "only these rounds (or rows): 5-12, 5-, 7")->type_name("N-M");
}

void declare_how(CLI::App& app, StepsCall& call) {
  app.add_option("--shape", call.shape, "wide (1920 x 1080), tall (1080 x 1920) or square")
      ->type_name("SHAPE")
      ->check(known_shape);
  app.add_flag("--each-stitch", call.options.each_stitch,
               "a picture a stitch (or increase, or group into one place), not a round");
  app.add_flag("--svg", call.svg, "SVG instead of PNG");
  app.add_flag("--left-handed", call.options.left_handed, "work runs the other way round");
  app.add_flag("--plus", call.options.plus, "single crochet as + instead of x");
  app.add_flag("--transparent", call.options.clear, "no white under the pictures");
  app.add_flag("--layers", call.layers,
               "the line and its count in pictures of their own, to lie over the others");
  app.add_option("--pdf", call.pdf, "all of them in one PDF, a page each")->type_name("FILE");
  app.add_option("--strip", call.strip, "all of them side by side on one sheet: .svg, .png or .pdf")
      ->type_name("FILE");
  app.add_flag("--go-on", call.go_on, "leave out what the folder has already, after an interruption");
}

} // namespace

Command declare_steps(CLI::App& app) {
  auto call = std::make_shared<StepsCall>();
  declare_what(app, *call);
  declare_how(app, *call);
  return [call] {
    call->options.shape = shape_of(call->shape);
    call->options.language = language_of(call->wanted.language);
    if (!call->rounds.empty() &&
        !read_rounds(call->rounds, call->options.first_round, call->options.last_round)) {
      complain(unclear_rounds(call->rounds));
      return static_cast<int>(call_is_wrong);
    }
    return steps(*call);
  };
}

} // namespace whorl::cli
