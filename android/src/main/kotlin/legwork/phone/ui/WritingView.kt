package legwork.phone.ui

import android.text.InputType
import android.view.View
import legwork.door.Block
import legwork.door.Deed
import legwork.door.WritingBlock
import legwork.door.WritingKind
import legwork.phone.R

/** Words to write: a label above, a ruled line below. */
class WritingView(private val tools: Tools, setting: Setting, private var block: WritingBlock) : BlockView() {
    private val field = TypingField(tools, block.id, if (isTag()) Type.TAG else Type.TEXT) {
        tools.hands.type(Deed.Write(block.key, it))
    }

    override val view: View = stack(tools.context).apply {
        if (block.name != setting.lead) below(tools.paper.text(block.name, Type.SAYS, R.color.quiet, weight = 600)).unsaid()
        below(field)
        if (block.hint.isNotEmpty()) {
            below(tools.paper.text(block.hint, Type.ASIDE, R.color.quiet), tools.paper.px(R.dimen.s2)).unsaid()
        }
    }

    init {
        field.inputType = keyboard()
        if (block.lines) field.minLines = LINES
        field.says(block.aloud)
        field.set(block.text)
        block.submit?.takeIf { !block.lines }?.let { key -> field.onEnter { tools.hands.act(Deed.Press(key)) } }
    }

    private fun isTag() = block.kind == WritingKind.TAG || block.kind == WritingKind.PRINT

    private fun keyboard(): Int {
        val lines = if (block.lines) InputType.TYPE_TEXT_FLAG_MULTI_LINE else 0
        val kind = when (block.kind) {
            WritingKind.NAME, WritingKind.NAMES -> InputType.TYPE_TEXT_FLAG_CAP_WORDS or InputType.TYPE_TEXT_FLAG_NO_SUGGESTIONS
            WritingKind.TAG -> InputType.TYPE_TEXT_FLAG_CAP_CHARACTERS or InputType.TYPE_TEXT_FLAG_NO_SUGGESTIONS
            WritingKind.PRINT -> AS_TYPED
            WritingKind.NOTE -> InputType.TYPE_TEXT_FLAG_CAP_SENTENCES or InputType.TYPE_TEXT_FLAG_AUTO_CORRECT
            WritingKind.SEARCH -> AS_TYPED
        }
        return InputType.TYPE_CLASS_TEXT or kind or lines
    }

    override fun change(block: Block): Boolean {
        val next = (block as? Block.Writing ?: return false).block
        // What is read out of it holds the text, too.
        if (next.copy(text = "", aloud = this.block.aloud) != this.block.copy(text = "")) return false
        this.block = next
        field.says(next.aloud)
        field.show(next.text)
        return true
    }

    override fun find(id: String): View? = field.takeIf { id == block.id }

    private companion object { const val LINES = 3 }
}
