#pragma once

#include <CLI/CLI.hpp>

#include <charconv>
#include <string>

namespace whorl::cli {

/// Asks of an option that it be a number from `low` to `high`, and says so in words.
inline CLI::Validator number_between(int low, int high) {
  const std::string range = std::to_string(low) + " to " + std::to_string(high);
  const auto look = [low, high, range](std::string& typed) -> std::string {
    double number = 0;
    const char* const end = typed.data() + typed.size();
    const auto [read, problem] = std::from_chars(typed.data(), end, number);
    const bool good = problem == std::errc() && read == end && number >= low && number <= high;
    return good ? std::string() : "`" + typed + "` is no number from " + range;
  };
  return CLI::Validator(look, range);
}

} // namespace whorl::cli
