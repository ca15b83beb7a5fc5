import Foundation
import Hand
import ShellCore
import Testing

/// Both ways through the guide, with the hands of a person, against the real core.
@MainActor
@Suite struct Journeys {
  @Test func theHomeownerFromNothingToTheReport() async throws {
    let hand = try await Hand()
    defer { hand.close() }
    #expect(hand.screen.name == "surveys" && !hand.screen.back)
    // The app is ended by the system after every single deed, and comes back to the same screen each time.
    hand.isKilledAfterEach = true
    try await hand.press("new")
    try await hand.write("name", "Mill House")
    try await hand.press("make")
    #expect(hand.screen.name == "ask-whose")
    var owner = Homeowner()
    var asked = 0
    while (hand.screen.name.hasPrefix("ask-") || hand.screen.name == "enough") && asked < 60 {
      try await owner.answer(hand)
      asked += 1
    }
    #expect(hand.screen.name == "forecast")
    #expect(asked > 20)
    #expect(hand.cameBack.count > 20, "\(hand.cameBack)")
    // On to the end by the way on alone.
    var way: [String] = []
    while hand.screen.name != "handover" && way.count < 60 {
      way.append(hand.screen.name)
      // Whether all is still fine after a change.
      if let fine = hand.screen.blocks.compactMap(\.choice).first(where: { $0.key == "fine" }),
        !fine.options.contains(where: \.picked)
      {
        try await hand.pick("fine", "yes")
        continue
      }
      guard let main = DockPlan(hand.screen).on.first else { break }
      try await hand.press(main.key)
    }
    #expect(hand.screen.name == "handover", "\(way)")
    let report = try await hand.handOn(as: "report.html")
    let text = try String(contentsOf: report, encoding: .utf8)
    #expect(text.hasPrefix("<!DOCTYPE html>") && text.contains("Mill House"))
    // Nothing of what was on its way is left.
    let left = try FileManager.default.subpathsOfDirectory(atPath: hand.phone.appending(path: "passing").path)
    #expect(left.filter { $0.contains(".") } == [])
  }

