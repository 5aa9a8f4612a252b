# Sourced by the scripts: installs Debian packages that are missing, without asking.

need_packages() {
  local missing=()
  local package
  for package in "$@"; do
    dpkg-query -W -f '${Status}' "$package" 2>/dev/null | grep -q 'ok installed' || missing+=("$package")
  done
  if [ ${#missing[@]} -eq 0 ]; then
    return
  fi
  local sudo=
  [ "$(id -u)" -eq 0 ] || sudo=sudo
  echo "installing: ${missing[*]}"
  [ -n "${lists_are_new:-}" ] || $sudo env DEBIAN_FRONTEND=noninteractive apt-get update -qq
  lists_are_new=yes
  $sudo env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "${missing[@]}" >/dev/null
}

# What the program is built with.
build_packages=(g++ cmake ninja-build libyaml-cpp-dev libboost-dev libfmt-dev libexpected-dev
  nlohmann-json3-dev libcli11-dev node-qrcode-generator)
# What the sanitizers and the fuzz targets are built with.
clang_packages=(clang-14 lld-14 libclang-rt-14-dev)
# What the tests are compiled with, and what they compare with and run in when they are built.
test_build_packages=(libgtest-dev)
test_packages=(units clang-format python3 python3-jsonschema
  python3-icalendar python3-yaml python3-markdown-it coinor-cbc glpk-utils dpkg-dev file tzdata git
  groff-base zsh fish
  chromium-headless-shell fonts-dejavu-core nodejs poppler-utils)
# Some builds of nodejs bring npm with them, and Debian's package npm is not to be had beside those.
command -v npm >/dev/null || test_packages+=(npm)
