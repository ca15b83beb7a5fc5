package legwork.phone.ui

import android.content.res.ColorStateList
import android.graphics.Color
import android.graphics.drawable.ColorDrawable
import android.graphics.drawable.Drawable
import android.graphics.drawable.GradientDrawable
import android.graphics.drawable.InsetDrawable
import android.graphics.drawable.LayerDrawable
import android.graphics.drawable.StateListDrawable
import android.view.View
import legwork.phone.R

/** How the edge of a thing runs. */
enum class Edge { SOLID, DASHED, DOTTED }

/** Edges and grounds: cut paper. What is pressed darkens; what has the focus has a ring. */
class Edges(private val paper: Paper) {
    /** A sheet with an edge. */
    fun sheet(
        fill: Int = R.color.raised,
        edge: Int = R.color.edge,
        width: Int = R.dimen.stroke_fine,
        run: Edge = Edge.SOLID,
        corner: Int = R.dimen.radius_control,
    ): GradientDrawable = GradientDrawable().apply {
        setColor(paper.ink(fill))
        cornerRadius = paper.exact(corner)
        val wide = paper.exact(width).coerceAtLeast(1f).toInt()
        when (run) {
            Edge.SOLID -> setStroke(wide, paper.ink(edge))
            Edge.DASHED -> setStroke(wide, paper.ink(edge), paper.dp(6f).toFloat(), paper.dp(4f).toFloat())
            Edge.DOTTED -> setStroke(wide, paper.ink(edge), paper.dp(2f).toFloat(), paper.dp(3f).toFloat())
        }
    }

    /** A sheet with a bar at its foot: what is chosen, told without its ink too. */
    fun footed(sheet: Drawable): Drawable {
        val bar = GradientDrawable().apply { setColor(paper.ink(R.color.accent)) }
        return LayerDrawable(arrayOf(sheet, bar)).apply {
            setLayerGravity(1, android.view.Gravity.BOTTOM or android.view.Gravity.FILL_HORIZONTAL)
            setLayerHeight(1, paper.dp(4f))
        }
    }

    /** The sheet as it lies, and darker under the finger. */
    fun pressed(sheet: Drawable, pressed: Drawable = sheet(R.color.sunk, R.color.text)): Drawable =
        StateListDrawable().apply {
            setExitFadeDuration(0)
            addState(intArrayOf(android.R.attr.state_pressed), pressed)
            addState(intArrayOf(), sheet)
        }

    /** A rule between rows. */
    fun rule(): Drawable = Between(paper.ink(R.color.line), paper.exact(R.dimen.stroke_hair).toInt().coerceAtLeast(1))

    /** Nothing, between things that stand apart. */
    fun gap(high: Int): Drawable = Between(Color.TRANSPARENT, high)

    private class Between(ink: Int, private val high: Int) : ColorDrawable(ink) {
        override fun getIntrinsicHeight() = high
    }

    /** Nothing as it lies, and darker under the finger: rows and quiet presses. */
    fun bare(): Drawable = pressed(GradientDrawable().apply { setColor(Color.TRANSPARENT) }, GradientDrawable().apply { setColor(paper.ink(R.color.sunk)) })

    /** The ring of what has the focus. */
    fun ring(view: View) {
        val ring = GradientDrawable().apply {
            setColor(Color.TRANSPARENT)
            setStroke(paper.px(R.dimen.stroke_focus), paper.ink(R.color.accent))
        }
        view.foreground = StateListDrawable().apply {
            addState(intArrayOf(android.R.attr.state_focused), ring)
            addState(intArrayOf(), GradientDrawable().apply { setColor(Color.TRANSPARENT) })
        }
        // The platform's own pale sheet would lie over it.
        view.defaultFocusHighlightEnabled = false
    }

    /** The line under a place to write in. */
    fun ruled(): Drawable {
        val line = sheet(R.color.raised, R.color.text, R.dimen.stroke_fine)
        val off = -paper.dp(4f)
        line.cornerRadius = 0f
        return LayerDrawable(arrayOf(InsetDrawable(line, off, off, off, 0)))
    }

    fun tint(id: Int): ColorStateList = ColorStateList.valueOf(paper.ink(id))
}
