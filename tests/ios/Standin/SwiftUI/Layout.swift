public struct VStack<Content: View>: View, Primitive {
  let content: Content
  public init(
    alignment: HorizontalAlignment = .center, spacing: CGFloat? = nil, @ViewBuilder content: () -> Content
  ) { self.content = content() }
  public typealias Body = Never
  func drawn() -> [Drawn] { [Drawn("VStack", "", tree(content))] }
}

public struct HStack<Content: View>: View, Primitive {
  let content: Content
  public init(
    alignment: VerticalAlignment = .center, spacing: CGFloat? = nil, @ViewBuilder content: () -> Content
  ) { self.content = content() }
  public typealias Body = Never
  func drawn() -> [Drawn] { [Drawn("HStack", "", tree(content))] }
}

public struct ZStack<Content: View>: View, Primitive {
  let content: Content
  public init(alignment: Alignment = .center, @ViewBuilder content: () -> Content) { self.content = content() }
  public typealias Body = Never
  func drawn() -> [Drawn] { [Drawn("ZStack", "", tree(content))] }
}

public struct PinnedScrollableViews: OptionSet, Sendable {
  public let rawValue: UInt32
  public init(rawValue: UInt32) { self.rawValue = rawValue }
}

public struct LazyVGrid<Content: View>: View, Primitive {
  let content: Content
  public init(
    columns: [GridItem], alignment: HorizontalAlignment = .center, spacing: CGFloat? = nil,
    pinnedViews: PinnedScrollableViews = .init(), @ViewBuilder content: () -> Content
  ) { self.content = content() }
  public typealias Body = Never
  func drawn() -> [Drawn] { [Drawn("LazyVGrid", "", tree(content))] }
}

public struct ScrollView<Content: View>: View, Primitive {
  let content: Content
  public init(_ axes: Axis.Set = .vertical, @ViewBuilder content: () -> Content) { self.content = content() }
  public typealias Body = Never
  func drawn() -> [Drawn] { [Drawn("ScrollView", "", tree(content))] }
}

public struct Spacer: View, Primitive {
  public init(minLength: CGFloat? = nil) {}
  public typealias Body = Never
  func drawn() -> [Drawn] { [] }
}

public struct GeometryProxy: Sendable {
  public let size: CGSize
}

/// Whatever it stands in, it is told the size of the window: nothing is laid out here.
public struct GeometryReader<Content: View>: View, Primitive {
  public var content: (GeometryProxy) -> Content
  public init(@ViewBuilder content: @escaping (GeometryProxy) -> Content) { self.content = content }
  public typealias Body = Never
  func drawn() -> [Drawn] { tree(content(GeometryProxy(size: Now.environment.window))) }
}

/// The first of its views.
public struct ViewThatFits<Content: View>: View, Primitive {
  let content: Content
  public init(in axes: Axis.Set = [.horizontal, .vertical], @ViewBuilder content: () -> Content) {
    self.content = content()
  }
  public typealias Body = Never
  func drawn() -> [Drawn] { Array(tree(content).prefix(1)) }
}

@MainActor @preconcurrency
public protocol App {
  associatedtype Body: Scene
  @SceneBuilder var body: Self.Body { get }
  init()
}

extension App {
  public static func main() {}
}

@MainActor @preconcurrency
public protocol Scene {
  associatedtype Body: Scene
  @SceneBuilder var body: Self.Body { get }
}

extension Never: Scene {}

@resultBuilder
public struct SceneBuilder {
  public static func buildBlock<Content: Scene>(_ content: Content) -> Content { content }
}

public struct WindowGroup<Content: View>: Scene {
  public init(@ViewBuilder content: () -> Content) {}
  public var body: Never { fatalError("no body") }
}

@MainActor @preconcurrency
public protocol UIViewControllerRepresentable: View where Body == Never {
  associatedtype UIViewControllerType: UIViewController
  associatedtype Coordinator = Void
  func makeUIViewController(context: Self.Context) -> Self.UIViewControllerType
  func updateUIViewController(_ uiViewController: Self.UIViewControllerType, context: Self.Context)
  func makeCoordinator() -> Self.Coordinator
  typealias Context = UIViewControllerRepresentableContext<Self>
}

extension UIViewControllerRepresentable where Coordinator == Void {
  public func makeCoordinator() {}
}

@MainActor
public struct UIViewControllerRepresentableContext<Representable: UIViewControllerRepresentable> {
  public let coordinator: Representable.Coordinator
}
