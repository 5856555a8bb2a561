#include "pattern/own_words.hpp"

#include "pattern/gathered.hpp"
#include "pattern/one_work.hpp"
#include "pattern/other_way.hpp"
#include "pattern/own_group.hpp"
#include "pattern/own_names.hpp"
#include "pattern/own_stitch.hpp"
#include "pattern/own_told.hpp"
#include "pattern/reading.hpp"
#include "pattern/told_moves.hpp"
#include "stitch/moves.hpp"
#include "words/lattice.hpp"

#include <algorithm>
#include <array>
#include <optional>

namespace whorl::pattern {

namespace {

using words::Concept;
using words::ConceptClass;
using words::no_concept;
using words::Vocabulary;

constexpr std::size_t short_name = 8; ///< letters of an abbreviation
constexpr int other_case_cost = 2;

bool has(const std::vector<Concept>& meanings, Concept means) {
  return std::find(meanings.begin(), meanings.end(), means) != meanings.end();
}

/// One definition being found out.
struct Entry {
  const Definition& definition;
  std::string_view name;
  std::string_view value;
  std::vector<std::string> names;
  std::vector<Concept> known; ///< what the names mean in the language
};

/// Finds out what definitions mean, one after the other.
class ListReader {
public:
  ListReader(const Source& source, const Vocabulary& vocabulary)
      : source_(source), language_(vocabulary), vocabulary_(&language_) {}

  OwnWords read(const OwnList& list) {
    const Concept edging = words::find_concept(language_, "edging");
    list_ = &list;
    std::uint32_t worked = 0; // where a line of work ends
    for (const Definition& definition : list.definitions) {
      const Entry entry = entry_of(definition);
      if (has(entry.known, edging)) worked = end_of_line(definition.name.begin); // "Edging: ch 1, …"
      if (definition.name.begin < worked) {
        out_.explains.push_back(false);
        continue;
      }
      if (speaks_of_own(source_.at(definition.value))) extend();
      const bool sense = take(entry_of(definition));
      out_.explains.push_back(sense || (definition.in_list && !definition.in_line));
    }
    return std::move(out_);
  }

private:
  std::uint32_t end_of_line(std::uint32_t at) const {
    return static_cast<std::uint32_t>(std::min(source_.text().find('\n', at), source_.text().size()));
  }

  /// "bp = bumpy petal: | 4 dc …": the name in full stands before what it is.
  static std::string_view behind_full_name(const Definition& definition, std::string_view value) {
    const std::size_t colon = value.find(':');
    if (!definition.equals || colon == std::string_view::npos) return value;
    if (value.find_first_of("0123456789([*=,;") < colon) return value;
    return value.substr(colon + 1);
  }

  Entry entry_of(const Definition& definition) const {
    Entry entry{definition, source_.at(definition.name), source_.at(definition.value), {}, {}};
    entry.value = behind_full_name(definition, entry.value);
    entry.names = names_of(entry.name);
    for (std::string& name : entry.names) name = without_lead(name, *vocabulary_);
    for (const std::string& name : entry.names)
      for (const Concept means : meanings_of(name, *vocabulary_)) entry.known.push_back(means);
    return entry;
  }

  const std::vector<stitch::StitchKind>& kinds() const {
    return out_.kinds.empty() ? stitch::standard_kinds() : out_.kinds;
  }

  /// "" for a concept that only this list brings.
  std::string_view name_of(Concept means) const {
    return means < vocabulary_->concepts.size() ? std::string_view(vocabulary_->concepts[means].name)
                                                : std::string_view();
  }

  /// A list, an equals sign or an abbreviation is no heading of a part.
  static bool is_sure(const Entry& entry) {
    if (entry.definition.in_list || entry.definition.equals) return true;
    const bool is_short = entry.name.size() <= short_name;
    const auto capital = [](char c) { return c >= 'A' && c <= 'Z'; };
    const auto no_capital = [](char c) { return c < 'A' || c > 'Z'; };
    return (is_short && (std::all_of(entry.name.begin(), entry.name.end(), no_capital) ||
                         std::all_of(entry.name.begin(), entry.name.end(), capital)));
  }

