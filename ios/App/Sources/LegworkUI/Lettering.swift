import ShellCore
import SwiftUI

/// A hand in which something is lettered.
enum TypeHand {
  case lead, head, press, text, row, says, aside, tag, number

  var type: LookType {
    switch self {
    case .lead: Look.typeLead
    case .head: Look.typeHead
    case .press: Look.typePress
    case .text: Look.typeText
    case .row: Look.typeRow
    case .says: Look.typeSays
    case .aside: Look.typeAside
    case .tag: Look.typeTag
    case .number: Look.typeNumber
    }
  }

  var design: Font.Design {
    switch self {
    case .lead, .head: .serif
    case .tag: .monospaced
    case .press, .text, .row, .says, .aside, .number: .default
    }
  }

  /// Leads and answers grow less than text; how far at most, points.
  var most: Double {
    switch self {
    case .lead: 44
    case .head: 40
    case .press: 32
    case .number: 56
    case .text, .row, .says, .aside, .tag: .infinity
    }
  }

  var weight: Font.Weight {
    switch type.weight {
    case 700...: .bold
    case 600...: .semibold
    default: .regular
    }
  }
}

/// Letters text in a hand, at the size that the user wants.
struct Lettered: ViewModifier {
  let hand: TypeHand
  @ScaledMetric(relativeTo: .body) private var scale: CGFloat = 1

  init(hand: TypeHand) { self.hand = hand }

  func body(content: Content) -> some View {
    let size = min(hand.type.size * Double(scale), max(hand.most, hand.type.size))
    let leading = (hand.type.line - hand.type.size) / hand.type.size * size
    content
      .font(.system(size: size, weight: hand.weight, design: hand.design))
      .lineSpacing(leading * 0.5)
  }
}

extension View {
  /// Letters it in a hand.
  func lettered(_ hand: TypeHand) -> some View { modifier(Lettered(hand: hand)) }
}

/// Words of the core, as they are: no mark in them means anything.
struct Words: View {
  let words: String
  let hand: TypeHand

  init(_ words: String, _ hand: TypeHand) {
    self.words = words
    self.hand = hand
  }

  var body: some View {
    Text(verbatim: words)
      .lettered(hand)
      .multilineTextAlignment(.leading)
      .fixedSize(horizontal: false, vertical: true)
      .frame(maxWidth: Look.sizeMeasure, alignment: .leading)
  }
}
