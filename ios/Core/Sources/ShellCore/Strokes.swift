import Door

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

  /// On and off by turns; empty where the line is whole.
  public static func dash(_ dash: MarkDash, _ weight: MarkWeight) -> [Double] {
    switch (dash, weight) {
    case (.dashed, .thick): [9, 4]
    case (.dashed, _): [8, 5]
    case (.dotted, .cable): [2, 5]
    case (.dotted, _): [3, 2.5]
    case (.long, _): [10, 3]
    case (.solid, _): []
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
}
