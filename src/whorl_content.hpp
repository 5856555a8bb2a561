#pragma once
/// What the values of the public face hold. Not installed.

#include "whorl.hpp"

#include "drawing/scene.hpp"
#include "fabric/fabric.hpp"
#include "layout/place.hpp"
#include "pattern/source.hpp"
#include "pattern/tree.hpp"

namespace whorl {

struct Pattern::Content {
  pattern::Source source;
  pattern::Tree tree;
  fabric::Fabric fabric;
  std::vector<Finding> findings;
  std::vector<RoundLine> rounds;
};

struct Chart::Content {
  std::shared_ptr<const Pattern::Content> pattern;
  ChartOptions options;
  layout::Extents extents;
  layout::Placement placement;
  std::vector<std::string> not_drawn;
  drawing::Scene scene;
};

/// The object that `check --json` prints; see README.
std::string check_json(const Pattern::Content& pattern);

/// The object of `chart -o x.json`: the fabric, then the figures in millimetres on the sheet, y downward.
std::string chart_json(const Chart::Content& chart);

} // namespace whorl