  Concept known_work(const Entry& entry) const {
    for (const Concept means : entry.known)
      if (is_work(*vocabulary_, means)) return means;
    return no_concept;
  }

  /// "BLO = only insert behind": known for loops, and explained without a stitch.
  bool stays_loops(const Entry& entry) const {
    const bool loops = std::any_of(entry.known.begin(), entry.known.end(), [this](Concept means) {
      return means < vocabulary_->concepts.size() && vocabulary_->concepts[means].sort == ConceptClass::loops;
    });
    return loops && !many_of(entry.value, *vocabulary_);
  }

  /// "bp = bumpy petal": the language has the word, and nobody knows what the line says of it.
  void tell_not_followed(const Entry& entry) {
    const words::Lattice lattice = words::lattice(words::fold(entry.value), *vocabulary_);
    const auto is_unknown = [](const words::Word& word) { return word.kind == words::WordKind::unknown; };
    const bool nothing_known =
        !lattice.words.empty() && std::all_of(lattice.words.begin(), lattice.words.end(), is_unknown);
    if (nothing_known && is_used(entry))
      out_.findings.push_back(
          not_followed(entry.definition.value, entry.names.front(), name_of(entry.known.front())));
  }

  bool take(const Entry& entry) {
    if (entry.names.empty()) return false;
    if (entry.definition.in_list || entry.definition.equals)
      if (stays_loops(entry)) return tell_not_followed(entry), true;
    const Family family = family_of(entry.name, language_);
    const Concept known = known_work(entry);
    // most headers end here: what follows looks words up
    const bool doubtful = family == Family::none && known == no_concept && !entry.definition.in_line;
    if (doubtful && !is_sure(entry) && !is_used(entry)) return false;
    const Lead lead = leading(entry.value, *vocabulary_);
    if (lead.means != no_concept && works_in_ring(lead)) return false;
    const bool alias = lead.means != no_concept && is_alias(lead);
    if (const auto kind = stitch_in_other_way(source_, *list_, entry.definition, *vocabulary_, kinds()))
      return take_stalk(entry, *kind, kind->title);
    if (entry.definition.behind_work && family != Family::none && !explains_stitch(entry)) return false;
    if (begins_round(entry))
      if (const auto group = group_told(entry.value, *vocabulary_, 1)) return take_group(entry, *group);
    if (family == Family::none)
      if (const auto deep = one_work_of(entry.value); deep && deep->down > 0) return take_work(entry, *deep);
    if (known == no_concept && (family == Family::none || family == Family::bobble))
      if (const auto gathered = gathered_told(entry.value, *vocabulary_, kinds());
          gathered && gathered->unfinished)
        return take_gathered(entry, *gathered);
    if (family == Family::none && (known == no_concept || name_of(known) == "spike"))
      if (const std::uint8_t down = depth_told(entry.value, *vocabulary_); down > 0)
        return take_spike(entry, down);
    if (family == Family::none && known != no_concept) tell_other_moves(entry, known);
    const bool of_family = family != Family::none || family_told(entry) == Family::popcorn;
    if (!of_family && known == no_concept && is_told_in_moves(entry))
      return take_stitch(entry, Family::none, known);
    if (family == Family::none)
      if (const auto stalk = stitch_with_chains(entry.value, *vocabulary_, kinds()))
        return take_stalk(entry, *stalk, entry.names.front());
    if (family == Family::bobble)
      if (const auto kind = closed_over_several(entry)) return take_closed(entry, *kind, known);
    if (family != Family::none && (!alias || known != no_concept)) return take_stitch(entry, family, known);
    const int least = says_same_place(entry.value, *vocabulary_) ? 1 : 2; // "1 sc, 1 ch in the same st"
    if (const auto group = group_told(entry.value, *vocabulary_, least);
        group && (known == no_concept || is_letter_for_spaces(entry, *group)) && is_used(entry))
      return take_group(entry, *group);
    const bool listed = entry.definition.in_list || entry.definition.equals || is_abbreviated(entry) ||
                        !entry.known.empty(); // a word that the language has otherwise
    if (listed && family == Family::none && known == no_concept && is_used(entry))
      if (const auto sequence = sequence_told(entry.value, *vocabulary_))
        return take_sequence(entry, *sequence);
    if (known == no_concept && is_used(entry))
      if (const auto group = group_named(entry.value, *vocabulary_)) return take_group(entry, *group);
    if (alias) return take_alias(entry, lead);
    if (entry.definition.behind_work) return take_sentence(entry, family, known);
    if (const Family told = family_told(entry); told != Family::none && known == no_concept)
      return take_stitch(entry, told, known);
    if (const auto work = one_work_of(entry.value)) return take_work(entry, *work);
    if (known == no_concept && (is_sure(entry) || is_used(entry)))
      if (const auto gathered = gathered_told(entry.value, *vocabulary_, kinds()))
        return take_stalk(entry, gathered->kind, entry.names.front());
    if (known != no_concept) return take_known(entry, known);
    if (const auto base = unknown_base(entry.value, *vocabulary_); base && is_used(entry))
      out_.findings.push_back(made_of_unknown(entry.definition.value, entry.names.front(), *base));
    return take_stitch(entry, family_told(entry), known);
  }

