#include "fabric/slug.hpp"

#include <catch2/catch.hpp>

using namespace whorl::fabric;

TEST_CASE("A slug is small letters, digits and hyphens") {
  CHECK(slug("  Left Ear (outer) no. 2 ") == "left-ear-outer-no-2");
}

TEST_CASE("A name without a letter of ASCII is a part") {
  CHECK(slug("") == "part");
  CHECK(slug("\xE8\x91\x89") == "part");
  CHECK(slug("--") == "part");
}

TEST_CASE("A slug does not begin with a digit") { CHECK(slug("2nd leg") == "part-2nd-leg"); }

TEST_CASE("A slug is never long") { CHECK(slug(std::string(1000, 'a')).size() == 40); }

TEST_CASE("The same slug is told apart by a number") {
  std::map<std::string, int> taken;
  CHECK(unique_slug("Leaf", taken) == "leaf");
  CHECK(unique_slug("LEAF", taken) == "leaf-2");
  CHECK(unique_slug("Leaf 2", taken) == "leaf-2-2");
  CHECK(unique_slug("leaf", taken) == "leaf-3");
}
