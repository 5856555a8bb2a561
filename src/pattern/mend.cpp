#include "pattern/mend.hpp"

#include "pattern/limits.hpp"
#include "words/lattice.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

using words::Word;
using words::WordKind;

/// A change of a line's work: bytes [begin, end) of it become `text`.
struct Edit {
  std::size_t begin = 0;
  std::size_t end = 0;
  std::string text;
  int size = 1;          ///< letters changed
  bool of_count = false; ///< the stated count is changed
};

std::string applied(std::string_view work, const Edit& edit) {
  return std::string(work.substr(0, edit.begin)) + edit.text + std::string(work.substr(edit.end));
}

/// What a line is, with its words.
struct Suspect {
  const Reader& reader;
  Span span;
  std::string_view work;
  std::string above; ///< the start it is worked into, if that stands in the line above
  words::Folded line;
  words::Lattice lattice;

  std::size_t place(std::uint32_t folded) const { return line.from[folded] - span.begin; }
};

Suspect suspect_of(const Reader& reader, const Way& way) {
  Suspect suspect{reader, way.work, reader.source.at(way.work), {}, {}, {}};
  if (!way.above.empty()) suspect.above = std::string(reader.source.at(way.above)) + ", ";
  suspect.line = words::fold(suspect.work, way.work.begin);
  suspect.lattice = words::lattice(suspect.line, reader.vocabulary);
  return suspect;
}

/// Letters changed, added, lost or swapped between two words; more than `most` is `most + 1`.
int letters_apart(std::string_view a, std::string_view b, int most) {
  if (a.size() > b.size() + 2 || b.size() > a.size() + 2) return most + 1;
  std::vector<std::vector<int>> apart(a.size() + 1, std::vector<int>(b.size() + 1));
  for (std::size_t i = 0; i <= a.size(); ++i)
    for (std::size_t j = 0; j <= b.size(); ++j) {
      if (i == 0 || j == 0) {
        apart[i][j] = static_cast<int>(i + j);
        continue;
      }
      const int changed = apart[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      apart[i][j] = std::min({changed, apart[i - 1][j] + 1, apart[i][j - 1] + 1});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) apart[i][j] = std::min(apart[i][j], apart[i - 2][j - 2] + 1);
    }
  return std::min(apart[a.size()][b.size()], most + 1);
}

bool is_one_word(std::string_view phrase) { return phrase.find_first_of(" .~'/") == std::string_view::npos; }

bool is_instruction(const words::Vocabulary& vocabulary, words::Concept means) {
  return means < vocabulary.concepts.size() && vocabulary.concepts[means].sort != words::ConceptClass::filler;
}

/// A word of the language near a word nobody knows.
struct Near {
  words::Concept means = words::no_concept;
  std::string phrase;
  int apart = 0;
};

/// Keeps of each meaning the nearest word.
void keep_nearest(std::vector<Near>& near, const Near& found) {
  for (Near& kept : near) {
    if (kept.means != found.means) continue;
    if (found.apart < kept.apart) kept = found;
    return;
  }
  near.push_back(found);
}

/// "fsc", "fdc": seldom meant where another stitch is a letter away.
bool begins_row(const words::ConceptEntry& entry) { return entry.name.rfind("foundation ", 0) == 0; }

std::vector<Near> near_words(std::string_view typed, const words::Vocabulary& vocabulary) {
  std::vector<Near> near;
  if (typed.size() < 2 || typed.size() > 20) return near;
  const int most = typed.size() >= 6 ? 2 : 1;
  for (const words::PhraseEntry& entry : vocabulary.phrases) {
    if (!is_one_word(entry.phrase) || !is_instruction(vocabulary, entry.means)) continue;
    if (entry.means < vocabulary.concepts.size() && begins_row(vocabulary.concepts[entry.means])) continue;
    const int apart = letters_apart(typed, entry.phrase, most);
    if (apart <= most) keep_nearest(near, {entry.means, entry.phrase, apart});
  }
  return near;
}

/// Words of the language that a word nobody knows may have been meant for; of each meaning the nearest.
void add_near_words(const Suspect& suspect, const Word& word, std::vector<Edit>& edits) {
  const std::string_view typed =
      std::string_view(suspect.line.text).substr(word.begin, word.end - word.begin);
  for (const Near& near : near_words(typed, suspect.reader.vocabulary))
    edits.push_back({suspect.place(word.begin), suspect.place(word.end), near.phrase, near.apart, false});
}

