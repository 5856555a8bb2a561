#include "layout/plan.hpp"

#include "layout/divide.hpp"
#include "layout/items.hpp"
#include "layout/lace.hpp"
#include "layout/oval.hpp"
#include "layout/strip_choice.hpp"
#include "layout/width.hpp"

#include <algorithm>
#include <string>

namespace whorl::layout {
namespace {

using fabric::Fabric;

constexpr double name_size = 0.95, note_size = 0.62;

Run line(const std::string& text, double size) { return {text, Face::italic, size, 0, 0}; }

Ring ring_of(const Fabric& fabric, const Fold& fold) {
  Ring ring;
  ring.round = fold.first;
  ring.last_round = fold.last;
  ring.against = runs_against(fabric.rounds[fold.first]);
  return ring;
}

Ring echo_of(const Fabric& fabric, std::uint32_t round) {
  Ring ring = ring_of(fabric, {round, round});
  ring.echo = true;
  return ring;
}

std::vector<Fold> unfolded(const std::vector<std::uint32_t>& rounds) {
  std::vector<Fold> folds;
  folds.reserve(rounds.size());
  for (const std::uint32_t round : rounds) folds.push_back({round, round});
  return folds;
}

/// What one part's discs are planned with.
class Planning {
public:
  Planning(const Fabric& fabric, std::uint32_t part, const Section& section, const Folding& folding,
           const Page& page)
      : fabric_(fabric), part_(fabric.parts[part]), number_(part), folding_(folding), page_(page),
        rounds_(section.rounds), begins_part_(section.before == fabric::none),
        kept_(kept_of(fabric, part_, folding.kept_loops())) {
    if (begins_part_) owner_ = owner_of(fabric, part);
    if (begins_part_ && !owner_) core_ = oval_core(fabric, part).chains();
    if (owner_) rounds_.insert(rounds_.begin(), owner_->round);
    widths_ = widths_of(fabric, rounds_);
    if (owner_) widths_.front() = width_of(static_cast<std::uint32_t>(owner_->kept.size()));
    stretches_ = divide(fabric, part, rounds_, widths_);
    if (page.strips && !is_turned())
      stretches_ = choose_strips(stretches_, tiers(), {begins_at_centre(), is_gathered(), core_});
    keep_lace_outward();
    if (page.strips) lay_closing_flat();
    keep_wanted();
    split_strips();
    to_the_end_ = !rounds_.empty() && rounds_.back() + 1 == part_.first_round + part_.rounds && part_.whole;
  }

  std::vector<Plan> plans(std::size_t figures) {
    std::vector<Plan> all;
    for (std::size_t i = 0; i < stretches_.size(); ++i) all.push_back(plan(i, figures + i));
    return all;
  }

private:
  /// Lace stands on its own places in a disc outward alone, so that goes on, but to a closing. A net, with
  /// one stitch in each small space, may be a strip.
  void keep_lace_outward() {
    std::vector<Stretch> kept;
    for (std::size_t i = 0; i < stretches_.size(); ++i) {
      Stretch stretch = stretches_[i];
      const bool closes = i + 1 == stretches_.size() && is_gathered();
      const bool opened = (stretch.inward && !closes && has_lace(stretch)) ||
                          (stretch.strip && has_lace(stretch) && !is_net(stretch));
      if (opened) stretch.inward = stretch.strip = false;
      const bool outward = !stretch.inward && !stretch.strip;
      const bool goes_on = !kept.empty() && !kept.back().inward && !kept.back().strip;
      if (outward && goes_on)
        kept.back().last = stretch.last;
      else
        kept.push_back(stretch);
    }
    stretches_ = std::move(kept);
  }

  /// A round that closes an edge laid flat lies on one half of it: a line of its own.
  void lay_closing_flat() {
    if (stretches_.empty() || stretches_.back().strip) return;
    Stretch& last = stretches_.back();
    if (!closes_flat(fabric_, rounds_[last.last])) return;
    const std::uint32_t closing = last.last;
    if (last.first == closing)
      stretches_.pop_back();
    else
      --last.last;
    if (!stretches_.empty() && stretches_.back().strip)
      stretches_.back().last = closing;
    else
      stretches_.push_back({closing, closing, false, true});
  }

