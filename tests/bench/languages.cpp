#include "languages.hpp"

#include "subjects.hpp"

#include "fabric/work.hpp"
#include "pattern/language.hpp"
#include "pattern/read.hpp"
#include "whorl.hpp"

#include <algorithm>
#include <cstdio>
#include <ctime>
#include <string>

namespace {

using whorl::words::Vocabulary;

/// The least of several readings, in microseconds; `alone`: with this vocabulary, else the language is found
/// out.
double reading(const std::string& text, const Vocabulary* alone) {
  const whorl::pattern::Source source(text);
  double least = 1e300;
  for (int i = 0; i < 15; ++i) {
    const std::clock_t start = std::clock();
    whorl::pattern::read(source,
                         alone != nullptr ? *alone : *whorl::pattern::find_language(source, "").vocabulary);
    least = std::min(least, static_cast<double>(std::clock() - start) * 1e6 / CLOCKS_PER_SEC);
  }
  return least;
}

double stitches_of(const std::string& text, const Vocabulary& vocabulary) {
  const whorl::pattern::Source source(text);
  const whorl::pattern::Tree tree = whorl::pattern::read(source, vocabulary).tree;
  return static_cast<double>(whorl::fabric::work(tree).fabric.stitches.size());
}

} // namespace

void measure_languages() {
  const Vocabulary& english = *whorl::words::find_vocabulary("en-US");
  const std::string text = wall(32);
  const double stitches = stitches_of(text, english), alone = reading(text, &english);
  std::printf(
      "\nreading the wall of %.0f stitches, microseconds a stitch; English alone %.3f\n%-10s %8s %7s\n",
      stitches, alone / stitches, "", "reading", "ratio");
  for (const auto& language : whorl::words::known_vocabularies()) {
    const std::string tag(language.language);
    if (tag.find("-x-") != std::string::npos || !language.extends.empty()) continue;
    whorl::WriteOptions options;
    options.language = tag;
    const double found = reading(tag == "en-US" ? text : whorl::read(text).written(options).text(), nullptr);
    std::printf("%-10s %8.3f %7.2f\n", tag.c_str(), found / stitches, found / alone);
  }
}
