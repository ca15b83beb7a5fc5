// A stand-in for UIKit: only what the app uses, with Apple's documented signatures.
import Foundation

@MainActor open class UIResponder: NSObject {}

@MainActor open class UIViewController: UIResponder {}

@MainActor open class UINavigationController: UIViewController {}

@MainActor public protocol UINavigationControllerDelegate: NSObjectProtocol {}

open class UIImage: NSObject, @unchecked Sendable {
  public init?(contentsOfFile path: String) {
    guard let data = FileManager.default.contents(atPath: path) else { return nil }
    self.data = data
  }
  private let data: Data
  public init?(data: Data) { self.data = data }
  /// As it came: nothing is compressed here.
  public func jpegData(compressionQuality: CGFloat) -> Data? { data.isEmpty ? nil : data }
}

public enum UIKeyboardType: Int, Sendable {
  case `default`, asciiCapable, numbersAndPunctuation, numberPad, decimalPad
}

public struct UIBackgroundTaskIdentifier: Hashable, RawRepresentable, Sendable {
  public let rawValue: Int
  public init(rawValue: Int) { self.rawValue = rawValue }
  public static let invalid = UIBackgroundTaskIdentifier(rawValue: 0)
}

@MainActor open class UIApplication: UIResponder {
  public static let shared = UIApplication()
  open var isIdleTimerDisabled = false
  open func beginBackgroundTask(
    withName taskName: String?, expirationHandler handler: (@MainActor @Sendable () -> Void)? = nil
  ) -> UIBackgroundTaskIdentifier { UIBackgroundTaskIdentifier(rawValue: 1) }
  open func endBackgroundTask(_ identifier: UIBackgroundTaskIdentifier) {}
}

public struct UIAccessibilityPriority: Hashable, RawRepresentable, Sendable {
  public let rawValue: String
  public init(rawValue: String) { self.rawValue = rawValue }
  public static let high = UIAccessibilityPriority(rawValue: "high")
  public static let low = UIAccessibilityPriority(rawValue: "low")
}

extension NSAttributedString.Key {
  public static let accessibilitySpeechAnnouncementPriority = NSAttributedString.Key(
    rawValue: "UIAccessibilitySpeechAttributeAnnouncementPriority")
}

@MainActor public enum UIAccessibility {
  public struct Notification: Hashable, Sendable {
    let name: String
    public static let announcement = Notification(name: "announcement")
  }
  /// What was said, for the tests.
  public static var said: [String] = []
  public static func post(notification: UIAccessibility.Notification, argument: Any?) {
    if let words = argument as? NSAttributedString { said.append(words.string) }
  }
}

@MainActor public protocol UIImagePickerControllerDelegate: NSObjectProtocol {
  func imagePickerController(
    _ picker: UIImagePickerController, didFinishPickingMediaWithInfo info: [UIImagePickerController.InfoKey: Any])
  func imagePickerControllerDidCancel(_ picker: UIImagePickerController)
}

@MainActor open class UIImagePickerController: UINavigationController {
  public enum SourceType: Int, Sendable { case photoLibrary, camera, savedPhotosAlbum }
  public struct InfoKey: Hashable, RawRepresentable, Sendable {
    public let rawValue: String
    public init(rawValue: String) { self.rawValue = rawValue }
    public static let originalImage = InfoKey(rawValue: "UIImagePickerControllerOriginalImage")
  }
  /// Whether there is a camera, for the tests.
  public static var hasCamera = false
  open class func isSourceTypeAvailable(_ sourceType: SourceType) -> Bool { sourceType == .camera && hasCamera }
  open var sourceType: SourceType = .photoLibrary
  open weak var delegate: (any UIImagePickerControllerDelegate & UINavigationControllerDelegate)?
}

@MainActor open class UIActivityViewController: UIViewController {
  public struct ActivityType: Hashable, RawRepresentable, Sendable {
    public let rawValue: String
    public init(rawValue: String) { self.rawValue = rawValue }
  }
  public typealias CompletionWithItemsHandler = (ActivityType?, Bool, [Any]?, (any Error)?) -> Void
  public init(activityItems: [Any], applicationActivities: [UIActivity]?) {}
  open var completionWithItemsHandler: CompletionWithItemsHandler?
}

@MainActor open class UIActivity: NSObject {}

@MainActor public protocol UIDocumentPickerDelegate: NSObjectProtocol {
  func documentPicker(_ controller: UIDocumentPickerViewController, didPickDocumentsAt urls: [URL])
  func documentPickerWasCancelled(_ controller: UIDocumentPickerViewController)
}

@MainActor open class UIDocumentPickerViewController: UIViewController {
  public init(forExporting urls: [URL], asCopy: Bool) {}
  open weak var delegate: (any UIDocumentPickerDelegate)?
}

extension URL {
  public func startAccessingSecurityScopedResource() -> Bool { true }
  public func stopAccessingSecurityScopedResource() {}
}
