#include "fabric/check.hpp"

#include "fabric/blame.hpp"
#include "fabric/loops.hpp"
#include "fabric/mend.hpp"
#include "fabric/need.hpp"
#include "fabric/tally.hpp"
#include "fabric/technique.hpp"
#include "pattern/terms.hpp"
#include "stitch/moves.hpp"

#include <algorithm>

namespace whorl::fabric {
namespace {

using pattern::Finding;
using pattern::RoundText;
using pattern::Severity;
using pattern::Tree;
using pattern::What;
using Findings = std::vector<Finding>;

Finding finding(Severity severity, const char* code, pattern::Span span, std::string message) {
  Finding finding;
  finding.severity = severity;
  finding.code = code;
  finding.span = span;
  finding.message = std::move(message);
  return finding;
}

std::string some(std::uint64_t count, const char* one, const char* many) {
  return std::to_string(count) + " " + (count == 1 ? one : many);
}

std::string stitches(std::uint64_t count) { return some(count, "stitch", "stitches"); }

/// Whether the round is one that was tallied, not one that goes on with its stated count.
bool is_tallied(const Round& round) { return round.worked || round.tallies > 0; }

std::string what_it_has(const Fabric& fabric, const pattern::Stated& stated, std::uint32_t count,
                        std::string_view language) {
  using pattern::Unit;
  switch (stated.unit) {
  case Unit::spaces:
    return " has " + some(count, "chain space", "chain spaces");
  case Unit::chains:
    return " has " + some(count, "chain", "chains");
  case Unit::kind:
    if (stated.kind < fabric.kinds.size())
      return " has " + std::to_string(count) + " " +
             pattern::spoken(fabric.kinds[stated.kind].name, language);
    break;
  case Unit::group:
    if (stated.kind > 0 && stated.kind <= fabric.group_names.size())
      return " has " + std::to_string(count) + " " + fabric.group_names[stated.kind - 1U] +
             (count == 1 ? "" : "s");
    break;
  case Unit::any:
  case Unit::stitches:
    break;
  }
  return " makes " + stitches(count);
}

bool is_part_of(const Fabric& fabric, std::uint32_t a, std::uint32_t b) {
  return b < fabric.rounds.size() && fabric.rounds[a].part == fabric.rounds[b].part;
}

/// The checks of one fabric, one after the other.
class Checking {
public:
  Checking(const Tree& tree, const Fabric& fabric) : tree_(tree), fabric_(fabric), needs_(needs_of(tree)) {}

  Findings check() {
    check_kinds();
    for (std::uint32_t round = 0; round < fabric_.rounds.size(); ++round) check_round(round);
    for (std::uint32_t part = 0; part < tree_.parts.size(); ++part) check_numbers(part);
    for (Finding& loops : check_loops(tree_, fabric_)) findings_.push_back(std::move(loops));
    for (const pattern::Placing& placing : tree_.placings) check_placing(placing);
    for (Finding& said : check_techniques(tree_, fabric_)) findings_.push_back(std::move(said));
    return std::move(findings_);
  }

private:
  void check_kinds() {
    for (const stitch::StitchKind& kind : fabric_.kinds)
      if (kind.own) check_kind(kind);
  }

  void check_kind(const stitch::StitchKind& kind) {
    const auto moves = stitch::parse_moves(kind.moves);
    const auto loops = moves ? stitch::loops_at_end(*moves) : std::nullopt;
    if (loops == 1) return;
    const std::string trouble =
        !loops ? " pulls through more loops than there are on the hook"
               : " leaves " + std::to_string(*loops) + " loops on the hook: it has to come down to one";
    findings_.push_back(finding(Severity::error, "hook", {}, "\"" + kind.name + "\"" + trouble));
  }

