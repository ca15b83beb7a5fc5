public struct Text: View, Primitive, Equatable, Sendable {
  let words: String
  var own: Font?
  public nonisolated init(verbatim content: String) { words = content }
  @_disfavoredOverload public nonisolated init<S: StringProtocol>(_ content: S) { words = String(content) }
  public nonisolated func font(_ font: Font?) -> Text {
    var text = self
    text.own = font
    return text
  }
  public nonisolated func foregroundStyle<S: ShapeStyle>(_ style: S) -> Text { self }
  public typealias Body = Never
  func drawn() -> [Drawn] {
    let drawn = Drawn("Text", words)
    if Now.environment.layoutDirection == .rightToLeft { drawn.notes.append("from the right") }
    if let font = own ?? Now.environment.font { drawn.notes.append(font.said) }
    return [drawn]
  }
}

public struct Image: View, Primitive {
  public enum ResizingMode: Sendable { case tile, stretch }
  public init(uiImage: UIImage) {}
  public func resizable(capInsets: EdgeInsets = EdgeInsets(), resizingMode: ResizingMode = .stretch) -> Image { self }
  public typealias Body = Never
  func drawn() -> [Drawn] { [Drawn("Image")] }
}

public struct EdgeInsets: Sendable {
  public init() {}
}

public struct ButtonRole: Equatable, Sendable {
  let name: String
  public static let destructive = ButtonRole(name: "destructive")
  public static let cancel = ButtonRole(name: "cancel")
}

public struct Button<Label: View>: View, Primitive {
  let role: ButtonRole?
  let action: @MainActor () -> Void
  let label: Label
  public init(action: @escaping @MainActor () -> Void, @ViewBuilder label: () -> Label) {
    self.init(role: nil, action: action, label: label)
  }
  public init(role: ButtonRole?, action: @escaping @MainActor () -> Void, @ViewBuilder label: () -> Label) {
    self.role = role
    self.action = action
    self.label = label()
  }
  public typealias Body = Never
  func drawn() -> [Drawn] { [button(label, action, role)] }
}

extension Button where Label == Text {
  public init<S: StringProtocol>(_ title: S, action: @escaping @MainActor () -> Void) {
    self.init(role: nil, action: action) { Text(title) }
  }
  public init<S: StringProtocol>(_ title: S, role: ButtonRole?, action: @escaping @MainActor () -> Void) {
    self.init(role: role, action: action) { Text(title) }
  }
}

@MainActor
func button(_ label: any View, _ action: (@MainActor () -> Void)?, _ role: ButtonRole?) -> Drawn {
  let configuration = ButtonStyleConfiguration(role: role, label: .init(view: label), isPressed: false)
  let inside = Now.environment.style?(configuration) ?? label
  // Within a label its style means nothing any more.
  let drawn = Drawn("Button", "", at("label") { Now.with({ $0.style = nil }) { tree(inside) } })
  drawn.press = action
  drawn.traits = .isButton
  drawn.isEnabled = Now.environment.isEnabled
  if let role { drawn.notes.append(role.name) }
  return drawn
}

public struct ButtonStyleConfiguration {
  public struct Label: View, Primitive {
    let view: any View
    public typealias Body = Never
    func drawn() -> [Drawn] { tree(view) }
  }
  public let role: ButtonRole?
  public let label: ButtonStyleConfiguration.Label
  public let isPressed: Bool
}

@MainActor @preconcurrency
public protocol ButtonStyle {
  associatedtype Body: View
  @ViewBuilder func makeBody(configuration: Self.Configuration) -> Self.Body
  typealias Configuration = ButtonStyleConfiguration
}

public struct TextField<Label: View>: View, Primitive {
  let title: String
  let text: Binding<String>
  public typealias Body = Never
  func drawn() -> [Drawn] {
    let drawn = Drawn("TextField", title)
    let text = text
    drawn.value = text.wrappedValue
    drawn.type = { text.wrappedValue = $0 }
    drawn.isEnabled = Now.environment.isEnabled
    return [drawn]
  }
}

extension TextField where Label == Text {
  public init<S: StringProtocol>(_ title: S, text: Binding<String>, prompt: Text?) {
    self.title = String(title)
    self.text = text
  }
  public init<S: StringProtocol>(_ title: S, text: Binding<String>, prompt: Text?, axis: Axis) {
    self.title = String(title)
    self.text = text
  }
}

public struct DisclosureGroup<Label: View, Content: View>: View, Primitive {
  let isExpanded: Binding<Bool>
  let content: () -> Content
  let label: Label
  public init(
    isExpanded: Binding<Bool>, @ViewBuilder content: @escaping () -> Content, @ViewBuilder label: () -> Label
  ) {
    self.isExpanded = isExpanded
    self.content = content
    self.label = label()
  }
  public typealias Body = Never
  func drawn() -> [Drawn] {
    let isExpanded = isExpanded
    let head = Drawn("Button", "", tree(label))
    head.traits = .isButton
    head.value = isExpanded.wrappedValue ? "(expanded)" : "(collapsed)"
    head.press = { isExpanded.wrappedValue.toggle() }
    return [Drawn("DisclosureGroup", "", [head] + (isExpanded.wrappedValue ? tree(content()) : []))]
  }
}

public struct ProgressView<Label: View, CurrentValueLabel: View>: View, Primitive {
  let share: Double?
  public typealias Body = Never
  func drawn() -> [Drawn] {
    let drawn = Drawn("ProgressView")
    drawn.value = share.map { "\(Int($0 * 100)) %" } ?? ""
    return [drawn]
  }
}

extension ProgressView where Label == EmptyView, CurrentValueLabel == EmptyView {
  public init() { share = nil }
  public init<V: BinaryFloatingPoint>(value: V?, total: V = 1.0) { share = value.map { Double($0 / total) } }
}
