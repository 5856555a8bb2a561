#include "whorl_content.hpp"

#include "drawing/marks.hpp"
#include "drawing/step_strip.hpp"
#include "drawing/svg.hpp"

#include <algorithm>

namespace whorl {
namespace {

ChartOptions chart_options(const StepOptions& options) {
  ChartOptions chart;
  chart.parts = options.parts;
  chart.first_round = options.first_round;
  chart.last_round = options.last_round;
  return chart;
}

/// Every round by itself.
layout::Page page_of(const Steps::Content& steps, const drawing::Wording& wording) {
  layout::Page page;
  page.hand = steps.options.left_handed ? layout::Hand::left : layout::Hand::right;
  page.fold = false;
  put_words(page, wording);
  page.main_yarn = plain_yarn(*steps.pattern, wording_for(steps.pattern->tree.language));
  return page;
}

drawing::SheetOptions sheet_options(const StepOptions& options) {
  drawing::SheetOptions sheet;
  if (options.plus) sheet.style.single = drawing::Style::Single::plus;
  return sheet;
}

drawing::StepPage page_of(const Steps::Content& steps) {
  const StepOptions& options = steps.options;
  constexpr double longer = 192, shorter = 108;
  drawing::StepPage page;
  page.width = options.shape == StepShape::wide ? longer : shorter;
  page.height = options.shape == StepShape::tall ? longer : shorter;
  page.paper = !options.clear;
  page.picture = options.picture;
  page.words = options.words;
  page.figures = steps.figures;
  return page;
}

/// The steps of the rounds that are wanted; a part's start belongs to its first round.
void keep_wanted(const layout::Wanted& wanted, Steps::Content& steps) {
  const auto is_unwanted = [&](const drawing::Step& step) {
    const layout::Figure& figure = steps.placement.figures[step.figure];
    const std::uint32_t round =
        step.ring == fabric::none ? figure.first_round : figure.rings[step.ring].round;
    return !layout::is_wanted(wanted, steps.pattern->fabric.rounds[round]);
  };
  std::vector<drawing::Step> wanted_ones;
  steps.all = steps.steps.size();
  for (std::size_t i = 0; i < steps.all; ++i) {
    if (is_unwanted(steps.steps[i])) continue;
    wanted_ones.push_back(steps.steps[i]);
    steps.numbers.push_back(i + 1);
    if (steps.figures.empty() || steps.figures.back() != wanted_ones.back().figure)
      steps.figures.push_back(wanted_ones.back().figure);
  }
  steps.steps = std::move(wanted_ones);
}

/// What draws a step; `sheet` is held by the caller.
drawing::Copy copy_of(const Steps::Content& steps, const drawing::SheetOptions& sheet) {
  const Pattern::Content& pattern = *steps.pattern;
  return {pattern.tree, pattern.fabric, steps.placement, steps.text, wording_for(steps.text.language), sheet};
}

} // namespace

Steps Pattern::steps(const StepOptions& options) const {
  auto steps = std::make_shared<Steps::Content>();
  steps->pattern = content_;
  steps->options = options;
  const drawing::Wording& wording = wording_for(language_or(options.language, content_->tree));
  layout::Wanted wanted;
  steps->problem = find_wanted(content_->fabric, chart_options(options), wording, wanted);
  if (!steps->problem.empty()) return Steps(steps);
  const drawing::SheetOptions sheet = sheet_options(options);
  const auto extents = drawing::extents_of(content_->fabric, drawing::built_in_marks(), sheet.style);
  steps->placement = layout::place(content_->fabric, extents, page_of(*steps, wording));
  steps->text = sheet_text_of(*content_, wanted, language_or(options.language, content_->tree));
  steps->steps = drawing::steps_of(copy_of(*steps, sheet),
                                   options.each_stitch ? drawing::Pace::stitches : drawing::Pace::rounds);
  keep_wanted(wanted, *steps);
  return Steps(steps);
}

Steps::Steps(std::shared_ptr<const Content> content) : content_(std::move(content)) {}
const std::string& Steps::problem() const { return content_->problem; }
std::size_t Steps::count() const { return content_->steps.size(); }

std::string Steps::name(std::size_t step) const {
  const drawing::SheetOptions sheet = sheet_options(content_->options);
  const std::size_t digits = std::max<std::size_t>(2, std::to_string(content_->all).size());
  std::string number = std::to_string(content_->numbers[step]);
  number.insert(0, digits - std::min(digits, number.size()), '0');
  return number + "-" + drawing::step_id(copy_of(*content_, sheet), content_->steps[step]);
}

drawing::Scene Steps::scene(std::size_t step) const {
  const drawing::SheetOptions sheet = sheet_options(content_->options);
  return drawing::step_picture(copy_of(*content_, sheet), drawing::built_in_marks(), content_->steps[step],
                               page_of(*content_));
}

std::string Steps::svg(std::size_t step) const { return drawing::svg(scene(step)); }

drawing::Scene Steps::strip() const {
  std::vector<drawing::Scene> pictures;
  for (std::size_t i = 0; i < count(); ++i) pictures.push_back(scene(i));
  return drawing::strip_of(pictures);
}

std::string Steps::strip_svg() const { return drawing::svg(strip()); }

} // namespace whorl
