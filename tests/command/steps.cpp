#include "command/run.hpp"

#include <catch2/catch.hpp>

#include <cstdio>

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

TEST_CASE("a step shows the loops also where a chain or a join stands beside what is worked into them") {
  clear();
  write("cap.txt", "Acorn cap\n\nTerms: US\n\nRnd 1: ch 1, 8 hdc in MR, join (8)\n"
                   "Rnd 2: ch 2 (counts as hdc), in BLO, hdc in next 7 sts, join (8)\n");
  CHECK(whorl({"steps", "cap.txt", "-o", "film", "--svg"}).status == 0);
  CHECK(read("film/02-part-1.svg").find("back loop") == std::string::npos);
  CHECK(read("film/03-part-2.svg").find("back loop") != std::string::npos);
}

TEST_CASE("steps are PNG of 1920 by 1080 dots unless asked otherwise") {
  fresh();
  CHECK(whorl({"steps", "nut.txt", "-o", "film", "--rounds", "2"}).status == 0);
  const std::string png = read("film/03-part-2.png"); // its number in the whole film
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

TEST_CASE("steps draws a picture a stitch if asked, and goes on with those too") {
  fresh();
  const std::vector<std::string> call{"steps", "nut.txt", "-o", "film", "--svg", "--each-stitch"};
  CHECK(whorl(call).status == 0);
  CHECK(exists("film/01-part-start.svg"));
  CHECK(exists("film/02-part-1-1.svg"));
  CHECK(exists("film/13-part-2-11.svg"));
  CHECK_FALSE(exists("film/14-part-2-13.svg"));
  CHECK(read("film/09-part-2-03.svg").find("4 of 12") != std::string::npos);
  write("film/09-part-2-03.svg", "kept");
  std::remove((folder() + "/film/13-part-2-11.svg").c_str());
  std::vector<std::string> again = call;
  again.push_back("--go-on");
  CHECK(whorl(again).status == 0);
  CHECK(read("film/09-part-2-03.svg") == "kept");
  CHECK(exists("film/13-part-2-11.svg"));
}

TEST_CASE("steps can have their words in a layer of their own, and a PDF of all") {
  fresh();
  CHECK(whorl({"steps", "nut.txt", "-o", "film", "--svg", "--layers", "--pdf", "film.pdf"}).status == 0);
  CHECK(read("film/03-part-2.svg").find("(+6)") == std::string::npos);
  CHECK(read("film/03-part-2-words.svg").find("(+6)") != std::string::npos);
  CHECK(read("film.pdf").substr(0, 5) == "%PDF-");
  CHECK(whorl({"steps", "nut.txt", "--layers", "--strip", "strip.svg"}).status == 0);
  CHECK(read("strip.svg").find("(+6)") != std::string::npos); // whole where there is one picture of all
}

TEST_CASE("steps can stand side by side on one sheet, without a folder") {
  fresh();
  CHECK(whorl({"steps", "nut.txt", "--strip", "strip.svg"}).status == 0);
  CHECK_FALSE(exists("film"));
  const std::string strip = read("strip.svg");
  CHECK(strip.find("Round 1") != std::string::npos);
  CHECK(strip.find("12 stitches") != std::string::npos);
  CHECK(whorl({"steps", "nut.txt", "--strip", "strip.png"}).status == 0);
  CHECK(read("strip.png").substr(1, 3) == "PNG");
}

TEST_CASE("steps asks where the pictures go") {
  fresh();
  CHECK(whorl({"steps", "nut.txt"}).errors.find("-o FOLDER") != std::string::npos);
  CHECK(whorl({"steps", "nut.txt"}).status == 2);
  CHECK(whorl({"steps", "nut.txt", "--strip", "strip.doc"}).status == 2);
}

TEST_CASE("a folder that cannot be made is told in plain words") {
  fresh();
  write("film", "a file");
  const Ran ran = whorl({"steps", "nut.txt", "-o", "film"});
  CHECK(ran.status == 3);
  CHECK(ran.errors.find("folder film cannot be made") != std::string::npos);
}
