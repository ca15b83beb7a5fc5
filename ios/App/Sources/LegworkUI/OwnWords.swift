import Foundation
import ShellCore

/// The few words of the shell itself; everything else that stands on a screen comes from the core.
enum OwnWords: String, CaseIterable {
  case back
  case light
  case lightOn = "light.on"
  case lightOff = "light.off"
  case takePhoto = "take-photo"
  case choosePhoto = "choose-photo"
  case noPicture = "no-picture"
  case fileUnread = "file-unread"
  case noRoom = "no-room"
  case elsewhere
  case photoElsewhere = "photo-elsewhere"
  case fault
  case notBegun = "not-begun"
  case again
  case large
  case close
  case ways

  /// In the language of the system.
  var said: String { Bundle.module.localizedString(forKey: rawValue, value: nil, table: nil) }
}

extension Said {
  /// In words.
  var words: String {
    switch kind {
    case .words(let words): words
    case .notBegun: OwnWords.notBegun.said
    case .fault: OwnWords.fault.said
    case .fileUnread: OwnWords.fileUnread.said
    case .noRoom: OwnWords.noRoom.said
    case .noPicture: OwnWords.noPicture.said
    case .elsewhere: OwnWords.elsewhere.said
    case .photoElsewhere: OwnWords.photoElsewhere.said
    }
  }
}

/// The words of the shell, for whoever checks that each is there.
public enum ShellWords {
  /// Each by its key in the language of the system.
  public static var all: [(key: String, said: String)] { OwnWords.allCases.map { ($0.rawValue, $0.said) } }
}
