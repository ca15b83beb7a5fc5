package legwork.phone

import android.view.View
import android.view.ViewGroup
import android.view.accessibility.AccessibilityNodeInfo
import android.widget.EditText
import legwork.door.Block
import legwork.phone.logic.DockPlan
import legwork.phone.ui.DrawingView
import legwork.phone.ui.spoken

/** One stop of a screen reader. */
class Stop(val view: View, val said: String, val node: AccessibilityNodeInfo)

/** What a screen reader stops at, in the order in which it finds them: as the platform itself collects them. */
fun stops(root: View): List<Stop> {
    val found = ArrayList<Stop>()
    fun walk(view: View) {
        if (view.visibility != View.VISIBLE) return
        val node = view.createAccessibilityNodeInfo()
        val said = node.contentDescription?.toString() ?: node.text?.toString() ?: node.hintText?.toString() ?: ""
        if (view.isImportantForAccessibility && (said.isNotEmpty() || node.isClickable)) found += Stop(view, said, node)
        if (view is ViewGroup && view.importantForAccessibility != View.IMPORTANT_FOR_ACCESSIBILITY_NO_HIDE_DESCENDANTS) {
            (0 until view.childCount).map(view::getChildAt).forEach(::walk)
        }
    }
    walk(root)
    return found
}

/** What is wrong with what a screen reader finds. */
fun nodeFaults(phone: Phone): List<String> {
    val faults = mutableListOf<String>()
    val stops = stops(phone.window.page)
    for (stop in stops) {
        val node = stop.node
        val role = node.className?.toString().orEmpty()
        if (node.isClickable) {
            if (stop.said.isBlank()) faults += "without a name: ${stop.view.javaClass.simpleName}"
            if (role !in ROLES && stop.view !is DrawingView) faults += "without a role: ${stop.said} is $role"
            if (node.isCheckable != (role in CHECKED) && role != BUTTON) faults += "without a state: ${stop.said}"
        }
        if (stop.view is EditText && node.hintText.isNullOrEmpty()) faults += "a place to write without a name"
        if (stop.view is DrawingView) faults += parts(stop.view)
    }
    if (stops.none { it.node.isHeading }) faults += "no heading"
    // In the order in which it is read: blocks first, then the dock.
    val screen = phone.screen
    val plan = DockPlan(screen)
    val read = screen.blocks.filterNot(plan::has).flatMap(::firstWords)
    var from = 0
    for (words in read) {
        val place = stops.drop(from).indexOfFirst { it.said.startsWith(words.take(20)) }
        if (place < 0) faults += "not found in its order: $words" else from += place
    }
    return faults
}

private fun parts(drawing: DrawingView): List<String> {
    val provider = drawing.accessibilityNodeProvider ?: return listOf("a drawing without parts")
    return drawing.spokenMarks().mapIndexedNotNull { place, mark ->
        val node = provider.createAccessibilityNodeInfo(place)
        when {
            node == null -> "a part without a node"
            node.contentDescription != spoken(mark.aloud) -> "a part without its words: ${mark.aloud.label}"
            node.isClickable != (mark.key != null) -> "a part that cannot be pressed: ${mark.aloud.label}"
            else -> null
        }
    }
}

private fun firstWords(block: Block): List<String> = when (block) {
    is Block.Words -> listOf(if (block.block.head.isNotEmpty()) block.block.head else block.block.aloud.label)
    is Block.Choice -> block.block.options.map { it.aloud.label }
    is Block.Rows -> block.block.rows.map { it.aloud.label }
    is Block.Label -> block.block.figures.map { it.aloud.label }
    is Block.Part -> listOf(block.block.aloud.label)
    is Block.Caution -> listOf(block.block.aloud.label)
    else -> emptyList()
}

private const val BUTTON = "android.widget.Button"
private val CHECKED = setOf("android.widget.RadioButton", "android.widget.CheckBox", "android.widget.Switch")
private val ROLES = CHECKED + BUTTON + "android.widget.EditText"

/** Everything said on a screen, for a log. */
fun nodesAsText(root: View): String = stops(root).joinToString("\n") { stop ->
    val node = stop.node
    val states = listOfNotNull(
        "heading".takeIf { node.isHeading }, (if (node.isChecked) "checked" else "not checked").takeIf { node.isCheckable },
        "disabled".takeIf { !node.isEnabled }, "live".takeIf { node.liveRegion != 0 }, node.stateDescription?.toString(),
    )
    "${node.className?.toString()?.substringAfterLast('.')}: ${stop.said}${if (states.isEmpty()) "" else states.joinToString(", ", " [", "]")}"
}
