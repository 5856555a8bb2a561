#include "pattern/technique_told.hpp"

#include "pattern/limits.hpp"
#include "words/ascii.hpp"
#include "words/lattice.hpp"

#include <algorithm>
#include <optional>
#include <string>

namespace whorl::pattern {

namespace {

/// The vocabulary of such words in the language of a tag: "en-x-techniques" for "en-GB".
const words::Vocabulary* words_of(std::string_view language) {
  return words::find_vocabulary_of(language, "techniques");
}

std::optional<How> how_named(std::string_view concept_name) {
  static constexpr std::pair<std::string_view, How> all[] = {
      {"technique yarn under", How::yarn_under},   {"technique yarn over", How::yarn_over},
      {"technique inside out", How::inside_out},   {"technique over wire", How::over_wire},
      {"technique tightly", How::tightly},         {"technique loosely", How::loosely},
      {"technique two strands", How::two_strands}, {"technique between legs", How::between_legs}};
  for (const auto& [name, how] : all)
    if (name == concept_name) return how;
  return std::nullopt;
}

/// A stitch, a sort of stitches or a part that a sentence speaks of.
struct Subject {
  Of of = Of::all;
  stitch::KindId kind = stitch::no_kind;
  std::uint32_t part = every_part;
};

/// What stands in a sentence, in order: a word about techniques, a number or a subject.
struct Mark {
  std::uint32_t begin = 0, end = 0; ///< in the folded line
  std::string_view name;            ///< of a concept; "": none
  std::optional<How> how;
  std::uint32_t number = 0;
  std::optional<Subject> subject;
};
using Marks = std::vector<Mark>;

bool begins_word(std::string_view text, std::size_t at) {
  return at == 0 || !words::is_folded_letter(text[at - 1]);
}

/// The longest phrase of a vocabulary at a place, or a number.
const words::Word* longest_at(const words::Lattice& lattice, std::size_t at) {
  const words::Word* found = nullptr;
  for (auto i = lattice.at[at]; i < lattice.at[at + 1]; ++i) {
    const words::Word& word = lattice.words[i];
    const bool of_use = word.kind == words::WordKind::phrase || word.kind == words::WordKind::number;
    if (of_use && (found == nullptr || word.end > found->end)) found = &word;
  }
  return found;
}

/// Finds what one line says.
class LineReader {
public:
  LineReader(const words::Folded& line, const Tree& tree, const words::Vocabulary& vocabulary,
             const words::Vocabulary& techniques)
      : line_(line), tree_(tree), vocabulary_(vocabulary), techniques_(techniques),
        told_(words::lattice(line, techniques)) {}

  /// Most lines name none, and no more is looked at.
  bool names_any() const {
    return std::any_of(told_.words.begin(), told_.words.end(), [this](const words::Word& word) {
      return word.means != words::no_concept && how_named(techniques_.concepts[word.means].name);
    });
  }

  std::vector<Technique> read() {
    stitches_ = words::lattice(line_, vocabulary_);
    Marks sentence;
    for (std::size_t at = 0; at < line_.text.size();) {
      if (ends_sentence(at)) read_sentence(sentence), sentence.clear();
      const std::size_t next = take(at, sentence);
      at = std::max(next, at + 1);
    }
    read_sentence(sentence);
    return std::move(found_);
  }

  /// Whether the line says that it holds for every part.
  bool everywhere() const { return everywhere_; }

private:
  bool ends_sentence(std::size_t at) const {
    const char c = line_.text[at];
    if (c == ',' && is_entry(at + 1)) return true;
    return c == ';' || (c == '.' && (at + 1 == line_.text.size() || line_.text[at + 1] == ' '));
  }

  /// ", Y = yarn under sc": what follows is explained by itself.
  bool is_entry(std::size_t at) const {
    constexpr std::size_t longest = 20;
    const std::string_view next = std::string_view(line_.text).substr(at, longest);
    const std::size_t equals = next.find('=');
    return equals != std::string_view::npos && next.find_first_of(",;.") > equals;
  }

