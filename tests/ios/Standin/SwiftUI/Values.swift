public struct Color: ShapeStyle, View, Primitive, Hashable, Sendable {
  public enum RGBColorSpace: Sendable { case sRGB, sRGBLinear, displayP3 }
  let parts: [Double]
  public nonisolated init(
    _ colorSpace: RGBColorSpace = .sRGB, red: Double, green: Double, blue: Double, opacity: Double = 1
  ) { parts = [red, green, blue, opacity] }
  public static let clear = Color(red: 0, green: 0, blue: 0, opacity: 0)
  public nonisolated func opacity(_ opacity: Double) -> Color {
    Color(red: parts[0], green: parts[1], blue: parts[2], opacity: parts[3] * opacity)
  }
  public typealias Body = Never
  func drawn() -> [Drawn] { [] }
}

public protocol ShapeStyle: Sendable {}

public struct Font: Hashable, Sendable {
  public enum Design: Hashable, Sendable { case `default`, serif, rounded, monospaced }
  public enum TextStyle: CaseIterable, Sendable { case largeTitle, title, headline, body, callout, footnote, caption }
  public struct Weight: Hashable, Sendable {
    let value: Int
    public static let regular = Weight(value: 400)
    public static let semibold = Weight(value: 600)
    public static let bold = Weight(value: 700)
  }
  let size: Double
  let weight: Weight
  let design: Design
  public static func system(size: CGFloat, weight: Font.Weight? = nil, design: Font.Design? = nil) -> Font {
    Font(size: Double(size), weight: weight ?? .regular, design: design ?? .default)
  }
  var said: String {
    "\(Int(size.rounded()))" + (design == .default ? "" : " \(design)") + (weight.value > 400 ? " \(weight.value)" : "")
  }
}

public struct Edge {
  public struct Set: OptionSet, Sendable {
    public let rawValue: Int8
    public init(rawValue: Int8) { self.rawValue = rawValue }
    public static let top = Set(rawValue: 1)
    public static let leading = Set(rawValue: 2)
    public static let bottom = Set(rawValue: 4)
    public static let trailing = Set(rawValue: 8)
    public static let all: Set = [.top, .leading, .bottom, .trailing]
    public static let horizontal: Set = [.leading, .trailing]
    public static let vertical: Set = [.top, .bottom]
  }
}

public enum VerticalEdge: Hashable, Sendable { case top, bottom }

public struct HorizontalAlignment: Sendable {
  public static let leading = Self()
  public static let center = Self()
  public static let trailing = Self()
}

public struct VerticalAlignment: Sendable {
  public static let top = Self()
  public static let center = Self()
  public static let bottom = Self()
  public static let firstTextBaseline = Self()
  public static let lastTextBaseline = Self()
}

public struct Alignment: Sendable {
  public static let center = Self()
  public static let leading = Self()
  public static let top = Self()
  public static let bottom = Self()
  public static let topLeading = Self()
  public static let topTrailing = Self()
}

public struct Axis: Sendable {
  public struct Set: OptionSet, Sendable {
    public let rawValue: Int8
    public init(rawValue: Int8) { self.rawValue = rawValue }
    public static let horizontal = Set(rawValue: 1)
    public static let vertical = Set(rawValue: 2)
  }
  private let isVertical: Bool
  public static let horizontal = Axis(isVertical: false)
  public static let vertical = Axis(isVertical: true)
}

public enum TextAlignment: Sendable { case leading, center, trailing }
public enum ContentMode: Sendable { case fit, fill }
public enum Visibility: Sendable { case automatic, visible, hidden }

public struct UnitPoint: Hashable, Sendable {
  public var x: CGFloat
  public var y: CGFloat
  public init(x: CGFloat, y: CGFloat) {
    self.x = x
    self.y = y
  }
  public static let center = UnitPoint(x: 0.5, y: 0.5)
}

public struct Animation: Equatable, Sendable {
  public static func easeOut(duration: TimeInterval) -> Animation { Animation() }
}

