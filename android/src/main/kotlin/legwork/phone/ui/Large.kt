package legwork.phone.ui

import android.annotation.SuppressLint
import android.app.Dialog
import android.graphics.Bitmap
import android.graphics.Canvas
import android.graphics.Matrix
import android.graphics.Paint
import android.view.GestureDetector
import android.view.MotionEvent
import android.view.ScaleGestureDetector
import android.view.View
import android.widget.LinearLayout
import legwork.door.Deed
import legwork.door.FigureBlock
import legwork.phone.R

/** Something seen large, over the whole window, with the way back where it always is. */
class Large(private val tools: Tools, name: String, private val seen: View) : Dialog(tools.paper.context, R.style.Over) {
    init {
        val paper = tools.paper
        val page = stack(context)
        page.setBackgroundColor(paper.ink(R.color.surface))
        val title = paper.text(name, Type.ROW)
        val side = paper.px(R.dimen.s4)
        title.setPadding(side, side, side, side)
        title.says(legwork.door.Aloud(legwork.door.AloudRole.HEADING, name, "", ""))
        page.below(title)
        page.addView(seen, LinearLayout.LayoutParams(LinearLayout.LayoutParams.MATCH_PARENT, 0, 1f))
        page.below(rule(tools, R.color.text, R.dimen.stroke_fine))
        val foot = line(context)
        foot.setPadding(side, paper.px(R.dimen.s2), side, paper.px(R.dimen.s2))
        foot.beside(iconKey(tools, R.drawable.sign_back, context.getString(R.string.back)) { dismiss() })
        page.below(foot)
        setContentView(page)
        setTitle(name)
        window?.setLayout(LinearLayout.LayoutParams.MATCH_PARENT, LinearLayout.LayoutParams.MATCH_PARENT)
    }

    companion object {
        /** A drawing, at least as large as it was laid out. */
        fun figure(tools: Tools, figure: FigureBlock): Large {
            lateinit var large: Large
            val drawing = DrawingView(tools.paper, whole = true) { key ->
                large.dismiss()
                tools.hands.act(Deed.Press(key))
            }
            drawing.says(figure.aloud)
            drawing.setBackgroundColor(tools.paper.ink(R.color.raised))
            tools.hands.figure(figure.figure, figure.version) { drawn ->
                drawing.show(drawn)
                drawing.post {
                    val own = drawn.figure.naturalWidth * tools.context.resources.displayMetrics.density
                    if (drawing.width in 1 until own.toInt()) drawing.zoomBy((own / drawing.width).toFloat(), 0f, 0f)
                }
            }
            large = Large(tools, figure.name, drawing)
            return large
        }

        fun photo(tools: Tools, name: String, load: ((Bitmap) -> Unit) -> Unit): Large {
            val seen = PhotoView(tools)
            seen.says(legwork.door.Aloud(legwork.door.AloudRole.PICTURE, name, "", ""))
            load(seen::show)
            return Large(tools, name, seen)
        }
    }
}

/** A photo that two fingers make larger and one moves; a double touch does it for one hand. */
@SuppressLint("ViewConstructor")
class PhotoView(tools: Tools) : View(tools.context) {
    private var photo: Bitmap? = null
    private val place = Matrix()
    private var zoom = 1f
    private var moveX = 0f
    private var moveY = 0f
    private val smooth = Paint(Paint.FILTER_BITMAP_FLAG)

    fun show(bitmap: Bitmap) {
        photo = bitmap
        fit()
    }

    private fun fit() {
        val photo = photo ?: return
        if (width == 0) return
        val scale = minOf(width.toFloat() / photo.width, height.toFloat() / photo.height) * zoom
        val spareX = width - photo.width * scale
        val spareY = height - photo.height * scale
        moveX = if (spareX >= 0) spareX / 2 else moveX.coerceIn(spareX, 0f)
        moveY = if (spareY >= 0) spareY / 2 else moveY.coerceIn(spareY, 0f)
        place.setScale(scale, scale)
        place.postTranslate(moveX, moveY)
        invalidate()
    }

    fun zoomed(): Float = zoom

    override fun onSizeChanged(w: Int, h: Int, oldW: Int, oldH: Int) = fit()

    override fun onDraw(canvas: Canvas) { photo?.let { canvas.drawBitmap(it, place, smooth) } }

    private fun zoomTo(next: Float, x: Float, y: Float) {
        val real = next.coerceIn(1f, LARGEST) / zoom
        zoom *= real
        moveX = x - (x - moveX) * real
        moveY = y - (y - moveY) * real
        fit()
    }

    private val taps = GestureDetector(context, object : GestureDetector.SimpleOnGestureListener() {
        override fun onDown(event: MotionEvent) = true
        override fun onDoubleTap(event: MotionEvent): Boolean {
            zoomTo(if (zoom > 1f) 1f else TWICE, event.x, event.y)
            return true
        }
        override fun onScroll(first: MotionEvent?, event: MotionEvent, x: Float, y: Float): Boolean {
            moveX -= x
            moveY -= y
            fit()
            return true
        }
    })

    private val pinch = ScaleGestureDetector(context, object : ScaleGestureDetector.SimpleOnScaleGestureListener() {
        override fun onScale(detector: ScaleGestureDetector): Boolean {
            zoomTo(zoom * detector.scaleFactor, detector.focusX, detector.focusY)
            return true
        }
    })

    @SuppressLint("ClickableViewAccessibility")
    override fun onTouchEvent(event: MotionEvent): Boolean {
        pinch.onTouchEvent(event)
        if (!pinch.isInProgress) taps.onTouchEvent(event)
        return true
    }

    private companion object {
        const val LARGEST = 12f
        const val TWICE = 2.5f
    }
}
