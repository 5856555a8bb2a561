// Any bytes as a pattern, checked: its JSON and every explanation; nothing may crash, hang or be undefined.
//   cmake -S . -B build-fuzz -DWHORL_FUZZ=ON -DCMAKE_CXX_COMPILER=clang++ && build-fuzz/tests/fuzz_check
//   tests/fuzz/corpus
#include "whorl.hpp"

#include <cstddef>
#include <cstdint>
#include <string_view>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  const whorl::Pattern pattern = whorl::read({reinterpret_cast<const char*>(bytes), size});
  if (pattern.check_json().empty() || pattern.moves().json().empty()) __builtin_trap();
  if (pattern.rounds().empty()) return 0;
  const whorl::RoundLine& last = pattern.rounds().back();
  if (pattern.slips(last.to, last.counted + 1, last.part).json().empty()) __builtin_trap();
  return 0;
}
