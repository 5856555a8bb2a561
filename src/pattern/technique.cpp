#include "pattern/technique.hpp"

#include <algorithm>
#include <array>

namespace whorl::pattern {

namespace {

/// Whether a kind is `base` several times together: "sc2tog" of "sc", and the invisible decrease.
bool is_together(std::string_view name, std::string_view base) {
  if (base == "sc" && name == "invdec") return true;
  if (name.size() < base.size() + 4 || name.substr(0, base.size()) != base) return false;
  const std::size_t behind = name.find_first_not_of("0123456789", base.size());
  return behind != std::string_view::npos && behind > base.size() && name.substr(behind) == "tog";
}

} // namespace

std::string_view word_of(How how) {
  static constexpr std::array<std::string_view, 8> words{"yarn-under",  "yarn-over",   "inside-out",
                                                         "over-wire",   "tightly",     "loosely",
                                                         "two-strands", "between-legs"};
  return words[static_cast<std::size_t>(how)];
}

bool concerns(const Technique& technique, stitch::KindId kind, int in_one,
              const std::vector<stitch::StitchKind>& kinds) {
  if (kind >= kinds.size()) return false;
  switch (technique.of) {
  case Of::all:
    return true;
  case Of::increases:
    return in_one > 1;
  case Of::decreases:
    return kinds[kind].takes > 1;
  case Of::kind:
    break;
  }
  if (technique.kind >= kinds.size()) return false;
  return technique.kind == kind || is_together(kinds[kind].name, kinds[technique.kind].name);
}

bool are_opposed(How a, How b) {
  const auto are = [a, b](How one, How other) {
    return (a == one && b == other) || (a == other && b == one);
  };
  return are(How::yarn_under, How::yarn_over) || are(How::tightly, How::loosely);
}

std::vector<std::size_t> holding(const std::vector<Technique>& all, stitch::KindId kind, int in_one,
                                 const std::vector<stitch::StitchKind>& kinds) {
  std::vector<std::size_t> found;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const bool yields = std::any_of(all.begin(), all.end(), [&](const Technique& other) {
      return are_opposed(all[i].how, other.how) && other.of > all[i].of && other.part == every_part &&
             other.from == 0 && concerns(other, kind, in_one, kinds);
    });
    if (!yields && concerns(all[i], kind, in_one, kinds)) found.push_back(i);
  }
  return found;
}

bool is_of_moves(How how) { return how == How::yarn_under || how == How::between_legs; }

} // namespace whorl::pattern
