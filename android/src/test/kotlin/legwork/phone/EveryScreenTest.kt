package legwork.phone

import java.io.File
import legwork.door.Aloud
import legwork.door.AloudRole
import legwork.door.Block
import legwork.door.HowFarBlock
import legwork.door.PressBlock
import legwork.door.PressWeight
import org.junit.Assert.assertEquals
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.shadows.ShadowLooper

/** Every screen of the guide, drawn over the real core in every way in which it may be drawn, and measured. */
@RunWith(RobolectricTestRunner::class)
class EveryScreenTest {
    private val ways = Ways()
    private val faults = mutableListOf<String>()

    private fun drawn(folder: String, check: (Phone) -> List<String> = { emptyList() }) {
        val phone = Phone(ways.home)
        val seen = mutableListOf<String>()
        val page = phone.window.page
        val sheet = ContactSheet(if (page.width > page.height) 8 else 16, page.width, page.height, 205f / page.width.coerceAtMost(page.height), ways.names.size)
        val missed = ways.walk(phone) { name ->
            seen += name
            whole(phone, "$folder/$name")
            sheet.put(phone.window.page)
            (layoutFaults(phone.window.page) + check(phone)).forEach { faults += "$name: $it" }
            // And the same with all unfolded that folds, and every second question asked.
            if (unfold(phone)) (layoutFaults(phone.window.page) + check(phone)).forEach { faults += "$name, unfolded: $it" }
        }
        working(phone)
        sheet.save("contact-$folder")
        File(System.getProperty("pictures.dir")!!, "$folder.txt").writeText((missed + faults).joinToString("\n"))
        assertEquals("not come to", emptyList<String>(), missed)
        assertEquals(ways.names.toSet(), seen.toSet())
        assertEquals(faults.joinToString("\n"), 0, faults.size)
    }

    private fun unfold(phone: Phone): Boolean {
        val closed = phone.window.getString(R.string.folded)
        val heads = Phone.views(phone.window.page).filter { it.isClickable && it.createAccessibilityNodeInfo().stateDescription == closed }
        heads.forEach { it.performClick() }
        if (heads.isNotEmpty()) phone.settle(works = true)
        return heads.isNotEmpty()
    }

    /** What shows only while something goes on: the screen that the core gives meanwhile, with what it tells of it. */
    private fun working(phone: Phone) {
        val silent = Aloud(AloudRole.PRESS, "Stop", "", "")
        val stop = PressBlock("stop", silent, "stop", "Stop", PressWeight.OTHER, null, true)
        for (share in listOf(null, 0u, 420u, 1000u)) {
            val far = HowFarBlock("far", Aloud(AloudRole.PROGRESS, "Photos are taken in", "", ""), "Photos are taken in", share, stop)
            phone.window.page.show(phone.screen.copy(place = "far", notices = emptyList(), blocks = listOf(Block.HowFar(far)), back = false), null)
            ShadowLooper.idleMainLooper()
            (layoutFaults(phone.window.page)).forEach { faults += "long-work at $share: $it" }
        }
        whole(phone, "long-work")
    }

    private fun contrast(phone: Phone): List<String> =
        contrastFaults(phone.window.page.scroll.getChildAt(0)) + contrastFaults(phone.window.page.dock)

    @Test fun byDay() {
        val log = StringBuilder()
        drawn("light") { phone ->
            log.append("== ${phone.screen.name}\n${nodesAsText(phone.window.page)}\n")
            contrast(phone) + nodeFaults(phone)
        }
        File(System.getProperty("pictures.dir")!!, "nodes.txt").writeText(log.toString())
    }

    @Test fun byNight() {
        RuntimeEnvironment.setQualifiers("+night")
        drawn("night") { contrast(it) }
    }

    @Test fun inTypeTwiceAsLarge() {
        RuntimeEnvironment.setFontScale(2f)
        drawn("large")
    }

    @Test fun fromRightToLeft() {
        RuntimeEnvironment.setQualifiers("+ar-rXB-ldrtl")
        drawn("rtl") { phone ->
            listOf("does not run from the right").filter { phone.window.page.layoutDirection != android.view.View.LAYOUT_DIRECTION_RTL || !phone.screen.rightToLeft }
        }
    }

    @Test fun acrossTheWindow() {
        RuntimeEnvironment.setQualifiers("+w891dp-h411dp-land")
        drawn("land")
    }

    @Test fun inAWideWindow() {
        RuntimeEnvironment.setQualifiers("+w1280dp-h800dp-land-mdpi")
        drawn("wide")
    }

    @Test fun inLongerWordsOnASmallPhone() {
        RuntimeEnvironment.setQualifiers("+en-rXA-w320dp-h569dp")
        drawn("small")
    }
}
