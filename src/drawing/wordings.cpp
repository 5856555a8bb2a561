#include "drawing/wording_file.hpp"

#include <atomic>
#include <memory>
#include <span>

namespace whorl::drawing {

namespace {

/// Words built in, made ready when they are asked for first. Whoever comes second throws his away.
struct BuiltIn {
  const WordingTable* table = nullptr;
  std::atomic<const Wording*> ready{nullptr};
  ~BuiltIn() { delete ready.load(); }
};

std::span<BuiltIn> built_in() {
  static std::vector<BuiltIn> all(wording_table_count);
  static const bool filled = [] {
    for (std::size_t i = 0; i < wording_table_count; ++i) all[i].table = &wording_tables[i];
    return true;
  }();
  static_cast<void>(filled);
  return all;
}

Wording from_table(const WordingTable& table) {
  Wording wording;
  for (const WordingText& text : std::span(table.texts, table.count))
    wording.emplace_hint(wording.end(), text.id, text.text);
  return wording;
}

const Wording* ready(BuiltIn& language) {
  const Wording* known = language.ready.load(std::memory_order_acquire);
  if (known != nullptr) return known;
  auto made = std::make_unique<const Wording>(from_table(*language.table));
  if (language.ready.compare_exchange_strong(known, made.get(), std::memory_order_acq_rel))
    return made.release();
  return known;
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
    if (entry.table->language == tag) return ready(entry);
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
