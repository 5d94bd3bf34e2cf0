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
# Programs that live for seconds do not live to see what measuring themselves would bring.
export DOTNET_TieredPGO=0

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

# run NAME [FILTER...]: the project's tests of that name, into its log; the file of its end gets the code and the seconds. A name may go on after a space.
run() {
  local name=$1 code=0 from=$SECONDS
  timeout --foreground --kill-after=30 "${minutes}m" \
    dotnet test --project "tests/ClubCycle.${name%% *}" -c Release --no-build --no-progress --no-ansi "${@:2}" </dev/null >"$logs/$name.log" 2>&1 || code=$?
  echo "$code $((SECONDS - from))" >"$logs/$name.end"
}

# tell NAME: what its run said, added to the counts.
tell() {
  local name=$1 code seconds log failures
  log="$logs/$name.log"
  read -r code seconds <"$logs/$name.end"
  cat "$log"
  failures=$(count failed "$log")
  passed=$((passed + $(count succeeded "$log" | grep . || echo 0)))
  skipped=$((skipped + $(count skipped "$log" | grep . || echo 0)))
  failed=$((failed + ${failures:-0}))
  times+=$(printf '%s %d min %02d s' "$name" $((seconds / 60)) $((seconds % 60)))$'\n'
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

# What only computes or asks the database takes what the others leave of the machine: screens in a browser, then those tests of the web that keep time.
rm -f "$logs"/*.end "$logs"/*.Tests*.log
beside() {
  renice -n 10 -p "$BASHPID" >/dev/null
  run Planning.Tests
  run Data.Tests
  run Calendars.Tests
  run "Web.Tests beside" --filter-trait Beside=screens
}
say "Testing Browser.Tests, then Web.Tests; Planning, Data, Calendars and part of Web beside them ..."
beside &
beside=$!
# Whoever stops this script stops both.
trap 'pkill -TERM -P "$beside" || true' EXIT
run Browser.Tests
run Web.Tests --filter-not-trait Beside=screens
wait "$beside"
trap - EXIT
for name in Browser.Tests Planning.Tests Data.Tests Calendars.Tests "Web.Tests beside" Web.Tests; do tell "$name"; done

printf '\n%s' "$times"
grep . <<<"$retold" || true
printf '%s passed, %s failed, %s skipped\n' "$passed" "$failed" "$skipped"
[[ $failed -eq 0 && $passed -gt 0 ]]
