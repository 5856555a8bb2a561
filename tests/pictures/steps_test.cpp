#include "paint/owned.hpp"
#include "pictures/floor.hpp"
#include "pictures/touching.hpp"
#include "whorl_paint.hpp"

#include <catch2/catch.hpp>

#include <poppler.h>

#include <algorithm>
#include <fstream>
#include <iterator>

using namespace whorl;

namespace {

const char* const examples[] = {"acorn", "bear",     "beechnut", "beetle", "bellflower", "fox",
                                "gnome", "hazelnut", "hedgehog", "mouse",  "snail",      "toadstool"};
constexpr StepShape shapes[] = {StepShape::wide, StepShape::tall, StepShape::square};

/// Drawn on 27 November 2026 by `od -An -N4 -tu4 /dev/urandom`, after the last change of a constant of the
/// steps; whoever changes one draws anew.
constexpr std::uint64_t first_by_chance = 1744969734;

Pattern example(const std::string& name) {
  std::ifstream file(std::string(WHORL_SOURCE_DIR) + "/examples/" + name + ".txt", std::ios::binary);
  return read(std::string(std::istreambuf_iterator<char>(file), {}));
}

/// Looks at every picture that a pattern has in a shape.
void look_at(const Pattern& pattern, StepOptions options) {
  const Steps steps = pattern.steps(options);
  for (std::size_t step = 0; step < steps.count(); ++step) {
    const auto contacts = pictures::touching_besides_loops(steps.scene(step));
    INFO(steps.name(step) << " in shape " << static_cast<int>(options.shape) << '\n'
                          << pictures::show(contacts));
    CHECK(contacts.empty());
  }
}

void look_at(pictures::Shape form, std::uint64_t first, std::uint64_t many) {
  for (std::uint64_t seed = first; seed < first + many; ++seed) {
    const std::string text = pictures::pattern_by_chance(form, seed);
    INFO(pictures::name(form) << ' ' << seed << '\n' << text);
    const Pattern pattern = read(text);
    REQUIRE(pattern.can_be_drawn());
    StepOptions options;
    options.shape = shapes[seed % 3];
    options.left_handed = seed % 4 == 0;
    look_at(pattern, options);
  }
}

} // namespace

TEST_CASE("nothing touches on the steps of the examples, in any shape") {
  for (const char* name : examples)
    for (const StepShape shape : shapes) {
      INFO(name);
      StepOptions options;
      options.shape = shape;
      look_at(example(name), options);
    }
}

TEST_CASE("nothing touches on the steps of patterns of every form by chance") {
  for (const pictures::Shape form : pictures::all_shapes) look_at(form, first_by_chance, 6);
}

TEST_CASE("nothing touches on pictures of each stitch, in any shape") {
  StepOptions options;
  options.each_stitch = true;
  options.first_round = 1, options.last_round = 3;
  for (const StepShape shape : shapes) {
    options.shape = shape;
    look_at(example("acorn"), options);
    for (const pictures::Shape form : pictures::all_shapes)
      look_at(read(pictures::pattern_by_chance(form, first_by_chance)), options);
  }
}

TEST_CASE("the PDF of steps has a page for each, with its words as text, no larger than a turned A4") {
  const Steps steps = example("acorn").steps();
  const std::string bytes = pdf(steps).bytes;
  const paint::Owned<GBytes, g_bytes_unref> data{g_bytes_new(bytes.data(), bytes.size())};
  const paint::Owned<PopplerDocument, g_object_unref> document{
      poppler_document_new_from_bytes(data.get(), nullptr, nullptr)};
  REQUIRE(document);
  REQUIRE(poppler_document_get_n_pages(document.get()) == static_cast<int>(steps.count()));
  for (std::size_t i = 0; i < steps.count(); ++i) {
    const paint::Owned<PopplerPage, g_object_unref> page{
        poppler_document_get_page(document.get(), static_cast<int>(i))};
    double width = 0, height = 0;
    poppler_page_get_size(page.get(), &width, &height);
    CHECK(width <= 842);
    CHECK(height <= 595);
    const paint::Owned<char, g_free> text{poppler_page_get_text(page.get())};
    if (i > 0 && steps.name(i).find("start") == std::string::npos)
      CHECK_THAT(std::string(text.get()), Catch::Contains("stitches"));
  }
}

namespace {

/// Drawn on 27 November 2026 by `od -An -N4 -tu4 /dev/urandom`, after the last change of a constant of layout
/// or drawing; whoever changes one draws anew.
constexpr std::uint64_t first_of_many = 2215309753;

} // namespace

TEST_CASE("nothing touches on the steps of many patterns of every form by chance", "[.thousand]") {
  for (const pictures::Shape form : pictures::all_shapes) look_at(form, first_of_many, 60);
}