  bool has_lace(const Stretch& stretch) const {
    const auto begin = rounds_.begin();
    return std::any_of(begin + stretch.first, begin + stretch.last + 1,
                       [this](std::uint32_t round) { return works_in_spaces(fabric_, round); });
  }

  bool is_net(const Stretch& stretch) const {
    const auto begin = rounds_.begin();
    return std::all_of(begin + stretch.first, begin + stretch.last + 1,
                       [this](std::uint32_t round) { return layout::is_net(fabric_, round); });
  }

  /// Cuts off what is not asked for; what is left begins with the round before it, as every figure does. An
  /// oval keeps what it goes round.
  void keep_wanted() {
    if (!leaves_rounds_out(page_.wanted)) return;
    const std::size_t own = owner_ ? 1 : 0;
    const auto begin = rounds_.begin() + static_cast<std::ptrdiff_t>(own);
    Places places = wanted_places(fabric_, {begin, rounds_.end()}, page_.wanted);
    std::vector<Stretch> kept;
    const auto first = static_cast<std::uint32_t>(places.first == 0 || core_ > 0 ? 0 : places.first + own);
    const auto last = static_cast<std::uint32_t>(places.last + own);
    for (Stretch stretch : stretches_) {
      stretch.first = std::max(stretch.first, first);
      stretch.last = std::min(stretch.last, last);
      if (!places.empty() && stretch.first <= stretch.last) kept.push_back(stretch);
    }
    stretches_ = std::move(kept);
    if (!rounds_.empty() && !places.empty()) rounds_.resize(last + 1);
  }

  /// A strip that is longer than a leaf goes on in further ones.
  void split_strips() {
    if (page_.leaf.lines == 0) return;
    if (page_.leaf.lines == 0 && page_.leaf.lines_turned == 0) return;
    const std::vector<Tier> all = tiers();
    std::vector<Stretch> split;
    for (const Stretch& stretch : stretches_) {
      std::vector<Tier> lines;
      std::uint32_t longest = 0;
      for (const Tier& tier : all) {
        if (tier.first < stretch.first || tier.last > stretch.last) continue;
        lines.push_back(tier);
        longest = std::max(longest, tier.count);
      }
      const std::size_t most = most_lines(page_.leaf, longest);
      const std::size_t strips = most < 2 || !stretch.strip ? 1 : (lines.size() + most - 1) / most;
      const std::size_t each = (lines.size() + strips - 1) / strips;
      for (std::size_t at = 0; at < lines.size(); at += each) {
        split.push_back(stretch);
        split.back().first = lines[at].first;
        split.back().last = lines[std::min(at + each, lines.size()) - 1].last;
      }
    }
    stretches_ = std::move(split);
  }

  Plan plan(std::size_t at, std::size_t figures) {
    Plan plan;
    plan.part = number_;
    plan.inward = stretches_[at].inward;
    plan.strip = stretches_[at].strip;
    plan.oval = stretches_[at].first == 0 && core_ > 0 && !plan.inward && !plan.strip;
    plan.rings = rings(stretches_[at]);
    plan.kept = kept_;
    if (begins_in_loops(stretches_[at])) plan.owner = owner_;
    if (plan.inward) std::reverse(plan.rings.begin(), plan.rings.end());
    set_centre(at, figures, plan);
    return plan;
  }

  bool begins_in_loops(const Stretch& stretch) const { return owner_.has_value() && stretch.first == 0; }

  Ring owner_ring() const {
    Ring ring = echo_of(fabric_, owner_->round);
    ring.owner = true;
    ring.against = owner_->against;
    return ring;
  }

  // What the choice of strips asks.

  bool begins_at_centre() const {
    return begins_part_ && (part_.start == fabric::Start::magic_ring ||
                            part_.start == fabric::Start::second_chain || core_ > 0);
  }

