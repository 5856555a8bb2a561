#pragma once

#include "fabric/edge.hpp"
#include "fabric/fabric.hpp"
#include "fabric/need.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace whorl::fabric {

/// Why a round could not be worked.
struct Stop {
  std::string code;
  std::string message;
  pattern::Span span;
};

/// A repeat to the end that did not come out even.
struct Uneven {
  std::uint64_t takes = 0;
  std::uint64_t room = 0;
  pattern::Span span;
};

/// Something that was taken otherwise than the text says, in words.
struct Taken {
  pattern::Span span;
  std::string message;
};

/// What working a round came to.
struct Outcome {
  std::optional<Stop> stop;
  std::optional<Uneven> uneven;
  std::uint64_t uses = 0;
  std::uint64_t left_on_purpose = 0; ///< places left by "to the last …"
  bool opened = false;               ///< a ring, a chain or another edge was opened in it
  bool joined_parts = false;         ///< … the edge of another part: it all has to be worked
  bool passes_by = false;            ///< worked into chain spaces: the stitches between are passed by
  bool met_other = false;            ///< a place came that is not of the kind named, with one of it behind
  bool lacks_named = false;          ///< … the named kind was looked for, and none was left
  bool folded = false;               ///< worked through both layers: the middle stitch may stay alone
  Start start = Start::nothing;      ///< … and how
  std::vector<pattern::Span> hidden; ///< invisible decreases that were asked for in back loops
  std::vector<Taken> notes;
  std::vector<Taken> troubles; ///< the same, where the text cannot be right
  std::vector<Taken> warnings; ///< … or is likely to be wrong
};

/// A place of a part's edge that is held against the piece in hand, and the one that lies behind it where the
/// part is a tube pressed flat.
struct HeldPair {
  Place front;
  std::optional<Place> behind;
};

/// How far the edge of a part was joined to others.
struct Held {
  std::vector<HeldPair> edge;
  std::size_t met = 0;                    ///< so many of them
  std::uint32_t copies = 0;               ///< of a part that is made several times: begun
  const pattern::Node* through = nullptr; ///< the work that went through it last
  StitchId up_to = none;                  ///< one past the last stitch that went through it
};

/// What is done where the text names the kind of the next place, and one of another kind comes.
enum class ByKind : std::uint8_t {
  as_it_comes, ///< the word is another for any stitch
  watch,       ///< the same, but it is remembered
  look_for,    ///< what comes before the next of that kind is passed by
};

/// The hand that works a round: it follows the nodes of the tree, takes places from the edge and puts
/// stitches into the fabric. It knows neither numbers nor counts. hand.cpp follows the nodes, hand_take.cpp
/// takes places, hand_named.cpp those of the kind that is named, hand_parts.cpp those of a part held against
/// the piece, hand_edges.cpp and hand_rows.cpp open edges, hand_stitch.cpp makes stitches.
class Hand {
public:
  /// `last_rounds`: for every entry of the text the fabric's last round of it, `none` where there is none.
  Hand(const pattern::Tree& tree, const std::vector<Need>& needs,
       const std::vector<std::uint32_t>& last_rounds, Fabric& fabric, Edge& edge, std::uint32_t limit);

  /// Works `body` as the round with this number, whose entry is the last of the fabric's.
  Outcome work(pattern::NodeId body, const Need& need, std::uint32_t part);
  /// How places that are named by their kind are taken from here on.
  void take_named(ByKind by_kind) { by_kind_ = by_kind; }
  /// A part begins: its yarn is the first, its right side faces, no chain was made.
  void begin_part();
  /// What is worked from here on is in this yarn.
  void change_yarn(std::uint8_t yarn) { wanted_yarn_ = yarn; }
  /// Chains that the row before ended with and that are the next round's first stitch; 0: there are none.
  std::uint32_t carried_chains() const;
  /// Opens the chain that the round just worked made, if it did nothing else; false if not.
  bool open_foundation();
  /// Whether a stitch of this kind hides the back loops behind it from the hook (invisible decrease).
  bool hides_back_loops(stitch::KindId kind) const { return gists_[kind].front_only; }
  /// The side that faces now.
  Side side() const { return side_; }

private:
  struct Context {
    std::uint8_t loops = 0;
    std::uint8_t yarn = 1;
    bool yarn_said = false; ///< by words about what is worked
    bool held = false;      ///< all goes into the place that was taken last
    pattern::Into into = pattern::Into::loops;
    std::uint8_t down = 1;
    std::uint64_t rest = 0; ///< on an edge opened in the round: places that what follows needs
  };
  struct Gist {
    std::uint32_t legs = 0;
    std::uint32_t takes = 0;
    std::uint32_t makes = 0;
    std::uint8_t flags = 0;
    bool chain = false;
    bool picot = false;
    bool slip = false;
    bool front_only = false;
  };

