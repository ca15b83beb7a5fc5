import ShellCore
import SwiftUI

/// A screen of the guide: head, notices, blocks, dock. In a wide window what is to be looked at stands beside what is asked.
struct ScreenView: View {
  let shell: Shell
  let screen: Screen
  let torch: Torch
  @AccessibilityFocusState private var isLeadRead: Bool
  @Environment(\.accessibilityReduceMotion) private var stillness
  @ScaledMetric(relativeTo: .body) private var line: CGFloat = 16

  var body: some View {
    GeometryReader { window in
      let plan = DockPlan(screen)
      let isHigh = window.size.height >= 38 * line
      Inked { inks in
        ScrollView {
          VStack(alignment: .leading, spacing: Look.spaceS4) {
            HeadView(screen: screen, isRead: $isLeadRead)
            NoticesView(shell: shell, screen: screen)
            columns(plan, window.size.width)
            if !isHigh { DockView(shell: shell, screen: screen, plan: plan, torch: torch) }
          }
          .padding(Look.spaceS4)
        }
        // Another place begins at its top.
        .id(screen.place)
        .transition(.opacity)
        .safeAreaInset(edge: .bottom, spacing: 0) {
          if isHigh { DockView(shell: shell, screen: screen, plan: plan, torch: torch) }
        }
        .background(inks.surface)
      }
    }
    .animation(stillness ? nil : .easeOut(duration: Look.secondsTurn), value: screen.place)
    .environment(\.layoutDirection, screen.rightToLeft ? .rightToLeft : .leftToRight)
    .onChange(of: screen.place, initial: true) {
      // VoiceOver goes there again only where it was elsewhere before.
      isLeadRead = false
      Task { isLeadRead = true }
    }
  }

  @ViewBuilder private func columns(_ plan: DockPlan, _ window: Double) -> some View {
    let pieces = Piece.of(screen, dock: plan)
    let isWide = window >= Look.sizeWide && pieces.contains(where: \.isLookedAt)
    let whole = window - 2 * Look.spaceS4
    if isWide {
      let side = whole - Look.sizeColumn - Look.spaceS5
      HStack(alignment: .top, spacing: Look.spaceS5) {
        column(pieces.filter { !$0.isLookedAt }, readIn: pieces).frame(width: Look.sizeColumn)
        column(pieces.filter(\.isLookedAt), readIn: pieces).environment(\.columnWidth, side)
      }
      // The order of reading holds within, and comes after the head.
      .accessibilityElement(children: .contain)
    } else {
      column(pieces, readIn: []).environment(\.columnWidth, whole)
    }
  }

  /// Pieces one under the other. Where there are two columns, they are read in the order of the screen all the same.
  private func column(_ pieces: [Piece], readIn order: [Piece]) -> some View {
    VStack(alignment: .leading, spacing: Look.spaceS4) {
      ForEach(pieces) { piece in
        PieceView(shell: shell, piece: piece, lead: screen.lead?.words)
          .accessibilityFocused($isLeadRead, when: piece.id == screen.lead?.id)
          .accessibilitySortPriority(order.firstIndex(of: piece).map { Double(order.count - $0) } ?? 0)
      }
    }
    .frame(maxWidth: .infinity, alignment: .leading)
  }
}

extension View {
  /// Takes VoiceOver's focus where it is the one to have it.
  @ViewBuilder func accessibilityFocused(
    _ focus: AccessibilityFocusState<Bool>.Binding, when isIt: Bool
  ) -> some View {
    if isIt { accessibilityFocused(focus) } else { self }
  }
}
