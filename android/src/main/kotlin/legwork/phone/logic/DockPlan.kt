package legwork.phone.logic

import legwork.door.Block
import legwork.door.ChoiceBlock
import legwork.door.PressBlock
import legwork.door.Screen
import legwork.door.WordsRole

/** What of a screen stands in its dock, as the core says: the way on above, what can wait below. */
class DockPlan(screen: Screen) {
    private val ids = (listOfNotNull(screen.dock.answers) + screen.dock.on + screen.dock.out).toSet()
    private val docked = screen.blocks.filter(::has).associateBy(::idOf)

    /** The answers, where the screen asks one thing and they are few. */
    val answers: ChoiceBlock? = screen.dock.answers?.let { (docked[it] as? Block.Choice)?.block }
    /** The way on, and at most one beside it. */
    val on: List<PressBlock> = screen.dock.on.mapNotNull(::press)
    /** What can wait. */
    val out: List<PressBlock> = screen.dock.out.mapNotNull(::press)

    /** Whether a block stands in the dock. */
    fun has(block: Block): Boolean = idOf(block) in ids

    private fun press(id: String): PressBlock? = (docked[id] as? Block.Press)?.block
}

/** The lead of a screen: what it asks or says first. */
fun leadOf(screen: Screen): String? =
    screen.blocks.firstNotNullOfOrNull { block -> (block as? Block.Words)?.block?.takeIf { it.role == WordsRole.LEAD }?.words }

/** The id of a block on its screen. */
fun idOf(block: Block): String = when (block) {
    is Block.Words -> block.block.id
    is Block.Caution -> block.block.id
    is Block.Choice -> block.block.id
    is Block.Writing -> block.block.id
    is Block.Number -> block.block.id
    is Block.PhotoSlot -> block.block.id
    is Block.PhotoPart -> block.block.id
    is Block.Label -> block.block.id
    is Block.Reading -> block.block.id
    is Block.Part -> block.block.id
    is Block.Rows -> block.block.id
    is Block.Figure -> block.block.id
    is Block.HowFar -> block.block.id
    is Block.Press -> block.block.id
    is Block.Confirm -> block.block.id
}
