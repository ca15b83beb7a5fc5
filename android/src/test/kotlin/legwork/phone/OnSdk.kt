package legwork.phone

import android.content.Intent
import android.net.Uri
import android.os.Build
import android.provider.MediaStore
import java.io.File
import org.junit.Assert.assertEquals
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config

/** A short way through the app on another release of Android. */
abstract class OnSdk {
    @Test fun aSurveyIsBegunAndWhatIsThereIsDrawn() {
        val phone = Phone(Ways().home)
        phone.press(phone.row("Mill House").key!!)
        phone.overview()
        phone.press("free-burst")
        assertEquals(emptyList<String>(), layoutFaults(phone.window.page))
        // The photo picker is there from Android 13 on; before it, whatever can choose a picture.
        phone.tapWords(phone.window.getString(R.string.choose_photo))
        val picks = if (Build.VERSION.SDK_INT >= 33) MediaStore.ACTION_PICK_IMAGES else Intent.ACTION_GET_CONTENT
        assertEquals(picks, phone.asked()!!.action)
        whole(phone, "sdk${Build.VERSION.SDK_INT}")
        phone.overview()
        phone.press("forecast")
        phone.on("forecast")
        phone.back()
        // A file is made, and kept in a document.
        phone.overview()
        phone.press("pack")
        phone.press(phone.shares().key)
        assertEquals(Intent.ACTION_CHOOSER, phone.started()?.action)
        phone.tapWords(phone.window.getString(R.string.file_keep))
        val kept = File.createTempFile("kept", ".lwk")
        shadowOf(phone.window.contentResolver).registerOutputStreamSupplier(Uri.parse("content://drive/kept")) { kept.outputStream() }
        phone.answers(phone.asked()!!, Intent().setData(Uri.parse("content://drive/kept")))
        assertEquals("PK", kept.readBytes().take(2).toByteArray().decodeToString())
    }
}

// Not named *Test. Each runs in a process of its own: a release's framework loads the bindings anew, and what the core calls back
// is the one that was loaded last.
@RunWith(RobolectricTestRunner::class) @Config(sdk = [26]) class OldestSdk : OnSdk()

// Run by the profile `sdks`, which brings its framework.
@RunWith(RobolectricTestRunner::class) @Config(sdk = [36]) class NewestSdk : OnSdk()
