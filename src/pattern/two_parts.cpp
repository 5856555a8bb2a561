#include "pattern/two_parts.hpp"

#include "pattern/part_order.hpp"
#include "pattern/reference.hpp"
#include "pattern/sentence.hpp"
#include "pattern/telling.hpp"
#include "words/ascii.hpp"

#include <algorithm>
#include <limits>
#include <optional>

namespace whorl::pattern {

namespace {

/// A part by its number in the tree.
using PartNumber = std::uint32_t;

/// Words that name another part, and those of which they are part.
struct Mention {
  PartNumber part = 0;
  std::uint32_t at = 0;   ///< bytes of the file
  std::uint32_t word = 0; ///< where "through the ear and the head", "place the ear …" begins
};

/// The stitches of a body in the order of the text.
std::vector<NodeId> work_in(const Tree& tree, NodeId body) {
  std::vector<NodeId> work = nodes_in(tree, body);
  const auto is_none = [&](NodeId id) {
    return tree.nodes[id].kind != NodeKind::work || tree.nodes[id].work.act != Act::stitch;
  };
  work.erase(std::remove_if(work.begin(), work.end(), is_none), work.end());
  return work;
}

/// The line of one round: what it names, and what each of its stitches means.
class LineOfParts {
public:
  LineOfParts(const Tree& tree, const Reader& reader, const RoundText& round)
      : tree_(tree), reader_(reader), round_(round),
        sentence_(look_up(reader.source.at(round.span), round.span.begin, reader.vocabulary)),
        two_(words::find_concept(reader.vocabulary, "two parts")),
        held_(words::find_concept(reader.vocabulary, "part held")) {
    for (const words::Word& word : sentence_.lattice.words)
      if (word.kind == words::WordKind::phrase && (word.means == two_ || word.means == held_))
        find_mentions(word);
    if (mentions_.empty()) find_names();
  }

  /// The part that stitches between two bytes of the file go through, `next` being where other work begins.
  std::optional<PartNumber> meant(std::uint32_t begin, std::uint32_t next) const {
    const Mention* before = nullptr;
    for (const Mention& mention : mentions_) {
      if (mention.word >= begin && mention.word < next) return mention.part;
      if (mention.word < begin && (before == nullptr || mention.word > before->word)) before = &mention;
    }
    if (before != nullptr) return before->part;
    return mentions_.empty() ? std::nullopt : std::optional(mentions_.front().part);
  }

private:
  /// The names in a word's letters, each with the most telling words that stand beside each other.
  void find_mentions(const words::Word& word) {
    const std::string_view text = reader_.source.at(word.span);
    for (std::size_t at = 0; at < text.size();) {
      std::size_t end = at;
      while (end < text.size() && is_letter(text[end])) ++end;
      if (const auto part = part_of(text.substr(at, end - at), text.substr(0, end)))
        add({*part, word.span.begin + static_cast<std::uint32_t>(at), word.span.begin});
      at = std::max(end, at + 1);
    }
  }

  /// "Flatten the ear and hold it against the head, 7 sc through both": a name anywhere.
  void find_names() {
    for (const words::Word& word : sentence_.lattice.words) {
      const bool phrase = word.kind == words::WordKind::phrase;
      if (phrase ? word.means == sentence_.leg : word.kind == words::WordKind::unknown) find_mentions(word);
    }
  }

  static bool is_letter(char c) {
    return words::is_folded_letter(words::small(c)) || (static_cast<unsigned char>(c) & 0x80U) != 0;
  }

  void add(const Mention& mention) {
    if (mentions_.empty() || mentions_.back().part != mention.part || mentions_.back().word != mention.word)
      mentions_.push_back(mention);
  }

  /// The part that a word names, other than the one in hand: of several the one that the words before name
  /// too
  /// ("left ear"), of these the nearest before.
  std::optional<PartNumber> part_of(std::string_view word, std::string_view words_before) const {
    if (word.size() < 3) return std::nullopt;
    std::optional<PartNumber> best;
    int most = 0;
    for (PartNumber part = 0; part < tree_.parts.size(); ++part) {
      const std::string& name = tree_.parts[part].name;
      if (names_part(word, name, reader_.vocabulary) == 0) continue;
      if (part == round_.part) return std::nullopt;
      const int shared = names_part(words_before, name, reader_.vocabulary);
      const bool later = part > round_.part && best && *best < round_.part;
      if (!best || shared > most || (shared == most && !later)) best = part, most = shared;
    }
    return best;
  }

