#pragma once

#include <string>

/// What is measured: patterns of about 300, 3 000, 30 000 and 300 000 stitches.
struct Subject {
  const char* name;
  std::string (*text)(int size);
  int sizes[4];
};

/// One round: "(UNIT) x TIMES (COUNT)", or the unit typed out as often.
std::string round_of(int number, const std::string& unit, int times, int count, bool typed_out = false);

/// 12 size² stitches: so many rounds of growing, even, and of closing.
std::string ball(int size);

/// The same, every stitch typed out.
std::string typed_out_ball(int size);

/// 30 size² stitches: a tube on a chain ring, worked in two yarns by turns.
std::string wall(int size);

/// 6 size (size + 1) stitches: a flat disc of double crochet.
std::string tall(int size);