public struct AnyTransition: Sendable {
  public static let opacity = AnyTransition()
}

public struct GridItem: Sendable {
  public enum Size: Sendable {
    case fixed(CGFloat)
    case flexible(minimum: CGFloat = 10, maximum: CGFloat = .infinity)
    case adaptive(minimum: CGFloat, maximum: CGFloat = .infinity)
  }
  public init(_ size: GridItem.Size = .flexible(), spacing: CGFloat? = nil, alignment: Alignment? = nil) {}
}

public struct AccessibilityTraits: SetAlgebra, Sendable {
  var names: Set<String>
  public init() { names = [] }
  init(_ name: String) { names = [name] }
  public static let isButton = Self("button")
  public static let isHeader = Self("heading")
  public static let isSelected = Self("selected")
  public static let isImage = Self("image")
  public static let isSearchField = Self("search")
  public static let isStaticText = Self("text")
  public static let updatesFrequently = Self("progress")
  public static let isToggle = Self("switch")

  public typealias Element = AccessibilityTraits
  public typealias ArrayLiteralElement = AccessibilityTraits
  public func contains(_ member: Self) -> Bool { names.isSuperset(of: member.names) }
  public func union(_ other: Self) -> Self { with(names.union(other.names)) }
  public func intersection(_ other: Self) -> Self { with(names.intersection(other.names)) }
  public func symmetricDifference(_ other: Self) -> Self { with(names.symmetricDifference(other.names)) }
  public mutating func insert(_ new: Self) -> (inserted: Bool, memberAfterInsert: Self) {
    names.formUnion(new.names)
    return (true, new)
  }
  public mutating func remove(_ member: Self) -> Self? {
    names.subtract(member.names)
    return member
  }
  public mutating func update(with new: Self) -> Self? {
    names.formUnion(new.names)
    return new
  }
  public mutating func formUnion(_ other: Self) { names.formUnion(other.names) }
  public mutating func formIntersection(_ other: Self) { names.formIntersection(other.names) }
  public mutating func formSymmetricDifference(_ other: Self) { names.formSymmetricDifference(other.names) }
  private func with(_ names: Set<String>) -> Self {
    var traits = Self()
    traits.names = names
    return traits
  }
  /// Their names, for the tests.
  public var said: [String] { names.sorted() }
}

public struct AccessibilityChildBehavior: Hashable, Sendable {
  public let name: String
  public static let ignore = Self(name: "ignore")
  public static let contain = Self(name: "contain")
  public static let combine = Self(name: "combine")
}

public enum AccessibilityHeadingLevel: UInt, Sendable { case unspecified, h1, h2, h3, h4, h5, h6 }

public struct KeyEquivalent: Sendable {
  public init(_ character: Character) {}
}

public struct EventModifiers: OptionSet, Sendable {
  public let rawValue: Int
  public init(rawValue: Int) { self.rawValue = rawValue }
  public static let command = EventModifiers(rawValue: 16)
}

public struct KeyboardShortcut: Sendable {
  public static let defaultAction = KeyboardShortcut()
  public static let cancelAction = KeyboardShortcut()
}

public struct TextInputAutocapitalization: Sendable {
  public static let never = Self()
  public static let words = Self()
  public static let sentences = Self()
  public static let characters = Self()
}

public struct SubmitLabel: Sendable {
  public static let go = Self()
  public static let `return` = Self()
}

public struct SubmitTriggers: OptionSet, Sendable {
  public let rawValue: Int
  public init(rawValue: Int) { self.rawValue = rawValue }
  public static let text = SubmitTriggers(rawValue: 1)
}

public struct SensoryFeedback: Equatable, Sendable {
  public static let selection = SensoryFeedback()
  public static let error = SensoryFeedback()
}

public protocol CoordinateSpaceProtocol {}
public struct LocalCoordinateSpace: CoordinateSpaceProtocol {}
extension CoordinateSpaceProtocol where Self == LocalCoordinateSpace {
  public static var local: LocalCoordinateSpace { LocalCoordinateSpace() }
}
