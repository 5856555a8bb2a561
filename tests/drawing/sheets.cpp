#include "drawing/sheets.hpp"

#include "drawing/wording_file.hpp"
#include "fabric/work.hpp"

namespace sheets {

namespace {

void gather(const std::vector<drawing::Item>& items, const std::string& within, std::vector<Found>& found) {
  for (const drawing::Item& item : items) {
    if (const auto* group = std::get_if<drawing::Group>(&item))
      gather(group->items, within + " " + group->kind, found);
    else
      found.push_back({&item, within});
  }
}

void gather(const std::vector<drawing::Item>& items, const std::string& kind,
            std::vector<const drawing::Group*>& groups) {
  for (const drawing::Item& item : items)
    if (const auto* group = std::get_if<drawing::Group>(&item)) {
      if (kind.empty() || group->kind == kind) groups.push_back(group);
      gather(group->items, kind, groups);
    }
}

} // namespace

drawing::Copy Made::copy() const { return {tree, fabric, placement, text, english(), options}; }

const drawing::Wording& english() { return *drawing::find_wording("en"); }

void compose(Made& made) {
  made.scene = drawing::sheet(made.tree, made.fabric, made.placement, drawing::built_in_marks(), made.text,
                              english(), made.options);
}

Made made(const pattern::Tree& tree, const drawing::SheetText& text, const drawing::SheetOptions& options) {
  Made made;
  made.tree = tree;
  made.fabric = fabric::work(tree).fabric;
  const auto& marks = drawing::built_in_marks();
  made.placement = layout::place(made.fabric, drawing::extents_of(made.fabric, marks, options.style), {});
  made.text = text;
  if (made.text.title.empty()) made.text.title = tree.title;
  made.options = options;
  compose(made);
  return made;
}

pattern::Tree gnome() {
  sample::Maker m;
  m.tree.title = "Gnome";
  m.part("Head and body");
  sample::add_rounds(m, {6, 12, 18, 24, 30, 36});
  m.rounds(7, 10, {m.sc_around()}, 36);
  m.round({m.sc_around()}, 36);
  m.round({m.change(36, 30)}, 30);
  m.round({m.change(30, 24)}, 24);
  m.round({m.change(24, 18)}, 18);
  m.round({m.change(18, 24)}, 24);
  m.round({m.change(24, 30)}, 30);
  m.rounds(17, 22, {m.sc_around()}, 30);
  m.round({m.change(30, 24)}, 24);
  m.round({m.change(24, 18)}, 18);
  m.round({m.change(18, 12)}, 12);
  m.round({m.dec(6)}, 6);
  m.gather();
  return m.tree;
}

pattern::Tree beetle() {
  sample::Maker m;
  m.tree.title = "Beetle";
  m.part("Body");
  m.round({m.ch(2), m.in_chain(6, 2)}, 6);
  m.round({m.inc(6)}, 12);
  m.round({m.flo({m.change(12, 18)})}, 18);
  m.rounds(4, 15, {m.sc_around()}, 18);
  m.round({m.change(18, 12)}, 12);
  m.round({m.dec(6)}, 6);
  m.gather();
  m.part("Leg", 6);
  sample::add_rounds(m, {6});
  m.rounds(2, 5, {m.sc_around()}, 6);
  m.place(pattern::What::cut);
  m.part("Wing", 2);
  sample::add_rounds(m, {6, 12});
  m.place(pattern::What::cut);
  m.part("Feeler", 2);
  sample::add_rounds(m, {5});
  m.place(pattern::What::cut);
  return m.tree;
}

std::vector<Found> items_of(const drawing::Scene& scene) {
  std::vector<Found> found;
  gather(scene.items, "", found);
  return found;
}

std::vector<const drawing::Text*> texts_of(const drawing::Scene& scene) {
  std::vector<const drawing::Text*> texts;
  for (const Found& found : items_of(scene))
    if (const auto* text = std::get_if<drawing::Text>(found.item)) texts.push_back(text);
  return texts;
}

std::vector<const drawing::Group*> groups_of(const drawing::Scene& scene, const std::string& kind) {
  std::vector<const drawing::Group*> groups;
  gather(scene.items, kind, groups);
  return groups;
}

std::string words_of(const drawing::Scene& scene, const std::string& kind) {
  std::string words;
  for (const Found& found : items_of(scene))
    if (const auto* text = std::get_if<drawing::Text>(found.item))
      if ((found.within + " ").find(" " + kind + " ") != std::string::npos) words += text->text + " ";
  return words;
}

bool overlap(const drawing::Box& a, const drawing::Box& b) {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

} // namespace sheets
