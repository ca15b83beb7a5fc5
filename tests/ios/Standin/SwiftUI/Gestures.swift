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

/// What touches tell once they are over.
@MainActor
protocol Taps {
  var tapped: ((CGPoint) -> Void)? { get }
  var doubleTapped: (() -> Void)? { get }
}

public struct TapGesture: Gesture {
  public typealias Value = ()
  let count: Int
  public nonisolated init(count: Int = 1) { self.count = count }
}

public struct SpatialTapGesture: Gesture {
  public struct Value: Equatable, Sendable {
    public var location: CGPoint
  }
  let count: Int
  public nonisolated init(count: Int = 1, coordinateSpace: some CoordinateSpaceProtocol = .local) { self.count = count }
}

/// The first of two, or the second once the first cannot come any more.
public struct ExclusiveGesture<First: Gesture, Second: Gesture>: Gesture, Taps {
  public enum Value {
    case first(First.Value)
    case second(Second.Value)
  }
  let first: First
  let second: Second
  var tapped: ((CGPoint) -> Void)? { (first as? any Taps)?.tapped ?? (second as? any Taps)?.tapped }
  var doubleTapped: (() -> Void)? { (first as? any Taps)?.doubleTapped ?? (second as? any Taps)?.doubleTapped }
}

extension Gesture {
  public func exclusively<Other: Gesture>(before other: Other) -> ExclusiveGesture<Self, Other> {
    ExclusiveGesture(first: self, second: other)
  }
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

extension _EndedGesture: Taps {
  var tapped: ((CGPoint) -> Void)? {
    if let tap = content as? TapGesture, tap.count == 1, let ended = ended as? (()) -> Void {
      return { _ in ended(()) }
    }
    guard let tap = content as? SpatialTapGesture, tap.count == 1,
      let ended = ended as? (SpatialTapGesture.Value) -> Void
    else { return nil }
    return { ended(SpatialTapGesture.Value(location: $0)) }
  }

  var doubleTapped: (() -> Void)? {
    guard let tap = content as? TapGesture, tap.count == 2, let ended = ended as? (()) -> Void else { return nil }
    return { ended(()) }
  }
}

public struct AccessibilityZoomGestureAction: Sendable {
  public enum Direction: Hashable, Sendable { case zoomIn, zoomOut }
  public let direction: AccessibilityZoomGestureAction.Direction
}
