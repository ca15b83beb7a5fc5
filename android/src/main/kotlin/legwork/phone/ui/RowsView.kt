package legwork.phone.ui

import android.graphics.Canvas
import android.graphics.DashPathEffect
import android.graphics.Paint
import android.view.View
import android.widget.LinearLayout
import legwork.door.Block
import legwork.door.Deed
import legwork.door.RowEntry
import legwork.door.RowMark
import legwork.door.RowsBlock
import legwork.door.Severity
import legwork.phone.R

/** Rows under their name, some of which lead on. */
class RowsView(private val tools: Tools, private var block: RowsBlock) : BlockView() {
    private val stack = stack(tools.context)
    private val list = stack(tools.context)
    private val rows = Children(tools, list) { wide() }
    private var named: Any? = null

    override val view: View get() = stack

    init {
        list.dividerDrawable = tools.edges.rule()
        stack.below(list)
        draw()
    }

    private fun draw() {
        name()
        val stages = block.rows.any { it.doneOf != null }
        val signed = block.rows.any { it.mark == RowMark.BOX || it.mark == RowMark.DONE }
        list.showDividers = if (stages) LinearLayout.SHOW_DIVIDER_NONE
        else LinearLayout.SHOW_DIVIDER_BEGINNING or LinearLayout.SHOW_DIVIDER_MIDDLE or LinearLayout.SHOW_DIVIDER_END
        rows.show(
            block.rows.mapIndexed { place, row ->
                val (first, last) = (place == 0) to (place == block.rows.lastIndex)
                if (stages) Child(row.id, Triple(row, first, last)) { StageView(tools, row, first, last) }
                else Child(row.id, row to signed) { rowView(tools, row, signed) }
            },
        )
    }

    private fun name() {
        if (named == block.name to block.aloud) return
        if (named != null) stack.removeViewAt(0)
        named = block.name to block.aloud
        val name = tools.paper.text(block.name, Type.SAYS, R.color.quiet, weight = 600)
        name.setPadding(0, 0, 0, tools.paper.px(R.dimen.s2))
        name.says(block.aloud)
        stack.addView(name, 0, wide())
    }

    override fun change(block: Block): Boolean {
        this.block = (block as? Block.Rows ?: return false).block
        draw()
        return true
    }

    override fun resume() = rows.resume()

    override fun find(id: String): View? = rows.find(id)
}

private fun touch(tools: Tools, view: View, row: RowEntry) {
    view.minimumHeight = tools.paper.px(R.dimen.touch)
    row.key?.let { key ->
        view.background = tools.edges.bare()
        view.touched(tools) { tools.hands.act(Deed.Press(key)) }
    }
    view.says(row.aloud, States(picked = row.switched))
}

private fun rowView(tools: Tools, row: RowEntry, signed: Boolean): View {
    val paper = tools.paper
    val gap = paper.px(R.dimen.s3)
    val whole = stack(tools.context)
    val top = line(tools.context)
    val mark = row.mark
    val first = mark == RowMark.BOX || mark == RowMark.DONE
    if (first) top.beside(sign(tools, if (mark == RowMark.DONE) R.drawable.sign_box_ticked else R.drawable.sign_box, 22f, if (mark == RowMark.DONE) R.color.good else R.color.text))
    val words = stack(tools.context)
    words.below(paper.text(row.head, Type.ROW))
    if (row.says.isNotEmpty()) words.below(paper.text(row.says, Type.SAYS, R.color.quiet))
    row.share?.let { share -> words.below(LengthBar(tools, framed = false, high = 10f).apply { this.share = share.toInt().coerceAtLeast(4) }, paper.dp(6f)) }
    if (row.remark.isNotEmpty()) words.below(paper.text(row.remark, Type.ASIDE, R.color.quiet))
    top.beside(words, if (first) gap else 0, 1f)
    if (signed && !first && row.bar == null) (words.layoutParams as LinearLayout.LayoutParams).marginStart = paper.dp(34f)
    when {
        mark == RowMark.WEAK -> top.beside(sign(tools, R.drawable.sign_flag, 22f, R.color.weak), gap)
        mark == RowMark.NOT_KNOWN -> top.beside(sign(tools, R.drawable.sign_doubt, 22f, R.color.text), gap)
        mark == null && row.severity == Severity.GRAVE -> top.beside(sign(tools, R.drawable.sign_flag, 22f, R.color.weak), gap)
    }
    row.switched?.let { on -> top.beside(Switched(tools, on), gap) }
    if (row.key != null && row.switched == null) top.beside(sign(tools, R.drawable.sign_on, 20f, R.color.quiet), gap)
    whole.below(top)
    row.bar?.let { bar ->
        // Under the words, over the whole width: all bars of a list have one scale.
        val drawing = DrawingView(tools.paper, still = true)
        tools.hands.bar(bar, drawing::show)
        whole.below(drawing, paper.px(R.dimen.s2))
        whole.below(paper.text(bar.words, Type.SAYS, R.color.quiet).apply { fontFeatureSettings = "tnum" }, paper.px(R.dimen.s1))
    }
    whole.setPadding(0, paper.px(R.dimen.s2), 0, paper.px(R.dimen.s2))
    whole.gravity = android.view.Gravity.CENTER_VERTICAL
    for (place in 0 until whole.childCount) whole.getChildAt(place).unsaid()
    touch(tools, whole, row)
    return whole
}

