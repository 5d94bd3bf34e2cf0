#!/usr/bin/env bash
# Spoiled files for the readers of match lists, calendars and plan files, side by side: bash deploy/fuzz.sh [MINUTES-EACH]
# Says what breaks a reader and keeps it in artifacts/fuzz; ends with "N passed, N failed, 0 skipped", one test a reader.
# One file again: artifacts/bin/ClubCycle.Fuzz/release/ClubCycle.Fuzz csv|ics|json FILE
set -euo pipefail
# shellcheck source=common.sh
source "$(dirname "${BASH_SOURCE[0]}")/common.sh"

minutes=${1:-1}
[[ $minutes =~ ^[0-9]+$ && $minutes -gt 0 ]] || stop "Say for how many minutes each reader is to be tried, for example: bash deploy/fuzz.sh 10"
find_dotnet
cd "$root"
dotnet build tests/ClubCycle.Fuzz -c Release -v quiet </dev/null >&2

# A reader that needs more than 64 MB beside the 64 that the program and its files take is out of memory: that breaks it. Whoever sets another limit is heard.
export DOTNET_GCHeapHardLimit=${DOTNET_GCHeapHardLimit:-0x8000000}
finds="$root/artifacts/fuzz"
rm -rf "$finds"
readers=(csv ics json)
tries=()
for reader in "${readers[@]}"; do
  mkdir -p "$finds/$reader"
  nice -n 10 timeout --kill-after=30 $((minutes + 2))m artifacts/bin/ClubCycle.Fuzz/release/ClubCycle.Fuzz "$reader" $((minutes * 60)) "$finds/$reader" </dev/null >"$finds/$reader.log" 2>&1 &
  tries+=($!)
done
# Whoever stops this script stops them too.
trap 'kill "${tries[@]}" 2>/dev/null || true' EXIT

passed=0 failed=0
for i in "${!readers[@]}"; do
  code=0
  wait "${tries[$i]}" || code=$?
  cat "$finds/${readers[$i]}.log"
  if [[ $code -eq 0 ]]; then
    passed=$((passed + 1))
  else
    failed=$((failed + 1))
    [[ $code -eq 1 ]] || printf '%s: BROKEN by %s: the program ended with code %s\n' "${readers[$i]}" "$finds/${readers[$i]}/now" "$code"
  fi
done
trap - EXIT
printf '%s passed, %s failed, 0 skipped\n' "$passed" "$failed"
[[ $failed -eq 0 ]]
