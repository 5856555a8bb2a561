#pragma once

#include "fabric/edge.hpp"
#include "fabric/fabric.hpp"
#include "fabric/need.hpp"

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

/// What working a round came to.
struct Outcome {
  std::optional<Stop> stop;
  std::optional<Uneven> uneven;
  std::uint64_t uses = 0;
  std::uint64_t left_on_purpose = 0; ///< places left by "to the last …"
  bool opened = false;               ///< a ring or a chain was opened in it
  Start start = Start::nothing;      ///< … and how
  std::vector<pattern::Span> hidden; ///< invisible decreases that were asked for in back loops
};

/// The hand that works a round: it follows the nodes of the tree, takes places from the edge and puts
/// stitches into the fabric. It knows neither numbers nor counts.
class Hand {
public:
  Hand(const pattern::Tree& tree, const std::vector<Need>& needs, Fabric& fabric, Edge& edge,
       std::uint32_t limit);

  /// Works `body` as the round with this number, whose entry is the last of the fabric's.
  Outcome work(pattern::NodeId body, const Need& need, std::uint32_t part);
  /// A part begins: its yarn is the first, its right side faces, no chain was made.
  void begin_part();
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
    bool held = false; ///< all goes into the place that was taken last
  };
  struct Gist {
    std::uint32_t legs = 0;
    std::uint32_t takes = 0;
    std::uint32_t makes = 0;
    std::uint8_t flags = 0;
    bool chain = false;
    bool slip = false;
    bool front_only = false;
  };

  bool step(const pattern::Node& node);
  bool follow(pattern::NodeId id, Context context, int depth);
  bool follow_children(const pattern::Node& node, Context context, int depth);
  pattern::NodeId body_meant(const pattern::Node& reference);
  bool follow_reference(const pattern::Node& node, const Context& context, int depth);
  bool do_work(const pattern::Node& node, pattern::NodeId id, const Context& context);
  bool work_stitches(const pattern::Node& node, pattern::NodeId id, const Context& context);
  bool skip(const pattern::Node& node);
  bool work_group(const pattern::Node& node, const Context& context, int depth);
  bool work_repeat(const pattern::Node& node, const Context& context, int depth);
  bool open_ring();
  bool join(const pattern::Node& node, pattern::NodeId id, const Context& context);
  bool turn();
  bool start_here();

  template <class Pass>
  bool passes(const pattern::Node& node, std::uint64_t takes, std::uint64_t spaces, Pass pass);
  bool passes_to_end(const pattern::Node& node, std::uint64_t takes, std::uint64_t spaces,
                     std::uint64_t& times);

  bool take(const pattern::Node& node, pattern::Where where, const Gist& gist, const Context& context);
  bool take_one(const pattern::Node& node, pattern::Where where, bool slip);
  bool take_chain(const pattern::Node& node);
  void used();
  void begin_round_after_foundation();

  bool add(const pattern::Node& node, stitch::KindId kind, const Context& context, pattern::NodeId id);
  void add_legs(const Gist& gist, const Context& context);
  void put_tops(StitchId stitch, const Gist& gist);
  void add_chain(StitchId stitch);
  void close_arch();
  void climb();
  stitch::KindId seen_from_outside(const pattern::Node& node, stitch::KindId kind, const Context& context);

  bool stop(const pattern::Node& node, const char* code, std::string message);

  const pattern::Tree& tree_;
  const std::vector<Need>& needs_;
  Fabric& fabric_;
  Edge& edge_;
  std::uint32_t limit_;
  std::uint64_t steps_;    ///< nodes that may still be followed
  std::uint64_t made_ = 0; ///< stitches ever made, those that were only counted too
  std::vector<Gist> gists_;

  Outcome outcome_;
  std::uint32_t part_ = 0;
  std::vector<Place> taken_;     ///< the places taken last
  bool own_place_ = false;       ///< … of the round itself
  std::uint64_t fixed_left_ = 0; ///< places that the rest of the round needs whatever the edge has
  int to_end_ = 0;               ///< how many repeats to the end are being worked
  std::uint8_t yarn_ = 1;
  Side side_ = Side::right;
  std::uint32_t opened_at_ = 0; ///< the chain from the hook at which a starting chain was opened
  StitchId foundation_ = none;
  std::uint32_t foundation_count_ = 0;
  bool fresh_ = false;   ///< nothing can be worked into yet: chains are a foundation
  StitchId arch_ = none; ///< first of the chains being made
};

} // namespace whorl::fabric
