package legwork.phone

import android.content.Intent
import android.net.Uri
import java.io.File
import legwork.door.Block
import org.junit.Assert.assertEquals
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner

/** Whole jobs by touches and typed words. */
@RunWith(RobolectricTestRunner::class)
class JourneysTest {
    private fun newSurvey(name: String, phone: Phone = Phone()): Phone {
        phone.press("new")
        phone.type("name", name)
        phone.press("make")
        return phone
    }

    /** A house of three outlets, as in the guide's own journey (core/guide/tests/all/homeowner.rs). */
    private fun answer(phone: Phone, rooms: ArrayDeque<String>) {
        val screen = phone.screen
        when (screen.name) {
            "ask-whose" -> phone.pick("whose", "own")
            "ask-uses" -> { phone.pick("uses", "cable_tv", "cable_internet"); phone.press("next") }
            "ask-modem-age" -> phone.pick("modem", "31")
            "ask-depends" -> { phone.pick("depends", "nothing"); phone.press("next") }
            "ask-plan" -> { phone.type("down", "1 Gb/s"); phone.type("up", "50"); phone.press("next") }
            "ask-rooms" -> { phone.pick("rooms", "living", "office", "bedroom"); phone.pick("wish", "fast"); phone.press("next") }
            "ask-ways-in" -> { phone.pick("ways", "cable"); phone.press("next") }
            "ask-joined" -> phone.pick("joined", "connected")
            "ask-ground-block" -> phone.pick("seen", "yes")
            "ask-entry-filter" -> phone.pick("seen", "no")
            "ask-label" -> { phone.type("text", "3-WAY SPLITTER 5-1000MHz 5.5dB"); phone.press("next") }
            "ask-label-read" -> phone.press("next")
            "ask-legs" -> { phone.type("legs", "3"); phone.press("next") }
            "ask-leads-to" -> phone.pick("leads", "splitter")
            "ask-outputs" -> { for (port in 1..3) phone.pickWords("port:$port", rooms.removeFirst()); phone.press("next") }
            "ask-plugged" -> { phone.pick("plugged", if (screen.title.contains("ffice")) "modem" else "tv"); phone.press("next") }
            "ask-more-outlets" -> { phone.pick("more", "no"); phone.press("next") }
            "ask-connectors" -> phone.pick("connectors", "good")
            "ask-cable" -> { phone.pick("series", "six"); phone.type("length", "12.5"); phone.pick("known", "paced"); phone.press("next") }
            "ask-ports" -> phone.pick("behind-rate", "1g")
            "enough" -> phone.press("next")
            "ask-adapters" -> phone.pick("adapters", "none")
            "ask-router-at" -> phone.pickWords("outlet", "office")
            "ask-router-speaks" -> phone.pick("speaks", "no")
            else -> error("no answer to ${screen.name}")
        }
    }

    @Test fun aHomeownerAnswersAWholeHouseAndSeesWhatGetsThrough() {
        val phone = newSurvey("Mühle")
        val rooms = ArrayDeque(listOf("living", "office", "bedroom"))
        var screens = 0
        while (phone.screen.name.startsWith("ask-") || phone.screen.name == "enough") {
            assertEquals(emptyList<String>(), layoutFaults(phone.window.page))
            if (phone.screen.name == "ask-entry-filter") shot(phone.window.page, "journey/question")
            answer(phone, rooms)
            assertTrue(++screens < 120)
            // In the middle of it the phone is turned, and once the app is ended.
            if (screens == 8) phone.turn("+land")
            if (screens == 9) phone.turn("+port")
            if (screens == 12) { val at = phone.screen; phone.killed(); assertEquals(at.name, phone.screen.name); assertEquals(at.title, phone.screen.title) }
        }
        phone.overview()
        phone.press("forecast")
        phone.settle()
        phone.on("forecast")
        shot(phone.window.page, "journey/forecast")
        assertTrue("a room has a bar of at least, likely and at most", phone.rows().any { it.bar?.let { bar -> bar.low <= bar.likely && bar.likely <= bar.high } == true })
        phone.overview()
        phone.press("work")
        phone.settle()
        // No entry filter in a house that the street comes into: the work list says so with its caution.
        assertTrue(phone.rows().any { it.head.contains("filter", ignoreCase = true) })
        phone.press(phone.row("filter").key!!)
        assertTrue(phone.screen.blocks.any { it is Block.Caution })
        shot(phone.window.page, "journey/step")
    }

    @Test fun aTechnicianWorksFreely() {
        val phone = newSurvey("Freely")
        phone.press("overview")
        phone.press("free-parts")
        phone.press("add")
        phone.pick("kind", "splitter")
        phone.press("make")
        phone.press(phone.row("its label").key!!)
        phone.type("text", "4-WAY SPLITTER 5-1000MHz 7dB")
        phone.press("next")
        phone.press("next")
        phone.on("free-part")
        phone.press("meter")
        phone.pick("port", "2")
        for ((mhz, level) in listOf("111" to "-1", "603" to "-3.5")) {
            phone.type("mhz", mhz)
            phone.type("dbmv", level)
            phone.press("keep")
        }
        phone.says("dBmV at 603 MHz")
        phone.overview()
        phone.press("free-parts")
        phone.says("S1")
        // Taken back, and again.
        phone.overview()
        phone.press("more")
        phone.press("acts")
        phone.press(phone.rows().first().key!!)
        phone.press("undo")
        phone.on("share-act")
        readings(phone)
        phone.says("111 MHz")
        phone.saysNot("dBmV at 603 MHz")
        phone.overview()
        phone.press("more")
        phone.press("acts")
        phone.press(phone.rows().first().key!!)
        phone.press("undo")
        readings(phone)
        phone.says("dBmV at 603 MHz")
    }

