#include "pattern/own_stitch.hpp"

#include "stitch/moves.hpp"
#include "words/ascii.hpp"
#include "words/fold.hpp"
#include "words/lattice.hpp"

#include <algorithm>
#include <array>

namespace whorl::pattern {

namespace {

using stitch::StitchKind;

constexpr std::uint32_t most_legs = 20;
constexpr std::size_t longest_explanation = 600; ///< bytes that are looked at for moves

bool is_letter(char c) { return c >= 'a' && c <= 'z'; }
using words::is_digit;

/// The text as small letters, figures and brackets; all else is blank.
std::string plain(std::string_view text) {
  std::string out = words::fold(text.substr(0, longest_explanation)).text;
  for (char& c : out)
    if (!is_letter(c) && !is_digit(c) && std::string_view("()[]*").find(c) == std::string_view::npos) c = ' ';
  return out;
}

std::vector<std::string_view> words_of(std::string_view text) {
  std::vector<std::string_view> words;
  for (std::size_t at = 0; at < text.size();) {
    std::size_t end = at + 1;
    const auto same = [&](bool (*is)(char)) {
      while (end < text.size() && is(text[end])) ++end;
    };
    if (is_letter(text[at])) same(is_letter);
    if (is_digit(text[at])) same(is_digit);
    if (text[at] != ' ') words.push_back(text.substr(at, end - at));
    at = end;
  }
  return words;
}

struct NumberWord {
  std::string_view word;
  int number;
};
constexpr std::array<NumberWord, 13> number_words{{{"one", 1},
                                                   {"once", 1},
                                                   {"two", 2},
                                                   {"both", 2},
                                                   {"twice", 2},
                                                   {"three", 3},
                                                   {"thrice", 3},
                                                   {"four", 4},
                                                   {"five", 5},
                                                   {"six", 6},
                                                   {"seven", 7},
                                                   {"eight", 8},
                                                   {"nine", 9}}};

int number_of(std::string_view word) {
  for (const NumberWord& entry : number_words)
    if (entry.word == word) return entry.number;
  if (word.empty() || word.size() > 3 || !is_digit(word.front())) return 0;
  return std::stoi(std::string(word));
}

/// Follows the words of an explanation move by move.
class MoveReader {
public:
  explicit MoveReader(const std::vector<std::string_view>& words) : words_(words) {}

  ToldMoves read() {
    for (std::size_t at = 0; at < words_.size();) at = take(at);
    ToldMoves told;
    if (!inserts_) return told;
    for (const std::string& move : moves_) told.moves += (told.moves.empty() ? "" : " ") + move;
    const auto parsed = stitch::parse_moves(told.moves);
    told.left = parsed ? stitch::loops_at_end(*parsed).value_or(0) : 0;
    return told;
  }

private:
  std::string_view word(std::size_t at) const { return at < words_.size() ? words_[at] : std::string_view{}; }

  bool reads(std::size_t at, std::string_view first, std::string_view second) const {
    return word(at) == first && word(at + 1) == second;
  }

  std::size_t take(std::size_t at) {
    const std::string_view text = word(at);
    if (text == "[" || text == "(" || text == "*") return opened_ = moves_.size(), at + 1;
    if (const std::size_t next = behind_yarn_over(at); next != at) return put("o"), next;
    if (text == "insert" || (text == "hook" && word(at + 1) == "in")) return insert(), behind_hook(at + 1);
    if (text == "pull" || text == "draw" || text == "pulling" || text == "drawing") return take_pull(at);
    if (text == "through" && number_or_all(at + 1) != 0) return pull(at + 1);
    if (number_of(text) > 1 && is_times(at)) return repeat(at);
    return at + 1;
  }

  std::size_t behind_yarn_over(std::size_t at) const {
    for (const std::string_view first : {"yarn", "wool"})
      for (const std::string_view second : {"over", "round", "around"})
        if (reads(at, first, second)) return at + (word(at + 2) == "hook" ? 3 : 2);
    const bool one = word(at) == "yo" || word(at) == "yrh" || word(at) == "yoh" || word(at) == "woh";
    return one ? at + 1 : at;
  }

  /// "Insert your hook in" is one move.
  std::size_t behind_hook(std::size_t at) const {
    while (word(at) == "hook" || word(at) == "your" || word(at) == "the") ++at;
    return at;
  }

  void insert() {
    put("i");
    inserts_ = true;
  }

