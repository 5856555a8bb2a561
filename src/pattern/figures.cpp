#include "pattern/figures.hpp"

#include "pattern/aside.hpp"
#include "pattern/costs.hpp"
#include "pattern/own_group.hpp"
#include "pattern/text_words.hpp"
#include "words/ascii.hpp"

#include <algorithm>
#include <optional>

namespace whorl::pattern {

using words::Concept;
using words::ConceptClass;
using words::Word;
using words::WordKind;

Concepts concepts_of(const words::Vocabulary& vocabulary) {
  const auto named = [&vocabulary](const char* name) { return words::find_concept(vocabulary, name); };
  return {named("count word"), named("total"),  named("times"), named("around"),
          named("in"),         named("repeat"), named("and"),   named("more"),
          named("join"),       named("turn"),   named("round"), named("row"),
          named("per"),        named("each"),   named("top"),   named("sl st")};
}

bool means(const Search& search, std::uint32_t at, Concept wanted) {
  return word_meaning(search.sentence, at, wanted) != nullptr;
}

std::uint32_t next_word(const Search& search, std::uint32_t at) {
  return skip_blanks(search.sentence.text(), at);
}

namespace {

stitch::KindId kind_named(const Search& search, std::string_view name) {
  const auto kind = stitch::find_kind(search.kinds, name);
  return kind ? *kind : stitch::no_kind;
}

/// "ch-2 sps": where the word for the space ends, 0 if no number and space stand behind the chain.
std::uint32_t end_of_chain_space(const Search& search, std::uint32_t chain_end) {
  const Sentence& sentence = search.sentence;
  const bool hyphen = chain_end < sentence.size() && sentence.text()[chain_end] == '-';
  const Word* chains = number_at(sentence, next_word(search, chain_end + (hyphen ? 1U : 0U)));
  if (chains == nullptr) return 0;
  for (const Word& space : words_at(sentence, next_word(search, chains->end)))
    if (sort_of(sentence, space) == ConceptClass::place) return space.end;
  return 0;
}

std::uint32_t read_stitch_unit(const Search& search, const Word& word, std::string_view name,
                               Stated& stated) {
  const std::uint32_t space = name == "ch" ? end_of_chain_space(search, word.end) : 0;
  stated.unit = space != 0 ? Unit::spaces : name == "ch" ? Unit::chains : Unit::kind;
  if (stated.unit == Unit::kind) stated.kind = kind_named(search, name);
  return space != 0 ? space : word.end;
}

Unit unit_of_place(std::string_view name) {
  return name == "space" ? Unit::spaces : name == "chain" ? Unit::chains : Unit::stitches;
}

/// "1-ch sps": where the word for the space ends, 0 if something else stands at `at`.
std::uint32_t end_of_numbered_space(const Search& search, std::uint32_t at) {
  const std::string_view text = search.sentence.text();
  const Word* chains = number_at(search.sentence, at);
  if (chains == nullptr) return 0;
  const auto past_hyphen = [&](std::uint32_t end) {
    return next_word(search, end < text.size() && text[end] == '-' ? end + 1 : end);
  };
  const Concept chain = words::find_concept(search.sentence.vocabulary, "ch");
  const Word* word = word_meaning(search.sentence, past_hyphen(chains->end), chain);
  if (word == nullptr) return 0;
  for (const Word& space : words_at(search.sentence, past_hyphen(word->end)))
    if (sort_of(search.sentence, space) == ConceptClass::place) return space.end;
  return 0;
}

/// "7 sc and 6 | loops": loops that are told behind stitches are of chains.
bool are_loops_of_chains(const Search& search, const Word& word) {
  const std::string_view text = search.sentence.text();
  const std::string_view unit = text.substr(word.begin, word.end - word.begin);
  if (unit.substr(0, 4) != "loop" && unit.substr(0, 2) != "lp") return false;
  const std::size_t before = text.substr(0, word.begin).find_last_not_of("0123456789 ");
  if (before == std::string_view::npos || before < 3) return false;
  if (text[before] != ',') return text.substr(before - 2, 3) == "and";
  const std::size_t sentence = text.find_last_of(".:;([", before);
  const std::size_t first =
      text.find_first_not_of(' ', sentence == std::string_view::npos ? 0 : sentence + 1);
  return first < before && words::is_digit(text[first]); // "10 sc, 9 loops"
}

/// "4 corners": of the spaces only some are.
bool names_corner(const Search& search, const Word& word) {
  return search.sentence.text().substr(word.begin, 6) == "corner";
}

/// "4 shells", "6 V-sts", where these are several stitches of the pattern's own.
bool names_several(const Search& search, const Word& word) {
  return word.kind == WordKind::phrase && is_own_group(search.sentence.vocabulary, word.means);
}

/// Whether figures of it are of something that is not counted by itself.
bool is_uncounted(const Search& search, const Word& word) {
  return word.kind == WordKind::unknown || names_corner(search, word);
}

/// "24 столбика": a name that single crochets are called by and that is said of stitches of any kind rather.
bool means_any_stitch(const Search& search, std::uint32_t at, const Word& stitch) {
  const WordsAt words = words_at(search.sentence, at);
  return std::any_of(words.begin(), words.end(), [&](const Word& word) {
    return word.kind == WordKind::phrase && word.end == stitch.end && word.cost < stitch.cost &&
           sort_of(search.sentence, word) == ConceptClass::place;
  });
}

/// The unit at `at` ("sts", "sc", "ch-2 sps"), put into `stated`; its end, or `at` if there is none.
std::uint32_t read_unit(const Search& search, std::uint32_t at, Stated& stated) {
  if (const std::uint32_t space = end_of_numbered_space(search, at)) {
    stated.unit = Unit::spaces;
    return space;
  }
  for (const Word& word : words_at(search.sentence, at)) {
    if (word.kind != WordKind::phrase || is_uncounted(search, word)) continue;
    if (names_several(search, word)) return stated.unit = Unit::group, word.end;
    const ConceptClass sort = sort_of(search.sentence, word);
    const std::string_view name = search.sentence.vocabulary.concepts[word.means].name;
    if (sort == ConceptClass::stitch && means_any_stitch(search, at, word))
      return stated.unit = Unit::stitches, word.end;
    if (sort == ConceptClass::stitch) return read_stitch_unit(search, word, name, stated);
    if (sort == ConceptClass::place)
      stated.unit = are_loops_of_chains(search, word) ? Unit::spaces : unit_of_place(name);
    if (sort == ConceptClass::place || is_work(search.sentence, word)) return word.end;
  }
  return at;
}

/// Figures of something that nobody counts here ("5 petals", "3 picots"), and those of a part of the round
/// ("7 each side", "3 sts per repeat"), are not compared; where their words end, `end` if they are none.
/// `has_unit`: the figure has one that is counted.
std::uint32_t behind_other(const Search& search, std::uint32_t end, bool has_unit) {
  const std::uint32_t at = next_word(search, end);
  const WordsAt words = words_at(search.sentence, at);
  if (words.empty() || at == end) return end;
  const bool unknown = is_uncounted(search, *words.first) ||
                       means(search, at, words::find_concept(search.sentence.vocabulary, "picot"));
  if (has_unit && unknown) return end; // "9 sts without the chains"
  if (!unknown && !means(search, at, search.concepts.per) && !means(search, at, search.concepts.each))
    return end;
  std::uint32_t last = words.first->end;
  for (std::uint32_t next = next_word(search, last); !unknown;) {
    const WordsAt more = words_at(search.sentence, next);
    if (more.empty() || more.first->kind == WordKind::mark || more.first->kind == WordKind::number) break;
    last = more.first->end;
    next = next_word(search, last);
  }
  return last;
}

/// "- that is the 1st | round": a number that tells which round it is counts nothing.
bool tells_which_round(const Search& search, const Word& number) {
  const Word* ordinal =
      word_meaning(search.sentence, number.end, words::find_concept(search.sentence.vocabulary, "ordinal"));
  if (ordinal == nullptr) return false;
  const std::uint32_t next = next_word(search, ordinal->end);
  return means(search, next, search.concepts.round) || means(search, next, search.concepts.row);
}

/// A number and its unit from `at`; none if no number stands there.
std::optional<Stated> read_one(const Search& search, std::uint32_t& at) {
  const Word* number = number_at(search.sentence, at);
  if (number == nullptr || tells_which_round(search, *number)) return std::nullopt;
  Stated stated;
  stated.count = number->number;
  std::uint32_t end = number->end;
  std::uint32_t unit = next_word(search, behind_sizes(search.sentence, end));
  const bool slashes = end < search.sentence.size() && search.sentence.text()[end] == '/';
  if (slashes) end = behind_sizes(search.sentence, end);                                    // "= 12/14/16"
  if (search.sentence.text().substr(unit, 4) == "are ") unit = next_word(search, unit + 4); // "6 are bobbles"
  if (const std::uint32_t behind = read_unit(search, unit, stated); behind != unit) end = behind;
  stated.span = search.sentence.span(at, end);
  at = end;
  return stated;
}

} // namespace

std::uint32_t pass_total(const Search& search, std::uint32_t at) {
  for (std::uint32_t next = next_word(search, at);;) {
    const Word* word = word_meaning(search.sentence, next, search.concepts.count_word);
    if (word == nullptr) word = word_meaning(search.sentence, next, search.concepts.total);
    if (word == nullptr) return at;
    at = word->end;
    next = next_word(search, at);
    if (next < search.sentence.size() && search.sentence.text()[next] == ':')
      at = next + 1, next = next_word(search, at);
  }
}

namespace {

std::uint32_t pass_link(const Search& search, std::uint32_t at) {
  const std::uint32_t next = next_word(search, at);
  if (const Word* word = word_meaning(search.sentence, next, search.concepts.conjunction))
    return next_word(search, word->end);
  if (next >= search.sentence.size()) return at;
  const char mark = search.sentence.text()[next];
  return mark == ',' || mark == '+' || mark == ';' ? next_word(search, next + 1) : at;
}

} // namespace

namespace {

/// "12 sts, | of which 6 are bobbles": where the number of a part stands; `at` if it is not led so.
std::uint32_t behind_of_which(const Search& search, std::uint32_t at) {
  const std::uint32_t next = next_word(search, at);
  const Sentence& sentence = search.sentence;
  const std::size_t lead = end_of_text_word(sentence.vocabulary, sentence.text(), next, TextWord::of_which);
  if (lead == next) return at;
  const std::uint32_t number = next_word(search, static_cast<std::uint32_t>(lead));
  return number_at(sentence, number) != nullptr ? number : at;
}

/// The parts of a sum stand behind a colon: "16 sts: 8 sc, 8 pc". Chains among them are counted with it only
/// where they are named too; then the parts are what is compared.
void settle_sum(std::vector<Stated>& all) {
  std::uint32_t sum = 0;
  bool chains = false;
  for (std::size_t i = 1; i < all.size(); ++i) {
    sum += all[i].count;
    chains = chains || all[i].unit == Unit::chains || all[i].unit == Unit::spaces;
  }
  if (chains && sum == all.front().count)
    all.erase(all.begin());
  else if (all.front().unit == Unit::any)
    all.front().unit = Unit::stitches;
}

/// Groups stand behind what is counted of stitches.
void put_groups_last(std::vector<Stated>& all) {
  std::stable_partition(all.begin(), all.end(), [](const Stated& one) { return one.unit != Unit::group; });
}

/// "4 ch-2 sps and 4 ch-1 sps" are 8 spaces.
void join_spaces(std::vector<Stated>& all) {
  const auto is_space = [](const Stated& one) { return one.unit == Unit::spaces; };
  const auto first = std::find_if(all.begin(), all.end(), is_space);
  if (first == all.end()) return;
  for (auto next = first + 1; next != all.end();) {
    if (!is_space(*next)) {
      ++next;
      continue;
    }
    first->count += next->count;
    first->span = words::cover(first->span, next->span);
    next = all.erase(next);
  }
}

/// "12 → 18", "12 to 18": the count of the round before leads to that of this one; where that begins, 0 if it
/// does not.
std::uint32_t behind_lead(const Search& search, std::uint32_t at) {
  const std::string_view text = search.sentence.text();
  const std::uint32_t next = next_word(search, at);
  std::uint32_t end = 0;
  if (text.substr(std::min(next, search.sentence.size()), 2) == "->") end = next + 2;
  if (next < text.size() && text[next] == '>') end = next + 1;
  const Word* to = word_meaning(search.sentence, next, words::find_concept(search.sentence.vocabulary, "to"));
  if (to != nullptr) end = to->end;
  if (end == 0 || number_at(search.sentence, next_word(search, end)) == nullptr) return 0;
  return next_word(search, end);
}

/// "12 sts left", "6 sts remain", "12 sts all round".
std::uint32_t pass_left(const Search& search, std::uint32_t at, const std::vector<Stated>& figures) {
  if (figures.empty()) return at;
  const std::uint32_t next = next_word(search, at);
  const Word* left =
      word_meaning(search.sentence, next, words::find_concept(search.sentence.vocabulary, "remain"));
  if (left == nullptr && search.sentence.text().substr(std::min(next, search.sentence.size()), 5) == "again")
    left = word_meaning(search.sentence, next, search.concepts.more); // "= 12 again"
  if (left == nullptr && figures.back().unit == Unit::stitches)
    left = word_meaning(search.sentence, next, search.concepts.around);
  return left == nullptr ? at : left->end;
}

/// "30 sts, | 6 rounds", "6 rounds, | 30 sts": where the word for round ends behind a number of rounds that
/// stands beside a count; 0 if it is not so.
std::uint32_t behind_tally(const Search& search, std::uint32_t at, bool counted) {
  const Word* number = number_at(search.sentence, at);
  if (number == nullptr) return 0;
  const std::uint32_t unit = next_word(search, number->end);
  const Word* word = word_meaning(search.sentence, unit, search.concepts.round);
  if (word == nullptr) word = word_meaning(search.sentence, unit, search.concepts.row);
  if (word == nullptr) return 0;
  const std::uint32_t link = pass_link(search, word->end);
  return counted || (link != word->end && number_at(search.sentence, link) != nullptr) ? word->end : 0;
}

char mark_at(const Search& search, std::uint32_t at) {
  return at < search.sentence.size() ? search.sentence.text()[at] : '\0';
}

} // namespace

std::uint32_t read_figures(const Search& search, std::uint32_t begin, std::vector<Stated>& out) {
  std::uint32_t at = next_word(search, pass_total(search, begin));
  std::uint32_t end = begin;
  bool parts = false;
  for (;;) {
    if (const std::uint32_t tally = behind_tally(search, at, !out.empty())) {
      end = tally;
      at = pass_link(search, tally);
      continue;
    }
    const auto one = read_one(search, at);
    if (!one) break;
    if (out.size() == reading_limits.figures) return out.clear(), begin;
    end = behind_other(search, at, one->unit != Unit::any);
    if (end == at) out.push_back(*one);
    at = end;
    const std::uint32_t next = next_word(search, at);
    std::uint32_t link = pass_link(search, at);
    if (mark_at(search, next) == ':' && out.size() == 1 &&
        number_at(search.sentence, next_word(search, next + 1))) {
      parts = true;
      link = next_word(search, next + 1);
    }
    if (const std::uint32_t part = out.size() == 1 ? behind_of_which(search, link) : link; part != link) {
      if (out.front().unit == Unit::any) out.front().unit = Unit::stitches;
      link = part;
    }
    if (const std::uint32_t led = out.size() == 1 ? behind_lead(search, at) : 0) {
      out.clear();
      link = led;
    }
    if (mark_at(search, next) == '=' && out.size() != 1) { // the sum that the figures before make
      out.clear();
      link = next_word(search, next + 1);
    }
    if (link == at) break;
    at = link;
  }
  if (parts && out.size() > 1) settle_sum(out);
  join_spaces(out);
  put_groups_last(out);
  return end == begin ? begin : pass_left(search, pass_total(search, end), out);
}

std::uint32_t read_figures_of_stitch(const Search& search, std::uint32_t begin, std::vector<Stated>& out) {
  if (search.sentence.vocabulary.blanks_between_words) return begin;
  for (const Word& word : words_at(search.sentence, begin)) {
    if (!is_work(search.sentence, word) || sort_of(search.sentence, word) != ConceptClass::stitch) continue;
    const std::uint32_t end = read_figures(search, word.end, out);
    if (end == word.end || out.size() != 1) return out.clear(), begin;
    if (out.front().unit == Unit::any || out.front().unit == Unit::stitches)
      read_stitch_unit(search, word, search.sentence.vocabulary.concepts[word.means].name, out.front());
    return end;
  }
  return begin;
}

/// Two bare numbers are a list of sizes, not a count.
bool is_one_count(const std::vector<Stated>& all) {
  if (all.empty()) return false;
  const auto bare =
      std::count_if(all.begin(), all.end(), [](const Stated& s) { return s.unit == Unit::any; });
  return all.size() == 1 || bare == 0;
}

} // namespace whorl::pattern
