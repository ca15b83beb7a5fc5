import LegworkUI
import SwiftUI

/// The app.
@main
struct LegworkApp: App {
  var body: some Scene {
    LegworkScene()
  }
}
