#include "command/run.hpp"

#include <catch2/catch.hpp>

#include <chrono>
#include <filesystem>

namespace {

const std::string ball = "Hazelnut\n\n"
                         "Rnd 1: 6 sc in MR (6)\n"
                         "Rnd 2: inc x 6 (12)\n"
                         "Rnd 3: (sc, inc) x 6 (18)\n";

/// A fresh folder with one right pattern in it.
void fresh(const std::string& text = ball) {
  clear();
  write("nut.txt", text);
}

std::size_t lines_of(const std::string& text) {
  std::size_t lines = 0;
  for (const char c : text) lines += c == '\n' ? 1 : 0;
  return lines;
}

} // namespace

TEST_CASE("check prints a table, a verdict and nothing on standard error for a right pattern") {
  fresh();
  const Ran ran = whorl({"check", "nut.txt"});
  CHECK(ran.status == 0);
  CHECK(ran.output.find("Rnd 3") != std::string::npos);
  CHECK(ran.output.find("every count agrees") != std::string::npos);
  CHECK(ran.errors.find("error") == std::string::npos);
  CHECK(ran.errors.find("warning") == std::string::npos);
}

TEST_CASE("check --json prints one object and nothing else") {
  fresh();
  const Ran ran = whorl({"check", "nut.txt", "--json"});
  CHECK(ran.status == 0);
  CHECK(ran.output.front() == '{');
  CHECK(ran.output.substr(ran.output.size() - 2) == "}\n");
  CHECK(ran.errors.empty());
}

TEST_CASE("check explains a count that somebody has in a round") {
  fresh();
  const Ran ran = whorl({"check", "nut.txt", "--round", "3", "--have", "17"});
  CHECK(ran.status == 0);
  CHECK(ran.output.find("Round 3 should have 18 stitches; you have 17.\n") == 0);
  CHECK(ran.output.find("  1. round 3: an increase was missed.") != std::string::npos);
  CHECK(ran.errors.empty());
}

TEST_CASE("check explains as JSON where it is asked to") {
  fresh();
  const Ran ran = whorl({"check", "nut.txt", "--round", "3", "--have", "18", "--json"});
  CHECK(ran.output ==
        "{\n \"whorl\": 1,\n \"round\": 3,\n \"have\": 18,\n \"should_have\": 18,\n \"slips\": []\n}\n");
}

TEST_CASE("a round that is not there, or a count without its round, is a wrong call") {
  fresh();
  CHECK(whorl({"check", "nut.txt", "--round", "9", "--have", "17"}).status == 2);
  CHECK(whorl({"check", "nut.txt", "--have", "17"}).status == 2);
  CHECK(whorl({"check", "nut.txt", "--round", "3"}).status == 2);
}

TEST_CASE("a wrong count is an error with status 1, and the chart is drawn all the same") {
  fresh(ball + "Rnd 4: (2 sc, inc) x 6 (25)\n");
  const Ran ran = whorl({"chart", "nut.txt", "-o", "nut.svg"});
  CHECK(ran.status == 1);
  CHECK(ran.errors.find("nut.txt:6:") == 0);
  CHECK(ran.errors.find("error:") != std::string::npos);
  CHECK(exists("nut.svg"));
}

TEST_CASE("the ending of the output says what is drawn") {
  fresh();
  for (const char* name : {"n.svg", "n.png", "n.pdf", "n.json", "n.SVG"}) {
    INFO(name);
    CHECK(whorl({"chart", "nut.txt", "-o", name}).status == 0);
    CHECK(exists(name));
  }
  CHECK(read("n.png").substr(1, 3) == "PNG");
  CHECK(read("n.pdf").substr(0, 5) == "%PDF-");
  CHECK(read("n.SVG") == read("n.svg"));
}

TEST_CASE("a dash is standard input and standard output") {
  fresh();
  CHECK(whorl({"chart", "nut.txt", "-o", "n.svg"}).status == 0);
  const Ran ran = whorl({"chart", "-", "-o", "-"}, ball);
  CHECK(ran.status == 0);
  CHECK(ran.output == read("n.svg"));
}

TEST_CASE("an unknown ending is a wrong call") {
  fresh();
  const Ran ran = whorl({"chart", "nut.txt", "-o", "nut.gif"});
  CHECK(ran.status == 2);
  CHECK(lines_of(ran.errors) == 1);
  CHECK(files() == std::vector<std::string>{"nut.txt"});
}

