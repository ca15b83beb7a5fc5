import Foundation

/// Does something away from here, and waits for it no longer than this. It is not broken off: it ends when it ends.
public func inTime(_ most: Duration, _ work: @escaping @Sendable () -> Void) async {
  let once = Once()
  await withCheckedContinuation { (over: CheckedContinuation<Void, Never>) in
    Thread.detachNewThread {
      work()
      if once.first() { over.resume() }
    }
    Task.detached {
      try? await Task.sleep(for: most)
      if once.first() { over.resume() }
    }
  }
}

/// Tells the first who asks from all others.
private final class Once: @unchecked Sendable {
  private let lock = NSLock()
  private var isOver = false

  func first() -> Bool {
    lock.withLock {
      defer { isOver = true }
      return !isOver
    }
  }
}
