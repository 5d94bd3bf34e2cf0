#!/usr/bin/env bash
# Makes this machine ready and runs every test: bash deploy/test.sh
set -euo pipefail
# shellcheck source=common.sh
source "$(dirname "${BASH_SOURCE[0]}")/common.sh"

find_dotnet
[[ -n ${CLUBCYCLE_TEST_DATABASE:-} ]] || need_postgres
need_chromium
need_calendar_readers
need_code_reader
need_pdf_tools
need_proxy
# Settings of an app that runs here are none of the tests' business.
unset CLUBCYCLE_DATA ConnectionStrings__ClubCycle ASPNETCORE_URLS ASPNETCORE_ENVIRONMENT DOTNET_ENVIRONMENT

say "Building ClubCycle and its tests ..."
logs="$root/artifacts/test-logs"
mkdir -p "$logs"
cd "$root"
if ! dotnet build ClubCycle.sln -c Release -v quiet </dev/null >"$logs/build.log" 2>&1; then
  cat "$logs/build.log" >&2
  stop "The build failed; the lines above say why."
fi

# failures LOG: each failed test with its message and the first lines of its stack.
failures() {
  awk '/^Test run summary/ { exit }
    /^failed / { left = 16 }
    /^[^ ]/ && !/^failed / { left = 0 }
    left-- > 0 { print substr($0, 1, 500) }' "$1"
}

minutes=20
passed=0 failed=0 skipped=0 retold="" times=""

# run PROJECT [PREFIX...]: its tests, into its log; the file of its end gets the code and the seconds.
run() {
  local name code=0 from=$SECONDS
  name=$(basename "$1")
  "${@:2}" timeout --foreground --kill-after=30 "${minutes}m" \
    dotnet test --project "$1" -c Release --no-build --no-progress --no-ansi </dev/null >"$logs/$name.log" 2>&1 || code=$?
  echo "$code $((SECONDS - from))" >"$logs/$name.end"
}

# tell PROJECT: what its run said, added to the counts.
tell() {
  local name code seconds log failures
  name=$(basename "$1")
  log="$logs/$name.log"
  read -r code seconds <"$logs/$name.end"
  cat "$log"
  failures=$(count failed "$log")
  passed=$((passed + $(count succeeded "$log" | grep . || echo 0)))
  skipped=$((skipped + $(count skipped "$log" | grep . || echo 0)))
  failed=$((failed + ${failures:-0}))
  times+=$(printf '%s %d min %02d s' "${name#ClubCycle.}" $((seconds / 60)) $((seconds % 60)))$'\n'
  retold+=$(failures "$log")$'\n'
  if [[ $code -ne 0 && ${failures:-0} -eq 0 ]]; then
    case $code in
      8) retold+="$name ran no test."$'\n' ;;
      124 | 137) retold+="$name did not end within $minutes minutes."$'\n' ;;
      *) retold+="$name ended with code $code without a failed test; see $log."$'\n' ;;
    esac
    failed=$((failed + 1))
  fi
}

# What only computes or asks the database takes what the screens leave of the machine; the web's tests keep time and have it to themselves.
rm -f "$logs"/*.end
beside=(tests/ClubCycle.Planning.Tests tests/ClubCycle.Calendars.Tests tests/ClubCycle.Data.Tests)
for project in "${beside[@]}"; do run "$project" nice -n 10; done &
quiet=$!
# Whoever stops this script stops both.
trap 'pkill -TERM -P "$quiet" || true' EXIT
say "Testing Browser.Tests, and beside it ${beside[*]##*/ClubCycle.} ..."
run tests/ClubCycle.Browser.Tests
tell tests/ClubCycle.Browser.Tests
wait "$quiet"
trap - EXIT
for project in "${beside[@]}"; do tell "$project"; done
say "Testing Web.Tests ..."
run tests/ClubCycle.Web.Tests
tell tests/ClubCycle.Web.Tests

printf '\n%s' "$times"
grep . <<<"$retold" || true
printf '%s passed, %s failed, %s skipped\n' "$passed" "$failed" "$skipped"
[[ $failed -eq 0 && $passed -gt 0 ]]
