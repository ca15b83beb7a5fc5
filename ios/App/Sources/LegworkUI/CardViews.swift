import ShellCore
import SwiftUI

/// A label's photo and text, and a row for each figure in it.
struct LabelView: View {
  let shell: Shell
  let label: LabelBlock
  let isLead: Bool
  @State private var opened: OpenedPhoto?

  var body: some View {
    Inked { inks in
      VStack(alignment: .leading, spacing: Look.spaceS2) {
        if !isLead { Words(label.name, .row).foregroundStyle(inks.text).accessibilityHidden(true) }
        HStack(alignment: .top, spacing: Look.spaceS3) {
          if let photo = label.photo {
            Button {
              opened = OpenedPhoto(photo: photo, name: label.name)
            } label: {
              if let part = label.part {
                Picture(file: shell.photoPiece(part), isWhole: true).frame(maxHeight: 240)
              } else {
                Picture(file: shell.smallPhoto(photo)).frame(width: 96, height: 96)
              }
            }
            .buttonStyle(Pressed(weight: .row))
            .fixedSize(horizontal: label.part == nil, vertical: label.part == nil)
            .accessibilityLabel(Text(verbatim: OwnWords.large.said))
            .accessibilityValue(Text(verbatim: label.name))
          }
          if !label.text.isEmpty {
            Words(label.text, .tag).foregroundStyle(inks.text).accessibilityHidden(true)
          }
        }
        ForEach(label.figures, id: \.id) { figure in
          FigureOfLabel(shell: shell, figure: figure)
        }
        ForEach(label.doubts, id: \.self) { doubt in
          Words(doubt, .aside).foregroundStyle(inks.quiet).accessibilityHidden(true)
        }
      }
      .group(label.aloud, id: label.id)
      .sheet(item: $opened) { one in LargePhoto(shell: shell, photo: one) { opened = nil } }
    }
  }
}

private struct FigureOfLabel: View {
  let shell: Shell
  let figure: LabelFigure

  var body: some View {
    Inked { inks in
      if let key = figure.key {
        Button {
          shell.press(key)
        } label: {
          row(inks)
        }
        .buttonStyle(Pressed(weight: .answer(isPicked: figure.picked, isUnsure: !figure.taken)))
        .named(figure.aloud, id: figure.id, picked: figure.picked)
      } else {
        row(inks).says(figure.aloud, id: figure.id)
      }
    }
  }

  private func row(_ inks: Inks) -> some View {
    VStack(alignment: .leading, spacing: Look.spaceS1) {
      HStack(spacing: Look.spaceS2) {
        Words(figure.name, .says).foregroundStyle(inks.quiet)
        Spacer(minLength: Look.spaceS2)
        Words(figure.says, .tag).foregroundStyle(inks.text)
        if !figure.doubt.isEmpty {
          SignView(.doubt, inks.caution)
        } else if figure.taken {
          SignView(.tick, inks.good)
        } else if figure.key != nil {
          // What no touch changes is only to be read.
          SignView(.pen, inks.quiet)
        }
      }
      if !figure.doubt.isEmpty {
        Words(figure.doubt, .aside).foregroundStyle(inks.caution)
      }
      if let piece = figure.piece {
        Picture(file: shell.photoPiece(piece), isWhole: true).frame(maxHeight: 72).accessibilityHidden(true)
      }
    }
    .frame(minHeight: Look.sizeTouch)
  }
}

/// Something measured: a bar of the pen at the start.
struct ReadingView: View {
  let reading: ReadingBlock

  var body: some View {
    Inked { inks in
      HStack(alignment: .top, spacing: Look.spaceS3) {
        Rectangle().fill(inks.measured).frame(width: Look.lineStout)
        VStack(alignment: .leading, spacing: Look.spaceS1) {
          Words(reading.name, .says).foregroundStyle(inks.quiet)
          Words(reading.says, .row).foregroundStyle(inks.measured)
          if !reading.remark.isEmpty {
            Words(reading.remark, .aside).foregroundStyle(inks.quiet)
          }
        }
      }
      .fixedSize(horizontal: false, vertical: true)
      .says(reading.aloud, id: reading.id)
    }
  }
}

/// One part.
struct PartView: View {
  let shell: Shell
  let part: PartBlock

  var body: some View {
    Inked { inks in
      if let key = part.key {
        Button {
          shell.press(key)
        } label: {
          HStack(spacing: Look.spaceS3) {
            inside(inks)
            Spacer(minLength: 0)
            SignView(.on, inks.accent)
          }
        }
        .buttonStyle(Pressed(weight: .row))
        .named(part.aloud, id: part.id)
      } else {
        inside(inks).says(part.aloud, id: part.id)
      }
    }
  }

  private func inside(_ inks: Inks) -> some View {
    HStack(alignment: .top, spacing: Look.spaceS3) {
      if let photo = part.photo {
        Picture(file: shell.smallPhoto(photo)).frame(width: 56, height: 56)
      }
      VStack(alignment: .leading, spacing: Look.spaceS1) {
        HStack(alignment: .firstTextBaseline, spacing: Look.spaceS2) {
          if !part.tag.isEmpty { TagView(tag: part.tag) }
          Words(part.name, .row).foregroundStyle(inks.text)
        }
        ForEach(Array(part.lines.enumerated()), id: \.offset) { _, line in
          Words(line, .says).foregroundStyle(inks.quiet)
        }
      }
    }
  }
}

/// The mark of a thing, as it stands on its tape: framed.
private struct TagView: View {
  let tag: String

  var body: some View {
    Inked { inks in
      Words(tag, .tag)
        .foregroundStyle(inks.text)
        .padding(.horizontal, Look.spaceS1)
        .overlay {
          RoundedRectangle(cornerRadius: Look.radiusTag).strokeBorder(inks.edge, lineWidth: Look.lineFine)
        }
    }
  }
}

/// A photo from its file.
struct Picture: View {
  let file: URL?
  var isWhole = false

  var body: some View {
    Inked { inks in
      if let file, let image = UIImage(contentsOfFile: file.path) {
        Image(uiImage: image)
          .resizable()
          .aspectRatio(contentMode: isWhole ? .fit : .fill)
          .clipped()
      } else {
        Rectangle().fill(inks.sunk)
      }
    }
  }
}
