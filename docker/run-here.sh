#!/usr/bin/env bash
# What compose.scale.yaml arranges, as plain processes of this machine, from the same nginx.conf: a PostgreSQL, three
# instances of the service and nginx before them; then a shop's day in short, with instances that go away. It installs
# nginx and PostgreSQL through apt-get where they are missing, and leaves nothing running and no files behind.
#
#   docker/run-here.sh            publishes the service as the Dockerfile does, and runs it
#   docker/run-here.sh FOLDER     runs what is built or published there
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
root=$(dirname "$here")

say() { printf '%s\n' "$*"; }
fail() { say "FAILED: $*" >&2; exit 1; }

as_root() { if [ "$(id -u)" -eq 0 ]; then "$@"; else sudo "$@"; fi; }

# PostgreSQL will not run as root.
as_postgres() { if [ "$(id -u)" -eq 0 ]; then runuser -u postgres -- "$@"; else "$@"; fi; }

install_missing() {
  local missing=()
  command -v nginx >/dev/null || [ -x /usr/sbin/nginx ] || missing+=(nginx-light)
  compgen -G '/usr/lib/postgresql/*/bin/initdb' >/dev/null || missing+=(postgresql)
  command -v curl >/dev/null || missing+=(curl)
  [ "${#missing[@]}" -gt 0 ] || return 0
  as_root apt-get update -qq
  as_root env DEBIAN_FRONTEND=noninteractive apt-get install --yes --quiet --no-install-recommends "${missing[@]}" >/dev/null
}

free_port() {
  local port
  while true; do
    port=$((RANDOM % 20000 + 20000))
    (exec 3<>"/dev/tcp/127.0.0.1/$port") 2>/dev/null || { say "$port"; return; }
  done
}

postgres() { as_postgres "$postgres_programs/$1" "${@:2}"; }

start_postgres() {
  postgres_programs=$(compgen -G '/usr/lib/postgresql/*/bin' | sort -V | tail -1)
  mkdir "$work/postgres"
  [ "$(id -u)" -ne 0 ] || chown postgres "$work/postgres"
  postgres initdb --pgdata "$work/postgres/data" --username evenstep --auth trust --no-sync >/dev/null
  postgres pg_ctl start --wait --silent --pgdata "$work/postgres/data" --log "$work/postgres/log" \
    --options "-p $postgres_port -k $work/postgres -c listen_addresses=127.0.0.1 -c fsync=off" >/dev/null
  postgres createdb --host 127.0.0.1 --port "$postgres_port" --username evenstep evenstep
}

start_instance() { # number
  ASPNETCORE_URLS="http://127.0.0.1:${ports[$1]}" \
    ConnectionStrings__Evenstep="Host=127.0.0.1;Port=$postgres_port;Database=evenstep;Username=evenstep" \
    "$service/Evenstep.Service" >>"$work/evenstep-$1.log" 2>&1 &
  instances[$1]=$!
  pids+=($!)
}

await_ready() { # number
  for _ in $(seq 150); do
    ! "$service/Evenstep.Service" --check --urls "http://127.0.0.1:${ports[$1]}" >/dev/null || return 0
    sleep 0.2
  done
  tail -20 "$work/evenstep-$1.log" >&2
  fail "instance $1 is not ready"
}

start_nginx() {
  sed -e "s/listen 8080;/listen 127.0.0.1:$nginx_port;/" -e "s|/tmp/nginx|$work/nginx|" \
    -e "s/evenstep-1:8080/127.0.0.1:${ports[1]}/" -e "s/evenstep-2:8080/127.0.0.1:${ports[2]}/" -e "s/evenstep-3:8080/127.0.0.1:${ports[3]}/" \
    "$here/nginx.conf" >"$work/nginx.conf"
  PATH=$PATH:/usr/sbin nginx -q -e "$work/nginx.log" -p "$work" -c "$work/nginx.conf" -t
  PATH=$PATH:/usr/sbin nginx -e "$work/nginx.log" -p "$work" -c "$work/nginx.conf" -g 'daemon off;' &
  pids+=($!)
  for _ in $(seq 50); do
    ! curl --silent --output /dev/null "$entry/health/live" || return 0
    sleep 0.1
  done
  fail "nginx does not answer"
}

