import Foundation
import ShellCore

/// What a hand could not do.
public struct HandError: Error, CustomStringConvertible {
  public let description: String

  init(_ description: String) { self.description = description }
}

/// One person with a phone: touches only what stands on the screen, and waits as one does.
@MainActor
public final class Hand {
  public let phone: URL
  public private(set) var shell: Shell
  private let settings: Settings
  /// Whether the app is ended and begun anew after every deed.
  public var isKilledAfterEach = false
  /// The names of the screens that came back after the app was ended.
  public private(set) var cameBack: Set<String> = []

  /// Looks at every screen that stands after a deed.
  public var watch: () -> Void = {}

  /// A phone with no survey on it, or with a copy of those of a home folder.
  public init(
    home: URL? = nil, language: String = "en-GB", first: FirstLength = .metres, printModel: URL? = nil
  ) async throws {
    phone = FileManager.default.temporaryDirectory.appending(path: "phone-" + UUID().uuidString)
    try FileManager.default.createDirectory(at: phone.appending(path: "kept"), withIntermediateDirectories: true)
    let places = Places(
      kept: phone.appending(path: "kept"), passing: phone.appending(path: "passing"), printModel: printModel)
    if let home { try FileManager.default.copyItem(at: home, to: places.home) }
    settings = Settings(home: places.home.path, language: language, firstLength: first)
    shell = Shell(places: places, settings: settings, rest: .milliseconds(50))
    shell.begin()
    // The surveys are listed beside the screen where that takes a while.
    try await wait()
  }

  /// The phone is thrown away.
  public func close() {
    try? FileManager.default.removeItem(at: phone)
  }

  /// The screen that stands.
  public var screen: Screen { shell.screen! }

  /// The app is ended by the system without a word, and begun anew.
  public func kill() async throws {
    let before = screen
    let places = shell.places
    shell = Shell(places: places, settings: settings, rest: .milliseconds(50))
    shell.begin()
    // The survey is opened again beside the screen. Where that ends while the screen is drawn, it is drawn once more.
    try await wait()
    for _ in 0..<250 where screen.name == "long-work" && screen.name != before.name {
      try await Task.sleep(for: .milliseconds(20))
    }
    guard screen.place == before.place, screen.name == before.name else {
      throw HandError("killed on \(before.name) (\(before.place)), back on \(screen.name) (\(screen.place))")
    }
    cameBack.insert(screen.name)
  }

  /// Waits until nothing goes on beside the screen.
  public func settle() async throws {
    try await wait()
    if isKilledAfterEach { try await kill() }
    watch()
  }

  private func wait(seconds: Double = 240) async throws {
    let end = Date().addingTimeInterval(seconds)
    while shell.isWorking {
      watch()
      guard Date() < end else { throw HandError("\(screen.name) still goes on: \(said)") }
      try await Task.sleep(for: .milliseconds(20))
    }
  }

  /// To the screen that asks what is printed on a splitter, and where its photo goes.
  public func toLabel() async throws -> Destination {
    try await press("new")
    try await write("name", "Mill House")
    try await press("make")
    try await go("free-parts")
    try await press("add")
    try await pick("kind", "splitter")
    try await press("make")
    try await press(row: "its label")
    let slot = screen.blocks.compactMap(\.slot).first { $0.printKey != nil }
    guard let slot else { throw HandError("\(screen.name) has no place for a photo of a label: \(said)") }
    return shell.destination(slot.key)
  }

  /// Waits until the screen says something that the core tells of by itself.
  public func wait(for words: String, seconds: Double = 240) async throws {
    let end = Date().addingTimeInterval(seconds)
    while !says(words) {
      watch()
      guard Date() < end else { throw HandError("\(screen.name) does not say \(words): \(said)") }
      try await Task.sleep(for: .milliseconds(20))
    }
  }

  /// Everything that the screen says.
  public var said: [String] {
    screen.notices.map(\.words) + [screen.title] + screen.blocks.flatMap(\.spoken)
  }

  public func says(_ words: String) -> Bool { said.contains { $0.contains(words) } }

  /// The keys of what can be pressed.
  public var keys: [String] { screen.blocks.flatMap(\.pressKeys) }

  public func press(_ key: String) async throws {
    guard keys.contains(key) else { throw HandError("\(screen.name) has no \(key): \(keys)") }
    if let block = screen.blocks.compactMap(\.press).first(where: { $0.key == key }) {
      shell.press(block)
    } else {
      shell.press(key)
    }
    try await settle()
  }

