#pragma once

#include <atomic>
#include <memory>
#include <span>
#include <vector>

namespace whorl::words {

/// A value that is made of a built-in table when it is asked for first. Whoever comes second throws his away.
template <typename Table, typename Value> struct MadeOnce {
  const Table* table = nullptr;
  std::atomic<const Value*> made{nullptr};
  ~MadeOnce() { delete made.load(); }

  template <typename Make> const Value* get(Make make) {
    const Value* known = made.load(std::memory_order_acquire);
    if (known != nullptr) return known;
    auto fresh = std::make_unique<const Value>(make(*table));
    if (made.compare_exchange_strong(known, fresh.get(), std::memory_order_acq_rel)) return fresh.release();
    return known;
  }
};

/// One for each of the tables.
template <typename Table, typename Value>
std::vector<MadeOnce<Table, Value>> made_once(std::span<const Table> tables) {
  std::vector<MadeOnce<Table, Value>> all(tables.size());
  for (std::size_t i = 0; i < tables.size(); ++i) all[i].table = &tables[i];
  return all;
}

} // namespace whorl::words
