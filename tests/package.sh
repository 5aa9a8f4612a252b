#!/usr/bin/env bash
# The Debian package holds a program that runs in a root with nothing in it but the package and what
# the package says it depends on.
set -euo pipefail
build=$(cd "$1" && pwd)
here=$(cd "$(dirname "$0")/.." && pwd)
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT
cd "$place"
cpack -G DEB --config "$build/CPackConfig.cmake" -B "$place/made" >/dev/null
package=$(ls made/*.deb)
root=$place/root
mkdir -p "$root"
dpkg-deb -x "$package" "$root"

# The dependencies, and theirs, as they are installed here.
wanted=$(dpkg-deb -f "$package" Depends | tr ',' '\n' | awk '{print $1}')
[ -n "$wanted" ]
done=
while [ -n "$wanted" ]; do
  next=
  for name in $wanted; do
    case " $done " in *" $name "*) continue ;; esac
    done="$done $name"
    while read -r file; do
      [ -f "$file" ] && (cd / && cp -a --parents ".$file" "$root")
    done < <(dpkg -L "$name") || true
    next="$next $(dpkg-query -W -f '${Depends}' "$name" | tr ',' '\n' | sed 's/|.*//' | awk '{print $1}' | cut -d: -f1 | tr '\n' ' ')"
  done
  wanted=$(echo $next)
done
# Merged /usr, as every Debian 12 has it.
for folder in lib lib64; do
  if [ -d "$root/$folder" ] && [ -L "/$folder" ]; then
    mkdir -p "$root/usr/$folder"
    cp -a "$root/$folder/." "$root/usr/$folder/"
    rm -r "${root:?}/$folder"
  fi
  ln -s "usr/$folder" "$root/$folder"
done
cp -r "$here/examples/sums-by-hand" "$root/house"
inside() {
  if [ "$(id -u)" -eq 0 ]; then
    chroot "$root" "$@"
  else
    unshare -r chroot "$root" "$@"
  fi
}
inside /usr/bin/manciple --version
inside /usr/bin/manciple build "/house/$(cat "$root/house/plan")" --out /house/out/p | tail -n 1
for file in "$root"/house/expected/*; do
  cmp "$file" "$root/house/out/p/$(basename "$file")"
done
