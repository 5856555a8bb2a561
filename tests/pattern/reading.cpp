#include "pattern/reading.hpp"
#include "reading_lines.hpp"

#include <catch2/catch.hpp>
#include <string>

using namespace whorl;
using namespace whorl::pattern;

namespace {

const words::Vocabulary& english() { return *words::find_vocabulary("en-US"); }

std::vector<Reading> read_all(const std::string& text, Effort effort, Stuck& stuck) {
  const Span span{0, static_cast<std::uint32_t>(text.size())};
  return read_work(text, span, english(), stitch::standard_kinds(), effort, stuck);
}

std::vector<Reading> read_all(const std::string& text, Effort effort = Effort::all) {
  Stuck stuck;
  return read_all(text, effort, stuck);
}

std::vector<TypedLine> all_lines() {
  std::vector<TypedLine> all;
  for (const TypedLines* habit :
       {&plain_lines, &chain_lines, &place_lines, &repeat_lines, &count_lines, &word_lines})
    all.insert(all.end(), habit->lines, habit->lines + habit->count);
  return all;
}

bool fits(const Reading& reading, const TypedLine& line) {
  const Outcome out = outcome(reading.effect, line.open);
  return out.makes == line.makes && out.left_over == 0 && out.past_end == 0 && out.remainder == 0;
}

std::int64_t stated(const Reading& reading) {
  return reading.stated.empty() ? -1 : static_cast<std::int64_t>(reading.stated.front().count);
}

std::string told(const std::vector<Reading>& readings, std::int64_t open) {
  std::string text;
  for (const Reading& reading : readings)
    text += " | cost " + std::to_string(reading.cost) + " uses " + std::to_string(reading.effect.uses) +
            " makes " + std::to_string(outcome(reading.effect, open).makes) + " stated " +
            std::to_string(stated(reading)) + " passed " + std::to_string(reading.passed_over.size());
  return text;
}

} // namespace

TEST_CASE("every way to type a round has a reading that agrees with its counts") {
  for (const TypedLine& line : all_lines()) {
    const std::vector<Reading> readings = read_all(line.text);
    bool agrees = false;
    for (const Reading& reading : readings)
      agrees =
          agrees || (fits(reading, line) && reading.passed_over.empty() && stated(reading) == line.stated);
    INFO(line.text << told(readings, line.open));
    CHECK(agrees);
  }
}

TEST_CASE("the cheapest reading is right without the counts of the part where the words are plain") {
  for (const TypedLine& line : all_lines()) {
    if (line.doubtful) continue;
    const std::vector<Reading> readings = read_all(line.text, Effort::cheapest);
    INFO(line.text << told(readings, line.open));
    CHECK((readings.size() == 1 && fits(readings.front(), line)));
  }
}

namespace {

/// The nodes of a body on one line: `3*sc`, `2in1`, `[ … ]x6`, `~` to the end, `b(…)` back loops.
std::string told(const Reading& reading, NodeId first);

std::string told_work(const Reading& reading, const Work& work) {
  const char* acts[] = {"",         "skip",     "ring",      "join",       "turn",    "start", "other side",
                        "row ends", "top edge", "all edges", "free loops", "skipped", "part",  "travel"};
  const char* wheres[] = {"", " same", " in ring", " in chain", " last", " in space"};
  const auto& kinds = stitch::standard_kinds();
  std::string text = acts[static_cast<int>(work.act)];
  if (work.act == Act::stitch)
    text =
        work.kind < kinds.size() ? kinds[work.kind].name : reading.new_kinds[work.kind - kinds.size()].name;
  if (work.in_one != 1) text += ":" + std::to_string(work.in_one);
  if (work.to_end) text += "~" + (work.leave == 0 ? std::string() : std::to_string(work.leave));
  if (!work.to_end && work.times != 1) text += "*" + std::to_string(work.times);
  if (work.loops != 0)
    text += work.loops == stitch::back ? " back" : work.loops == stitch::front ? " front" : " loops";
  if (work.counts) text += " counts";
  return text + wheres[static_cast<int>(work.where)];
}

std::string told_node(const Reading& reading, const Node& node) {
  const Work& work = node.work;
  const std::string inner = "[" + told(reading, node.child) + "]";
  switch (node.kind) {
  case NodeKind::work:
    return told_work(reading, work);
  case NodeKind::repeat:
    if (!work.to_end) return inner + "x" + std::to_string(work.times);
    return inner + "~" + (work.leave == 0 ? std::string() : std::to_string(work.leave));
  case NodeKind::loops:
    return (work.loops == stitch::back ? "back" : "front") + inner;
  case NodeKind::group:
    return "group" + inner;
  default:
    return inner;
  }
}

std::string told(const Reading& reading, NodeId first) {
  std::string text;
  for (NodeId id = first; id != no_node; id = reading.nodes[id].next)
    text += (text.empty() ? "" : ", ") + told_node(reading, reading.nodes[id]);
  return text;
}

/// The cheapest reading of a line, told.
std::string work_of(const std::string& text) {
  const auto readings = read_all(text, Effort::cheapest);
  return readings.empty() ? "not read" : told(readings[0], readings[0].nodes[readings[0].body].child);
}

std::string cut_out(const std::string& text, Span span) { return text.substr(span.begin, span.length()); }

} // namespace

