#include "whorl_json.hpp"

namespace whorl {
namespace {

const char* name_of(Severity severity) { return pattern::name(static_cast<pattern::Severity>(severity)); }

Json findings_json(const std::vector<Finding>& findings) {
  Json all = Json::array();
  for (const Finding& finding : findings) {
    Json one = {{"severity", name_of(finding.severity)},
                {"code", finding.code},
                {"line", finding.line},
                {"column", finding.column},
                {"length", finding.length},
                {"message", finding.message}};
    if (!finding.mend.empty()) one["mend"] = finding.mend;
    all.push_back(std::move(one));
  }
  return all;
}

Json cautions_json(const std::vector<Caution>& cautions) {
  Json all = Json::array();
  for (const Caution& caution : cautions)
    all.push_back({{"what", caution.what},
                   {"line", caution.line},
                   {"column", caution.column},
                   {"length", caution.length},
                   {"text", caution.text}});
  return all;
}

/// How many of each kind the first round of every line has.
std::vector<Json> tallies_json(const Pattern::Content& pattern) {
  const fabric::Fabric& fabric = pattern.fabric;
  std::vector<Json> tallies(pattern.rounds.size(), Json::object());
  std::uint32_t last = fabric::none;
  for (const fabric::Round& round : fabric.rounds) {
    if (round.text >= tallies.size() || round.text == last) continue;
    last = round.text;
    for (std::uint32_t i = 0; i < round.tallies; ++i) {
      const fabric::Tally& kind = fabric.tallies[round.first_tally + i];
      tallies[last][fabric.kinds[kind.kind].name] = kind.count;
    }
  }
  return tallies;
}

Json line_json(const Pattern::Content& pattern, std::size_t text, Json tally) {
  const RoundLine& line = pattern.rounds[text];
  return {{"line", line.line},
          {"read", line.read},
          {"part", line.part},
          {"label", line.label},
          {"from", line.from},
          {"to", line.to},
          {"uses", line.uses},
          {"counted", line.counted},
          {"tally", std::move(tally)},
          {"stated", stated_json(line.stated)},
          {"readings", pattern.tree.rounds[text].readings}};
}

const char* name_of(pattern::What what) {
  using pattern::What;
  switch (what) {
  case What::eye:
    return "eye";
  case What::marker:
    return "marker";
  case What::join:
    return "join";
  case What::cut:
    return "cut";
  case What::change:
    return "change";
  case What::stuff:
    return "stuff";
  case What::sew:
    return "sew";
  case What::bead:
    return "bead";
  case What::embroider:
    return "embroider";
  case What::note:
    return "note";
  }
  return "note";
}

Json placing_json(const Pattern::Content& pattern, std::size_t index) {
  const pattern::Placing& placing = pattern.tree.placings[index];
  Json one = {{"line", pattern.source.position(placing.span.begin).line}, {"what", name_of(placing.what)}};
  if (placing.part < pattern.tree.parts.size()) one["part"] = pattern.tree.parts[placing.part].name;
  if (placing.from > 0) one["rounds"] = {placing.from, placing.to};
  for (const fabric::Placing& worked : pattern.fabric.placings)
    if (worked.text == index && !worked.after.empty()) one["after"] = worked.after;
  if (placing.apart > 0) one["apart"] = placing.apart;
  return one;
}

} // namespace

std::string check_json(const Pattern::Content& pattern) {
  Json json = {{"whorl", 1},
               {"title", pattern.tree.title},
               {"variant", pattern.variant.empty() ? Json(nullptr) : Json(pattern.variant)},
               {"variants", pattern.variants},
               {"language", pattern.tree.language},
               {"lines", Json::array()},
               {"placings", Json::array()},
               {"techniques", techniques_json(pattern)},
               {"findings", findings_json(pattern.findings)},
               {"cautions", cautions_json(pattern.cautions)},
               {"caution", pattern.caution}};
  std::vector<Json> tallies = tallies_json(pattern);
  for (std::size_t i = 0; i < pattern.rounds.size(); ++i)
    json["lines"].push_back(line_json(pattern, i, std::move(tallies[i])));
  for (std::size_t i = 0; i < pattern.tree.placings.size(); ++i)
    json["placings"].push_back(placing_json(pattern, i));
  return text_of(json);
}

} // namespace whorl
