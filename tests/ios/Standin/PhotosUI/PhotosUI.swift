// A stand-in for PhotosUI: only what the app uses, with Apple's documented signatures.
import SwiftUI

public struct PHPickerFilter: Sendable {
  public static let images = PHPickerFilter()
}

public protocol Transferable {}
extension Data: Transferable {}

public struct PhotosPickerItem: Hashable, Sendable {
  public func loadTransferable<T: Transferable>(type: T.Type) async throws -> T? { nil }
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
  ) -> some View { id(0) }
}
