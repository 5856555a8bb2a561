#include "drawing/wording_file.hpp"

#include "words/made_once.hpp"

#include <memory>
#include <span>

namespace whorl::drawing {

namespace {

using BuiltIn = words::MadeOnce<WordingTable, Wording>;

std::vector<BuiltIn>& built_in() {
  static std::vector<BuiltIn> all =
      words::made_once<WordingTable, Wording>({wording_tables, wording_table_count});
  return all;
}

Wording from_table(const WordingTable& table) {
  Wording wording;
  for (const WordingText& text : std::span(table.texts, table.count))
    wording.emplace_hint(wording.end(), text.id, text.text);
  return wording;
}

/// Those that were added while the program runs; none is ever taken away.
std::vector<std::unique_ptr<const WordingReading>>& added() {
  static std::vector<std::unique_ptr<const WordingReading>> all;
  return all;
}

const Wording* wording_of(std::string_view tag) {
  for (auto at = added().rbegin(); at != added().rend(); ++at)
    if ((*at)->language == tag) return &(*at)->wording;
  for (BuiltIn& entry : built_in())
    if (entry.table->language == tag) return entry.get(from_table);
  return nullptr;
}

} // namespace

const Wording* find_wording(std::string_view language) {
  const Wording* whole = wording_of(language);
  return whole != nullptr ? whole : wording_of(language.substr(0, language.find('-')));
}

void add_wordings(std::vector<WordingReading> wordings) {
  for (const WordingReading& reading : wordings)
    for (WordingReading& dialect : with_dialects(reading))
      added().push_back(std::make_unique<const WordingReading>(std::move(dialect)));
}

std::vector<std::string> missing_texts(const Wording& wording, const Wording& complete) {
  std::vector<std::string> missing;
  for (const auto& entry : complete)
    if (wording.count(entry.first) == 0 && !may_be_missing(entry.first)) missing.push_back(entry.first);
  return missing;
}

} // namespace whorl::drawing
