// Any bytes as a pattern, drawn as SVG: nothing may crash, hang or be undefined.
//   cmake -S . -B build-fuzz -DWHORL_FUZZ=ON -DCMAKE_CXX_COMPILER=clang++ && build-fuzz/tests/fuzz_chart
//   tests/fuzz/corpus
#include "whorl.hpp"

#include <cstddef>
#include <cstdint>
#include <string_view>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  const whorl::Pattern pattern = whorl::read({reinterpret_cast<const char*>(bytes), size});
  if (pattern.check_json().empty()) __builtin_trap();
  if (pattern.can_be_drawn() && pattern.chart().svg().empty()) __builtin_trap();
  return 0;
}
