package legwork.phone.ui

import android.content.Context
import android.view.View
import android.view.ViewGroup.LayoutParams.MATCH_PARENT
import android.view.ViewGroup.LayoutParams.WRAP_CONTENT
import android.widget.ImageView
import android.widget.LinearLayout
import legwork.phone.R

/** One above the other, over the whole width. */
fun stack(context: Context): LinearLayout = LinearLayout(context).apply { orientation = LinearLayout.VERTICAL }

/** One beside the other. */
fun line(context: Context): LinearLayout = LinearLayout(context).apply { gravity = android.view.Gravity.CENTER_VERTICAL }

/** Room over the whole width, as high as it is. */
fun wide(): LinearLayout.LayoutParams = LinearLayout.LayoutParams(MATCH_PARENT, WRAP_CONTENT)

/** Puts a view below the others, that far from the one above it. */
fun <V : View> LinearLayout.below(view: V, gap: Int = 0): V {
    val room = LinearLayout.LayoutParams(MATCH_PARENT, WRAP_CONTENT)
    if (childCount > 0) room.topMargin = gap
    addView(view, room)
    return view
}

/** Puts a view beside the others; with a share of what is left of the width, or as wide as it is. */
fun <V : View> LinearLayout.beside(view: V, gap: Int = 0, share: Float = 0f): V {
    val room = LinearLayout.LayoutParams(if (share > 0f) 0 else WRAP_CONTENT, WRAP_CONTENT, share)
    if (childCount > 0) room.marginStart = gap
    addView(view, room)
    return view
}

/** A small drawn sign. It only repeats what a word beside it says. */
fun sign(tools: Tools, drawable: Int, size: Float, ink: Int): ImageView = ImageView(tools.context).apply {
    setImageResource(drawable)
    imageTintList = tools.edges.tint(ink)
    val side = tools.paper.dp(size)
    minimumWidth = side
    minimumHeight = side
    maxWidth = side
    maxHeight = side
    adjustViewBounds = true
    unsaid()
}

/** A rule, which only adorns. */
fun rule(tools: Tools, ink: Int = R.color.line, width: Int = R.dimen.stroke_hair): View = object : View(tools.context) {
    override fun onMeasure(widthSpec: Int, heightSpec: Int) =
        setMeasuredDimension(MeasureSpec.getSize(widthSpec), tools.paper.exact(width).toInt().coerceAtLeast(1))
}.apply {
    setBackgroundColor(tools.paper.ink(ink))
    unsaid()
}

/** Margins of a stack's child: a rule over the whole width. */
fun LinearLayout.ruled(tools: Tools) { below(rule(tools)) }

/** Something that answers a touch: at least as high as a finger needs, with a ring where the focus is. */
fun <V : View> V.touched(tools: Tools, least: Int = R.dimen.touch, does: () -> Unit): V {
    minimumHeight = tools.paper.px(least)
    minimumWidth = tools.paper.px(R.dimen.touch)
    isClickable = true
    isFocusable = true
    tools.edges.ring(this)
    setOnClickListener { does() }
    return this
}
