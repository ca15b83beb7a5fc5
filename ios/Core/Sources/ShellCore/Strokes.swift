import Door
import Foundation

/// How the line of a mark is drawn, in units of 1/96 inch at the drawing's natural width, as `docs/screens.md` says.
public enum Strokes {
  /// The width of a line.
  public static func width(_ weight: MarkWeight) -> Double {
    switch weight {
    case .absent: 0
    case .thin: 1
    case .plain: 1.5
    case .cable: 2.25
    case .thick: 4
    }
  }

  /// On and off by turns; empty where the line is whole, or drawn in pieces.
  public static func dash(_ dash: MarkDash, _ weight: MarkWeight) -> [Double] {
    switch (dash, weight) {
    case (.dashed, .thick): [9, 4]
    case (.dashed, _): [8, 5]
    case (.dotted, .cable): [2, 5]
    case (.dotted, _): [3, 2.5]
    case (.long, _): [10, 3]
    case (.solid, _), (.struck, _), (.double, _): []
    }
  }

  /// How much of its ink the inside of a mark has.
  public static func share(_ fill: MarkFill) -> Double {
    switch fill {
    case .absent: 0
    case .faint: 0.1
    case .medium: 0.25
    case .solid, .ground: 1
    }
  }

  /// A piece of a straight line.
  public struct Piece: Equatable, Sendable {
    public let from: Spot
    public let to: Spot
  }

  private static let apart = 12.0
  private static let reach = 3.0
  private static let half = 2.0
  private static let most = 1000

  /// The pieces of a line through these spots where no dash can draw it: struck, or double. Else none.
  public static func pieces(_ way: [Spot], _ dash: MarkDash) -> [Piece] {
    let legs = zip(way, way.dropFirst()).map { Piece(from: $0, to: $1) }.filter { length($0) > 0 }
    return switch dash {
    case .struck: legs.flatMap(struck)
    case .double: legs.flatMap(double)
    case .solid, .dashed, .dotted, .long: []
    }
  }

  private static func length(_ leg: Piece) -> Double {
    hypot(leg.to.x - leg.from.x, leg.to.y - leg.from.y)
  }

  /// The line itself, and a slanting stroke across it at every step.
  private static func struck(_ leg: Piece) -> [Piece] {
    let whole = length(leg)
    let along = (leg.to.x - leg.from.x) / whole
    let down = (leg.to.y - leg.from.y) / whole
    let right = (along - down) * reach
    let under = (down + along) * reach
    var pieces = [leg]
    var at = apart / 2
    while at < whole, pieces.count < most {
      let x = leg.from.x + along * at
      let y = leg.from.y + down * at
      pieces.append(Piece(from: Spot(x: x - right, y: y - under), to: Spot(x: x + right, y: y + under)))
      at += apart
    }
    return pieces
  }

  /// Two lines side by side.
  private static func double(_ leg: Piece) -> [Piece] {
    let whole = length(leg)
    let right = -(leg.to.y - leg.from.y) / whole * half
    let under = (leg.to.x - leg.from.x) / whole * half
    func beside(_ spot: Spot, _ by: Double) -> Spot { Spot(x: spot.x + right * by, y: spot.y + under * by) }
    return [1.0, -1.0].map { Piece(from: beside(leg.from, $0), to: beside(leg.to, $0)) }
  }
}
