#include "writing/phrasebook.hpp"

#include "pattern/text_words.hpp"
#include "words/fold.hpp"
#include "words/lattice.hpp"
#include "words/letters.hpp"
#include "writing/measures.hpp"

#include <algorithm>
#include <utility>

namespace whorl::writing {
namespace {

constexpr std::string_view ends = " .,;!:";
constexpr std::size_t longest_list = 80; ///< bytes in which a word for "and" is looked for

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && ends.find(text.front()) != ends.npos) text.remove_prefix(1);
  while (!text.empty() && ends.find(text.back()) != ends.npos) text.remove_suffix(1);
  return text;
}

std::string folded(std::string_view text) { return words::fold(text).text; }

/// The pieces of a folded text between marks, the mark before a blank.
std::vector<std::string_view> pieces_of(std::string_view text, std::string_view marks, bool blanks) {
  std::vector<std::string_view> pieces;
  std::size_t begin = 0;
  for (std::size_t at = 0; at < text.size(); ++at) {
    const bool mark = marks.find(text[at]) != marks.npos;
    if (!mark || (blanks && at + 1 < text.size() && text[at + 1] != ' ')) continue;
    pieces.push_back(trimmed(text.substr(begin, at - begin)));
    begin = at + 1;
  }
  pieces.push_back(trimmed(text.substr(begin)));
  pieces.erase(std::remove(pieces.begin(), pieces.end(), std::string_view()), pieces.end());
  return pieces;
}

} // namespace

std::string as_sentence(std::string text) {
  if (text.empty()) return text;
  const words::Letter first = words::letter_at(text, 0);
  if (!first.valid) return text;
  std::string out;
  words::append_utf8(out, words::upper(first.code));
  return out + text.substr(first.length);
}

std::vector<std::string> alternatives(std::string_view text) {
  std::vector<std::string> all{""};
  for (const char c : text)
    if (c == '|')
      all.emplace_back();
    else
      all.back() += c;
  return all;
}

Phrasebook::Phrasebook(Phrases sentences, Names names, const words::Vocabulary& from, const Tongue& tongue)
    : names_(std::move(names)), from_(from), tongue_(tongue) {
  const words::Concept conjunction = words::find_concept(from_, "and");
  for (const words::PhraseEntry& entry : from_.phrases)
    if (entry.means == conjunction && !entry.write)
      links_.push_back(from_.blanks_between_words ? " " + entry.phrase + " " : entry.phrase);
  for (const auto& [known, written] : sentences)
    for (const std::string& form : alternatives(known))
      sentences_.emplace_back(std::string(trimmed(folded(form))), alternatives(written).front());
}

std::string_view Phrasebook::without_article(std::string_view text) const {
  for (std::string_view left = text;;) {
    const std::size_t end = pattern::end_of_text_word(from_, left, 0, pattern::TextWord::article);
    if (end == 0 || end >= left.size() ||
        (from_.blanks_between_words && left[end] != ' ' && left[end - 1] != '\''))
      return left;
    left = trimmed(left.substr(end));
  }
}

std::optional<std::string> Phrasebook::one_name(std::string_view text) const {
  text = trimmed(text);
  if (is_measure(text)) return std::string(text);
  for (const std::string_view name : {text, without_article(text)})
    if (const auto known = names_.find(name); known != names_.end() && !known->second.empty())
      return known->second;
  return std::nullopt;
}

std::optional<std::uint32_t> Phrasebook::number(std::string_view typed) const {
  const words::Folded text = words::fold(typed);
  const words::Lattice lattice = words::lattice(text, from_);
  if (text.text.empty()) return std::nullopt;
  for (std::uint32_t i = lattice.at[0]; i < lattice.at[1]; ++i)
    if (lattice.words[i].kind == words::WordKind::number && lattice.words[i].end == text.text.size())
      return lattice.words[i].number;
  return std::nullopt;
}

std::vector<std::pair<std::string, std::string>> Phrasebook::parted(std::string_view typed) const {
  std::vector<std::pair<std::string, std::string>> all;
  if (typed.size() > longest_list) return all;
  const words::Folded text = words::fold(typed);
  for (const std::string& link : links_) {
    const std::size_t at = text.text.find(link);
    if (at == std::string::npos) continue;
    const auto end = static_cast<std::uint32_t>(at + link.size());
    all.emplace_back(typed.substr(0, text.span(0, static_cast<std::uint32_t>(at)).end),
                     typed.substr(text.span(end, end).begin));
  }
  return all;
}

