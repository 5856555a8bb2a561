#include "layout/place.hpp"

#include "layout/turn.hpp"

#include <cstdint>
#include <string>

namespace whorl::layout {
namespace {

std::int64_t hundredths(double value) {
  const double scaled = value * 100;
  return static_cast<std::int64_t>(scaled < 0 ? scaled - 0.5 : scaled + 0.5);
}

std::string decimal(double value) {
  const std::int64_t all = hundredths(value);
  const std::int64_t size = all < 0 ? -all : all;
  const std::string cents = std::to_string(size % 100);
  return (all < 0 ? "-" : "") + std::to_string(size / 100) + "." + (cents.size() < 2 ? "0" : "") + cents;
}

std::string show_point(Point point) { return decimal(point.x) + "," + decimal(point.y); }

/// Degrees that a symbol is turned from upright, to the right positive.
double turned(Point up) {
  const double lean = arc_sine(up.x) * 180 / pi;
  if (up.y >= 0) return lean;
  return lean >= 0 ? 180 - lean : -180 - lean;
}

std::string show_stitch(const fabric::Fabric& fabric, const Figure& figure, const Item& item,
                        std::uint32_t which) {
  const Point top = figure.tips[item.first_tip + which];
  return fabric::id_of(fabric, item.first + which) + " foot " + show_point(item.foot) + " top " +
         show_point(top) + " turned " + decimal(turned(item.up)) + "\n";
}

std::string show_figure(const fabric::Fabric& fabric, const Figure& figure, std::size_t number) {
  std::string text;
  for (const Ring& ring : figure.rings)
    for (std::uint32_t i = ring.first_item; i < ring.first_item + ring.items; ++i)
      for (std::uint32_t j = 0; j < figure.items[i].count; ++j)
        text += "fig " + std::to_string(number) + (ring.echo ? " echo " : " ") +
                show_stitch(fabric, figure, figure.items[i], j);
  return text;
}

} // namespace

std::string show(const fabric::Fabric& fabric, const Placement& placement) {
  std::string text;
  for (std::size_t i = 0; i < placement.figures.size(); ++i)
    text += show_figure(fabric, placement.figures[i], i + 1);
  return text;
}

} // namespace whorl::layout
