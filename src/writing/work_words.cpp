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
      : tree_(tree), tongue_(tongue), plain_(plainness == Plainness::places) {}

  Words words(const Work& work) const {
    switch (work.act) {
    case Act::stitch:
      return stitch(work);
    case Act::skip:
      return work.to_end ? std::nullopt : tongue_.row("skip", {digits(work.times), {}, {}, {}});
    case Act::ring:
      return tongue_.word("ring");
    case Act::join:
      return tongue_.row("join", {});
    case Act::turn:
      return tongue_.row("turn", {});
    case Act::other_side:
      return tongue_.word("other side");
    default:
      return std::nullopt; // edges of other rounds and parts are told in sentences
    }
  }

private:
  const std::string& kind_of(const Work& work) const { return tree_.kinds[work.kind].name; }

  Words around_post(const Work& work, const char* post) const { return tongue_.word(post + kind_of(work)); }

  /// "sc", "dec", "hdc2tog", "FPdc".
  Words name(const Work& work) const {
    if (work.into == Into::front_post) return around_post(work, "fp");
    if (work.into == Into::back_post) return around_post(work, "bp");
    if (work.into != Into::loops) return std::nullopt;
    const auto together = together_of(kind_of(work));
    if (!together) return tongue_.stitch(tree_, work.kind);
    if (kind_of(work) == "sc2tog" && !plain_) return tongue_.word("dec");
    const auto base = stitch::find_kind(tree_.kinds, together->base);
    const Words of = base ? tongue_.stitch(tree_, *base) : std::nullopt;
    return of ? tongue_.row("together", {together->number, *of, {}, {}}) : std::nullopt;
  }

  /// Whether "inc" says it.
  bool is_increase(const Work& work) const {
    return work.in_one == 2 && !plain_ && kind_of(work) == "sc" && work.into == Into::loops;
  }

  Words counted(std::uint64_t count, const std::string& name) const {
    return tongue_.row("count-work", {digits(count), name, {}, {}});
  }

  Words to_end(const Work& work, const std::string& name) const {
    Words what = work.in_one > 1 && !is_increase(work) ? counted(work.in_one, name) : Words{name};
    if (!what) return what;
    if (work.leave > 0) return tongue_.row("to-last", {digits(work.leave), *what, {}, {}});
    const bool several = work.in_one > 1 && !is_increase(work);
    return tongue_.row(plain_ || several ? "all-round" : "around", {{}, *what, {}, {}});
  }

  /// "inc", "(2 hdc in next st) x 3", "4 sc".
  Words into_next(const Work& work, const std::string& name) const {
    if (work.to_end) return to_end(work, name);
    if (work.in_one == 1 || is_increase(work))
      return work.times == 1 ? Words{name} : counted(work.times, name);
    Words one = tongue_.row("one-place", {digits(work.in_one), name, {}, {}});
    if (!one || work.times == 1) return one;
    return tongue_.row("group-times", {digits(work.times), {}, *one, {}});
  }

  Words placed(const Work& work, const std::string& name) const {
    if (work.where == Where::next) return into_next(work, name);
    if (work.where == Where::ring && work.in_one == 1 && !work.to_end)
      return tongue_.row("in-ring", {digits(work.times), name, {}, {}});
    if (work.where == Where::chain && work.nth == 2 && work.times == 1)
      return tongue_.row("in-chain", {digits(work.in_one), name, {}, {}});
    return std::nullopt;
  }

  Words stitch(const Work& work) const {
    if (work.kind >= tree_.kinds.size() || work.counts || work.as_high || work.in_space != 0 ||
        work.in_corner != 0)
      return std::nullopt;
    if (kind_of(work) == "ch" && work.in_one == 1 && work.where == Where::next && !work.to_end)
      if (Words chain = tongue_.row("starting-chain", {digits(work.times), {}, {}, {}})) return chain;
    const Words called = is_increase(work) ? tongue_.word("increase") : name(work);
    Words text = called ? placed(work, *called) : std::nullopt;
    if (!text || work.loops == 0 || work.loops == stitch::both) return text;
    const Words loops = tongue_.word(loops_concept(work.loops));
    return loops ? Words{*loops + (tongue_.words().blanks_between_words ? " " : "") + *text} : std::nullopt;
  }

  const Tree& tree_;
  const Tongue& tongue_;
  bool plain_;
};

} // namespace

std::optional<std::string> work_in_words(const Tree& tree, const Work& work, const Tongue& tongue,
                                         Plainness plainness) {
  return WorkWords(tree, tongue, plainness).words(work);
}

} // namespace whorl::writing
