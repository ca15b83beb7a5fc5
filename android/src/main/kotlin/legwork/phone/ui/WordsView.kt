package legwork.phone.ui

import android.graphics.Canvas
import android.graphics.Paint
import android.view.View
import android.widget.LinearLayout
import legwork.door.Severity
import legwork.door.WordsBlock
import legwork.door.WordsRole
import legwork.phone.R

/** Words to read; long ones that may wait fold behind their head. */
class WordsView(tools: Tools, setting: Setting, block: WordsBlock) : BlockView() {
    override val view: View = when {
        // Words have a head only where they may fold behind it.
        block.head.isNotEmpty() -> FoldView(
            tools, setting.folds, block.id, block.head, R.color.accent,
            body = { paragraphs(tools, block.words, Type.TEXT, R.color.text) },
            ruled = true,
        )
        block.role == WordsRole.PROBLEM -> problem(tools, block)
        else -> plain(tools, block)
    }

    private fun plain(tools: Tools, block: WordsBlock): View {
        val (type, ink) = when (block.role) {
            WordsRole.LEAD -> Type.LEAD to R.color.text
            WordsRole.HEADING -> Type.HEAD to R.color.text
            WordsRole.WHY -> Type.TEXT to R.color.quiet
            WordsRole.ASIDE -> Type.ASIDE to R.color.quiet
            else -> Type.TEXT to R.color.text
        }
        val words = tools.paper.text(parted(block.words), type, ink)
        if (block.role == WordsRole.LEAD && block.severity == Severity.GRAVE) barred(tools, words)
        words.says(block.aloud)
        return words
    }

    private fun problem(tools: Tools, block: WordsBlock): View = framedNote(tools, block.words, problem = true).apply { says(block.aloud) }
}

/** Paragraphs, parted by an empty line. */
fun parted(words: String): String = words.lines().filter { it.isNotBlank() }.joinToString("\n\n")

/** Paragraphs one below the other. */
fun paragraphs(tools: Tools, words: String, type: Type, ink: Int): View {
    val stack = stack(tools.context)
    words.lines().filter { it.isNotBlank() }.forEach { stack.below(tools.paper.text(it, type, ink), tools.paper.px(R.dimen.s2)) }
    return stack
}

/** What is grave has a bar at its start, beside its word. */
private fun barred(tools: Tools, view: View) {
    val wide = tools.paper.px(R.dimen.stroke_focus)
    view.setPaddingRelative(wide + tools.paper.px(R.dimen.s3), 0, 0, 0)
    view.background = StartBar(tools.paper.ink(R.color.weak), wide.toFloat(), view)
}

/** A bar at the start of a view. */
class StartBar(ink: Int, private val width: Float, private val view: View) : android.graphics.drawable.Drawable() {
    private val paint = Paint().apply { color = ink }

    override fun draw(canvas: Canvas) {
        val from = if (view.layoutDirection == View.LAYOUT_DIRECTION_RTL) bounds.right - width else bounds.left.toFloat()
        canvas.drawRect(from, bounds.top.toFloat(), from + width, bounds.bottom.toFloat(), paint)
    }

    override fun setAlpha(alpha: Int) = Unit
    override fun setColorFilter(filter: android.graphics.ColorFilter?) = Unit
    @Deprecated("framework") override fun getOpacity() = android.graphics.PixelFormat.TRANSLUCENT
}

/** A framed note: a problem with its cross, or something done with its tick. */
fun framedNote(tools: Tools, words: String, problem: Boolean): LinearLayout = line(tools.context).apply {
    val (ink, fill) = if (problem) R.color.weak to R.color.weak_wash else R.color.text to R.color.raised
    background = tools.edges.sheet(fill, if (problem) R.color.weak else R.color.edge)
    val pad = tools.paper.px(R.dimen.s3)
    setPadding(pad, pad, pad, pad)
    beside(sign(tools, if (problem) R.drawable.sign_cross else R.drawable.sign_tick, 20f, if (problem) R.color.weak else R.color.good))
    beside(tools.paper.text(words, Type.TEXT, ink), tools.paper.px(R.dimen.s2), 1f).unsaid()
}