  /// "Beg-CL = ch 2, dc2tog in same st": its chains and stitches stand for the first cluster.
  static bool begins_round(const Entry& entry) {
    const std::string& name = entry.names.front();
    return name.substr(0, 3) == "beg" || name.substr(0, 5) == "start" || name.substr(0, 5) == "first";
  }

  /// `V = (dc, ch 1, dc) in one st`: the letter is an increase with a space, where others mean a plain one.
  static bool is_letter_for_spaces(const Entry& entry, const std::string& group) {
    return entry.names.front().size() == 1 && group.find("ch") != std::string::npos;
  }

  /// Whether the text has the name of an entry again.
  bool is_used(const Entry& entry) {
    if (!whole_text_) whole_text_ = folded(source_.text());
    const auto stands = [this](const std::string& name) { return whole_text_->find(name); };
    return std::any_of(entry.names.begin(), entry.names.end(), [&](const std::string& name) {
      const std::size_t first = stands(name);
      if (first == std::string::npos) return false;
      if (whole_text_->find(name, first + name.size()) != std::string::npos) return true;
      const std::vector<std::string> spellings = spellings_of(name);
      return spellings.size() > 1 && stands(spellings.back()) != std::string::npos;
    });
  }

  /// "V-st: (dc, ch 1, dc) in the same st": a name for several stitches in one place.
  bool take_group(const Entry& entry, const std::string& stitches) {
    words::ConceptEntry group{entry.names.front(), ConceptClass::filler};
    group.works = stitches;
    const Concept means = add_concept(group);
    for (const std::string& named : entry.names)
      for (const std::string& name : spellings_of(named)) {
        add_phrase(name, means, entry);
        add_phrase(name + "s", means, entry);
      }
    waiting_ = true;
    return true;
  }

  /// "Curl: ch 3, sl st in the same st, sc in next st": a name for stitches that say where each goes.
  bool take_sequence(const Entry& entry, const std::string& stitches) {
    if (!goes_back(entry.value, *vocabulary_)) return take_group(entry, stitches);
    out_.findings.push_back(works_back(entry.definition.value, entry.names.back()));
    return false;
  }

