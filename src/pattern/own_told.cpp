#include "pattern/own_told.hpp"

#include "pattern/own_stitch.hpp"
#include "stitch/moves.hpp"
#include "words/fold.hpp"
#include "words/lattice.hpp"

#include <utility>

namespace whorl::pattern {
namespace {

Finding told(Severity severity, const char* code, words::Span span, std::string message) {
  Finding finding;
  finding.severity = severity;
  finding.code = code;
  finding.span = span;
  finding.message = std::move(message);
  return finding;
}

/// Loops on the hook before the move with which a stitch is closed.
int loops_before_closing(const stitch::StitchKind& kind) {
  const auto moves = stitch::parse_moves(kind.moves);
  const auto loops = moves ? stitch::loops_on_hook(*moves) : std::nullopt;
  return loops && loops->size() > 1 ? (*loops)[loops->size() - 2] : 2;
}

} // namespace

Finding redefined(words::Span name, std::string_view named, std::string_view is_now, std::string_view was) {
  return told(Severity::note, "redefined", name,
              "`" + std::string(named) + "` is " + std::string(is_now) +
                  " here, as this line says; without it the word means " + std::string(was));
}

Finding other_moves(words::Span moves, std::string_view named) {
  const std::string name(named);
  return told(Severity::note, "redefined", moves,
              "these are other moves than those of the usual `" + name + "`, and `" + name +
                  "` is read as the usual one: a name of its own in this line makes it another stitch");
}

Finding not_followed(words::Span span, std::string_view named, std::string_view usual) {
  const std::string name(named);
  return told(Severity::warning, "own-stitch", span,
              "what `" + name + "` is here is not understood, and it is read as `" + std::string(usual) +
                  "`: say how it is made, as in `" + name + " = 3 dc in next st`");
}

Finding loops_left(words::Span moves, int left, bool usual) {
  const std::string loops = std::to_string(left);
  return told(
      Severity::warning, "own-stitch", moves,
      left > 1 && !usual ? "after these moves " + loops +
                               " loops are on the hook, and a stitch ends with one: `yo, pull through all " +
                               loops + " loops` is missing at their end"
      : left > 1 ? "after these moves " + loops +
                       " loops are on the hook; a stitch ends with one. It is read as it usually is made"
                 : "these moves pull through more loops than there are on the hook; the stitch is "
                   "read as it usually is made");
}

Finding left_unfinished(words::Span span, const stitch::StitchKind& kind) {
  const std::string loops = std::to_string(loops_before_closing(kind));
  return told(
      Severity::warning, "own-stitch", span,
      "these unfinished stitches leave " + loops +
          " loops on the hook, and a stitch ends with one: `joined together` is missing at their end");
}

std::optional<std::string> unknown_base(std::string_view text, const words::Vocabulary& vocabulary) {
  constexpr std::uint32_t least = 3; // letters
  const bool several = says_same_place(text, vocabulary) || says_closed(text, vocabulary) ||
                       family_of(text, vocabulary) != Family::none;
  const words::Folded line = words::fold(text);
  std::uint32_t end = 0;
  bool number = false;
  for (const words::Word& word : words::lattice(line, vocabulary).words) {
    if (word.begin < end) continue;
    end = word.end;
    const bool phrase = word.kind == words::WordKind::phrase;
    const words::ConceptEntry* means = phrase ? &vocabulary.concepts[word.means] : nullptr;
    if (phrase &&
        (means->sort == words::ConceptClass::stitch || means->sort == words::ConceptClass::decrease) &&
        family_of(means->name) == Family::none)
      return std::nullopt;
    const bool unknown = word.kind == words::WordKind::unknown && word.end - word.begin >= least;
    if (unknown && number)
      return several ? std::optional(line.text.substr(word.begin, word.end - word.begin)) : std::nullopt;
    number = word.kind == words::WordKind::number || (number && phrase && means->name == "unfinished");
  }
  return std::nullopt;
}

Finding made_of_unknown(words::Span span, std::string_view named, std::string_view base) {
  return told(Severity::error, "own-stitch", span,
              "`" + std::string(named) + "` is made of `" + std::string(base) +
                  "`, and I know no stitch of that name: define it in a line before this one");
}

Finding works_back(words::Span span, std::string_view named) {
  return told(Severity::warning, "own-stitch", span,
              "`" + std::string(named) +
                  "` goes back along a chain of its own, and that is not followed in a stitch with a name");
}

} // namespace whorl::pattern
