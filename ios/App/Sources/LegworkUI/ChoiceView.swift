import ShellCore
import SwiftUI

/// One or several of a few answers. What is asked is not said twice to the eye where it is the screen's lead.
struct ChoiceView: View {
  let shell: Shell
  let choice: ChoiceBlock
  let isLead: Bool
  var hasDigits = false

  var body: some View {
    Inked { inks in
      VStack(alignment: .leading, spacing: Look.spaceS2) {
        if !isLead {
          Words(choice.name, .row).foregroundStyle(inks.text).accessibilityHidden(true)
        }
        if isShort {
          LazyVGrid(columns: [GridItem(.adaptive(minimum: 104), spacing: Look.spaceS2)], spacing: Look.spaceS2) {
            options
          }
        } else {
          options
        }
      }
      .group(choice.aloud, id: choice.id)
    }
  }

  private var options: some View {
    ForEach(Array(choice.options.enumerated()), id: \.element.id) { place, option in
      OptionView(shell: shell, choice: choice, option: option, isShort: isShort, digit: hasDigits ? place + 1 : nil)
    }
  }

  /// Answers of few letters stand side by side, without a dot; not where each is a way on.
  private var isShort: Bool {
    (choice.several || shell.screen?.dock.answersLeadOn == false)
      && choice.options.allSatisfy { $0.about.isEmpty && ($0.unsure || $0.words.count <= 12) }
  }
}

private struct OptionView: View {
  let shell: Shell
  let choice: ChoiceBlock
  let option: ChoiceOption
  let isShort: Bool
  let digit: Int?

  var body: some View {
    Inked { inks in
      Button {
        shell.pick(option, of: choice)
      } label: {
        HStack(alignment: .center, spacing: Look.spaceS3) {
          if !isShort {
            if choice.several {
              SignView(option.picked ? .boxTicked : .box, option.picked ? inks.accent : inks.edge)
            } else {
              Dot(isPicked: option.picked)
            }
          }
          VStack(alignment: .leading, spacing: Look.spaceS1) {
            Words(option.words, hand)
            if !option.about.isEmpty {
              Words(option.about, .says).foregroundStyle(inks.quiet)
            }
          }
        }
      }
      .buttonStyle(Pressed(weight: weight))
      .disabled(!option.enabled)
      .digit(digit)
      .named(option.aloud, id: option.id, picked: option.picked)
    }
  }

  /// Of short ones the chosen one is bold; full rows all are.
  private var hand: TypeHand { isShort ? (option.picked ? .row : .text) : .press }

  private var weight: Pressed.Weight {
    isShort
      ? .short(isPicked: option.picked, isUnsure: option.unsure)
      : .answer(isPicked: option.picked, isUnsure: option.unsure)
  }
}

private struct Dot: View {
  let isPicked: Bool

  var body: some View {
    Inked { inks in
      Circle()
        .strokeBorder(isPicked ? inks.accent : inks.edge, lineWidth: isPicked ? 7 : Look.lineFine)
        .frame(width: 20, height: 20)
        .accessibilityHidden(true)
    }
  }
}

extension View {
  /// A digit of the keyboard presses it, where there are keys.
  @ViewBuilder func digit(_ digit: Int?) -> some View {
    if let digit, digit < 10, let sign = String(digit).first {
      keyboardShortcut(KeyEquivalent(sign), modifiers: [])
    } else {
      self
    }
  }
}
