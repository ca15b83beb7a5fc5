package legwork.phone

import android.app.Activity
import android.content.ContentProvider
import android.content.ContentValues
import android.content.Intent
import android.database.Cursor
import android.database.MatrixCursor
import android.net.Uri
import android.os.Bundle
import android.os.ParcelFileDescriptor
import android.provider.OpenableColumns
import java.io.File
import java.io.OutputStream
import legwork.door.Block
import legwork.door.Deed
import legwork.door.Need
import legwork.door.NoticeRole
import legwork.door.PressBlock
import org.junit.After
import org.junit.Assert.assertArrayEquals
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertNotNull
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Before
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.Robolectric
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf

/** On the page where a survey is packed. */
fun packing(): Phone {
    val phone = Phone(Ways().home)
    phone.press(phone.row("Mill House").key!!)
    phone.overview()
    phone.press("pack")
    return phone
}

/** The press that writes the file. */
fun Phone.shares(): PressBlock = screen.blocks.firstNotNullOf { block -> (block as? Block.Press)?.block?.takeIf { it.need is Need.FileToShare } }

/** Files that are kept in documents of other programs: also where the app is ended while it writes. */
@RunWith(RobolectricTestRunner::class)
class DocumentsTest {
    /** A drive of another program: its documents are files, and it tells and lets go of them as the system's own does. */
    class Drive : ContentProvider() {
        val folder: File = File.createTempFile("drive", "").apply { delete(); mkdirs() }
        var breaksOff = false
        /** The process ends once a document was opened, and so emptied. */
        var isEnd = false

        fun at(name: String) = File(folder, name)
        fun address(name: String): Uri = Uri.parse("content://drive/$name")

        override fun onCreate() = true
        override fun getType(uri: Uri) = "application/octet-stream"
        override fun query(uri: Uri, wanted: Array<String>?, selection: String?, arguments: Array<String>?, order: String?): Cursor {
            val file = at(uri.lastPathSegment!!)
            return MatrixCursor(wanted!!).apply { addRow(wanted.map { if (it == OpenableColumns.SIZE) file.length() else "${file.name} on the drive" }) }
        }
        override fun openFile(uri: Uri, mode: String): ParcelFileDescriptor {
            // Where it breaks off, what is opened takes nothing.
            val way = if (breaksOff) ParcelFileDescriptor.MODE_READ_ONLY else ParcelFileDescriptor.parseMode(mode)
            val opened = ParcelFileDescriptor.open(at(uri.lastPathSegment!!), way)
            if (isEnd) opened.close().also { throw End() }
            return opened
        }
        override fun call(method: String, argument: String?, extras: Bundle?): Bundle {
            assertEquals("android:deleteDocument", method)
            @Suppress("DEPRECATION") assertTrue(at((extras!!.getParcelable("uri") as Uri?)!!.lastPathSegment!!).delete())
            return Bundle()
        }
        override fun insert(uri: Uri, values: ContentValues?): Uri? = null
        override fun update(uri: Uri, values: ContentValues?, selection: String?, arguments: Array<String>?) = 0
        override fun delete(uri: Uri, selection: String?, arguments: Array<String>?) = 0
    }

    private val drive = Robolectric.setupContentProvider(Drive::class.java, "drive")

    private fun Phone.word(id: Int, vararg with: String) = window.getString(id, *with)

    private fun Phone.saysOwn(id: Int, vararg with: String) = assertTrue("${word(id, *with)} is not in ${own()}", own().contains(word(id, *with)))

    /** The user writes the file, has it sent to nobody, and is asked where it is to be kept. */
    private fun Phone.made(): Intent {
        press(shares().key)
        assertEquals(Intent.ACTION_CHOOSER, started()?.action)
        saysOwn(R.string.file_made, FILE)
        shot(window.page, "device/file-made")
        tapWords(word(R.string.file_keep))
        return asked()!!
    }

    /** The system makes the document, and says where it is. */
    private fun Phone.keptAs(name: String, asked: Intent = made()) {
        assertEquals(Intent.ACTION_CREATE_DOCUMENT, asked.action)
        assertEquals(FILE, asked.getStringExtra(Intent.EXTRA_TITLE))
        if (!drive.at(name).exists()) drive.at(name).createNewFile()
        answers(asked, Intent().setData(drive.address(name)))
    }