/// A word nobody knows may be an increase or a decrease of another language.
void add_shapings(const Suspect& suspect, const Word& word, std::vector<Edit>& edits) {
  constexpr int another_word = 3;
  for (const char* name : {"increase", "dec"}) {
    const words::Concept means = words::find_concept(suspect.reader.vocabulary, name);
    if (means == words::no_concept) continue;
    edits.push_back({suspect.place(word.begin), suspect.place(word.end),
                     std::string(words::written_form(suspect.reader.vocabulary, means)), another_word,
                     false});
  }
}

char scanned_as(char c) {
  switch (c) {
  case 'l':
  case 'I':
    return '1';
  case 'O':
  case 'o':
    return '0';
  case '5':
    return 's';
  case '1':
    return 'l';
  case '0':
    return 'o';
  default:
    return '\0';
  }
}

bool is_word_character(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
}

/// Letters and digits that a scanner confuses, in runs that have both, or that stand for a number.
void add_scanned(const Suspect& suspect, std::vector<Edit>& edits) {
  const std::string_view work = suspect.work;
  for (std::size_t i = 0; i < work.size() && edits.size() < limit::mends; ++i) {
    const bool in_run =
        (i > 0 && is_word_character(work[i - 1])) || (i + 1 < work.size() && is_word_character(work[i + 1]));
    const bool capital = i + 1 < work.size() && work[i + 1] >= 'A' && work[i + 1] <= 'Z';
    const char meant = capital && work[i] == '5' ? 'S' : scanned_as(work[i]);
    if (in_run && meant != '\0') edits.push_back({i, i + 1, std::string(1, meant), 1, false});
  }
}

words::Concept concept_named(const Suspect& suspect, const char* name) {
  return words::find_concept(suspect.reader.vocabulary, name);
}

std::string_view text_of(const Suspect& suspect, const Word& word) {
  return std::string_view(suspect.line.text).substr(word.begin, word.end - word.begin);
}

/// A stitch and a decrease one letter apart: `dc` and `dec`.
void add_confused(const Suspect& suspect, const Word& word, std::vector<Edit>& edits) {
  const auto& concepts = suspect.reader.vocabulary.concepts;
  if (word.means >= concepts.size()) return;
  using words::ConceptClass;
  const ConceptClass sort = concepts[word.means].sort;
  if (sort != ConceptClass::stitch && sort != ConceptClass::decrease) return;
  for (const words::PhraseEntry& entry : suspect.reader.vocabulary.phrases) {
    if (entry.means >= concepts.size() || !entry.write) continue;
    const ConceptClass other = concepts[entry.means].sort;
    if ((other != ConceptClass::stitch && other != ConceptClass::decrease) || other == sort) continue;
    if (letters_apart(text_of(suspect, word), entry.phrase, 1) == 1)
      edits.push_back({suspect.place(word.begin), suspect.place(word.end), entry.phrase, 1, false});
  }
}

/// Whether a number says how often: "x 6", "6 times".
bool is_times(const Suspect& suspect, const Word& number) {
  const words::Concept times = concept_named(suspect, "times");
  const std::string_view text = suspect.line.text;
  for (const Word& word : suspect.lattice.words) {
    if (word.kind != WordKind::phrase || word.means != times) continue;
    const auto first = word.end <= number.begin ? word.end : number.end;
    const auto last = word.end <= number.begin ? number.begin : word.begin;
    if (last >= first && text.substr(first, last - first).find_first_not_of(' ') == std::string_view::npos)
      return true;
  }
  return false;
}

std::optional<Effect> effect_with(const Suspect& suspect, const Edit& edit) {
  Stuck stuck;
  const std::string changed = applied(suspect.work, edit);
  const auto readings = read_work(
      changed, {suspect.span.begin, suspect.span.begin + static_cast<std::uint32_t>(changed.size())},
      suspect.reader.vocabulary, suspect.reader.kinds, Effort::cheapest, stuck);
  return readings.empty() ? std::nullopt : std::optional(readings.front().effect);
}

