import ShellCore
import SwiftUI

/// A photo that is opened large.
struct OpenedPhoto: Identifiable {
  /// Its id in the core.
  let photo: String
  /// What it is called.
  let name: String
  var id: String { photo }
}

/// A photo over the whole window.
struct LargePhoto: View {
  let shell: Shell
  let photo: OpenedPhoto
  let close: () -> Void

  var body: some View {
    Large(name: photo.name, close: close) { zoom, window, _ in
      Picture(file: shell.wholePhoto(photo.photo), isWhole: true)
        .frame(width: window.width * zoom, height: window.height * zoom)
        .accessibilityElement(children: .ignore)
        .accessibilityLabel(Text(verbatim: photo.name))
        .accessibilityAddTraits(.isImage)
    }
  }
}

/// Something over the whole window: two fingers make it larger, one moves it about, a double touch does it for one hand. The
/// way back lies where it always is.
struct Large<Content: View>: View {
  let name: String
  let close: () -> Void
  /// Draws it so many times as large as it fits, in a window of this size. What answers a touch itself has to know what comes
  /// of two: else the first of them is its own.
  @ViewBuilder let content: (_ zoom: Double, _ window: CGSize, _ twice: @escaping () -> Void) -> Content
  @State private var zoom = 1.0
  @State private var begun = 1.0

  private static var most: Double { 8 }
  private static var twice: Double { 2.5 }

  var body: some View {
    Inked { inks in
      VStack(alignment: .leading, spacing: Look.spaceS3) {
        Words(name, .row).foregroundStyle(inks.text).accessibilityAddTraits(.isHeader).accessibilityHeading(.h1)
        GeometryReader { window in
          ScrollView([.horizontal, .vertical]) { content(zoom, window.size, touchedTwice) }
            .gesture(
              MagnifyGesture()
                .onChanged { zoom = within(begun * $0.magnification) }
                .onEnded { _ in begun = zoom }
            )
            .onTapGesture(count: 2, perform: touchedTwice)
            .accessibilityZoomAction { action in zoomTo(zoom * (action.direction == .zoomIn ? 2 : 0.5)) }
        }
        Button {
          close()
        } label: {
          Words(OwnWords.close.said, .press)
        }
        .buttonStyle(Pressed(weight: .other))
      }
      .padding(Look.spaceS4)
      .background(inks.surface)
    }
  }

  private func touchedTwice() { zoomTo(zoom > 1 ? 1 : Self.twice) }

  private func within(_ zoom: Double) -> Double { min(max(zoom, 1), Self.most) }

  private func zoomTo(_ next: Double) {
    zoom = within(next)
    begun = zoom
  }
}
