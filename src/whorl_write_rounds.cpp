#include "whorl_write.hpp"

#include "pattern/hold.hpp"
#include "words/lattice.hpp"
#include "writing/begun_words.hpp"
#include "writing/instruction.hpp"
#include "writing/name.hpp"
#include "writing/placing_words.hpp"
#include "writing/said_wholly.hpp"
#include "writing/shortest.hpp"
#include "writing/word_for_word.hpp"

#include <algorithm>
#include <set>
#include <vector>

namespace whorl {
namespace {

using pattern::Placing;
using pattern::RoundText;
using writing::Passage;
using writing::Plainness;
using writing::Tongue;
using Words = std::optional<std::string>;

/// Words beside the work of a line; `whole`: none of them is in the first language.
struct Beside {
  std::string before, behind;
  bool whole = true;
};

class RoundForms {
public:
  RoundForms(Draft& draft, const Writing& writing, const Tongue& brief, const Tongue& full,
             const writing::Phrasebook& book)
      : draft_(draft), w_(writing), tree_(writing.pattern.tree), source_(writing.pattern.source),
        brief_(brief), full_(full), book_(book) {}

  void add() {
    const std::vector<std::uint32_t>& rounds = draft_.passage.rounds;
    const auto is_unread = [this](std::uint32_t round) { return !tree_.rounds[round].read; };
    draft_.unread = std::any_of(rounds.begin(), rounds.end(), is_unread);
    if (draft_.unread) return;
    if (rounds.size() == 1) {
      const RoundText& round = tree_.rounds[rounds.front()];
      if (round.body != pattern::no_node) {
        add_instructions(round, beside(round, false));
        if (!draft_.passage.placings.empty()) add_instructions(round, beside(round, true));
      }
      add_label_and_words(round);
    }
    add_word_for_word("", source_.at(draft_.passage.span));
  }

private:
  static std::uint32_t begin_of(const RoundText& round) {
    return words::cover(round.label_span, round.span).begin;
  }

  std::string word_for_word(std::string_view text) const {
    return writing::word_for_word(text, w_.from, brief_).text;
  }

  void add_word_for_word(const std::string& head, std::string_view text) {
    const writing::WordForWord words = writing::word_for_word(text, w_.from, brief_);
    // Word for word it is read, but nobody writes so: a translator has to look at it.
    draft_.add(head + words.text, words.whole && w_.same_language);
  }

  std::string_view stop() const { return brief_.words().blanks_between_words ? "." : "\xE3\x80\x82"; }

  /// What is said in a line besides its work: sentences of the language; a remark stays as its author has it,
  /// in brackets if asked.
  Beside beside(const RoundText& round, bool in_brackets) const {
    Beside all;
    for (const std::uint32_t number : draft_.passage.placings) {
      const Placing& placing = tree_.placings[number];
      const bool head = placing.span.end <= begin_of(round);
      if (head) continue;
      const std::string typed(source_.at(placing.span));
      if (is_said_of_chain(placing, typed)) continue;
      const std::string words = said_beside(placing, typed, in_brackets, all);
      const bool before = placing.what == pattern::What::change && placing.span.begin < body_of(round);
      (before ? all.before : all.behind) += before ? words + " " : " " + words;
    }
    if (round.stated.empty() && !all.behind.empty()) all.behind = std::string(stop()) + all.behind;
    return all;
  }

  /// "(counts as dc)", which the chain itself says where the language has words for it.
  bool is_said_of_chain(const Placing& placing, std::string_view typed) const {
    if (placing.what != pattern::What::note || w_.same_language ||
        !writing::has_words(w_.say, "say-counting-chain"))
      return false;
    return says(typed, "counted") || says(typed, "not counted");
  }

  bool says(std::string_view typed, std::string_view concept_name) const {
    const words::Folded folded = words::fold(typed);
    const words::Lattice lattice = words::lattice(folded, w_.from);
    return std::any_of(lattice.words.begin(), lattice.words.end(), [&](const words::Word& word) {
      return word.kind == words::WordKind::phrase && word.means < w_.from.concepts.size() &&
             w_.from.concepts[word.means].name == concept_name;
    });
  }

  /// The chains behind which the line says that they do not count.
  std::set<pattern::NodeId> not_counting(const RoundText& round) const {
    std::set<pattern::NodeId> chains;
    for (const std::uint32_t number : draft_.passage.placings) {
      const Placing& placing = tree_.placings[number];
      if (!is_said_of_chain(placing, source_.at(placing.span)) ||
          !says(source_.at(placing.span), "not counted"))
        continue;
      const pattern::NodeId chain = chain_before(round, placing.span.begin);
      if (chain != pattern::no_node) chains.insert(chain);
    }
    return chains;
  }

