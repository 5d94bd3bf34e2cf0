#!/usr/bin/env bash
# Calendars that other projects keep for their own tests, each read as a list of matches, and libical's list of rules with their dates: bash deploy/others.sh
# They come from Debian's sources and from npm and are not kept in this repository; what cannot be had is left out, and the counts say how many there were.
set -euo pipefail
# shellcheck source=common.sh
source "$(dirname "${BASH_SOURCE[0]}")/common.sh"

find_dotnet
command -v npm >/dev/null || install "npm" npm
cd "$root"
dotnet build tests/ClubCycle.Fuzz -c Release -v quiet </dev/null >&2
fuzz="$root/artifacts/bin/ClubCycle.Fuzz/release/ClubCycle.Fuzz"
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
mkdir -p "$work/apt/lists/partial" "$work/from" "$work/files" "$root/artifacts/others"

# Debian's source packages, by a list of their own: the machine's lists stay as they are.
for list in /etc/apt/sources.list.d/*.sources; do sed 's/^Types:.*/Types: deb-src/' "$list" >"$work/apt/$(basename "$list")"; done
apt=(apt-get -qq -o Dir::Etc::sourcelist=/dev/null -o "Dir::Etc::sourceparts=$work/apt" -o "Dir::State::lists=$work/apt/lists" -o APT::Sandbox::User=root)
"${apt[@]}" update >&2 || stop "Debian's list of sources cannot be read."
(
  cd "$work/from"
  for package in libical3 libical-parser-perl libdata-ical-perl evolution-data-server kdepim-addons davical khal icalendar vobject radicale; do
    "${apt[@]}" source --download-only "$package" >/dev/null 2>&1 || true
  done
  for package in ical-toolkit@1.0.9 icalts@0.0.2 ical@0.8.0 icalendar@0.7.1 cal-parser@1.0.2; do
    npm pack --silent "$package" >/dev/null 2>&1 || true
  done
)

number=0
for archive in "$work"/from/*.{tar.gz,tar.xz,tgz}; do
  [[ -f $archive ]] || continue
  rm -rf "$work/open" && mkdir "$work/open"
  tar xf "$archive" -C "$work/open" 2>/dev/null || continue
  while IFS= read -r -d '' file; do
    number=$((number + 1))
    cp "$file" "$work/files/$number-$(basename "$file")"
  done < <(find "$work/open" -type f \( -iname '*.ics' -o -iname '*.ifb' -o -iname '*.vcs' -o -path '*test-data*fuzz*' \) -print0)
  rules=$(find "$work/open" -name icalrecur_test.out -print -quit)
  [[ -z $rules ]] || cp "$rules" "$work/rules"
done
say "$number files"

code=0
"$fuzz" ics every "$work/files" "$root/artifacts/others" || code=$?
if [[ -f $work/rules ]]; then
  "$fuzz" rules "$work/rules" || code=$?
fi
exit "$code"
