package legwork.phone

import android.app.Activity
import android.content.ClipData
import android.content.Intent
import android.graphics.Bitmap
import android.net.Uri
import android.provider.MediaStore
import android.provider.OpenableColumns
import java.io.ByteArrayInputStream
import java.io.ByteArrayOutputStream
import java.io.File
import java.io.FileNotFoundException
import java.io.IOException
import java.io.InputStream
import java.nio.ByteBuffer
import java.nio.ByteOrder
import java.util.Random
import legwork.door.Block
import legwork.door.NoticeRole
import legwork.phone.logic.Copied
import legwork.phone.logic.TakenIn
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertNull
import org.junit.Assert.assertThrows
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf

/** Camera, photo picker, file chooser and programs that hand over files: also where they lie, or give nothing. */
@RunWith(RobolectricTestRunner::class)
class OtherProgramsTest {
    private fun burst(): Phone {
        val phone = Phone()
        phone.press("new")
        phone.type("name", "Photos")
        phone.press("make")
        phone.press("overview")
        phone.press("free-burst")
        return phone
    }

    private fun Phone.photos() = screen.blocks.firstNotNullOf { (it as? Block.PhotoSlot)?.block }.photos.size

    private fun Phone.offers(address: String, give: () -> InputStream) =
        shadowOf(window.contentResolver).registerInputStreamSupplier(Uri.parse(address)) { give() }

    private fun jpeg(number: Int, wide: Int = 160, high: Int = 120): ByteArray =
        ByteArrayOutputStream().also { Phone.picture(number, wide, high).compress(Bitmap.CompressFormat.JPEG, 95, it) }.toByteArray()

    @Test fun aCameraThatGivesNothingChangesNothing() {
        val phone = burst()
        phone.tapWords(phone.window.getString(R.string.take_photo))
        phone.answers(phone.asked()!!, null)
        assertEquals(0, phone.photos())
        assertTrue(phone.own(), phone.own().contains(phone.window.getString(R.string.camera_empty)))
        assertNull("and does not come up again", phone.asked())
    }

    @Test fun aCameraThatWritesElsewhereIsAskedThere() {
        val phone = burst()
        phone.tapWords(phone.window.getString(R.string.take_photo))
        phone.offers("content://gallery/9") { ByteArrayInputStream(jpeg(9)) }
        phone.answers(phone.asked()!!, Intent().setData(Uri.parse("content://gallery/9")))
        assertEquals(1, phone.photos())
    }

    @Test fun theCameraComesBackToAnAppThatWasEndedMeanwhile() {
        val phone = burst()
        phone.tapWords(phone.window.getString(R.string.take_photo))
        val asked = phone.asked()!!
        @Suppress("DEPRECATION") val to = asked.getParcelableExtra<Uri>(MediaStore.EXTRA_OUTPUT)!!
        phone.window.contentResolver.openOutputStream(to)!!.use { it.write(jpeg(4)) }
        phone.killed()
        @Suppress("DEPRECATION") phone.window.onActivityResult(7, Activity.RESULT_OK, null)
        phone.settle()
        assertEquals(1, phone.photos())
    }

    @Test fun severalPhotosAreChosenAtOnce() {
        val phone = burst()
        phone.tapWords(phone.window.getString(R.string.choose_photo))
        val asked = phone.asked()!!
        assertEquals(MediaStore.ACTION_PICK_IMAGES, asked.action)
        for (number in 1..3) phone.offers("content://picker/$number") { ByteArrayInputStream(jpeg(number)) }
        val clip = ClipData.newRawUri(null, Uri.parse("content://picker/1"))
        (2..3).forEach { clip.addItem(ClipData.Item(Uri.parse("content://picker/$it"))) }
        phone.answers(asked, Intent().apply { clipData = clip })
        assertEquals(3, phone.photos())
    }

    @Test fun photosHandedOverGoToThePlaceForPhotos() {
        val phone = burst()
        for (number in 1..2) phone.offers("content://gallery/$number") { ByteArrayInputStream(jpeg(number)) }
        val send = Intent(Intent.ACTION_SEND_MULTIPLE).setType("application/pdf")
            .putParcelableArrayListExtra(Intent.EXTRA_STREAM, arrayListOf(Uri.parse("content://gallery/1"), Uri.parse("content://gallery/2")))
        phone.given(send)
        assertEquals("content decides, not the kind that was said", 2, phone.photos())
        phone.overview()
        phone.given(Intent(Intent.ACTION_SEND).setType("image/jpeg").putExtra(Intent.EXTRA_STREAM, Uri.parse("content://gallery/1")))
        assertTrue(phone.own().contains(phone.window.getString(R.string.file_no_place)))
    }

