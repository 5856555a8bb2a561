#include "cli/format.hpp"

#include "cli/files.hpp"

#include <algorithm>
#include <cctype>

namespace whorl::cli {

Format format_of(const std::string& path) {
  if (path == "-") return Format::svg;
  const std::size_t dot = path.find_last_of("./");
  std::string ending = dot == std::string::npos || path[dot] == '/' ? "" : path.substr(dot + 1);
  std::transform(ending.begin(), ending.end(), ending.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  if (ending == "svg") return Format::svg;
  if (ending == "png") return Format::png;
  if (ending == "pdf") return Format::pdf;
  if (ending == "json") return Format::json;
  return Format::unknown;
}

std::string unknown_format(const std::string& path) {
  return "cannot tell what to draw from the name " + path + ": let it end in .svg, .png, .pdf or .json";
}

std::string bytes_of(const Painting& painting, std::string& problem) {
  for (const std::string& font : painting.missing_fonts) complain("warning: this machine lacks " + font);
  problem = painting.problem;
  return painting.bytes;
}

} // namespace whorl::cli
