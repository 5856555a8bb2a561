#include "pattern/named_groups.hpp"

#include "pattern/own_group.hpp"
#include "words/fold.hpp"
#include "words/lattice.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

using words::Concept;
using words::Word;
using words::WordKind;

/// A name for a group, and how it is typed.
struct Name {
  Concept means = words::no_concept;
  std::string typed;
};

/// The names in one stretch of the text.
class Names {
public:
  Names(const Reader& reader, Span span) : Names(reader, reader.source.at(span)) {}
  Names(const Reader& reader, std::string_view text)
      : text_(text), folded_(words::fold(text)), lattice_(words::lattice(folded_, reader.vocabulary)) {}

  /// The longest word that `is` true of, of those that begin the stretch.
  template <class Is> Name at_head(Is is) const {
    const Word* best = nullptr;
    for (const Word& word : lattice_.words)
      if (word.begin == 0 && is_phrase(word, is) && (best == nullptr || word.end > best->end)) best = &word;
    return best == nullptr ? Name{} : name_of(*best);
  }

  /// The first anywhere.
  template <class Is> Name first(Is is) const {
    for (const Word& word : lattice_.words)
      if (is_phrase(word, is)) return name_of(word);
    return {};
  }

private:
  template <class Is> bool is_phrase(const Word& word, Is is) const {
    return word.kind == WordKind::phrase && is(word.means);
  }

  Name name_of(const Word& word) const {
    const std::uint32_t begin = folded_.from[word.begin];
    return {word.means, std::string(text_.substr(begin, folded_.from[word.end] - begin))};
  }

  std::string_view text_;
  words::Folded folded_;
  words::Lattice lattice_;
};

/// A name's number in the tree, which is added as it is typed if it is new; 0 for none.
std::uint16_t number_of(Tree& tree, const Reader& reader, const Name& name) {
  if (name.means == words::no_concept) return 0;
  const auto found =
      std::find_if(tree.group_names.begin(), tree.group_names.end(), [&](const std::string& known) {
        const auto is_same = [&](Concept means) { return means == name.means; };
        return Names(reader, known).at_head(is_same).means != words::no_concept;
      });
  const auto number = static_cast<std::size_t>(found - tree.group_names.begin()) + 1;
  if (number > 0xFFFF) return 0;
  if (found == tree.group_names.end()) tree.group_names.push_back(name.typed);
  return static_cast<std::uint16_t>(number);
}

/// The text from where a node begins: the name of a group stands at its head.
Span head_of(const Reader& reader, Span span) {
  constexpr std::uint32_t longest = 60;
  const std::string_view text = reader.source.text();
  const auto end = std::min<std::size_t>(span.begin + longest, text.size());
  const std::size_t line = text.find('\n', span.begin);
  return {span.begin, static_cast<std::uint32_t>(std::min(end, line))};
}

Name name_of(const Tree& tree, const Node& node, const Reader& reader) {
  const words::Vocabulary& vocabulary = reader.vocabulary;
  if (node.kind == NodeKind::group)
    return Names(reader, head_of(reader, node.span)).at_head([&](Concept means) {
      return names_group(vocabulary, means);
    });
  const std::string& kind = tree.kinds[node.work.kind].name;
  return Names(reader, node.span).first([&](Concept means) {
    const words::ConceptEntry& entry = vocabulary.concepts[means];
    return entry.in_one == node.work.in_one && entry.works == kind;
  });
}

bool may_be_group(const Tree& tree, const Node& node) {
  if (node.kind == NodeKind::group) return true;
  return node.kind == NodeKind::work && node.work.act == Act::stitch && node.work.in_one > 1 &&
         node.work.kind < tree.kinds.size();
}

bool has_groups(const words::Vocabulary& vocabulary) {
  for (std::size_t i = 0; i < vocabulary.concepts.size(); ++i)
    if (is_own_group(vocabulary, static_cast<Concept>(i))) return true;
  return false;
}

} // namespace

void name_groups(Tree& tree, std::size_t first, const Reader& reader) {
  std::vector<Stated>& stated = tree.rounds.back().stated;
  if (has_groups(reader.vocabulary)) {
    for (std::size_t id = first; id < tree.nodes.size(); ++id)
      if (may_be_group(tree, tree.nodes[id]))
        tree.nodes[id].name = number_of(tree, reader, name_of(tree, tree.nodes[id], reader));
    for (Stated& one : stated)
      if (one.unit == Unit::group)
        one.kind = number_of(tree, reader, Names(reader, one.span).first([&](Concept means) {
          return is_own_group(reader.vocabulary, means);
        }));
  }
  const auto nameless = std::remove_if(stated.begin(), stated.end(), [](const Stated& one) {
    return one.unit == Unit::group && (one.kind == 0 || one.kind == stitch::no_kind);
  });
  stated.erase(nameless, stated.end());
}

} // namespace whorl::pattern
