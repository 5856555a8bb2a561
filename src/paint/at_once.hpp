#pragma once

#include <cstddef>
#include <functional>

namespace whorl::paint {

/// Does `work(0)` to `work(count - 1)`, as many at a time as the machine has processors; in which order is
/// not said.
void at_once(std::size_t count, const std::function<void(std::size_t)>& work);

} // namespace whorl::paint