    /** To what was measured at the second output of the one splitter. */
    private fun readings(phone: Phone) {
        phone.overview()
        phone.press("free-parts")
        phone.press(phone.row("S1").key!!)
        phone.press("meter")
        phone.pick("port", "2")
    }

    @Test fun tenLabelsInABurst() {
        val phone = newSurvey("Burst")
        phone.press("overview")
        phone.press("free-burst")
        // Two touches a photo: the first by a touch here, all others by the camera's shutter and its tick alone.
        phone.tapWords(phone.window.getString(R.string.take_photo))
        for (number in 1..10) phone.cameraTakes(number)
        // It came up an eleventh time by itself; whoever goes back has said that it is enough.
        val asked = phone.asked()!!
        phone.answers(asked, null, android.app.Activity.RESULT_CANCELED)
        assertNull(phone.asked())
        phone.on("free-burst")
        phone.says("10 photos")
        val slot = phone.screen.blocks.firstNotNullOf { (it as? Block.PhotoSlot)?.block }
        assertEquals(10, slot.photos.size)
        shot(phone.window.page, "journey/burst")
        phone.killed()
        phone.on("free-burst")
        phone.says("10 photos")
        phone.press("assign")
        phone.press("all")
        phone.press("new:splitter")
        phone.says("S1")
        phone.press("undo")
        assertTrue(phone.rows().none { it.head.contains("S1") })
        assertEquals(10, phone.screen.blocks.firstNotNullOf { (it as? Block.PhotoSlot)?.block }.photos.size)
    }

    @Test fun whatIsPackedIsSharedTakenInElsewhereSettledAndForgotten() {
        val ann = Phone(Ways().home)
        ann.press(ann.row("Mill House").key!!)
        ann.overview()
        ann.press("pack")
        val press = ann.screen.blocks.firstNotNullOf { block -> (block as? Block.Press)?.block?.takeIf { it.need != null } }
        ann.press(press.key)
        val chooser = ann.started() ?: error("nothing was shared: ${ann.own()}")
        assertEquals(Intent.ACTION_CHOOSER, chooser.action)
        @Suppress("DEPRECATION") val send = chooser.getParcelableExtra<Intent>(Intent.EXTRA_INTENT)!!
        assertEquals(Intent.ACTION_SEND, send.action)
        assertTrue(send.flags and Intent.FLAG_GRANT_READ_URI_PERMISSION != 0)
        @Suppress("DEPRECATION") val address = send.getParcelableExtra<Uri>(Intent.EXTRA_STREAM)!!
        val shared = File.createTempFile("shared", ".bin")
        ann.window.contentResolver.openInputStream(address)!!.use { from -> shared.outputStream().use { from.copyTo(it) } }
        assertTrue(shared.length() > 1000)

        // A file handed over by another program opens wherever one is.
        ann.window.contentResolver.let { org.robolectric.Shadows.shadowOf(it) }.registerInputStreamSupplier(Uri.parse("content://mail/17")) { shared.inputStream() }
        ann.given(Intent(Intent.ACTION_VIEW, Uri.parse("content://mail/17")).setType(null).setData(Uri.parse("content://mail/17")))
        ann.says("Mill House")

        // A disagreement of two people is settled by a choice.
        shot(ann.window.page, "journey/received")
        ann.overview("Mill House")
        ann.press("disagreements")
        ann.press(ann.rows().first { it.key != null }.key!!)
        ann.on("share-disagreement")
        val choice = ann.screen.blocks.firstNotNullOf { (it as? Block.Choice)?.block }
        ann.touch(choice.options.first().id)
        ann.press("settle")
        ann.says("nothing to settle")

        // Forgetting asks once more, and says what follows.
        ann.overview()
        ann.press("more")
        ann.press("things")
        ann.press(ann.row("note").key!!)
        ann.press("forget")
        ann.on("share-forget")
        val confirm = ann.screen.blocks.firstNotNullOf { (it as? Block.Confirm)?.block }
        ann.press(confirm.key)
        ann.on("share-forget")
        ann.tapWords(confirm.yes)
        // Whoever has a copy is asked to forget it, too: that is asked apart, since nobody can take it back there.
        ann.on("share-forget-for-others")
        val again = ann.screen.blocks.firstNotNullOf { (it as? Block.Confirm)?.block }
        ann.press(again.key)
        ann.tapWords(again.yes)
        ann.on("share-things")
        assertTrue(ann.rows().none { it.head.contains("note") })
    }
}

fun Phone.given(intent: Intent) {
    window.onNewIntent(intent)
    settle()
}
