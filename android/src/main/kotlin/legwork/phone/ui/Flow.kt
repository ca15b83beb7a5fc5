package legwork.phone.ui

import android.content.Context
import android.view.View
import android.view.ViewGroup
import kotlin.math.max

/** Children one after the other, on as many lines as they need; `apart`: the last of a line stands at its end. */
class Flow(
    context: Context, private val gap: Int, private val middle: Boolean = false, private val apart: Boolean = false,
) : ViewGroup(context) {
    override fun onMeasure(widthSpec: Int, heightSpec: Int) {
        val most = MeasureSpec.getSize(widthSpec)
        val wide = if (MeasureSpec.getMode(widthSpec) == MeasureSpec.UNSPECIFIED) Int.MAX_VALUE / 2 else most
        measureChildren(MeasureSpec.makeMeasureSpec(wide, MeasureSpec.AT_MOST), MeasureSpec.makeMeasureSpec(0, MeasureSpec.UNSPECIFIED))
        val lines = lines(wide)
        val used = lines.maxOfOrNull { it.width } ?: 0
        val high = lines.sumOf { it.height } + gap * max(0, lines.size - 1)
        setMeasuredDimension(if (MeasureSpec.getMode(widthSpec) == MeasureSpec.EXACTLY) most else used, high)
    }

    override fun onLayout(changed: Boolean, left: Int, top: Int, right: Int, bottom: Int) {
        val wide = right - left
        val mirrored = layoutDirection == View.LAYOUT_DIRECTION_RTL
        var y = 0
        for (line in lines(wide)) {
            var x = if (middle) (wide - line.width) / 2 else 0
            for (child in line.children) {
                if (apart && line.children.size > 1 && child === line.children.last()) x = wide - child.measuredWidth
                val at = if (mirrored) wide - x - child.measuredWidth else x
                val down = y + (line.height - child.measuredHeight) / 2
                child.layout(at, down, at + child.measuredWidth, down + child.measuredHeight)
                x += child.measuredWidth + gap
            }
            y += line.height + gap
        }
    }

    private class Line(val children: MutableList<View> = mutableListOf(), var width: Int = 0, var height: Int = 0)

    private fun lines(wide: Int): List<Line> {
        val lines = mutableListOf<Line>()
        for (child in shown()) {
            val line = lines.lastOrNull()?.takeIf { it.width + gap + child.measuredWidth <= wide }
                ?: Line().also { lines += it }
            line.width += child.measuredWidth + if (line.children.isEmpty()) 0 else gap
            line.height = max(line.height, child.measuredHeight)
            line.children += child
        }
        return lines
    }
}

/** Children in as many equal columns as there is room for; every row as high as its highest. */
class Columns(context: Context, private val gap: Int, private val least: Int, private val most: Int = Int.MAX_VALUE) : ViewGroup(context) {
    override fun onMeasure(widthSpec: Int, heightSpec: Int) {
        val wide = MeasureSpec.getSize(widthSpec)
        val cell = cell(wide)
        val rows = shown().chunked(columns(wide)) { row ->
            row.forEach { measure(it, cell, 0, MeasureSpec.UNSPECIFIED) }
            val high = row.maxOf { it.measuredHeight }
            row.filter { it.measuredHeight != high }.forEach { measure(it, cell, high, MeasureSpec.EXACTLY) }
            high
        }
        setMeasuredDimension(wide, rows.sum() + gap * max(0, rows.size - 1))
    }

    private fun measure(child: View, cell: Int, high: Int, mode: Int) =
        child.measure(MeasureSpec.makeMeasureSpec(cell, MeasureSpec.EXACTLY), MeasureSpec.makeMeasureSpec(high, mode))

    override fun onLayout(changed: Boolean, left: Int, top: Int, right: Int, bottom: Int) {
        val wide = right - left
        val cell = cell(wide)
        val mirrored = layoutDirection == View.LAYOUT_DIRECTION_RTL
        var y = 0
        for (row in shown().chunked(columns(wide))) {
            row.forEachIndexed { place, child ->
                val x = place * (cell + gap)
                val at = if (mirrored) wide - x - cell else x
                child.layout(at, y, at + cell, y + child.measuredHeight)
            }
            y += row.maxOf { it.measuredHeight } + gap
        }
    }

    private fun columns(wide: Int): Int {
        val fit = ((wide + gap) / (least + gap)).coerceIn(1, most)
        return fit.coerceAtMost(max(1, shown().size))
    }

    private fun cell(wide: Int): Int = (wide - gap * (columns(wide) - 1)) / columns(wide)
}

internal fun ViewGroup.shown(): List<View> = (0 until childCount).map(::getChildAt).filter { it.visibility != View.GONE }
