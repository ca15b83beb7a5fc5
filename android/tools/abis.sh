#!/bin/sh
# abis.sh: builds the core for each ABI of build.gradle.kts into target/jniLibs, with the NDK of ANDROID_NDK_HOME (API 26).
set -eu
cd "$(dirname "$0")/.."
tools=$(echo "$ANDROID_NDK_HOME"/toolchains/llvm/prebuilt/*/bin)
abi() { # ABI TARGET CLANG
    rustup target add "$2"
    linker="$tools/$3"26-clang
    upper=$(echo "$2" | tr 'a-z-' 'A-Z_')
    # Its addresses are packed as Android reads them from API 23 on.
    env "CARGO_TARGET_${upper}_LINKER=$linker" "CC_$2=$linker" "AR_$2=$tools/llvm-ar" \
        "CARGO_TARGET_${upper}_RUSTFLAGS=-Clink-arg=-Wl,--pack-dyn-relocs=android" \
        ../core/door/for-phones build --manifest-path ../Cargo.toml --locked -p door --profile phone --target "$2"
    mkdir -p "target/jniLibs/$1"
    cp "${CARGO_TARGET_DIR:-../target}/$2/phone/libdoor.so" "target/jniLibs/$1/"
}
abi arm64-v8a aarch64-linux-android aarch64-linux-android
abi armeabi-v7a armv7-linux-androideabi armv7a-linux-androideabi
abi x86_64 x86_64-linux-android x86_64-linux-android
