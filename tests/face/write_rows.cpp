#include "drawing/wording.hpp"
#include "drawing/wording_file.hpp"
#include "fabric/same_work.hpp"
#include "whorl.hpp"
#include "whorl_write.hpp"
#include "words/vocabulary.hpp"
#include "writing/tongue.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <iostream>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

/// Every way to put a step that a language has, written by itself: it reads as the same work as the English
/// one, with no other form behind it.

namespace {

using namespace whorl;
using Words = std::optional<std::string>;

/// A language that small patterns are put in.
class Speaker {
public:
  explicit Speaker(const std::string& language)
      : language_(language), say_([this](std::string_view id, const std::vector<std::string>& with) {
          return drawing::say(*drawing::find_wording(language_), id, with);
        }),
        tongue_(*words::find_vocabulary(language), say_, false) {}

  const std::string& language() const { return language_; }

  /// Rounds of which the last has the row, with their counts; none: the language has not got its words, or
  /// nobody would write it at that number.
  Words pattern(const std::string& row, int n, const std::vector<std::string>& counts) const {
    const std::string number = std::to_string(n);
    const Words step = filled(row, number);
    if (!step) return std::nullopt;
    if (in(row, {"together", "many-of-stitch"}) && n < 2) return std::nullopt;
    if (row == "many-of-stitch" && n > 20) return std::nullopt; // so many are never closed together
    if (row == "each-and-chain" && n != 1) return std::nullopt;
    if (row == "travel" && (n < 1 || n > 3)) return std::nullopt;
    if (row == "increase-every-nth" && (n < 2 || 36 % n != 0)) return std::nullopt;
    if (in(row, {"in-ring", "group-in-ring"})) return rounds({step}, counts);
    if (in(row, {"in-chain", "in-ordinal-chain"}))
      return rounds({joined(tongue_.row("starting-chain", {"30", {}, {}, {}}), step)}, counts);
    const bool spaces = row.find("space") != std::string::npos || in(row, {"each-and-chain", "travel"});
    const Words last = goes_round(row) ? step : joined(step, rest(spaces));
    if (spaces) return rounds({ring(), group("18", "sc", "ch"), last}, counts);
    if (row.find("same") != std::string::npos)
      return rounds({ring(), joined(tongue_.row("count-work", {"5", *tongue_.word("sc"), {}, {}}), last)},
                    counts);
    if (row.find("gap") != std::string::npos || row.find("centre") != std::string::npos)
      return rounds(
          {ring(), groups(), goes_round(row) ? step : tongue_.row("group-times", {"12", {}, *step, {}})},
          counts);
    if (row.find("row-ends") != std::string::npos || row.find("evenly") != std::string::npos)
      return rounds({joined(tongue_.row("starting-chain", {"31", {}, {}, {}}),
                            joined(tongue_.row("in-chain", {"1", *tongue_.word("sc"), {}, {}}), rest(false))),
                     joined(tongue_.row("starting-chain", {"1", {}, {}, {}}),
                            joined(tongue_.row("turn", {}), rest(false))),
                     step},
                    counts, row.find("row-ends") != std::string::npos ? 3 : 2);
    if (row == "below")
      return n < 1 || n > 2 ? std::nullopt : rounds({ring(), rest(false), rest(false), last}, counts);
    return rounds({ring(), last}, counts);
  }

private:
  static bool in(const std::string& row, std::initializer_list<const char*> rows) {
    return std::find(rows.begin(), rows.end(), row) != rows.end();
  }

  static bool goes_round(const std::string& row) {
    return in(
        row,
        {"all-round",      "around",         "to-last",       "increase-every-nth", "group-around",
         "star-around",    "skip-rest",      "loops-rest",    "all-spaces",         "all-gaps",
         "each-and-space", "each-and-chain", "group-in-each", "group-in-spaces",    "group-in-gaps",
         "through-layers", "in-row-ends",    "evenly-around", "count-in-row-ends",  "count-evenly-around",
         "group-in-last",  "in-last",        "turn"});
  }

  /// What fills the round.
  Words rest(bool spaces) const {
    const Words stitch = tongue_.word("sc");
    if (!stitch) return stitch;
    return spaces ? tongue_.row("all-spaces", {"1", *stitch, {}, {}})
                  : tongue_.row("all-round", {{}, *stitch, {}, {}});
  }

  Words filled(const std::string& row, const std::string& number) const {
    const Words stitch = tongue_.word("hdc"), other = tongue_.word("sc"), loops = tongue_.word("back loops");
    if (!stitch || !other || !loops) return std::nullopt;
    const std::string list = *other + std::string(tongue_.comma()) + *stitch;
    const bool ordinal = row == "in-ordinal-chain";
    Words text = tongue_.row(row, {number, *stitch, ordinal ? "4" : list, *loops});
    if (row == "many-of-stitch") {
      const Words tall = tongue_.word("dc"), popcorn = tongue_.word("pc");
      return tall && popcorn ? tongue_.row(row, {number, *tall, *popcorn, {}}) : std::nullopt;
    }
    if (text && row == "loops-rest") *text += " " + *stitch;
    return text;
  }

