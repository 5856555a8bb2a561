#include "pattern/caution.hpp"

#include "pattern/limits.hpp"
#include "words/lattice.hpp"

#include <algorithm>
#include <optional>

namespace whorl::pattern {
namespace {

/// The vocabulary of such things in the language of a tag: "en-x-cautions" for "en-GB".
const words::Vocabulary* things_of(std::string_view language) {
  return words::find_vocabulary_of(language, "cautions");
}

/// A phrase of that vocabulary where the text has it.
struct Named {
  std::string_view concept_name;
  words::Concept means = words::no_concept;
  Span span;
};

/// What stands at a place: a phrase of the vocabulary, the longest, else whatever word is there.
const words::Word* word_at(const words::Lattice& lattice, std::size_t at) {
  const words::Word* first = lattice.words.data() + lattice.at[at];
  const words::Word* last = lattice.words.data() + lattice.at[at + 1];
  const words::Word* phrase =
      std::find_if(first, last, [](const words::Word& word) { return word.means != words::no_concept; });
  if (phrase != last) return phrase;
  return first == last ? nullptr : first;
}

/// The words of a stretch of text one after the other; those that are none of the vocabulary have no name.
std::vector<Named> named_in(std::string_view text, std::uint32_t begin, const words::Vocabulary& things) {
  const words::Folded folded = words::fold(text, begin);
  const words::Lattice lattice = words::lattice(folded, things);
  std::vector<Named> found;
  for (std::size_t at = 0; at < folded.text.size();) {
    const words::Word* word = word_at(lattice, at);
    if (word != nullptr) {
      const bool means = word->means != words::no_concept;
      found.push_back(
          {means ? std::string_view(things.concepts[word->means].name) : "", word->means, word->span});
    }
    at = word == nullptr ? at + 1 : std::max<std::size_t>(word->end, at + 1);
  }
  return found;
}

bool is_thing(const Named& named) { return named.concept_name.substr(0, 6) == "thing "; }

/// The things of a stretch; one that the word before calls off is none.
void add_things(std::vector<Caution>& all, const std::vector<Named>& found, const words::Vocabulary& things) {
  bool called_off = false;
  for (const Named& named : found) {
    if (is_thing(named) && !called_off)
      all.push_back({std::string(words::written_form(things, named.means)), std::string(named.concept_name),
                     named.span});
    called_off = named.concept_name == "without thing";
  }
}

bool lies_in(const Caution& caution, Span span) {
  return caution.span.begin >= span.begin && caution.span.end <= span.end;
}

bool has(const std::vector<Named>& found, std::string_view concept_name) {
  return std::any_of(found.begin(), found.end(),
                     [concept_name](const Named& named) { return named.concept_name == concept_name; });
}

/// Eyes that are placed with no word of what they are.
std::optional<Caution> placed_eyes(const Placing& placing, const Source& source,
                                   const words::Vocabulary& things) {
  const std::vector<Named> found = named_in(source.at(placing.span), placing.span.begin, things);
  if (has(found, "sewn in yarn") || has(found, "thing eyes")) return std::nullopt;
  const auto eyes = std::find_if(found.begin(), found.end(),
                                 [](const Named& named) { return named.concept_name == "eyes named"; });
  if (eyes == found.end()) return std::nullopt;
  const words::Concept means = words::find_concept(things, "thing eyes");
  return Caution{std::string(words::written_form(things, means)), "thing eyes", eyes->span};
}

bool is_before(const Caution& a, const Caution& b) { return a.span.begin < b.span.begin; }

} // namespace

std::vector<Caution> cautions(const Source& source, const Tree& tree) {
  std::vector<Caution> all;
  const words::Vocabulary* things = things_of(tree.language);
  if (things == nullptr) return all;
  for (std::size_t line = 0; line < source.line_count(); ++line) {
    const Span span = source.line(line);
    if (span.length() > limit::line_bytes) continue; // said as a finding of its own
    add_things(all, named_in(source.at(span), span.begin, *things), *things);
  }
  for (const Placing& placing : tree.placings)
    if (placing.what == What::eye)
      if (const auto eyes = placed_eyes(placing, source, *things)) all.push_back(*eyes);
  all.erase(std::remove_if(all.begin(), all.end(),
                           [&tree](const Caution& caution) { return lies_in(caution, tree.title_span); }),
            all.end());
  std::stable_sort(all.begin(), all.end(), is_before);
  all.erase(std::unique(all.begin(), all.end()), all.end());
  return all;
}

std::optional<std::string> thing_in(std::string_view language, std::string_view thing) {
  const words::Vocabulary* things = things_of(language);
  if (things == nullptr) return std::nullopt;
  const words::Concept means = words::find_concept(*things, thing);
  if (means == words::no_concept) return std::nullopt;
  return std::string(words::written_form(*things, means));
}

} // namespace whorl::pattern
