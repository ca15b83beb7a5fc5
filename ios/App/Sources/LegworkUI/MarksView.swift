import ShellCore
import SwiftUI

/// The marks of a drawing, later ones over earlier ones. Lettering does not grow: each drawing has its caption in words, and
/// opens large.
struct MarksView: View {
  let drawn: FigureDrawn
  let inks: Inks

  var body: some View {
    Canvas { context, size in
      let pen = Pen(scale: size.width, natural: size.width / drawn.naturalWidth, inks: inks)
      for mark in drawn.marks { pen.draw(mark, in: &context) }
    }
    .aspectRatio(drawn.aspect, contentMode: .fit)
  }
}

/// Draws marks: `scale` is the width of the drawing, `natural` how much of its natural width that is.
private struct Pen {
  let scale: Double
  let natural: Double
  let inks: Inks

  func draw(_ mark: FigureMark, in context: inout GraphicsContext) {
    let ink = inks.of(mark.ink)
    switch mark.shape {
    case .stroke(let from, let to): line([from, to], closed: false, mark, ink, &context)
    case .path(let spots, let closed): line(spots, closed: closed, mark, ink, &context)
    case .strokes(let lines):
      var path = Path()
      for line in lines { path.addLines([point(line.from), point(line.to)]) }
      stroke(path, mark, ink, &context)
    case .frame(let corner, let width, let height, let round):
      let box = CGRect(x: corner.x * scale, y: corner.y * scale, width: width * scale, height: height * scale)
      let path = Path(roundedRect: box, cornerRadius: round * scale)
      fill(path, mark, ink, &context)
      stroke(path, mark, ink, &context)
    case .lettering(let at, let words, let size, let anchor, let strong, let even):
      let font = Font.system(
        size: size * scale, weight: strong ? .semibold : .regular, design: even ? .monospaced : .default)
      let text = context.resolve(Text(verbatim: words).font(font).foregroundStyle(ink))
      // The anchor stands on the baseline: how far that lies below the top, only the text itself knows.
      let measured = text.measure(in: CGSize(width: Double.infinity, height: Double.infinity))
      let base = text.firstBaseline(in: measured)
      let unit = UnitPoint(x: share(anchor), y: measured.height > 0 ? base / measured.height : 0)
      context.draw(text, at: point(at), anchor: unit)
    }
  }

  private func point(_ spot: Spot) -> CGPoint { CGPoint(x: spot.x * scale, y: spot.y * scale) }

  private func share(_ anchor: MarkAnchor) -> Double {
    switch anchor {
    case .start: 0
    case .middle: 0.5
    case .end: 1
    }
  }

  private func line(
    _ spots: [Spot], closed: Bool, _ mark: FigureMark, _ ink: Color, _ context: inout GraphicsContext
  ) {
    var path = Path()
    path.addLines(spots.map(point))
    if closed { path.closeSubpath() }
    fill(path, mark, ink, &context)
    stroke(path, mark, ink, &context)
  }

  private func fill(_ path: Path, _ mark: FigureMark, _ ink: Color, _ context: inout GraphicsContext) {
    guard mark.fill != .absent else { return }
    let ground = mark.fill == .ground ? inks.surface : ink.opacity(Strokes.share(mark.fill))
    context.fill(path, with: .color(ground))
  }

  private func stroke(_ path: Path, _ mark: FigureMark, _ ink: Color, _ context: inout GraphicsContext) {
    let width = Strokes.width(mark.weight)
    guard width > 0 else { return }
    let dash = Strokes.dash(mark.dash, mark.weight).map { CGFloat($0 * natural) }
    context.stroke(path, with: .color(ink), style: StrokeStyle(lineWidth: width * natural, dash: dash))
  }
}
