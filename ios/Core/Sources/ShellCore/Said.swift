/// What the shell itself has to say; the words stand in the app, but for those of the core.
public struct Said: Identifiable, Equatable, Sendable {
  /// What is said.
  public enum Kind: Equatable, Sendable {
    /// Words of the core, as they are.
    case words(String)
    /// The surveys cannot be opened.
    case notBegun
    /// Something went wrong inside the program.
    case fault
    /// A file could not be read.
    case fileUnread
    /// There is too little room for it.
    case noRoom
    /// The camera gave no picture, or what was chosen is none.
    case noPicture
    /// What the system brought belongs to a screen that is not there any more.
    case elsewhere
    /// The same of a photo: it is not kept.
    case photoElsewhere
  }

  /// Another one each time that something is said.
  public let id: Int
  /// What is said.
  public let kind: Kind
}

/// What a screen reader says of its own accord.
public struct News: Equatable, Sendable {
  /// The words.
  public let words: String
  /// Whether it is said at once, whatever was being said.
  public let isUrgent: Bool
}
