#include "command/run.hpp"

#include <catch2/catch.hpp>

namespace {

const std::string beetle = "Beetle\n\nMaterials: two safety eyes\n\n"
                           "Rnd 1: 6 sc in MR (6)\n"
                           "Rnd 2: inc x 6 (12)\n"
                           "Rnd 3: (sc, dec) x 4 (8)\n";

void fresh(const std::string& text = beetle) {
  clear();
  write("beetle.txt", text);
}

bool has(const std::string& text, const std::string& words) { return text.find(words) != std::string::npos; }

} // namespace

TEST_CASE("moves tells every stitch that the pattern uses") {
  fresh();
  const Ran ran = whorl({"moves", "beetle.txt"});
  CHECK(ran.status == 0);
  CHECK(ran.errors.empty());
  for (const char* heading : {"single crochet (sc)", "(inc)", "(sc2tog)"}) CHECK(has(ran.output, heading));
}

TEST_CASE("moves tells the one stitch that is named") {
  fresh();
  const Ran ran = whorl({"moves", "-", "dec"}, beetle);
  CHECK(ran.status == 0);
  CHECK(ran.output.substr(0, ran.output.find('\n')) == "single crochet 2 together (sc2tog)");
}

TEST_CASE("moves of a stitch that the pattern lacks names those it has") {
  fresh();
  const Ran ran = whorl({"moves", "beetle.txt", "puff"});
  CHECK(ran.status == 2);
  CHECK(ran.output.empty());
  CHECK(ran.errors == "whorl: the pattern has no stitch called “puff”. It uses: sc, inc, sc2tog.\n");
}

TEST_CASE("moves draws by the ending of the output") {
  fresh();
  for (const char* name : {"b.svg", "b.png", "b.pdf", "b.json"}) {
    INFO(name);
    CHECK(whorl({"moves", "beetle.txt", "-o", name}).status == 0);
    CHECK(exists(name));
  }
  CHECK(has(read("b.svg"), "<svg"));
  CHECK(read("b.png").substr(1, 3) == "PNG");
  CHECK(read("b.pdf").substr(0, 5) == "%PDF-");
  CHECK(read("b.json").front() == '{');
}

TEST_CASE("moves never writes over the pattern and knows its endings") {
  fresh();
  CHECK(whorl({"moves", "beetle.txt", "-o", "beetle.gif"}).status == 2);
  std::string same = "beetle.txt";
  CHECK(whorl({"moves", "beetle.txt", "-o", same}).status == 2);
  CHECK(read("beetle.txt") == beetle);
}

TEST_CASE("moves --json prints one object and nothing else") {
  fresh();
  const Ran ran = whorl({"moves", "beetle.txt", "--json"});
  CHECK(ran.output.front() == '{');
  CHECK(has(ran.output, "\"stitches\""));
  CHECK(ran.errors.empty());
}

TEST_CASE("moves of a text without rounds is an error") {
  fresh("A walk in the wood.\n");
  CHECK(whorl({"moves", "beetle.txt"}).status == 1);
}

TEST_CASE("check names each place that calls for a caution, and then the caution") {
  fresh();
  const Ran ran = whorl({"check", "beetle.txt"});
  CHECK(ran.status == 0);
  CHECK(has(ran.output, "line 3, column 16: safety eyes"));
  CHECK(has(ran.output, "Safety eyes: such parts can come off or catch."));
  CHECK(has(ran.output, "Local rules and a test house decide."));
}

TEST_CASE("check of a pattern without such things says nothing of them") {
  fresh("Beetle\n\nRnd 1: 6 sc in MR (6)\n");
  CHECK_FALSE(has(whorl({"check", "beetle.txt"}).output, "Cautions"));
}

TEST_CASE("check --json lists the cautions with their places") {
  fresh();
  const std::string json = whorl({"check", "beetle.txt", "--json"}).output;
  const std::size_t at = json.find("\"cautions\": [");
  REQUIRE(at != std::string::npos);
  CHECK(has(json.substr(at),
            "\"what\": \"safety eyes\",\n   \"line\": 3,\n   \"column\": 16,\n   \"length\": 11"));
}

TEST_CASE("a caution is no finding: chart says nothing of it, the sheet does") {
  fresh();
  const Ran ran = whorl({"chart", "beetle.txt", "-o", "b.svg"});
  CHECK(ran.status == 0);
  CHECK(ran.errors.empty());
  CHECK(has(read("b.svg"), "36 months"));
}
