import ShellCore
import SwiftUI

/// Cautions that stand together, in one box with a striped edge: of each, what to do in sight, its reason
/// folded once it was read.
struct CautionsView: View {
  let cautions: [CautionBlock]

  var body: some View {
    Inked { inks in
      HStack(alignment: .top, spacing: 0) {
        Stripes(ink: inks.cautionLine).frame(width: Look.spaceS3).accessibilityHidden(true)
        VStack(alignment: .leading, spacing: Look.spaceS2) {
          HStack(spacing: Look.spaceS2) {
            SignView(.care, inks.caution)
            Words(cautions.first?.name ?? "", .row).foregroundStyle(inks.caution)
          }
          .accessibilityHidden(true)
          ForEach(cautions, id: \.id) { caution in
            OneCaution(caution: caution)
          }
        }
        .padding(Look.spaceS3)
      }
      .frame(maxWidth: .infinity, alignment: .leading)
      .background(inks.cautionWash)
      .overlay { Rectangle().strokeBorder(inks.cautionLine, lineWidth: Look.lineFine) }
    }
  }
}

/// One caution: one stop, all of it is read, folded or not. A touch unfolds it for the eye.
private struct OneCaution: View {
  let caution: CautionBlock
  /// What a touch made of it; until then it stands open while nobody has read it.
  @State private var touched: Bool?

  private var isOpen: Bool { touched ?? caution.unread }

  var body: some View {
    Inked { inks in
      if caution.head.isEmpty {
        Words(caution.words, .text).foregroundStyle(inks.text).says(caution.aloud, id: caution.id)
      } else {
        Button {
          touched = !isOpen
        } label: {
          VStack(alignment: .leading, spacing: Look.spaceS1) {
            Words(caution.head, .text).foregroundStyle(inks.text)
            if isOpen { Words(caution.words, .says).foregroundStyle(inks.text) }
          }
        }
        .buttonStyle(Pressed(weight: .row))
        .says(caution.aloud, id: caution.id)
      }
    }
  }
}

private struct Stripes: View {
  let ink: Color

  var body: some View {
    Canvas { context, size in
      var at = -size.width
      while at < size.height {
        var path = Path()
        path.move(to: CGPoint(x: 0, y: at + size.width))
        path.addLine(to: CGPoint(x: size.width, y: at))
        context.stroke(path, with: .color(ink), style: StrokeStyle(lineWidth: 4))
        at += 10
      }
    }
  }
}
