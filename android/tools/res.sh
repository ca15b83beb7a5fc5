#!/bin/sh
# res.sh ANDROID_ALL_JAR OUT MIN_SDK TARGET_SDK: compiles the look's and our own resources, the manifest and what model.sh put
# into target/assets to OUT/resources.ap_ and OUT/java/**/R.java
set -eu
jar=$1 out=$2
rm -rf "$out"
mkdir -p "$out/java"
aapt2 compile --dir ../look/android -o "$out/look.zip"
aapt2 compile --dir src/main/res -o "$out/res.zip"
# The namespace stands in the Gradle file; aapt2 wants it in the manifest.
sed 's/<manifest /<manifest package="legwork.phone" /' src/main/AndroidManifest.xml >"$out/AndroidManifest.xml"
aapt2 link -I "$jar" --manifest "$out/AndroidManifest.xml" --min-sdk-version "$3" --target-sdk-version "$4" \
    --auto-add-overlay -A target/assets --java "$out/java" -o "$out/resources.ap_" "$out/look.zip" "$out/res.zip" 2>"$out/aapt2.log" ||
    { cat "$out/aapt2.log" >&2; exit 1; }