  /// `Q = bobble of 4 dc`: the family is in what it means. "3 hdc in the same st, closed together" is a
  /// cluster.
  Family family_told(const Entry& entry) const {
    const auto many = many_of(entry.value, *vocabulary_);
    if (!many) return Family::none;
    const Family told = family_of(entry.value, *vocabulary_);
    if (told != Family::none || many->count < 2) return told;
    // "2 sc worked together" is a decrease
    if (says_same_place(entry.value, *vocabulary_) && says_closed(entry.value, *vocabulary_))
      return Family::bobble;
    return Family::none;
  }

  /// Whether the words follow the hook from loop to loop until the stitch is done, or nearly: then it is none
  /// of the usual ones, whatever else they name.
  bool is_told_in_moves(const Entry& entry) {
    const ToldMoves told = told_moves(entry.value, language_.language);
    if (told.moves.empty() || told.left < 1) return false;
    return told.left == 1 || is_used(entry);
  }

  /// "Bud stitch (bud)".
  static bool is_abbreviated(const Entry& entry) {
    return entry.names.size() > 1 && entry.name.find_first_of("([") != std::string_view::npos;
  }

  bool explains_stitch(const Entry& entry) const {
    return many_of(entry.value, *vocabulary_) || !told_moves(entry.value, language_.language).moves.empty();
  }

  /// "Bobble: 4 dc in the same stitch, closed together.", "A dec is 2 stitches together." behind a round.
  bool take_sentence(const Entry& entry, Family, Concept known) {
    if (const auto work = one_work_of(entry.value)) return take_work(entry, *work);
    if (known == no_concept && family_told(entry) != Family::none)
      return take_stitch(entry, family_told(entry), known);
    return false;
  }

  /// "TAIL: MR, 5 sc (5)" is a round, and no name of a ring.
  bool works_in_ring(const Lead& lead) const {
    if (vocabulary_->concepts[lead.means].sort != ConceptClass::start) return false;
    const std::size_t mark = lead.rest.find_first_not_of(' ');
    return mark != std::string_view::npos && (lead.rest[mark] == ',' || lead.rest[mark] == ';') &&
           lead.rest.find_first_of("0123456789") != std::string_view::npos;
  }

  bool is_alias(const Lead& lead) const {
    const ConceptClass sort = vocabulary_->concepts[lead.means].sort;
    return is_aside(lead.rest, *vocabulary_) || sort == ConceptClass::decrease ||
           name_of(lead.means) == "increase";
  }

  bool take_alias(const Entry& entry, const Lead& lead) {
    Concept means = lead.means;
    if (name_of(means) == "dec" && folded(lead.rest).find("invis") != std::string::npos)
      means = words::find_concept(*vocabulary_, "invdec");
    if (has(entry.known, means)) return add_names(entry, means), true;
    const bool replaces = known_work(entry) != no_concept;
    const bool strange = entry.known.empty() || entry.names.front().size() == 1;
    const bool listed = entry.definition.in_list && is_work(*vocabulary_, means);
    const bool whole =
        known_work(entry) == no_concept && lead.rest.empty() && is_used(entry); // "Bud: same as bo"
    if (!(is_sure(entry) || whole) || !(replaces || strange || listed)) return false;
    tell_redefined(entry, means);
    return add_names(entry, means), true;
  }

  /// The name is known and the explanation is of more words than can be followed; its other names mean it
  /// too.
  bool take_known(const Entry& entry, Concept known) {
    if (!entry.definition.in_list && !entry.definition.in_line && entry.names.size() < 2 &&
        told_moves(entry.value, language_.language).moves.empty())
      return false;
    add_names(entry, known);
    return true;
  }

  std::optional<OneWork> one_work_of(std::string_view value) const {
    return pattern::one_work_of(value, *vocabulary_, kinds());
  }

