#include "drawing/caption.hpp"

#include "drawing/joint_caption.hpp"
#include "drawing/technique.hpp"
#include "layout/section.hpp"

#include <algorithm>

namespace whorl::drawing {
namespace {

using layout::Centre;
using layout::Figure;
using layout::Form;

const Figure* figure_before(const Copy& copy, std::size_t figure) {
  if (figure == 0) return nullptr;
  const auto& figures = copy.placement.figures;
  return figures[figure - 1].part == figures[figure].part ? &figures[figure - 1] : nullptr;
}

/// Whether the part goes on in another figure.
bool goes_on(const Copy& copy, std::size_t figure) {
  const auto& figures = copy.placement.figures;
  return figure + 1 < figures.size() && figures[figure + 1].part == figures[figure].part;
}

bool is_row(const Copy& copy, std::uint32_t round) {
  return round < copy.fabric.rounds.size() && copy.fabric.rounds[round].kind == pattern::RoundKind::row;
}

/// "round" or "row", before the rest of an id.
std::string of_rounds(const Copy& copy, std::uint32_t round, const char* id) {
  return (is_row(copy, round) ? "row" : "round") + std::string(id);
}

/// "rounds 3–5", "row 2".
std::string stretch(const Copy& copy, std::uint32_t first, std::uint32_t last) {
  if (first == last)
    return say(copy.wording, of_rounds(copy, first, "-one"), {round_number(copy.fabric, first)});
  return say(copy.wording, of_rounds(copy, first, "-from-to"),
             {round_number(copy.fabric, first), round_number(copy.fabric, last)});
}

/// Whether only the edging of the rows in a figure is its own.
bool is_edging_alone(const Figure& figure) {
  return std::any_of(figure.rings.begin(), figure.rings.end(), [&figure](const layout::Ring& ring) {
    return ring.edging && ring.round == figure.first_round;
  });
}

/// From where a figure is seen; which sentence of the wording says it.
const char* view(const Copy& copy, std::size_t figure) {
  const Figure& it = copy.placement.figures[figure];
  const Figure* before = figure_before(copy, figure);
  switch (it.form) {
  case Form::disc:
    if (layout::goes_along_rows(copy.fabric, it.first_round)) return "caption-around-edge";
    if (it.centre != Centre::open || before == nullptr) return "caption-start";
    return before->form == Form::strip ? "caption-from-strip" : "caption-from-neck";
  case Form::disc_inward:
    if (it.centre == Centre::gathered) return "caption-closing";
    if (it.centre != Centre::open || !goes_on(copy, figure)) return "caption-end";
    return copy.placement.figures[figure + 1].form == Form::strip ? "caption-end" : "caption-to-neck";
  case Form::strip:
    return it.clockwise ? "caption-strip-left" : "caption-strip-right";
  case Form::oval:
    return "caption-start";
  case Form::motif:
    return "caption-front";
  case Form::sector:
    return "caption-rows";
  case Form::rows:
    if (is_edging_alone(it)) return "caption-edging";
    return !it.rings.empty() && it.rings.back().edging ? "caption-rows-edged" : "caption-rows";
  }
  return "caption-start";
}

/// The faint round in whose loops a figure's part is worked.
const layout::Ring* owner_ring(const Figure& figure) {
  for (const layout::Ring& ring : figure.rings)
    if (ring.owner) return &ring;
  return nullptr;
}

/// What a part's first stitch with a leg goes into.
fabric::Place first_place(const Copy& copy, std::uint32_t part) {
  const fabric::Round& first = copy.fabric.rounds[copy.fabric.parts[part].first_round];
  for (std::uint32_t i = 0; i < first.count; ++i)
    if (const fabric::Legs legs = fabric::legs_of(copy.fabric, first.first_stitch + i); legs.size() > 0)
      return legs.begin()->into;
  return {};
}

/// "free front loops", of what the part is begun in.
std::string loops_used(const Copy& copy, const Figure& figure) {
  const fabric::Place place = first_place(copy, figure.part);
  if (place.loops == stitch::front) return say(copy.wording, "free-front");
  if (place.loops == stitch::back) return say(copy.wording, "free-back");
  const bool whole = place.of != fabric::none && place.what == fabric::On::top && place.loops == stitch::both;
  return say(copy.wording, whole ? "stitches-used" : "free-loops");
}

/// "rounds 1–3, in the free front loops of round 10 of Stem, seen from the start of that part".
std::string owner_view(const Copy& copy, const Figure& figure, const layout::Ring& owner) {
  const char* round = owner.against ? "caption-owner-end" : "caption-owner-start";
  return say(copy.wording, figure.form == Form::rows ? "caption-owner-rows" : round,
             {stretch(copy, figure), loops_used(copy, figure), round_of_part(copy, owner.round)});
}

/// "hold Stem with its start down": so that the part runs as it is drawn. A starting chain is the start.
std::string hold(const Copy& copy, const layout::Ring& owner) {
  const fabric::Round& round = copy.fabric.rounds[owner.round];
  const std::string& name = copy.fabric.parts[round.part].name;
  const bool up = owner.against || round.kind == pattern::RoundKind::chain;
  const std::string id = up ? "caption-hold-end" : "caption-hold-start";
  return name.empty() ? say(copy.wording, id + "-unnamed") : say(copy.wording, id, {name});
}

/// "Leg and Tail": the other parts whose edges a figure's first round goes along; "": it goes along none.
std::string joined_parts(const Copy& copy, const Figure& figure) {
  std::string words;
  for (const std::uint32_t part : layout::joined_parts(copy.fabric, figure.first_round)) {
    const std::string& name = copy.fabric.parts[part].name;
    words = words.empty() ? name : say(copy.wording, "joined-and", {words, name});
  }
  return words;
}

/// "the crown" where the part's note says that it begins there, else "the start".
std::string start_of(const Copy& copy, const Figure& figure) {
  const bool named = figure.part < copy.text.starts.size() && !copy.text.starts[figure.part].empty();
  return named ? copy.text.starts[figure.part] : say(copy.wording, "start");
}

/// "rounds 3–5": where a figure's rows have an edging, its rounds; else none.
std::string edging_rounds(const Copy& copy, const Figure& figure) {
  for (const layout::Ring& ring : figure.rings)
    if (ring.edging) return stretch(copy, ring.round, figure.last_round);
  return "";
}

bool is_in(const Figure& figure, std::uint32_t round) {
  return figure.first_round <= round && round <= figure.last_round;
}

/// "eyes", "markers", "beads", "embroidery": what is put into holes, before the rest of an id.
std::string of_posts(const fabric::Placing& placing, const char* id) {
  if (placing.what == pattern::What::eye) return "caption-eyes" + std::string(id);
  if (placing.what == pattern::What::embroider)
    return (placing.after.size() > 2 ? "caption-embroidery-over" : "caption-embroidery") + std::string(id);
  return (placing.what == pattern::What::marker ? "caption-markers" : "caption-beads") + std::string(id);
}

/// "eyes between rounds 11 and 12, after stitches 11 and 19 (8 between)".
std::string posts(const Copy& copy, const fabric::Placing& placing) {
  const std::uint32_t first = placing.after.front(), last = placing.after.back();
  const std::string a = std::to_string(first), b = std::to_string(last), apart = std::to_string(last - first);
  const std::string round = round_number(copy.fabric, placing.round);
  const pattern::Placing* text =
      placing.text < copy.tree.placings.size() ? &copy.tree.placings[placing.text] : nullptr;
  if (text != nullptr && text->to > text->from)
    return say(copy.wording, of_posts(placing, "-between"),
               {std::to_string(text->from), std::to_string(text->to), a, b, apart});
  return say(copy.wording, of_posts(placing, ""), {round, a, b, apart});
}

/// "gathered through the front loops", where the text names them.
std::vector<std::string> gathering_said(const Copy& copy, const Figure& figure) {
  if (figure.centre != Centre::gathered) return {};
  const std::uint32_t part = copy.fabric.parts[figure.part].text;
  for (const pattern::Placing& placing : copy.tree.placings) {
    if (!placing.gather || placing.part != part || placing.loops == 0) continue;
    const bool front = placing.loops == stitch::front, back = placing.loops == stitch::back;
    return {say(copy.wording, front ? "gathered-front" : back ? "gathered-back" : "gathered-both")};
  }
  return {};
}

bool is_placed_in(const fabric::Placing& placing, const Figure& figure) {
  return is_post(placing.what) && placing.part == figure.part && is_in(figure, placing.round);
}

/// Whether a figure shows two of them in their holes.
bool places_posts(const fabric::Placing& placing, const Figure& figure) {
  return is_placed_in(placing, figure) && placing.after.size() >= 2 &&
         placing.after.back() > placing.after.front();
}

/// Whether their round is all that is said of them.
bool names_round_of_posts(const fabric::Placing& placing, const Figure& figure) {
  const bool said = placing.what == pattern::What::eye || placing.what == pattern::What::bead;
  return said && is_placed_in(placing, figure) && placing.after.size() < 2;
}

/// "eyes between rounds 11 and 12".
std::string posts_by_round(const Copy& copy, const fabric::Placing& placing) {
  const pattern::Placing* text =
      placing.text < copy.tree.placings.size() ? &copy.tree.placings[placing.text] : nullptr;
  if (text != nullptr && text->to > text->from)
    return say(copy.wording, of_posts(placing, "-round-between"),
               {std::to_string(text->from), std::to_string(text->to)});
  return say(copy.wording, of_posts(placing, "-round"), {round_number(copy.fabric, placing.round)});
}

std::string stitches(const Copy& copy, std::uint32_t count) {
  return say(copy.wording, count == 1 ? "stitch" : "stitches", {std::to_string(count)});
}

std::string part_description(const Copy& copy, std::uint32_t part) {
  const fabric::Part& it = copy.fabric.parts[part];
  if (it.name.empty()) return "";
  return say(copy.wording, "describe-part", {it.name, std::to_string(it.make)});
}

std::string figure_description(const Copy& copy, std::size_t figure) {
  std::string words = spoken_caption(copy, figure) + ".";
  for (const layout::Ring& ring : copy.placement.figures[figure].rings)
    if (!ring.echo) words += " " + ring_title(copy, ring) + ".";
  return words;
}

} // namespace

std::string round_number(const fabric::Fabric& fabric, std::uint32_t round) {
  if (round >= fabric.rounds.size()) return "";
  const fabric::Round& it = fabric.rounds[round];
  std::string number = std::to_string(it.number);
  if (it.again > 0) number += static_cast<char>('a' + (it.again < 25 ? it.again : 25));
  return number;
}

std::string round_of_part(const Copy& copy, std::uint32_t round, bool named) {
  const std::string& name = copy.fabric.parts[copy.fabric.rounds[round].part].name;
  const std::string number = round_number(copy.fabric, round);
  if (copy.fabric.rounds[round].kind == pattern::RoundKind::chain)
    return name.empty() ? say(copy.wording, "owner-chain-unnamed") : say(copy.wording, "owner-chain", {name});
  if (name.empty() || !named) return say(copy.wording, of_rounds(copy, round, "-one"), {number});
  return say(copy.wording, is_row(copy, round) ? "owner-row" : "owner", {number, name});
}

std::string stretch(const Copy& copy, const Figure& figure) {
  std::uint32_t last = figure.last_round;
  for (const layout::Ring& ring : figure.rings)
    if (ring.edging && ring.round > figure.first_round) last = std::min(last, ring.round - 1);
  if (figure.rings.empty() || !figure.rings.back().edging || is_edging_alone(figure))
    last = figure.last_round;
  return stretch(copy, figure.first_round, last);
}

std::string figure_number(const Copy& copy, std::size_t figure) {
  return say(copy.wording, "figure", {std::to_string(figure + 1)});
}

std::vector<std::string> caption(const Copy& copy, std::size_t figure) {
  const Figure& it = copy.placement.figures[figure];
  const layout::Ring* owner = owner_ring(it);
  const std::string joined = joined_parts(copy, it);
  std::vector<std::string> sentences;
  if (owner != nullptr)
    sentences = {owner_view(copy, it, *owner), hold(copy, *owner)};
  else if (!joined.empty())
    sentences = {say(copy.wording, "caption-joined", {stretch(copy, it), joined, start_of(copy, it)})};
  else
    sentences = {say(copy.wording, view(copy, figure),
                     {stretch(copy, it), start_of(copy, it), edging_rounds(copy, it)})};
  if (it.form != Form::sector && layout::is_turned(it))
    sentences.push_back(say(copy.wording, "caption-turned"));
  for (std::string& sentence : gathering_said(copy, it)) sentences.push_back(std::move(sentence));
  for (std::string& sentence : joints_said(copy, it)) sentences.push_back(std::move(sentence));
  if (std::string inside_out = inside_out_words(copy, figure); !inside_out.empty())
    sentences.push_back(std::move(inside_out));
  for (const fabric::Placing& placing : copy.fabric.placings)
    if (places_posts(placing, it))
      sentences.push_back(posts(copy, placing));
    else if (names_round_of_posts(placing, it))
      sentences.push_back(posts_by_round(copy, placing));
  return sentences;
}

std::string spoken_caption(const Copy& copy, std::size_t figure) {
  std::string words = figure_number(copy, figure) + ":";
  const char* before = " ";
  for (const std::string& sentence : caption(copy, figure)) {
    words += before + sentence;
    before = "; ";
  }
  return words;
}

std::string ring_title(const Copy& copy, const layout::Ring& ring) {
  const std::string first = round_number(copy.fabric, ring.round);
  if (ring.chain)
    return say(copy.wording, "chain-title", {std::to_string(copy.fabric.rounds[ring.round].count)});
  if (ring.owner) return say(copy.wording, "round-owner", {round_of_part(copy, ring.round)});
  if (ring.echo) {
    const bool shown = layout::is_wanted(copy.placement.wanted, copy.fabric.rounds[ring.round]);
    return say(copy.wording, of_rounds(copy, ring.round, shown ? "-again" : "-before"), {first});
  }
  const std::string count = stitches(copy, copy.fabric.rounds[ring.round].counted);
  if (ring.round == ring.last_round)
    return say(copy.wording, of_rounds(copy, ring.round, "-title"), {first, count});
  return say(copy.wording, of_rounds(copy, ring.round, "-titles"),
             {first, round_number(copy.fabric, ring.last_round), count});
}

std::string description(const Copy& copy) {
  const auto& figures = copy.placement.figures;
  std::size_t shown = 0;
  for (std::size_t i = 0; i < figures.size(); ++i) shown += is_on_sheet(copy, i) ? 1 : 0;
  if (shown == 0) return say(copy.wording, figures.empty() ? "describe-nothing" : "describe-rest");
  std::string words = say(copy.wording, "describe-sheet", {std::to_string(shown)});
  std::uint32_t part = fabric::none;
  for (std::size_t i = 0; i < figures.size(); ++i) {
    if (!is_on_sheet(copy, i)) continue;
    if (figures[i].part != part) {
      part = figures[i].part;
      const std::string named = part_description(copy, part);
      if (!named.empty()) words += " " + named;
    }
    words += " " + figure_description(copy, i);
  }
  for (const std::size_t technique : techniques_on(copy))
    words += " " + say(copy.wording, "describe-technique", {technique_words(copy, technique)});
  return words;
}

} // namespace whorl::drawing