std::optional<std::string> Phrasebook::name(std::string_view typed) const {
  if (auto one = one_name(folded(typed))) return one;
  for (const auto& [before, behind] : parted(typed)) {
    const auto first = name(before), second = first ? name(behind) : std::nullopt;
    if (first && second) return tongue_.sentence("caption-and", {*first, *second});
  }
  return std::nullopt;
}

/// Whether a text is a form with names in its slots: what is written for it.
std::optional<std::string> Phrasebook::filled(std::string_view form, const std::string& to,
                                              const std::string& text) const {
  std::vector<std::string> with;
  std::size_t at = 0;
  while (!form.empty()) {
    const std::size_t slot = std::min(form.find('{'), form.size());
    const std::string_view words = form.substr(0, slot);
    if (text.compare(at, words.size(), words) != 0) return std::nullopt;
    at += words.size();
    form.remove_prefix(slot);
    if (form.empty()) break;
    const std::size_t number =
        form.size() > 2 && form[1] >= '1' && form[1] <= '9' ? static_cast<std::size_t>(form[1] - '1') : 0;
    form.remove_prefix(std::min<std::size_t>(3, form.size()));
    const std::string_view next = form.substr(0, std::min(form.find('{'), form.size()));
    const bool last = form.find('{') == form.npos;
    const std::size_t end = next.empty() ? text.size()
                            : last       ? (text.size() >= next.size() ? text.size() - next.size() : 0)
                                         : text.find(next, at);
    if (end == std::string::npos || end <= at) return std::nullopt;
    const auto known = name(std::string_view(text).substr(at, end - at));
    if (!known) return known;
    with.resize(std::max(with.size(), number + 1));
    with[number] = *known;
    at = end;
  }
  if (at != text.size()) return std::nullopt;
  std::string out = to;
  for (std::size_t i = 0; i < with.size(); ++i) {
    const std::string slot = "{" + std::to_string(i + 1) + "}";
    for (std::size_t place = out.find(slot); place != std::string::npos;
         place = out.find(slot, place + with[i].size()))
      out.replace(place, slot.size(), with[i]);
  }
  return out;
}

std::optional<std::string> Phrasebook::sentence(std::string_view typed) const {
  const std::string text(trimmed(typed));
  if (text.empty()) return std::nullopt;
  for (const auto& [form, to] : sentences_)
    if (auto known = filled(form, to, text)) return known;
  return std::nullopt;
}

std::optional<std::string> Phrasebook::piece(std::string_view typed) const { return sentence(folded(typed)); }

/// A sentence, or pieces of one between commas.
std::optional<std::string> Phrasebook::whole_sentence(std::string_view one) const {
  if (auto known = sentence(one)) return known;
  std::string pieces;
  for (const std::string_view piece : pieces_of(one, ",", from_.blanks_between_words)) {
    const auto part = sentence(piece);
    if (!part) return std::nullopt;
    pieces += (pieces.empty() ? std::string() : std::string(tongue_.comma())) + *part;
  }
  return pieces.empty() ? std::nullopt : std::optional(pieces);
}

std::optional<std::string> Phrasebook::text(std::string_view typed) const {
  const std::string all = folded(typed);
  const std::string_view stop = tongue_.words().blanks_between_words ? "." : "\xE3\x80\x82";
  std::string out;
  for (const std::string_view one : pieces_of(all, ".!;", from_.blanks_between_words)) {
    const std::optional<std::string> known = whole_sentence(one);
    if (!known) return known;
    out += (out.empty() || !tongue_.words().blanks_between_words ? "" : " ") + as_sentence(*known) +
           std::string(stop);
  }
  return out.empty() ? std::nullopt : std::optional(out);
}

std::optional<std::string> Phrasebook::text_partly(std::string_view typed) const {
  std::string out;
  bool any = false;
  while (!typed.empty()) {
    std::size_t end = typed.find_first_of(".!;");
    while (end != typed.npos && end + 1 < typed.size() && typed[end + 1] != ' ')
      end = typed.find_first_of(".!;", end + 1);
    end = end == typed.npos ? typed.size() : end + 1;
    const auto known = text(typed.substr(0, end));
    any = any || known;
    out += (out.empty() ? "" : " ") + (known ? *known : std::string(typed.substr(0, end)));
    typed.remove_prefix(std::min(typed.find_first_not_of(' ', end), typed.size()));
  }
  return any ? std::optional(out) : std::nullopt;
}

} // namespace whorl::writing
