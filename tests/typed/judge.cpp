#include "corpus.hpp"

#include "fabric/check.hpp"
#include "fabric/work.hpp"
#include "pattern/language.hpp"
#include "pattern/read.hpp"
#include "pattern/report.hpp"
#include "pattern/variants.hpp"

#include <algorithm>
#include <map>

namespace typed {
namespace {

using namespace whorl;
using fabric::Fabric;
using fabric::Round;
using fabric::StitchId;

bool begins_with(const std::string& text, const std::string& head) {
  return text.compare(0, head.size(), head) == 0;
}

bool all_in(const Fabric& fabric, StitchId stitch, std::uint8_t loops) {
  const fabric::Legs legs = legs_of(fabric, stitch);
  return legs.size() > 0 && std::all_of(legs.begin(), legs.end(), [&](const fabric::Leg& leg) {
           return leg.into.what == fabric::On::top && leg.into.loops == loops;
         });
}

/// The place that a round's starting chain stands on where that counts as its first stitch: the first of the
/// round before; none where it does not, or stands elsewhere.
StitchId under_counting_chain(const Fabric& fabric, const Round& round) {
  if (round.counting_chain == fabric::none || &round == fabric.rounds.data()) return fabric::none;
  const Round& before = *(&round - 1);
  if (before.part != round.part) return fabric::none;
  if (before.counting_chain != fabric::none) return before.counting_chain;
  for (StitchId id = before.first_stitch; id < before.first_stitch + before.count; ++id)
    if ((fabric.stitches[id].flags & fabric::counts) && !(fabric.stitches[id].flags & fabric::starts_chain))
      return id;
  return fabric::none;
}

/// Places that more than one stitch of the round goes into, or stands on as its starting chain does.
std::uint32_t increases(const Fabric& fabric, const Round& round) {
  std::map<std::uint64_t, int> into;
  if (const StitchId under = under_counting_chain(fabric, round); under != fabric::none) ++into[under];
  for (StitchId id = round.first_stitch; id < round.first_stitch + round.count; ++id) {
    std::uint64_t last = fabric::none; // a cluster has several legs in one place
    for (const fabric::Leg& leg : legs_of(fabric, id)) {
      if (leg.into.what == fabric::On::top && leg.into.of != last &&
          !(fabric.stitches[id].flags & fabric::joins))
        ++into[leg.into.of];
      last = leg.into.of;
    }
  }
  return static_cast<std::uint32_t>(
      std::count_if(into.begin(), into.end(), [](const auto& place) { return place.second > 1; }));
}

bool is_named(const std::string& kind, const std::string& what) {
  if (what == "bo") return begins_with(kind, "bo") || begins_with(kind, "bobble");
  if (what == "pc") return begins_with(kind, "pc") || begins_with(kind, "popcorn");
  if (what == "puff") return begins_with(kind, "puff");
  return kind == what;
}

bool answers_to(const Fabric& fabric, StitchId id, const std::string& what) {
  const fabric::Stitch& stitch = fabric.stitches[id];
  const stitch::StitchKind& kind = fabric.kinds[stitch.kind];
  if (what == "back") return all_in(fabric, id, stitch::back) && !(stitch.flags & fabric::joins);
  if (what == "front") return all_in(fabric, id, stitch::front) && !(stitch.flags & fabric::joins);
  if (what == "dec") return kind.takes > 1;
  return is_named(kind.name, what) && !(stitch.flags & (fabric::joins | fabric::starts_chain));
}

std::uint32_t count_of(const Fabric& fabric, const Round& round, const std::string& what) {
  if (what == "inc") return increases(fabric, round);
  std::uint32_t count = 0;
  for (StitchId id = round.first_stitch; id < round.first_stitch + round.count; ++id)
    count += answers_to(fabric, id, what) ? 1U : 0U;
  return count;
}

std::string figures(std::int64_t uses, std::int64_t makes) {
  return std::to_string(uses) + " to " + std::to_string(makes);
}

std::uint32_t chains(const Fabric& fabric, const Round& round) {
  std::uint32_t count = 0;
  for (StitchId id = round.first_stitch; id < round.first_stitch + round.count; ++id)
    count += fabric.kinds[fabric.stitches[id].kind].name == "ch" &&
             !(fabric.stitches[id].flags & fabric::starts_chain);
  return count;
}

/// Whether somebody may count so many stitches in a round: some count chain spaces or chains too.
bool may_count(const Fabric& fabric, const Round& round, std::int64_t makes) {
  return makes == round.counted || makes == round.makes ||
         makes == round.counted + std::int64_t{round.spaces} ||
         makes == round.counted + std::int64_t{chains(fabric, round)} ||
         makes == round.makes + std::int64_t{chains(fabric, round)};
}

/// Whether chains stand for a stitch of a round; some count them with the stitches like it.
bool counts_chain(const Fabric& fabric, const Round& round) {
  std::uint32_t counted = 0;
  for (StitchId id = round.first_stitch; id < round.first_stitch + round.count; ++id) {
    const fabric::Stitch& stitch = fabric.stitches[id];
    const bool chain = fabric.kinds[stitch.kind].name == "ch";
    if (chain && (stitch.flags & fabric::counts)) return true;
    counted += !chain && (stitch.flags & fabric::counts) && !(stitch.flags & fabric::joins);
  }
  return round.counted == counted + 1; // a chain skipped at the hook is the foundation's
}

bool may_be_counting_chain(const std::string& what) {
  return what == "sc" || what == "hdc" || what == "dc" || what == "tr";
}

/// What is not as meant about a round; "" if all is.
std::string trouble_with(const Fabric& fabric, const Round& round, const Meant& meant) {
  // Of a round that joins parts, nobody agrees which stitches are those of the round before.
  // Chains that a first row goes into are no stitches of a round before.
  const bool open = meant.uses < 0 || round.joined_open > 0 || (round.number == 1 && round.uses == 0);
  const std::int64_t uses = open ? round.uses : meant.uses;
  const std::int64_t makes = meant.makes < 0 ? round.counted : meant.makes;
  std::string trouble;
  if (!round.worked) trouble = "not worked";
  if (uses != round.uses || !may_count(fabric, round, makes))
    trouble = figures(round.uses, round.counted) + " instead of " + figures(uses, makes);
  for (const Some& some : meant.some) {
    const std::uint32_t count = count_of(fabric, round, some.what);
    const std::uint32_t with_chain =
        count + (may_be_counting_chain(some.what) && counts_chain(fabric, round) ? 1U : 0U);
    if (count != some.count && with_chain != some.count)
      trouble += " " + std::to_string(count) + " " + some.what + " instead of " + std::to_string(some.count);
  }
  return trouble;
}

/// The rounds as worked, without starting chains.
std::vector<const Round*> rounds_of(const Fabric& fabric) {
  std::vector<const Round*> rounds;
  for (const Round& round : fabric.rounds)
    if (round.number > 0) rounds.push_back(&round);
  return rounds;
}

/// Index of the next round of this number; `rounds.size()` if there is none.
std::size_t find(const std::vector<const Round*>& rounds, std::size_t from, int number) {
  while (from < rounds.size() && rounds[from]->number != number) ++from;
  return from;
}

/// Rounds that are read although nobody meant them. Those of a part told as "the second leg the same" may go
/// without figures of their own.
int unmeant(const pattern::Tree& tree, const std::vector<const Round*>& rounds, std::size_t at,
            std::size_t end) {
  return static_cast<int>(std::count_if(
      rounds.begin() + static_cast<std::ptrdiff_t>(at), rounds.begin() + static_cast<std::ptrdiff_t>(end),
      [&tree](const Round* round) {
        const bool labelled = round->text == fabric::none || !tree.rounds[round->text].label.empty();
        const bool closes =
            !labelled && tree.rounds[round->text].effect.folded &&
            tree.rounds[round->text].stated.empty(); // "close flat with sc through both layers"
        if (closes) return false;
        const pattern::NodeId body = labelled ? pattern::no_node : tree.rounds[round->text].body;
        return body == pattern::no_node || tree.nodes[body].kind != pattern::NodeKind::reference;
      }));
}

void compare(const pattern::Tree& tree, const Fabric& fabric, const std::vector<Meant>& meant,
             Verdict& verdict) {
  const std::vector<const Round*> rounds = rounds_of(fabric);
  std::size_t at = 0;
  for (const Meant& one : meant) {
    ++verdict.rounds;
    const std::string name =
        std::to_string(one.from) + (one.to > one.from ? "-" + std::to_string(one.to) : "") + ": ";
    const std::size_t first = find(rounds, at, one.from);
    const std::size_t last = find(rounds, first, one.to);
    if (last == rounds.size()) {
      verdict.troubles.push_back(name + "is missing");
      continue;
    }
    const int more = unmeant(tree, rounds, at, first);
    verdict.rounds += more;
    if (more > 0) verdict.troubles.push_back(std::to_string(more) + " more rounds before " + name);
    at = last + 1;
    const std::string trouble = trouble_with(fabric, *rounds[last], one);
    if (trouble.empty()) ++verdict.right;
    if (!trouble.empty()) verdict.troubles.push_back(name + trouble);
  }
  const int more = unmeant(tree, rounds, at, rounds.size());
  verdict.rounds += more;
  if (more > 0) verdict.troubles.push_back(std::to_string(more) + " more rounds at the end");
}

void tell(const std::vector<pattern::Finding>& findings, const pattern::Source& source, Verdict& verdict) {
  for (const pattern::Finding& finding : findings) {
    if (finding.severity == pattern::Severity::note) continue;
    ++verdict.alarms;
    verdict.troubles.push_back(show(finding, source, "pattern"));
  }
}

} // namespace

Verdict judge(const Case& one) {
  const std::vector<std::string> variants = pattern::variants_in(one.pattern);
  const pattern::Source source(pattern::in_variant(one.pattern, variants, 0)); // the first of its sizes
  const pattern::Language language = pattern::find_language(source, language_of_corpus());
  const pattern::Read read = pattern::read(source, *language.vocabulary);
  const fabric::Worked worked = fabric::work(read.tree);
  Verdict verdict;
  compare(read.tree, worked.fabric, one.meant, verdict);
  tell(read.findings, source, verdict);
  tell(worked.findings, source, verdict);
  tell(fabric::check(read.tree, worked.fabric), source, verdict);
  return verdict;
}

} // namespace typed