  const Tree& tree_;
  const Reader& reader_;
  const RoundText& round_;
  Sentence sentence_;
  words::Concept two_, held_;
  std::vector<Mention> mentions_;
};

std::string round_name(const RoundText& round) {
  return (round.kind == RoundKind::row ? "row " : "round ") + std::to_string(round.from);
}

class Naming {
public:
  Naming(Tree& tree, const Reader& reader) : tree_(tree), reader_(reader) {}

  std::vector<Finding> name_all() {
    for (std::size_t moves = tree_.parts.size(); moves > 0 && make_one_first(); --moves) {
    }
    for (const RoundText& round : tree_.rounds)
      if (round.body != no_node) name_in(round);
    return std::move(findings_);
  }

private:
  /// An ear that is written below the head it is joined to is made before; whether there was one.
  bool make_one_first() {
    for (const RoundText& round : tree_.rounds) {
      if (round.body == no_node) continue;
      for (const NodeId id : work_in(tree_, round.body)) {
        if (!goes_through_two(tree_.nodes[id])) continue;
        const LineOfParts line(tree_, reader_, round);
        const auto part = line.meant(tree_.nodes[id].span.begin, tree_.nodes[id].span.end);
        if (!part || !can_be_made_before(tree_, *part, round.part)) continue;
        make_before(tree_, *part, round.part);
        return true;
      }
    }
    return false;
  }

  void name_in(const RoundText& round) {
    const std::vector<NodeId> work = work_in(tree_, round.body);
    const auto two = [this](NodeId id) { return goes_through_two(tree_.nodes[id]); };
    if (std::none_of(work.begin(), work.end(), two)) return;
    const LineOfParts line(tree_, reader_, round);
    bool said = false;
    for (std::size_t i = 0; i < work.size(); ++i) {
      if (!two(work[i])) continue;
      Node& node = tree_.nodes[work[i]];
      const std::uint32_t next = i + 1 < work.size() ? tree_.nodes[work[i + 1]].span.begin
                                                     : std::numeric_limits<std::uint32_t>::max();
      const auto part = line.meant(node.span.begin, next);
      const bool stands =
          part && *part < round.part && end_round(tree_, *part) > tree_.parts[*part].first_round;
      node.round = stands ? end_round(tree_, *part) - 1 : no_node;
      if (!stands && !std::exchange(said, true)) say_missing(round, node.span, part);
    }
  }

  void say_missing(const RoundText& round, Span span, std::optional<PartNumber> part) {
    const std::string alone = "; its stitches are drawn through the piece in hand alone";
    const std::string through = round_name(round) + " goes through ";
    if (!part)
      return say(Severity::warning, span,
                 through + "two parts, and none that stands before it has a name that is said here" + alone);
    const std::string& name = tree_.parts[*part].name;
    if (is_sent_for(round, *part))
      return say(Severity::note, span, through + name + ", which stands behind this in the text" + alone);
    say(Severity::warning, span,
        name + " stands behind this in the text: " + through + "it, so it has to be made before" + alone);
  }

  void say(Severity severity, Span span, std::string message) {
    findings_.push_back(finding(severity, "joining", span, std::move(message)));
  }

  /// "Make the arms now (see below).": whether a sentence above the round, in its part, names the other.
  bool is_sent_for(const RoundText& round, PartNumber part) const {
    const auto index = static_cast<std::uint32_t>(&round - tree_.rounds.data());
    return std::any_of(tree_.placings.begin(), tree_.placings.end(), [&](const Placing& told) {
      return told.part == round.part && told.after_round <= index && told.what == What::note &&
             names(told.text, part);
    });
  }

  /// Whether some word of a text names a part.
  bool names(std::string_view text, PartNumber part) const {
    const Sentence sentence = look_up(text, 0, reader_.vocabulary);
    for (std::uint32_t at = 0; at < sentence.size(); at = std::max(end_of_letters(sentence, at), at + 1))
      if (const std::uint32_t end = end_of_letters(sentence, at); end > at)
        if (names_part(sentence.text().substr(at, end - at), tree_.parts[part].name, reader_.vocabulary) > 0)
          return true;
    return false;
  }

  Tree& tree_;
  const Reader& reader_;
  std::vector<Finding> findings_;
};

} // namespace

std::vector<Finding> name_held_parts(Tree& tree, const Reader& reader) {
  return Naming(tree, reader).name_all();
}

} // namespace whorl::pattern
