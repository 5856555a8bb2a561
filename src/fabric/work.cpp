#include "fabric/work.hpp"

#include "fabric/blame.hpp"
#include "fabric/hand.hpp"
#include "fabric/mend.hpp"
#include "fabric/placing.hpp"
#include "fabric/slug.hpp"
#include "fabric/tally.hpp"

#include <algorithm>
#include <map>

namespace whorl::fabric {
namespace {

using pattern::Finding;
using pattern::RoundText;
using pattern::Severity;
using pattern::Span;
using pattern::Tree;

/// More rounds than any pattern has, so that a slip in a range costs nothing.
constexpr std::int64_t most_rounds = 100'000;

std::string stitches(std::uint64_t count) {
  return std::to_string(count) + (count == 1 ? " stitch" : " stitches");
}

/// Sizes of the fabric's vectors, to go back to when a round was only counted.
struct Mark {
  std::size_t stitches, legs, arches, groups, unworked, changes, rounds;
};

/// The yarn that is changed to between the rounds, before every entry of the text.
std::vector<std::uint8_t> yarns_before(const Tree& tree) {
  std::vector<std::uint8_t> yarns(tree.rounds.size() + 1, 0);
  for (const pattern::Placing& placing : tree.placings)
    if (placing.what == pattern::What::change && placing.yarn != 0 && placing.after_round < yarns.size())
      yarns[placing.after_round] = placing.yarn;
  return yarns;
}

class Working {
public:
  Working(const Tree& tree, std::uint32_t limit)
      : tree_(tree), limit_(limit), needs_(needs_of(tree)), last_rounds_(tree.rounds.size(), none),
        yarns_(yarns_before(tree)), hand_(tree, needs_, last_rounds_, worked_.fabric, edge_, limit) {
    fabric().kinds = tree.kinds;
    fabric().group_names = tree.group_names;
  }

  Worked work() {
    for (std::uint32_t part = 0; part < tree_.parts.size(); ++part) work_part(part);
    fabric().taken.resize(fabric().stitches.size(), stitch::no_loop);
    place_all(tree_, fabric(), worked_.findings);
    return std::move(worked_);
  }

private:
  Fabric& fabric() { return worked_.fabric; }
  Part& part() { return fabric().parts.back(); }
  Round& round() { return fabric().rounds.back(); }

  void work_part(std::uint32_t index);
  void begin_part(std::uint32_t index);
  void work_text(std::uint32_t index);
  void work_round(std::uint32_t index, int number);
  void begin_round(std::uint32_t index, int number);
  bool is_workable(const RoundText& text, const Need& need);
  bool fits(const RoundText& text, const Need& need);
  std::int64_t stated_before();
  void say_past_end(const RoundText& text, std::uint64_t uses);
  void finish(const Outcome& outcome);
  void keep(const Mark& mark, const Outcome& outcome);
  void keep_foundation(std::size_t index);
  void drop(const Mark& mark);
  void take_loops();
  void open_stated();
  void count_only();
  void stop_part(const RoundText& text);
  void report(const RoundText& text, const Outcome& outcome);
  void say_uneven(const RoundText& text, const Uneven& uneven);
  void say_hurdle(const RoundText& text, Hurdle hurdle);
  void say(Severity severity, const char* code, Span span, std::string message);
  Span body_span(const RoundText& text) const;
  Mark mark();

