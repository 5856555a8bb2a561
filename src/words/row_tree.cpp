#include "words/vocabulary_table.hpp"

#include <algorithm>

namespace whorl::words {

namespace {

struct SlotName {
  std::string_view name;
  Slot slot;
  ConceptClass sort = ConceptClass::word;
};
constexpr SlotName slot_names[] = {
    {"count", Slot::count},
    {"many", Slot::many},
    {"few", Slot::few},
    {"nth", Slot::nth},
    {"leave", Slot::leave},
    {"of", Slot::of},
    {"again", Slot::again},
    {"group", Slot::group},
    {"square", Slot::square},
    {"stars", Slot::stars},
    {"passage", Slot::passage},
    {"list", Slot::list},
    {"name", Slot::name},
    {"sep", Slot::separator},
    {"colon", Slot::colon},
    {"hyphen", Slot::hyphen},
    {"open", Slot::open},
    {"close", Slot::close},
    {"star", Slot::star},
    {"work", Slot::work},
    {"place", Slot::place},
    {"stitch", Slot::concept_class, ConceptClass::stitch},
    {"decrease", Slot::concept_class, ConceptClass::decrease},
    {"loops", Slot::concept_class, ConceptClass::loops},
    {"start", Slot::concept_class, ConceptClass::start},
    {"thing", Slot::concept_class, ConceptClass::thing},
};

/// One element as a row writes it: `+a|b?`.
struct Choice {
  std::vector<Element> any_of;
  bool may_be_missing = false;
  bool known = true;
};

Element element_of(const Vocabulary& vocabulary, std::string_view name, bool glued) {
  for (const SlotName& entry : slot_names)
    if (entry.name == name) return {entry.slot, no_concept, entry.sort, glued};
  std::string wanted(name);
  std::replace(wanted.begin(), wanted.end(), '_', ' ');
  return {Slot::concept_named, find_concept(vocabulary, wanted), ConceptClass::word, glued};
}

bool is_known(const Element& element) {
  return element.slot != Slot::concept_named || element.means != no_concept;
}

Choice choice_of(const Vocabulary& vocabulary, std::string_view text) {
  Choice choice;
  const bool glued = text.front() == '+';
  if (glued) text.remove_prefix(1);
  choice.may_be_missing = !text.empty() && text.back() == '?';
  if (choice.may_be_missing) text.remove_suffix(1);
  for (std::size_t at = 0; at <= text.size();) {
    const std::size_t bar = std::min(text.find('|', at), text.size());
    choice.any_of.push_back(element_of(vocabulary, text.substr(at, bar - at), glued));
    choice.known = choice.known && is_known(choice.any_of.back());
    at = bar + 1;
  }
  return choice;
}

std::vector<Choice> choices_of(const Vocabulary& vocabulary, std::string_view pattern) {
  std::vector<Choice> choices;
  for (std::size_t at = 0; at < pattern.size();) {
    const std::size_t blank = std::min(pattern.find(' ', at), pattern.size());
    if (blank > at) choices.push_back(choice_of(vocabulary, pattern.substr(at, blank - at)));
    at = blank + 1;
  }
  return choices;
}

std::uint32_t step_below(RowTree& tree, std::uint32_t parent, const Element& element) {
  std::uint32_t last = no_step;
  for (std::uint32_t step = tree.steps[parent].child; step != no_step; step = tree.steps[step].sibling) {
    if (tree.steps[step].element == element) return step;
    last = step;
  }
  const auto made = static_cast<std::uint32_t>(tree.steps.size());
  tree.steps.push_back({element, no_step, no_step, no_step});
  (last == no_step ? tree.steps[parent].child : tree.steps[last].sibling) = made;
  return made;
}

/// Rows that end at the same step stay in the order of the file.
void put_end(RowTree& tree, std::uint32_t step, std::uint16_t row) {
  std::uint32_t* link = &tree.steps[step].end;
  for (; *link != no_step; link = &tree.ends[*link].next)
    if (tree.ends[*link].row == row) return;
  *link = static_cast<std::uint32_t>(tree.ends.size());
  tree.ends.push_back({row, no_step});
}

void grow(RowTree& tree, std::uint32_t step, const std::vector<Choice>& choices, std::size_t at,
          std::uint16_t row) {
  if (at == choices.size()) {
    if (step != 0) put_end(tree, step, row);
    return;
  }
  for (const Element& element : choices[at].any_of)
    grow(tree, step_below(tree, step, element), choices, at + 1, row);
  if (choices[at].may_be_missing) grow(tree, step, choices, at + 1, row);
}

} // namespace

RowTree grow_row_tree(const Vocabulary& vocabulary) {
  RowTree tree;
  tree.steps.push_back({});
  for (std::size_t row = 0; row < vocabulary.rows.size(); ++row) {
    const auto choices = choices_of(vocabulary, vocabulary.rows[row].pattern);
    const bool known = std::all_of(choices.begin(), choices.end(), [](const Choice& c) { return c.known; });
    if (known) grow(tree, 0, choices, 0, static_cast<std::uint16_t>(row));
  }
  return tree;
}

bool is_row_known(const Vocabulary& vocabulary, std::string_view pattern) {
  const auto choices = choices_of(vocabulary, pattern);
  return !choices.empty() &&
         std::all_of(choices.begin(), choices.end(), [](const Choice& c) { return c.known; });
}

} // namespace whorl::words