  /// "sc2tog: 2 sc together" says what the word means anyway.
  bool is_same_work(Concept known, const OneWork& work) const {
    const words::ConceptEntry& means = vocabulary_->concepts[known];
    if (work.in_one == 1 && work.down == 0) return means.name == work.kind.name;
    return means.works == work.kind.name && means.in_one == work.in_one && means.down == work.down;
  }

  bool take_work(const Entry& entry, const OneWork& work) {
    const Concept known = known_work(entry);
    const bool usual_increase =
        known != no_concept && name_of(known) == "increase" && work.kind.name == "sc" && work.in_one == 2;
    const bool usual_decrease = known != no_concept && name_of(known) == "dec" && work.kind.name == "sc2tog";
    if (usual_increase || usual_decrease) return add_names(entry, known), true;
    if (!is_sure(entry) && !entry.definition.in_line && known == no_concept && !is_used(entry)) return false;
    if (known != no_concept && vocabulary_->concepts[known].sort == ConceptClass::stitch &&
        !is_same_work(known, work))
      out_.findings.push_back(
          redefined(entry.definition.name, entry.names.front(), entry.value, name_of(known)));
    add_kind(work.kind);
    const std::string& name = work.kind.name;
    const Concept kind = words::find_concept(*vocabulary_, name);
    if (work.in_one == 1 && work.down == 0 && kind != no_concept) return add_names(entry, kind), true;
    const bool plain = work.in_one == 1 && work.down == 0;
    if (work.down == 0) out_.own_names.push_back({typed_name(entry), name, work.in_one});
    words::ConceptEntry own{plain ? name : entry.names.front(), ConceptClass::stitch};
    if (!plain) own.works = name, own.in_one = work.in_one, own.down = work.down;
    return add_names(entry, add_concept(own)), true;
  }

  /// "Cluster (cl): dc3tog over the next 3 sts", "work 3 dc together over next 3 sts": it takes several
  /// stitches.
  std::optional<stitch::StitchKind> closed_over_several(const Entry& entry) const {
    if (!says_places(entry.value, *vocabulary_)) return std::nullopt;
    if (const auto work = one_work_of(entry.value); work && work->in_one == 1 && work->kind.takes > 1)
      return work->kind;
    const auto gathered = gathered_told(entry.value, *vocabulary_, kinds());
    return gathered && gathered->kind.takes > 1 ? std::optional(gathered->kind) : std::nullopt;
  }

  bool take_closed(const Entry& entry, stitch::StitchKind kind, Concept known) {
    kind.name = known != no_concept ? std::string(name_of(known)) : short_name_of(entry);
    kind.title = entry.names.front();
    kind.own = true;
    put_kind(kind);
    const Concept same = words::find_concept(*vocabulary_, kind.name);
    return add_names(entry, same != no_concept ? same : add_concept({kind.name, ConceptClass::stitch})), true;
  }

  /// "Spike: insert your hook two rounds below, pull up a long loop, finish as sc."
  bool take_spike(const Entry& entry, std::uint8_t down) {
    words::ConceptEntry own{entry.names.front(), ConceptClass::stitch};
    const auto told = stitch_told(entry.value, *vocabulary_, kinds());
    own.works = told ? told->name : "sc", own.down = down;
    return add_names(entry, add_concept(own)), true;
  }

  /// Loops on the hook after each move that changes them.
  static std::optional<std::vector<int>> loops_of(std::string_view moves) {
    const auto parsed = stitch::parse_moves(moves);
    return parsed ? stitch::loops_on_hook(*parsed) : std::nullopt;
  }

  /// Moves that end with one loop, and not as those of the stitch that the line names.
  void tell_other_moves(const Entry& entry, Concept known) {
    const ToldMoves told = told_moves(entry.value, language_.language);
    const auto id = stitch::find_kind(stitch::standard_kinds(), name_of(known));
    if (!id || told.legs != 1 || told.left != 1) return;
    const auto usual = loops_of(stitch::standard_kinds()[*id].moves), here = loops_of(told.moves);
    if (usual && here && *usual != *here)
      out_.findings.push_back(other_moves(entry.definition.value, entry.names.front()));
  }

