#include "paint/at_once.hpp"

#include <algorithm>
#include <atomic>
#include <system_error>
#include <thread>
#include <vector>

namespace whorl::paint {

void at_once(std::size_t count, const std::function<void(std::size_t)>& work) {
  std::atomic<std::size_t> next{0};
  const auto go_on = [&] {
    for (std::size_t i = next++; i < count; i = next++) work(i);
  };
  std::vector<std::thread> others;
  const std::size_t most = std::min<std::size_t>(count, std::thread::hardware_concurrency());
  try {
    while (others.size() + 1 < most) others.emplace_back(go_on);
  } catch (const std::system_error&) {
    // The machine has no more threads to give: those that run do it all.
  }
  go_on();
  for (std::thread& other : others) other.join();
}

} // namespace whorl::paint