  std::size_t take(std::size_t at, Marks& sentence) {
    if (const words::Word* word = longest_at(told_, at)) {
      Mark mark{word->begin, word->end, {}, {}, word->number, {}};
      if (word->means != words::no_concept) mark.name = techniques_.concepts[word->means].name;
      mark.how = how_named(mark.name);
      sentence.push_back(mark);
      return word->end;
    }
    if (const auto mark = part_at(at)) return sentence.push_back(*mark), mark->end;
    if (const auto mark = stitch_at(at)) return sentence.push_back(*mark), mark->end;
    return at;
  }

  std::optional<Mark> part_at(std::size_t at) const {
    if (!begins_word(line_.text, at)) return std::nullopt;
    for (std::uint32_t part = 0; part < tree_.parts.size(); ++part) {
      std::string name = words::fold(tree_.parts[part].name).text;
      if (name.size() > 3 && name.back() == 's') name.pop_back(); // "each arm" of Arms
      if (name.size() < 3 || line_.text.compare(at, name.size(), name) != 0) continue;
      std::size_t end = at + name.size();
      if (end < line_.text.size() && line_.text[end] == 's') ++end;
      if (end < line_.text.size() && words::is_folded_letter(line_.text[end])) continue;
      return Mark{static_cast<std::uint32_t>(at),         static_cast<std::uint32_t>(end), {}, {}, 0,
                  Subject{Of::all, stitch::no_kind, part}};
    }
    return std::nullopt;
  }

  std::optional<Subject> subject_of(const words::Word& word) const {
    if (word.kind != words::WordKind::phrase) return std::nullopt;
    const words::ConceptEntry& means = vocabulary_.concepts[word.means];
    if (means.name == "increase") return Subject{Of::increases, stitch::no_kind, every_part};
    if (means.sort == words::ConceptClass::decrease)
      return Subject{Of::decreases, stitch::no_kind, every_part};
    if (means.sort != words::ConceptClass::stitch || means.name == "ch") return std::nullopt;
    const auto kind = stitch::find_kind(tree_.kinds, means.works.empty() ? means.name : means.works);
    if (!kind) return std::nullopt;
    return Subject{Of::kind, *kind, every_part};
  }

  std::optional<Mark> stitch_at(std::size_t at) const {
    std::optional<Mark> found;
    for (auto i = stitches_.at[at]; i < stitches_.at[at + 1]; ++i) {
      const words::Word& word = stitches_.words[i];
      if (found && word.end <= found->end) continue;
      if (const auto subject = subject_of(word)) found = Mark{word.begin, word.end, {}, {}, 0, subject};
    }
    return found;
  }

  static bool has(const Marks& marks, std::string_view name) {
    return std::any_of(marks.begin(), marks.end(), [name](const Mark& mark) { return mark.name == name; });
  }

  /// "not yarn over", "instead of yarn over".
  bool is_called_off(const Marks& marks, std::size_t i) const {
    constexpr std::uint32_t near = 16;
    if (i == 0 || marks[i - 1].name != "technique not" || marks[i].begin - marks[i - 1].end > near)
      return false;
    return line_.text.substr(marks[i - 1].end, marks[i].begin - marks[i - 1].end).find(',') ==
           std::string::npos;
  }

  /// The bare words "yarn over" are a way of working only beside the other one: alone they are a move.
  std::vector<std::size_t> ways_in(Marks& marks) const {
    std::vector<std::size_t> ways;
    bool under = false;
    for (const Mark& mark : marks) under = under || mark.how == How::yarn_under;
    const bool moves = has(marks, "moves told"), other = has(marks, "other doing");
    for (std::size_t i = 0; i < marks.size(); ++i) {
      if (marks[i].name == "yarn over named" && under && !moves) marks[i].how = How::yarn_over;
      if (!marks[i].how || is_called_off(marks, i)) continue;
      const bool of_finished = *marks[i].how == How::inside_out || *marks[i].how == How::two_strands;
      if (of_finished && other) continue; // "turn it inside out", "sew with a double strand"
      if (moves && *marks[i].how == How::yarn_over) continue;
      ways.push_back(i);
    }
    return ways;
  }

