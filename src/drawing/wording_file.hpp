#pragma once

#include "drawing/wording.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace whorl::drawing {

/// The words of a sheet in one language, or in plain words why they could not be read.
struct WordingReading {
  std::string language; ///< BCP 47: "en"
  Wording wording;
  std::string problem; ///< "": they were read
};

/// Reads `<sheet language="en"><text id="figure">Fig. {1}</text> … </sheet>`; blanks at either end do not
/// count.
WordingReading read_wording(std::string_view xml);

/// The wordings as C++ source that defines `find_wording`; what stands under `figure@en-GB` makes a wording
/// of its own for that dialect, with the words of the language for all else.
std::string wording_table(const std::vector<WordingReading>& wordings);

/// Reads the files and writes the table to `out`, both by path; complaints go to standard error. The exit
/// status.
int write_wording_table(const std::string& out, const std::vector<std::string>& files);

/// The words built into the program for a language: of its tag, else of the tag's first part ("en" for
/// "en-US").
const Wording* find_wording(std::string_view language);

} // namespace whorl::drawing
