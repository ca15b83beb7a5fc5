package legwork.phone

import android.graphics.Bitmap
import android.graphics.Color
import android.view.View
import android.widget.ImageView
import legwork.door.Aloud
import legwork.door.AloudRole
import legwork.door.LabelBlock
import legwork.door.LabelFigure
import legwork.door.PhotoPiece
import legwork.phone.logic.Slices
import legwork.phone.ui.Folds
import legwork.phone.ui.Hands
import legwork.phone.ui.LabelView
import legwork.phone.ui.Paper
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
    }

    private fun figure(id: String, piece: PhotoPiece?): LabelFigure {
        val aloud = Aloud(AloudRole.PRESS, id, "1002 MHz", "The two looks differ.")
        return LabelFigure(id, aloud, "take:$id", id, "1002 MHz", taken = false, picked = false, doubt = "The two looks differ.", piece = piece)
    }

    @Test fun theNumberHasItsPieceBelowItAndIsReadOutOnce() {
        val piece = PhotoPiece("a photo", 1200u, 3400u, 1500u, 300u, "in the photo at the left")
        val block = LabelBlock("label", Aloud(AloudRole.GROUP, "Read", "", ""), "Read", null, "5-1002 MHz", listOf(figure("high", piece), figure("low", null)), emptyList())
        val label = LabelView(Tools(Paper(window), hands, Slices({ it.run() })), Setting(false, null, Folds()), block)
        assertEquals(listOf(piece), asked)
        val pictures = Phone.views(label.find("high")!!).filterIsInstance<ImageView>().filter { (it.drawable as? android.graphics.drawable.BitmapDrawable)?.bitmap == cut }
        assertEquals(1, pictures.size)
        assertEquals("the row says it", View.IMPORTANT_FOR_ACCESSIBILITY_NO_HIDE_DESCENDANTS, pictures.single().importantForAccessibility)
        label.view.measure(View.MeasureSpec.makeMeasureSpec(900, View.MeasureSpec.EXACTLY), View.MeasureSpec.UNSPECIFIED)
        val high = pictures.single().measuredHeight
        assertTrue("$high", high in 1..Paper(window).dp(72f))
        assertTrue(Phone.views(label.find("low")!!).filterIsInstance<ImageView>().none { it.adjustViewBounds })
    }
}