TEST_CASE("an increase is two single crochets in one place") { CHECK(work_of("6 inc") == "sc:2*6"); }
TEST_CASE("a decrease is two single crochets together") { CHECK(work_of("6 dec") == "sc2tog*6"); }
TEST_CASE("an invisible decrease is its own stitch") { CHECK(work_of("inv dec x 6") == "invdec*6"); }
TEST_CASE("in a round all of hdc a bare increase takes that stitch") {
  CHECK(work_of("(2 hdc, inc, dec) x 6") == "[hdc*2, hdc:2, hdc2tog]x6");
}
TEST_CASE("among mixed stitches a bare increase is single crochet") {
  CHECK(work_of("hdc, dc, inc") == "hdc, dc, sc:2");
}
TEST_CASE("a kind that is not standard is made") { CHECK(work_of("sc5tog, 2 sc") == "sc5tog, sc*2"); }
TEST_CASE("the magic ring is made before what goes into it") {
  CHECK(work_of("6 sc in MR") == "ring, sc*6 in ring");
}
TEST_CASE("a ring that was made in the line is not made again") {
  CHECK(work_of("Make a magic ring. 6 sc in ring") == "ring, sc*6 in ring");
}
TEST_CASE("stitches into the second chain go into one place") {
  CHECK(work_of("ch 2, 6 sc in 2nd ch from hook") == "ch*2, sc:6 in chain");
}
TEST_CASE("loops with a colon hold to the end of the round") {
  CHECK(work_of("BLO: 3 sc, inc") == "back[sc*3, sc:2]");
}
TEST_CASE("loops at the head of a line hold to the end of the round") {
  CHECK(work_of("BLO 3 sc, inc") == "back[sc*3, sc:2]");
}
TEST_CASE("loops behind a stitch hold for that stitch") {
  CHECK(work_of("3 sc, inc in BLO") == "sc*3, sc:2 back");
}
TEST_CASE("loops before a stitch inside a line hold for that stitch") {
  CHECK(work_of("3 sc, FLO sc, inc") == "sc*3, sc front, sc:2");
}
TEST_CASE("loops in a clause of their own hold for the stitches before it, whatever the hand is told there") {
  CHECK(work_of("18 sc, poke the back loops of them there") == "sc*18 back");
}
TEST_CASE("behind a turning chain the first stitches are work, and the number behind them the count") {
  CHECK(work_of("ch 2, turn, 15 hdc, 15 sts") == "ch*2, turn, hdc*15");
}
TEST_CASE("loops before a bracket hold for the bracket") {
  CHECK(work_of("BLO (3 sc, inc) x 2, sc 4") == "back[[sc*3, sc:2]x2], sc*4");
}
TEST_CASE("loops behind a bracket hold for the bracket") {
  CHECK(work_of("sc, (3 sc, inc) x 2 in FLO, sc") == "sc, front[[sc*3, sc:2]x2], sc");
}
TEST_CASE("loops inside a bracket hold for their stitch") {
  CHECK(work_of("(sc BLO, inc) x 6") == "[sc back, sc:2]x6");
}
TEST_CASE("stars that are named again are a repeat without any word for it") {
  CHECK(work_of("*2 sc, inc*, work from * to * 6 times") == "[sc*2, sc:2]x6");
  CHECK(work_of("*2 sc, inc*, work * to * 6 times in all") == "[sc*2, sc:2]x6");
  CHECK(work_of("*2 sc, inc*, 5 more times between * and *") == "[sc*2, sc:2]x6");
}
TEST_CASE("a repeat to the end leaves what the line goes on with") {
  CHECK(work_of("2 sc, (sc, inc) around, 3 sc") == "sc*2, [sc, sc:2]~3, sc*3");
}
TEST_CASE("a repeat to the last stitches leaves as many as it says") {
  CHECK(work_of("*sc, inc; rep from * to last 2 sts, 2 sc") == "[sc, sc:2]~2, sc*2");
}
TEST_CASE("n more times is one pass more than n") {
  CHECK(work_of("*sc, inc; rep from * 5 more times") == "[sc, sc:2]x6");
}
TEST_CASE("n times behind brackets is n in all") { CHECK(work_of("(sc, inc) 6 times") == "[sc, sc:2]x6"); }
// trade-facts.md 5: `* ... ; rep from * N times` once, then N more (1918 Handbook: "repeat from * twice" =
// three in all).
TEST_CASE("repeat from the star twice is three in all") {
  CHECK(work_of("*sc, inc; repeat from * twice") == "[sc, sc:2]x3");
}
// trade-facts.md 5: `( ... ) N times` is N in all (1918 Handbook).
TEST_CASE("a bracket twice is two in all") { CHECK(work_of("(sc, inc) twice") == "[sc, sc:2]x2"); }
TEST_CASE("an increase in every third stitch is two plain and one increase to the end") {
  CHECK(work_of("inc in every 3rd st") == "[sc*2, sc:2]~");
}
TEST_CASE("a bracket into one place is a group") {
  CHECK(work_of("(dc, ch 1, dc) in next st") == "group[dc, ch, dc]");
}
TEST_CASE("passages nest") {
  CHECK(work_of("[2 sc, (sc, inc) x 2] x 3, sc") == "[sc*2, [sc, sc:2]x2]x3, sc");
}
TEST_CASE("a skip takes places") { CHECK(work_of("3 sc, sk 1") == "sc*3, skip"); }
TEST_CASE("a join behind the count is still a join") { CHECK(work_of("12 sc (12), join") == "sc*12, join"); }
TEST_CASE("brackets nest twenty deep") {
  std::string text = "sc";
  for (int i = 0; i < 20; ++i) text = "(" + text + ") x 1";
  CHECK(read_all(text).size() >= 1);
}
TEST_CASE("brackets deeper than that are said to be too deep") {
  Stuck stuck;
  CHECK(read_all(std::string(21, '(') + "sc" + std::string(21, ')'), Effort::all, stuck).empty());
  CHECK(stuck.too_deep);
  CHECK(stuck.span == Span{20, 21});
}

