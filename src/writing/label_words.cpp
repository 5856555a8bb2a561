#include "writing/instruction.hpp"

#include "writing/name.hpp"

namespace whorl::writing {
namespace {

/// A label that is a number or a range of them: "Next rnd" is one too, "Rnd 41b" is not.
bool is_numbered(const pattern::RoundText& round) { return round.from > 0 && round.again == 0; }

std::string unit_id(const pattern::RoundText& round) {
  return round.kind == pattern::RoundKind::row ? "row" : "round";
}

std::optional<std::string> counted(const std::string& count, const std::optional<std::string>& name,
                                   const Tongue& tongue) {
  return name ? tongue.row("count-work", {count, *name, {}, {}}) : std::nullopt;
}

std::optional<std::string> unit_words(const pattern::Tree& tree, const pattern::Stated& stated,
                                      const Tongue& tongue) {
  const std::string count = std::to_string(stated.count);
  switch (stated.unit) {
  case pattern::Unit::any:
    return count;
  case pattern::Unit::stitches:
    return counted(count, tongue.word("st"), tongue);
  case pattern::Unit::kind:
    return counted(count, tongue.stitch(tree, stated.kind), tongue);
  case pattern::Unit::spaces:
    return counted(count, tongue.word("space"), tongue);
  case pattern::Unit::chains:
    return counted(count, tongue.word("ch"), tongue);
  case pattern::Unit::group:
    if (stated.kind == 0 || stated.kind > tree.group_names.size()) break;
    return counted(count, tree.group_names[stated.kind - 1U], tongue);
  }
  return std::nullopt;
}

} // namespace

std::optional<std::string> label_in_words(const pattern::RoundText& round, const Tongue& tongue) {
  if (round.label.empty() || !is_numbered(round)) return std::nullopt;
  const bool one = round.from == round.to;
  const std::string id = "write-label-" + unit_id(round) + (one ? "" : "s");
  const std::vector<std::string> numbers{std::to_string(round.from), std::to_string(round.to)};
  if (auto label = tongue.sentence(id, numbers)) return label;
  const auto unit = tongue.word(unit_id(round));
  return (unit ? *unit + " " : "R") + numbers[0] + (one ? "" : "-" + numbers[1]) + ":";
}

std::optional<std::string> count_in_words(const pattern::Tree& tree, const pattern::RoundText& round,
                                          const Tongue& tongue, Plainness plainness) {
  if (round.stated.empty()) return std::string();
  std::string text;
  for (const pattern::Stated& stated : round.stated) {
    // One count of stitches is what a number alone says.
    const bool alone = round.stated.size() == 1 &&
                       (stated.unit == pattern::Unit::stitches || plainness == Plainness::places);
    const auto words = alone ? std::optional(std::to_string(stated.count)) : unit_words(tree, stated, tongue);
    if (!words) return words;
    text += (text.empty() ? std::string_view{} : tongue.comma());
    text += *words;
  }
  return "(" + text + ")";
}

} // namespace whorl::writing
