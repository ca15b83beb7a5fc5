#!/usr/bin/env bash
# Times our solver and scikit-rf on the same houses in one run, and compares their results.
# PYTHON may name a Python that has tests/peer/requirements.txt; otherwise one is made in tests/.venv.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
python=${PYTHON:-$root/tests/.venv/bin/python}
if [ ! -x "$python" ] && [ -z "${PYTHON:-}" ]; then
    python3 -m venv "$root/tests/.venv"
    "$python" -m pip install --quiet --requirement "$root/tests/peer/requirements.txt"
fi
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
export OPENBLAS_NUM_THREADS=1
"$python" "$here/houses.py" "$folder"
cargo run --quiet --release --manifest-path "$root/Cargo.toml" -p coax --example time_tree -- "$folder"
"$python" "$here/compare.py" "$folder"