  /// A line that gives several rounds is told once of each kind of slip; trouble that was told while the
  /// round was worked explains its count, and a count that is not met the stitches left over.
  void check_round(std::uint32_t index) {
    const Round& round = fabric_.rounds[index];
    if (round.text >= tree_.rounds.size()) return;
    const RoundText& text = tree_.rounds[round.text];
    if (is_tallied(round) && !round.told && count_said_ != round.text) check_counts(round, text, index);
    if (left_said_ == round.text) return;
    const std::string left = what_is_left(round, index);
    if (left.empty()) return;
    left_said_ = round.text;
    const bool whole = text.body == pattern::no_node || tree_.nodes[text.body].span.empty();
    findings_.push_back(finding(Severity::warning, "left-over",
                                whole ? text.span : tree_.nodes[text.body].span, name_of(round) + left));
    findings_.back().mend = mend_of(round.text, round_before(index));
  }

  void check_counts(const Round& round, const RoundText& text, std::uint32_t index) {
    for (const pattern::Stated& stated : text.stated) {
      const std::uint32_t count = counted_as(fabric_, round, stated);
      if (count == stated.count || falls_short_alike(round, stated, count, index)) continue;
      const std::string left = left_said_ == round.text ? "" : what_is_left(round, index);
      count_said_ = round.text;
      if (!left.empty()) left_said_ = round.text;
      findings_.push_back(finding(Severity::error, "count", stated.span,
                                  name_of(round) + what_it_has(fabric_, stated, count, tree_.language) +
                                      (left.empty() ? "" : " and" + left) + ", the pattern says " +
                                      std::to_string(stated.count) +
                                      if_counted(fabric_, round, stated, count)));
      findings_.back().mend = mend_of(round.text, round_before(index));
    }
  }

  /// A round that would meet its count, had the one before what the text says of it, has no slip of its own;
  /// nor has one worked to the end that is as far out as that.
  bool falls_short_alike(const Round& round, const pattern::Stated& stated, std::uint32_t count,
                         std::uint32_t index) const {
    const Round* before = round_before(index);
    if (before == nullptr || !is_miscounted(*before)) return false;
    if (agrees_with(tree_, round.text, before->stated)) return true;
    return needs_[round.text].to_end &&
           before->stated - before->counted == static_cast<std::int64_t>(stated.count) - count;
  }

  /// " leaves 4 of the 24 stitches of round 1 unworked"; "" where nothing is left over.
  std::string what_is_left(const Round& round, std::uint32_t index) const {
    const Round* before = round_before(index);
    const std::uint32_t left = still_left(round, index);
    if (left == 0 || is_all_slips(round)) return {};
    const std::string some = " leaves " + std::to_string(left) + " of the ";
    if (round.joined_open > 0) return some + stitches(round.joined_open) + " open to it unworked";
    if (before == nullptr) return {};
    if (is_miscounted(*before) && comes_out(tree_, round.text, before->stated)) return {};
    return some + stitches(before->makes) + " of " + name_of(*before) + " unworked";
  }

  /// Stitches left over that no later round is worked into.
  std::uint32_t still_left(const Round& round, std::uint32_t index) const {
    if (round.left_over == 0) return 0;
    const auto first =
        std::lower_bound(fabric_.unworked.begin(), fabric_.unworked.end(), index,
                         [](const Unworked& left, std::uint32_t at) { return left.round < at; });
    std::uint32_t later = 0;
    for (auto left = first; left != fabric_.unworked.end() && left->round == index; ++left)
      if (!left->on_purpose && left->place.of < fabric_.taken.size())
        later += fabric_.taken[left->place.of] != stitch::no_loop ? 1 : 0;
    return round.left_over - std::min(round.left_over, later);
  }

  /// The smallest change that the reader found, else the one number that mends the counts.
  std::string mend_of(std::uint32_t text, const Round* before) const {
    const std::string& found = tree_.rounds[text].mend;
    if (!found.empty() || before == nullptr || is_miscounted(*before)) return found;
    return mend(tree_, needs_, text, before->makes);
  }

  /// The round whose stitches this one is worked into.
  const Round* round_before(std::uint32_t index) const {
    if (index == 0 || !is_part_of(fabric_, index, index - 1)) return nullptr;
    return &fabric_.rounds[index - 1];
  }

