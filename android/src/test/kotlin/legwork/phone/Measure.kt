package legwork.phone

import android.graphics.Rect
import android.view.View
import android.view.ViewGroup
import android.widget.EditText
import android.widget.FrameLayout
import android.widget.ScrollView
import android.widget.TextView

/** What is wrong with how a screen is laid out: empty if nothing is. */
fun layoutFaults(root: View): List<String> {
    val dp = root.resources.displayMetrics.density
    val faults = mutableListOf<String>()
    for (view in shownViews(root)) {
        val name = (view as? TextView)?.text?.toString()?.take(40) ?: view.contentDescription?.toString()?.take(40) ?: view.javaClass.simpleName
        val parent = view.parent as? ViewGroup
        if (parent != null && parent !is ScrollView && view !== root) {
            val out = view.left < -1 || view.top < -1 || view.right > parent.width + 1 || view.bottom > parent.height + 1
            if (out) faults += "leaves its parent: $name ${view.left},${view.top},${view.right},${view.bottom} in ${parent.width}x${parent.height}"
        }
        if (view is ViewGroup && view !is FrameLayout) faults += overlaps(view)
        if (view is TextView) faults += clipped(view, name)
        if (view.isClickable && view.isEnabled && (view.width < 48 * dp - 1 || view.height < 48 * dp - 1)) {
            faults += "less than 48 dp: $name ${(view.width / dp).toInt()}x${(view.height / dp).toInt()}"
        }
    }
    return faults
}

private fun clipped(view: TextView, name: String): List<String> {
    val layout = view.layout ?: return emptyList()
    val faults = mutableListOf<String>()
    val high = view.height - view.compoundPaddingTop - view.compoundPaddingBottom
    val wide = view.width - view.compoundPaddingLeft - view.compoundPaddingRight
    val scrolls = view is EditText
    if (!scrolls && layout.height > high + 1) faults += "cut at its foot: $name"
    for (line in 0 until layout.lineCount) {
        if (layout.getEllipsisCount(line) > 0) faults += "ends in dots: $name"
        if (!scrolls && layout.getLineMax(line) > wide + 1) faults += "wider than its place: $name ${layout.getLineMax(line)} in $wide"
    }
    return faults
}

private fun overlaps(group: ViewGroup): List<String> {
    val children = (0 until group.childCount).map(group::getChildAt).filter { it.visibility == View.VISIBLE && it.width > 0 && it.height > 0 }
    val faults = mutableListOf<String>()
    for ((place, one) in children.withIndex()) for (other in children.drop(place + 1)) {
        val box = Rect(one.left, one.top, one.right, one.bottom)
        if (box.intersect(other.left, other.top, other.right, other.bottom) && box.width() > 1 && box.height() > 1) {
            faults += "lie over each other: ${one.contentDescription ?: one.javaClass.simpleName} and ${other.contentDescription ?: other.javaClass.simpleName}"
        }
    }
    return faults
}