/** A stage as a station along a cable: open, half or full, with how many of how many are done. */
private class StageView(private val tools: Tools, row: RowEntry, private val first: Boolean, private val last: Boolean) : LinearLayout(tools.context) {
    private val share = row.doneOf?.let { if (it.done == 0u) 0f else if (it.done >= it.of) 1f else 0.5f } ?: 0f
    private val at = tools.paper.dp(12f)
    private val radius = tools.paper.dp(10.5f).toFloat()
    private val cable = Paint(Paint.ANTI_ALIAS_FLAG).apply {
        color = tools.paper.ink(R.color.text)
        style = Paint.Style.STROKE
        strokeWidth = tools.paper.exact(R.dimen.stroke_cable)
        if (share == 0f) pathEffect = DashPathEffect(floatArrayOf(tools.paper.dp(2f).toFloat(), tools.paper.dp(5f).toFloat()), 0f)
    }
    private val edge = Paint(Paint.ANTI_ALIAS_FLAG).apply {
        color = tools.paper.ink(R.color.text)
        style = Paint.Style.STROKE
        strokeWidth = tools.paper.dp(2f).toFloat()
    }
    private val ground = Paint(Paint.ANTI_ALIAS_FLAG).apply { color = tools.paper.ink(R.color.surface) }
    private val full = Paint(Paint.ANTI_ALIAS_FLAG).apply { color = tools.paper.ink(R.color.text) }

    init {
        orientation = VERTICAL
        gravity = android.view.Gravity.CENTER_VERTICAL
        setWillNotDraw(false)
        val words = Flow(context, tools.paper.px(R.dimen.s3), apart = true)
        words.addView(tools.paper.text(row.head, Type.ROW))
        if (row.says.isNotEmpty()) words.addView(tools.paper.text(row.says, Type.SAYS, R.color.quiet).apply { fontFeatureSettings = "tnum" })
        val inside = stack(context)
        val pad = tools.paper.dp(10f)
        inside.below(words)
        if (row.remark.isNotEmpty()) inside.below(tools.paper.text(row.remark, Type.ASIDE, R.color.quiet))
        inside.setPadding(0, pad, 0, pad)
        inside.unsaid()
        setPaddingRelative(tools.paper.dp(36f), 0, 0, 0)
        below(inside)
        touch(tools, this, row)
    }

    override fun onDraw(canvas: Canvas) {
        val x = if (layoutDirection == View.LAYOUT_DIRECTION_RTL) width - at.toFloat() else at.toFloat()
        val middle = height / 2f
        canvas.drawLine(x, if (first) middle else 0f, x, if (last) middle else height.toFloat(), cable)
        canvas.drawCircle(x, middle, radius, ground)
        canvas.drawCircle(x, middle, radius, edge)
        if (share == 1f) canvas.drawCircle(x, middle, radius * 0.65f, full)
        if (share == 0.5f) canvas.drawArc(x - radius, middle - radius, x + radius, middle + radius, 0f, 180f, true, full)
    }
}

/** A switch: where its knob stands says which way, and a tick in it that it is on. */
private class Switched(tools: Tools, private val on: Boolean) : View(tools.context) {
    private val wide = tools.paper.dp(48f)
    private val high = tools.paper.dp(26f)
    private val edge = Paint(Paint.ANTI_ALIAS_FLAG).apply {
        style = Paint.Style.STROKE
        strokeWidth = tools.paper.dp(2f).toFloat()
        color = tools.paper.ink(if (on) R.color.accent else R.color.edge)
    }
    private val wash = Paint().apply { color = tools.paper.ink(if (on) R.color.accent_wash else R.color.raised) }
    private val knob = Paint(Paint.ANTI_ALIAS_FLAG).apply { color = tools.paper.ink(if (on) R.color.accent else R.color.edge) }
    private val tick = Paint(Paint.ANTI_ALIAS_FLAG).apply {
        style = Paint.Style.STROKE
        strokeWidth = tools.paper.dp(2f).toFloat()
        color = tools.paper.ink(R.color.on_accent)
    }

    override fun onMeasure(widthSpec: Int, heightSpec: Int) = setMeasuredDimension(wide, high)

    override fun onDraw(canvas: Canvas) {
        val half = edge.strokeWidth / 2
        canvas.drawRect(half, half, width - half, height - half, wash)
        canvas.drawRect(half, half, width - half, height - half, edge)
        val side = height - 4 * edge.strokeWidth
        val atEnd = on != (layoutDirection == LAYOUT_DIRECTION_RTL)
        val x = if (atEnd) width - 2 * edge.strokeWidth - side else 2 * edge.strokeWidth
        val y = 2 * edge.strokeWidth
        canvas.drawRect(x, y, x + side, y + side, knob)
        if (on) {
            canvas.drawLine(x + side * 0.2f, y + side * 0.5f, x + side * 0.42f, y + side * 0.75f, tick)
            canvas.drawLine(x + side * 0.42f, y + side * 0.75f, x + side * 0.8f, y + side * 0.25f, tick)
        }
    }
}
