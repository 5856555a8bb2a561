#include "pattern/yarn.hpp"

#include "pattern/colour.hpp"
#include "pattern/sentence.hpp"
#include "pattern/text_words.hpp"
#include "words/ascii.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

constexpr std::size_t longest_line = 40; ///< bytes of a line that only names a yarn
constexpr std::size_t most_yarns = 255;

/// Whether no stitch of a round stands before a byte of the file.
bool stands_before_work(const Tree& tree, const RoundText& round, std::uint32_t byte) {
  std::vector<NodeId> open{round.body};
  while (!open.empty()) {
    const NodeId id = open.back();
    open.pop_back();
    if (id == no_node) continue;
    const Node& node = tree.nodes[id];
    if (node.kind == NodeKind::work && node.span.begin < byte) return false;
    open.push_back(node.child);
    open.push_back(node.next);
  }
  return round.body != no_node;
}

/// Whether what stands behind the tree's last round is told in it, before its work.
bool belongs_before_last(const Tree& tree, const Placing& placing) {
  if (tree.rounds.empty() || placing.after_round != tree.rounds.size()) return false;
  const RoundText& round = tree.rounds.back();
  const bool inside = placing.span.begin >= round.span.begin && placing.span.begin < round.span.end;
  return inside && stands_before_work(tree, round, placing.span.begin);
}

/// "Join the yarn", whatever its colour.
bool names_yarn(std::string_view text, const words::Vocabulary& vocabulary) {
  const std::string folded = words::fold(text).text;
  for (std::size_t at = 0; at < folded.size(); ++at)
    if ((at == 0 || !words::is_folded_letter(folded[at - 1])) &&
        end_of_text_word(vocabulary, folded, at, TextWord::yarn) != at)
      return true;
  return false;
}

/// Whether the yarn was cut after the same round.
bool follows_cut(const Tree& tree, std::size_t placing) {
  const Placing& joined = tree.placings[placing];
  return std::any_of(tree.placings.begin(), tree.placings.begin() + static_cast<std::ptrdiff_t>(placing),
                     [&joined](const Placing& before) {
                       return before.what == What::cut && before.part == joined.part &&
                              before.after_round == joined.after_round;
                     });
}

/// By their letters these are the yarn that a pattern is begun in.
bool names_first_yarn(const std::string& name) { return name == "A" || name == "MC"; }

/// Whether the words of one name are among those of another: "brown" of "chestnut brown".
bool is_among(std::string_view name, std::string_view words) {
  const std::size_t at = words.find(name), end = at + name.size();
  return at != words.npos && (at == 0 || words[at - 1] == ' ') && (end == words.size() || words[end] == ' ');
}

constexpr std::size_t unlisted = static_cast<std::size_t>(-1);

/// Which of the listed yarns it is: by its name or letter, else the only one whose words tell it, else by the
/// place of its letter where none has one.
std::size_t find_listed(const std::vector<ListedYarn>& listed, const std::string& name) {
  const auto only = [&](auto is_it) {
    const auto first = std::find_if(listed.begin(), listed.end(), is_it);
    const bool one = first != listed.end() && std::none_of(first + 1, listed.end(), is_it);
    return one ? static_cast<std::size_t>(first - listed.begin()) : unlisted;
  };
  for (std::size_t i = 0; i < listed.size(); ++i)
    if (listed[i].name == name || (!name.empty() && listed[i].letter == name)) return i;
  const std::size_t told =
      only([&](const ListedYarn& yarn) { return is_among(name, yarn.name) || is_among(yarn.name, name); });
  const bool lettered =
      std::any_of(listed.begin(), listed.end(), [](const ListedYarn& y) { return !y.letter.empty(); });
  if (told != unlisted || lettered || name.size() != 1 || name[0] < 'A') return told;
  const auto place = static_cast<std::size_t>(name[0] - 'A');
  return place < listed.size() ? place : unlisted;
}

bool has_work_before(const Tree& tree, std::size_t rounds) {
  const auto end = tree.rounds.begin() + static_cast<std::ptrdiff_t>(std::min(rounds, tree.rounds.size()));
  return std::any_of(tree.rounds.begin(), end, [](const RoundText& round) { return round.body != no_node; });
}

