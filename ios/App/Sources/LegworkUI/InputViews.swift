import ShellCore
import SwiftUI

/// Words to write.
struct WritingView: View {
  let shell: Shell
  let block: WritingBlock
  let isLead: Bool

  var body: some View {
    Inked { inks in
      VStack(alignment: .leading, spacing: Look.spaceS1) {
        if !isLead { Words(block.name, .row).foregroundStyle(inks.text).accessibilityHidden(true) }
        TextField(block.name, text: text, prompt: nil, axis: block.lines ? .vertical : .horizontal)
          .lettered(block.kind == .tag || block.kind == .print ? .tag : .text)
          .foregroundStyle(inks.text)
          .textInputAutocapitalization(capitals)
          .autocorrectionDisabled(block.kind != .note)
          .submitLabel(block.submit == nil ? .return : .go)
          .onSubmit { shell.submit(block.submit) }
          .frame(minHeight: Look.sizeTouch)
          .named(block.aloud, id: block.id)
        Rectangle().fill(inks.edge).frame(height: Look.lineFine).accessibilityHidden(true)
        Hint(hint: block.hint)
      }
    }
  }

  private var text: Binding<String> {
    Binding(get: { shell.text(of: block) }, set: { shell.write($0, in: block) })
  }

  private var capitals: TextInputAutocapitalization {
    switch block.kind {
    case .name, .names: .words
    case .tag: .characters
    case .note: .sentences
    case .print, .search: .never
    }
  }
}

/// A number with its unit.
struct NumberView: View {
  let shell: Shell
  let block: NumberBlock
  let isLead: Bool

  var body: some View {
    Inked { inks in
      VStack(alignment: .leading, spacing: Look.spaceS1) {
        if !isLead { Words(block.name, .row).foregroundStyle(inks.text).accessibilityHidden(true) }
        HStack(alignment: .lastTextBaseline, spacing: Look.spaceS3) {
          TextField(block.name, text: text, prompt: nil)
            .lettered(.number)
            .monospacedDigit()
            .foregroundStyle(inks.text)
            .keyboardType(keys)
            .autocorrectionDisabled()
            .onSubmit { shell.submit(block.submit) }
            .frame(minHeight: Look.sizeTouch)
            .named(block.aloud, id: block.id)
          units(inks)
        }
        Rectangle().fill(inks.edge).frame(height: Look.lineFine).accessibilityHidden(true)
        Hint(hint: block.hint)
      }
    }
  }

  @ViewBuilder private func units(_ inks: Inks) -> some View {
    ForEach(block.units, id: \.id) { unit in
      if block.units.count == 1 {
        Words(unit.words, .text).foregroundStyle(inks.quiet).says(unit.aloud, id: unit.id)
      } else {
        let isPicked = unit.key == block.unit
        Button {
          shell.unit(unit, in: block)
        } label: {
          Words(unit.words, isPicked ? .row : .text)
        }
        .buttonStyle(Pressed(weight: .short(isPicked: isPicked, isUnsure: false)))
        .fixedSize()
        .named(unit.aloud, id: unit.id, picked: isPicked)
      }
    }
  }

  private var text: Binding<String> {
    Binding(get: { shell.text(of: block) }, set: { shell.measure($0, in: block) })
  }

  /// A pad of digits has neither letters nor a minus.
  private var keys: UIKeyboardType {
    switch block.kind {
    case _ where block.letters: .numbersAndPunctuation
    case .whole: .numberPad
    case .decimal: .decimalPad
    case .signed: .numbersAndPunctuation
    }
  }
}

/// An example, or the range. VoiceOver says it with the place itself.
private struct Hint: View {
  let hint: String

  var body: some View {
    if !hint.isEmpty {
      Inked { inks in
        Words(hint, .aside).foregroundStyle(inks.quiet).accessibilityHidden(true)
      }
    }
  }
}
