#include "cli/format.hpp"

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

} // namespace whorl::cli
