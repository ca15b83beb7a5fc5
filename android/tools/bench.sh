#!/bin/sh
# bench.sh: how long it takes from a deed until its screen is drawn, with 300 parts and 2,000 photos, as ratio to an empty survey
set -eu
cd "$(dirname "$0")/.."
home=$(mktemp -d)
trap 'rm -rf "$home"' EXIT
cargo run -q --locked --manifest-path ../Cargo.toml -p door --example large_home -- "$home"
built=$(realpath -m "${CARGO_TARGET_DIR:-../target}")
mvn -q -B ${LEGWORK_OFFLINE:+-o} -Pbench -Dnative.dir="$built/debug" -Dlarge.home="$home" test