TEST_CASE("every node points at its words in the file") {
  const std::string text = "2 sc, (sc, inc) x 5, sc (18)";
  const auto readings = read_all(text, Effort::cheapest);
  REQUIRE(readings.size() == 1);
  std::string spans;
  for (NodeId id = readings[0].nodes[readings[0].body].child; id != no_node; id = readings[0].nodes[id].next)
    spans += "<" + cut_out(text, readings[0].nodes[id].span) + ">";
  CHECK(spans == "<2 sc><(sc, inc) x 5><sc>");
}

TEST_CASE("spans count from the place of the line in the file") {
  Stuck stuck;
  const auto readings =
      read_work("6 sc (6)", {100, 108}, english(), stitch::standard_kinds(), Effort::cheapest, stuck);
  REQUIRE(readings.size() == 1);
  CHECK(readings[0].nodes[readings[0].nodes[readings[0].body].child].span == Span{100, 104});
  CHECK(readings[0].stated[0].span == Span{106, 107});
}

TEST_CASE("no reading wins by not seeing the stated count") {
  for (const Reading& reading : read_all("(2 sc, inc) x 6 (25)")) {
    REQUIRE(reading.stated.size() == 1);
    CHECK(reading.stated[0].count == 25);
  }
}

TEST_CASE("a count names the stitches it speaks of") {
  const auto readings = read_all("30 hdc, ch 1 (30 hdc, 15 ch-1 sps)");
  REQUIRE_FALSE(readings.empty());
  REQUIRE(readings[0].stated.size() == 2);
  CHECK(readings[0].stated[0].unit == Unit::kind);
  CHECK(readings[0].stated[0].kind == *stitch::find_kind(stitch::standard_kinds(), "hdc"));
  CHECK(readings[0].stated[1].unit == Unit::spaces);
}