clean_up() {
  local pid
  for pid in "${pids[@]}"; do kill "$pid" 2>/dev/null || true; done
  for pid in "${pids[@]}"; do wait "$pid" 2>/dev/null || true; done
  [ ! -d "$work/postgres/data" ] || postgres pg_ctl stop --wait --silent --mode fast --pgdata "$work/postgres/data" || true
  rm -rf "$work"
}

# What is answered: the status alone, or a header of the answer.
status() { curl --silent --output /dev/null --write-out '%{http_code}' --max-time 20 "$@"; }
tag() { curl --silent --show-error --fail --dump-header - --output /dev/null --max-time 20 "$@" | tr -d '\r' | sed -n 's/^[Ee][Tt][Aa][Gg]: //p'; }

expect() { # what, wanted, given
  [ "$2" = "$3" ] || fail "$1: $2 was to be answered, $3 was"
  say "  $1: $3"
}

# Each asks for something else, so that none is answered from memory.
recommend() { # budget
  status "$entry/v1/recommendations" -H 'Content-Type: application/json' \
    -d '{"telescopes":[{"apertureMm":203,"focalLengthMm":1218,"focuserBarrel":"2in"}],"catalogue":{"id":"shop"},"limits":{"budget":'"$1"'}}'
}

# Whether every one of many requests is answered, while something happens to the instances.
expect_answers() { # what
  local answered=0
  for _ in $(seq 30); do
    asked=$((asked + 1))
    [ "$(recommend "$asked")" != 200 ] || answered=$((answered + 1))
  done
  expect "$1, requests answered of 30" 30 "$answered"
}

expect_tag_everywhere() { # what, tag
  local i given
  for i in 1 2 3; do
    for _ in $(seq 300); do
      given=$(tag "http://127.0.0.1:${ports[$i]}/v1/catalogues/shop" || true)
      [ "$given" != "$2" ] || break
      sleep 0.1
    done
    expect "$1, by instance $i" "$2" "$given"
  done
}

declare -a pids=() instances=() ports=()
asked=0
install_missing
work=$(mktemp -d)
chmod 755 "$work"
trap clean_up EXIT
service=${1:-}
if [ -z "$service" ]; then
  service=$work/app
  say "Publishing"
  dotnet publish "$root/src/Evenstep.Service" --configuration Release --use-current-runtime --no-self-contained \
    -p:PublishReadyToRun=true --output "$service" --verbosity quiet --nologo
fi
service=$(cd "$service" && pwd)
for i in 1 2 3; do ports[i]=$(free_port); done
postgres_port=$(free_port)
nginx_port=$(free_port)
entry=http://127.0.0.1:$nginx_port

say "Starting"
start_postgres
for i in 1 2 3; do start_instance $i; done
for i in 1 2 3; do await_ready $i; done
start_nginx

say "A shop's day"
csv=$'id,kind,name,price,barrel,focalLengthMm,apparentFieldDeg,eyeReliefMm\nwide-25,eyepiece,Wide 25 mm,89.90,1.25in,25,60,18\nfine-8,eyepiece,Fine 8 mm,75,1.25in,8,60,15\n'
# nginx may lead to an instance that has not heard yet: what was stored is told by the answer to whoever stored it.
stored=$(tag -X PUT "$entry/v1/catalogues/shop?currency=EUR" -H 'Content-Type: text/csv' --data-binary "$csv" || true)
expect "a catalogue is stored" yes "${stored:+yes}"
expect_tag_everywhere "the same version" "$stored"
changed=$(tag -X PATCH "$entry/v1/catalogues/shop/items" -H 'Content-Type: text/csv' --data-binary $'id,price\nfine-8,69.90\n' || true)
expect "prices change" yes "${changed:+yes}"
expect_tag_everywhere "the change" "$changed"
expect "figures are not for everybody" 404 "$(status "$entry/metrics")"
expect_answers "all instances there"

say "Instances go away"
kill -TERM "${instances[1]}"
expect_answers "one is told to stop"
kill -KILL "${instances[2]}"
wait "${instances[2]}" 2>/dev/null || true
expect_answers "another is killed"
start_instance 2
await_ready 2
expect "what the killed one finds again" "$changed" "$(tag "http://127.0.0.1:${ports[2]}/v1/catalogues/shop")"
say "All as it should be."