  /// "Spine: 3 unfinished tr over the next 3 sts, joined together".
  bool take_gathered(const Entry& entry, const Gathered& gathered) {
    if (!gathered.closed) out_.findings.push_back(left_unfinished(entry.definition.value, gathered.kind));
    return take_stalk(entry, gathered.kind, entry.names.front());
  }

  /// "Prickle: sc, ch 4, sl st back into that sc": one stitch with its chains.
  bool take_stalk(const Entry& entry, stitch::StitchKind kind, const std::string& title) {
    kind.name = short_name_of(entry);
    kind.title = title;
    kind.own = true;
    put_kind(kind);
    return add_names(entry, add_concept({kind.name, ConceptClass::stitch})), true;
  }

  bool take_stitch(const Entry& entry, Family family, Concept known) {
    const bool keeps_name = known != no_concept && name_of(known) != "dec" && name_of(known) != "increase";
    // "Petal: 3 tr in one st, joined" is no "bo"
    const bool named_so = family == Family::none || family_of(entry.name, language_) == family ||
                          family_of(entry.value) == family;
    const std::string name = keeps_name ? std::string(name_of(known))
                             : named_so ? name_in(family, entry)
                                        : short_name_of(entry);
    auto own = own_stitch(name, family, entry.value, *vocabulary_, kinds());
    const Concept same = words::find_concept(*vocabulary_, name);
    if (family == Family::picot && own)
      return put_kind(own->kind), add_names(entry, words::find_concept(*vocabulary_, "picot")), true;
    if (same != no_concept && !is_work(*vocabulary_, same))
      return entry.definition.in_list; // the language knows it
    const bool told =
        family == Family::none && known == no_concept && is_told_in_moves(entry) && is_used(entry);
    const bool sure = is_sure(entry) || entry.definition.in_line || is_abbreviated(entry) || told;
    if (!own || (family == Family::none && !sure)) return false;
    if (own->left != 1)
      out_.findings.push_back(loops_left(entry.definition.value, own->left, family != Family::none));
    if (own->kind.title == name) own->kind.title = entry.names.front();
    put_kind(own->kind);
    if (std::find(entry.names.begin(), entry.names.end(), name) != entry.names.end())
      out_.own_names.push_back({name, name, 1}); // "Bobble (bo)"
    add_names(entry, same != no_concept ? same : add_concept({name, ConceptClass::stitch}));
    return true;
  }

  /// "thorn" of "Thorn stitch (thorn)".
  static const std::string& short_name_of(const Entry& entry) {
    const bool shorter = is_abbreviated(entry) && entry.names.back().size() < entry.names.front().size();
    return shorter ? entry.names.back() : entry.names.front();
  }

  /// The first stitch of a family has the family's name, others their own.
  std::string name_in(Family family, const Entry& entry) const {
    const char* usual = usual_name(family);
    const bool cluster = std::any_of(entry.names.begin(), entry.names.end(), [](const std::string& name) {
      return name.find("cl") != std::string::npos;
    });
    if (*usual == 0 || cluster) return short_name_of(entry);
    const auto id = stitch::find_kind(kinds(), usual);
    return id && kinds()[*id].own ? short_name_of(entry) : usual;
  }

  /// "sc = dc": the word of one standard stitch for another.
  void tell_redefined(const Entry& entry, Concept means) {
    const Concept known = known_work(entry);
    const auto is_stitch = [this](Concept one) {
      return one != no_concept && vocabulary_->concepts[one].sort == ConceptClass::stitch;
    };
    if (!is_stitch(known) || !is_stitch(means) || known == means) return;
    out_.findings.push_back(
        redefined(entry.definition.name, entry.names.front(), name_of(means), name_of(known)));
  }

  void own_the_kinds() {
    if (out_.kinds.empty()) out_.kinds = stitch::standard_kinds();
  }

