#include "writing/name.hpp"

#include "pattern/terms.hpp"
#include "writing/tongue.hpp"

#include <algorithm>

namespace whorl::writing {
namespace {

using stitch::StitchKind;

/// "dc5pc" in full: a popcorn of 5 double crochet; "" for other names.
std::string gathered_kind(const std::string& name, const Say& say) {
  const auto gathered = gathered_of(name);
  if (!gathered || !has_words(say, "stitch-gathered-" + gathered->as) ||
      !has_words(say, "stitch-" + gathered->of))
    return {};
  return say("stitch-gathered-" + gathered->as, {say("stitch-" + gathered->of, {}), gathered->number});
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
