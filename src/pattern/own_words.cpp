#include "pattern/own_words.hpp"

#include "pattern/gathered.hpp"
#include "pattern/one_work.hpp"
#include "pattern/other_way.hpp"
#include "pattern/own_group.hpp"
#include "pattern/own_names.hpp"
#include "pattern/own_stitch.hpp"
#include "pattern/own_told.hpp"
#include "pattern/own_vocabulary.hpp"
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

/// Finds out what definitions mean, one after the other.
class ListReader {
public:
  ListReader(const Source& source, const Vocabulary& vocabulary)
      : source_(source), language_(vocabulary), own_(vocabulary) {}

  OwnWords read(const OwnList& list) {
    const Concept edging = words::find_concept(language_, "edging");
    list_ = &list;
    std::uint32_t worked = 0; // where a line of work ends
    for (const Definition& definition : list.definitions) {
      const Explained entry = entry_of(definition);
      if (has_meaning(entry.known, edging)) worked = end_of_line(definition.name.begin); // "Edging: ch 1, …"
      if (definition.name.begin < worked) {
        own_.out.explains.push_back(false);
        continue;
      }
      if (own_.speaks_of_own(source_.at(definition.value))) own_.extend();
      const bool sense = take(entry_of(definition));
      own_.out.explains.push_back(sense || (definition.in_list && !definition.in_line));
    }
    return own_.take();
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

  Explained entry_of(const Definition& definition) const {
    Explained entry{definition, source_.at(definition.name), source_.at(definition.value), {}, {}};
    entry.value = behind_full_name(definition, entry.value);
    entry.names = names_of(entry.name);
    for (std::string& name : entry.names) name = without_lead(name, vocabulary());
    for (const std::string& name : entry.names)
      for (const Concept means : meanings_of(name, vocabulary())) entry.known.push_back(means);
    return entry;
  }

  /// A list, an equals sign or an abbreviation is no heading of a part.
  static bool is_sure(const Explained& entry) {
    if (entry.definition.in_list || entry.definition.equals) return true;
    const bool is_short = entry.name.size() <= short_name;
    const auto capital = [](char c) { return c >= 'A' && c <= 'Z'; };
    const auto no_capital = [](char c) { return c < 'A' || c > 'Z'; };
    return (is_short && (std::all_of(entry.name.begin(), entry.name.end(), no_capital) ||
                         std::all_of(entry.name.begin(), entry.name.end(), capital)));
  }

  Concept known_work(const Explained& entry) const {
    for (const Concept means : entry.known)
      if (is_work(vocabulary(), means)) return means;
    return no_concept;
  }

  /// "BLO = only insert behind": known for loops, and explained without a stitch.
  bool stays_loops(const Explained& entry) const {
    const bool loops = std::any_of(entry.known.begin(), entry.known.end(), [this](Concept means) {
      return means < vocabulary().concepts.size() && vocabulary().concepts[means].sort == ConceptClass::loops;
    });
    return loops && !many_of(entry.value, vocabulary());
  }

  /// "bp = bumpy petal": the language has the word, and nobody knows what the line says of it.
  void tell_not_followed(const Explained& entry) {
    const words::Lattice lattice = words::lattice(words::fold(entry.value), vocabulary());
    const auto is_unknown = [](const words::Word& word) { return word.kind == words::WordKind::unknown; };
    const bool nothing_known =
        !lattice.words.empty() && std::all_of(lattice.words.begin(), lattice.words.end(), is_unknown);
    if (nothing_known && is_used(entry))
      own_.out.findings.push_back(
          not_followed(entry.definition.value, entry.names.front(), name_of(entry.known.front())));
  }

  bool take(const Explained& entry) {
    if (entry.names.empty()) return false;
    if (entry.definition.in_list || entry.definition.equals)
      if (stays_loops(entry)) return tell_not_followed(entry), true;
    const Family family = family_of(entry.name, language_);
    const Concept known = known_work(entry);
    // most headers end here: what follows looks words up
    const bool doubtful = family == Family::none && known == no_concept && !entry.definition.in_line;
    if (doubtful && !is_sure(entry) && !is_used(entry)) return false;
    const Lead lead = leading(entry.value, vocabulary());
    if (lead.means != no_concept && works_in_ring(lead)) return false;
    const bool alias = lead.means != no_concept && is_alias(lead);
    if (const auto kind = stitch_in_other_way(source_, *list_, entry.definition, vocabulary(), kinds()))
      return take_stalk(entry, *kind, kind->title);
    if (entry.definition.behind_work && family != Family::none && !explains_stitch(entry)) return false;
    if (begins_round(entry))
      if (const auto group = group_told(entry.value, vocabulary(), 1)) return take_group(entry, *group);
    if (family == Family::none)
      if (const auto deep = one_work_of(entry.value); deep && deep->down > 0) return take_work(entry, *deep);
    if (known == no_concept && (family == Family::none || family == Family::bobble))
      if (const auto gathered = gathered_told(entry.value, vocabulary(), kinds());
          gathered && gathered->unfinished)
        return take_gathered(entry, *gathered);
    if (family == Family::none && (known == no_concept || name_of(known) == "spike"))
      if (const std::uint8_t down = depth_told(entry.value, vocabulary()); down > 0)
        return take_spike(entry, down);
    if (family == Family::none && known != no_concept) tell_other_moves(entry, known);
    const bool of_family = family != Family::none || family_told(entry) == Family::popcorn;
    if (!of_family && known == no_concept && is_told_in_moves(entry))
      return take_stitch(entry, Family::none, known);
    if (family == Family::none)
      if (const auto stalk = stitch_with_chains(entry.value, vocabulary(), kinds()))
        return take_stalk(entry, *stalk, entry.names.front());
    if (family == Family::bobble)
      if (const auto kind = closed_over_several(entry)) return take_closed(entry, *kind, known);
    if (family != Family::none && (!alias || known != no_concept)) return take_stitch(entry, family, known);
    const int least = says_same_place(entry.value, vocabulary()) ? 1 : 2; // "1 sc, 1 ch in the same st"
    if (const auto group = group_told(entry.value, vocabulary(), least);
        group && (known == no_concept || is_letter_for_spaces(entry, *group)) && is_used(entry))
      return take_group(entry, *group);
    const bool listed = entry.definition.in_list || entry.definition.equals || is_abbreviated(entry) ||
                        !entry.known.empty(); // a word that the language has otherwise
    if (listed && family == Family::none && known == no_concept && is_used(entry))
      if (const auto sequence = sequence_told(entry.value, vocabulary()))
        return take_sequence(entry, *sequence);
    if (known == no_concept && is_used(entry))
      if (const auto group = group_named(entry.value, vocabulary())) return take_group(entry, *group);
    if (alias) return take_alias(entry, lead);
    if (entry.definition.behind_work) return take_sentence(entry, family, known);
    if (const Family told = family_told(entry); told != Family::none && known == no_concept)
      return take_stitch(entry, told, known);
    if (const auto work = one_work_of(entry.value)) return take_work(entry, *work);
    if (known == no_concept && (is_sure(entry) || is_used(entry)))
      if (const auto gathered = gathered_told(entry.value, vocabulary(), kinds()))
        return take_stalk(entry, gathered->kind, entry.names.front());
    if (known != no_concept) return take_known(entry, known);
    if (const auto base = unknown_base(entry.value, vocabulary()); base && is_used(entry))
      own_.out.findings.push_back(made_of_unknown(entry.definition.value, entry.names.front(), *base));
    return take_stitch(entry, family_told(entry), known);
  }

  /// "Beg-CL = ch 2, dc2tog in same st": its chains and stitches stand for the first cluster.
  static bool begins_round(const Explained& entry) {
    const std::string& name = entry.names.front();
    return name.substr(0, 3) == "beg" || name.substr(0, 5) == "start" || name.substr(0, 5) == "first";
  }

  /// `V = (dc, ch 1, dc) in one st`: the letter is an increase with a space, where others mean a plain one.
  static bool is_letter_for_spaces(const Explained& entry, const std::string& group) {
    return entry.names.front().size() == 1 && group.find("ch") != std::string::npos;
  }

  /// Whether the text has the name of an entry again.
  bool is_used(const Explained& entry) {
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
  bool take_group(const Explained& entry, const std::string& stitches) {
    words::ConceptEntry group{entry.names.front(), ConceptClass::filler};
    group.works = stitches;
    own_.add_spellings(entry, own_.add_concept(group));
    return true;
  }

  /// "Curl: ch 3, sl st in the same st, sc in next st": a name for stitches that say where each goes.
  bool take_sequence(const Explained& entry, const std::string& stitches) {
    if (!goes_back(entry.value, vocabulary())) return take_group(entry, stitches);
    own_.out.findings.push_back(works_back(entry.definition.value, entry.names.back()));
    return false;
  }

  /// `Q = bobble of 4 dc`: the family is in what it means. "3 hdc in the same st, closed together" is a
  /// cluster.
  Family family_told(const Explained& entry) const {
    const auto many = many_of(entry.value, vocabulary());
    if (!many) return Family::none;
    const Family told = family_of(entry.value, vocabulary());
    if (told != Family::none || many->count < 2) return told;
    // "2 sc worked together" is a decrease
    if (says_same_place(entry.value, vocabulary()) && says_closed(entry.value, vocabulary()))
      return Family::bobble;
    return Family::none;
  }

  /// Whether the words follow the hook from loop to loop until the stitch is done, or nearly: then it is none
  /// of the usual ones, whatever else they name.
  bool is_told_in_moves(const Explained& entry) {
    const ToldMoves told = told_moves(entry.value, language_.language);
    if (told.moves.empty() || told.left < 1) return false;
    return told.left == 1 || is_used(entry);
  }

  /// "Bud stitch (bud)".
  static bool is_abbreviated(const Explained& entry) {
    return entry.names.size() > 1 && entry.name.find_first_of("([") != std::string_view::npos;
  }

  bool explains_stitch(const Explained& entry) const {
    return many_of(entry.value, vocabulary()) || !told_moves(entry.value, language_.language).moves.empty();
  }

  /// "Bobble: 4 dc in the same stitch, closed together.", "A dec is 2 stitches together." behind a round.
  bool take_sentence(const Explained& entry, Family, Concept known) {
    if (const auto work = one_work_of(entry.value)) return take_work(entry, *work);
    if (known == no_concept && family_told(entry) != Family::none)
      return take_stitch(entry, family_told(entry), known);
    return false;
  }

  /// "TAIL: MR, 5 sc (5)" is a round, and no name of a ring.
  bool works_in_ring(const Lead& lead) const {
    if (vocabulary().concepts[lead.means].sort != ConceptClass::start) return false;
    const std::size_t mark = lead.rest.find_first_not_of(' ');
    return mark != std::string_view::npos && (lead.rest[mark] == ',' || lead.rest[mark] == ';') &&
           lead.rest.find_first_of("0123456789") != std::string_view::npos;
  }

  bool is_alias(const Lead& lead) const {
    const ConceptClass sort = vocabulary().concepts[lead.means].sort;
    return is_aside(lead.rest, vocabulary()) || sort == ConceptClass::decrease ||
           name_of(lead.means) == "increase";
  }

  bool take_alias(const Explained& entry, const Lead& lead) {
    Concept means = lead.means;
    if (name_of(means) == "dec" && folded(lead.rest).find("invis") != std::string::npos)
      means = words::find_concept(vocabulary(), "invdec");
    if (has_meaning(entry.known, means)) return own_.add_names(entry, means), true;
    const bool replaces = known_work(entry) != no_concept;
    const bool strange = entry.known.empty() || entry.names.front().size() == 1;
    const bool listed = entry.definition.in_list && is_work(vocabulary(), means);
    const bool whole =
        known_work(entry) == no_concept && lead.rest.empty() && is_used(entry); // "Bud: same as bo"
    if (!(is_sure(entry) || whole) || !(replaces || strange || listed)) return false;
    tell_redefined(entry, means);
    return own_.add_names(entry, means), true;
  }

  /// The name is known and the explanation is of more words than can be followed; its other names mean it
  /// too.
  bool take_known(const Explained& entry, Concept known) {
    if (!entry.definition.in_list && !entry.definition.in_line && entry.names.size() < 2 &&
        told_moves(entry.value, language_.language).moves.empty())
      return false;
    own_.add_names(entry, known);
    return true;
  }

  std::optional<OneWork> one_work_of(std::string_view value) const {
    return pattern::one_work_of(value, vocabulary(), kinds());
  }

  /// "sc2tog: 2 sc together" says what the word means anyway.
  bool is_same_work(Concept known, const OneWork& work) const {
    const words::ConceptEntry& means = vocabulary().concepts[known];
    if (work.in_one == 1 && work.down == 0) return means.name == work.kind.name;
    return means.works == work.kind.name && means.in_one == work.in_one && means.down == work.down;
  }

  bool take_work(const Explained& entry, const OneWork& work) {
    const Concept known = known_work(entry);
    const bool usual_increase =
        known != no_concept && name_of(known) == "increase" && work.kind.name == "sc" && work.in_one == 2;
    const bool usual_decrease = known != no_concept && name_of(known) == "dec" && work.kind.name == "sc2tog";
    if (usual_increase || usual_decrease) return own_.add_names(entry, known), true;
    if (!is_sure(entry) && !entry.definition.in_line && known == no_concept && !is_used(entry)) return false;
    if (known != no_concept && vocabulary().concepts[known].sort == ConceptClass::stitch &&
        !is_same_work(known, work))
      own_.out.findings.push_back(
          redefined(entry.definition.name, entry.names.front(), entry.value, name_of(known)));
    own_.add_kind(work.kind);
    const std::string& name = work.kind.name;
    const Concept kind = words::find_concept(vocabulary(), name);
    if (work.in_one == 1 && work.down == 0 && kind != no_concept) return own_.add_names(entry, kind), true;
    const bool plain = work.in_one == 1 && work.down == 0;
    if (work.down == 0) own_.out.own_names.push_back({own_.typed_name(entry), name, work.in_one});
    words::ConceptEntry own{plain ? name : entry.names.front(), ConceptClass::stitch};
    if (!plain) own.works = name, own.in_one = work.in_one, own.down = work.down;
    return own_.add_names(entry, own_.add_concept(own)), true;
  }

  /// "Cluster (cl): dc3tog over the next 3 sts", "work 3 dc together over next 3 sts": it takes several
  /// stitches.
  std::optional<stitch::StitchKind> closed_over_several(const Explained& entry) const {
    if (!says_places(entry.value, vocabulary())) return std::nullopt;
    if (const auto work = one_work_of(entry.value); work && work->in_one == 1 && work->kind.takes > 1)
      return work->kind;
    const auto gathered = gathered_told(entry.value, vocabulary(), kinds());
    return gathered && gathered->kind.takes > 1 ? std::optional(gathered->kind) : std::nullopt;
  }

  bool take_closed(const Explained& entry, stitch::StitchKind kind, Concept known) {
    kind.name = known != no_concept ? std::string(name_of(known)) : short_name_of(entry);
    kind.title = entry.names.front();
    kind.own = true;
    return own_.add_stitch(entry, kind), true;
  }

  /// "Spike: insert your hook two rounds below, pull up a long loop, finish as sc."
  bool take_spike(const Explained& entry, std::uint8_t down) {
    words::ConceptEntry own{entry.names.front(), ConceptClass::stitch};
    const auto told = stitch_told(entry.value, vocabulary(), kinds());
    own.works = told ? told->name : "sc", own.down = down;
    return own_.add_names(entry, own_.add_concept(own)), true;
  }

  /// Loops on the hook after each move that changes them.
  static std::optional<std::vector<int>> loops_of(std::string_view moves) {
    const auto parsed = stitch::parse_moves(moves);
    return parsed ? stitch::loops_on_hook(*parsed) : std::nullopt;
  }

  /// Moves that end with one loop, and not as those of the stitch that the line names.
  void tell_other_moves(const Explained& entry, Concept known) {
    const ToldMoves told = told_moves(entry.value, language_.language);
    const auto id = stitch::find_kind(stitch::standard_kinds(), name_of(known));
    if (!id || told.legs != 1 || told.left != 1) return;
    const auto usual = loops_of(stitch::standard_kinds()[*id].moves), here = loops_of(told.moves);
    if (usual && here && *usual != *here)
      own_.out.findings.push_back(other_moves(entry.definition.value, entry.names.front()));
  }

  /// "Spine: 3 unfinished tr over the next 3 sts, joined together".
  bool take_gathered(const Explained& entry, const Gathered& gathered) {
    if (!gathered.closed) own_.out.findings.push_back(left_unfinished(entry.definition.value, gathered.kind));
    return take_stalk(entry, gathered.kind, entry.names.front());
  }

  /// "Prickle: sc, ch 4, sl st back into that sc": one stitch with its chains.
  bool take_stalk(const Explained& entry, stitch::StitchKind kind, const std::string& title) {
    kind.name = short_name_of(entry);
    kind.title = title;
    kind.own = true;
    own_.put_kind(kind);
    return own_.add_names(entry, own_.add_concept({kind.name, ConceptClass::stitch})), true;
  }

  bool take_stitch(const Explained& entry, Family family, Concept known) {
    const bool keeps_name = known != no_concept && name_of(known) != "dec" && name_of(known) != "increase";
    // "Petal: 3 tr in one st, joined" is no "bo"
    const bool named_so = family == Family::none || family_of(entry.name, language_) == family ||
                          family_of(entry.value) == family;
    const std::string name = keeps_name ? std::string(name_of(known))
                             : named_so ? name_in(family, entry)
                                        : short_name_of(entry);
    auto own = own_stitch(name, family, entry.value, vocabulary(), kinds());
    const Concept same = words::find_concept(vocabulary(), name);
    if (family == Family::picot && own)
      return own_.put_kind(own->kind), own_.add_names(entry, words::find_concept(vocabulary(), "picot")),
             true;
    if (same != no_concept && !is_work(vocabulary(), same))
      return entry.definition.in_list; // the language knows it
    const bool told =
        family == Family::none && known == no_concept && is_told_in_moves(entry) && is_used(entry);
    const bool sure = is_sure(entry) || entry.definition.in_line || is_abbreviated(entry) || told;
    if (!own || (family == Family::none && !sure)) return false;
    if (own->left != 1)
      own_.out.findings.push_back(loops_left(entry.definition.value, own->left, family != Family::none));
    if (own->kind.title == name) own->kind.title = entry.names.front();
    if (std::find(entry.names.begin(), entry.names.end(), name) != entry.names.end())
      own_.out.own_names.push_back({name, name, 1}); // "Bobble (bo)"
    return own_.add_stitch(entry, own->kind), true;
  }

  /// "thorn" of "Thorn stitch (thorn)".
  static const std::string& short_name_of(const Explained& entry) {
    const bool shorter = is_abbreviated(entry) && entry.names.back().size() < entry.names.front().size();
    return shorter ? entry.names.back() : entry.names.front();
  }

  /// The first stitch of a family has the family's name, others their own.
  std::string name_in(Family family, const Explained& entry) const {
    const char* usual = usual_name(family);
    const bool cluster = std::any_of(entry.names.begin(), entry.names.end(), [](const std::string& name) {
      return name.find("cl") != std::string::npos;
    });
    if (*usual == 0 || cluster) return short_name_of(entry);
    const auto id = stitch::find_kind(kinds(), usual);
    return id && kinds()[*id].own ? short_name_of(entry) : usual;
  }

  /// "sc = dc": the word of one standard stitch for another.
  void tell_redefined(const Explained& entry, Concept means) {
    const Concept known = known_work(entry);
    const auto is_stitch = [this](Concept one) {
      return one != no_concept && vocabulary().concepts[one].sort == ConceptClass::stitch;
    };
    if (!is_stitch(known) || !is_stitch(means) || known == means) return;
    own_.out.findings.push_back(
        redefined(entry.definition.name, entry.names.front(), name_of(means), name_of(known)));
  }

  const Vocabulary& vocabulary() const { return own_.vocabulary(); }
  const std::vector<stitch::StitchKind>& kinds() const { return own_.kinds(); }
  std::string_view name_of(Concept means) const { return own_.name_of(means); }

  const Source& source_;
  const Vocabulary& language_;
  OwnVocabulary own_;
  std::optional<std::string> whole_text_; ///< folded, once a name is looked for in it
  const OwnList* list_ = nullptr;
};

} // namespace

OwnWords own_words(const Source& source, const OwnList& list, const Vocabulary& vocabulary) {
  return ListReader(source, vocabulary).read(list);
}

} // namespace whorl::pattern
