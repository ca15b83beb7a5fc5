package legwork.phone

import java.io.ByteArrayInputStream
import java.io.File
import java.io.IOException
import java.io.InputStream
import java.nio.file.Files
import java.security.MessageDigest
import legwork.door.Block
import legwork.phone.logic.Carried
import legwork.phone.logic.Laid
import legwork.phone.logic.PrintModel
import legwork.phone.logic.TakenIn
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf

/** What reads labels: carried by the app, laid out once for each release, and read with; also where that goes wrong. */
@RunWith(RobolectricTestRunner::class)
class PrintModelTest {
    private val app get() = RuntimeEnvironment.getApplication() as LegworkApp

    /** An app that carries two files, of which one may break off. */
    private class Two(var release: String = "1", var breaksOff: Boolean = false) : Carried {
        var opened = 0
        override fun installed() = release
        override fun names() = listOf("letters.txt", "weights")
        override fun open(name: String): InputStream {
            opened++
            // As large as weights are: how much room is left is looked at every four megabytes.
            val whole = ByteArrayInputStream("$release $name".repeat(if (name == "weights") 600_000 else 10).toByteArray())
            if (!breaksOff || name != "weights") return whole
            return object : InputStream() {
                override fun read(): Int = if (whole.available() > 1000) whole.read() else throw IOException("the app is being replaced")
            }
        }
    }

    private fun kept(): File = File(Files.createTempDirectory("kept").toFile(), "print-model")

    private fun files(folder: File): Map<String, String> =
        folder.walk().filter { it.isFile }.associate { it.relativeTo(folder).path to it.readText().take(13) }

    @Test fun itIsLaidOutOnceAndAgainAfterAnUpdate() {
        val (kept, carried) = kept() to Two()
        val model = PrintModel(kept, carried)
        assertEquals(File(kept, "1") to Laid.WHOLE, model.lay())
        assertEquals(setOf("1/letters.txt", "1/weights"), files(kept).keys)
        assertEquals(File(kept, "1") to Laid.WHOLE, PrintModel(kept, carried).lay())
        assertEquals("once", 2, carried.opened)
        carried.release = "2"
        assertEquals(File(kept, "2") to Laid.WHOLE, model.lay())
        // What the older release had is gone.
        assertEquals(mapOf("2/letters.txt" to "2 letters.txt", "2/weights" to "2 weights2 we"), files(kept))
        assertEquals(4, carried.opened)
    }

    @Test fun whatBreaksOffIsNotTakenForWhole() {
        val (kept, carried) = kept() to Two(breaksOff = true)
        val model = PrintModel(kept, carried)
        assertEquals(File(kept, "1") to Laid.BROKEN_OFF, model.lay())
        assertEquals(emptyMap<String, String>(), files(kept))
        // The app is ended in the middle: what it leaves is nobody's.
        File(kept, "begun").mkdirs()
        File(kept, "begun/weights").writeText("half of it")
        carried.breaksOff = false
        assertEquals(File(kept, "1") to Laid.WHOLE, model.lay())
        assertEquals("1 weights1 we", files(kept)["1/weights"])
        assertEquals(setOf("1/letters.txt", "1/weights"), files(kept).keys)
    }

    @Test fun withoutRoomThereIsNothingAndLaterAllOfIt() {
        val (kept, carried) = kept() to Two()
        assertEquals(Laid.NO_ROOM, PrintModel(kept, carried, TakenIn(room = { 1000 })).lay().second)
        assertEquals(emptyMap<String, String>(), files(kept))
        assertEquals(Laid.WHOLE, PrintModel(kept, carried).lay().second)
    }

    @Test fun anAppThatCarriesNoneHasNone() {
        val none = object : Carried {
            override fun installed() = "1"
            override fun names() = emptyList<String>()
            override fun open(name: String) = throw IOException(name)
        }
        val (folder, laid) = PrintModel(kept(), none).lay()
        assertEquals(Laid.NOT_CARRIED, laid)
        assertFalse(folder.exists())
    }

    private fun sum(file: File): String = MessageDigest.getInstance("SHA-256").digest(file.readBytes()).joinToString("") { "%02x".format(it) }

    @Test fun theAppCarriesTheFilesOfThisReleaseAndTheirLicence() {
        val sums = File("../core/print/model/sums").readLines().associate { line -> line.substringAfter("  ") to line.substringBefore("  ") }
        val phone = Phone()
        val laid = app.places.model.listFiles()!!.single()
        assertEquals(sums, laid.listFiles()!!.associate { it.name to sum(it) }.filterKeys { it in sums })
        assertEquals(sums.keys + setOf("LICENCE", "ORIGIN.md"), laid.list()!!.toSet())
        // An update of the app.
        @Suppress("DEPRECATION") shadowOf(app.packageManager).getInternalMutablePackageInfo(app.packageName).lastUpdateTime = 1_900_000_000_000
        phone.killed()
        assertEquals(listOf("1900000000000"), app.places.model.list()!!.toList())
    }

    /** A label as `tests/photos/make.py` drew it. */
    private val photo = File("../tests/photos/label.jpg")

    /** The screen that asks what is printed on a part, with a photo of it taken. */
    private fun onLabel(phone: Phone, check: () -> Unit) {
        var found = false
        Ways().walk(phone, only = { it == "ask-label" && !found }) {
            found = true
            phone.tapWords(phone.window.getString(R.string.take_photo))
            val asked = phone.asked()!!
            @Suppress("DEPRECATION") val to = asked.getParcelableExtra<android.net.Uri>(android.provider.MediaStore.EXTRA_OUTPUT)!!
            phone.window.contentResolver.openOutputStream(to)!!.use { it.write(photo.readBytes()) }
            phone.answers(asked, null)
            check()
        }
        assertTrue(found)
    }

    @Test fun aLabelIsReadFromItsPhoto() {
        val phone = Phone(Ways().home)
        onLabel(phone) {
            val read = phone.screen.blocks.firstNotNullOfOrNull { (it as? Block.Label)?.block } ?: error("nothing was read: ${phone.own()}")
            assertTrue(read.text, read.text.contains("1675"))
            assertTrue("nothing counts before a touch", read.figures.isNotEmpty() && read.figures.none { it.taken })
        }
    }

    @Test fun whereItCannotBeLaidOutTheLabelIsTypedAndThatIsSaid() {
        app.places.model.writeText("in its place")
        val phone = Phone(Ways().home)
        onLabel(phone) {
            phone.says("letters.txt")
            assertTrue(phone.screen.blocks.none { it is Block.Label })
            // Put right, it is read once the app comes up again.
            app.places.model.delete()
            phone.away {}
            val read = phone.screen.blocks.firstNotNullOfOrNull { (it as? Block.Label)?.block } ?: error("nothing was read: ${phone.own()}")
            assertTrue(read.text, read.text.contains("1675"))
        }
    }

    @Test fun withoutRoomThatIsSaidAndAllElseWorks() {
        app.takenIn = TakenIn(room = { 1000 })
        val phone = Phone()
        assertTrue(phone.own(), phone.own().contains(phone.window.getString(R.string.labels_no_room)))
        phone.press("new")
        phone.on("new-survey")
        assertFalse(phone.own(), phone.own().contains(phone.window.getString(R.string.labels_no_room)))
        app.takenIn = TakenIn()
        phone.away {}
        assertEquals(7, app.places.model.listFiles()!!.single().list()!!.size)
    }
}
