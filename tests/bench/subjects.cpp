#include "subjects.hpp"

namespace {

std::string plain(int count, const std::string& stitch) {
  return count > 0 ? std::to_string(count) + " " + stitch + ", " : "";
}

std::string plain_typed_out(int count, const std::string& stitch) {
  std::string text;
  for (int i = 0; i < count; ++i) text += stitch + ", ";
  return text;
}

std::string ball_of(int size, bool typed_out) {
  const auto before = typed_out ? plain_typed_out : plain;
  std::string text = "Oak apple\n\nRnd 1: 6 sc in magic ring (6)\n";
  int number = 1;
  for (int i = 1; i < size; ++i)
    text += round_of(++number, before(i - 1, "sc") + "inc", 6, 6 + 6 * i, typed_out);
  for (int i = 0; i < size; ++i) text += round_of(++number, "sc", 6 * size, 6 * size, typed_out);
  for (int i = size - 2; i >= 0; --i)
    text += round_of(++number, before(i, "sc") + "dec", 6, 6 + 6 * i, typed_out);
  return text + "Fasten off, gather the last stitches and close.\n";
}

} // namespace

std::string round_of(int number, const std::string& unit, int times, int count, bool typed_out) {
  std::string work = "(" + unit + ") x " + std::to_string(times);
  if (typed_out) {
    work = unit;
    for (int i = 1; i < times; ++i) work += ", " + unit;
  }
  return "Rnd " + std::to_string(number) + ": " + work + " (" + std::to_string(count) + ")\n";
}

std::string ball(int size) { return ball_of(size, false); }

std::string typed_out_ball(int size) { return ball_of(size, true); }

std::string wall(int size) {
  const int around = 6 * size;
  std::string text =
      "Bark\n\nWith brown yarn, ch " + std::to_string(around) + ", join with a sl st into a ring.\n";
  text += "Rnd 1: sc in each ch around (" + std::to_string(around) + ")\n";
  for (int number = 2; number <= 5 * size; ++number)
    text += round_of(number, "2 sc in brown, sc in green", 2 * size, around);
  return text;
}

std::string tall(int size) {
  std::string text = "Lily pad\n\nRnd 1: 12 dc in magic ring (12)\n";
  for (int number = 2; number <= size; ++number)
    text += round_of(number, plain(number - 2, "dc") + "2 dc in next st", 12, 12 * number);
  return text;
}
