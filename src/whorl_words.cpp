#include "drawing/wording_file.hpp"
#include "whorl.hpp"
#include "words/vocabulary.hpp"
#include "words/vocabulary_file.hpp"

namespace whorl {

namespace {

void add_sheet(const WordFile& file, std::vector<std::string>& problems) {
  drawing::WordingReading reading = drawing::read_wording(file.text);
  if (!reading.problem.empty()) {
    problems.push_back(file.name + ": " + reading.problem);
    return;
  }
  for (const std::string& id : drawing::missing_texts(reading.wording, *drawing::find_wording("en")))
    problems.push_back(file.name + ": has no text \"" + id + "\"");
  drawing::add_wordings({std::move(reading)});
}

} // namespace

std::vector<std::string> add_words(const std::vector<WordFile>& files) {
  std::vector<std::string> problems;
  std::vector<words::VocabularyFile> vocabularies;
  for (const WordFile& file : files) {
    if (drawing::has_wording(file.text)) add_sheet(file, problems);
    vocabularies.push_back({file.name, file.text});
  }
  std::vector<words::FileFault> faults;
  words::add_vocabularies(words::read_more_vocabulary_files(vocabularies, *words::find_vocabulary("en-US"),
                                                            words::find_vocabulary, faults));
  for (const words::FileFault& fault : faults) problems.push_back(fault.file + ": " + fault.message);
  return problems;
}

std::string language_of(std::string_view tag) { return std::string(words::closest_language(tag)); }

} // namespace whorl