Edit with_number(const Suspect& suspect, const Word& word, std::int64_t number) {
  return {suspect.place(word.begin), suspect.place(word.end), std::to_string(number), 1, false};
}

/// The number of a repeat with which the round comes out: what it uses grows evenly with that number.
void add_solved_number(const Suspect& suspect, const Word& word, std::int64_t opened,
                       std::vector<Edit>& edits) {
  const auto one = effect_with(suspect, with_number(suspect, word, 1));
  const auto two = effect_with(suspect, with_number(suspect, word, 2));
  if (opened == unknown || !one || !two || one->pass_uses > 0 || two->uses <= one->uses) return;
  const std::int64_t each = two->uses - one->uses;
  const std::int64_t rest = opened - one->uses;
  if (rest < 0 || rest % each != 0) return;
  const std::int64_t solved = 1 + rest / each;
  if (solved != word.number) edits.push_back(with_number(suspect, word, solved));
}

void add_brackets(const Suspect& suspect, std::vector<Edit>& edits) {
  const std::string_view work = suspect.work;
  const auto opened = std::count(work.begin(), work.end(), '(');
  const auto closed = std::count(work.begin(), work.end(), ')');
  if (closed > opened) edits.push_back({0, 0, "(", 1, false});
  if (opened <= closed) return;
  for (const Word& word : suspect.lattice.words) {
    const std::size_t place = suspect.place(word.begin);
    const bool behind_blank = place > 0 && work[place - 1] == ' ';
    if (word.kind == WordKind::phrase && word.means == concept_named(suspect, "times"))
      edits.push_back({behind_blank ? place - 1 : place, behind_blank ? place - 1 : place, ")", 1, false});
  }
  edits.push_back({work.size(), work.size(), ")", 1, false});
}

/// What one reading of a changed line comes to.
struct Result {
  bool uses_all = false;
  std::int64_t makes = unknown;
  std::optional<std::int64_t> stated;
  bool clean = false;
};

std::optional<Result> result_of(const Reading& reading, std::int64_t opened) {
  if (!reading.passed_over.empty() || (opened == unknown && !reading.effect.starts)) return std::nullopt;
  const Outcome worked = outcome(reading.effect, std::max<std::int64_t>(opened, 0));
  Result result;
  result.makes = worked.makes;
  result.uses_all =
      reading.effect.starts || (worked.left_over == 0 && worked.past_end == 0 && worked.remainder == 0);
  if (!reading.stated.empty() && reading.stated.front().unit != Unit::group)
    result.stated = reading.stated.front().count;
  return result;
}

/// Whether a line with this text agrees with the round before it, with its own count and with the round after
/// it.
bool agrees(const Suspect& suspect, std::string_view changed, const Wanted& wanted) {
  Stuck stuck;
  const std::string work = suspect.above + std::string(changed);
  const auto end = suspect.span.begin + static_cast<std::uint32_t>(work.size());
  const auto readings = read_work(work, {suspect.span.begin, end}, suspect.reader.vocabulary,
                                  suspect.reader.kinds, Effort::cheapest, stuck);
  if (readings.empty()) return false;
  const auto result = result_of(readings.front(), wanted.opened);
  if (!result || !result->uses_all || result->makes == 0) return false;
  if (wanted.used_next == unknown && !result->stated) return false;
  return (!result->stated || *result->stated == result->makes) &&
         (wanted.used_next == unknown || wanted.used_next == result->makes);
}

/// The stated count as it is counted: only where the round after says so too.
void add_count(const Suspect& suspect, const Way& way, const Wanted& wanted, std::vector<Edit>& edits) {
  if (way.readings.empty() || way.readings.front().stated.empty() || wanted.used_next == unknown) return;
  const Span count = way.readings.front().stated.front().span;
  const std::string_view typed = suspect.reader.source.at(count);
  const std::size_t digit = typed.find_first_of("0123456789");
  if (digit == std::string_view::npos) return;
  const std::size_t end = typed.find_first_not_of("0123456789", digit);
  const std::size_t begin = count.begin - suspect.span.begin;
  edits.push_back({begin + digit, begin + (end == std::string_view::npos ? typed.size() : end),
                   std::to_string(wanted.used_next), 1, true});
}

