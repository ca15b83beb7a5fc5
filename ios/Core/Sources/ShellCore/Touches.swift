import Door

/// Where something of a drawing can be touched, or is read out. In the drawing's unit box: of its width, both axes alike.
public struct MarkBounds: Equatable, Sendable {
  public let left: Double
  public let top: Double
  public let width: Double
  public let height: Double
}

/// One thing of a drawing that a screen reader stops at.
public struct MarkStop: Identifiable, Equatable, Sendable {
  /// Its place among the marks.
  public let id: Int
  /// What is said of it.
  public let aloud: Aloud
  /// What a touch presses.
  public let key: String?
  /// Where it is.
  public let bounds: MarkBounds
}

extension FigureMark {
  /// What it covers.
  public var bounds: MarkBounds {
    switch shape {
    case .stroke(let from, let to): around([from, to])
    case .path(let spots, _): around(spots)
    case .strokes(let lines): around(lines.flatMap { [$0.from, $0.to] })
    case .frame(let corner, let width, let height, _):
      MarkBounds(left: corner.x, top: corner.y, width: width, height: height)
    case .lettering(let at, let words, let size, let anchor, _, _): lettered(at, words, size, anchor)
    }
  }

  private func around(_ spots: [Spot]) -> MarkBounds {
    let (left, right) = (spots.map(\.x).min() ?? 0, spots.map(\.x).max() ?? 0)
    let (top, bottom) = (spots.map(\.y).min() ?? 0, spots.map(\.y).max() ?? 0)
    return MarkBounds(left: left, top: top, width: right - left, height: bottom - top)
  }

  /// Type is about half as wide as it is high; it stands on its baseline.
  private func lettered(_ at: Spot, _ words: String, _ size: Double, _ anchor: MarkAnchor) -> MarkBounds {
    let width = Double(words.count) * size * 0.55
    let before: Double =
      switch anchor {
      case .start: 0
      case .middle: width / 2
      case .end: width
      }
    return MarkBounds(left: at.x - before, top: at.y - size, width: width, height: size * 1.3)
  }
}

extension FigureDrawn {
  /// What a screen reader stops at, in the order of the marks: one mark of each thing.
  public var stops: [MarkStop] {
    marks.enumerated().compactMap { place, mark in
      guard !mark.repeats, !mark.aloud.label.isEmpty else { return nil }
      return MarkStop(id: place, aloud: mark.aloud, key: mark.key, bounds: mark.bounds)
    }
  }

  /// What a touch at this spot presses: the uppermost mark there that has a key, or the nearest one within reach. Both in
  /// the unit box.
  public func key(at spot: Spot, reach: Double) -> String? {
    let open = marks.filter { $0.key != nil }
    if let hit = open.last(where: { $0.bounds.distance(to: spot) == 0 }) { return hit.key }
    let near = open.map { ($0.key, $0.bounds.distance(to: spot)) }.filter { $0.1 <= reach }
    return near.min { $0.1 < $1.1 }?.0
  }
}

extension MarkBounds {
  /// How far a spot lies outside; 0 inside.
  func distance(to spot: Spot) -> Double {
    let across = max(left - spot.x, spot.x - left - width, 0)
    let down = max(top - spot.y, spot.y - top - height, 0)
    return (across * across + down * down).squareRoot()
  }
}
