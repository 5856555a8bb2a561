#include "pattern/meaning.hpp"

#include "pattern/costs.hpp"
#include "pattern/effect.hpp"
#include "pattern/named_loop.hpp"

#include <algorithm>
#include <utility>

namespace whorl::pattern {

namespace {

struct VerbName {
  std::string_view name;
  Verb verb;
};
constexpr VerbName verbs[] = {
    {"pass", Verb::pass},
    {"stitch", Verb::stitch},
    {"skip", Verb::skip},
    {"ring", Verb::ring},
    {"join", Verb::join},
    {"turn", Verb::turn},
    {"travel", Verb::travel},
    {"under-chain", Verb::under_chain},
    {"start-here", Verb::start_here},
    {"every", Verb::every},
    {"again", Verb::again},
    {"starting-chain", Verb::starting_chain},
    {"from-chain", Verb::from_chain},
    {"others", Verb::others},
    {"picot", Verb::picot},
    {"other-side", Verb::other_side},
    {"side-behind", Verb::side_behind},
    {"part-here", Verb::part_here},
    {"part-behind", Verb::part_behind},
    {"foundation", Verb::foundation},
    {"repeat", Verb::repeat},
    {"group", Verb::group},
    {"loops-rest", Verb::loops_rest},
    {"loops-head", Verb::loops_head},
    {"loops-next", Verb::loops_next},
    {"loops-behind", Verb::loops_behind},
};

struct WhereName {
  std::string_view name;
  Where where;
};
constexpr WhereName places[] = {
    {"same", Where::same},           {"last", Where::last},       {"ring", Where::ring},
    {"chain", Where::chain},         {"space", Where::space},     {"any", Where::any},
    {"any-chain", Where::any_chain}, {"between", Where::between}, {"centre", Where::centre},
};

struct ManyName {
  std::string_view name;
  bool Meaning::*flag;
};
constexpr ManyName manners[] = {
    {"made", &Meaning::made},         {"skipping", &Meaning::skipping}, {"around", &Meaning::around},
    {"double", &Meaning::doubled},    {"together", &Meaning::together}, {"apart", &Meaning::apart},
    {"more", &Meaning::more},         {"here", &Meaning::here},         {"counts", &Meaning::counts},
    {"first-of", &Meaning::first_of}, {"passed", &Meaning::passed},     {"below", &Meaning::below},
    {"alone", &Meaning::alone},       {"part", &Meaning::part},         {"onward", &Meaning::onward},
    {"back", &Meaning::back},         {"gathered", &Meaning::gathered}, {"leading", &Meaning::leading},
    {"spaced", &Meaning::spaced},     {"based", &Meaning::based},       {"of-loop", &Meaning::of_loop},
    {"plus", &Meaning::plus},         {"led", &Meaning::led},           {"heading", &Meaning::heading},
};

struct EdgeName {
  std::string_view name;
  Act act;
  bool evenly;
};
constexpr EdgeName edges[] = {
    {"row-ends", Act::row_ends, false},      {"along-side", Act::row_ends, true},
    {"top-edge", Act::top_edge, false},      {"all-edges", Act::all_edges, true},
    {"bottom-edge", Act::other_side, false}, {"part-edge", Act::part_edge, false},
};

void put_manner(Meaning& meaning, std::string_view word) {
  for (const EdgeName& edge : edges)
    if (edge.name == word) meaning.opens = edge.act, meaning.evenly = edge.evenly;
  for (const WhereName& place : places)
    if (place.name == word) meaning.where = place.where;
  for (const ManyName& manner : manners)
    if (manner.name == word) meaning.*manner.flag = true;
}

Act act_of(Verb verb) {
  switch (verb) {
  case Verb::skip:
  case Verb::under_chain:
    return Act::skip;
  case Verb::ring:
    return Act::ring;
  case Verb::join:
    return Act::join;
  case Verb::turn:
    return Act::turn;
  case Verb::start_here:
    return Act::start_here;
  case Verb::travel:
    return Act::travel;
  case Verb::other_side:
  case Verb::side_behind:
    return Act::other_side;
  case Verb::part_here:
  case Verb::part_behind:
    return Act::part_edge;
  default:
    return Act::stitch;
  }
}

/// Loops are a set; round a post or through two layers is a way to go in.
bool put_into(Work& work, std::string_view name) {
  if (name == "front post") return work.into = Into::front_post, true;
  if (name == "back post") return work.into = Into::back_post, true;
  if (name == "both layers") return work.into = Into::both_layers, true;
  if (name == "two parts") return work.into = Into::two_parts, true;
  return false;
}

std::uint8_t loops_named(std::string_view name) {
  if (name == "back loops") return stitch::back;
  if (name == "front loops") return stitch::front;
  if (name == "third loop") return stitch::third;
  return stitch::both;
}

std::uint32_t or_one(std::uint32_t number) { return number == no_number ? 1 : number; }

/// The concept names of a match's work.
struct Names {
  std::string_view work, second;
  std::uint16_t in_one = 1; ///< of a pattern's own word: how many of the stitch it means go into one place
  std::uint8_t down = 0;    ///< … and into the stitch how many rounds below
};

Names names_of(const Sentence& sentence, const Slots& slots) {
  const auto name = [&sentence](words::Concept c) {
    if (c == words::no_concept) return std::string_view{};
    const words::ConceptEntry& entry = sentence.vocabulary.concepts[c];
    return std::string_view(entry.works.empty() ? entry.name : entry.works);
  };
  const bool works = slots.work != words::no_concept;
  return {name(slots.work), name(slots.second),
          works ? sentence.vocabulary.concepts[slots.work].in_one : std::uint16_t{1},
          works ? sentence.vocabulary.concepts[slots.work].down : std::uint8_t{0}};
}

/// "In each ch-1 sp 2 dc": the chain only names the place, though it stands first.
Names without_place(Names names, const Meaning& meaning) {
  const bool in_space = meaning.where == Where::space || meaning.where == Where::any;
  if (in_space && !meaning.spaced && names.work == "ch" && !names.second.empty()) names.work = names.second;
  return names;
}

bool is_bare_word(std::string_view name) { return name.empty() || name == "increase" || name == "dec"; }

/// A stitch round a post or a spike by the stitch that it is: "fpdc" is a dc.
std::string_view plain_name(std::string_view name, Into& into) {
  const std::string_view head = name.substr(0, 2);
  if (name == "spike") return into = Into::below, std::string_view("sc");
  if (name.size() < 4 || (head != "fp" && head != "bp")) return name;
  into = head == "fp" ? Into::front_post : Into::back_post;
  return name.substr(2);
}

/// The stitch that is worked: the one named, else single crochet.
std::optional<stitch::KindId> base_kind(const Names& names, const Kinds& kinds, Into& into) {
  if (!is_bare_word(names.work)) return kinds.find(plain_name(names.work, into));
  if (!is_bare_word(names.second)) return kinds.find(plain_name(names.second, into));
  return kinds.find("sc");
}

std::uint32_t how_many_together(const Slots& slots) {
  if (slots.of == no_number) return 2;
  const std::uint32_t times = or_one(slots.count);
  const bool shared = times > 1 && slots.of % times == 0 && slots.of / times > 1;
  return shared ? slots.of / times : slots.of;
}

bool is_family(std::string_view name) {
  return name == "bo" || name == "puff" || name == "pc" || name == "cl";
}

/// "5-dc popcorn", "bobble of 4 dc": named like "dc5pc".
std::optional<stitch::KindId> gathered_kind(const Names& names, const Slots& slots, Kinds& kinds) {
  const std::string_view family = is_family(names.work) ? names.work : names.second;
  const auto base = kinds.find(family == names.work ? names.second : names.work);
  const int n = static_cast<int>(std::min<std::uint32_t>(or_one(slots.of), reading_limits.together + 1));
  if (!base || n < 2 || n > static_cast<int>(reading_limits.together)) return std::nullopt;
  const stitch::StitchKind& one = kinds.at(*base);
  if (one.takes != 1 || stitch::shape_of(one).height < 2)
    return std::nullopt; // "3 sc bobble" lacks its comma
  auto kind = family == "pc" ? std::optional(stitch::popcorn(one, n)) : stitch::cluster(one, n);
  if (!kind) return std::nullopt;
  const auto usual = kinds.find(family);
  const std::string_view word = family == "bo"   ? "bobble"
                                : family == "pc" ? "popcorn"
                                : family == "cl" ? "cluster"
                                                 : "puff";
  if (usual && kinds.at(*usual).moves == kind->moves) return usual;
  kind->title = std::string(word) + " of " + std::to_string(n) + " " + one.title + "s";
  kind->name = one.name + std::to_string(n) + std::string(family);
  return kinds.add(*kind);
}

bool is_decrease(const Names& names, const Meaning& meaning) {
  return meaning.together || names.work == "dec" || names.second == "dec";
}

std::optional<stitch::KindId> worked_kind(const Names& names, const Slots& slots, const Meaning& meaning,
                                          Kinds& kinds, Into& into) {
  if (meaning.gathered) return gathered_kind(names, slots, kinds);
  const auto base = base_kind(names, kinds, into);
  if (!base || !is_decrease(names, meaning)) return base;
  if (names.work == "invdec") return slots.of == no_number || slots.of == 2 ? base : std::nullopt;
  const std::uint32_t n = how_many_together(slots);
  if (n < 2 || n > reading_limits.together) return std::nullopt;
  return kinds.together(*base, n);
}

/// How many go into each place, and how many places.
bool put_numbers(Work& work, const Names& names, const Slots& slots, const Meaning& meaning) {
  const std::uint32_t many = or_one(slots.many);
  const bool increases = meaning.doubled || names.work == "increase" || names.second == "increase";
  if (many > 0xFFFF || (increases && many != 1)) return false;
  const bool own = names.in_one > 1;
  if (own && (increases || (many != 1 && !meaning.apart))) return false;
  work.in_one = own ? names.in_one : static_cast<std::uint16_t>(increases ? 2 : meaning.apart ? 1 : many);
  work.times = meaning.apart ? many : or_one(slots.count);
  return true;
}

std::optional<Piece> stitch_piece(const Sentence& sentence, const Slots& slots, const Meaning& meaning,
                                  Kinds& kinds) {
  const Names names = without_place(names_of(sentence, slots), meaning);
  if (names.work == "ch" && meaning.where == Where::chain) return std::nullopt; // no chain is worked into one
  Piece piece;
  const auto kind = worked_kind(names, slots, meaning, kinds, piece.work.into);
  piece.verb = meaning.verb;
  if (!kind || !put_numbers(piece.work, names, slots, meaning)) return std::nullopt;
  piece.work.kind = *kind;
  piece.bare = is_bare_word(names.work) && is_bare_word(names.second);
  piece.work.where = meaning.where;
  if (meaning.spaced && names.work != names.second) return std::nullopt;
  if (meaning.spaced) piece.work.in_space = std::exchange(piece.work.in_one, std::uint16_t{1});
  piece.work.counts = meaning.counts;
  piece.here = meaning.here;
  piece.led = meaning.led;
  piece.alone = meaning.alone;
  piece.opened = meaning.opens;
  piece.evenly = meaning.evenly;
  piece.onward = meaning.onward;
  if (meaning.where == Where::chain && slots.of != no_number) piece.chains = slots.of;
  if (names.down > 0) piece.work.into = Into::below, piece.work.down = names.down;
  if (meaning.below) piece.work.into = Into::below;
  if (meaning.below) piece.work.down = static_cast<std::uint8_t>(std::clamp(or_one(slots.nth), 1U, 255U));
  if (meaning.where == Where::chain) // "10 sl st back along the chain" begins in the second
    piece.work.nth = static_cast<std::uint16_t>(
        std::min(or_one(slots.nth) + (meaning.onward && meaning.more ? 1U : 0U), 0xFFFFU));
  if (meaning.where == Where::chain && slots.nth == 0) return std::nullopt;
  constexpr std::uint16_t most_in_each = 7; // "12 sc each", of rounds, is no 12 in each stitch
  if (meaning.around && meaning.where == Where::next && piece.work.in_one > most_in_each && !meaning.spaced)
    return std::nullopt;
  const bool chains_alone = kinds.at(*kind).takes == 0 && names.second.empty();
  if (meaning.where == Where::ring && chains_alone) return std::nullopt; // "into a ring work 3 ch, 11 tr"
  if (meaning.onward && chains_alone) return std::nullopt;               // "31 ch, from the 3rd ch …"
  return piece;
}

/// Chains: the row names nothing else.
std::optional<Piece> chain_piece(const Slots& slots, const Kinds& kinds) {
  const auto chain = kinds.find("ch");
  if (!chain) return std::nullopt;
  Piece piece;
  piece.verb = Verb::starting_chain;
  piece.work.kind = *chain;
  piece.work.counts = true;
  piece.work.times = slots.count == no_number ? 3 : slots.count;
  return piece;
}

/// "20 fsc": so many stitches; `nth` is the chain from the hook that the first goes into.
std::optional<Piece> foundation_piece(const Sentence& sentence, const Slots& slots, const Kinds& kinds) {
  constexpr std::string_view before = "foundation ";
  const std::string_view name = names_of(sentence, slots).work;
  const auto kind = kinds.find(name.substr(std::min(before.size(), name.size())));
  if (!kind || slots.count == no_number || slots.count == 0) return std::nullopt;
  Piece piece;
  piece.verb = Verb::foundation;
  piece.work.kind = *kind;
  piece.work.times = slots.count;
  piece.work.nth = static_cast<std::uint16_t>(stitch::shape_of(kinds.at(*kind)).height + 1);
  return piece;
}

/// Slip stitches to a chain space: over so many stitches, and one into it.
std::optional<Piece> travel_piece(const Slots& slots, const Meaning& meaning, const Kinds& kinds) {
  const auto slip = kinds.find("sl st");
  if (!slip) return std::nullopt;
  Piece piece;
  piece.verb = Verb::travel;
  piece.work.act = Act::travel;
  piece.work.kind = *slip;
  piece.work.where = Where::space;
  piece.work.times = meaning.apart ? or_one(slots.count) : 0;
  piece.heading = meaning.heading;
  return piece;
}

/// Chains closed to a ring: one thing, which is no stitch and no place.
std::optional<Piece> picot_piece(const Slots& slots, Kinds& kinds) {
  const std::uint32_t chains = slots.count == no_number ? 3 : slots.count;
  if (chains < 2 || chains > reading_limits.together) return std::nullopt;
  if (slots.nth == 2 && chains > 2) return std::nullopt; // what follows goes back along them
  Piece piece;
  piece.verb = Verb::picot;
  const auto own = slots.count == no_number ? kinds.find("picot") : std::nullopt;
  piece.work.kind = own ? *own : kinds.add(stitch::picot(static_cast<int>(chains)));
  return piece;
}

/// "inc in every 3rd st": `times` becomes the nth; an even nth needs no number.
std::optional<Piece> every_piece(const Sentence& sentence, const Match& match, const Meaning& meaning,
                                 Kinds& kinds) {
  const Slots& slots = match.slots;
  auto piece = stitch_piece(sentence, slots, meaning, kinds);
  const std::string_view words = sentence.text().substr(match.begin, match.end - match.begin);
  if (words.find("each of ") != std::string_view::npos) return std::nullopt; // "in each of the 12 sts"
  std::uint32_t behind = 0;
  if (piece && (meaning.passed || meaning.first_of))
    behind = static_cast<std::uint32_t>(kinds.at(piece->work.kind).takes) - (meaning.first_of ? 1U : 0U);
  const std::uint32_t nth = (slots.nth == no_number ? 2 : slots.nth) + behind;
  if (!piece || nth == 0 || nth > 0xFFFF) return std::nullopt;
  if (static_cast<std::uint32_t>(kinds.at(piece->work.kind).takes) > nth) return std::nullopt;
  piece->work.nth = static_cast<std::uint16_t>(nth);
  piece->skipping = meaning.skipping;
  Into into = Into::loops;
  piece->plain = base_kind(names_of(sentence, slots), kinds, into).value_or(piece->work.kind);
  return piece;
}

/// "in next sc": the kind of the places, where it is one that has a name of its own and they are not told by
/// where the work ends.
void put_named(Work& work, const Sentence& sentence, const Match& match, const Kinds& kinds) {
  const bool takes_places = work.act == Act::stitch || work.act == Act::skip;
  if (!takes_places || work.where != Where::next || match.slots.place == words::no_concept) return;
  if (match.slots.leave != no_number || work.leave != 0) return;
  const words::ConceptEntry& entry = sentence.vocabulary.concepts[match.slots.place];
  const auto kind = kinds.find(entry.works.empty() ? entry.name : entry.works);
  if (kind && *kind < kinds.known.size() && kinds.at(*kind).takes > 0) work.named = *kind;
}

void put_loops(Work& work, std::string_view name) {
  if (!put_into(work, name)) work.loops = loops_named(name);
}

void put_ends(Work& work, const Slots& slots, const Meaning& meaning) {
  work.to_end = meaning.around;
  if (meaning.around) work.times = 1;
  if (slots.leave != no_number) work.leave = slots.leave;
}

/// "Start in loop 5 | of the free front loops" goes on.
bool ends_clause(const Sentence& sentence, std::uint32_t at) {
  const std::uint32_t next = skip_blanks(sentence.text(), at);
  return next >= sentence.size() ||
         std::string_view(",;.:)").find(sentence.text()[next]) != std::string_view::npos;
}

} // namespace

Meaning meaning_of(std::string_view text) {
  Meaning meaning;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    const std::string_view word = text.substr(at, end - at);
    for (const VerbName& entry : verbs)
      if (at == 0 && entry.name == word) meaning.verb = entry.verb;
    if (at != 0) put_manner(meaning, word);
    at = end + 1;
  }
  return meaning;
}