  /// The lines of a strip all run the same way.
  bool is_turned() const {
    return std::any_of(rounds_.begin(), rounds_.end(),
                       [this](std::uint32_t round) { return runs_against(fabric_.rounds[round]); });
  }

  bool is_gathered() const {
    return !rounds_.empty() && rounds_.back() + 1 == part_.first_round + part_.rounds &&
           part_.end == fabric::End::gathered;
  }

  /// The owner of a part begun in loops is a tier, though no ring of the part's own.
  std::vector<Tier> tiers() const {
    std::vector<Tier> all;
    all.reserve(rounds_.size());
    for (const Stretch& stretch : stretches_) {
      std::uint32_t at = stretch.first;
      const std::vector<std::uint32_t> own(rounds_.begin() + at, rounds_.begin() + stretch.last + 1);
      for (const Fold& fold : page_.fold ? folding_.fold(own) : unfolded(own)) {
        all.push_back(tier(fold, at));
        at = all.back().last + 1;
      }
    }
    return all;
  }

  Tier tier(const Fold& fold, std::uint32_t at) const {
    const fabric::Round& round = fabric_.rounds[fold.first];
    const std::uint32_t count = at == 0 && owner_ ? round.makes : stitches_wide(widths_[at]);
    Tier tier{at, at + fold.last - fold.first, count, Tier::ring_weight, false, false};
    if (fold.first != fold.last)
      tier.weight = Tier::folded_weight;
    else if (has_loops(fold.first))
      tier.weight = Tier::looped_weight;
    if (at > 0 || !(begins_at_centre() || owner_)) tier.even = is_even(at);
    tier.coloured = is_coloured(round);
    tier.owner = at == 0 && owner_.has_value();
    return tier;
  }

  /// As wide as the round before, lace but for an eighth; the first as the next.
  bool is_even(std::uint32_t at) const {
    const std::size_t beside = at > 0 ? at - 1 : std::min<std::size_t>(1, widths_.size() - 1);
    const Width &own = widths_[at], &other = widths_[beside];
    if (!is_lace(own) && !is_lace(other)) return own == other;
    const std::uint64_t one = own.least + own.greatest, two = other.least + other.greatest;
    return 8 * (std::max(one, two) - std::min(one, two)) <= std::max(one, two);
  }

  bool has_loops(std::uint32_t round) const {
    const fabric::StitchId first = fabric_.rounds[round].first_stitch;
    for (const Kept& kept : kept_)
      if (!kept.joined && kept.stitch >= first && kept.stitch < first + fabric_.rounds[round].count)
        return true;
    return has_loop_marks(fabric_, round);
  }

  bool is_coloured(const fabric::Round& round) const {
    for (std::uint32_t i = 1; i < round.count; ++i)
      if (fabric_.stitches[round.first_stitch + i].yarn != fabric_.stitches[round.first_stitch].yarn)
        return true;
    return false;
  }

  std::vector<Ring> rings(const Stretch& stretch) {
    const std::uint32_t first = stretch.first + (begins_in_loops(stretch) ? 1 : 0);
    const std::vector<std::uint32_t> own(rounds_.begin() + first, rounds_.begin() + stretch.last + 1);
    std::vector<Ring> all;
    if (begins_in_loops(stretch)) all.push_back(owner_ring());
    if (stretch.first > 0) all.push_back(echo_of(fabric_, rounds_[stretch.first - 1]));
    const bool lace = std::any_of(own.begin(), own.end(),
                                  [this](std::uint32_t round) { return works_in_spaces(fabric_, round); });
    if (shows_chain(stretch) && !lace) all.push_back(chain_ring());
    const bool folds = page_.fold && (stretch.inward || stretch.strip || !lace);
    for (const Fold& fold : folds ? folding_.fold(own) : unfolded(own)) {
      all.push_back(ring_of(fabric_, fold));
      all.back().ink = static_cast<std::uint8_t>(inked_++ % 2);
    }
    return all;
  }

