package legwork.phone.ui

import android.graphics.Canvas
import android.graphics.Paint
import android.view.View
import android.widget.LinearLayout
import legwork.door.Aloud
import legwork.door.AloudRole
import legwork.door.HowFar
import legwork.door.NoticeRole
import legwork.door.Screen
import legwork.phone.R
import legwork.phone.logic.Offer
import legwork.phone.logic.leadOf

/** The head of a screen: where we are, what it is about, how far the guide has come. */
fun headView(tools: Tools, screen: Screen): LinearLayout = stack(tools.context).apply {
    val paper = tools.paper
    if (screen.trail.isNotEmpty()) below(paper.text(screen.trail.joinToString(" · "), Type.ASIDE, R.color.quiet))
    val title = below(paper.text(screen.title, Type.ROW))
    title.says(Aloud(if (leadOf(screen) == null) AloudRole.HEADING else AloudRole.PROSE, screen.title, "", ""))
    screen.howFar?.let { below(tape(tools, it), paper.px(R.dimen.s2)) }
}

private fun tape(tools: Tools, far: HowFar): View = Flow(tools.context, tools.paper.px(R.dimen.s3)).apply {
    addView(Tape(tools, far.done.toInt(), far.of.toInt()))
    addView(tools.paper.text(far.words, Type.ASIDE, R.color.quiet).apply { fontFeatureSettings = "tnum" })
    says(Aloud(AloudRole.PROGRESS, far.words, "", ""))
    for (place in 0 until childCount) getChildAt(place).unsaid()
}

/** A measuring tape: a mark for each question, a long one every ten. */
private class Tape(tools: Tools, private val done: Int, of: Int) : View(tools.context) {
    private val marks = of.coerceIn(1, 200)
    private val whole = of.coerceAtLeast(1)
    private val dp = tools.paper.dp(1f).toFloat()
    private val wide = tools.paper.dp(WIDE)
    private val ahead = Paint().apply { color = tools.paper.ink(R.color.edge); strokeWidth = dp }
    private val past = Paint().apply { color = tools.paper.ink(R.color.accent); strokeWidth = 1.6f * dp }

    override fun onMeasure(widthSpec: Int, heightSpec: Int) {
        val most = MeasureSpec.getSize(widthSpec)
        setMeasuredDimension(minOf(wide, most), (12 * dp).toInt())
    }

    override fun onDraw(canvas: Canvas) {
        if (layoutDirection == LAYOUT_DIRECTION_RTL) canvas.scale(-1f, 1f, width / 2f, 0f)
        val step = (width - 2 * dp) / (marks - 1).coerceAtLeast(1)
        val reach = (width - 2 * dp) * done.coerceAtMost(whole) / whole
        past.strokeWidth = 2.5f * dp
        canvas.drawLine(dp, dp, dp + reach, dp, past)
        past.strokeWidth = 1.6f * dp
        for (mark in 0 until marks) {
            val x = dp + mark * step
            val long = if (mark % 10 == 0) 9 else if (mark % 5 == 0) 6 else 4
            canvas.drawLine(x, 0f, x, long * dp, if (mark * step <= reach && done > 0) past else ahead)
        }
    }

    private companion object { const val WIDE = 200f }
}

/** What is said about the last deed; one that was said already is not said again. */
class NoticesView(private val tools: Tools, private val readOut: MutableSet<String>) : LinearLayout(tools.context) {
    init { orientation = VERTICAL }

    fun show(screen: Screen, own: String?, offers: List<Offer>) {
        val wanted = listOf(own) + offers + screen.notices.map { it.id }
        if (wanted == shown) return
        shown = wanted
        removeAllViews()
        val gap = tools.paper.px(R.dimen.s2)
        own?.let { words ->
            below(note(words, true, Aloud(AloudRole.ALERT, words, "", ""), isNew = true), gap)
        }
        for (offer in offers) below(OfferView(tools, offer, isNew = readOut.add("offer ${offer.hashCode()}")), gap)
        for (notice in screen.notices) {
            below(note(notice.words, notice.role == NoticeRole.PROBLEM, notice.aloud, readOut.add(notice.id)), gap)
        }
        visibility = if (childCount == 0) GONE else VISIBLE
    }

    private var shown: List<Any?> = listOf(null)

    private fun note(words: String, problem: Boolean, aloud: Aloud, isNew: Boolean): View =
        framedNote(tools, words, problem).apply {
            says(aloud)
            if (!isNew) accessibilityLiveRegion = View.ACCESSIBILITY_LIVE_REGION_NONE
        }
}