  /// The chains that stand directly before a place of a line.
  pattern::NodeId chain_before(const RoundText& round, std::uint32_t place) const {
    pattern::NodeId last = pattern::no_node;
    for (pattern::NodeId id = tree_.nodes[round.body].child; id < tree_.nodes.size();
         id = tree_.nodes[id].next)
      if (!tree_.nodes[id].span.empty() && tree_.nodes[id].span.end <= place) last = id;
    const bool chain = last < tree_.nodes.size() && tree_.nodes[last].kind == pattern::NodeKind::work &&
                       tree_.nodes[last].work.kind < tree_.kinds.size() &&
                       tree_.kinds[tree_.nodes[last].work.kind].name == "ch";
    return chain ? last : pattern::no_node;
  }

  /// One thing that is said beside the work: a sentence of the language, with the author's own words behind
  /// it where they say more.
  std::string said_beside(const Placing& placing, const std::string& typed, bool in_brackets,
                          Beside& all) const {
    if (const Words known = book_.text(typed)) return *known;
    const Words sentence = writing::placing_in_words(tree_, placing, brief_);
    if (sentence && writing::is_said_wholly(tree_, placing, typed, {w_.from, w_.from_say, false}, brief_))
      return *sentence;
    all.whole = all.whole && w_.same_language;
    if (sentence && !writing::may_be_a_name(placing) && !w_.same_language)
      return *sentence + " [" + typed + "]";
    return in_brackets ? "[" + typed + "]" : w_.same_language ? word_for_word(typed) : typed;
  }

  /// Remarks on what stands above a line.
  std::string remarks_above(const RoundText& round) const {
    std::string remarks;
    for (const std::uint32_t number : draft_.passage.placings) {
      const Placing& placing = tree_.placings[number];
      if (placing.span.end > begin_of(round) || placing.what != pattern::What::note) continue;
      if (!held(placing).empty()) continue;
      remarks += " [" + std::string(source_.at(placing.span)) + "]";
    }
    return remarks;
  }

  /// How another part is held, if that is what a remark says.
  std::string held(const Placing& placing) const {
    const bool holds =
        pattern::hold_said(source_.at(placing.span), w_.from) == tree_.parts[placing.part].hold;
    return holds ? writing::held_in_words(tree_, placing.part, brief_).value_or("") : std::string();
  }

  /// The same of what stands above a line, with a blank behind it.
  std::string held_above(const RoundText& round) const {
    for (const std::uint32_t number : draft_.passage.placings) {
      const Placing& placing = tree_.placings[number];
      if (placing.span.end > begin_of(round) || placing.what != pattern::What::note) continue;
      if (const std::string words = held(placing); !words.empty())
        return words + (brief_.words().blanks_between_words ? " " : "");
    }
    return {};
  }

  /// Where the work of a line begins.
  std::uint32_t body_of(const RoundText& round) const {
    const pattern::NodeId first = tree_.nodes[round.body].child;
    for (pattern::NodeId id = first; id < tree_.nodes.size(); id = tree_.nodes[id].next)
      if (!tree_.nodes[id].span.empty() && !writing::is_before(tree_.nodes[id], begin_of(round)))
        return tree_.nodes[id].span.begin;
    return round.span.begin;
  }

  /// A label, its work and its count, where the language has all of them.
  void add_line(const RoundText& round, const Words& work, const Tongue& tongue, const Beside& beside,
                Plainness plainness) {
    const Words count = writing::count_in_words(tree_, round, tongue, plainness);
    if (!work || !count) return;
    const std::string label = label_of(round, tongue);
    for (const Head& head : heads_of(round))
      draft_.add(head.text + label + (label.empty() || work->front() == '\n' ? "" : " ") + beside.before +
                     *work + (count->empty() ? "" : " ") + *count + beside.behind,
                 beside.whole && head.whole);
  }

  /// What stands above a line and belongs to its work: a starting chain.
  std::string_view above(const RoundText& round) const {
    const pattern::Span span = draft_.passage.span;
    return source_.at({span.begin, std::max(span.begin, begin_of(round))});
  }

  /// `whole`: it is not word for word, which nobody writes so.
  struct Head {
    std::string text;
    bool whole = true;
  };

  std::vector<Head> heads_of(const RoundText& round) const {
    const std::string_view text = above(round);
    const std::size_t blanks = text.find_last_not_of(" \t\r\n") + 1;
    if (blanks == 0) return {{}};
    const std::string gap(text.substr(blanks));
    std::vector<Head> heads;
    if (const Words words = writing::instruction_above(tree_, round.body, begin_of(round), brief_))
      heads.push_back({held_above(round) + writing::as_sentence(*words) + std::string(stop()) +
                           remarks_above(round) + gap,
                       true});
    heads.push_back({word_for_word(text.substr(0, blanks)) + gap, w_.same_language});
    return heads;
  }

