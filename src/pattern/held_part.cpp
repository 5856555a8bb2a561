#include "pattern/held_part.hpp"

#include "words/ascii.hpp"
#include "words/costs.hpp"

#include <algorithm>
#include <string_view>

namespace whorl::pattern {

namespace {

using words::Concept;
using words::ConceptClass;
using words::Folded;
using words::Lattice;
using words::Vocabulary;
using words::Word;
using words::WordKind;

constexpr int most_words = 14; ///< of a clause that is looked through

/// The words that tell of parts, looked up once.
class Telling {
public:
  Telling(Folded& line, Lattice& lattice, const Vocabulary& vocabulary)
      : line_(line), lattice_(lattice), vocabulary_(vocabulary), through_(named("through")),
        hold_(named("hold against")), piece_(named("piece")), leg_(named("leg")), and_(named("and")),
        layers_(named("both layers")), both_loops_(named("both loops")), two_parts_(named("two parts")),
        held_(named("part held")), together_(named("together")), join_on_(named("join on")),
        with_(named("with")) {}

  bool tell() {
    find();
    forget_names();
    return !found_.empty();
  }

private:
  void find() {
    for_each_word(through_, [this](const Word& word) { tell_through(word); });
    if (any(piece_)) for_each_word(join_on_, [this](const Word& word) { tell_joined(word); });
    if (any(piece_)) tell_bracketed();
    if (found_.empty() && !any(layers_)) return;
    for_each_word(hold_, [this](const Word& word) { tell_held(word); });
    if (found_.empty()) return;
    take_layers();
    put_in();
  }

  /// What else the names of parts stand in is read as if nobody knew them.
  void forget_names() {
    for (Word& word : lattice_.words) {
      if (!is(word, piece_)) continue;
      word.kind = WordKind::unknown;
      word.means = words::no_concept;
      word.cost = words::cost::unknown;
    }
  }

  Concept named(const char* name) const { return words::find_concept(vocabulary_, name); }

  bool any(Concept wanted) const {
    return wanted != words::no_concept &&
           std::any_of(lattice_.words.begin(), lattice_.words.end(),
                       [wanted](const Word& word) { return is(word, wanted); });
  }

  static bool is(const Word& word, Concept wanted) {
    return word.kind == WordKind::phrase && word.means == wanted;
  }

  template <class Tell> void for_each_word(Concept wanted, Tell tell) {
    std::uint32_t behind = 0;
    for (const Word& word : lattice_.words) {
      if (!is(word, wanted) || word.begin < behind) continue;
      const std::size_t before = found_.size();
      tell(word);
      if (found_.size() > before) behind = found_.back().end;
    }
  }

  const Word* word_at(std::uint32_t at, Concept wanted) const {
    for (std::uint32_t i = lattice_.at[at]; i < lattice_.at[at + 1]; ++i)
      if (is(lattice_.words[i], wanted)) return &lattice_.words[i];
    return nullptr;
  }

  std::uint32_t behind_blanks(std::uint32_t at) const {
    while (at < line_.text.size() && line_.text[at] == ' ') ++at;
    return at;
  }

  /// What a clause names on its way.
  struct Clause {
    bool part = false;     ///< a part
    bool own_name = false; ///< … by a name of the text's own
    int names = 0;         ///< words that may be names of parts
    bool linked = false;   ///< two of them with "and" between
    bool together = false; ///< it ends so
    std::uint32_t end = 0;
  };

  ConceptClass sort_of(const Word& word) const {
    return word.kind == WordKind::phrase ? vocabulary_.concepts[word.means].sort : ConceptClass::word;
  }

  /// A word at which a clause about parts ends: work, a number, a mark, loops.
  bool ends(const Word& word) const {
    if (word.kind == WordKind::number) return true;
    if (word.kind == WordKind::mark) return word.mark != '+' && word.mark != '&' && word.mark != '\'';
    if (word.kind == WordKind::unknown) return false;
    const ConceptClass sort = sort_of(word);
    if (sort == ConceptClass::loops) return word.means != layers_ && word.means != both_loops_;
    return sort == ConceptClass::stitch || sort == ConceptClass::decrease || sort == ConceptClass::start ||
           word.means == named("increase");
  }

