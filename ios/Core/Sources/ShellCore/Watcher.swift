import Door

/// Hands what the core tells over to the main actor.
final class Watcher: DrawAgain {
  private let then: @MainActor @Sendable () -> Void

  init(then: @escaping @MainActor @Sendable () -> Void) {
    self.then = then
  }

  func drawAgain() throws {
    let then = then
    Task { @MainActor in then() }
  }
}
