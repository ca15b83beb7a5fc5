package legwork.phone.ui

import android.view.Gravity
import android.view.View
import android.widget.LinearLayout
import legwork.door.Block
import legwork.door.ConfirmBlock
import legwork.door.Deed
import legwork.door.HowFarBlock
import legwork.door.Need
import legwork.door.PressBlock
import legwork.door.PressWeight
import legwork.phone.R

/** Something to press. */
class PressView(tools: Tools, private val block: PressBlock, weight: PressWeight = block.weight) : BlockView() {
    override val view: View = button(tools, block.words, weight, block.enabled, writes(block)) { tools.hands.press(block) }
        .apply { says(block.aloud, States(enabled = block.enabled)) }

    override fun find(id: String): View? = view.takeIf { id == block.id }

    private fun writes(block: PressBlock) = block.need is Need.FileToWrite || block.need is Need.FileToShare
}

/** A button of some weight. */
fun button(
    tools: Tools, words: String, weight: PressWeight, enabled: Boolean = true, writes: Boolean = false, does: () -> Unit,
): LinearLayout {
    val paper = tools.paper
    val edges = tools.edges
    val row = line(tools.context)
    row.gravity = Gravity.CENTER
    row.background = when {
        !enabled -> edges.sheet(R.color.surface, R.color.edge, run = Edge.DOTTED)
        weight == PressWeight.MAIN -> edges.pressed(edges.sheet(R.color.fill, R.color.accent))
        weight == PressWeight.OTHER -> edges.pressed(edges.sheet())
        else -> edges.bare()
    }
    val ink = when {
        !enabled || weight == PressWeight.QUIET -> R.color.quiet
        weight == PressWeight.MAIN -> R.color.on_fill
        else -> R.color.text
    }
    val type = if (weight == PressWeight.QUIET) Type.SAYS else Type.PRESS
    if (writes) row.beside(sign(tools, R.drawable.sign_file, 24f, ink))
    val says = row.beside(paper.text(words, type, ink, weight = if (enabled) 600 else 400), paper.px(R.dimen.s2))
    says.gravity = Gravity.CENTER
    says.textAlignment = View.TEXT_ALIGNMENT_CENTER
    says.unsaid()
    if (weight == PressWeight.MAIN && enabled) {
        // Under the finger the fill turns into paper: the words follow.
        says.setTextColor(
            android.content.res.ColorStateList(
                arrayOf(intArrayOf(android.R.attr.state_pressed), intArrayOf()),
                intArrayOf(paper.ink(R.color.text), paper.ink(ink)),
            ),
        )
    }
    val side = paper.px(if (weight == PressWeight.QUIET) R.dimen.s2 else R.dimen.s4)
    val over = paper.px(if (weight == PressWeight.QUIET) R.dimen.s1 else R.dimen.s2)
    row.setPadding(side, over, side, over)
    row.touched(tools, if (weight == PressWeight.QUIET) R.dimen.touch else R.dimen.answer, does)
    row.isEnabled = enabled
    return row
}

/** Something to press that is asked about once more: the second question unfolds beneath, “no” as the main press. */
class ConfirmView(private val tools: Tools, private val setting: Setting, private val block: ConfirmBlock) : BlockView() {
    private val stack = stack(tools.context)
    private val first = button(tools, block.words, PressWeight.OTHER, block.enabled) { ask(!setting.folds.isOpen(block.id)) }

    override val view: View get() = stack

    init {
        stack.below(first)
        ask(setting.folds.isOpen(block.id))
    }

    private fun ask(asks: Boolean) {
        setting.folds.set(block.id, asks)
        first.says(block.aloud, States(enabled = block.enabled, open = tools.context.getString(if (asks) R.string.unfolded else R.string.folded)))
        while (stack.childCount > 1) stack.removeViewAt(1)
        if (!asks) return
        val paper = tools.paper
        val box = stack(tools.context)
        box.background = tools.edges.sheet(R.color.surface, R.color.text)
        val pad = paper.px(R.dimen.s4)
        box.setPadding(pad, pad, pad, pad)
        val question = box.below(paper.text(block.question, Type.TEXT))
        question.accessibilityLiveRegion = View.ACCESSIBILITY_LIVE_REGION_POLITE
        val yes = button(tools, block.yes, PressWeight.OTHER) { tools.hands.act(Deed.Press(block.key)) }
        yes.says(legwork.door.Aloud(legwork.door.AloudRole.PRESS, block.yes, "", ""))
        if (block.destructive) yes.addView(sign(tools, R.drawable.sign_cross, 22f, R.color.text), 0)
        box.below(yes, paper.px(R.dimen.s2))
        val no = button(tools, block.no, PressWeight.MAIN) { ask(false) }
        no.says(legwork.door.Aloud(legwork.door.AloudRole.PRESS, block.no, "", ""))
        box.below(no, paper.px(R.dimen.s2))
        stack.below(box, paper.px(R.dimen.s2))
    }

    override fun find(id: String): View? = first.takeIf { id == block.id }
}

/** How far something has come that takes a while. */
class HowFarView(private val tools: Tools, private var block: HowFarBlock) : BlockView() {
    private val bar = LengthBar(tools)
    private val stack = stack(tools.context)

    override val view: View get() = stack

    init {
        val gap = tools.paper.px(R.dimen.s3)
        stack.below(tools.paper.text(block.name, Type.TEXT).apply { unsaid() })
        stack.below(bar, gap)
        block.stop?.let { stack.below(PressView(tools, it).view, gap) }
        show()
    }

    private fun show() {
        bar.share = block.thousandths?.toInt()
        bar.says(block.aloud)
        bar.accessibilityLiveRegion = View.ACCESSIBILITY_LIVE_REGION_POLITE
    }

    override fun change(block: Block): Boolean {
        val next = (block as? Block.HowFar ?: return false).block
        if (next.stop != this.block.stop || next.name != this.block.name) return false
        this.block = next
        show()
        return true
    }
}
