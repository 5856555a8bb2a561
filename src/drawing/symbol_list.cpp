#include "drawing/symbol_list.hpp"

#include "drawing/usage.hpp"

#include <algorithm>
#include <initializer_list>

namespace whorl::drawing {
namespace {

const char* group_of(const stitch::StitchKind& kind, const layout::SymbolKey& key) {
  const stitch::Shape shape = stitch::shape_of(kind);
  if (key.base != layout::Base::top) return "groups";
  if (kind.takes > 1) return "decreases";
  if (shape.feet_joined || (kind.takes == 0 && kind.makes == 0 && kind.moves.size() > 1)) return "groups";
  return key.in_one > 1 ? "increases" : "stitches";
}

/// The group of each entry of a legend: its stitches come first, then the loops, then everything else.
std::vector<std::string> groups_of(const Copy& copy, const std::vector<Entry>& entries) {
  const Usage usage = usage_of(copy);
  std::vector<std::string> groups;
  for (const layout::SymbolKey& key : usage.stitches)
    groups.push_back(group_of(copy.fabric.kinds[key.kind], key));
  groups.insert(groups.end(), usage.looped.size(), "loops");
  for (std::size_t i = groups.size(); i < entries.size(); ++i)
    groups.push_back(entries[i].key.substr(0, 10) == "technique-" ? "ways" : "marks");
  return groups;
}

} // namespace

std::vector<SymbolGroup> symbol_list(const Copy& copy, SymbolCase& symbols) {
  const std::vector<Entry> entries = legend_entries(copy, symbols);
  const std::vector<std::string> groups = groups_of(copy, entries);
  std::vector<SymbolGroup> list;
  for (const char* id : {"stitches", "increases", "decreases", "groups", "loops", "marks", "ways"}) {
    SymbolGroup group{id, say(copy.wording, std::string("symbols-") + id), {}};
    for (std::size_t i = 0; i < entries.size(); ++i)
      if (groups[i] == id) group.entries.push_back(entries[i]);
    if (!group.entries.empty()) list.push_back(std::move(group));
  }
  return list;
}

} // namespace whorl::drawing
