#include "writing/passage.hpp"

#include "pattern/own_list.hpp"
#include "pattern/terms.hpp"
#include "words/fold.hpp"
#include "words/telling.hpp"
#include "writing/step.hpp"

#include <algorithm>

namespace whorl::writing {
namespace {

using pattern::Source;
using pattern::Span;
using pattern::Tree;
using Sort = Passage::Sort;

bool has_words(std::string_view text) {
  return std::any_of(text.begin(), text.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
           static_cast<unsigned char>(c) >= 0x80;
  });
}

class Passages {
public:
  Passages(const Source& source, const Tree& tree, const words::Vocabulary& vocabulary)
      : source_(source), tree_(tree), vocabulary_(vocabulary) {}

  std::vector<Passage> find() {
    add_list();
    for (std::uint32_t i = 0; i < tree_.rounds.size(); ++i) add_round(i);
    for (std::uint32_t i = 0; i < tree_.parts.size(); ++i)
      if (!tree_.parts[i].name.empty()) add({Sort::heading, tree_.parts[i].span, {}, {}, i, 0});
    for (std::uint32_t i = 0; i < tree_.headers.size(); ++i) add_header(i);
    for (std::uint32_t i = 0; i < tree_.placings.size(); ++i) add_placing(i);
    add_prose();
    take_links();
    return std::move(all_);
  }

private:
  /// "…, then" and "and" between two things of one sentence, or other words there, belong to the second.
  void take_links() {
    for (std::size_t i = 1; i < all_.size(); ++i) {
      const Span gap{all_[i - 1].span.end, all_[i].span.begin};
      const bool things = all_[i].sort == Sort::placing && all_[i - 1].sort != Sort::heading;
      if (!things || gap.length() == 0) continue;
      const std::string_view link = source_.at(gap);
      if (link.find_first_not_of(" .") != std::string_view::npos &&
          link.find_first_of("\n0123456789():") == std::string_view::npos)
        all_[i].span.begin = gap.begin;
    }
  }

  Passage* overlapping(Span span) {
    const auto found = std::find_if(all_.begin(), all_.end(), [span](const Passage& passage) {
      return passage.span.begin < span.end && span.begin < passage.span.end;
    });
    return found == all_.end() ? nullptr : &*found;
  }

  /// Keeps the order of the text; what overlaps is passed over.
  void add(Passage passage) {
    passage.span = trimmed(passage.span);
    if (passage.span.empty() || !has_words(source_.at(passage.span)) || overlapping(passage.span) != nullptr)
      return;
    const auto at = std::find_if(all_.begin(), all_.end(), [&passage](const Passage& other) {
      return other.span.begin > passage.span.begin;
    });
    all_.insert(at, std::move(passage));
  }

  Span trimmed(Span span) const {
    const std::string_view text = source_.text();
    while (span.begin < span.end &&
           std::string_view(" \t\r\n").find(text[span.begin]) != std::string_view::npos)
      ++span.begin;
    while (span.begin < span.end &&
           std::string_view(" \t\r\n").find(text[span.end - 1]) != std::string_view::npos)
      --span.end;
    return span;
  }

  /// A stated count with its brackets.
  Span with_brackets(Span span) const {
    const std::string_view text = source_.text();
    while (span.begin > 0 && span.begin <= text.size() &&
           std::string_view("([").find(text[span.begin - 1]) != std::string_view::npos)
      --span.begin;
    while (span.end < text.size() && std::string_view(")]").find(text[span.end]) != std::string_view::npos)
      ++span.end;
    return span;
  }

  Span span_of(const pattern::RoundText& round) const {
    Span span = words::cover(round.label_span, round.span);
    span.begin = begin_of_work(tree_, round);
    // The words before a chain in a line above are of that line: "With rust, ch 8."
    const std::size_t line = source_.line_of(span.begin);
    if (line != source_.line_of(words::cover(round.label_span, round.span).begin))
      span.begin = source_.line(line).begin;
    for (const pattern::Stated& stated : round.stated)
      if (source_.line_of(stated.span.begin) == source_.line_of(std::max(span.end, 1U) - 1))
        span = words::cover(span, with_brackets(stated.span));
    return span;
  }

