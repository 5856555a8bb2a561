#include "fabric/slips.hpp"

#include "fabric/fabric.hpp"

namespace whorl::fabric {
namespace {

/// So many stretches are listed; more would not be read.
constexpr std::size_t listed = 6;

std::string numbers(const Stretch& stretch) {
  const std::string first = std::to_string(stretch.first);
  return stretch.first == stretch.last ? first : first + "-" + std::to_string(stretch.last);
}

/// "stitches 3-4, 7-8 and 11-12".
std::string list(const std::vector<Stretch>& where) {
  const bool one = where.size() == 1 && where.front().first == where.front().last;
  std::string text = one ? "stitch " : "stitches ";
  const std::size_t shown = where.size() > listed ? listed : where.size();
  for (std::size_t i = 0; i < shown; ++i) {
    if (i > 0) text += i + 1 == where.size() ? " and " : ", ";
    text += numbers(where[i]);
  }
  return shown < where.size() ? text + " and so on" : text;
}

/// "an increase was", "2 increases were".
std::string some(std::uint32_t times, const char* one, const char* many) {
  return times == 1 ? std::string(one) : std::to_string(times) + " " + many;
}

std::string in_repeats(const Slip& slip) {
  if (slip.repeats == 0) return {};
  return ", once in each of the " + std::to_string(slip.repeats) + " repeats";
}

std::string told_shaping(const Slip& slip) {
  const std::uint32_t width = slip.where.front().last - slip.where.front().first + 1;
  if (slip.what == SlipKind::decrease_missed)
    return some(slip.times, "a decrease was", "decreases were") +
           " missed and plain stitches worked instead. Look at " + list(slip.where) + in_repeats(slip);
  return some(slip.times, "an increase was", "increases were") + " missed. Look at " + list(slip.where) +
         in_repeats(slip) + ": " + (width == 2 ? "both" : "all " + std::to_string(width)) +
         " go into the same stitch";
}

std::string told_plain(const Slip& slip) {
  const std::string where = ". Look at " + list(slip.where) + ", which are plain";
  if (slip.what == SlipKind::stitch_skipped)
    return some(slip.times, "a stitch was", "stitches were") + " skipped" + where;
  if (slip.what == SlipKind::two_in_one)
    return some(slip.times, "a stitch has", "stitches have") + " two worked into it" + where;
  return some(slip.times, "two stitches were", "times two stitches were") +
         " worked together where none should be" + where;
}

std::string told_repeat(const Slip& slip) {
  const bool fewer = slip.what == SlipKind::repeat_left_out;
  const std::string done = std::to_string(fewer ? slip.repeats - slip.times : slip.repeats + slip.times);
  const std::string times = slip.times == 1 ? "once" : std::to_string(slip.times) + " times";
  return "the repeat was worked " + times + " too " + (fewer ? "few" : "often") + ": " + done +
         " times, not " + std::to_string(slip.repeats);
}

std::string told_ring(const Fabric& fabric, const Slip& slip) {
  const std::uint32_t meant = fabric.rounds[slip.round].counted;
  return std::to_string(slip.have) + " stitches went into the ring, not " + std::to_string(meant);
}

std::string told_neighbour(const Fabric& fabric, const Slip& slip) {
  if (slip.what == SlipKind::earlier_round)
    return "count " + name_of(fabric.rounds[slip.round]) + " too: if it has " + std::to_string(slip.have) +
           " and not " + std::to_string(fabric.rounds[slip.round].counted) + ", the slip was made by then";
  const bool before = slip.what == SlipKind::round_left_out;
  const std::string other = name_of(fabric.rounds[before ? slip.round - 1 : slip.round + 1]);
  return std::to_string(slip.have) + " is the count of " + other + ": " +
         (before ? "this round may not have been worked yet" : "a round more may have been worked");
}

std::string told_here(const Fabric& fabric, const Slip& slip) {
  switch (slip.what) {
  case SlipKind::increase_missed:
  case SlipKind::decrease_missed:
    return told_shaping(slip);
  case SlipKind::decrease_for_plain:
  case SlipKind::two_in_one:
  case SlipKind::stitch_skipped:
    return told_plain(slip);
  case SlipKind::repeat_left_out:
  case SlipKind::repeat_too_many:
    return told_repeat(slip);
  case SlipKind::ring_count:
    return told_ring(fabric, slip);
  case SlipKind::join_worked:
    return "the slip stitch that joins was worked into as if it were a stitch, or was counted";
  case SlipKind::chain_counted:
    return "the starting chain was counted, and it is no stitch here";
  case SlipKind::chain_not_counted:
    return "the starting chain was not counted or not worked into, and it is a stitch here";
  case SlipKind::round_left_out:
  case SlipKind::round_too_many:
  case SlipKind::earlier_round:
    break;
  }
  return told_neighbour(fabric, slip);
}

} // namespace

std::string told(const Fabric& fabric, const Slip& slip) {
  const std::string here = told_here(fabric, slip);
  return slip.what == SlipKind::earlier_round ? here : name_of(fabric.rounds[slip.round]) + ": " + here;
}

} // namespace whorl::fabric