  /// Presses the first key that begins so.
  public func press(first prefix: String) async throws {
    guard let key = keys.first(where: { $0.hasPrefix(prefix) }) else {
      throw HandError("\(screen.name) has no \(prefix)…: \(keys)")
    }
    try await press(key)
  }

  /// The row that says this.
  public func row(_ words: String) throws -> RowEntry {
    let rows = screen.blocks.flatMap { block -> [RowEntry] in
      if case .rows(let rows) = block { rows.rows } else { [] }
    }
    guard let row = rows.first(where: { $0.head.contains(words) }) else {
      throw HandError("\(screen.name) has no row \(words): \(rows.map(\.head))")
    }
    return row
  }

  public func press(row words: String) async throws {
    guard let key = try row(words).key else { throw HandError("\(words) does not lead on") }
    try await press(key)
  }

  public func choice(_ key: String) throws -> ChoiceBlock {
    guard let choice = screen.blocks.compactMap(\.choice).first(where: { $0.key == key }) else {
      throw HandError("\(screen.name) has no choice \(key): \(screen.blocks.flatMap(\.pressKeys))")
    }
    return choice
  }

  /// Touches the options that are to be picked and are not, one after the other.
  public func pick(_ key: String, _ options: String...) async throws {
    for option in options {
      let choice = try choice(key)
      guard let touched = choice.options.first(where: { $0.key == option }) else {
        throw HandError("\(key) has no \(option): \(choice.options.map(\.key))")
      }
      if touched.picked && choice.several { continue }
      shell.pick(touched, of: choice)
      try await settle()
    }
  }

  /// Writes letter by letter, as a keyboard does.
  public func write(_ key: String, _ words: String) async throws {
    for end in words.indices {
      guard let block = screen.blocks.compactMap(\.writing).first(where: { $0.key == key }) else {
        throw HandError("\(screen.name) has nothing to write \(key) in")
      }
      shell.write(String(words[...end]), in: block)
    }
    try await settle()
  }

  public func measure(_ key: String, _ typed: String) async throws {
    guard let block = screen.blocks.compactMap(\.number).first(where: { $0.key == key }) else {
      throw HandError("\(screen.name) has no number \(key)")
    }
    shell.measure(typed, in: block)
    try await settle()
  }

  public func back() async throws {
    guard screen.back else { throw HandError("\(screen.name) has no way back") }
    shell.back()
    try await settle()
  }

  /// Takes a photo; another number is another picture.
  public func photo(_ number: UInt8) async throws {
    guard let slot = screen.blocks.compactMap(\.slot).first else {
      throw HandError("\(screen.name) has no place for photos")
    }
    await shell.take(photo: Picture.png(number), for: shell.destination(slot.key))
    try await settle()
  }

  /// From wherever one is in a survey to a row of the overview.
  public func go(_ door: String) async throws {
    for _ in 0..<40 where screen.name != "overview" {
      if keys.contains("overview") { try await press("overview") } else { try await back() }
    }
    if !keys.contains(door) { try await press("more") }
    try await press(door)
  }

  /// Packs the survey, and hands the file on: returns where it then lies.
  public func pack(as name: String) async throws -> URL {
    try await go("pack")
    return try await handOn(as: name)
  }

  /// Presses what writes a file for somebody else, and hands it on.
  public func handOn(as name: String) async throws -> URL {
    guard
      let press = screen.blocks.compactMap(\.press).first(where: {
        if case .fileToShare? = $0.need { true } else { false }
      })
    else { throw HandError("\(screen.name) writes no file: \(keys)") }
    let killed = isKilledAfterEach
    isKilledAfterEach = false
    try await self.press(press.key)
    isKilledAfterEach = killed
    guard let written = shell.written else { throw HandError("nothing was written: \(said)") }
    let handed = phone.appending(path: name)
    try? FileManager.default.removeItem(at: handed)
    try FileManager.default.copyItem(at: written.file, to: handed)
    shell.handedOn()
    guard !FileManager.default.fileExists(atPath: written.file.path) else {
      throw HandError("what was handed on still lies at \(written.file.path)")
    }
    return handed
  }

  /// Chooses a file for the press that asks for one.
  public func choose(_ file: URL) async throws {
    guard
      let press = screen.blocks.compactMap(\.press).first(where: {
        if case .fileToRead? = $0.need { true } else { false }
      })
    else { throw HandError("\(screen.name) asks for no file: \(keys)") }
    shell.press(press)
    guard let asked = shell.asked, case .file = asked.what else { throw HandError("no file was asked for") }
    await shell.chose(file, for: asked.destination)
    try await settle()
  }
}
