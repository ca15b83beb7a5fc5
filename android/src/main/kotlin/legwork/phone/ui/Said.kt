package legwork.phone.ui

import android.os.Build
import android.view.View
import android.view.accessibility.AccessibilityNodeInfo
import legwork.door.Aloud
import legwork.door.AloudRole
import legwork.phone.logic.NewerSdk

/** States that a screen reader says in the platform's own words. */
data class States(val picked: Boolean? = null, val enabled: Boolean = true, val open: String? = null)

/** What a screen reader says of a view: label, value and hint of the core, role and states of the platform. */
fun View.says(aloud: Aloud, states: States = States()) {
    contentDescription = spoken(aloud)
    importantForAccessibility = View.IMPORTANT_FOR_ACCESSIBILITY_YES
    when (aloud.role) {
        AloudRole.ALERT -> accessibilityLiveRegion = View.ACCESSIBILITY_LIVE_REGION_ASSERTIVE
        AloudRole.STATUS -> accessibilityLiveRegion = View.ACCESSIBILITY_LIVE_REGION_POLITE
        else -> Unit
    }
    accessibilityDelegate = Role(aloud.role, states)
}

/** All that is said of a thing, in one breath. */
fun spoken(aloud: Aloud): String {
    val said = listOf(aloud.label, aloud.value, aloud.hint).filter { it.isNotEmpty() }
    return said.dropLast(1).joinToString("") { if (it.last() in ENDS) "$it " else "$it. " } + said.lastOrNull().orEmpty()
}

private const val ENDS = ".?!:…"

/** Within a view that is read as one, nothing is read again. */
fun View.unsaid() {
    importantForAccessibility = View.IMPORTANT_FOR_ACCESSIBILITY_NO_HIDE_DESCENDANTS
}

/** The class of the platform that stands for a role. */
fun platformRole(role: AloudRole): String = when (role) {
    AloudRole.PRESS, AloudRole.PRESS_ASKS, AloudRole.LEADS_ON -> "android.widget.Button"
    AloudRole.ONE_OF -> "android.widget.RadioButton"
    AloudRole.ANY_OF -> "android.widget.CheckBox"
    AloudRole.SWITCH -> "android.widget.Switch"
    AloudRole.CHOOSE_ONE -> "android.widget.RadioGroup"
    AloudRole.WRITE_HERE, AloudRole.SEARCH_HERE, AloudRole.NUMBER_HERE -> "android.widget.EditText"
    AloudRole.PICTURE, AloudRole.DRAWING -> "android.widget.ImageView"
    AloudRole.PROGRESS -> "android.widget.ProgressBar"
    else -> "android.widget.TextView"
}

private class Role(private val role: AloudRole, private val states: States) : View.AccessibilityDelegate() {
    override fun onInitializeAccessibilityNodeInfo(host: View, info: AccessibilityNodeInfo) {
        super.onInitializeAccessibilityNodeInfo(host, info)
        info.className = platformRole(role)
        if (Build.VERSION.SDK_INT >= 28 && role == AloudRole.HEADING) heading(info)
        states.picked?.let {
            info.isCheckable = true
            info.isChecked = it
        }
        info.isEnabled = states.enabled
        if (Build.VERSION.SDK_INT >= 30) states.open?.let { state(info, it) }
    }

    @NewerSdk private fun heading(info: AccessibilityNodeInfo) { info.isHeading = true }

    @NewerSdk private fun state(info: AccessibilityNodeInfo, open: String) { info.stateDescription = open }
}
