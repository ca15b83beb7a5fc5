package legwork.phone.ui

import android.graphics.Canvas
import android.graphics.Paint
import android.view.Gravity
import android.view.View
import legwork.door.Block
import legwork.door.ChoiceBlock
import legwork.door.ChoiceOption
import legwork.door.Deed
import legwork.phone.R
import legwork.phone.logic.picked

/** One or several of a few answers; all of them at once where the room that they take decides where they stand. */
class ChoiceView(private val tools: Tools, private val setting: Setting, private var block: ChoiceBlock, private val atOnce: Boolean = false) : BlockView() {
    private val stack = stack(tools.context)
    private var options: Children? = null
    private var drawn: Any? = null

    override val view: View get() = stack

    init { draw() }

    private fun draw() {
        val short = isShort()
        val about = listOf(short, block.name, block.aloud)
        val options = options.takeIf { drawn == about } ?: box(short).also { options = it }
        drawn = about
        options.show(block.options.map { option -> Child(option.id, option) { option(option, short) } })
    }

    /** Its name, and the box of its answers. */
    private fun box(short: Boolean): Children {
        stack.removeAllViews()
        val paper = tools.paper
        if (block.name != setting.lead) {
            stack.below(paper.text(block.name, Type.SAYS, R.color.quiet, weight = 600).apply { says(block.aloud) })
        }
        val gap = paper.px(R.dimen.s2)
        if (short) {
            val columns = Columns(tools.context, gap, paper.dp(SHORT_LEAST) * scale(), most = 3)
            stack.below(columns, gap)
            return Children(tools, columns, atOnce) { null }
        }
        val list = stack(tools.context)
        list.dividerDrawable = tools.edges.gap(gap)
        list.showDividers = android.widget.LinearLayout.SHOW_DIVIDER_MIDDLE
        stack.below(list, gap)
        return Children(tools, list, atOnce) { wide() }
    }

    private fun scale(): Int = tools.context.resources.configuration.fontScale.let { if (it > 1.3f) 2 else 1 }

    /** Short answers stand side by side, without a dot; not where each is a way on. */
    private fun isShort(): Boolean = (block.several || !setting.choiceLeadsOn) &&
        block.options.all { it.about.isEmpty() && (it.unsure || it.words.length <= SHORT) }

    private fun option(option: ChoiceOption, short: Boolean): View {
        val paper = tools.paper
        val edges = tools.edges
        val run = if (!option.enabled) Edge.DOTTED else if (option.unsure) Edge.DASHED else Edge.SOLID
        val sheet = if (option.picked) edges.sheet(R.color.accent_wash, R.color.accent, R.dimen.stroke_focus)
        else edges.sheet(run = run)
        val row = line(tools.context)
        row.background = edges.pressed(if (short && option.picked) edges.footed(sheet) else sheet)
        val side = paper.px(if (short) R.dimen.s2 else R.dimen.s4)
        row.setPadding(side, paper.px(R.dimen.s2), side, paper.px(R.dimen.s2))
        if (!short) row.beside(Dot(tools, option.picked, block.several))
        val ink = if (option.enabled) R.color.text else R.color.quiet
        val heavy = if (short) option.picked else option.enabled && !option.unsure
        val words = paper.text(option.words, if (short) Type.TEXT else Type.PRESS, ink, weight = if (heavy) 600 else 400)
        words.unsaid()
        if (short) {
            row.gravity = Gravity.CENTER
            words.gravity = Gravity.CENTER
            words.textAlignment = View.TEXT_ALIGNMENT_CENTER
            row.beside(words)
        } else {
            val says = stack(tools.context)
            says.below(words)
            if (option.about.isNotEmpty()) says.below(paper.text(option.about, Type.SAYS, R.color.quiet).apply { unsaid() })
            row.beside(says, paper.px(R.dimen.s3), 1f)
        }
        row.touched(tools, if (short) R.dimen.touch else R.dimen.answer) {
            tools.hands.act(Deed.Pick(block.key, picked(block, option)))
        }
        row.isEnabled = option.enabled
        row.says(option.aloud, States(picked = option.picked, enabled = option.enabled))
        return row
    }

    override fun change(block: Block): Boolean {
        this.block = (block as? Block.Choice ?: return false).block
        draw()
        return true
    }

    override fun resume() { options?.resume() }

    override fun find(id: String): View? = options?.find(id)

    private companion object {
        /** Answers of at most so many letters are short. */
        const val SHORT = 12
        const val SHORT_LEAST = 102f
    }
}

/** The dot of one answer of several, or the box of any of them. */
private class Dot(tools: Tools, private val picked: Boolean, private val several: Boolean) : View(tools.context) {
    private val side = tools.paper.dp(20f)
    private val edge = Paint(Paint.ANTI_ALIAS_FLAG).apply {
        style = Paint.Style.STROKE
        strokeWidth = tools.paper.dp(1.75f).toFloat()
        color = tools.paper.ink(if (picked) R.color.accent else R.color.edge)
    }
    private val inside = Paint(Paint.ANTI_ALIAS_FLAG).apply {
        color = tools.paper.ink(R.color.accent)
        strokeWidth = tools.paper.dp(2.5f).toFloat()
    }

    init { unsaid() }

    override fun onMeasure(widthSpec: Int, heightSpec: Int) = setMeasuredDimension(side, side)

    override fun onDraw(canvas: Canvas) {
        val in1 = edge.strokeWidth
        val end = side - in1
        if (several) {
            canvas.drawRect(in1, in1, end, end, edge)
            if (picked) {
                val tick = side * 0.25f
                canvas.drawLine(tick, side * 0.5f, side * 0.44f, side * 0.7f, inside)
                canvas.drawLine(side * 0.44f, side * 0.7f, side * 0.78f, side * 0.28f, inside)
            }
        } else {
            val middle = side / 2f
            canvas.drawCircle(middle, middle, middle - in1, edge)
            if (picked) canvas.drawCircle(middle, middle, side * 0.26f, inside)
        }
    }
}