  /// A word of the clause counts as its end if it names something: "and", "then" behind it belong to what
  /// follows.
  void take(const Word& word, bool& with, Clause& clause) const {
    const bool name = is(word, piece_) || is(word, leg_) || word.kind == WordKind::unknown;
    clause.part = clause.part || is(word, piece_) || is(word, leg_);
    clause.own_name = clause.own_name || is(word, piece_);
    clause.together = is(word, together_);
    if (name) {
      clause.linked = clause.linked || (with && clause.names > 0);
      ++clause.names;
    }
    with = is(word, and_) || word.kind == WordKind::mark || (with && !name);
    const bool closes = name || is(word, layers_) || is(word, both_loops_) || is(word, together_) ||
                        sort_of(word) == ConceptClass::place;
    if (closes) clause.end = word.end;
  }

  /// The word that is meant at a place: a part before anything else, then the longest.
  const Word* meant_at(std::uint32_t at) const {
    if (lattice_.at[at] == lattice_.at[at + 1]) return nullptr;
    if (const Word* part = word_at(at, piece_)) return part;
    return &lattice_.words[lattice_.at[at]];
  }

  /// "1st ear", "second arm": which of several is no number of stitches.
  std::uint32_t behind_ordinal(std::uint32_t at) const {
    const Word* word = meant_at(at);
    if (word == nullptr || word->kind != WordKind::number) return at;
    std::uint32_t next = word->end;
    while (next < line_.text.size() && words::is_small(line_.text[next])) ++next;
    next = behind_blanks(next);
    const bool part =
        next < line_.text.size() && (word_at(next, piece_) != nullptr || word_at(next, leg_) != nullptr);
    return part ? next : at;
  }

  Clause clause_from(std::uint32_t at, Concept stop) const {
    Clause clause;
    bool with = false;
    for (int words = 0; words < most_words; ++words) {
      at = behind_blanks(at);
      if (at >= line_.text.size()) break;
      at = behind_ordinal(at);
      const Word* word = meant_at(at);
      if (word == nullptr || ends(*word) || stops(at, stop)) break;
      take(*word, with, clause);
      at = word->end;
    }
    return clause;
  }

  /// "Of" and "in" go on.
  bool stops(std::uint32_t at, Concept stop) const {
    const Word* word = stop == words::no_concept ? nullptr : word_at(at, stop);
    return word != nullptr && !begins(*word, "of") && !begins(*word, "in");
  }

  void add(std::uint32_t begin, std::uint32_t end, Concept means) {
    Word word;
    word.begin = begin;
    word.end = end;
    word.span = line_.span(begin, end);
    word.kind = WordKind::phrase;
    word.means = means;
    word.glued = begin > 0 && line_.text[begin - 1] != ' ';
    found_.push_back(word);
  }

  bool begins(const Word& word, std::string_view letters) const {
    return line_.text.compare(word.begin, letters.size(), letters) == 0;
  }

  /// "in both ear and head", "of head and ear together" have to name two.
  void tell_through(const Word& word) {
    const Clause clause = clause_from(word.end, words::no_concept);
    if (clause.end <= word.end) return;
    const Word* layers = word_at(word.begin, layers_); // "through front and back"
    if (layers != nullptr && layers->end >= clause.end) return;
    const bool two = clause.linked && begins(word, "thr");
    const bool of = begins(word, "of"), in = begins(word, "in");
    const bool both = clause.linked && clause.part && (in || clause.together);
    if ((of || in) ? both : clause.part || two) add(word.begin, clause.end, two_parts_);
  }

  /// "Attach the ear with 7 sc", "join ear using 5 sc", "crochet the ear on with the next 6 sc".
  void tell_joined(const Word& word) {
    if (inside_found(word.begin)) return;
    const Clause clause = clause_from(word.end, with_);
    const bool again = clause.part && (!found_.empty() || any(layers_)); // "…, attach second ear with 6 sc"
    if (!(clause.own_name || again) || clause.end <= word.end) return;
    const std::uint32_t link = link_behind(clause.end);
    if (link == 0 || !counts_behind(link)) return;
    add(word.begin, clause.end, two_parts_);
    for (std::uint32_t i = lattice_.at[word.begin]; i < lattice_.at[word.begin + 1]; ++i)
      lattice_.words[i].cost += 20; // it is not that the round is joined
    if (const std::uint32_t told = behind_blanks(clause.end); told + 1 < link)
      add(told, link - 1, two_parts_); // "… on", "… the same way"
  }

