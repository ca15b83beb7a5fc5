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
    val dp = root.resources.displayMetrics.density
    val at = IntArray(2).also(root::getLocationInWindow)
    return shownViews(root).mapNotNull { view ->
        if (view !is TextView || view.text.isNullOrEmpty() || !view.isEnabled) return@mapNotNull null
        val place = IntArray(2).also(view::getLocationInWindow)
        val ground = mostOf(drawn, place[0] - at[0], place[1] - at[1], view.width, view.height) ?: return@mapNotNull null
        val ratio = ratio(view.currentTextColor, ground)
        // Large is from 18 pt on, or 14 pt bold: 24 and 18.7 px of CSS.
        val large = view.textSize / dp >= 24
        if (ratio < (if (large) 3.0 else 4.5)) "%.2f: %s".format(java.util.Locale.ROOT, ratio, view.text) else null
    }
}

/** The ink that most of an area has: what the words lie on. */
private fun mostOf(bitmap: Bitmap, left: Int, top: Int, wide: Int, high: Int): Int? {
    val counts = HashMap<Int, Int>()
    var y = max(0, top)
    while (y < min(bitmap.height, top + high)) {
        var x = max(0, left)
        while (x < min(bitmap.width, left + wide)) {
            counts.merge(bitmap.getPixel(x, y), 1, Int::plus)
            x += 3
        }
        y += 3
    }
    return counts.maxByOrNull { it.value }?.key
}

/** WCAG 2.2, “contrast ratio”. */
fun ratio(one: Int, other: Int): Double {
    val (a, b) = listOf(one, other).map { Color.luminance(it).toDouble() + 0.05 }
    return max(a, b) / min(a, b)
}
