package legwork.phone

import java.util.concurrent.Executor
import legwork.phone.logic.Slices
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertTrue
import org.junit.Test

/** What is made in slices, by a clock that only goes on while something is made. */
class SlicesTest {
    private val line = ArrayDeque<Runnable>()
    private var now = 0L
    private val slices = Slices(Executor { line += it }) { now }
    private val made = mutableListOf<String>()

    /** A step that takes so many thousandths of a slice. */
    private fun step(name: String, thousandths: Long = 1, within: () -> Unit = {}): () -> Unit = {
        made += name
        now += Slices.SLICE * thousandths / 1000
        within()
    }

    @Test fun aSliceEndsAtTheFirstLookAtTheClockOnceItsTimeIsOver() {
        for (name in 1..10) slices.ask(make = step("$name", 300))
        slices.slice()
        assertEquals("900 thousandths, and the one that began before the end", listOf("1", "2", "3", "4"), made)
        assertEquals("the rest waits in line once, behind what else there is", 1, line.size)
        line.removeFirst().run()
        assertEquals(8, made.size)
        line.removeFirst().run()
        assertEquals((1..10).map { "$it" }, made)
        assertTrue(slices.isDone && line.isEmpty())
    }

    @Test fun aStepThatTakesLongerThanASliceIsASliceOfItsOwn() {
        slices.ask(make = step("short", 999))
        slices.ask(make = step("long", 5000))
        slices.ask(make = step("next"))
        slices.slice()
        assertEquals(listOf("short", "long"), made)
        // What takes no time at all is made at once.
        slices.drop()
        made.clear()
        for (name in 1..500) slices.ask(make = step("$name", 0))
        slices.slice()
        assertEquals(500, made.size)
    }

    @Test fun whatIsLongBeginsASliceOfItsOwn() {
        slices.ask(make = step("short", 10))
        slices.ask(isLong = true, step("long", 900))
        slices.ask(make = step("with it", 10))
        slices.slice()
        assertEquals(listOf("short"), made)
        line.removeFirst().run()
        assertEquals(listOf("short", "long", "with it"), made)
    }

    @Test fun whatAStepAsksForIsMadeRightAfterIt() {
        slices.ask(make = step("list") {
            slices.ask(make = step("row 1") { slices.ask(make = step("row 2")) })
            slices.ask(make = step("foot of the list"))
        })
        slices.ask(make = step("next block"))
        slices.slice()
        assertEquals(listOf("list", "row 1", "row 2", "foot of the list", "next block"), made)
    }

    @Test fun whatIsDroppedIsNeverMade() {
        slices.ask(make = step("one", 1000))
        slices.ask(make = step("two"))
        slices.slice()
        val round = slices.round
        slices.drop()
        assertEquals("whoever asked is told to ask again", round + 1, slices.round)
        while (line.isNotEmpty()) line.removeFirst().run()
        assertEquals(listOf("one"), made)
        slices.ask(make = step("three"))
        while (line.isNotEmpty()) line.removeFirst().run()
        assertEquals(listOf("one", "three"), made)
    }

    @Test fun noSliceBeginsWithinAStep() {
        slices.ask(make = step("one") {
            slices.ask(make = step("two"))
            slices.slice()
            assertEquals(listOf("one"), made)
            assertFalse(slices.isDone)
        })
        slices.slice()
        assertEquals(listOf("one", "two"), made)
    }
}