  /// The chains that a wide part is begun with stand round its centre.
  bool shows_chain(const Stretch& stretch) const {
    const bool first = stretch.first == 0 && begins_part_ && !owner_;
    return first && !stretch.inward && !stretch.strip && part_.start == fabric::Start::chain_ring &&
           part_.foundation != fabric::none && !goes_into_chain_ring(fabric_, part_);
  }

  Ring chain_ring() const {
    Ring ring = ring_of(fabric_, {part_.foundation, part_.foundation});
    ring.chain = true;
    return ring;
  }

  void set_centre(std::size_t at, std::size_t figures, Plan& plan) const {
    const bool last = at + 1 == stretches_.size();
    plan.centre = Centre::nothing;
    if (plan.strip || plan.oval) return;
    plan.centre = Centre::open;
    if (!plan.inward && plan.owner)
      plan.centre_text = owner_text();
    else if (!plan.inward && at == 0 && !begins_part_)
      plan.centre_text = {line(fill_in(page_.neck_from, figures), note_size)};
    else if (!plan.inward && stretches_[at].first == 0 && !joined_parts(fabric_, rounds_.front()).empty())
      plan.centre_text = joined_text();
    else if (!plan.inward && stretches_[at].first == 0)
      plan.centre = first_centre();
    else if (!plan.inward && at == 0)
      return;
    else if (!plan.inward && stretches_[at - 1].strip)
      plan.centre_text = {line(fill_in(page_.neck_from, figures), note_size)};
    else if (!plan.inward)
      plan.centre_text = {line(page_.neck, name_size), line(fill_in(page_.neck_from, figures), note_size)};
    else if (!last && stretches_[at + 1].strip)
      plan.centre_text = {line(page_.neck_open, note_size)};
    else if (!last)
      plan.centre_text = {line(page_.neck, name_size), line(page_.neck_open, note_size)};
    else if (to_the_end_ && part_.end == fabric::End::gathered)
      plan.centre = Centre::gathered;
    else if (to_the_end_)
      plan.centre_text = {line(page_.neck_open, note_size)};
  }

  std::vector<Run> owner_text() const {
    Ring ring = ring_of(fabric_, {owner_->round, owner_->round});
    const std::string& name = fabric_.parts[fabric_.rounds[owner_->round].part].name;
    std::vector<Run> text{line(fill_in(page_.owner_round, number_of(fabric_, ring)), note_size)};
    if (!name.empty()) text.insert(text.begin(), line(name, name_size));
    return text;
  }

  std::vector<Run> joined_text() const {
    std::string names;
    for (const std::uint32_t part : joined_parts(fabric_, rounds_.front()))
      names += (names.empty() ? "" : " + ") + fabric_.parts[part].name;
    std::vector<Run> text{line(page_.joined_edges, note_size)};
    if (!names.empty()) text.insert(text.begin(), line(names, name_size));
    return text;
  }

  Centre first_centre() const {
    if (part_.start == fabric::Start::magic_ring) return Centre::magic_ring;
    if (goes_into_chain_ring(fabric_, part_)) return Centre::chain_ring;
    return part_.start == fabric::Start::second_chain ? Centre::second_chain : Centre::open;
  }

  const Fabric& fabric_;
  const fabric::Part& part_;
  std::uint32_t number_;
  const Folding& folding_;
  const Page& page_;
  std::vector<std::uint32_t> rounds_;
  bool begins_part_ = true;
  std::optional<Owner> owner_;
  std::vector<Kept> kept_;
  std::vector<Width> widths_; ///< of the rounds; of an owner that of its loops
  std::vector<Stretch> stretches_;
  std::uint32_t core_ = 0; ///< chains that an oval goes round
  bool to_the_end_ = false;
  std::uint32_t inked_ = 0;
};

} // namespace

std::vector<Plan> plan_section(const Fabric& fabric, std::uint32_t part, const Section& section,
                               const Folding& folding, const Page& page, std::size_t figures) {
  return Planning(fabric, part, section, folding, page).plans(figures);
}

} // namespace whorl::layout
