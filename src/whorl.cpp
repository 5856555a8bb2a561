#include "whorl.hpp"

#include "drawing/wording_file.hpp"
#include "fabric/check.hpp"
#include "fabric/work.hpp"
#include "pattern/language.hpp"
#include "pattern/read.hpp"
#include "pattern/report.hpp"
#include "pattern/variant_rounds.hpp"
#include "pattern/variants.hpp"
#include "whorl_content.hpp"
#include "words/fold.hpp"
#include "words/vocabulary.hpp"

#include <algorithm>

namespace whorl {
namespace {

Finding face_of(const pattern::Finding& finding, const pattern::Source& source, std::string_view file) {
  const pattern::Position at = source.position(finding.span.begin);
  return {static_cast<Severity>(finding.severity),
          finding.code,
          at.line,
          at.column,
          source.length(finding.span),
          finding.message,
          finding.mend,
          pattern::show(finding, source, file)};
}

std::vector<Finding> faces_of(std::vector<pattern::Finding> findings, const pattern::Source& source,
                              std::string_view file) {
  std::stable_sort(
      findings.begin(), findings.end(),
      [](const pattern::Finding& a, const pattern::Finding& b) { return a.span.begin < b.span.begin; });
  std::vector<Finding> faces;
  for (const pattern::Finding& finding : findings) faces.push_back(face_of(finding, source, file));
  return faces;
}

/// The lines of instruction, each with the counts of the first round that it gives.
std::vector<RoundLine> lines_of(const pattern::Source& source, const pattern::Tree& tree,
                                const fabric::Fabric& fabric) {
  std::vector<RoundLine> lines;
  for (const pattern::RoundText& text : tree.rounds) {
    RoundLine line{source.position(text.span.begin).line, text.read, {}, text.label, text.from, text.to};
    if (text.part < tree.parts.size()) line.part = tree.parts[text.part].name;
    if (!text.stated.empty()) line.stated = text.stated.front().count;
    lines.push_back(line);
  }
  for (auto round = fabric.rounds.rbegin(); round != fabric.rounds.rend(); ++round) {
    if (round->text >= lines.size()) continue;
    lines[round->text].uses = round->uses;
    lines[round->text].counted = round->counted;
    if (round->stated >= 0) lines[round->text].stated = round->stated; // of all kinds that it counts
  }
  return lines;
}

/// The variant of this name, its capitals as typed or, failing that, otherwise.
std::vector<std::string>::const_iterator find_variant(const std::string& variant,
                                                      const std::vector<std::string>& variants) {
  const auto found = std::find(variants.begin(), variants.end(), variant);
  if (found != variants.end()) return found;
  const std::string wanted = words::fold(variant).text;
  return std::find_if(variants.begin(), variants.end(),
                      [&](const std::string& name) { return words::fold(name).text == wanted; });
}

/// The wanted variant's number; the first where it is not one of them.
std::size_t number_of(const std::string& variant, const std::vector<std::string>& variants) {
  const auto found = find_variant(variant, variants);
  return found == variants.end() ? 0 : static_cast<std::size_t>(found - variants.begin());
}

/// What is wrong with the variant that is wanted, if anything.
std::vector<pattern::Finding> find_unknown(const std::string& variant,
                                           const std::vector<std::string>& variants) {
  if (variant.empty() || find_variant(variant, variants) != variants.end()) return {};
  std::string known;
  for (const std::string& name : variants) known += (known.empty() ? "" : ", ") + name;
  pattern::Finding finding;
  finding.severity = pattern::Severity::error;
  finding.code = "variant";
  finding.message = "there is no variant `" + variant + "` here" +
                    (known.empty() ? ": the text tells none apart" : "; the text has: " + known);
  return {finding};
}

std::shared_ptr<const Pattern::Content> content_of(std::string_view text, const ReadOptions& options) {
  const pattern::Source typed(text);
  std::vector<std::string> variants = pattern::variants_in(typed.text());
  const std::size_t chosen = number_of(options.variant, variants);
  pattern::Source source(pattern::in_variant(typed.text(), variants, chosen));
  const pattern::Language language = pattern::find_language(source, options.language);
  pattern::Read read = pattern::read(source, *language.vocabulary);
  fabric::Worked worked = fabric::work(read.tree);
  std::vector<pattern::Finding> findings = find_unknown(options.variant, variants);
  if (const auto told = pattern::tell_language(language); told && !read.tree.rounds.empty())
    findings.push_back(*told);
  findings.insert(findings.end(), read.findings.begin(), read.findings.end());
  std::vector<pattern::Finding> checked = fabric::check(read.tree, worked.fabric);
  pattern::forgive_rounds_of_others(checked, read.tree, typed.text(), source.text());
  findings.insert(findings.end(), worked.findings.begin(), worked.findings.end());
  findings.insert(findings.end(), checked.begin(), checked.end());
  std::vector<Finding> faces = faces_of(std::move(findings), typed, options.file);
  std::vector<RoundLine> lines = lines_of(source, read.tree, worked.fabric);
  std::vector<Caution> cautions = cautions_of(source, read.tree);
  std::string caution = caution_of(cautions, read.tree.language);
  std::string variant = variants.empty() ? std::string() : variants[chosen];
  return std::make_shared<const Pattern::Content>(Pattern::Content{
      std::move(source), std::move(read.tree), std::move(worked.fabric), std::move(faces), std::move(lines),
      std::move(cautions), std::move(caution), std::move(variants), std::move(variant)});
}

} // namespace

std::string_view language_or(std::string_view asked, const pattern::Tree& tree) {
  return asked.empty() ? std::string_view(tree.language) : asked;
}

const drawing::Wording& wording_for(std::string_view language) {
  static const drawing::Wording none;
  const drawing::Wording* wording = drawing::find_wording(language);
  if (wording == nullptr) wording = drawing::find_wording("en");
  return wording == nullptr ? none : *wording;
}

const char* version() { return WHORL_VERSION; }

Pattern read(std::string_view text, const ReadOptions& options) { return Pattern(content_of(text, options)); }

Pattern::Pattern(std::shared_ptr<const Content> content) : content_(std::move(content)) {}
const std::string& Pattern::title() const { return content_->tree.title; }
const std::vector<std::string>& Pattern::variants() const { return content_->variants; }
const std::string& Pattern::variant() const { return content_->variant; }
const std::vector<Finding>& Pattern::findings() const { return content_->findings; }
const std::vector<RoundLine>& Pattern::rounds() const { return content_->rounds; }
const std::vector<Caution>& Pattern::cautions() const { return content_->cautions; }
const std::string& Pattern::caution() const { return content_->caution; }
bool Pattern::can_be_drawn() const { return !content_->fabric.stitches.empty(); }
std::string Pattern::check_json() const { return whorl::check_json(*content_); }

Moves Pattern::moves(std::string_view stitch, std::string_view language) const {
  return Moves(moves_of(content_, stitch, language));
}

bool Pattern::has_errors() const {
  const std::vector<Finding>& all = content_->findings;
  return std::any_of(all.begin(), all.end(), [](const Finding& f) { return f.severity == Severity::error; });
}

Chart Pattern::chart(const ChartOptions& options) const { return Chart(chart_of(content_, options)); }

} // namespace whorl
