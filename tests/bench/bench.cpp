// What a stitch costs from text to bytes, beside pugixml alone writing as many <use> and Cairo alone painting
// the same sheet, in the same run.
#include "languages.hpp"
#include "plain_page.hpp"
#include "subjects.hpp"

#include "drawing/sheet.hpp"
#include "fabric/work.hpp"
#include "layout/place.hpp"
#include "pattern/read.hpp"
#include "whorl.hpp"
#include "whorl_paint.hpp"

#include <pugixml.hpp>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <functional>
#include <sstream>
#include <string>

namespace {

constexpr double most_dots_a_side = 4000;

/// The least of several runs, in microseconds of the processor's time: other work on the machine is not
/// counted.
double microseconds(int runs, const std::function<void()>& work) {
  double least = 1e300;
  for (int i = 0; i < runs; ++i) {
    const std::clock_t start = std::clock();
    work();
    least = std::min(least, static_cast<double>(std::clock() - start) * 1e6 / CLOCKS_PER_SEC);
  }
  return least;
}

/// The same by the clock on the wall: what several processors do at once is waited for only once.
double waited(int runs, const std::function<void()>& work) {
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

/// What one subject of one size costs; times in microseconds a stitch.
struct Cost {
  double stitches = 0, reading = 0, working = 0, layout = 0, svg = 0, whole = 0, bytes = 0;
  double to_pugixml = 0;        ///< text to SVG, as a ratio
  double png = 0, to_plain = 0; ///< and the ratio to the plain page
  double pdf = 0;
};

/// Every stitch drawn: folded rounds would cost nothing.
whorl::ChartOptions unfolded() {
  whorl::ChartOptions options;
  options.fold = false;
  return options;
}

void measure_rooms(Cost& cost, const std::string& text, int runs) {
  const whorl::words::Vocabulary* vocabulary = whorl::words::find_vocabulary("en-US");
  const whorl::pattern::Source source(text);
  whorl::pattern::Read read;
  whorl::fabric::Worked worked;
  cost.reading = microseconds(runs, [&] { read = whorl::pattern::read(source, *vocabulary); });
  cost.working = microseconds(runs, [&] { worked = whorl::fabric::work(read.tree); });
  const auto extents = whorl::drawing::extents_of(worked.fabric, whorl::drawing::built_in_marks());
  whorl::layout::Page page;
  page.fold = false;
  cost.layout = microseconds(runs, [&] { whorl::layout::place(worked.fabric, extents, page); });
  cost.stitches = static_cast<double>(worked.fabric.stitches.size());
}

void measure_bytes(Cost& cost, const std::string& text, int runs) {
  const whorl::Chart chart = whorl::read(text).chart(unfolded());
  std::string svg;
  cost.svg = microseconds(runs, [&] { svg = chart.svg(); });
  cost.whole = microseconds(runs, [&] { svg = whorl::read(text).chart(unfolded()).svg(); });
  cost.bytes = static_cast<double>(svg.size());
  cost.to_pugixml =
      cost.whole / microseconds(runs, [&] { uses_alone(static_cast<std::size_t>(cost.stitches)); });
  const double fits = most_dots_a_side * 25.4 / std::max(chart.width(), chart.height());
  const double dots = std::min(200.0, fits);
  cost.png = waited(std::min(runs, 5), [&] { whorl::png(chart, dots); });
  cost.to_plain = cost.png / waited(std::min(runs, 5), [&] { plain_page(chart.scene(), dots); });
  cost.pdf = microseconds(std::min(runs, 3), [&] { whorl::pdf(chart); });
}

Cost measure(const std::string& text, int runs) {
  Cost cost;
  measure_rooms(cost, text, runs);
  measure_bytes(cost, text, runs);
  for (double* each : {&cost.reading, &cost.working, &cost.layout, &cost.svg, &cost.whole, &cost.bytes,
                       &cost.png, &cost.pdf})
    *each /= cost.stitches;
  return cost;
}

void print(const char* name, const Cost& cost) {
  std::printf("%-10s %8.0f %8.3f %8.3f %8.3f %8.3f %8.3f %7.2f %8.0f %8.3f %7.2f %8.3f\n", name,
              cost.stitches, cost.reading, cost.working, cost.layout, cost.svg, cost.whole, cost.to_pugixml,
              cost.bytes, cost.png, cost.to_plain, cost.pdf);
}

} // namespace

int main(int count, char** arguments) {
  const int sizes = count > 1 ? std::atoi(arguments[1]) : 4;
  const Subject subjects[] = {{"ball", ball, {5, 16, 50, 158}},
                              {"typed out", typed_out_ball, {5, 16, 50, 158}},
                              {"wall", wall, {3, 10, 32, 100}},
                              {"tall", tall, {7, 22, 70, 223}}};
  std::printf(
      "microseconds a stitch; text to SVG whole, and its ratio to pugixml alone; bytes of SVG a stitch;\n"
      "PNG, and its ratio to a plain Cairo page; PDF\n");
  std::printf("%-10s %8s %8s %8s %8s %8s %8s %7s %8s %8s %7s %8s\n", "", "stitches", "reading", "working",
              "layout", "SVG", "whole", "ratio", "bytes", "PNG", "ratio", "PDF");
  for (const Subject& subject : subjects) {
    double at_3000 = 0, last = 0;
    for (int i = 0; i < std::min(sizes, 4); ++i) {
      const Cost cost = measure(subject.text(subject.sizes[i]), i == 0 ? 50 : i == 1 ? 20 : i == 2 ? 5 : 3);
      print(subject.name, cost);
      if (i == 1) at_3000 = cost.whole;
      last = cost.whole;
    }
    if (sizes > 2)
      std::printf("%-10s a stitch of the largest costs %.2f of one at 3 000\n", subject.name, last / at_3000);
  }
  measure_languages();
}
