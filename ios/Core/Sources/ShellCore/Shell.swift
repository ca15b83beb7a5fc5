@_exported import Door
import Foundation
import Observation

/// The guide behind its door, for what draws it: the screen that stands, what the shell itself has to say, and what it
/// has to ask of the system. Every deed ends in a screen; the core keeps what was answered before the deed returns.
///
/// All of it is on the main actor. The door takes no longer than a touch for any call but ``Door/suspend()``, which is made
/// beside.
@MainActor
@Observable
public final class Shell {
  /// The screen to draw; `nil` until the surveys could be opened.
  public private(set) var screen: Screen?
  /// What the shell itself has to say about the last deed.
  public private(set) var said: [Said] = []
  /// What the shell waits for the user to choose in the system's own sheet.
  public internal(set) var asked: Asked?
  /// A file that is written and can be handed on.
  public internal(set) var written: Written?
  /// What a screen reader has to say of the last screen: the notices that were not there before.
  public private(set) var news: [News] = []
  /// How often an answer was taken; a light touch follows each.
  public private(set) var answers = 0
  /// How often one was refused.
  public private(set) var refusals = 0
  /// Whether something goes on beside the screen.
  public private(set) var isWorking = false
  /// Whether the app is put aside.
  public private(set) var isAside = false

  /// The folders of the app.
  @ObservationIgnored public let places: Places
  @ObservationIgnored private(set) var settings: Settings
  @ObservationIgnored private(set) var door: Door?
  @ObservationIgnored var typed = Typed()
  @ObservationIgnored var intake = Intake()
  @ObservationIgnored var drawings = Drawings()
  @ObservationIgnored private let rest: Duration
  @ObservationIgnored private var resting: Task<Void, Never>?
  @ObservationIgnored private var count = 0

  /// A shell over these folders. Nothing is opened before ``begin()``. `rest` is how long nothing has to be typed until what
  /// is half typed is kept.
  public init(places: Places, settings: Settings, rest: Duration = .seconds(1)) {
    self.places = places
    self.settings = settings
    self.rest = rest
  }

  /// Opens the surveys, where one was before the app ended; or tries it again.
  public func begin() {
    if door == nil {
      places.tidy()
      places.keepOutOfBackups()
    }
    does { try $0.screen() }
  }

  /// Fetches the screen again, as something goes on beside it.
  public func drawAgain() {
    guard !isAside, door != nil else { return }
    does { try $0.screen() }
  }

  /// The system's language or units were changed.
  public func settle(_ settings: Settings) {
    guard settings != self.settings else { return }
    self.settings = settings
    drawings = Drawings()
    guard door != nil else { return }
    does { try $0.settle(settings: settings) }
  }

  /// One call into the core. What goes wrong is said, and the screen stays as it is.
  func does(_ call: (Door) throws -> Screen) {
    do {
      let door = try opened()
      show(try call(door), door)
    } catch DoorError.Trouble(let words) {
      refused(.words(words))
    } catch {
      // A fault of this release: for the log, and said without its particulars.
      FileHandle.standardError.write(Data("legwork: \(error)\n".utf8))
      refused(door == nil ? .notBegun : .fault)
    }
  }

  /// Says something that stands on no screen of the core.
  public func refused(_ kind: Said.Kind) {
    refusals += 1
    // Behind a camera that comes up again and again nobody would see it.
    if asked?.isBurst == true { asked = nil }
    say(kind)
  }

  func say(_ kind: Said.Kind) {
    count += 1
    said.append(Said(id: count, kind: kind))
  }

  /// A deed begins: what was said about the last one is gone.
  func unsay() { said = [] }

  private func opened() throws -> Door {
    if let door { return door }
    let watcher = Watcher { [weak self] in self?.drawAgain() }
    let opened = try Door(settings: settings, token: places.readToken(), watcher: watcher)
    // It is read when the first photo is; what is missing of it, the label's screen says.
    if let model = places.printModel { _ = try opened.readPrintWith(folder: model.path) }
    door = opened
    return opened
  }

  private func show(_ next: Screen, _ door: Door) {
    let known = Set(screen?.notices.map(\.id) ?? [])
    let new = next.notices.filter { !known.contains($0.id) }
    news = new.map { News(words: $0.words, isUrgent: $0.role == .problem) }
    refusals += new.contains { $0.role == .problem } ? 1 : 0
    if let screen, screen.place != next.place {
      typed = Typed()
      answers += next.way == .on ? 1 : 0
    }
    screen = next
    isWorking = (try? door.work()) != nil
    if let file = intake.settle(isWorking: isWorking) { written = file }
    keepToken(door)
    if !goesOn(new) { asked = nil }
    while !isWorking, !isAside, let one = intake.next() { bring(one) }
  }

  /// Whether a burst of photos goes on: not over something that went wrong, and not where there is no place for it any more.
  private func goesOn(_ new: [NoticeShown]) -> Bool {
    guard let asked, asked.isBurst else { return true }
    if new.contains(where: { $0.role == .problem }) { return false }
    guard !isWorking, let screen else { return true }
    return screen.place == asked.destination.place
      && screen.blocks.contains {
        if case .photoSlot(let slot) = $0 { slot.key == asked.destination.key && slot.burst } else { false }
      }
  }

  private func keepToken(_ door: Door) {
    guard let token = try? door.token() else { return }
    places.write(token: token)
  }

  /// Keeps what is half typed as soon as nothing was typed for a while.
  func keepSoon() {
    resting?.cancel()
    resting = Task { [weak self, rest] in
      try? await Task.sleep(for: rest)
      guard !Task.isCancelled, let self, let door = self.door, !self.isAside else { return }
      try? door.keepDrafts()
    }
  }

  /// Puts the guide aside, as the system is about to stop the app: at most `atMost` later this returns, whether the core is
  /// through or not. The core itself waits no longer than two seconds for long work.
  public func putAside(atMost: Duration = .seconds(4)) async {
    guard !isAside, let door else { return }
    isAside = true
    resting?.cancel()
    let places = places
    await inTime(atMost) {
      if let token = try? door.suspend() { places.write(token: token) }
    }
  }

  /// Takes the guide up where it was put aside.
  public func takeUp() {
    guard isAside else { return }
    isAside = false
    does { try $0.resume() }
  }
}
