#include "pattern/counted_round.hpp"
#include "pattern/bare_count.hpp"

#include "pattern/costs.hpp"
#include "pattern/limits.hpp"
#include "pattern/sentence.hpp"
#include "pattern/stated.hpp"

namespace whorl::pattern {

namespace {

/// What a line says of a round besides its label.
struct Told {
  std::uint32_t count = 0;
  std::uint32_t change = 0;
  bool fewer = false; ///< the change is of decreases
  bool even = false;
};

/// Taking the words of a line one after the other.
class Taker {
public:
  Taker(std::string_view text, const words::Vocabulary& vocabulary)
      : sentence_(look_up(text, 0, vocabulary)), even_(words::find_concept(vocabulary, "even")) {}

  bool at_end() {
    at_ = skip_blanks(sentence_.text(), at_);
    return at_ >= sentence_.size();
  }

  char take_mark(std::string_view marks) {
    if (at_end() || marks.find(sentence_.text()[at_]) == marks.npos) return '\0';
    return sentence_.text()[at_++];
  }

  std::uint32_t take_number() {
    const words::Word* number = at_end() ? nullptr : number_at(sentence_, at_);
    if (number == nullptr || number->number == 0) return 0;
    at_ = number->end;
    take_unit();
    return number->number;
  }

  bool take_even() {
    const words::Word* even = at_end() ? nullptr : word_meaning(sentence_, at_, even_);
    if (even != nullptr) at_ = even->end;
    return even != nullptr;
  }

  /// "6 increases", "increase 6": how many, and whether they are decreases; 0 if none stand here.
  std::uint32_t take_shaping(bool& fewer) {
    const std::uint32_t begin = at_;
    const bool before = take_shape(fewer);
    const words::Word* number = at_end() ? nullptr : number_at(sentence_, at_);
    if (number != nullptr) at_ = number->end;
    if (number != nullptr && (before || take_shape(fewer) || (take_unit(), take_shape(fewer)))) {
      take_unit();
      return number->number;
    }
    at_ = begin;
    return 0;
  }

private:
  bool take_shape(bool& fewer) {
    if (at_end()) return false;
    for (const words::Word& word : words_at(sentence_, at_)) {
      const bool less = sort_of(sentence_, word) == words::ConceptClass::decrease;
      if (word.kind != words::WordKind::phrase || !(less || word.means == sentence_.increase)) continue;
      fewer = less;
      at_ = word.end;
      return true;
    }
    return false;
  }

  void take_unit() {
    if (at_end()) return;
    for (const words::Word& word : words_at(sentence_, at_))
      if (sort_of(sentence_, word) == words::ConceptClass::place) {
        at_ = word.end;
        return;
      }
  }