TEST_CASE("a list of sizes is no count") {
  const auto readings = read_all("sc around (44, 48)");
  for (const Reading& reading : readings) CHECK(reading.stated.empty());
}

TEST_CASE("a tally of rounds is no count") {
  const auto readings = read_all("30 sc (30) (3 rounds)");
  REQUIRE_FALSE(readings.empty());
  CHECK(readings[0].stated[0].count == 30);
}

TEST_CASE("a stitch passed over is listed") {
  const std::string text = "6 sc, see photo 4, inc (8)";
  const auto readings = read_all(text, Effort::cheapest);
  REQUIRE(readings.size() == 1);
  REQUIRE(readings[0].passed_over.size() == 1);
  CHECK(cut_out(text, readings[0].passed_over[0]) == "4");
}

TEST_CASE("a word alone between commas that nobody knows is listed") {
  const std::string text = "2 sc, flurb, inc (5)";
  const auto readings = read_all(text, Effort::cheapest);
  REQUIRE(readings.size() == 1);
  REQUIRE(readings[0].passed_over.size() == 1);
  CHECK(cut_out(text, readings[0].passed_over[0]) == "flurb");
}

TEST_CASE("a word that nobody knows in the place of a place is listed") {
  const auto readings = read_all("sc in blorp", Effort::cheapest);
  REQUIRE(readings.size() == 1);
  REQUIRE(readings[0].passed_over.size() == 1);
  CHECK(cut_out("sc in blorp", readings[0].passed_over[0]) == "blorp");
}

TEST_CASE("what a bracket only tells is kept as a note") {
  const auto readings = read_all("ch 1 (so far so good), 6 sc (6)", Effort::cheapest);
  REQUIRE(readings.size() == 1);
  REQUIRE(readings[0].placings.size() == 1);
  CHECK(readings[0].placings[0].text == "(so far so good)");
}

TEST_CASE("a starting chain that is likely to count is marked") {
  CHECK(work_of("ch 3, dc in each st around") == "ch*3 counts, dc~");
}
TEST_CASE("before hdc a starting chain is likely not to count") {
  CHECK(work_of("ch 2, hdc in each st around") == "ch*2, hdc~");
}
TEST_CASE("before sc a starting chain never counts") {
  for (const Reading& reading : read_all("ch 1, sc in each st around"))
    CHECK((reading.habits & starting_chain_counts) == 0);
}
TEST_CASE("the other side of the chain stands before what goes along it") {
  CHECK(work_of("ch 4, sc in 2nd ch from hook, sc, 3 sc in last ch, rotate, sc, inc") ==
        "ch*4, sc in chain, sc, sc:3 last, other side, sc, sc:2");
}
TEST_CASE("stitches that go on from a chain begin in it") {
  CHECK(work_of("ch 6, starting in 2nd ch from hook: 5 sc") == "ch*6, sc in chain, sc*4");
}
TEST_CASE("an increase beside a cluster is one of the plain stitch") {
  CHECK(work_of("[cl, inc] x 5") == "[cl, sc:2]x5");
}
TEST_CASE("a leg is opened once, before the first stitch that goes into it") {
  CHECK(work_of("ch 3, sc in the first leg, 13 sc of the first leg") == "ch*3, part, sc, sc*13");
  CHECK(work_of("ch 3, sc in the first leg, 13 sc of leg 1") == "ch*3, part, sc, sc*13");
}
TEST_CASE("free loops of a round are opened by its number as typed") {
  const auto readings = read_all("Join yarn in a free front loop of Rnd 6, sc in each free loop around");
  REQUIRE_FALSE(readings.empty());
  const Node& first = readings[0].nodes[readings[0].nodes[readings[0].body].child];
  CHECK(first.work.act == Act::free_loops);
  CHECK(first.work.loops == stitch::front);
  CHECK(first.round == 6);
}
TEST_CASE("a front post stitch is its stitch round the post") {
  const auto readings = read_all("FPdc around next st", Effort::cheapest);
  REQUIRE(readings.size() == 1);
  const Work& work = readings[0].nodes[readings[0].nodes[readings[0].body].child].work;
  CHECK(stitch::standard_kinds()[work.kind].name == "dc");
  CHECK(work.into == Into::front_post);
}
TEST_CASE("a last repeat that ends at two stars works what stands before them once more") {
  CHECK(work_of("*inc **, 2 sc; rep from * around, ending last repeat at **, 2 sc") ==
        "[sc:2, sc*2]~3, sc:2, sc*2");
}