  // Following the nodes.
  bool step(const pattern::Node& node);
  bool follow(pattern::NodeId id, Context context, int depth);
  bool follow_children(const pattern::Node& node, Context context, int depth);
  std::uint64_t needed_behind(pattern::NodeId child, std::uint64_t outside);
  pattern::NodeId turning_chain_of(pattern::NodeId body);
  bool carry(pattern::NodeId id, const Context& context);
  pattern::NodeId body_meant(const pattern::Node& reference);
  bool follow_reference(const pattern::Node& node, const Context& context, int depth);
  bool do_work(const pattern::Node& node, pattern::NodeId id, const Context& context);
  int many_in_place(const pattern::Work& work) const;
  bool is_corner(std::uint32_t arch) const;
  bool work_stitches(const pattern::Node& node, pattern::NodeId id, const Context& context);
  bool work_group(const pattern::Node& node, const Context& context, int depth);
  std::size_t begin_group(const pattern::Node& node);
  void end_group(std::size_t group);
  bool work_repeat(const pattern::Node& node, const Context& context, int depth);
  bool turn();
  bool turns_to_other_side(const pattern::Node& node) const;
  bool start_here();
  template <class Pass>
  bool passes(const pattern::Node& node, const Context& context, const Need& each, Pass pass);
  bool passes_to_end(const pattern::Node& node, const Context& context, const Need& each,
                     std::uint64_t& times);
  bool passes_over_centres(const pattern::Node& node, const Need& each, std::uint64_t& times) const;
  bool passes_over_spaces(const pattern::Node& node, const Need& each, std::uint64_t& times);
  bool stop(const pattern::Node& node, const char* code, std::string message);

  // Taking places.
  bool skip(const pattern::Node& node, const Context& context);
  bool leaves_behind_turn(const pattern::Node& node);
  bool take(const pattern::Node& node, pattern::Where where, const Gist& gist, const Context& context);
  bool take_one(const pattern::Node& node, pattern::Where where, bool slip);
  void take_passing_by(const Place& place, std::uint64_t& fixed);
  bool take_space(const pattern::Node& node);
  bool take_skipped(const pattern::Node& node);
  bool skip_spaces(std::uint32_t count);
  Place gap_between(StitchId one, StitchId other) const;
  bool are_apart(const Place& before, const Place& behind) const;
  bool is_closed() const;
  std::size_t gaps_left() const;
  bool are_together(const Place& a, const Place& b) const;
  std::size_t centres_left() const;
  bool is_of_kind(const Place& place, stitch::KindId named) const;
  bool go_to_named(const pattern::Node& node);
  std::uint64_t times_by_space(const Need& each, std::uint64_t times) const;
  std::uint64_t times_by_kind(const pattern::Node& node, std::uint64_t times) const;
  bool took_middle() const;
  bool take_centre(const pattern::Node& node);
  void pass_rest_of_group(const pattern::Node& node);
  bool take_between(const pattern::Node& node);
  bool take_chain(const pattern::Node& node);
  bool take_two_layers(const pattern::Node& node, std::uint32_t pairs);
  bool take_two_parts(const pattern::Node& node, pattern::Where where, const Gist& gist);
  std::uint32_t times_through_part(const pattern::Node& repeat) const;
  std::uint32_t wanted_of_part(const pattern::Node& node) const;
  std::vector<HeldPair> edge_held(std::uint32_t round, std::uint32_t wanted) const;
  std::optional<HeldPair> next_of_part(const pattern::Node& node);
  void say_no_more_of(const pattern::Node& node, std::uint32_t owner, std::uint32_t round);
  bool is_of_other_part(const Place& place) const;
  void keep_held(const pattern::Node& node, StitchId stitch);
  bool joins_at_corner(const pattern::Node& node) const;
  bool lead_into_space(const pattern::Node& node);
  bool travel(const pattern::Node& node, pattern::NodeId id, const Context& context);
  bool go_where_led();
  bool is_same_place(const pattern::Node& node, pattern::Where where) const;
  bool begins_with_slip() const;
  std::optional<Place> place_at(pattern::Where where, bool slip);
  void used();
  void leave_rest(bool on_purpose);