  /// A few slip stitches at the end of a piece are no round that has to go all the way.
  bool is_all_slips(const Round& round) const {
    return round.tallies == 1 && is_slip(fabric_.kinds[fabric_.tallies[round.first_tally].kind]);
  }

  void check_numbers(std::uint32_t part) {
    const std::uint32_t first = tree_.parts[part].first_round;
    for (std::uint32_t i = first + 1; i < pattern::end_round(tree_, part); ++i)
      check_number(tree_.rounds[i - 1], tree_.rounds[i]);
  }

  void check_number(const RoundText& before, const RoundText& text) {
    if (text.to < text.from)
      findings_.push_back(finding(Severity::warning, "number", text.label_span,
                                  "this range runs backwards: from " + std::to_string(text.from) + " to " +
                                      std::to_string(text.to)));
    const int last = std::max(before.from, before.to);
    const bool counts_on = text.from == last + 1 || before.label.empty(); // that has no number
    if (counts_on || last == 0 || text.from == 0 || is_lettered(text)) return;
    const std::string number = std::to_string(text.from);
    const std::string after = number + " stands after " + std::to_string(last);
    findings_.push_back(finding(Severity::warning, "number", text.label_span,
                                text.from == last      ? "number " + number + " stands twice"
                                : text.from > last + 1 ? after + ": " + missing(last + 1, text.from - 1)
                                                       : after + ": the numbers do not follow on"));
  }

  static std::string missing(int from, int to) {
    if (from == to) return std::to_string(from) + " is missing";
    return std::to_string(from) + " to " + std::to_string(to) + " are missing";
  }

  /// A letter behind the number ("41b") says that it stands again on purpose.
  static bool is_lettered(const RoundText& text) {
    const auto is_digit = [](char c) { return c >= '0' && c <= '9'; };
    const auto digit = std::find_if(text.label.rbegin(), text.label.rend(), is_digit);
    if (digit == text.label.rend() || digit == text.label.rbegin()) return false;
    const char next = *(digit - 1);
    return (next >= 'a' && next <= 'z') || (next >= 'A' && next <= 'Z');
  }

  void check_placing(const pattern::Placing& placing) {
    if (placing.from == 0 || placing.what == What::note || placing.part >= fabric_.parts.size()) return;
    // "Sew between rounds 3 and 4": a part that is sewn on may name the rounds of what it is sewn to.
    const bool other = placing.sewn != pattern::no_node && placing.sewn != placing.part;
    if (placing.what == What::sew && (!other || tree_.parts.size() == 1)) return;
    const Part& part = fabric_.parts[placing.part];
    for (int number : {placing.from, placing.to})
      if (number > 0 && !has_round(part, number)) return say_missing(placing, part, number);
  }

  bool has_round(const Part& part, int number) const {
    const auto first = fabric_.rounds.begin() + part.first_round;
    return std::any_of(first, first + part.rounds + part.counted_only,
                       [number](const Round& round) { return round.number == number; });
  }

  void say_missing(const pattern::Placing& placing, const Part& part, int number) {
    const std::string name = part.name.empty() ? "the piece" : part.name;
    findings_.push_back(
        finding(Severity::error, "placing", placing.span,
                "there is no round " + std::to_string(number) + " in " + name + last_round(part)));
  }

  std::string last_round(const Part& part) const {
    const std::uint32_t rounds = part.rounds + part.counted_only;
    if (rounds == 0) return {};
    return ": its last is " + name_of(fabric_.rounds[part.first_round + rounds - 1]);
  }

  const Tree& tree_;
  const Fabric& fabric_;
  std::vector<Need> needs_;
  Findings findings_;
  std::uint32_t count_said_ = none;
  std::uint32_t left_said_ = none;
};

} // namespace

Findings check(const Tree& tree, const Fabric& fabric) { return Checking(tree, fabric).check(); }

} // namespace whorl::fabric
