#include "pattern/placed_on.hpp"

#include "pattern/reference.hpp"
#include "pattern/sentence_around.hpp"
#include "pattern/text_words.hpp"
#include "words/ascii.hpp"
#include "words/lattice.hpp"

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

class PlacingOn {
public:
  PlacingOn(Tree& tree, const Reader& reader) : tree_(tree), reader_(reader) {}

  void settle() {
    for (std::size_t i = 1; i < tree_.placings.size(); ++i)
      tell_where(tree_.placings[i - 1], tree_.placings[i]);
    for (Placing& placing : tree_.placings) {
      if (placing.from == 0 || placing.part >= tree_.parts.size()) continue;
      const PartNumber where = placing.part;
      settle(placing);
      if (placing.what == What::sew && placing.from != 0) name_sewn(placing, where);
    }
    for (Placing& placing : tree_.placings)
      if (placing.what == What::sew && placing.sewn < tree_.parts.size()) tell_copies(placing);
  }

private:
  /// "Insert the eyes." and, on the next line, "Place them between rounds 7 and 8, 6 sts apart."
  static void tell_where(Placing& thing, const Placing& note) {
    const bool eyes = thing.what == What::eye || thing.what == What::bead;
    const bool told = note.what == What::note && note.from > 0 && (note.apart > 0 || !note.after.empty());
    if (!eyes || thing.from > 0 || !told || note.part != thing.part || note.after_round != thing.after_round)
      return;
    thing.from = note.from, thing.to = note.to, thing.between = note.between;
    thing.apart = note.apart, thing.after = note.after;
  }

  /// The first part that a text names and that is not what it is sewn to, and how many of it.
  void name_first_part(Placing& placing, std::string_view text) const {
    for (std::size_t at = 0; at < text.size() && placing.sewn == no_node;) {
      const std::size_t end = std::min(text.find(' ', at), text.size());
      const auto part = part_of_name(without_mark(text.substr(at, end - at)));
      if (part && *part != placing.part) {
        placing.sewn = *part;
        const words::Folded before = words::fold(text.substr(0, at));
        const auto numbers = words::lattice(before, reader_.vocabulary).words;
        placing.copies = copies_named(numbers, before.text, before.text.size());
      }
      at = end + 1;
    }
  }

  /// What is sewn on: the first part named in its sentence that is not what it is sewn to; where none is, nor
  /// any thing that is bought, the one in whose rounds the sentence stands. How far a part reaches that is
  /// folded is not told.
  void name_sewn(Placing& placing, PartNumber where) const {
    const std::string_view text = sentence_around(reader_.source, placing.span);
    for (const std::string_view folding : {"fold", "Fold", "pinch", "Pinch"})
      if (text.find(folding) != std::string_view::npos) return;
    name_first_part(placing, placing.text);
    if (placing.sewn == no_node) name_first_part(placing, text);
    const words::Concept behind = words::find_concept(reader_.vocabulary, "at the back");
    const auto words = words::lattice(words::fold(text), reader_.vocabulary).words;
    const bool names_thing = std::any_of(words.begin(), words.end(), [this](const words::Word& word) {
      return word.kind == words::WordKind::phrase &&
             reader_.vocabulary.concepts[word.means].sort == words::ConceptClass::thing; // "Sew beads …"
    });
    if (placing.sewn == no_node && where != placing.part && !names_thing) placing.sewn = where;
    const words::Concept bead = words::find_concept(reader_.vocabulary, "bead"),
                         eye = words::find_concept(reader_.vocabulary, "eye");
    const auto names = [&words](words::Concept means) {
      return std::any_of(words.begin(), words.end(), [means](const words::Word& word) {
        return word.kind == words::WordKind::phrase && word.means == means;
      });
    };
    const bool holes = placing.apart > 0 || !placing.after.empty();
    if (placing.sewn == no_node && names(bead) && (holes || placing.centred)) placing.what = What::bead;
    if (placing.sewn == no_node && placing.what == What::sew && holes && names(eye)) placing.what = What::eye;
    placing.behind = names(behind);
  }

  /// How many of the part go there, and whether its name tells where: ears sit at both sides, a snout in the
  /// middle of the face.
  void tell_copies(Placing& placing) const {
    const Part& part = tree_.parts[placing.sewn];
    if (placing.copies == 0) {
      const auto sentences = static_cast<std::uint32_t>(
          std::count_if(tree_.placings.begin(), tree_.placings.end(), [&placing](const Placing& other) {
            return other.what == What::sew && other.sewn == placing.sewn && other.from > 0;
          }));
      const bool shared = sentences > 0 && part.make % sentences == 0; // front paws, and back ones
      placing.copies =
          static_cast<std::uint16_t>(std::min(shared ? part.make / sentences : part.make, 1000U));
    }
    const bool unsaid = placing.apart == 0 && placing.after.empty();
    if (unsaid && placing.copies == 2 && is_called(part, TextWord::at_sides)) placing.spread = true;
    if (unsaid && placing.copies == 1 && is_called(part, TextWord::at_front)) placing.centred = true;
  }

