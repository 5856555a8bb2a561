#include "writing/telling.hpp"

#include "writing/name.hpp"
#include "writing/technique.hpp"

#include <algorithm>

namespace whorl::writing {
namespace {

using stitch::Act;
using stitch::Goes;
using stitch::Step;
using stitch::StitchKind;

constexpr int most_made = 50; ///< stitches in one place; more than that is told as one

std::string number_word(int number, const Say& say) {
  const std::string id = "number-" + std::to_string(number);
  return has_words(say, id) ? say(id, {}) : std::to_string(number);
}

// Words of one step.

const char* place_prefix(pattern::Into into) {
  switch (into) {
  case pattern::Into::loops:
    break;
  case pattern::Into::front_post:
    return "front-post-";
  case pattern::Into::back_post:
    return "back-post-";
  case pattern::Into::below:
    return "below-";
  case pattern::Into::both_layers:
    return "both-layers-";
  case pattern::Into::two_parts:
    return "two-parts-";
  }
  return "";
}

std::string insert_id(const Step& step, pattern::Into into) {
  if (step.goes == Goes::chain_made) return "move-insert-chain-made";
  if (step.goes == Goes::stitch_made) return "move-insert-stitch-made";
  if (step.goes == Goes::first_made) return "move-insert-first-made";
  return std::string("move-insert-") + place_prefix(into) + (step.goes == Goes::next ? "next" : "same");
}

/// The words of an id with this ending; without it where there are none.
std::string with_ending(const std::string& id, const std::string& ending, const Say& say) {
  return !ending.empty() && has_words(say, id + ending) ? id + ending : id;
}

std::string pull_words(const Step& step, int loops_before, const OtherMoves& others, const Say& say) {
  const int through = step.move.loops == 0 || step.move.act == Act::chain ? loops_before : step.move.loops;
  const std::string head =
      step.through_work ? with_ending("move-pull-work", others.yarn, say) : std::string("move-pull");
  if (through == 1) return say(head + (loops_before == 1 ? "-only" : "-one"), {});
  if (step.through_work || !step.all) return say(head, {std::to_string(through)});
  return say(head + (through == 2 ? "-both" : "-all"), {std::to_string(through)});
}

std::string wrap_words(int times, const Say& say) {
  if (times == 1) return say("move-yarn-over", {});
  if (times == 2) return say("move-yarn-over-twice", {});
  return say("move-yarn-over-times", {number_word(times, say)});
}

/// A repeat whose passes go anywhere says where; one of chains does not.
std::string repeat_words(const Step& step, bool goes_somewhere, const Say& say) {
  std::string id = step.first == step.last ? "move-repeat-one" : "move-repeat";
  if (goes_somewhere) id += step.goes == Goes::next ? "-next" : "-same";
  return say(id, {std::to_string(step.first), std::to_string(step.last),
                  say("times-more", {number_word(step.times, say)})});
}

std::string words_of(const Step& step, int loops_before, pattern::Into into, const OtherMoves& others,
                     const Say& say) {
  switch (step.move.act) {
  case Act::yarn_over:
    return wrap_words(step.times, say);
  case Act::insert:
    return say(with_ending(insert_id(step, into), others.hook, say), {});
  case Act::draw_up:
    return say(with_ending("move-draw-up", others.yarn, say), {});
  case Act::take_loop:
    return say(step.goes == Goes::next ? "move-take-next" : "move-take-same", {});
  case Act::pull_through:
    return pull_words(step, loops_before, others, say);
  case Act::chain:
    return say("move-pull-only", {});
  case Act::drop:
    return say("move-drop", {});
  case Act::pick_up:
    return say(step.through_work ? "move-pick-up-work" : "move-pick-up", {});
  }
  return "";
}

std::string loops_words(int loops, const Say& say) {
  if (loops == 0) return say("loops-none", {});
  if (loops == 1) return say("loops-one", {});
  return say("loops-many", {std::to_string(loops)});
}

std::string pass_words(const std::vector<int>& loops, const Say& say) {
  if (loops.size() == 1) return loops_words(loops.front(), say);
  const bool even =
      std::all_of(loops.begin(), loops.end(), [&loops](int other) { return other == loops.front(); });
  if (even && loops.front() == 1) return say("loops-each-one", {});
  if (even) return say("loops-each", {std::to_string(loops.front())});
  std::string list;
  for (const int number : loops) list += (list.empty() ? "" : ", ") + std::to_string(number);
  return say("loops-passes", {list});
}

// The stitch as it is worked into one place.

/// Several of a kind in one place are one row, worked again and again.
StitchKind whole_row(const StitchKind& kind, const Used& used) {
  StitchKind row = kind;
  const int times = std::min<int>(used.in_one, most_made);
  if (times > 1) row.moves = "(" + kind.moves + ")" + std::to_string(times);
  row.makes = kind.makes * times;
  if (used.into == pattern::Into::both_layers) row.takes = kind.takes * 2;
  return row;
}

bool goes_somewhere(const std::vector<Step>& steps, const Step& repeat) {
  for (std::size_t i = repeat.first; i <= repeat.last; ++i) {
    const stitch::Move& move = steps[i - 1].move;
    if ((move.act == Act::insert && !move.into_made) || move.act == Act::take_loop) return true;
  }
  return false;
}

/// The count is said where a move changes it, and at the end.
std::string sentence_of(const ToldMove& move, int loops_before, bool says_always, const Say& say) {
  if (!says_always && move.loops.back() == loops_before) return say("moves-step", {move.words});
  return say("moves-step-loops", {move.words, pass_words(move.loops, say)});
}

std::vector<ToldMove> tell_moves(const StitchKind& row, pattern::Into into, const OtherMoves& others,
                                 const Say& say) {
  const auto steps = stitch::steps_of(row);
  std::vector<ToldMove> told;
  int before = 1;
  for (const Step& step : steps.value_or(std::vector<Step>{})) {
    ToldMove move;
    move.number = static_cast<int>(told.size()) + 1;
    move.words = step.first > 0 ? repeat_words(step, goes_somewhere(*steps, step), say)
                                : words_of(step, before, into, others, say);
    move.loops = step.loops;
    move.hook = step.hook;
    const bool plain_insert = step.first == 0 && step.move.act == Act::insert;
    move.sentence = sentence_of(move, before, !plain_insert, say);
    before = step.loops.back();
    told.push_back(std::move(move));
  }
  return told;
}

// What follows from it.

std::string amount(int number, const Say& say) {
  if (number == 0) return say("amount-none", {});
  if (number == 1) return say("amount-one", {});
  return say("amount-many", {std::to_string(number)});
}

std::string by_number(const std::string& id, int number, const Say& say) {
  if (number == 0) return say(id + "-none", {});
  return number == 1 ? say(id + "-one", {}) : say(id + "-many", {std::to_string(number)});
}

std::string arithmetic(const ToldStitch& told, const Say& say) {
  if (told.takes == 0 && told.makes == 0) return say("makes-chain", {});
  if (!told.counts) return say("uncounted", {amount(told.takes, say)});
  return say("takes-makes", {amount(told.takes, say), amount(told.makes, say)});
}

void add_turning(std::vector<std::string>& facts, const stitch::Turning& turning, const Say& say) {
  static constexpr const char* counts[] = {"turning-counts-no", "turning-counts-differ",
                                           "turning-counts-yes"};
  facts.push_back(by_number("turning", turning.chains, say));
  if (turning.chains > 0) facts.push_back(say(counts[static_cast<int>(turning.counts)], {}));
  const std::string first = "first-chain-" + std::to_string(turning.first_chain);
  if (has_words(say, first)) facts.push_back(say(first, {}));
}

std::vector<std::string> facts_of(const ToldStitch& told, const Say& say) {
  std::vector<std::string> facts{arithmetic(told, say)};
  if (told.takes > 0) facts.push_back(by_number("height", told.height, say));
  if (told.turning) add_turning(facts, *told.turning, say);
  return facts;
}

} // namespace

ToldStitch tell(const Used& used, const pattern::Tree& tree, const words::Vocabulary& terms, const Say& say) {
  const StitchKind& kind = tree.kinds[used.kind];
  const StitchKind row = whole_row(kind, used);
  ToldStitch told;
  told.name = short_name(used, tree, terms, say);
  told.title = full_name(used, tree, say);
  told.takes = row.takes;
  told.makes = row.makes;
  told.height = stitch::shape_of(kind).height;
  told.counts = kind.counts;
  told.own = kind.own;
  if (used == Used{used.kind}) told.turning = stitch::turning_of(kind);
  told.facts = facts_of(told, say);
  if (std::string fact = technique_fact(used, tree, say); !fact.empty())
    told.facts.push_back(std::move(fact));
  told.moves = tell_moves(row, used.into, other_moves(used, tree), say);
  return told;
}

std::string as_text(const ToldStitch& stitch, const Say& say) {
  std::string text =
      stitch.title == stitch.name ? stitch.title : say("moves-heading", {stitch.title, stitch.name});
  text += "\n";
  for (const std::string& fact : stitch.facts) text += (&fact == &stitch.facts.front() ? "" : " ") + fact;
  text += "\n\n";
  if (stitch.moves.empty()) return text + "  " + say("moves-broken", {}) + "\n";
  for (const ToldMove& move : stitch.moves) {
    const std::string number = std::to_string(move.number) + ". ";
    text +=
        "  " + std::string(number.size() < 4 ? 4 - number.size() : 0, ' ') + number + move.sentence + "\n";
  }
  return text;
}

} // namespace whorl::writing
