#pragma once

#include <memory>

namespace whorl::paint {

template <auto release> struct Release {
  template <class T> void operator()(T* held) const { release(held); }
};

/// A handle of a C library, given back by `release`.
template <class T, auto release> using Owned = std::unique_ptr<T, Release<release>>;

} // namespace whorl::paint
