package legwork.phone.ui

import android.view.View
import android.widget.LinearLayout
import legwork.door.Aloud
import legwork.door.Block
import legwork.door.Deed
import legwork.door.FigureBlock
import legwork.door.FigureMark
import legwork.door.PressWeight
import legwork.phone.R

/** A drawing with its caption: the widest layout that fits, the same as a list, and all of it large. */
class FigureView(private val tools: Tools, private val setting: Setting, private var block: FigureBlock) : BlockView() {
    private val drawing = DrawingView(tools.paper) { tools.hands.act(Deed.Press(it)) }
    private var asked: String? = null
    private var list: View? = null
    private var rows: Children? = null

    override val view: Frame = Frame()
    override val beside: Boolean get() = true

    /** Knows how wide the drawing may be only when it is measured. */
    inner class Frame : LinearLayout(tools.context) {
        init {
            orientation = VERTICAL
            background = tools.edges.sheet(R.color.raised, R.color.line, R.dimen.stroke_hair, corner = R.dimen.radius_none)
            val pad = tools.paper.px(R.dimen.s2)
            setPadding(pad, pad, pad, pad)
            below(drawing)
            below(tools.paper.text(block.description, Type.ASIDE, R.color.quiet), pad)
            val large = button(tools, tools.context.getString(R.string.large), PressWeight.QUIET) { tools.hands.openFigure(block) }
            large.says(Aloud(legwork.door.AloudRole.PRESS, tools.context.getString(R.string.large), block.name, ""))
            below(large)
        }

        override fun onMeasure(widthSpec: Int, heightSpec: Int) {
            ask((MeasureSpec.getSize(widthSpec) - paddingLeft - paddingRight) / resources.displayMetrics.density)
            super.onMeasure(widthSpec, heightSpec)
        }
    }

    init { drawing.says(block.aloud) }

    private fun ask(wide: Float) {
        val layouts = layoutsOf(block)
        val (name, version, _) = layouts.lastOrNull { it.third <= wide } ?: layouts.first()
        if (asked == name + version) return
        asked = name + version
        tools.hands.figure(name, version) { figure ->
            if (asked != name + version) return@figure
            drawing.show(figure)
            showList()
        }
    }

    /** The parts that can be touched, as a list: for whoever cannot hit them, or would rather read. */
    private fun showList() {
        val parts = drawing.spokenMarks().filter { it.key != null }
        list?.let(view::removeView)
        list = null
        rows = null
        if (parts.isEmpty()) return
        val fold = FoldView(
            tools, setting.folds, block.id + " list", tools.context.getString(R.string.as_list), R.color.accent,
            body = { rows(parts) },
            said = tools.context.getString(R.string.as_list) + ": " + block.name,
        )
        list = fold
        view.below(fold)
    }

    private fun rows(parts: List<FigureMark>): View {
        val stack = stack(tools.context)
        stack.dividerDrawable = tools.edges.rule()
        stack.showDividers = LinearLayout.SHOW_DIVIDER_BEGINNING or LinearLayout.SHOW_DIVIDER_MIDDLE
        rows = Children(tools, stack) { wide() }.apply {
            show(parts.mapIndexed { place, mark -> Child("$place", mark.key to mark.aloud) { row(mark.aloud, mark.key.orEmpty()) } })
        }
        return stack
    }

    private fun row(aloud: Aloud, key: String): View {
        val row = stack(tools.context)
        row.below(tools.paper.text(aloud.label, Type.ROW))
        if (aloud.value.isNotEmpty()) row.below(tools.paper.text(aloud.value, Type.SAYS, R.color.quiet))
        for (place in 0 until row.childCount) row.getChildAt(place).unsaid()
        val pad = tools.paper.px(R.dimen.s2)
        row.setPadding(0, pad, 0, pad)
        row.gravity = android.view.Gravity.CENTER_VERTICAL
        row.background = tools.edges.bare()
        row.touched(tools) { tools.hands.act(Deed.Press(key)) }
        row.says(aloud)
        return row
    }

    override fun resume() { rows?.resume() }

    override fun change(block: Block): Boolean {
        val next = (block as? Block.Figure ?: return false).block
        if (next.description != this.block.description || next.name != this.block.name) return false
        this.block = next
        drawing.says(next.aloud)
        view.requestLayout()
        return true
    }

    override fun find(id: String): View? = drawing.takeIf { id == block.id }
}
