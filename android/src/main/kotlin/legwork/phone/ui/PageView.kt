package legwork.phone.ui

import android.os.Build
import android.view.View
import android.view.accessibility.AccessibilityManager
import android.view.accessibility.AccessibilityNodeInfo
import android.widget.EditText
import android.widget.LinearLayout
import android.widget.ScrollView
import legwork.door.Ability
import legwork.door.Block
import legwork.door.Screen
import legwork.door.WayTaken
import legwork.door.WordsRole
import legwork.phone.R
import legwork.phone.logic.DockPlan
import legwork.phone.logic.NewerSdk
import legwork.phone.logic.Offer
import legwork.phone.logic.idOf
import legwork.phone.logic.leadOf

/**
 * A whole screen: head, notices, blocks, and the dock at the foot. What did not change is not drawn anew. `readOut` are the
 * notices that were read out, also by another window.
 */
class PageView(private val tools: Tools, light: Light, readOut: MutableSet<String>) : LinearLayout(tools.context) {
    val folds = Folds()
    val dock = Dock(tools, light)
    val scroll = ScrollView(tools.paper.context)
    private val column = stack(context)
    private val head = stack(context)
    private val notices = NoticesView(tools, readOut)
    private val blocks = BlocksLayout(context, tools.paper)
    private val pieces = Pieces(tools, blocks)
    val slices = tools.slices
    private val readers = context.getSystemService(AccessibilityManager::class.java)
    private var screen: Screen? = null
    private var headed: Any? = null
    private var held: Pair<String, Boolean>? = null
    /** The lead on which the focus of a new place is to stand, as soon as it is made. */
    private var begins: String? = null

    init {
        val paper = tools.paper
        setBackgroundColor(paper.ink(R.color.surface))
        val side = paper.px(R.dimen.s4)
        column.setPadding(side, side, side, side)
        column.below(head)
        column.below(notices, side)
        column.below(blocks, side)
        // Else the first place to write takes the focus, and a keyboard comes up over the question.
        column.isFocusableInTouchMode = true
        scroll.isFillViewport = false
        scroll.addView(column)
        scroll.clipToPadding = false
        notices.visibility = GONE
        slices.before = ::noteHeld
        slices.after = ::sliced
        arrange(Arrangement.FOOT)
    }

    private enum class Arrangement { FOOT, SIDE, FLOW }

    private var arrangement: Arrangement? = null

    private fun arrange(next: Arrangement) {
        if (next == arrangement) return
        arrangement = next
        removeAllViews()
        (dock.parent as? LinearLayout)?.removeView(dock)
        orientation = if (next == Arrangement.SIDE) HORIZONTAL else VERTICAL
        if (next == Arrangement.SIDE) {
            addView(scroll, LayoutParams(0, LayoutParams.MATCH_PARENT, 1f))
            val aside = ScrollView(tools.paper.context)
            aside.isFillViewport = true
            val foot = stack(context)
            foot.gravity = android.view.Gravity.BOTTOM
            foot.addView(dock, LayoutParams(LayoutParams.MATCH_PARENT, LayoutParams.WRAP_CONTENT))
            aside.addView(foot)
            aside.setBackgroundColor(tools.paper.ink(R.color.raised))
            addView(aside, LayoutParams(sideWidth(), LayoutParams.MATCH_PARENT))
        } else {
            addView(scroll, LayoutParams(LayoutParams.MATCH_PARENT, 0, 1f))
            if (next == Arrangement.FOOT) addView(dock, LayoutParams(LayoutParams.MATCH_PARENT, LayoutParams.WRAP_CONTENT))
            else column.addView(dock, LayoutParams(LayoutParams.MATCH_PARENT, LayoutParams.WRAP_CONTENT))
        }
    }

    private fun sideWidth(): Int = tools.paper.dp(if (resources.configuration.fontScale > 1.3f) SIDE_LARGE else SIDE)

    /** Shows a screen; `own` is what the shell itself has to say, `offers` what it has to say of files. What does not fit into a slice follows after it. */
    fun show(next: Screen, own: String?, offers: List<Offer> = emptyList()) {
        val before = screen
        val isSame = before?.place == next.place
        slices.drop()
        screen = next
        layoutDirection = if (next.rightToLeft) LAYOUT_DIRECTION_RTL else LAYOUT_DIRECTION_LTR
        if (!isSame) {
            if (before != null) folds.clear()
            // Nothing of the place before can be touched any more.
            pieces.clear()
            head.removeAllViews()
            dock.clear()
            stood = null
            begins = next.blocks.firstOrNull { it is Block.Words && it.block.role == WordsRole.LEAD }?.let(::idOf).orEmpty()
        }
        val plan = DockPlan(next)
        val setting = Setting(next.dock.answersLeadOn, leadOf(next), folds)
        slices.ask { place(plan, setting, next) }
        slices.ask { heading(next) }
        slices.ask { notices.show(next, own, offers) }
        slices.ask { pieces.show(next, plan, setting) }
        slices.slice()
        scroll.keepScreenOn = Ability.STAY_AWAKE in next.abilities
        if (!isSame) begin(next, before != null)
    }

