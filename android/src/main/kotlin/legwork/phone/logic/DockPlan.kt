package legwork.phone.logic

import legwork.door.Block
import legwork.door.ChoiceBlock
import legwork.door.PressBlock
import legwork.door.PressWeight
import legwork.door.Screen
import legwork.door.WordsRole

/** What of a screen stands in its dock: the way on above, what can wait below. As `docs/look.md` says. */
class DockPlan private constructor(
    /** The answers, where the screen asks one thing and they are few. */
    val answers: ChoiceBlock?,
    /** The way on, and at most one beside it. */
    val on: List<PressBlock>,
    /** What can wait. */
    val out: List<PressBlock>,
    private val places: Set<Int>,
) {
    /** Whether the block at this place stands in the dock. */
    fun has(place: Int) = place in places

    companion object {
        private const val MOST_LETTERS = 20
        private const val MOST_ANSWERS = 4
        private const val LONG_ABOUT = 60

        fun of(screen: Screen): DockPlan {
            val blocks = screen.blocks
            val on = mutableListOf<Int>()
            val out = mutableListOf<Int>()
            var answers: Int? = null
            val main = blocks.indexOfFirst(::isMain)
            if (main >= 0) {
                on += main
                val beside = (main + 1 until blocks.size).takeWhile { blocks[it] is Block.Press }
                    .filter { place -> press(blocks[place])!!.let { it.weight == PressWeight.OTHER && it.need == null } }
                // Several others are a list to read, not a way beside the way on.
                if (beside.size <= 1) {
                    val (short, long) = beside.partition { press(blocks[it])!!.words.length <= MOST_LETTERS }
                    on += short
                    out += long
                }
            } else {
                answers = answers(blocks)
            }
            out += blocks.indices.filter { press(blocks[it])?.weight == PressWeight.QUIET }
            val choice = answers?.let { (blocks[it] as Block.Choice).block }
            return DockPlan(choice, on.map { press(blocks[it])!! }, out.map { press(blocks[it])!! }, (on + out + listOfNotNull(answers)).toSet())
        }

        private fun press(block: Block): PressBlock? = (block as? Block.Press)?.block

        fun isMain(block: Block): Boolean = press(block)?.weight == PressWeight.MAIN

        /** The one choice of a screen that asks nothing else, if its answers are few. */
        private fun answers(blocks: List<Block>): Int? {
            val asksMore = blocks.any { it is Block.Rows || it is Block.PhotoSlot || it is Block.Writing || it is Block.Number || it is Block.Label }
            val choices = blocks.indices.filter { blocks[it] is Block.Choice }
            val only = choices.singleOrNull().takeUnless { asksMore } ?: return null
            val choice = (blocks[only] as Block.Choice).block
            val few = !choice.several && choice.options.size <= MOST_ANSWERS && choice.options.all { it.about.length <= LONG_ABOUT }
            return only.takeIf { few }
        }
    }
}

/** The lead of a screen: what it asks or says first. */
fun leadOf(screen: Screen): String? =
    screen.blocks.firstNotNullOfOrNull { block -> (block as? Block.Words)?.block?.takeIf { it.role == WordsRole.LEAD }?.words }

/** Whether the one choice of the screen leads on by itself: there is no press that would take it. */
fun choiceLeadsOn(screen: Screen): Boolean = screen.blocks.none(DockPlan::isMain)
