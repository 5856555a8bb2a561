#include "whorl_content.hpp"
#include "whorl_json.hpp"

#include "drawing/svg.hpp"
#include "drawing/symbol_list.hpp"

#include <algorithm>

namespace whorl {
namespace {

using drawing::Copy;
using drawing::say;

drawing::SheetOptions options_of(const SymbolOptions& options) {
  drawing::SheetOptions sheet;
  sheet.stitch = 5;
  if (options.plus) sheet.style.single = drawing::Style::Single::plus;
  return sheet;
}

std::shared_ptr<const Symbols::Content> content_of(const Copy& copy) {
  auto content = std::make_shared<Symbols::Content>();
  const std::vector<drawing::Mark>& marks = drawing::built_in_marks();
  drawing::SymbolCase symbols(copy.fabric.kinds, marks, copy.options.style, copy.options.stitch);
  for (const drawing::SymbolGroup& group : drawing::symbol_list(copy, symbols))
    for (const drawing::Entry& entry : group.entries)
      content->entries.push_back({group.id, group.heading, entry.key, entry.name, entry.words});
  content->title = copy.tree.title;
  content->language = copy.text.language;
  content->scene = drawing::symbols_sheet(copy, marks);
  return content;
}

/// Names in a column, words beside them.
std::string line_of(const SymbolEntry& entry) {
  constexpr std::size_t column = 12;
  std::string line = "  " + entry.name;
  line += std::string(entry.name.size() < column ? column - entry.name.size() : 1, ' ');
  return line + entry.words + "\n";
}

} // namespace

Symbols symbols(const SymbolOptions& options) {
  const std::string language = options.language.empty() ? "en-US" : options.language;
  const drawing::Everything all = drawing::every_symbol(language);
  const drawing::Wording& wording = wording_for(language);
  drawing::SheetText text;
  text.language = language;
  text.title = say(wording, "symbols-title");
  text.subtitle = say(wording, "symbols-all");
  text.terms = say(wording, "terms-us");
  const drawing::SheetOptions sheet = options_of(options);
  return Symbols(content_of({all.tree, all.fabric, all.placement, text, wording, sheet}));
}

Symbols Pattern::symbols(const SymbolOptions& options) const {
  const std::string_view language = language_or(options.language, content_->tree);
  const drawing::Wording& wording = wording_for(language);
  const drawing::SheetOptions sheet = options_of(options);
  layout::Page page;
  page.main_yarn = plain_yarn(*content_, wording_for(content_->tree.language));
  const layout::Placement placement = layout::place(
      content_->fabric, drawing::extents_of(content_->fabric, drawing::built_in_marks(), sheet.style), page);
  drawing::SheetText text = sheet_text_of(*content_, {}, language); // words and grounds as on the chart
  if (text.title.empty()) text.title = say(wording, "symbols-title");
  text.subtitle = say(wording, "symbols-of-chart");
  return Symbols(content_of({content_->tree, content_->fabric, placement, text, wording, sheet}));
}

Symbols::Symbols(std::shared_ptr<const Content> content) : content_(std::move(content)) {}
const std::vector<SymbolEntry>& Symbols::entries() const { return content_->entries; }
const drawing::Scene& Symbols::scene() const { return content_->scene; }
std::string Symbols::svg() const { return drawing::svg(content_->scene); }

std::string Symbols::text() const {
  std::string text;
  for (const SymbolEntry& entry : content_->entries) {
    const bool begins = &entry == &content_->entries.front() || (&entry)[-1].group != entry.group;
    if (begins) text += (text.empty() ? "" : "\n") + entry.heading + "\n";
    text += line_of(entry);
  }
  return text;
}

std::string Symbols::json() const {
  Json json = {
      {"whorl", 1}, {"title", content_->title}, {"language", content_->language}, {"symbols", Json::array()}};
  for (const SymbolEntry& entry : content_->entries)
    json["symbols"].push_back(
        {{"group", entry.group}, {"key", entry.key}, {"name", entry.name}, {"words", entry.words}});
  return text_of(json);
}

} // namespace whorl
