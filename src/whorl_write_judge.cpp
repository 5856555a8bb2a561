#include "whorl_write.hpp"

#include "fabric/same_work.hpp"
#include "writing/step.hpp"

#include <algorithm>

namespace whorl {
namespace {

using pattern::Placing;
using pattern::RoundText;
using pattern::What;

bool same_counts(const RoundText& a, const RoundText& b) {
  return std::equal(a.stated.begin(), a.stated.end(), b.stated.begin(), b.stated.end(),
                    [](const pattern::Stated& x, const pattern::Stated& y) { return x.count == y.count; });
}

bool same_label(const RoundText& a, const RoundText& b) {
  return a.from == b.from && a.to == b.to && a.again == b.again && a.read == b.read;
}

/// What is said before the first round of a part of how its owner is held.
bool same_hold(const pattern::Tree& a, std::uint32_t x, const pattern::Tree& b, std::uint32_t y) {
  const pattern::Part &one = a.parts[a.rounds[x].part], &other = b.parts[b.rounds[y].part];
  return one.first_round != x || other.first_round != y || one.hold == other.hold;
}

/// The steps with the yarns numbered as they come in the line.
std::vector<writing::Step> own_steps(const pattern::Tree& tree, const RoundText& round) {
  std::vector<writing::Step> steps = writing::steps_of(tree, round.body);
  std::vector<std::uint8_t> yarns;
  for (writing::Step& step : steps) {
    step.work.named = stitch::no_kind; // another word for any stitch
    if (step.work.yarn == 0) continue;
    const auto known = std::find(yarns.begin(), yarns.end(), step.work.yarn);
    const auto number = static_cast<std::uint8_t>(known - yarns.begin() + 1);
    if (known == yarns.end()) yarns.push_back(step.work.yarn);
    step.work.yarn = number;
  }
  return steps;
}

/// Whether two lines say the same by themselves, whatever the rounds before them left open.
bool same_steps(const pattern::Tree& a, const RoundText& x, const pattern::Tree& b, const RoundText& y) {
  return same_label(x, y) && same_counts(x, y) && x.effect == y.effect && own_steps(a, x) == own_steps(b, y);
}

bool same_sentence(const Placing& a, const Placing& b) {
  return a.what == b.what && a.from == b.from && a.to == b.to && a.apart == b.apart && a.across == b.across &&
         a.after == b.after && a.between == b.between && a.behind == b.behind && a.gather == b.gather &&
         a.loops == b.loops && a.attaches == b.attaches && (a.yarn == 0) == (b.yarn == 0) &&
         (a.sewn == pattern::no_node) == (b.sewn == pattern::no_node);
}

/// The same where it stands, too.
bool same_thing(const Placing& a, const Placing& b) {
  return same_sentence(a, b) && a.part == b.part && a.after_round == b.after_round && a.sewn == b.sewn &&
         a.yarn == b.yarn;
}

/// Of these, the ones that place something.
std::vector<std::uint32_t> things_of(const pattern::Tree& tree, const std::vector<std::uint32_t>& placings) {
  std::vector<std::uint32_t> things;
  for (const std::uint32_t placing : placings)
    if (tree.placings[placing].what != What::note) things.push_back(placing);
  return things;
}

bool has_own(const std::vector<stitch::StitchKind>& kinds, const stitch::StitchKind& wanted) {
  return std::any_of(kinds.begin(), kinds.end(), [&wanted](const stitch::StitchKind& kind) {
    return kind.name == wanted.name && kind.moves == wanted.moves && kind.takes == wanted.takes &&
           kind.makes == wanted.makes;
  });
}

/// Made as a stitch that every language knows: a round that has it is compared for itself.
bool is_usual(const stitch::StitchKind& kind) {
  const std::vector<stitch::StitchKind>& usual = stitch::standard_kinds();
  return std::any_of(usual.begin(), usual.end(), [&kind](const stitch::StitchKind& one) {
    return one.moves == kind.moves && one.takes == kind.takes && one.makes == kind.makes;
  });
}

} // namespace

Judge::Judge(const Pattern::Content& pattern, const ReadWork& read, const std::vector<Draft>& drafts)
    : pattern_(pattern), read_(read), drafts_(drafts), rounds_(drafts.size()), placings_(drafts.size()),
      parts_(drafts.size()) {
  const auto put = [&drafts](pattern::Span span, std::vector<std::vector<std::uint32_t>>& lists,
                             std::uint32_t number) {
    for (std::size_t i = 0; i < drafts.size(); ++i)
      if (drafts[i].out.begin <= span.begin && span.begin < drafts[i].out.end)
        return lists[i].push_back(number);
  };
  for (std::uint32_t i = 0; i < read.tree.rounds.size(); ++i)
    put(words::cover(read.tree.rounds[i].label_span, read.tree.rounds[i].span), rounds_, i);
  for (std::uint32_t i = 0; i < read.tree.placings.size(); ++i) put(read.tree.placings[i].span, placings_, i);
  for (std::uint32_t i = 0; i < read.tree.parts.size(); ++i)
    if (!read.tree.parts[i].name.empty()) put(read.tree.parts[i].span, parts_, i);
}

bool Judge::same_rounds(std::size_t draft, bool strictly) const {
  const std::vector<std::uint32_t>&typed = drafts_[draft].passage.rounds, &read = rounds_[draft];
  if (typed.size() != read.size()) return false;
  const bool translated = drafts_[draft].filled && drafts_[draft].chosen == 0;
  if (drafts_[draft].unread && translated) return same_labels(typed, read);
  for (std::size_t i = 0; i < typed.size(); ++i) {
    const RoundText &one = pattern_.tree.rounds[typed[i]], &other = read_.tree.rounds[read[i]];
    const bool label = same_label(one, other) && same_counts(one, other) &&
                       same_hold(pattern_.tree, typed[i], read_.tree, read[i]);
    const bool fabric = label && fabric::same_entry(pattern_.fabric, typed[i], read_.fabric, read[i]).empty();
    if (fabric || (!strictly && same_steps(pattern_.tree, one, read_.tree, other))) continue;
    return false;
  }
  return true;
}

/// Of a line that only its translator understood.
bool Judge::same_labels(const std::vector<std::uint32_t>& typed,
                        const std::vector<std::uint32_t>& read) const {
  for (std::size_t i = 0; i < typed.size(); ++i) {
    const RoundText &one = pattern_.tree.rounds[typed[i]], &other = read_.tree.rounds[read[i]];
    if (one.from != other.from || one.to != other.to || !same_counts(one, other)) return false;
  }
  return true;
}

bool Judge::same_placings(std::size_t draft, bool strictly) const {
  const std::vector<std::uint32_t> typed = things_of(pattern_.tree, drafts_[draft].passage.placings);
  const std::vector<std::uint32_t> read = things_of(read_.tree, placings_[draft]);
  // A remark within a line of work stays in it.
  const bool remarks = drafts_[draft].passage.placings.size() > typed.size();
  const bool work = drafts_[draft].passage.sort == writing::Passage::Sort::round;
  if (work && remarks && placings_[draft].size() == read.size()) return false;
  return std::equal(typed.begin(), typed.end(), read.begin(), read.end(),
                    [&](std::uint32_t x, std::uint32_t y) {
                      const Placing &one = pattern_.tree.placings[x], &other = read_.tree.placings[y];
                      return strictly ? same_thing(one, other) : same_sentence(one, other);
                    });
}

bool Judge::same_heading(std::size_t draft) const {
  const bool heading = drafts_[draft].passage.sort == writing::Passage::Sort::heading;
  if (!heading) return parts_[draft].empty();
  if (parts_[draft].size() != 1) return false;
  const pattern::Part &one = pattern_.tree.parts[drafts_[draft].passage.part],
                      &other = read_.tree.parts[parts_[draft].front()];
  const bool translated = (drafts_[draft].filled && drafts_[draft].chosen == 0) ||
                          (drafts_[draft].renamed && drafts_[draft].chosen + 1 < drafts_[draft].forms.size());
  return (translated || one.name == other.name) && one.make == other.make;
}

bool Judge::same_list(std::size_t draft) const {
  using Sort = writing::Passage::Sort;
  const Sort sort = drafts_[draft].passage.sort;
  if (sort != Sort::list && sort != Sort::header) return true;
  const pattern::Span span = drafts_[draft].passage.span;
  const std::string_view text = pattern_.source.at(span);
  for (const stitch::StitchKind& kind : pattern_.tree.kinds)
    if (kind.own && !is_usual(kind) && text.find(kind.name) != std::string_view::npos &&
        !has_own(read_.tree.kinds, kind))
      return false;
  return true;
}

bool Judge::is_same(std::size_t draft, bool strictly) const {
  return same_rounds(draft, strictly) && same_placings(draft, strictly) && same_heading(draft) &&
         same_list(draft);
}

} // namespace whorl