    private fun heading(next: Screen) {
        val said = listOf(next.title, next.trail, next.howFar, leadOf(next) == null)
        if (head.childCount > 0 && said == headed) return
        headed = said
        head.removeAllViews()
        head.below(headView(tools, next))
    }

    /** Where the dock lies: at the foot, unless it would hide the question; beside, in a low and wide window. */
    private fun place(plan: DockPlan, setting: Setting, next: Screen) {
        val metrics = resources.configuration
        val torch = Ability.TORCH in next.abilities
        val side = metrics.screenHeightDp < LOW && metrics.screenWidthDp >= SIDE_FROM
        if (side) {
            dock.show(plan, setting, next.back, torch, atFoot = false)
            return arrange(Arrangement.SIDE)
        }
        dock.show(plan, setting, next.back, torch, atFoot = true)
        val wide = if (width > 0) width else tools.paper.dp(metrics.screenWidthDp.toFloat())
        dock.measure(MeasureSpec.makeMeasureSpec(wide, MeasureSpec.EXACTLY), MeasureSpec.makeMeasureSpec(0, MeasureSpec.UNSPECIFIED))
        val most = tools.paper.dp(metrics.screenHeightDp.toFloat()) * MOST_DOCK
        arrange(if (dock.measuredHeight > most) Arrangement.FLOW else Arrangement.FOOT)
        // It was measured to be asked; its words are broken for that width now, which need not be that of its place.
        dock.requestLayout()
    }

    /** A new place begins at the top, with the focus on its lead. */
    private fun begin(next: Screen, fades: Boolean) {
        scroll.scrollTo(0, 0)
        column.requestFocus()
        if (Build.VERSION.SDK_INT >= 28) pane(next.title)
        if (fades && next.way != WayTaken.SAME && android.animation.ValueAnimator.areAnimatorsEnabled()) {
            column.alpha = 0f
            column.animate().alpha(1f).setDuration(resources.getInteger(R.integer.motion_turn).toLong()).start()
        }
    }

    @NewerSdk private fun pane(title: String) { accessibilityPaneTitle = title }

    /** Before a slice: what has the focus now has it afterwards, too. */
    private fun noteHeld() { held = held() }

    private fun sliced() {
        held?.let(::hold)
        begins?.let { lead ->
            val view = pieces.whole(lead) ?: head.takeIf { slices.isDone } ?: return@let
            begins = null
            view.post { view.performAccessibilityAction(AccessibilityNodeInfo.ACTION_ACCESSIBILITY_FOCUS, null) }
        }
        if (stood != null) post(::standAgain)
    }

    /** The id of what has the focus, of the keyboard or of the screen reader. */
    private fun held(): Pair<String, Boolean>? {
        val focus = findFocus()
        if ((focus == null || focus === column) && !readers.isEnabled) return null
        for (id in screen?.let(::idsOf).orEmpty()) {
            val view = find(id) ?: continue
            if (view.isAccessibilityFocused) return id to true
            if (view.isFocused) return id to false
        }
        return null
    }

    private fun hold(held: Pair<String, Boolean>) {
        val view = find(held.first) ?: return
        if (held.second) {
            if (!view.isAccessibilityFocused) view.post { view.performAccessibilityAction(AccessibilityNodeInfo.ACTION_ACCESSIBILITY_FOCUS, null) }
        } else if (!view.isFocused) view.requestFocus()
    }

    /** Where somebody stood on a screen before the window was made anew. */
    class Stood(val scroll: Int, val focus: String?, val cursor: IntArray?)

    private var stood: Stood? = null

    /** Where one stands, or will as soon as so much of the screen is there. */
    val stands: Int get() = stood?.scroll ?: scroll.scrollY

    /** Stands there again as soon as so much of the screen is there; whoever has moved on meanwhile is left where they are. */
    fun stand(again: Stood) {
        stood = again
        post(::standAgain)
    }

    private fun standAgain() {
        val again = stood ?: return
        val view = again.focus?.let(::find)
        val isThere = column.height - scroll.height >= again.scroll && (again.focus == null || view != null)
        if (!isThere && !slices.isDone) return
        stood = null
        if (scroll.scrollY == 0) scroll.scrollTo(0, again.scroll)
        view?.requestFocus()
        again.cursor?.let { (from, to) -> (view as? EditText)?.let { it.setSelection(minOf(from, it.length()), minOf(to, it.length())) } }
    }

    /** The view of something on the screen, by its id. */
    fun find(id: String): View? = dock.find(id) ?: pieces.find(id)

    private companion object {
        const val LOW = 480
        const val SIDE_FROM = 600
        const val SIDE = 300f
        const val SIDE_LARGE = 380f
        const val MOST_DOCK = 0.45f
    }
}

/** Everything on a screen that can have the focus. */
fun idsOf(screen: Screen): List<String> = screen.blocks.flatMap { block ->
    when (block) {
        is Block.Choice -> block.block.options.map { it.id }
        is Block.PhotoSlot -> block.block.photos.map { it.id }
        is Block.Label -> block.block.figures.map { it.id }
        is Block.Rows -> block.block.rows.map { it.id }
        else -> listOf(idOf(block))
    }
}
