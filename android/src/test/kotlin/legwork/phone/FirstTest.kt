package legwork.phone

import org.junit.Assert.assertEquals
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner

@RunWith(RobolectricTestRunner::class)
class FirstTest {
    @Test fun theFirstScreenIsDrawnFromTheCore() {
        val phone = Phone(Ways().home)
        phone.on("surveys")
        shot(phone.window.page, "first/surveys")
        phone.press(phone.row("Mill House").key!!)
        phone.on("overview")
        shot(phone.window.page, "first/overview")
        whole(phone, "first/overview-whole")
        assertEquals(emptyList<String>(), layoutFaults(phone.window.page))
    }
}
