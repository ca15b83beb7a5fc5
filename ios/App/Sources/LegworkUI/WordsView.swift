import ShellCore
import SwiftUI

/// Words to read; long ones fold behind their head.
struct WordsView: View {
  let block: WordsBlock
  @State private var isOpen = false

  var body: some View {
    Inked { inks in
      if !block.head.isEmpty {
        Fold(head: block.head, isOpen: $isOpen) {
          Words(block.words, hand).foregroundStyle(inks.text).says(block.aloud, id: block.id)
        }
      } else if block.role == .problem {
        ProblemBox(words: block.words).says(block.aloud, id: block.id)
      } else {
        Words(block.words, hand)
          .foregroundStyle(ink(inks))
          .padding(.top, block.role == .heading ? Look.spaceS2 : 0)
          .says(block.aloud, id: block.id)
          .accessibilityHeading(level)
      }
    }
  }

  private var level: AccessibilityHeadingLevel {
    switch block.role {
    case .lead: .h1
    case .heading: .h2
    default: .unspecified
    }
  }

  private var hand: TypeHand {
    switch block.role {
    case .lead: .lead
    case .heading: .head
    case .aside: .aside
    case .why, .how, .plain, .problem: .text
    }
  }

  private func ink(_ inks: Inks) -> Color {
    switch (block.role, block.severity) {
    case (.lead, .grave): inks.weak
    case (.aside, _), (.why, _): inks.quiet
    default: inks.text
    }
  }
}

/// Something that folds behind its head.
struct Fold<Content: View>: View {
  let head: String
  @Binding var isOpen: Bool
  @ViewBuilder let content: () -> Content

  var body: some View {
    Inked { inks in
      DisclosureGroup(isExpanded: $isOpen) {
        content().padding(.vertical, Look.spaceS2)
      } label: {
        Words(head, .row).foregroundStyle(inks.text).frame(minHeight: Look.sizeTouch)
      }
      .tint(inks.accent)
    }
  }
}

/// What is wrong, framed, with a cross.
struct ProblemBox: View {
  let words: String

  var body: some View {
    Inked { inks in
      HStack(alignment: .firstTextBaseline, spacing: Look.spaceS2) {
        SignView(.cross, inks.weak)
        Words(words, .text).foregroundStyle(inks.text)
      }
      .padding(Look.spaceS3)
      .frame(maxWidth: .infinity, alignment: .leading)
      .background(inks.weakWash)
      .overlay { Rectangle().strokeBorder(inks.weak, lineWidth: Look.lineFine) }
    }
  }
}
