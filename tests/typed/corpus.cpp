#include "corpus.hpp"

#include "words/vocabulary_file.hpp"

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>

namespace typed {
namespace {

constexpr const char* title_mark = "=== ";
constexpr const char* figures_mark = ">>>";

Meant meant_in(const std::string& line) {
  Meant meant;
  std::istringstream in(line.substr(0, line.find('{')));
  std::string range, uses, makes;
  in >> range >> uses >> makes;
  const std::size_t dash = range.find('-', 1);
  meant.from = std::stoi(range.substr(0, dash));
  meant.to = dash == std::string::npos ? meant.from : std::stoi(range.substr(dash + 1));
  if (uses != "-") meant.uses = std::stoll(uses);
  if (makes != "-") meant.makes = std::stoll(makes);
  return meant;
}

/// "{bo 6, sl st 3}".
std::vector<Some> some_in(const std::string& line) {
  std::vector<Some> all;
  const std::size_t open = line.find('{');
  if (open == std::string::npos) return all;
  std::istringstream in(line.substr(open + 1, line.find('}') - open - 1));
  for (std::string item; std::getline(in, item, ',');) {
    const std::size_t blank = item.rfind(' ');
    const std::size_t first = item.find_first_not_of(' ');
    all.push_back(
        {item.substr(first, blank - first), static_cast<std::uint32_t>(std::stoul(item.substr(blank)))});
  }
  return all;
}

void add_figures(Case& one, const std::string& line) {
  if (line.find_first_not_of(" \r\t") == std::string::npos) return;
  one.meant.push_back(meant_in(line));
  one.meant.back().some = some_in(line);
}

std::vector<Case> read_file(const std::filesystem::path& path) {
  std::vector<Case> cases;
  std::ifstream file(path);
  bool figures = false;
  for (std::string line; std::getline(file, line);) {
    if (line.rfind(title_mark, 0) == 0) {
      cases.push_back({path.filename().string(), line.substr(4), {}, {}});
      figures = false;
    } else if (cases.empty()) {
      continue;
    } else if (line.rfind(figures_mark, 0) == 0) {
      figures = true;
    } else if (figures) {
      add_figures(cases.back(), line);
    } else {
      cases.back().pattern += line + "\n";
    }
  }
  return cases;
}

/// The folder of the halves; another one may be judged by naming it in WHORL_TYPED.
std::string folder() {
  const char* other = std::getenv("WHORL_TYPED");
  return other != nullptr ? other : std::string(WHORL_TESTS_DIR) + "/typed";
}

} // namespace

std::vector<std::string> languages_of_corpora() {
  std::vector<std::string> tags;
  const std::filesystem::path languages = folder() + "/languages";
  if (!std::filesystem::exists(languages)) return tags;
  for (const auto& entry : std::filesystem::directory_iterator(languages))
    tags.push_back(entry.path().filename().string());
  std::sort(tags.begin(), tags.end());
  return tags;
}

void add_words_of_corpus() {
  const char* folder = std::getenv("WHORL_WORDS");
  if (folder == nullptr) return;
  std::vector<whorl::words::VocabularyFile> files;
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    std::ifstream file(entry.path(), std::ios::binary);
    const std::string text{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
    if (entry.path().extension() == ".xml" && text.find("<words") != std::string::npos)
      files.push_back({entry.path().filename().string(), text});
  }
  std::vector<whorl::words::FileFault> faults;
  whorl::words::add_vocabularies(whorl::words::read_more_vocabulary_files(
      files, *whorl::words::find_vocabulary("en-US"), whorl::words::find_vocabulary, faults));
}

std::string language_of_corpus() {
  const char* named = std::getenv("WHORL_LANGUAGE");
  return named != nullptr ? named : "";
}

std::vector<Case> read_half(const std::string& half) {
  std::vector<std::filesystem::path> files;
  const std::filesystem::path typists = folder() + "/" + half;
  if (!std::filesystem::exists(typists)) return {}; // all of a language's typists have been looked at
  for (const auto& entry : std::filesystem::directory_iterator(typists))
    files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  std::vector<Case> all;
  for (const auto& path : files) {
    std::vector<Case> cases = read_file(path);
    all.insert(all.end(), cases.begin(), cases.end());
  }
  return all;
}

} // namespace typed
