#include "pattern/speech.hpp"

#include <algorithm>

namespace whorl::pattern {

Speech listen(const Source& source, const words::Vocabulary& given) {
  Speech speech;
  speech.terms = find_terms(source, given);
  return speech;
}

void add_speech(Read& read, const Speech& speech) {
  auto& headers = read.tree.headers;
  headers.insert(headers.end(), speech.headers.begin(), speech.headers.end());
  std::stable_sort(headers.begin(), headers.end(),
                   [](const Header& a, const Header& b) { return a.span.begin < b.span.begin; });
  read.findings.insert(read.findings.end(), speech.findings.begin(), speech.findings.end());
  if (read.tree.rounds.empty()) return;
  if (const auto told = tell_terms(speech.terms)) read.findings.push_back(*told);
}

} // namespace whorl::pattern
