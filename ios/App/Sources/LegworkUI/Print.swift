import Foundation
import Vision

/// Reads print in a photo, on the phone itself.
enum Print {
  /// What it reads, a line each; empty if nothing.
  static func read(_ photo: Data) async -> String {
    await Task.detached {
      let request = VNRecognizeTextRequest()
      request.recognitionLevel = .accurate
      // Numbers and marks are not words of any language.
      request.usesLanguageCorrection = false
      try? VNImageRequestHandler(data: photo, options: [:]).perform([request])
      return (request.results ?? []).compactMap { $0.topCandidates(1).first?.string }.joined(separator: "\n")
    }.value
  }
}