  @Test func theTechnicianFromABurstOfPhotosToAFileForSomebodyElse() async throws {
    let hand = try await Hand()
    defer { hand.close() }
    try await hand.press("new")
    try await hand.write("name", "Mill House")
    try await hand.press("make")
    try await hand.go("free-burst")
    for number in 1...4 { try await hand.photo(UInt8(number)) }
    #expect(hand.screen.name == "free-burst" && hand.says("4 photos wait"))
    // What the camera wrote is the core's now.
    let camera = hand.phone.appending(path: "passing/camera").path
    #expect(try FileManager.default.contentsOfDirectory(atPath: camera) == [])
    let photo = try #require(hand.screen.blocks.compactMap(\.slot).first?.photos.first)
    let small = try #require(hand.shell.smallPhoto(photo.photo))
    #expect(try Data(contentsOf: small).starts(with: [0xff, 0xd8, 0xff]))
    #expect(hand.shell.wholePhoto(photo.photo) != nil)
    try await hand.kill()
    #expect(hand.says("4 photos wait"))
    try await hand.press("assign")
    for _ in 0..<2 {
      let open = try #require(hand.screen.blocks.compactMap(\.slot).first?.photos.first { $0.picked == false })
      try await hand.press(try #require(open.key))
    }
    try await hand.press("new:amplifier")
    #expect(hand.says("added A1"))
    let file = try await hand.pack(as: "mill.lwk")
    #expect(try Data(contentsOf: file).starts(with: Data("PK".utf8)))
    let other = try await Hand(language: "en-US", first: .feet)
    defer { other.close() }
    await other.shell.receive(file)
    try await other.settle()
    #expect(other.screen.name == "sent" && other.says("Mill House"))
    try await other.press("take")
    #expect(other.screen.name == "overview")
    try await other.go("free-burst")
    #expect(other.says("2 photos wait"))
  }

  @Test func printThatThePhoneReadIsOffered() async throws {
    let hand = try await Hand()
    defer { hand.close() }
    let here = try await hand.toLabel()
    await hand.shell.take(photo: Picture.png(7), for: here)
    hand.shell.offer(print: "4-WAY SPLITTER 5-1000MHz 7dB", for: here)
    try await hand.settle()
    #expect(hand.says("4-WAY SPLITTER 5-1000MHz 7dB"))
    // Where none is welcome, none is offered.
    try await hand.go("free-burst")
    let before = hand.screen
    hand.shell.offer(print: "4-WAY", for: hand.shell.destination("photo"))
    #expect(hand.screen == before)
    // Nor what was read for another screen.
    hand.shell.offer(print: "4-WAY", for: here)
    #expect(hand.screen == before && hand.shell.said == [])
  }

  private func label(_ hand: Hand) -> LabelBlock? {
    for case .label(let label) in hand.screen.blocks { return label }
    return nil
  }

  /// By the model that the app carries (`tests/rooms/ios` has it made), of a photo that `tests/photos/make.py` made.
  @Test func aLabelIsReadFromItsPhoto() async throws {
    let hand = try await Hand(printModel: URL(filePath: "/src/target/print-model"))
    defer { hand.close() }
    let here = try await hand.toLabel()
    await hand.shell.take(photo: try Data(contentsOf: URL(filePath: "/src/tests/photos/label.jpg")), for: here)
    try await hand.settle()
    let read = try #require(label(hand), "\(hand.said)")
    #expect(read.text.contains("1675") && read.figures.contains { $0.says.contains("1002") }, "\(read)")
    #expect(read.figures.allSatisfy { !$0.taken })
    // What the phone itself reads of it changes nothing of that; and it is read again after the app was ended.
    hand.shell.offer(print: "9-WAY SPLITTER 7-777MHz", for: here)
    #expect(label(hand)?.text == read.text)
    try await hand.kill()
    #expect(label(hand)?.text == read.text)
  }

  @Test func whatIsMissingOfTheModelIsSaidAndThePhonesOwnReadingStandsIn() async throws {
    let hand = try await Hand(printModel: URL(filePath: "/src/target/no-model"))
    defer { hand.close() }
    let here = try await hand.toLabel()
    await hand.shell.take(photo: Picture.png(7), for: here)
    try await hand.settle()
    try await hand.wait(for: "letters.txt")
    #expect(label(hand) == nil)
    hand.shell.offer(print: "4-WAY SPLITTER 5-1000MHz 7dB", for: here)
    try await hand.settle()
    #expect(label(hand)?.text == "4-WAY SPLITTER 5-1000MHz 7dB")
  }

  @Test func twoWithOneHouseDisagreeAndSettleIt() async throws {
    let (ann, bo) = (try await Hand(), try await Hand())
    defer {
      ann.close()
      bo.close()
    }
    for (hand, name) in [(ann, "Ann"), (bo, "Bo")] {
      try await hand.press("device")
      try await hand.write("name", name)
      try await hand.press("out")
    }
    try await ann.press("new")
    try await ann.write("name", "Mill House")
    try await ann.press("make")
    try await plan(ann, "100")
    let first = try await ann.pack(as: "first.lwk")
    try await bo.press("sent")
    try await bo.choose(first)
    #expect(bo.screen.name == "sent" && bo.says("Ann"))
    try await bo.press("take")
    try await plan(ann, "300")
    try await plan(bo, "1000")
    let second = try await bo.pack(as: "second.lwk")
    try await ann.go("take-in")
    try await ann.choose(second)
    #expect(ann.says("1 disagreement"))
    try await ann.press("take")
    try await ann.press("settle")
    let row = try ann.row("The survey, the internet plan")
    #expect(row.says.contains("you said") && row.says.contains("Bo said"))
    try await ann.press(try #require(row.key))
    let mine = try #require(try ann.choice("right").options.first { $0.words.contains("300 Mb/s") })
    try await ann.pick("right", mine.key)
    try await ann.press("settle")
    #expect(ann.says("There is nothing to settle"))
  }

  /// Answers the question about the plan, from wherever one is.
  private func plan(_ hand: Hand, _ down: String) async throws {
    try await hand.go("house")
    try await hand.press(row: "The internet plan")
    try await hand.measure("down", down)
    try await hand.measure("up", "50")
    try await hand.press("next")
  }
}
