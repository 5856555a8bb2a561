#include "cli/commands.hpp"
#include "cli/files.hpp"
#include "cli/numbers.hpp"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <cstdio>
#include <memory>

namespace whorl::cli {
namespace {

struct CheckCall {
  std::string pattern;
  Wanted wanted;
  bool json = false;
  int round = 0; ///< 0: no round is asked about
  std::uint32_t have = 0;
  std::string part;
};

std::string change_of(const RoundLine& round) {
  if (round.uses == 0) return "start";
  const long change = static_cast<long>(round.counted) - static_cast<long>(round.uses);
  if (change == 0) return "even";
  return (change > 0 ? "+" : "-") + std::to_string(std::labs(change));
}

std::string cell(std::string text, std::size_t width, bool right = true) {
  if (text.size() >= width) return text;
  return right ? std::string(width - text.size(), ' ') + text : text + std::string(width - text.size(), ' ');
}

std::string row(const RoundLine& round, std::size_t label_width) {
  const std::string stated = round.stated < 0 ? "-" : std::to_string(round.stated);
  std::string line = "  " + cell(round.label.empty() ? "-" : round.label, label_width, false);
  if (!round.read) return line + cell("not read", 16) + cell(stated, 8) + "\n";
  line += cell(std::to_string(round.uses), 8) + cell(std::to_string(round.counted), 8) + cell(stated, 8) +
          cell(change_of(round), 8);
  if (round.stated >= 0 && round.stated != static_cast<std::int64_t>(round.counted)) line += "  (!)";
  return line + "\n";
}

std::string table(const Pattern& pattern) {
  std::size_t label_width = 7;
  for (const RoundLine& round : pattern.rounds()) label_width = std::max(label_width, round.label.size() + 1);
  std::string text = pattern.title().empty() ? "" : pattern.title() + "\n";
  const std::string* part = nullptr;
  for (const RoundLine& round : pattern.rounds()) {
    if (part == nullptr || *part != round.part) {
      text += "\n" + (round.part.empty() ? "" : round.part + "\n") + "  " + cell("", label_width) +
              cell("uses", 8) + cell("makes", 8) + cell("stated", 8) + cell("change", 8) + "\n";
      part = &round.part;
    }
    text += row(round, label_width);
  }
  return text;
}

std::string amount(std::size_t number, const std::string& one, const char* ending = "s") {
  return std::to_string(number) + " " + one + (number == 1 ? "" : ending);
}

std::size_t how_many(const Pattern& pattern, Severity severity) {
  const std::vector<Finding>& all = pattern.findings();
  return static_cast<std::size_t>(
      std::count_if(all.begin(), all.end(), [severity](const Finding& f) { return f.severity == severity; }));
}

std::string verdict(const Pattern& pattern) {
  const std::size_t errors = how_many(pattern, Severity::error);
  const std::size_t warnings = how_many(pattern, Severity::warning);
  if (!pattern.can_be_drawn() && errors > 0) return "No round of this text can be worked.\n";
  std::string text = amount(pattern.rounds().size(), "line") + " of rounds: ";
  if (errors + warnings == 0) return text + "every count agrees.\n";
  if (errors > 0) text += amount(errors, "error");
  if (warnings > 0) text += (errors > 0 ? ", " : "") + amount(warnings, "warning");
  return text + ".\n";
}

/// A sentence in lines of about 90 columns, each set in by two.
std::string in_lines(const std::string& sentence) {
  constexpr std::size_t widest = 90;
  std::string text, line = " ";
  for (std::size_t at = 0; at < sentence.size();) {
    const std::size_t end = std::min(sentence.find(' ', at), sentence.size());
    const std::string word = sentence.substr(at, end - at);
    if (line.size() > 1 && line.size() + 1 + word.size() > widest) text += line + "\n", line = " ";
    line += " " + word;
    at = end + 1;
  }
  return text + line + "\n";
}

/// Each place that calls for the caution, then the caution.
std::string cautions(const Pattern& pattern) {
  std::string text;
  for (const Caution& caution : pattern.cautions())
    text += "  line " + std::to_string(caution.line) + ", column " + std::to_string(caution.column) + ": " +
            caution.text + "\n";
  return text.empty() ? "" : "\nCautions\n" + text + in_lines(pattern.caution());
}

/// "I have 22": what may have happened.
std::string told(const Slips& slips) {
  const std::string here =
      "Round " + std::to_string(slips.round) + " should have " + amount(slips.should_have, "stitch", "es");
  if (slips.should_have == slips.have) return here + ", and so it has.\n";
  std::string text = here + "; you have " + std::to_string(slips.have) + ".\n";
  if (slips.sentences.empty()) return text + "No single slip explains that: count the rounds before it.\n";
  text += "The likeliest first:\n";
  for (std::size_t i = 0; i < slips.sentences.size(); ++i)
    text += "  " + std::to_string(i + 1) + ". " + slips.sentences[i] + "\n";
  return text;
}

int explain(const Pattern& pattern, const CheckCall& call) {
  const Slips slips = pattern.slips(call.round, call.have, call.part);
  std::string problem = slips.problem;
  if (!problem.empty()) {
    complain(problem);
    return call_is_wrong;
  }
  const std::string text = call.json ? slips.json() : told(slips);
  if (write_file("-", text, problem)) return done;
  complain(problem);
  return file_trouble;
}

std::uint32_t most_stitches(const Pattern& pattern) {
  std::uint32_t most = 0;
  for (const RoundLine& round : pattern.rounds())
    most = std::max(most, static_cast<std::uint32_t>(round.counted));
  return most;
}

/// A line for each variant; "" where there are none.
std::string variants(const std::vector<Pattern>& all) {
  if (all.size() < 2) return "";
  std::size_t width = 8;
  for (const Pattern& pattern : all) width = std::max(width, pattern.variant().size() + 1);
  std::string text = "\nVariants\n  " + cell("", width) + cell("most stitches", 14) + "\n";
  for (const Pattern& pattern : all)
    text += "  " + cell(pattern.variant(), width, false) + cell(std::to_string(most_stitches(pattern)), 14) +
            "   " + verdict(pattern);
  return text;
}

/// All variants of a text, or the one that is wanted; at least one.
std::vector<Pattern> variants_of(const std::string& text, const CheckCall& call) {
  std::vector<Pattern> all{pattern_of(text, call.pattern, call.wanted)};
  if (!call.wanted.variant.empty()) return all;
  for (std::size_t i = 1; i < all.front().variants().size(); ++i)
    all.push_back(pattern_of(text, call.pattern, {all.front().variants()[i], call.wanted.written_in}));
  return all;
}

/// The findings of the first; of the others those that it does not have.
void say_all_findings(const std::vector<Pattern>& all) {
  say_findings(all.front(), true);
  const std::vector<Finding>& first = all.front().findings();
  for (std::size_t i = 1; i < all.size(); ++i)
    for (const Finding& finding : all[i].findings())
      if (std::none_of(first.begin(), first.end(),
                       [&](const Finding& f) { return f.shown == finding.shown; }))
        std::fprintf(stderr, "%s: %s", all[i].variant().c_str(), finding.shown.c_str());
}

int check(const CheckCall& call) {
  const std::optional<std::string> text = read_text(call.pattern);
  if (!text) return file_trouble;
  const std::vector<Pattern> all = variants_of(*text, call);
  const Pattern& pattern = all.front();
  if (!has_wanted(pattern, call.wanted)) return call_is_wrong;
  if (call.round > 0) return explain(pattern, call);
  std::string problem;
  bool wrote = true;
  if (call.json) {
    wrote = write_file("-", pattern.check_json(), problem);
  } else {
    wrote = write_file("-", table(pattern), problem);
    say_all_findings(all);
    wrote = wrote && write_file("-", variants(all) + cautions(pattern) + "\n" + verdict(pattern), problem);
  }
  if (!wrote) complain(problem);
  if (!wrote) return file_trouble;
  const bool errors =
      std::any_of(all.begin(), all.end(), [](const Pattern& one) { return one.has_errors(); });
  return errors ? pattern_has_errors : done;
}

} // namespace

Command declare_check(CLI::App& app) {
  auto call = std::make_shared<CheckCall>();
  app.add_option("PATTERN", call->pattern, "the pattern's text, - for standard input")->required();
  declare_wanted(app, call->wanted);
  app.add_flag("--json", call->json, "print one object for programs, and nothing else");
  CLI::Option* round =
      app.add_option("--round", call->round, "a round that does not come out: what may have happened in it");
  CLI::Option* have = app.add_option("--have", call->have, "how many stitches you have in it");
  round->needs(have)->check(number_between(1, 100000));
  have->needs(round)->check(number_between(0, 1000000));
  app.add_option("--part", call->part, "the part of that round, where several have one of this number")
      ->needs(round);
  return [call] { return check(*call); };
}

} // namespace whorl::cli
