package legwork.phone

import org.junit.Assert.assertEquals
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.annotation.Config

/** A short way through the app on another release of Android. */
abstract class OnSdk {
    @Test fun aSurveyIsBegunAndWhatIsThereIsDrawn() {
        val phone = Phone(Ways().home)
        phone.press(phone.row("Mill House").key!!)
        phone.overview()
        phone.press("free-burst")
        assertEquals(emptyList<String>(), layoutFaults(phone.window.page))
        whole(phone, "sdk${android.os.Build.VERSION.SDK_INT}")
        phone.overview()
        phone.press("forecast")
        phone.on("forecast")
        phone.back()
    }
}

// Not named *Test: run by the profile `sdks`, which brings their frameworks.
@RunWith(RobolectricTestRunner::class) @Config(sdk = [26]) class OldestSdk : OnSdk()

@RunWith(RobolectricTestRunner::class) @Config(sdk = [36]) class NewestSdk : OnSdk()
