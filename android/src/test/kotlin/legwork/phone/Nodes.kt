package legwork.phone

import android.view.View
import android.view.ViewGroup
import android.view.accessibility.AccessibilityNodeInfo
import android.widget.EditText
import legwork.door.Block
import legwork.door.Screen
import legwork.phone.logic.DockPlan
import legwork.phone.logic.leadOf
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
    return faults + inOrder(phone.screen, stops)
}

/** What a stop of the screen must be: its words, or the id of a place to type in; and its state, where it has one. */
private class Wanted(val words: String, val field: String? = null, val picked: Boolean? = null, val enabled: Boolean = true) {
    fun isAt(stop: Stop) = if (field != null) stop.view is EditText && stop.view.tag == field else stop.said.startsWith(words)
}

/** Everything of the screen in the order in which it is read, each once: blocks first, then the dock. */
private fun inOrder(screen: Screen, stops: List<Stop>): List<String> {
    val faults = mutableListOf<String>()
    val plan = DockPlan(screen)
    val lead = leadOf(screen)
    var from = 0
    fun next(wanted: Wanted, among: IntRange): Int? {
        val place = among.firstOrNull { wanted.isAt(stops[it]) }
        val what = wanted.words.ifEmpty { wanted.field }
        if (place == null) return null.also { faults += "not found in its order: $what" }
        val node = stops[place].node
        if (wanted.picked != null && (!node.isCheckable || node.isChecked != wanted.picked)) faults += "not said to be ${if (wanted.picked) "picked" else "open"}: $what"
        if (node.isEnabled != wanted.enabled) faults += "not said to be ${if (wanted.enabled) "enabled" else "disabled"}: $what"
        return place
    }
    for (wanted in screen.blocks.filterNot(plan::has).flatMap { wanted(it, lead) }) next(wanted, from until stops.size)?.let { from = it + 1 }
    // Within the dock the order is that of its places: all of it comes after the blocks.
    val docked = plan.answers?.options.orEmpty().map { Wanted(it.aloud.label, picked = it.picked, enabled = it.enabled) } +
        (plan.on + plan.out).map { Wanted(it.aloud.label, enabled = it.enabled) }
    docked.forEach { next(it, from until stops.size) }
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

private fun wanted(block: Block, lead: String?): List<Wanted> = when (block) {
    is Block.Words -> listOf(Wanted(block.block.head.ifEmpty { block.block.aloud.label }))
    is Block.Caution -> listOf(Wanted(block.block.aloud.label))
    // A name that stands in the lead is said there.
    is Block.Choice -> listOf(Wanted(block.block.aloud.label)).filter { block.block.name != lead } +
        block.block.options.map { Wanted(it.aloud.label, picked = it.picked, enabled = it.enabled) }
    is Block.Writing -> listOf(Wanted("", field = block.block.id))
    is Block.Number -> listOf(Wanted("", field = block.block.id)) + block.block.units.map { unit ->
        Wanted(unit.aloud.label, picked = (unit.key == block.block.unit).takeIf { block.block.units.size > 1 })
    }
    is Block.PhotoSlot -> listOf(Wanted(block.block.aloud.label)) + block.block.photos.map { Wanted(it.aloud.label, picked = it.picked) }
    is Block.PhotoPart -> listOf(Wanted(block.block.aloud.label))
    is Block.Label -> block.block.figures.map { Wanted(it.aloud.label) }
    is Block.Reading -> listOf(Wanted(block.block.aloud.label))
    is Block.Part -> listOf(Wanted(block.block.aloud.label))
    is Block.Rows -> listOf(Wanted(block.block.aloud.label)) + block.block.rows.map { Wanted(it.aloud.label, picked = it.switched) }
    is Block.Figure -> listOf(Wanted(block.block.aloud.label))
    is Block.HowFar -> listOf(Wanted(block.block.aloud.label)) + listOfNotNull(block.block.stop?.let { Wanted(it.aloud.label, enabled = it.enabled) })
    is Block.Press -> listOf(Wanted(block.block.aloud.label, enabled = block.block.enabled))
    is Block.Confirm -> listOf(Wanted(block.block.aloud.label, enabled = block.block.enabled))
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
