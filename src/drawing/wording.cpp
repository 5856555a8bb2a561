#include "drawing/wording.hpp"

namespace whorl::drawing {

std::string say(const Wording& wording, std::string_view id, const std::vector<std::string>& with) {
  const auto found = wording.find(id);
  if (found == wording.end()) return std::string(id);
  const std::string& words = found->second;
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const bool gap = words[i] == '{' && i + 2 < words.size() && words[i + 2] == '}';
    const std::size_t number = gap ? static_cast<std::size_t>(words[i + 1] - '1') : with.size();
    if (number >= with.size()) {
      out += words[i];
      continue;
    }
    out += with[number];
    i += 2;
  }
  return out;
}

} // namespace whorl::drawing
