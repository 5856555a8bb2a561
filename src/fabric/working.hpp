#pragma once

#include "fabric/hand.hpp"
#include "fabric/work.hpp"

#include <map>
#include <string>
#include <vector>

namespace whorl::fabric {

/// Sizes of the fabric's vectors, to go back to when a round was only counted.
struct Mark {
  std::size_t stitches, legs, arches, groups, unworked, changes, rounds;
};

/// What a round came to that was worked to see how it comes out.
struct Trial {
  Outcome outcome;
  int troubles = 0;   ///< counts that are not met, stitches left over, a repeat that does not divide
  bool whole = false; ///< every place of the edge was used
};

/// The working of one tree, part by part and round by round. work.cpp works, working_named.cpp tells whether
/// the kinds of places that a text names are meant, working_told.cpp says what could not be done.
class Working {
public:
  Working(const pattern::Tree& tree, std::uint32_t limit);
  Worked work();

private:
  Fabric& fabric() { return worked_.fabric; }
  Part& part() { return fabric().parts.back(); }
  Round& round() { return fabric().rounds.back(); }

  void work_part(std::uint32_t index);
  void begin_part(std::uint32_t index);
  void work_text(std::uint32_t index);
  void work_round(std::uint32_t index, int number);
  Need need_with_carried(Need need) const;
  void begin_round(std::uint32_t index, int number);
  bool is_workable(const pattern::RoundText& text, const Need& need);
  bool fits(const pattern::RoundText& text, const Need& need);
  std::int64_t stated_before();
  void say_past_end(const pattern::RoundText& text, std::uint64_t uses);
  bool may_name_places(const pattern::RoundText& text, const Need& need) const;
  Trial try_round(const pattern::RoundText& text, const Need& need, ByKind by_kind);
  ByKind by_kind(const pattern::RoundText& text, const Need& need);
  void finish(const Outcome& outcome, Hand& hand);
  void keep(const Mark& mark, const Outcome& outcome);
  void keep_foundation(std::size_t index);
  void take_back(const Mark& mark);
  void drop(const Mark& mark);
  void take_loops();
  void open_stated();
  void count_only();
  void stop_part(const pattern::RoundText& text);
  void say_lacking(const pattern::RoundText& text, const Stop& stop);
  void report(const pattern::RoundText& text, const Outcome& outcome);
  void say_uneven(const pattern::RoundText& text, const Uneven& uneven);
  void say_hurdle(const pattern::RoundText& text, Hurdle hurdle);
  void say(pattern::Severity severity, const char* code, pattern::Span span, std::string message);
  pattern::Span body_span(const pattern::RoundText& text) const;
  Mark mark();

  const pattern::Tree& tree_;
  std::uint32_t limit_;
  Worked worked_;
  Edge edge_;
  const std::vector<Need> needs_;
  std::vector<std::uint32_t> last_rounds_; ///< the fabric's last round of every entry of the text
  const std::vector<std::uint8_t> yarns_;  ///< to which is changed before every entry; 0: none
  const std::vector<bool> attached_;       ///< whether yarn is joined before it
  Hand hand_;
  std::map<std::string, int> keys_;
  std::map<int, int> labelled_;    ///< how often a round of each number stood in this part
  std::string before_;             ///< the round whose stitches are open: "round 3"
  bool edge_known_ = true;         ///< false: a round without a stated count was not worked
  std::uint32_t text_said_ = none; ///< the line whose trouble was said; a range says it once
};

} // namespace whorl::fabric
