#include "drawing/marks.hpp"
#include "drawing/symbol.hpp"
#include "fabric/work.hpp"
#include "layout/place.hpp"
#include "pattern/read.hpp"
#include "whorl.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>

namespace fs = std::filesystem;
using namespace whorl;

// A case is a folder with a pattern.txt, which says in words what to look at, and a golden for each stage. A
// golden that differs fails; with WHORL_REWRITE=1 in the environment goldens are written anew, to be looked
// at before they are committed.

namespace {

std::string whole(const fs::path& path) {
  std::ifstream stream(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

std::vector<fs::path> cases() {
  std::vector<fs::path> folders;
  for (const auto& entry : fs::directory_iterator(fs::path(WHORL_TESTS_DIR) / "cases"))
    if (entry.is_directory()) folders.push_back(entry.path());
  std::sort(folders.begin(), folders.end());
  return folders;
}

std::string findings_of(const Pattern& pattern) {
  std::string text;
  for (const Finding& finding : pattern.findings()) text += finding.shown;
  return text;
}

void compare(const fs::path& golden, const std::string& made) {
  INFO(golden);
  if (std::getenv("WHORL_REWRITE") != nullptr) std::ofstream(golden, std::ios::binary) << made;
  CHECK(whole(golden) == made);
  CHECK(made.size() < 20 * 1024);
}

} // namespace

TEST_CASE("every case is read, worked, placed and drawn as its goldens show") {
  for (const fs::path& folder : cases()) {
    const std::string text = whole(folder / "pattern.txt");
    const pattern::Read read = pattern::read(pattern::Source(text), *words::find_vocabulary("en-US"));
    const fabric::Fabric fabric = fabric::work(read.tree).fabric;
    const layout::Extents extents = drawing::extents_of(fabric, drawing::built_in_marks());
    const Pattern pattern = whorl::read(text);
    compare(folder / "tree.txt", pattern::show(read.tree));
    compare(folder / "fabric.txt", fabric::show(fabric));
    compare(folder / "boxes.txt", layout::show(fabric, layout::place(fabric, extents, {})));
    compare(folder / "findings.txt", findings_of(pattern));
    ChartOptions options;
    options.legend = false;
    compare(folder / "chart.svg", pattern.chart(options).svg());
  }
}

TEST_CASE("a case has at most sixty stitches") {
  for (const fs::path& folder : cases()) {
    const pattern::Read read =
        pattern::read(pattern::Source(whole(folder / "pattern.txt")), *words::find_vocabulary("en-US"));
    CHECK(fabric::work(read.tree).fabric.stitches.size() <= 60);
  }
}
