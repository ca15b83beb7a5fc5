package legwork.phone.ui

import android.graphics.Canvas
import android.graphics.Paint
import android.view.View
import android.view.ViewGroup.LayoutParams.MATCH_PARENT
import android.widget.LinearLayout
import legwork.door.CautionBlock
import legwork.phone.R

/** Cautions that stand together, in one box: what to do of each in sight, its reason folded once it was read. */
class CautionsView(tools: Tools, setting: Setting, cautions: List<CautionBlock>) : BlockView() {
    override val view: View = LinearLayout(tools.context).apply {
        val paper = tools.paper
        background = tools.edges.sheet(R.color.caution_wash, R.color.caution_line, R.dimen.stroke_hair, corner = R.dimen.radius_tag)
        addView(Stripes(tools), LinearLayout.LayoutParams(paper.dp(11f), MATCH_PARENT))
        val inside = stack(tools.context)
        val pad = paper.px(R.dimen.s3)
        inside.setPadding(pad, pad, pad, paper.px(R.dimen.s1))
        val name = line(tools.context)
        name.beside(sign(tools, R.drawable.sign_care, 26f, R.color.caution))
        name.beside(paper.text(cautions.first().name, Type.ROW, R.color.caution, weight = 700), pad, 1f)
        // The name is said with each caution.
        name.unsaid()
        inside.below(name)
        cautions.forEachIndexed { place, caution ->
            if (place > 0) inside.ruled(tools)
            inside.below(one(tools, setting, caution))
        }
        addView(inside, LinearLayout.LayoutParams(0, LinearLayout.LayoutParams.WRAP_CONTENT, 1f))
    }

    private fun one(tools: Tools, setting: Setting, caution: CautionBlock): View {
        if (caution.head.isEmpty()) {
            val words = tools.paper.text(caution.words, Type.SAYS)
            val pad = tools.paper.px(R.dimen.s2)
            words.setPadding(0, pad, 0, pad)
            words.says(caution.aloud)
            return words
        }
        return FoldView(
            tools, setting.folds, caution.id, caution.head, R.color.text,
            // One stop reads all of it, folded or not.
            body = { tools.paper.text(caution.words, Type.SAYS).apply { unsaid() } },
            said = spoken(caution.aloud),
            opens = caution.unread,
        )
    }
}

/** The striped edge that only a caution has. */
private class Stripes(tools: Tools) : View(tools.context) {
    private val paint = Paint(Paint.ANTI_ALIAS_FLAG).apply {
        color = tools.paper.ink(R.color.caution_line)
        strokeWidth = tools.paper.dp(4f).toFloat()
    }
    private val step = tools.paper.dp(9f) * 1.41f
    private val edge = tools.paper.exact(R.dimen.stroke_hair)

    init { unsaid() }

    override fun onDraw(canvas: Canvas) {
        canvas.clipRect(0, 0, width, height)
        var y = -width.toFloat()
        while (y < height + width) {
            canvas.drawLine(-2f, y + width + 2f, width + 2f, y - 2f, paint)
            y += step
        }
        val mirrored = layoutDirection == LAYOUT_DIRECTION_RTL
        val at = if (mirrored) 0f else width - edge
        canvas.drawRect(at, 0f, at + edge, height.toFloat(), paint)
    }
}
