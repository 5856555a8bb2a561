#include "drawing/symbol_case.hpp"

#include "drawing/number.hpp"

namespace whorl::drawing {
namespace {

bool is_plain(char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9'); }

std::string slug(const std::string& name) {
  std::string slug;
  for (char c : name) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    if (is_plain(c)) slug += c;
  }
  return slug.empty() || slug.front() <= '9' ? "stitch" + slug : slug;
}

std::string loops_suffix(std::uint8_t loops) {
  if (loops == stitch::back) return "_back";
  if (loops == stitch::front) return "_front";
  return loops == stitch::both ? "" : "_loops" + std::to_string(loops);
}

std::string base_suffix(const layout::SymbolKey& key) {
  switch (key.base) {
  case layout::Base::top:
    return "";
  case layout::Base::front_post:
    return "_fp";
  case layout::Base::back_post:
    return "_bp";
  case layout::Base::below:
    return "_below" + std::to_string(key.down);
  }
  return "";
}

} // namespace

std::string symbol_id(const stitch::StitchKind& kind, const layout::SymbolKey& key, std::int64_t height) {
  std::string id = slug(kind.name);
  if (key.in_one > 1) id += "_" + std::to_string(key.in_one);
  id += loops_suffix(key.loops) + base_suffix(key);
  if (height > 0) id += "_h" + std::to_string(height);
  return id;
}

SymbolCase::SymbolCase(const std::vector<stitch::StitchKind>& kinds, const std::vector<Mark>& marks,
                       const Style& style, double stitch)
    : kinds_(kinds), marks_(marks), style_(style), scale_(stitch) {}

std::uint32_t SymbolCase::stitch(const layout::SymbolKey& key, double height) {
  const StitchKey wanted{key.kind, key.in_one, key.loops, key.base, key.down, thousandths(height)};
  const auto found = stitches_.find(wanted);
  if (found != stitches_.end()) return found->second;
  const stitch::StitchKind& kind = kinds_[key.kind];
  const Composed own = compose(kind, key, marks_, style_);
  const bool stretched = height > 0 && thousandths(height) != thousandths(own.extent.height);
  std::uint32_t number = 0;
  if (stretched)
    number = add(symbol_id(kind, key, thousandths(height)), compose(kind, key, marks_, style_, height).pens);
  else if (height > 0)
    number = this->stitch(key);
  else
    number = add(symbol_id(kind, key, 0), own.pens);
  stitches_.emplace(wanted, number);
  return number;
}

std::optional<std::uint32_t> SymbolCase::mark(std::string_view name) {
  const auto found = named_.find(name);
  if (found != named_.end()) return found->second;
  const Mark* mark = find_mark(marks_, name);
  if (mark == nullptr) return std::nullopt;
  const std::uint32_t number = add("mark_" + std::string(name), mark->pens);
  named_.emplace(name, number);
  return number;
}

std::uint32_t SymbolCase::add(std::string id, const std::vector<Pen>& pens) {
  SymbolDefinition definition;
  definition.id = unused(std::move(id));
  definition.pens = in_millimetres(pens, scale_);
  definitions_.push_back(std::move(definition));
  return static_cast<std::uint32_t>(definitions_.size() - 1);
}

std::string SymbolCase::unused(std::string id) const {
  const auto taken = [this](const std::string& candidate) {
    for (const SymbolDefinition& definition : definitions_)
      if (definition.id == candidate) return true;
    return false;
  };
  std::string candidate = id;
  for (int n = 2; taken(candidate); ++n) candidate = id + "_n" + std::to_string(n);
  return candidate;
}

} // namespace whorl::drawing
