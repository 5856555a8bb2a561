#include "stitch/hook.hpp"

namespace whorl::stitch {
namespace {

bool lay_on(Hook& hook, Held what) {
  hook.loops.push_back({what, true});
  return true;
}

/// `through` loops come off and one is left in their place; the hook is out of the work.
bool pull(Hook& hook, int through) {
  if (through < 1 || through > hook.count()) return false;
  hook.loops.resize(hook.loops.size() - static_cast<std::size_t>(through));
  hook.inserted = false;
  return lay_on(hook, Held::loop);
}

bool drop(Hook& hook) {
  if (hook.loops.empty()) return false;
  hook.loops.pop_back();
  ++hook.dropped;
  return true;
}

bool pick_up(Hook& hook) {
  if (hook.dropped == 0) return false;
  --hook.dropped;
  hook.inserted = false;
  return lay_on(hook, Held::loop);
}

} // namespace

bool make(const Move& move, Hook& hook) {
  switch (move.act) {
  case Act::yarn_over:
    return lay_on(hook, Held::wrap);
  case Act::insert:
    return hook.inserted = true;
  case Act::draw_up:
    hook.inserted = false;
    return lay_on(hook, Held::drawn);
  case Act::take_loop:
    return lay_on(hook, Held::taken);
  case Act::pull_through:
    return pull(hook, move.loops == 0 ? hook.count() : move.loops);
  case Act::drop:
    return drop(hook);
  case Act::pick_up:
    return pick_up(hook);
  case Act::chain:
    return pull(hook, 1);
  }
  return false;
}

void settle(Hook& hook) {
  for (HeldLoop& loop : hook.loops) loop.fresh = false;
}

} // namespace whorl::stitch
