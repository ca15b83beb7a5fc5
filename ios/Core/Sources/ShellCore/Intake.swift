import Door
import Foundation

/// What the system brought for the screen of a place.
enum Brought {
  /// A photo, in a file of the app's own.
  case photo(Destination, file: URL)
  /// A file that a press asked for, the same.
  case file(Destination, file: URL)
  /// Print that was read in a photo of a place for photos: under which key it is offered, the screen says once it is.
  case print(Destination, words: String)

  /// The screen for which it is.
  var place: String {
    switch self {
    case .photo(let to, _), .file(let to, _), .print(let to, _): to.place
    }
  }

  /// The file in a folder of the app's own.
  var file: URL? {
    switch self {
    case .photo(_, let file), .file(_, let file): file
    case .print: nil
    }
  }

  var isPhoto: Bool {
    if case .photo = self { true } else { false }
  }

  var isPrint: Bool {
    if case .print = self { true } else { false }
  }
}

/// Files on their way into the core and out of it.
struct Intake {
  /// Photos that were given and are not known to be taken in.
  private var given: [URL] = []
  /// Where they belong: the core lets others for that place wait in line.
  private(set) var line: String?
  /// A file that the core was asked to write.
  private var awaited: Written?
  /// What waits until nothing else goes on.
  private var held: [Brought] = []

  mutating func gave(_ photo: URL, at place: String) {
    given.append(photo)
    line = place
  }

  mutating func awaits(_ file: Written) { awaited = file }

  mutating func hold(_ one: Brought) { held.append(one) }

  /// The next of what waits.
  mutating func next() -> Brought? { held.isEmpty ? nil : held.removeFirst() }

  /// After a deed: once nothing goes on any more, what was given is the core's, and what was asked for is there or not.
  mutating func settle(isWorking: Bool) -> Written? {
    guard !isWorking else { return nil }
    for photo in given { try? FileManager.default.removeItem(at: photo) }
    given = []
    line = nil
    defer { awaited = nil }
    guard let awaited, FileManager.default.fileExists(atPath: awaited.file.path) else { return nil }
    return awaited
  }
}
