# Read by draw.sh and by tests/run.sh: installs what is missing and builds. Works without git and without a terminal.
#
#   prepare "PACKAGE …" FOLDER "CMAKE OPTIONS" TARGET …

say() { printf '== %s\n' "$*"; }

# The packages of this list that are not installed.
lacking() {
  for package in $1; do
    dpkg-query -W -f='${Status}' "$package" 2>/dev/null | grep -q 'ok installed' || printf '%s ' "$package"
  done
}

# Installs packages on Debian; elsewhere says what to install by hand, by its Debian name.
install_missing() {
  if ! command -v apt-get >/dev/null 2>&1; then
    say "this is not a Debian system: nothing is installed; the build needs what these Debian packages hold:"
    printf '   %s\n' "$1"
    command -v cmake >/dev/null 2>&1 || { say "cmake is missing"; exit 1; }
    command -v c++ >/dev/null 2>&1 || { say "a C++ compiler is missing"; exit 1; }
    command -v pkg-config >/dev/null 2>&1 || { say "pkg-config is missing"; exit 1; }
    return
  fi
  missing=$(lacking "$1")
  [ -n "$missing" ] || return 0
  say "installing $missing"
  as_root=
  if [ "$(id -u)" != 0 ]; then
    command -v sudo >/dev/null 2>&1 || { say "please install these packages as root, then come back: $missing"; exit 1; }
    as_root=sudo
  fi
  $as_root apt-get update -q >/dev/null 2>&1 || true
  # shellcheck disable=SC2086
  $as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends $missing >/dev/null ||
    { say "these packages could not be installed: $missing"; exit 1; }
}

prepare() {
  packages=$1 folder=$2 options=$3
  shift 3
  install_missing "$packages"
  say "building in $folder"
  # shellcheck disable=SC2086
  [ -e "$folder/build.ninja" ] || cmake -S "$top" -B "$folder" -G Ninja $options >"$folder.log" 2>&1 ||
    { cat "$folder.log"; exit 1; }
  cmake --build "$folder" --target "$@" >"$folder.log" 2>&1 || { tail -n 40 "$folder.log"; exit 1; }
}

tools="g++ cmake ninja-build pkg-config"
libraries="libpugixml-dev nlohmann-json3-dev libutf8proc-dev libcli11-dev libcairo2-dev libpango1.0-dev libpng-dev zlib1g-dev libqpdf-dev"
fonts="fonts-liberation2 fonts-texgyre fonts-noto-cjk"
for_drawing="$tools $libraries $fonts"
for_testing="$for_drawing catch2 libgeos-dev librsvg2-dev libpoppler-glib-dev libicu-dev"
