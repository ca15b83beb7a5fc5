package legwork.phone.ui

import android.text.Editable
import android.text.InputType
import android.text.TextWatcher
import android.view.View
import android.view.accessibility.AccessibilityNodeInfo
import android.view.inputmethod.EditorInfo
import android.widget.EditText
import legwork.door.Aloud
import legwork.phone.R

/** A place to type in: each change is handed on, and what comes back never moves the letters under the hands. */
class TypingField(tools: Tools, id: String, type: Type, private val typed: (String) -> Unit) : EditText(tools.paper.context) {
    private var isSetting = false

    /** What stands here, as far as anybody was told: the platform also reports a change where only the keyboard's kind is set. */
    private var known = ""

    init {
        tag = id
        tools.paper.set(this, type)
        background = tools.edges.ruled()
        minimumHeight = tools.paper.px(R.dimen.touch)
        setHintTextColor(tools.paper.ink(R.color.quiet))
        val pad = tools.paper.px(R.dimen.s1)
        setPadding(pad, pad, pad, pad)
        // What is half typed is kept by the core, also after the app's death; two keepers would contradict each other.
        isSaveEnabled = false
        imeOptions = imeOptions or EditorInfo.IME_FLAG_NO_EXTRACT_UI or EditorInfo.IME_FLAG_NO_FULLSCREEN
        addTextChangedListener(object : TextWatcher {
            override fun beforeTextChanged(text: CharSequence?, start: Int, count: Int, after: Int) = Unit
            override fun onTextChanged(text: CharSequence?, start: Int, before: Int, count: Int) = Unit
            override fun afterTextChanged(text: Editable) {
                val words = text.toString()
                if (words == known) return
                known = words
                if (!isSetting) typed(words)
            }
        })
    }

    /** What the screen says now; not while somebody types here. */
    fun show(words: String) {
        if (hasFocus() || text.toString() == words) return
        set(words)
    }

    fun set(words: String) {
        isSetting = true
        setText(words)
        setSelection(text.length)
        isSetting = false
    }

    /** Enter presses what the screen names. */
    fun onEnter(does: () -> Unit) {
        imeOptions = (imeOptions and EditorInfo.IME_MASK_ACTION.inv()) or EditorInfo.IME_ACTION_DONE
        setOnEditorActionListener { _, action, event ->
            val takes = action == EditorInfo.IME_ACTION_DONE || event?.keyCode == android.view.KeyEvent.KEYCODE_ENTER
            if (takes && (event == null || event.action == android.view.KeyEvent.ACTION_DOWN)) does()
            takes
        }
    }

    /** Label and hint for a screen reader; what is typed it says by itself. */
    fun says(aloud: Aloud) {
        importantForAccessibility = View.IMPORTANT_FOR_ACCESSIBILITY_YES
        accessibilityDelegate = object : AccessibilityDelegate() {
            override fun onInitializeAccessibilityNodeInfo(host: View, info: AccessibilityNodeInfo) {
                super.onInitializeAccessibilityNodeInfo(host, info)
                info.className = platformRole(aloud.role)
                info.hintText = listOf(aloud.label, aloud.hint).filter { it.isNotEmpty() }.joinToString(". ")
            }
        }
    }
}

/** Nothing is put right and nothing completed. */
const val AS_TYPED = InputType.TYPE_TEXT_FLAG_NO_SUGGESTIONS or InputType.TYPE_TEXT_VARIATION_VISIBLE_PASSWORD
