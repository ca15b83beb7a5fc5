import ShellCore
import SwiftUI

/// A photo of which a part is chosen by touches on two corners of it.
struct PhotoPartView: View {
  let shell: Shell
  let block: PhotoPartBlock

  var body: some View {
    Inked { inks in
      VStack(alignment: .leading, spacing: Look.spaceS2) {
        Words(block.name, .row).foregroundStyle(inks.text).accessibilityHidden(true)
        Picture(file: shell.photoPiece(block.photo), isWhole: true)
          .overlay {
            GeometryReader { proxy in
              Chosen(block: block, inks: inks)
                .contentShape(Rectangle())
                .onTapGesture(coordinateSpace: .local) { place in
                  let across = parts(place.x, of: proxy.size.width)
                  let down = parts(place.y, of: proxy.size.height)
                  shell.touch(block.key, across: across, down: down)
                }
            }
          }
          // A photo lies as it was taken, whichever way words run.
          .environment(\.layoutDirection, .leftToRight)
          .says(block.aloud, id: block.id)
      }
    }
  }

  private func parts(_ at: Double, of side: Double) -> UInt32 {
    UInt32(min(max(at / max(side, 1), 0), 1) * whole)
  }
}

/// What the width and the height of a photo are divided into.
private let whole = 10_000.0

/// What was chosen of a photo, drawn twice so that it is seen on light and on dark.
private struct Chosen: View {
  let block: PhotoPartBlock
  let inks: Inks

  var body: some View {
    Canvas { context, size in
      func across(_ at: UInt32) -> Double { Double(at) / whole * size.width }
      func down(_ at: UInt32) -> Double { Double(at) / whole * size.height }
      var path = Path()
      if let part = block.part {
        let (left, top) = (across(part.left), down(part.top))
        let (right, bottom) = (across(part.left + part.width), down(part.top + part.height))
        path.addLines([
          CGPoint(x: left, y: top), CGPoint(x: right, y: top), CGPoint(x: right, y: bottom),
          CGPoint(x: left, y: bottom), CGPoint(x: left, y: top),
        ])
      }
      if let corner = block.corner {
        let (x, y) = (across(corner.across), down(corner.down))
        path.addLines([CGPoint(x: x, y: 0), CGPoint(x: x, y: size.height)])
        path.addLines([CGPoint(x: 0, y: y), CGPoint(x: size.width, y: y)])
      }
      context.stroke(path, with: .color(inks.surface), style: StrokeStyle(lineWidth: 5))
      context.stroke(path, with: .color(inks.accent), style: StrokeStyle(lineWidth: 2.5))
    }
  }
}
