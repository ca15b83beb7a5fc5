package legwork.phone.ui

import android.graphics.Canvas
import android.graphics.DashPathEffect
import android.graphics.Paint
import android.graphics.Path
import android.graphics.Picture
import android.graphics.RectF
import android.graphics.Typeface
import java.util.IdentityHashMap
import kotlin.math.ceil
import legwork.door.FigureDrawn
import legwork.door.FigureMark
import legwork.door.MarkAnchor
import legwork.door.MarkDash
import legwork.door.MarkFill
import legwork.door.MarkInk
import legwork.door.MarkShape
import legwork.door.MarkWeight
import legwork.door.Spot
import legwork.phone.R

/**
 * The marks of a drawing, ready for a canvas, in units of 1/96 inch at the drawing's own width. A large house has thousands:
 * they are made away from the thread that draws, which then draws them as one.
 */
class Marks(private val paper: Paper, val figure: FigureDrawn) {
    private val all = figure.marks.map(::ready)
    private val keyed = all.filter { it.mark.key != null }.asReversed()
    private val bounds = IdentityHashMap<FigureMark, RectF>().apply {
        // What stands for a part is as large as all marks of its key together.
        val byKey = HashMap<String, RectF>()
        for (one in keyed) byKey.getOrPut(one.mark.key.orEmpty()) { RectF(one.bounds) }.union(one.bounds)
        for (one in all) put(one.mark, byKey[one.mark.key] ?: one.bounds)
    }

    /** The marks that a screen reader stops at, in order: one of each part, with all there is to say of it. */
    val spoken: List<FigureMark> = figure.marks.filter { it.aloud.label.isNotEmpty() && !it.repeats }

    private val picture = Picture().apply {
        val wide = figure.naturalWidth
        val canvas = beginRecording(ceil(wide).toInt(), ceil(wide / figure.aspect).toInt())
        for (one in all) {
            one.fill?.let { fill -> one.path?.let { canvas.drawPath(it, fill) } }
            one.line?.let { line -> one.path?.let { canvas.drawPath(it, line) } }
            one.words?.let { canvas.drawText(it.text, it.x, it.y, it.paint) }
        }
        endRecording()
    }

    fun draw(canvas: Canvas) = canvas.drawPicture(picture)

    fun boundsOf(mark: FigureMark): RectF? = bounds[mark]

    /** The nearest mark with a key within reach; of equals, the topmost. */
    fun at(x: Float, y: Float, reach: Float): FigureMark? =
        keyed.map { it to it.bounds.near(x, y, reach) }
            .filter { it.second < Float.MAX_VALUE }
            .minByOrNull { it.second }?.first?.mark

    private class Ready(val mark: FigureMark, val path: Path?, val line: Paint?, val fill: Paint?, val words: Words?, val bounds: RectF)

    private class Words(val text: String, val x: Float, val y: Float, val paint: Paint)

    private fun ready(mark: FigureMark): Ready {
        val ink = paper.ink(inkOf(mark.ink))
        val shape = mark.shape
        if (shape is MarkShape.Lettering) {
            val words = lettering(shape, ink)
            val wide = words.paint.measureText(words.text)
            val from = when (words.paint.textAlign) {
                Paint.Align.LEFT -> words.x
                Paint.Align.CENTER -> words.x - wide / 2
                else -> words.x - wide
            }
            val box = RectF(from, words.y + words.paint.ascent(), from + wide, words.y + words.paint.descent())
            return Ready(mark, null, null, null, words, box)
        }
        val path = path(shape)
        val box = RectF().also { path.computeBounds(it, true) }
        return Ready(mark, path, line(mark, ink), fill(mark, ink), null, box)
    }

    private fun at(spot: Spot) = Spot(spot.x * figure.naturalWidth, spot.y * figure.naturalWidth)

    private fun px(unit: Double) = (unit * figure.naturalWidth).toFloat()