    @Test fun ofSeveralPhotosHandedOverNoneIsLostOnceTheFirstTakesLong() {
        val phone = burst()
        // The first takes so long that another screen stands; the second comes slowly, and finds that one there.
        phone.offers("content://gallery/1") { ByteArrayInputStream(jpeg(1, 4000, 3000)) }
        phone.offers("content://gallery/2") { Thread.sleep(700); ByteArrayInputStream(jpeg(2)) }
        phone.offers("content://gallery/3") { ByteArrayInputStream(jpeg(3)) }
        val several = (1..3).mapTo(ArrayList()) { Uri.parse("content://gallery/$it") }
        phone.given(Intent(Intent.ACTION_SEND_MULTIPLE).setType("image/jpeg").putParcelableArrayListExtra(Intent.EXTRA_STREAM, several))
        assertEquals(3, phone.photos())
        // One more while another one is being taken in: it waits for the screen that comes of that.
        phone.offers("content://gallery/4") { ByteArrayInputStream(jpeg(4, 4000, 3000)) }
        phone.offers("content://gallery/5") { ByteArrayInputStream(jpeg(5)) }
        fun send(number: Int) = phone.window.onNewIntent(Intent(Intent.ACTION_SEND).setType("image/jpeg").putExtra(Intent.EXTRA_STREAM, Uri.parse("content://gallery/$number")))
        send(4)
        phone.settle(works = true)
        assertTrue("it takes long", phone.screen.blocks.any { it is Block.HowFar })
        send(5)
        phone.settle()
        assertEquals(5, phone.photos())
        assertEquals("and nothing is left of them on the way", 0, phone.app.cacheDir.resolve("in").listFiles()!!.size)
        // Where there is no place for them, that is said once, and they are not kept.
        phone.overview()
        phone.given(Intent(Intent.ACTION_SEND_MULTIPLE).setType("image/jpeg").putParcelableArrayListExtra(Intent.EXTRA_STREAM, several))
        assertTrue(phone.own().contains(phone.window.getString(R.string.file_no_place)))
        assertEquals(0, phone.app.cacheDir.resolve("in").listFiles()!!.size)
    }

    @Test fun aHundredMegabytePictureIsRefusedAndNothingBreaks() {
        val phone = burst()
        // A JPEG's beginning, then a hundred megabytes of chance.
        val begin = jpeg(1)
        val chance = Random(7)
        phone.offers("content://gallery/large") {
            object : InputStream() {
                private var at = 0L
                override fun read(): Int = if (at >= HUNDRED) -1 else (if (at < begin.size) begin[at.toInt()].toInt() and 0xff else chance.nextInt(256)).also { at++ }
                override fun read(into: ByteArray, from: Int, most: Int): Int {
                    if (at >= HUNDRED) return -1
                    val n = minOf(most.toLong(), HUNDRED - at).toInt()
                    val piece = ByteArray(n).also(chance::nextBytes)
                    for (place in 0 until n) if (at + place < begin.size) piece[place] = begin[(at + place).toInt()]
                    piece.copyInto(into, from)
                    at += n
                    return n
                }
            }
        }
        phone.given(Intent(Intent.ACTION_SEND).setType("image/jpeg").putExtra(Intent.EXTRA_STREAM, Uri.parse("content://gallery/large")))
        // The core takes no photo of that size, and says so.
        assertEquals(listOf(NoticeRole.PROBLEM), phone.screen.notices.map { it.role })
        assertEquals(0, phone.photos())
        // And a survey is as usable as before.
        phone.offers("content://gallery/1") { ByteArrayInputStream(jpeg(1)) }
        phone.given(Intent(Intent.ACTION_SEND).setType("image/jpeg").putExtra(Intent.EXTRA_STREAM, Uri.parse("content://gallery/1")))
        assertEquals(1, phone.photos())
    }

