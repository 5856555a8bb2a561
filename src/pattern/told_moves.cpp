#include "pattern/told_moves.hpp"

#include "stitch/moves.hpp"
#include "words/lattice.hpp"

#include <algorithm>
#include <vector>

namespace whorl::pattern {

namespace {

constexpr std::size_t longest_explanation = 600; ///< bytes that are looked at for moves
constexpr std::uint32_t most_chains = 20, most_times = 40;

const words::Vocabulary* words_of(std::string_view language) {
  return words::find_vocabulary_of(language, "moves");
}

/// A word of an explanation: a concept by its name, a number, a bracket or star, or any other word.
struct Token {
  std::string_view name;
  std::uint32_t number = 0;
  char mark = 0;
};

/// The longest phrase or number at a place, else any word.
const words::Word* word_at(const words::Lattice& lattice, std::size_t at) {
  const words::Word* best = nullptr;
  for (auto i = lattice.at[at]; i < lattice.at[at + 1]; ++i) {
    const words::Word& word = lattice.words[i];
    const bool known = word.kind != words::WordKind::unknown;
    const bool better = best == nullptr || (known && best->kind == words::WordKind::unknown) ||
                        (known && word.end > best->end);
    if (better) best = &word;
  }
  return best;
}

std::vector<Token> tokens_of(std::string_view text, const words::Vocabulary& vocabulary) {
  const words::Folded folded = words::fold(text.substr(0, longest_explanation));
  const words::Lattice lattice = words::lattice(folded, vocabulary);
  std::vector<Token> tokens;
  for (std::size_t at = 0; at < folded.text.size();) {
    const words::Word* word = word_at(lattice, at);
    const bool open = std::string_view("()[]*").find(folded.text[at]) != std::string_view::npos;
    if (open) tokens.push_back({{}, 0, folded.text[at]});
    if (word != nullptr && !open && word->kind != words::WordKind::mark) {
      const bool means = word->kind == words::WordKind::phrase && word->means != words::no_concept;
      tokens.push_back({means ? std::string_view(vocabulary.concepts[word->means].name) : "", word->number});
    }
    at = word == nullptr || open ? at + 1 : std::max<std::size_t>(word->end, at + 1);
  }
  return tokens;
}

/// Follows the words of an explanation move by move.
class MoveReader {
public:
  explicit MoveReader(std::vector<Token> tokens) : tokens_(std::move(tokens)) {}

  ToldMoves read() {
    for (std::size_t at = 0; at < tokens_.size();) at = take(at);
    ToldMoves told;
    if (legs_ == 0) return told;
    for (const std::string& move : moves_) told.moves += (told.moves.empty() ? "" : " ") + move;
    told.left = loops();
    told.legs = legs_;
    told.places = std::max(1, places_);
    return told;
  }

private:
  std::string_view name(std::size_t at) const {
    return at < tokens_.size() ? tokens_[at].name : std::string_view{};
  }
  char mark(std::size_t at) const { return at < tokens_.size() ? tokens_[at].mark : '\0'; }
  std::uint32_t number(std::size_t at) const { return at < tokens_.size() ? tokens_[at].number : 0; }

  std::size_t take(std::size_t at) {
    if (mark(at) != 0) return take_mark(at);
    if (name(at) == "move yarn over") return take_yarn_over(at);
    if (name(at) == "move insert") return insert(at), at + 1;
    if (name(at) == "move draw") return take_pull(at);
    if (name(at) == "move through" && number_or_all(at + 1) != 0) return pull(at + 1);
    if (name(at) == "move chain" && legs_ > 0) return take_chain(at);
    if (name(at) == "move again") return take_again(at);
    if (name(at) == "twice over") return repeat(2, at), at + 1;
    if (name(at) == "thrice over") return repeat(3, at), at + 1;
    if (number(at) > 1 && is_times(at)) return repeat(times_at(at), at), behind_times(at);
    return at + 1;
  }

  /// A bracket or star opens a group; the second star closes it, or one behind which a number of times
  /// stands.
  std::size_t take_mark(std::size_t at) {
    if (mark(at) == ')' || mark(at) == ']') return at + 1;
    const bool times = number(at + 1) > 1 && is_times(at + 1);
    const bool closes = mark(at) == '*' && (star_ || times);
    star_ = mark(at) == '*' && !star_;
    if (!closes) open_group();
    return at + 1;
  }

  void open_group() {
    opened_ = moves_.size();
    group_legs_ = group_next_ = 0;
  }

  /// "Yarn over twice, insert hook" is two of them.
  std::size_t take_yarn_over(std::size_t at) {
    put("o");
    if (name(at + 1) == "twice over") return put("o"), at + 2;
    if (number(at + 1) < 2 || number(at + 1) > most_chains || !is_times(at + 1)) return at + 1;
    for (std::uint32_t i = 1; i < number(at + 1); ++i) put("o");
    return behind_times(at + 1);
  }

  /// A chain in the middle of a stitch is a pull through the last loop; one behind it holds it closed.
  std::size_t take_chain(std::size_t at) {
    const std::uint32_t chains = std::min(most_chains, std::max<std::uint32_t>(1, number(at + 1)));
    for (std::uint32_t i = 0; i < chains && loops() > 1; ++i) put("p1");
    return number(at + 1) > 0 ? at + 2 : at + 1;
  }

