#!/bin/sh
# core.sh OUT: builds the door and writes its Kotlin bindings to OUT
set -eu
out=$1
cd ..
cargo build -q --locked -p door
cargo run -q --locked -p door-bindgen -- generate --library target/debug/libdoor.so --language kotlin --no-format --out-dir "$out"
