#include "drawing/legend_making.hpp"

#include "drawing/technique.hpp"

namespace whorl::drawing {
namespace {

/// The name of a technique where words explain it: "yarn under"; others are words enough.
Entry entry_of(const Making& making, std::size_t number) {
  const std::string word(pattern::word_of(making.copy.tree.techniques[number].how));
  const std::string means = words_or(making, "technique-means-" + word, "");
  if (means.empty()) return {"technique-" + word, {}, {}, "", technique_words(making.copy, number)};
  const auto& scopes = making.copy.text.technique_scopes;
  const std::string scope = number < scopes.size() ? scopes[number] : "";
  return {"technique-" + word,
          {},
          {},
          words(making, "technique-" + word),
          scope.empty() ? means : words(making, "technique-means-in", {means, scope})};
}

} // namespace

void add_techniques(const Making& making, Entries& entries) {
  for (const std::size_t number : techniques_on(making.copy)) {
    const pattern::Technique& technique = making.copy.tree.techniques[number];
    const bool in_captions = technique.how == pattern::How::inside_out;
    if (technique.of == pattern::Of::all && !in_captions)
      entries.push_back(finished(making, entry_of(making, number)));
  }
}

} // namespace whorl::drawing
