#include "pattern/read.hpp"
#include "pattern/closing_told.hpp"

#include "pattern/assemble.hpp"
#include "pattern/chain_habit.hpp"
#include "pattern/first_edge.hpp"
#include "pattern/first_ring.hpp"
#include "pattern/hold.hpp"
#include "pattern/limits.hpp"
#include "pattern/line.hpp"
#include "pattern/mend.hpp"
#include "pattern/named_groups.hpp"
#include "pattern/named_rounds.hpp"
#include "pattern/on_part.hpp"
#include "pattern/part_lines.hpp"
#include "pattern/part_yarn.hpp"
#include "pattern/placed_on.hpp"
#include "pattern/speech.hpp"
#include "pattern/technique_told.hpp"
#include "pattern/telling.hpp"
#include "pattern/throughout.hpp"
#include "pattern/two_parts.hpp"
#include "pattern/yarn.hpp"
#include "pattern/yarn_list.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

/// Letters of a text, those of several bytes counted once.
std::size_t letters_of(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(
      text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

/// A note, and behind it at the most when to stuff.
bool is_introduction(const std::vector<Placing>& placings) {
  const auto is_told = [](const Placing& placing) {
    return placing.what == What::note || placing.what == What::stuff;
  };
  return !placings.empty() && placings.front().what == What::note &&
         std::all_of(placings.begin(), placings.end(), is_told);
}

bool is_one_note(const std::vector<Placing>& placings) {
  return placings.size() == 1 && placings.front().what == What::note;
}

/// Whether a list explains "inc" or "dec".
bool says_shaping(const std::vector<Header>& list) {
  return std::any_of(list.begin(), list.end(), [](const Header& header) {
    std::string head = header.name.substr(0, 3);
    for (char& c : head) c = static_cast<char>(c >= 'A' && c <= 'Z' ? c + ('a' - 'A') : c);
    return head == "inc" || head == "dec";
  });
}

/// Reads the pattern once its lines are cut.
class PatternReader {
public:
  PatternReader(const Source& typed, const Speech& speech)
      : source_(speech.text(typed)), vocabulary_(speech.vocabulary()),
        kinds_(speech.kinds()), reader_{source_, vocabulary_, kinds_}, telling_(reader_),
        list_says_shaping_(says_shaping(speech.headers)) {}

  Read read() {
    result_.tree.language = vocabulary_.language;
    result_.tree.kinds = kinds_;
    telling_.tell_bad_bytes();
    const Cut cut = pattern::cut(reader_);
    telling_.tell_long_lines(cut);
    take_front(cut);
    result_.tree.listed_yarns = yarns_listed(source_, vocabulary_);
    std::vector<PartLines> parts = parts_of(reader_, cut);
    habits_ = chain_habits(reader_, cut);
    loops_ = loops_throughout(reader_, cut);
    for (PartLines& part : parts) keep_chain_habits(part);
    choose(parts);
    for (std::size_t part = 0; part < parts.size(); ++part) add_part(parts, part);
    decrease_invisibly(result_.tree, reader_, cut);
    place_on_parts(result_.tree, reader_);
    for (Finding& missing : name_held_parts(result_.tree, reader_)) telling_.add(std::move(missing));
    find_nothing_to_read();
    result_.findings = telling_.take();
    return std::move(result_);
  }

private:
  // The text

  void find_nothing_to_read() {
    if (!result_.tree.rounds.empty()) return;
    const bool blank = source_.text().find_first_not_of(" \t\r\n") == std::string_view::npos;
    telling_.add(finding(
        Severity::error, blank ? "empty" : "no-round", {},
        blank ? "there is nothing in this text"
              : "there is no round in this text; a round begins like `Rnd 1: 6 sc in magic ring (6)`"));
  }

  void take_front(const Cut& cut) {
    Tree& tree = result_.tree;
    for (const Line& line : cut.lines) {
      if (line.kind == LineKind::title) {
        tree.title = without_bold(without_marks(source_.at(line.span)));
        tree.title_span = line.span;
      }
      if (line.kind == LineKind::subtitle) tree.subtitle = without_bold(without_marks(source_.at(line.span)));
      if (line.kind == LineKind::header) tree.headers.push_back(line.header);
    }
  }

  // The choice

  ReadAll read_all() {
    return [this](Way& way) {
      if (again_++ >= limit::lines_again) return;
      read_way(reader_, way, Effort::all);
      keep_habits(habits_, way);
    };
  }

  /// What the text says of its starting chains holds for every line that does not say otherwise.
  void keep_chain_habits(PartLines& part) {
    if (habits_.empty()) return;
    for (Ways& ways : part.rounds)
      for (Way& way : ways)
        if (keep_habits(habits_, way) && way.effort != Effort::all) read_all()(way);
  }

  /// What a part begins on: nothing, or the last round of the part before, or of another.
  static std::int64_t opening(const std::vector<PartLines>& parts, std::size_t part) {
    if (parts[part].on != PartLines::nothing) {
      const std::vector<Settled>& owner = parts[parts[part].on].settled;
      return owner.empty() ? unknown : owner.back().open;
    }
    if (!parts[part].rounds.empty() && starts(parts[part].rounds.front()) && !parts[part].goes_on) return 0;
    return parts[part].goes_on && !parts[part - 1].settled.empty() ? parts[part - 1].settled.back().open
                                                                   : unknown;
  }

  void choose_part(std::vector<PartLines>& parts, std::size_t part) {
    const bool runs_on = parts[part].goes_on && parts[part].rounds.front().front().label.from != 1;
    const int last = runs_on ? parts[part - 1].settled.back().to : 0;
    parts[part].settled = pattern::choose(parts[part].rounds, opening(parts, part), last, kinds_, read_all());
  }

  void choose(std::vector<PartLines>& parts) {
    Votes votes{};
    for (std::size_t part = 0; part < parts.size(); ++part) {
      choose_part(parts, part);
      count_votes(parts[part].rounds, parts[part].settled, votes);
    }
    const std::uint16_t habits = winners(votes);
    for (std::size_t part = 0; part < parts.size(); ++part)
      if (lean_unsettled(parts[part].rounds, parts[part].settled, habits, read_all()))
        choose_part(parts, part);
  }

  // The tree

  void add_part(std::vector<PartLines>& parts, std::size_t number) {
    PartLines& lines = parts[number];
    if (lines.rounds.empty() && lines.heading == nullptr && lines.lines.empty()) return;
    Tree& tree = result_.tree;
    Part part;
    part.first_round = static_cast<std::uint32_t>(tree.rounds.size());
    part.make = lines.make;
    if (lines.heading != nullptr) {
      part.name = lines.heading->heading.name;
      part.note = lines.heading->heading.note.empty() ? introduction(lines) : lines.heading->heading.note;
      part.span = lines.heading->span;
    } else if (!lines.lines.empty()) {
      part.span = {lines.lines.front().line->span.begin, lines.lines.front().line->span.begin};
    }
    tree.parts.push_back(std::move(part));
    name_yarn_of_part(yarn_of_heading(tree.parts.back().note, tree.listed_yarns, vocabulary_));
    const std::size_t first_node = tree.nodes.size();
    for (const PartLine& line : lines.lines) {
      if (line.round == PartLine::no_round) {
        add_sentence(*line.line, lines.heading != nullptr && lines.rounds.empty());
        continue;
      }
      lines.in_tree.push_back(static_cast<std::uint32_t>(tree.rounds.size()));
      add_line(*line.line, parts, number, line.round);
    }
    if (opens_free_loops(first_node)) tree.parts.back().hold = hold_before_work(lines);
    if (lines.on != PartLines::nothing) begin_on(parts[lines.on], lines);
    if (lines.on_chain != PartLines::nothing) begin_on_chain(parts[lines.on_chain], lines, first_node);
    if (lines.goes_on && !parts[number - 1].in_tree.empty() && !lines.in_tree.empty())
      open_part_edge(tree, lines.in_tree.front(), parts[number - 1].in_tree.back());
  }

  /// The part in hand is worked along the last round of another.
  void begin_on(const PartLines& owner, const PartLines& lines) {
    if (owner.in_tree.empty() || lines.in_tree.empty()) return;
    open_last_round(result_.tree, lines.in_tree.front(), owner.in_tree.back(),
                    stitch_begun_in(reader_, lines));
    result_.tree.parts.back().hold = hold_before_work(lines);
  }

  /// The part in hand is worked along the other side of another's starting chain, be it that its first round
  /// itself says so.
  void begin_on_chain(const PartLines& owner, const PartLines& lines, std::size_t first_node) {
    if (owner.in_tree.empty() || lines.in_tree.empty()) return;
    open_chain_of(result_.tree, first_node, lines.in_tree.front(), owner.in_tree.front());
  }

  /// Whether one of the nodes from `first` on opens loops that another round left free.
  bool opens_free_loops(std::size_t first) const {
    const auto& nodes = result_.tree.nodes;
    return std::any_of(nodes.begin() + static_cast<std::ptrdiff_t>(first), nodes.end(), [](const Node& node) {
      return node.kind == NodeKind::work && node.work.act == Act::free_loops;
    });
  }

  /// What the heading, the lines above the first round or that round itself say of how a piece is held.
  Hold hold_before_work(const PartLines& lines) const {
    constexpr std::size_t most = 6;
    Hold hold =
        lines.heading == nullptr ? Hold::unsaid : hold_said(source_.at(lines.heading->span), vocabulary_);
    for (std::size_t i = 0; i < std::min(most, lines.lines.size()) && hold == Hold::unsaid; ++i) {
      const PartLine& line = lines.lines[i];
      hold = hold_said(source_.at(line.line->span), vocabulary_);
      const bool works = line.round != PartLine::no_round;
      if (works && hold == Hold::unsaid)
        hold = hold_said(source_.at(lines.rounds[line.round].front().above), vocabulary_);
      if (works) break;
    }
    return hold == Hold::unsaid && runs_against(reader_, lines) ? Hold::start_up : hold;
  }

  /// The short line directly below a part's heading, without its full stop; "" if there is none.
  std::string introduction(const PartLines& lines) const {
    if (lines.rounds.empty() || lines.lines.front().line->kind != LineKind::sentence) return {};
    const Span span = lines.lines.front().line->span;
    const std::string_view between = source_.at({lines.heading->span.end, span.begin});
    std::string_view text = source_.at(span);
    if (std::count(between.begin(), between.end(), '\n') != 1 || letters_of(text) > limit::introduction ||
        read_header(text, span) || !is_introduction(read_placings(text, span, vocabulary_)))
      return {};
    if (text.back() == '.') text.remove_suffix(1);
    return std::string(text);
  }

  /// Whether a sentence above a part's first round, whose placings are those from `first` on, tells how it is
  /// begun. "Start at the nose with cream" places no nose.
  bool begins_work(std::size_t first) {
    auto& placings = result_.tree.placings;
    if (first + 1 != placings.size()) return false;
    Placing& told = placings.back();
    const bool starts = told.what == What::bead && told.from == 0 && told.apart == 0 &&
                        !yarn_begun_in(told.text, vocabulary_).empty();
    if (starts) told.what = What::note;
    return told.what == What::note;
  }

  void name_yarn_of_part(const std::string& yarn) {
    Tree& tree = result_.tree;
    if (!yarn.empty()) tree.parts.back().yarn = number_of_yarn(tree, yarn, tree.rounds.size());
  }

  std::uint32_t part() const { return static_cast<std::uint32_t>(result_.tree.parts.size() - 1); }

  static bool ranges(const Label& label) { return label.to > label.from && !label.relative; }

  /// `alone`: its part has a heading and no round.
  void add_sentence(const Line& line, bool alone) {
    const std::string_view text = source_.at(line.span);
    if (const std::uint8_t loops = loops_above(reader_, line.span); loops != 0) loops_above_ = loops;
    const std::size_t first = result_.tree.placings.size();
    add_placings(result_.tree, part(), read_placings(text, line.span, vocabulary_));
    if (is_one_note({result_.tree.placings.begin() + static_cast<std::ptrdiff_t>(first),
                     result_.tree.placings.end()}) &&
        only_names_yarn(text, vocabulary_))
      result_.tree.placings.back().what = What::change;
    settle_changes(result_.tree, first, vocabulary_);
    const bool inside = alone || result_.tree.rounds.size() > result_.tree.parts.back().first_round;
    const What what = result_.tree.placings.empty() ? What::note : result_.tree.placings.back().what;
    const bool note = first + 1 == result_.tree.placings.size() && (what == What::note || what == What::join);
    if (!inside && begins_work(first)) name_yarn_of_part(yarn_begun_in(text, vocabulary_));
    if (inside && note) telling_.tell_left_out(line);
  }

  void add_line(const Line& line, const std::vector<PartLines>& parts, std::size_t number,
                std::size_t round) {
    const PartLines& part_lines = parts[number];
    const Ways& ways = part_lines.rounds[round];
    Settled settled = part_lines.settled[round];
    const Way& way = ways[settled.way];
    const bool unread = settled.reading == not_read;
    if (!unread && telling_.tell_too_much(way.readings[settled.reading])) settled.reading = not_read;
    const std::size_t first_node = result_.tree.nodes.size();
    const std::size_t first_placing = result_.tree.placings.size();
    add_round(result_.tree, part(), ways, settled, line.span, source_.at(way.label.span));
    if (round + 1 == part_lines.rounds.size()) gather_last_round(result_.tree, source_.text(), vocabulary_);
    name_rounds(result_.tree, first_node, reader_);
    name_groups(result_.tree, first_node, reader_);
    if (!way.target) work_in_loops(result_.tree, loops_ != 0 || ranges(way.label) ? loops_ : loops_above_);
    loops_above_ = 0;
    settle_changes(result_.tree, first_placing, vocabulary_);
    change_in_label(result_.tree, way.label.aside, reader_);
    change_in_label(result_.tree, way.above, reader_);
    if (way.target && settled.reading != not_read)
      repeat_round(parts, *way.target, way.readings[settled.reading]);
    std::string& mend = result_.tree.rounds.back().mend;
    mend = mend_of(line, part_lines, round);
    telling_.tell_unmarked(line, way.label);
    if (unread) {
      telling_.tell_unread(way, mend);
    } else if (settled.reading != not_read) {
      telling_.tell_passed_over(way.readings[settled.reading], settled, mend);
      telling_.tell_misspelt(line, way.readings[settled.reading]);
      telling_.tell_scanned(line);
      telling_.tell_scanned_sc(line);
      telling_.tell_reversed(line);
      if (!list_says_shaping_) telling_.tell_mixed(way.readings[settled.reading]);
      if (!way.target) telling_.tell_choice(line, ways, settled);
    }
  }

  /// The last round of the tree is told by naming one before; where the counts chose another reading than
  /// there, its own work stays.
  void repeat_round(const std::vector<PartLines>& parts, const Target& target, const Reading& reading) {
    const PartLines& part = parts[target.part];
    const Settled& there = part.settled[target.entry];
    if (there.reading == not_read || target.entry >= part.in_tree.size()) return;
    const Effect& effect = part.rounds[target.entry][there.way].readings[there.reading].effect;
    if (effect == reading.effect) refer(result_.tree, part.in_tree[target.entry], target);
  }

  /// What the round after a line uses, where no count of its own has to be known for it.
  static std::int64_t used_by(const PartLines& lines, std::size_t round) {
    if (round >= lines.rounds.size() || lines.settled[round].reading == not_read) return unknown;
    const Settled& settled = lines.settled[round];
    const Effect& effect = lines.rounds[round][settled.way].readings[settled.reading].effect;
    return effect.starts || effect.pass_uses > 0 ? unknown : static_cast<std::int64_t>(effect.uses);
  }

  std::string mend_of(const Line& line, const PartLines& lines, std::size_t round) {
    const Settled& settled = lines.settled[round];
    const Way& way = lines.rounds[round][settled.way];
    const bool passes_over =
        settled.reading != not_read && !way.readings[settled.reading].passed_over.empty();
    const bool agrees = settled.reading != not_read && settled.uses_all && settled.meets && !passes_over;
    if (agrees || way.reference || (settled.opened == unknown && round > 0) ||
        mended_++ >= limit::mended_lines)
      return {};
    return find_mend(reader_, way, line.span, {settled.opened, used_by(lines, round + 1)}).value_or("");
  }

  const Source& source_;
  const words::Vocabulary& vocabulary_;
  const std::vector<stitch::StitchKind> kinds_;
  const Reader reader_;
  Telling telling_;
  std::vector<ChainHabit> habits_;
  bool list_says_shaping_;       ///< the pattern's list says what an increase or decrease is
  std::uint8_t loops_ = 0;       ///< of all rounds
  std::uint8_t loops_above_ = 0; ///< of the next one
  Read result_;
  int mended_ = 0;
  int again_ = 0;
};

Read too_large(const Source& source) {
  Read result;
  result.findings.push_back(finding(Severity::error, "limit", {},
                                    "this text has " +
                                        number(static_cast<std::int64_t>(source.text().size())) +
                                        " bytes; at most " + number(limit::file_bytes) + " are read"));
  return result;
}

} // namespace

Read read(const Source& source, const words::Vocabulary& vocabulary) {
  if (source.text().size() > limit::file_bytes) return too_large(source);
  const Speech speech = listen(source, vocabulary);
  Read result = PatternReader(source, speech).read();
  begin_in_rings(result);
  open_first_edge(result);
  add_speech(result, speech);
  result.tree.techniques = techniques_told(source, result.tree, speech.vocabulary());
  return result;
}

} // namespace whorl::pattern
