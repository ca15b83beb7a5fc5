import ShellCore
import SwiftUI

/// How something to press looks: its ink darkens under the finger.
struct Pressed: ButtonStyle {
  /// How much it weighs.
  enum Weight {
    case main, other, quiet, row
    case answer(isPicked: Bool, isUnsure: Bool)
    /// An answer of few letters, or a unit: it has no dot, so a bar at its foot and bold words say that it is chosen.
    case short(isPicked: Bool, isUnsure: Bool)
  }

  let weight: Weight

  func makeBody(configuration: Configuration) -> some View {
    PressedBody(weight: weight, isPressed: configuration.isPressed, label: configuration.label)
  }
}

private struct PressedBody<Label: View>: View {
  let weight: Pressed.Weight
  let isPressed: Bool
  let label: Label
  @Environment(\.isEnabled) private var isEnabled

  var body: some View {
    Inked { inks in
      label
        .foregroundStyle(foreground(inks))
        .padding(.horizontal, side)
        .padding(.vertical, Look.spaceS2)
        .frame(maxWidth: width, minHeight: height, alignment: .leading)
        .background(isPressed ? inks.sunk : ground(inks))
        .overlay(alignment: .bottom) {
          if isFooted { Rectangle().fill(inks.accent).frame(height: Look.lineStout).accessibilityHidden(true) }
        }
        .clipShape(RoundedRectangle(cornerRadius: Look.radiusControl))
        .overlay {
          RoundedRectangle(cornerRadius: Look.radiusControl)
            .strokeBorder(edge(inks), style: StrokeStyle(lineWidth: edgeWidth, dash: dash))
        }
        .opacity(isEnabled ? 1 : 0.55)
        .contentShape(Rectangle())
    }
  }

  private var side: CGFloat {
    if case .row = weight { 0 } else { Look.spaceS3 }
  }

  private var width: CGFloat? {
    if case .quiet = weight { nil } else { .infinity }
  }

  private var height: CGFloat {
    switch weight {
    case .main, .other, .answer: Look.sizeAnswer
    case .quiet, .row, .short: Look.sizeTouch
    }
  }

  private func foreground(_ inks: Inks) -> Color {
    switch weight {
    case .main: isPressed ? inks.text : inks.onFill
    case .other, .quiet: inks.accent
    case .row, .answer, .short: inks.text
    }
  }

  private func ground(_ inks: Inks) -> Color {
    switch weight {
    case .main: inks.fill
    case .other: inks.raised
    case .answer(let isPicked, _), .short(let isPicked, _): isPicked ? inks.accentWash : inks.raised
    case .quiet, .row: .clear
    }
  }

  private func edge(_ inks: Inks) -> Color {
    switch weight {
    case .main: inks.isDark ? inks.accent : inks.fill
    case .other: inks.edge
    case .answer(let isPicked, _), .short(let isPicked, _): isPicked ? inks.accent : inks.edge
    case .quiet, .row: .clear
    }
  }

  private var edgeWidth: CGFloat {
    switch weight {
    case .answer(true, _), .short(true, _): Look.lineFocus
    default: Look.lineFine
    }
  }

  private var dash: [CGFloat] {
    switch weight {
    case .answer(_, true), .short(_, true): [4, 4]
    default: []
    }
  }

  private var isFooted: Bool {
    if case .short(true, _) = weight { true } else { false }
  }
}
