#pragma once

#include "whorl.hpp"

#include <functional>
#include <optional>
#include <string>

namespace CLI {
class App;
}

namespace whorl::cli {

/// What a command does once the call is understood; gives the exit status.
using Command = std::function<int()>;

/// Each declares one command on `app` and gives what it does.
Command declare_check(CLI::App& app);
Command declare_chart(CLI::App& app);
Command declare_moves(CLI::App& app);
Command declare_symbols(CLI::App& app);
Command declare_steps(CLI::App& app);
Command declare_write(CLI::App& app);

/// A pattern's text; none if the file cannot be read (said on standard error).
std::optional<std::string> read_text(const std::string& path);

/// What is wanted of a pattern: one of its variants, the language that it is written in, and that of the
/// words which are put beside its own; "" where the call says nothing.
struct Wanted {
  std::string variant;
  std::string written_in;
  std::string language;
};

/// Reads and checks the pattern of a text.
Pattern pattern_of(const std::string& text, const std::string& path, const Wanted& wanted);

/// Both at once.
std::optional<Pattern> read_pattern(const std::string& path, const Wanted& wanted = {});

/// Whether the languages that are wanted are known; said on standard error if not.
bool are_known(const Wanted& wanted);

/// Whether the pattern has the variant that is wanted, and the languages are known; said on standard error if
/// not.
bool has_wanted(const Pattern& pattern, const Wanted& wanted);

/// Declares `--variant`, `--written-in` and `--language`.
void declare_wanted(CLI::App& app, Wanted& wanted);

/// Declares `--written-in` alone.
void declare_written_in(CLI::App& app, Wanted& wanted);

/// Declares `--language` alone.
void declare_language(CLI::App& app, Wanted& wanted);

/// Says findings on standard error, errors and warnings only unless `notes` are wanted too.
void say_findings(const Pattern& pattern, bool notes);

} // namespace whorl::cli