    @Test fun howLargeAFileSaysToBeIsNeverAsked() {
        val folder = File.createTempFile("takenin", "").apply { delete(); mkdirs() }
        val to = File(folder, "file")
        // It says nothing at all, or stops in the middle, or never ends.
        assertEquals(Copied.NOTHING, TakenIn().copy({ ByteArrayInputStream(ByteArray(0)) }, to))
        assertEquals(Copied.UNREAD, TakenIn().copy({ throw IOException("gone") }, to))
        assertEquals(Copied.UNREAD, TakenIn().copy({ throw SecurityException("not yours") }, to))
        // What a provider throws besides comes through as it is, also in the middle of reading.
        assertEquals(Copied.UNREAD, TakenIn().copy({ throw IllegalStateException("closed") }, to))
        val breaksOff = object : InputStream() {
            private var pieces = 0
            override fun read() = 1
            override fun read(into: ByteArray, from: Int, most: Int): Int = if (++pieces > 3) throw UnsupportedOperationException("no seeking") else most
        }
        assertEquals(Copied.UNREAD, TakenIn().copy({ breaksOff }, to))
        val endless = object : InputStream() {
            override fun read() = 1
            override fun read(into: ByteArray, from: Int, most: Int): Int = most
        }
        assertEquals(Copied.TOO_LARGE, TakenIn(most = 1 shl 20).copy({ endless }, to))
        assertEquals(Copied.NO_ROOM, TakenIn(room = { 1000 }).copy({ endless }, to))
        assertTrue("what was begun is gone", folder.listFiles()!!.isEmpty())
        assertEquals(Copied.DONE, TakenIn().copy({ ByteArrayInputStream(byteArrayOf(1, 2)) }, to))
        assertEquals(2L, to.length())
    }

    @Test fun whatIsNoSurveyIsRefusedAndChangesNothing() {
        val phone = burst()
        phone.offers("content://mail/junk") { ByteArrayInputStream("PK\u0003\u0004 not one of ours".toByteArray()) }
        val before = phone.sitting.screen!!.blocks
        phone.given(Intent(Intent.ACTION_VIEW).setData(Uri.parse("content://mail/junk")))
        assertEquals(listOf(NoticeRole.PROBLEM), phone.screen.notices.map { it.role })
        phone.overview("Photos")
        phone.press("free-burst")
        assertEquals(before, phone.screen.blocks)
        // A program that takes back its leave.
        phone.offers("content://mail/gone") { throw SecurityException("no leave any more") }
        phone.given(Intent(Intent.ACTION_VIEW).setData(Uri.parse("content://mail/gone")))
        assertTrue(phone.own().contains(phone.window.getString(R.string.file_unread)))
    }

    @Test fun aSurveyThatLiesAboutItsSizeIsRefusedAndChangesNothing() {
        val phone = packing()
        phone.press(phone.shares().key)
        val packed = phone.app.cacheDir.resolve("out").walk().first { it.extension == "lwk" }.readBytes()
        fun hand(bytes: ByteArray) {
            phone.offers("content://mail/survey") { ByteArrayInputStream(bytes) }
            phone.given(Intent(Intent.ACTION_VIEW).setData(Uri.parse("content://mail/survey")))
        }
        // Where the directory of a ZIP says how large an entry is, packed and unpacked (APPNOTE 4.3.12: after its signature).
        val entry = (0 until packed.size - 46).first { at -> packed.copyOfRange(at, at + 4).contentEquals(byteArrayOf(0x50, 0x4b, 1, 2)) }
        fun lying(at: Int, size: Int) = packed.copyOf().also { ByteBuffer.wrap(it).order(ByteOrder.LITTLE_ENDIAN).putInt(entry + at, size) }
        val says = ByteBuffer.wrap(packed).order(ByteOrder.LITTLE_ENDIAN).getInt(entry + 24)
        val cut = packed.copyOf(packed.size - 1)
        for (lie in listOf(lying(24, says - 1), lying(24, says + 1), lying(24, Int.MAX_VALUE), lying(20, 0), lying(20, Int.MAX_VALUE), cut, packed + 0)) {
            hand(lie)
            assertEquals(listOf(NoticeRole.PROBLEM), phone.screen.notices.map { it.role })
        }
        // As it is, it is looked into.
        hand(packed)
        assertEquals(emptyList<NoticeRole>(), phone.screen.notices.map { it.role })
        phone.says("Mill House")
    }

