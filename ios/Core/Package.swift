// swift-tools-version: 6.0
// What of the app needs no screen: the door's bindings and the logic of the shell. It builds on Linux too, where it is tested
// against the real library (tests/ios).
import PackageDescription

let package = Package(
  name: "Core",
  platforms: [.iOS(.v17), .macOS(.v14)],
  products: [
    .library(name: "Door", targets: ["Door"]),
    .library(name: "ShellCore", targets: ["ShellCore"]),
  ],
  targets: [
    // The C side of the bindings, and beside it the library of the core: `libdoor`, found where the linker is told to look.
    .systemLibrary(name: "DoorFFI"),
    .target(
      name: "Door", dependencies: ["DoorFFI"],
      linkerSettings: [.linkedLibrary("door")]),
    .target(name: "ShellCore", dependencies: ["Door"]),
  ],
  swiftLanguageModes: [.v6]
)
