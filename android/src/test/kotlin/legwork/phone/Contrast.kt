package legwork.phone

import android.graphics.Bitmap
import android.graphics.Color
import android.view.View
import android.widget.TextView
import kotlin.math.max
import kotlin.math.min

/** Words whose ink has too little contrast with what they really lie on, as drawn: 4.5, or 3 where they are large (WCAG 2.2, 1.4.3). */
fun contrastFaults(root: View): List<String> {
    if (root.width == 0 || root.height == 0) return emptyList()
    val drawn = Bitmap.createBitmap(root.width, root.height, Bitmap.Config.ARGB_8888)
    // What has no ground of its own lies on the page.
    drawn.eraseColor(root.context.getColor(R.color.surface))
    root.draw(android.graphics.Canvas(drawn))
    val inks = Inks(drawn)
    val dp = root.resources.displayMetrics.density
    val at = IntArray(2).also(root::getLocationInWindow)
    return shownViews(root).mapNotNull { view ->
        if (view !is TextView || view.text.isNullOrEmpty() || !view.isEnabled) return@mapNotNull null
        val place = IntArray(2).also(view::getLocationInWindow)
        val ground = inks.most(place[0] - at[0], place[1] - at[1], view.width, view.height) ?: return@mapNotNull null
        val ratio = ratio(view.currentTextColor, ground)
        // Large is from 18 pt on, or 14 pt bold: 24 and 18.7 px of CSS.
        val large = view.textSize / dp >= 24
        if (ratio < (if (large) 3.0 else 4.5)) "%.2f: %s".format(java.util.Locale.ROOT, ratio, view.text) else null
    }
}

/** What is drawn, pixel by pixel. */
private class Inks(bitmap: Bitmap) {
    private val wide = bitmap.width
    private val high = bitmap.height
    private val inks = IntArray(wide * high).also { bitmap.getPixels(it, 0, wide, 0, 0, wide, high) }

    /** The ink that most of an area has: what the words lie on. */
    fun most(left: Int, top: Int, width: Int, height: Int): Int? {
        val counts = HashMap<Int, Int>()
        for (y in max(0, top) until min(high, top + height) step 3) for (x in max(0, left) until min(wide, left + width) step 3) {
            counts.merge(inks[y * wide + x], 1, Int::plus)
        }
        return counts.maxByOrNull { it.value }?.key
    }
}

/** WCAG 2.2, “contrast ratio”. */
fun ratio(one: Int, other: Int): Double {
    val (a, b) = listOf(one, other).map { Color.luminance(it).toDouble() + 0.05 }
    return max(a, b) / min(a, b)
}
