#pragma once

#include "drawing/legend.hpp"
#include "drawing/usage.hpp"

#include <string>
#include <vector>

namespace whorl::drawing {

using Entries = std::vector<Entry>;

/// What the entries are made from.
struct Making {
  const Copy& copy;
  SymbolCase& symbols;
  const Usage& usage;
  double factor; ///< of the chart's scale
  double scale;  ///< mm per W of the samples
};

/// The words of the sheet of an id.
std::string words(const Making& making, const std::string& id, const std::vector<std::string>& with = {});

/// The words of an id, or others where the language has none.
std::string words_or(const Making& making, const std::string& id, const std::string& otherwise);

/// The kind of a symbol of the sheet.
const stitch::StitchKind& kind_of(const Making& making, const layout::SymbolKey& key);

/// What a symbol's stitch is called: by the author, else in the terms of the sheet.
std::string stitch_name(const Making& making, const layout::SymbolKey& key);

/// An entry with the box of its sample.
Entry finished(const Making& making, Entry entry);

/// Letters keep their base line, which is that of the words beside them.
Entry finished_letters(const Making& making, Entry entry);

/// Base line of an entry's words below the middle of its sample.
inline constexpr double base_line = 1.1;

/// A symbol with the middle of its ink at `middle`.
Symbol centred(const Making& making, std::uint32_t symbol, Point middle, Color color);

/// An entry for each stitch of the sheet, then for each set of loops that is marked.
void add_stitches(const Making& making, Entries& entries);
void add_loops(const Making& making, Entries& entries);

/// Entries for everything that begins, leads, tells apart and ends.
void add_starts(const Making& making, Entries& entries);
void add_pointer(const Making& making, Entries& entries);
void add_label(const Making& making, Entries& entries);
void add_strip_label(const Making& making, Entries& entries);
void add_miscounts(const Making& making, Entries& entries);
void add_direction(const Making& making, Entries& entries);
void add_inks(const Making& making, Entries& entries);
void add_break(const Making& making, Entries& entries);
void add_footprint(const Making& making, Entries& entries);
void add_edge(const Making& making, Entries& entries);
void add_joins(const Making& making, Entries& entries);
void add_starting_chain(const Making& making, Entries& entries);
void add_echo(const Making& making, Entries& entries);
void add_endings(const Making& making, Entries& entries);

/// Entries without a sample for ways of working that hold for all stitches.
void add_techniques(const Making& making, Entries& entries);

} // namespace whorl::drawing
