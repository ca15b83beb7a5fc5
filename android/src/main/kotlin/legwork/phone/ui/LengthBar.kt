package legwork.phone.ui

import android.graphics.Canvas
import android.graphics.Paint
import android.view.View
import legwork.phone.R

/** A framed bar as long as a share of the whole; empty where the share cannot be told. */
class LengthBar(tools: Tools, private val framed: Boolean = true, private val high: Float = 12f) : View(tools.context) {
    var share: Int? = null
        set(value) { field = value; invalidate() }

    private val paper = tools.paper
    private val edge = Paint().apply {
        style = Paint.Style.STROKE
        strokeWidth = paper.exact(R.dimen.stroke_fine)
        color = paper.ink(R.color.text)
    }
    private val fill = Paint().apply { color = paper.ink(if (framed) R.color.accent else R.color.text) }

    override fun onMeasure(widthSpec: Int, heightSpec: Int) = setMeasuredDimension(MeasureSpec.getSize(widthSpec), paper.dp(high))

    override fun onDraw(canvas: Canvas) {
        val long = width * (share ?: 0).coerceIn(0, 1000) / 1000f
        val from = if (layoutDirection == LAYOUT_DIRECTION_RTL) width - long else 0f
        canvas.drawRect(from, 0f, from + long, height.toFloat(), fill)
        if (framed) {
            val half = edge.strokeWidth / 2
            canvas.drawRect(half, half, width - half, height - half, edge)
        }
    }
}
