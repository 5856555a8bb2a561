#include "pattern/label_head.hpp"

#include "words/ascii.hpp"

namespace whorl::pattern {

using words::Concept;
using words::ConceptClass;
using words::is_folded_letter;
using words::Word;
using words::WordKind;

namespace {

constexpr std::size_t longest_label = 96; ///< bytes of a line's head that are looked at

std::string_view head_of(std::string_view text) {
  std::size_t end = std::min(text.size(), longest_label);
  while (end < text.size() && end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) --end;
  return text.substr(0, end);
}

} // namespace

ConceptClass sort_of(const Head& head, const Word& word) {
  if (word.kind != WordKind::phrase || word.means >= head.vocabulary.concepts.size())
    return ConceptClass::word;
  return head.vocabulary.concepts[word.means].sort;
}

Head head_of(std::string_view text, std::uint32_t begin, const words::Vocabulary& vocabulary) {
  const auto find = [&](const char* name) { return words::find_concept(vocabulary, name); };
  Head head{vocabulary,
            words::fold(head_of(text), begin),
            {},
            find("round"),
            find("row"),
            find("to"),
            find("in"),
            find("and"),
            find("next"),
            find("last"),
            find("first"),
            find("times"),
            find("step"),
            find("ordinal"),
            find("from"),
            find("between")};
  head.lattice = words::lattice(head.line, vocabulary);
  return head;
}

std::size_t pass_blanks(const Head& head, std::size_t place) {
  while (place < head.line.text.size() && head.line.text[place] == ' ') ++place;
  return place;
}

bool is_end(const Head& head, std::size_t place) { return pass_blanks(head, place) >= head.line.text.size(); }

const Word* phrase_at(const Head& head, std::size_t place, Concept means) {
  if (means == words::no_concept) return nullptr;
  return find_word(head, place,
                   [=](const Word& w) { return w.kind == WordKind::phrase && w.means == means; });
}

char mark_at(const Head& head, std::size_t place) {
  const Word* mark = find_word(head, place, [](const Word& w) { return w.kind == WordKind::mark; });
  return mark == nullptr ? '\0' : mark->mark;
}

std::size_t pass_closing(const Head& head, std::size_t place, std::string_view marks) {
  std::size_t at = pass_blanks(head, place);
  bool closed = false;
  for (int i = 0; i < 2 && at < head.line.text.size(); ++i) {
    const char mark = mark_at(head, at);
    if (mark == '\0' || marks.find(mark) == std::string_view::npos) break;
    if (mark == '/' && head.line.text.substr(at + 1, 1) != " ") break; // "1/ 6 sc", and no "1/2"
    closed = true;
    ++at;
  }
  return closed ? at : place;
}

std::size_t letters_behind(const Head& head, std::size_t place) {
  std::size_t end = place;
  while (end < head.line.text.size() && is_folded_letter(head.line.text[end])) ++end;
  return end;
}

bool works_at(const Head& head, std::size_t place) {
  return find_word(head, place, [&](const Word& w) {
           const ConceptClass sort = sort_of(head, w);
           return sort == ConceptClass::stitch || sort == ConceptClass::decrease ||
                  (w.kind == WordKind::phrase && head.vocabulary.concepts[w.means].name == "increase");
         }) != nullptr;
}

bool is_round_word(const Head& head, std::size_t place) {
  return phrase_at(head, place, head.round) != nullptr || phrase_at(head, place, head.row) != nullptr;
}

std::size_t pass_ordinal_lead(const Head& head, std::size_t place) {
  const Word* lead = head.vocabulary.blanks_between_words ? nullptr : phrase_at(head, place, head.ordinal);
  return lead == nullptr ? place : lead->end;
}

} // namespace whorl::pattern
