#include "pattern/flat_told.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

const std::vector<Node>& work_of(const Way& way) {
  static const std::vector<Node> none;
  return way.readings.empty() ? none : way.readings.front().nodes;
}

bool does(const Way& way, Act act) {
  const std::vector<Node>& nodes = work_of(way);
  return std::any_of(nodes.begin(), nodes.end(),
                     [act](const Node& node) { return node.kind == NodeKind::work && node.work.act == act; });
}

/// "sc in 2nd ch from hook": into a chain that lies open.
bool begins_in_chain(const Way& way) {
  const std::vector<Node>& nodes = work_of(way);
  return std::any_of(nodes.begin(), nodes.end(), [](const Node& node) {
    return node.kind == NodeKind::work && node.work.where == Where::chain && node.work.act == Act::stitch;
  });
}

/// Three into the last chain lead round to its other side.
bool turns_a_corner(const Way& way) {
  constexpr int corner = 3;
  const std::vector<Node>& nodes = work_of(way);
  return std::any_of(nodes.begin(), nodes.end(), [](const Node& node) {
    return node.kind == NodeKind::work && node.work.where == Where::last && node.work.in_one >= corner;
  });
}

bool goes_round(const Way& way) {
  return turns_a_corner(way) || does(way, Act::join) || does(way, Act::ring) || does(way, Act::other_side);
}

/// Lines with numbers in step, from the first row on.
class Run {
public:
  explicit Run(std::vector<Typed>& lines) : lines_(lines) {}

  void tell() {
    for (std::size_t at = 0; at < lines_.size(); ++at) {
      Typed& line = lines_[at];
      if (!line.begins_round || line.ways.empty()) continue;
      const Way& way = line.ways.front();
      if (way.label.from == 0) {
        if (stands_alone(at) && begins_in_chain(way) && !goes_round(way)) make_row(line);
        continue;
      }
      if (way.label.from == 1) end();
      if (way.label.from != 1 && (rows_.empty() || way.label.from != last_ + 1)) {
        end();
        continue;
      }
      if (way.label.from == 1 && !begins_in_chain(way)) continue;
      rows_.push_back(&line);
      last_ = way.label.to;
    }
    end();
  }

private:
  /// "Ch 16, sl st in 2nd ch from hook and in each ch": no second round follows.
  bool stands_alone(std::size_t at) const {
    for (std::size_t next = at + 1; next < lines_.size(); ++next)
      if (lines_[next].begins_round && !lines_[next].ways.empty())
        return lines_[next].ways.front().label.from <= 1 && !lines_[next].ways.front().label.relative;
    return true;
  }

  static void make_row(Typed& line) {
    for (Way& way : line.ways) way.label.kind = RoundKind::row;
  }

  void end() {
    constexpr std::size_t turned_by = 2; // "turn" ends the first row or begins the second
    const bool round = std::any_of(rows_.begin(), rows_.end(),
                                   [](const Typed* row) { return goes_round(row->ways.front()); });
    const auto first = rows_.begin(),
               till = first + static_cast<std::ptrdiff_t>(std::min(rows_.size(), turned_by));
    const bool turned =
        std::any_of(first, till, [](const Typed* row) { return does(row->ways.front(), Act::turn); });
    if (turned && !round)
      for (Typed* row : rows_) make_row(*row);
    rows_.clear();
  }

  std::vector<Typed>& lines_;
  std::vector<Typed*> rows_;
  int last_ = 0;
};

} // namespace

void tell_rows(std::vector<Typed>& lines) { Run(lines).tell(); }

} // namespace whorl::pattern
