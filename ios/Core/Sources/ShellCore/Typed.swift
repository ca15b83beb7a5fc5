/// What stands in the places to write of this screen, as it was typed. It wins over what the core says until the core says
/// something else than it answered: then the core has changed it.
struct Typed {
  private struct Entry {
    var words: String
    var echoed: String
  }

  private var entries: [String: Entry] = [:]

  /// What was typed, and what the core has there now.
  mutating func keep(_ words: String, echoed: String, for key: String) {
    entries[key] = Entry(words: words, echoed: echoed)
  }

  /// What to show where the core has this.
  func shown(_ text: String, for key: String) -> String {
    guard let entry = entries[key], entry.echoed == text else { return text }
    return entry.words
  }
}
