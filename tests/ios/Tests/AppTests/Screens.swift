import Foundation
import Hand
import LegworkUI
import ShellCore
import SwiftUI
import Testing

/// Every screen of the guide as the app draws it.
@MainActor
@Suite(.serialized) struct Screens {
  @Test func everyScreenIsReadInOrderWithItsLabels() async throws {
    let hand = try await Hand(home: Ways.home)
    defer { hand.close() }
    let ways = try Ways()
    let gallery = try Gallery(hand)
    hand.watch = { gallery.keep() }
    gallery.keep()
    #expect(try await ways.walk(hand) == [])
    // What shows only while something goes on: large photos take a while.
    try await ways.toOverview(hand)
    try await hand.go("free-burst")
    let slot = try #require(hand.screen.blocks.compactMap(\.slot).first)
    for number in 1...3 {
      let photo = Picture.png(UInt8(number), side: 1500, grain: true)
      await hand.shell.take(photo: photo, for: hand.shell.destination(slot.key))
      gallery.keep()
      try await hand.settle()
    }
    let list = gallery.faults.joined(separator: "\n")
    #expect(gallery.faults.isEmpty, "\(list)")
    #expect(ways.names.subtracting(gallery.seen).sorted() == [])
    print("\(gallery.seen.count) screens in target/ios-screens")
  }
}

/// The first screen of each name, drawn in every way in which it may be drawn.
@MainActor
final class Gallery {
  private let hand: Hand
  private let pictures = URL(filePath: "/src/target/ios-screens")
  private(set) var seen: Set<String> = []
  private(set) var faults: [String] = []

  init(_ hand: Hand) throws {
    self.hand = hand
    try? FileManager.default.removeItem(at: pictures)
    try FileManager.default.createDirectory(at: pictures, withIntermediateDirectories: true)
  }

  /// Draws the screen that stands, if it is the first of its name: as on a phone, on a large tablet by night, and in the
  /// largest type there is.
  func keep() {
    let name = hand.screen.name
    guard seen.insert(name).inserted else { return }
    let phone = Seen(hand.shell)
    faults += phone.faults
    do {
      try phone.text.write(to: pictures.appending(path: name + ".txt"), atomically: true, encoding: .utf8)
    } catch {
      faults.append("\(name) is not written: \(error)")
    }
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
}
