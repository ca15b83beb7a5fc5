import Foundation

/// The folders of the app. Everything but the surveys and the token is only on its way, and is cleared away a day later.
public struct Places: Sendable {
  /// The surveys.
  public let home: URL
  /// The model that reads print, as the app carries it; `nil` where nothing is said of one.
  public let printModel: URL?
  private let tokenFile: URL
  private let passing: URL
  private let inbox: URL?
  private let exclude: @Sendable (URL) throws -> Void

  /// Below a folder that the system keeps, and one that it may clear. `inbox` is where the system lays copies of files that
  /// other programs hand over; `printModel` is where the app carries the model; `exclude` keeps a folder out of backups.
  public init(
    kept: URL, passing: URL, inbox: URL? = nil, printModel: URL? = nil,
    exclude: @escaping @Sendable (URL) throws -> Void = Places.excluded
  ) {
    home = kept.appending(path: "surveys")
    self.printModel = printModel
    tokenFile = kept.appending(path: "where")
    self.passing = passing
    self.inbox = inbox
    self.exclude = exclude
  }

  /// Those of this app.
  public static func ofApp() throws -> Places {
    let files = FileManager.default
    let kept = try files.url(
      for: .applicationSupportDirectory, in: .userDomainMask, appropriateFor: nil, create: true)
    let passing = try files.url(
      for: .cachesDirectory, in: .userDomainMask, appropriateFor: nil, create: true)
    let documents = try? files.url(for: .documentDirectory, in: .userDomainMask, appropriateFor: nil, create: false)
    return Places(
      kept: kept, passing: passing, inbox: documents?.appending(path: "Inbox"), printModel: carriedModel)
  }

  /// Where the app carries the model that reads print: a folder of its bundle (`ios/project.yml`), whether it is there or not.
  public static var carriedModel: URL {
    (Bundle.main.resourceURL ?? Bundle.main.bundleURL).appending(path: "print-model")
  }

  /// A survey says what is in somebody's house: nothing of it goes to a cloud, nor to a second phone, which would write under
  /// this one's name. Who wants it elsewhere packs it. Where the system refuses, that is for the log: the surveys come first.
  func keepOutOfBackups() {
    do {
      try FileManager.default.createDirectory(at: home, withIntermediateDirectories: true)
      try exclude(home)
    } catch {
      FileHandle.standardError.write(Data("legwork: not kept out of backups: \(error)\n".utf8))
    }
  }

  /// Keeps a folder, and all that is in it, out of backups.
  @Sendable public static func excluded(_ folder: URL) throws {
    var folder = folder
    var values = URLResourceValues()
    values.isExcludedFromBackup = true
    try folder.setResourceValues(values)
  }

  /// Whether a file is a copy that the system laid there for this app.
  func isInbox(_ file: URL) -> Bool {
    guard let inbox else { return false }
    return file.deletingLastPathComponent().standardizedFileURL.path == inbox.standardizedFileURL.path
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
    for at in ["camera", "in", "out"].map({ passing.appending(path: $0) }) + [inbox].compactMap({ $0 }) {
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
