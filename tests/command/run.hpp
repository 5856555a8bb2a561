#pragma once

#include <string>
#include <vector>

/// What a run of the command left.
struct Ran {
  int status = 0;
  std::string output; ///< standard output
  std::string errors; ///< standard error
};

/// Runs the command with these words in an own empty folder (`folder()`), `input` being its standard input.
Ran whorl(const std::vector<std::string>& words, const std::string& input = "");

/// The folder of this test program, empty at its start.
const std::string& folder();

void write(const std::string& name, const std::string& text);
std::string read(const std::string& name);
bool exists(const std::string& name);

/// Names of all files in the folder, sorted.
std::vector<std::string> files();
/// Empties the folder.
void clear();
