package legwork.phone

import android.content.Context
import android.hardware.camera2.CameraCharacteristics
import android.hardware.camera2.CameraManager
import android.text.InputType
import android.view.MotionEvent
import android.view.View
import android.view.accessibility.AccessibilityNodeInfo
import android.widget.TextView
import legwork.door.Ability
import legwork.door.Block
import legwork.phone.logic.Said
import legwork.phone.logic.leadOf
import legwork.phone.ui.DrawingView
import legwork.phone.ui.Large
import legwork.phone.ui.PhotoView
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
import org.robolectric.shadows.ShadowDialog

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
            // Put out by the system, one touch puts it on again.
            phone.tapWords(name)
            cameras.setTorchMode("0", false)
            phone.settle()
            phone.tapWords(name)
            assertTrue(shadowOf(cameras).getTorchMode("0"))
        }
    }

    @Test fun theMapIsMovedTouchedAndReadOut() = on("map") { phone ->
        shot(phone.window.page, "device/map")
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
        // A finger on one presses it, and the way back leads to the map again.
        val map = phone.screen.place
        val place = drawing.placeOf(parts.first())
        for (action in listOf(MotionEvent.ACTION_DOWN, MotionEvent.ACTION_UP)) drawing.onTouchEvent(MotionEvent.obtain(0, 20, action, place.centerX(), place.centerY(), 0))
        phone.settle()
        assertNotEquals(map, phone.screen.place)
        phone.back()
        assertEquals(map, phone.screen.place)
        // The same by the list.
        phone.tapWords(phone.window.getString(R.string.as_list))
        shot(phone.window.page, "device/map-list")
        // And by a screen reader's double touch on a part of the drawing.
        val at = phone.screen.place
        val again = phone.window.page.find(block.id) as DrawingView
        val nodes = again.accessibilityNodeProvider!!
        assertTrue(nodes.performAction(again.spokenMarks().indexOfLast { it.key != null }, AccessibilityNodeInfo.ACTION_CLICK, null))
        phone.settle()
        assertNotEquals(at, phone.screen.place)
    }

    @Test fun whatIsLookedAtStandsBesideWhatIsSaidWhereThereIsRoom() = on("map") { phone ->
        /** From where to where the drawing reaches across the page, and what is said of it. */
        fun across(way: Drawn): Pair<IntRange, IntRange> {
            phone.turn(way.qualifiers, way.type)
            val block = phone.screen.blocks.firstNotNullOf { (it as? Block.Figure)?.block }
            val lead = leadOf(phone.screen)!!
            val views = listOf(phone.window.page.find(block.id)!!, Phone.views(phone.window.page).first { it is TextView && it.text.toString() == lead })
            val (drawing, words) = views.map { view -> IntArray(2).also(view::getLocationInWindow)[0].let { it..it + view.width } }
            return drawing to words
        }
        val (drawing, words) = across(Drawn.WIDE)
        assertTrue("$words, then $drawing", words.last <= drawing.first)
        // On a phone one is above the other, also where it is held across; from the right the columns change sides.
        for (way in listOf(Drawn.DAY, Drawn.ACROSS)) across(way).let { (drawing, words) -> assertTrue("$way: $drawing over $words", drawing.first < words.last) }
        phone.turn(Drawn.WIDE.qualifiers.replace("en-rUS-ldltr", "ar-rXB-ldrtl"))
        val block = phone.screen.blocks.firstNotNullOf { (it as? Block.Figure)?.block }
        val place = IntArray(2).also(phone.window.page.find(block.id)!!::getLocationInWindow)
        assertTrue("the drawing is at the left", place[0] < phone.window.page.width / 2)
    }

    private fun doubleTouch(view: View, x: Float, y: Float, from: Long) {
        for ((start, end) in listOf(from to from + 20, from + 120 to from + 140)) {
            view.onTouchEvent(MotionEvent.obtain(start, start, MotionEvent.ACTION_DOWN, x, y, 0))
            view.onTouchEvent(MotionEvent.obtain(start, end, MotionEvent.ACTION_UP, x, y, 0))
        }
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
        // Drawn anew beside something else that is said, and after a turn, it is the same notice.
        phone.window.say(Said.Fault)
        phone.says(notice.words)
        assertEquals(View.ACCESSIBILITY_LIVE_REGION_NONE, live())
        phone.turn("+w891dp-h411dp-land")
        assertEquals(notice.id, phone.screen.notices.single().id)
        assertEquals(View.ACCESSIBILITY_LIVE_REGION_NONE, live())
        // The same words said again are a new one.
        phone.press("make")
        assertNotEquals(notice.id, phone.screen.notices.single().id)
        assertEquals(View.ACCESSIBILITY_LIVE_REGION_ASSERTIVE, live())
        // In another process the core counts anew: the same id is another notice.
        phone.killed()
        assertEquals(emptyList<String>(), phone.screen.notices.map { it.id })
        phone.press("make")
        assertEquals(notice.id, phone.screen.notices.single().id)
        assertEquals(View.ACCESSIBILITY_LIVE_REGION_ASSERTIVE, live())
    }

    @Test fun aKeyboardHasTheLettersOfWhatIsTyped() {
        val phone = Phone(Ways().home)
        val screens = setOf("ask-plan", "ask-cable", "ask-legs", "free-meter-at")
        val kinds = mutableMapOf<String, Int>()
        Ways().walk(phone, only = { it in screens }) { name ->
            for (block in phone.screen.blocks) if (block is Block.Number) kinds["$name ${block.block.key}"] = phone.field(block.block.key).inputType
        }
        // Feet and inches, Gb/s: letters (core/guide/src/number.rs reads them).
        for (typed in listOf("ask-plan down", "ask-cable length")) assertEquals(typed, InputType.TYPE_CLASS_TEXT, kinds.getValue(typed) and InputType.TYPE_MASK_CLASS)
        assertEquals(InputType.TYPE_CLASS_NUMBER, kinds.getValue("ask-legs legs"))
        // A level may be below zero.
        val level = InputType.TYPE_CLASS_NUMBER or InputType.TYPE_NUMBER_FLAG_DECIMAL or InputType.TYPE_NUMBER_FLAG_SIGNED
        assertEquals(level, kinds.getValue("free-meter-at dbmv"))
    }

    @Test fun aPhotoOpensLargeAndGrowsUnderTwoFingers() = on("free-burst") { phone ->
        phone.touch(phone.screen.blocks.firstNotNullOf { (it as? Block.PhotoSlot)?.block }.photos.first().id)
        val over = ShadowDialog.getLatestDialog() as Large
        assertTrue(over.isShowing)
        val root = over.window!!.decorView
        assertEquals(emptyList<String>(), layoutFaults(root))
        shot(root, "device/large-photo")
        val photo = Phone.views(root).first { it is PhotoView } as PhotoView
        assertEquals(1f, photo.zoomed())
        pinch(photo)
        assertTrue("larger: ${photo.zoomed()}", photo.zoomed() > 1.2f)
        // The way back is where it always is, and leads to the same screen.
        phone.tapWords(phone.window.getString(R.string.back), root)
        assertFalse(over.isShowing)
        phone.on("free-burst")
    }

    @Test fun aDrawingOpensLargeAndAPartOfItLeadsOn() = on("map") { phone ->
        phone.tapWords(phone.window.getString(R.string.large))
        val over = ShadowDialog.getLatestDialog() as Large
        val root = over.window!!.decorView
        assertEquals(emptyList<String>(), layoutFaults(root))
        shot(root, "device/large-map")
        val drawing = Phone.views(root).first { it is DrawingView } as DrawingView
        val at = phone.screen.place
        // A double touch beside the parts makes all of it fit, and the next one makes it larger again.
        fun touchedTwice(from: Long) {
            val places = (0 until drawing.width step 8).flatMap { x -> (0 until drawing.height step 8).map { y -> x.toFloat() to y.toFloat() } }
            val (x, y) = places.first { (x, y) -> drawing.markAt(x, y) == null }
            doubleTouch(drawing, x, y, from)
        }
        if (drawing.zoomed() > 1f) touchedTwice(1_000)
        assertEquals(1f, drawing.zoomed())
        touchedTwice(3_000)
        assertTrue("larger: ${drawing.zoomed()}", drawing.zoomed() > 1.2f)
        touchedTwice(5_000)
        assertEquals(1f, drawing.zoomed())
        assertEquals(at, phone.screen.place)
        drawing.press(drawing.spokenMarks().first { it.key != null })
        phone.settle()
        assertFalse(over.isShowing)
        assertNotEquals(at, phone.screen.place)
    }
}
