#!/bin/sh
# core.sh: builds the door for this computer; its Kotlin bindings are checked in (tests/bindings)
set -eu
cd ..
cargo build -q --locked -p door
