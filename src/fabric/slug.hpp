#pragma once

#include <map>
#include <string>
#include <string_view>

namespace whorl::fabric {

/// The name as an ASCII slug that may begin an id: small letters, digits and hyphens, at most 40; "part"
/// where nothing is left of it.
std::string slug(std::string_view name);

/// The slug, made unlike those in `taken` by a number behind it, and added to them. `taken` holds for every
/// slug the last number tried behind it.
std::string unique_slug(std::string_view name, std::map<std::string, int>& taken);

} // namespace whorl::fabric