    /** That file opens: the core looks into it, and knows the survey. */
    private fun Phone.opens(file: File) {
        shadowOf(window.contentResolver).registerInputStreamSupplier(Uri.parse("content://mail/kept")) { file.inputStream() }
        given(Intent(Intent.ACTION_VIEW).setData(Uri.parse("content://mail/kept")))
        assertEquals(emptyList<String>(), screen.notices.filter { it.role == NoticeRole.PROBLEM }.map { it.words })
        says("Mill House")
    }

    private fun Phone.leaving() = app.places.leaving.listFiles().orEmpty().size

    /** The process ends in the middle: nothing of the app comes after that. */
    class End : Error("the process ends here")

    private val before = Thread.getDefaultUncaughtExceptionHandler()

    /** A process that ends says nothing; all else does. */
    @Before fun endInSilence() = Thread.setDefaultUncaughtExceptionHandler { thread, fault -> if (fault !is End) before?.uncaughtException(thread, fault) ?: throw fault }

    @After fun sayAgain() = Thread.setDefaultUncaughtExceptionHandler(before)

    /** Writes some of what comes to a document; then the process ends. */
    private fun Phone.endsWhileItWrites(name: String) {
        var isOver = false
        shadowOf(window.contentResolver).registerOutputStreamSupplier(drive.address(name)) {
            val to = drive.at(name).outputStream()
            if (isOver) to else object : OutputStream() {
                override fun write(byte: Int) = to.write(byte)
                override fun write(bytes: ByteArray, from: Int, most: Int) {
                    to.write(bytes, from, minOf(most, SOME))
                    to.flush()
                    isOver = true
                    throw End()
                }
            }
        }
    }

    @Test fun aFileIsKeptWhereTheUserSaid() {
        val phone = packing()
        phone.keptAs("mine")
        phone.saysOwn(R.string.file_kept, "mine on the drive")
        assertEquals("nothing is left of it here", 0, phone.leaving())
        phone.opens(drive.at("mine"))
        // What was written says nothing at the next start.
        phone.killed()
        assertFalse(phone.own(), phone.own().contains("on the drive"))
        // Nor does a place that was never named.
        phone.overview("Mill House")
        phone.press("pack")
        phone.made()
        phone.killed()
        assertFalse(phone.own(), phone.own().contains(FILE))
    }

    @Test fun whereTheAppIsEndedWhileItWritesThatIsSaidAndMended() {
        val phone = packing()
        phone.endsWhileItWrites("half")
        phone.keptAs("half")
        assertEquals(SOME.toLong(), drive.at("half").length())
        phone.killed()
        phone.saysOwn(R.string.file_broken, "half on the drive")
        // It stays said on every screen, and after a turn and another death, until something is done about it.
        phone.overview()
        phone.turn("+w891dp-h411dp-land")
        phone.killed()
        phone.saysOwn(R.string.file_broken, "half on the drive")
        assertEquals(1, phone.leaving())
        // It can be sent instead; what is sent is whole, and stays when the rest is over.
        phone.tapWords(phone.word(R.string.file_send))
        @Suppress("DEPRECATION") val send = phone.started()!!.getParcelableExtra<Intent>(Intent.EXTRA_INTENT)!!
        @Suppress("DEPRECATION") val sent = send.getParcelableExtra<Uri>(Intent.EXTRA_STREAM)!!
        phone.saysOwn(R.string.file_broken, "half on the drive")
        // And be written again.
        phone.tapWords(phone.word(R.string.file_again))
        phone.saysOwn(R.string.file_kept, "half on the drive")
        assertEquals(0, phone.leaving())
        assertArrayEquals(drive.at("half").readBytes(), phone.window.contentResolver.openInputStream(sent)!!.use { it.readBytes() })
        phone.killed()
        assertFalse(phone.own(), phone.own().contains("on the drive"))
        phone.opens(drive.at("half"))
    }

    @Test fun aDocumentThatWasOnlyEmptiedIsFoundToo() {
        val phone = packing()
        drive.at("theirs").writeText("theirs")
        drive.isEnd = true
        phone.keptAs("theirs")
        assertEquals("", drive.at("theirs").readText())
        drive.isEnd = false
        phone.killed()
        phone.tapWords(phone.word(R.string.file_again))
        phone.opens(drive.at("theirs"))
    }

    @Test fun whoDoesWithoutItFindsNothingHalfThere() {
        val phone = packing()
        phone.endsWhileItWrites("half")
        phone.keptAs("half")
        phone.killed()
        phone.tapWords(phone.word(R.string.file_without))
        assertFalse(drive.at("half").exists())
        assertEquals(0, phone.leaving())
        assertFalse(phone.own(), phone.own().contains("on the drive"))
    }

