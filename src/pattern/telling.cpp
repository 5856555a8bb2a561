#include "pattern/telling.hpp"

#include "pattern/chain_habit.hpp"
#include "pattern/colour.hpp"
#include "pattern/effect.hpp"
#include "pattern/limits.hpp"
#include "pattern/mend.hpp"
#include "pattern/terms.hpp"
#include "pattern/text_words.hpp"
#include "words/lattice.hpp"
#include "words/scanned.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

constexpr std::uint32_t longest_in = 8; ///< bytes of "in", "into", "in the" and the blank behind

std::string what_could_follow(const Stuck& stuck) {
  if (stuck.could_follow.empty()) return {};
  std::string text =
      stuck.after.empty() ? "; I can read: " : "; after " + quoted(stuck.after) + " I can read: ";
  for (std::size_t i = 0; i < stuck.could_follow.size(); ++i)
    text += (i > 0 ? ", " : "") + stuck.could_follow[i];
  return text;
}

/// Letters with what is glued to them: `5C`, `l8`.
Span with_glued(const Source& source, Span span, Span work) {
  const auto is_glued = [&source](std::uint32_t byte) {
    const char c = source.text()[byte];
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
  };
  while (span.begin > work.begin && is_glued(span.begin - 1)) --span.begin;
  while (span.end < work.end && is_glued(span.end)) ++span.end;
  return span;
}

/// The first letters of a line that are no word.
Span strange_word(const Reader& reader, const Way& way) {
  const auto lattice =
      words::lattice(words::fold(reader.source.at(way.work), way.work.begin), reader.vocabulary);
  std::uint32_t end = 0;
  for (const words::Word& word : lattice.words) {
    if (word.begin < end) continue;
    end = word.end;
    if (word.kind == words::WordKind::unknown) return with_glued(reader.source, word.span, way.work);
  }
  return {};
}

std::string uses_and_makes(const Effect& effect, const Settled& settled) {
  const std::int64_t open = settled.opened, spaces = settled.opened_spaces;
  const bool by_spaces = effect.pass_spaces > 0 && effect.pass_uses == 0;
  if (runs_to_end(effect) && (open == unknown || (by_spaces && spaces == unknown)))
    return "goes on to the end of the round";
  const Outcome result = outcome(effect, Open{std::max<std::int64_t>(open, 0), spaces});
  const std::int64_t used = by_spaces ? spaces : open - result.left_over + result.past_end;
  const std::int64_t uses = effect.starts || open == unknown ? effect.uses : used;
  return "uses " + number(uses) + " and makes " + number(result.makes);
}

} // namespace

std::string number(std::int64_t value) { return std::to_string(value); }

std::string quoted(std::string_view text) { return "`" + std::string(text) + "`"; }

Finding finding(Severity severity, const char* code, Span span, std::string message, std::string mend) {
  Finding result;
  result.severity = severity;
  result.code = code;
  result.span = span;
  result.message = std::move(message);
  result.mend = std::move(mend);
  return result;
}

void Telling::add(Finding found) {
  const int count = ++count_of_code_[found.code];
  if (count <= limit::findings) findings_.push_back(std::move(found));
}

std::vector<Finding> Telling::take() {
  for (const auto& [code, count] : count_of_code_) {
    if (count <= limit::findings) continue;
    const auto same = std::find_if(findings_.rbegin(), findings_.rend(),
                                   [wanted = code](const Finding& f) { return f.code == wanted; });
    Finding more = finding(same->severity, same->code.c_str(), same->span,
                           "and " + number(count - limit::findings) + " more places like this one");
    findings_.push_back(std::move(more));
  }
  return std::move(findings_);
}

void Telling::tell_bad_bytes() {
  for (const Span bad : reader_.source.bad_bytes())
    add(finding(Severity::error, "bytes", bad,
                bad.length() == 1 ? "this byte is no text (UTF-8); it is read as a blank"
                                  : "these bytes are no text (UTF-8); they are read as blanks"));
}

void Telling::tell_long_lines(const Cut& cut) {
  for (const Span line : cut.too_long)
    add(finding(Severity::error, "limit", {line.begin, line.begin + 1},
                "this line has " + number(line.length()) + " bytes; a line of more than " +
                    number(limit::line_bytes) + " is not read"));
}

