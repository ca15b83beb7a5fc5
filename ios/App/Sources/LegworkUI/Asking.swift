import PhotosUI
import ShellCore
import SwiftUI
import UniformTypeIdentifiers

/// The sheets of the system: a file, the camera, handing a file on.
struct Asking: ViewModifier {
  let shell: Shell
  @State private var chosen: [PhotosPickerItem] = []
  /// What a sheet was opened for. The system closes its sheets before it says what was chosen.
  @State private var open: Asked?
  /// Which picture of a burst it is: each is taken by a camera of its own.
  @State private var shot = 0

  init(shell: Shell) { self.shell = shell }

  func body(content: Content) -> some View {
    content
      .onChange(of: shell.asked) { _, asked in if let asked { open = asked } }
      .fileImporter(isPresented: isAsked(kinds != nil), allowedContentTypes: types) { result in
        guard let open else { return }
        switch result {
        case .success(let url): Task { await shell.chose(handed: url, for: open.destination) }
        case .failure: shell.refused(.fileUnread)
        }
      }
      .fullScreenCover(isPresented: isAsked(burst != nil && Camera.isThere)) {
        if let asked = shell.asked {
          Camera { picture in
            if burst == true { shot += 1 } else { shell.choseNothing() }
            Task { await shell.take(picture: picture, for: asked.destination) }
          } close: {
            shell.choseNothing()
          }
          .id(shot)
          .ignoresSafeArea()
        }
      }
      .photosPicker(isPresented: isAsked(burst != nil && !Camera.isThere), selection: $chosen, matching: .images)
      .onChange(of: chosen) { _, items in
        guard !items.isEmpty, let open else { return }
        chosen = []
        Task { await shell.take(chosen: items, for: open.destination) }
      }
      .sheet(item: written) { file in
        switch file.way {
        case .share: ShareSheet(file: file.file) { shell.handedOn() }
        case .place: PlaceSheet(file: file.file) { shell.handedOn() }
        }
      }
  }

  private var kinds: [FileKind]? {
    if case .file(let kinds)? = shell.asked?.what { kinds } else { nil }
  }

  /// Whether one photo follows another, if a photo is asked for.
  private var burst: Bool? {
    if case .photo(let burst)? = shell.asked?.what { burst } else { nil }
  }

  /// By their extensions; its content decides what a file is, so anything may be chosen.
  private var types: [UTType] {
    (kinds ?? []).compactMap { UTType(filenameExtension: $0.extension) } + [.data]
  }

  private func isAsked(_ isIt: Bool) -> Binding<Bool> {
    Binding(get: { isIt }, set: { if !$0 && isIt { shell.choseNothing() } })
  }

  private var written: Binding<Written?> {
    Binding(get: { shell.written }, set: { if $0 == nil { shell.handedOn() } })
  }
}

extension Shell {
  /// Takes in what was chosen from the photos. Where print in them is welcome, the phone itself reads it, in all of them: taking
  /// the first one in may be another screen.
  func take(chosen items: [PhotosPickerItem], for slot: Destination) async {
    let isWelcome = printKey(of: slot) != nil
    var photos: [Data] = []
    for (number, item) in items.enumerated() {
      let photo = asPhoto(try? await item.loadTransferable(type: Data.self))
      if number == 0 { await take(photo: photo, for: slot) } else { await take(another: photo, for: slot) }
      if isWelcome, let photo { photos.append(photo) }
    }
    await read(photos, for: slot)
  }

  /// Takes in a picture of the camera.
  func take(picture: UIImage?, for slot: Destination) async {
    let isWelcome = printKey(of: slot) != nil
    let photo = picture?.jpegData(compressionQuality: 0.9)
    await take(photo: photo, for: slot)
    if isWelcome, let photo { await read([photo], for: slot) }
  }

  /// Reads print, and offers it in one: each offer stands in place of the one before.
  private func read(_ photos: [Data], for slot: Destination) async {
    var read: [String] = []
    for photo in photos { read.append(await Print.read(photo)) }
    offer(print: read.filter { !$0.isEmpty }.joined(separator: "\n"), for: slot)
  }

  /// A file of another program, which lets us in only for so long.
  func chose(handed file: URL, for press: Destination) async {
    let isLent = file.startAccessingSecurityScopedResource()
    defer { if isLent { file.stopAccessingSecurityScopedResource() } }
    await chose(file, for: press)
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
