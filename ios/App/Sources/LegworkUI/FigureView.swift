import ShellCore
import SwiftUI

private struct ColumnWidth: EnvironmentKey {
  static let defaultValue: Double = 358
}

extension EnvironmentValues {
  /// How wide the column is in which a block stands, points.
  var columnWidth: Double {
    get { self[ColumnWidth.self] }
    set { self[ColumnWidth.self] = newValue }
  }
}

/// A drawing with its caption: the widest of its layouts that fits. Marks with a key can be touched, and are stops of their
/// own for VoiceOver.
struct FigureView: View {
  let shell: Shell
  let block: FigureBlock
  @Environment(\.columnWidth) private var width
  @State private var isLarge = false

  var body: some View {
    Inked { inks in
      VStack(alignment: .leading, spacing: Look.spaceS2) {
        if let drawn = shell.drawing(block.layout(in: width)) {
          DrawingView(shell: shell, block: block, drawn: drawn, inks: inks, most: drawn.naturalWidth)
        }
        Words(block.description, .aside).foregroundStyle(inks.quiet).accessibilityHidden(true)
        Button {
          isLarge = true
        } label: {
          Words(OwnWords.large.said, .press)
        }
        .buttonStyle(Pressed(weight: .quiet))
        // VoiceOver reads every part of the drawing as it is; large or small is the same to it.
        .accessibilityHidden(true)
      }
      .sheet(isPresented: $isLarge) { LargeFigure(shell: shell, block: block) { isLarge = false } }
    }
  }
}

/// The drawing alone, at least as large as it was laid out.
private struct LargeFigure: View {
  let shell: Shell
  let block: FigureBlock
  let close: () -> Void

  var body: some View {
    Inked { inks in
      Large(name: block.name, close: close) { zoom, _, twice in
        if let layout = block.layouts.last, let drawn = shell.drawing(layout) {
          DrawingView(
            shell: shell, block: block, drawn: drawn, inks: inks, most: drawn.naturalWidth * zoom, twice: twice,
            pressed: close
          )
          .frame(width: drawn.naturalWidth * zoom)
        }
      }
    }
  }
}

/// A drawing that answers touches.
private struct DrawingView: View {
  let shell: Shell
  let block: FigureBlock
  let drawn: FigureDrawn
  let inks: Inks
  /// How wide it may be.
  let most: Double
  /// It was touched twice, where something comes of that.
  var twice: (() -> Void)?
  /// Something in it was touched.
  var pressed: () -> Void = {}

  var body: some View {
    GeometryReader { proxy in
      MarksView(drawn: drawn, inks: inks)
        .contentShape(Rectangle())
        .modifier(
          Touched(twice: twice) { place in
            let width = proxy.size.width
            let spot = Spot(x: place.x / width, y: place.y / width)
            if let key = drawn.key(at: spot, reach: Look.sizeTouch / 2 / width) { press(key) }
          }
        )
        .accessibilityElement()
        .accessibilityLabel(Text(verbatim: block.aloud.label))
        .accessibilityValue(Text(verbatim: block.aloud.value))
        .accessibilityIdentifier(block.id)
        .accessibilityChildren {
          ZStack(alignment: .topLeading) {
            ForEach(drawn.stops) { stop in
              StopView(stop: stop, scale: proxy.size.width, press: press)
            }
          }
        }
    }
    .aspectRatio(drawn.aspect, contentMode: .fit)
    .frame(maxWidth: most)
    // A drawing lies as it was drawn: the map comes mirrored where words are read from the right.
    .environment(\.layoutDirection, .leftToRight)
  }

  private func press(_ key: String) {
    pressed()
    shell.press(key)
  }
}

/// A touch; where something comes of two, it is one once no second follows.
private struct Touched: ViewModifier {
  let twice: (() -> Void)?
  let once: (CGPoint) -> Void

  func body(content: Content) -> some View {
    if let twice {
      content.gesture(
        TapGesture(count: 2).onEnded { twice() }
          .exclusively(before: SpatialTapGesture(coordinateSpace: .local).onEnded { once($0.location) }))
    } else {
      content.onTapGesture(coordinateSpace: .local, perform: once)
    }
  }
}

/// One thing of a drawing, for VoiceOver.
private struct StopView: View {
  let stop: MarkStop
  let scale: Double
  let press: (String) -> Void

  var body: some View {
    Group {
      if let key = stop.key {
        Button {
          press(key)
        } label: {
          Rectangle()
        }
        .named(stop.aloud, id: "mark-\(stop.id)")
      } else {
        Rectangle().says(stop.aloud, id: "mark-\(stop.id)")
      }
    }
    .frame(width: max(stop.bounds.width * scale, 12), height: max(stop.bounds.height * scale, 12))
    .offset(x: stop.bounds.left * scale, y: stop.bounds.top * scale)
  }
}
