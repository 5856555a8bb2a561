#include "stitch/kind.hpp"

#include "stitch/hook.hpp"
#include "stitch/moves.hpp"

#include <algorithm>
#include <iterator>

namespace whorl::stitch {
namespace {

using Moves = std::vector<Move>;

StitchKind row(const char* name, const char* moves, const char* title) {
  StitchKind kind;
  kind.name = name;
  kind.moves = moves;
  kind.title = title;
  return kind;
}

StitchKind uncounted(StitchKind kind) {
  kind.counts = false;
  return kind;
}

StitchKind closed(Close close, StitchKind kind) {
  kind.close = close;
  return kind;
}

/// Stitches that are worked into one place and close there.
std::vector<StitchKind> plain_kinds() {
  return {
      row("sc", "i d p2", "single crochet"),
      row("hdc", "o i d p3", "half double crochet"),
      row("dc", "o i d p2 p2", "double crochet"),
      row("tr", "o o i d p2 p2 p2", "treble crochet"),
      row("dtr", "o o o i d p2 p2 p2 p2", "double treble crochet"),
      row("trtr", "o o o o i d p2 p2 p2 p2 p2", "triple treble crochet"),
      row("esc", "i d p1 p2", "extended single crochet"),
      row("ehdc", "o i d p1 p3", "extended half double crochet"),
      row("edc", "o i d p1 p2 p2", "extended double crochet"),
      row("etr", "o o i d p1 p2 p2 p2", "extended treble crochet"),
  };
}

StitchKind invisible_decrease() {
  StitchKind kind = row("invdec", "l l p2 p2", "invisible decrease");
  kind.takes = 2;
  return kind;
}

std::vector<StitchKind> make_standard_kinds() {
  StitchKind chain = uncounted(row("ch", "c", "chain"));
  chain.takes = 0;
  chain.makes = 0; // chains are a place of another sort: an arch, or the edge that a part starts from
  std::vector<StitchKind> kinds{chain, uncounted(row("sl st", "i p1", "slip stitch"))};
  const auto plain = plain_kinds();
  kinds.insert(kinds.end(), plain.begin(), plain.end());
  for (int n : {2, 3})
    for (const StitchKind& kind : plain) kinds.push_back(*together(kind, n));
  kinds.push_back(invisible_decrease());
  kinds.push_back(closed(Close::bar, row("bo", "(o i d p2)5 p6", "bobble of five double crochets")));
  kinds.push_back(closed(Close::bar, row("puff", "(o i d)3 p*", "puff of three loops")));
  kinds.push_back(closed(Close::oval, row("pc", "(o i d p2 p2)5 x i* e", "popcorn of five double crochets")));
  kinds.push_back(closed(Close::bar, row("cl", "(o i d p2)3 p4", "cluster of three double crochets")));
  kinds.push_back(row("loop st", "i d d p3", "loop stitch")); // both strands of the loop are drawn up
  return kinds;
}

bool is_leg(const Move& move) {
  return (move.act == Act::insert && !move.into_made) || move.act == Act::take_loop;
}

int count(const Moves& moves, Act act) {
  return static_cast<int>(
      std::count_if(moves.begin(), moves.end(), [act](const Move& move) { return move.act == act; }));
}

int count_legs(const Moves& moves) {
  return static_cast<int>(std::count_if(moves.begin(), moves.end(), is_leg));
}

/// Wraps that come off, leg by leg, in a pull that leaves the loop lying under the leg's first wrap on the
/// hook: the leg goes on growing after it. (A pull that takes that loop too finishes the leg, as in an hdc.)
class Slashes {
public:
  explicit Slashes(int legs) : slashes_(static_cast<std::size_t>(legs), 0) {}

  void make(const Move& move) {
    if (move.act == Act::yarn_over || (is_leg(move) && !leg_open_)) begin_leg();
    if (is_leg(move)) leg_open_ = false, ++next_leg_;
    if (move.act == Act::pull_through)
      return pull(move.loops == 0 ? loops_.size() : static_cast<std::size_t>(move.loops));
    if (move.act == Act::yarn_over) loops_.push_back(static_cast<int>(next_leg_));
    if (move.act == Act::draw_up || move.act == Act::take_loop || move.act == Act::pick_up)
      loops_.push_back(plain);
    if (move.act == Act::drop && !loops_.empty()) loops_.pop_back();
  }

