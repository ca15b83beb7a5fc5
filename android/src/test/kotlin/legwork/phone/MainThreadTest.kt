package legwork.phone

import android.content.Intent
import android.net.Uri
import java.io.ByteArrayInputStream
import java.lang.reflect.InvocationTargetException
import java.security.Permission
import legwork.door.Block
import legwork.door.Need
import legwork.phone.logic.Sitting
import org.junit.Assert.assertEquals
import org.junit.Assert.assertThrows
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf

/**
 * The thread that draws does no disk work. StrictMode sees none here: the files of this computer's Java do not ask it. So whoever
 * opens, looks for, writes or deletes a file on that thread is found by Java's own guard; and the door says itself where it is called.
 */
@RunWith(RobolectricTestRunner::class)
class MainThreadTest {
    /** Notes what code of the app itself does with files on the thread that draws. */
    @Suppress("DEPRECATION", "removal")
    private class Guard(private val drawing: Thread) : SecurityManager() {
        val found = mutableSetOf<String>()
        private var isLooking = false

        override fun checkPermission(permission: Permission) = Unit
        override fun checkRead(file: String) = note("reads", file)
        override fun checkWrite(file: String) = note("writes", file)
        override fun checkDelete(file: String) = note("deletes", file)

        private fun note(what: String, file: String) {
            if (isLooking || Thread.currentThread() !== drawing) return
            // To look may itself read a class from a file.
            isLooking = true
            try {
                look(what, file)
            } finally {
                isLooking = false
            }
        }

        /** Looks once while nobody asks: a class that is being loaded cannot be needed to look. */
        fun learn() {
            note("reads", "a.class")
            note("reads", "a")
            found += "${MainThreadTest::class.java.name}:0 learn"
            found.clear()
        }

        private fun look(what: String, file: String) {
            // Classes come from files here.
            if (file.endsWith(".class") || file.endsWith(".jar")) return
            // Who asks: what of Java, Kotlin and the platform only reads files for somebody is passed over.
            val asks = Throwable().stackTrace.firstOrNull { frame -> BETWEEN.none { frame.className.startsWith(it) } } ?: return
            if (asks.className.startsWith("legwork.phone.") && asks.fileName !in TESTS) found += "${asks.fileName}:${asks.lineNumber} ${asks.methodName} $what $file"
        }

        private companion object {
            val BETWEEN = listOf("java.", "javax.", "jdk.", "sun.", "kotlin.", "android.graphics.", "android.media.", "android.content.ContentResolver", "android.database.", Guard::class.java.name)
            val TESTS = java.io.File("src/test/kotlin/legwork/phone").list()!!.toSet()
        }
    }

    private fun guarded(work: (Guard) -> Unit) {
        val guard = Guard(Thread.currentThread()).apply { learn() }
        @Suppress("DEPRECATION", "removal") System.setSecurityManager(guard)
        try {
            work(guard)
        } finally {
            @Suppress("DEPRECATION", "removal") System.setSecurityManager(null)
        }
    }

    @Test fun noFileIsTouchedOnTheThreadThatDraws() = guarded { guard ->
        val phone = Phone(Ways().home)
        phone.press(phone.row("Mill House").key!!)
        phone.overview()
        // A photo by the camera, one that is handed over, one that is opened large.
        phone.press("free-burst")
        phone.tapWords(phone.window.getString(R.string.take_photo))
        phone.cameraTakes(1)
        phone.answers(phone.asked()!!, null, android.app.Activity.RESULT_CANCELED)
        shadowOf(phone.window.contentResolver).registerInputStreamSupplier(Uri.parse("content://gallery/1")) { ByteArrayInputStream(ByteArray(100)) }
        phone.given(Intent(Intent.ACTION_SEND).setType("image/jpeg").putExtra(Intent.EXTRA_STREAM, Uri.parse("content://gallery/1")))
        phone.overview("Mill House")
        phone.press("free-burst")
        phone.touch(phone.screen.blocks.firstNotNullOf { (it as? Block.PhotoSlot)?.block }.photos.first().id)
        phone.overview()
        // A file that is shared, and the map.
        phone.press("pack")
        phone.press(phone.screen.blocks.firstNotNullOf { block -> (block as? Block.Press)?.block?.takeIf { it.need is Need.FileToShare } }.key)
        assertEquals(Intent.ACTION_CHOOSER, phone.started()?.action)
        phone.overview()
        phone.press("forecast")
        phone.press("map")
        phone.turn("+w891dp-h411dp-land")
        phone.killed()
        assertEquals(emptySet<String>(), guard.found)
        // Code of the app that did so here would be found.
        phone.app.places.photo()
        assertTrue("${guard.found}", guard.found.any { it.startsWith("Places.kt") })
    }

    @Test fun theDoorIsNotOpenedOnTheThreadThatDraws() {
        val phone = Phone()
        val opened = Sitting::class.java.getDeclaredMethod("opened").apply { isAccessible = true }
        val fault = assertThrows(InvocationTargetException::class.java) { opened.invoke(phone.sitting) }.cause
        assertTrue("$fault", fault is IllegalStateException)
    }
}
