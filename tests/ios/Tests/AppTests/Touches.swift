import AVFoundation
import Foundation
import Hand
import PhotosUI
import ShellCore
import SwiftUI
import Testing
import UIKit
import Vision

@testable import LegworkUI

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

  @Test func aSecondQuestionUnfoldsBeneath() async throws {
    let hand = try await Hand(home: Ways.home)
    defer { hand.close() }
    // A part can be removed, after a second question.
    try await Ways().toOverview(hand)
    try await hand.press("free-parts")
    try await hand.press(first: "part:")
    let confirm = hand.screen.blocks.compactMap { block -> ConfirmBlock? in
      if case .confirm(let confirm) = block { confirm } else { nil }
    }.first
    let asked = try #require(confirm, "no second question: \(hand.keys)")
    let stage = Stage(RootView(shell: hand.shell))
    let before = hand.screen
    func labels() -> [String] { Reader.stops(stage.draw()).map(\.label) }
    #expect(!labels().contains(asked.question))
    try stop(stage, asked.aloud.label).press?()
    #expect(hand.screen == before)
    // At once after the press that asks.
    let open = labels()
    let at = try #require(open.firstIndex(of: asked.aloud.label))
    #expect(Array(open[(at + 1)...].prefix(3)) == [asked.question, asked.yes, asked.no])
    // No: nothing is done, and it is folded again.
    try stop(stage, asked.no).press?()
    #expect(hand.screen == before && !labels().contains(asked.question))
    try stop(stage, asked.aloud.label).press?()
    try stop(stage, asked.yes).press?()
    try await hand.settle()
    #expect(hand.screen != before)
  }

  private func burst(_ hand: Hand) async throws -> Stage {
    try await hand.press("new")
    try await hand.write("name", "Mill House")
    try await hand.press("make")
    try await hand.go("free-burst")
    return Stage(RootView(shell: hand.shell))
  }

  private func first(_ kind: String, _ drawn: [Drawn]) -> Drawn? {
    drawn.lazy.compactMap { $0.kind == kind ? $0 : first(kind, $0.children) }.first
  }

  private func button(_ words: String, _ drawn: [Drawn]) -> Drawn? {
    drawn.lazy.compactMap { one in
      let isIt = one.kind == "Button" && first("Text", one.children)?.words == words
      return isIt ? one : button(words, one.children)
    }.first
  }

  private func widths(_ drawn: Drawn) -> [CGFloat] {
    [drawn.width].compactMap { $0 } + drawn.children.flatMap { widths($0) }
  }

  /// Until so many photos are there.
  private func wait(_ hand: Hand, _ photos: Int) async throws {
    for _ in 0..<1000 where hand.screen.blocks.compactMap(\.slot).first?.photos.count != photos || hand.shell.isWorking
    {
      try await Task.sleep(for: .milliseconds(20))
    }
    #expect(hand.screen.blocks.compactMap(\.slot).first?.photos.count == photos)
  }

  @Test func theCameraComesUpAgainInABurst() async throws {
    let hand = try await Hand()
    defer { hand.close() }
    UIImagePickerController.hasCamera = true
    defer { UIImagePickerController.hasCamera = false }
    let stage = try await burst(hand)
    try stop(stage, OwnWords.takePhoto.said).press?()
    for number in 1...3 {
      let camera = try #require(first("Controller", stage.draw())?.maker as? Camera, "no camera for \(number)")
      camera.took(UIImage(data: Picture.png(UInt8(number))))
      try await wait(hand, number)
    }
    let camera = try #require(first("Controller", stage.draw())?.maker as? Camera)
    camera.close()
    #expect(first("Controller", stage.draw()) == nil)
    // A camera that gives nothing: that is said, and seen.
    try stop(stage, OwnWords.takePhoto.said).press?()
    try #require(first("Controller", stage.draw())?.maker as? Camera).took(nil)
    for _ in 0..<1000 where hand.shell.said.isEmpty { try await Task.sleep(for: .milliseconds(20)) }
    #expect(first("Controller", stage.draw()) == nil)
    _ = try stop(stage, OwnWords.noPicture.said)
  }

  @Test func whatIsChosenComesAfterItsSheetIsClosed() async throws {
    let hand = try await Hand()
    defer { hand.close() }
    let stage = try await burst(hand)
    // Without a camera photos are chosen instead.
    try stop(stage, OwnWords.takePhoto.said).press?()
    // What waits for a change is done once it is drawn.
    _ = stage.draw()
    let photos = try #require(first("Photos", stage.draw()))
    photos.choose?([1, 2].map { PhotosPickerItem(data: Picture.png($0)) })
    _ = stage.draw()
    try await wait(hand, 2)
    #expect(first("Photos", stage.draw()) == nil)
    try await hand.go("take-in")
    let press = hand.screen.blocks.compactMap(\.press).first { if case .fileToRead? = $0.need { true } else { false } }
    let file = hand.phone.appending(path: "broken.lwk")
    try Data("nothing".utf8).write(to: file)
    try stop(stage, try #require(press).aloud.label).press?()
    _ = stage.draw()
    try #require(first("Files", stage.draw())).choose?(file)
    for _ in 0..<1000 where hand.screen.notices.isEmpty { try await Task.sleep(for: .milliseconds(20)) }
    #expect(hand.screen.notices.map(\.role) == [.problem])
  }

  @Test func ofSeveralChosenPhotosEachIsTakenReadOrRefused() async throws {
    let hand = try await Hand()
    defer {
      hand.close()
      VNRecognizeTextRequest.printed = { _ in [] }
    }
    _ = try await hand.toLabel()
    let slot = try #require(hand.screen.blocks.compactMap(\.slot).first { $0.printKey != nil })
    // The first takes so long that another screen stands meanwhile; what a label says may stand in several photos.
    let large = Picture.png(1, side: 1500, grain: true)
    VNRecognizeTextRequest.printed = { $0 == large ? ["4-WAY SPLITTER"] : ["5-1000MHz 7dB"] }
    let chosen = [large, Data(), Picture.png(2), Data()].map { PhotosPickerItem(data: $0) }
    await hand.shell.take(chosen: chosen, for: hand.shell.destination(slot.key))
    try await hand.settle()
    // Both that are none are said to be, whatever came after them.
    #expect(hand.shell.said.map(\.kind) == [.noPicture, .noPicture])
    #expect(hand.screen.blocks.compactMap(\.slot).first?.photos.count == 2)
    #expect(hand.says("4-WAY SPLITTER") && hand.says("5-1000MHz 7dB"), "\(hand.said)")
    // Another choice begins with a clean slate.
    await hand.shell.take(chosen: [PhotosPickerItem(data: Picture.png(3))], for: hand.shell.destination(slot.key))
    #expect(hand.shell.said == [])
    try await hand.settle()
  }

  @Test func aDrawingOpensLargeAndTwoTouchesPressNothingInIt() async throws {
    let hand = try await Hand(home: Ways.home)
    defer { hand.close() }
    try await Ways().toOverview(hand)
    try await hand.press("forecast")
    try await hand.press("map")
    let map = hand.screen
    let block = try #require(map.blocks.compactMap(\.figure).first)
    let stage = Stage(FigureView(shell: hand.shell, block: block)) { $0.window = CGSize(width: 358, height: 600) }
    func large() -> Drawn? { first("Sheet", stage.draw()) }
    // Parts of the drawing are buttons, too.
    func open() { button(OwnWords.large.said, stage.draw())?.press?() }
    #expect(large() == nil)
    open()
    let layout = try #require(block.layouts.last)
    let drawn = try #require(hand.shell.drawing(layout))
    func touched() throws -> Drawn { try #require(large().flatMap(deepestTouched)) }
    func width() throws -> CGFloat { try #require(large().flatMap { widths($0).max() }) }
    let usual = try width()
    // Two touches in the middle of a part: the drawing grows, and nothing is pressed.
    let mark = try #require(drawn.marks.first { $0.key != nil })
    let scale = 358.0
    let middle = CGPoint(
      x: (mark.bounds.left + mark.bounds.width / 2) * scale, y: (mark.bounds.top + mark.bounds.height / 2) * scale)
    let twice = try #require(try touched().doubleTap)
    twice()
    #expect(try width() == usual * 2.5)
    #expect(hand.screen == map)
    try touched().doubleTap?()
    #expect(try width() == usual)
    // One presses it, and leads on.
    let once = try #require(try touched().tap)
    once(middle)
    try await hand.settle()
    #expect(hand.screen.place != map.place)
    #expect(large() == nil)
  }

  /// What answers a touch in the middle of a tree: the innermost that answers any, as the system has it.
  private func deepestTouched(_ drawn: Drawn) -> Drawn? {
    for child in drawn.children { if let found = deepestTouched(child) { return found } }
    return drawn.kind != "Button" && (drawn.tap != nil || drawn.doubleTap != nil) ? drawn : nil
  }

  @Test func aPhotoOpensLargeAndGrowsUnderTwoFingersOrOne() async throws {
    let hand = try await Hand()
    defer { hand.close() }
    let stage = try await burst(hand)
    try await hand.photo(1)
    let photo = try #require(hand.screen.blocks.compactMap(\.slot).first?.photos.first)
    let large = Stage(LargePhoto(shell: hand.shell, photo: OpenedPhoto(photo: photo.photo, name: photo.name)) {})
    func view() throws -> Drawn { try #require(first("ScrollView", large.draw())) }
    func width() throws -> CGFloat { try #require(try widths(view()).first) }
    let usual = try width()
    try view().doubleTap?()
    #expect(try width() == usual * 2.5)
    try view().doubleTap?()
    #expect(try width() == usual)
    try view().magnify?(3)
    #expect(try width() == usual * 3)
    // The next begins where the last one ended, and there is an end to it.
    try view().magnify?(2)
    #expect(try width() == usual * 6)
    try view().magnify?(9)
    #expect(try width() == usual * 8)
    try view().magnify?(0.01)
    #expect(try width() == usual)
    _ = stage
  }

  @Test func theLightIsWhatItIsAndNotWhatItWas() {
    let lamp = Lamp()
    let torch = Torch(lamp: lamp)
    torch.toggle()
    #expect(lamp.isTorchActive && torch.isOn)
    // The system puts it out: one touch puts it on again.
    lamp.torchMode = .off
    torch.look()
    #expect(!torch.isOn)
    torch.toggle()
    #expect(lamp.isTorchActive && torch.isOn)
    lamp.torchMode = .off
    torch.toggle()
    #expect(lamp.isTorchActive && torch.isOn)
    // It cannot be had.
    lamp.isTaken = true
    torch.toggle()
    #expect(torch.isOn == lamp.isTorchActive)
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

  @Test func typeGrowsAsFarAsItsPlaceBears() async throws {
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

/// A lamp as the camera has one.
private final class Lamp: AVCaptureDevice {
  var isTaken = false
  override var hasTorch: Bool { true }
  override var isTorchActive: Bool { torchMode == .on }
  override func lockForConfiguration() throws { if isTaken { throw CocoaError(.featureUnsupported) } }
  override func setTorchModeOn(level torchLevel: Float) throws { torchMode = .on }
}
