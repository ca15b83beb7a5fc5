import ShellCore
import SwiftUI

extension Sign {
  /// Its line, in a box of 24.
  fileprivate var path: Path {
    var path = Path()
    for step in way {
      switch step {
      case .move(let x, let y): path.move(to: CGPoint(x: x, y: y))
      case .line(let x, let y): path.addLine(to: CGPoint(x: x, y: y))
      case .curve(let x1, let y1, let x2, let y2, let x, let y):
        path.addCurve(to: CGPoint(x: x, y: y), control1: CGPoint(x: x1, y: y1), control2: CGPoint(x: x2, y: y2))
      case .close: path.closeSubpath()
      }
    }
    return path
  }
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