  const Sentence sentence_;
  const words::Concept even_;
  std::uint32_t at_ = 0;
};

bool take_change(Taker& taker, Told& told) {
  if (taker.take_even()) return told.even = true;
  if ((told.change = taker.take_shaping(told.fewer)) > 0) return true;
  const char sign = taker.take_mark("+-");
  told.fewer = sign == '-';
  told.change = sign == '\0' ? 0 : taker.take_number();
  return told.change > 0;
}

std::optional<Told> told_in(const Reader& reader, const Way& way, std::string_view work) {
  Told told;
  Taker taker(work, reader.vocabulary);
  if (!way.label.count.empty()) {
    Taker count(reader.source.at(way.label.count), reader.vocabulary);
    static_cast<void>(count.take_mark("([="));
    told.count = count.take_number();
  } else {
    told.count = taker.take_number();
  }
  if (told.count == 0) return std::nullopt;
  const bool bracket = taker.take_mark("([") != '\0';
  if (!take_change(taker, told)) return std::nullopt;
  if (bracket && taker.take_mark(")]") == '\0') return std::nullopt;
  return taker.at_end() ? std::optional(told) : std::nullopt;
}

/// "(2 sc, inc) x 6", or piece by piece where the plain stitches do not divide.
std::string spread(std::uint32_t plain, const char* shaping, std::uint32_t times) {
  const std::string end = std::string(shaping) + ") x " + std::to_string(times);
  if (plain == 0) return std::string(shaping) + " x " + std::to_string(times);
  if (plain % times == 0) return "(" + std::to_string(plain / times) + " sc, " + end;
  std::string text;
  for (std::uint32_t i = 0; i < times; ++i) {
    const std::uint32_t some = plain * (i + 1) / times - plain * i / times;
    text +=
        (text.empty() ? "" : ", ") + (some > 0 ? std::to_string(some) + " sc, " : std::string()) + shaping;
  }
  return text;
}

} // namespace

std::optional<std::string> work_by_count(const Reader& reader, const Way& way, std::string_view work) {
  constexpr std::size_t longest = 60; ///< bytes
  if (!way.above.empty() || way.label.span.empty() || work.size() > longest) return std::nullopt;
  const std::optional<Told> told = told_in(reader, way, work);
  if (!told || told->count > limit::number) return std::nullopt;
  const std::string count = " (" + std::to_string(told->count) + ")";
  if (told->even) return std::to_string(told->count) + " sc" + count;
  if (told->fewer)
    return spread(told->count - std::min(told->count, told->change), "dec", told->change) + count;
  const bool fits = told->count >= 2 * told->change;
  if (!fits) return std::nullopt;
  return spread(told->count - 2 * told->change, "inc", told->change) + count;
}

namespace {

/// Whether words that mean something stand in a sentence, from a place on or up to it.
bool has_word(const Sentence& sentence, std::uint32_t begin, std::uint32_t end, const char* name) {
  const words::Concept means = words::find_concept(sentence.vocabulary, name);
  for (std::uint32_t at = begin; at < end; ++at)
    if (word_meaning(sentence, at, means) != nullptr) return true;
  return false;
}

/// Whether a decrease is told, or stitches together.
bool has_decrease(const Sentence& sentence) {
  for (const words::Word& word : sentence.lattice.words)
    if (sort_of(sentence, word) == words::ConceptClass::decrease) return true;
  return has_word(sentence, 0, sentence.size(), "together");
}

/// Whether an increase is told, or two stitches in one.
bool has_increase(const Sentence& sentence) {
  const bool two =
      std::any_of(sentence.lattice.words.begin(), sentence.lattice.words.end(), [](const words::Word& word) {
        return word.kind == words::WordKind::number && word.number == 2;
      });
  return two || has_word(sentence, 0, sentence.size(), "increase");
}

} // namespace

std::optional<std::string> work_at_both_ends(const Reader& reader, const Way& way, std::string_view work) {
  constexpr std::size_t longest = 240; ///< bytes
  if (!way.above.empty() || way.label.span.empty() || work.size() > longest) return std::nullopt;
  const Sentence sentence = look_up(work, 0, reader.vocabulary);
  const words::Concept ends = words::find_concept(reader.vocabulary, "both ends");
  std::uint32_t at = 0;
  while (at < sentence.size() && word_meaning(sentence, at, ends) == nullptr) ++at;
  if (at >= sentence.size()) return std::nullopt;
  const StatedCount count = find_stated(sentence, reader.kinds);
  const bool fewer = has_decrease(sentence);
  if (count.stated.size() != 1 || !(fewer || has_increase(sentence))) return std::nullopt;
  const std::uint32_t made = count.stated.front().count, shaped = fewer ? 2 : 4;
  if (made <= shaped || made > limit::number) return std::nullopt;
  std::string text = has_word(sentence, 0, at, "turn") ? "turn, " : "";
  if (has_word(sentence, 0, sentence.size(), "ch")) text += "ch 1, ";
  const std::string end = fewer ? "dec" : "inc";
  text += end + ", " + std::to_string(made - shaped) + " sc, " + end;
  if (has_word(sentence, at, sentence.size(), "turn")) text += ", turn";
  return text + " (" + std::to_string(made) + ")";
}

namespace {

/// The one number that a sentence names besides its count; 0: there is none, or several.
std::uint32_t only_number(const Sentence& sentence, const StatedCount& count) {
  std::uint32_t only = 0;
  for (std::uint32_t at = 0; at < sentence.size();) {
    const bool counts = at >= count.begin && at < count.end;
    const words::Word* number = counts ? nullptr : number_at(sentence, at);
    if (number != nullptr && only != 0) return 0;
    if (number != nullptr) only = number->number;
    at = number != nullptr ? number->end : at + 1;
  }
  return only;
}

} // namespace

std::optional<std::string> work_evenly(const Reader& reader, const Way& way, std::string_view work) {
  constexpr std::size_t longest = 160; ///< bytes
  if (!way.above.empty() || way.label.span.empty() || work.size() > longest) return std::nullopt;
  const Sentence sentence = look_up(work, 0, reader.vocabulary);
  if (!has_word(sentence, 0, sentence.size(), "evenly around")) return std::nullopt;
  const bool more = has_word(sentence, 0, sentence.size(), "increase"), fewer = has_decrease(sentence);
  const StatedCount count = find_stated(sentence, reader.kinds);
  if (count.stated.size() != 1 || more == fewer) return std::nullopt;
  const std::uint32_t made = count.stated.front().count, times = only_number(sentence, count);
  const std::uint32_t shaped = more ? 2 * times : times;
  if (times == 0 || made < shaped || made > limit::number) return std::nullopt;
  return spread(made - shaped, more ? "inc" : "dec", times) + " (" + std::to_string(made) + ")";
}

std::optional<std::string> work_explained(const Reader& reader, const Way& way, std::string_view work) {
  constexpr std::size_t longest = 240; ///< bytes
  if (!way.above.empty() || way.label.span.empty() || work.size() > longest) return std::nullopt;
  const Sentence sentence = look_up(work, 0, reader.vocabulary);
  const std::string_view text = sentence.text();
  const std::uint32_t end = trim_separators(text, 0, sentence.size());
  const words::Word* number = number_at(sentence, skip_blanks(text, 0));
  if (number == nullptr || end == 0 || (text[end - 1] != ')' && text[end - 1] != ']')) return std::nullopt;
  const std::uint32_t behind = skip_blanks(text, number->end);
  std::uint32_t open = behind;
  for (const words::Word& unit : words_at(sentence, behind))
    if (sort_of(sentence, unit) == words::ConceptClass::place ||
        sort_of(sentence, unit) == words::ConceptClass::stitch)
      open = std::max(open, skip_blanks(text, unit.end));
  if (open >= end || (text[open] != '(' && text[open] != '[')) return std::nullopt;
  const std::int32_t index = sentence.brackets.at[open];
  if (index == no_bracket) return std::nullopt;
  const Bracket& bracket = sentence.brackets.all[static_cast<std::size_t>(index)];
  if (bracket.end != end || bracket.inner_begin >= bracket.inner_end) return std::nullopt;
  bool shapes = false, twice = false;
  for (std::uint32_t at = bracket.inner_begin; at < bracket.inner_end; ++at) {
    const words::Word* many = number_at(sentence, at);
    twice = twice || (many != nullptr && many->number == 2);
    for (const words::Word& word : words_at(sentence, at)) {
      const bool shape = is_work(sentence, word) && sort_of(sentence, word) != words::ConceptClass::stitch;
      shapes = shapes || shape ||
               (twice && word.kind == words::WordKind::phrase &&
                (sort_of(sentence, word) == words::ConceptClass::stitch ||
                 sort_of(sentence, word) == words::ConceptClass::place));
    }
  }
  if (!shapes) return std::nullopt;
  return std::string(text.substr(bracket.inner_begin, bracket.inner_end - bracket.inner_begin)) + " (" +
         std::to_string(number->number) + ")";
}

namespace {

/// Whether a word may stand in a round that goes on plainly: one that nobody knows, a small one, `sc`.
bool may_go_on(const Sentence& sentence, const words::Word& word) {
  if (word.kind != words::WordKind::phrase) return word.kind != words::WordKind::number;
  static constexpr std::string_view plain[] = {"even", "around", "count word", "total",
                                               "and",  "with",   "sc",         "st"};
  const auto& entry = sentence.vocabulary.concepts[word.means];
  return entry.sort == words::ConceptClass::filler ||
         std::find(std::begin(plain), std::end(plain), entry.name) != std::end(plain);
}

} // namespace

std::optional<std::string> work_plainly(const Reader& reader, const Way& way, std::string_view work) {
  constexpr std::size_t longest = 120; ///< bytes
  constexpr std::uint32_t least = 4;
  const bool later = way.label.from > 1 && way.label.closed && !way.label.relative;
  if (!way.above.empty() || !later || work.size() > longest) return std::nullopt;
  const Sentence sentence = look_up(work, 0, reader.vocabulary);
  StatedCount count = find_stated(sentence, reader.kinds);
  if (count.stated.empty()) count = bare_count(sentence);
  if (count.stated.size() != 1 || count.begin == 0 || count.stated.front().count < least) return std::nullopt;
  for (std::uint32_t at = 0; at < count.begin;) {
    const WordsAt here = words_at(sentence, at);
    if (!here.empty() && !may_go_on(sentence, *here.first)) return std::nullopt;
    at = here.empty() ? at + 1 : std::max(here.first->end, at + 1);
  }
  const std::string number = std::to_string(count.stated.front().count);
  return number + " sc (" + number + ")";
}

namespace {

/// The text of a round whose only work, increases or decreases, does not come to the stated count; none if
/// the reading is no such.
std::optional<std::string> spread_to_count(const Reading& reading) {
  const Effect& effect = reading.effect;
  const bool all_in_hand = effect.uses > 0 && effect.pass_uses == 0 && !effect.starts && effect.spaces == 0;
  if (!all_in_hand || reading.stated.size() != 1 || !reading.passed_over.empty()) return std::nullopt;
  const std::uint32_t count = reading.stated.front().count;
  if (count > limit::number) return std::nullopt;
  const std::string told = " (" + std::to_string(count) + ")";
  if (effect.makes == 2 * effect.uses && count > effect.makes)
    return spread(count - effect.makes, "inc", effect.uses) + told;
  if (effect.uses == 2 * effect.makes && count > effect.makes)
    return spread(count - effect.makes, "dec", effect.makes) + told;
  return std::nullopt;
}

} // namespace

void take_stitch_before(std::vector<Reading>& readings) {
  for (Reading& reading : readings)
    for (NodeId id = 0; id < reading.nodes.size(); ++id)
      if (reading.nodes[id].kind == NodeKind::work && reading.nodes[id].work.act == Act::stitch)
        reading.bare.push_back(id);
}

void spread_evenly(const Reader& reader, std::vector<Reading>& readings, Span span, Effort effort) {
  for (const Reading& reading : readings) {
    const std::optional<std::string> text = spread_to_count(reading);
    if (!text) continue;
    Stuck stuck;
    std::vector<Reading> even =
        read_work(*text, {0, 0}, *words::find_vocabulary("en-US"), reader.kinds, effort, stuck);
    if (even.empty()) return;
    even.resize(1);
    point_at(even, span);
    take_stitch_before(even);
    even.front().cost = reading.cost + costs.spread_evenly;
    even.front().placings = reading.placings;
    even.front().stated = reading.stated;
    readings.push_back(std::move(even.front())); // `reading` is not valid from here on
    return;
  }
}

void point_at(std::vector<Reading>& readings, Span span) {
  for (Reading& reading : readings) {
    for (Node& node : reading.nodes) node.span = span;
    for (Stated& stated : reading.stated) stated.span = span;
    for (Placing& placing : reading.placings) placing.span = span;
  }
}

} // namespace whorl::pattern
