#!/usr/bin/env python3
"""Reads a survey file and prints what the survey shows, one JSON object a line.

Written from docs/file.md alone, with the standard library only, to prove that the page is enough.
Usage: reader.py FILE
"""
import hashlib
import json
import re
import sys
import zipfile

PHOTO = re.compile(r"survey/data/photos/([0-9a-f]{64})\.(jpg|png)")
NAMES = {
    "survey/bagit.txt", "survey/bag-info.txt", "survey/manifest-sha256.txt", "survey/tagmanifest-sha256.txt",
    "survey/data/facts.jsonl", "survey/data/report.html",
}
BEGINNING = {"jpg": b"\xff\xd8\xff", "png": b"\x89PNG\r\n\x1a\n"}


def must(holds, what):
    if not holds:
        sys.exit(f"refused: {what}")


def manifest(text):
    must(text.endswith("\n") and "\r" not in text, "lines of a manifest")
    pairs = [line.split("  ", 1) for line in text.splitlines()]
    must(len({name for _, name in pairs}) == len(pairs), "a name twice in a manifest")
    return {name: digest for digest, name in pairs}


def read(path):
    with zipfile.ZipFile(path) as zipped:
        infos = zipped.infolist()
        names = [info.filename for info in infos]
        must(len(set(names)) == len(names) <= 5000, "names")
        must(all(name in NAMES or PHOTO.fullmatch(name) for name in names), "a strange name")
        must(all(info.compress_type in (0, 8) and not info.flag_bits & 1 for info in infos), "a strange entry")
        return {name.removeprefix("survey/"): zipped.read(name) for name in names}


def check_bag(entries, survey):
    must(entries["bagit.txt"] == b"BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n", "bagit.txt")
    hashes = {name: hashlib.sha256(content).hexdigest() for name, content in entries.items()}
    payload = {name: digest for name, digest in hashes.items() if name.startswith("data/")}
    tags = {name: hashes[name] for name in ("bag-info.txt", "bagit.txt", "manifest-sha256.txt")}
    must(manifest(entries["manifest-sha256.txt"].decode()) == payload, "the manifest")
    must(manifest(entries["tagmanifest-sha256.txt"].decode()) == tags, "the tag manifest")
    info = [line.split(": ", 1) for line in entries["bag-info.txt"].decode().splitlines()]
    must([value for label, value in info if label == "External-Identifier"] == [survey], "the survey's id")
    oxum = f"{sum(len(entries[name]) for name in payload)}.{len(payload)}"
    must([value for label, value in info if label == "Payload-Oxum"] == [oxum], "the sum")


def facts_of(text):
    must(text.endswith("\n"), "the end of the facts")
    header, *facts = [json.loads(line) for line in text.split("\n")[:-1]]
    must(header["file"] == "legwork", "the header")
    must(header["format"] in (0, 1), "a newer format")
    must(header["facts"] == len(facts), "the number of facts")
    seen = {}
    for fact in facts:
        must(not seen or fact["id"] > max_id, "the order of facts")
        max_id = fact["id"]
        must(("value" in fact) != (fact.get("forgotten") is True), "a value or forgotten")
        about = (fact["subject"], fact["field"])
        must(all(seen.get(over) == about for over in fact["over"]), "a hole")
        seen[fact["id"]] = about
    return header, facts


def check_photos(entries, facts):
    named = set()
    for fact in facts:
        image = fact.get("value")
        if fact["field"] == "image" and isinstance(image, dict):
            named.add(f"data/photos/{image['sha256']}.{image['ext']}")
    for name, content in entries.items():
        if match := PHOTO.fullmatch("survey/" + name):
            must(name in named, "a photo that no fact names")
            must(hashlib.sha256(content).hexdigest() == match[1], "a photo's hash")
            must(content.startswith(BEGINNING[match[2]]), "a photo that is no picture")


def shown(facts):
    replaced = {over for fact in facts for over in fact["over"]}
    live = {}
    for fact in facts:
        fields = live.setdefault((fact["subject"], fact["field"]), [])
        if fact["id"] not in replaced:
            fields.append(fact)
    for (subject, field), sides in sorted(live.items()):
        said = [fact for fact in sides if not fact.get("forgotten")]
        fact = (said or sides)[-1]
        values = {json.dumps(side["value"], sort_keys=True) for side in said}
        disagree = len(values) > 1 and field != "removed"
        yield {
            "subject": subject, "field": field, "id": fact["id"], "forgotten": bool(fact.get("forgotten")),
            "value": fact.get("value"), "sides": len(said) if disagree else 1,
        }


def main():
    entries = read(sys.argv[1])
    header, facts = facts_of(entries["data/facts.jsonl"].decode())
    check_bag(entries, header["survey"])
    check_photos(entries, facts)
    for line in shown(facts):
        print(json.dumps(line, ensure_ascii=False, sort_keys=True))


if __name__ == "__main__":
    main()
