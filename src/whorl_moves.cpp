#include "whorl_content.hpp"
#include "whorl_json.hpp"

#include "drawing/moves_picture.hpp"
#include "drawing/svg.hpp"
#include "writing/named.hpp"

#include <algorithm>

namespace whorl {
namespace {

using drawing::HookState;
using drawing::Strand;

const words::Vocabulary& terms_of(std::string_view language) {
  const words::Vocabulary* own = words::find_vocabulary(language);
  return own != nullptr ? *own : *words::find_vocabulary("en-US");
}

/// Words of the sheet for a pattern in these terms.
writing::Say say_in(std::string_view language) {
  const drawing::Wording& wording = wording_for(language);
  return [&wording](std::string_view id, const std::vector<std::string>& with) {
    return drawing::say(wording, id, with);
  };
}

std::string problem_of(std::string_view stitch, const std::vector<writing::Used>& used,
                       const pattern::Tree& tree, std::string_view language, const writing::Say& say) {
  std::string list;
  for (const writing::Used& one : used)
    list += (list.empty() ? "" : ", ") + writing::tell(one, tree, terms_of(language), say).name;
  const std::string name(stitch);
  return list.empty() ? say("no-stitches", {name}) : say("no-such-stitch", {name, list});
}

StitchMoves face_of(const writing::ToldStitch& told) {
  StitchMoves face{told.name, told.title, {}};
  for (const writing::ToldMove& move : told.moves)
    face.moves.push_back({move.number, move.sentence, move.loops});
  return face;
}

// The pictures.

HookState state_of(const stitch::Hook& hook) {
  HookState state;
  for (const stitch::HeldLoop& loop : hook.loops)
    state.strands.push_back({static_cast<Strand>(loop.what), loop.fresh});
  state.waiting = hook.dropped;
  state.inserted = hook.inserted;
  return state;
}

std::string loops_under(const writing::ToldMove& move, const writing::Say& say) {
  if (move.loops.back() == 1) return say("loops-short-one", {"1"});
  return say("loops-short", {std::to_string(move.loops.back())});
}

drawing::MoveStrip strip_of(const writing::ToldStitch& told, const writing::Say& say) {
  drawing::MoveStrip strip;
  strip.heading = told.title == told.name ? told.title : say("moves-heading", {told.title, told.name});
  for (const std::string& fact : told.facts) strip.note += (strip.note.empty() ? "" : " ") + fact;
  for (const writing::ToldMove& move : told.moves)
    strip.moves.push_back(
        {std::to_string(move.number), move.words, loops_under(move, say), state_of(move.hook)});
  return strip;
}

drawing::Scene scene_of(const Moves::Content& moves, const writing::Say& say) {
  const pattern::Tree& tree = moves.pattern->tree;
  drawing::MovesText text;
  std::string names;
  std::vector<drawing::MoveStrip> strips;
  for (const writing::ToldStitch& told : moves.told) {
    names += (names.empty() ? "" : ", ") + told.title;
    strips.push_back(strip_of(told, say));
  }
  text.title = tree.title.empty() ? say("moves-title", {}) : tree.title;
  text.subtitle = tree.title.empty() ? "" : say("moves-title", {});
  text.terms = say("moves-terms", {});
  text.note = say("moves-note", {});
  text.description = say("moves-describe", {names});
  text.language = moves.language;
  return drawing::moves_sheet(text, strips);
}

Json json_of(const writing::ToldStitch& told) {
  Json one = {{"name", told.name},   {"title", told.title},   {"takes", told.takes},
              {"makes", told.makes}, {"height", told.height}, {"own", told.own}};
  if (told.turning) {
    static constexpr const char* counts[] = {"no", "writers differ", "yes"};
    one["turning_chain"] = {{"chains", told.turning->chains},
                            {"counts", counts[static_cast<int>(told.turning->counts)]},
                            {"first_chain", told.turning->first_chain}};
  }
  one["moves"] = Json::array();
  for (const writing::ToldMove& move : told.moves)
    one["moves"].push_back({{"number", move.number}, {"text", move.sentence}, {"loops", move.loops}});
  return one;
}

} // namespace

std::shared_ptr<const Moves::Content> moves_of(std::shared_ptr<const Pattern::Content> pattern,
                                               std::string_view stitch, std::string_view language) {
  auto moves = std::make_shared<Moves::Content>();
  moves->pattern = std::move(pattern);
  const pattern::Tree& tree = moves->pattern->tree;
  moves->language = language_or(language, tree);
  const writing::Say say = say_in(moves->language);
  const words::Vocabulary& terms = terms_of(moves->language);
  const std::vector<writing::Used> used = writing::used_stitches(tree);
  const std::vector<writing::Used> wanted = stitch.empty()
                                                ? used
                                                : writing::named(used, tree, stitch, terms_of(tree.language),
                                                                 *words::find_vocabulary("en-US"), say);
  if (wanted.empty() && !stitch.empty())
    moves->problem = problem_of(stitch, used, tree, moves->language, say);
  for (const writing::Used& one : wanted) {
    moves->told.push_back(writing::tell(one, tree, terms, say));
    moves->stitches.push_back(face_of(moves->told.back()));
  }
  moves->scene = scene_of(*moves, say);
  return moves;
}

std::string moves_json(const Moves::Content& moves) {
  Json json = {{"whorl", 1},
               {"title", moves.pattern->tree.title},
               {"language", moves.language},
               {"stitches", Json::array()}};
  for (const writing::ToldStitch& told : moves.told) json["stitches"].push_back(json_of(told));
  return text_of(json);
}

Moves::Moves(std::shared_ptr<const Content> content) : content_(std::move(content)) {}
const std::vector<StitchMoves>& Moves::stitches() const { return content_->stitches; }
const std::string& Moves::problem() const { return content_->problem; }
const drawing::Scene& Moves::scene() const { return content_->scene; }
std::string Moves::json() const { return moves_json(*content_); }
std::string Moves::svg() const { return drawing::svg(content_->scene); }

std::string Moves::text() const {
  const writing::Say say = say_in(content_->language);
  std::string text;
  for (const writing::ToldStitch& told : content_->told)
    text += (text.empty() ? "" : "\n") + writing::as_text(told, say);
  return text;
}

} // namespace whorl
