#include "pattern/own_group.hpp"

#include "pattern/own_stitch.hpp"
#include "words/ascii.hpp"

#include <algorithm>
#include <initializer_list>
#include <string_view>

namespace whorl::pattern {

namespace {

using words::Folded;
using words::Lattice;
using words::Vocabulary;
using words::Word;
using words::WordKind;

bool is_named(const Vocabulary& vocabulary, const Word& word, std::string_view name) {
  return word.kind == WordKind::phrase && vocabulary.concepts[word.means].name == name;
}

const Word* word_named(const Lattice& lattice, const Vocabulary& vocabulary, std::size_t at,
                       std::string_view name) {
  if (at + 1 >= lattice.at.size()) return nullptr;
  for (auto i = lattice.at[at]; i < lattice.at[at + 1]; ++i)
    if (is_named(vocabulary, lattice.words[i], name)) return &lattice.words[i];
  return nullptr;
}

bool is_stitch(const Vocabulary& vocabulary, const Word& word) {
  return word.kind == WordKind::phrase && vocabulary.concepts[word.means].sort == words::ConceptClass::stitch;
}

/// Where a text ends without the blanks and marks behind it.
std::size_t trimmed_end(std::string_view text, std::size_t end) {
  while (end > 0 && std::string_view(" ,.;:").find(text[end - 1]) != std::string_view::npos) --end;
  return end;
}

/// Where the stitches of an explanation end: before "all in the same st", or with the bracket that holds
/// them.
std::size_t end_of_stitches(const Folded& folded, const Lattice& lattice, const Vocabulary& vocabulary) {
  const std::string_view text = folded.text;
  if (!text.empty() && text.front() == '(') {
    const std::size_t close = text.find(')');
    return close == std::string_view::npos ? 0 : close + 1;
  }
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (word_named(lattice, vocabulary, at, "in") == nullptr) continue;
    std::size_t end = trimmed_end(text, at);
    for (const std::string_view word : {"all", "worked", "all worked"})
      if (end >= word.size() && text.substr(end - word.size(), word.size()) == word)
        end = trimmed_end(text, end - word.size());
    return end;
  }
  return 0;
}

/// Behind the first sentence of an explanation.
std::size_t end_of_sentence(std::string_view text) {
  const std::size_t end = text.find(". ");
  return trimmed_end(text, std::min(end, text.size()));
}

/// Whether a stitch stands behind a mark in [begin, end).
bool works_on(const Folded& folded, const Lattice& lattice, const Vocabulary& vocabulary, std::size_t begin,
              std::size_t end) {
  const std::size_t mark = folded.text.find(',', begin);
  for (std::size_t at = std::min(mark, end); at < end; ++at)
    for (auto i = lattice.at[at]; i < lattice.at[at + 1]; ++i)
      if (is_stitch(vocabulary, lattice.words[i])) return true;
  return false;
}

/// Whether at least so many stitches that are no chains stand in [0, end), and nothing that nobody knows.
bool holds_group(const Folded& folded, const Lattice& lattice, const Vocabulary& vocabulary, std::size_t end,
                 int least) {
  int stitches = 0, chains = 0;
  for (std::size_t at = 0; at < end;) {
    if (lattice.at[at] == lattice.at[at + 1]) {
      ++at;
      continue;
    }
    const Word& word = lattice.words[lattice.at[at]];
    if (word.kind == WordKind::unknown) return false;
    const bool chain = is_named(vocabulary, word, "ch");
    if (is_stitch(vocabulary, word)) ++(chain ? chains : stitches);
    at = std::max<std::size_t>(word.end, at + 1);
  }
  const bool listed = folded.text.find(',') < end || folded.text.find('+') < end;
  return stitches >= least && (chains > 0 || listed);
}

/// A text that is put together from pieces of another, and of words that stand for a piece of it.
class Told {
public:
  explicit Told(const Folded& folded) : folded_(folded) {}

