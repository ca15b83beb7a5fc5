import ShellCore
import SwiftUI

/// The app's one scene.
public struct LegworkScene: Scene {
  @State private var shell: Shell?

  /// The scene; the surveys are opened when it appears.
  public init() {}

  public var body: some Scene {
    WindowGroup {
      if let shell {
        RootView(shell: shell)
      } else {
        ProgressView().task { begin() }
      }
    }
  }

  private func begin() {
    // Without a folder of its own the app cannot keep anything: what the shell says then stands on its first screen.
    let places =
      (try? Places.ofApp())
      ?? Places(
        kept: FileManager.default.temporaryDirectory, passing: FileManager.default.temporaryDirectory,
        printModel: Places.carriedModel)
    let shell = Shell(places: places, settings: .ofSystem(home: places.home))
    shell.begin()
    self.shell = shell
  }
}

/// The screen, and what the system is asked for around it.
public struct RootView: View {
  private let shell: Shell
  @State private var torch = Torch()
  @Environment(\.scenePhase) private var phase
  @Environment(\.locale) private var locale

  /// Over this shell.
  public init(shell: Shell) { self.shell = shell }

  public var body: some View {
    Group {
      if let screen = shell.screen {
        ScreenView(shell: shell, screen: screen, torch: torch)
      } else {
        NotBegun(shell: shell)
      }
    }
    .modifier(Asking(shell: shell))
    .modifier(Feeling(shell: shell))
    .onOpenURL { file in Task { await shell.receive(handed: file) } }
    .onChange(of: phase) { _, now in
      switch now {
      case .background:
        // The system puts the light out with the app.
        torch.turn(on: false)
        Background.putAside(shell)
      case .active:
        torch.look()
        shell.takeUp()
      default: break
      }
    }
    // The camera has had it.
    .onChange(of: shell.asked == nil) { torch.look() }
    .onChange(of: shell.screen?.abilities ?? [], initial: true) { _, wanted in
      UIApplication.shared.isIdleTimerDisabled = wanted.contains(.stayAwake)
      if !wanted.contains(.torch) { torch.turn(on: false) }
    }
    .onChange(of: locale) { shell.settle(.ofSystem(home: shell.places.home)) }
  }
}

/// What stands there as long as the surveys cannot be opened.
private struct NotBegun: View {
  let shell: Shell

  var body: some View {
    Inked { inks in
      VStack(alignment: .leading, spacing: Look.spaceS4) {
        Words(OwnWords.notBegun.said, .lead).foregroundStyle(inks.text).accessibilityAddTraits(.isHeader)
        ForEach(shell.said) { said in
          ProblemBox(words: said.words).accessibilityElement(children: .combine)
        }
        Button {
          shell.begin()
        } label: {
          Words(OwnWords.again.said, .press)
        }
        .buttonStyle(Pressed(weight: .main))
      }
      .padding(Look.spaceS4)
      .frame(maxWidth: .infinity, maxHeight: .infinity, alignment: .topLeading)
      .background(inks.surface)
    }
  }
}

/// What is felt and said of its own accord: a light tick for an answer, two for a wrong one, notices read out.
private struct Feeling: ViewModifier {
  let shell: Shell

  func body(content: Content) -> some View {
    content
      .sensoryFeedback(.selection, trigger: shell.answers)
      .sensoryFeedback(.error, trigger: shell.refusals)
      .onChange(of: shell.news) { _, news in
        for one in news {
          let priority: UIAccessibilityPriority = one.isUrgent ? .high : .low
          UIAccessibility.post(
            notification: .announcement,
            argument: NSAttributedString(
              string: one.words, attributes: [.accessibilitySpeechAnnouncementPriority: priority]))
        }
      }
  }
}
