import Door

extension Block: Identifiable {
  /// Its id on the screen.
  public var id: String {
    switch self {
    case .words(let block): block.id
    case .caution(let block): block.id
    case .choice(let block): block.id
    case .writing(let block): block.id
    case .number(let block): block.id
    case .photoSlot(let block): block.id
    case .photoPart(let block): block.id
    case .label(let block): block.id
    case .reading(let block): block.id
    case .part(let block): block.id
    case .rows(let block): block.id
    case .figure(let block): block.id
    case .howFar(let block): block.id
    case .press(let block): block.id
    case .confirm(let block): block.id
    }
  }

  /// Whether it is to be looked at while something is asked: it stands beside the rest where there is room.
  var isLookedAt: Bool {
    switch self {
    case .figure: true
    case .label(let label): label.photo != nil
    case .photoSlot(let slot): !slot.photos.isEmpty
    default: false
    }
  }
}

/// What stands between the head and the dock, one under the other.
public enum Piece: Identifiable, Equatable, Sendable {
  /// Cautions that stand together, in one box.
  case cautions([CautionBlock])
  /// Any other block.
  case block(Block)

  /// The id of its first block.
  public var id: String {
    switch self {
    case .cautions(let cautions): cautions.first?.id ?? ""
    case .block(let block): block.id
    }
  }

  /// Whether it stands beside the rest where there is room.
  public var isLookedAt: Bool {
    if case .block(let block) = self { block.isLookedAt } else { false }
  }

  /// The pieces of a screen in reading order, without what stands in the dock.
  public static func of(_ screen: Screen, dock: DockPlan) -> [Piece] {
    var pieces: [Piece] = []
    for block in screen.blocks where !dock.has(block) {
      if case .caution(let caution) = block {
        if case .cautions(let before)? = pieces.last {
          pieces[pieces.count - 1] = .cautions(before + [caution])
        } else {
          pieces.append(.cautions([caution]))
        }
      } else {
        pieces.append(.block(block))
      }
    }
    return pieces
  }
}