    @Test fun whatIsNotHereAnyMoreIsNotOffered() {
        val phone = packing()
        phone.endsWhileItWrites("half")
        phone.keptAs("half")
        phone.app.places.leaving.walk().filter { it.name == FILE }.forEach { it.delete() }
        phone.killed()
        phone.saysOwn(R.string.file_broken_gone, "half on the drive")
        assertFalse(phone.own().contains(phone.word(R.string.file_again)))
        phone.tapWords(phone.word(R.string.file_without))
        assertFalse(phone.own(), phone.own().contains("on the drive"))
    }

    @Test fun bothThatWereLeftAreSaidAndMended() {
        val phone = packing()
        for (name in listOf("one", "two")) {
            phone.endsWhileItWrites(name)
            phone.keptAs(name)
            phone.press("overview")
            phone.press("pack")
        }
        phone.killed()
        for (name in listOf("one", "two")) phone.saysOwn(R.string.file_broken, "$name on the drive")
        repeat(2) { phone.tapWords(phone.word(R.string.file_again)) }
        for (name in listOf("one", "two")) phone.opens(drive.at(name))
    }

    @Test fun thePlaceIsLookedForOnceTheFileIsWhole() {
        val phone = packing()
        // Where a file of that name is there already, the core asks for another place: that is the user's own at once.
        phone.act(Deed.File(phone.shares().key, File.createTempFile("there", ".lwk").path))
        val press = phone.screen.blocks.firstNotNullOf { block -> (block as? Block.Press)?.block?.takeIf { it.need is Need.FileToWrite } }
        phone.window.press(press)
        phone.settle()
        assertNull("nothing is shared", phone.started()?.takeIf { it.action == Intent.ACTION_CHOOSER })
        assertNotNull(phone.asked())
        // The user goes elsewhere, reads another file, and the app is ended before the place is named.
        phone.overview()
        phone.press("take-in")
        phone.killed()
        drive.at("late").createNewFile()
        @Suppress("DEPRECATION") phone.window.onActivityResult(7, Activity.RESULT_OK, Intent().setData(drive.address("late")))
        phone.settle()
        phone.saysOwn(R.string.file_kept, "late on the drive")
        phone.opens(drive.at("late"))
    }

    @Test fun whoNamesNoPlaceStillHasTheFile() {
        val phone = packing()
        phone.answers(phone.made(), null, Activity.RESULT_CANCELED)
        phone.saysOwn(R.string.file_made, FILE)
        phone.tapWords(phone.word(R.string.file_send))
        assertEquals(Intent.ACTION_CHOOSER, phone.started()?.action)
        // It is said until something else is done.
        phone.overview()
        assertFalse(phone.own().contains(FILE))
    }

    @Test fun noEmptyFileStaysWhereNothingWasWritten() {
        val phone = packing()
        drive.breaksOff = true
        phone.keptAs("full")
        phone.saysOwn(R.string.file_unwritten, FILE)
        assertFalse("what was begun goes", drive.at("full").exists())
        drive.breaksOff = false
        // Another place.
        phone.tapWords(phone.word(R.string.file_keep))
        phone.keptAs("written", phone.asked()!!)
        phone.opens(drive.at("written"))
        // What the user chose instead of a new one stays, if it was never opened.
        drive.at("theirs").writeText("theirs")
        shadowOf(phone.window.contentResolver).registerOutputStreamSupplier(drive.address("theirs")) { throw IllegalStateException("full") }
        phone.overview("Mill House")
        phone.press("pack")
        phone.keptAs("theirs")
        phone.saysOwn(R.string.file_unwritten, FILE)
        assertEquals("theirs", drive.at("theirs").readText())
        assertEquals(0, phone.leaving())
    }

    @Test fun whatIsSaidOfAFileIsWholeInEveryWayOfDrawing() {
        val phone = packing()
        phone.endsWhileItWrites("half")
        phone.keptAs("half")
        phone.killed()
        for (way in Drawn.entries) {
            phone.turn(way.qualifiers, way.type)
            phone.saysOwn(R.string.file_broken, "half on the drive")
            whole(phone, "${way.folder}/file-broken")
            val page = phone.window.page
            val faults = layoutFaults(page) + nodeFaults(phone) + contrastFaults(page.scroll.getChildAt(0))
            assertEquals("$way", emptyList<String>(), faults)
        }
    }

    private companion object {
        const val FILE = "Mill House.lwk"
        const val SOME = 5000
    }
}
