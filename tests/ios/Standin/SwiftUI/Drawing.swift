public struct CGAffineTransform: Sendable {
  let x: CGFloat
  let y: CGFloat
  public init(scaleX sx: CGFloat, y sy: CGFloat) {
    x = sx
    y = sy
  }
}

public enum RoundedCornerStyle: Sendable { case circular, continuous }

public struct Path: Equatable, Sendable {
  var points: [CGPoint] = []
  public init() {}
  public init(_ rect: CGRect) { addRect(rect) }
  public init(roundedRect rect: CGRect, cornerRadius: CGFloat, style: RoundedCornerStyle = .continuous) {
    addRect(rect)
  }
  public mutating func move(to end: CGPoint) { points.append(end) }
  public mutating func addLine(to end: CGPoint) { points.append(end) }
  public mutating func addLines(_ lines: [CGPoint]) { points += lines }
  public mutating func addRect(_ rect: CGRect) {
    points += [rect.origin, CGPoint(x: rect.maxX, y: rect.maxY)]
  }
  public mutating func addCurve(to end: CGPoint, control1: CGPoint, control2: CGPoint) {
    points += [control1, control2, end]
  }
  public mutating func closeSubpath() {}
  public func applying(_ transform: CGAffineTransform) -> Path {
    var path = Path()
    path.points = points.map { CGPoint(x: $0.x * transform.x, y: $0.y * transform.y) }
    return path
  }
}

public struct StrokeStyle: Equatable, Sendable {
  public enum Cap: Sendable { case butt, round, square }
  public init(
    lineWidth: CGFloat = 1, lineCap: CGLineCap = .butt, lineJoin: CGLineJoin = .miter, miterLimit: CGFloat = 10,
    dash: [CGFloat] = [CGFloat](), dashPhase: CGFloat = 0
  ) {}
}

public enum CGLineCap: Sendable { case butt, round, square }
public enum CGLineJoin: Sendable { case miter, round, bevel }

public struct FillStyle: Equatable, Sendable {
  public init(eoFill: Bool = false, antialiased: Bool = true) {}
}

public protocol Shape: View, Sendable where Body == Never {
  nonisolated func path(in rect: CGRect) -> Path
}

struct Shaped: View, Primitive {
  let kind: String
  typealias Body = Never
  func drawn() -> [Drawn] { [Drawn(kind)] }
}

extension Shape {
  public func stroke<S: ShapeStyle>(_ content: S, style: StrokeStyle) -> some View { Shaped(kind: "Shape") }
  public func fill<S: ShapeStyle>(_ content: S, style: FillStyle = FillStyle()) -> some View { Shaped(kind: "Shape") }
}

public protocol InsettableShape: Shape {}

extension InsettableShape {
  public func strokeBorder<S: ShapeStyle>(
    _ content: S, style: StrokeStyle, antialiased: Bool = true
  ) -> some View { Shaped(kind: "Shape") }
  public func strokeBorder<S: ShapeStyle>(
    _ content: S, lineWidth: CGFloat = 1, antialiased: Bool = true
  ) -> some View { Shaped(kind: "Shape") }
}

public struct Rectangle: InsettableShape, Primitive {
  public nonisolated init() {}
  public nonisolated func path(in rect: CGRect) -> Path { Path(rect) }
  func drawn() -> [Drawn] { [Drawn("Shape")] }
}

public struct RoundedRectangle: InsettableShape, Primitive {
  public nonisolated init(cornerRadius: CGFloat, style: RoundedCornerStyle = .continuous) {}
  public nonisolated func path(in rect: CGRect) -> Path { Path(rect) }
  func drawn() -> [Drawn] { [Drawn("Shape")] }
}

public struct Circle: InsettableShape, Primitive {
  public nonisolated init() {}
  public nonisolated func path(in rect: CGRect) -> Path { Path(rect) }
  func drawn() -> [Drawn] { [Drawn("Shape")] }
}

public enum ColorRenderingMode: Sendable { case nonLinear, linear, extendedLinear }

/// Counts what is drawn.
public struct GraphicsContext {
  final class Counted {
    var strokes = 0
    var fills = 0
    var texts: [String] = []
  }
  let counted = Counted()

  public struct Shading: Sendable {
    public static func color(_ color: Color) -> Shading { Shading() }
  }

  public struct ResolvedText {
    let words: String
    /// Type is about half as wide as high.
    public func measure(in size: CGSize) -> CGSize { CGSize(width: CGFloat(words.count) * 7, height: 16) }
    public func firstBaseline(in size: CGSize) -> CGFloat { 12 }
  }

  public func resolve(_ text: Text) -> ResolvedText { ResolvedText(words: text.words) }
  public func draw(_ text: ResolvedText, at point: CGPoint, anchor: UnitPoint = .center) {
    counted.texts.append(text.words)
  }
  public func stroke(_ path: Path, with shading: Shading, style: StrokeStyle) {
    counted.strokes += path.points.count > 1 ? 1 : 0
  }
  public func fill(_ path: Path, with shading: Shading, style: FillStyle = FillStyle()) {
    counted.fills += path.points.count > 1 ? 1 : 0
  }
}

public struct Canvas: View, Primitive {
  let renderer: (inout GraphicsContext, CGSize) -> Void
  public init(
    opaque: Bool = false, colorMode: ColorRenderingMode = .nonLinear, rendersAsynchronously: Bool = false,
    renderer: @escaping (inout GraphicsContext, CGSize) -> Void
  ) { self.renderer = renderer }
  public typealias Body = Never
  func drawn() -> [Drawn] {
    var context = GraphicsContext()
    renderer(&context, CGSize(width: 358, height: 358))
    let counted = context.counted
    let drawn = Drawn("Canvas")
    drawn.notes.append("\(counted.strokes) strokes, \(counted.fills) fills, \(counted.texts.count) words")
    return [drawn]
  }
}
