import ShellCore
import SwiftUI

/// A small drawn sign, in a box of 24. It only repeats what a word beside it says, so it is never read out.
enum Sign {
  case back, on, care, box, boxTicked, tick, cross, doubt, flag, pen, camera, file

  /// Whether it points along the line of reading, and turns with it.
  var turns: Bool { self == .back || self == .on }

  var path: Path {
    var path = Path()
    switch self {
    case .back: path.addLines([p(15, 4), p(7, 12), p(15, 20)])
    case .on: path.addLines([p(9, 5), p(16, 12), p(9, 19)])
    case .care:
      path.addLines([p(12, 2.8), p(22, 20.5), p(2, 20.5)])
      path.closeSubpath()
      path.addLines([p(12, 9), p(12, 15)])
      path.addLines([p(12, 17.2), p(12, 18.2)])
    case .box: path.addRect(CGRect(x: 3.5, y: 3.5, width: 17, height: 17))
    case .boxTicked:
      path.addRect(CGRect(x: 3.5, y: 3.5, width: 17, height: 17))
      path.addLines([p(7.5, 12), p(10.7, 15.5), p(16.7, 8)])
    case .tick: path.addLines([p(4, 12.5), p(9.5, 18), p(20, 6)])
    case .cross:
      path.addLines([p(5, 5), p(19, 19)])
      path.addLines([p(19, 5), p(5, 19)])
    case .doubt:
      path.move(to: p(8.3, 9))
      path.addQuadCurve(to: p(12, 5.2), control: p(8.3, 5.2))
      path.addQuadCurve(to: p(13.9, 12.3), control: p(18, 6.5))
      path.addQuadCurve(to: p(12, 15.3), control: p(12, 13.5))
      path.addLines([p(12, 18.4), p(12, 19.6)])
    case .flag: path.addLines([p(6, 21), p(6, 3), p(18, 7.5), p(6, 12)])
    case .pen:
      path.addLines([p(4, 20), p(5, 16), p(16, 5), p(19, 8), p(8, 19)])
      path.closeSubpath()
    case .camera:
      path.addRect(CGRect(x: 2.5, y: 7, width: 19, height: 13))
      path.addEllipse(in: CGRect(x: 8, y: 9.5, width: 8, height: 8))
      path.addLines([p(8, 7), p(9.5, 4), p(14.5, 4), p(16, 7)])
    case .file:
      path.addLines([p(14, 2.5), p(6, 2.5), p(6, 21.5), p(18.5, 21.5), p(18.5, 7), p(14, 2.5), p(14, 7), p(18.5, 7)])
    }
    return path
  }

  private func p(_ x: CGFloat, _ y: CGFloat) -> CGPoint { CGPoint(x: x, y: y) }
}

/// A sign as it is drawn.
struct SignView: View {
  let sign: Sign
  let ink: Color
  @ScaledMetric(relativeTo: .body) private var side: CGFloat = 22

  init(_ sign: Sign, _ ink: Color) {
    self.sign = sign
    self.ink = ink
  }

  var body: some View {
    SignShape(sign: sign)
      .stroke(ink, style: StrokeStyle(lineWidth: Look.lineFine * 1.2, lineCap: .square, lineJoin: .miter))
      .frame(width: side, height: side)
      .flipsForRightToLeftLayoutDirection(sign.turns)
      .accessibilityHidden(true)
  }
}

private struct SignShape: Shape {
  let sign: Sign

  nonisolated func path(in rect: CGRect) -> Path {
    let scale = min(rect.width, rect.height) / 24
    return sign.path.applying(CGAffineTransform(scaleX: scale, y: scale))
  }
}
