#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <string>
#include <vector>

namespace fs = std::filesystem;

namespace {

using Rooms = std::set<std::string>;

/// What a room may include besides itself. Data flows one way, and no room knows a later one.
const std::map<std::string, Rooms> may_include = {
    {"words", {}},
    {"stitch", {}},
    {"pattern", {"words", "stitch"}},
    {"fabric", {"pattern", "stitch"}},
    {"writing", {"words", "stitch", "pattern", "fabric"}},
    {"layout", {"fabric"}},
    {"drawing", {"words", "layout", "fabric"}},
    {"paint", {"drawing"}},
};

const fs::path source = fs::path(WHORL_SOURCE_DIR) / "src";

std::vector<fs::path> files_of(const fs::path& folder) {
  std::vector<fs::path> files;
  for (const auto& entry : fs::recursive_directory_iterator(folder))
    if (entry.is_regular_file()) files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  return files;
}

std::vector<std::string> includes_of(const fs::path& file, const std::regex& form) {
  std::vector<std::string> found;
  std::ifstream stream(file);
  std::smatch match;
  for (std::string line; std::getline(stream, line);)
    if (std::regex_search(line, match, form)) found.push_back(match[1]);
  return found;
}

const std::regex own_include{R"(^\s*#include\s+"([^"]+)\")"};
const std::regex any_include{R"(^\s*#include\s+["<]([^">]+)[">])"};

std::string room_of(const std::string& include) { return include.substr(0, include.find('/')); }

} // namespace

TEST_CASE("every room of the design is there") {
  for (const auto& room : may_include) CHECK(fs::is_directory(source / room.first));
}

TEST_CASE("no room includes a room that comes after it") {
  for (const auto& [room, allowed] : may_include)
    for (const fs::path& file : files_of(source / room))
      for (const std::string& include : includes_of(file, own_include)) {
        INFO(file << " includes " << include);
        CHECK((room_of(include) == room || allowed.count(room_of(include)) == 1));
      }
}

TEST_CASE("the command includes the two public headers and its own files only") {
  for (const fs::path& file : files_of(source / "cli"))
    for (const std::string& include : includes_of(file, own_include)) {
      INFO(file << " includes " << include);
      CHECK((room_of(include) == "cli" || include == "whorl.hpp" || include == "whorl_paint.hpp"));
    }
}

TEST_CASE("only the painter names Cairo and Pango") {
  for (const fs::path& file : files_of(source))
    for (const std::string& include : includes_of(file, any_include)) {
      INFO(file << " includes " << include);
      const bool paints =
          include.find("cairo") != std::string::npos || include.find("pango") != std::string::npos;
      CHECK((!paints || file.parent_path().filename() == "paint"));
    }
}

TEST_CASE("the public headers include the standard library and one another only") {
  for (const char* header : {"whorl.hpp", "whorl_paint.hpp"})
    for (const std::string& include : includes_of(source / header, own_include))
      CHECK(include == "whorl.hpp");
}
