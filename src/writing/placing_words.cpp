#include "writing/placing_words.hpp"

#include "writing/begun_words.hpp"
#include "writing/name.hpp"

namespace whorl::writing {
namespace {

using pattern::Placing;
using pattern::What;

/// What a sentence names: the rounds that a thing lies between, stitches apart.
std::string where_of(const Placing& placing) {
  return std::string(placing.between ? "-between" : "") + (placing.apart > 0 ? "-apart" : "");
}

/// A sentence by its id, "" for what no sentence is made for.
std::string sentence_id(const Placing& placing) {
  switch (placing.what) {
  case What::eye:
    return "say-eyes" + where_of(placing);
  case What::marker:
    return "say-markers" + where_of(placing);
  case What::bead:
    return "say-beads" + where_of(placing);
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
    if (placing.sewn == pattern::no_node) return "say-sew-on" + where_of(placing);
    return placing.between ? "say-sew-between" : "say-sew";
  case What::embroider:
    return "say-embroider";
  case What::note:
    break;
  }
  return {};
}

/// "Rnds 3-7" of the label "Rnds 3-7:".
std::string rounds_in_words(const Placing& placing, const Tongue& tongue) {
  const std::vector<std::string> numbers{std::to_string(placing.from), std::to_string(placing.to)};
  const std::string id = placing.from == placing.to ? "write-label-round" : "write-label-rounds";
  const std::string label = tongue.sentence(id, numbers).value_or("");
  const std::size_t end = label.find_last_not_of(" :\xEF\xBC\x9A");
  return label.substr(0, end == std::string::npos ? 0 : end + 1);
}

/// Rounds that a sentence does not name itself stand in brackets before its full stop.
std::string with_rounds(std::string sentence, const Placing& placing, const Tongue& tongue) {
  const std::string rounds = rounds_in_words(placing, tongue);
  if (rounds.empty()) return sentence;
  const std::string_view stop = tongue.words().blanks_between_words ? "." : "\xE3\x80\x82";
  const bool ends = sentence.size() > stop.size() &&
                    std::string_view(sentence).substr(sentence.size() - stop.size()) == stop;
  if (ends) sentence.resize(sentence.size() - stop.size());
  return sentence + " (" + rounds + ")" + (ends ? std::string(stop) : "");
}

} // namespace

bool may_be_a_name(const Placing& placing) {
  const bool thing = placing.what == What::eye || placing.what == What::bead || placing.what == What::marker;
  return thing && placing.from == 0 && placing.apart == 0;
}

std::optional<std::string> placing_in_words(const pattern::Tree& tree, const Placing& placing,
                                            const Tongue& tongue) {
  if (placing.what == What::join && placing.yarn == 0) return joined_at_edge(tree, placing.part, tongue);
  const std::string id = sentence_id(placing);
  if (id.empty() || !has_words(tongue.say(), id)) return std::nullopt;
  std::vector<std::string> with;
  if (placing.what == What::change || placing.what == What::join) {
    if (placing.yarn == 0 || placing.yarn > tree.yarns.size()) return std::nullopt;
    with.push_back(tongue.named(tree.yarns[placing.yarn - 1U]));
  }
  if (placing.what == What::sew && placing.sewn < tree.parts.size())
    with.push_back(tongue.named(tree.parts[placing.sewn].name));
  const bool named = placing.between && id.find("-between") != std::string::npos;
  if (named) with.insert(with.end(), {std::to_string(placing.from), std::to_string(placing.to)});
  if (placing.apart > 0) with.push_back(std::to_string(placing.apart));
  const std::string sentence = *tongue.sentence(id, with);
  return placing.from > 0 && !named ? with_rounds(sentence, placing, tongue) : sentence;
}

} // namespace whorl::writing