/// The yarns get their numbers when the first is named: those listed in their order. Rounds before it that
/// name none are in the first of them, or the second where the first is changed to.
void begin_yarns(Tree& tree, std::size_t named, bool worked, bool changes) {
  std::vector<ListedYarn>& listed = tree.listed_yarns;
  const bool changes_to_first = worked && changes && named == 0;
  if (changes_to_first && listed.size() > 1) std::swap(listed[0], listed[1]);
  if (changes_to_first && listed.size() == 1) listed.insert(listed.begin(), ListedYarn{});
  for (const ListedYarn& yarn : listed) tree.yarns.push_back(yarn.name);
  if (worked && tree.yarns.empty()) tree.yarns.emplace_back();
}

} // namespace

std::string yarn_named(std::string_view text, const words::Vocabulary& vocabulary) {
  const Sentence sentence = look_up(text, 0, vocabulary);
  const auto found = find_yarn_name(sentence, 0, sentence.size());
  return found ? written_name(sentence, *found) : std::string();
}

bool only_names_yarn(std::string_view line, const words::Vocabulary& vocabulary) {
  if (line.empty() || line.size() > longest_line) return false;
  const Sentence sentence = look_up(line, 0, vocabulary);
  const auto found = find_yarn_name(sentence, 0, sentence.size());
  if (!found) return false;
  const words::Concept in = words::find_concept(vocabulary, "in");
  const words::Concept with = words::find_concept(vocabulary, "with");
  for (std::uint32_t at = 0; at < sentence.size();) {
    const std::uint32_t end = end_of_letters(sentence, at);
    const bool leads =
        at < found->begin && (word_meaning(sentence, at, in) || word_meaning(sentence, at, with));
    const std::string_view word = sentence.text().substr(at, end - at);
    const bool yarn = word == "color" || word == "colour" || word == "yarn" || word == "wool";
    const bool mark = end == at && !(sentence.text()[at] >= '0' && sentence.text()[at] <= '9');
    if (!mark && !leads && !yarn && !(at >= found->begin && at < found->end)) return false;
    at = std::max(end, at + 1);
  }
  const bool led = found->begin > 0;
  return led;
}

std::uint8_t number_of_yarn(Tree& tree, const std::string& name, std::size_t rounds_before, bool changes) {
  if (tree.yarns.empty())
    begin_yarns(tree, find_listed(tree.listed_yarns, name), has_work_before(tree, rounds_before), changes);
  if (const std::size_t listed = find_listed(tree.listed_yarns, name); listed != unlisted)
    return static_cast<std::uint8_t>(listed + 1);
  if (!tree.yarns.empty() && tree.yarns.front().empty() && names_first_yarn(name)) tree.yarns.front() = name;
  const auto known = std::find(tree.yarns.begin(), tree.yarns.end(), name);
  if (known == tree.yarns.end() && tree.yarns.size() >= most_yarns) return 0;
  const auto index = known - tree.yarns.begin();
  if (known == tree.yarns.end()) tree.yarns.push_back(name);
  return static_cast<std::uint8_t>(index + 1);
}

void settle_changes(Tree& tree, std::size_t first, const words::Vocabulary& vocabulary) {
  for (std::size_t i = first; i < tree.placings.size(); ++i) {
    Placing& placing = tree.placings[i];
    const bool joins = placing.what == What::join;
    if (!joins && placing.what != What::change) continue;
    const std::string name = yarn_named(placing.text, vocabulary);
    if (belongs_before_last(tree, placing)) --placing.after_round;
    if (!name.empty()) placing.yarn = number_of_yarn(tree, name, placing.after_round, true);
    placing.attaches =
        joins && (!name.empty() || names_yarn(placing.text, vocabulary) || follows_cut(tree, i));
  }
}

void change_in_label(Tree& tree, Span aside, const Reader& reader) {
  if (aside.empty() || tree.rounds.empty()) return;
  const std::string_view text = reader.source.at(aside);
  const std::string name = yarn_named(text, reader.vocabulary);
  if (name.empty()) return;
  Placing change;
  change.what = What::change;
  change.part = tree.rounds.back().part;
  change.after_round = static_cast<std::uint32_t>(tree.rounds.size() - 1);
  change.yarn = number_of_yarn(tree, name, change.after_round, false);
  change.span = aside;
  change.text = std::string(text);
  for (auto placing = tree.placings.rbegin(); placing != tree.placings.rend(); ++placing)
    if (placing->what == What::change && placing->yarn == change.yarn && placing->part == change.part)
      return;
    else if (placing->what == What::change)
      break;
  tree.placings.push_back(std::move(change));
}

} // namespace whorl::pattern
