// swift-tools-version: 6.0
// The app's logic against the real library, on Linux. The library is found where the linker is told to look: tests/rooms/ios.
import PackageDescription

let package = Package(
  name: "AppTests",
  dependencies: [.package(path: "../../ios/Core")],
  targets: [
    // Hands on a shell, as a person has them.
    .target(
      name: "Hand", dependencies: [.product(name: "ShellCore", package: "Core")], path: "Tests/Hand"),
    .testTarget(
      name: "ShellCoreTests",
      dependencies: ["Hand", .product(name: "ShellCore", package: "Core")]),
  ],
  swiftLanguageModes: [.v6]
)
