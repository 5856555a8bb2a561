#pragma once

/// What it costs to take a word for another than it is typed; part of the table in pattern/costs.hpp.
namespace whorl::words::cost {

inline constexpr int unknown = 3;    ///< a word that is in no list
inline constexpr int look_alike = 2; ///< letters of another alphabet that look the same
inline constexpr int scanned = 2;    ///< a number with letters that scanning put in

} // namespace whorl::words::cost
