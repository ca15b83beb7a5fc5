import Door
import Foundation

/// Where something goes that the system brings: a key, on the screen of a place. Keys are alike on many screens.
public struct Destination: Equatable, Sendable {
  /// The key that takes it.
  public let key: String
  /// The place that was shown when it was asked for.
  public let place: String

  public init(key: String, place: String) {
    self.key = key
    self.place = place
  }
}

/// What the user has to choose before a press is done.
public struct Asked: Equatable, Sendable {
  /// What of the system is asked for.
  public enum What: Equatable, Sendable {
    /// A file that somebody sent, of these kinds.
    case file(kinds: [FileKind])
    /// A photo, taken now or chosen; `burst` where one follows another.
    case photo(burst: Bool)
  }

  /// What is asked for.
  public let what: What
  /// Where it goes.
  public let destination: Destination

  /// Whether one photo follows another until somebody says that it is enough.
  var isBurst: Bool { what == .photo(burst: true) }
}

/// A file that the core has written.
public struct Written: Identifiable, Equatable, Sendable {
  /// What comes of it.
  public enum Way: Equatable, Sendable {
    /// It is for somebody else: the share sheet.
    case share
    /// It is for a place that the user names.
    case place
  }

  /// The file, in a folder of the app's own.
  public let file: URL
  /// What comes of it.
  public let way: Way

  /// The file.
  public var id: URL { file }
}