bool Telling::tell_too_much(const Reading& reading) {
  for (const Node& node : reading.nodes) {
    const std::uint32_t most = std::max<std::uint32_t>(node.work.times, node.work.in_one);
    const std::uint32_t allowed = node.work.in_one > limit::in_one ? limit::in_one : limit::times;
    if (most <= allowed) continue;
    add(finding(Severity::error, "limit", node.span,
                number(most) + " times is more than I work; at most " + number(allowed)));
    return true;
  }
  return false;
}

void Telling::tell_unread(const Way& way, const std::string& mend) {
  const Source& source = reader_.source;
  const Span strange = strange_word(reader_, way);
  if (way.reference)
    add(finding(Severity::error, "unread", way.work, "I do not find the rounds that this line names", mend));
  else if (way.work.empty())
    add(finding(Severity::error, "unread", way.label.span, "nothing stands behind this label", mend));
  else if (!strange.empty() && (way.stuck.span.empty() || strange.begin < way.stuck.span.begin))
    add(finding(Severity::error, "unread", strange, "I do not know " + quoted(source.at(strange)), mend));
  else if (way.stuck.span.empty() && !way.readings.empty())
    add(finding(Severity::error, "unread", way.readings.front().passed_over.front(),
                "I do not know what " + quoted(source.at(way.readings.front().passed_over.front())) +
                    " is to do here",
                mend));
  else if (way.stuck.span.empty())
    add(finding(Severity::error, "unread", way.work, "I cannot read this round", mend));
  else
    add(finding(Severity::error, "unread", way.stuck.span,
                "I cannot read " + quoted(source.at(way.stuck.span)) + " here" + what_could_follow(way.stuck),
                mend));
}

/// A number of so many digits that nobody can have meant it.
bool Telling::tell_too_large(const std::vector<Span>& spans) {
  const auto is_large = [this](Span span) {
    const std::string_view text = reader_.source.at(span);
    return text.size() > limit::digits && text.find_first_not_of("0123456789") == std::string_view::npos;
  };
  const auto found = std::find_if(spans.begin(), spans.end(), is_large);
  if (found == spans.end()) return false;
  add(finding(Severity::error, "limit", *found,
              quoted(reader_.source.at(*found)) + " is more than I can count to"));
  return true;
}

/// A word of no meaning that stands for no place: "sc in blorp" lacks one.
bool Telling::is_beside(Span span) const {
  const std::string_view word = reader_.source.at(span);
  const Sentence before = look_up(
      reader_.source.at({span.begin - std::min(span.begin, longest_in), span.begin}), 0, reader_.vocabulary);
  const bool behind_in =
      std::any_of(before.lattice.words.begin(), before.lattice.words.end(), [&](const words::Word& w) {
        return w.means == before.in && skip_blanks(before.text(), w.end) == before.size();
      });
  return is_unknown(span) && (!behind_in || is_colour(words::fold(word).text, reader_.vocabulary));
}

bool Telling::is_unknown(Span span) const {
  const words::Folded folded = words::fold(reader_.source.at(span), span.begin);
  const words::Lattice lattice = words::lattice(folded, reader_.vocabulary);
  return !lattice.words.empty() &&
         std::all_of(lattice.words.begin(), lattice.words.end(),
                     [](const auto& word) { return word.kind == words::WordKind::unknown; });
}

void Telling::tell_passed_over(const Reading& reading, const Settled& settled, const std::string& mend) {
  std::vector<Span> spans = reading.passed_over;
  if (settled.states && settled.agrees()) // "brim, flo, …": the counts show that it is no stitch
    spans.erase(std::remove_if(spans.begin(), spans.end(), [this](Span span) { return is_beside(span); }),
                spans.end());
  if (spans.empty() || tell_too_large(spans)) return;
  std::string what = quoted(reader_.source.at(spans.front()));
  for (std::size_t i = 1; i < spans.size(); ++i)
    what += (i + 1 == spans.size() ? " and " : ", ") + quoted(reader_.source.at(spans[i]));
  const bool one = spans.size() == 1;
  add(finding(Severity::warning, "passed-over", spans.front(),
              what + (one ? " is" : " are") + " not understood here and left out", mend));
}

void Telling::tell_misspelt(const Line& line, const Reading& reading) {
  for (const Placing& note : reading.placings) {
    if (note.span.begin < line.span.begin) continue;
    if (note.what != What::note || note.text.find(' ') != std::string::npos) continue;
    if (!is_unknown(note.span)) continue;
    const std::string meant = word_of_same_letters(note.text, reader_.vocabulary);
    if (meant.empty()) continue;
    std::string mended(reader_.source.at(line.span));
    mended.replace(note.span.begin - line.span.begin, note.span.length(), meant);
    add(finding(Severity::warning, "word", note.span,
                "I do not know " + quoted(note.text) + " and read on without it", std::move(mended)));
  }
}

