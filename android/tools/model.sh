#!/bin/sh
# model.sh: puts the model that reads print into target/assets, which the app carries: its files and its licence. It is made where it
# is not there (core/print/model/make). With LEGWORK_WITHOUT_MODEL=1 the app carries none, and says so where a label is photographed.
set -eu
cd "$(dirname "$0")/.."
rm -rf target/assets
mkdir -p target/assets
[ -z "${LEGWORK_WITHOUT_MODEL:-}" ] || exit 0
../core/print/model/make || {
    echo "android/tools/model.sh: the model that reads labels could not be made. LEGWORK_WITHOUT_MODEL=1 builds the app without it." >&2
    exit 1
}
mkdir target/assets/print-model
for name in $(awk '{ print $2 }' ../core/print/model/sums) LICENCE ORIGIN.md; do
    cp "../target/print-model/$name" target/assets/print-model/
done