  const std::vector<int>& of_legs() const { return slashes_; }

private:
  static constexpr int plain = -1;

  void begin_leg() {
    if (!leg_open_) under_ = loops_.size();
    leg_open_ = true;
  }

  void pull(std::size_t loops) {
    loops = std::min(loops, loops_.size());
    const bool finishes = loops_.size() - loops < under_;
    for (; loops > 0; --loops) {
      const int leg = loops_.back();
      loops_.pop_back();
      if (leg != plain && !finishes && static_cast<std::size_t>(leg) < slashes_.size())
        ++slashes_[static_cast<std::size_t>(leg)];
    }
    loops_.push_back(plain);
  }

  std::vector<int> loops_{plain};
  std::vector<int> slashes_;
  std::size_t next_leg_ = 0;
  std::size_t under_ = 1; ///< loops that lay on the hook when the newest leg was begun
  bool leg_open_ = false; ///< wrapped, and not yet inserted
};

std::vector<int> slashes_of(const Moves& moves) {
  Slashes slashes(count_legs(moves));
  for (const Move& move : moves) slashes.make(move);
  return slashes.of_legs();
}

int pulls(Moves::const_iterator first, Moves::const_iterator last) {
  return static_cast<int>(
      std::count_if(first, last, [](const Move& move) { return move.act == Act::pull_through; }));
}

int height_of(const Moves& moves) {
  const int wrap = count(moves, Act::yarn_over) > 0 ? 1 : 0;
  const auto is = [](Act act) { return [act](const Move& move) { return move.act == act; }; };
  const auto drawn = std::find_if(moves.rbegin(), moves.rend(), is(Act::draw_up));
  if (drawn != moves.rend()) return pulls(drawn.base(), moves.end()) + wrap;
  if (count(moves, Act::take_loop) == 0) return 0;
  return std::max(0, pulls(moves.begin(), moves.end()) - 1) + wrap;
}

/// Pull-throughs of one loop after the last loop drawn up.
int stems_of(const Moves& moves) {
  const auto drawn =
      std::find_if(moves.rbegin(), moves.rend(), [](const Move& move) { return move.act == Act::draw_up; });
  if (drawn == moves.rend()) return 0;
  return static_cast<int>(std::count(drawn.base(), moves.end(), Move{Act::pull_through, 1}));
}

} // namespace

const std::vector<StitchKind>& standard_kinds() {
  static const std::vector<StitchKind> kinds = make_standard_kinds();
  return kinds;
}

const StitchKind& single_crochet() {
  static const KindId single = find_kind(standard_kinds(), "sc").value_or(0);
  return standard_kinds()[single];
}

std::optional<KindId> find_kind(const std::vector<StitchKind>& kinds, std::string_view name) {
  for (std::size_t i = 0; i < kinds.size() && i < no_kind; ++i)
    if (kinds[i].name == name) return static_cast<KindId>(i);
  return std::nullopt;
}

std::optional<StitchKind> together(const StitchKind& base, int n) {
  auto moves = parse_moves(base.moves);
  if (n < 2 || n > 20 || !moves || base.takes != 1 || count_legs(*moves) != 1) return std::nullopt;
  if (moves->back().act != Act::pull_through || loops_at_end(*moves) != 1) return std::nullopt;
  moves->pop_back();
  const int kept = loops_at_end(*moves).value_or(1) - 1;
  if (kept < 1) return std::nullopt;
  StitchKind kind = base;
  kind.name = base.name + std::to_string(n) + "tog";
  kind.moves = "(" + show(*moves) + ")" + std::to_string(n) + " p" + std::to_string(n * kept + 1);
  kind.title = base.title + " " + std::to_string(n) + " together";
  kind.takes = n;
  return kind;
}

std::optional<StitchKind> cluster(const StitchKind& base, int n) {
  auto kind = together(base, n);
  if (kind) kind->takes = base.takes;
  if (kind) kind->close = Close::bar;
  return kind;
}

StitchKind popcorn(const StitchKind& base, int n) {
  StitchKind kind = base;
  kind.moves = "(" + base.moves + ")" + std::to_string(n) + " x i* e";
  kind.close = Close::oval;
  return kind;
}

StitchKind picot(int chains) {
  const std::string number = std::to_string(chains);
  StitchKind kind = uncounted(row("picot", "", "picot"));
  if (chains != 3) kind.name = "ch" + number + "picot", kind.title = "picot of " + number + " chains";
  kind.moves = "(c)" + number + " i* p1";
  kind.takes = 0;
  kind.makes = 0;
  return kind;
}

StitchKind with_chains(const StitchKind& base, int chains) {
  StitchKind kind = base;
  kind.moves = base.moves + " (c)" + std::to_string(chains) + " i* p1";
  return kind;
}

namespace {

/// "3sc" of three in a row, "slst" of one.
std::string run_name(const std::string& name, int times) {
  std::string written;
  std::copy_if(name.begin(), name.end(), std::back_inserter(written), [](char c) { return c != ' '; });
  return (times > 1 ? std::to_string(times) : std::string()) + written;
}

} // namespace

StitchKind spur(int chains, const std::vector<StitchKind>& back) {
  StitchKind kind = picot(chains);
  kind.name = "ch" + std::to_string(chains);
  kind.title = std::to_string(chains) + " chains with stitches back along them";
  kind.moves = "(c)" + std::to_string(chains);
  for (std::size_t i = 0; i < back.size();) {
    std::size_t end = i;
    while (end < back.size() && back[end].name == back[i].name) ++end;
    kind.name += "+" + run_name(back[i].name, static_cast<int>(end - i));
    for (; i < end; ++i) {
      std::string moves = back[i].moves;
      moves.insert(moves.find('i') + 1, "*");
      kind.moves += " " + moves;
    }
  }
  return kind;
}

std::vector<StitchKind> back_along(const StitchKind& kind) {
  const auto moves = kind.takes == 0 && kind.makes == 0 ? parse_moves(kind.moves) : std::nullopt;
  if (!moves) return {};
  std::vector<StitchKind> back;
  Moves one;
  Hook hook;
  for (const Move& move : *moves) {
    make(move, hook);
    if (move.act != Act::chain) one.push_back(move), one.back().into_made = false;
    if (one.empty() || move.act != Act::pull_through || hook.count() != 1) continue;
    const std::string made = show(one);
    const auto is_made_so = [&](const StitchKind& usual) { return usual.moves == made; };
    const auto& usual = standard_kinds();
    const auto named = std::find_if(usual.begin(), usual.end(), is_made_so);
    back.push_back(named != usual.end() ? *named : row("", made.c_str(), ""));
    one.clear();
  }
  const bool closes = back.size() == 1 && back.front().name == "sl st"; // a picot
  return closes ? std::vector<StitchKind>{} : back;
}

bool is_picot(const StitchKind& kind) {
  return kind.takes == 0 && kind.makes == 0 && kind.moves.find("i*") != std::string::npos;
}

namespace {

/// The moves of a stitch without those of the chains that are closed back into it.
std::optional<Moves> moves_below_chains(const StitchKind& kind) {
  auto moves = parse_moves(kind.moves);
  if (!moves || count_legs(*moves) == 0) return moves;
  const auto chain =
      std::find_if(moves->begin(), moves->end(), [](const Move& move) { return move.act == Act::chain; });
  moves->erase(chain, moves->end());
  return moves;
}

} // namespace

Shape shape_of(const StitchKind& kind) {
  Shape shape;
  shape.close = kind.close;
  const auto moves = moves_below_chains(kind);
  if (!moves) return shape;
  shape.legs = count_legs(*moves);
  shape.feet_joined = shape.legs > 1 && shape.legs > kind.takes;
  shape.bar = count(*moves, Act::yarn_over) > 0;
  shape.front_loops_only = count(*moves, Act::take_loop) > 0;
  shape.cross = !shape.bar && (count(*moves, Act::draw_up) > 0 || shape.front_loops_only);
  shape.slashes = slashes_of(*moves);
  shape.height = height_of(*moves);
  shape.stems = stems_of(*moves);
  shape.long_loop = shape.cross && count(*moves, Act::draw_up) > count(*moves, Act::insert);
  const auto all = parse_moves(kind.moves);
  const bool stalk = all->size() > moves->size();
  if (is_picot(kind) || stalk) shape.picot = count(*all, Act::chain);
  for (const StitchKind& back : back_along(kind)) shape.back.push_back(shape_of(back));
  return shape;
}

} // namespace whorl::stitch
