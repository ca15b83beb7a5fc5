package legwork.phone

import legwork.door.Block
import legwork.door.Screen
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner

/** An app that the system has ended, on every screen, and a turned phone in the middle of a word (on every screen: [EveryScreen]). */
@RunWith(RobolectricTestRunner::class)
class TurnedAndEndedTest {
    private val ways = Ways()

    @Test fun everyScreenIsThereAgainAfterTheAppsDeath() {
        val phone = Phone(ways.home)
        val wrong = mutableListOf<String>()
        ways.walk(phone) { name ->
            val before = phone.screen
            phone.killed()
            // What was worked out is worked out anew; all that was given, and where one is, is as it was.
            val (here, there) = listOf(before, phone.screen).map { listOf(it.name, it.place, it.title) + it.trail + given(it) }
            if (here != there) wrong += "$name: $here is $there"
        }
        assertEquals(emptyList<String>(), wrong)
    }

    /** What somebody picked, wrote, typed and took on a screen. */
    private fun given(screen: Screen): List<String> = screen.blocks.flatMap { block ->
        when (block) {
            is Block.Choice -> block.block.options.map { "${it.key} ${it.picked}" }
            is Block.Writing -> listOf(block.block.text)
            is Block.Number -> listOf(block.block.text, block.block.unit)
            is Block.PhotoSlot -> block.block.photos.map { "${it.photo} ${it.picked}" }
            is Block.Label -> block.block.figures.map { "${it.name} ${it.says} ${it.picked}" }
            else -> emptyList()
        }
    }

    @Test fun aHalfTypedWordIsThereAgain() {
        val phone = Phone()
        phone.press("new")
        phone.type("name", "Half a na")
        val field = phone.field("name")
        field.setSelection(4)
        phone.turn("+w891dp-h411dp-land")
        assertEquals("Half a na", phone.field("name").text.toString())
        assertTrue("the focus stays", phone.field("name").isFocused)
        assertEquals("and so does the cursor", 4, phone.field("name").selectionStart)
        phone.killed()
        assertEquals("Half a na", phone.field("name").text.toString())
        phone.type("name", "A house")
        phone.press("make")
        phone.killed()
        phone.on("ask-whose")
        // And in a question, with its unit.
        phone.overview()
        phone.press("house")
        phone.press(phone.row("plan").key!!)
        phone.type("down", "12")
        fun down() = phone.screen.blocks.firstNotNullOf { block -> (block as? Block.Number)?.block?.takeIf { it.key == "down" } }
        val other = down().units.first { it.key != down().unit }
        phone.tapWords(other.aloud.label)
        phone.killed()
        assertEquals("12", phone.field("down").text.toString())
        assertEquals(other.key, down().unit)
    }

    @Test fun backNeverLosesAWord() {
        val phone = Phone(ways.home)
        phone.overview("Mill House")
        phone.press("house")
        phone.press(phone.row("plan").key!!)
        val field = phone.field("up")
        field.requestFocus()
        // Back comes before the letters were handed on.
        field.onCreateInputConnection(android.view.inputmethod.EditorInfo())!!.commitText("77", 1)
        val typed = field.text.toString()
        phone.window.onBackPressed()
        phone.settle()
        phone.press(phone.row("plan").key!!)
        assertEquals(typed, phone.field("up").text.toString())
    }
}
