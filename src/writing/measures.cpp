#include "writing/measures.hpp"

#include "words/ascii.hpp"

#include <algorithm>
#include <vector>

namespace whorl::writing {
namespace {

using words::is_digit;

/// Hooks: hundredths of a millimetre and the US name. Craft Yarn Council, *Hooks and Needles*: rows that
/// sources quote, and those that trade charts have alike; a letter of several sizes (G, I, J, Q) only with
/// its number. Letters and numbers vary by maker, so millimetres stand first.
struct Hook {
  int size;
  std::string_view name;
};
constexpr Hook hooks[] = {
    {225, "B-1"},          {275, "C-2"},  {325, "D-3"},    {350, "E-4"},    {375, "F-5"},
    {400, "G-6"},          {450, "7"},    {500, "H-8"},    {550, "I-9"},    {600, "J-10"},
    {650, "K-10\xC2\xBD"}, {800, "L-11"}, {900, "M/N-13"}, {1000, "N/P-15"}};

/// A number in hundredths, where it stands and where it ends; `begin` == `end`: there is none.
struct Number {
  std::size_t begin = 0, end = 0, point = std::string_view::npos;
  long hundredths = 0;
};

Number number_at(std::string_view text, std::size_t at) {
  Number number{at, at, std::string_view::npos, 0};
  if (at > 0 && (is_digit(text[at - 1]) ||
                 (at > 1 && (text[at - 1] == '.' || text[at - 1] == ',') && is_digit(text[at - 2]))))
    return number;
  int places = -1;
  for (; number.end < text.size() && number.hundredths < 100'000; ++number.end) {
    const char c = text[number.end];
    const bool point = (c == '.' || c == ',') && places < 0 && number.end + 1 < text.size() &&
                       is_digit(text[number.end + 1]);
    if (point && number.end > at) {
      places = 0, number.point = number.end;
      continue;
    }
    if (!is_digit(c)) break;
    number.hundredths = number.hundredths * 10 + (c - '0');
    if (places >= 0) ++places;
  }
  for (places = std::max(places, 0); places < 2 && number.end > at; ++places) number.hundredths *= 10;
  return number;
}

std::size_t behind_blanks(std::string_view text, std::size_t at) {
  while (at < text.size() && (text[at] == ' ' || text[at] == '-')) ++at;
  return at;
}

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) >= 0x80;
}

/// Where a unit that stands at a place ends; `at`: it is another word.
std::size_t end_of_unit(std::string_view text, std::size_t at, std::string_view unit) {
  if (text.substr(at, unit.size()) != unit) return at;
  const std::size_t end = at + unit.size();
  return end < text.size() && is_letter(text[end]) && is_letter(unit.back()) ? at : end;
}

constexpr std::string_view metric[] = {"mm", "cm", "g", "m", "мм", "см", "г", "м", "毫米", "厘米", "克"};
constexpr std::string_view inch[] = {"inches", "inch", "in", "\""};

std::size_t end_of_inch(std::string_view text, std::size_t at) {
  for (const std::string_view unit : inch)
    if (const std::size_t end = end_of_unit(text, at, unit); end > at) return end;
  return at;
}

std::string decimal(long hundredths, const Measuring& to) {
  std::string text = std::to_string(hundredths / 100);
  if (hundredths % 100 == 0) return text;
  text += to.comma ? "," : ".";
  text += static_cast<char>('0' + hundredths % 100 / 10);
  if (hundredths % 10 != 0) text += static_cast<char>('0' + hundredths % 10);
  return text;
}

/// In centimetres, to the next half.
std::string centimetres(long hundredths_of_inch, const Measuring& to) {
  const long halves = (hundredths_of_inch * 254 + 2500) / 5000;
  return decimal(std::max(halves, 1L) * 50, to);
}

/// To the next quarter of an inch.
std::string inches(long hundredths_of_centimetre) {
  const long quarters = std::max((hundredths_of_centimetre * 4 + 127) / 254, 1L);
  static constexpr std::string_view parts[] = {"", "\xC2\xBC", "\xC2\xBD", "\xC2\xBE"};
  const std::string whole = quarters / 4 > 0 ? std::to_string(quarters / 4) : std::string();
  return whole + std::string(parts[quarters % 4]) + " in";
}

bool has_unit(std::string_view text, std::string_view unit) {
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (!is_digit(text[at])) continue;
    const Number number = number_at(text, at);
    if (number.end > at &&
        end_of_unit(text, behind_blanks(text, number.end), unit) > behind_blanks(text, number.end))
      return true;
  }
  return false;
}

/// A unit at a place that both languages have.
struct Unit {
  std::size_t begin = 0, end = 0; ///< equal: none
  std::string_view written;
};
Unit unit_at(std::string_view text, std::size_t at, const Measuring& from, const Measuring& to) {
  const std::size_t begin = behind_blanks(text, at);
  const std::pair<const std::string*, const std::string*> units[] = {
      {&from.mm, &to.mm}, {&from.cm, &to.cm}, {&from.g, &to.g}};
  for (const auto& [own, other] : units)
    if (const std::size_t end = end_of_unit(text, begin, *own); end > begin) return {begin, end, *other};
  return {begin, begin, {}};
}

/// The number with the mark that the language has in it, where a metric unit stands behind it.
std::string as_written(std::string_view text, const Number& number, const Measuring& to) {
  std::string out(text.substr(number.begin, number.end - number.begin));
  const std::size_t unit = behind_blanks(text, number.end);
  const bool known = std::any_of(std::begin(metric), std::end(metric),
                                 [&](std::string_view one) { return end_of_unit(text, unit, one) > unit; });
  if (known && number.point != std::string_view::npos)
    out[number.point - number.begin] = to.comma ? ',' : '.';
  return out;
}