TEST_CASE("a wrong call has status 2") {
  fresh();
  CHECK(whorl({}).status == 2);
  CHECK(whorl({"knit", "nut.txt"}).status == 2);
  CHECK(whorl({"check"}).status == 2);
  CHECK(whorl({"chart", "nut.txt"}).status == 2);
  CHECK(whorl({"--help"}).status == 0);
  CHECK(whorl({"--version"}).status == 0);
}

TEST_CASE("a pattern that is not there has status 3 and one clear line") {
  fresh();
  for (const char* command : {"check", "chart"}) {
    std::vector<std::string> words = {command, "fern.txt"};
    if (words[0] == "chart") words.insert(words.end(), {"-o", "fern.svg"});
    const Ran ran = whorl(words);
    CHECK(ran.status == 3);
    CHECK(ran.errors == "whorl: cannot read fern.txt: No such file or directory\n");
  }
  CHECK(files() == std::vector<std::string>{"nut.txt"});
}

TEST_CASE("a folder as pattern or as output has status 3") {
  fresh();
  std::filesystem::create_directory(folder() + "/moss");
  CHECK(whorl({"check", "moss"}).status == 3);
  std::filesystem::create_directory(folder() + "/moss.svg");
  const Ran ran = whorl({"chart", "nut.txt", "-o", "moss.svg"});
  CHECK(ran.status == 3);
  CHECK(ran.errors.find("it is a folder") != std::string::npos);
}

TEST_CASE("a full disk has status 3 and leaves nothing behind") {
  fresh();
  const Ran to_device = whorl({"chart", "nut.txt", "-o", "-", ">full"});
  CHECK(to_device.status == 3);
  CHECK(lines_of(to_device.errors) == 1);
  CHECK(whorl({"check", "nut.txt", ">full"}).status == 3);
  CHECK(files() == std::vector<std::string>{"nut.txt"});
}

TEST_CASE("a folder that is not there has status 3") {
  fresh();
  CHECK(whorl({"chart", "nut.txt", "-o", "fern/nut.svg"}).status == 3);
}

TEST_CASE("the pattern itself is never overwritten") {
  fresh();
  std::filesystem::create_hard_link(folder() + "/nut.txt", folder() + "/nut.svg");
  CHECK(whorl({"chart", "nut.txt", "-o", "nut.svg"}).status == 2);
  CHECK(read("nut.txt") == ball);
}

TEST_CASE("an empty text and a text without rounds are errors and leave no file") {
  for (const char* text : {"", "\n\n  \n", "A walk in the wood.\n"}) {
    fresh(text);
    const Ran ran = whorl({"chart", "nut.txt", "-o", "nut.svg"});
    CHECK(ran.status == 1);
    CHECK(ran.errors.find("error:") != std::string::npos);
    CHECK(files() == std::vector<std::string>{"nut.txt"});
  }
}

TEST_CASE("bytes that are no text are an error, and the rest is drawn") {
  fresh(ball + "Stuff the nut \xff\xfe firmly.\n");
  const Ran ran = whorl({"chart", "nut.txt", "-o", "nut.svg"});
  CHECK(ran.status == 1);
  CHECK(ran.errors.find("nut.txt:6:15: error:") == 0);
  CHECK(exists("nut.svg"));
}

TEST_CASE("hostile texts are answered at once") {
  const std::vector<std::string> texts = {
      ball + "Rnd 4: sc x 999999999 (18)\n",
      ball + "Rnd 4: ((((sc, inc) x 99999) x 99999) x 99999) x 99999\n",
      ball + "Rnd 4: " + std::string(5000, '(') + "sc" + std::string(5000, ')') + "\n",
      ball + "Rnd 4: " + std::string(1 << 20, 'x') + "\n",
      ball + "Rnds 4-999999999: sc around (18)\n",
      std::string(1 << 20, '\0'),
      std::string(1 << 20, '*'),
  };
  for (const std::string& text : texts) {
    fresh(text);
    const auto start = std::chrono::steady_clock::now();
    const Ran ran = whorl({"chart", "nut.txt", "-o", "nut.svg"});
    CHECK(ran.status == 1);
    CHECK(ran.errors.find("error:") != std::string::npos);
    CHECK(ran.errors.size() < 20000);
    // A hang, not a measure of speed: the sanitizers' build is many times slower.
    CHECK(std::chrono::steady_clock::now() - start < std::chrono::seconds(20));
  }
}

TEST_CASE("an existing file is replaced whole") {
  fresh();
  write("nut.svg", "moss");
  CHECK(whorl({"chart", "nut.txt", "-o", "nut.svg"}).status == 0);
  CHECK(read("nut.svg").find("<svg") != std::string::npos);
  CHECK(files() == std::vector<std::string>{"nut.svg", "nut.txt"});
}
