import Foundation

/// The folders of the app. Everything but the surveys and the token is only on its way, and is cleared away a day later.
public struct Places: Sendable {
  /// The surveys.
  public let home: URL
  private let tokenFile: URL
  private let passing: URL

  /// Below a folder that the system keeps, and one that it may clear.
  public init(kept: URL, passing: URL) {
    home = kept.appending(path: "surveys")
    tokenFile = kept.appending(path: "where")
    self.passing = passing
  }

  /// Those of this app.
  public static func ofApp() throws -> Places {
    let files = FileManager.default
    let kept = try files.url(
      for: .applicationSupportDirectory, in: .userDomainMask, appropriateFor: nil, create: true)
    let passing = try files.url(
      for: .cachesDirectory, in: .userDomainMask, appropriateFor: nil, create: true)
    return Places(kept: kept, passing: passing)
  }

  /// Where a picture of the camera goes.
  public func photo() throws -> URL { try passingFile("camera", UUID().uuidString + ".jpg") }

  /// Where a file goes that another program gave.
  public func received() throws -> URL { try passingFile("in", UUID().uuidString) }

  /// Where a file is written for somebody else, under its own name.
  public func toGive(_ name: String) throws -> URL {
    let plain = name.split(whereSeparator: { $0 == "/" || $0 == "\\" }).last.map(String.init) ?? ""
    let own = String(plain.drop { $0 == "." || $0 == " " })
    return try passingFile("out/" + UUID().uuidString, own.isEmpty ? "file" : own)
  }

  /// Clears away what is older than a day.
  public func tidy(now: Date = Date()) {
    let files = FileManager.default
    for folder in ["camera", "in", "out"] {
      let at = passing.appending(path: folder)
      for name in (try? files.contentsOfDirectory(atPath: at.path)) ?? [] {
        let file = at.appending(path: name)
        let made = try? files.attributesOfItem(atPath: file.path)[.modificationDate] as? Date
        if let made, now.timeIntervalSince(made) > 24 * 3600 { try? files.removeItem(at: file) }
      }
    }
  }

  /// The word for where one was; `nil` the first time.
  func readToken() -> String? { try? String(contentsOf: tokenFile, encoding: .utf8) }

  /// Keeps the word for where one is: whole or not at all. Without it one begins at the list of surveys, so nothing is said
  /// where it cannot be written.
  func write(token: String) {
    try? FileManager.default.createDirectory(at: home, withIntermediateDirectories: true)
    try? Data(token.utf8).write(to: tokenFile, options: .atomic)
  }

  private func passingFile(_ folder: String, _ name: String) throws -> URL {
    let at = passing.appending(path: folder)
    try FileManager.default.createDirectory(at: at, withIntermediateDirectories: true)
    return at.appending(path: name)
  }
}
