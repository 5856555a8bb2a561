// What a stitch costs from text to bytes, beside pugixml alone writing as many <use> in the same run.
#include "ball.hpp"

#include "drawing/sheet.hpp"
#include "drawing/svg.hpp"
#include "fabric/work.hpp"
#include "layout/place.hpp"
#include "paint/paint.hpp"
#include "pattern/read.hpp"
#include "whorl.hpp"
#include "whorl_paint.hpp"

#include <pugixml.hpp>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <functional>
#include <sstream>
#include <string>

namespace {

/// The least of several runs, in microseconds.
double microseconds(int runs, const std::function<void()>& work) {
  double least = 1e300;
  for (int i = 0; i < runs; ++i) {
    const auto start = std::chrono::steady_clock::now();
    work();
    const std::chrono::duration<double, std::micro> took = std::chrono::steady_clock::now() - start;
    least = std::min(least, took.count());
  }
  return least;
}

std::size_t uses_alone(std::size_t stitches) {
  pugi::xml_document document;
  pugi::xml_node svg = document.append_child("svg");
  for (std::size_t i = 0; i < stitches; ++i) {
    pugi::xml_node use = svg.append_child("use");
    use.append_attribute("id") = ("ball-1-" + std::to_string(i)).c_str();
    use.append_attribute("class") = "sc";
    use.append_attribute("href") = "#sc";
    use.append_attribute("transform") = "matrix(0.866 0.5 -0.5 0.866 123.456 78.901)";
  }
  std::ostringstream stream;
  document.save(stream);
  return stream.str().size();
}

void measure(int k, bool typed_out) {
  const std::string text = ball(k, typed_out);
  const int runs = k < 10 ? 50 : k < 30 ? 10 : 3;
  const whorl::words::Vocabulary* vocabulary = whorl::words::find_vocabulary("en-US");
  const whorl::pattern::Source source(text);
  whorl::pattern::Read read;
  whorl::fabric::Worked worked;
  const double reading = microseconds(runs, [&] { read = whorl::pattern::read(source, *vocabulary); });
  const double working = microseconds(runs, [&] { worked = whorl::fabric::work(read.tree); });
  const whorl::layout::Extents extents =
      whorl::drawing::extents_of(worked.fabric, whorl::drawing::built_in_marks());
  whorl::layout::Page page;
  page.fold = false;
  const double placing = microseconds(runs, [&] { whorl::layout::place(worked.fabric, extents, page); });
  const whorl::Pattern pattern = whorl::read(text);
  whorl::ChartOptions options;
  options.fold = false;
  const whorl::Chart chart = pattern.chart(options);
  std::string svg;
  const double writing = microseconds(runs, [&] { svg = chart.svg(); });
  const double whole = microseconds(runs, [&] { svg = whorl::read(text).chart(options).svg(); });
  const double painting = microseconds(1, [&] { whorl::png(chart, 200); });
  const std::size_t stitches = worked.fabric.stitches.size();
  const double alone = microseconds(runs, [&] { uses_alone(stitches); });
  const double n = static_cast<double>(stitches);
  std::printf("%8zu %-9s %8.3f %8.3f %8.3f %8.3f %9.3f %9.2f ms %7.2f %8.0f\n", stitches,
              typed_out ? "typed out" : "repeats", reading / n, working / n, placing / n, writing / n,
              painting / n, whole / 1000, whole / alone, static_cast<double>(svg.size()) / n);
}

} // namespace

int main() {
  std::printf(
      "microseconds a stitch; text to SVG whole; its ratio to pugixml alone; bytes of SVG a stitch\n");
  std::printf("%8s %-9s %8s %8s %8s %8s %9s %12s %7s %8s\n", "stitches", "", "reading", "working", "layout",
              "SVG", "PNG", "text to SVG", "ratio", "bytes");
  for (const bool typed_out : {false, true})
    for (const int k : {5, 16, 50}) measure(k, typed_out);
}