  const Tree& tree_;
  std::uint32_t limit_;
  Worked worked_;
  Edge edge_;
  const std::vector<Need> needs_;
  std::vector<std::uint32_t> last_rounds_; ///< the fabric's last round of every entry of the text
  const std::vector<std::uint8_t> yarns_;  ///< to which is changed before every entry; 0: none
  Hand hand_;
  std::map<std::string, int> keys_;
  std::map<int, int> labelled_;    ///< how often a round of each number stood in this part
  std::string before_;             ///< the round whose stitches are open: "round 3"
  bool edge_known_ = true;         ///< false: a round without a stated count was not worked
  std::uint32_t text_said_ = none; ///< the line whose trouble was said; a range says it once
};

Mark Working::mark() {
  return {fabric().stitches.size(), fabric().legs.size(),    fabric().arches.size(), fabric().groups.size(),
          fabric().unworked.size(), fabric().changes.size(), fabric().rounds.size()};
}

Span Working::body_span(const RoundText& text) const {
  if (text.body == pattern::no_node || tree_.nodes[text.body].span.empty()) return text.span;
  return tree_.nodes[text.body].span;
}

void Working::say(Severity severity, const char* code, Span span, std::string message) {
  Finding finding;
  finding.severity = severity;
  finding.code = code;
  finding.span = span;
  finding.message = std::move(message);
  worked_.findings.push_back(std::move(finding));
}

void Working::begin_part(std::uint32_t index) {
  Part part;
  part.name = tree_.parts[index].name;
  part.key = unique_slug(part.name, keys_);
  part.make = tree_.parts[index].make;
  part.first_round = static_cast<std::uint32_t>(fabric().rounds.size());
  part.text = index;
  fabric().parts.push_back(part);
  edge_.clear();
  edge_known_ = true;
  labelled_.clear();
  before_.clear();
  hand_.begin_part();
}

void Working::work_part(std::uint32_t index) {
  begin_part(index);
  const std::uint32_t end = pattern::end_round(tree_, index);
  for (std::uint32_t text = tree_.parts[index].first_round; text < end; ++text) work_text(text);
}

void Working::work_text(std::uint32_t index) {
  const RoundText& text = tree_.rounds[index];
  if (yarns_[index] != 0) hand_.change_yarn(yarns_[index]);
  const std::int64_t last = std::max(text.from, text.to);
  const std::int64_t room = most_rounds - static_cast<std::int64_t>(fabric().rounds.size());
  if (last - text.from >= room) {
    say(Severity::error, "limit", text.span, "this is more than " + std::to_string(most_rounds) + " rounds");
    if (room <= 0) return;
    stop_part(text);
    text_said_ = index;
    begin_round(index, text.from);
    count_only();
    return;
  }
  for (std::int64_t number = text.from; number <= last; ++number) {
    work_round(index, static_cast<int>(number));
    last_rounds_[index] = static_cast<std::uint32_t>(fabric().rounds.size() - 1);
  }
}

void Working::begin_round(std::uint32_t index, int number) {
  const RoundText& text = tree_.rounds[index];
  Round round;
  round.part = static_cast<std::uint32_t>(fabric().parts.size() - 1);
  round.number = number;
  round.again = labelled_[number]++;
  round.first_stitch = static_cast<StitchId>(fabric().stitches.size());
  round.stated = text.stated.empty() ? -1 : static_cast<std::int64_t>(text.stated.front().count);
  round.kind = text.kind;
  round.side = hand_.side();
  round.text = index;
  fabric().rounds.push_back(round);
}

void Working::stop_part(const RoundText& text) {
  if (!part().whole) return;
  part().whole = false;
  const std::string name = part().name.empty() ? "the chart" : part().name;
  const std::string here = fabric::name_of(round());
  say(Severity::warning, "stopped", text.span,
      part().rounds == 0 ? name + " is not drawn: it begins with " + here + ", which could not be worked"
                         : name + " is drawn up to " + before_ + ": " + here + " could not be worked");
}

/// What the text states is open for the next round.
void Working::open_stated() {
  const std::int64_t stated = std::max<std::int64_t>(round().stated, 0);
  edge_.open_counted(static_cast<std::size_t>(std::min<std::int64_t>(stated, limit_)));
}

/// The round has no stitches here; it goes on with what the text states.
void Working::count_only() {
  Round& round = fabric().rounds.back();
  round.worked = false;
  edge_known_ = round.stated >= 0;
  open_stated();
  round.counted = round.makes = static_cast<std::uint32_t>(edge_.left());
  before_ = fabric::name_of(round);
  ++part().counted_only;
}

/// Words that were not understood were said by the reader.
void Working::say_hurdle(const RoundText& text, Hurdle hurdle) {
  if (!text.read || text_said_ == round().text) return;
  if (hurdle == Hurdle::no_round)
    say(Severity::error, "reference", body_span(text),
        fabric::name_of(round()) + " is to be worked like a round that does not stand before it");
  if (hurdle == Hurdle::too_deep)
    say(Severity::error, "limit", body_span(text),
        "brackets are nested more than " + std::to_string(deepest) + " deep");
  text_said_ = round().text;
}

/// Whether there is anything to be tried: it was read, and the edge before it is known.
bool Working::is_workable(const RoundText& text, const Need& need) {
  if (!text.read || text.body == pattern::no_node || need.hurdle != Hurdle::nothing) {
    say_hurdle(text, need.hurdle);
    stop_part(text);
    return false;
  }
  if (edge_known_ || need.starts) return true;
  if (need.to_end) return false;
  edge_.open_counted(std::min<std::uint64_t>(need.surely(), limit_));
  return true;
}

/// What the text says of the round before where that is not what it has: the trouble began there. -1: it
/// agrees.
std::int64_t Working::stated_before() {
  if (fabric().rounds.size() < 2) return -1;
  const Round& before = fabric().rounds[fabric().rounds.size() - 2];
  return before.part == round().part && is_miscounted(before) ? before.stated : -1;
}

/// The round before has too little; where it would fit what the text says of that one, its count says it all.
void Working::say_past_end(const RoundText& text, std::uint64_t uses) {
  const std::int64_t stated = stated_before();
  if (stated == static_cast<std::int64_t>(uses)) return;
  const std::string said = stated < 0 ? "" : " (the pattern says " + std::to_string(stated) + ")";
  say(Severity::error, "past-end", body_span(text),
      fabric::name_of(round()) + " needs " + stitches(uses) + ", " + before_ + " has " +
          std::to_string(edge_.left()) + said);
  round().told = true;
  std::string& mended = worked_.findings.back().mend;
  mended = tree_.rounds[round().text].mend;
  if (mended.empty() && stated < 0) mended = mend(tree_, needs_, round().text, edge_.left());
}

/// Whether the edge has what the round needs. Where it has too little, the round is counted all the same.
bool Working::fits(const RoundText& text, const Need& need) {
  if (need.stitches > limit_) {
    say(Severity::error, "limit", body_span(text),
        "this is more than " + std::to_string(limit_) + " stitches");
    return false;
  }
  const std::uint64_t uses = need.surely();
  if (need.starts || edge_.is_ring() || uses <= edge_.left()) return true;
  if (edge_.is_empty()) {
    say(Severity::error, "nothing", body_span(text),
        fabric::name_of(round()) + " has nothing to work into: begin with a magic ring or a chain");
  } else {
    say_past_end(text, uses);
  }
  return false;
}

void Working::work_round(std::uint32_t index, int number) {
  const RoundText& text = tree_.rounds[index];
  const Need need = needs_[index];
  const Mark before = mark();
  begin_round(index, number);
  if (!is_workable(text, need)) return count_only();
  const std::size_t said = worked_.findings.size();
  const bool fit = fits(text, need);
  if (text_said_ == index) worked_.findings.resize(said);
  if (!fit) {
    text_said_ = index;
    stop_part(text);
    if (need.stitches > limit_ || need.uses > limit_) return count_only();
    edge_.lengthen(need.surely() - edge_.left());
  }
  const Outcome outcome = hand_.work(text.body, need, static_cast<std::uint32_t>(fabric().parts.size() - 1));
  if (outcome.stop) {
    report(text, outcome);
    drop(before);
    stop_part(text);
    return count_only();
  }
  finish(outcome);
  if (part().whole) return report(text, outcome), keep(before, outcome);
  report(text, outcome);
  drop(before);
  round().worked = false;
  ++part().counted_only;
  if (!fit && round().stated >= 0) open_stated();
}

void Working::report(const RoundText& text, const Outcome& outcome) {
  const auto index = round().text;
  if (text_said_ == index) return;
  if (outcome.stop)
    say(Severity::error, outcome.stop->code.c_str(),
        outcome.stop->span.empty() ? body_span(text) : outcome.stop->span,
        fabric::name_of(round()) + ": " + outcome.stop->message);
  if (outcome.uneven) say_uneven(text, *outcome.uneven);
  for (const Span& span : outcome.hidden)
    say(Severity::warning, "loops", span,
        "an invisible decrease takes front loops: in back loops it is worked as the plain decrease");
  for (const Taken& taken : outcome.notes)
    say(Severity::note, "edge", taken.span.empty() ? body_span(text) : taken.span,
        fabric::name_of(round()) + ": " + taken.message);
  if (outcome.stop || outcome.uneven || !outcome.hidden.empty() || !outcome.notes.empty()) text_said_ = index;
}

/// A repeat that would divide what the text says of the round before is not to blame.
void Working::say_uneven(const RoundText& text, const Uneven& uneven) {
  round().told = true;
  const std::int64_t stated = stated_before();
  if (stated >= 0 && comes_out(tree_, round().text, stated)) return;
  say(Severity::error, "divide", uneven.span.empty() ? body_span(text) : uneven.span,
      fabric::name_of(round()) + ": the repeat takes " + stitches(uneven.takes) + " a time and has " +
          std::to_string(uneven.room) + " to go into: " + stitches(uneven.room % uneven.takes) +
          " would be left over");
  worked_.findings.back().mend = tree_.rounds[round().text].mend;
}

/// The figures of the round just worked; the edge goes on to the next.
void Working::finish(const Outcome& outcome) {
  Round& round = fabric().rounds.back();
  round.count = static_cast<std::uint32_t>(fabric().stitches.size()) - round.first_stitch;
  round.uses = static_cast<std::uint32_t>(outcome.uses);
  const bool on_it_all = (!outcome.opened || outcome.joined_parts) && !outcome.passes_by;
  const bool must_use_all = round.kind == pattern::RoundKind::round && !round.turned && on_it_all &&
                            !outcome.uneven && !edge_.is_ring();
  const std::uint64_t left = edge_.left();
  if (must_use_all && left > outcome.left_on_purpose)
    round.left_over = static_cast<std::uint32_t>(left - outcome.left_on_purpose);
  edge_.close_round();
  if (hand_.open_foundation()) round.kind = pattern::RoundKind::chain;
  round.makes = static_cast<std::uint32_t>(edge_.left());
  tally_round(fabric());
  const RoundText& text = tree_.rounds[round.text];
  round.counted = counted_as(fabric(), round, text.stated.empty() ? pattern::Stated{} : text.stated.front());
  before_ = fabric::name_of(round);
  edge_known_ = true;
}

/// The round stands: its part grows by it, and the loops it went into are taken.
void Working::keep(const Mark& before, const Outcome& outcome) {
  if (part().start == Start::nothing) part().start = outcome.start;
  if (fabric().rounds.size() > before.rounds + 1) keep_foundation(before.rounds);
  take_loops();
  const bool foundation =
      round().kind == pattern::RoundKind::chain && part().rounds == 0 && part().foundation == none;
  if (foundation) {
    round().number = 0;
    keep_foundation(before.rounds);
  } else {
    ++part().rounds;
  }
}

void Working::keep_foundation(std::size_t index) {
  part().foundation = static_cast<std::uint32_t>(index);
  part().first_round = static_cast<std::uint32_t>(index + 1);
}

/// Takes back the stitches of a round that is only counted; its figures stay.
void Working::drop(const Mark& before) {
  const Round figures = round();
  fabric().stitches.resize(before.stitches);
  fabric().legs.resize(before.legs);
  fabric().arches.resize(before.arches);
  fabric().groups.resize(before.groups);
  fabric().unworked.resize(before.unworked);
  fabric().changes.resize(before.changes);
  fabric().rounds.resize(before.rounds);
  fabric().rounds.push_back(figures);
  round().first_stitch = static_cast<StitchId>(before.stitches);
  round().count = 0;
  round().counting_chain = none;
  edge_.open_counted(figures.makes);
}

/// An invisible decrease hides the back loops behind it: no hook can reach them.
void Working::take_loops() {
  fabric().taken.resize(fabric().stitches.size(), stitch::no_loop);
  const StitchId first = fabric().rounds.back().first_stitch;
  for (StitchId i = first; i < fabric().stitches.size(); ++i) {
    const bool hides = hand_.hides_back_loops(fabric().stitches[i].kind);
    for (const Leg& leg : legs_of(fabric(), i))
      if (leg.into.what == On::top || leg.into.what == On::chain_side)
        fabric().taken[leg.into.of] |= hides ? std::uint8_t{stitch::both} : leg.into.loops;
  }
}

} // namespace

Worked work(const Tree& tree, std::uint32_t limit) { return Working(tree, limit).work(); }

} // namespace whorl::fabric