/// "2 | x 2 inches": whether the number before is one side of what is measured in inches.
bool is_side_in_inches(std::string_view text, std::size_t at) {
  if (text.substr(at, 2) != "x ") return false;
  const std::size_t begin = behind_blanks(text, at + 1);
  if (begin >= text.size() || !is_digit(text[begin])) return false;
  const std::size_t unit = behind_blanks(text, number_at(text, begin).end);
  return end_of_inch(text, unit) > unit;
}

/// "12 cm | (4.7 in)": where a bracket ends that says the same in inches; `at` if none stands there.
std::size_t behind_inches(std::string_view text, std::size_t at) {
  const std::size_t open = text.find_first_not_of(' ', at);
  if (open == text.npos || text[open] != '(' || open + 1 >= text.size() || !is_digit(text[open + 1]))
    return at;
  const std::size_t unit = behind_blanks(text, number_at(text, open + 1).end), end = end_of_inch(text, unit);
  return end > unit && end < text.size() && text[end] == ')' ? end + 1 : at;
}

/// "3.5 mm | (US E/4)": whether what stands behind millimetres is nothing but that hook's own name.
bool only_names_hook(std::string_view behind, long hundredths) {
  const std::size_t open = behind.find_first_not_of(' ');
  if (open == behind.npos) return true;
  if (behind[open] != '(' || behind.back() != ')') return false;
  std::string name(behind.substr(open + 1, behind.size() - open - 2));
  for (const std::string_view lead : {"size ", "US ", "U.S. "})
    if (name.substr(0, lead.size()) == lead) name.erase(0, lead.size());
  std::replace(name.begin(), name.end(), '/', '-');
  return std::any_of(std::begin(hooks), std::end(hooks), [&](const Hook& one) {
    return one.size == hundredths && (name == one.name || one.name.substr(0, one.name.find('-')) == name);
  });
}

} // namespace

std::string measured(std::string_view text, const Measuring& from, const Measuring& to) {
  std::string out;
  const bool has_metric = has_unit(text, "cm"),
             has_inches = text.find("in") != text.npos || text.find('"') != text.npos;
  for (std::size_t at = 0; at < text.size();) {
    const Number number = is_digit(text[at]) ? number_at(text, at) : Number{at, at, 0, 0};
    if (number.end == at) {
      const std::size_t behind = has_metric && from.inches && !to.inches ? behind_inches(text, at) : at;
      if (behind == at) out += text[at++];
      at = std::max(at, behind);
      continue;
    }
    const std::size_t unit = behind_blanks(text, number.end), inch_end = end_of_inch(text, unit);
    const std::size_t cm_end = end_of_unit(text, unit, from.cm);
    const Unit known = unit_at(text, number.end, from, to);
    if (from.inches && !to.inches && !has_metric && inch_end > unit) {
      out += centimetres(number.hundredths, to) + " " + to.cm;
      at = inch_end;
    } else if (from.inches && !to.inches && !has_metric && is_side_in_inches(text, unit)) {
      out += centimetres(number.hundredths, to);
      at = number.end;
    } else if (!from.inches && to.inches && cm_end > unit && !has_inches) {
      out += as_written(text, number, to) + " " + to.cm + " (" + inches(number.hundredths) + ")";
      at = cm_end;
    } else if (known.end > known.begin) {
      out += as_written(text, number, to) + std::string(text.substr(number.end, known.begin - number.end));
      out += known.written;
      at = known.end;
    } else {
      out += as_written(text, number, to);
      at = number.end;
    }
  }
  return out;
}

std::optional<std::string> hook_size(std::string_view text, const Measuring& from, const Measuring& to) {
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (!is_digit(text[at])) continue;
    const Number number = number_at(text, at);
    const std::size_t unit = behind_blanks(text, number.end);
    if (number.end == at || end_of_unit(text, unit, from.mm) == unit) continue;
    const std::size_t behind = std::min(unit + from.mm.size(), text.size());
    const bool alone = at == 0 && (behind == text.size() ||
                                   (from.inches && only_names_hook(text.substr(behind), number.hundredths)));
    if (!alone) return std::nullopt;
    const auto hook = std::find_if(std::begin(hooks), std::end(hooks),
                                   [&](const Hook& one) { return one.size == number.hundredths; });
    const std::string size = as_written(text, number, to) + " " + to.mm;
    const bool named = to.inches && hook != std::end(hooks);
    return named ? size + " (US " + std::string(hook->name) + ")" : size;
  }
  std::string_view name = text;
  for (const std::string_view lead : {"size ", "Size ", "US ", "U.S. "})
    if (name.substr(0, lead.size()) == lead) name.remove_prefix(lead.size());
  std::string plain(name);
  std::replace(plain.begin(), plain.end(), '/', '-');
  for (const Hook& hook : hooks)
    if (from.inches && !to.inches && is_letter(hook.name.front()) &&
        (plain == hook.name || name == hook.name))
      return decimal(hook.size, to) + " " + to.mm;
  return std::nullopt;
}

bool is_measure(std::string_view text) {
  if (text.empty() || !is_digit(text.front())) return false;
  for (std::size_t at = 0; at < text.size();) {
    if (is_digit(text[at]) || std::string_view(" .,()/-").find(text[at]) != std::string_view::npos) {
      ++at;
      continue;
    }
    std::size_t end = end_of_inch(text, at);
    for (const std::string_view unit : metric) end = std::max(end, end_of_unit(text, at, unit));
    for (const std::string_view part : {"\xC2\xBC", "\xC2\xBD", "\xC2\xBE"})
      if (text.substr(at, 2) == part) end = at + 2;
    if (end == at) return false;
    at = end;
  }
  return true;
}

} // namespace whorl::writing
