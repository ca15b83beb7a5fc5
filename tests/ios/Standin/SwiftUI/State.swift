public protocol DynamicProperty {}

final class Box<Value>: @unchecked Sendable {
  var own: Value
  var target: Box<Value>?
  init(_ own: Value) { self.own = own }
  var value: Value {
    get { target?.value ?? own }
    set { if let target { target.value = newValue } else { own = newValue } }
  }
}

@propertyWrapper
public struct State<Value>: DynamicProperty {
  let box: Box<Value>
  public init(wrappedValue value: Value) { box = Box(value) }
  public init(initialValue value: Value) { box = Box(value) }
  public var wrappedValue: Value {
    get { box.value }
    nonmutating set { box.value = newValue }
  }
  public var projectedValue: Binding<Value> {
    let box = box
    return Binding(read: { box.value }, write: { box.value = $0 })
  }
}

extension State where Value: ExpressibleByNilLiteral {
  public init() { self.init(wrappedValue: nil) }
}

extension State: Sendable where Value: Sendable {}

extension State: Remembered {
  func adopt(_ memory: Memory, _ key: String) {
    if let known = memory.boxes[key] as? Box<Value> {
      if known !== box { box.target = known }
    } else {
      memory.boxes[key] = box
    }
  }
}

@propertyWrapper
public struct Binding<Value>: DynamicProperty {
  let read: () -> Value
  let write: (Value) -> Void

  init(read: @escaping () -> Value, write: @escaping (Value) -> Void) {
    self.read = read
    self.write = write
  }

  // Apple's closures are `@isolated(any) @Sendable`, which nobody else can call without waiting: those of views are on the
  // main actor.
  @preconcurrency public init(
    get: @escaping @MainActor @Sendable () -> Value, set: @escaping @MainActor @Sendable (Value) -> Void
  ) {
    read = { unchecked { get() } }
    write = { value in
      nonisolated(unsafe) let value = value
      unchecked { set(value) }
    }
  }

  public var wrappedValue: Value {
    get { read() }
    nonmutating set { write(newValue) }
  }
  public var projectedValue: Binding<Value> { self }
}

private func unchecked<T>(_ work: @MainActor () -> T) -> T {
  MainActor.preconditionIsolated()
  return withoutActuallyEscaping(work) { unsafeBitCast($0, to: (() -> T).self)() }
}

@propertyWrapper
public struct Environment<Value>: DynamicProperty {
  let path: KeyPath<EnvironmentValues, Value>
  public init(_ keyPath: KeyPath<EnvironmentValues, Value>) { path = keyPath }
  public var wrappedValue: Value { Now.environment[keyPath: path] }
}

@propertyWrapper
public struct ScaledMetric<Value: BinaryFloatingPoint>: DynamicProperty {
  let value: Value
  public init(wrappedValue: Value, relativeTo textStyle: Font.TextStyle) { value = wrappedValue }
  public var wrappedValue: Value { value * Value(Now.environment.dynamicTypeSize.scale) }
}

@propertyWrapper
public struct AccessibilityFocusState<Value: Hashable>: DynamicProperty {
  let box: Box<Value>

  public struct Binding {
    let box: Box<Value>
  }

  public init() where Value == Bool { box = Box(false) }
  public var wrappedValue: Value {
    get { box.value }
    nonmutating set { box.value = newValue }
  }
  public var projectedValue: Binding { Binding(box: box) }
}

public protocol EnvironmentKey {
  associatedtype Value
  static var defaultValue: Self.Value { get }
}

public struct EnvironmentValues {
  private var own: [ObjectIdentifier: Any] = [:]

  public init() {}

  public subscript<K: EnvironmentKey>(key: K.Type) -> K.Value {
    get { own[ObjectIdentifier(key)] as? K.Value ?? K.defaultValue }
    set { own[ObjectIdentifier(key)] = newValue }
  }

  public var colorScheme: ColorScheme = .light
  // Only read by an app; written here by the tests.
  public var colorSchemeContrast: ColorSchemeContrast = .standard
  public var accessibilityReduceMotion = false
  public var dynamicTypeSize: DynamicTypeSize = .large
  public var layoutDirection: LayoutDirection = .leftToRight
  public var scenePhase: ScenePhase = .active
  public var isEnabled = true
  public var locale = Locale.current
  /// The window, for the tests.
  public var window = CGSize(width: 393, height: 759)

  var style: (@MainActor (ButtonStyleConfiguration) -> any View)?
  var font: Font?
}

public enum ColorScheme: CaseIterable, Sendable { case light, dark }
public enum ColorSchemeContrast: CaseIterable, Sendable { case standard, increased }
public enum LayoutDirection: Hashable, CaseIterable, Sendable { case leftToRight, rightToLeft }
public enum ScenePhase: Comparable, Sendable { case background, inactive, active }

public enum DynamicTypeSize: Hashable, Comparable, CaseIterable, Sendable {
  case xSmall, small, medium, large, xLarge, xxLarge, xxxLarge
  case accessibility1, accessibility2, accessibility3, accessibility4, accessibility5

  /// How large body text is beside that of `large` (17 points); Apple's table of Dynamic Type sizes, from memory.
  var scale: Double {
    let sizes: [Double] = [14, 15, 16, 17, 19, 21, 23, 28, 33, 40, 47, 53]
    return sizes[Self.allCases.firstIndex(of: self) ?? 3] / 17
  }
}