  // Opening edges.
  bool open_ring();
  bool names_ring(pattern::NodeId body) const;
  bool open_other_side(const pattern::Node& node);
  std::uint32_t chain_named(const pattern::Node& node) const;
  bool open_chain_of_part(const pattern::Node& node);
  bool go_round_the_end();
  bool open_far_side(StitchId first, std::uint32_t from, std::uint32_t to);
  bool open_free_loops(const pattern::Node& node);
  std::string what_was_open(const std::vector<Place>& places, std::uint32_t owner) const;
  void warn_of_taken(const pattern::Node& node, const Place& place, std::uint32_t owner);
  std::vector<Place> in_order_met(std::vector<Place> places, const Round& owner, std::uint32_t nth,
                                  bool up) const;
  std::uint32_t wanted_of_skipped() const;
  bool open_skipped(const pattern::Node& node);
  bool open_under_gap(const pattern::Node& node);
  bool open_part_edge(const pattern::Node& node);
  bool open_places(std::vector<Place> places);
  bool open_ring_of_chains();
  std::uint32_t flat_part() const;
  bool begun_flat() const;
  std::vector<std::uint32_t> rows_below() const;
  std::vector<Place> ends_of_rows(const std::vector<std::uint32_t>& rows, bool other) const;
  bool comes_down_at_beginning() const;
  std::vector<Place> starting_chain_below() const;
  std::uint64_t places_wanted(const pattern::Node& opening, std::uint64_t there);
  bool open_edge_of_rows(const pattern::Node& node);
  std::vector<Place> edge_of_piece(const std::vector<std::uint32_t>& rows, int nth) const;
  bool open_next_edge(const pattern::Node& node, const std::vector<std::uint32_t>& rows);
  std::optional<Place> corner_of_rows() const;
  std::optional<Place> next_corner();
  bool go_round_corner();
  void open_along_rows(std::vector<Place> places);
  std::uint32_t last_round_of(std::uint32_t named) const;
  std::uint32_t round_meant(const pattern::Node& node);
  std::uint32_t last_worked_end(std::uint32_t part) const;
  std::vector<Place> bridge();
  bool leads_away() const;
  void begin_round_after_foundation();

  // Making stitches.
  bool join(const pattern::Node& node, pattern::NodeId id, Context context);
  bool is_in_one_yarn() const;
  bool work_carried_chain(Context context);
  bool work_counted_chain(const pattern::Node& node, pattern::NodeId id, const Context& context);
  void count_chain(StitchId chain);
  bool add(const pattern::Node& node, stitch::KindId kind, const Context& context, pattern::NodeId id);
  void take_up(std::uint8_t yarn, StitchId stitch);
  bool add_legs(const pattern::Node& node, const Gist& gist, const Context& context);
  std::optional<Place> foot(const Place& taken, const Gist& gist, const Context& context) const;
  std::optional<Place> below(Place place, int down) const;
  void put_tops(StitchId stitch, const Gist& gist);
  void add_chain(StitchId stitch);
  void close_arch();
  bool leads_up(StitchId chain) const;
  void open_climbed(stitch::KindId kind);
  void climb();
  stitch::KindId seen_from_outside(const pattern::Node& node, stitch::KindId kind, const Context& context);

