#pragma once

#include "pattern/line.hpp"

#include <map>
#include <string>
#include <vector>

namespace whorl::pattern {

Finding finding(Severity severity, const char* code, Span span, std::string message, std::string mend = {});

std::string number(std::int64_t value);

std::string quoted(std::string_view text);

/// Tells the designer what was found while reading: many findings of one code are counted and not told one by
/// one.
class Telling {
public:
  explicit Telling(const Reader& reader) : reader_(reader) {}

  void add(Finding found);

  void tell_bad_bytes();
  void tell_long_lines(const Cut& cut);

  /// A line that no reading takes.
  void tell_unread(const Way& way, const std::string& mend);

  /// Stitches and numbers that a reading leaves out, all at once.
  void tell_passed_over(const Reading& reading, const Settled& settled, const std::string& mend);

  /// A word that was passed over is told where its letters, in another order, are one of the language.
  void tell_misspelt(const Line& line, const Reading& reading);

  /// Letters that were read as the figures that scanning took them for: `l8` as 18.
  void tell_scanned(const Line& line);

  /// `5c`, which scanning made of sc; the first of a line.
  void tell_scanned_sc(const Line& line);

  /// A crab stitch, which counts as the stitch that is worked the other way round, and is drawn so.
  void tell_reversed(const Line& line);

  /// A line between the rounds that reads as work, although no label says of which round.
  void tell_left_out(const Line& line);

  /// A bare increase or decrease among several stitches, which is taken for single crochet.
  void tell_mixed(const Reading& reading);

  /// A round whose number has no mark behind it.
  void tell_unmarked(const Line& line, const Label& label);

  /// Numbers that nobody works; whether there is one.
  bool tell_too_much(const Reading& reading);

  /// What the counts chose is said where it was not the likeliest reading, or where two would do.
  void tell_choice(const Line& line, const Ways& ways, const Settled& settled);

  /// All findings; those that were only counted are told as a number.
  std::vector<Finding> take();

private:
  bool is_beside(Span span) const;
  bool is_unknown(Span span) const;
  bool tell_too_large(const std::vector<Span>& spans);

  const Reader& reader_;
  std::vector<Finding> findings_;
  std::map<std::string, int> count_of_code_;
};

} // namespace whorl::pattern
