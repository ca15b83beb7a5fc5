import ShellCore

/// A homeowner in an invented house of three outlets: cable TV and internet come in from the street, no entry filter, one
/// splitter behind the ground block, outlets in the living room, the office and the bedroom; modem and router in the office.
@MainActor
public struct Homeowner {
  /// The rooms that no output leads to yet.
  private var rooms = ["bedroom", "office", "living"]

  public init() {}

  /// Does what the screen of a question asks for.
  public mutating func answer(_ hand: Hand) async throws {
    switch hand.screen.name {
    case "ask-whose": try await hand.pick("whose", "own")
    case "ask-uses": try await marks(hand, "uses", "cable_tv", "cable_internet")
    case "ask-modem-age": try await hand.pick("modem", "31")
    case "ask-depends": try await marks(hand, "depends", "nothing")
    case "ask-plan":
      try await hand.measure("down", "1 Gb/s")
      try await hand.measure("up", "50")
      try await hand.press("next")
    case "ask-rooms":
      for room in ["living", "office", "bedroom"] { try await hand.pick("rooms", room) }
      try await hand.pick("wish", "fast")
      try await hand.press("next")
    case "ask-ways-in": try await marks(hand, "ways", "cable")
    case "ask-joined": try await hand.pick("joined", "connected")
    case "ask-ground-block": try await hand.pick("seen", "yes")
    case "ask-entry-filter": try await hand.pick("seen", "no")
    case "ask-label":
      try await hand.write("text", "3-WAY SPLITTER 5-1000MHz 5.5dB")
      try await hand.press("next")
    case "ask-label-read": try await hand.press("next")
    case "ask-legs":
      try await hand.measure("legs", "3")
      try await hand.press("next")
    case "ask-leads-to": try await hand.pick("leads", "splitter")
    case "ask-outputs":
      for output in 1...3 { if let room = rooms.popLast() { try await pick(hand, "port:\(output)", room) } }
      try await hand.press("next")
    case "ask-plugged":
      let isOffice = hand.screen.title.lowercased().contains("office")
      try await marks(hand, "plugged", isOffice ? "modem" : "tv")
    case "ask-more-outlets": try await marks(hand, "more", "no")
    case "ask-connectors": try await hand.pick("connectors", "good")
    case "ask-cable":
      try await hand.pick("series", "six")
      try await hand.measure("length", "12.5")
      try await hand.pick("known", "paced")
      try await hand.press("next")
    case "ask-adapters": try await hand.pick("adapters", "none")
    case "ask-router-at": try await pick(hand, "outlet", "office")
    case "ask-router-speaks": try await hand.pick("speaks", "no")
    case "ask-ports": try await hand.pick("behind-rate", "1g")
    case "enough": try await hand.press("next")
    case let other: throw HandError("no answer to \(other)")
    }
  }

  private func marks(_ hand: Hand, _ key: String, _ options: String...) async throws {
    for option in options { try await hand.pick(key, option) }
    if hand.keys.contains("next") { try await hand.press("next") }
  }

  /// Picks the option that speaks of this room.
  private func pick(_ hand: Hand, _ key: String, _ room: String) async throws {
    let options = try hand.choice(key).options
    guard let option = options.first(where: { $0.words.lowercased().contains(room) }) else {
      throw HandError("no \(room) among \(options.map(\.words))")
    }
    try await hand.pick(key, option.key)
  }
}