std::optional<stitch::KindId> Kinds::find(std::string_view name) const {
  for (std::size_t i = 0; i < known.size() + made.size(); ++i)
    if (at(static_cast<stitch::KindId>(i)).name == name) return static_cast<stitch::KindId>(i);
  return std::nullopt;
}

stitch::KindId Kinds::add(const stitch::StitchKind& kind) {
  if (const auto there = find(kind.name); there && at(*there).moves == kind.moves) return *there;
  made.push_back(kind);
  return static_cast<stitch::KindId>(known.size() + made.size() - 1);
}

std::optional<stitch::KindId> Kinds::together(stitch::KindId base, std::uint32_t n) {
  if (const auto kind = find(at(base).name + std::to_string(n) + "tog")) return kind;
  const auto kind = stitch::together(at(base), static_cast<int>(n));
  if (!kind) return std::nullopt;
  made.push_back(*kind);
  return static_cast<stitch::KindId>(known.size() + made.size() - 1);
}

std::optional<Piece> piece_of(const Sentence& sentence, const Match& match, const Meaning& meaning,
                              Kinds& kinds) {
  std::optional<Piece> piece = Piece{};
  piece->verb = meaning.verb;
  piece->part = meaning.part;
  if (meaning.of_loop && !names_one_loop(sentence, match.begin, match.end)) return std::nullopt;
  if (meaning.of_loop && meaning.verb == Verb::pass && !ends_clause(sentence, match.end)) return std::nullopt;
  if (meaning.verb == Verb::starting_chain) return chain_piece(match.slots, kinds);
  if (meaning.verb == Verb::foundation) return foundation_piece(sentence, match.slots, kinds);
  if (meaning.verb == Verb::travel) return travel_piece(match.slots, meaning, kinds);
  if (meaning.verb == Verb::picot) return picot_piece(match.slots, kinds);
  if (meaning.verb == Verb::stitch) piece = stitch_piece(sentence, match.slots, meaning, kinds);
  if (meaning.verb == Verb::every) piece = every_piece(sentence, match, meaning, kinds);
  if (!piece) return piece;
  piece->made = meaning.made;
  piece->leading = meaning.leading;
  piece->based = meaning.based;
  Work& work = piece->work;
  work.act = act_of(meaning.verb);
  work.where = meaning.where;
  piece->opened = meaning.opens == Act::stitch ? piece->opened : meaning.opens;
  piece->evenly = meaning.evenly;
  if (meaning.verb == Verb::again && match.slots.many != no_number)
    piece->again_many = static_cast<std::uint16_t>(std::min(match.slots.many, 0xFFFFU));
  if (meaning.verb != Verb::stitch && meaning.verb != Verb::every)
    work.times = or_one(match.slots.count) + (meaning.more ? 1U : 0U);
  const bool group_in_chain = meaning.verb == Verb::group && meaning.where == Where::chain;
  if (group_in_chain) work.counts = meaning.counts;
  if (group_in_chain && match.slots.nth == no_number) return std::nullopt;
  if (meaning.verb == Verb::from_chain || group_in_chain)
    work.nth =
        static_cast<std::uint16_t>(std::min(or_one(match.slots.nth) + (meaning.more ? 1U : 0U), 0xFFFFU));
  if (meaning.verb == Verb::join || meaning.verb == Verb::pass) work.times = 1;
  if (meaning.plus && match.slots.nth != no_number) work.times += match.slots.nth; // "ch 6 + 1 to turn"
  if (meaning.verb == Verb::under_chain) --work.times; // the first is passed by the chain itself
  if (match.slots.loops != words::no_concept)
    put_loops(work, sentence.vocabulary.concepts[match.slots.loops].name);
  put_ends(work, match.slots, meaning);
  // A leave without a number is the last one: "to last st".
  const bool to_last = meaning.around && match.slots.leave == no_number &&
                       sentence.vocabulary.rows[match.row].pattern.find("leave?") != std::string::npos;
  if (to_last) work.leave = 1;
  put_named(work, sentence, match, kinds);
  return piece;
}

} // namespace whorl::pattern