TEST_CASE("prose that nobody knows is kept as a note") {
  const auto readings = read_all("with fluffy tinsel, sc around (24)", Effort::cheapest);
  REQUIRE(readings.size() == 1);
  REQUIRE(readings[0].placings.size() == 1);
  CHECK(readings[0].placings[0].text == "fluffy tinsel");
}

TEST_CASE("a glued number keeps both readings and their habits") {
  std::uint16_t habits = 0;
  for (const Reading& reading : read_all("(1sc, 2sc) x 6"))
    habits = static_cast<std::uint16_t>(habits | reading.habits);
  CHECK((habits & glued_number_increases) != 0);
  CHECK((habits & glued_number_repeats) != 0);
}

TEST_CASE("repeat from the star n times keeps both readings and their habits") {
  std::uint16_t habits = 0;
  for (const Reading& reading : read_all("*sc, inc; rep from * 6 times"))
    habits = static_cast<std::uint16_t>(habits | reading.habits);
  CHECK((habits & star_times_in_all) != 0);
  CHECK((habits & star_times_more) != 0);
}

TEST_CASE("square brackets keep both readings") {
  bool one_place = false;
  for (const Reading& reading : read_all("[2 sc, inc] x 2"))
    one_place = one_place || (reading.habits & bracket_one_place) != 0;
  CHECK(one_place);
}

TEST_CASE("at most a dozen readings are kept, cheapest first, no two of the same effect") {
  const auto readings = read_all("2sc, 3sc, 2 sc, 4sc, 2 sc, 5sc, [sc, inc], (sc, inc), *sc, inc*");
  CHECK(readings.size() <= 12);
  for (std::size_t i = 1; i < readings.size(); ++i) {
    CHECK(readings[i - 1].cost <= readings[i].cost);
    for (std::size_t j = 0; j < i; ++j) CHECK_FALSE(readings[i].effect == readings[j].effect);
  }
}

TEST_CASE("a line of thirty thousand stitches typed out is read") {
  std::string text;
  for (int i = 0; i < 30000; ++i) text += "sc, ";
  const auto readings = read_all(text + "sc (30001)", Effort::cheapest);
  REQUIRE(readings.size() == 1);
  CHECK(readings[0].effect.makes == 30001);
}

TEST_CASE("long lists of figures and of things placed are read in one go") {
  std::string figures, things;
  for (int i = 0; i < 20000; ++i) figures += "2 sc, ", things += "marker, ";
  CHECK(read_all(figures + "2 sc", Effort::cheapest).size() == 1);
  CHECK(read_all(things + "2 sc", Effort::cheapest).size() == 1);
}

