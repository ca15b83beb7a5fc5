// A stand-in for Vision: only what the app uses, with Apple's documented signatures.
import Foundation

open class VNRequest: NSObject {
  /// The photo that it was made of.
  fileprivate var photo: Data?
}

public enum VNRequestTextRecognitionLevel: Int, Sendable { case accurate, fast }

open class VNRecognizedText: NSObject {
  private let read: String
  fileprivate init(_ read: String) { self.read = read }
  open var string: String { read }
}

open class VNRecognizedTextObservation: NSObject {
  private let read: String
  fileprivate init(_ read: String) { self.read = read }
  open func topCandidates(_ maxCandidateCount: Int) -> [VNRecognizedText] { [VNRecognizedText(read)] }
}

open class VNRecognizeTextRequest: VNRequest {
  open var recognitionLevel: VNRequestTextRecognitionLevel = .accurate
  open var usesLanguageCorrection = true
  /// What stands in a photo, a line each, for the tests.
  nonisolated(unsafe) public static var printed: (Data) -> [String] = { _ in [] }
  open var results: [VNRecognizedTextObservation]? {
    photo.map { Self.printed($0).map(VNRecognizedTextObservation.init) }
  }
}

public struct VNImageOption: Hashable, Sendable {}

open class VNImageRequestHandler: NSObject {
  private let photo: Data
  public init(data imageData: Data, options: [VNImageOption: Any] = [:]) { photo = imageData }
  open func perform(_ requests: [VNRequest]) throws { for request in requests { request.photo = photo } }
}
