#include "layout/label.hpp"

#include "layout/ground.hpp"
#include "layout/items.hpp"

#include <algorithm>
#include <utility>

namespace whorl::layout {
namespace {

constexpr double dot_space = 0.14;
constexpr double flag_space = 0.20, flag_width = 0.66;
constexpr double attach_space = 0.24;
constexpr double second_of_loops = 0.64, second_of_folds = 0.74;

Run run(std::string text, Face face, double size) { return {std::move(text), face, size, 0, 0}; }

std::string numbered(const fabric::Round& round) {
  std::string text = std::to_string(round.number);
  if (round.again > 0) text += static_cast<char>('a' + std::min(round.again, 25));
  return text;
}

bool is_row(const fabric::Round& round) { return round.kind == pattern::RoundKind::row; }

/// A flag with the number of a yarn, its pole's middle at a point.
Placed flag_beside(Point pole, std::uint8_t yarn, std::uint32_t ring) {
  constexpr double high = 0.92, half_wide = 0.31, letter_up = 0.61, letter_size = 0.50;
  Placed flag{Sign::flag, pole - Point{0, high / 2}, {0, 1}, {}, {}, ring};
  flag.text = {std::to_string(yarn), Face::bold, letter_size, 0, 0};
  flag.text_at = flag.at + Point{half_wide, letter_up};
  return flag;
}

/// The mark for joined yarn.
Placed attach_beside(Point middle, std::uint32_t ring) {
  constexpr double half_high = 0.23;
  return {Sign::attach, middle - Point{0, half_high}, {0, 1}, {}, {}, ring};
}

} // namespace

std::string number_of(const fabric::Fabric& fabric, const Ring& ring) {
  const std::string first = numbered(fabric.rounds[ring.round]);
  return ring.round == ring.last_round ? first : first + "\u2013" + numbered(fabric.rounds[ring.last_round]);
}

std::string count_of(const fabric::Round& round) {
  const bool missed = round.stated >= 0 && round.stated != static_cast<std::int64_t>(round.counted);
  return std::to_string(round.counted) + (missed ? " (!)" : "");
}

std::string fill_in(const std::string& text, std::uint64_t number) {
  return fill_in(text, std::to_string(number));
}

std::string fill_in(const std::string& text, const std::string& name) {
  const std::size_t at = text.find("{}");
  if (at == std::string::npos) return text;
  return text.substr(0, at) + name + text.substr(at + 2);
}

double line_width(const std::vector<Run>& runs) {
  return runs.empty() ? 0 : runs.back().x + runs.back().width;
}

double letters_width(const Lettering& label) {
  return std::max(line_width(label.first), line_width(label.below));
}

std::vector<Run> set_line(std::vector<Run> runs, double space, const Extents& extents) {
  double x = 0;
  for (Run& one : runs) {
    one.x = x;
    one.width = one.size * text_width(extents, one.face, one.text);
    x += one.width + space;
  }
  return runs;
}

Convex line_box(Point at, double width, double size) {
  const double top = at.y + letter_height * size;
  return {at, {at.x + width, at.y}, {at.x + width, top}, {at.x, top}};
}

void put_signs_behind(Lettering& label) {
  if (label.flag != 0) {
    label.flag_x = label.width + flag_space;
    label.width = label.flag_x + flag_width;
  }
  if (!label.attached) return;
  label.attach_x = label.width + attach_space + attach_half;
  label.width = label.attach_x + attach_half;
}

std::vector<Placed> yarn_signs(const Lettering& text, Point start, bool mirrored, std::uint32_t ring) {
  const auto along = [&](double x, double wide) {
    return start + Point{mirrored ? text.width - x - wide : x, 0};
  };
  std::vector<Placed> signs;
  if (text.flag > 0) signs.push_back(flag_beside(along(text.flag_x, flag_width), text.flag, ring));
  if (text.attached) signs.push_back(attach_beside(along(text.attach_x, 0), ring));
  return signs;
}

Lettering letter(const fabric::Fabric& fabric, const Ring& ring, std::uint8_t loops, bool inward,
                 const Extents& extents, const Page& page) {
  Lettering label;
  if (ring.chain) {
    const std::string chains = std::to_string(fabric.rounds[ring.round].count);
    label.first = set_line({run(chains, Face::regular, count_size)}, 0, extents);
    label.width = letters_width(label);
    return label;
  }
  label.first =
      set_line({run(number_of(fabric, ring), Face::bold, number_size), run("\u00B7", Face::bold, number_size),
                run(count_of(fabric.rounds[ring.round]), Face::regular, count_size)},
               dot_space, extents);
  std::string second;
  if (ring.round != ring.last_round)
    second = fill_in(is_row(fabric.rounds[ring.round]) ? page.rows : page.rounds,
                     ring.last_round - ring.round + 1),
    label.second = second_of_folds;
  else if (loops == stitch::back || loops == stitch::front)
    second = loops == stitch::back ? page.back_loops : page.front_loops,
    label.second = inward ? second_of_loops : -second_of_loops;
  else if (!ring.echo && closes_flat(fabric, ring.round))
    second = page.both_layers, label.second = inward ? second_of_loops : -second_of_loops;
  if (!second.empty()) label.below = set_line({run(second, Face::italic, second_size)}, 0, extents);
  label.width = letters_width(label);
  if (!ring.echo) label.flag = changed_yarn(fabric, ring.round, page.main_yarn);
  label.attached = !ring.echo && fabric.rounds[ring.round].attached;
  put_signs_behind(label);
  return label;
}

} // namespace whorl::layout
