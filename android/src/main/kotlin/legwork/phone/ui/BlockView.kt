package legwork.phone.ui

import android.view.View
import legwork.door.Block
import legwork.door.FigureBlock

/** One block as it is drawn. Each kind has a class of its own. */
abstract class BlockView {
    abstract val view: View

    /** What is to be looked at stands beside what is asked, where the window is wide. */
    open val beside: Boolean get() = false

    /** The same block has changed; false if it has to be drawn anew. What is under the hands stays. */
    open fun change(block: Block): Boolean = false

    /** What was left to make when the screen was drawn again is made now. */
    open fun resume() = Unit

    /** A view in it that can have the focus again, by its id on the screen. */
    open fun find(id: String): View? = null
}

/** How a screen wants its blocks drawn. */
class Setting(
    /** The one choice of the screen leads on by itself: no press would take it. */
    val choiceLeadsOn: Boolean,
    /** The words of the screen's lead: what is said there is not said twice to the eye. */
    val lead: String?,
    /** Fold state of this place. */
    val folds: Folds,
)

/** What stands unfolded, by its id, as long as the place is the same. */
class Folds {
    private val open = mutableSetOf<String>()
    fun isOpen(id: String) = id in open
    fun set(id: String, isOpen: Boolean) { if (isOpen) open += id else open -= id }
    fun clear() = open.clear()
    fun all(): ArrayList<String> = ArrayList(open)
    fun restore(ids: Collection<String>) { open += ids }
}

/** The view of a block. */
fun viewOf(tools: Tools, setting: Setting, block: Block): BlockView = when (block) {
    is Block.Words -> WordsView(tools, setting, block.block)
    is Block.Caution -> CautionsView(tools, setting, listOf(block.block))
    is Block.Choice -> ChoiceView(tools, setting, block.block)
    is Block.Writing -> WritingView(tools, setting, block.block)
    is Block.Number -> NumberView(tools, setting, block.block)
    is Block.PhotoSlot -> PhotosView(tools, block.block)
    is Block.PhotoPart -> PhotoPartView(tools, block.block)
    is Block.Label -> LabelView(tools, setting, block.block)
    is Block.Reading -> ReadingView(tools, block.block)
    is Block.Part -> PartView(tools, block.block)
    is Block.Rows -> RowsView(tools, block.block)
    is Block.Figure -> FigureView(tools, setting, block.block)
    is Block.HowFar -> HowFarView(tools, block.block)
    is Block.Press -> PressView(tools, block.block)
    is Block.Confirm -> ConfirmView(tools, setting, block.block)
}

/** The layouts of a drawing, the narrowest first. */
fun layoutsOf(figure: FigureBlock): List<Triple<String, String, Double>> =
    figure.narrower.map { Triple(it.figure, it.version, it.naturalWidth) } +
        Triple(figure.figure, figure.version, figure.naturalWidth)
