import Door

/// What of a screen stands in its dock: the way on above, what can wait below. As `docs/look.md` says.
public struct DockPlan: Equatable, Sendable {
  /// The answers, where the screen asks one thing and they are few.
  public private(set) var answers: ChoiceBlock?
  /// The way on, and at most one beside it.
  public private(set) var on: [PressBlock] = []
  /// What can wait.
  public private(set) var out: [PressBlock] = []
  private var ids: Set<String> = []

  private static let mostLetters = 20
  private static let mostAnswers = 4
  private static let longAbout = 60

  /// The dock of a screen.
  public init(_ screen: Screen) {
    let blocks = screen.blocks
    if let main = blocks.firstIndex(where: \.isMain) {
      on = [blocks[main]].compactMap(\.press)
      let beside = blocks[(main + 1)...].prefix { $0.press != nil }.compactMap(\.press)
        .filter { $0.weight == .other && $0.need == nil }
      // Several others are a list to read, not a way beside the way on.
      if beside.count <= 1 {
        on += beside.filter { $0.words.count <= Self.mostLetters }
        out += beside.filter { $0.words.count > Self.mostLetters }
      }
    } else {
      answers = Self.answers(blocks)
    }
    out += blocks.compactMap(\.press).filter { $0.weight == .quiet }
    ids = Set((on + out).map(\.id) + [answers?.id].compactMap { $0 })
  }

  /// Whether this block stands in the dock.
  public func has(_ block: Block) -> Bool { ids.contains(block.id) }

  /// The one choice of a screen that asks nothing else, if its answers are few.
  private static func answers(_ blocks: [Block]) -> ChoiceBlock? {
    var choices: [ChoiceBlock] = []
    for block in blocks {
      switch block {
      case .choice(let choice): choices.append(choice)
      // A screen of lists and photos asks several things.
      case .rows, .photoSlot, .writing, .number, .label: return nil
      default: break
      }
    }
    guard let choice = choices.first, choices.count == 1, !choice.several else { return nil }
    let few = choice.options.count <= mostAnswers
    return few && choice.options.allSatisfy { $0.about.count <= longAbout } ? choice : nil
  }
}

extension Screen {
  /// Whether the one choice of the screen leads on by itself: there is no press that would take it.
  public var choiceLeadsOn: Bool { !blocks.contains(where: \.isMain) }

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

  /// Whether it is the main way on.
  public var isMain: Bool { press?.weight == .main }
}
