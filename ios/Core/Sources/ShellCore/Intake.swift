import Foundation

/// Files on their way into the core and out of it.
struct Intake {
  /// Photos that were given and are not known to be taken in.
  private var given: [URL] = []
  /// A file that the core was asked to write.
  private var awaited: Written?

  mutating func gave(_ photo: URL) { given.append(photo) }

  mutating func awaits(_ file: Written) { awaited = file }

  /// After a deed: once nothing goes on any more, what was given is the core's, and what was asked for is there or not.
  mutating func settle(isWorking: Bool) -> Written? {
    guard !isWorking else { return nil }
    for photo in given { try? FileManager.default.removeItem(at: photo) }
    given = []
    defer { awaited = nil }
    guard let awaited, FileManager.default.fileExists(atPath: awaited.file.path) else { return nil }
    return awaited
  }
}