  void add_round(std::uint32_t number) {
    const Span span = span_of(tree_.rounds[number]);
    if (Passage* const other = overlapping(span); other != nullptr) {
      other->rounds.push_back(number);
      if (other->sort == Sort::round) other->span = words::cover(other->span, span);
      return;
    }
    add({Sort::round, span, {number}, {}, 0, 0});
  }

  bool states_language(Span span) const {
    const std::string folded = words::fold(source_.at(span)).text;
    const std::size_t colon = folded.find(':');
    if (colon == std::string::npos) return false;
    const std::size_t begin = folded.find_first_not_of(' ', colon + 1);
    return begin != std::string::npos &&
           !words::language_called(std::string_view(folded).substr(begin)).empty();
  }

  void add_header(std::uint32_t number) {
    const Span span = tree_.headers[number].span;
    const Span terms = pattern::find_terms(source_, vocabulary_).stated_span;
    const bool language = (!terms.empty() && terms.begin >= span.begin && terms.end <= span.end) ||
                          states_language(trimmed(span));
    add({language ? Sort::language : Sort::header, span, {}, {}, 0, number});
  }

  void add_placing(std::uint32_t number) {
    const pattern::Placing& placing = tree_.placings[number];
    const Span span = trimmed(placing.span);
    if (Passage* const other = overlapping(span); other != nullptr) {
      other->placings.push_back(number);
      return;
    }
    add({placing.what == pattern::What::note ? Sort::note : Sort::placing, span, {}, {number}, 0, 0});
  }

  /// Whether it explains a stitch of the pattern's own.
  bool is_own(const pattern::Definition& definition) const {
    const std::string_view name = source_.at(definition.name);
    return std::any_of(tree_.kinds.begin(), tree_.kinds.end(), [name](const stitch::StitchKind& kind) {
      return kind.own && name.find(kind.name) != name.npos;
    });
  }

  /// The headings of lists and what stands below them, up to where other text begins.
  void add_list() {
    const pattern::OwnList list = pattern::find_own_list(source_, vocabulary_);
    std::vector<Span> spans = list.headings;
    bool equals = false; // "Finished size: 16 cm" below "sc = single crochet" is none of them
    for (const pattern::Definition& definition : list.definitions) {
      if (!definition.in_list || definition.in_line) continue;
      equals = equals || definition.equals;
      if (!equals || definition.equals || is_own(definition))
        spans.push_back(words::cover(words::cover(definition.whole, definition.name), definition.value));
    }
    std::sort(spans.begin(), spans.end(), [](Span a, Span b) { return a.begin < b.begin; });
    Span open;
    for (const Span span : spans) {
      const bool goes_on =
          !open.empty() && span.begin >= open.end && !has_words(source_.at({open.end, span.begin}));
      if (!goes_on && !open.empty()) add({Sort::list, open, {}, {}, 0, 0});
      open = goes_on || (!open.empty() && span.begin < open.end) ? words::cover(open, span) : span;
    }
    if (!open.empty()) add({Sort::list, open, {}, {}, 0, 0});
  }

  /// What is left of each line.
  void add_prose() {
    for (std::size_t line = 0; line < source_.line_count(); ++line) {
      Span rest = source_.line(line);
      const std::vector<Passage> taken = all_;
      for (const Passage& passage : taken) {
        if (passage.span.end <= rest.begin || passage.span.begin >= rest.end) continue;
        add({Sort::prose, {rest.begin, std::max(rest.begin, passage.span.begin)}, {}, {}, 0, 0});
        rest.begin = std::min(rest.end, passage.span.end);
      }
      if (!rest.empty()) add({Sort::prose, rest, {}, {}, 0, 0});
    }
  }

  const Source& source_;
  const Tree& tree_;
  const words::Vocabulary& vocabulary_;
  std::vector<Passage> all_;
};

} // namespace

std::vector<Passage> passages_of(const Source& source, const Tree& tree,
                                 const words::Vocabulary& vocabulary) {
  return Passages(source, tree, vocabulary).find();
}

} // namespace whorl::writing
