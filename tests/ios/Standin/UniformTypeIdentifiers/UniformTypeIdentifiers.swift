// A stand-in for UniformTypeIdentifiers: only what the app uses, with Apple's documented signatures.

public struct UTType: Hashable, Sendable {
  public static let data = UTType()
  init() {}
  public init?(filenameExtension: String, conformingTo supertype: UTType = .data) {}
}
