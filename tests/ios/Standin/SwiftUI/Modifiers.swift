import UniformTypeIdentifiers

// What changes nothing of the tree passes through.

extension View {
  public func font(_ font: Font?) -> some View { with { $0.font = font } }
  public func lineSpacing(_ lineSpacing: CGFloat) -> some View { same() }
  public func monospacedDigit() -> some View { same() }
  public func multilineTextAlignment(_ alignment: TextAlignment) -> some View { same() }
  public func foregroundStyle<S: ShapeStyle>(_ style: S) -> some View { same() }
  public func tint(_ tint: Color?) -> some View { same() }
  public func opacity(_ opacity: Double) -> some View { same() }
  public func padding(_ edges: Edge.Set = .all, _ length: CGFloat? = nil) -> some View { same() }
  public func padding(_ length: CGFloat) -> some View { same() }
  public func frame(
    width: CGFloat? = nil, height: CGFloat? = nil, alignment: Alignment = .center
  ) -> some View { each { if let width { $0.width = width } } }
  public func frame(
    minWidth: CGFloat? = nil, idealWidth: CGFloat? = nil, maxWidth: CGFloat? = nil, minHeight: CGFloat? = nil,
    idealHeight: CGFloat? = nil, maxHeight: CGFloat? = nil, alignment: Alignment = .center
  ) -> some View { same() }
  public func fixedSize() -> some View { same() }
  public func fixedSize(horizontal: Bool, vertical: Bool) -> some View { same() }
  public func offset(x: CGFloat = 0, y: CGFloat = 0) -> some View { same() }
  public func aspectRatio(_ aspectRatio: CGFloat? = nil, contentMode: ContentMode) -> some View { same() }
  public func clipped(antialiased: Bool = false) -> some View { same() }
  public func clipShape<S: Shape>(_ shape: S, style: FillStyle = FillStyle()) -> some View { same() }
  public func contentShape<S: Shape>(_ shape: S, eoFill: Bool = false) -> some View { same() }
  public func ignoresSafeArea() -> some View { same() }
  public func flipsForRightToLeftLayoutDirection(_ enabled: Bool) -> some View { same() }
  public func id<ID: Hashable>(_ id: ID) -> some View { same() }
  public func transition(_ t: AnyTransition) -> some View { same() }
  public func animation<V: Equatable>(_ animation: Animation?, value: V) -> some View {
    each { $0.notes.append(animation == nil ? "still" : "fades") }
  }
  public func background<S: ShapeStyle>(_ style: S, ignoresSafeAreaEdges edges: Edge.Set = .all) -> some View {
    same()
  }
  public func textInputAutocapitalization(_ autocapitalization: TextInputAutocapitalization?) -> some View { same() }
  public func autocorrectionDisabled(_ disable: Bool = true) -> some View {
    each { if disable { $0.notes.append("as typed") } }
  }
  public func keyboardType(_ type: UIKeyboardType) -> some View { each { $0.notes.append("\(type)") } }
  public func submitLabel(_ submitLabel: SubmitLabel) -> some View { same() }
  public func onSubmit(of triggers: SubmitTriggers = .text, _ action: @escaping (() -> Void)) -> some View {
    each { $0.press = { action() } }
  }
  public func keyboardShortcut(
    _ key: KeyEquivalent, modifiers: EventModifiers = .command
  ) -> some View { same() }
  public func keyboardShortcut(_ shortcut: KeyboardShortcut) -> some View { same() }
  public func onTapGesture(
    count: Int = 1, coordinateSpace: some CoordinateSpaceProtocol = .local,
    perform action: @escaping (CGPoint) -> Void
  ) -> some View { each { if count == 1 { $0.tap = { action($0) } } } }
  public func onTapGesture(count: Int = 1, perform action: @escaping () -> Void) -> some View {
    each { if count == 2 { $0.doubleTap = { action() } } else { $0.tap = { _ in action() } } }
  }
  public func gesture<T: Gesture>(_ gesture: T) -> some View {
    let changed = (gesture as? any Magnifies)?.magnified
    let taps = gesture as? any Taps
    return each {
      if let changed { $0.magnify = { changed($0) } }
      if let tapped = taps?.tapped { $0.tap = { tapped($0) } }
      if let twice = taps?.doubleTapped { $0.doubleTap = { twice() } }
    }
  }
  public func contextMenu<MenuItems: View>(@ViewBuilder menuItems: () -> MenuItems) -> some View {
    each { $0.notes.append("menu") }
  }
  public func sensoryFeedback<T: Equatable>(_ feedback: SensoryFeedback, trigger: T) -> some View { same() }
  public func onOpenURL(perform action: @escaping (URL) -> Void) -> some View { same() }
  public func task(
    priority: TaskPriority = .userInitiated, @_inheritActorContext _ action: @escaping @Sendable () async -> Void
  ) -> some View { same() }

  public func disabled(_ disabled: Bool) -> some View { with { if disabled { $0.isEnabled = false } } }
  public func buttonStyle<S: ButtonStyle>(_ style: S) -> some View {
    with { $0.style = { style.makeBody(configuration: $0) } }
  }
  public func environment<V>(_ keyPath: WritableKeyPath<EnvironmentValues, V>, _ value: V) -> some View {
    with { $0[keyPath: keyPath] = value }
  }