  Words ring() const {
    const Words stitch = tongue_.word("sc");
    return stitch ? tongue_.row("in-ring", {"36", *stitch, {}, {}}) : stitch;
  }

  Words group(const char* times, const char* first, const char* second) const {
    const Words one = tongue_.word(first), two = tongue_.word(second);
    return one && two
               ? tongue_.row("group-times", {times, {}, *one + std::string(tongue_.comma()) + *two, {}})
               : std::nullopt;
  }

  /// Three stitches in one place, with two passed over between them.
  Words groups() const {
    const Words stitch = tongue_.word("dc");
    const Words three = stitch ? tongue_.row("one-place", {"3", *stitch, {}, {}}) : stitch;
    const Words list = joined(three, tongue_.row("skip", {"2", {}, {}, {}}));
    return list ? tongue_.row("group-times", {"12", {}, *list, {}}) : list;
  }

  Words joined(const Words& one, const Words& two) const {
    return one && two ? Words(*one + std::string(tongue_.comma()) + *two) : std::nullopt;
  }

  /// The first so many of them are rows.
  Words rounds(const std::vector<Words>& lines, const std::vector<std::string>& counts,
               std::size_t rows = 0) const {
    std::string text = "Fir cone\n\n";
    for (std::size_t i = 0; i < lines.size(); ++i) {
      const Words label =
          tongue_.sentence(i < rows ? "write-label-row" : "write-label-round", {std::to_string(i + 1)});
      if (!label || !lines[i]) return std::nullopt;
      text += *label + " " + *lines[i] + (i < counts.size() ? " (" + counts[i] + ")\n" : "\n");
    }
    return text;
  }

  std::string language_;
  writing::Say say_;
  writing::Tongue tongue_;
};

bool all_read(const ReadWork& work) {
  return std::all_of(work.tree.rounds.begin(), work.tree.rounds.end(),
                     [](const pattern::RoundText& round) { return round.read; }) &&
         !work.fabric.stitches.empty();
}

ReadWork work_of(const std::string& text, const std::string& language) {
  return read_work(text, *words::find_vocabulary(language));
}

std::vector<std::string> counts_of(const ReadWork& work) {
  std::vector<std::string> counts;
  for (const fabric::Round& round : work.fabric.rounds)
    if (round.number > 0) counts.push_back(std::to_string(round.counted));
  return counts;
}

std::vector<std::string> rows_of_english() {
  std::vector<std::string> rows;
  for (const words::RowEntry& row : words::find_vocabulary("en-US")->rows)
    if (!row.id.empty() && !row.write.empty()) rows.push_back(row.id);
  return rows;
}

} // namespace

TEST_CASE("every row that a language writes reads as the English one, at every number") {
  const Speaker english("en-US");
  std::vector<std::unique_ptr<Speaker>> speakers;
  for (const words::LanguageName& language : words::known_vocabularies())
    if (language.language.find("-x-") == std::string_view::npos && language.language.substr(0, 2) != "en")
      speakers.push_back(std::make_unique<Speaker>(std::string(language.language)));
  CHECK(speakers.size() == 13);
  std::size_t looked_at = 0;
  std::set<std::string> alone; // rows that stand in no pattern by themselves
  for (const std::string& row : rows_of_english()) {
    const std::size_t before = looked_at;
    for (const int n : {0, 1, 2, 3, 4, 5, 7, 11, 12, 21, 22, 25}) {
      const Words bare = english.pattern(row, n, {});
      if (!bare) continue;
      const std::vector<std::string> counts = counts_of(work_of(*bare, "en-US"));
      const Words text = english.pattern(row, n, counts);
      const ReadWork work = work_of(*text, "en-US");
      if (!all_read(work)) continue;
      for (const auto& speaker : speakers) {
        const Words other = speaker->pattern(row, n, counts);
        if (!other) continue;
        ++looked_at;
        const std::string_view difference =
            fabric::same_work(work.fabric, work_of(*other, speaker->language()).fabric);
        INFO(row << " " << n << " in " << speaker->language() << "\n" << *text << "\n" << *other);
        CHECK(difference == "");
      }
    }
    if (looked_at == before) alone.insert(row);
  }
  for (const std::string& row : alone) std::cout << "row not looked at: " << row << "\n";
  std::cout << "rows: " << rows_of_english().size() << ", " << looked_at << " looked at\n";
  CHECK(looked_at > 7000);
}
