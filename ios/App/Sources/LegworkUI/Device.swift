import AVFoundation
import Observation
import ShellCore
import SwiftUI
import UIKit

/// The phone's light. The system puts it out by itself: where the camera needs it, where the phone is too hot, with the app.
@MainActor
@Observable
final class Torch {
  /// Whether it was on when it was last looked at.
  private(set) var isOn = false
  @ObservationIgnored private let lamp: AVCaptureDevice?

  init(lamp: AVCaptureDevice? = .default(for: .video)) { self.lamp = lamp }

  /// Whether there is one that can be switched on.
  var isThere: Bool { lamp?.hasTorch == true }

  /// Looks whether it is on.
  func look() { isOn = lamp?.isTorchActive == true }

  /// Switches it, from what it really is.
  func toggle() { turn(on: lamp?.isTorchActive != true) }

  /// Switches it on or off.
  func turn(on: Bool) {
    defer { look() }
    guard let lamp, lamp.hasTorch, on != lamp.isTorchActive else { return }
    do {
      try lamp.lockForConfiguration()
      defer { lamp.unlockForConfiguration() }
      if on { try lamp.setTorchModeOn(level: 1) } else { lamp.torchMode = .off }
    } catch {
      // The camera has it, or the phone is too hot: it stays as it is, and the button says so.
    }
  }
}

/// The time that the system leaves to an app which is put aside.
@MainActor
enum Background {
  /// Puts the shell aside within it.
  static func putAside(_ shell: Shell) {
    let app = UIApplication.shared
    let time = Time()
    time.id = app.beginBackgroundTask(withName: "put aside") { time.end() }
    Task {
      await shell.putAside()
      time.end()
    }
  }

  @MainActor
  private final class Time {
    var id = UIBackgroundTaskIdentifier.invalid

    func end() {
      guard id != .invalid else { return }
      UIApplication.shared.endBackgroundTask(id)
      id = .invalid
    }
  }
}

/// The system's camera.
struct Camera: UIViewControllerRepresentable {
  /// Given the picture, or nothing where the camera gave none.
  let took: (UIImage?) -> Void
  /// It was closed.
  let close: () -> Void

  init(took: @escaping (UIImage?) -> Void, close: @escaping () -> Void) {
    self.took = took
    self.close = close
  }

  /// Whether one answers.
  static var isThere: Bool { UIImagePickerController.isSourceTypeAvailable(.camera) }

  func makeCoordinator() -> Taker { Taker(took: took, close: close) }

  func makeUIViewController(context: Context) -> UIImagePickerController {
    let camera = UIImagePickerController()
    camera.sourceType = .camera
    camera.delegate = context.coordinator
    return camera
  }

  func updateUIViewController(_ camera: UIImagePickerController, context: Context) {}

  /// Told by the camera.
  final class Taker: NSObject, UIImagePickerControllerDelegate, UINavigationControllerDelegate {
    private let took: (UIImage?) -> Void
    private let close: () -> Void

    init(took: @escaping (UIImage?) -> Void, close: @escaping () -> Void) {
      self.took = took
      self.close = close
    }

    func imagePickerController(
      _ picker: UIImagePickerController, didFinishPickingMediaWithInfo info: [UIImagePickerController.InfoKey: Any]
    ) {
      took(info[.originalImage] as? UIImage)
    }

    func imagePickerControllerDidCancel(_ picker: UIImagePickerController) { close() }
  }
}

/// The system's sheet by which a file is handed to somebody else.
struct ShareSheet: UIViewControllerRepresentable {
  let file: URL
  let done: () -> Void

  func makeUIViewController(context: Context) -> UIActivityViewController {
    let sheet = UIActivityViewController(activityItems: [file], applicationActivities: nil)
    sheet.completionWithItemsHandler = { _, _, _, _ in done() }
    return sheet
  }

  func updateUIViewController(_ sheet: UIActivityViewController, context: Context) {}
}

/// The system's sheet by which a file is put in a place of the user's own.
struct PlaceSheet: UIViewControllerRepresentable {
  let file: URL
  let done: () -> Void

  func makeCoordinator() -> Placer { Placer(done: done) }

  func makeUIViewController(context: Context) -> UIDocumentPickerViewController {
    let sheet = UIDocumentPickerViewController(forExporting: [file], asCopy: true)
    sheet.delegate = context.coordinator
    return sheet
  }

  func updateUIViewController(_ sheet: UIDocumentPickerViewController, context: Context) {}

  /// Told by the sheet.
  final class Placer: NSObject, UIDocumentPickerDelegate {
    private let done: () -> Void

    init(done: @escaping () -> Void) { self.done = done }

    func documentPicker(_ controller: UIDocumentPickerViewController, didPickDocumentsAt urls: [URL]) { done() }

    func documentPickerWasCancelled(_ controller: UIDocumentPickerViewController) { done() }
  }
}