    private fun path(shape: MarkShape): Path {
        val path = Path()
        val (way, closed) = when (shape) {
            is MarkShape.Frame -> {
                val corner = at(shape.corner)
                val box = RectF(corner.x.toFloat(), corner.y.toFloat(), corner.x.toFloat() + px(shape.width), corner.y.toFloat() + px(shape.height))
                path.addRoundRect(box, px(shape.round), px(shape.round), Path.Direction.CW)
                return path
            }
            is MarkShape.Strokes -> {
                for (line in shape.lines) {
                    val (from, to) = at(line.from) to at(line.to)
                    path.moveTo(from.x.toFloat(), from.y.toFloat())
                    path.lineTo(to.x.toFloat(), to.y.toFloat())
                }
                return path
            }
            is MarkShape.Stroke -> listOf(at(shape.from), at(shape.to)) to false
            is MarkShape.Path -> shape.spots.map(::at) to shape.closed
            is MarkShape.Lettering -> return path
        }
        way.forEachIndexed { place, spot ->
            if (place == 0) path.moveTo(spot.x.toFloat(), spot.y.toFloat()) else path.lineTo(spot.x.toFloat(), spot.y.toFloat())
        }
        if (closed) path.close()
        return path
    }

    private fun line(mark: FigureMark, ink: Int): Paint? {
        val width = when (mark.weight) {
            MarkWeight.ABSENT -> return null
            MarkWeight.THIN -> 1f
            MarkWeight.PLAIN -> 1.5f
            MarkWeight.CABLE -> 2.25f
            MarkWeight.THICK -> 4f
        }
        return Paint(Paint.ANTI_ALIAS_FLAG).apply {
            style = Paint.Style.STROKE
            strokeWidth = width
            color = ink
            strokeJoin = Paint.Join.ROUND
            dashes(mark)?.let { pathEffect = DashPathEffect(it, 0f) }
        }
    }

    private fun dashes(mark: FigureMark): FloatArray? = when (mark.dash) {
        MarkDash.DASHED -> if (mark.weight == MarkWeight.THICK) floatArrayOf(9f, 4f) else floatArrayOf(8f, 5f)
        MarkDash.DOTTED -> if (mark.weight == MarkWeight.CABLE) floatArrayOf(2f, 5f) else floatArrayOf(3f, 2.5f)
        MarkDash.LONG -> floatArrayOf(10f, 3f)
        MarkDash.SOLID -> null
    }

    private fun fill(mark: FigureMark, ink: Int): Paint? {
        val share = when (mark.fill) {
            MarkFill.ABSENT -> return null
            MarkFill.FAINT -> 0.1f
            MarkFill.MEDIUM -> 0.25f
            MarkFill.SOLID, MarkFill.GROUND -> 1f
        }
        return Paint(Paint.ANTI_ALIAS_FLAG).apply {
            color = if (mark.fill == MarkFill.GROUND) paper.ink(R.color.raised) else ink
            alpha = (share * 255).toInt()
        }
    }

    private fun lettering(shape: MarkShape.Lettering, ink: Int): Words {
        val family = if (shape.even) Typeface.MONOSPACE else Typeface.SANS_SERIF
        val paint = Paint(Paint.ANTI_ALIAS_FLAG or Paint.SUBPIXEL_TEXT_FLAG).apply {
            color = ink
            textSize = px(shape.size)
            typeface = if (shape.strong) Typeface.create(family, Typeface.BOLD) else family
            textAlign = when (shape.anchor) {
                MarkAnchor.START -> Paint.Align.LEFT
                MarkAnchor.MIDDLE -> Paint.Align.CENTER
                MarkAnchor.END -> Paint.Align.RIGHT
            }
        }
        val at = at(shape.at)
        return Words(shape.words, at.x.toFloat(), at.y.toFloat(), paint)
    }

    private fun inkOf(ink: MarkInk): Int = when (ink) {
        MarkInk.TEXT, MarkInk.CABLE -> R.color.text
        MarkInk.QUIET -> R.color.quiet
        MarkInk.ACCENT -> R.color.accent
        MarkInk.WEAK, MarkInk.WARNING -> R.color.weak
        MarkInk.MEASURED -> R.color.measured
        MarkInk.PENCIL -> R.color.pencil
    }
}
