package legwork.phone.ui

import android.view.View
import legwork.door.Block
import legwork.door.Screen
import legwork.door.WordsRole
import legwork.phone.R
import legwork.phone.logic.DockPlan
import legwork.phone.logic.idOf
import legwork.phone.logic.leadOf

/** The blocks of a screen outside its dock, made one after the other. What did not change is not drawn anew. */
class Pieces(private val tools: Tools, private val box: BlocksLayout) {
    private val drawn = HashMap<String, Piece>()
    private var wanted: List<List<Block>> = emptyList()
    private var setting = Setting(false, null, Folds())
    private var place = 0

    /** A block as it stands, or several that stand in one box. */
    private class Piece(val blocks: List<Block>, val view: BlockView, val setting: Any)

    /** Another place: nothing of it stays. */
    fun clear() {
        drawn.clear()
        wanted = emptyList()
        box.removeAllViews()
    }

    fun show(screen: Screen, plan: DockPlan, setting: Setting) {
        this.setting = setting
        wanted = groups(screen, plan)
        place = 0
        // What is made anew comes piece by piece: meanwhile the page is not shorter than it was, and stays where it is scrolled to.
        box.least = if (drawn.isEmpty()) 0 else box.height
        val ids = wanted.mapTo(HashSet(), ::idOfGroup)
        for (id in drawn.keys.filterNot(ids::contains)) drawn.remove(id)?.let { box.removeView(it.view.view) }
        ask()
    }

    private fun ask() {
        val next = wanted.getOrNull(place) ?: return tools.slices.ask { box.least = 0 }
        tools.slices.ask(isLong = isLong(next)) {
            put(next)
            place++
            ask()
        }
    }

    /** A place to type in is the platform's own, and looks through its whole theme. */
    private fun isLong(group: List<Block>): Boolean = drawn[idOfGroup(group)] == null && group.any { it is Block.Writing || it is Block.Number }

    private fun put(group: List<Block>) {
        val about = listOf(setting.choiceLeadsOn, setting.lead)
        val id = idOfGroup(group)
        val old = drawn[id]
        val stays = old?.takeIf { it.setting == about }
        val view = when {
            stays != null && stays.blocks == group -> stays.view.also { it.resume() }
            stays != null && group.size == 1 && stays.view.change(group.single()) -> stays.view
            else -> made(group)
        }
        drawn[id] = Piece(group, view, about)
        val gap = gap(wanted.getOrNull(place - 1)?.last(), group.first())
        val room = view.view.layoutParams as? BlocksLayout.Room
        if (room == null || room.gap != gap || room.beside != view.beside) view.view.layoutParams = BlocksLayout.Room(view.beside, gap)
        if (old != null && old.view !== view) box.removeView(old.view.view)
        // What stays is not taken out: it keeps the focus, and the keyboard stays up.
        if (box.getChildAt(place) !== view.view) {
            box.removeView(view.view)
            box.addView(view.view, place)
        }
    }

    private fun made(group: List<Block>): BlockView {
        val cautions = group.mapNotNull { (it as? Block.Caution)?.block }
        return if (cautions.isNotEmpty()) CautionsView(tools, setting, cautions) else viewOf(tools, setting, group.single())
    }

    private fun idOfGroup(group: List<Block>): String = group.joinToString(" ") { idOf(it) }

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

    /** The view of something in a block, by its id. */
    fun find(id: String): View? = drawn.values.firstNotNullOfOrNull { it.view.find(id) }

    /** The view of a whole block, once it is made. */
    fun whole(id: String): View? = drawn[id]?.view?.view
}
