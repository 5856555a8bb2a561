#include "command/run.hpp"

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdlib.h>
#include <sys/wait.h>

namespace fs = std::filesystem;

namespace {

/// Made at the start, removed at the end.
struct Folder {
  std::string path = "/tmp/whorl-command-XXXXXX";
  Folder() {
    if (::mkdtemp(path.data()) == nullptr) std::abort();
    fs::create_directory(path + "/work");
  }
  ~Folder() { fs::remove_all(path); }
};

const Folder& home() {
  static const Folder made;
  return made;
}

std::string quoted(const std::string& word) {
  std::string text = "'";
  for (const char c : word) text += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return text + "'";
}

std::string whole(const std::string& path) {
  std::ifstream stream(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

} // namespace

const std::string& folder() {
  static const std::string path = home().path + "/work";
  return path;
}

Ran whorl(const std::vector<std::string>& words, const std::string& input) {
  const std::string aside = home().path;
  std::ofstream(aside + "/in", std::ios::binary) << input;
  std::string line = "cd " + quoted(folder()) + " && " + quoted(WHORL_COMMAND);
  for (const std::string& word : words) line += word == ">" || word == ">full" ? "" : " " + quoted(word);
  const bool full = !words.empty() && words.back() == ">full";
  line += " <" + quoted(aside + "/in") + " >" + (full ? "/dev/full" : quoted(aside + "/out")) + " 2>" +
          quoted(aside + "/err");
  const int status = std::system(line.c_str());
  return {WIFEXITED(status) ? WEXITSTATUS(status) : 128, full ? "" : whole(aside + "/out"),
          whole(aside + "/err")};
}

void write(const std::string& name, const std::string& text) {
  std::ofstream(folder() + "/" + name, std::ios::binary) << text;
}
std::string read(const std::string& name) { return whole(folder() + "/" + name); }
bool exists(const std::string& name) { return fs::exists(folder() + "/" + name); }

std::vector<std::string> files() {
  std::vector<std::string> names;
  for (const auto& entry : fs::directory_iterator(folder()))
    names.push_back(entry.path().filename().string());
  std::sort(names.begin(), names.end());
  return names;
}

void clear() {
  for (const auto& entry : fs::directory_iterator(folder())) fs::remove_all(entry.path());
}
