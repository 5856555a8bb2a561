#include "pattern/counted_round.hpp"

#include "pattern/costs.hpp"
#include "pattern/limits.hpp"
#include "pattern/sentence.hpp"

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

private:
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