namespace {

/// Whether a word of the vocabulary covers a stretch of a line, or one for "round" begins it: the Dutch `l`
/// is a chain, the `l` of "m. en l'air" and the `o` of the Danish "o3" are no figures.
bool is_known(const words::Vocabulary& vocabulary, const words::Lattice& line, Span span) {
  const words::Concept round = words::find_concept(vocabulary, "round");
  return std::any_of(line.words.begin(), line.words.end(), [&](const words::Word& word) {
    if (word.kind != words::WordKind::phrase || word.span.begin > span.begin) return false;
    return span.end <= word.span.end || (word.means == round && word.span.begin == span.begin);
  });
}

} // namespace

void Telling::tell_scanned(const Line& line) {
  const words::Lattice known =
      words::lattice(words::fold(reader_.source.at(line.span), line.span.begin), reader_.vocabulary);
  for (const Span span : words::scanned_figures(reader_.source.at(line.span), line.span.begin)) {
    const words::Folded typed = words::fold(reader_.source.at(span));
    if (is_known(reader_.vocabulary, known, span)) continue;
    std::string figures;
    for (std::size_t at = 0; at < typed.text.size();) {
      const words::ScannedDigit digit = words::scanned_digit(typed.text, at);
      figures += static_cast<char>('0' + digit.value);
      at += digit.length;
    }
    std::string mended(reader_.source.at(line.span));
    mended.replace(span.begin - line.span.begin, span.length(), figures);
    add(finding(Severity::note, "figure", span, quoted(reader_.source.at(span)) + " is read as " + figures,
                std::move(mended)));
  }
}

void Telling::tell_unmarked(const Line& line, const Label& label) {
  if (!label.unmarked) return;
  std::string mended(reader_.source.at(line.span));
  mended.insert(label.span.end - line.span.begin, ".");
  add(finding(Severity::note, "label", label.span,
              quoted(reader_.source.at(label.span)) + " is read as the number of this round",
              std::move(mended)));
}

void Telling::tell_mixed(const Reading& reading) {
  if (reading.mixed.empty()) return;
  const std::string sc = spoken("sc", reader_.vocabulary);
  add(finding(Severity::note, "mixed", reading.mixed,
              quoted(reader_.source.at(reading.mixed)) +
                  " stands among other stitches and is taken to be of " + sc +
                  "; where another is meant, name it"));
}

/// `5c` is read as sc.
void Telling::tell_scanned_sc(const Line& line) {
  const std::string_view text = reader_.source.at(line.span);
  const auto is_word = [](char c) {
    return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
  };
  for (std::size_t at = 0; at + 1 < text.size(); ++at) {
    const bool alone =
        (at == 0 || !is_word(text[at - 1])) && (at + 2 >= text.size() || !is_word(text[at + 2]));
    if (text[at] != '5' || (text[at + 1] != 'c' && text[at + 1] != 'C') || !alone) continue;
    const auto begin = line.span.begin + static_cast<std::uint32_t>(at);
    std::string mended(text);
    mended[at] = text[at + 1] == 'C' ? 'S' : 's';
    add(finding(Severity::note, "figure", {begin, begin + 2}, quoted(text.substr(at, 2)) + " is read as sc",
                std::move(mended)));
    return;
  }
}

void Telling::tell_reversed(const Line& line) {
  const words::Folded text = words::fold(reader_.source.at(line.span), line.span.begin);
  for (const std::string_view word : {"crab ", "reverse ", "reversed ", "rev sc", "rsc", "backwards sc"}) {
    const std::size_t at = text.text.find(word);
    if (at == std::string::npos || (at > 0 && text.text[at - 1] >= 'a' && text.text[at - 1] <= 'z')) continue;
    const Span span{text.from[at], text.from[at + word.size()]};
    add(finding(Severity::note, "reversed", span,
                "this stitch is counted and drawn as " + spoken("sc", reader_.vocabulary) +
                    "; it is worked the other way round"));
    return;
  }
}

/// "Fold in two and close with 4 sc": an opening that is closed, which many authors give no number.
static bool closes_opening(const Reader& reader, Span line) {
  const std::string text = words::fold(reader.source.at(line), line.begin).text;
  return has_text_word(reader.vocabulary, text, TextWord::flattened) ||
         names_concept(reader, line, "together") || names_concept(reader, line, "join");
}

