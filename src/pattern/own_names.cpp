#include "pattern/own_names.hpp"

#include "pattern/text_words.hpp"
#include "words/fold.hpp"
#include "words/lattice.hpp"

#include <algorithm>

namespace whorl::pattern {

using words::Concept;
using words::ConceptClass;
using words::no_concept;
using words::Vocabulary;

std::string folded(std::string_view text) {
  std::string out = words::fold(text).text;
  std::replace(out.begin(), out.end(), '-', ' ');
  while (!out.empty() && (out.back() == ' ' || out.back() == '.')) out.pop_back();
  return out;
}

bool is_work(const Vocabulary& vocabulary, Concept means) {
  if (means == no_concept) return false;
  const words::ConceptEntry& entry = vocabulary.concepts[means];
  return entry.sort == ConceptClass::stitch || entry.sort == ConceptClass::decrease ||
         entry.name == "increase";
}

namespace {

/// What a text may be said to be in a list: work, loops, a ring, a skip.
bool may_be_meant(const Vocabulary& vocabulary, Concept means) {
  const words::ConceptEntry& entry = vocabulary.concepts[means];
  return is_work(vocabulary, means) || entry.sort == ConceptClass::loops ||
         entry.sort == ConceptClass::start || entry.name == "skip" || entry.name == "turn";
}

/// `M = stitch`, `sp = space`: what is worked into.
bool is_place(const Vocabulary& vocabulary, Concept means) {
  return vocabulary.concepts[means].sort == ConceptClass::place;
}

/// "a", "the", "US" before the name of a stitch say nothing.
std::size_t behind_articles(std::string_view text) {
  for (const std::string_view word : {"a ", "an ", "the ", "us ", "uk ", "work ", "make ", "1 "})
    if (text.substr(0, word.size()) == word) return word.size();
  return 0;
}

bool says_nothing(const Vocabulary& vocabulary, const words::Word& word) {
  if (word.kind != words::WordKind::phrase) return false;
  const words::ConceptEntry& means = vocabulary.concepts[word.means];
  return means.sort == ConceptClass::filler || means.name == "as"; // "same as sc"
}

/// Where a word that changes nothing in the work ends, "yarn under" before "single crochet"; else its place.
std::size_t behind_filler(const words::Folded& line, const words::Lattice& lattice,
                          const Vocabulary& vocabulary, std::size_t at) {
  std::size_t end = at;
  for (auto i = lattice.at[at]; i < lattice.at[at + 1]; ++i) {
    const words::Word& word = lattice.words[i];
    if (says_nothing(vocabulary, word) && line.text.find(' ', at) < word.end)
      end = std::max<std::size_t>(end, word.end);
  }
  while (end > at && end < line.text.size() && (line.text[end] == ' ' || line.text[end] == '-')) ++end;
  return end < line.text.size() ? end : at;
}

/// Whether a word for loops stands at a place.
bool holds_loops(const words::Lattice& lattice, std::size_t at, const Vocabulary& vocabulary) {
  const auto first = lattice.words.begin() + lattice.at[at],
             last = lattice.words.begin() + lattice.at[at + 1];
  return std::any_of(first, last, [&vocabulary](const words::Word& word) {
    return word.kind == words::WordKind::phrase &&
           vocabulary.concepts[word.means].sort == ConceptClass::loops;
  });
}

Lead lead_of(std::string_view text, const Vocabulary& vocabulary) {
  const words::Folded line = words::fold(text);
  const words::Lattice lattice = words::lattice(line, vocabulary);
  std::size_t begin = behind_articles(line.text);
  Lead lead;
  if (begin >= line.text.size()) return lead;
  begin = behind_filler(line, lattice, vocabulary, begin);
  begin += behind_articles(std::string_view(line.text).substr(begin)); // "same as | a bobble"
  if (begin >= line.text.size()) return lead;
  std::uint32_t end = 0;
  int cost = 0;
  for (auto i = lattice.at[begin]; i < lattice.at[begin + 1]; ++i) {
    const words::Word& word = lattice.words[i];
    if (word.kind != words::WordKind::phrase) continue;
    const bool place = is_place(vocabulary, word.means);
    if (!place && !may_be_meant(vocabulary, word.means)) continue;
    const bool worked = lead.means != no_concept && !is_place(vocabulary, lead.means);
    const bool better = worked == !place && word.cost < cost; // "chain" is a stitch before it is a place
    if (word.end < end || (word.end == end && !better && (place || worked))) continue;
    lead.means = word.means;
    end = word.end;
    cost = word.cost;
  }
  if (lead.means != no_concept) lead.rest = text.substr(line.from[end], text.size());
  return lead;
}

/// "work only in | the back loops": behind a verb that leads to loops and the small words after it; empty if
/// none stands there.
std::string_view behind_making(std::string_view text, const Vocabulary& vocabulary) {
  const words::Folded line = words::fold(text);
  const words::Lattice lattice = words::lattice(line, vocabulary);
  const auto leads = [&vocabulary](const words::Word& word) {
    return says_nothing(vocabulary, word) ||
           (word.kind == words::WordKind::phrase && vocabulary.concepts[word.means].name == "in");
  };
  std::size_t at = end_of_text_word(vocabulary, line.text, 0, TextWord::make);
  if (at == 0) return {};
  for (std::size_t end = at;; at = end) {
    while (end < line.text.size() && line.text[end] == ' ') ++end;
    if (end >= line.text.size()) return {};
    const std::size_t begin = end;
    for (auto i = lattice.at[begin]; i < lattice.at[begin + 1]; ++i)
      if (leads(lattice.words[i])) end = std::max<std::size_t>(end, lattice.words[i].end);
    if (holds_loops(lattice, begin, vocabulary) || end == begin) return text.substr(line.from[begin]);
  }
}

} // namespace

Lead leading(std::string_view text, const Vocabulary& vocabulary) {
  const Lead lead = lead_of(text, vocabulary);
  if (lead.means != no_concept) return lead;
  const Lead made = lead_of(behind_making(text, vocabulary), vocabulary);
  const bool loops = made.means != no_concept && vocabulary.concepts[made.means].sort == ConceptClass::loops;
  return loops ? made : lead;
}

namespace {

/// "worked loosely": words that change nothing in the work, to the end.
bool is_manner(std::string_view rest, const Vocabulary& vocabulary) {
  const words::Folded line = words::fold(rest);
  const words::Lattice lattice = words::lattice(line, vocabulary);
  std::size_t at = 0;
  while (at < line.text.size()) {
    std::size_t end = line.text[at] == ' ' ? at + 1 : at;
    for (auto i = lattice.at[at]; i < lattice.at[at + 1]; ++i)
      if (says_nothing(vocabulary, lattice.words[i])) end = std::max<std::size_t>(end, lattice.words[i].end);
    if (end == at) return false;
    at = end;
  }
  return true;
}

} // namespace

bool is_aside(std::string_view rest, const Vocabulary& vocabulary) {
  const std::string low = folded(rest);
  const std::size_t at = low.find_first_not_of(' ');
  if (at == std::string::npos) return true;
  const std::string_view text = std::string_view(low).substr(at);
  if (std::string_view("(,;.:-[+").find(text.front()) != std::string_view::npos) return true;
  for (const std::string_view word : {"stitch", "stitches", "st", "sts", "crochet"})
    if (text == word) return true;
  return is_manner(text, vocabulary);
}

std::vector<std::string> names_of(std::string_view typed) {
  std::vector<std::string> names;
  const auto put = [&names](std::string_view name) {
    std::string one = folded(name);
    if (one.empty() && !name.empty()) one = folded("x" + std::string(name)).substr(1); // `• = sl st`
    while (!one.empty() && (one.front() == ' ' || one.front() == '"')) one.erase(0, 1);
    while (!one.empty() && (one.back() == '"' || one.back() == ' ')) one.pop_back();
    const bool ending = !names.empty() && (one == "s" || one == "es"); // `st(s)`
    if (!one.empty() && !ending && one != "us" && one != "uk") names.push_back(one);
  };
  const std::size_t open = typed.find_first_of("([");
  const std::string_view outer = typed.substr(0, open);
  for (std::size_t at = 0; at <= outer.size();) {
    const std::size_t end = std::min(outer.find('/', at), outer.size());
    put(outer.substr(at, end - at));
    at = end + 1;
  }
  if (open == std::string_view::npos) return names;
  const std::size_t close = std::min(typed.find_first_of(")]", open), typed.size());
  const std::string_view inner = typed.substr(open + 1, close - open - 1);
  if (inner.find("abbrev") == std::string_view::npos) put(inner);
  return names;
}

namespace {

bool begins_with(const words::Lattice& lattice, std::size_t at, const Vocabulary& vocabulary,
                 bool (*is)(const words::ConceptEntry&)) {
  if (at + 1 >= lattice.at.size()) return false;
  for (auto i = lattice.at[at]; i < lattice.at[at + 1]; ++i)
    if (lattice.words[i].kind == words::WordKind::phrase && is(vocabulary.concepts[lattice.words[i].means]))
      return true;
  return false;
}

bool leads(const words::ConceptEntry& entry) {
  return entry.sort == ConceptClass::filler || entry.name == "to";
}

} // namespace

std::vector<std::string> spellings_of(const std::string& name) {
  std::vector<std::string> all{name};
  for (const auto& [word, other] :
       {std::pair<std::string_view, std::string_view>{" stitch", " st"}, {" st", " stitch"}})
    if (name.size() > word.size() && std::string_view(name).substr(name.size() - word.size()) == word)
      all.push_back(name.substr(0, name.size() - word.size()) + std::string(other));
  return all;
}

std::string without_lead(const std::string& name, const Vocabulary& vocabulary) {
  const words::Folded line = words::fold(name);
  const words::Lattice lattice = words::lattice(line, vocabulary);
  for (std::size_t at = 0; at < line.text.size();) {
    const std::string rest = line.text.substr(at);
    for (const Concept means : meanings_of(rest, vocabulary))
      if (at > 0 && is_work(vocabulary, means)) return rest;
    if (!begins_with(lattice, at, vocabulary, leads)) break;
    const std::size_t blank = line.text.find(' ', at);
    if (blank == std::string::npos) break;
    at = blank + 1;
  }
  return name;
}

std::uint8_t depth_told(std::string_view text, const Vocabulary& vocabulary) {
  constexpr std::uint32_t deepest = 20;
  const words::Folded line = words::fold(text);
  const words::Lattice lattice = words::lattice(line, vocabulary);
  const auto round = [](const words::ConceptEntry& entry) {
    return entry.name == "round" || entry.name == "row";
  };
  const auto below = [](const words::ConceptEntry& entry) { return entry.name == "below"; };
  const auto next = [&line](std::size_t at) {
    return std::min(line.text.find(' ', at), line.text.size()) + 1;
  };
  bool below_one = false; // "in the round below"
  for (const words::Word& word : lattice.words) {
    below_one =
        below_one || (word.kind == words::WordKind::phrase && round(vocabulary.concepts[word.means]) &&
                      begins_with(lattice, next(word.begin), vocabulary, below));
    if (word.kind != words::WordKind::number || word.number == 0 || word.number > deepest) continue;
    const std::size_t of = next(word.end == 0 ? 0 : word.end - 1);
    if (begins_with(lattice, of, vocabulary, round) && begins_with(lattice, next(of), vocabulary, below))
      return static_cast<std::uint8_t>(word.number);
  }
  return below_one ? 1 : 0;
}

std::vector<Concept> meanings_of(std::string_view name, const Vocabulary& vocabulary) {
  std::vector<Concept> meanings;
  const words::Folded line = words::fold(name);
  const words::Lattice lattice = words::lattice(line, vocabulary);
  if (line.text.empty()) return meanings;
  for (auto i = lattice.at[0]; i < lattice.at[1]; ++i)
    if (lattice.words[i].kind == words::WordKind::phrase && lattice.words[i].end == line.text.size())
      meanings.push_back(lattice.words[i].means);
  return meanings;
}

} // namespace whorl::pattern
