import Door

/// What of a screen stands in its dock, as the core says: the way on above, what can wait below.
public struct DockPlan: Equatable, Sendable {
  /// The answers, where the screen asks one thing and they are few.
  public let answers: ChoiceBlock?
  /// The way on, and at most one beside it.
  public let on: [PressBlock]
  /// What can wait.
  public let out: [PressBlock]
  private let ids: Set<String>

  /// The dock of a screen.
  public init(_ screen: Screen) {
    let dock = screen.dock
    func press(_ id: String) -> PressBlock? { screen.blocks.lazy.compactMap(\.press).first { $0.id == id } }
    answers =
      screen.blocks.lazy.compactMap { block -> ChoiceBlock? in
        if case .choice(let choice) = block, choice.id == dock.answers { choice } else { nil }
      }.first
    on = dock.on.compactMap(press)
    out = dock.out.compactMap(press)
    ids = Set(dock.on + dock.out + [dock.answers].compactMap { $0 })
  }

  /// Whether this block stands in the dock.
  public func has(_ block: Block) -> Bool { ids.contains(block.id) }
}

extension Screen {
  /// What the screen asks or says first.
  public var lead: WordsBlock? {
    blocks.lazy.compactMap { block -> WordsBlock? in
      guard case .words(let words) = block, words.role == .lead else { return nil }
      return words
    }.first
  }
}

extension Block {
  /// The press, if it is one.
  var press: PressBlock? {
    if case .press(let press) = self { press } else { nil }
  }
}
