#include "writing/instruction_parts.hpp"

#include "writing/begun_words.hpp"
#include "writing/instruction.hpp"
#include "writing/name.hpp"

namespace whorl::writing {
namespace {

using pattern::Act;
using pattern::Tree;
using pattern::Where;
using pattern::Work;

std::string digits(std::uint64_t n) { return std::to_string(n); }

const char* group_row(const Work& work) {
  switch (work.where) {
  case Where::next:
    return work.to_end ? "group-in-each" : "group-in-next";
  case Where::same:
    return "group-in-same";
  case Where::last:
    return "group-in-last";
  case Where::ring:
    return "group-in-ring";
  case Where::space:
    return work.to_end ? "group-in-spaces" : "group-in-space";
  case Where::between:
    return work.to_end ? "group-in-gaps" : "group-in-gap";
  default:
    return "";
  }
}

/// The number of a round that is named, or none where the entry gives several.
Words number_of(const Tree& tree, const Named& named) {
  if (named.number != 0) return digits(named.number);
  if (named.round >= tree.rounds.size()) return std::nullopt;
  const pattern::RoundText& round = tree.rounds[named.round];
  return round.from > 0 && round.from == round.to && round.again == 0 ? Words{std::to_string(round.from)}
                                                                      : std::nullopt;
}

} // namespace

Words repeated(const Work& work, const std::string& list, const Tongue& tongue) {
  if (!work.to_end) return tongue.row("group-times", {digits(work.times), {}, list, {}});
  if (work.leave == 0) return tongue.row("group-around", {{}, {}, list, {}});
  return tongue.row("to-last", {digits(work.leave), "(" + list + ")", {}, {}});
}

Words with_yarn(const Tree& tree, std::uint8_t number, const Tongue& tongue) {
  if (number == 0 || number > tree.yarns.size()) return std::nullopt;
  const std::string yarn = tongue.named(tree.yarns[number - 1U]);
  const std::string_view blank = tongue.words().blanks_between_words ? " " : "";
  if (const Words said = tongue.sentence("say-in-yarn", {yarn})) return *said + std::string(blank);
  const Words with = tongue.word("with");
  return with ? Words{*with + " " + yarn + " "} : std::nullopt;
}

std::string in_yarn_said(const std::string& with, const std::string& words, Act act) {
  if (with.empty() || act != Act::join) return with + words;
  return words + " " + with.substr(0, with.find_last_not_of(' ') + 1);
}

Words in_one_place(const Work& work, const std::string& list, const Tongue& tongue) {
  if (work.to_end && work.leave > 0) return std::nullopt;
  Words one = tongue.row(group_row(work), {{}, {}, list, {}});
  if (!one || work.times == 1 || work.to_end) return one;
  return tongue.row("group-times", {digits(work.times), {}, *one, {}});
}

bool is_of_other(const Work& work) {
  return work.act == Act::free_loops || work.act == Act::part_edge || work.act == Act::skipped ||
         (work.act == Act::stitch && work.into == pattern::Into::two_parts);
}

Words as_round(const Tree& tree, const Named& named, const Tongue& tongue) {
  const Words number = number_of(tree, named);
  return number ? tongue.sentence("say-as-round", {*number}) : number;
}

Words of_other(const Tree& tree, const Work& work, const Named& named, const Tongue& tongue) {
  if (named.round >= tree.rounds.size() || tree.parts.empty()) return std::nullopt;
  const std::string part = tongue.named(tree.parts[tree.rounds[named.round].part].name);
  if (work.act == Act::stitch) {
    const Words name = tongue.stitch(tree, work.kind);
    const bool plain = name && !work.to_end && work.in_one == 1 && !part.empty();
    return plain ? tongue.sentence("say-through-parts", {digits(work.times), *name, part}) : std::nullopt;
  }
  const Words number = number_of(tree, named), loops = loops_in_words(work.loops, tongue);
  if (!number || !loops || work.act != Act::free_loops) return std::nullopt;
  if (work.nth != 0) return joined_in_loop(tree, work, named.round, *number, tongue);
  return part.empty() ? tongue.sentence("say-in-free-loops", {*number, *loops})
                      : tongue.sentence("say-in-free-loops-of", {*number, *loops, part});
}

} // namespace whorl::writing
