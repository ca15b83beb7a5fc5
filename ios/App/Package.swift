// swift-tools-version: 6.0
// What the app draws. It needs SwiftUI, and so a Mac; on Linux it is type-checked and drawn as text over a stand-in (tests/ios).
import PackageDescription

let package = Package(
  name: "LegworkUI",
  defaultLocalization: "en",
  platforms: [.iOS(.v17)],
  products: [.library(name: "LegworkUI", targets: ["LegworkUI"])],
  dependencies: [.package(path: "../Core")],
  targets: [
    .target(
      name: "LegworkUI", dependencies: [.product(name: "ShellCore", package: "Core")],
      resources: [.process("Resources")])
  ],
  swiftLanguageModes: [.v6]
)