  void read_sentence(Marks& marks) {
    if (has(marks, "technique is free")) return;
    const std::vector<std::size_t> ways = ways_in(marks);
    if (ways.empty()) return;
    everywhere_ = everywhere_ || has(marks, "technique everywhere");
    std::size_t from = 0;
    for (std::size_t i = 0; i < ways.size(); ++i) {
      const std::size_t end = i + 1 < ways.size() ? ways[i + 1] : marks.size();
      if (!add(marks, from, ways[i], ways[i]) && !add(marks, ways[i] + 1, end, ways[i]))
        add_alone(marks, ways[i]);
      else
        from = said_to_;
      from = std::max(from, ways[i] + 1);
    }
  }

  Technique technique_of(const Marks& marks, std::size_t way) const {
    Technique technique;
    technique.how = *marks[way].how;
    technique.span = line_.span(marks[way].begin, marks[way].end);
    take_rounds(marks, technique);
    return technique;
  }

  void add_alone(const Marks& marks, std::size_t way) { put(technique_of(marks, way)); }

  void put(const Technique& technique) { found_.push_back(technique); }

  /// "Y = sc worked yarn under": where a stitch of the pattern's own is made as another, it is not said of
  /// that.
  void leave_out_plain(std::vector<Subject>& stitches) const {
    const auto is_made_as = [&](const Subject& own, const Subject& plain) {
      if (own.of != Of::kind || plain.of != Of::kind || own.kind == plain.kind) return false;
      return tree_.kinds[own.kind].own && !tree_.kinds[plain.kind].own &&
             tree_.kinds[own.kind].moves == tree_.kinds[plain.kind].moves;
    };
    const std::vector<Subject> all = stitches;
    const auto plain = std::remove_if(stitches.begin(), stitches.end(), [&](const Subject& one) {
      return std::any_of(all.begin(), all.end(), [&](const Subject& own) { return is_made_as(own, one); });
    });
    stitches.erase(plain, stitches.end());
  }

  /// The technique of each subject among [begin, end); whether there is one.
  bool add(const Marks& marks, std::size_t begin, std::size_t end, std::size_t way) {
    std::vector<Subject> stitches, parts;
    for (std::size_t i = begin; i < end; ++i) {
      if (!marks[i].subject) continue;
      (marks[i].subject->part == every_part ? stitches : parts).push_back(*marks[i].subject);
    }
    said_to_ = end;
    leave_out_plain(stitches);
    if (stitches.empty() && parts.empty()) return false;
    if (stitches.empty()) stitches.push_back({});
    if (parts.empty()) parts.push_back({});
    for (const Subject& part : parts)
      for (const Subject& stitch : stitches) {
        Technique technique = technique_of(marks, way);
        technique.of = stitch.of, technique.kind = stitch.kind, technique.part = part.part;
        put(technique);
      }
    return true;
  }

  /// "3-7", "3 to 7".
  bool is_range(const Mark& first, const Mark& last) const {
    constexpr std::uint32_t longest = 6;
    if (last.number <= first.number || last.begin - first.end > longest) return false;
    const std::string between = line_.text.substr(first.end, last.begin - first.end);
    return between.find_first_of(",:") == std::string::npos;
  }

  /// "in rounds 3 to 7", "from round 5 on".
  void take_rounds(const Marks& marks, Technique& technique) const {
    for (std::size_t i = 0; i + 1 < marks.size(); ++i) {
      if (marks[i].name != "round named" || marks[i + 1].number == 0) continue;
      const bool open = (i > 0 && marks[i - 1].name == "from round") ||
                        (i + 2 < marks.size() && marks[i + 2].name == "round on");
      const bool range = i + 2 < marks.size() && is_range(marks[i + 1], marks[i + 2]);
      technique.from = static_cast<int>(std::min<std::uint32_t>(marks[i + 1].number, limit::number));
      technique.to = range  ? static_cast<int>(std::min<std::uint32_t>(marks[i + 2].number, limit::number))
                     : open ? 0
                            : technique.from;
      return;
    }
  }

