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
constexpr std::size_t longest_explanation = 600; ///< bytes that are looked at for a family

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

/// A stitch from its moves; several legs in one place close as its family does. Where loops are left on the
/// hook, all of them come off at the end.
std::optional<StitchKind> of_moves(Family family, const ToldMoves& told) {
  const bool several_places = told.places > 1 && family == Family::none;
  if (told.moves.empty() || told.left < 1 || (several_places && told.places != told.legs))
    return std::nullopt;
  StitchKind kind;
  kind.moves = told.moves + (told.left > 1 ? " p*" : "");
  kind.takes = several_places ? told.places : 1;
  const bool several = stitch::shape_of(kind).legs > 1 && !several_places;
  if (several) kind.close = family == Family::popcorn ? stitch::Close::oval : stitch::Close::bar;
  return kind;
}

bool says(const std::vector<std::string_view>& words, std::initializer_list<std::string_view> some) {
  return std::any_of(words.begin(), words.end(), [&](std::string_view word) {
    return std::find(some.begin(), some.end(), word) != some.end();
  });
}

} // namespace

std::optional<ManyOf> many_of(std::string_view text, const words::Vocabulary& vocabulary) {
  const words::Lattice lattice = words::lattice(words::fold(text), vocabulary);
  const words::Concept left_open = words::find_concept(vocabulary, "unfinished");
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
    const bool unfinished =
        word.kind == words::WordKind::phrase && word.means == left_open; // "3 unfinished dc"
    if (!unfinished) number = word.kind == words::WordKind::number ? &word : nullptr;
    stitch = is_stitch ? &word : nullptr;
  }
  return std::nullopt;
}

std::optional<StitchKind> stitch_told(std::string_view text, const words::Vocabulary& vocabulary,
                                      const std::vector<StitchKind>& kinds) {
  for (const words::Word& word : words::lattice(words::fold(text), vocabulary).words) {
    if (word.kind != words::WordKind::phrase) continue;
    const words::ConceptEntry& means = vocabulary.concepts[word.means];
    if (means.sort != words::ConceptClass::stitch) continue;
    const auto kind = standard(kinds, means.name);
    if (kind && kind->takes == 1 && kind->makes == 1) return kind;
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

Family family_of(std::string_view name, const words::Vocabulary& vocabulary) {
  if (const Family family = family_of(name); family != Family::none) return family;
  for (const words::Word& word : words::lattice(words::fold(name), vocabulary).words) {
    if (word.kind != words::WordKind::phrase) continue;
    const std::string_view means = vocabulary.concepts[word.means].name;
    if (means == "bo" || means == "cl") return Family::bobble;
    if (means == "puff") return Family::puff;
    if (means == "pc") return Family::popcorn;
    if (means == "picot") return Family::picot;
    if (means == "loop st") return Family::loop;
  }
  return Family::none;
}

namespace {

/// Whether a place begins behind the blanks at `at`.
bool names_place(const words::Lattice& lattice, std::string_view text, std::size_t at,
                 const words::Vocabulary& vocabulary) {
  const std::size_t place = text.find_first_not_of(' ', at);
  return std::any_of(lattice.words.begin(), lattice.words.end(), [&](const words::Word& word) {
    return word.begin == place && word.kind == words::WordKind::phrase &&
           vocabulary.concepts[word.means].sort == words::ConceptClass::place;
  });
}

} // namespace

bool says_same_place(std::string_view text, const words::Vocabulary& vocabulary) {
  const words::Folded line = words::fold(text);
  const words::Lattice lattice = words::lattice(line, vocabulary);
  const words::Concept same = words::find_concept(vocabulary, "same");
  const auto& all = lattice.words;
  const auto is_number = [&](std::uint32_t at) {
    return std::any_of(all.begin() + lattice.at[at], all.begin() + lattice.at[at + 1],
                       [](const words::Word& word) { return word.kind == words::WordKind::number; });
  };
  return std::any_of(all.begin(), all.end(), [&](const words::Word& word) {
    const bool one = word.kind == words::WordKind::number && word.number == 1;
    if (one) return names_place(lattice, line.text, word.end, vocabulary);
    return word.kind == words::WordKind::phrase && word.means == same && !is_number(word.begin);
  });
}

bool says_places(std::string_view text, const words::Vocabulary& vocabulary) {
  const words::Folded line = words::fold(text);
  const words::Lattice lattice = words::lattice(line, vocabulary);
  return std::any_of(lattice.words.begin(), lattice.words.end(), [&](const words::Word& word) {
    return word.kind == words::WordKind::number && word.number > 1 &&
           names_place(lattice, line.text, word.end, vocabulary);
  });
}

bool says_closed(std::string_view text, const words::Vocabulary& vocabulary) {
  const words::Folded line = words::fold(text);
  const words::Lattice lattice = words::lattice(line, vocabulary);
  std::uint32_t end = 0;
  for (const words::Word& word : lattice.words) {
    if (word.begin < end) continue;
    end = word.end;
    if (word.kind != words::WordKind::phrase) continue;
    const std::string_view means = vocabulary.concepts[word.means].name;
    const bool closed = means == "closed together" || means == "together";
    if (closed && !names_place(lattice, line.text, word.end, vocabulary)) return true; // "in one | stitch"
  }
  return false;
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
  const ToldMoves told = told_moves(text, vocabulary.language);
  const std::optional<ManyOf> many = many_of(text, vocabulary);
  const bool by_family = family == Family::loop || family == Family::picot || (many && many->count > 1);
  std::optional<StitchKind> kind;
  if (!by_family || family == Family::none)
    if (told.left == 1 || family == Family::none) kind = of_moves(family, told);
  if (!kind && family != Family::none) kind = of_family(family, many, kinds);
  if (!kind) return std::nullopt;
  kind->name = name;
  kind->title = name;
  kind->own = true;
  return OwnStitch{std::move(*kind), by_family ? 1 : told.left};
}

} // namespace whorl::pattern