  /// Loops on the hook so far; 0: fewer than the moves need.
  int loops() const {
    std::string row;
    for (const std::string& move : moves_) row += " " + move;
    const auto parsed = stitch::parse_moves(row);
    return parsed ? stitch::loops_at_end(*parsed).value_or(0) : 0;
  }

  /// The place is the next one where the words up to the next move say so.
  void insert(std::size_t at) {
    put("i");
    ++legs_;
    ++group_legs_;
    bool next = places_ == 0;
    for (std::size_t i = at + 1; i < tokens_.size() && name(i).substr(0, 5) != "move " && mark(i) == 0; ++i) {
      if (name(i) == "same place told") break;
      next = next || name(i) == "next place told";
      group_next_ += name(i) == "next place told" ? 1 : 0;
    }
    places_ += next ? 1 : 0;
  }

  /// "Pull up a loop", "draw a loop through", "pull through 2 loops": up to the next "through" and its
  /// number.
  std::size_t take_pull(std::size_t at) {
    for (std::size_t next = at + 1; next < std::min(tokens_.size(), at + 5); ++next) {
      if (name(next) == "move through" && number_or_all(next + 1) != 0) return pull(next + 1);
      if (name(next) == "move yarn over") break; // "pull up loop, yo, pull through 2"
    }
    if (!moves_.empty() && moves_.back() == "o" && moves_.size() > 1 && moves_[moves_.size() - 2] == "i")
      moves_.pop_back();
    put("d");
    return name(at + 1) == "move through" ? at + 2 : at + 1;
  }

  /// The number of loops at a place; -1 for "all" without a number.
  int number_or_all(std::size_t at) const {
    while (name(at) == "place told") ++at;
    if (name(at) != "all loops") return static_cast<int>(std::min<std::uint32_t>(number(at), 999));
    ++at;
    while (name(at) == "place told") ++at;
    return number(at) > 0 ? static_cast<int>(std::min<std::uint32_t>(number(at), 999)) : -1;
  }

  std::size_t pull(std::size_t at) {
    if (!moves_.empty() && moves_.back() == "o") moves_.pop_back();
    const int loops = number_or_all(at);
    put(loops < 0 ? "p*" : "p" + std::to_string(loops));
    while (at < tokens_.size() && name(at) != "loop word" && name(at).substr(0, 5) != "move " &&
           mark(at) == 0)
      ++at;
    return name(at) == "loop word" ? at + 1 : at;
  }

  /// "Rep from *"; "repeat from yo 2 more times"; "repeat from yo over next 2 sts" is so many passes more.
  std::size_t take_again(std::size_t at) {
    constexpr std::size_t most_between = 6;
    if (mark(at + 1) == '*') return at + 2;
    for (std::size_t next = at + 1; next < std::min(tokens_.size(), at + 1 + most_between); ++next) {
      if (number(next) == 0 || number(next) >= most_times) continue;
      if (is_times(next)) return repeat(times_at(next), next), behind_times(next);
      if (name(next - 1) != "next place told") return at + 1;
      repeat(number(next) + 1, next);
      return next + 1;
    }
    return at + 1;
  }

  bool is_times(std::size_t at) const {
    return name(at + (name(at + 1) == "more times" ? 2 : 1)) == "times of moves";
  }
  std::uint32_t times_at(std::size_t at) const {
    return std::min(most_times, number(at) + (name(at + 1) == "more times" ? 1 : 0));
  }
  std::size_t behind_times(std::size_t at) const { return at + (name(at + 1) == "more times" ? 3 : 2); }

  /// What stands since the bracket was opened (or all), so many times; each time into the next place where
  /// its insertions said so and nothing behind it says otherwise.
  void repeat(std::uint32_t times, std::size_t at) {
    if (moves_.size() <= opened_) return;
    std::string group = "(";
    for (std::size_t i = opened_; i < moves_.size(); ++i) group += (i > opened_ ? " " : "") + moves_[i];
    moves_.resize(opened_);
    moves_.push_back(group + ")" + std::to_string(times));
    const int more = static_cast<int>(times) - 1;
    legs_ += more * group_legs_;
    if (!says_same(at)) places_ += more * group_next_;
    open_group();
  }

  /// "… 5 times in the same st", up to the next move.
  bool says_same(std::size_t at) const {
    for (; at < tokens_.size() && name(at).substr(0, 5) != "move "; ++at)
      if (name(at) == "same place told") return true;
    return false;
  }

  void put(std::string move) {
    if (moves_.size() < stitch::most_moves) moves_.push_back(std::move(move));
  }

  const std::vector<Token> tokens_;
  std::vector<std::string> moves_;
  std::size_t opened_ = 0;
  int legs_ = 0, places_ = 0;
  int group_legs_ = 0,
      group_next_ = 0; ///< insertions since the group was opened, and those into a next place
  bool star_ = false;
};

} // namespace

ToldMoves told_moves(std::string_view text, std::string_view language) {
  const words::Vocabulary* vocabulary = words_of(language);
  if (vocabulary == nullptr) return {};
  return MoveReader(tokens_of(text, *vocabulary)).read();
}

} // namespace whorl::pattern
