// swift-tools-version: 6.0
// The app on Linux: its logic against the real library, its views over a stand-in for Apple's frameworks (Standin). The
// library is found where the linker is told to look: tests/rooms/ios.
import PackageDescription

let core: Target.Dependency = .product(name: "ShellCore", package: "Core")

let package = Package(
  name: "AppTests",
  defaultLocalization: "en",
  dependencies: [.package(path: "../../ios/Core")],
  targets: [
    .target(name: "UIKit", path: "Standin/UIKit"),
    .target(name: "UniformTypeIdentifiers", path: "Standin/UniformTypeIdentifiers"),
    .target(name: "AVFoundation", path: "Standin/AVFoundation"),
    .target(name: "Vision", path: "Standin/Vision"),
    .target(name: "SwiftUI", dependencies: ["UIKit", "UniformTypeIdentifiers"], path: "Standin/SwiftUI"),
    .target(name: "PhotosUI", dependencies: ["SwiftUI"], path: "Standin/PhotosUI"),
    .target(
      name: "LegworkUI", dependencies: ["SwiftUI", "PhotosUI", "AVFoundation", "Vision", core], path: "App/LegworkUI",
      resources: [.process("Resources")]),
    .executableTarget(name: "LegworkApp", dependencies: ["LegworkUI", "SwiftUI"], path: "App/Main"),
    // Hands on a shell, as a person has them.
    .target(name: "Hand", dependencies: [core], path: "Tests/Hand"),
    .testTarget(name: "ShellCoreTests", dependencies: ["Hand", core]),
    .testTarget(name: "AppTests", dependencies: ["Hand", "LegworkUI", "SwiftUI", "UIKit", core]),
  ],
  swiftLanguageModes: [.v6]
)
