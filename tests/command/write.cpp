#include "command/run.hpp"

#include <catch2/catch.hpp>

namespace {

const std::string hip = "Rose hip\n\nTerms: US\n\nHIP\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nFasten off.\n";

void fresh() {
  clear();
  write("hip.txt", hip);
}

bool has(const std::string& text, const std::string& words) { return text.find(words) != std::string::npos; }

} // namespace

TEST_CASE("write puts the instructions on standard output, and says nothing of a right pattern") {
  fresh();
  const Ran ran = whorl({"write", "hip.txt", "--language", "en-GB"});
  CHECK(ran.status == 0);
  CHECK(ran.errors.empty());
  CHECK(has(ran.output, "Rnd 1: 6 dc in MR (6)\n"));
}

TEST_CASE("write tells what to write from the ending, or from --as") {
  fresh();
  for (const char* name : {"h.txt", "h.md", "h.html"}) {
    INFO(name);
    CHECK(whorl({"write", "hip.txt", "-o", name}).status == 0);
    CHECK(exists(name));
  }
  CHECK(has(read("h.html"), "<!DOCTYPE html>"));
  CHECK(has(read("h.md"), "# Rose hip"));
  CHECK(has(whorl({"write", "-", "--as", "html"}, hip).output, "<h1>Rose hip</h1>"));
  CHECK(has(whorl({"write", "-", "--side-by-side"}, hip).output, "| Rnd 1: 6 sc in MR (6) |"));
}

TEST_CASE("write knows its endings, languages and options") {
  fresh();
  CHECK(whorl({"write", "hip.txt", "-o", "h.pdf"}).status == 2);
  CHECK(whorl({"write", "hip.txt", "-o", "h.txt", "--side-by-side"}).status == 2);
  CHECK(whorl({"write", "hip.txt", "--full", "--shortest"}).status == 2);
  CHECK(whorl({"write", "hip.txt", "--language", "qq"}).status == 2);
  CHECK(whorl({"write", "hip.txt", "-o", "hip.txt"}).status == 2);
  CHECK(whorl({"write", "hip.txt", "--left", "hip.txt"}).status == 2);
  CHECK(read("hip.txt") == hip);
  CHECK(whorl({"write", "no.txt"}).status == 3);
  CHECK(whorl({"write", "hip.txt", "--filled", "no.tsv"}).status == 3);
}

TEST_CASE("what is left is a table, and filled in it is read back") {
  clear();
  write("odd.txt", "Rose hip\n\nTerms: US\n\nRnd 1: 6 sc in MR (6)\nRnd 2: dig 3 sc twigs under 4 burrows (12)\nRnd 3: 12 sc (12)\n");
  const Ran first = whorl({"write", "odd.txt", "-o", "odd-uk.txt", "--language", "en-GB", "--left", "left.tsv"});
  CHECK(first.status == 1); // the pattern has an error
  const std::string table = read("left.tsv");
  INFO(table << first.errors);
  CHECK(has(table, "Rnd 2: dig 3 sc twigs under 4 burrows (12)\t\n"));
  CHECK(has(read("odd-uk.txt"), "Rnd 3: 12 dc (12)\n"));
}