  void keep_to(std::size_t end) {
    for (; kept_ < end; ++kept_) put(folded_.text[kept_], folded_.from[kept_], folded_.capital[kept_]);
  }

  /// `words` in the place of [begin, end), which was not kept yet.
  void put_instead(std::size_t begin, std::size_t end, std::string_view words) {
    keep_to(begin);
    for (const char c : words) put(c, folded_.from[begin], false);
    kept_ = end;
  }

  Folded finish() {
    keep_to(folded_.text.size());
    out_.from.push_back(folded_.from.back());
    return std::move(out_);
  }

private:
  void put(char c, std::uint32_t from, bool capital) {
    out_.text += c;
    out_.from.push_back(from);
    out_.capital.push_back(capital);
  }

  const Folded& folded_;
  std::size_t kept_ = 0;
  Folded out_;
};

/// The last word before `at`, without its blanks.
std::string_view word_before(std::string_view text, std::size_t at) {
  std::size_t end = at;
  while (end > 0 && text[end - 1] == ' ') --end;
  const std::size_t begin = end == 0 ? 0 : text.find_last_of(" ,;.([*", end - 1) + 1;
  return text.substr(std::min(begin, end), end - std::min(begin, end));
}

bool is_one_of(std::string_view word, std::initializer_list<std::string_view> some) {
  return std::find(some.begin(), some.end(), word) != some.end();
}

std::size_t begin_of(std::string_view text, std::string_view word) {
  return static_cast<std::size_t>(word.data() - text.data());
}

/// Where "x 3", "3 times" or "twice" stands behind a name.
bool is_repeated(std::string_view text, std::size_t end) {
  const std::size_t at = std::min(text.find_first_not_of(' ', end), text.size());
  const std::string_view rest = text.substr(at);
  return !rest.empty() && (words::is_digit(rest.front()) || rest.front() == 'x' || rest.front() == '*' ||
                           rest.substr(0, 5) == "twice");
}

/// Telling the groups of one line.
class Telling {
public:
  Telling(const Folded& folded, const Lattice& lattice, const Vocabulary& vocabulary)
      : folded_(folded), lattice_(lattice), vocabulary_(vocabulary), told_(folded) {}

  bool tell(Folded& out) {
    for (std::size_t at = 0; at + 1 < lattice_.at.size();) {
      const Word* word = group_at(at);
      at = word == nullptr ? at + 1 : tell_one(*word);
    }
    if (any_) out = told_.finish();
    return any_;
  }

private:
  std::string_view text() const { return folded_.text; }

  const Word* group_at(std::size_t at) const {
    const Word* found = nullptr;
    for (auto i = lattice_.at[at]; i < lattice_.at[at + 1]; ++i) {
      const Word& word = lattice_.words[i];
      if (word.kind != WordKind::phrase || !(names_group(vocabulary_, word.means) || is_shell(word)))
        continue;
      if (found == nullptr || word.end > found->end) found = &word;
    }
    return found;
  }

  /// A name for three or more of one stitch in one place, where it is worked into: "in the next shell", "of
  /// shell".
  bool is_shell(const Word& word) const {
    constexpr std::uint16_t least = 3;
    const words::ConceptEntry& entry = vocabulary_.concepts[word.means];
    if (entry.in_one < least || entry.works.empty() || names_group(vocabulary_, word.means)) return false;
    std::string_view before = word_before(text(), word.begin);
    if (before == "the") before = word_before(text(), begin_of(text(), before));
    return is_one_of(before, {"in", "into", "of", "each", "every", "next"});
  }

  std::size_t tell_one(const Word& word) {
    const std::string_view before = word_before(text(), word.begin);
    const bool sizes = before.size() > 1 && before.back() == ')' && // "4 (5, 6) shells"
                       words::is_digit(before[before.size() - 2]);
    const bool counted = !before.empty() && (sizes || words::is_digit(before.back()));
    if (counted && !sizes && names_sequence(vocabulary_, word.means))
      return tell_times(word, before), word.end;
    const bool defined = word.end < text().size() && (text()[word.end] == ':' || text()[word.end] == '=');
    if (is_one_of(before,
                  {"in", "into", "of", "the", "each", "every", "next", "first", "last", "same", "between"}))
      tell_place(word, before);
    else if (!counted && !defined)
      tell_work(word);
    return word.end;
  }

