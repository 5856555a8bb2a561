#include "pattern/chat.hpp"

#include "pattern/chain_habit.hpp"
#include "pattern/costs.hpp"
#include "pattern/stated.hpp"
#include "pattern/text_words.hpp"
#include "words/ascii.hpp"
#include "words/letters.hpp"

#include <algorithm>
#include <vector>

namespace whorl::pattern {
namespace {

using words::ConceptClass;
using words::Word;
using words::WordKind;

bool is_understood(const std::vector<Reading>& readings) {
  return !readings.empty() && readings.front().passed_over.empty();
}

/// Understood, and not only by passing over many words.
bool is_well_understood(const std::vector<Reading>& readings) {
  return is_understood(readings) && readings.front().cost <= cost::clean_start;
}

/// Behind the word that leads from talk to the work, "…, so | begin with 1 sc"; `at` if none stands there.
std::size_t behind_so(const Reader& reader, std::string_view text, std::size_t at) {
  if (at == 0 || text[at - 1] != ' ') return at;
  const std::size_t end = end_of_text_word(reader.vocabulary, text, at, TextWord::so);
  return end == at ? at : text.find_first_not_of(" :,", end);
}

/// Where the mark ends that closes a sentence at a place, narrow or wide; the place if none does.
std::size_t behind_full_stop(std::string_view text, std::size_t at) {
  for (const std::string_view mark : {".", "!", "?", "\xE3\x80\x82", "\xEF\xBC\x81"}) // 。 ！
    if (text.substr(at, mark.size()) == mark) return at + mark.size();
  return at;
}

/// A capital letter or a figure.
bool begins_sentence(std::string_view text, std::size_t at) {
  const char32_t first = words::letter_at(text, at).code;
  return words::is_digit(text[at]) || words::lower(first) != first;
}

/// Where the sentences of a text begin, but for the first: behind a full stop, before a capital letter; and
/// what a sentence leads to.
std::vector<std::uint32_t> later_sentences(const Reader& reader, std::string_view text) {
  std::vector<std::uint32_t> begins;
  for (std::size_t at = 0; at + 2 < text.size(); ++at) {
    if (const std::size_t led = behind_so(reader, text, at); led != at && led != text.npos)
      begins.push_back(static_cast<std::uint32_t>(led));
    const std::size_t stop = behind_full_stop(text, at);
    if (stop == at) continue;
    const std::size_t next = text.find_first_not_of(" \n\r\t", stop);
    if (next == std::string_view::npos) continue;
    const bool wide = stop > at + 1; // no blank stands behind it
    if (wide || (next > stop && begins_sentence(text, next)))
      begins.push_back(static_cast<std::uint32_t>(next));
  }
  return begins;
}

/// Whether a word makes stitches, says how often, or where the next ones go.
bool instructs(const words::Vocabulary& vocabulary, const Word& word) {
  if (word.kind != WordKind::phrase || word.means >= vocabulary.concepts.size()) return false;
  const auto& meant = vocabulary.concepts[word.means];
  static constexpr std::string_view acts[] = {"increase", "times", "repeat", "around",
                                              "turn",     "join",  "skip",   "even"};
  return meant.sort == ConceptClass::stitch || meant.sort == ConceptClass::decrease ||
         meant.sort == ConceptClass::start || meant.sort == ConceptClass::loops ||
         std::find(std::begin(acts), std::end(acts), meant.name) != std::end(acts);
}

/// "each time", "after Round 7": words of how often and how far that tell nothing to do.
bool only_names(const words::Folded& folded, const Word& word) {
  const std::string_view text = folded.text;
  const std::string_view before = text.substr(0, word.begin);
  const auto ends = [before](std::string_view with) {
    return before.size() >= with.size() && before.substr(before.size() - with.size()) == with;
  };
  const std::string_view said = text.substr(word.begin, word.end - word.begin);
  if (said == "time") return ends("each ") || ends("every ") || ends("this ");
  const std::size_t next = text.find_first_not_of(' ', word.end);
  return said == "round" && next != std::string_view::npos && words::is_digit(text[next]);
}

/// "We do not want our increases to line up": an increase that is only spoken of, among words that are no
/// words of the craft, without a number.
bool speaks_of_shaping(const words::Vocabulary& vocabulary, const std::vector<Word>& words) {
  const auto shapes = [&](const Word& word) {
    const auto& meant = vocabulary.concepts[word.means];
    return meant.sort == ConceptClass::decrease || meant.name == "increase";
  };
  int unknown = 0;
  for (const Word& word : words) {
    if (word.kind == WordKind::number || (instructs(vocabulary, word) && !shapes(word))) return false;
    unknown += word.kind == WordKind::unknown;
  }
  return unknown > 1;
}

bool works(const Reader& reader, const words::Folded& folded, const std::vector<Word>& words) {
  return std::any_of(words.begin(), words.end(), [&](const Word& word) {
    return instructs(reader.vocabulary, word) && !only_names(folded, word);
  });
}

bool works(const Reader& reader, Span span) {
  const words::Folded folded = words::fold(reader.source.at(span), span.begin);
  return works(reader, folded, words::lattice(folded, reader.vocabulary).words);
}

/// "Count the V's along the top": what is to be looked at, not worked.
bool tells_to_count(const Reader& reader, Span span) {
  const std::string text = words::fold(reader.source.at(span)).text;
  return text.rfind("count ", 0) == 0 || text.rfind("check ", 0) == 0;
}

/// Whether a stretch of text tells of no work.
bool is_chat(const Reader& reader, Span span) {
  const words::Folded folded = words::fold(reader.source.at(span), span.begin);
  const auto lattice = words::lattice(folded, reader.vocabulary);
  const bool talks = std::any_of(lattice.words.begin(), lattice.words.end(),
                                 [](const Word& word) { return word.kind == WordKind::unknown; });
  return tells_to_count(reader, span) || only_tells_habit(reader, span) ||
         (talks && !works(reader, folded, lattice.words)) ||
         speaks_of_shaping(reader.vocabulary, lattice.words);
}

/// The count that a sentence behind the work states: "You have 12 stitches."
std::vector<Stated> count_in(const Reader& reader, Span span) {
  const std::string before = "sc. ";
  if (span.begin < before.size()) return {};
  const std::string text = before + std::string(reader.source.at(span));
  const auto begin = static_cast<std::uint32_t>(span.begin - before.size());
  return find_stated(look_up(text, begin, reader.vocabulary), reader.kinds).stated;
}

bool read_part(const Reader& reader, Way& way, Span work, Effort effort) {
  Way part = way;
  part.work = work;
  part.readings =
      read_work(reader.source.at(work), work, reader.vocabulary, reader.kinds, effort, part.stuck);
  if (!is_understood(part.readings) || !does_work(part)) return false;
  if (is_understood(way.readings) && part.readings.front().cost >= way.readings.front().cost) return false;
  way.readings = std::move(part.readings);
  return true;
}

/// Where the count in brackets begins that a text ends with; its end if it ends with none.
std::uint32_t begin_of_count(const Reader& reader, Span span) {
  const std::string_view text = reader.source.at(span);
  const std::size_t bracket = text.find_last_of("([");
  const bool counts = bracket != std::string_view::npos && count_at_end(text).has_value();
  return counts ? span.begin + static_cast<std::uint32_t>(bracket) : span.end;
}

/// "The five dc fan out: that is one petal!": a sentence with several words that are none of the craft's.
bool is_talk(const Reader& reader, Span span) {
  const words::Folded folded = words::fold(reader.source.at(span), span.begin);
  const auto lattice = words::lattice(folded, reader.vocabulary);
  const auto unknown = std::count_if(lattice.words.begin(), lattice.words.end(),
                                     [](const Word& word) { return word.kind == WordKind::unknown; });
  return unknown > 2;
}

/// The work of a way without the sentences at its ends that `is_said` finds to be none, and the count told
/// behind it.
template <class IsSaid> std::vector<Stated> cut_sentences(const Reader& reader, Span& work, IsSaid is_said) {
  const std::uint32_t begin = work.begin;
  const std::vector<std::uint32_t> begins = later_sentences(reader, reader.source.at(work));
  std::size_t first = 0;
  while (first < begins.size() && is_said(Span{work.begin, begin + begins[first]}))
    work.begin = begin + begins[first++];
  std::vector<Stated> stated;
  for (std::size_t last = begins.size(); last > first; --last) {
    const Span sentence{begin + begins[last - 1], work.end};
    const Span words{sentence.begin, begin_of_count(reader, sentence)};
    const std::vector<Stated> told = count_in(reader, {words.end, sentence.end});
    const std::vector<Stated> said = told.empty() ? count_in(reader, sentence) : told;
    if (!is_said(words) && (said.empty() || works(reader, words))) break;
    if (stated.empty()) stated = said;
    work.end = sentence.begin;
  }
  return stated;
}

/// What stands around the work is kept; a count behind it is that of its readings.
void keep_around(const Reader& reader, Way& way, Span work, const std::vector<Stated>& stated,
                 std::vector<Reading>& readings) {
  const Span behind{work.end, way.work.end};
  if (work.begin > way.work.begin) keep_note(reader, {way.work.begin, work.begin}, readings);
  if (behind.length() == 0) return;
  keep_note(reader, behind, readings);
  if (stated.empty()) return;
  if (!way.stated) way.stated = stated.front().count;
  for (Reading& reading : readings)
    if (reading.stated.empty()) reading.stated = stated;
}

/// "The same, only with 3 sc between, so": whether a stretch ends with the word that leads to the work.
bool leads_on(const Reader& reader, Span span) {
  const words::Folded folded = words::fold(reader.source.at(span), span.begin);
  const std::string_view text = folded.text;
  const std::size_t end = text.find_last_not_of(" :,");
  if (end == text.npos) return false;
  const std::size_t blank = text.rfind(' ', end);
  const std::size_t word = blank == text.npos ? 0 : blank + 1;
  return end_of_text_word(reader.vocabulary, text, word, TextWord::so) == end + 1;
}

/// Where the counts ask for other readings: those without sentences that only talk.
void add_without_talk(const Reader& reader, Way& way) {
  constexpr int talk = 2;
  Span work = way.work;
  const auto stated =
      cut_sentences(reader, work, [&](Span span) { return is_talk(reader, span) || leads_on(reader, span); });
  if (work.length() == way.work.length()) return;
  Way part = way;
  part.readings.clear();
  if (!read_part(reader, part, work, Effort::all)) return;
  keep_around(reader, way, work, stated, part.readings);
  for (Reading& reading : part.readings) reading.cost += talk;
  way.readings.insert(way.readings.end(), part.readings.begin(), part.readings.end());
}

} // namespace

void keep_note(const Reader& reader, Span said, std::vector<Reading>& readings) {
  const auto placings = read_placings(reader.source.at(said), said, reader.vocabulary);
  for (Reading& reading : readings)
    reading.placings.insert(reading.placings.end(), placings.begin(), placings.end());
}

void read_without_chat(const Reader& reader, Way& way, Effort effort) {
  if (!way.above.empty()) return;
  if (!is_well_understood(way.readings)) {
    Span work = way.work;
    const auto stated = cut_sentences(reader, work, [&](Span span) {
      return is_chat(reader, span) || (leads_on(reader, span) && !works(reader, span));
    });
    if (work.length() != way.work.length() && read_part(reader, way, work, effort))
      keep_around(reader, way, work, stated, way.readings);
  }
  if (effort == Effort::all && is_understood(way.readings)) add_without_talk(reader, way);
}

} // namespace whorl::pattern
