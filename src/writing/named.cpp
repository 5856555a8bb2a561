#include "writing/named.hpp"

#include <algorithm>
#include <iterator>

namespace whorl::writing {
namespace {

/// What a phrase means, by the names of concepts: "single crochet" is "sc".
std::vector<std::string_view> concepts_of(const words::Vocabulary& vocabulary, std::string_view phrase) {
  std::vector<std::string_view> names;
  const auto end = vocabulary.phrases.end();
  auto at = std::lower_bound(
      vocabulary.phrases.begin(), end, phrase,
      [](const words::PhraseEntry& entry, std::string_view key) { return entry.phrase < key; });
  for (; at != end && at->phrase == phrase; ++at)
    if (!at->write && at->means < vocabulary.concepts.size())
      names.push_back(vocabulary.concepts[at->means].name);
  return names;
}

bool fits(const Used& used, const stitch::StitchKind& kind, std::string_view meaning) {
  if (meaning == "increase") return used.in_one > 1;
  if (meaning == "dec") return kind.takes > kind.makes && kind.makes > 0;
  return kind.name == meaning;
}

template <typename Fits> std::vector<Used> those_that(const std::vector<Used>& used, Fits fit) {
  std::vector<Used> found;
  std::copy_if(used.begin(), used.end(), std::back_inserter(found), fit);
  return found;
}

/// The plain stitch where it is among them; else all.
std::vector<Used> plain_first(const std::vector<Used>& found) {
  const std::vector<Used> plain = those_that(found, [](const Used& one) { return one == Used{one.kind}; });
  return plain.empty() ? found : plain;
}

std::vector<Used> meant_in(const words::Vocabulary& terms, const std::string& key,
                           const std::vector<Used>& used, const pattern::Tree& tree) {
  for (const std::string_view meaning : concepts_of(terms, key)) {
    const std::vector<Used> found =
        those_that(used, [&](const Used& one) { return fits(one, tree.kinds[one.kind], meaning); });
    if (!found.empty()) return meaning == "increase" || meaning == "dec" ? found : plain_first(found);
  }
  return {};
}

std::string folded(std::string_view text) { return words::fold(text).text; }

} // namespace

std::vector<Used> named(const std::vector<Used>& used, const pattern::Tree& tree, std::string_view name,
                        const words::Vocabulary& own_terms, const words::Vocabulary& us_terms,
                        const Say& say) {
  const std::string key = folded(name);
  std::vector<Used> found = those_that(used, [&](const Used& one) {
    return folded(short_name(one, tree, own_terms, say)) == key || folded(full_name(one, tree, say)) == key;
  });
  if (found.empty()) found = meant_in(own_terms, key, used, tree);
  if (found.empty()) found = meant_in(us_terms, key, used, tree);
  if (!found.empty()) return found;
  return plain_first(those_that(used, [&](const Used& one) {
    const stitch::StitchKind& kind = tree.kinds[one.kind];
    return folded(kind.name) == key || folded(kind.title) == key;
  }));
}

} // namespace whorl::writing
