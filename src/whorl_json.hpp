#pragma once
/// What both JSON objects of the face share. Not installed.

#include "whorl_content.hpp"

#include <nlohmann/json.hpp>

#include <string>

namespace whorl {

/// Keys keep the order in which they are written.
using Json = nlohmann::ordered_json;

inline std::string text_of(const Json& json) {
  return json.dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

/// The ways of working that the text tells.
Json techniques_json(const Pattern::Content& pattern);

inline Json stated_json(std::int64_t stated) { return stated < 0 ? Json(nullptr) : Json(stated); }

} // namespace whorl
