#include "writing/instruction.hpp"

namespace whorl::writing {
namespace {

using pattern::Act;
using pattern::Into;
using pattern::Tree;
using pattern::Where;
using pattern::Work;
using Words = std::optional<std::string>;

std::string digits(std::uint64_t n) { return std::to_string(n); }

const char* loops_concept(std::uint8_t loops) {
  switch (loops) {
  case stitch::front:
    return "front loops";
  case stitch::back:
    return "back loops";
  case stitch::third:
    return "third loop";
  default:
    return "";
  }
}

/// One stitch and what it takes, in the words of a language.
class WorkWords {
public:
  WorkWords(const Tree& tree, const Tongue& tongue, Plainness plainness)
      : tree_(tree), tongue_(tongue), plain_(plainness == Plainness::places),
        rows_(plainness == Plainness::rows) {}

  Words words(const Work& work) const {
    switch (work.act) {
    case Act::stitch:
      return stitch(work);
    case Act::skip:
      return work.to_end ? tongue_.row("skip-rest", {})
                         : tongue_.row("skip", {digits(work.times), {}, {}, {}});
    case Act::ring:
      return tongue_.word("ring");
    case Act::join:
      return tongue_.row("join", {});
    case Act::turn:
      return tongue_.row("turn", {});
    case Act::other_side:
      return tongue_.row("other-side", {});
    case Act::start_here:
      return tongue_.word("move marker");
    case Act::travel:
      return work.times == 0 ? tongue_.row("travel-to-space", {})
                             : tongue_.row("travel", {digits(work.times), {}, {}, {}});
    default:
      return std::nullopt; // edges of other rounds and parts are told in sentences
    }
  }

private:
  const std::string& kind_of(const Work& work) const { return tree_.kinds[work.kind].name; }

  Words around_post(const Work& work, const char* post, const char* full) const {
    const Words stitch = tongue_.full() ? tongue_.stitch(tree_, work.kind, said_of(work)) : std::nullopt;
    const Words around = stitch ? tongue_.sentence(full, {*stitch}) : stitch;
    return around ? around : tongue_.word(post + kind_of(work));
  }

  /// So many of a stitch are named in one breath.
  static std::uint64_t said_of(const Work& work) {
    const std::uint64_t places = work.to_end || work.where == Where::next ? 1 : work.times;
    return work.in_one > 1 ? work.in_one * places : work.to_end ? 1 : work.times;
  }

  bool is_together(const Work& work) const { return together_of(kind_of(work)).has_value(); }

  /// "sc", "dec", "hdc2tog", "FPdc".
  Words name(const Work& work) const {
    if (work.into == Into::front_post) return around_post(work, "fp", "stitch-front-post");
    if (work.into == Into::back_post) return around_post(work, "bp", "stitch-back-post");
    const auto together = together_of(kind_of(work));
    if (const Words own = tongue_.own_name(kind_of(work)); own && together) return own;
    if (!together) return tongue_.stitch(tree_, work.kind, said_of(work));
    if (kind_of(work) == "sc2tog" && !plain_) return tongue_.word("dec");
    const auto base = stitch::find_kind(tree_.kinds, together->base);
    const Words of = base ? tongue_.stitch(tree_, *base) : std::nullopt;
    return of ? tongue_.row("together", {together->number, *of, {}, {}}) : std::nullopt;
  }

  /// Whether "inc" says it.
  bool is_increase(const Work& work) const {
    return work.in_one == 2 && !plain_ && kind_of(work) == "sc" && work.into == Into::loops;
  }

  /// "6V" of letters that are the pattern's own, as everybody types them.
  bool is_own_letter(const std::string& name) const {
    return name.size() == 1 && !(name.front() >= 'a' && name.front() <= 'z') && tongue_.has_own_names();
  }

  Words counted(std::uint64_t count, const std::string& name) const {
    if (is_own_letter(name)) return digits(count) + name;
    return tongue_.row("count-work", {digits(count), name, {}, {}});
  }

  Words to_end(const Work& work, const std::string& name) const {
    Words what = work.in_one > 1 && !is_increase(work) ? counted(work.in_one, name) : Words{name};
    if (!what) return what;
    if (work.leave > 0) return tongue_.row("to-last", {digits(work.leave), *what, {}, {}});
    const bool several = work.in_one > 1 && !is_increase(work);
    return tongue_.row(plain_ || rows_ || several ? "all-round" : "around", {{}, *what, {}, {}});
  }

  /// "4V", where the pattern calls so many of a stitch in one place V.
  Words of_one_place(const Work& work, const std::string& name) const {
    if (work.to_end && work.leave > 0) return tongue_.row("to-last", {digits(work.leave), name, {}, {}});
    if (work.to_end) return tongue_.row("around", {{}, name, {}, {}});
    return work.times == 1 ? Words{name} : counted(work.times, name);
  }

  /// "inc", "(2 hdc in next st) x 3", "4 sc".
  Words into_next(const Work& work, const std::string& name) const {
    const Words own = work.in_one > 1 ? tongue_.own_name(kind_of(work), work.in_one) : std::nullopt;
    if (own) return of_one_place(work, *own);
    if (work.to_end) return to_end(work, name);
    if (work.in_one == 1 && work.times > 1 && plain_ && tongue_.full() && is_together(work))
      return tongue_.row("group-times", {digits(work.times), {}, name, {}});
    if (work.in_one == 1 || is_increase(work))
      return work.times == 1 ? Words{name} : counted(work.times, name);
    Words one = tongue_.row("one-place", {digits(work.in_one), name, {}, {}});
    if (!one || work.times == 1) return one;
    return tongue_.row("group-times", {digits(work.times), {}, *one, {}});
  }

