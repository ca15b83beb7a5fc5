import ShellCore
import SwiftUI

/// One block: a view for each kind, and nothing here knows what a block is about.
struct BlockView: View {
  let shell: Shell
  let block: Block
  let lead: String?

  var body: some View {
    switch block {
    case .words(let words): WordsView(block: words)
    case .caution(let caution): CautionsView(cautions: [caution])
    case .choice(let choice): ChoiceView(shell: shell, choice: choice, isLead: choice.name == lead)
    case .writing(let writing): WritingView(shell: shell, block: writing, isLead: writing.name == lead)
    case .number(let number): NumberView(shell: shell, block: number, isLead: number.name == lead)
    case .photoSlot(let slot): PhotoSlotView(shell: shell, slot: slot)
    case .photoPart(let part): PhotoPartView(shell: shell, block: part)
    case .label(let label): LabelView(shell: shell, label: label, isLead: label.name == lead)
    case .reading(let reading): ReadingView(reading: reading)
    case .part(let part): PartView(shell: shell, part: part)
    case .rows(let rows): RowsView(shell: shell, block: rows)
    case .figure(let figure): FigureView(shell: shell, block: figure)
    case .howFar(let far): HowFarView(shell: shell, far: far)
    case .press(let press): PressView(shell: shell, press: press)
    case .confirm(let confirm): ConfirmView(shell: shell, confirm: confirm)
    }
  }
}

/// What stands between head and dock.
struct PieceView: View {
  let shell: Shell
  let piece: Piece
  let lead: String?

  var body: some View {
    switch piece {
    case .cautions(let cautions): CautionsView(cautions: cautions)
    case .block(let block): BlockView(shell: shell, block: block, lead: lead)
    }
  }
}
