package legwork.phone

import legwork.door.Block
import legwork.door.ChoiceBlock
import legwork.door.PhotoSlotBlock
import legwork.door.RowsBlock
import legwork.door.Screen
import legwork.phone.ui.PageView
import legwork.phone.ui.idsOf
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.shadows.ShadowInstrumentation

/** A screen that is longer than a slice: it comes from its top to its foot, and nobody is moved by it. */
@RunWith(RobolectricTestRunner::class)
class LongScreensTest {
    // By keys, not by touch: only so a row keeps a focus of its own.
    private val phone = ShadowInstrumentation.getInstrumentation().setInTouchMode(false).let { Phone(Ways().home) }.apply { overview("Mill House") }
    private val page get() = phone.window.page

    private fun screenOf(vararg keys: String): Screen {
        phone.overview("Mill House")
        keys.forEach(phone::press)
        return phone.screen
    }

    private fun Screen.rows(): RowsBlock = blocks.firstNotNullOf { (it as? Block.Rows)?.block?.takeIf { rows -> rows.rows.any { row -> row.key != null } } }

    /** The list of parts, with so many of them. */
    private fun long(head: String = "Part", count: Int = MANY): Screen {
        val screen = parts
        val rows = screen.rows()
        val one = rows.rows.first { it.key != null }
        val many = (0 until count).map { one.copy(id = "part $it", head = "$head $it", aloud = one.aloud.copy(label = "$head $it")) }
        return screen.copy(place = "long", blocks = screen.blocks.map { if (it is Block.Rows && it.block == rows) Block.Rows(rows.copy(rows = many)) else it })
    }

    private val parts = screenOf("free-parts")

    private fun made(): Int = (0 until MANY).count { page.find("part $it") != null }

    @Test fun noStepMakesMoreThanAFewViewsHoweverMuchThereIs() {
        val burst = screenOf("free-burst", "assign")
        val slot = burst.blocks.firstNotNullOf { (it as? Block.PhotoSlot)?.block }
        val photos = slot.copy(photos = (0 until MANY).map { slot.photos.first().copy(id = "photo $it") })
        val choice = Ways().let { ways ->
            var found: ChoiceBlock? = null
            ways.walk(phone, { it == "ask-rooms" }) { found = phone.screen.blocks.firstNotNullOf { (it as? Block.Choice)?.block } }
            checkNotNull(found)
        }
        val options = choice.copy(options = (0 until MANY).map { choice.options.first().copy(id = "option $it") })
        val screens = listOf(
            long(),
            burst.copy(blocks = burst.blocks.map { if (it is Block.PhotoSlot) Block.PhotoSlot(photos) else it }),
            long().let { it.copy(blocks = it.blocks + Block.Choice(options)) },
        )
        for (screen in screens) {
            val most = phone.mostMadeAtOnce(screen)
            assertTrue("one step makes $most views", most <= MOST_VIEWS)
            for (block in screen.blocks.filter { it is Block.Rows || it is Block.PhotoSlot || it is Block.Choice }) {
                val ids = idsOf(screen.copy(blocks = listOf(block)))
                assertEquals("not made", emptyList<String>(), ids.filter { page.find(it) == null })
                val tops = ids.map { id -> IntArray(2).also { page.find(id)!!.getLocationInWindow(it) } }
                assertTrue("in their order", tops.zipWithNext().all { (one, next) -> one[1] < next[1] || (one[1] == next[1] && one[0] < next[0]) })
            }
        }
        // As near as can be, but not there: the same by the ordinary clock is the same screen, in fewer slices.
        page.show(long(), null)
        phone.idle()
        assertEquals(MANY, made())
    }

    @Test fun whoStoodFarDownStandsThereAsSoonAsThatMuchIsThere() {
        var early: Int? = null
        phone.stepByStep({
            phone.layOut()
            if (early == null && page.scroll.scrollY == FAR) early = made()
        }) {
            page.show(long(), null)
            page.stand(PageView.Stood(FAR, "part 20", null))
            assertEquals("what is kept meanwhile is where one will stand", FAR, page.stands)
        }
        assertEquals(FAR, page.scroll.scrollY)
        assertTrue("$early of $MANY were made", early != null && early!! < MANY)
        assertTrue(page.find("part 20")!!.isFocused)
        // Whoever has moved on meanwhile is left where they are.
        page.show(parts, null)
        phone.idle()
        phone.stepByStep({
            phone.layOut()
            if (page.scroll.scrollY == 0) page.scroll.scrollTo(0, 40)
        }) {
            page.show(long(), null)
            page.stand(PageView.Stood(FAR, null, null))
        }
        assertEquals(40, page.scroll.scrollY)
    }

    @Test fun aScreenThatIsMadeAnewNeitherMovesNorLosesItsFocus() {
        page.show(long(), null)
        phone.idle()
        page.scroll.scrollTo(0, FAR)
        page.find("part 30")!!.requestFocus()
        val at = page.scroll.scrollY
        val moved = mutableSetOf<Int>()
        val steps = mutableSetOf<Int>()
        phone.stepByStep({
            phone.layOut()
            moved += page.scroll.scrollY
            steps += (0 until MANY).count { page.find("part $it")?.contentDescription?.startsWith("Other") == true }
            assertTrue("the focus stays", page.find("part 30")!!.isFocused)
        }) { page.show(long("Other"), null) }
        assertEquals(setOf(at), moved)
        assertTrue("row by row: $steps", steps.size > MANY / 2)
        assertEquals(MANY, steps.max())
    }

    @Test fun aNewScreenDropsWhatWasLeftToMake() {
        var messages = 0
        phone.stepByStep({
            if (++messages == 9) {
                assertTrue(made() in 1 until MANY)
                page.show(parts, null)
            }
            if (messages > 9) assertEquals(0, made())
        }) { page.show(long(), null) }
        assertTrue(messages > 9)
        assertNull(page.find("part 0"))
        assertFalse(parts.rows().rows.any { page.find(it.id) == null })
    }

    @Test fun theSameScreenDrawnAgainMeanwhileIsMadeToItsEnd() {
        var messages = 0
        phone.stepByStep({ if (++messages == 9) page.show(long(), "Something to say") }) { page.show(long(), null) }
        assertEquals(MANY, made())
        // And with fewer rows: what is not wanted any more is not there.
        messages = 0
        phone.stepByStep({ if (++messages == 9) page.show(long("Other", 5), null) }) { page.show(long("Other"), null) }
        assertEquals(5, made())
    }

    private companion object {
        const val MANY = 120
        const val FAR = 1500
        const val MOST_VIEWS = 60
    }
}
