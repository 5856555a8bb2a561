#include "pattern/placed_on.hpp"

#include "pattern/reference.hpp"
#include "words/ascii.hpp"

#include <algorithm>
#include <optional>
#include <string_view>

namespace whorl::pattern {
namespace {

/// A part of the tree, by number.
using PartNumber = std::uint32_t;

/// The word that begins at `at`, and where it ends.
std::string_view word_at(std::string_view text, std::size_t at) {
  return text.substr(at, std::min(text.find(' ', at), text.size()) - at);
}

/// "sew to the hat over rounds 3-5": whether a text says on what, besides in which rounds.
bool names_a_place(std::string_view text) {
  for (const std::string_view before : {" to ", " onto ", " on ", " of "}) {
    for (std::size_t at = text.find(before); at != std::string_view::npos; at = text.find(before, at + 1)) {
      std::size_t word = at + before.size();
      if (word_at(text, word) == "the") word += 4;
      const std::size_t next = word + word_at(text, std::min(word, text.size())).size() + 1;
      const bool is_round = next < text.size() && words::is_digit(text[next]);
      if (word < text.size() && !words::is_digit(text[word]) && !is_round) return true;
    }
  }
  return false;
}

class PlacingOn {
public:
  PlacingOn(Tree& tree, const Reader& reader) : tree_(tree), reader_(reader) {}

  void settle() {
    for (Placing& placing : tree_.placings)
      if (placing.from != 0 && placing.part < tree_.parts.size()) settle(placing);
  }

private:
  void settle(Placing& placing) const {
    const bool in_hand =
        placing.after_round < end_round(tree_, placing.part) && has_both(placing.part, placing);
    if (in_hand) return;
    if (const auto named = last_named(placing)) {
      placing.part = *named;
    } else if (const auto owner = owner_of(placing)) {
      placing.part = *owner;
    } else if (placing.what != What::eye && names_a_place(placing.text)) {
      placing.from = placing.to = 0;
    }
  }

  /// The last part named that has the rounds, else the last named: "sew the ears to the head between rounds 2
  /// and 5".
  std::optional<PartNumber> last_named(const Placing& placing) const {
    std::optional<PartNumber> with_rounds, named;
    const std::string_view text = placing.text;
    for (std::size_t at = 0; at < text.size();) {
      const std::size_t end = std::min(text.find(' ', at), text.size());
      if (const auto part = part_of_name(text.substr(at, end - at))) {
        named = part;
        if (has_both(*part, placing)) with_rounds = part;
      }
      at = end + 1;
    }
    return with_rounds ? with_rounds : named;
  }

  std::optional<PartNumber> part_of_name(std::string_view word) const {
    for (PartNumber part = 0; part < tree_.parts.size(); ++part)
      if (names(word, part)) return part;
    return std::nullopt;
  }

  bool names(std::string_view word, PartNumber part) const {
    const bool is_word = std::none_of(word.begin(), word.end(), words::is_digit);
    return word.size() > 2 && is_word && names_part(word, tree_.parts[part].name, reader_.vocabulary) > 0;
  }

  /// The part just finished if it has the rounds, unless it is the last; else the longest that has them.
  std::optional<PartNumber> owner_of(const Placing& placing) const {
    const bool behind_all = placing.after_round >= tree_.rounds.size();
    if (has_both(placing.part, placing) && !behind_all) return placing.part;
    std::optional<PartNumber> owner;
    for (PartNumber part = 0; part < tree_.parts.size(); ++part)
      if (has_both(part, placing) && (!owner || rounds_of(part) > rounds_of(*owner))) owner = part;
    return owner;
  }

  bool has_both(PartNumber part, const Placing& placing) const {
    return has(part, placing.from) && has(part, placing.to);
  }

  bool has(PartNumber part, int number) const {
    const auto first = tree_.rounds.begin() + tree_.parts[part].first_round;
    const auto last = tree_.rounds.begin() + end_round(tree_, part);
    return number == 0 || std::any_of(first, last, [number](const RoundText& round) {
             return round.from <= number && number <= round.to;
           });
  }

  int rounds_of(PartNumber part) const {
    int rounds = 0;
    for (std::uint32_t at = tree_.parts[part].first_round; at < end_round(tree_, part); ++at)
      rounds += tree_.rounds[at].to - tree_.rounds[at].from + 1;
    return rounds;
  }

  Tree& tree_;
  const Reader& reader_;
};

} // namespace

void place_on_parts(Tree& tree, const Reader& reader) { PlacingOn(tree, reader).settle(); }

} // namespace whorl::pattern
