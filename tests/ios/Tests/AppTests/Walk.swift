import Foundation
import Hand
import ShellCore
import SwiftUI

/// Goes through all screens of a phone with one of everything on it, and draws the first of each name.
@MainActor
final class Walk {
  let hand: Hand
  let pictures: URL
  private(set) var seen: Set<String> = []
  private(set) var faults: [String] = []

  /// Presses that do something wherever they stand; all others only lead on. As in core/guide/tests/all/screens_walk.rs.
  private static let does: Set<String> = [
    "again", "delete", "done", "could-not", "long-work-stop", "finish", "keep", "keep-note", "later", "make",
    "mend-with-file", "put-back", "same", "save", "stop", "take", "unassign", "undo", "unsure", "work-out",
    "bring-back", "add-band", "replace",
  ]
  private static let doesOn: Set<String> = [
    "survey-rename rename", "survey-copy copy", "survey-mend mend", "free-here at", "one-survey aside",
    "one-survey back", "share-removed-thing back", "free-rooms add", "free-runs add", "free-services add",
    "free-assign new", "free-assign part",
  ]
  private static let varied: Set<String> = ["stage", "one-survey", "free-part"]
  private static let deepest = 7

  init(_ hand: Hand, pictures: URL) throws {
    self.hand = hand
    self.pictures = pictures
    try FileManager.default.createDirectory(at: pictures, withIntermediateDirectories: true)
  }

  /// Draws the screen that stands, if it is the first of its name: as on a phone, on a large tablet by night, and in the
  /// largest type there is.
  func keep() throws {
    let name = hand.screen.name
    guard seen.insert(name).inserted else { return }
    let phone = Seen(hand.shell)
    faults += phone.faults
    try phone.text.write(to: pictures.appending(path: name + ".txt"), atomically: true, encoding: .utf8)
    let tablet = Seen(hand.shell) {
      $0.window = CGSize(width: 1180, height: 820)
      $0.colorScheme = .dark
    }
    faults += tablet.faults.map { "tablet: \($0)" }
    let large = Seen(hand.shell) {
      $0.dynamicTypeSize = .accessibility5
      $0.colorSchemeContrast = .increased
      $0.accessibilityReduceMotion = true
    }
    faults += large.faults.map { "largest type: \($0)" }
  }

  /// Every screen that presses alone lead to from where `start` leads.
  func leadOn(_ start: () async throws -> Void) async throws {
    var ways: [[String]] = [[]]
    var goneOn: Set<String> = []
    while !ways.isEmpty {
      let way = ways.removeFirst()
      try await start()
      let side = hand.screen.trail.first
      for key in way where hand.keys.contains(key) { try await hand.press(key) }
      try keep()
      let here = hand.screen.name + (Self.varied.contains(hand.screen.name) ? hand.screen.title : "")
      guard goneOn.insert(here).inserted, hand.screen.trail.first == side, way.count < Self.deepest else { continue }
      guard !hand.screen.name.hasPrefix("ask-") else { continue }
      var kinds: [String: Int] = [:]
      for key in leads {
        let kind = String(key.split(separator: ":")[0])
        kinds[kind, default: 0] += 1
        // Of many rows that lead to the same kind of screen a few are enough.
        if kinds[kind]! <= 3 { ways.append(way + [key]) }
      }
    }
  }

  private var leads: [String] {
    let blocks = hand.screen.blocks.filter { if case .label = $0 { false } else { true } }
    let keys = blocks.flatMap { block -> [String] in
      if case .confirm = block { return [] }
      if case .figure = block { return [] }
      if case .press(let press) = block, press.need != nil || !press.enabled { return [] }
      return block.pressKeys
    }
    return keys.filter { key in
      let word = String(key.split(separator: ":").first ?? "")
      return !Self.does.contains(word) && !Self.doesOn.contains("\(hand.screen.name) \(word)")
    }
  }

  /// To the list of surveys.
  func toSurveys() async throws {
    for _ in 0..<80 where hand.screen.name != "surveys" {
      if hand.screen.name == "overview", hand.keys.contains("out") {
        try await hand.press("out")
      } else if hand.keys.contains("overview") {
        try await hand.press("overview")
      } else if hand.screen.back {
        try await hand.back()
      } else {
        return
      }
    }
  }

  /// To the overview of the survey that has everything.
  func toOverview() async throws {
    for _ in 0..<80 where hand.screen.name != "overview" {
      if hand.screen.name == "surveys" {
        try await hand.press(row: "Mill House")
        if hand.screen.name == "one-survey" { try await hand.press(first: "open") }
      } else if hand.keys.contains("overview") {
        try await hand.press("overview")
      } else {
        try await hand.back()
      }
    }
  }
}