    @Test fun aTurnedPhoneHandsOnWhatWasWrittenMeanwhile() {
        val phone = packing()
        phone.pressAndTurn(phone.shares().key, "+w891dp-h411dp-land")
        phone.settle()
        assertEquals(Intent.ACTION_CHOOSER, phone.started()?.action)
        // Once: neither another turn nor another screen hands it on again.
        phone.turn("+w411dp-h891dp-port")
        phone.overview()
        assertNull(phone.started())
        // And where it is written while the app is aside: once it is taken up again, not before.
        phone.press("pack")
        val key = phone.shares()
        phone.away {
            phone.window.press(key)
            phone.settle()
            assertNull(phone.started())
        }
        assertEquals(Intent.ACTION_CHOOSER, phone.started()?.action)
    }

    @Test fun aBurstGoesOnAfterATurn() {
        val phone = burst()
        phone.tapWords(phone.window.getString(R.string.take_photo))
        phone.takesPicture(1, phone.asked()!!)
        // The camera has answered, and the phone is turned before anything came of it.
        @Suppress("DEPRECATION") phone.window.onActivityResult(7, Activity.RESULT_OK, null)
        phone.turn("+w891dp-h411dp-land")
        phone.settle()
        assertEquals(1, phone.photos())
        phone.cameraTakes(2)
        assertEquals(2, phone.photos())
    }

    @Test fun aPhotoGoesOnlyWhereItWasTakenFor() {
        val phone = Phone(Ways().home)
        phone.press(phone.row("Mill House").key!!)
        phone.overview()
        phone.press("free-parts")
        val (one, other) = phone.rows().mapNotNull { it.key }.filter { it.startsWith("part:") }
        phone.press(one)
        val key = phone.screen.blocks.firstNotNullOf { (it as? Block.PhotoSlot)?.block }.key
        val before = phone.photos()
        phone.tapWords(phone.window.getString(R.string.take_photo))
        val asked = phone.asked()!!
        // Meanwhile another part is shown, whose place for photos has the same key.
        phone.back()
        phone.press(other)
        assertEquals(key, phone.screen.blocks.firstNotNullOf { (it as? Block.PhotoSlot)?.block }.key)
        val there = phone.photos()
        phone.cameraTakes(7, asked)
        assertEquals(there, phone.photos())
        val said = phone.window.getString(R.string.photo_elsewhere)
        assertTrue(said, said.contains("not kept"))
        assertTrue(phone.own(), phone.own().contains(said))
        assertEquals("and is not kept", 0, phone.app.cacheDir.resolve("camera").listFiles()!!.size)
        phone.back()
        phone.press(one)
        assertEquals(before, phone.photos())
        // Away and back again before the camera is: it is the same place.
        phone.tapWords(phone.window.getString(R.string.take_photo))
        val again = phone.asked()!!
        phone.back()
        phone.press(one)
        phone.cameraTakes(8, again)
        assertEquals(before + 1, phone.photos())
    }

    @Test fun theProviderKnowsOnlyWhatIsOnItsWay() {
        val phone = Phone()
        val places = phone.app.places
        val file = places.toGive("../../surveys/device.json")
        assertEquals("device.json", file.name)
        file.writeText("{}")
        val resolver = phone.window.contentResolver
        val address = FilesProvider.address(places, file)
        assertEquals("{}", resolver.openInputStream(address)!!.readBytes().decodeToString())
        resolver.query(address, null, null, null, null)!!.use {
            it.moveToFirst()
            assertEquals("device.json", it.getString(it.getColumnIndex(OpenableColumns.DISPLAY_NAME)))
            assertEquals(2L, it.getLong(it.getColumnIndex(OpenableColumns.SIZE)))
        }
        for (way in listOf("surveys/device.json", "out/../../files/surveys/device.json", "out/%2e%2e/%2e%2e/files/surveys/device.json", "in/x", "")) {
            assertThrows(way, FileNotFoundException::class.java) {
                FilesProvider().apply { attachInfo(phone.app, android.content.pm.ProviderInfo().apply { authority = FilesProvider.AUTHORITY }) }
                    .openFile(Uri.parse("content://${FilesProvider.AUTHORITY}/$way"), "r")
            }
        }
    }

    private companion object { const val HUNDRED = 100L shl 20 }
}
