import Foundation
import Hand
import LegworkUI
import ShellCore
import SwiftUI
import Testing

/// Every screen of the guide as the app draws it.
@MainActor
@Suite(.serialized) struct Screens {
  private let pictures = URL(filePath: "/src/target/ios-screens")

  /// The names of all screens, as the guide's own tests know them.
  private var names: Set<String> {
    get throws {
      let folder = "/src/core/guide/tests/all/snapshots/screens"
      let files = try FileManager.default.contentsOfDirectory(atPath: folder)
      return Set(files.filter { $0.hasSuffix(".snap") }.map { String($0.dropLast(5)) })
    }
  }

  @Test func everyScreenIsReadInOrderWithItsLabels() async throws {
    try? FileManager.default.removeItem(at: pictures)
    let hand = try await Hand(home: URL(filePath: "/src/target/ios-whole"))
    defer { hand.close() }
    let walk = try Walk(hand, pictures: pictures)
    hand.watch = { try? walk.keep() }
    try await walk.leadOn { try await walk.toSurveys() }
    try await walk.leadOn { try await walk.toOverview() }
    for deeds in inside {
      try await walk.toOverview()
      try await deeds(hand)
    }
    // The questions of a new survey.
    try await walk.toSurveys()
    try await hand.press("new")
    try await hand.write("name", "Hill House")
    try await hand.press("make")
    var owner = Homeowner()
    var asked = 0
    while hand.screen.name.hasPrefix("ask-") && asked < 60 {
      try await owner.answer(hand)
      asked += 1
    }
    let list = walk.faults.joined(separator: "\n")
    #expect(walk.faults.isEmpty, "\(list)")
    let missing = try names.subtracting(walk.seen).sorted()
    #expect(missing == [])
    print("\(walk.seen.count) screens in target/ios-screens")
  }

  /// What is done from the overview for the screens that no press alone leads to. As in core/guide/tests/all/screens_walk.rs.
  private var inside: [@MainActor (Hand) async throws -> Void] {
    [
      { hand in
        try await hand.press("cables")
        try await hand.press(first: "ask:")
        try await hand.press("later")
        try await hand.go("put-off")
      },
      { hand in
        try await hand.go("free-runs")
        try await hand.press(first: "run:")
        try await hand.press(row: "plugs")
      },
      { hand in
        try await hand.go("disagreements")
        try await hand.press(row: "internet plan")
      },
      { hand in
        try await hand.go("free-here")
        try await hand.press("at:splitter")
        try await hand.back()
      },
      { hand in
        try await hand.go("free-rooms")
        try await hand.press(row: "Office")
        try await hand.press("wish")
        try await hand.press("other-speed")
      },
      { hand in
        try await hand.go("tests")
        try await hand.press(first: "test:")
        try await hand.pick("kind", "house")
      },
      { hand in
        try await hand.go("work")
        try await hand.press("step:0")
        try await hand.press("done")
        try await hand.pick("fine", "yes")
      },
      { hand in
        try await hand.go("work")
        try await hand.press(first: "ended:")
      },
      { hand in
        try await hand.go("things")
        try await hand.press(row: "note")
        try await hand.press("forget")
        try await hand.press("forget")
      },
      { hand in
        try await hand.go("pack")
        _ = try await hand.handOn(as: "mill.lwk")
      },
      { hand in
        try await hand.go("router")
        try await hand.press(row: "adapters")
        try await hand.pick("adapters", "none")
        try await hand.go("placing")
      },
    ]
  }
}
