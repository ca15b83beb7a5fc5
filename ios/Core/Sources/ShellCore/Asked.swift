import Door
import Foundation

/// What the user has to choose before a press is done.
public enum Asked: Equatable, Sendable {
  /// A file that somebody sent, of these kinds.
  case file(key: String, kinds: [FileKind])
  /// A photo, taken now or chosen; `burst` where one follows another.
  case photo(key: String, burst: Bool)
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
