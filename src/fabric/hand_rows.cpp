#include "fabric/hand.hpp"
#include "fabric/opening.hpp"

#include <algorithm>

namespace whorl::fabric {

using pattern::Act;
using pattern::Node;
using pattern::NodeId;

namespace {

constexpr int edges_of_piece = 4;

bool opens_edge_of_rows(const Node& node) {
  const Act act = node.work.act;
  return node.kind == pattern::NodeKind::work &&
         (act == Act::row_ends || act == Act::all_edges || act == Act::other_side || act == Act::top_edge);
}

/// So many places out of those that are there, each as often as its share.
std::vector<Place> spread(const std::vector<Place>& there, std::uint64_t wanted) {
  std::vector<Place> places;
  for (std::uint64_t i = 0; i < wanted; ++i)
    places.push_back(there[static_cast<std::size_t>(i * there.size() / wanted)]);
  return places;
}

/// Every place once, and what is wanted beyond that shared out between the corners, which are the first
/// places of the four edges. One more at each is three in its place and none in that before it: so a corner
/// is turned. Nothing where it does not come out even.
std::vector<Place> with_corners(const std::vector<std::vector<Place>>& edges, std::uint64_t wanted) {
  constexpr std::uint64_t most = 4;
  std::uint64_t there = 0;
  std::size_t fewest = edges.front().size();
  for (const std::vector<Place>& edge : edges) there += edge.size(), fewest = std::min(fewest, edge.size());
  if (wanted <= there || fewest == 0) return {};
  const std::uint64_t more = wanted - there, each = more / edges.size();
  if (more % edges.size() != 0 || each > most) return {};
  const bool sharing = each == 1 && fewest > 2;
  std::vector<Place> places;
  for (const std::vector<Place>& edge : edges) {
    for (std::uint64_t i = 0; i < each + (sharing ? 1 : 0); ++i) places.push_back(edge.front());
    places.insert(places.end(), edge.begin(), edge.end() - (sharing ? 1 : 0));
  }
  return places;
}

void append(std::vector<Place>& all, const std::vector<Place>& more) {
  all.insert(all.end(), more.begin(), more.end());
}

} // namespace

/// The part whose edges the round goes along: where it is the first of its own ("Edging, Rnd 1"), the part
/// before.
std::uint32_t Hand::flat_part() const {
  const bool first = fabric_.parts[part_].first_round + 1 == fabric_.rounds.size();
  return first && part_ > 0 ? part_ - 1 : part_;
}

/// Whether the piece was begun along one side of a chain and never joined: its rounds are rows, be they
/// called so or not.
bool Hand::begun_flat() const {
  const std::uint32_t part = flat_part();
  const std::uint32_t chain = fabric_.parts[part].foundation;
  if (chain == none) return false;
  for (std::uint32_t i = chain; i + 1 < fabric_.rounds.size(); ++i)
    if (fabric_.rounds[i].joined || fabric_.rounds[i].both_sides) return false;
  return true;
}

/// The rows of the flat piece that the round being worked goes along, the last first.
std::vector<std::uint32_t> Hand::rows_below() const {
  std::vector<std::uint32_t> rows;
  const bool flat = begun_flat();
  const std::uint32_t first = fabric_.parts[flat_part()].first_round;
  for (auto i = static_cast<std::uint32_t>(fabric_.rounds.size() - 1); i > first;) {
    const Round& row = fabric_.rounds[--i];
    const bool to_and_fro = flat || row.kind == pattern::RoundKind::row || row.turned;
    if (!row.worked || (!to_and_fro && !rows.empty())) break;
    rows.push_back(i);
  }
  const bool turned =
      rows.size() > 1 || (!rows.empty() && fabric_.rounds[rows[0]].kind == pattern::RoundKind::row);
  if (!turned) rows.clear(); // the last row need not be turned; a round alone is none
  return rows;
}

/// The ends of these rows on the side where the last of them ended, from there on; or on the other, back.
std::vector<Place> Hand::ends_of_rows(const std::vector<std::uint32_t>& rows, bool other) const {
  std::vector<Place> ends;
  for (const std::uint32_t row : rows) {
    const bool ended_there = fabric_.rounds[row].side == fabric_.rounds[rows.front()].side;
    ends.push_back(Place{row, On::row_end, ended_there != other ? stitch::back : stitch::front});
  }
  if (other) std::reverse(ends.begin(), ends.end());
  return ends;
}

/// Whether the hook comes down a flat piece on the side where its first row began, so that its starting chain
/// is worked along from there.
bool Hand::comes_down_at_beginning() const {
  const std::vector<std::uint32_t> rows = rows_below();
  return !rows.empty() && fabric_.rounds[rows.front()].side != fabric_.rounds[rows.back()].side;
}

/// The loops along the starting chain that the first row left, but for the chains skipped at the hook.
std::vector<Place> Hand::starting_chain_below() const {
  std::vector<Place> places;
  const std::uint32_t chain = fabric_.parts[flat_part()].foundation;
  if (chain == none) return places;
  const Round& round = fabric_.rounds[chain];
  for (StitchId id = round.first_stitch; id < round.first_stitch + round.count; ++id)
    if (fabric_.taken[id] != stitch::no_loop) places.push_back(Place{id, On::chain_side, stitch::third});
  if (comes_down_at_beginning()) std::reverse(places.begin(), places.end());
  return places;
}

/// How many places the work along an edge needs. Where it says no number ("evenly along the side"), what the
/// text counts tells, shared out between such edges; where it counts nothing, those that are there.
std::uint64_t Hand::places_wanted(const Node& opening, std::uint64_t there) {
  std::uint64_t needed = 0, fixed = 0, open_edges = 0;
  bool here = true, unsaid = false, counted_edge = false;
  const Node* edge = &opening;
  for (NodeId id = opening.next; id != pattern::no_node && steps_ > 0; id = tree_.nodes[id].next, --steps_) {
    const Node& node = tree_.nodes[id];
    if (opens_edge_of_rows(node)) edge = &node, here = counted_edge = false;
    const Need need = need_of(tree_, id, needs_);
    if (here) needed += need.surely(), unsaid = unsaid || need.to_end;
    fixed += need.makes - std::min<std::uint64_t>(need.makes, need.slips);
    const bool side = edge->work.act == Act::row_ends || edge->work.act == Act::all_edges;
    if (need.to_end && side && !counted_edge) ++open_edges, counted_edge = true;
    if (need.to_end && edge->work.act == Act::top_edge) fixed += fabric_.rounds[rows_below().front()].makes;
    if (need.to_end && edge->work.act == Act::other_side && row_sides_ + open_edges > 0)
      fixed += starting_chain_below().size();
  }
  if (!unsaid) return needed;
  const std::int64_t counted = fabric_.rounds.back().stated;
  const std::int64_t rest = counted - static_cast<std::int64_t>(edge_.made() + fixed);
  if (counted < 0 || rest <= 0 || open_edges == 0 || rest > static_cast<std::int64_t>(limit_)) return there;
  return (static_cast<std::uint64_t>(rest) + open_edges - 1) / open_edges;
}

/// Row ends, the top or all edges of a flat piece. Where no rows were worked, the edge is the one that is
/// open.
bool Hand::open_edge_of_rows(const Node& node) {
  const std::vector<std::uint32_t> rows = rows_below();
  if (rows.empty()) return true;
  if (node.work.act == Act::row_ends && repeats_ > 0) return open_next_edge(node, rows);
  const bool all = node.work.act == Act::all_edges;
  std::vector<Place> places;
  if (node.work.act == Act::top_edge)
    places = tops_of(fabric_, rows.front());
  else
    places = ends_of_rows(rows, row_sides_ % 2 == 1);
  std::vector<std::vector<Place>> edges{places};
  for (int nth = 1; all && nth < edges_of_piece; ++nth) {
    edges.push_back(edge_of_piece(rows, nth));
    append(places, edges.back());
  }
  const bool evenly =
      node.work.act != Act::top_edge && (node.work.times == 0 || node.work.act == Act::other_side);
  if (evenly) {
    const std::uint64_t wanted = places_wanted(node, places.size());
    std::vector<Place> cornered = all ? with_corners(edges, wanted) : std::vector<Place>();
    places = cornered.empty() ? spread(places, wanted) : std::move(cornered);
  }
  row_sides_ += node.work.act == Act::top_edge ? 0 : 1;
  corner_comes_ = node.work.act == Act::row_ends || node.work.act == Act::other_side;
  each_row_end_ = node.work.act == Act::row_ends && node.work.times != 0;
  open_along_rows(std::move(places));
  return true;
}

/// The edges of a flat piece in their order round it: the row ends where the hook is, the starting chain, the
/// other row ends, the top.
std::vector<Place> Hand::edge_of_piece(const std::vector<std::uint32_t>& rows, int nth) const {
  switch (nth) {
  case 0:
    return ends_of_rows(rows, false);
  case 1:
    return starting_chain_below();
  case 2:
    return ends_of_rows(rows, true);
  default:
    return tops_of(fabric_, rows.front());
  }
}

/// "(3 sc in corner, 6 sc along the side) 4 times": the edges in their order round the piece.
bool Hand::open_next_edge(const Node& node, const std::vector<std::uint32_t>& rows) {
  std::vector<Place> places = edge_of_piece(rows, row_sides_ % edges_of_piece);
  if (places.empty()) places = ends_of_rows(rows, false);
  if (corner_at_ == row_sides_ && places.size() > 1) places.erase(places.begin());
  ++row_sides_;
  edge_by_edge_ = true;
  if (node.work.times == 0) places = spread(places, places_wanted(node, places.size()));
  open_along_rows(std::move(places));
  return true;
}

/// The corner at which the last row ended, where a flat piece is open and no edge of it yet.
std::optional<Place> Hand::corner_of_rows() const {
  const std::vector<std::uint32_t> rows = rows_below();
  if (along_rows_ || rows.empty()) return std::nullopt;
  return ends_of_rows(rows, false).front();
}

/// Where the edges are opened one by one, the corner at which the next of them begins.
std::optional<Place> Hand::next_corner() {
  if (!edge_by_edge_ || repeats_ == 0) return std::nullopt;
  const std::vector<Place> edge = edge_of_piece(rows_below(), row_sides_ % edges_of_piece);
  if (edge.empty()) return std::nullopt;
  return edge.front();
}

/// At the end of a side that is used up the work goes on along the next: the starting chain, the other row
/// ends, the top.
bool Hand::go_round_corner() {
  if (!corner_comes_ || edge_.left() > 0) return false;
  const std::vector<std::uint32_t> rows = rows_below();
  if (rows.empty()) return false;
  if (row_sides_ == 1 && !far_side_) {
    far_side_ = true;
    open_along_rows(edge_of_piece(rows, 1));
  } else if (row_sides_ == 1) {
    ++row_sides_;
    open_along_rows(edge_of_piece(rows, 2));
  } else {
    corner_comes_ = false;
    open_along_rows(edge_of_piece(rows, 3));
  }
  return edge_.left() > 0;
}

void Hand::open_along_rows(std::vector<Place> places) {
  close_arch();
  edge_.reopen(std::move(places));
  taken_.clear();
  in_place_ = 0;
  fresh_ = false;
  outcome_.opened = along_rows_ = true;
}

} // namespace whorl::fabric