  /// Where the word "with" ends that stands behind a name, or behind a few small words; 0: none does.
  std::uint32_t link_behind(std::uint32_t at) const {
    constexpr int most_between = 4; // "on", "the same way"
    for (int words = 0; words < most_between; ++words) {
      at = behind_blanks(at);
      if (at >= line_.text.size()) return 0;
      if (const Word* link = word_at(at, with_)) return link->end;
      const Word* word = meant_at(at);
      if (word == nullptr || ends(*word)) return 0;
      at = word->end;
    }
    return 0;
  }

  /// "7 sc", "the next 7 sc".
  bool counts_behind(std::uint32_t at) const {
    constexpr int most_between = 3;
    for (int words = 0; words < most_between; ++words) {
      at = behind_blanks(at);
      if (at >= line_.text.size()) return false;
      if (words::is_digit(line_.text[at])) return true;
      const Word* word = meant_at(at);
      if (word == nullptr || ends(*word)) return false;
      at = word->end;
    }
    return false;
  }

  /// "[ear + head] 6 sc": brackets that hold nothing but two names.
  void tell_bracketed() {
    for (std::uint32_t at = 0; at < line_.text.size(); ++at) {
      const char open = line_.text[at];
      if ((open != '(' && open != '[') || inside_found(at + 1)) continue;
      const Clause clause = clause_from(at + 1, words::no_concept);
      const std::uint32_t end = behind_blanks(clause.end);
      if (!clause.own_name || !clause.linked || clause.names != 2 || end >= line_.text.size()) continue;
      if (line_.text[end] != (open == '(' ? ')' : ']')) continue;
      add(behind_blanks(at + 1), clause.end, two_parts_);
      line_.text[at] = line_.text[end] = ' ';
    }
  }

  void tell_held(const Word& word) {
    if (inside_found(word.begin)) return;
    const Clause clause = clause_from(word.end, through_);
    if (clause.part && clause.end > word.end) add(word.begin, clause.end, held_);
  }

  bool inside_found(std::uint32_t at) const {
    return std::any_of(found_.begin(), found_.end(),
                       [at](const Word& word) { return word.begin <= at && at < word.end; });
  }

  /// "… 7 sc through both layers", behind words that hold a part there, are the two parts first of all; the
  /// piece in hand may be folded all the same.
  void take_layers() {
    std::uint32_t first = line_.text.empty() ? 0 : static_cast<std::uint32_t>(line_.text.size());
    for (const Word& word : found_) first = std::min(first, word.begin);
    for (Word& word : lattice_.words) {
      if (!is(word, layers_) || word.begin < first || inside_found(word.begin)) continue;
      add(word.begin, word.end, two_parts_);
      word.cost += 1;
    }
  }

  /// The words found stand first at their places.
  void put_in() {
    std::sort(found_.begin(), found_.end(), [](const Word& a, const Word& b) { return a.begin < b.begin; });
    std::vector<Word> all;
    std::size_t next = 0;
    for (std::uint32_t at = 0; at < line_.text.size(); ++at) {
      const std::uint32_t from = lattice_.at[at], to = lattice_.at[at + 1];
      lattice_.at[at] = static_cast<std::uint32_t>(all.size());
      for (; next < found_.size() && found_[next].begin == at; ++next) all.push_back(found_[next]);
      all.insert(all.end(), lattice_.words.begin() + from, lattice_.words.begin() + to);
    }
    lattice_.at.back() = static_cast<std::uint32_t>(all.size());
    lattice_.words = std::move(all);
  }

  Folded& line_;
  Lattice& lattice_;
  const Vocabulary& vocabulary_;
  Concept through_, hold_, piece_, leg_, and_, layers_, both_loops_, two_parts_, held_, together_, join_on_,
      with_;
  std::vector<Word> found_;
};

} // namespace

bool tell_held_parts(Folded& line, Lattice& lattice, const Vocabulary& vocabulary) {
  return Telling(line, lattice, vocabulary).tell();
}

} // namespace whorl::pattern
