#include "cli/files.hpp"

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <memory>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>
#include <vector>

namespace whorl::cli {
namespace {

namespace fs = std::filesystem;

struct Closer {
  void operator()(std::FILE* file) const { std::fclose(file); }
};
using File = std::unique_ptr<std::FILE, Closer>;

/// More than this no pattern has; a device that never ends must not fill the memory.
constexpr std::size_t most_bytes = 64u << 20;

bool read_all(std::FILE* file, std::string& text) {
  std::vector<char> buffer(1u << 16);
  while (text.size() <= most_bytes) {
    const std::size_t got = std::fread(buffer.data(), 1, buffer.size(), file);
    text.append(buffer.data(), got);
    if (got < buffer.size()) break;
  }
  return std::ferror(file) == 0;
}

std::string because(std::string_view what, const std::string& path) {
  return std::string(what) + " " + path + ": " + std::strerror(errno);
}

bool is_folder(const std::string& path) {
  std::error_code error;
  return fs::is_directory(path, error);
}

bool write_all(int descriptor, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t wrote = ::write(descriptor, bytes.data(), bytes.size());
    if (wrote < 0 && errno == EINTR) continue;
    if (wrote <= 0) return false;
    bytes.remove_prefix(static_cast<std::size_t>(wrote));
  }
  return true;
}

bool write_to(std::FILE* stream, std::string_view bytes) {
  return std::fflush(stream) == 0 && write_all(fileno(stream), bytes);
}

/// A device or a pipe cannot be replaced by renaming; it is written as it stands.
bool write_in_place(const std::string& path, std::string_view bytes) {
  const File file(std::fopen(path.c_str(), "wb"));
  return file != nullptr && write_to(file.get(), bytes);
}

bool write_aside(const std::string& path, std::string_view bytes) {
  std::error_code error;
  const fs::path resolved = fs::weakly_canonical(path, error);
  const std::string target = error ? path : resolved.string();
  std::string aside = target + ".XXXXXX";
  const int descriptor = ::mkstemp(aside.data());
  if (descriptor < 0) return false;
  const mode_t mask = ::umask(0);
  ::umask(mask);
  bool whole =
      write_all(descriptor, bytes) && ::fchmod(descriptor, 0666 & ~mask) == 0 && ::fsync(descriptor) == 0;
  whole = ::close(descriptor) == 0 && whole;
  if (whole && std::rename(aside.c_str(), target.c_str()) == 0) return true;
  const int reason = errno;
  ::unlink(aside.c_str());
  errno = reason;
  return false;
}

bool is_special(const std::string& path) {
  std::error_code error;
  const fs::file_status status = fs::status(path, error);
  return !error && fs::exists(status) && !fs::is_regular_file(status);
}

} // namespace

bool read_file(const std::string& path, std::string& text, std::string& problem) {
  if (path == "-") {
    if (read_all(stdin, text)) return true;
    problem = because("cannot read", "standard input");
    return false;
  }
  if (is_folder(path)) {
    problem = "cannot read " + path + ": it is a folder, not a pattern";
    return false;
  }
  const File file(std::fopen(path.c_str(), "rb"));
  if (file != nullptr && read_all(file.get(), text)) return true;
  problem = because("cannot read", path);
  return false;
}

bool write_file(const std::string& path, std::string_view bytes, std::string& problem) {
  if (path != "-" && is_folder(path)) {
    problem = "cannot write " + path + ": it is a folder; name a file in it";
    return false;
  }
  const bool wrote = path == "-"        ? write_to(stdout, bytes)
                     : is_special(path) ? write_in_place(path, bytes)
                                        : write_aside(path, bytes);
  if (!wrote) problem = because("cannot write", path == "-" ? "standard output" : path);
  return wrote;
}

std::vector<std::string> files_in(const std::string& folder, std::string_view ending, std::string& problem) {
  std::vector<std::string> files;
  std::error_code error;
  for (fs::directory_iterator at(folder, error), last; !error && at != last; at.increment(error))
    if (at->path().extension() == ending) files.push_back(at->path().string());
  if (error) problem = "cannot read the folder " + folder + ": " + error.message();
  std::sort(files.begin(), files.end());
  return files;
}

bool same_file(const std::string& a, const std::string& b) {
  std::error_code error;
  return fs::equivalent(a, b, error) && !error;
}

void complain(std::string_view problem) {
  std::fprintf(stderr, "whorl: %.*s\n", static_cast<int>(problem.size()), problem.data());
}

} // namespace whorl::cli