  const words::Folded& line_;
  const Tree& tree_;
  const words::Vocabulary& vocabulary_;
  const words::Vocabulary& techniques_;
  words::Lattice told_, stitches_;
  std::vector<Technique> found_;
  std::size_t said_to_ = 0;
  bool everywhere_ = false;
};

/// Where a line stands in the pattern.
class Standing {
public:
  Standing(const Tree& tree, Span line) : tree_(tree), line_(line) {
    for (std::uint32_t part = 0; part < tree.parts.size(); ++part)
      if (tree.parts[part].span.begin <= line.begin) part_ = part;
    if (part_ == every_part) return;
    for (std::uint32_t round = tree.parts[part_].first_round; round < end_round(tree, part_); ++round) {
      const Span span = tree.rounds[round].span;
      if (span.begin <= line.end && line.begin < span.end) own_ = round;
      before_ = before_ || span.end <= line.begin;
      if (next_ == no_round && span.begin >= line.end) next_ = round;
    }
  }

  /// What the place of the line says of it, where its words do not.
  void add(Technique& technique, bool everywhere) const {
    for (const Header& header : tree_.headers)
      technique.listed = technique.listed || (!header.name.empty() && header.span.begin < line_.end &&
                                              line_.begin < header.span.end);
    if (technique.listed || technique.part != every_part || everywhere || part_ == every_part) return;
    const bool named = !tree_.parts[part_].name.empty();
    if (own_ != no_round) return in_rounds(technique, tree_.rounds[own_].from, tree_.rounds[own_].to);
    if (technique.from > 0) return in_rounds(technique, technique.from, technique.to);
    if (before_ && next_ != no_round) return in_rounds(technique, tree_.rounds[next_].from, 0);
    if (!before_ && named) technique.part = part_;
  }

  /// A line of work tells of few things that are no work.
  bool is_round() const { return own_ != no_round; }

private:
  static constexpr std::uint32_t no_round = 0xFFFFFFFF;

  void in_rounds(Technique& technique, int from, int to) const {
    technique.part = part_;
    if (technique.from == 0) technique.from = from, technique.to = to;
  }

  const Tree& tree_;
  Span line_;
  std::uint32_t part_ = every_part, own_ = no_round, next_ = no_round;
  bool before_ = false; ///< some round of the part stands before the line
};

bool is_told_in_rounds(How how) {
  return how == How::yarn_under || how == How::yarn_over || how == How::over_wire || how == How::between_legs;
}

bool says_same(const Technique& a, const Technique& b) {
  return a.how == b.how && a.of == b.of && a.kind == b.kind && a.part == b.part && a.from == b.from &&
         a.to == b.to;
}

void add(std::vector<Technique>& all, const Technique& technique) {
  const bool known = std::any_of(
      all.begin(), all.end(), [&technique](const Technique& other) { return says_same(other, technique); });
  if (!known) all.push_back(technique);
}

} // namespace

std::optional<How> how_told(std::string_view text, std::string_view language) {
  const words::Vocabulary* techniques = words_of(language);
  if (techniques == nullptr) return std::nullopt;
  for (const words::Word& word : words::lattice(words::fold(text), *techniques).words)
    if (word.kind == words::WordKind::phrase)
      if (const auto how = how_named(techniques->concepts[word.means].name)) return how;
  return std::nullopt;
}

std::vector<Technique> techniques_told(const Source& source, const Tree& tree,
                                       const words::Vocabulary& vocabulary) {
  std::vector<Technique> all;
  const words::Vocabulary* techniques = words_of(tree.language);
  if (techniques == nullptr || tree.rounds.empty()) return all;
  for (std::size_t i = 0; i < source.line_count(); ++i) {
    const Span span = source.line(i);
    if (span.empty() || span.length() > limit::line_bytes || span.begin == tree.title_span.begin) continue;
    const words::Folded folded = words::fold(source.at(span), span.begin);
    LineReader reader(folded, tree, vocabulary, *techniques);
    if (!reader.names_any()) continue;
    const Standing standing(tree, span);
    for (Technique technique : reader.read()) {
      if (standing.is_round() && !is_told_in_rounds(technique.how)) continue;
      standing.add(technique, reader.everywhere());
      add(all, technique);
    }
  }
  return all;
}

} // namespace whorl::pattern
