package legwork.phone.ui

import android.graphics.Rect
import android.os.Bundle
import android.view.MotionEvent
import android.view.View
import android.view.accessibility.AccessibilityEvent
import android.view.accessibility.AccessibilityNodeInfo
import android.view.accessibility.AccessibilityNodeInfo.AccessibilityAction
import android.view.accessibility.AccessibilityNodeProvider

/** The parts of a drawing as a screen reader finds them: one stop for each, which a double touch presses. */
class PartNodes(private val drawing: DrawingView) : AccessibilityNodeProvider() {
    private var focused = NONE
    private var hovered = NONE

    override fun createAccessibilityNodeInfo(id: Int): AccessibilityNodeInfo? {
        if (id == HOST_VIEW_ID) return host()
        val mark = drawing.spokenMarks().getOrNull(id) ?: return null
        return AccessibilityNodeInfo.obtain(drawing, id).apply {
            setParent(drawing)
            packageName = drawing.context.packageName
            className = platformRole(mark.aloud.role)
            contentDescription = spoken(mark.aloud)
            val place = drawing.placeOf(mark)
            val box = Rect(place.left.toInt(), place.top.toInt(), place.right.toInt(), place.bottom.toInt())
            setBoundsInParent(box)
            val at = IntArray(2).also(drawing::getLocationOnScreen)
            box.offset(at[0], at[1])
            setBoundsInScreen(box)
            isEnabled = true
            isVisibleToUser = true
            isClickable = mark.key != null
            isAccessibilityFocused = focused == id
            addAction(if (focused == id) AccessibilityAction.ACTION_CLEAR_ACCESSIBILITY_FOCUS else AccessibilityAction.ACTION_ACCESSIBILITY_FOCUS)
            if (mark.key != null) addAction(AccessibilityAction.ACTION_CLICK)
        }
    }

    private fun host(): AccessibilityNodeInfo = AccessibilityNodeInfo.obtain(drawing).apply {
        drawing.onInitializeAccessibilityNodeInfo(this)
        drawing.spokenMarks().indices.forEach { addChild(drawing, it) }
    }

    override fun performAction(id: Int, action: Int, arguments: Bundle?): Boolean {
        if (id == HOST_VIEW_ID) return drawing.performAccessibilityAction(action, arguments)
        val mark = drawing.spokenMarks().getOrNull(id) ?: return false
        when (action) {
            AccessibilityNodeInfo.ACTION_CLICK -> drawing.press(mark)
            AccessibilityNodeInfo.ACTION_ACCESSIBILITY_FOCUS -> focus(id)
            AccessibilityNodeInfo.ACTION_CLEAR_ACCESSIBILITY_FOCUS -> if (focused == id) focus(NONE)
            else -> return false
        }
        return true
    }

    private fun focus(id: Int) {
        val before = focused
        focused = id
        if (before != NONE) send(before, AccessibilityEvent.TYPE_VIEW_ACCESSIBILITY_FOCUS_CLEARED)
        if (id != NONE) send(id, AccessibilityEvent.TYPE_VIEW_ACCESSIBILITY_FOCUSED)
        drawing.invalidate()
    }

    /** A finger that feels its way over the drawing. */
    fun hover(event: MotionEvent): Boolean {
        val key = drawing.markAt(event.x, event.y)?.key
        val over = if (event.action == MotionEvent.ACTION_HOVER_EXIT) NONE
        else drawing.spokenMarks().indexOfFirst { it.key != null && it.key == key }
        if (over == hovered) return over != NONE
        if (hovered != NONE) send(hovered, AccessibilityEvent.TYPE_VIEW_HOVER_EXIT)
        if (over != NONE) send(over, AccessibilityEvent.TYPE_VIEW_HOVER_ENTER)
        hovered = over
        return over != NONE
    }

    private fun send(id: Int, type: Int) {
        @Suppress("DEPRECATION")
        val event = AccessibilityEvent.obtain(type)
        event.setSource(drawing, id)
        event.packageName = drawing.context.packageName
        drawing.spokenMarks().getOrNull(id)?.let { event.contentDescription = spoken(it.aloud) }
        drawing.parent?.requestSendAccessibilityEvent(drawing as View, event)
    }

    private companion object { const val NONE = -1000 }
}
