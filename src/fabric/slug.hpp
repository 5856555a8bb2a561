#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace whorl::fabric {

/// The name as an ASCII slug that may begin an id: small letters, digits and hyphens, at most 40; "part"
/// where nothing is left of it.
std::string slug(std::string_view name);

/// The slug, made unlike those in `taken` by a number behind it.
std::string unique_slug(std::string_view name, const std::vector<std::string>& taken);

} // namespace whorl::fabric
