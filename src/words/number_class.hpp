#pragma once

#include <cstddef>
#include <cstdint>
#include <string_view>

namespace whorl::words {

/// How many forms a word has beside a number, and which number takes which: the whole numbers of the Unicode
/// plural rules (UTS 35, part 3).
enum class NumberClasses : std::uint8_t {
  none,           ///< one form: Japanese, Chinese, Turkish in patterns
  one_other,      ///< 1 | all others
  zero_one_other, ///< 0, 1 | all others: French, Portuguese of Brazil
  polish,         ///< 1 | 2–4, 22–24 … | all others
  east_slavic,    ///< 1, 21, 31 … | 2–4, 22–24 … | all others: Russian
};

/// The classes that a language file names: "one-other", "polish"; none for any other name.
NumberClasses number_classes_named(std::string_view name);

/// Which form of a word stands beside a number, from 0.
std::size_t number_class(NumberClasses classes, std::uint64_t number);

} // namespace whorl::words
