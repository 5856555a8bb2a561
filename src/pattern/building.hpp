#pragma once

#include "pattern/build.hpp"

#include <cstdint>
#include <string_view>
#include <vector>

namespace whorl::pattern {

/// A chain of nodes that grows at its end.
struct Chain {
  NodeId first = no_node;
  NodeId last = no_node;
};

/// A reading being built from paths.
struct Building {
  const WorkReader& reader;
  Reading& reading;
  bool started = false;                     ///< a ring or chain is there to work into
  std::vector<std::string_view> parts = {}; ///< other parts opened so far, as named
  std::vector<NodeId> bare = {};            ///< increases and decreases that name no stitch, in order
  std::vector<NodeId> along_chain = {};     ///< stitches that say they go into chains
};

/// The pieces of one stretch, in order.
struct Sequence {
  Chain chain;
  NodeId loops = no_node; ///< the loops that hold from here on
  Chain in_loops;
  std::uint8_t next_loops = 0;  ///< loops for the next piece
  Into next_into = Into::loops; ///< the way in for the next piece
  bool rest_into = false;       ///< … and for all that follow
  std::uint8_t yarn = 0;        ///< number in Reading::yarns; 0: as before the line
  std::uint16_t from_chain = 0; ///< the next stitches begin in this chain from the hook
  bool skipped_count = false;   ///< … and the chains before it stand for a stitch
  std::uint32_t uses_in_all = 0;
  NodeId passed_space = no_node; ///< a space that is skipped, if what comes next goes into one
};

void append(std::vector<Node>& nodes, Chain& chain, NodeId id);

/// The file's span of a row's words.
Span span_of(const Building& b, const Path& path);

/// A node of one piece of work.
NodeId work_node(Building& b, const Work& work, Span span);

/// A node round the chain of nodes that begins with `child`.
NodeId wrap(Building& b, NodeKind kind, const Work& work, NodeId child, Span span);

/// Puts a piece behind the others, in the loops, way in and yarn that were told before it.
void put(Building& b, Sequence& sequence, NodeId id);

/// "Sk next ch-1 sp": a space is skipped where what comes next goes into one; before a stitch it only says
/// what lies on the way.
void pass_space(Building& b, Sequence& sequence, Span span);

/// At the end of a passage: the next pass begins with its first piece.
void end_passed_space(Building& b, Sequence& sequence);

/// Puts a node before the last piece.
void put_before(Building& b, Sequence& sequence, NodeId id);

/// What follows is worked in `loops`, until others are told.
void open_loops(Building& b, Sequence& sequence, std::uint8_t loops, Span span);
void close_loops(Building& b, Sequence& sequence);

/// The same at the end of a stretch: loops behind which nothing is worked are those of the piece before.
void end_loops(Building& b, Sequence& sequence);

/// Loops behind a piece replace it in its chain by itself in those loops.
void loops_behind(Building& b, Sequence& sequence, const Work& work);

/// Number of the yarn that is named in [begin, end) of the line; 0: none is.
std::uint8_t number_of_yarn(Building& b, std::uint32_t begin, std::uint32_t end);

/// The piece before is in the yarn that the words behind it name.
void yarn_behind(Building& b, Sequence& sequence, const Path& path);

/// Words passed over: an instruction is remembered, words that nobody knows are a note.
void put_passed(Building& b, const Path& path, bool joined);

/// Words that nobody knows are kept as a note, those next to each other together.
void keep_note(Building& b, Span span, bool joined);

/// Things placed; what stands behind a change of yarn is in the new one.
void put_placing(Building& b, Sequence& sequence, const Path& path);

/// An aside: a note, or the change of yarn that it tells: "[change to B]".
void put_aside(Building& b, Sequence& sequence, const Path& path);

} // namespace whorl::pattern
