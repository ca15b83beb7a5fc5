import Door
import Foundation

/// What is done on a screen.
extension Shell {
  /// Presses something that needs nothing.
  public func press(_ key: String) { act(.press(key: key)) }

  /// Touches a place in a photo of which a part is chosen, in ten-thousandths of its width and height.
  public func touch(_ key: String, across: UInt32, down: UInt32) {
    act(.touch(key: key, across: across, down: down))
  }

  /// Presses something; what it needs first is asked for.
  public func press(_ block: PressBlock) {
    guard let need = block.need else { return press(block.key) }
    switch need {
    case .fileToRead(let kinds): ask(.file(kinds: kinds), for: block.key)
    case .photo(let burst): ask(.photo(burst: burst), for: block.key)
    case .fileToWrite(let name, _): write(file: name, for: block.key, way: .place)
    case .fileToShare(let name, _): write(file: name, for: block.key, way: .share)
    }
  }

  /// Chooses an option, or takes it back.
  public func pick(_ option: ChoiceOption, of choice: ChoiceBlock) {
    act(.pick(key: choice.key, picked: picked(choice, touching: option)))
  }

  /// Goes back.
  public func back() { act(.back) }

  /// What stands in a place to write.
  public func text(of block: WritingBlock) -> String { typed.shown(block.text, for: block.key) }

  /// What stands in a place for a number.
  public func text(of block: NumberBlock) -> String { typed.shown(block.text, for: block.key) }

  /// Somebody writes: the whole text as it stands.
  public func write(_ words: String, in block: WritingBlock) {
    guard words != text(of: block) else { return }
    type(.write(key: block.key, words: words), words, block.key)
  }

  /// Somebody types a number.
  public func measure(_ words: String, in block: NumberBlock) {
    guard words != text(of: block) else { return }
    type(.measure(key: block.key, typed: words, unit: block.unit), words, block.key)
  }

  /// Another unit for the number that stands there.
  public func unit(_ unit: UnitOption, in block: NumberBlock) {
    act(.measure(key: block.key, typed: text(of: block), unit: unit.key))
  }

  /// Enter on the keyboard: presses what takes the text, if anything does.
  public func submit(_ key: String?) {
    if let key { press(key) }
  }

  /// Where something goes that is asked for on this screen.
  public func destination(_ key: String) -> Destination { Destination(key: key, place: screen?.place ?? "") }

  /// Print that the device recognised in a photo: offered once the photo is taken in, if the screen still wants it. It counts
  /// for nothing until somebody takes it.
  public func offer(print words: String, for slot: Destination) {
    guard !words.isEmpty else { return }
    bring(.print(slot, words: words))
  }

  /// The key under which recognised print is welcome at this place for photos, if it is.
  public func printKey(of slot: Destination) -> String? {
    guard slot.place == screen?.place else { return nil }
    return screen?.blocks.lazy.compactMap { block -> String? in
      if case .photoSlot(let one) = block, one.key == slot.key { one.printKey } else { nil }
    }.first
  }

  /// A picture of the camera, or one that was chosen, as the bytes of its file. It is written away from the main actor.
  public func take(photo: Data?, for slot: Destination) async {
    unsay()
    await take(another: photo, for: slot)
  }

  /// The next of several that were chosen together: what was said of those before it stays.
  public func take(another photo: Data?, for slot: Destination) async {
    guard let photo, isPicture(photo) else { return refused(.noPicture) }
    do {
      let file = try places.photo()
      try await Task.detached { try photo.write(to: file) }.value
      bring(.photo(slot, file: file))
    } catch {
      refused(.noRoom)
    }
  }

  /// The file that was chosen for a press. It is copied to a place of our own, since what another program gives may be
  /// taken back at any time.
  public func chose(_ file: URL, for press: Destination) async {
    guard let own = await copied(file) else { return }
    bring(.file(press, file: own))
  }

  /// A file that another program handed over, wherever one is.
  public func receive(_ file: URL) async {
    let own = await copied(file)
    // The system laid a copy there for us alone.
    if places.isInbox(file) { try? FileManager.default.removeItem(at: file) }
    guard let own else { return }
    does { try $0.receive(file: own.path) }
  }

  /// Asks the user for something of the system's: for a press, or the camera of a place for photos.
  public func ask(_ what: Asked.What, for key: String) {
    unsay()
    asked = Asked(what: what, destination: destination(key))
  }

  /// The sheet of the system was closed without a choice.
  public func choseNothing() { asked = nil }

  /// The written file was handed on, or is not wanted any more.
  public func handedOn() {
    guard let file = written?.file else { return }
    written = nil
    try? FileManager.default.removeItem(at: file.deletingLastPathComponent())
  }

  private func write(file name: String, for key: String, way: Written.Way) {
    do {
      let file = try places.toGive(name)
      intake.awaits(Written(file: file, way: way))
      act(.file(key: key, file: file.path))
    } catch {
      refused(.noRoom)
    }
  }

  private func copied(_ file: URL) async -> URL? {
    unsay()
    asked = nil
    do {
      let own = try places.received()
      try await Task.detached { try FileManager.default.copyItem(at: file, to: own) }.value
      return own
    } catch {
      let isFull = (error as? CocoaError)?.code == .fileWriteOutOfSpace
      refused(isFull ? .noRoom : .fileUnread)
      return nil
    }
  }

  private func type(_ deed: Deed, _ words: String, _ key: String) {
    act(deed)
    let echoed = screen?.blocks.lazy.compactMap { block -> String? in
      switch block {
      case .writing(let writing) where writing.key == key: writing.text
      case .number(let number) where number.key == key: number.text
      default: nil
      }
    }.first
    if let echoed { typed.keep(words, echoed: echoed, for: key) }
    keepSoon()
  }

  private func act(_ deed: Deed) {
    unsay()
    asked = nil
    does { try $0.act(deed: deed) }
  }

  /// Something of the system's, for the screen of the place where it was asked for. While something goes on it waits; on
  /// another screen nothing is done but saying so.
  func bring(_ one: Brought) {
    let isHere = one.place == screen?.place
    let waitsInCore = isWorking && one.isPhoto && one.place == intake.line
    // Put aside, the core would open the survey for it, and a deed counts for nothing until that is open.
    if isAside || (isWorking && !waitsInCore && (!isHere || one.isPrint)) { return intake.hold(one) }
    guard isHere || waitsInCore else {
      if let file = one.file { try? FileManager.default.removeItem(at: file) }
      return one.isPrint ? () : refused(one.isPhoto ? .photoElsewhere : .elsewhere)
    }
    switch one {
    case .photo(let slot, let file):
      intake.gave(file, at: slot.place)
      does { try $0.act(deed: .photo(key: slot.key, file: file.path)) }
    case .file(let press, let file):
      does { try $0.act(deed: .file(key: press.key, file: file.path)) }
    case .print(let slot, let words):
      guard let key = printKey(of: slot) else { return }
      does { try $0.act(deed: .print(key: key, words: words)) }
    }
  }
}

/// Whether these bytes begin like a picture of the kinds that a photo may be, JPEG (ISO/IEC 10918-1, SOI) or PNG (ISO/IEC
/// 15948, 5.2).
public func isPicture(_ data: Data) -> Bool {
  let jpeg: [UInt8] = [0xff, 0xd8, 0xff]
  let png: [UInt8] = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]
  return data.starts(with: jpeg) || data.starts(with: png)
}
