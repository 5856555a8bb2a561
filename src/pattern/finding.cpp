#include "pattern/finding.hpp"

namespace whorl::pattern {

const char* name(Severity severity) {
  switch (severity) {
  case Severity::error:
    return "error";
  case Severity::warning:
    return "warning";
  case Severity::note:
    return "note";
  }
  return "";
}

} // namespace whorl::pattern
