package legwork.phone

import android.content.Context
import android.hardware.camera2.CameraCharacteristics
import android.hardware.camera2.CameraManager
import android.view.MotionEvent
import android.view.View
import android.view.accessibility.AccessibilityNodeInfo
import legwork.door.Ability
import legwork.door.Block
import legwork.phone.ui.DrawingView
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertNotEquals
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf
import org.robolectric.shadow.api.Shadow
import org.robolectric.shadows.ShadowCameraCharacteristics

/** The light, a screen that stays awake, the map under fingers and under a screen reader, and notices. */
@RunWith(RobolectricTestRunner::class)
class DeviceTest {

    private fun on(name: String, check: (Phone) -> Unit) {
        val phone = Phone(Ways().home)
        var found = false
        Ways().walk(phone, only = { it == name && !found }) {
            found = true
            check(phone)
        }
        assertTrue(found)
    }

    @Test fun theLightIsTurnedOnAndOffAndTheScreenStaysAwake() {
        on("free-burst") { phone ->
            val cameras = phone.window.getSystemService(Context.CAMERA_SERVICE) as CameraManager
            val lamp = ShadowCameraCharacteristics.newCameraCharacteristics()
            Shadow.extract<ShadowCameraCharacteristics>(lamp).set(CameraCharacteristics.FLASH_INFO_AVAILABLE, true)
            shadowOf(cameras).addCamera("0", lamp)
            assertTrue(Ability.TORCH in phone.screen.abilities && Ability.STAY_AWAKE in phone.screen.abilities)
            assertTrue(phone.window.page.scroll.keepScreenOn)
            val name = phone.window.getString(R.string.light)
            phone.tapWords(name)
            assertTrue(shadowOf(cameras).getTorchMode("0"))
            phone.tapWords(name)
            assertFalse(shadowOf(cameras).getTorchMode("0"))
        }
    }

    @Test fun theMapIsMovedTouchedAndReadOut() = on("map") { phone ->
        val block = phone.screen.blocks.firstNotNullOf { (it as? Block.Figure)?.block }
        val drawing = phone.window.page.find(block.id) as DrawingView
        val parts = drawing.spokenMarks().filter { it.key != null }
        assertTrue(parts.size > 5)
        // Two fingers make it larger, one moves it.
        pinch(drawing)
        assertTrue("larger", drawing.zoomed() > 1.2f)
        val mark = parts.first()
        val before = drawing.placeOf(mark)
        drawing.move(-40f, -40f)
        assertNotEquals(before, drawing.placeOf(mark))
        drawing.zoomBy(0.01f, 0f, 0f)
        assertEquals(1f, drawing.zoomed())
        // A touch in the middle of a part finds it.
        for (part in parts.take(10)) {
            val place = drawing.placeOf(part)
            assertEquals(part.key, drawing.markAt(place.centerX(), place.centerY())?.key)
        }
        // The same by the list.
        phone.tapWords(phone.window.getString(R.string.as_list))
        shot(phone.window.page, "device/map-list")
        // And by a screen reader's double touch on a part of the drawing.
        val at = phone.screen.place
        val nodes = drawing.accessibilityNodeProvider!!
        assertTrue(nodes.performAction(drawing.spokenMarks().indexOf(parts.last()), AccessibilityNodeInfo.ACTION_CLICK, null))
        phone.settle()
        assertNotEquals(at, phone.screen.place)
    }

    private fun pinch(view: View) {
        val middle = view.width / 2f
        fun event(action: Int, apart: Float, time: Long): MotionEvent {
            val fingers = arrayOf(-apart, apart).mapIndexed { id, off ->
                MotionEvent.PointerProperties().apply { this.id = id; toolType = MotionEvent.TOOL_TYPE_FINGER } to
                    MotionEvent.PointerCoords().apply { x = middle + off; y = 200f; pressure = 1f; size = 1f }
            }
            val count = if (action == MotionEvent.ACTION_DOWN || action == MotionEvent.ACTION_UP) 1 else 2
            return MotionEvent.obtain(0, time, action, count, fingers.map { it.first }.toTypedArray(), fingers.map { it.second }.toTypedArray(), 0, 0, 1f, 1f, 0, 0, 0, 0)
        }
        val second = 1 shl MotionEvent.ACTION_POINTER_INDEX_SHIFT
        view.onTouchEvent(event(MotionEvent.ACTION_DOWN, 60f, 0))
        view.onTouchEvent(event(MotionEvent.ACTION_POINTER_DOWN or second, 60f, 10))
        for (step in 1..10) view.onTouchEvent(event(MotionEvent.ACTION_MOVE, 60f + step * 20f, 10L + step * 16))
        view.onTouchEvent(event(MotionEvent.ACTION_POINTER_UP or second, 260f, 300))
        view.onTouchEvent(event(MotionEvent.ACTION_UP, 260f, 310))
    }

    @Test fun aKnownNoticeIsNotReadOutAgain() {
        val phone = Phone()
        phone.press("new")
        phone.press("make")
        val notice = phone.screen.notices.first()
        fun live() = Phone.views(phone.window.page).first { it.contentDescription?.toString()?.startsWith(notice.aloud.label) == true }.accessibilityLiveRegion
        assertEquals(View.ACCESSIBILITY_LIVE_REGION_ASSERTIVE, live())
    }

}
