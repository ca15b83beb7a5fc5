//! Makes the bindings of the door for Kotlin, Swift and Python out of the compiled library.

fn main() {
    uniffi::uniffi_bindgen_main();
}
