package legwork.phone.ui

import android.os.Build
import android.view.View
import android.view.accessibility.AccessibilityNodeInfo
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
import legwork.phone.logic.idOf
import legwork.phone.logic.leadOf

/**
 * A whole screen: head, notices, blocks, and the dock at the foot. What did not change is not drawn anew. `readOut` are the
 * notices that were read out, also by another window.
 */
class PageView(private val tools: Tools, light: Light, readOut: MutableSet<String>) : LinearLayout(tools.context) {
    val folds = Folds()
    val dock = Dock(tools, light)
    val scroll = ScrollView(context)
    private val column = stack(context)
    private val head = stack(context)
    private val notices = NoticesView(tools, readOut)
    private val blocks = BlocksLayout(context, tools.paper)
    private var drawn = LinkedHashMap<String, Piece>()
    private var screen: Screen? = null

    /** A block as it stands, or several that stand in one box. */
    private class Piece(val blocks: List<Block>, val view: BlockView, val setting: Any)

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
            val aside = ScrollView(context)
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

    /** Shows a screen; `own` is what the shell itself has to say. */
    fun show(next: Screen, own: String?) {
        val before = screen
        val isSame = before?.place == next.place
        screen = next
        layoutDirection = if (next.rightToLeft) LAYOUT_DIRECTION_RTL else LAYOUT_DIRECTION_LTR
        val held = if (isSame) held() else null
        if (!isSame) {
            if (before != null) folds.clear()
            drawn = LinkedHashMap()
            blocks.removeAllViews()
        }
        if (!isSame || before?.title != next.title || before.trail != next.trail || before.howFar != next.howFar) {
            head.removeAllViews()
            head.below(headView(tools, next))
        }
        notices.show(next, own)
        val plan = DockPlan(next)
        val setting = Setting(next.dock.answersLeadOn, leadOf(next), folds)
        draw(next, plan, setting)
        place(plan, setting, next)
        scroll.keepScreenOn = Ability.STAY_AWAKE in next.abilities
        if (isSame) held?.let(::hold) else begin(next, before != null)
    }

    private fun draw(next: Screen, plan: DockPlan, setting: Setting) {
        val about = listOf(setting.choiceLeadsOn, setting.lead)
        val pieces = LinkedHashMap<String, Piece>()
        for (group in groups(next, plan)) {
            val id = group.joinToString(" ") { idOf(it) }
            val old = drawn[id]?.takeIf { it.setting == about }
            pieces[id] = when {
                old != null && old.blocks == group -> old
                old != null && group.size == 1 && old.view.change(group.single()) -> Piece(group, old.view, about)
                else -> Piece(group, made(group, setting), about)
            }
        }
        drawn = pieces
        var previous: Block? = null
        val wanted = pieces.values.map { piece ->
            val gap = gap(previous, piece.blocks.first())
            previous = piece.blocks.last()
            val view = piece.view.view
            val room = view.layoutParams as? BlocksLayout.Room
            if (room == null || room.gap != gap || room.beside != piece.view.beside) view.layoutParams = BlocksLayout.Room(piece.view.beside, gap)
            view
        }
        // What stays is not taken out: it keeps the focus, and the keyboard stays up.
        (blocks.childCount - 1 downTo 0).map(blocks::getChildAt).filter { it !in wanted }.forEach(blocks::removeView)
        wanted.forEachIndexed { place, view ->
            if (blocks.getChildAt(place) !== view) {
                blocks.removeView(view)
                blocks.addView(view, place)
            }
        }
    }

    private fun made(group: List<Block>, setting: Setting): BlockView {
        val cautions = group.mapNotNull { (it as? Block.Caution)?.block }
        return if (cautions.isNotEmpty()) CautionsView(tools, setting, cautions) else viewOf(tools, setting, group.single())
    }

    /** The blocks outside the dock; cautions in a row go together. */
    private fun groups(next: Screen, plan: DockPlan): List<List<Block>> {
        val groups = mutableListOf<MutableList<Block>>()
        for (block in next.blocks.filterNot(plan::has)) {
            val last = groups.lastOrNull()
            if (block is Block.Caution && last?.last() is Block.Caution) last += block else groups += mutableListOf(block)
        }
        return groups
    }

    private fun gap(previous: Block?, block: Block): Int {
        val folds = { one: Block? -> one is Block.Words && one.block.head.isNotEmpty() }
        return when {
            folds(previous) && folds(block) -> 0
            block is Block.Words && block.block.role == WordsRole.HEADING -> tools.paper.px(R.dimen.s5)
            else -> tools.paper.px(R.dimen.s4)
        }
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
        val lead = next.blocks.firstOrNull { it is Block.Words && it.block.role == WordsRole.LEAD }?.let { drawn[idOf(it)]?.view?.view } ?: head
        lead.post { lead.performAccessibilityAction(AccessibilityNodeInfo.ACTION_ACCESSIBILITY_FOCUS, null) }
        if (fades && next.way != WayTaken.SAME && android.animation.ValueAnimator.areAnimatorsEnabled()) {
            column.alpha = 0f
            column.animate().alpha(1f).setDuration(resources.getInteger(R.integer.motion_turn).toLong()).start()
        }
    }

    @NewerSdk private fun pane(title: String) { accessibilityPaneTitle = title }

    /** The id of what has the focus, of the keyboard or of the screen reader. */
    private fun held(): Pair<String, Boolean>? {
        val ids = screen?.let(::idsOf).orEmpty()
        for (id in ids) {
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

    /** The view of something on the screen, by its id. */
    fun find(id: String): View? = dock.find(id) ?: drawn.values.firstNotNullOfOrNull { it.view.find(id) }

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
