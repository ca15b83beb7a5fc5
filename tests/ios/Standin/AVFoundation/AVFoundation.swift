// A stand-in for AVFoundation: only what the app uses, with Apple's documented signatures.
import Foundation

public struct AVMediaType: Hashable, RawRepresentable, Sendable {
  public let rawValue: String
  public init(rawValue: String) { self.rawValue = rawValue }
  public static let video = AVMediaType(rawValue: "vide")
}

open class AVCaptureDevice: NSObject {
  public enum TorchMode: Int, Sendable { case off, on, auto }
  open class func `default`(for mediaType: AVMediaType) -> AVCaptureDevice? { nil }
  open var hasTorch: Bool { false }
  open var isTorchActive: Bool { false }
  open var torchMode: TorchMode = .off
  open func lockForConfiguration() throws {}
  open func unlockForConfiguration() {}
  open func setTorchModeOn(level torchLevel: Float) throws {}
}
