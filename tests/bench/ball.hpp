#pragma once

#include <string>

/// The text of a ball with 12 k² stitches: k rounds of growing, k even, k of closing.
inline std::string ball(int k, bool typed_out) {
  std::string text = "Oak apple\n\n";
  int number = 0, open = 0;
  const auto add = [&](const std::string& unit, int units, int makes) {
    std::string work = "(" + unit + ") x " + std::to_string(units);
    if (typed_out) {
      work = unit;
      for (int i = 1; i < units; ++i) work += ", " + unit;
    }
    text += "Rnd " + std::to_string(++number) + ": " + work + " (" + std::to_string(makes) + ")\n";
    open = makes;
  };
  const auto plain = [&](int count, const char* end) {
    std::string unit;
    for (int i = 0; typed_out && i < count; ++i) unit += "sc, ";
    if (!typed_out && count > 0) unit = std::to_string(count) + " sc, ";
    return unit + end;
  };
  text += "Rnd " + std::to_string(++number) + ": 6 sc in magic ring (6)\n";
  open = 6;
  for (int i = 1; i < k; ++i) add(plain(i - 1, "inc"), 6, open + 6);
  for (int i = 0; i < k; ++i) add("sc", open, open);
  for (int i = k - 2; i >= 0; --i) add(plain(i, "dec"), 6, open - 6);
  return text + "Fasten off, gather the last stitches and close.\n";
}
