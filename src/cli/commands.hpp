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

/// Reads and checks the pattern in a file; none if the file cannot be read (said on standard error).
std::optional<Pattern> read_pattern(const std::string& path);

/// Says findings on standard error, errors and warnings only unless `notes` are wanted too.
void say_findings(const Pattern& pattern, bool notes);

} // namespace whorl::cli
