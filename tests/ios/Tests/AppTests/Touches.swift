import Foundation
import Hand
import LegworkUI
import ShellCore
import SwiftUI
import Testing
import UIKit

/// What is touched on the drawn screen is done in the core.
@MainActor
@Suite(.serialized) struct Touches {
  private func stop(_ stage: Stage, _ label: String) throws -> Stop {
    let stops = Reader.stops(stage.draw())
    return try #require(stops.first { $0.label == label }, "no \(label): \(stops.map(\.said))")
  }

  @Test func aSurveyIsBegunThroughTheViewsAlone() async throws {
    let hand = try await Hand()
    defer { hand.close() }
    let stage = Stage(RootView(shell: hand.shell))
    let new = hand.screen.blocks.compactMap(\.press).first { $0.key == "new" }
    try stop(stage, try #require(new).aloud.label).press?()
    #expect(hand.screen.name == "new-survey")
    let field = try #require(Reader.stops(stage.draw()).first { $0.type != nil })
    field.type?("Mill House")
    // Enter stands for the way on.
    let typed = try #require(Reader.stops(stage.draw()).first { $0.type != nil })
    #expect(typed.value == "Mill House")
    typed.press?()
    try await hand.settle()
    #expect(hand.screen.name == "ask-whose")
    let first = try #require(hand.screen.blocks.compactMap(\.choice).first?.options.first)
    try stop(stage, first.aloud.label).press?()
    try await hand.settle()
    #expect(hand.screen.name != "ask-whose")
    try stop(stage, "Back").press?()
    try await hand.settle()
    #expect(hand.screen.name == "ask-whose")
    // What was chosen is said to be.
    #expect(try stop(stage, first.aloud.label).traits.contains("selected"))
  }

  @Test func aNoticeIsSaidOnce() async throws {
    let hand = try await Hand()
    defer { hand.close() }
    let stage = Stage(RootView(shell: hand.shell))
    _ = stage.draw()
    UIAccessibility.said = []
    let file = hand.phone.appending(path: "broken.lwk")
    try Data("nothing".utf8).write(to: file)
    await hand.shell.receive(file)
    try await hand.settle()
    _ = stage.draw()
    _ = stage.draw()
    #expect(UIAccessibility.said == hand.screen.notices.map(\.words))
    #expect(!UIAccessibility.said.isEmpty)
  }

  @Test func aSecondQuestionIsAskedInADialog() async throws {
    let hand = try await Hand(home: URL(filePath: "/src/target/ios-whole"))
    defer { hand.close() }
    let walk = try Walk(hand, pictures: hand.phone)
    // A part can be removed, after a second question.
    try await walk.toOverview()
    try await hand.press("free-parts")
    try await hand.press(first: "part:")
    let confirm = hand.screen.blocks.compactMap { block -> ConfirmBlock? in
      if case .confirm(let confirm) = block { confirm } else { nil }
    }.first
    let asked = try #require(confirm, "no second question: \(hand.keys)")
    let stage = Stage(RootView(shell: hand.shell))
    let before = hand.screen
    try stop(stage, asked.aloud.label).press?()
    #expect(hand.screen == before)
    let open = Reader.stops(stage.draw()).map(\.label)
    #expect(open.contains(asked.question) && open.contains(asked.yes) && open.contains(asked.no))
  }

  @Test func whatIsReadFromTheRightIsDrawnFromTheRight() async throws {
    let hand = try await Hand(language: "ar-XB")
    defer { hand.close() }
    let stage = Stage(RootView(shell: hand.shell))
    let texts = Reader.outline(stage.draw()).filter { $0.contains("Text “") }
    #expect(texts.count > 2 && texts.allSatisfy { $0.contains("from the right") })
  }

  @Test func wordsOfTheShellAreThere() {
    for words in ShellWords.all { #expect(!words.said.isEmpty && words.said != words.key, "\(words.key)") }
  }

  @Test func typeGrowsButDrawingsStay() async throws {
    let hand = try await Hand()
    defer { hand.close() }
    func sizes(_ size: DynamicTypeSize) -> [Int] {
      let stage = Stage(RootView(shell: hand.shell)) { $0.dynamicTypeSize = size }
      let lines = Reader.outline(stage.draw()).filter { $0.contains("Text ") }
      return lines.compactMap { $0.split(separator: "[").last?.prefix { $0.isNumber } }.compactMap { Int($0) }
    }
    let (usual, largest) = (sizes(.large), sizes(.accessibility5))
    #expect(usual.max()! <= 28 && usual.min()! >= 13)
    // Leads grow to 44 at most, answers to 32; text as far as it is asked to (53 of 17).
    #expect(largest.allSatisfy { $0 >= 28 } && largest.contains(44), "\(largest)")
  }
}
