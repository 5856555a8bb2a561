#include "drawing/wording_file.hpp"

#include "drawing/literal.hpp"

#include <pugixml.hpp>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <iterator>

namespace whorl::drawing {
namespace {

/// Without blanks at either end; a line end within counts as a blank.
std::string trimmed(std::string_view text) {
  std::string out;
  for (const char c : text) {
    const bool blank = c == ' ' || c == '\n' || c == '\r' || c == '\t';
    if (!blank)
      out += c;
    else if (!out.empty() && out.back() != ' ')
      out += ' ';
  }
  if (!out.empty() && out.back() == ' ') out.pop_back();
  return out;
}

void append_texts(std::string& out, const Wording& wording, std::size_t number) {
  out += "constexpr WordingText texts_" + std::to_string(number) + "[] = {\n";
  for (const auto& entry : wording) {
    out += "    {";
    append_quoted(out, entry.first);
    out += ", ";
    append_quoted(out, entry.second);
    out += "},\n";
  }
  out += "};\n";
}

constexpr const char* table_head = "// Made from symbols/words/sheet-*.xml while building.\n"
                                   "#include \"drawing/wording_file.hpp\"\n\n"
                                   "namespace whorl::drawing {\nnamespace {\n";

} // namespace

WordingReading read_wording(std::string_view xml) {
  WordingReading reading;
  pugi::xml_document document;
  const bool loaded = static_cast<bool>(document.load_buffer(xml.data(), xml.size()));
  const pugi::xml_node of_language = document.child("language").child("sheet");
  const pugi::xml_node sheet = of_language ? of_language : document.child("sheet");
  if (!loaded || !sheet) {
    reading.problem = "it is no list of sheet words";
    return reading;
  }
  reading.language = sheet.attribute("language").value();
  if (reading.language.empty()) reading.problem = "it names no language";
  for (const pugi::xml_node& text : sheet.children("text")) {
    const std::string id = text.attribute("id").value();
    if (!reading.wording.emplace(id, trimmed(text.child_value())).second)
      reading.problem = "it has two texts called \"" + id + "\"";
  }
  return reading;
}

bool has_wording(std::string_view xml) { return xml.find("<sheet") != std::string_view::npos; }

std::vector<WordingReading> with_dialects(const WordingReading& reading) {
  std::vector<WordingReading> all{{reading.language, {}, {}}};
  std::map<std::string, Wording, std::less<>> own;
  for (const auto& [id, text] : reading.wording) {
    const std::size_t at = id.find('@');
    (at == std::string::npos ? all.front().wording[id] : own[id.substr(at + 1)][id.substr(0, at)]) = text;
  }
  for (auto& [dialect, wording] : own) {
    wording.insert(all.front().wording.begin(), all.front().wording.end());
    all.push_back({dialect, std::move(wording), {}});
  }
  return all;
}

std::string wording_table(const std::vector<WordingReading>& wordings) {
  std::string out = table_head, tables;
  std::size_t number = 0;
  for (const WordingReading& reading : wordings)
    for (const WordingReading& dialect : with_dialects(reading)) {
      append_texts(out, dialect.wording, number);
      tables += "    {";
      append_quoted(tables, dialect.language);
      tables += ", texts_" + std::to_string(number) + ", " + std::to_string(dialect.wording.size()) + "},\n";
      ++number;
    }
  return out + "} // namespace\n\nextern const WordingTable wording_tables[] = {\n" + tables +
         "};\nextern const std::size_t wording_table_count = " + std::to_string(number) +
         ";\n\n} // namespace whorl::drawing\n";
}

namespace {

/// Whether every language has all texts that English has; what is missing is said.
bool are_complete(const std::vector<WordingReading>& wordings) {
  bool complete = true;
  const auto english = std::find_if(wordings.begin(), wordings.end(),
                                    [](const WordingReading& one) { return one.language == "en"; });
  if (english == wordings.end()) return true;
  for (const WordingReading& one : wordings)
    for (const auto& [id, text] : english->wording) {
      if (id.find('@') != std::string::npos || may_be_missing(id) || one.wording.count(id) > 0) continue;
      std::cerr << "the words of the sheet in " << one.language << " lack \"" << id << "\"\n";
      complete = false;
    }
  return complete;
}

} // namespace

int write_wording_table(const std::string& out, const std::vector<std::string>& files) {
  std::vector<WordingReading> wordings;
  for (const std::string& path : files) {
    std::ifstream file(path, std::ios::binary);
    const std::string xml{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
    if (!has_wording(xml)) continue;
    wordings.push_back(read_wording(xml));
    if (wordings.back().problem.empty()) continue;
    std::cerr << path << ": " << wordings.back().problem << '\n';
    return EXIT_FAILURE;
  }
  if (!are_complete(wordings)) return EXIT_FAILURE;
  std::ofstream file(out, std::ios::binary);
  file << wording_table(wordings);
  return file.flush() ? EXIT_SUCCESS : EXIT_FAILURE;
}

} // namespace whorl::drawing
