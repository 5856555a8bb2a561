#include "pattern/terms.hpp"

#include "words/ascii.hpp"

#include <algorithm>
#include <array>

namespace whorl::pattern {

namespace {

constexpr std::size_t longest_token = 16;
constexpr int far = 1000;

/// A run of letters or of digits, in small letters.
struct Token {
  Span span;
  std::string_view text; ///< "" if it is longer than any word that tells
  int number = -1;
  bool capitals = false;
  bool blank_behind = false;
};

using words::is_capital;
using words::is_digit;
bool is_letter(char c) { return (c >= 'a' && c <= 'z') || is_capital(c); }

template <std::size_t n> bool is_one_of(std::string_view word, const std::array<std::string_view, n>& words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

constexpr std::array<std::string_view, 5> us_stitches{"sc", "scs", "hdc", "hdcs", "hdctog"};
constexpr std::array<std::string_view, 8> uk_stitches{"htr", "htrs", "exdc", "ttr",
                                                      "qtr", "rtrf", "rtrb", "htrtog"};
constexpr std::array<std::string_view, 4> us_words{"sk", "skip", "gauge", "skips"};
constexpr std::array<std::string_view, 5> uk_words{"miss", "missing", "tension", "yrh", "yoh"};
constexpr std::array<std::string_view, 7> words_for_terms{
    "terms", "term", "terminology", "abbreviations", "abbreviation", "names", "notation"};
constexpr std::array<std::string_view, 7> words_for_rounds{"r",      "rnd", "rnds", "round",
                                                           "rounds", "row", "rows"};
/// What may stand between a starting chain and the stitch that it is as high as.
constexpr std::array<std::string_view, 22> between_chain_and_stitch{
    "counts", "count", "counted", "as",   "a",    "an",  "the",        "does",  "not", "doesn", "t",
    "st",     "sts",   "stitch",  "turn", "here", "and", "throughout", "first", "now", "then",  "is"};

/// What a text shows of its terms.
struct Shown {
  int us_stitch = 0, uk_stitch = 0;
  int us_word = 0, uk_word = 0;
  int us_height = 0, uk_height = 0;
  int dc = 0, in_first_ring = -1;
  std::string us_says, uk_says; ///< the first of each
  std::string stated;
  Span stated_span;
};

/// The words of one line, looked through for what tells of terms.
class LineOfWords {
public:
  LineOfWords(std::string_view text, std::uint32_t begin) {
    for (std::size_t at = 0; at < text.size() && count_ < most;) {
      if (!is_letter(text[at]) && !is_digit(text[at])) {
        ++at;
        continue;
      }
      const bool digits = is_digit(text[at]);
      std::size_t end = at;
      while (end < text.size() && (digits ? is_digit(text[end]) : is_letter(text[end]))) ++end;
      put(text.substr(at, end - at), begin + static_cast<std::uint32_t>(at));
      tokens_[count_ - 1].blank_behind = end < text.size() && text[end] == ' ';
      join_letters(text, begin);
      at = end;
    }
  }

  void show(Shown& shown) const {
    if (shown.stated.empty()) find_stated(shown);
    if (!names_terms()) show_words(shown);
    show_chains(shown);
    show_ring(shown);
  }

private:
  static constexpr std::size_t most = 200; ///< words of a line that are looked at

  void put(std::string_view text, std::uint32_t begin) {
    Token& token = tokens_[count_];
    std::array<char, longest_token>& letters = letters_[count_];
    ++count_;
    token = {};
    token.span = {begin, begin + static_cast<std::uint32_t>(text.size())};
    if (is_digit(text.front())) token.number = number_of(text);
    if (text.size() > longest_token || token.number >= 0) return;
    for (std::size_t i = 0; i < text.size(); ++i)
      letters[i] = is_capital(text[i]) ? static_cast<char>(text[i] + ('a' - 'A')) : text[i];
    token.text = {letters.data(), text.size()};
    token.capitals = std::all_of(text.begin(), text.end(), is_capital);
  }

  /// `d.c.`, `d c`, `h. tr.`: old books set the letters of an abbreviation apart.
  void join_letters(std::string_view text, std::uint32_t begin) {
    if (count_ < 2) return;
    Token& before = tokens_[count_ - 2];
    const Token& last = tokens_[count_ - 1];
    if (before.text.empty() || before.text.size() > 2 || last.text.empty()) return;
    const std::string_view between = text.substr(before.span.end - begin, last.span.begin - before.span.end);
    if (between != "." && between != " " && between != ". ") return;
    const bool joins =
        (last.text == "c" && (before.text == "s" || before.text == "d" || before.text == "hd")) ||
        (last.text == "tr" && (before.text == "h" || before.text == "d")) ||
        (last.text == "d" && before.text == "h") || (last.text == "dc" && before.text == "h");
    if (!joins) return;
    std::array<char, longest_token>& letters = letters_[count_ - 2];
    std::copy(last.text.begin(), last.text.end(),
              letters.begin() + static_cast<std::ptrdiff_t>(before.text.size()));
    before.text = {letters.data(), before.text.size() + last.text.size()};
    before.span.end = last.span.end;
    before.blank_behind = last.blank_behind;
    --count_;
  }

  static int number_of(std::string_view digits) {
    int number = 0;
    for (const char c : digits.substr(0, 4)) number = number * 10 + (c - '0');
    return digits.size() > 4 ? far : number;
  }

  std::string_view word(std::size_t at) const { return at < count_ ? tokens_[at].text : std::string_view{}; }

  /// "US" or "UK" if the word at a place names them, else "".
  std::string_view ocean(std::size_t at) const {
    const std::string_view text = word(at);
    if (text == "american" || (text == "us" && (tokens_[at].capitals || is_terms(at + 1)))) return "US";
    if (text == "usa" && tokens_[at].capitals) return "US";
    if (text == "uk" || text == "british") return "UK";
    const bool english = text == "english" && (is_terms(at + 1) || word(at + 1) == "ones");
    return english ? "UK" : std::string_view{};
  }

  bool is_terms(std::size_t at) const { return is_one_of(word(at), words_for_terms); }

  bool names_terms() const {
    for (std::size_t at = 0; at < count_; ++at)
      if (!ocean(at).empty()) return true;
    return false;
  }

  /// "UK terms", "US crochet terminology", "written in American English", "Terms: UK".
  bool is_stated(std::size_t at) const {
    if (at > 0 && (word(at - 1) == "not" || word(at - 1) == "no")) return false;
    if (at > 0 && (is_terms(at - 1) || word(at - 1) == "language")) return true;
    if (word(at) == "english" || word(at + 1) == "english") return true;
    for (std::size_t next = at + 1; next < std::min(count_, at + 4); ++next) {
      if (is_terms(next)) return true;
      if (!ocean(next).empty() || tokens_[next].number >= 0) return false;
    }
    return false;
  }

  void find_stated(Shown& shown) const {
    for (std::size_t at = 0; at < count_ && shown.stated.empty(); ++at) {
      const std::string_view terms = ocean(at);
      if (terms.empty() || !is_stated(at)) continue;
      shown.stated = terms;
      shown.stated_span = tokens_[at].span;
    }
  }

  static void count(int& times, std::string& first, std::string_view says) {
    if (times++ == 0) first = says;
  }

  void show_words(Shown& shown) const {
    for (std::size_t at = 0; at < count_; ++at) {
      const std::string_view text = word(at);
      const std::string_view next = word(at + 1);
      if (is_one_of(text, us_stitches)) count(shown.us_stitch, shown.us_says, text);
      if (is_one_of(text, uk_stitches)) count(shown.uk_stitch, shown.uk_says, text);
      if (text == "single" && (next == "crochet" || next == "crochets"))
        count(shown.us_stitch, shown.us_says, "single crochet");
      if (text == "half" && (next == "double" || next == "doubles"))
        count(shown.us_stitch, shown.us_says, "half double");
      if (text == "half" && (next == "treble" || next == "trebles" || next == "tr"))
        count(shown.uk_stitch, shown.uk_says, "half treble");
      if (is_one_of(text, us_words)) ++shown.us_word, shown.us_says += shown.us_says.empty() ? text : "";
      if (is_one_of(text, uk_words)) ++shown.uk_word, shown.uk_says += shown.uk_says.empty() ? text : "";
      if (text == "dc") ++shown.dc;
    }
  }

  bool is_chain(std::size_t at) const {
    return word(at) == "ch" || word(at) == "chain" || word(at) == "chains" || word(at) == "chs";
  }

  /// `R1`, `Row 1`, `1:` at the head of a line.
  bool is_label(std::size_t at) const {
    if (at == 0) return !tokens_[at].blank_behind;
    return is_one_of(word(at - 1), words_for_rounds);
  }

  /// How many chains high a US dc, tr, dtr is; 0 for other words.
  static int height(std::string_view text) {
    if (text == "dc" || text == "double") return 3;
    if (text == "tr" || text == "treble") return 4;
    if (text == "dtr") return 5;
    return 0;
  }

  /// A chain that is as high as a stitch tells how high that is: one less in UK terms.
  static void weigh(Shown& shown, int chains, int us_height) {
    if (us_height == 0) return;
    if (chains == us_height || (us_height == 3 && chains == 2)) ++shown.us_height;
    if (chains == us_height - 1 && us_height > 3) ++shown.uk_height;
    if (chains == 1 && us_height == 3) ++shown.uk_height;
  }

  /// Chains between two legs stand for no stitch.
  bool names_leg() const {
    for (std::size_t at = 0; at < count_; ++at)
      if (word(at) == "leg" || word(at) == "legs" || word(at) == "foot" || word(at) == "boot") return true;
    return false;
  }

  void show_chains(Shown& shown) const {
    if (names_leg()) return;
    for (std::size_t at = 0; at + 1 < count_; ++at) {
      if (is_chain(at) && word(at + 1) == "from") return show_first_chain(shown, at);
      if (height(word(at)) != 0) return show_from_hook(shown, at);
      const bool behind = is_chain(at) && tokens_[at + 1].number > 0;
      const bool before = tokens_[at].number > 0 && is_chain(at + 1) && !is_label(at);
      if (!behind && !before) continue;
      const int chains = tokens_[behind ? at + 1 : at].number;
      if (chains <= 5 && forms_ring(at + 2)) continue;
      if (chains <= 5) weigh(shown, chains - chains_beside(at + 2, chains), height_behind(at + 2));
      if (chains <= 5) return;
    }
  }

  /// "Ch 4, join with a sl st", "chain 4 and slip stitch to the first chain": these are no stitch.
  bool forms_ring(std::size_t at) const {
    if (word(at) == "and" || word(at) == ",") ++at;
    return word(at) == "join" || word(at) == "sl" || word(at) == "ss" || word(at) == "slip";
  }

  /// "Ch 4 (counts as dc and ch 1), …": so many of the chains stand beside the stitch.
  int chains_beside(std::size_t at, int chains) const {
    while (at < count_ && height(word(at)) == 0) ++at;
    while (at + 1 < count_ && !is_chain(at + 1) && (word(at + 1) == "crochet" || word(at + 1) == "and")) ++at;
    const bool beside = at + 2 < count_ && is_chain(at + 1) && tokens_[at + 2].number > 0;
    return chains > 3 && beside && tokens_[at + 2].number <= 2 ? tokens_[at + 2].number : 0;
  }

  /// The height of the first stitch behind a starting chain, 0 if other work stands between.
  int height_behind(std::size_t at) const {
    for (; at < count_; ++at) {
      if (height(word(at)) != 0) return height(word(at));
      if (tokens_[at].number < 0 && !is_one_of(word(at), between_chain_and_stitch)) return 0;
    }
    return 0;
  }

  /// "dc in 2nd ch from hook": a stitch misses as many chains as it is high.
  void show_from_hook(Shown& shown, std::size_t stitch) const {
    for (std::size_t at = stitch; at + 1 < count_ && at < stitch + 7; ++at)
      if (is_chain(at) && word(at + 1) == "from") weigh(shown, nth_before(at) - 1, height(word(stitch)));
  }

  /// "in 2nd ch from hook, dc …".
  void show_first_chain(Shown& shown, std::size_t chain) const {
    for (std::size_t at = chain; at < std::min(count_, chain + 8); ++at)
      if (height(word(at)) != 0) return weigh(shown, nth_before(chain) - 1, height(word(at)));
  }

  int nth_before(std::size_t chain) const {
    if (chain >= 1 && word(chain - 1) == "second") return 2;
    if (chain >= 1 && word(chain - 1) == "third") return 3;
    if (chain >= 1 && word(chain - 1) == "fourth") return 4;
    return chain >= 2 ? tokens_[chain - 2].number : -1;
  }

  bool is_ring(std::size_t at) const {
    const std::string_view text = word(at);
    return text == "ring" || text == "mr" || text == "mc" || text == "loop" || text == "circle" ||
           text == "ka";
  }

  /// How many dc the first ring holds.
  void show_ring(Shown& shown) const {
    if (shown.in_first_ring >= 0) return;
    bool ring = false;
    int dc = -1;
    for (std::size_t at = 0; at < count_; ++at) {
      ring = ring || is_ring(at);
      if (word(at) != "dc") continue;
      if (at > 0 && tokens_[at - 1].number > 0) dc = std::max(dc, tokens_[at - 1].number);
      if (at + 1 < count_ && tokens_[at + 1].number > 0) dc = std::max(dc, tokens_[at + 1].number);
    }
    if (ring) shown.in_first_ring = dc;
  }

  std::array<Token, most> tokens_{};
  std::array<std::array<char, longest_token>, most> letters_{};
  std::size_t count_ = 0;
};

Shown look_through(const Source& source) {
  Shown shown;
  for (std::size_t i = 0; i < source.line_count(); ++i) {
    const Span line = source.line(i);
    if (!line.empty()) LineOfWords(source.at(line), line.begin).show(shown);
  }
  return shown;
}

constexpr int most_sc_in_ring = 8; ///< a flat ring of sc; of dc it is about twelve

/// A toy all of dc, begun as single crochet is.
bool is_shortest(const Shown& shown) {
  return shown.dc >= 2 && shown.us_word == 0 && shown.in_first_ring > 0 &&
         shown.in_first_ring <= most_sc_in_ring;
}

struct Found {
  std::string_view region;
  Terms::From from = Terms::From::nothing;
  std::string_view word = {};
};

Found found_out(const Shown& shown) {
  if (shown.us_stitch > shown.uk_stitch) return {"US", Terms::From::word, shown.us_says};
  if (shown.uk_stitch > 0) return {"UK", Terms::From::word, shown.uk_says};
  if (shown.uk_height > shown.us_height) return {"UK", Terms::From::chains};
  if (shown.us_height > shown.uk_height) return {"US", Terms::From::chains};
  if (shown.uk_word > shown.us_word && shown.dc > 0) return {"UK", Terms::From::word, shown.uk_says};
  if (is_shortest(shown)) return {"UK", Terms::From::shortest};
  return {};
}

/// The vocabulary of the wanted terms: the given one or a dialect of it; nullptr if neither has them.
const words::Vocabulary* vocabulary_of(std::string_view region, const words::Vocabulary& given) {
  if (terms_of(given.language) == region) return &given;
  for (const words::LanguageName& dialect : words::known_vocabularies())
    if (dialect.extends == given.language && terms_of(dialect.language) == region)
      return words::find_vocabulary(dialect.language);
  return nullptr;
}

std::string quoted_word(std::string_view word) { return "`" + std::string(word) + "`"; }

/// Says other terms than the only stitches that tell: `sc` is no UK stitch.
bool contradicts(const Shown& shown) {
  if (shown.stated == "UK") return shown.us_stitch > 0 && shown.uk_stitch == 0;
  return shown.stated == "US" && shown.uk_stitch > 0 && shown.us_stitch == 0;
}

std::string because(const Terms& terms) {
  switch (terms.from) {
  case Terms::From::word:
    return ", because the pattern says " + quoted_word(terms.word);
  case Terms::From::chains:
    return ", because of the height of the chains before its first stitches";
  case Terms::From::shortest:
    return ", because dc is the pattern's shortest stitch";
  default:
    return {};
  }
}

} // namespace

std::string terms_of(std::string_view language) {
  const std::size_t dash = language.rfind('-');
  const std::string_view region = dash == std::string_view::npos ? language : language.substr(dash + 1);
  return region == "GB" ? "UK" : std::string(region);
}

namespace {

/// Only English has terms that go by the same words.
bool has_terms(const words::Vocabulary& given) { return given.language.substr(0, 2) == "en"; }

} // namespace

Terms find_terms(const Source& source, const words::Vocabulary& given) {
  if (!has_terms(given)) {
    Terms terms;
    terms.vocabulary = &given;
    terms.from = Terms::From::stated;
    return terms;
  }
  const Shown shown = look_through(source);
  const Found found = found_out(shown);
  Terms terms;
  if (!shown.stated.empty()) terms.stated = source.at(shown.stated_span);
  terms.stated_span = shown.stated_span;
  terms.contradicts = contradicts(shown);
  const bool follows_text = !shown.stated.empty() && !terms.contradicts;
  terms.from = follows_text ? Terms::From::stated : found.from;
  terms.word = found.word;
  terms.vocabulary = vocabulary_of(follows_text ? std::string_view(shown.stated) : found.region, given);
  if (terms.vocabulary != nullptr) return terms;
  terms.vocabulary = &given;
  terms.from = Terms::From::nothing;
  terms.contradicts = !shown.stated.empty();
  terms.word.clear();
  return terms;
}

std::optional<Finding> tell_terms(const Terms& terms) {
  const std::string name = terms_of(terms.vocabulary->language);
  Finding finding;
  if (terms.contradicts) {
    finding.severity = Severity::warning;
    finding.code = "terms";
    finding.span = terms.stated_span;
    finding.message =
        "the pattern says " + quoted_word(terms.stated) +
        (terms.word.empty() ? ", and" : ", but " + quoted_word(terms.word) + " is a " + name + " word;") +
        " its words are read in " + name + " terms";
    return finding;
  }
  if (terms.from == Terms::From::stated) return std::nullopt;
  finding.severity = Severity::note;
  finding.code = "language";
  finding.message = "the words are read in " + name + " terms" + because(terms) + "; a line `Terms: " + name +
                    "` in the pattern says so";
  return finding;
}

std::string spoken(std::string_view kind, const words::Vocabulary& vocabulary) {
  const words::Concept whole = words::find_concept(vocabulary, kind);
  if (whole != words::no_concept) return std::string(words::written_form(vocabulary, whole));
  const std::size_t digits = kind.find_first_of("0123456789");
  if (digits == std::string_view::npos || digits == 0) return std::string(kind);
  const words::Concept base = words::find_concept(vocabulary, kind.substr(0, digits));
  if (base == words::no_concept) return std::string(kind);
  return std::string(words::written_form(vocabulary, base)).append(kind.substr(digits));
}

std::string spoken(std::string_view kind, std::string_view language) {
  const words::Vocabulary* vocabulary = words::find_vocabulary(language);
  return vocabulary == nullptr ? std::string(kind) : spoken(kind, *vocabulary);
}

} // namespace whorl::pattern
