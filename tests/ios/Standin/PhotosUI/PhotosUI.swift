// A stand-in for PhotosUI: only what the app uses, with Apple's documented signatures.
import SwiftUI

public struct PHPickerFilter: Sendable {
  public static let images = PHPickerFilter()
}

public protocol Transferable {}
extension Data: Transferable {}

public struct PhotosPickerItem: Hashable, Sendable {
  private let data: Data
  /// One with this in it, for the tests.
  public init(data: Data) { self.data = data }
  public func loadTransferable<T: Transferable>(type: T.Type) async throws -> T? { data as? T }
}

public struct PhotosPicker<Label: View>: View {
  private let label: Label
  public init(
    selection: Binding<[PhotosPickerItem]>, matching filter: PHPickerFilter? = nil, @ViewBuilder label: () -> Label
  ) { self.label = label() }
  public var body: some View { Button(action: {}, label: { label }) }
}

extension View {
  public func photosPicker(
    isPresented: Binding<Bool>, selection: Binding<[PhotosPickerItem]>, matching filter: PHPickerFilter? = nil
  ) -> some View {
    picking(isPresented.wrappedValue) { chosen in
      isPresented.wrappedValue = false
      selection.wrappedValue = chosen as? [PhotosPickerItem] ?? []
    }
  }
}