  public func overlay<V: View>(
    alignment: Alignment = .center, @ViewBuilder content: () -> V
  ) -> some View {
    let above = content()
    return changed { draw in
      let drawn = draw()
      let over = tree(above).filter { !$0.isHidden && $0.kind != "Shape" }
      return over.isEmpty ? drawn : [Drawn("Overlay", "", drawn + over)]
    }
  }

  public func safeAreaInset<V: View>(
    edge: VerticalEdge, alignment: HorizontalAlignment = .center, spacing: CGFloat? = nil,
    @ViewBuilder content: () -> V
  ) -> some View {
    let inset = content()
    return changed { draw in
      let drawn = draw()
      let beside = tree(inset)
      return [Drawn("SafeAreaInset", "", edge == .top ? beside + drawn : drawn + beside)]
    }
  }

  public func onChange<V: Equatable>(
    of value: V, initial: Bool = false, _ action: @escaping (_ oldValue: V, _ newValue: V) -> Void
  ) -> some View {
    changed { draw in
      let key = Now.path.joined(separator: "/") + "#\(V.self)"
      if let memory = Now.host {
        let old = memory.watched[key] as? V
        memory.watched[key] = value
        if let old, old != value { memory.later.append { action(old, value) } }
        if old == nil && initial { memory.later.append { action(value, value) } }
      }
      return draw()
    }
  }
  public func onChange<V: Equatable>(
    of value: V, initial: Bool = false, _ action: @escaping () -> Void
  ) -> some View { onChange(of: value, initial: initial) { _, _ in action() } }

  func presented(_ isPresented: Bool, _ kind: String, _ content: @escaping () -> [Drawn]) -> some View {
    changed { draw in draw() + (isPresented ? [Drawn(kind, "", at(kind) { content() })] : []) }
  }
  public func sheet<Content: View>(
    isPresented: Binding<Bool>, onDismiss: (() -> Void)? = nil, @ViewBuilder content: @escaping () -> Content
  ) -> some View { presented(isPresented.wrappedValue, "Sheet") { tree(content()) } }
  public func sheet<Item: Identifiable, Content: View>(
    item: Binding<Item?>, onDismiss: (() -> Void)? = nil, @ViewBuilder content: @escaping (Item) -> Content
  ) -> some View {
    presented(item.wrappedValue != nil, "Sheet") { item.wrappedValue.map { tree(content($0)) } ?? [] }
  }
  public func fullScreenCover<Content: View>(
    isPresented: Binding<Bool>, onDismiss: (() -> Void)? = nil, @ViewBuilder content: @escaping () -> Content
  ) -> some View { presented(isPresented.wrappedValue, "Cover") { tree(content()) } }
}

// What VoiceOver says.
extension View {
  public func accessibilityElement(children: AccessibilityChildBehavior = .ignore) -> some View {
    // An element of its own: nothing of what is within it counts but by the behavior.
    changed { draw in
      let drawn = draw()
      guard !drawn.isEmpty else { return [] }
      let element = Drawn("Element", "", drawn)
      element.behavior = children
      // Fingers find what is within all the same.
      element.tap = drawn.lazy.compactMap(\.tap).first
      element.doubleTap = drawn.lazy.compactMap(\.doubleTap).first
      return [element]
    }
  }
  public func accessibilityLabel(_ label: Text) -> some View { each { $0.label = label.words } }
  public func accessibilityValue(_ value: Text) -> some View { each { $0.value = value.words } }
  public func accessibilityHint(_ hint: Text) -> some View { each { $0.hint = hint.words } }
  public func accessibilityIdentifier(_ identifier: String) -> some View { each { $0.identifier = identifier } }
  public func accessibilityAddTraits(_ traits: AccessibilityTraits) -> some View {
    each { $0.traits.formUnion(traits) }
  }
  public func accessibilityHeading(_ level: AccessibilityHeadingLevel) -> some View { each { $0.level = level } }
  public func accessibilityHidden(_ hidden: Bool) -> some View { each { $0.isHidden = hidden } }
  public func accessibilitySortPriority(_ sortPriority: Double) -> some View { each { $0.priority = sortPriority } }
  public func accessibilityAction(named name: Text, _ handler: @escaping () -> Void) -> some View {
    each { $0.notes.append("action \(name.words)") }
  }
  public func accessibilityZoomAction(
    _ handler: @escaping (AccessibilityZoomGestureAction) -> Void
  ) -> some View { each { $0.notes.append("zooms") } }
  public func accessibilityChildren<V: View>(@ViewBuilder children: () -> V) -> some View {
    let children = children()
    return one {
      $0.children = tree(children)
      $0.behavior = .contain
    }
  }
  public func accessibilityFocused(_ condition: AccessibilityFocusState<Bool>.Binding) -> some View {
    each { $0.notes.append("focus") }
  }
}

extension View {
  public func fileImporter(
    isPresented: Binding<Bool>, allowedContentTypes: [UTType],
    onCompletion: @escaping (_ result: Result<URL, any Error>) -> Void
  ) -> some View {
    presented(isPresented.wrappedValue, "FileImporter") {
      let drawn = Drawn("Files")
      drawn.choose = { chosen in
        isPresented.wrappedValue = false
        if let file = chosen as? URL { onCompletion(.success(file)) }
      }
      return [drawn]
    }
  }
}

extension View {
  /// A sheet of the system beside it, for the stand-ins of other frameworks.
  public func picking(_ isPresented: Bool, _ choose: @escaping @MainActor (Any) -> Void) -> some View {
    presented(isPresented, "Picker") {
      let drawn = Drawn("Photos")
      drawn.choose = choose
      return [drawn]
    }
  }
}
