package legwork.phone.ui

import android.text.InputType
import android.view.View
import legwork.door.Block
import legwork.door.Deed
import legwork.door.NumberBlock
import legwork.door.NumberKind
import legwork.door.UnitOption
import legwork.phone.R

/** A number: a large figure on a line, its units beside it. */
class NumberView(private val tools: Tools, setting: Setting, private var block: NumberBlock) : BlockView() {
    /** A unit touched before anything is typed: kept until the number comes. */
    private var unit = block.unit
    private val field = TypingField(tools, block.id, Type.NUMBER) { tools.hands.type(Deed.Measure(block.key, it, unit)) }
    private val units = Flow(tools.context, 0)

    override val view: View = stack(tools.context).apply {
        if (block.name != setting.lead) below(tools.paper.text(block.name, Type.SAYS, R.color.quiet, weight = 600)).unsaid()
        val row = Flow(tools.context, tools.paper.px(R.dimen.s3))
        field.minWidth = tools.paper.dp(FIELD)
        field.maxWidth = tools.paper.dp(FIELD)
        row.addView(field)
        row.addView(units)
        below(row)
        if (block.hint.isNotEmpty()) {
            below(tools.paper.text(block.hint, Type.ASIDE, R.color.quiet), tools.paper.px(R.dimen.s2)).unsaid()
        }
    }

    init {
        field.isSingleLine = true
        // Only the keyboard: what may stand here the core says. A decimal sign may be a comma, and the platform's own filter
        // would swallow it.
        field.setRawInputType(keyboard())
        field.fontFeatureSettings = "tnum"
        field.says(block.aloud)
        field.set(block.text)
        block.submit?.let { key -> field.onEnter { tools.hands.act(Deed.Press(key)) } }
        drawUnits()
    }

    private fun keyboard(): Int = when {
        // No pad of digits has letters.
        block.letters -> InputType.TYPE_CLASS_TEXT or AS_TYPED
        block.kind == NumberKind.WHOLE -> InputType.TYPE_CLASS_NUMBER
        block.kind == NumberKind.DECIMAL -> InputType.TYPE_CLASS_NUMBER or InputType.TYPE_NUMBER_FLAG_DECIMAL
        else -> InputType.TYPE_CLASS_NUMBER or InputType.TYPE_NUMBER_FLAG_DECIMAL or InputType.TYPE_NUMBER_FLAG_SIGNED
    }

    private fun drawUnits() {
        units.removeAllViews()
        val only = block.units.singleOrNull()
        if (only != null) {
            units.addView(tools.paper.text(only.words, Type.TEXT, R.color.quiet).apply { says(only.aloud) })
            return
        }
        block.units.forEach { units.addView(unit(it)) }
    }

    private fun unit(option: UnitOption): View {
        val paper = tools.paper
        val chosen = option.key == unit
        val sheet = tools.edges.sheet(if (chosen) R.color.accent_wash else R.color.raised, R.color.edge, corner = R.dimen.radius_none)
        val words = paper.text(option.words, Type.TEXT, weight = if (chosen) 600 else 400)
        words.gravity = android.view.Gravity.CENTER
        words.textAlignment = View.TEXT_ALIGNMENT_CENTER
        words.background = tools.edges.pressed(if (chosen) tools.edges.footed(sheet) else sheet)
        val pad = paper.px(R.dimen.s2)
        words.setPadding(pad, pad, pad, pad)
        words.minWidth = paper.dp(UNIT)
        words.touched(tools) {
            unit = option.key
            tools.hands.act(Deed.Measure(block.key, field.text.toString(), unit))
            drawUnits()
        }
        words.says(option.aloud, States(picked = chosen))
        return words
    }

    override fun change(block: Block): Boolean {
        val next = (block as? Block.Number ?: return false).block
        // What is read out of it holds the number, too.
        if (next.copy(text = "", unit = "", aloud = this.block.aloud) != this.block.copy(text = "", unit = "")) return false
        this.block = next
        field.says(next.aloud)
        if (next.unit != unit && next.text.isNotEmpty()) {
            unit = next.unit
            drawUnits()
        }
        field.show(next.text)
        return true
    }

    override fun find(id: String): View? = field.takeIf { id == block.id }

    private companion object {
        const val FIELD = 170f
        const val UNIT = 56f
    }
}
