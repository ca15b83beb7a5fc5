import ShellCore
import SwiftUI

/// Something to press.
struct PressView: View {
  let shell: Shell
  let press: PressBlock
  /// Whether it stands back, whatever it weighs elsewhere.
  var isQuiet = false

  var body: some View {
    Button {
      shell.press(press)
    } label: {
      HStack(spacing: Look.spaceS2) {
        if let sign {
          Inked { inks in SignView(sign, weight.isMain ? inks.onFill : inks.accent) }
        }
        Words(press.words, .press)
      }
    }
    .buttonStyle(Pressed(weight: weight))
    .disabled(!press.enabled)
    .enter(press.weight == .main)
    .named(press.aloud, id: press.id)
  }

  private var sign: Sign? {
    switch press.need {
    case .photo?: .camera
    case .fileToRead?, .fileToWrite?, .fileToShare?: .file
    case nil: nil
    }
  }

  private var weight: Pressed.Weight {
    if isQuiet { return .quiet }
    return switch press.weight {
    case .main: .main
    case .other: .other
    case .quiet: .quiet
    }
  }
}

extension Pressed.Weight {
  var isMain: Bool {
    if case .main = self { true } else { false }
  }
}

extension View {
  /// Enter presses it, where there are keys.
  @ViewBuilder func enter(_ isMain: Bool) -> some View {
    if isMain { keyboardShortcut(.defaultAction) } else { self }
  }
}

/// Something to press that is asked about once more: the second question unfolds beneath, “no” as the main press.
struct ConfirmView: View {
  let shell: Shell
  let confirm: ConfirmBlock
  @State private var isAsked = false

  var body: some View {
    Inked { inks in
      VStack(alignment: .leading, spacing: Look.spaceS2) {
        Button {
          isAsked.toggle()
        } label: {
          Words(confirm.words, .press)
        }
        .buttonStyle(Pressed(weight: .other))
        .disabled(!confirm.enabled)
        .named(confirm.aloud, id: confirm.id)
        if isAsked { second(inks) }
      }
      .onChange(of: isAsked) { _, asked in
        if asked {
          UIAccessibility.post(notification: .announcement, argument: NSAttributedString(string: confirm.question))
        }
      }
    }
  }

  private func second(_ inks: Inks) -> some View {
    VStack(alignment: .leading, spacing: Look.spaceS2) {
      Words(confirm.question, .text).foregroundStyle(inks.text)
      Button {
        isAsked = false
        shell.press(confirm.key)
      } label: {
        HStack(spacing: Look.spaceS2) {
          if confirm.destructive { SignView(.cross, inks.text) }
          Words(confirm.yes, .press)
        }
      }
      .buttonStyle(Pressed(weight: .other))
      Button {
        isAsked = false
      } label: {
        Words(confirm.no, .press)
      }
      .buttonStyle(Pressed(weight: .main))
    }
    .padding(Look.spaceS4)
    .overlay {
      RoundedRectangle(cornerRadius: Look.radiusControl).strokeBorder(inks.text, lineWidth: Look.lineFine)
    }
  }
}

/// How far something has come that takes a while.
struct HowFarView: View {
  let shell: Shell
  let far: HowFarBlock

  var body: some View {
    Inked { inks in
      VStack(alignment: .leading, spacing: Look.spaceS3) {
        VStack(alignment: .leading, spacing: Look.spaceS2) {
          Words(far.name, .text).foregroundStyle(inks.text)
          ProgressView(value: far.thousandths.map { Double($0) / 1000 })
            .tint(inks.accent)
        }
        .says(far.aloud, id: far.id)
        if let stop = far.stop { PressView(shell: shell, press: stop) }
      }
    }
  }
}
