#include "writing/tongue.hpp"

#include "words/fold.hpp"
#include "writing/name.hpp"

#include <algorithm>
#include <utility>

namespace whorl::writing {
namespace {

/// Puts `value` where `slot` stands; false if it stands there and there is nothing to put.
bool fill(std::string& text, std::string_view slot, const std::string& value) {
  for (std::size_t at = text.find(slot); at != std::string::npos; at = text.find(slot, at + value.size())) {
    if (value.empty()) return false;
    text.replace(at, slot.size(), value);
  }
  return true;
}

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
         static_cast<unsigned char>(c) >= 0x80;
}

/// "st=stitch|sts=stitches" by the words before the signs.
std::map<std::string, std::string, std::less<>> pairs_of(std::string_view text) {
  std::map<std::string, std::string, std::less<>> pairs;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('|'), text.size());
    const std::string_view pair = text.substr(0, end);
    if (const std::size_t sign = pair.find('='); sign != std::string_view::npos)
      pairs.emplace(pair.substr(0, sign), pair.substr(sign + 1));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return pairs;
}

/// Marks in the place of what is filled in, which is nobody's abbreviation: "\x01" and a letter.
std::vector<std::string> marks_for(const std::vector<std::string>& with) {
  std::vector<std::string> marks;
  for (const std::string& value : with) {
    const bool number = !value.empty() && value.find_first_not_of("0123456789") == std::string::npos;
    marks.push_back(number ? value : std::string("\x01") + static_cast<char>('a' + marks.size()));
  }
  return marks;
}

std::string without_marks(std::string_view text, const std::vector<std::string>& with) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i)
    if (text[i] == '\x01' && i + 1 < text.size() && static_cast<std::size_t>(text[i + 1] - 'a') < with.size())
      out += with[static_cast<std::size_t>(text[++i] - 'a')];
    else
      out += text[i];
  return out;
}

} // namespace

Tongue::Tongue(const words::Vocabulary& words, const Say& say, bool full, Names names,
               std::vector<pattern::OwnName> own)
    : words_(words), say_(say), full_(full), names_(std::move(names)), own_(std::move(own)),
      written_(words.concepts.size()) {
  for (const words::PhraseEntry& entry : words.phrases)
    if (entry.write && entry.means < written_.size() && written_[entry.means].empty())
      written_[entry.means] = entry.phrase;
  if (full_ && has_words(say_, "say-full-words")) full_words_ = pairs_of(say_("say-full-words", {}));
}

std::string Tongue::in_full(std::string_view text) const {
  if (full_words_.empty()) return std::string(text);
  const bool blanks = words_.blanks_between_words;
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    std::string_view longest;
    const std::string* full = nullptr;
    const bool begins = !blanks || at == 0 || !is_letter(text[at - 1]);
    for (const auto& [brief, words] : full_words_) {
      if (!begins || brief.size() <= longest.size() || text.substr(at, brief.size()) != brief) continue;
      const std::size_t end = at + brief.size();
      if (blanks && end < text.size() && is_letter(brief.back()) && is_letter(text[end])) continue;
      longest = brief, full = &words;
    }
    out += full != nullptr ? *full : std::string(1, text[at]);
    at += full != nullptr ? longest.size() : 1;
  }
  return out;
}

std::optional<std::string> Tongue::word(words::Concept means) const {
  if (means >= written_.size()) return std::nullopt;
  if (auto own = own_name(words_.concepts[means].name)) return own;
  return written_[means].empty() ? std::nullopt : std::optional(in_full(written_[means]));
}

std::optional<std::string> Tongue::own_name(std::string_view means, std::uint32_t in_one) const {
  const auto found = std::find_if(own_.begin(), own_.end(), [&](const pattern::OwnName& own) {
    return own.in_one == in_one && (own.means == means || (means == "dec" && own.means == "sc2tog"));
  });
  return found == own_.end() ? std::nullopt : std::optional(found->name);
}

std::optional<std::string> Tongue::word(std::string_view concept_name) const {
  return word(words::find_concept(words_, concept_name));
}

const Names::value_type* Tongue::name_at(std::string_view folded, std::size_t at) const {
  const auto is_letter = [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || static_cast<unsigned char>(c) >= 0x80;
  };
  if (at > 0 && is_letter(folded[at - 1])) return nullptr;
  const Names::value_type* longest = nullptr;
  for (const Names::value_type& name : names_) {
    if (name.first.empty() || folded.substr(at, name.first.size()) != name.first) continue;
    const std::size_t end = at + name.first.size();
    if (end < folded.size() && is_letter(folded[end])) continue;
    if (longest == nullptr || name.first.size() > longest->first.size()) longest = &name;
  }
  return longest;
}

