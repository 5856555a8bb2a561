#include "command/run.hpp"

#include <catch2/catch.hpp>

namespace {

void fresh() {
  clear();
  write("nut.txt", "Hazelnut\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n");
}

} // namespace

TEST_CASE("steps writes a picture for the start and each round, whose names sort as they are worked") {
  fresh();
  const Ran ran = whorl({"steps", "nut.txt", "-o", "film", "--svg"});
  CHECK(ran.status == 0);
  CHECK(ran.errors.empty());
  CHECK(exists("film/01-part-start.svg"));
  CHECK(exists("film/02-part-1.svg"));
  CHECK(exists("film/03-part-2.svg"));
  CHECK(read("film/03-part-2.svg").find("12 stitches") != std::string::npos);
}

TEST_CASE("steps are PNG of 1920 by 1080 dots unless asked otherwise") {
  fresh();
  CHECK(whorl({"steps", "nut.txt", "-o", "film", "--rounds", "2"}).status == 0);
  const std::string png = read("film/01-part-2.png");
  REQUIRE(png.size() > 24);
  const auto number = [&](std::size_t at) {
    unsigned value = 0;
    for (std::size_t i = at; i < at + 4; ++i) value = value << 8 | static_cast<unsigned char>(png[i]);
    return value;
  };
  CHECK(number(16) == 1920);
  CHECK(number(20) == 1080);
}

TEST_CASE("an interrupted run of steps goes on with what is missing") {
  fresh();
  CHECK(whorl({"steps", "nut.txt", "-o", "film", "--svg"}).status == 0);
  write("film/02-part-1.svg", "kept");
  CHECK(whorl({"steps", "nut.txt", "-o", "film", "--svg", "--go-on"}).status == 0);
  CHECK(read("film/02-part-1.svg") == "kept");
  CHECK(whorl({"steps", "nut.txt", "-o", "film", "--svg"}).status == 0);
  CHECK(read("film/02-part-1.svg") != "kept");
}

TEST_CASE("steps can have their words in a layer of their own, and a PDF of all") {
  fresh();
  CHECK(whorl({"steps", "nut.txt", "-o", "film", "--svg", "--layers", "--pdf", "film.pdf"}).status == 0);
  CHECK(read("film/03-part-2.svg").find("(+6)") == std::string::npos);
  CHECK(read("film/03-part-2-words.svg").find("(+6)") != std::string::npos);
  CHECK(read("film.pdf").substr(0, 5) == "%PDF-");
}

TEST_CASE("a folder that cannot be made is told in plain words") {
  fresh();
  write("film", "a file");
  const Ran ran = whorl({"steps", "nut.txt", "-o", "film"});
  CHECK(ran.status == 3);
  CHECK(ran.errors.find("folder film cannot be made") != std::string::npos);
}
