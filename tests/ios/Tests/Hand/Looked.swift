import ShellCore

extension Block {
  public var choice: ChoiceBlock? { if case .choice(let block) = self { block } else { nil } }
  public var writing: WritingBlock? { if case .writing(let block) = self { block } else { nil } }
  public var number: NumberBlock? { if case .number(let block) = self { block } else { nil } }
  public var slot: PhotoSlotBlock? { if case .photoSlot(let block) = self { block } else { nil } }
  public var press: PressBlock? { if case .press(let block) = self { block } else { nil } }
  public var figure: FigureBlock? { if case .figure(let block) = self { block } else { nil } }

  /// The keys of what a touch presses.
  public var pressKeys: [String] {
    switch self {
    case .press(let block): [block.key]
    case .confirm(let block): [block.key]
    case .part(let block): [block.key].compactMap { $0 }
    case .rows(let block): block.rows.compactMap(\.key)
    case .label(let block): block.figures.compactMap(\.key)
    case .photoSlot(let block): block.photos.compactMap(\.key)
    case .howFar(let block): [block.stop?.key].compactMap { $0 }
    case .figure(let block): block.keys
    case .photoPart(let block): [block.key]
    case .words, .caution, .choice, .writing, .number, .reading: []
    }
  }

  /// Every sentence of it.
  public var spoken: [String] {
    let all: [String] =
      switch self {
      case .words(let block): [block.head, block.words]
      case .caution(let block): [block.name, block.head, block.words]
      case .choice(let block): [block.name] + block.options.flatMap { [$0.words, $0.about] }
      case .writing(let block): [block.name, block.text, block.hint]
      case .number(let block): [block.name, block.text, block.hint] + block.units.map(\.words)
      case .photoSlot(let block): [block.name] + block.photos.map(\.name)
      case .photoPart(let block): [block.name, block.part?.name ?? ""]
      case .label(let block):
        [block.name, block.text] + block.figures.flatMap { [$0.name, $0.says, $0.doubt] } + block.doubts
      case .reading(let block): [block.name, block.says, block.remark]
      case .part(let block): [block.tag, block.name] + block.lines
      case .rows(let block): [block.name] + block.rows.flatMap { [$0.head, $0.says, $0.remark] }
      case .figure(let block): [block.name, block.description]
      case .howFar(let block): [block.name]
      case .press(let block): [block.words]
      case .confirm(let block): [block.words, block.question, block.yes, block.no]
      }
    return all.filter { !$0.isEmpty }
  }
}