  /// With its colon.
  std::string label_of(const RoundText& round, const Tongue& tongue) const {
    if (const Words label = writing::label_in_words(round, tongue)) return *label;
    std::string typed = round.label;
    while (!typed.empty() && std::string_view(" :").find(typed.back()) != std::string_view::npos)
      typed.pop_back();
    return typed.empty() ? typed : word_for_word(typed) + ":";
  }

  void add_instructions(const RoundText& round, const Beside& beside) {
    const std::uint32_t from = begin_of(round);
    const std::vector<writing::Step> steps = writing::steps_of(tree_, round.body, from);
    const std::set<pattern::NodeId> stars = typed_with_stars(round), chains = not_counting(round);
    const auto by_tree = [&](const Tongue& tongue, Plainness plainness) {
      if (!stars.empty())
        add_line(round,
                 writing::instruction(tree_, round.body, from, tongue, plainness, {&stars, nullptr, &chains}),
                 tongue, beside, plainness);
      const writing::Manner manner{nullptr, nullptr, &chains};
      add_line(round, writing::instruction(tree_, round.body, from, tongue, plainness, manner), tongue,
               beside, plainness);
    };
    if (w_.form == WriteForm::full) {
      add_lines(round, beside);
      by_tree(full_, Plainness::places);
      by_tree(full_, Plainness::usual);
    }
    if (w_.form == WriteForm::shortest)
      add_line(round, writing::shortest_instruction(tree_, steps, brief_), brief_, beside, Plainness::usual);
    if (round.kind == pattern::RoundKind::row && !w_.same_language) by_tree(brief_, Plainness::rows);
    by_tree(brief_, Plainness::usual);
    by_tree(brief_, Plainness::places);
    // What a line does to more than its own stitches is said in its author's words.
    for (const Plainness plainness : {Plainness::usual, Plainness::places})
      add_line(round, writing::instruction(tree_, steps, brief_, plainness), brief_, beside, plainness);
  }

  /// The repeats that their author wrote with stars.
  std::set<pattern::NodeId> typed_with_stars(const RoundText& round) const {
    std::set<pattern::NodeId> stars;
    std::vector<pattern::NodeId> waiting{round.body};
    while (!waiting.empty()) {
      const pattern::NodeId id = waiting.back();
      waiting.pop_back();
      if (id >= tree_.nodes.size()) continue;
      const pattern::Node& node = tree_.nodes[id];
      waiting.insert(waiting.end(), {node.next, node.child});
      if (node.kind != pattern::NodeKind::repeat || node.span.empty()) continue;
      const std::uint32_t before = std::max(node.span.begin, 1U) - 1;
      if (source_.at({before, node.span.begin + 1}).find('*') != std::string_view::npos) stars.insert(id);
    }
    return stars;
  }

  /// In full words, a step a line: how far the round has come behind each, the count behind the last.
  void add_lines(const RoundText& round, const Beside& beside) {
    const auto entry = static_cast<std::uint32_t>(&round - tree_.rounds.data());
    const writing::Running running = writing::running_of(tree_, w_.pattern.fabric, entry);
    Words work = writing::instruction(tree_, round.body, begin_of(round), full_, Plainness::places,
                                      {nullptr, &running, nullptr, !round.stated.empty()});
    if (!work || work->find('\n') == std::string::npos) return;
    add_line(round, "\n" + *work, full_, beside, Plainness::places);
  }

  /// The label as the language has it, all behind it word for word.
  void add_label_and_words(const RoundText& round) {
    const pattern::Span span = draft_.passage.span;
    const std::string label = heads_of(round).back().text + label_of(round, brief_);
    const std::uint32_t begin = std::max({span.begin, begin_of(round), round.label_span.end});
    std::string_view rest = source_.at({std::min(begin, span.end), span.end});
    while (!rest.empty() && std::string_view(" :.-)").find(rest.front()) != std::string_view::npos)
      rest.remove_prefix(1);
    add_word_for_word(label + (label.empty() ? "" : " "), rest);
  }

  Draft& draft_;
  const Writing& w_;
  const pattern::Tree& tree_;
  const pattern::Source& source_;
  const Tongue &brief_, &full_;
  const writing::Phrasebook& book_;
};

} // namespace

void add_round_forms(Draft& draft, const Writing& writing, const Tongue& brief, const Tongue& full,
                     const writing::Phrasebook& book) {
  RoundForms(draft, writing, brief, full, book).add();
}

} // namespace whorl
