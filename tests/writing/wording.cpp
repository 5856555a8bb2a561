#include "writing/wording.hpp"

#include "writing/named.hpp"

#include <catch2/catch.hpp>

#include <fstream>
#include <iterator>
#include <map>

namespace wording {
namespace {

/// `<text id="…">words</text>`, a line each.
std::map<std::string, std::string> read_words() {
  std::ifstream file(std::string(WHORL_SOURCE_DIR) + "/symbols/words/sheet-en.xml");
  std::map<std::string, std::string> words;
  const std::string open = "<text id=\"";
  for (std::string line; std::getline(file, line);) {
    const std::size_t at = line.find(open), id_end = line.find("\">"), end = line.find("</text>");
    if (at == std::string::npos || end == std::string::npos) continue;
    words[line.substr(at + open.size(), id_end - at - open.size())] =
        line.substr(id_end + 2, end - id_end - 2);
  }
  return words;
}

void fill(std::string& words, const std::vector<std::string>& with) {
  for (std::size_t i = 0; i < with.size(); ++i) {
    const std::string gap = "{" + std::to_string(i + 1) + "}";
    for (std::size_t at = words.find(gap); at != std::string::npos; at = words.find(gap, at + with[i].size()))
      words.replace(at, gap.size(), with[i]);
  }
}

} // namespace

writing::Say english(const std::string& language) {
  static const std::map<std::string, std::string> words = read_words();
  return [language](std::string_view id, const std::vector<std::string>& with) {
    auto found = words.find(std::string(id) + "@" + language);
    if (found == words.end()) found = words.find(std::string(id));
    if (found == words.end()) return std::string(id);
    std::string text = found->second;
    fill(text, with);
    return text;
  };
}

pattern::Tree tree_of(const std::string& text) {
  const pattern::Source source(text);
  return pattern::read(source, *words::find_vocabulary("en-US")).tree;
}

const words::Vocabulary& terms_of(const pattern::Tree& tree) {
  return *words::find_vocabulary(tree.language);
}

std::vector<writing::ToldStitch> told(const std::string& text, const std::string& name) {
  const pattern::Tree tree = tree_of(text);
  std::vector<writing::Used> used = writing::used_stitches(tree);
  if (!name.empty())
    used = writing::named(used, tree, name, terms_of(tree), *words::find_vocabulary("en-US"),
                          english(tree.language));
  std::vector<writing::ToldStitch> all;
  for (const writing::Used& one : used)
    all.push_back(writing::tell(one, tree, terms_of(tree), english(tree.language)));
  return all;
}

std::vector<std::string> sentences(const std::string& text, const std::string& name) {
  const std::vector<writing::ToldStitch> all = told(text, name);
  REQUIRE(all.size() == 1);
  std::vector<std::string> lines;
  for (const writing::ToldMove& move : all.front().moves) lines.push_back(move.sentence);
  return lines;
}

} // namespace wording
