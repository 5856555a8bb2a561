#include "writing/name.hpp"

#include "pattern/terms.hpp"
#include "writing/tongue.hpp"

#include <algorithm>

namespace whorl::writing {
namespace {

using stitch::StitchKind;

/// "dc5pc" in full: a popcorn of 5 double crochet; "" for other names.
std::string gathered_kind(const std::string& name, const Say& say) {
  const std::size_t digits = name.find_first_of("0123456789");
  if (digits == 0 || digits == std::string::npos) return {};
  const std::size_t end = std::min(name.find_first_not_of("0123456789", digits), name.size());
  const std::string head = "stitch-gathered-" + name.substr(end), base = "stitch-" + name.substr(0, digits);
  if (end == name.size() || !has_words(say, head) || !has_words(say, base)) return {};
  return say(head, {say(base, {}), name.substr(digits, end - digits)});
}

std::string short_kind(const StitchKind& kind, const words::Vocabulary& terms) {
  return kind.own ? kind.name : pattern::spoken(kind.name, terms);
}

std::string full_kind(const StitchKind& kind, const Say& say) {
  const std::string own = kind.title.empty() ? kind.name : kind.title;
  if (kind.own) return own;
  if (has_words(say, "stitch-" + kind.name)) return say("stitch-" + kind.name, {});
  if (std::string gathered = gathered_kind(kind.name, say); !gathered.empty()) return gathered;
  const auto together = together_of(kind.name);
  if (!together || !has_words(say, "stitch-" + together->base)) return own;
  return say("stitch-together", {say("stitch-" + together->base, {}), together->number});
}

const char* ending_of(pattern::Into into) {
  switch (into) {
  case pattern::Into::loops:
    break;
  case pattern::Into::front_post:
    return "front-post";
  case pattern::Into::back_post:
    return "back-post";
  case pattern::Into::below:
    return "below";
  case pattern::Into::both_layers:
    return "both-layers";
  case pattern::Into::two_parts:
    return "two-parts";
  }
  return "";
}

/// What is said of several in one place: an increase where they are two.
std::string several(const char* what, const Used& used, const StitchKind& kind, const std::string& name,
                    const Say& say) {
  const std::string head = what;
  const std::string number = std::to_string(used.in_one);
  if (used.in_one != 2) return say(head + "-several", {name, number});
  const bool special = has_words(say, head + "-increase-" + kind.name);
  return say(head + "-increase" + (special ? "-" + kind.name : ""), {name, number});
}

} // namespace

bool has_words(const Say& say, const std::string& id) { return say(id, {}) != id; }

std::string short_name(const Used& used, const pattern::Tree& tree, const words::Vocabulary& terms,
                       const Say& say) {
  const StitchKind& kind = tree.kinds[used.kind];
  std::string name = short_kind(kind, terms);
  if (used.into != pattern::Into::loops) name = say(std::string("short-") + ending_of(used.into), {name});
  return used.in_one > 1 ? several("short", used, kind, name, say) : name;
}

std::string full_name(const Used& used, const pattern::Tree& tree, const Say& say) {
  const StitchKind& kind = tree.kinds[used.kind];
  std::string name = full_kind(kind, say);
  if (used.into != pattern::Into::loops) name = say(std::string("stitch-") + ending_of(used.into), {name});
  return used.in_one > 1 ? several("stitch", used, kind, name, say) : name;
}

} // namespace whorl::writing
