@MainActor @preconcurrency
public protocol Gesture<Value> {
  associatedtype Value
}

/// What a magnification tells while it goes on.
@MainActor
protocol Magnifies {
  var magnified: ((CGFloat) -> Void)? { get }
}

public struct MagnifyGesture: Gesture, Magnifies {
  public struct Value: Equatable, Sendable {
    public var magnification: CGFloat
  }
  public nonisolated init(minimumScaleDelta: CGFloat = 0.01) {}
  var magnified: ((CGFloat) -> Void)? { nil }
}

public struct _ChangedGesture<Content: Gesture>: Gesture {
  public typealias Value = Content.Value
  let content: Content
  let changed: (Content.Value) -> Void
}

public struct _EndedGesture<Content: Gesture>: Gesture {
  public typealias Value = Content.Value
  let content: Content
  let ended: (Content.Value) -> Void
}

extension Gesture where Value: Equatable {
  public func onChanged(_ action: @escaping (Value) -> Void) -> _ChangedGesture<Self> {
    _ChangedGesture(content: self, changed: action)
  }
}

extension Gesture {
  public func onEnded(_ action: @escaping (Value) -> Void) -> _EndedGesture<Self> {
    _EndedGesture(content: self, ended: action)
  }
}

extension _ChangedGesture: Magnifies {
  var magnified: ((CGFloat) -> Void)? {
    guard let changed = changed as? (MagnifyGesture.Value) -> Void else { return nil }
    return { changed(MagnifyGesture.Value(magnification: $0)) }
  }
}

extension _EndedGesture: Magnifies {
  /// It goes on, and ends there.
  var magnified: ((CGFloat) -> Void)? {
    guard let ended = ended as? (MagnifyGesture.Value) -> Void else { return nil }
    let before = (content as? any Magnifies)?.magnified
    return {
      before?($0)
      ended(MagnifyGesture.Value(magnification: $0))
    }
  }
}

public struct AccessibilityZoomGestureAction: Sendable {
  public enum Direction: Hashable, Sendable { case zoomIn, zoomOut }
  public let direction: AccessibilityZoomGestureAction.Direction
}
