package legwork.phone.ui

import android.view.View
import android.view.ViewGroup

/** One of many in a box: what it shows, and how it is made. */
class Child(val id: String, val shows: Any, val make: () -> View)

/**
 * The children of a box, brought to what is wanted of them one by one: each is a step of a slice, unless all are wanted at
 * once. What shows the same stays where it is, with the focus that it has.
 */
class Children(
    private val tools: Tools,
    private val box: ViewGroup,
    private val atOnce: Boolean = false,
    private val room: () -> ViewGroup.LayoutParams?,
) {
    private val views = HashMap<String, View>()
    private val shown = HashMap<String, Any>()
    private var wanted: List<Child> = emptyList()
    private var place = 0
    private var asked = NOT

    fun show(next: List<Child>) {
        wanted = next
        val ids = next.mapTo(HashSet()) { it.id }
        for (id in views.keys.filterNot(ids::contains)) {
            box.removeView(views.remove(id))
            shown.remove(id)
        }
        place = 0
        if (atOnce) while (place < wanted.size) one() else ask()
    }

    /** Goes on where it was when what waited was dropped. */
    fun resume() {
        if (place < wanted.size) ask()
    }

    fun find(id: String): View? = views[id]

    private fun ask() {
        if (asked == tools.slices.round) return
        asked = tools.slices.round
        tools.slices.ask {
            asked = NOT
            one()
            if (place < wanted.size) ask()
        }
    }

    /** Passes over what stays, and makes one. */
    private fun one() {
        while (place < wanted.size) {
            val child = wanted[place]
            val old = views[child.id]
            if (old != null && shown[child.id] == child.shows) {
                if (box.getChildAt(place) !== old) {
                    box.removeView(old)
                    put(old)
                }
                place++
                continue
            }
            old?.let(box::removeView)
            val view = child.make()
            views[child.id] = view
            shown[child.id] = child.shows
            put(view)
            place++
            return
        }
    }

    private fun put(view: View) = room()?.let { box.addView(view, place, it) } ?: box.addView(view, place)

    private companion object { const val NOT = -1 }
}
