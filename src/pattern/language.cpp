#include "pattern/language.hpp"

#include "pattern/label.hpp"
#include "pattern/limits.hpp"
#include "words/fold.hpp"
#include "words/letters.hpp"
#include "words/telling.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

constexpr std::string_view english = "en-US";
constexpr std::size_t most_lines = 80; ///< that are looked at
/// Another language has to know so much more than English, and so much in all. Of 1429 patterns in English of
/// the corpus none reaches both but those with labels and letters of other languages; of 276 in others all do
/// that have more than letters.
constexpr double least_over_english = 2.5;
constexpr double least_known = 2.2;
/// Where related languages share the words of a short text, it is counted how many there are instead.
constexpr double least_words_known = 3.5;
constexpr double least_words_over_english = 1.8;
constexpr double least_in_other_script = 0.3; ///< where the text is in letters that English does not have
constexpr double as_likely = 1.02; ///< two languages nearer to each other than this cannot be told apart
constexpr double nearly_as_likely = 1.15; ///< … and nearer than this by the words of their labels
constexpr std::size_t words_of_statement = 3;

std::size_t count_words(std::string_view text) {
  return static_cast<std::size_t>(std::count(text.begin(), text.end(), ' ')) + 1;
}

std::string_view without_end(std::string_view text) {
  while (!text.empty() && (text.back() == ' ' || text.back() == '.')) text.remove_suffix(1);
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  return text;
}

/// The language that a line states: "Sprache: Deutsch", "Language: pl"; "" if it states none.
std::string_view stated_in(std::string_view folded) {
  const std::size_t colon = folded.find(':');
  if (colon == std::string_view::npos) return {};
  const std::string_view name = without_end(folded.substr(0, colon));
  const std::string_view value = without_end(folded.substr(colon + 1));
  if (name.empty() || count_words(name) > words_of_statement || count_words(value) > words_of_statement)
    return {};
  return words::language_called(value);
}

bool is_english(std::string_view tag) { return tag.substr(0, 2) == "en"; }

/// How many lines begin with a word for round or row of a language.
std::size_t labelled_lines(const std::vector<std::string>& lines, std::string_view language) {
  const words::Vocabulary* vocabulary = words::find_vocabulary(language);
  if (vocabulary == nullptr) return 0;
  return static_cast<std::size_t>(std::count_if(lines.begin(), lines.end(), [&](const std::string& line) {
    const std::vector<Label> labels = read_labels(line, 0, *vocabulary);
    return std::any_of(labels.begin(), labels.end(), [](const Label& label) { return label.word; });
  }));
}

/// Of languages that are near to each other, that one stands first whose words for rounds the lines begin
/// with.
void put_labelled_first(std::vector<words::LanguageWeight>& weights, const std::vector<std::string>& lines) {
  const double least = weights.front().weight / nearly_as_likely;
  const auto end = std::find_if(weights.begin(), weights.end(), [least](const words::LanguageWeight& weight) {
    return weight.weight < least;
  });
  if (end - weights.begin() < 2) return;
  std::vector<std::pair<std::size_t, words::LanguageWeight>> near;
  for (auto weight = weights.begin(); weight != end; ++weight)
    near.emplace_back(labelled_lines(lines, weight->language), *weight);
  const std::size_t most = std::max_element(near.begin(), near.end(), [](const auto& a, const auto& b) {
                             return a.first < b.first;
                           })->first;
  std::stable_partition(near.begin(), near.end(), [most](const auto& one) { return one.first == most; });
  for (std::size_t i = 0; i < near.size(); ++i) {
    weights[i] = near[i].second;
    if (near[i].first < most) weights[i].weight = std::min(weights[i].weight, least);
  }
}

/// Whether letters stand in the lines that English has none of, nor any language in Latin letters.
bool has_other_script(const std::vector<std::string>& lines) {
  const auto other = [](char32_t c) {
    return (c >= 0x400 && c < 0x530) || (c >= 0x3040 && c < 0x3100) || (c >= 0x4E00 && c < 0xA000);
  };
  for (const std::string& line : lines)
    for (std::size_t at = 0; at < line.size();) {
      const words::Letter letter = words::letter_at(line, at);
      if (letter.valid && other(letter.code)) return true;
      at += std::max<std::size_t>(letter.length, 1);
    }
  return false;
}

/// What the words tell.
void find_by_words(Language& language, const std::vector<std::string>& lines) {
  std::vector<words::LanguageWeight> weights = words::weigh_languages(lines);
  if (!weights.empty() && !is_english(weights.front().language)) put_labelled_first(weights, lines);
  const auto best = weights.begin();
  const auto own = std::find_if(weights.begin(), weights.end(), [](const words::LanguageWeight& weight) {
    return weight.language == english;
  });
  if (best == weights.end()) return;
  const bool other = has_other_script(lines);
  const double english_weight = own == weights.end() ? 0 : own->weight;
  const double english_known = own == weights.end() ? 0 : own->known;
  const bool weighs = best->weight >= (other ? least_in_other_script : least_known) &&
                      best->weight >= english_weight * (other ? 1.0 : least_over_english);
  const bool knows = best->known >= least_words_known &&
                     best->known >= english_known * least_words_over_english && best->weight > english_weight;
  if (!weighs && !knows) return;
  language.vocabulary = words::find_vocabulary(best->language);
  language.from = Language::From::words;
  language.words = best->only;
  const auto second = std::next(best);
  if (second != weights.end() && second->weight * as_likely >= best->weight)
    language.other = second->language;
}

std::string quoted_list(const std::vector<std::string>& words) {
  std::string list;
  for (std::size_t i = 0; i < words.size(); ++i)
    list += (i == 0 ? "`" : i + 1 == words.size() ? " and `" : ", `") + words[i] + "`";
  return list;
}

} // namespace

Language find_language(const Source& source, std::string_view named) {
  Language language;
  language.vocabulary = words::find_vocabulary(named);
  language.from = Language::From::call;
  if (language.vocabulary != nullptr) return language;
  language.vocabulary = words::find_vocabulary(english);
  language.from = Language::From::nothing;
  std::vector<std::string> lines;
  for (std::size_t i = 0; i < source.line_count() && lines.size() < most_lines; ++i) {
    const Span line = source.line(i);
    if (line.empty() || line.length() > limit::line_bytes) continue;
    std::string folded = words::fold(source.at(line), line.begin).text;
    if (const std::string_view tag = stated_in(folded); !tag.empty()) {
      language.vocabulary = words::find_vocabulary(tag);
      language.from = Language::From::stated;
      language.stated = line;
      return language;
    }
    lines.push_back(std::move(folded));
  }
  find_by_words(language, lines);
  return language;
}

std::optional<Finding> tell_language(const Language& language) {
  if (language.from != Language::From::words || is_english(language.vocabulary->language))
    return std::nullopt;
  const auto& called = language.vocabulary->called;
  const std::string& tag = language.vocabulary->language;
  Finding finding;
  finding.severity = language.other.empty() ? Severity::note : Severity::warning;
  finding.code = "language";
  finding.message = "the words are read in the language `" + tag + "`" +
                    (called.empty() ? "" : " (" + called.front() + ")") +
                    (language.words.empty() ? "" : ", because of " + quoted_list(language.words));
  if (!language.other.empty())
    finding.message += "; they could as well be `" + std::string(language.other) + "`";
  finding.message += "; a line `Language: " + tag + "` in the pattern says so";
  return finding;
}

} // namespace whorl::pattern
