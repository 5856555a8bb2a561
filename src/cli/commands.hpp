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

/// A pattern's text; none if the file cannot be read (said on standard error).
std::optional<std::string> read_text(const std::string& path);

/// Reads and checks the pattern of a text, of one variant if it is named.
Pattern pattern_of(const std::string& text, const std::string& path, const std::string& variant);

/// Both at once.
std::optional<Pattern> read_pattern(const std::string& path, const std::string& variant = "");

/// Whether the pattern has the variant that is wanted; said on standard error if not.
bool has_variant(const Pattern& pattern, const std::string& variant);

/// Declares `--variant`.
void declare_variant(CLI::App& app, std::string& variant);

/// Says findings on standard error, errors and warnings only unless `notes` are wanted too.
void say_findings(const Pattern& pattern, bool notes);

} // namespace whorl::cli
