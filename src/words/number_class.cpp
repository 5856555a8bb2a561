#include "words/number_class.hpp"

namespace whorl::words {

namespace {

struct ClassesName {
  std::string_view name;
  NumberClasses classes;
};
constexpr ClassesName names[] = {
    {"none", NumberClasses::none},
    {"one-other", NumberClasses::one_other},
    {"zero-one-other", NumberClasses::zero_one_other},
    {"polish", NumberClasses::polish},
    {"east-slavic", NumberClasses::east_slavic},
};

/// 2, 3, 4, 22, 23 …, but not 12, 13, 14.
bool is_few(std::uint64_t number) {
  const std::uint64_t ones = number % 10, tens = number / 10 % 10;
  return ones >= 2 && ones <= 4 && tens != 1;
}

bool ends_in_one(std::uint64_t number) { return number % 10 == 1 && number % 100 != 11; }

} // namespace

NumberClasses number_classes_named(std::string_view name) {
  for (const ClassesName& entry : names)
    if (entry.name == name) return entry.classes;
  return NumberClasses::none;
}

std::size_t number_class(NumberClasses classes, std::uint64_t number) {
  switch (classes) {
  case NumberClasses::none:
    return 0;
  case NumberClasses::one_other:
    return number == 1 ? 0 : 1;
  case NumberClasses::zero_one_other:
    return number <= 1 ? 0 : 1;
  case NumberClasses::polish:
    return number == 1 ? 0 : is_few(number) ? 1 : 2;
  case NumberClasses::east_slavic:
    return ends_in_one(number) ? 0 : is_few(number) ? 1 : 2;
  }
  return 0;
}

} // namespace whorl::words
