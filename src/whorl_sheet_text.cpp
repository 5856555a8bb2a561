#include "whorl_content.hpp"

#include "pattern/reference.hpp"
#include "pattern/text_words.hpp"
#include "words/ascii.hpp"
#include "words/fold.hpp"
#include "words/lattice.hpp"
#include "words/vocabulary.hpp"
#include "writing/phrasebook.hpp"

#include <algorithm>
#include <iterator>

namespace whorl {
namespace {

/// The whole sentence of its line that a clause belongs to.
std::string sentence_around(const pattern::Source& source, pattern::Span clause) {
  const pattern::Span line = source.line(source.line_of(clause.begin));
  const std::string_view text = source.at(line);
  const std::size_t at = clause.begin - line.begin;
  const std::size_t stop = at == 0 ? std::string_view::npos : text.rfind(". ", at - 1);
  std::size_t begin = stop == std::string_view::npos ? 0 : stop + 2;
  std::size_t end =
      std::min(text.find(". ", std::max(at, std::size_t{clause.end - line.begin} - 1)), text.size());
  if (end < text.size()) ++end;
  while (begin < end && std::string_view(" \t-*").find(text[begin]) != std::string_view::npos) ++begin;
  while (end > begin && (text[end - 1] == ' ' || text[end - 1] == '\t')) --end;
  return std::string(text.substr(begin, end - begin));
}

/// Whether a clause stands behind the work of a line.
bool stands_in_round(const pattern::Tree& tree, pattern::Span clause) {
  return std::any_of(tree.rounds.begin(), tree.rounds.end(), [clause](const pattern::RoundText& round) {
    return round.span.begin <= clause.begin && clause.begin < round.span.end;
  });
}

/// The same; of a line of work, what stands from the clause on: the work is in the figure.
std::string told_at(const pattern::Source& source, const pattern::Tree& tree, pattern::Span clause) {
  std::string sentence = sentence_around(source, clause);
  if (!stands_in_round(tree, clause)) return sentence;
  const std::size_t at = sentence.find(source.at(clause));
  return at == std::string::npos ? sentence : sentence.substr(at);
}

/// Whether the figures show it in its holes.
bool is_drawn(const fabric::Fabric& fabric, std::uint32_t index) {
  return std::any_of(fabric.placings.begin(), fabric.placings.end(),
                     [index](const fabric::Placing& one) { return one.text == index && !one.after.empty(); });
}

/// Whether the yarn is cut so that a long end is left.
bool leaves_tail(const pattern::Placing& placing, std::string_view sentence, const pattern::Tree& tree) {
  const words::Vocabulary* const vocabulary = words::find_vocabulary(tree.language);
  return placing.what == pattern::What::cut && vocabulary != nullptr &&
         pattern::has_text_word(*vocabulary, words::fold(sentence).text, pattern::TextWord::tail);
}

/// What several parts are told alike: their names, and what is said of them.
struct Told {
  std::string names, sentence;
};

/// Where the yarn is cut with a long end, it is wanted when the parts are put together: "Ear, Tail: Cut the
/// yarn, leave a long tail."
std::vector<std::string> tails_of(const Pattern::Content& pattern, const layout::Wanted& wanted) {
  const pattern::Tree& tree = pattern.tree;
  std::vector<Told> all;
  for (const pattern::Placing& placing : tree.placings) {
    if (placing.part >= tree.parts.size() || !layout::is_wanted(wanted, placing.part)) continue;
    const std::string sentence = told_at(pattern.source, tree, placing.span);
    if (!leaves_tail(placing, sentence, tree)) continue;
    const std::string& name = tree.parts[placing.part].name;
    const auto same = std::find_if(all.begin(), all.end(),
                                   [&sentence](const Told& told) { return told.sentence == sentence; });
    if (same == all.end())
      all.push_back({name, sentence});
    else if (!name.empty() && (", " + same->names + ",").find(", " + name + ",") == std::string::npos)
      same->names += ", " + name;
  }
  std::vector<std::string> lines;
  for (const Told& told : all) lines.push_back((told.names.empty() ? "" : told.names + ": ") + told.sentence);
  return lines;
}

/// Whether it is done when the parts are put together: sewing, embroidery behind the last round of its part,
/// and whatever no figure shows.
bool is_put_together(const Pattern::Content& pattern, std::uint32_t index) {
  const pattern::Placing& placing = pattern.tree.placings[index];
  if (placing.what == pattern::What::sew) return true;
  const bool shown = is_drawn(pattern.fabric, index);
  const bool behind = placing.after_round >= pattern::end_round(pattern.tree, placing.part);
  if (placing.what == pattern::What::embroider) return !shown || behind;
  const bool thing = placing.what == pattern::What::eye || placing.what == pattern::What::bead;
  return thing && !shown && (behind || placing.from > 0); // not "begin at the nose"
}

/// The words of a sentence, in small letters.
std::vector<std::string> words_in(std::string_view sentence) {
  std::vector<std::string> all(1);
  for (const char c : words::fold(sentence).text)
    if (words::is_folded_letter(c) || words::is_digit(c))
      all.back() += c;
    else if (!all.back().empty())
      all.emplace_back();
  return all;
}

/// Whether a part is what others are put on: "sew to the head", "sew on over the body".
bool is_put_on(const std::vector<std::string>& said, std::size_t name, const words::Vocabulary& vocabulary) {
  using pattern::TextWord;
  if (name > 0 && pattern::is_text_word(vocabulary, said[name - 1], TextWord::article)) --name;
  return name > 0 && pattern::is_text_word(vocabulary, said[name - 1], TextWord::put_on);
}

/// Whether a blank line parts a sentence from the last round before it: behind the last part it is of no part
/// then.
bool stands_apart(const Pattern::Content& pattern, const pattern::Placing& placing) {
  std::uint32_t worked = 0;
  for (const pattern::RoundText& round : pattern.tree.rounds)
    if (round.span.end <= placing.span.begin) worked = std::max(worked, round.span.end);
  const std::string_view between = pattern.source.at({worked, placing.span.begin});
  return between.find("\n\n") != between.npos || between.find("\n\r\n") != between.npos;
}

/// The part in whose rounds a sentence stands that speaks of it and does not name it: "Sew to the head."; ""
/// where it names what it speaks of.
std::string silent_part(const Pattern::Content& pattern, const pattern::Placing& placing,
                        std::string_view sentence) {
  const std::vector<pattern::Part>& parts = pattern.tree.parts;
  const words::Vocabulary* const vocabulary = words::find_vocabulary(pattern.tree.language);
  if (parts.size() < 2 || vocabulary == nullptr || !vocabulary->blanks_between_words) return {};
  std::size_t own = parts.size();
  for (std::size_t part = 0; part < parts.size(); ++part)
    if (parts[part].span.begin <= placing.span.begin) own = part;
  if (own == parts.size() ||
      pattern::end_round(pattern.tree, static_cast<std::uint32_t>(own)) == parts[own].first_round)
    return {}; // "Assembly"
  if (own + 1 == parts.size() && stands_apart(pattern, placing)) return {};
  const std::vector<std::string> said = words_in(sentence);
  for (std::size_t word = 0; word < said.size(); ++word)
    for (std::size_t part = 0; part < parts.size(); ++part) {
      if (said[word].empty() || pattern::names_part(said[word], parts[part].name, *vocabulary) == 0) continue;
      if (part == own || placing.what != pattern::What::sew || !is_put_on(said, word, *vocabulary)) return {};
    }
  return parts[own].name;
}

/// Whether lines have a sentence of a part already, be it for several parts at once: "Ear, Tail: …".
bool have(const std::vector<std::string>& lines, const std::string& part, const std::string& sentence) {
  return std::any_of(lines.begin(), lines.end(), [&](const std::string& line) {
    if (line == sentence) return part.empty();
    const std::string behind = ": " + sentence;
    if (line.size() <= behind.size() || line.compare(line.size() - behind.size(), behind.size(), behind) != 0)
      return false;
    const std::string names = ", " + line.substr(0, line.size() - behind.size()) + ",";
    return part.empty() || names.find(", " + part + ",") != std::string::npos;
  });
}

/// Long ends of yarn, and the author's sentences about what is put together.
std::vector<std::string> closing_of(const Pattern::Content& pattern, const layout::Wanted& wanted) {
  const pattern::Source& source = pattern.source;
  const pattern::Tree& tree = pattern.tree;
  std::vector<std::string> lines;
  if (layout::leaves_rounds_out(wanted)) return lines;
  lines = tails_of(pattern, wanted);
  for (std::uint32_t i = 0; i < tree.placings.size(); ++i) {
    const pattern::Placing& placing = tree.placings[i];
    if (!is_put_together(pattern, i) || !layout::is_wanted(wanted, placing.part)) continue;
    const std::string sentence = told_at(source, tree, placing.span);
    const std::string part = silent_part(pattern, placing, sentence);
    if (!have(lines, part, sentence)) lines.push_back((part.empty() ? "" : part + ": ") + sentence);
  }
  return lines;
}

/// What is typed, over how many lines it may be, on one.
std::string one_line(std::string_view typed) {
  std::string line;
  for (const char c : typed) {
    const bool blank = c == ' ' || c == '\t' || c == '\n' || c == '\r';
    if (!blank)
      line += c;
    else if (!line.empty() && line.back() != ' ')
      line += ' ';
  }
  while (!line.empty() && line.back() == ' ') line.pop_back();
  return line;
}

/// Where marks between a label and its round end, narrow or wide ones.
std::size_t behind_marks(std::string_view line) {
  std::size_t at = 0;
  for (std::size_t before = std::string_view::npos; before != at;) {
    before = at;
    at = std::min(line.find_first_not_of(":.-) ", at), line.size());
    for (const std::string_view wide : {"\xEF\xBC\x9A", "\xE3\x80\x81", "\xEF\xBC\x89"}) // ： 、 ）
      if (line.substr(at, wide.size()) == wide) at += wide.size();
  }
  return at;
}

/// What stands behind the label of a round, in one line.
std::string line_of(const pattern::Source& source, const pattern::RoundText& round) {
  const std::uint32_t begin = std::max(round.span.begin, round.label_span.end);
  std::string line = one_line(source.at({begin, std::max(begin, round.span.end)}));
  line.erase(0, behind_marks(line));
  return line;
}

/// The line of one variant: no blank is left before a bracket's end where another size stood.
std::string line_of_variant(std::string line) {
  for (std::size_t at = line.find(" )"); at != std::string::npos; at = line.find(" )", at)) line.erase(at, 1);
  return line;
}

/// Whether nothing but how often stands behind the word for a stitch: " 6", " x 3", " 2 times".
bool tells_times(std::string_view rest) {
  std::string told;
  std::copy_if(rest.begin(), rest.end(), std::back_inserter(told),
               [](char c) { return !words::is_digit(c) && c != ' '; });
  constexpr std::string_view words_for_times[] = {"", "x", "X", "*", "\u00d7", "times"};
  return std::find(std::begin(words_for_times), std::end(words_for_times), told) != std::end(words_for_times);
}

/// The one word that is typed for a stitch: "X" of "6X", "dc2tog"; "": it is told in several.
std::string word_of(std::string_view typed) {
  const std::size_t begin = typed.find_first_not_of("0123456789 ");
  if (begin == std::string_view::npos) return {};
  const std::size_t end = std::min(typed.find_first_of(" (", begin), typed.size());
  const std::string_view word = typed.substr(begin, end - begin), rest = typed.substr(end);
  const bool counted = tells_times(rest);
  const bool plain = word.find_first_of(",;:*[]{}\"'.") == std::string_view::npos;
  // "SL in each CH": what is typed in capitals stands for itself.
  const bool letters =
      word.size() <= 3 && word.find_first_not_of("ABCDEFGHIJKLMNOPQRSTUVWXYZ") == std::string_view::npos;
  constexpr std::size_t longest = 8;
  return (counted || letters) && plain && word.size() <= longest ? std::string(word) : std::string();
}

/// "ch" of "Ch" at the head of a line.
std::string without_capital(std::string word) {
  const bool capital =
      word.size() > 1 && word[0] >= 'A' && word[0] <= 'Z' && word[1] >= 'a' && word[1] <= 'z';
  if (capital) word[0] = static_cast<char>(word[0] - 'A' + 'a');
  return word;
}

/// Whether a word can be that of a stitch: several in one place are called by none that also means one.
bool can_name(const pattern::Work& work, std::string_view word) {
  if (word.empty() || work.into != pattern::Into::loops) return false;
  return work.in_one == 1 || word.size() == 1 || word.substr(0, 3) == "inc";
}

/// "mr 6": what the stitches go into, no name of theirs.
bool names_ring(const pattern::Tree& tree, std::string_view word) {
  const words::Vocabulary* const vocabulary = words::find_vocabulary(tree.language);
  if (vocabulary == nullptr) return false;
  const auto all = words::lattice(words::fold(word), *vocabulary).words;
  return std::any_of(all.begin(), all.end(), [vocabulary](const words::Word& one) {
    return one.kind == words::WordKind::phrase &&
           vocabulary->concepts[one.means].sort == words::ConceptClass::start;
  });
}

/// What the author calls her stitches, where one word says it; the first word for each.
std::vector<drawing::TypedName> names_of(const pattern::Source& source, const pattern::Tree& tree) {
  std::vector<drawing::TypedName> names;
  for (const pattern::Node& node : tree.nodes) {
    if (node.kind != pattern::NodeKind::work || node.work.act != pattern::Act::stitch) continue;
    const std::string& own = tree.kinds[node.work.kind].name;
    if (!own.empty() && words::is_digit(own.front())) continue; // "3dccl" is its whole name
    const std::string word = without_capital(word_of(source.at(node.span)));
    const auto known = std::find_if(names.begin(), names.end(), [&](const drawing::TypedName& name) {
      return name.kind == node.work.kind && name.in_one == node.work.in_one;
    });
    if (known == names.end() && can_name(node.work, word) && !names_ring(tree, word))
      names.push_back({node.work.kind, node.work.in_one, word});
  }
  return names;
}

/// "yarn 1 moss, yarn 2 cream", of the yarns that are worked with; "" where there is one, or one has no name.
std::string yarns_of(const pattern::Tree& tree, const fabric::Fabric& fabric,
                     const drawing::Wording& wording) {
  std::vector<bool> used(256, false);
  for (const fabric::Stitch& stitch : fabric.stitches) used[stitch.yarn] = true;
  if (std::count(used.begin(), used.end(), true) < 2) return {};
  std::string words;
  for (std::size_t yarn = 1; yarn < used.size(); ++yarn) {
    if (!used[yarn]) continue;
    if (yarn > tree.yarns.size() || tree.yarns[yarn - 1].empty()) return {};
    const std::string number = std::to_string(yarn), &name = tree.yarns[yarn - 1];
    const std::string said = name == number ? drawing::say(wording, "yarn", {number})
                                            : drawing::say(wording, "yarn-named", {number, name});
    words += (words.empty() ? "" : ", ") + said;
  }
  return words;
}

bool is_header(const pattern::Header& header, const drawing::Wording& own, std::string_view id) {
  const std::string name = words::fold(header.name).text;
  const std::vector<std::string> names = writing::alternatives(drawing::say(own, id));
  return std::any_of(names.begin(), names.end(),
                     [&name](const std::string& one) { return words::fold(one).text == name; });
}

/// One blank where several stood: those of other variants were left out.
std::string without_gaps(const std::string& typed) {
  std::string text;
  for (const char c : typed)
    if (c != ' ' || (!text.empty() && text.back() != ' ')) text += c;
  return line_of_variant(std::move(text));
}

/// "Yarn: brown · Hook: 2 mm": what the variant shown is made of and with, in the author's words.
std::string materials_of(const pattern::Tree& tree, const drawing::Wording& own) {
  std::string words;
  for (const char* id : {"write-header-yarn", "write-header-hook"})
    for (const pattern::Header& header : tree.headers)
      if (is_header(header, own, id) && !header.value.empty())
        words += (words.empty() ? "" : " · ") + header.name + ": " + without_gaps(header.value);
  return words;
}

/// The whole line of the text in which a place stands.
pattern::Span line_about(std::string_view text, std::uint32_t at) {
  const std::size_t begin = at == 0 ? std::string_view::npos : text.rfind('\n', at - 1);
  return {static_cast<std::uint32_t>(begin == std::string_view::npos ? 0 : begin + 1),
          static_cast<std::uint32_t>(std::min(text.find('\n', at), text.size()))};
}

/// What a part says before its first round: its chain, where that has a line of its own; else what stands
/// below its heading, "Join the yarn in a front loop left free in Rnd 4."
std::string beginning_of(const Pattern::Content& content, const fabric::Part& part) {
  const pattern::Tree& tree = content.tree;
  const pattern::Part& text = tree.parts[part.text];
  if (text.first_round >= tree.rounds.size()) return {};
  const std::uint32_t end = tree.rounds[text.first_round].span.begin;
  if (part.foundation == fabric::none) {
    const bool headed = !text.span.empty() && text.span.end < end;
    return headed ? one_line(content.source.at({text.span.end, end})) : "";
  }
  const fabric::Stitch& chain = content.fabric.stitches[content.fabric.rounds[part.foundation].first_stitch];
  if (chain.origin >= tree.nodes.size()) return {};
  const std::uint32_t at = tree.nodes[chain.origin].span.begin;
  const pattern::Span line = line_about(content.source.at({0, end}), at);
  return line.end < end ? one_line(content.source.at(line)) : "";
}

} // namespace

drawing::SheetText sheet_text_of(const Pattern::Content& pattern, const layout::Wanted& wanted,
                                 std::string_view language) {
  const pattern::Source& source = pattern.source;
  const pattern::Tree& tree = pattern.tree;
  const drawing::Wording& wording = wording_for(language);
  const drawing::Wording& own = wording_for(tree.language);
  drawing::SheetText text;
  text.language = language;
  text.title = tree.title;
  text.subtitle = tree.subtitle;
  text.terms = drawing::say(wording, "terms-us");
  text.variant = pattern.variant;
  if (!pattern.variant.empty()) {
    text.terms = pattern.variant + " · " + text.terms;
    const std::string materials = materials_of(tree, own);
    text.subtitle += (text.subtitle.empty() || materials.empty() ? "" : " · ") + materials;
  }
  for (const pattern::Part& part : tree.parts) {
    text.part_notes.push_back(part.note);
    const std::string start = said_between(part.note, own, "notes-start");
    text.starts.push_back(start.empty() || &own != &wording ? ""
                                                            : drawing::say(wording, "start-named", {start}));
    text.from_below.push_back(says(part.note, own, "notes-upwards"));
  }
  for (const pattern::RoundText& round : tree.rounds) {
    const std::string line = line_of(source, round);
    text.round_lines.push_back(pattern.variant.empty() ? line : line_of_variant(line));
  }
  text.beginnings.resize(tree.parts.size());
  for (const fabric::Part& part : pattern.fabric.parts)
    text.beginnings[part.text] = line_of_variant(beginning_of(pattern, part));
  text.yarns = yarns_of(tree, pattern.fabric, wording);
  text.tones = ground_tones(pattern, own);
  text.technique_scopes = technique_scopes(tree, wording);
  if (&own == &wording) text.names = names_of(source, tree);
  text.closing = closing_of(pattern, wanted);
  return text;
}

} // namespace whorl
