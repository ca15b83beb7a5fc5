@_exported import Foundation
@_exported import Observation
@_exported import UIKit

@MainActor @preconcurrency
public protocol View {
  associatedtype Body: View
  @ViewBuilder var body: Self.Body { get }
}

extension Never: View {
  public var body: Never { fatalError("no body") }
}

extension View where Body == Never {
  public var body: Never { fatalError("\(Self.self) has no body") }
}

@resultBuilder
public struct ViewBuilder {
  public static func buildExpression<Content: View>(_ content: Content) -> Content { content }
  public static func buildBlock() -> EmptyView { EmptyView() }
  public static func buildBlock<Content: View>(_ content: Content) -> Content { content }
  @MainActor public static func buildBlock<each Content: View>(
    _ content: repeat each Content
  ) -> TupleView<(repeat each Content)> {
    var views: [any View] = []
    repeat views.append(each content)
    return TupleView((repeat each content), views)
  }
  public static func buildIf<Content: View>(_ content: Content?) -> Content? { content }
  @MainActor public static func buildEither<TrueContent: View, FalseContent: View>(
    first: TrueContent
  ) -> _ConditionalContent<TrueContent, FalseContent> { .init(one: first, other: nil) }
  @MainActor public static func buildEither<TrueContent: View, FalseContent: View>(
    second: FalseContent
  ) -> _ConditionalContent<TrueContent, FalseContent> { .init(one: nil, other: second) }
}

public struct EmptyView: View, Primitive {
  public nonisolated init() {}
  public typealias Body = Never
  func drawn() -> [Drawn] { [] }
}

public struct TupleView<T>: View, Primitive {
  public var value: T
  let views: [any View]
  init(_ value: T, _ views: [any View]) {
    self.value = value
    self.views = views
  }
  public typealias Body = Never
  func drawn() -> [Drawn] {
    views.enumerated().flatMap { place, view in at("\(place)") { tree(view) } }
  }
}

@MainActor
func at<T>(_ step: String, _ work: () -> T) -> T {
  Now.path.append(step)
  defer { Now.path.removeLast() }
  return work()
}

public struct _ConditionalContent<TrueContent: View, FalseContent: View>: View, Primitive {
  let one: TrueContent?
  let other: FalseContent?
  public typealias Body = Never
  func drawn() -> [Drawn] {
    if let one { return at("yes") { tree(one) } }
    if let other { return at("no") { tree(other) } }
    return []
  }
}

extension Optional: View where Wrapped: View {
  public typealias Body = Never
}

extension Optional: Primitive where Wrapped: View {
  func drawn() -> [Drawn] { map { tree($0) } ?? [] }
}

public struct Group<Content: View>: View, Primitive {
  let content: Content
  public init(@ViewBuilder content: () -> Content) { self.content = content() }
  public typealias Body = Never
  func drawn() -> [Drawn] { tree(content) }
}

public struct ForEach<Data: RandomAccessCollection, ID: Hashable, Content: View>: View, Primitive {
  let data: Data
  let id: (Data.Element) -> ID
  let content: (Data.Element) -> Content
  public typealias Body = Never
  func drawn() -> [Drawn] { data.flatMap { one in at("\(id(one))") { tree(content(one)) } } }
}

extension ForEach where ID == Data.Element.ID, Data.Element: Identifiable {
  public init(_ data: Data, @ViewBuilder content: @escaping (Data.Element) -> Content) {
    self.data = data
    self.id = { $0.id }
    self.content = content
  }
}

extension ForEach {
  public init(
    _ data: Data, id: KeyPath<Data.Element, ID>, @ViewBuilder content: @escaping (Data.Element) -> Content
  ) {
    self.data = data
    self.id = { $0[keyPath: id] }
    self.content = content
  }
}

@MainActor @preconcurrency
public protocol ViewModifier {
  associatedtype Body: View
  @ViewBuilder func body(content: Self.Content) -> Self.Body
  typealias Content = _ViewModifier_Content<Self>
}

public struct _ViewModifier_Content<Modifier: ViewModifier>: View, Primitive {
  let view: any View
  public typealias Body = Never
  func drawn() -> [Drawn] { tree(view) }
}

public struct ModifiedContent<Content: View, Modifier: ViewModifier>: View, Primitive {
  public var content: Content
  public var modifier: Modifier
  public typealias Body = Never
  func drawn() -> [Drawn] {
    at("\(Modifier.self)") {
      remember(modifier)
      return tree(modifier.body(content: .init(view: content)))
    }
  }
}

extension View {
  public func modifier<T: ViewModifier>(_ modifier: T) -> ModifiedContent<Self, T> {
    ModifiedContent(content: self, modifier: modifier)
  }
}

/// A view that only changes what another one draws.
struct Changed<Content: View>: View, Primitive {
  let content: Content
  let change: @MainActor (() -> [Drawn]) -> [Drawn]
  typealias Body = Never
  func drawn() -> [Drawn] { change { tree(content) } }
}

extension View {
  func changed(_ change: @escaping @MainActor (() -> [Drawn]) -> [Drawn]) -> some View {
    Changed(content: self, change: change)
  }

  /// Passes through unchanged.
  func same() -> some View { changed { $0() } }

  /// Changes each thing that is drawn.
  func each(_ change: @escaping @MainActor (Drawn) -> Void) -> some View {
    changed { draw in
      let drawn = draw()
      for one in drawn { change(one) }
      return drawn
    }
  }

  /// Changes the one thing that is drawn; several become one first.
  func one(_ change: @escaping @MainActor (Drawn) -> Void) -> some View {
    changed { draw in
      let drawn = draw()
      guard let only = drawn.first else { return [] }
      let one = drawn.count == 1 ? only : Drawn("Group", "", drawn)
      change(one)
      return [one]
    }
  }

  func with(_ settle: @escaping @MainActor (inout EnvironmentValues) -> Void) -> some View {
    changed { draw in Now.with(settle) { draw() } }
  }
}
