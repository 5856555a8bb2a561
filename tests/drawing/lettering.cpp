#include "drawing/lettering.hpp"

#include <catch2/catch.hpp>

using namespace whorl::drawing;

namespace {

using Lines = std::vector<std::string>;
constexpr Lettering plain = lettering::closing;

std::string joined(const Lines& lines, const char* between) {
  std::string text;
  for (const std::string& line : lines) text += (text.empty() ? "" : between) + line;
  return text;
}

} // namespace

TEST_CASE("A short text stays in one line") { CHECK(wrap("Sew on.", plain, 50) == Lines{"Sew on."}); }

TEST_CASE("No text makes no line") { CHECK(wrap("  \n ", plain, 50).empty()); }

TEST_CASE("Lines are no wider than asked for") {
  const std::string text = "the hedgehog sleeps under the leaves until the first warm morning of the year";
  for (const double width : {20.0, 30.0, 45.0, 80.0})
    for (const std::string& line : wrap(text, plain, width)) CHECK(width_of(line, plain) <= width);
}

TEST_CASE("Breaking a text loses no word") {
  const std::string text = "the hedgehog sleeps under the leaves until the first warm morning of the year";
  CHECK(joined(wrap(text, plain, 31), " ") == text);
}

TEST_CASE("Lines are evened out") {
  const Lines lines = wrap("oak oak oak oak oak oak oak oak oak oak oak", plain, 40);
  REQUIRE(lines.size() == 2);
  CHECK(width_of(lines[0], plain) - width_of(lines[1], plain) < width_of(" oak", plain) + 0.01);
}

TEST_CASE("A word wider than a line is taken apart between letters") {
  const std::string word = "hedgehoghedgehoghedgehog";
  const Lines lines = wrap(word, plain, 12);
  CHECK(lines.size() > 1);
  CHECK(joined(lines, "") == word);
}

TEST_CASE("A letter and what is set on it are not taken apart") {
  const std::string letter = "e\xCC\x81"; // e and a combining acute
  std::string word;
  for (int i = 0; i < 30; ++i) word += letter;
  for (const std::string& line : wrap(word, plain, 9)) CHECK(line.substr(0, letter.size()) == letter);
}

TEST_CASE("The first line leaves room for what stands before it") {
  const Lines lines = wrap("oak oak oak oak oak oak oak oak", plain, 40, 20);
  CHECK(width_of(lines[0], plain) <= 20);
}

TEST_CASE("A text of too many lines ends in dots") {
  std::string text;
  for (int i = 0; i < 500; ++i) text += "leaf ";
  const Lines lines = wrap(text, plain, 40, 0, 3);
  REQUIRE(lines.size() == 3);
  CHECK(lines[2].substr(lines[2].size() - 3) == "…");
}
