import Door
import Foundation

extension Settings {
  /// What this system says of its user: the language that is preferred, and the units of the region.
  public static func ofSystem(
    home: URL, languages: [String] = Locale.preferredLanguages, locale: Locale = .current
  ) -> Settings {
    let language = languages.first ?? locale.identifier(.bcp47)
    // Of the three systems only that of the United States has feet first; in the United Kingdom rooms are measured in metres.
    let first: FirstLength = locale.measurementSystem == .us ? .feet : .metres
    return Settings(home: home.path, language: language, firstLength: first)
  }
}
