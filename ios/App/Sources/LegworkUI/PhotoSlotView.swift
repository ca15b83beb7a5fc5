import PhotosUI
import ShellCore
import SwiftUI

/// A place for photos: those that are there, and what takes or chooses another.
struct PhotoSlotView: View {
  let shell: Shell
  let slot: PhotoSlotBlock
  @State private var chosen: [PhotosPickerItem] = []
  @State private var opened: OpenedPhoto?

  var body: some View {
    Inked { inks in
      VStack(alignment: .leading, spacing: Look.spaceS2) {
        Words(slot.name, .row).foregroundStyle(inks.text).accessibilityHidden(true)
        LazyVGrid(columns: [GridItem(.adaptive(minimum: 104), spacing: Look.spaceS2)], spacing: Look.spaceS2) {
          ForEach(slot.photos, id: \.id) { photo in
            PhotoView(shell: shell, photo: photo) { opened = OpenedPhoto(photo: photo.photo, name: photo.name) }
          }
        }
        Button {
          shell.ask(.photo(burst: slot.burst), for: slot.key)
        } label: {
          HStack(spacing: Look.spaceS2) {
            SignView(.camera, inks.accent)
            Words(OwnWords.takePhoto.said, .press)
          }
        }
        .buttonStyle(Pressed(weight: .answer(isPicked: false, isUnsure: true)))
        PhotosPicker(selection: $chosen, matching: .images) {
          HStack(spacing: Look.spaceS2) {
            SignView(.pictures, inks.accent)
            Words(OwnWords.choosePhoto.said, .press)
          }
        }
        .buttonStyle(Pressed(weight: .quiet))
      }
      .group(slot.aloud, id: slot.id)
      .onChange(of: chosen) { _, items in
        guard !items.isEmpty else { return }
        chosen = []
        let here = shell.destination(slot.key)
        Task { await shell.take(chosen: items, for: here) }
      }
      .sheet(item: $opened) { one in LargePhoto(shell: shell, photo: one) { opened = nil } }
    }
  }
}

private struct PhotoView: View {
  let shell: Shell
  let photo: PhotoShown
  let open: () -> Void

  var body: some View {
    Inked { inks in
      Button {
        if let key = photo.key { shell.press(key) } else { open() }
      } label: {
        Picture(file: shell.smallPhoto(photo.photo))
          .frame(height: 104)
          .frame(maxWidth: .infinity)
          .overlay(alignment: .topTrailing) {
            if let picked = photo.picked {
              SignView(picked ? .boxTicked : .box, inks.accent).background(inks.raised)
            }
          }
      }
      .buttonStyle(Pressed(weight: .answer(isPicked: photo.picked == true, isUnsure: false)))
      .contextMenu { Button(OwnWords.large.said) { open() } }
      .named(photo.aloud, id: photo.id, picked: photo.picked == true)
      .accessibilityAction(named: Text(verbatim: OwnWords.large.said)) { open() }
    }
  }
}