TEST_CASE("word soup is read without a span outside its line") {
  const char* soup[] = {"sc",      "inc",  "2",        "(",      ")",          "[",         "]",
                        "*",       "x 6",  "rep from", "around", "BLO",        "FLO:",      "in",
                        "next st", ",",    ".",        ";",      "magic ring", "every 3rd", "to last",
                        "(18)",    "= 18", "eyes",     "flurb",  "sc2tog",     "\xff"};
  unsigned seed = 7;
  for (int line = 0; line < 2000; ++line) {
    std::string text;
    for (int n = 0; n < 16; ++n) {
      seed = seed * 1664525U + 1013904223U;
      text += std::string(soup[(seed >> 16) % (sizeof soup / sizeof soup[0])]) + " ";
    }
    for (const Reading& reading : read_all(text))
      for (const Node& node : reading.nodes)
        REQUIRE((node.span.begin <= node.span.end && node.span.end <= text.size()));
  }
}

TEST_CASE("a number beyond all measure neither overflows nor hangs") {
  const auto readings = read_all("(sc, inc) x 999999999", Effort::cheapest);
  REQUIRE(readings.size() == 1);
  CHECK(readings[0].effect.makes == 2999999997U);
  CHECK(read_all("((inc) x 999999999) x 999999999", Effort::cheapest)[0].effect.makes == 0xFFFFFFFFU);
}

TEST_CASE("a line without any work has no reading") {
  CHECK(read_all("Turn the page and have a cup of tea").empty());
  CHECK(read_all("").empty());
  CHECK(read_all("(((( ]] ** ;;").empty());
}

namespace {

/// A written form and what n of it uses and makes.
struct Law {
  const char* id;
  std::uint32_t uses, uses_each, makes, makes_each;
  std::uint32_t least;
};
constexpr Law laws[] = {
    {"count-work", 0, 1, 0, 1, 0},    {"in-next", 0, 1, 0, 1, 0},     {"one-place", 1, 0, 0, 1, 1},
    {"in-ring", 0, 0, 0, 1, 0},       {"in-chain", 0, 0, 0, 1, 1},    {"skip", 0, 1, 0, 0, 0},
    {"together", 0, 1, 1, 0, 2},      {"group-times", 0, 3, 0, 4, 0}, {"star-more", 3, 3, 4, 4, 0},
    {"group-in-next", 1, 0, 4, 0, 0},
};

std::string filled(std::string form, std::uint32_t n, const std::string& name) {
  const auto put = [&form](const std::string& slot, const std::string& value) {
    for (std::size_t at = form.find(slot); at != std::string::npos; at = form.find(slot))
      form.replace(at, slot.size(), value);
  };
  put("{n}", std::to_string(n));
  put("{stitch}", name);
  put("{list}", "2 " + name + ", " + name + " inc");
  return form;
}

const std::string& written(const std::string& id) {
  for (const words::RowEntry& row : english().rows)
    if (row.id == id) return row.write;
  static const std::string none;
  return none;
}

} // namespace

TEST_CASE("what a row writes reads back as itself, as the cheapest reading, for every number") {
  for (const Law& law : laws)
    for (const char* name : {"sc", "hdc", "dc", "tr"})
      for (std::uint32_t n = law.least; n <= (std::string(law.id) == "together" ? 12U : 25U); ++n) {
        const std::string text =
            (std::string(law.id) == "skip" ? "sc, " : "") + filled(written(law.id), n, name);
        const std::uint32_t more = std::string(law.id) == "skip" ? 1 : 0;
        INFO(law.id << ": " << text);
        const auto readings = read_all(text, Effort::cheapest);
        REQUIRE(readings.size() == 1);
        CHECK(readings[0].cost == 0);
        CHECK(readings[0].effect.uses == law.uses + law.uses_each * n + more);
        CHECK(readings[0].effect.makes == law.makes + law.makes_each * n + more);
      }
}

TEST_CASE("what a row writes to the end of the round reads back as itself") {
  for (const char* id :
       {"all-round", "around", "to-last", "group-around", "star-around", "increase-every-nth"}) {
    const std::string text = filled(written(id), 3, "hdc");
    INFO(id << ": " << text);
    const auto readings = read_all(text, Effort::cheapest);
    REQUIRE(readings.size() == 1);
    CHECK(readings[0].cost == 0);
    CHECK(readings[0].effect.pass_uses == (text.substr(0, 3) == "hdc" ? 1 : 3));
  }
}
