package legwork.phone.ui

import android.annotation.SuppressLint
import android.graphics.Canvas
import android.graphics.Matrix
import android.graphics.RectF
import android.view.GestureDetector
import android.view.MotionEvent
import android.view.ScaleGestureDetector
import android.view.View
import android.view.accessibility.AccessibilityNodeProvider
import kotlin.math.max
import legwork.door.FigureDrawn
import legwork.door.FigureMark

/**
 * A drawing on its canvas. Two fingers make it larger, one moves it then; a touch on a part presses its key. Marks are laid
 * out at the drawing's own width: at `fit` it fills the width of the view.
 */
class DrawingView(
    private val paper: Paper,
    /** Nothing in it can be touched or moved: it only repeats what stands in words beside it. */
    private val still: Boolean = false,
    /** It fills the whole window, and is as large as it wants to be. */
    private val whole: Boolean = false,
    private val pressed: (String) -> Unit = {},
) : View(paper.context) {
    private var marks: Marks? = null
    private val drawn: FigureDrawn? get() = marks?.figure
    private val toView = Matrix()
    private val toDrawing = Matrix()
    private var zoom = 1f
    private var moveX = 0f
    private var moveY = 0f
    private val parts by lazy { PartNodes(this) }

    init {
        if (still) unsaid() else {
            isFocusable = true
            isClickable = true
            Edges(paper).ring(this)
        }
        // Drawings stay as they are, whichever way words run: the core mirrors what has to be mirrored.
        layoutDirection = LAYOUT_DIRECTION_LTR
    }

    fun show(next: Marks) {
        if (next === marks) return
        val figure = next.figure
        val sameShape = drawn?.let { it.aspect == figure.aspect && it.naturalWidth == figure.naturalWidth } == true
        marks = next
        if (!sameShape) {
            zoom = 1f
            requestLayout()
        }
        place()
        invalidate()
    }

    /** The drawing's own height at a width, in pixels. */
    override fun onMeasure(widthSpec: Int, heightSpec: Int) {
        val wide = MeasureSpec.getSize(widthSpec)
        val figure = drawn
        if (whole || figure == null) {
            setMeasuredDimension(wide, if (whole) MeasureSpec.getSize(heightSpec) else 0)
            return
        }
        val own = (figure.naturalWidth * resources.displayMetrics.density).toFloat()
        val used = if (still) wide.toFloat() else minOf(wide.toFloat(), own * MOST_INLINE)
        setMeasuredDimension(wide, (used / figure.aspect).toInt())
    }

    override fun onSizeChanged(w: Int, h: Int, oldW: Int, oldH: Int) = place()

    /** How many pixels one unit of the drawing is when it fits. */
    private fun fit(): Float {
        val figure = drawn ?: return 1f
        val byWidth = (width / figure.naturalWidth).toFloat()
        if (!whole && !still) return minOf(byWidth, resources.displayMetrics.density * MOST_INLINE)
        return byWidth
    }

    private fun place() {
        val figure = drawn ?: return
        val scale = fit() * zoom
        val wide = (figure.naturalWidth * scale).toFloat()
        val high = (figure.naturalWidth / figure.aspect * scale).toFloat()
        moveX = moveX.coerceIn(minOf(0f, width - wide), 0f)
        moveY = moveY.coerceIn(minOf(0f, height - high), 0f)
        toView.setScale(scale, scale)
        toView.postTranslate(moveX, moveY)
        toView.invert(toDrawing)
    }

    override fun onDraw(canvas: Canvas) {
        val marks = marks ?: return
        canvas.save()
        canvas.clipRect(0, 0, width, height)
        canvas.concat(toView)
        marks.draw(canvas)
        canvas.restore()
    }

    /** The part under a place of the view: the topmost mark with a key, within a finger's reach. */
    fun markAt(x: Float, y: Float): FigureMark? {
        val at = floatArrayOf(x, y)
        toDrawing.mapPoints(at)
        val reach = toDrawing.mapRadius(paper.dp(REACH).toFloat())
        return marks?.at(at[0], at[1], reach)
    }

    /** Where a mark lies in the view. */
    fun placeOf(mark: FigureMark): RectF = RectF(marks?.boundsOf(mark) ?: RectF()).also { toView.mapRect(it) }

    /** The marks that a screen reader stops at, in order: one of each part, with all there is to say of it. */
    fun spokenMarks(): List<FigureMark> = marks?.spoken.orEmpty()

    fun press(mark: FigureMark) { mark.key?.let(pressed) }

    private val taps = GestureDetector(context, object : GestureDetector.SimpleOnGestureListener() {
        override fun onDown(event: MotionEvent) = true

        override fun onSingleTapUp(event: MotionEvent): Boolean {
            val mark = markAt(event.x, event.y)
            if (mark != null) press(mark) else performClick()
            return true
        }

        override fun onScroll(first: MotionEvent?, event: MotionEvent, x: Float, y: Float): Boolean {
            if (zoom <= 1f && !whole) return false
            parent?.requestDisallowInterceptTouchEvent(true)
            move(-x, -y)
            return true
        }
    })

    private val pinch = ScaleGestureDetector(context, object : ScaleGestureDetector.SimpleOnScaleGestureListener() {
        override fun onScaleBegin(detector: ScaleGestureDetector): Boolean {
            parent?.requestDisallowInterceptTouchEvent(true)
            return true
        }

        override fun onScale(detector: ScaleGestureDetector): Boolean {
            zoomBy(detector.scaleFactor, detector.focusX, detector.focusY)
            return true
        }
    })

    fun move(x: Float, y: Float) {
        moveX += x
        moveY += y
        place()
        invalidate()
    }

    /** Makes it larger or smaller around a place of the view. */
    fun zoomBy(by: Float, x: Float, y: Float) {
        val next = (zoom * by).coerceIn(1f, LARGEST)
        val real = next / zoom
        zoom = next
        moveX = x - (x - moveX) * real
        moveY = y - (y - moveY) * real
        place()
        invalidate()
    }

    fun zoomed(): Float = zoom

    @SuppressLint("ClickableViewAccessibility")
    override fun onTouchEvent(event: MotionEvent): Boolean {
        if (still) return false
        pinch.onTouchEvent(event)
        if (!pinch.isInProgress) taps.onTouchEvent(event)
        return true
    }

    override fun getAccessibilityNodeProvider(): AccessibilityNodeProvider? = if (still) null else parts

    override fun dispatchHoverEvent(event: MotionEvent): Boolean =
        (!still && parts.hover(event)) || super.dispatchHoverEvent(event)

    private companion object {
        /** Within a page no drawing is made much larger than it was laid out. */
        const val MOST_INLINE = 1.15f
        const val LARGEST = 6f
        const val REACH = 12f
    }
}

/** Whether a point lies within a rectangle or that near to it. */
internal fun RectF.near(x: Float, y: Float, reach: Float): Float {
    val dx = max(max(left - x, 0f), x - right)
    val dy = max(max(top - y, 0f), y - bottom)
    return if (dx <= reach && dy <= reach) dx + dy else Float.MAX_VALUE
}
