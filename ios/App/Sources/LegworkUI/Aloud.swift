import ShellCore
import SwiftUI

extension AloudRole {
  /// The traits that stand for it. What is picked, switched off or leads on is a state beside it.
  var traits: AccessibilityTraits {
    switch self {
    case .heading: .isHeader
    case .oneOf, .anyOf, .press, .pressAsks, .leadsOn: .isButton
    case .switch: [.isButton, .isToggle]
    case .picture, .drawing: .isImage
    case .progress: .updatesFrequently
    case .searchHere: .isSearchField
    case .prose, .alert, .status, .caution, .fact: .isStaticText
    case .chooseOne, .chooseSeveral, .group, .photosHere, .writeHere, .numberHere: []
    }
  }
}

extension View {
  /// One stop for VoiceOver: what the core says of it, and nothing of what is within.
  func says(_ aloud: Aloud, id: String, picked: Bool = false) -> some View {
    accessibilityElement(children: .ignore)
      .named(aloud, id: id, picked: picked)
  }

  /// What the core says of something that the platform makes a stop of by itself: a button, a place to write.
  func named(_ aloud: Aloud, id: String, picked: Bool = false) -> some View {
    accessibilityLabel(Text(verbatim: aloud.label))
      .accessibilityValue(Text(verbatim: aloud.value))
      .accessibilityHint(Text(verbatim: aloud.hint))
      .accessibilityAddTraits(picked ? aloud.role.traits.union(.isSelected) : aloud.role.traits)
      .accessibilityIdentifier(id)
  }

  /// Several stops that belong together, said once on the way in.
  func group(_ aloud: Aloud, id: String) -> some View {
    accessibilityElement(children: .contain)
      .accessibilityLabel(Text(verbatim: aloud.label))
      .accessibilityValue(Text(verbatim: aloud.value))
      .accessibilityHint(Text(verbatim: aloud.hint))
      .accessibilityIdentifier(id)
  }
}