  /// Into a place that is named: "2 dc in last st", "3 dc in each ch-sp around".
  Words named_place(const Work& work, const std::string& name) const {
    const std::string all = digits(std::uint64_t{work.in_one} * work.times);
    switch (work.where) {
    case Where::same:
      return tongue_.row("in-same", {all, name, {}, {}});
    case Where::last:
      return work.times == 1 ? tongue_.row("in-last", {digits(work.in_one), name, {}, {}}) : std::nullopt;
    case Where::chain:
      return in_chain(work, name);
    case Where::space:
      return each("in-space", "all-spaces", work, name);
    case Where::between:
      return each("in-gap", "all-gaps", work, name);
    case Where::centre:
      return each("in-centre", "in-each-centre", work, name);
    case Where::any:
      return work.to_end ? tongue_.row("each-and-space", {digits(work.in_one), name, {}, {}}) : std::nullopt;
    case Where::any_chain:
      return work.to_end ? tongue_.row("each-and-chain", {digits(work.in_one), name, {}, {}}) : std::nullopt;
    default:
      return std::nullopt;
    }
  }

  /// The next place of a sort, or each of them.
  Words each(const char* next, const char* all, const Work& work, const std::string& name) const {
    if (work.to_end)
      return work.leave == 0 ? tongue_.row(all, {digits(work.in_one), name, {}, {}}) : std::nullopt;
    Words one = tongue_.row(next, {digits(work.in_one), name, {}, {}});
    if (!one || work.times == 1) return one;
    return tongue_.row("group-times", {digits(work.times), {}, *one, {}});
  }

  /// "2 sc in 3rd ch from hook"; where the language has a form of its own for that number, in that.
  Words in_chain(const Work& work, const std::string& name) const {
    if (work.times != 1) return std::nullopt;
    const Slots slots{digits(work.in_one), name, digits(work.nth), {}};
    if (work.nth == 2) return tongue_.row("in-chain", slots);
    const Words third =
        work.nth == 3 ? tongue_.sentence("say-in-third-chain", {slots.n, name, slots.list}) : std::nullopt;
    return third ? third : tongue_.row("in-ordinal-chain", slots);
  }

  /// Through more than a stitch, or lower down.
  Words through(const Work& work, const std::string& name) const {
    if (work.where != Where::next || work.in_one != 1) return std::nullopt;
    if (work.into == Into::both_layers)
      return work.to_end ? tongue_.row("through-layers", {{}, name, {}, {}})
                         : tongue_.row("count-in-loops", {digits(work.times), name, {}, {}});
    if (work.into != Into::below || work.to_end) return std::nullopt;
    Words one = tongue_.row("below", {digits(work.down), name, {}, {}});
    if (!one || work.times == 1) return one;
    return tongue_.row("group-times", {digits(work.times), {}, *one, {}});
  }

  Words placed(const Work& work, const std::string& name) const {
    if (work.into == Into::below || work.into == Into::both_layers) return through(work, name);
    if (work.where == Where::next) return into_next(work, name);
    if (work.where == Where::ring && work.in_one == 1 && !work.to_end)
      return tongue_.row("in-ring", {digits(work.times), name, {}, {}});
    return named_place(work, name);
  }

  Words stitch(const Work& work) const {
    if (work.kind >= tree_.kinds.size() || work.in_space != 0 || work.in_corner != 0) return std::nullopt;
    if (kind_of(work) == "ch" && work.in_one == 1 && work.where == Where::next && !work.to_end) {
      const std::string times = digits(work.times);
      if (const Words own = tongue_.own_name("ch"); own && !work.counts) return counted(work.times, *own);
      Words chain = work.counts              ? tongue_.sentence("say-counting-chain", {times})
                    : work.as_high && plain_ ? tongue_.sentence("say-high-chain", {times})
                                             : tongue_.row("starting-chain", {times, {}, {}, {}});
      if (chain) return chain;
    }
    if (work.counts && work.where != Where::chain) return std::nullopt;
    const Words called = is_increase(work) ? tongue_.word("increase") : name(work);
    Words text = called ? placed(work, *called) : std::nullopt;
    if (!text || work.loops == 0 || work.loops == stitch::both) return text;
    const Words loops = loops_in_words(work.loops, tongue_);
    return loops ? Words{*loops + (tongue_.words().blanks_between_words ? " " : "") + *text} : std::nullopt;
  }

  const Tree& tree_;
  const Tongue& tongue_;
  bool plain_, rows_;
};

} // namespace

std::optional<std::string> loops_in_words(std::uint8_t loops, const Tongue& tongue) {
  return tongue.word(loops_concept(loops));
}

std::optional<std::string> work_in_words(const Tree& tree, const Work& work, const Tongue& tongue,
                                         Plainness plainness) {
  return WorkWords(tree, tongue, plainness).words(work);
}

} // namespace whorl::writing
