package legwork.phone.ui

import android.view.View
import android.widget.ImageView
import android.widget.LinearLayout
import legwork.door.Aloud
import legwork.door.AloudRole
import legwork.phone.R

/** A short head, behind which more stands folded. */
class FoldView(
    private val tools: Tools,
    private val folds: Folds,
    private val id: String,
    private val head: String,
    ink: Int,
    private val body: () -> View,
    ruled: Boolean = false,
    /** What is said of the head, where that is more than what stands there. */
    private val said: String = head,
    /** Whether it stands open until somebody folds it. */
    opens: Boolean = false,
) : LinearLayout(tools.context) {
    private val arrow: ImageView
    private var open: View? = null
    val bar: LinearLayout

    init {
        orientation = VERTICAL
        if (ruled) ruled(tools)
        bar = line(tools.context)
        bar.background = tools.edges.bare()
        bar.beside(tools.paper.text(head, Type.SAYS, ink, weight = 600), 0, 1f).unsaid()
        arrow = bar.beside(sign(tools, R.drawable.sign_fold, 20f, ink), tools.paper.px(R.dimen.s2))
        bar.touched(tools) { set(open == null) }
        val pad = tools.paper.px(R.dimen.s2)
        bar.setPadding(0, pad, 0, pad)
        below(bar)
        if (ruled) ruled(tools)
        set(opens || folds.isOpen(id))
    }

    private fun set(isOpen: Boolean) {
        folds.set(id, isOpen)
        arrow.setImageResource(if (isOpen) R.drawable.sign_unfold else R.drawable.sign_fold)
        val state = tools.context.getString(if (isOpen) R.string.unfolded else R.string.folded)
        bar.says(Aloud(AloudRole.PRESS, said, "", ""), States(open = state))
        open?.let(::removeView)
        open = if (isOpen) body().also { body ->
            val room = LayoutParams(LayoutParams.MATCH_PARENT, LayoutParams.WRAP_CONTENT)
            room.bottomMargin = tools.paper.px(R.dimen.s3)
            addView(body, indexOfChild(bar) + 1, room)
        } else null
        tools.slices.slice()
    }
}
