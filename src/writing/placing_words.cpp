#include "writing/placing_words.hpp"

#include "writing/name.hpp"

namespace whorl::writing {
namespace {

using pattern::Placing;
using pattern::What;

/// A sentence by its id, "" for what no sentence is made for.
std::string sentence_id(const Placing& placing) {
  const bool rounds = placing.from > 0, apart = placing.apart > 0;
  const std::string where = std::string(rounds ? "-between" : "") + (apart ? "-apart" : "");
  switch (placing.what) {
  case What::eye:
    return "say-eyes" + where;
  case What::marker:
    return "say-markers" + where;
  case What::bead:
    return "say-beads" + where;
  case What::cut:
    if (!placing.gather) return "say-cut";
    return placing.loops == stitch::front  ? "say-gather-front"
           : placing.loops == stitch::back ? "say-gather-back"
                                           : "say-gather";
  case What::stuff:
    return "say-stuff";
  case What::change:
    return "say-change";
  case What::join:
    return "say-join-yarn";
  case What::sew:
    return rounds ? "say-sew-between" : "say-sew";
  case What::embroider:
  case What::note:
    break;
  }
  return {};
}

} // namespace

std::optional<std::string> placing_in_words(const pattern::Tree& tree, const Placing& placing,
                                            const Tongue& tongue) {
  const std::string id = sentence_id(placing);
  if (id.empty() || !has_words(tongue.say(), id)) return std::nullopt;
  std::vector<std::string> with;
  if (placing.what == What::change || placing.what == What::join) {
    if (placing.yarn == 0 || placing.yarn > tree.yarns.size()) return std::nullopt;
    with.push_back(tongue.named(tree.yarns[placing.yarn - 1U]));
  }
  if (placing.what == What::sew) {
    if (placing.sewn >= tree.parts.size()) return std::nullopt;
    with.push_back(tree.parts[placing.sewn].name);
  }
  if (placing.from > 0) with.insert(with.end(), {std::to_string(placing.from), std::to_string(placing.to)});
  if (placing.apart > 0) with.push_back(std::to_string(placing.apart));
  return tongue.say()(id, with);
}

} // namespace whorl::writing
