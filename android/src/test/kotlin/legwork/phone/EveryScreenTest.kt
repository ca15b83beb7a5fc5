package legwork.phone

import android.view.View
import java.io.File
import legwork.door.Aloud
import legwork.door.AloudRole
import legwork.door.Block
import legwork.door.HowFarBlock
import legwork.door.PressBlock
import legwork.door.PressWeight
import legwork.door.Screen
import legwork.phone.logic.DockPlan
import org.junit.Assert.assertEquals
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.shadows.ShadowLooper

/** A way in which every screen is drawn: its folder of pictures, how the phone is set, and how large its type is. */
enum class Drawn(val folder: String, val qualifiers: String, val type: Float = 1f) {
    DAY("light", "en-rUS-ldltr-w411dp-h891dp-port-notnight-xhdpi"),
    NIGHT("night", "en-rUS-ldltr-w411dp-h891dp-port-night-xhdpi"),
    LARGE("large", "en-rUS-ldltr-w411dp-h891dp-port-notnight-xhdpi", 2f),
    ACROSS("land", "en-rUS-ldltr-w891dp-h411dp-land-notnight-xhdpi"),
    WIDE("wide", "en-rUS-ldltr-w1280dp-h800dp-land-notnight-mdpi"),
    FROM_RIGHT("rtl", "ar-rXB-ldrtl-w411dp-h891dp-port-notnight-xhdpi"),
    LONGER_WORDS("small", "en-rXA-ldltr-w320dp-h569dp-port-notnight-xhdpi"),
    ;

    val language get() = qualifiers.substringBefore("-w")
}

/**
 * Every screen of the guide over the real core, drawn in several ways and measured in each. The phone is set anew on every screen:
 * so it is also turned on every screen, and has to be on the same one afterwards.
 */
abstract class EveryScreen(private vararg val ways: Drawn) {
    private val faults = mutableListOf<String>()
    private val sheets = HashMap<Drawn, ContactSheet>()
    private val log = StringBuilder()

    @Test fun isWholeInEveryWayOfDrawing() {
        val all = Ways()
        val phone = Phone(all.home)
        val seen = mutableSetOf<String>()
        val missed = all.walk(phone) { name ->
            seen += name
            val before = HashMap<String, Screen>()
            for (way in ways) {
                phone.turn(way.qualifiers, way.type)
                val first = before.getOrPut(way.language) { phone.screen }
                if (phone.screen.copy(way = first.way) != first) faults += "$name, ${way.folder}: another screen after a turn"
                look(phone, name, way, all.names.size)
            }
        }
        for (way in ways) {
            phone.turn(way.qualifiers, way.type)
            working(phone, way)
            sheets.getValue(way).save("contact-${way.folder}")
        }
        val folder = File(System.getProperty("pictures.dir")!!)
        for (way in ways) File(folder, "${way.folder}.txt").writeText((missed + faults).joinToString("\n"))
        if (log.isNotEmpty()) File(folder, "nodes.txt").writeText(log.toString())
        assertEquals("not come to", emptyList<String>(), missed)
        assertEquals(all.names.toSet(), seen)
        assertEquals(faults.joinToString("\n"), 0, faults.size)
    }

    private fun look(phone: Phone, name: String, way: Drawn, count: Int) {
        val page = phone.window.page
        assertEquals("set as it is to be", way.type, page.resources.configuration.fontScale)
        whole(phone, "${way.folder}/$name")
        val small = 205f / page.width.coerceAtMost(page.height)
        sheets.getOrPut(way) { ContactSheet(if (page.width > page.height) 8 else 16, page.width, page.height, small, count) }.put(page)
        if (way == Drawn.DAY) log.append("== ${phone.screen.name}\n${nodesAsText(page)}\n")
        faultsOf(phone, way).forEach { faults += "$name, ${way.folder}: $it" }
        // And the same with all unfolded that folds, and every second question asked.
        if (unfold(phone)) faultsOf(phone, way).forEach { faults += "$name, ${way.folder}, unfolded: $it" }
        // The next way of drawing begins as this one did.
        page.folds.clear()
        if (way == Drawn.DAY) {
            val most = phone.mostMadeAtOnce(phone.screen)
            if (most > MOST_VIEWS) faults += "$name: one step makes $most views"
        }
    }

    private fun faultsOf(phone: Phone, way: Drawn): List<String> {
        val page = phone.window.page
        val mirrored = way == Drawn.FROM_RIGHT
        val runs = (page.layoutDirection == View.LAYOUT_DIRECTION_RTL) == mirrored && phone.screen.rightToLeft == mirrored
        return layoutFaults(page) + nodeFaults(phone) + contrastFaults(page.scroll.getChildAt(0)) + contrastFaults(page.dock) +
            listOf("runs from the wrong side").filterNot { runs } + inSight(phone)
    }

    /** The way on is in sight, wherever the screen is scrolled to; where it would take too much of a window, it ends the page. */
    private fun inSight(phone: Phone): List<String> {
        val page = phone.window.page
        if (page.dock.visibility != View.VISIBLE || page.dock.parent === page.scroll.getChildAt(0)) return emptyList()
        return DockPlan(phone.screen).on.filterNot { press ->
            val view = page.find(press.id) ?: return@filterNot false
            val at = IntArray(2).also(view::getLocationInWindow)
            at[0] >= 0 && at[1] >= 0 && at[0] + view.width <= page.width && at[1] + view.height <= page.height
        }.map { "out of sight: ${it.words}" }
    }

    private fun unfold(phone: Phone): Boolean {
        val closed = phone.window.getString(R.string.folded)
        val heads = Phone.views(phone.window.page).filter { it.isClickable && it.createAccessibilityNodeInfo().stateDescription == closed }
        heads.forEach { it.performClick() }
        if (heads.isNotEmpty()) phone.settle(works = true)
        return heads.isNotEmpty()
    }

    /** What shows only while something goes on: the screen that the core gives meanwhile, with what it tells of it. */
    private fun working(phone: Phone, way: Drawn) {
        val silent = Aloud(AloudRole.PRESS, "Stop", "", "")
        val stop = PressBlock("stop", silent, "stop", "Stop", PressWeight.OTHER, null, true)
        for (share in listOf(null, 0u, 420u, 1000u)) {
            val far = HowFarBlock("far", Aloud(AloudRole.PROGRESS, "Photos are taken in", "", ""), "Photos are taken in", share, stop)
            phone.window.page.show(phone.screen.copy(place = "far", notices = emptyList(), blocks = listOf(Block.HowFar(far)), back = false), null)
            ShadowLooper.idleMainLooper()
            layoutFaults(phone.window.page).forEach { faults += "long-work at $share, ${way.folder}: $it" }
        }
        whole(phone, "${way.folder}/long-work")
    }
}

/** So many views one step makes at most: a dock with its answers, a drawing in its frame. */
private const val MOST_VIEWS = 60

// Two, as two processes share the work: the languages that are not ours apart.
@RunWith(RobolectricTestRunner::class)
class EveryScreenTest : EveryScreen(Drawn.DAY, Drawn.NIGHT, Drawn.LARGE, Drawn.ACROSS)

@RunWith(RobolectricTestRunner::class)
class EveryScreenElsewhereTest : EveryScreen(Drawn.WIDE, Drawn.FROM_RIGHT, Drawn.LONGER_WORDS)
