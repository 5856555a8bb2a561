#include "writing/begun_words.hpp"
#include "writing/instruction.hpp"
#include "writing/instruction_parts.hpp"

namespace whorl::writing {
namespace {

using pattern::Act;
using pattern::Tree;
using pattern::Where;
using pattern::Work;

/// Steps in words, from one place to the closing that belongs to it.
class StepWords {
public:
  StepWords(const Tree& tree, const std::vector<Step>& steps, const Tongue& tongue, Plainness plainness)
      : tree_(tree), steps_(steps), tongue_(tongue), plainness_(plainness) {}

  Words list() {
    std::string text;
    std::uint8_t yarn = 0;
    for (; at_ < steps_.size() && steps_[at_].sort != Step::Sort::close; ++at_) {
      if (is_named_ring() || (steps_[at_].sort == Step::Sort::work && is_said_above(steps_[at_].work)))
        continue;
      const Act act = steps_[at_].sort == Step::Sort::work ? steps_[at_].work.act : Act::stitch;
      const std::uint8_t in_yarn =
          steps_[at_].sort == Step::Sort::work ? steps_[at_].work.yarn : std::uint8_t{0};
      const bool changes = in_yarn != 0 && in_yarn != yarn;
      if (changes) yarn = in_yarn;
      const Words with = changes ? with_yarn(tree_, yarn, tongue_) : Words{""}, words = one();
      if (!words || !with) return std::nullopt;
      text += (text.empty() ? std::string_view{} : tongue_.comma());
      text += in_yarn_said(*with, *words, act);
    }
    return text.empty() ? Words{} : Words{text};
  }

private:
  bool is_named_ring() const {
    return steps_[at_].sort == Step::Sort::work && steps_[at_].work.act == Act::ring &&
           at_ + 1 < steps_.size() && steps_[at_ + 1].work.where == Where::ring;
  }

  Words one() {
    const Step step = steps_[at_];
    if (step.sort == Step::Sort::unread || !step.group.empty()) return std::nullopt;
    Work work = step.work;
    if (step.sort == Step::Sort::work) {
      const auto kind = stitch::find_kind(tree_.kinds, step.kind);
      if (!step.kind.empty() && !kind) return std::nullopt;
      work.kind = kind.value_or(stitch::KindId{0});
      if (is_of_other(work)) return of_other(tree_, work, {step.round, step.number}, tongue_);
      return work_in_words(tree_, work, tongue_, plainness_);
    }
    ++at_;
    const Words inner = list();
    if (!inner) return inner;
    return step.sort == Step::Sort::open_repeat ? repeated(work, *inner, tongue_)
                                                : in_one_place(work, *inner, tongue_);
  }

  const Tree& tree_;
  const std::vector<Step>& steps_;
  const Tongue& tongue_;
  Plainness plainness_;
  std::size_t at_ = 0;
};

} // namespace

std::optional<std::string> instruction(const Tree& tree, const std::vector<Step>& steps, const Tongue& tongue,
                                       Plainness plainness) {
  return StepWords(tree, steps, tongue, plainness).list();
}

} // namespace whorl::writing
