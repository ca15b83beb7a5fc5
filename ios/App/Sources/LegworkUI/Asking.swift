import PhotosUI
import ShellCore
import SwiftUI
import UniformTypeIdentifiers

/// The sheets of the system: a file, the camera, handing a file on.
struct Asking: ViewModifier {
  let shell: Shell
  @State private var chosen: [PhotosPickerItem] = []

  init(shell: Shell) { self.shell = shell }

  func body(content: Content) -> some View {
    content
      .fileImporter(isPresented: isAsked(file != nil), allowedContentTypes: types) { result in
        guard let key = file?.key else { return }
        switch result {
        case .success(let url): Task { await shell.chose(handed: url, for: key) }
        case .failure: shell.refused(.fileUnread)
        }
      }
      .fullScreenCover(isPresented: isAsked(photo != nil && Camera.isThere)) {
        if let photo {
          Camera { picture in
            if !photo.burst { shell.choseNothing() }
            Task { await shell.take(picture: picture, for: photo.key, staying: photo.burst) }
          } close: {
            shell.choseNothing()
          }
          .ignoresSafeArea()
        }
      }
      .photosPicker(isPresented: isAsked(photo != nil && !Camera.isThere), selection: $chosen, matching: .images)
      .onChange(of: chosen) { _, items in
        guard !items.isEmpty, let photo else { return }
        chosen = []
        Task { await shell.take(chosen: items, for: photo.key) }
      }
      .sheet(item: written) { file in
        switch file.way {
        case .share: ShareSheet(file: file.file) { shell.handedOn() }
        case .place: PlaceSheet(file: file.file) { shell.handedOn() }
        }
      }
  }

  private var file: (key: String, kinds: [FileKind])? {
    if case .file(let key, let kinds)? = shell.asked { (key, kinds) } else { nil }
  }

  private var photo: (key: String, burst: Bool)? {
    if case .photo(let key, let burst)? = shell.asked { (key, burst) } else { nil }
  }

  /// By their extensions; its content decides what a file is, so anything may be chosen.
  private var types: [UTType] {
    (file?.kinds ?? []).compactMap { UTType(filenameExtension: $0.extension) } + [.data]
  }

  private func isAsked(_ isIt: Bool) -> Binding<Bool> {
    Binding(get: { isIt }, set: { if !$0 && isIt { shell.choseNothing() } })
  }

  private var written: Binding<Written?> {
    Binding(get: { shell.written }, set: { if $0 == nil { shell.handedOn() } })
  }
}

extension Shell {
  /// Takes in what was chosen from the photos.
  func take(chosen items: [PhotosPickerItem], for key: String) async {
    for item in items {
      let data = try? await item.loadTransferable(type: Data.self)
      await take(readable: asPhoto(data), for: key)
    }
  }

  /// Takes in a picture of the camera; `staying` where the camera comes up for the next one.
  func take(picture: UIImage?, for key: String, staying: Bool) async {
    await take(readable: picture?.jpegData(compressionQuality: 0.9), for: key)
    if staying { ask(.photo(key: key, burst: true)) }
  }

  /// Takes in a photo; where print in it is welcome, the phone itself reads it.
  private func take(readable photo: Data?, for key: String) async {
    let isWelcome = printKey(of: key) != nil
    await take(photo: photo, for: key)
    guard isWelcome, let photo else { return }
    await offer(print: await Print.read(photo), for: key)
  }

  /// A file of another program, which lets us in only for so long.
  func chose(handed file: URL, for key: String) async {
    let isLent = file.startAccessingSecurityScopedResource()
    defer { if isLent { file.stopAccessingSecurityScopedResource() } }
    await chose(file, for: key)
  }

  /// The same of one that was handed over unasked.
  func receive(handed file: URL) async {
    let isLent = file.startAccessingSecurityScopedResource()
    defer { if isLent { file.stopAccessingSecurityScopedResource() } }
    await receive(file)
  }

  /// What is neither JPEG nor PNG, as the phone's own photos are, is made one.
  private func asPhoto(_ data: Data?) -> Data? {
    guard let data, !isPicture(data) else { return data }
    return UIImage(data: data)?.jpegData(compressionQuality: 0.9)
  }
}
