import ShellCore
import SwiftUI

/// The dock at the foot: the answers or the way on above; the way back, the light and what can wait below.
struct DockView: View {
  let shell: Shell
  let screen: Screen
  let plan: DockPlan
  let torch: Torch

  var body: some View {
    Inked { inks in
      VStack(alignment: .leading, spacing: Look.spaceS2) {
        if let answers = plan.answers {
          ChoiceView(shell: shell, choice: answers, isLead: answers.name == screen.lead?.words, hasDigits: true)
        }
        if !plan.on.isEmpty { on }
        ViewThatFits(in: .horizontal) {
          HStack(spacing: Look.spaceS2) { out }
          VStack(alignment: .leading, spacing: Look.spaceS1) { out }
        }
      }
      .padding(.horizontal, Look.spaceS4)
      .padding(.vertical, Look.spaceS2)
      .frame(maxWidth: .infinity, alignment: .leading)
      .background(inks.surface)
      .overlay(alignment: .top) {
        Rectangle().fill(inks.line).frame(height: Look.lineHair).accessibilityHidden(true)
      }
      .accessibilityElement(children: .contain)
      .accessibilityLabel(Text(verbatim: OwnWords.ways.said))
    }
  }

  /// The other way stands before the main one, as the thumb of the hand that holds finds them; it is read after it.
  private var on: some View {
    ViewThatFits(in: .horizontal) {
      HStack(spacing: Look.spaceS2) { ways }
      VStack(spacing: Look.spaceS2) { ways }
    }
  }

  private var ways: some View {
    ForEach(Array(plan.on.reversed()), id: \.id) { way in
      PressView(shell: shell, press: way)
        .accessibilitySortPriority(way.weight == .main ? 1 : 0)
    }
  }

  @ViewBuilder private var out: some View {
    if screen.back {
      Button {
        shell.back()
      } label: {
        Inked { inks in
          HStack(spacing: Look.spaceS1) {
            SignView(.back, inks.accent)
            Words(OwnWords.back.said, .press)
          }
        }
      }
      .buttonStyle(Pressed(weight: .quiet))
      .keyboardShortcut(.cancelAction)
    }
    ForEach(plan.out, id: \.id) { way in
      PressView(shell: shell, press: way, isQuiet: true)
    }
    if screen.abilities.contains(.torch), torch.isThere {
      Spacer(minLength: 0)
      Button {
        torch.toggle()
      } label: {
        Inked { inks in
          HStack(spacing: Look.spaceS1) {
            SignView(torch.isOn ? .lightOn : .light, inks.accent)
            Words(OwnWords.light.said, .press)
          }
        }
      }
      .buttonStyle(Pressed(weight: .quiet))
      .accessibilityAddTraits(.isToggle)
      .accessibilityValue(Text(verbatim: torch.isOn ? OwnWords.lightOn.said : OwnWords.lightOff.said))
    }
  }
}
