// A stand-in for SwiftUI: only what the app uses, with Apple's documented signatures, so that the app's files can be
// type-checked where there is no Mac; and enough behind it to draw a view as a tree of words. It lays nothing out.

/// One thing of a tree.
@MainActor
public final class Drawn {
  public let kind: String
  public var words: String
  public var children: [Drawn]
  public var label: String?
  public var value: String?
  public var hint: String?
  public var identifier: String?
  public var traits: AccessibilityTraits = []
  public var level: AccessibilityHeadingLevel = .unspecified
  public var isHidden = false
  public var behavior: AccessibilityChildBehavior?
  public var priority = 0.0
  public var isEnabled = true
  public var notes: [String] = []
  public var press: (@MainActor () -> Void)?
  public var type: (@MainActor (String) -> Void)?
  public var tap: (@MainActor (CGPoint) -> Void)?
  public var doubleTap: (@MainActor () -> Void)?
  public var magnify: (@MainActor (CGFloat) -> Void)?
  /// Of a sheet of the system: what was chosen in it. It is closed before, as the system does.
  public var choose: (@MainActor (Any) -> Void)?
  /// Of what UIKit draws: the view that makes it.
  public var maker: Any?
  public var width: CGFloat?

  init(_ kind: String, _ words: String = "", _ children: [Drawn] = []) {
    self.kind = kind
    self.words = words
    self.children = children
  }
}

/// What draws itself, and has no body.
@MainActor
protocol Primitive {
  func drawn() -> [Drawn]
}

/// What holds from here inwards while a tree is drawn.
@MainActor
enum Now {
  nonisolated(unsafe) static var environment = EnvironmentValues()
  static var path: [String] = []
  static var host: Memory?

  static func with<T>(_ change: (inout EnvironmentValues) -> Void, _ work: () -> T) -> T {
    let before = environment
    defer { environment = before }
    change(&environment)
    return work()
  }
}

/// What a view remembers from one drawing to the next.
@MainActor
final class Memory {
  var boxes: [String: AnyObject] = [:]
  var watched: [String: Any] = [:]
  var later: [@MainActor () -> Void] = []
}

/// A property that is remembered.
@MainActor
protocol Remembered {
  func adopt(_ memory: Memory, _ key: String)
}

/// A view as a tree.
@MainActor
func tree(_ view: any View) -> [Drawn] {
  if let primitive = view as? any Primitive { return primitive.drawn() }
  if view is any UIViewControllerRepresentable {
    let drawn = Drawn("Controller")
    drawn.maker = view
    return [drawn]
  }
  Now.path.append("\(Swift.type(of: view))")
  defer { Now.path.removeLast() }
  remember(view)
  return tree(bodyOf(view))
}

@MainActor
func remember(_ thing: Any) {
  guard let memory = Now.host else { return }
  for child in Mirror(reflecting: thing).children {
    if let property = child.value as? any Remembered {
      property.adopt(memory, Now.path.joined(separator: "/") + "." + (child.label ?? ""))
    }
  }
}

@MainActor
private func bodyOf(_ view: some View) -> any View { view.body }

/// Draws a view again and again, as its state changes.
@MainActor
public final class Stage {
  private let view: any View
  private let memory = Memory()
  private let settle: (inout EnvironmentValues) -> Void

  /// Over a view, in surroundings.
  public init(_ view: some View, _ settle: @escaping (inout EnvironmentValues) -> Void = { _ in }) {
    self.view = view
    self.settle = settle
  }

  /// The tree as it is now. What waits for a change is done afterwards.
  public func draw() -> [Drawn] {
    Now.host = memory
    defer { Now.host = nil }
    let drawn = Now.with(settle) { tree(view) }
    let later = memory.later
    memory.later = []
    for work in later { work() }
    return drawn
  }
}
