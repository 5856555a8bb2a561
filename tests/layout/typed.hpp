#pragma once

#include "balls.hpp"
#include "ink.hpp"

#include "fabric/work.hpp"
#include "pattern/read.hpp"

#include <stdexcept>
#include <string>
#include <vector>

namespace whorl::layout::test {

/// The figures of a pattern as it is typed.
struct Typed {
  explicit Typed(const std::string& text, Hand hand = Hand::right) {
    const pattern::Source source(text);
    fabric = fabric::work(pattern::read(source, *words::find_vocabulary("en-US")).tree).fabric;
    extents = extents_of(fabric);
    Page page;
    page.hand = hand;
    figures = place(fabric, extents, page).figures;
  }
  /// The least air between any two of a figure's symbols.
  double air(std::size_t figure = 0) const { return nearest(patches_of(figures.at(figure), extents)).air; }
  /// The ring of a round in the first figure.
  const Ring& ring(std::uint32_t round) const {
    for (const Ring& one : figures.at(0).rings)
      if (one.round == round && !one.echo) return one;
    throw std::out_of_range("no such ring");
  }

  whorl::fabric::Fabric fabric;
  Extents extents;
  std::vector<Figure> figures;
};

} // namespace whorl::layout::test