  void add_kind(const stitch::StitchKind& kind) {
    if (stitch::find_kind(kinds(), kind.name)) return;
    own_the_kinds();
    out_.kinds.push_back(kind);
  }

  /// In the place of the standard kind of this name, or behind them all.
  void put_kind(const stitch::StitchKind& kind) {
    own_the_kinds();
    if (const auto id = stitch::find_kind(out_.kinds, kind.name))
      out_.kinds[*id] = kind;
    else
      out_.kinds.push_back(kind);
  }

  Concept add_concept(words::ConceptEntry entry) {
    const auto means = static_cast<Concept>(language_.concepts.size() + out_.concepts.size());
    out_.concepts.push_back(std::move(entry));
    return means;
  }

  static bool is_plural(const std::string& name) { return name.size() > 2 && name.back() == 's'; }

  void add_names(const Entry& entry, Concept means) {
    if (name_of(means) == "ch") // a chain is worked into too
      add_names(entry, words::find_concept(*vocabulary_, "chain"));
    bool any = false;
    for (const std::string& name : entry.names) {
      if (has(meanings_of(name, *vocabulary_), means)) {
        out_.as_known.push_back(name);
        continue;
      }
      for (const std::string& spelt : spellings_of(name)) {
        add_phrase(spelt, means, entry);
        if (spelt.size() > 1 && !is_plural(spelt)) add_phrase(spelt + "s", means, entry);
      }
      any = true;
    }
    waiting_ = waiting_ || any;
    const bool letter = entry.names.front().size() == 1; // which is known, but nobody's usual word
    if ((any || letter) && !name_of(means).empty() && is_work(*vocabulary_, means))
      out_.own_names.push_back({typed_name(entry), std::string(name_of(means)), 1});
  }

  /// The shortest of the names, as it is typed where it is the only one.
  static std::string typed_name(const Entry& entry) {
    return entry.names.size() == 1 ? std::string(entry.name) : entry.names.back();
  }

  /// Whether an explanation may use words that were explained before it.
  bool speaks_of_own(std::string_view value) const {
    if (!waiting_) return false;
    const std::string low = folded(value);
    return std::any_of(out_.phrases.begin(), out_.phrases.end(), [&low](const words::PhraseEntry& entry) {
      const std::size_t at = low.find(entry.phrase);
      return at != std::string::npos && (at == 0 || low[at - 1] < 'a' || low[at - 1] > 'z');
    });
  }

  void extend() {
    extended_ = words::with_own_words(language_, out_.phrases, out_.concepts);
    vocabulary_ = &*extended_;
    waiting_ = false;
  }

  /// A single letter is told by its capital; in the other case it is dearer.
  void add_phrase(const std::string& name, Concept means, const Entry& entry) {
    words::PhraseEntry phrase;
    phrase.phrase = name;
    phrase.means = means;
    if (name.size() == 1) {
      const bool capital = entry.name.front() >= 'A' && entry.name.front() <= 'Z';
      phrase.letters = capital ? words::Capitals::capital : words::Capitals::small;
      out_.phrases.push_back(phrase);
      phrase.letters = capital ? words::Capitals::small : words::Capitals::capital;
      phrase.cost = other_case_cost;
    }
    out_.phrases.push_back(phrase);
  }

  const Source& source_;
  const Vocabulary& language_;
  const Vocabulary* vocabulary_;
  std::optional<Vocabulary> extended_;
  std::optional<std::string> whole_text_; ///< folded, once a name is looked for in it
  bool waiting_ = false;                  ///< words were found that `vocabulary_` does not have
  const OwnList* list_ = nullptr;
  OwnWords out_;
};

} // namespace

OwnWords own_words(const Source& source, const OwnList& list, const Vocabulary& vocabulary) {
  return ListReader(source, vocabulary).read(list);
}

} // namespace whorl::pattern
