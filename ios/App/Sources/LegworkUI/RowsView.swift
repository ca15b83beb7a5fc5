import ShellCore
import SwiftUI

/// Rows under their name, some of which lead on.
struct RowsView: View {
  let shell: Shell
  let block: RowsBlock

  var body: some View {
    Inked { inks in
      VStack(alignment: .leading, spacing: 0) {
        Words(block.name, .head)
          .foregroundStyle(inks.text)
          .padding(.bottom, Look.spaceS2)
          .says(block.aloud, id: block.id)
          .accessibilityHeading(.h2)
        ForEach(block.rows, id: \.id) { row in
          RowView(shell: shell, row: row)
          Rectangle().fill(inks.line).frame(height: Look.lineHair).accessibilityHidden(true)
        }
      }
    }
  }
}

private struct RowView: View {
  let shell: Shell
  let row: RowEntry

  var body: some View {
    Inked { inks in
      if let key = row.key {
        Button {
          shell.press(key)
        } label: {
          inside(inks)
        }
        .buttonStyle(Pressed(weight: .row))
        .named(row.aloud, id: row.id, picked: row.switched == true)
      } else {
        inside(inks).frame(minHeight: Look.sizeTouch).says(row.aloud, id: row.id)
      }
    }
  }

  private func inside(_ inks: Inks) -> some View {
    VStack(alignment: .leading, spacing: Look.spaceS2) {
      HStack(alignment: .top, spacing: Look.spaceS3) {
        if let doneOf = row.doneOf { Station(doneOf: doneOf) }
        switch row.mark {
        case .box?: SignView(.box, inks.edge)
        case .done?: SignView(.boxTicked, inks.good)
        case .weak?, .notKnown?, nil: EmptyView()
        }
        VStack(alignment: .leading, spacing: Look.spaceS1) {
          Words(row.head, .row).foregroundStyle(inks.text)
          if !row.says.isEmpty { Words(row.says, .says).foregroundStyle(inks.quiet) }
          if let share = row.share { ShareBar(thousandths: share) }
          if !row.remark.isEmpty { Words(row.remark, .aside).foregroundStyle(inks.quiet) }
        }
        Spacer(minLength: 0)
        if let switched = row.switched {
          SignView(switched ? .boxTicked : .box, switched ? inks.accent : inks.edge)
        }
        switch row.mark {
        case .weak?: SignView(.flag, inks.weak)
        case .notKnown?: SignView(.doubt, inks.quiet)
        case .box?, .done?: EmptyView()
        case nil: if row.severity == .grave { SignView(.flag, inks.weak) }
        }
        if row.key != nil && row.switched == nil { SignView(.on, inks.accent) }
      }
      // Over the whole width: all bars of a list have one scale.
      if let bar = row.bar, let drawn = shell.bar(bar) {
        MarksView(drawn: drawn, inks: inks).accessibilityHidden(true)
        Words(bar.words, .aside).foregroundStyle(inks.quiet)
      }
    }
    .padding(.vertical, Look.spaceS2)
  }
}

/// A stage as a station along the cable: empty, half, full.
private struct Station: View {
  let doneOf: DoneOf

  var body: some View {
    Inked { inks in
      ZStack {
        Circle().strokeBorder(inks.text, lineWidth: Look.lineFine)
        if doneOf.done > 0 {
          Circle().fill(inks.text).padding(doneOf.done >= doneOf.of ? 0 : 5)
        }
      }
      .frame(width: 18, height: 18)
      .accessibilityHidden(true)
    }
  }
}

/// A share of a whole. It says nothing that the words beside it do not.
private struct ShareBar: View {
  let thousandths: UInt32

  var body: some View {
    Inked { inks in
      Canvas { context, size in
        let share = Double(max(thousandths, 4)) / 1000
        context.fill(
          Path(CGRect(x: 0, y: 0, width: size.width * share, height: size.height)), with: .color(inks.pencil))
      }
      .frame(height: 6)
      .accessibilityHidden(true)
    }
  }
}