  /// "pull up a loop", "draw a loop through", "pull through 2 loops": up to the next "through" and its
  /// number.
  std::size_t take_pull(std::size_t at) {
    for (std::size_t next = at + 1; next < std::min(words_.size(), at + 5); ++next)
      if (word(next) == "through" && number_or_all(next + 1) != 0) return pull(next + 1);
    if (!moves_.empty() && moves_.back() == "o" && moves_.size() > 1 && moves_[moves_.size() - 2] == "i")
      moves_.pop_back();
    put("d");
    return at + (word(at + 1) == "through" || word(at + 1) == "up" ? 2 : 1);
  }

  /// The number of loops at a place; -1 for "all" without a number.
  int number_or_all(std::size_t at) const {
    if (word(at) == "the" || word(at) == "first" || word(at) == "remaining") return number_or_all(at + 1);
    if (word(at) != "all") return number_of(word(at));
    const std::size_t next = word(at + 1) == "the" || word(at + 1) == "of" ? at + 2 : at + 1;
    return number_of(word(next)) > 0 ? number_of(word(next)) : -1;
  }

  std::size_t pull(std::size_t at) {
    if (!moves_.empty() && moves_.back() == "o") moves_.pop_back();
    const int loops = number_or_all(at);
    put(loops < 0 ? "p*" : "p" + std::to_string(loops));
    while (at < words_.size() && word(at).substr(0, 4) != "loop" && word(at).substr(0, 2) != "lp") ++at;
    return at + 1;
  }

  bool is_times(std::size_t at) const {
    const std::string_view next = word(at + 1) == "more" ? word(at + 2) : word(at + 1);
    return next == "times" || next == "x" || word(at) == "twice";
  }

  /// What stands since the bracket was opened (or all), so many times.
  std::size_t repeat(std::size_t at) {
    const int times = number_of(word(at)) + (word(at + 1) == "more" ? 1 : 0);
    if (moves_.size() > opened_) {
      std::string group = "(";
      for (std::size_t i = opened_; i < moves_.size(); ++i) group += (i > opened_ ? " " : "") + moves_[i];
      moves_.resize(opened_);
      moves_.push_back(group + ")" + std::to_string(times));
      opened_ = moves_.size();
    }
    return at + 2;
  }

  void put(std::string move) {
    if (moves_.size() < stitch::most_moves) moves_.push_back(std::move(move));
  }

