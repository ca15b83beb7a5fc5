package legwork.phone

import android.graphics.Bitmap
import android.graphics.Color
import android.view.MotionEvent
import android.view.View
import android.widget.ImageView
import legwork.door.Aloud
import legwork.door.AloudRole
import legwork.door.Deed
import legwork.door.LabelBlock
import legwork.door.LabelFigure
import legwork.door.PhotoPartBlock
import legwork.door.PhotoPiece
import legwork.door.TouchedSpot
import legwork.phone.logic.Slices
import legwork.phone.ui.Folds
import legwork.phone.ui.Hands
import legwork.phone.ui.LabelView
import legwork.phone.ui.Paper
import legwork.phone.ui.PhotoPartView
import legwork.phone.ui.Setting
import legwork.phone.ui.Tools
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner

/** The piece of a photo beside the number that was read in it. The photo is invented. */
@RunWith(RobolectricTestRunner::class)
class PieceTest {
    private val window = Phone().window
    private val asked = mutableListOf<PhotoPiece>()
    private val cut = Bitmap.createBitmap(480, 96, Bitmap.Config.ARGB_8888).apply { eraseColor(Color.DKGRAY) }
    private val hands = object : Hands by window {
        override fun piece(piece: PhotoPiece, then: (Bitmap) -> Unit) {
            asked += piece
            then(cut)
        }
        override fun act(deed: Deed) { done += deed }
    }

    private val done = mutableListOf<Deed>()

    private fun figure(id: String, piece: PhotoPiece?): LabelFigure {
        val aloud = Aloud(AloudRole.PRESS, id, "1002 MHz", "The two looks differ.")
        return LabelFigure(id, aloud, "take:$id", id, "1002 MHz", taken = false, picked = false, doubt = "The two looks differ.", piece = piece)
    }

    @Test fun theNumberHasItsPieceBelowItAndIsReadOutOnce() {
        val piece = PhotoPiece("a photo", 1200u, 3400u, 1500u, 300u, "in the photo at the left")
        val block = LabelBlock("label", Aloud(AloudRole.GROUP, "Read", "", ""), "Read", null, null, "5-1002 MHz", listOf(figure("high", piece), figure("low", null)), emptyList())
        val label = LabelView(Tools(Paper(window), hands, Slices({ it.run() })), Setting(false, null, Folds()), block)
        assertEquals(listOf(piece), asked)
        val pictures = Phone.views(label.find("high")!!).filterIsInstance<ImageView>().filter { (it.drawable as? android.graphics.drawable.BitmapDrawable)?.bitmap == cut }
        assertEquals(1, pictures.size)
        assertEquals("the row says it", View.IMPORTANT_FOR_ACCESSIBILITY_NO_HIDE_DESCENDANTS, pictures.single().importantForAccessibility)
        label.view.measure(View.MeasureSpec.makeMeasureSpec(900, View.MeasureSpec.EXACTLY), View.MeasureSpec.UNSPECIFIED)
        val high = pictures.single().measuredHeight
        assertTrue("$high", high in 1..Paper(window).dp(72f))
        val beside = Phone.views(label.find("low")!!).filterIsInstance<ImageView>()
        assertTrue("nothing was read there", beside.none { (it.drawable as? android.graphics.drawable.BitmapDrawable)?.bitmap == cut })
    }

    /** A finger at a place of a view; how far it moves before it is lifted. */
    private fun finger(view: View, x: Float, y: Float, moves: Float = 0f) {
        for ((what, at) in listOf(MotionEvent.ACTION_DOWN to y, MotionEvent.ACTION_UP to y + moves)) {
            val event = MotionEvent.obtain(0, 0, what, x, at, 0)
            view.dispatchTouchEvent(event)
            event.recycle()
        }
    }

    @Test fun aTouchOnThePhotoSaysWhereItIsAndOneThatMovesOnSaysNothing() {
        val whole = PhotoPiece("a photo", 0u, 0u, 10000u, 10000u, "the whole photo")
        val block = PhotoPartBlock("photo-part:corner", Aloud(AloudRole.DRAWING, "Touch one corner.", "", ""), "corner", "Touch one corner.", whole, TouchedSpot(100u, 100u), whole.copy(width = 500u))
        val part = PhotoPartView(Tools(Paper(window), hands, Slices({ it.run() })), block)
        assertEquals(listOf(whole), asked)
        val photo = part.find(block.id)
        part.view.measure(View.MeasureSpec.makeMeasureSpec(960, View.MeasureSpec.EXACTLY), View.MeasureSpec.UNSPECIFIED)
        part.view.layout(0, 0, part.view.measuredWidth, part.view.measuredHeight)
        assertEquals("as high as the photo is", 960 * 96 / 480, photo.height)
        finger(photo, 96f, 48f)
        finger(photo, 960f, 192f)
        finger(photo, 480f, 10f, moves = 150f)
        assertEquals(listOf(Deed.Touch("corner", 1000u, 2500u), Deed.Touch("corner", 10000u, 10000u)), done)
        assertEquals("Touch one corner.", photo.contentDescription)
        shot(part.view, "photo-part")
    }
}