std::string Tongue::named(std::string_view text) const {
  const words::Folded folded = words::fold(text);
  std::string out;
  for (std::size_t at = 0; at < folded.text.size();) {
    const Names::value_type* const name = name_at(folded.text, at);
    const std::size_t end = name != nullptr ? at + name->first.size() : at + 1;
    const words::Span span = folded.span(at, end);
    out += name != nullptr && !name->second.empty() ? name->second
                                                    : std::string(text.substr(span.begin, span.length()));
    at = end;
  }
  return out;
}

bool Tongue::understands(std::string_view phrase, std::string_view concept_name) const {
  const words::Concept means = words::find_concept(words_, concept_name);
  const std::string folded = words::fold(phrase).text;
  return std::any_of(words_.phrases.begin(), words_.phrases.end(), [&](const words::PhraseEntry& entry) {
    return entry.means == means && !entry.write && entry.phrase == folded;
  });
}

std::string Tongue::longest_phrase(std::string_view concept_name) const {
  const words::Concept means = words::find_concept(words_, concept_name);
  const auto blanks = [](const std::string& text) { return std::count(text.begin(), text.end(), ' '); };
  std::string longest;
  for (const words::PhraseEntry& entry : words_.phrases)
    if (entry.means == means && !entry.write && blanks(entry.phrase) > blanks(longest))
      longest = entry.phrase;
  return longest;
}

std::optional<std::string> Tongue::row(std::string_view id, const Slots& slots) const {
  const auto row = std::find_if(words_.rows.begin(), words_.rows.end(),
                                [id](const words::RowEntry& entry) { return entry.id == id; });
  if (id.empty() || row == words_.rows.end() || row->write.empty()) return std::nullopt;
  const std::string own = "say-full-" + std::string(id);
  if (full_ && has_words(say_, own)) return say_(own, {slots.n, slots.stitch, slots.list, slots.loops});
  for (const std::string& changing : {"say-one-" + std::string(id), "say-row-" + std::string(id)})
    if (has_words(say_, changing) && (slots.n == "1" || changing.compare(0, 8, "say-one-") != 0))
      return sentence(changing, {slots.n, slots.stitch, slots.list, slots.loops});
  std::string text = in_full(row->write);
  if (!fill(text, "{n}", slots.n) || !fill(text, "{stitch}", slots.stitch) ||
      !fill(text, "{list}", slots.list) || !fill(text, "{loops}", slots.loops))
    return std::nullopt;
  return text;
}

std::optional<std::string> Tongue::sentence(const std::string& id,
                                            const std::vector<std::string>& with) const {
  if (full_ && has_words(say_, "say-full-" + id)) return say_("say-full-" + id, with);
  if (!has_words(say_, id)) return std::nullopt;
  if (full_words_.empty()) return say_(id, with);
  return without_marks(in_full(say_(id, marks_for(with))), with);
}

std::optional<std::string> Tongue::full_stitch(const std::string& kind, std::uint64_t count) const {
  const std::string counted = "say-stitches-" + kind;
  if (has_words(say_, counted)) return say_(counted, {std::to_string(count)});
  return has_words(say_, "stitch-" + kind) ? std::optional(say_("stitch-" + kind, {})) : std::nullopt;
}

std::optional<std::string> Tongue::stitch(const pattern::Tree& tree, stitch::KindId kind,
                                          std::uint64_t count) const {
  if (kind >= tree.kinds.size()) return std::nullopt;
  const stitch::StitchKind& entry = tree.kinds[kind];
  if (entry.own && !stitch::find_kind(stitch::standard_kinds(), entry.name)) return entry.name;
  if (full_)
    if (auto full = full_stitch(entry.name, count)) return full;
  if (auto own = own_name(entry.name)) return own;
  if (auto known = word(entry.name)) return known;
  const auto gathered = gathered_of(entry.name);
  const auto of = gathered ? word(gathered->of) : std::nullopt, as = gathered ? word(gathered->as) : of;
  return of && as ? row("many-of-stitch", {gathered->number, *of, *as, {}}) : std::nullopt;
}

std::optional<Gathered> gathered_of(std::string_view kind) {
  const std::size_t digits = kind.find_first_of("0123456789");
  if (digits == 0 || digits == std::string_view::npos) return std::nullopt;
  const std::size_t end = kind.find_first_not_of("0123456789", digits);
  if (end == std::string_view::npos || kind.substr(end) == "tog") return std::nullopt;
  return Gathered{std::string(kind.substr(0, digits)), std::string(kind.substr(digits, end - digits)),
                  std::string(kind.substr(end))};
}

std::optional<Together> together_of(std::string_view kind) {
  constexpr std::string_view ending = "tog";
  if (kind.size() <= ending.size() || kind.substr(kind.size() - ending.size()) != ending) return std::nullopt;
  const std::string_view front = kind.substr(0, kind.size() - ending.size());
  const std::size_t digits = front.find_last_not_of("0123456789") + 1;
  if (digits == 0 || digits == front.size()) return std::nullopt;
  return Together{std::string(front.substr(0, digits)), std::string(front.substr(digits))};
}

} // namespace whorl::writing
