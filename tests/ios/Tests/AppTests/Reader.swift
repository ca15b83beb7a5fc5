import SwiftUI

/// One stop of a screen reader.
@MainActor
struct Stop {
  let kind: String
  let label: String
  let value: String
  let hint: String
  let id: String
  let traits: [String]
  let level: Int
  let isEnabled: Bool
  let press: (@MainActor () -> Void)?
  let type: (@MainActor (String) -> Void)?
  let depth: Int

  /// In one line.
  var said: String {
    var words = [String(repeating: "  ", count: depth) + kind]
    if level > 0 { words.append("h\(level)") }
    words += traits.filter { $0 != kind }
    words.append("“\(label)”")
    if !value.isEmpty { words.append("= “\(value)”") }
    if !hint.isEmpty { words.append("(\(hint))") }
    if !isEnabled { words.append("dimmed") }
    return words.joined(separator: " ")
  }
}

/// Reads a tree as VoiceOver does: hidden things not at all, what is one element in one breath, a container's things by their
/// priority and else in the order in which they stand.
@MainActor
struct Reader {
  /// The stops of a tree.
  static func stops(_ drawn: [Drawn]) -> [Stop] { ordered(drawn.flatMap { collect($0, 0, 0) }) }

  private struct Found {
    let priority: Double
    let stops: [Stop]
  }

  private static func ordered(_ found: [Found]) -> [Stop] {
    found.enumerated().sorted { one, other in
      one.element.priority == other.element.priority
        ? one.offset < other.offset : one.element.priority > other.element.priority
    }.flatMap(\.element.stops)
  }

  private static func collect(_ drawn: Drawn, _ depth: Int, _ inherited: Double) -> [Found] {
    guard !drawn.isHidden else { return [] }
    let priority = drawn.priority == 0 ? inherited : drawn.priority
    if let behavior = drawn.behavior {
      switch behavior {
      case .contain:
        let inside = drawn.children.flatMap { collect($0, depth + 1, 0) }
        let head = stop(drawn, "group", drawn.label ?? "", depth)
        return [Found(priority: priority, stops: [head] + ordered(inside))]
      case .combine:
        return [Found(priority: priority, stops: [stop(drawn, "text", drawn.label ?? words(drawn), depth)])]
      default:
        return [Found(priority: priority, stops: [stop(drawn, "element", drawn.label ?? "", depth)])]
      }
    }
    let one = { (kind: String, label: String) in [Found(priority: priority, stops: [stop(drawn, kind, label, depth)])] }
    switch drawn.kind {
    case "Button": return one("button", drawn.label ?? words(drawn))
    case "TextField": return one("field", drawn.label ?? drawn.words)
    case "Text": return drawn.words.isEmpty ? [] : one("text", drawn.label ?? drawn.words)
    case "ProgressView": return one("progress", drawn.label ?? "")
    case "Image": return one("image", drawn.label ?? "")
    case "Canvas", "Shape": return drawn.label.map { one("element", $0) } ?? []
    case "Sheet", "Cover", "Dialog":
      return [Found(priority: priority, stops: ordered(drawn.children.flatMap { collect($0, depth, 0) }))]
    default:
      let found = drawn.children.flatMap { collect($0, depth, priority) }
      // A label on what is no element is lost.
      return drawn.label == nil ? found : one("LOST", drawn.label ?? "") + found
    }
  }

  private static func stop(_ drawn: Drawn, _ kind: String, _ label: String, _ depth: Int) -> Stop {
    let traits = drawn.traits.said
    let role = kind == "element" || kind == "text" ? traits.first { $0 != "selected" } ?? kind : kind
    return Stop(
      kind: role, label: label, value: drawn.value ?? "", hint: drawn.hint ?? "", id: drawn.identifier ?? "",
      traits: traits, level: Int(drawn.level.rawValue), isEnabled: drawn.isEnabled, press: drawn.press,
      type: drawn.type, depth: depth)
  }

  /// All words within.
  private static func words(_ drawn: Drawn) -> String {
    guard !drawn.isHidden else { return "" }
    let own = drawn.kind == "Text" ? [drawn.label ?? drawn.words] : []
    return (own + drawn.children.map { words($0) }).filter { !$0.isEmpty }.joined(separator: ", ")
  }

  /// The tree itself: kinds, words, what matters of their modifiers.
  static func outline(_ drawn: [Drawn], _ depth: Int = 0) -> [String] {
    drawn.flatMap { one -> [String] in
      var line = String(repeating: "  ", count: depth) + one.kind
      if !one.words.isEmpty { line += " “\(one.words)”" }
      if !one.notes.isEmpty { line += " [\(one.notes.joined(separator: ", "))]" }
      if let behavior = one.behavior { line += " <\(behavior.name)>" }
      if one.isHidden { line += " hidden" }
      if let id = one.identifier { line += " #\(id)" }
      return [line] + outline(one.children, depth + 1)
    }
  }
}