  const pattern::Tree& tree_;
  const std::vector<Need>& needs_;
  const std::vector<std::uint32_t>& last_rounds_;
  Fabric& fabric_;
  Edge& edge_;
  std::uint32_t limit_;
  std::uint64_t steps_;    ///< nodes that may still be followed
  std::uint64_t made_ = 0; ///< stitches ever made, those that were only counted too
  std::vector<Gist> gists_;

  Outcome outcome_;
  std::map<std::uint32_t, Held> held_; ///< by part
  std::uint32_t held_times_ = 1;       ///< how often what goes through a part is repeated
  std::uint32_t part_ = 0;
  std::vector<Place> taken_;        ///< the places taken last
  std::vector<Place> skipped_;      ///< the places skipped last, that nothing was worked into since
  std::uint32_t in_place_ = 0;      ///< stitches worked into them
  bool own_place_ = false;          ///< … of the round itself
  std::uint64_t fixed_left_ = 0;    ///< places that the rest of the round needs whatever the edge has
  std::uint64_t fixed_spaces_ = 0;  ///< likewise chain spaces
  std::uint64_t fixed_gaps_ = 0;    ///< likewise gaps between groups
  std::uint64_t fixed_centres_ = 0; ///< likewise middles of groups
  std::size_t of_last_ = 0;         ///< of "the last 3 stitches" those that are still to come
  std::size_t rest_of_group_ = 0;   ///< stitches behind the middle that was taken last
  ByKind by_kind_ = ByKind::as_it_comes;
  int to_end_ = 0;     ///< how many repeats to the end are being worked
  int repeats_ = 0;    ///< how many repeats and groups
  bool begun_ = false; ///< a stitch was worked that is no slip stitch
  bool led_ = false;   ///< a slip stitch led into a chain space, which is still open
  pattern::NodeId turning_chain_ = pattern::no_node; ///< which the round ends with and the next begins with
  pattern::NodeId carried_ = pattern::no_node;       ///< that of the row before
  std::uint8_t carried_yarn_ = 1;
  bool climbs_ = false;          ///< the chains being made
  int within_round_ = 0;         ///< how many repeats that are done within the round are being worked
  StitchId climbed_ = none;      ///< first of those that climbed last, no stitch having been worked since
  bool stays_ = false;           ///< the chains being made begin in one: they are a space everywhere
  bool over_skipped_ = false;    ///< stitches were skipped behind them
  StitchId turned_at_ = none;    ///< chains from this one on climb
  std::uint8_t yarn_ = 1;        ///< of the last stitch
  std::uint8_t wanted_yarn_ = 0; ///< to which was changed between the rounds; 0: none
  Side side_ = Side::right;
  std::string opened_;             ///< what loops of another part were opened, in words; "": none were
  std::uint32_t opened_at_ = 0;    ///< the chain from the hook at which a starting chain was opened
  std::uint32_t gap_round_ = none; ///< the round whose skipped stitches were opened
  bool far_side_ = false;          ///< its other side is open
  int row_sides_ = 0;              ///< sides of a flat piece that were opened along its row ends
  bool corner_comes_ = false; ///< one side of a flat piece is open, and what follows it goes round a corner
  bool each_row_end_ = false; ///< … and it is worked in each end of a row
  bool edge_by_edge_ = false; ///< its edges are opened one after the other in a repeat
  int corner_at_ = -1;        ///< the edge at whose beginning the corner was worked into last
  bool along_rows_ = false;   ///< an edge of a flat piece is open: corners are no chain spaces
  StitchId foundation_ = none;
  std::uint32_t foundation_count_ = 0;
  StitchId ring_first_ = none;   ///< the chain that was joined into a ring
  std::uint32_t ring_count_ = 0; ///< … of so many; 0: none was
  bool ring_comes_ = false;      ///< the round names its ring behind the stitches: "6 sc in a magic ring"
  bool fresh_ = false;           ///< nothing can be worked into yet: chains are a foundation
  bool part_is_new_ = true;      ///< the part has no stitch yet
  StitchId arch_ = none;         ///< first of the chains being made
};

} // namespace whorl::fabric
