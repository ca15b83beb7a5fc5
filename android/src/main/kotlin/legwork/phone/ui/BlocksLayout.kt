package legwork.phone.ui

import android.content.Context
import android.view.View
import android.view.ViewGroup
import legwork.phone.R

/**
 * The blocks of a screen from top to bottom. Where there is room, what is to be looked at stands in a column of its own beside
 * what is asked; in the order of reading nothing moves.
 */
class BlocksLayout(context: Context, private val paper: Paper) : ViewGroup(context) {
    /** How a child is placed. */
    class Room(val beside: Boolean, val gap: Int) : LayoutParams(MATCH_PARENT, WRAP_CONTENT)

    private val column = paper.px(R.dimen.column)
    private val between = paper.px(R.dimen.s5)
    private val measureMost = paper.px(R.dimen.measure)

    /** So high it is at least, while what stood in it is made anew. */
    var least = 0
        set(value) {
            if (value == field) return
            field = value
            requestLayout()
        }

    private fun isWide(width: Int): Boolean = width >= paper.px(R.dimen.wide) - 2 * paper.px(R.dimen.s4) && shown().any { room(it).beside }

    private fun room(child: View): Room = child.layoutParams as? Room ?: Room(false, 0)

    private fun widthOf(child: View, width: Int): Int = when {
        !isWide(width) -> minOf(width, measureMost)
        room(child).beside -> width - column - between
        else -> column
    }

    override fun onMeasure(widthSpec: Int, heightSpec: Int) {
        val width = MeasureSpec.getSize(widthSpec)
        for (child in shown()) {
            child.measure(
                MeasureSpec.makeMeasureSpec(widthOf(child, width), MeasureSpec.EXACTLY),
                MeasureSpec.makeMeasureSpec(0, MeasureSpec.UNSPECIFIED),
            )
        }
        setMeasuredDimension(width, maxOf(least, placed(width).maxOfOrNull { it.second + it.first.measuredHeight } ?: 0))
    }

    /** Each child and where its top stands. */
    private fun placed(width: Int): List<Pair<View, Int>> {
        val wide = isWide(width)
        var first = 0
        var second = 0
        var isFirst = true
        var isSecond = true
        return shown().map { child ->
            val room = room(child)
            if (wide && room.beside) {
                val top = if (isSecond) second else second + room.gap
                isSecond = false
                second = top + child.measuredHeight
                child to top
            } else {
                val top = if (isFirst) first else first + room.gap
                isFirst = false
                first = top + child.measuredHeight
                child to top
            }
        }
    }

    override fun onLayout(changed: Boolean, left: Int, top: Int, right: Int, bottom: Int) {
        val width = right - left
        val wide = isWide(width)
        val mirrored = layoutDirection == LAYOUT_DIRECTION_RTL
        for ((child, down) in placed(width)) {
            val start = if (wide && room(child).beside) column + between else 0
            val at = if (mirrored) width - start - child.measuredWidth else start
            child.layout(at, down, at + child.measuredWidth, down + child.measuredHeight)
        }
    }

    override fun generateDefaultLayoutParams(): LayoutParams = Room(false, 0)
}
