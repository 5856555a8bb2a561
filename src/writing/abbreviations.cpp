#include "writing/abbreviations.hpp"

#include "writing/name.hpp"
#include "writing/used.hpp"

#include <algorithm>

namespace whorl::writing {
namespace {

using pattern::Into;
using pattern::Node;
using pattern::NodeKind;

/// An abbreviation and what it means.
class Abbreviations {
public:
  Abbreviations(const pattern::Tree& tree, const Tongue& tongue, const Tongue& usual)
      : tree_(tree), tongue_(tongue), usual_(usual) {}

  std::string list() {
    if (has([](const Node& node) {
          return node.kind == NodeKind::work && node.work.act == pattern::Act::ring;
        }))
      add(tongue_.word("ring"), "title-magic-ring");
    for (const Used& used : used_stitches(tree_)) add_stitch(used);
    return std::move(list_);
  }

private:
  template <class Is> bool has(Is is) const {
    return std::any_of(tree_.nodes.begin(), tree_.nodes.end(), is);
  }

  void add(const std::optional<std::string>& brief, const std::string& id) {
    if (brief && has_words(tongue_.say(), id)) add_full(*brief, tongue_.say()(id, {}));
  }

  /// Only what the language understands as that stitch: a list is read too.
  void add_known(const std::string& kind, const std::string& name) {
    const auto brief = tongue_.word(kind);
    const std::string full = name.substr(0, name.find(" (")); // what it is called besides
    const std::string known = tongue_.understands(full, kind) ? full : tongue_.longest_phrase(kind);
    if (brief && !known.empty()) add_full(*brief, known);
  }

  void add_full(const std::string& brief, const std::string& full) {
    const std::string entry = brief + " = " + full;
    if (brief != full && std::find(told_.begin(), told_.end(), brief) == told_.end())
      list_ += (list_.empty() ? "" : ", ") + entry;
    told_.push_back(brief);
  }

  /// As a round says it, so that it is read as it is meant.
  void add_increase() {
    const auto brief = tongue_.word("increase"), stitch = usual_.word("sc");
    const auto full = stitch ? usual_.row("one-place", {"2", *stitch, {}, {}}) : std::nullopt;
    if (brief && full) add_full(*brief, *full);
  }

  /// How a round says a stitch that the pattern has a word of its own for.
  std::optional<std::string> usual_words(const std::string& kind, std::uint16_t in_one) const {
    const auto together = together_of(kind);
    const auto stitch = usual_.word(together ? together->base : kind);
    if (!stitch) return stitch;
    if (in_one > 1) return usual_.row("one-place", {std::to_string(in_one), *stitch, {}, {}});
    return together ? usual_.row("together", {together->number, *stitch, {}, {}}) : std::nullopt;
  }

  void add_stitch(const Used& used) {
    if (used.kind >= tree_.kinds.size() || tree_.kinds[used.kind].own) return;
    const std::string& kind = tree_.kinds[used.kind].name;
    if (const auto own = tongue_.own_name(kind, used.in_one); own && used.into == Into::loops)
      if (const auto full = usual_words(kind, used.in_one)) return add_full(*own, *full);
    const std::string post = used.into == Into::front_post ? "fp" : used.into == Into::back_post ? "bp" : "";
    if (!post.empty())
      return add_known(post + kind, full_name({used.kind, 1, used.into}, tree_, tongue_.say()));
    if (kind == "sc2tog") return add(tongue_.word("dec"), "title-sc2tog");
    if (used.in_one == 2 && kind == "sc") add_increase();
    const auto together = together_of(kind);
    const std::string& base = together ? together->base : kind;
    add_known(base, has_words(tongue_.say(), "stitch-" + base) ? tongue_.say()("stitch-" + base, {}) : "");
  }

  const pattern::Tree& tree_;
  const Tongue &tongue_, &usual_;
  std::string list_;
  std::vector<std::string> told_;
};

} // namespace

std::string abbreviations_of(const pattern::Tree& tree, const Tongue& tongue, const Tongue& usual) {
  return Abbreviations(tree, tongue, usual).list();
}

} // namespace whorl::writing
