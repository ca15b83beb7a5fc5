package legwork.phone.ui

import android.view.View
import android.widget.LinearLayout
import legwork.door.Deed
import legwork.door.PressBlock
import legwork.door.PressWeight
import legwork.phone.R
import legwork.phone.logic.DockPlan

/**
 * The dock: the way on above, the way back at the start below, the light at its end, what can wait between. It holds nothing
 * of its own but back and light.
 */
class Dock(private val tools: Tools, private val light: Light) : LinearLayout(tools.context) {
    private val items = mutableMapOf<String, View>()
    private var drawn: Any? = null

    init { orientation = VERTICAL }

    /** Draws it; `above` is whether it lies at the foot, below the screen's blocks. */
    fun show(plan: DockPlan, setting: Setting, back: Boolean, torch: Boolean, atFoot: Boolean) {
        val next = listOf(plan.answers, plan.on, plan.out, back, torch, atFoot)
        if (next == drawn) return
        drawn = next
        items.clear()
        removeAllViews()
        val paper = tools.paper
        val gap = paper.px(R.dimen.s2)
        if (atFoot) below(rule(tools, R.color.text, R.dimen.stroke_fine))
        val inside = stack(context)
        inside.setPadding(paper.px(R.dimen.s4), paper.px(R.dimen.s3), paper.px(R.dimen.s4), gap)
        plan.answers?.let { answers ->
            val choice = ChoiceView(tools, setting, answers, atOnce = true)
            answers.options.forEach { option -> choice.find(option.id)?.let { items[option.id] = it } }
            inside.below(choice.view, gap)
        }
        // The other way stands before the main one, as the thumb of the hand that holds finds them.
        val on = plan.on.asReversed().map { press(it, it.weight) }
        if (on.size == 2) inside.below(Beside(tools, on[0], on[1]), gap) else on.forEach { inside.below(it, gap) }
        lower(plan, back, torch)?.let { inside.below(it, gap) }
        if (inside.childCount > 0) below(inside)
        visibility = if (inside.childCount > 0) VISIBLE else GONE
    }

    /** Nothing in it, until it is shown again. */
    fun clear() {
        drawn = null
        items.clear()
        removeAllViews()
    }

    private fun press(press: PressBlock, weight: PressWeight): View =
        PressView(tools, press, weight).view.also { items[press.id] = it }

    private fun lower(plan: DockPlan, back: Boolean, torch: Boolean): View? {
        if (!back && !torch && plan.out.isEmpty()) return null
        val row = line(context)
        if (back) row.beside(icon(R.drawable.sign_back, R.string.back) { tools.hands.act(Deed.Back) }.also { items[BACK] = it })
        val middle = Flow(context, 0, middle = true)
        plan.out.forEach { middle.addView(press(it, PressWeight.QUIET)) }
        row.beside(middle, 0, 1f)
        if (torch) row.beside(light.key(tools))
        return row
    }

    private fun icon(drawable: Int, name: Int, does: () -> Unit): View = iconKey(tools, drawable, context.getString(name), does)

    fun find(id: String): View? = items[id]

    companion object { const val BACK = "back" }
}

/** A key with a sign above its word. */
fun iconKey(tools: Tools, drawable: Int, name: String, does: () -> Unit): LinearLayout = stack(tools.context).apply {
    val paper = tools.paper
    gravity = android.view.Gravity.CENTER
    background = tools.edges.bare()
    addView(sign(tools, drawable, 22f, R.color.text))
    val words = paper.text(name, Type.ASIDE)
    words.gravity = android.view.Gravity.CENTER
    words.unsaid()
    addView(words, LinearLayout.LayoutParams(LinearLayout.LayoutParams.WRAP_CONTENT, LinearLayout.LayoutParams.WRAP_CONTENT))
    val pad = paper.px(R.dimen.s1)
    setPadding(pad, pad, pad, pad)
    touched(tools, does = does)
    minimumWidth = paper.dp(60f)
    says(legwork.door.Aloud(legwork.door.AloudRole.PRESS, name, "", ""))
}

/** Two ways beside each other where both fit on it without breaking a word; else one above the other. */
private class Beside(tools: Tools, private val other: View, private val main: View) : android.view.ViewGroup(tools.context) {
    private val gap = tools.paper.px(R.dimen.s2)

    init {
        addView(other)
        addView(main)
    }

    private var isApart = false

    override fun onMeasure(widthSpec: Int, heightSpec: Int) {
        val wide = MeasureSpec.getSize(widthSpec)
        val free = MeasureSpec.makeMeasureSpec(0, MeasureSpec.UNSPECIFIED)
        other.measure(free, free)
        main.measure(free, free)
        val first = ((wide - gap) * OTHER).toInt()
        isApart = other.measuredWidth > first || main.measuredWidth > wide - gap - first
        if (isApart) {
            listOf(other, main).forEach { it.measure(exactly(wide), free) }
            setMeasuredDimension(wide, other.measuredHeight + gap + main.measuredHeight)
        } else {
            val high = maxOf(other.measuredHeight, main.measuredHeight)
            other.measure(exactly(first), exactly(high))
            main.measure(exactly(wide - gap - first), exactly(high))
            setMeasuredDimension(wide, high)
        }
    }

    override fun onLayout(changed: Boolean, left: Int, top: Int, right: Int, bottom: Int) {
        val wide = right - left
        if (isApart) {
            other.layout(0, 0, wide, other.measuredHeight)
            main.layout(0, other.measuredHeight + gap, wide, bottom - top)
        } else {
            val mirrored = layoutDirection == LAYOUT_DIRECTION_RTL
            val at = if (mirrored) wide - other.measuredWidth else 0
            other.layout(at, 0, at + other.measuredWidth, bottom - top)
            val mainAt = if (mirrored) 0 else other.measuredWidth + gap
            main.layout(mainAt, 0, mainAt + main.measuredWidth, bottom - top)
        }
    }

    private fun exactly(px: Int) = MeasureSpec.makeMeasureSpec(px, MeasureSpec.EXACTLY)

    private companion object { const val OTHER = 0.4f }
}
