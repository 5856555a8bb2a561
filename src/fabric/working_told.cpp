#include "fabric/working.hpp"

#include "fabric/blame.hpp"
#include "fabric/mend.hpp"
#include "fabric/tally.hpp"

namespace whorl::fabric {

using pattern::Finding;
using pattern::RoundText;
using pattern::Severity;
using pattern::Span;

namespace {

std::string stitches(std::uint64_t count) {
  return std::to_string(count) + (count == 1 ? " stitch" : " stitches");
}

} // namespace

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

void Working::stop_part(const RoundText& text) {
  if (!part().whole) return;
  part().whole = false;
  const std::string name = part().name.empty() ? "the chart" : part().name;
  const std::string here = fabric::name_of(round());
  say(Severity::warning, "stopped", text.span,
      part().rounds == 0 ? name + " is not drawn: it begins with " + here + ", which could not be worked"
                         : name + " is drawn up to " + before_ + ": " + here + " could not be worked");
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
  if (need.chains) edge_.open_chains(fabric().arches);
  const std::uint64_t uses = need.surely();
  const bool has_something = !edge_.is_empty() || (uses == 0 && !need.to_end);
  if (need.starts || edge_.is_ring() || (has_something && uses <= edge_.left())) return true;
  if (!has_something) {
    say(Severity::error, "nothing", body_span(text),
        fabric::name_of(round()) + " has nothing to work into: begin with a magic ring or a chain");
  } else {
    say_past_end(text, uses);
  }
  return false;
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
  for (const Taken& taken : outcome.troubles)
    say(Severity::error, "joining", taken.span.empty() ? body_span(text) : taken.span,
        fabric::name_of(round()) + ": " + taken.message);
  for (const Taken& taken : outcome.warnings)
    say(Severity::warning, "loops", taken.span.empty() ? body_span(text) : taken.span,
        fabric::name_of(round()) + ": " + taken.message);
  for (const Taken& taken : outcome.notes)
    say(Severity::note, "edge", taken.span.empty() ? body_span(text) : taken.span,
        fabric::name_of(round()) + ": " + taken.message);
  if (outcome.stop || outcome.uneven || !outcome.hidden.empty() || !outcome.notes.empty() ||
      !outcome.troubles.empty())
    text_said_ = index;
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

} // namespace whorl::fabric
