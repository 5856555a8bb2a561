#pragma once

#include "drawing/scene.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace whorl::drawing {

/// How a line of the sheet is set.
struct Lettering {
  double size = 3.2; ///< mm: the em
  Typeface face = Typeface::sans;
  bool bold = false;
  bool italic = false;
  Color color = ink::black;
};

/// The letterings of a sheet.
namespace lettering {
inline constexpr Lettering title{11, Typeface::serif, false, false, ink::black};
inline constexpr Lettering subtitle{4.6, Typeface::serif, false, true, ink::grey};
inline constexpr Lettering terms{3.2, Typeface::sans, false, true, ink::grey};
inline constexpr Lettering part_letter{3.5, Typeface::sans, true, false, ink::paper};
inline constexpr Lettering part_name{5.4, Typeface::serif, true, false, ink::black};
inline constexpr Lettering make{3.3, Typeface::sans, true, false, ink::black};
inline constexpr Lettering note{3.2, Typeface::sans, false, true, ink::grey};
inline constexpr Lettering figure_number{3.1, Typeface::sans, true, false, ink::black};
inline constexpr Lettering caption{3.1, Typeface::sans, false, true, ink::grey};
inline constexpr Lettering heading{4, Typeface::serif, true, false, ink::black};
inline constexpr Lettering legend_name{3.2, Typeface::sans, true, false, ink::black};
inline constexpr Lettering legend_words{3.1, Typeface::sans, false, false, ink::black};
inline constexpr Lettering closing{3.1, Typeface::sans, false, false, ink::black};
} // namespace lettering

/// The same lettering at another size.
Lettering at_size(Lettering lettering, double size);

/// Width of a text so set, in mm.
double width_of(std::string_view text, const Lettering& lettering);

/// A text so set, with its width.
Text written(std::string text, const Lettering& lettering, Point at, Anchor anchor = Anchor::start);

/// A word of a text, or a piece of one that a line may break behind, measured once to be set in lines of
/// several widths. A glued one follows the piece before without a blank.
struct Word {
  std::string text;
  double width = 0;
  bool glued = false;
};
std::vector<Word> words_of(std::string_view text, const Lettering& lettering);

/// Breaks a text into lines no wider than `width`, evened out; the first begins `indent` further in. Breaks
/// fall between words, between the letters of scripts without blanks, and inside another word only where it is
/// wider than a line. Beyond `most` lines it ends in
/// "…".
std::vector<std::string> wrap(std::string_view text, const Lettering& lettering, double width,
                              double indent = 0, std::size_t most = 12);
std::vector<std::string> wrap(const std::vector<Word>& words, const Lettering& lettering, double width,
                              double indent = 0, std::size_t most = 12);

} // namespace whorl::drawing