  /// Whether the name of a part holds a word of a kind.
  bool is_called(const Part& part, TextWord kind) const {
    const std::string name = words::fold(part.name).text;
    for (std::size_t at = 0; at < name.size(); ++at) {
      const bool begins = at == 0 || !words::is_folded_letter(name[at - 1]);
      if ((begins || !reader_.vocabulary.blanks_between_words) &&
          end_of_text_word(reader_.vocabulary, name, at, kind) > at)
        return true;
    }
    return false;
  }

  /// "Sew two of the paws to Rnd 9", "the 2 front paws": the number before the name of the part; 0: none.
  std::uint16_t copies_named(const std::vector<words::Word>& words, std::string_view folded,
                             std::size_t name) const {
    constexpr std::size_t most_before = 16; // "of the front "
    std::uint16_t number = 0;
    for (const words::Word& word : words) {
      if (word.kind != words::WordKind::number || word.end > name || word.end + most_before < name) continue;
      const std::string_view gap = folded.substr(word.end, name - word.end);
      const bool one_breath = gap.find_first_of(",.;0123456789") == std::string_view::npos;
      if (one_breath && word.number > 0 && word.number < 1000)
        number = static_cast<std::uint16_t>(word.number);
    }
    return number;
  }

  static std::string_view without_mark(std::string_view word) {
    while (!word.empty() && std::string_view(".,;:)").find(word.back()) != std::string_view::npos)
      word.remove_suffix(1);
    return word;
  }

  void settle(Placing& placing) const {
    const bool in_hand =
        placing.after_round < end_round(tree_, placing.part) && has_both(placing.part, placing);
    if (in_hand) return;
    const bool elsewhere = names_another_place(placing.text);
    const auto named = last_named(placing);
    if (const auto on = sewn_on(placing, named)) {
      placing.part = *on;
      return;
    }
    const auto owner = named ? named : owner_of(placing);
    const bool unsaid = elsewhere || is_sewn_unsaid(placing, named);
    if (owner && (has_both(*owner, placing) || !unsaid)) {
      placing.part = *owner;
    } else if (placing.what != What::eye && unsaid) {
      placing.from = placing.to = 0;
    }
  }

  /// "Sew the snout between rounds 9 and 13": the part in whose rounds the sentence stands, else the only
  /// other one that has these rounds.
  std::optional<PartNumber> sewn_on(const Placing& placing, std::optional<PartNumber> named) const {
    if (placing.what != What::sew || !named || is_sewn_to(placing.text, *named)) return std::nullopt;
    if (names_another_place(sentence_around(reader_.source, placing.span))) return std::nullopt;
    if (placing.part != *named && has_both(placing.part, placing)) return placing.part;
    std::optional<PartNumber> only;
    for (PartNumber part = 0; part < tree_.parts.size(); ++part) {
      if (part == *named || !has_both(part, placing)) continue;
      if (only) return std::nullopt;
      only = part;
    }
    return only;
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

  /// "sew to the hat over rounds 3-5": whether a text says on what that is no part here.
  bool names_another_place(std::string_view text) const {
    for (const std::string_view before : {" to ", " onto ", " on ", " of "})
      for (std::size_t at = text.find(before); at != std::string_view::npos; at = text.find(before, at + 1))
        if (is_another_place(text, at + before.size())) return true;
    return false;
  }

  /// "flatten and sew to row 13": no part is named as what it is sewn to; that may stand in another text.
  bool is_sewn_unsaid(const Placing& placing, std::optional<PartNumber> named) const {
    if (placing.what != What::sew || tree_.parts.size() < 2) return false;
    return !named || !is_sewn_to(placing.text, *named);
  }

  bool is_sewn_to(std::string_view text, PartNumber part) const {
    for (const std::string_view before : {" to ", " onto ", " on ", " of ", " in ", " into "})
      for (std::size_t at = text.find(before); at != std::string_view::npos; at = text.find(before, at + 1)) {
        if (before == " of " && text.find(" to ", at) != std::string_view::npos)
          continue; // "two of the paws"
        std::size_t word = at + before.size();
        if (word_at(text, word) == "the") word = std::min(word + 4, text.size());
        if (names(word_at(text, word), part)) return true;
      }
    return false;
  }

  bool is_another_place(std::string_view text, std::size_t word) const {
    if (word_at(text, word) == "the") word = std::min(word + 4, text.size());
    std::string_view place = word_at(text, word);
    for (const std::string_view small :
         {"at", "over", "between", "around"}) // "sew the ears on at rounds 4-9"
      if (place == small) return false;
    const std::size_t next = word + place.size() + 1;
    const bool ends = !place.empty() && (place.back() == ',' || place.back() == '.');
    if (ends) place.remove_suffix(1);
    const bool is_round = !ends && next < text.size() && words::is_digit(text[next]);
    return !place.empty() && !words::is_digit(place.front()) && !is_round && !part_of_name(place);
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
