#!/usr/bin/env bash
# Shows in which order things reach the disk: written under a temporary name, synced, renamed, the folder synced, and
# only then what names them written and synced, and only then acknowledged.
#
# strace.sh WRITER SURVEY photo|pack|take: WRITER is the program `record-writer`, SURVEY an existing survey's folder;
# `take` takes `sent.lwk` beside it, which brings a photo.
set -euo pipefail
writer=$1 survey=$2 what=$3
command -v strace >/dev/null || { echo "strace is not installed (Debian: apt-get install strace)" >&2; exit 1; }
trace=$(mktemp)
trap 'rm -f "$trace"' EXIT
strace -f -y -qq -o "$trace" -e trace=write,writev,pwrite64,fsync,fdatasync,rename,renameat,renameat2 \
    "$writer" "one-$what" "$survey" 1 >/dev/null

# The line of the first call behind line $1 that matches $2.
after() {
    awk -v from="$1" -v what="$2" 'NR > from && $0 ~ what { print NR; exit }' "$trace"
}
line=0
step() {
    local found
    found=$(after "$line" "$2")
    if [ -z "$found" ]; then
        echo "missing behind line $line: $1" >&2
        cat "$trace" >&2
        exit 1
    fi
    line=$found
    echo "$1: $(sed -n "${line}p" "$trace" | cut -c1-160)"
}
# Nothing of the facts may have been written before; a log's own header is no fact, but there must be none either.
no_fact_yet() {
    if awk -v until="$line" 'NR < until && /survey\.db-wal/ { exit 1 }' "$trace"; then return; fi
    echo "the database's log was written before the photo was on the disk" >&2
    cat "$trace" >&2
    exit 1
}
facts() {
    step "facts written" 'pwrite64\([0-9]+<[^>]*/survey\.db-wal>.*, 4096, '
    step "facts synced" 'f(data)?sync\([0-9]+<[^>]*/survey\.db-wal>\) += 0'
}
case $what in
photo)
    step "written" 'write\([0-9]+<[^>]*/photos/[0-9a-f]+\.png\.[0-9a-f]+\.part>'
    step "synced" 'f(data)?sync\([0-9]+<[^>]*/photos/[0-9a-f]+\.png\.[0-9a-f]+\.part>\) += 0'
    step "renamed" 'rename.*/photos/[0-9a-f]+\.png\.[0-9a-f]+\.part".*/photos/[0-9a-f]+\.png".* = 0'
    step "folder synced" 'f(data)?sync\([0-9]+<[^>]*/photos>\) += 0'
    no_fact_yet
    facts
    step "acknowledged" 'write\(1<.*photo '
    ;;
pack)
    # The end of a zip is its last piece (APPNOTE.TXT 6.3.10, 4.3.16); no piece may come behind the sync.
    step "written" 'write\([0-9]+<[^>]*/sent\.lwk\.[0-9a-f]+\.part>'
    line=$(awk '/write\([0-9]+<[^>]*\/sent\.lwk\.[0-9a-f]+\.part>/ { last = NR } END { print last }' "$trace")
    step "synced behind the last piece" 'fsync\([0-9]+<[^>]*/sent\.lwk\.[0-9a-f]+\.part>\) += 0'
    step "renamed" 'rename.*/sent\.lwk\.[0-9a-f]+\.part".*/sent\.lwk".* = 0'
    step "folder synced" "fsync\\([0-9]+<$(dirname "$survey")>\\) += 0"
    step "acknowledged" 'write\(1<.*packed'
    ;;
take)
    step "written" 'write\([0-9]+<[^>]*/\.taking-[0-9a-f]+/[0-9a-f]+\.png>'
    step "synced" 'f(data)?sync\([0-9]+<[^>]*/\.taking-[0-9a-f]+/[0-9a-f]+\.png>\) += 0'
    step "renamed" 'rename.*/\.taking-[0-9a-f]+/[0-9a-f]+\.png".*/photos/[0-9a-f]+\.png".* = 0'
    step "folder synced" 'f(data)?sync\([0-9]+<[^>]*/photos>\) += 0'
    no_fact_yet
    facts
    step "acknowledged" 'write\(1<.*taken'
    ;;
esac
echo "the order is right"