/// The tail of a staggered round that was forgotten: as many plain stitches as are left over.
void add_tail(const Suspect& suspect, const Way& way, const Wanted& wanted, std::vector<Edit>& edits) {
  constexpr int a_piece = 4;
  if (way.readings.empty() || way.readings.front().stated.empty() || wanted.opened == unknown) return;
  const Reading& reading = way.readings.front();
  const std::int64_t left = outcome(reading.effect, wanted.opened).left_over;
  const std::size_t count = reading.stated.front().span.begin - suspect.span.begin;
  const auto stitch =
      std::find_if(suspect.lattice.words.begin(), suspect.lattice.words.end(), [&](const Word& word) {
        return word.kind == WordKind::phrase && word.means < suspect.reader.vocabulary.concepts.size() &&
               suspect.reader.vocabulary.concepts[word.means].sort == words::ConceptClass::stitch;
      });
  if (left <= 0 || reading.effect.starts || stitch == suspect.lattice.words.end() ||
      count > suspect.work.size())
    return;
  const std::size_t end = suspect.work.find_last_not_of(" ([=-", count == 0 ? 0 : count - 1) + 1;
  edits.push_back(
      {end, end, ", " + std::to_string(left) + " " + std::string(text_of(suspect, *stitch)), a_piece, false});
}

std::vector<Edit> edits_of(const Suspect& suspect, const Way& way, const Wanted& wanted) {
  std::vector<Edit> edits;
  add_count(suspect, way, wanted, edits);
  add_brackets(suspect, edits);
  add_tail(suspect, way, wanted, edits);
  const Word* before = nullptr;
  for (const Word& word : suspect.lattice.words) {
    const bool longest = before == nullptr || word.begin >= before->end;
    if (!longest) continue;
    before = &word;
    if (word.kind == WordKind::unknown) {
      add_near_words(suspect, word, edits);
      add_shapings(suspect, word, edits);
    }
    if (word.kind == WordKind::phrase) add_confused(suspect, word, edits);
    if (word.kind == WordKind::number && is_times(suspect, word))
      add_solved_number(suspect, word, wanted.opened, edits);
    if (edits.size() >= limit::mends) break;
  }
  add_scanned(suspect, edits);
  if (edits.size() > limit::mends) edits.resize(limit::mends);
  return edits;
}

std::string mended_line(const Suspect& suspect, Span line, const Edit& edit) {
  const std::string_view text = suspect.reader.source.at(line);
  return std::string(text.substr(0, suspect.span.begin - line.begin)) + applied(suspect.work, edit) +
         std::string(text.substr(suspect.span.end - line.begin));
}

/// Where a count stands before its work (in a table), what would be changed may lie outside the work.
bool lies_in(std::string_view work, const Edit& edit) {
  return edit.begin <= edit.end && edit.end <= work.size();
}

} // namespace

std::optional<std::string> find_mend(const Reader& reader, const Way& way, Span line, const Wanted& wanted) {
  if (way.work.empty() || way.work.length() > limit::mended_bytes) return std::nullopt;
  const Suspect suspect = suspect_of(reader, way);
  if (suspect.span.begin < line.begin || suspect.span.end > line.end) return std::nullopt;
  std::vector<Edit> edits = edits_of(suspect, way, wanted);
  std::stable_sort(edits.begin(), edits.end(), [](const Edit& a, const Edit& b) { return a.size < b.size; });
  std::optional<Edit> found;
  for (const Edit& edit : edits) {
    if (!lies_in(suspect.work, edit)) continue;
    if (found && edit.size > found->size) break;
    const std::string work = applied(suspect.work, edit);
    if (found && work == applied(suspect.work, *found)) continue;
    if (!agrees(suspect, work, wanted)) continue;
    if (found) return std::nullopt;
    found = edit;
  }
  if (!found) return std::nullopt;
  return mended_line(suspect, line, *found);
}

std::string word_of_same_letters(std::string_view typed, const words::Vocabulary& vocabulary) {
  const auto in_order = [](std::string_view word) {
    std::string letters(word);
    std::sort(letters.begin(), letters.end());
    return letters;
  };
  for (const Near& near : typed.size() < 3 ? std::vector<Near>{} : near_words(typed, vocabulary))
    if (in_order(near.phrase) == in_order(typed)) return near.phrase;
  return {};
}

} // namespace whorl::pattern
