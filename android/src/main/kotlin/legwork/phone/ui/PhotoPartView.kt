package legwork.phone.ui

import android.annotation.SuppressLint
import android.graphics.Bitmap
import android.graphics.Canvas
import android.graphics.Paint
import android.view.MotionEvent
import android.view.View
import android.view.ViewConfiguration
import kotlin.math.abs
import legwork.door.Deed
import legwork.door.PhotoPartBlock
import legwork.phone.R

/** A photo of which a part is chosen by touches on two corners of it. */
class PhotoPartView(tools: Tools, block: PhotoPartBlock) : BlockView() {
    private val stack = stack(tools.context)
    private val photo = TouchedPhoto(tools.paper, block) { across, down -> tools.hands.act(Deed.Touch(block.key, across, down)) }

    override val view: View get() = stack

    init {
        stack.below(tools.paper.text(block.name, Type.TEXT, weight = 600)).unsaid()
        stack.below(photo, tools.paper.px(R.dimen.s2))
        photo.says(block.aloud)
        tools.hands.piece(block.photo, photo::show)
    }

    override fun find(id: String): View = photo
}

/** All of a photo, as wide as there is room; what was chosen is drawn over it. */
@SuppressLint("ViewConstructor")
class TouchedPhoto(private val paper: Paper, private val block: PhotoPartBlock, private val touched: (UInt, UInt) -> Unit) : View(paper.plain) {
    private var bitmap: Bitmap? = null
    private val over = Paint(Paint.ANTI_ALIAS_FLAG).apply { style = Paint.Style.STROKE }
    private val plain = Paint(Paint.FILTER_BITMAP_FLAG)
    private var fromX = 0f
    private var fromY = 0f

    init {
        // A photo lies as it was taken, whichever way words run.
        layoutDirection = LAYOUT_DIRECTION_LTR
        setBackgroundColor(paper.ink(R.color.sunk))
    }

    fun show(next: Bitmap) {
        bitmap = next
        requestLayout()
        invalidate()
    }

    override fun onMeasure(widthSpec: Int, heightSpec: Int) {
        val wide = MeasureSpec.getSize(widthSpec)
        val high = bitmap?.let { wide.toLong() * it.height / it.width.coerceAtLeast(1) } ?: (wide.toLong() * 3 / 4)
        setMeasuredDimension(wide, high.toInt())
    }

    override fun onDraw(canvas: Canvas) {
        bitmap?.let { canvas.drawBitmap(it, null, android.graphics.RectF(0f, 0f, width.toFloat(), height.toFloat()), plain) }
        // Twice, so that it is seen on light and on dark.
        for ((ink, wide) in listOf(R.color.surface to 5f, R.color.accent to 2.5f)) {
            over.color = paper.ink(ink)
            over.strokeWidth = paper.dp(1f) * wide
            block.part?.let { canvas.drawRect(x(it.left), y(it.top), x(it.left + it.width), y(it.top + it.height), over) }
            block.corner?.let {
                canvas.drawLine(x(it.across), 0f, x(it.across), height.toFloat(), over)
                canvas.drawLine(0f, y(it.down), width.toFloat(), y(it.down), over)
            }
        }
    }

    private fun x(parts: UInt): Float = parts.toInt() * width / PARTS

    private fun y(parts: UInt): Float = parts.toInt() * height / PARTS

    /** A touch that stays where it began; one that moves on scrolls the page. */
    @SuppressLint("ClickableViewAccessibility")
    override fun onTouchEvent(event: MotionEvent): Boolean {
        when (event.actionMasked) {
            MotionEvent.ACTION_DOWN -> {
                fromX = event.x
                fromY = event.y
            }
            MotionEvent.ACTION_UP -> {
                val slop = ViewConfiguration.get(context).scaledTouchSlop
                val isOne = abs(event.x - fromX) <= slop && abs(event.y - fromY) <= slop
                if (isOne && bitmap != null) touched(parts(event.x, width), parts(event.y, height))
            }
        }
        return true
    }

    private fun parts(at: Float, side: Int): UInt = (at / side.coerceAtLeast(1) * PARTS).coerceIn(0f, PARTS).toInt().toUInt()

    private companion object { const val PARTS = 10_000f }
}
