#include "drawing/svg.hpp"

#include "drawing/number.hpp"
#include "drawing/type.hpp"
#include "drawing/xml.hpp"

#include <algorithm>
#include <set>

namespace whorl::drawing {
namespace {

using fabric::StitchId;

/// The document as it grows. Numbers and texts go straight into it: a tree of the whole costs twice the time.
struct Page {
  const Scene& scene;
  const SvgOptions& options;
  std::string out{};
  std::string prefix{}; ///< of ids, as it is written
  std::vector<std::string> symbol_ids{};
  std::set<std::string> ids{};   ///< of groups and symbols
  std::vector<bool> has_id{};    ///< per stitch: its id is taken
  std::uint32_t read_to = 0;     ///< where in the text the last stitch written is said …
  pattern::Position place{0, 0}; ///< … as a person counts it
};

void append_color(std::string& out, Color color) {
  static constexpr char digits[] = "0123456789abcdef";
  out += '#';
  for (int shift = 20; shift >= 0; shift -= 4) out += digits[(color.rgb >> shift) & 0xF];
}

void attribute(std::string& out, const char* name, double value) {
  out.append(" ").append(name).append("=\"");
  append_number(out, value);
  out += '"';
}

void attribute(std::string& out, const char* name, std::string_view text) {
  out.append(" ").append(name).append("=\"");
  append_escaped(out, text);
  out += '"';
}

void attribute(std::string& out, const char* name, Color color) {
  out.append(" ").append(name).append("=\"");
  append_color(out, color);
  out += '"';
}

void append_points(std::string& out, const Point* first, int count) {
  for (int i = 0; i < count; ++i) {
    for (const double value : {first[i].x, first[i].y}) {
      const std::int64_t rounded = thousandths(value);
      if (rounded >= 0 && out.back() >= '0' && out.back() <= '9') out += ' ';
      append_decimal(out, rounded, 3);
    }
  }
}

void append_path(std::string& out, const Path& path) {
  out += " d=\"";
  const Point* next = path.points.data();
  for (const Verb verb : path.verbs) {
    out += "MLCZ"[static_cast<int>(verb)];
    const int count = verb == Verb::close ? 0 : verb == Verb::curve ? 3 : 1;
    append_points(out, next, count);
    next += count;
  }
  out += '"';
}

/// An id that no other group or symbol of the document has, prefix and all.
std::string claim(Page& page, const std::string& wanted) {
  std::string id = page.options.prefix + wanted;
  for (int again = 2; !page.ids.insert(id).second; ++again)
    id = page.options.prefix + wanted + "_" + std::to_string(again);
  return id;
}

void open_document(Page& page) {
  const Scene& scene = page.scene;
  const std::string title = claim(page, "sheet_title"), description = claim(page, "sheet_description");
  std::string& out = page.out;
  out += "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"";
  append_number(out, scene.width);
  out += "mm\" height=\"";
  append_number(out, scene.height);
  out += "mm\" viewBox=\"0 0 ";
  append_number(out, scene.width);
  out += ' ';
  append_number(out, scene.height);
  out += '"';
  attribute(out, "lang", scene.language);
  attribute(out, "xml:lang", scene.language);
  attribute(out, "role", "graphics-document document");
  attribute(out, "aria-labelledby", title);
  attribute(out, "aria-describedby", description);
  attribute(out, "font-family", font_family(Typeface::sans));
  out += " fill=\"none\" stroke-linecap=\"round\" stroke-linejoin=\"round\">\n<title";
  attribute(out, "id", title);
  out += '>';
  append_escaped(out, scene.title);
  out += "</title>\n<desc";
  attribute(out, "id", description);
  out += '>';
  append_escaped(out, scene.description);
  out += "</desc>\n";
}

void write_pen(std::string& out, const Pen& pen) {
  out += "<path";
  append_path(out, pen.path);
  if (pen.stroke == 0)
    out += " fill=\"currentColor\"";
  else {
    out += " stroke=\"currentColor\"";
    attribute(out, "stroke-width", pen.stroke);
    if (pen.dash > 0) attribute(out, "stroke-dasharray", pen.dash);
  }
  out += "/>";
}

/// Ids of symbols have an underscore, those of stitches and groups none: they cannot meet.
void write_definitions(Page& page) {
  if (page.scene.symbols.empty()) return;
  page.out += "<defs>\n";
  for (const SymbolDefinition& symbol : page.scene.symbols) {
    page.symbol_ids.push_back(claim(page, "symbol_" + id_word(symbol.id)));
    page.out += "<g";
    attribute(page.out, "id", page.symbol_ids.back());
    page.out += '>';
    for (const Pen& pen : symbol.pens) write_pen(page.out, pen);
    page.out += "</g>\n";
  }
  page.out += "</defs>\n";
}

/// The ids of the places that a stitch is worked into.
void write_into(Page& page, StitchId stitch) {
  const fabric::Fabric& fabric = *page.options.fabric;
  const fabric::Legs legs = fabric::legs_of(fabric, stitch);
  if (legs.size() == 0) return;
  page.out += " data-into=\"";
  for (const fabric::Leg& leg : legs) {
    if (&leg != legs.first) page.out += ' ';
    fabric::append_id(page.out, fabric, leg.into, page.prefix);
  }
  page.out += '"';
}

/// Columns of one line are counted on from stitch to stitch: a line may be long.
pattern::Position position_in_text(Page& page, std::uint32_t byte) {
  const pattern::Source& source = *page.options.source;
  if (byte >= page.read_to && source.line_of(byte) + 1 == page.place.line)
    page.place.column += source.length({page.read_to, byte});
  else
    page.place = source.position(byte);
  page.read_to = byte;
  return page.place;
}

void write_place_in_text(Page& page, Span span) {
  if (!page.options.source || span.begin == span.end) return;
  const pattern::Position position = position_in_text(page, span.begin);
  page.out += " data-line=\"";
  append_decimal(page.out, position.line, 0);
  page.out += "\" data-column=\"";
  append_decimal(page.out, position.column, 0);
  page.out += '"';
}

const char* loops_word(std::uint8_t loops) {
  if (loops == stitch::front) return "front";
  return loops == stitch::back ? "back" : "third";
}

/// Which loops of its places a stitch takes, where they are not both.
void write_loops(Page& page, StitchId stitch) {
  const fabric::Legs legs = fabric::legs_of(*page.options.fabric, stitch);
  if (legs.size() == 0) return;
  const fabric::Place& into = legs.begin()->into;
  const bool told =
      into.what == fabric::On::top && into.loops != stitch::both && into.loops != stitch::no_loop;
  if (told) attribute(page.out, "data-loop", std::string_view(loops_word(into.loops)));
}

/// What a stitch is, what it is worked into, and where the text says it.
void write_meaning(Page& page, StitchId stitch, Span span) {
  const fabric::Fabric& fabric = *page.options.fabric;
  page.out += "\" class=\"";
  append_class(page.out, fabric.kinds[fabric.stitches[stitch].kind].name);
  page.out += "\" data-stitch=\"";
  append_escaped(page.out, fabric.kinds[fabric.stitches[stitch].kind].name);
  page.out += '"';
  write_into(page, stitch);
  write_loops(page, stitch);
  write_place_in_text(page, span);
}

/// A stitch has its id once; where it is drawn again (the faint round of the next figure) it points to that.
void write_stitch(Page& page, const Origin& origin) {
  const fabric::Fabric* fabric = page.options.fabric;
  if (!fabric || origin.stitch >= fabric->stitches.size()) return;
  const bool again = page.has_id[origin.stitch];
  page.has_id[origin.stitch] = true;
  page.out += again ? " data-again=\"" : " id=\"";
  fabric::append_id(page.out, *fabric, origin.stitch, page.prefix);
  if (again) {
    page.out += "\" class=\"";
    append_class(page.out, fabric->kinds[fabric->stitches[origin.stitch].kind].name);
    page.out += '"';
    return;
  }
  write_meaning(page, origin.stitch, origin.span);
  if (origin.count > 1) attribute(page.out, "data-stitches", static_cast<double>(origin.count));
}

/// The other stitches that a symbol shows have their ids too, on nothing that is drawn.
void write_others(Page& page, const Origin& origin) {
  const fabric::Fabric* fabric = page.options.fabric;
  if (!fabric || origin.stitch >= fabric->stitches.size()) return;
  const std::size_t end =
      std::min<std::size_t>(origin.stitch + std::size_t{origin.count}, fabric->stitches.size());
  for (StitchId stitch = origin.stitch + 1; stitch < end; ++stitch) {
    if (page.has_id[stitch]) continue;
    page.has_id[stitch] = true;
    page.out += "<g id=\"";
    fabric::append_id(page.out, *fabric, stitch, page.prefix);
    write_meaning(page, stitch, origin.span);
    page.out += "/>\n";
  }
}

void write_matrix(std::string& out, const Symbol& symbol) {
  const double k = symbol.scale;
  const Point up = symbol.up;
  out += " transform=\"matrix(";
  for (const double value : {0.0 - k * up.y, k * up.x, 0.0 - k * up.x, 0.0 - k * up.y, symbol.at.x}) {
    append_number(out, value);
    out += ' ';
  }
  append_number(out, symbol.at.y);
  out += ")\"";
}

void write(Page& page, const Symbol& symbol, Color current) {
  if (symbol.symbol >= page.symbol_ids.size()) return;
  page.out += "<use";
  write_stitch(page, symbol.origin);
  page.out += " href=\"#";
  append_escaped(page.out, page.symbol_ids[symbol.symbol]);
  page.out += '"';
  write_matrix(page.out, symbol);
  if (symbol.color != current) attribute(page.out, "color", symbol.color);
  page.out += "/>\n";
  write_others(page, symbol.origin);
}

void write(Page& page, const Stroke& stroke, Color) {
  page.out += "<path";
  append_path(page.out, stroke.path);
  attribute(page.out, "stroke", stroke.color);
  attribute(page.out, "stroke-width", stroke.width);
  if (stroke.dash > 0) attribute(page.out, "stroke-dasharray", stroke.dash);
  page.out += "/>\n";
}

void write(Page& page, const Fill& fill, Color) {
  page.out += "<path";
  append_path(page.out, fill.path);
  attribute(page.out, "fill", fill.color);
  page.out += "/>\n";
}

bool needs_its_blanks(std::string_view text) {
  return !text.empty() &&
         (text.front() == ' ' || text.back() == ' ' || text.find("  ") != std::string_view::npos);
}

void write(Page& page, const Text& text, Color) {
  std::string& out = page.out;
  out += "<text";
  attribute(out, "x", text.at.x);
  attribute(out, "y", text.at.y);
  attribute(out, "font-size", text.size);
  if (text.face == Typeface::serif) attribute(out, "font-family", font_family(text.face));
  if (text.bold) attribute(out, "font-weight", "bold");
  if (text.italic) attribute(out, "font-style", "italic");
  if (text.anchor != Anchor::start)
    attribute(out, "text-anchor", text.anchor == Anchor::middle ? "middle" : "end");
  attribute(out, "fill", text.color);
  if (needs_its_blanks(text.text)) attribute(out, "xml:space", "preserve");
  out += '>';
  append_escaped(out, text.text);
  out += "</text>\n";
}

/// The colour of a group is that of its first symbol; what differs says so itself.
Color color_within(const Group& group, Color current) {
  for (const Item& item : group.items)
    if (const auto* symbol = std::get_if<Symbol>(&item)) return symbol->color;
  return current;
}

void write_rounds(Page& page, const Group& group) {
  if (group.rounds.empty()) return;
  page.out += " data-rounds=\"";
  for (const std::string& id : group.rounds) {
    if (&id != &group.rounds.front()) page.out += ' ';
    page.out += page.prefix;
    append_escaped(page.out, id);
  }
  page.out += '"';
}

void write(Page& page, const Group& group, Color current) {
  const Color color = color_within(group, current);
  std::string& out = page.out;
  out += "<g";
  if (!group.id.empty()) attribute(out, "id", claim(page, group.id));
  if (!group.kind.empty()) attribute(out, "class", group.kind);
  if (color != current) attribute(out, "color", color);
  write_rounds(page, group);
  if (!group.title.empty()) {
    attribute(out, "role", "group");
    attribute(out, "aria-label", group.title);
    out += "><title>";
    append_escaped(out, group.title);
    out += "</title>\n";
  } else
    out += ">\n";
  for (const Item& item : group.items)
    std::visit([&page, color](const auto& one) { write(page, one, color); }, item);
  out += "</g>\n";
}

void make_room(Page& page) {
  constexpr std::size_t bytes_of_a_stitch = 192, bytes_of_the_rest = 16384;
  const std::size_t stitches = page.options.fabric ? page.options.fabric->stitches.size() : 0;
  page.has_id.resize(stitches);
  page.out.reserve(stitches * bytes_of_a_stitch + bytes_of_the_rest);
}

} // namespace

std::string svg(const Scene& scene, const SvgOptions& options) {
  Page page{scene, options};
  append_escaped(page.prefix, options.prefix);
  make_room(page);
  open_document(page);
  write_definitions(page);
  for (const Item& item : scene.items)
    std::visit([&page](const auto& one) { write(page, one, Color{}); }, item);
  page.out += "</svg>\n";
  return std::move(page.out);
}

} // namespace whorl::drawing
