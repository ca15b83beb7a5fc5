import Foundation
import Hand
import ShellCore

/// The ways on which every screen of the guide is seen, as the guide's own snapshot test found them (tests/shells).
@MainActor
struct Ways {
  /// A home folder with one of everything.
  static let home = URL(filePath: "/src/tests/shells/home")

  private let ways: [[String]]

  init() throws {
    let text = try String(contentsOf: URL(filePath: "/src/tests/shells/ways"), encoding: .utf8)
    ways = text.split(separator: "\n").map { String($0).components(separatedBy: ", ") }
  }

  /// The names of all screens.
  var names: Set<String> {
    Set(ways.joined().compactMap { $0.hasPrefix("see ") ? String($0.dropFirst(4)) : nil })
  }

  /// Walks through all of them; on each the app is ended by the system, and has to come back to it. Returns what was not
  /// come to.
  func walk(_ hand: Hand) async throws -> [String] {
    var missed: [String] = []
    for way in ways {
      do {
        for step in way where step != "see long-work" { try await go(hand, step) }
      } catch {
        missed.append("\(way): \(error)")
      }
    }
    return missed
  }

  private func go(_ hand: Hand, _ step: String) async throws {
    let words = step.split(separator: " ").map(String.init)
    switch words[0] {
    case "surveys": try await toSurveys(hand)
    case "overview": try await toOverview(hand)
    case "press":
      let key = String(step.dropFirst("press ".count))
      // What was made on the way has another id each time.
      let alike = hand.keys.first { $0 == key } ?? hand.keys.first { withoutIds($0) == withoutIds(key) }
      try await hand.press(alike ?? key)
    case "pick": for option in words[2...] { try await hand.pick(words[1], option) }
    case "back": try await hand.back()
    case "file": _ = try await hand.handOn(as: words[1])
    default:
      guard hand.screen.name == words[1] else { throw Astray(found: hand.screen.name) }
      try await hand.kill()
    }
  }

  private struct Astray: Error { let found: String }

  private func withoutIds(_ key: String) -> String {
    key.replacing(#/[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}/#, with: "*")
  }

  private func toSurveys(_ hand: Hand) async throws {
    for _ in 0..<80 where hand.screen.name != "surveys" {
      if let key = ["out", "overview"].first(where: hand.keys.contains) {
        try await hand.press(key)
      } else {
        try await hand.back()
      }
    }
  }

  /// To the whole job of the survey that has everything.
  func toOverview(_ hand: Hand) async throws {
    if hand.screen.trail.first?.contains("Mill House") != true {
      try await toSurveys(hand)
      try await hand.press(row: "Mill House")
    }
    for _ in 0..<80 where hand.screen.name != "overview" {
      if hand.keys.contains("overview") { try await hand.press("overview") } else { try await hand.back() }
    }
  }
}
