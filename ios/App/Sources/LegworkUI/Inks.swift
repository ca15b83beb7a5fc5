import ShellCore
import SwiftUI

extension Color {
  /// An ink, as 0xRRGGBB.
  nonisolated init(hex: UInt32) {
    let part = { (shift: UInt32) in Double(hex >> shift & 0xff) / 255 }
    self.init(.sRGB, red: part(16), green: part(8), blue: part(0), opacity: 1)
  }
}

/// The inks as they are now: by day or by night, and darker where more contrast is asked for.
struct Inks {
  let isDark: Bool
  let isStrong: Bool

  init(_ scheme: ColorScheme, _ contrast: ColorSchemeContrast) {
    isDark = scheme == .dark
    isStrong = contrast == .increased
  }

  private func ink(_ ink: LookInk) -> Color { Color(hex: isDark ? ink.dark : ink.light) }

  var surface: Color { ink(Look.inkSurface) }
  var raised: Color { ink(Look.inkRaised) }
  var sunk: Color { ink(Look.inkSunk) }
  var text: Color { ink(Look.inkText) }
  var quiet: Color { ink(isStrong ? Look.inkText : Look.inkQuiet) }
  var line: Color { ink(isStrong ? Look.inkEdge : Look.inkLine) }
  var edge: Color { ink(isStrong ? Look.inkText : Look.inkEdge) }
  var accent: Color { ink(Look.inkAccent) }
  var accentWash: Color { ink(Look.inkAccentWash) }
  var fill: Color { ink(Look.inkFill) }
  var onFill: Color { ink(Look.inkOnFill) }
  var caution: Color { ink(Look.inkCaution) }
  var cautionLine: Color { ink(isStrong ? Look.inkCaution : Look.inkCautionLine) }
  var cautionWash: Color { ink(Look.inkCautionWash) }
  var weak: Color { ink(Look.inkWeak) }
  var weakWash: Color { ink(Look.inkWeakWash) }
  var good: Color { ink(Look.inkGood) }
  var pencil: Color { ink(isStrong ? Look.inkQuiet : Look.inkPencil) }
  var measured: Color { ink(Look.inkMeasured) }

  /// The ink of a mark.
  func of(_ ink: MarkInk) -> Color {
    switch ink {
    case .text: text
    case .quiet: quiet
    case .accent: accent
    case .cable: text
    case .weak, .warning: weak
    case .measured: measured
    case .pencil: pencil
    }
  }
}

/// Gives a view the inks of its surroundings.
struct Inked<Content: View>: View {
  @Environment(\.colorScheme) private var scheme
  @Environment(\.colorSchemeContrast) private var contrast
  @ViewBuilder let content: (Inks) -> Content

  var body: some View { content(Inks(scheme, contrast)) }
}
