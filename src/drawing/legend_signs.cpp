#include "drawing/legend_signs.hpp"

#include "drawing/lines.hpp"
#include "drawing/placed.hpp"
#include "layout/owner.hpp"
#include "layout/sign.hpp"

#include <algorithm>
#include <string>

namespace whorl::drawing {
namespace {

using layout::Placed;
using layout::Sign;

/// What the entries of signs are made from.
struct Making {
  const Copy& copy;
  SymbolCase& symbols;
  const Usage& usage;
  double factor, scale;

  std::string words(const std::string& id, const std::vector<std::string>& with = {}) const {
    return say(copy.wording, id, with);
  }
};

Entry finished(const Making& making, Entry entry) {
  for (const Item& item : entry.sample) join(entry.box, bounds(item, making.symbols.definitions()));
  return entry;
}

/// A sign about (0, 0), upright.
std::vector<Item> sample_of(const Making& making, const Placed& sign) {
  Placed sample = sign;
  sample.text_at = sign.text_at - sign.at;
  sample.at = {0, 0};
  if (sample.up == layout::Point{0, 0}) return draw_sign(sample, {{0, 0}, making.scale}, making.symbols);
  sample.up = {0, 1};
  if (sign.sign == Sign::tick || sign.sign == Sign::front)
    sample.text_at = {0, layout::tick_length + 0.1 + layout::half_room(sign.text, sample.up)};
  return draw_sign(sample, {{0, 0}, making.scale}, making.symbols, making.factor);
}

void add_sign(const Making& making, const Placed& sign, const std::string& key, const std::string& words,
              std::vector<Entry>& entries) {
  entries.push_back(finished(making, {key, sample_of(making, sign), {}, "", words}));
}

/// "2", or "2 (moss)" where the text names it otherwise.
std::string yarn_name(const Making& making, std::uint8_t yarn) {
  const std::string number = std::to_string(yarn);
  const auto& yarns = making.copy.tree.yarns;
  const std::string name = yarn >= 1 && yarn <= yarns.size() ? yarns[yarn - 1u] : "";
  return name.empty() || name == number ? number : number + " (" + name + ")";
}

/// What parts are worked into of others: single loops, whole stitches or chains.
struct Used {
  bool loops = false, stitches = false, chains = false;
};

/// Of all parts whose letter is among these.
Used used_by(const fabric::Fabric& fabric, const std::string& letters) {
  Used used;
  for (std::uint32_t number = 0; number < fabric.parts.size(); ++number) {
    const fabric::Part& part = fabric.parts[number];
    const bool named = letters.find(layout::part_letter(number)) != std::string::npos;
    if (!named || part.start != fabric::Start::free_loops || part.rounds == 0) continue;
    const fabric::Round& first = fabric.rounds[part.first_round];
    for (fabric::StitchId id = first.first_stitch; id < first.first_stitch + first.count; ++id)
      for (const fabric::Leg& leg : fabric::own_legs_of(fabric, id)) {
        if (leg.into.what != fabric::On::top || leg.into.of >= first.first_stitch) continue;
        const bool whole = leg.into.loops == stitch::both;
        const bool chain = fabric.kinds[fabric.stitches[leg.into.of].kind].takes == 0;
        (chain ? used.chains : whole ? used.stitches : used.loops) = true;
      }
  }
  return used;
}

/// "loop left free, used by part D", or what else it is that the part goes into.
std::string used_words(const Making& making, const std::string& letters) {
  const Used used = used_by(making.copy.fabric, letters);
  const int sorts = (used.loops ? 1 : 0) + (used.stitches ? 1 : 0) + (used.chains ? 1 : 0);
  const std::string id = sorts > 1       ? "title-used-place"
                         : used.stitches ? "title-used-stitch"
                         : used.chains   ? "title-used-chain"
                                         : "title-free-loop";
  return making.words(id, {letters});
}

std::string sign_words(const Making& making, const Placed& sign) {
  switch (sign.sign) {
  case Sign::eye:
    return making.words("title-eye");
  case Sign::marker:
    return making.words("title-marker");
  case Sign::bead:
    return making.words("title-bead");
  case Sign::thread:
    return making.words("title-thread");
  case Sign::tick:
    return making.words(sign.up.x == 0 && sign.up.y == 0 ? "title-number" : "title-tick");
  case Sign::flag: {
    const auto yarn = static_cast<std::uint8_t>(std::stoi(sign.text.text));
    return making.words("title-flag", {yarn_name(making, yarn)});
  }
  case Sign::attach:
    return making.words("title-attach");
  case Sign::free_loop:
    return used_words(making, sign.text.text);
  case Sign::joined:
    return making.words("title-joined", {sign.text.text});
  case Sign::joined_first:
    return making.words("title-joined-first");
  case Sign::front:
    return making.words("title-front-side");
  case Sign::sewn: // its outline is told
    break;
  }
  return "";
}

/// A stitch on the ground of its yarn.
void add_ground(const Making& making, std::uint8_t yarn, std::vector<Entry>& entries) {
  if (making.usage.stitches.empty()) return;
  const std::uint32_t symbol = making.symbols.stitch(plainest(making.usage, making.copy.fabric));
  const Box ink = bounds(making.symbols.definition(symbol));
  const double half =
      std::max(0.55 * making.scale, making.factor * std::max(ink.width(), ink.height()) * 0.62);
  const Point middle{(ink.left + ink.right) / 2, (ink.top + ink.bottom) / 2};
  Fill ground{closed_through({{-half, -half}, {half, -half}, {half, half}, {-half, half}}),
              ground_color(tone_of(making.copy, yarn)),
              {}};
  Symbol stitch{symbol, Point{0, 0} - making.factor * middle, {0, -1}, making.factor, ink::black, {}};
  entries.push_back(finished(making, {"ground",
                                      {std::move(ground), stitch},
                                      {},
                                      "",
                                      making.words("title-ground", {yarn_name(making, yarn)})}));
}

std::string key_of(Sign sign) {
  if (sign == Sign::tick) return "tick";
  return sign == Sign::front ? "front-side" : std::string(mark_of(sign));
}

} // namespace

void add_signs(const Copy& copy, SymbolCase& symbols, const Usage& usage, double factor, double scale,
               std::vector<Entry>& entries) {
  const Making making{copy, symbols, usage, factor, scale};
  for (const std::uint8_t yarn : usage.grounds) add_ground(making, yarn, entries);
  for (const Placed& sign : usage.signs)
    if (sign.sign != Sign::sewn) add_sign(making, sign, key_of(sign.sign), sign_words(making, sign), entries);
}

} // namespace whorl::drawing
