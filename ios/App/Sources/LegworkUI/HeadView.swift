import ShellCore
import SwiftUI

/// The head of a screen: where one is, what it is about, how far the guide has come.
struct HeadView: View {
  let screen: Screen
  /// Where VoiceOver begins: here only if the screen has no lead.
  let isRead: AccessibilityFocusState<Bool>.Binding

  var body: some View {
    Inked { inks in
      VStack(alignment: .leading, spacing: Look.spaceS1) {
        if !screen.trail.isEmpty {
          Words(screen.trail.joined(separator: " · "), .aside).foregroundStyle(inks.quiet)
        }
        if screen.lead == nil {
          Words(screen.title, .lead)
            .foregroundStyle(inks.text)
            .accessibilityAddTraits(.isHeader)
            .accessibilityHeading(.h1)
            .accessibilityFocused(isRead)
        } else {
          Words(screen.title, .says).foregroundStyle(inks.quiet)
        }
        if let far = screen.howFar { Tape(far: far) }
      }
      .frame(maxWidth: .infinity, alignment: .leading)
    }
  }
}

/// How far the guide has come, as a measuring tape: a long mark every ten.
private struct Tape: View {
  let far: HowFar

  var body: some View {
    Inked { inks in
      VStack(alignment: .leading, spacing: Look.spaceS1) {
        Canvas { context, size in
          let of = Double(max(far.of, 2))
          let reach = size.width * min(Double(far.done), of) / of
          context.fill(Path(CGRect(x: 0, y: 0, width: reach, height: 1.5)), with: .color(inks.accent))
          for mark in 0..<Int(min(of, 200)) {
            let x = Double(mark) * size.width / (min(of, 200) - 1)
            let height = mark % 10 == 0 ? 9.0 : mark % 5 == 0 ? 6 : 4
            let ink = x <= reach ? inks.accent : inks.pencil
            context.fill(Path(CGRect(x: x, y: 0, width: 1, height: height)), with: .color(ink))
          }
        }
        .frame(height: 12)
        Words(far.words, .aside).foregroundStyle(inks.quiet)
      }
      .accessibilityElement(children: .ignore)
      .accessibilityLabel(Text(verbatim: far.words))
    }
  }
}

/// What is said about the last deed, by the core and by the shell itself; above everything else.
struct NoticesView: View {
  let shell: Shell
  let screen: Screen

  var body: some View {
    Inked { inks in
      ForEach(shell.said) { said in
        ProblemBox(words: said.words).accessibilityElement(children: .combine)
      }
      ForEach(screen.notices, id: \.id) { notice in
        switch notice.role {
        case .problem: ProblemBox(words: notice.words).says(notice.aloud, id: notice.id)
        case .done:
          HStack(alignment: .firstTextBaseline, spacing: Look.spaceS2) {
            SignView(.tick, inks.good)
            Words(notice.words, .text).foregroundStyle(inks.text)
          }
          .says(notice.aloud, id: notice.id)
        }
      }
    }
  }
}
