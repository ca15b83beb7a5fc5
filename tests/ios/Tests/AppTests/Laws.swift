import Hand
import LegworkUI
import ShellCore
import SwiftUI

/// One thing of a screen that a screen reader has to stop at.
struct Item {
  let id: String
  let aloud: Aloud
}

extension Screen {
  /// Everything with an id of its own, in the order in which it is read: what stands in the dock comes last.
  var items: [Item] {
    let dock = DockPlan(self)
    let docked = dock.answers.map { items(of: .choice(block: $0)) } ?? []
    let ways = (dock.on + dock.out).map { Item(id: $0.id, aloud: $0.aloud) }
    return notices.map { Item(id: $0.id, aloud: $0.aloud) }
      + blocks.filter { !dock.has($0) }.flatMap(items(of:)) + docked + ways
  }

  private func items(of block: Block) -> [Item] {
    switch block {
    case .words(let it): [Item(id: it.id, aloud: it.aloud)]
    case .caution(let it): [Item(id: it.id, aloud: it.aloud)]
    case .choice(let it):
      [Item(id: it.id, aloud: it.aloud)] + it.options.map { Item(id: $0.id, aloud: $0.aloud) }
    case .writing(let it): [Item(id: it.id, aloud: it.aloud)]
    case .number(let it): [Item(id: it.id, aloud: it.aloud)] + it.units.map { Item(id: $0.id, aloud: $0.aloud) }
    case .photoSlot(let it):
      [Item(id: it.id, aloud: it.aloud)] + it.photos.map { Item(id: $0.id, aloud: $0.aloud) }
    case .photoPart(let it): [Item(id: it.id, aloud: it.aloud)]
    case .label(let it): [Item(id: it.id, aloud: it.aloud)] + it.figures.map { Item(id: $0.id, aloud: $0.aloud) }
    case .reading(let it): [Item(id: it.id, aloud: it.aloud)]
    case .part(let it): [Item(id: it.id, aloud: it.aloud)]
    case .rows(let it): [Item(id: it.id, aloud: it.aloud)] + it.rows.map { Item(id: $0.id, aloud: $0.aloud) }
    case .figure(let it): [Item(id: it.id, aloud: it.aloud)]
    case .howFar(let it):
      [Item(id: it.id, aloud: it.aloud)] + (it.stop.map { [Item(id: $0.id, aloud: $0.aloud)] } ?? [])
    case .press(let it): [Item(id: it.id, aloud: it.aloud)]
    case .confirm(let it): [Item(id: it.id, aloud: it.aloud)]
    }
  }
}

/// A screen as the app draws it, and what is wrong with it.
@MainActor
struct Seen {
  let screen: Screen
  let drawn: [Drawn]
  let stops: [Stop]

  /// Draws the shell's screen with everything unfolded that folds.
  init(_ shell: Shell, _ settle: @escaping (inout EnvironmentValues) -> Void = { _ in }) {
    screen = shell.screen!
    let stage = Stage(RootView(shell: shell), settle)
    var drawn = stage.draw()
    for stop in Reader.stops(drawn) where stop.value == "(collapsed)" { stop.press?() }
    drawn = stage.draw()
    self.drawn = drawn
    stops = Reader.stops(drawn)
  }

  /// Each line one thing that is not as it must be.
  var faults: [String] {
    var faults: [String] = []
    for stop in stops where stop.label.isEmpty && stop.kind != "group" { faults.append("no label: \(stop.said)") }
    for stop in stops where stop.kind == "LOST" { faults.append("a label on no element: \(stop.said)") }
    let items = screen.items
    let own = Set(items.map(\.id))
    let read = stops.filter { own.contains($0.id) }
    if read.map(\.id) != items.map(\.id) {
      faults.append("read in the order \(read.map(\.id)), not \(items.map(\.id))")
    }
    for item in items {
      guard let stop = read.first(where: { $0.id == item.id }) else { continue }
      let said = [stop.label, stop.value, stop.hint]
      if said != [item.aloud.label, item.aloud.value, item.aloud.hint] {
        faults.append("\(item.id) says \(said), not \(item.aloud)")
      }
      faults += wrong(stop, item)
    }
    let headings = stops.filter { $0.traits.contains("heading") }
    if headings.first?.level != 1 { faults.append("the first heading is \(headings.first?.said ?? "missing")") }
    let focused = Reader.outline(drawn).filter { $0.contains("[focus") || $0.contains(", focus") }
    if focused.count != 1 { faults.append("VoiceOver begins at \(focused)") }
    for case .number(let number) in screen.blocks {
      let field = Reader.outline(drawn).first { $0.contains("TextField") && $0.hasSuffix("#\(number.id)") } ?? ""
      let isPad = field.contains("numberPad") || field.contains("decimalPad")
      // A pad has neither letters nor a minus; where neither is needed, its keys are the larger ones.
      if isPad != (!number.letters && number.kind != .signed) {
        faults.append("the keyboard of \(number.key): \(field)")
      }
    }
    return faults.map { "\(screen.name): \($0)" }
  }

  /// What a stop is must go with its role.
  private func wrong(_ stop: Stop, _ item: Item) -> [String] {
    let isRight =
      switch item.aloud.role {
      case .heading: stop.traits.contains("heading")
      case .oneOf, .press, .pressAsks, .leadsOn, .switch: stop.press != nil && stop.traits.contains("button")
      case .anyOf: stop.press != nil
      case .writeHere, .searchHere, .numberHere: stop.type != nil
      case .chooseOne, .chooseSeveral, .photosHere, .drawing: stop.kind == "group"
      case .progress: stop.traits.contains("progress")
      case .prose, .alert, .status, .caution, .picture, .group, .fact: true
      }
    return isRight ? [] : ["\(item.id) is \(item.aloud.role), and read as \(stop.said)"]
  }

  /// As a file to read.
  var text: String {
    (["== \(screen.name): what is read ==", ""] + stops.map(\.said) + ["", "== what is drawn ==", ""]
      + Reader.outline(drawn)).joined(separator: "\n") + "\n"
  }
}
