#include "pattern/told_place.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

using words::Concept;
using words::Word;
using words::WordKind;

/// A line in which places are looked for that a colon tells.
struct Line {
  std::string_view text;
  const words::Lattice& lattice;
  Concept in, each, next, space, loop, join, turn, around, slip;
};

bool means(const Line& line, std::uint32_t at, Concept wanted) {
  for (std::uint32_t i = line.lattice.at[at]; i < line.lattice.at[at + 1]; ++i)
    if (line.lattice.words[i].kind == WordKind::phrase && line.lattice.words[i].means == wanted) return true;
  return false;
}

/// The longest word at a place, or nullptr.
const Word* word_at(const Line& line, std::uint32_t at) {
  return line.lattice.at[at] == line.lattice.at[at + 1] ? nullptr : &line.lattice.words[line.lattice.at[at]];
}

/// Whether the words in [begin, end) tell a place among chains: "in each ch-1 sp", or ending in such a word
/// before the one for "each" or "in" where a language puts it so.
bool tells_place(const Line& line, std::uint32_t begin, std::uint32_t end) {
  bool place = false, into = false;
  for (std::uint32_t at = begin; at < end; ++at) {
    place = place || means(line, at, line.space) || means(line, at, line.loop);
    into = into || means(line, at, line.in) || means(line, at, line.each) || means(line, at, line.next);
  }
  return place && into;
}

/// Where the clause begins in which a colon stands.
std::uint32_t begin_of_clause(const Line& line, std::uint32_t colon) {
  const std::size_t mark = line.text.substr(0, colon).find_last_of(",;.)]*(");
  return mark == std::string_view::npos ? 0 : static_cast<std::uint32_t>(mark + 1);
}

bool ends_list(const Line& line, std::uint32_t at) {
  if (std::string_view(";([=*").find(line.text[at]) != std::string_view::npos) return true;
  return means(line, at, line.join) || means(line, at, line.turn) || means(line, at, line.around);
}

/// Where the list ends that begins at a place: before the mark or word that ends it, and before a last slip
/// stitch, which closes the round unless the list begins with one too.
std::uint32_t end_of_list(const Line& line, std::uint32_t begin) {
  std::uint32_t item = begin, end = begin, slip = 0; // slip: where an item begins that is nothing else
  const auto size = static_cast<std::uint32_t>(line.text.size());
  while (end < size && !ends_list(line, end)) {
    const Word* word = word_at(line, end);
    const bool mark = word == nullptr || word->kind == WordKind::mark;
    if (mark && line.text[end] == '.' && line.text.substr(end, 2) != ".,") break; // "2 cat., 3 m. alte"
    if (mark && line.text[end] == ',') item = end;
    if (means(line, end, line.slip)) slip = item;
    end = word == nullptr ? end + 1 : std::max(word->end, end + 1);
  }
  const bool last = slip > begin && slip == item;
  return trim_separators(line.text, begin, last ? slip : end);
}

} // namespace

void pair_told_places(const words::Folded& text, const words::Lattice& lattice,
                      const words::Vocabulary& vocabulary, Brackets& brackets) {
  const std::string_view typed = text.text;
  if (typed.find(':') == std::string_view::npos) return;
  const auto named = [&vocabulary](const char* name) { return words::find_concept(vocabulary, name); };
  const Line line{typed,         lattice,         named("in"),         named("each"),
                  named("next"), named("space"),  named("chain loop"), named("join"),
                  named("turn"), named("around"), named("sl st")};
  for (std::size_t at = typed.find(':'); at != std::string_view::npos; at = typed.find(':', at + 1)) {
    const auto colon = static_cast<std::uint32_t>(at);
    if (!tells_place(line, begin_of_clause(line, colon), colon)) continue;
    const std::uint32_t begin = skip_blanks(typed, colon + 1);
    const std::uint32_t end = end_of_list(line, begin);
    const bool list = typed.substr(begin, end - begin).find(',') != std::string_view::npos;
    if (!list || brackets.at[colon] != no_bracket) continue;
    brackets.at[colon] = static_cast<std::int32_t>(brackets.all.size());
    brackets.all.push_back({Passage::slashes, colon, begin, end, end});
  }
}

} // namespace whorl::pattern
