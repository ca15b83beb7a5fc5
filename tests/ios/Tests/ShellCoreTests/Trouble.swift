import Foundation
import Hand
import ShellCore
import Testing

/// What goes wrong, and what comes in between.
@MainActor
@Suite struct Trouble {
  @Test func aFileThatIsNoneIsANoticeAndIsReadOut() async throws {
    let hand = try await Hand()
    defer { hand.close() }
    let file = hand.phone.appending(path: "broken.lwk")
    try Data("PK\u{3}\u{4} and nothing else".utf8).write(to: file)
    let refusals = hand.shell.refusals
    await hand.shell.receive(file)
    try await hand.settle()
    #expect(hand.screen.notices.map(\.role) == [.problem])
    #expect(hand.shell.news.map(\.words) == hand.screen.notices.map(\.words))
    #expect(hand.shell.news.allSatisfy { $0.isUrgent })
    #expect(hand.shell.refusals == refusals + 1)
    // Drawn again, the same notice is not read out a second time.
    hand.shell.drawAgain()
    #expect(hand.shell.news == [])
  }

  @Test func whatTheShellCannotDoItSays() async throws {
    let hand = try await Hand()
    defer { hand.close() }
    await hand.shell.receive(hand.phone.appending(path: "not-there.lwk"))
    #expect(hand.shell.said.map(\.kind) == [.fileUnread])
    await hand.shell.take(photo: Data("no picture".utf8), for: "photo")
    #expect(hand.shell.said.map(\.kind) == [.noPicture])
    await hand.shell.take(photo: nil, for: "photo")
    #expect(hand.shell.said.map(\.kind) == [.noPicture])
    // The next deed begins with a clean slate.
    try await hand.press("new")
    #expect(hand.shell.said == [])
    #expect(hand.shell.smallPhoto("no such photo") == nil)
  }

  @Test func surveysThatCannotBeOpenedAreSaidAndTriedAgain() async throws {
    let phone = FileManager.default.temporaryDirectory.appending(path: "phone-" + UUID().uuidString)
    defer { try? FileManager.default.removeItem(at: phone) }
    let places = Places(kept: phone.appending(path: "kept"), passing: phone.appending(path: "passing"))
    try FileManager.default.createDirectory(at: phone.appending(path: "kept"), withIntermediateDirectories: true)
    // A file stands where the folder should be.
    try Data().write(to: places.home)
    let shell = Shell(
      places: places, settings: Settings(home: places.home.path, language: "en", firstLength: .metres))
    shell.begin()
    #expect(shell.screen == nil)
    guard case .words(let words)? = shell.said.last?.kind else {
      Issue.record("nothing said: \(shell.said)")
      return
    }
    #expect(!words.isEmpty && !words.contains(phone.path))
    try FileManager.default.removeItem(at: places.home)
    shell.begin()
    while shell.isWorking { try await Task.sleep(for: .milliseconds(20)) }
    #expect(shell.screen?.name == "surveys")
  }

  @Test func putAsideInTheMiddleOfLongWorkAndTakenUpAgain() async throws {
    let hand = try await Hand()
    defer { hand.close() }
    try await hand.press("new")
    try await hand.write("name", "Mill House")
    try await hand.press("make")
    try await hand.go("free-burst")
    // Large photos, so that packing them takes a while.
    let slot = try #require(hand.screen.blocks.compactMap(\.slot).first)
    for number in 1...3 {
      await hand.shell.take(photo: Picture.png(UInt8(number), side: 1500, grain: true), for: slot.key)
    }
    // One is taken in while the others wait in line; the app goes away meanwhile.
    #expect(hand.shell.isWorking)
    let begun = Date()
    await hand.shell.putAside()
    // Four seconds, and what a machine adds that does other things too.
    #expect(Date().timeIntervalSince(begun) < 15)
    #expect(hand.shell.isAside)
    let token = try String(contentsOf: hand.phone.appending(path: "kept/where"), encoding: .utf8)
    #expect(!token.isEmpty)
    // What the core tells meanwhile draws nothing.
    let before = hand.screen
    hand.shell.drawAgain()
    #expect(hand.screen == before)
    hand.shell.takeUp()
    try await hand.settle()
    #expect(!hand.shell.isAside && hand.screen.name == "free-burst")
    // Put aside, and then ended by the system: back on the same screen.
    await hand.shell.putAside()
    try await hand.kill()
    #expect(hand.screen.name == "free-burst")
  }

  @Test func anotherLanguageOfTheSystemIsAnotherScreenAtOnce() async throws {
    let hand = try await Hand()
    defer { hand.close() }
    let before = hand.screen
    #expect(!before.rightToLeft)
    let home = hand.shell.places.home.path
    hand.shell.settle(Settings(home: home, language: "ar-XB", firstLength: .feet))
    #expect(hand.screen.rightToLeft && hand.screen.place == before.place && hand.screen.title != before.title)
    // The same again changes nothing.
    let after = hand.screen
    hand.shell.settle(Settings(home: home, language: "ar-XB", firstLength: .feet))
    #expect(hand.screen == after)
  }

  @Test func nothingWaitsLongerThanIsAllowed() async throws {
    let begun = Date()
    await inTime(.milliseconds(100)) { Thread.sleep(forTimeInterval: 60) }
    #expect(Date().timeIntervalSince(begun) < 30)
  }

  @Test func whatIsHalfTypedIsKeptAndComesBack() async throws {
    let hand = try await Hand()
    defer { hand.close() }
    try await hand.press("new")
    try await hand.write("name", "Mill Hou")
    try await Task.sleep(for: .milliseconds(300))
    try await hand.kill()
    let writing = try #require(hand.screen.blocks.compactMap(\.writing).first)
    #expect(hand.shell.text(of: writing) == "Mill Hou")
  }
}
