package legwork.phone.ui

import android.graphics.Bitmap
import legwork.door.Deed
import legwork.door.FigureBlock
import legwork.door.PhotoPiece
import legwork.door.PhotoSlotBlock
import legwork.door.PressBlock
import legwork.door.RowBar
import legwork.phone.logic.Offer
import legwork.phone.logic.Offered
import legwork.phone.logic.Slices

/** What a view can ask for. Nothing here knows what a block is about. */
interface Hands {
    /** Does something; all that was typed before is done first. */
    fun act(deed: Deed)

    /** Keeps what is being typed. */
    fun type(deed: Deed)

    /** A press: what it needs is fetched first. */
    fun press(press: PressBlock)

    fun takePhoto(slot: PhotoSlotBlock)

    fun choosePhotos(slot: PhotoSlotBlock)

    /** Does what was offered with a file that was made. */
    fun does(what: Offered, offer: Offer)

    /** The marks of a drawing, now or soon. */
    fun figure(name: String, version: String, then: (Marks) -> Unit)

    /** The marks of the bar of a row, now or soon. */
    fun bar(bar: RowBar, then: (Marks) -> Unit)

    /** A small picture of a photo, now or soon. */
    fun smallPhoto(photo: String, then: (Bitmap) -> Unit)

    /** A piece of a photo, now or soon. */
    fun piece(piece: PhotoPiece, then: (Bitmap) -> Unit)

    /** Shows a photo large. */
    fun openPhoto(photo: String, name: String)

    /** Shows a drawing large. */
    fun openFigure(figure: FigureBlock)
}

/** What every view is made with. */
class Tools(val paper: Paper, val hands: Hands, val slices: Slices) {
    val context get() = paper.plain
    val edges = Edges(paper)
}
