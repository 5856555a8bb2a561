#include "drawing/lettering.hpp"

#include "drawing/type.hpp"
#include "drawing/wide_letters.hpp"

#include <utf8proc.h>

#include <algorithm>
#include <deque>

namespace whorl::drawing {
namespace {

using Strings = std::vector<std::string>;

bool is_blank(char c) { return c == ' ' || (c >= '\t' && c <= '\r'); }

/// The letters of a word as a reader sees them: a base with all that is set on it stays whole.
Strings letters_of(const std::string& word) {
  Strings letters;
  const auto* bytes = reinterpret_cast<const utf8proc_uint8_t*>(word.data());
  utf8proc_int32_t before = 0, state = 0;
  for (std::size_t i = 0; i < word.size();) {
    utf8proc_int32_t code = 0;
    const auto read = utf8proc_iterate(bytes + i, static_cast<utf8proc_ssize_t>(word.size() - i), &code);
    const std::size_t length = read > 0 ? static_cast<std::size_t>(read) : 1;
    const bool begins =
        letters.empty() || read <= 0 || utf8proc_grapheme_break_stateful(before, code, &state);
    if (begins) letters.emplace_back();
    letters.back() += word.substr(i, length);
    before = code;
    i += length;
  }
  return letters;
}

/// Pieces of a word, none wider than a line unless it is a single letter.
Strings pieces_of(const std::string& word, const Lettering& lettering, double width) {
  if (width_of(word, lettering) <= width) return {word};
  Strings pieces{""};
  for (const std::string& letter : letters_of(word)) {
    if (!pieces.back().empty() && width_of(pieces.back() + letter, lettering) > width) pieces.emplace_back();
    pieces.back() += letter;
  }
  return pieces;
}

/// A word, or a piece of one; `glued` pieces follow without a blank.
struct Piece {
  std::string_view text;
  double width = 0;
  bool glued = false;
};

/// Words with what is too wide for a line taken apart, which is kept in `apart`.
struct Pieces {
  std::vector<Piece> all;
  std::deque<std::string> apart;
};

void take_apart(const Word& word, const Lettering& lettering, double width, Pieces& pieces) {
  bool glued = word.glued;
  for (std::string& piece : pieces_of(word.text, lettering, width)) {
    pieces.apart.push_back(std::move(piece));
    pieces.all.push_back({pieces.apart.back(), width_of(pieces.apart.back(), lettering), glued});
    glued = true;
  }
}

/// The pieces that fill lines as long as `enough` together. They last as long as the words.
Pieces pieces_of(const std::vector<Word>& words, const Lettering& lettering, double width, double enough) {
  Pieces pieces;
  for (const Word& word : words) {
    if (enough < 0) break;
    enough -= word.width;
    if (word.width <= width)
      pieces.all.push_back({word.text, word.width, word.glued});
    else
      take_apart(word, lettering, width, pieces);
  }
  return pieces;
}

struct Measure {
  double width = 0, indent = 0, blank = 0;
};

/// Fills lines greedily; tells the index of the first piece of each.
template <class Tell> void fill_lines(const std::vector<Piece>& pieces, const Measure& measure, Tell tell) {
  double filled = 0;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const double gap = pieces[i].glued ? 0 : measure.blank;
    const bool fits = i > 0 && filled + gap + pieces[i].width <= measure.width;
    filled = fits ? filled + gap + pieces[i].width : (i == 0 ? measure.indent : 0) + pieces[i].width;
    if (!fits) tell(i);
  }
}

std::vector<std::size_t> line_starts(const std::vector<Piece>& pieces, const Measure& measure) {
  std::vector<std::size_t> starts;
  fill_lines(pieces, measure, [&starts](std::size_t piece) { starts.push_back(piece); });
  return starts;
}

std::size_t lines_of(const std::vector<Piece>& pieces, const Measure& measure) {
  std::size_t lines = 0;
  fill_lines(pieces, measure, [&lines](std::size_t) { ++lines; });
  return lines;
}

/// The least width that takes no more lines than the full one.
Measure evened(const std::vector<Piece>& pieces, Measure measure) {
  const std::size_t lines = lines_of(pieces, measure);
  double least = measure.indent, enough = measure.width;
  for (const Piece& piece : pieces) least = std::max(least, piece.width);
  if (lines < 2 || least >= enough) return measure;
  for (int halving = 0; halving < 12; ++halving) {
    const double middle = (least + enough) / 2;
    const bool fits = lines_of(pieces, {middle, measure.indent, measure.blank}) <= lines;
    (fits ? enough : least) = middle;
  }
  measure.width = enough;
  return measure;
}

/// The text of the pieces before `end`, line by line.
std::vector<std::string> joined(const std::vector<Piece>& pieces, std::size_t end,
                                const std::vector<std::size_t>& starts) {
  std::vector<std::string> lines(starts.size());
  std::size_t line = 0;
  for (std::size_t i = 0; i < end; ++i) {
    if (line + 1 < starts.size() && i >= starts[line + 1]) ++line;
    if (!lines[line].empty() && !pieces[i].glued) lines[line] += ' ';
    lines[line] += pieces[i].text;
  }
  return lines;
}

} // namespace

double width_of(std::string_view text, const Lettering& lettering) {
  return lettering.size * text_width(lettering.face, lettering.bold, lettering.italic, text);
}

Lettering at_size(Lettering lettering, double size) {
  lettering.size = size;
  return lettering;
}

Text written(std::string text, const Lettering& lettering, Point at, Anchor anchor) {
  Text set;
  set.width = width_of(text, lettering);
  set.text = std::move(text);
  set.at = at;
  set.size = lettering.size;
  set.face = lettering.face;
  set.bold = lettering.bold;
  set.italic = lettering.italic;
  set.anchor = anchor;
  set.color = lettering.color;
  return set;
}

std::vector<Word> words_of(std::string_view text, const Lettering& lettering) {
  std::vector<Word> words;
  for (std::size_t at = 0; at < text.size();) {
    const auto rest = text.substr(at);
    const auto end = std::find_if(rest.begin(), rest.end(), is_blank);
    const std::string_view word = rest.substr(0, static_cast<std::size_t>(end - rest.begin()));
    if (!word.empty()) {
      bool glued = false;
      for (std::string& piece : breakable_pieces(word)) {
        const double width = width_of(piece, lettering);
        words.push_back({std::move(piece), width, glued});
        glued = true;
      }
    }
    at += word.size() + 1;
  }
  return words;
}

std::vector<std::string> wrap(std::string_view text, const Lettering& lettering, double width, double indent,
                              std::size_t most) {
  return wrap(words_of(text, lettering), lettering, width, indent, most);
}

std::vector<std::string> wrap(const std::vector<Word>& words, const Lettering& lettering, double width,
                              double indent, std::size_t most) {
  const double enough = width * (static_cast<double>(most) + 2);
  const Pieces made = pieces_of(words, lettering, width, enough);
  const std::vector<Piece>& pieces = made.all;
  const Measure measure{width, indent, width_of(" ", lettering)};
  std::vector<std::size_t> starts = line_starts(pieces, measure);
  if (starts.size() <= most)
    return joined(pieces, pieces.size(), line_starts(pieces, evened(pieces, measure)));
  const std::size_t end = starts[most];
  starts.resize(most);
  std::vector<std::string> lines = joined(pieces, end, starts);
  lines.back() += "…";
  return lines;
}

} // namespace whorl::drawing