  /// "12 curls" of stitches that say where they go; "(12 curls)" is a count.
  void tell_times(const Word& word, std::string_view number) {
    const std::size_t begin = begin_of(text(), number), next = text().find_first_not_of(' ', word.end);
    const bool opens = begin > 0 && std::string_view("([").find(text()[begin - 1]) != std::string_view::npos;
    const bool closes = next != std::string_view::npos && (text()[next] == ')' || text()[next] == ']');
    if (opens && closes) return;
    put(begin, word.end, vocabulary_.concepts[word.means].works + " x " + std::string(number));
  }

  void tell_work(const Word& word) {
    const std::string& stitches = vocabulary_.concepts[word.means].works;
    if (names_sequence(vocabulary_, word.means)) return put(word.begin, word.end, stitches);
    const std::size_t next = std::min(text().find_first_not_of(' ', word.end), text().size());
    const bool placed = word_named(lattice_, vocabulary_, next, "in") != nullptr;
    const std::string in_next = stitches + " in next st";
    put(word.begin, word.end,
        placed                          ? stitches
        : is_repeated(text(), word.end) ? "(" + in_next + ")"
                                        : in_next);
  }

  /// "In the ch-1 sp of each V-st", "in each V-st".
  void tell_place(const Word& word, std::string_view before) {
    const bool quantity = is_one_of(before, {"each", "every", "next", "first", "last"});
    const std::string_view of = quantity ? word_before(text(), begin_of(text(), before)) : before;
    if (of == "of" && text().substr(0, begin_of(text(), of)).find(" sp") == std::string_view::npos)
      return put_group(word);
    if (of == "of")
      return tell_space_of(word, quantity ? before : std::string_view("next"), begin_of(text(), of));
    if (vocabulary_.concepts[word.means].works.find("ch") == std::string::npos) return put_group(word);
    put(word.begin, word.end, "ch-sp");
  }

  /// "In the centre dc of the next shell", "in next shell": what it is made of is no matter.
  void put_group(const Word& word) {
    const words::Concept group = words::find_concept(vocabulary_, "group word");
    if (group != words::no_concept) put(word.begin, word.end, words::written_form(vocabulary_, group));
  }

  /// "In the ch-1 sp | of each V-st" is in each ch-1 sp.
  void tell_space_of(const Word& word, std::string_view quantity, std::size_t of) {
    const std::size_t in = text().substr(0, of).rfind("in ");
    if (in == std::string_view::npos || in < done_) return;
    std::size_t behind = in + 3;
    for (const std::string_view article : {"the ", "a ", "each ", "center ", "centre ", "middle "})
      if (text().substr(behind, article.size()) == article) behind += article.size();
    put(in, behind, "in " + std::string(quantity) + " ");
    told_.keep_to(trimmed_end(text(), of));
    put(trimmed_end(text(), of), word.end, "");
  }

  void put(std::size_t begin, std::size_t end, std::string_view words) {
    told_.put_instead(begin, end, words);
    done_ = end;
    any_ = true;
  }

  const Folded& folded_;
  const Lattice& lattice_;
  const Vocabulary& vocabulary_;
  Told told_;
  std::size_t done_ = 0;
  bool any_ = false;
};

} // namespace

bool names_group(const Vocabulary& vocabulary, words::Concept means) {
  const std::string& works = vocabulary.concepts[means].works;
  return !works.empty() && works.front() == '(';
}

bool names_sequence(const Vocabulary& vocabulary, words::Concept means) {
  return names_group(vocabulary, means) && vocabulary.concepts[means].works.find(" in ") != std::string::npos;
}

bool is_own_group(const Vocabulary& vocabulary, words::Concept means) {
  return names_group(vocabulary, means) || vocabulary.concepts[means].in_one > 1;
}

