// A stand-in for Vision: only what the app uses, with Apple's documented signatures.
import Foundation

open class VNRequest: NSObject {}

public enum VNRequestTextRecognitionLevel: Int, Sendable { case accurate, fast }

open class VNRecognizedText: NSObject {
  open var string: String { "" }
}

open class VNRecognizedTextObservation: NSObject {
  open func topCandidates(_ maxCandidateCount: Int) -> [VNRecognizedText] { [] }
}

open class VNRecognizeTextRequest: VNRequest {
  open var recognitionLevel: VNRequestTextRecognitionLevel = .accurate
  open var usesLanguageCorrection = true
  open var results: [VNRecognizedTextObservation]? { nil }
}

public struct VNImageOption: Hashable, Sendable {}

open class VNImageRequestHandler: NSObject {
  public init(data imageData: Data, options: [VNImageOption: Any] = [:]) {}
  open func perform(_ requests: [VNRequest]) throws {}
}
