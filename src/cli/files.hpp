#pragma once
/// Room `cli`: the command. It uses the two public headers and nothing else of the library.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace whorl::cli {

/// Exit statuses.
enum Status : int {
  done = 0,
  pattern_has_errors = 1, ///< what could be drawn is still written
  call_is_wrong = 2,
  file_trouble = 3, ///< a file could not be read or written
};

/// Reads a file, or standard input for "-". False with `problem` in plain words.
bool read_file(const std::string& path, std::string& text, std::string& problem);

/// Writes a file whole or not at all (aside, then renamed), or standard output for "-". False with `problem`.
bool write_file(const std::string& path, std::string_view bytes, std::string& problem);

/// The files of a folder whose names end so, in order of their names. `problem` says where it is none.
std::vector<std::string> files_in(const std::string& folder, std::string_view ending, std::string& problem);

/// Whether two paths name the same existing file.
bool same_file(const std::string& a, const std::string& b);

/// Says on standard error what went wrong with a file.
void complain(std::string_view problem);

} // namespace whorl::cli