/// "1 sl st, leave a long tail", "finish with a slip stitch": the end of a piece, which has no number.
static bool only_ends_piece(const Reader& reader, const Reading& reading) {
  bool slips = false;
  for (const Node& node : reading.nodes) {
    if (node.kind == NodeKind::repeat) return false;
    if (node.kind != NodeKind::work || node.work.act != Act::stitch) continue;
    const bool slip = node.work.kind < reader.kinds.size() && reader.kinds[node.work.kind].name == "sl st";
    if (!slip || node.work.times != 1 || node.work.to_end) return false;
    slips = true;
  }
  return slips;
}

void Telling::tell_left_out(const Line& line) {
  if (!names_stitches(reader_, line.span) || only_tells_habit(reader_, line.span)) return;
  const Way way = way_of(reader_, no_label(line.span), line.span.end);
  if (!is_clean(way) && way.stated)
    add(finding(
        Severity::warning, "left-out", line.span,
        "this line names stitches and ends with a count, but I cannot read it as a round; it is left out"));
  if (!is_clean(way) || !does_work(way)) return;
  if (only_ends_piece(reader_, way.readings.front())) return;
  const auto& nodes = way.readings.front().nodes;
  const bool moves_start = std::any_of(nodes.begin(), nodes.end(), [](const Node& node) {
    return node.kind == NodeKind::work && node.work.act == Act::start_here;
  });
  const bool closes_flat = std::any_of(nodes.begin(), nodes.end(), [](const Node& node) {
    return node.work.into == Into::both_layers || node.work.act == Act::part_edge;
  });
  if (moves_start || closes_flat || closes_opening(reader_, line.span)) return;
  add(finding(Severity::warning, "left-out", line.span,
              "this line reads as work, and no label says of which round; it is left out"));
}

namespace {

/// "sc - 12", "12 sc (12)" on twelve stitches: one stitch in each, which nobody reads otherwise.
bool is_plainly_even(const Reading& reading, const Settled& settled) {
  const auto stitches = std::count_if(reading.nodes.begin(), reading.nodes.end(), [](const Node& node) {
    return node.kind == NodeKind::work && node.work.act == Act::stitch;
  });
  return stitches == 1 && reading.stated.size() == 1 && settled.opened == settled.open &&
         settled.open == std::int64_t{reading.stated.front().count};
}

/// "inc in each 12": the number at the end is met by what the round makes of all that is open to it.
bool meets_bare_count(const Reading& reading, const Settled& settled) {
  return reading.bare_count && reading.stated.size() == 1 && settled.agreeing < 2 &&
         settled.open == std::int64_t{reading.stated.front().count};
}

/// "in each 2 dc 24" on twelve stitches: the other reading takes for work what is the count on both sides.
bool takes_last_number(const Reading& reading, const Settled& settled, const Reading& other) {
  return reading.stated.size() == 1 && reading.stated.front().unit == Unit::any && other.stated.empty() &&
         settled.uses_all && settled.meets;
}

} // namespace

void Telling::tell_choice(const Line& line, const Ways& ways, const Settled& settled) {
  if (!settled.other || settled.reading == not_read) return;
  const Reading& taken = ways[settled.way].readings[settled.reading];
  if (is_plainly_even(taken, settled) || meets_bare_count(taken, settled)) return;
  const bool likeliest = settled.way == 0 && settled.reading == 0;
  if (likeliest && settled.agreeing < 2) return;
  if (takes_last_number(ways[settled.way].readings[settled.reading], settled,
                        ways[settled.other->first].readings[settled.other->second]))
    return;
  const Effect& other_effect = ways[settled.other->first].readings[settled.other->second].effect;
  if (other_effect.starts && !taken.effect.starts && settled.opened > 0) return; // nobody begins anew there
  const std::string chosen = uses_and_makes(taken.effect, settled);
  const std::string other = uses_and_makes(other_effect, settled);
  if (chosen == other) return;
  std::string message = likeliest ? "two readings agree with the counts; the likelier is taken, which "
                                  : "the counts chose how this is read: it ";
  message += chosen;
  message += likeliest ? "; the other " : "; without them I should read that it ";
  message += other;
  add(finding(Severity::note, "reading", line.span, std::move(message)));
}

} // namespace whorl::pattern
