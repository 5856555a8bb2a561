// Which form of a word stands beside a number, against the plural rules that ICU has (Unicode CLDR).
#include "words/number_class.hpp"

#include <catch2/catch.hpp>
#include <unicode/plurrule.h>

#include <map>
#include <memory>
#include <string>

using namespace whorl::words;

namespace {

struct Language {
  const char* tag;
  const char* classes;
};
constexpr Language languages[] = {
    {"en", "one-other"}, {"de", "one-other"}, {"fr", "zero-one-other"}, {"es", "one-other"},
    {"it", "one-other"}, {"nl", "one-other"}, {"pt", "zero-one-other"}, {"da", "one-other"},
    {"sv", "one-other"}, {"pl", "polish"},    {"ru", "east-slavic"},    {"ja", "none"},
    {"zh", "none"},
};

} // namespace

TEST_CASE("numbers fall into classes as ICU's plural rules have them") {
  for (const Language& language : languages) {
    UErrorCode error = U_ZERO_ERROR;
    const std::unique_ptr<icu::PluralRules> rules(
        icu::PluralRules::forLocale(icu::Locale(language.tag), error));
    REQUIRE(U_SUCCESS(error));
    std::map<std::string, std::size_t> of_keyword;
    for (int number = 0; number <= 1000; ++number) {
      std::string keyword;
      rules->select(number).toUTF8String(keyword);
      const std::size_t own = number_class(number_classes_named(language.classes), number);
      INFO(language.tag << " " << number << " " << keyword);
      CHECK(of_keyword.emplace(keyword, own).first->second == own);
    }
    // no two keywords of whole numbers share a class
    std::map<std::size_t, std::string> of_class;
    for (const auto& [keyword, own] : of_keyword) CHECK(of_class.emplace(own, keyword).second);
  }
}