  const std::vector<std::string_view>& words_;
  std::vector<std::string> moves_;
  std::size_t opened_ = 0;
  bool inserts_ = false;
};

std::optional<StitchKind> standard(const std::vector<StitchKind>& kinds, std::string_view name) {
  const auto id = stitch::find_kind(kinds, name);
  return id ? std::optional<StitchKind>(kinds[*id]) : std::nullopt;
}

/// The stitch of a family by how many of which it is made; the usual one where the words do not say.
std::optional<StitchKind> of_family(Family family, const std::optional<ManyOf>& many,
                                    const std::vector<StitchKind>& kinds) {
  const std::uint32_t n = many ? many->count : 0;
  if (family == Family::picot) return stitch::picot(n > 0 && many->stitch == "ch" ? static_cast<int>(n) : 3);
  const auto base = many ? standard(kinds, many->stitch) : std::nullopt;
  const bool several = base && n > 1 && n <= most_legs && base->takes == 1 && family != Family::loop;
  if (!several) return standard(kinds, usual_name(family));
  if (family == Family::popcorn) return stitch::popcorn(*base, static_cast<int>(n));
  return stitch::cluster(*base, static_cast<int>(n));
}

/// A stitch from its moves; several legs close as its family does.
std::optional<StitchKind> of_moves(Family family, const ToldMoves& told) {
  if (told.moves.empty() || told.left != 1) return std::nullopt;
  StitchKind kind;
  kind.moves = told.moves;
  const bool several = stitch::shape_of(kind).legs > 1;
  if (several) kind.close = family == Family::popcorn ? stitch::Close::oval : stitch::Close::bar;
  return kind;
}

bool says(const std::vector<std::string_view>& words, std::initializer_list<std::string_view> some) {
  return std::any_of(words.begin(), words.end(), [&](std::string_view word) {
    return std::find(some.begin(), some.end(), word) != some.end();
  });
}

} // namespace

ToldMoves told_moves(std::string_view text) {
  const std::string low = plain(text);
  return MoveReader(words_of(low)).read();
}

std::optional<ManyOf> many_of(std::string_view text, const words::Vocabulary& vocabulary) {
  const words::Lattice lattice = words::lattice(words::fold(text), vocabulary);
  const words::Word* number = nullptr;
  const words::Word* stitch = nullptr;
  std::uint32_t end = 0;
  for (const words::Word& word : lattice.words) {
    if (word.begin < end) continue;
    end = word.end;
    const bool is_stitch = word.kind == words::WordKind::phrase &&
                           vocabulary.concepts[word.means].sort == words::ConceptClass::stitch;
    const bool behind = is_stitch && number != nullptr;
    const bool before = word.kind == words::WordKind::number && stitch != nullptr; // "ch 3"
    if (behind || before)
      return ManyOf{behind ? number->number : word.number,
                    vocabulary.concepts[behind ? word.means : stitch->means].name};
    number = word.kind == words::WordKind::number ? &word : nullptr;
    stitch = is_stitch ? &word : nullptr;
  }
  return std::nullopt;
}

const char* usual_name(Family family) {
  constexpr std::array<const char*, 6> names{"", "bo", "puff", "pc", "loop st", "picot"};
  return names[static_cast<std::size_t>(family)];
}

Family family_of(std::string_view name) {
  const std::string low = plain(name);
  const auto words = words_of(low);
  if (says(words, {"bobble", "bobbles", "bo", "bob", "mb", "cluster", "clusters", "cl", "nupp"}))
    return Family::bobble;
  if (says(words, {"puff", "puffs"})) return Family::puff;
  if (says(words, {"popcorn", "popcorns", "pop", "pc"})) return Family::popcorn;
  if (says(words, {"picot", "picots"})) return Family::picot;
  const bool a_stitch = says(words, {"st", "stitch", "sts", "stitches"});
  if (a_stitch && says(words, {"loop", "lp", "fur", "loopy"})) return Family::loop;
  return Family::none;
}

namespace {

/// A stitch in an explanation, and the number before it or behind a chain.
struct Piece {
  std::string name;
  std::uint32_t count = 0;
};

/// The pieces of work of an explanation, up to the slip stitch; none if other work follows that, or a bracket
/// is closed.
std::optional<std::vector<Piece>> pieces_to_slip(std::string_view text, const words::Vocabulary& vocabulary) {
  const words::Lattice lattice = words::lattice(words::fold(text), vocabulary);
  std::vector<Piece> pieces;
  std::uint32_t end = 0, number = 0;
  bool slipped = false, parted = false;
  for (const words::Word& word : lattice.words) {
    if (word.begin < end) continue;
    end = word.end;
    const bool phrase = word.kind == words::WordKind::phrase;
    const auto sort = phrase ? vocabulary.concepts[word.means].sort : words::ConceptClass::word;
    const bool stitch = sort == words::ConceptClass::stitch;
    if (word.mark == ')' || sort == words::ConceptClass::decrease) return std::nullopt;
    if (word.kind == words::WordKind::mark) parted = slipped;
    if (slipped && parted && stitch) return std::nullopt;
    if (word.kind == words::WordKind::number && !slipped) {
      const bool of_chain = !pieces.empty() && pieces.back().name == "ch" && pieces.back().count == 0;
      (of_chain ? pieces.back().count : number) = word.number;
    }
    if (!stitch || slipped) continue;
    pieces.push_back({vocabulary.concepts[word.means].name, number});
    number = 0;
    slipped = pieces.back().name == "sl st";
  }
  return slipped ? std::optional(pieces) : std::nullopt;
}

} // namespace

std::optional<StitchKind> stitch_with_chains(std::string_view text, const words::Vocabulary& vocabulary,
                                             const std::vector<StitchKind>& kinds) {
  constexpr std::uint32_t most_chains = 12;
  const auto pieces = pieces_to_slip(text, vocabulary);
  if (!pieces || pieces->size() != 3 || (*pieces)[1].name != "ch" || (*pieces)[0].count > 1)
    return std::nullopt;
  const std::uint32_t chains = std::max(1U, (*pieces)[1].count);
  const auto base = standard(kinds, (*pieces)[0].name);
  if (!base || base->takes != 1 || base->makes != 1 || chains > most_chains) return std::nullopt;
  return stitch::with_chains(*base, static_cast<int>(chains));
}

std::optional<OwnStitch> own_stitch(std::string_view name, Family family, std::string_view text,
                                    const words::Vocabulary& vocabulary,
                                    const std::vector<StitchKind>& kinds) {
  const ToldMoves told = told_moves(text);
  const std::optional<ManyOf> many = many_of(text, vocabulary);
  const bool by_family = family == Family::loop || family == Family::picot || (many && many->count > 1);
  std::optional<StitchKind> kind;
  if (!by_family || family == Family::none) kind = of_moves(family, told);
  if (!kind && family != Family::none) kind = of_family(family, many, kinds);
  if (!kind) return std::nullopt;
  kind->name = name;
  kind->title = name;
  kind->own = true;
  return OwnStitch{std::move(*kind), by_family ? 1 : told.left};
}

} // namespace whorl::pattern