std::optional<std::string> group_told(std::string_view explanation, const Vocabulary& vocabulary, int least) {
  const std::size_t first = explanation.find_first_not_of(" \t");
  if (first == std::string_view::npos) return std::nullopt;
  const Folded folded = words::fold(explanation.substr(first));
  const Lattice lattice = words::lattice(folded, vocabulary);
  const std::size_t end = end_of_stitches(folded, lattice, vocabulary);
  if (end == 0 || !holds_group(folded, lattice, vocabulary, end, least)) return std::nullopt;
  if (works_on(folded, lattice, vocabulary, end, end_of_sentence(folded.text))) return std::nullopt;
  const std::string stitches = folded.text.substr(0, end);
  return stitches.front() == '(' ? stitches : "(" + stitches + ")";
}

std::optional<std::string> sequence_told(std::string_view explanation, const Vocabulary& vocabulary) {
  const std::size_t first = explanation.find_first_not_of(" \t");
  if (first == std::string_view::npos) return std::nullopt;
  const Folded folded = words::fold(explanation.substr(first));
  const Lattice lattice = words::lattice(folded, vocabulary);
  const std::size_t place = end_of_stitches(folded, lattice, vocabulary), end = end_of_sentence(folded.text);
  const bool bracket = folded.text.find_first_of("([*") != std::string::npos;
  const bool several = works_on(folded, lattice, vocabulary, place, end);
  const bool one = !several && !says_same_place(explanation, vocabulary); // "ch 3, sc in next st"
  if (place == 0 || bracket || !(several || one) ||
      !holds_group(folded, lattice, vocabulary, end, several ? 2 : 1))
    return std::nullopt;
  std::string stitches = folded.text.substr(0, end);
  // "4 dc in same st, ch 2, sl st in same st": the first finds the place
  const std::size_t same = stitches.find("same "), next = stitches.find("next ");
  if (same < next) stitches.replace(same, 4, "next");
  return "(" + stitches + ")";
}

bool goes_back(std::string_view explanation, const Vocabulary& vocabulary) {
  const Lattice lattice = words::lattice(words::fold(explanation), vocabulary);
  return std::any_of(lattice.words.begin(), lattice.words.end(),
                     [&](const Word& word) { return is_named(vocabulary, word, "from hook"); });
}

std::optional<std::string> group_named(std::string_view explanation, const Vocabulary& vocabulary) {
  const Folded folded = words::fold(explanation);
  const Lattice lattice = words::lattice(folded, vocabulary);
  std::optional<std::string> group;
  for (std::size_t at = 0; at < folded.text.size();) {
    const Word* named = nullptr;
    bool known = lattice.at[at] == lattice.at[at + 1];
    std::size_t end = at + 1;
    for (auto i = lattice.at[at]; i < lattice.at[at + 1]; ++i) {
      const Word& word = lattice.words[i];
      if (word.kind != WordKind::phrase) continue;
      const words::ConceptEntry& means = vocabulary.concepts[word.means];
      const bool group_here = names_group(vocabulary, word.means);
      const bool small = means.sort == words::ConceptClass::filler ||
                         means.sort == words::ConceptClass::place || means.name == "as" ||
                         means.name == "same" || means.name == "for";
      if (!group_here && !small) continue;
      if (known && word.end <= end) continue;
      known = true, end = word.end, named = group_here ? &word : nullptr;
    }
    if (!known && !(lattice.words[lattice.at[at]].kind == WordKind::mark)) return std::nullopt;
    if (named != nullptr && group) return std::nullopt;
    if (named != nullptr) group = vocabulary.concepts[named->means].works;
    at = end;
  }
  return group;
}

bool tell_groups(Folded& folded, const Lattice& lattice, const Vocabulary& vocabulary) {
  Folded out;
  if (!Telling(folded, lattice, vocabulary).tell(out)) return false;
  folded = std::move(out);
  return true;
}

} // namespace whorl::pattern
