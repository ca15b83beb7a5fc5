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
    await hand.shell.take(photo: Data("no picture".utf8), for: hand.shell.destination("photo"))
    #expect(hand.shell.said.map(\.kind) == [.noPicture])
    await hand.shell.take(photo: nil, for: hand.shell.destination("photo"))
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
    // Large photos, until one is still being taken in; the app goes away meanwhile.
    let slot = try #require(hand.screen.blocks.compactMap(\.slot).first)
    for number in 10..<50 where !hand.shell.isWorking {
      await hand.shell.take(
        photo: Picture.png(UInt8(number), side: 1500, grain: true), for: hand.shell.destination(slot.key))
    }
    #expect(hand.shell.isWorking)
    await hand.shell.putAside()
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
    // What comes while it is aside waits until it is taken up.
    let count = { hand.screen.blocks.compactMap(\.slot).first?.photos.count ?? 0 }
    let there = count()
    let here = hand.shell.destination(slot.key)
    await hand.shell.putAside()
    await hand.shell.take(photo: Picture.png(9), for: here)
    #expect(hand.screen.place == here.place && count() == there)
    hand.shell.takeUp()
    try await hand.settle()
    #expect(count() == there + 1 && hand.shell.said == [])
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

  @Test(.timeLimit(.minutes(1))) func nothingWaitsForWhatDoesNotEnd() async throws {
    let over = DispatchSemaphore(value: 0)
    await inTime(.milliseconds(1)) { over.wait() }
    // It came back while that still went on: nothing but this lets it end.
    over.signal()
  }

  @Test func aPhotoThatComesLateGoesOnlyWhereItWasTakenFor() async throws {
    let hand = try await Hand()
    defer { hand.close() }
    try await hand.press("new")
    try await hand.write("name", "Mill House")
    try await hand.press("make")
    var places: [Destination] = []
    for _ in 0..<2 {
      try await hand.go("free-parts")
      try await hand.press("add")
      try await hand.pick("kind", "splitter")
      try await hand.press("make")
      if hand.screen.name != "free-part" { try await hand.press(first: "part:") }
      let slot = try #require(hand.screen.blocks.compactMap(\.slot).first, "\(hand.screen.name): \(hand.keys)")
      places.append(hand.shell.destination(slot.key))
    }
    // The key is the same on both: only the place tells them apart.
    #expect(places[0].key == places[1].key && places[0].place != places[1].place)
    let count = { hand.screen.blocks.compactMap(\.slot).first?.photos.count }
    #expect(count() == 0)
    await hand.shell.take(photo: Picture.png(1), for: places[0])
    try await hand.settle()
    #expect(count() == 0)
    #expect(hand.shell.said.map(\.kind) == [.photoElsewhere])
    let camera = hand.phone.appending(path: "passing/camera").path
    #expect(try FileManager.default.contentsOfDirectory(atPath: camera) == [])
    await hand.shell.take(photo: Picture.png(1), for: places[1])
    try await hand.settle()
    #expect(count() == 1 && hand.shell.said == [])
    // The same of a file that was chosen for a press.
    let file = hand.phone.appending(path: "broken.lwk")
    try Data("nothing".utf8).write(to: file)
    await hand.shell.chose(file, for: places[0])
    #expect(hand.shell.said.map(\.kind) == [.elsewhere] && hand.screen.notices == [])
  }

  @Test func aBurstGoesOnUntilSomebodySaysEnoughOrSomethingIsWrong() async throws {
    let hand = try await Hand()
    defer { hand.close() }
    try await hand.press("new")
    try await hand.write("name", "Mill House")
    try await hand.press("make")
    try await hand.go("free-burst")
    let slot = try #require(hand.screen.blocks.compactMap(\.slot).first)
    #expect(slot.burst)
    func begin() { hand.shell.ask(.photo(burst: true), for: slot.key) }
    begin()
    let asked = try #require(hand.shell.asked)
    // Also over a photo that takes so long that another screen stands meanwhile.
    let photos = [Picture.png(1), Picture.png(2, side: 1500, grain: true), Picture.png(3)]
    var stoodAside = false
    for photo in photos {
      await hand.shell.take(photo: photo, for: asked.destination)
      stoodAside = stoodAside || !hand.screen.blocks.contains { $0.slot != nil }
      #expect(hand.shell.asked == asked)
      try await hand.settle()
      #expect(hand.shell.asked == asked)
    }
    #expect(stoodAside)
    // Enough, and nothing brings it up again.
    hand.shell.choseNothing()
    await hand.shell.take(photo: Picture.png(4), for: asked.destination)
    try await hand.settle()
    #expect(hand.shell.asked == nil && hand.says("4 photos wait"))
    // What is wrong is not said behind a camera: neither what the shell says nor what the core does.
    begin()
    await hand.shell.take(photo: nil, for: asked.destination)
    #expect(hand.shell.asked == nil && hand.shell.said.map(\.kind) == [.noPicture])
    begin()
    await hand.shell.take(photo: Picture.png(5).prefix(60), for: asked.destination)
    try await hand.settle()
    #expect(hand.shell.asked == nil && hand.screen.notices.map(\.role) == [.problem])
    // Where one photo is taken at a time there is no burst, though the key may be the same.
    try await hand.go("free-parts")
    try await hand.press("add")
    try await hand.pick("kind", "splitter")
    try await hand.press("make")
    let one = try #require(hand.screen.blocks.compactMap(\.slot).first, "\(hand.screen.name)")
    #expect(!one.burst)
    hand.shell.ask(.photo(burst: true), for: one.key)
    let there = try #require(hand.shell.asked)
    await hand.shell.take(photo: Picture.png(6), for: there.destination)
    try await hand.settle()
    #expect(hand.shell.asked == nil && hand.screen.notices.allSatisfy { $0.role != .problem })
  }

  @Test func whatTheSystemLaidInTheInboxIsLetGoOnceItIsCopied() async throws {
    let phone = FileManager.default.temporaryDirectory.appending(path: "phone-" + UUID().uuidString)
    defer { try? FileManager.default.removeItem(at: phone) }
    let inbox = phone.appending(path: "Documents/Inbox")
    try FileManager.default.createDirectory(at: inbox, withIntermediateDirectories: true)
    let kept = Kept()
    let places = Places(
      kept: phone.appending(path: "kept"), passing: phone.appending(path: "passing"), inbox: inbox,
      exclude: { kept.folders.append($0) })
    let shell = Shell(
      places: places, settings: Settings(home: places.home.path, language: "en", firstLength: .metres))
    shell.begin()
    // Before anything is in it, the folder of the surveys is kept out of every backup, and no other.
    #expect(kept.folders == [places.home])
    while shell.isWorking { try await Task.sleep(for: .milliseconds(20)) }
    let handed = inbox.appending(path: "mill.lwk")
    let theirs = phone.appending(path: "mill.lwk")
    for file in [handed, theirs] {
      try Data("nothing".utf8).write(to: file)
      await shell.receive(file)
    }
    #expect(!FileManager.default.fileExists(atPath: handed.path))
    #expect(FileManager.default.fileExists(atPath: theirs.path))
    // What was left there by a crash goes a day later.
    try Data("nothing".utf8).write(to: handed)
    places.tidy(now: Date().addingTimeInterval(25 * 3600))
    #expect(!FileManager.default.fileExists(atPath: handed.path))
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

/// The folders that were kept out of backups.
private final class Kept: @unchecked Sendable {
  var folders: [URL] = []
}
