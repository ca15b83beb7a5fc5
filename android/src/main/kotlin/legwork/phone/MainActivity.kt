package legwork.phone

import android.app.Activity
import android.content.Intent
import android.graphics.Bitmap
import android.os.Bundle
import android.os.Handler
import android.os.Looper
import android.util.LruCache
import android.widget.EditText
import legwork.door.Deed
import legwork.door.FigureBlock
import legwork.door.Need
import legwork.door.PhotoPiece
import legwork.door.PhotoSlotBlock
import legwork.door.PressBlock
import legwork.door.PressWeight
import legwork.door.RowBar
import legwork.door.Screen
import legwork.phone.logic.Awaited
import legwork.phone.logic.Offer
import legwork.phone.logic.Offered
import legwork.phone.logic.Outbox
import legwork.phone.logic.Said
import legwork.phone.logic.Shows
import legwork.phone.logic.Sitting
import legwork.phone.logic.Slices
import legwork.phone.logic.Written
import legwork.phone.ui.Hands
import legwork.phone.ui.Large
import legwork.phone.ui.Light
import legwork.phone.ui.Marks
import legwork.phone.ui.PageView
import legwork.phone.ui.Paper
import legwork.phone.ui.Pictures
import legwork.phone.ui.Tools
import legwork.phone.ui.Type
import legwork.phone.ui.below
import legwork.phone.ui.button
import legwork.phone.ui.framedNote
import legwork.phone.ui.says
import legwork.phone.ui.stack

/** The one window: it draws the screen of the guide, and sends back what was done. */
class MainActivity : Activity(), Hands, Shows {
    private lateinit var sitting: Sitting
    private lateinit var pictures: Pictures
    private lateinit var outbox: Outbox
    private lateinit var others: Others
    private lateinit var tools: Tools
    private lateinit var light: Light
    private val main = Handler(Looper.getMainLooper())
    /** Drawings as they were drawn last: the same one is there at once when its screen is drawn again. */
    private val marks = LruCache<String, Marks>(DRAWINGS)
    lateinit var page: PageView
        private set

    /** What the shell itself has to say about the last deed. */
    private var own: String? = null
    private var begunAgain: Begun? = null
    private var large: Large? = null

    /** How the window stood before it was made anew. */
    private class Begun(state: Bundle) {
        val place = state.getString(PLACE)
        val scroll = state.getInt(SCROLL)
        val focus = state.getString(FOCUS)
        val cursor = state.getIntArray(CURSOR)
        val folds = state.getStringArrayList(FOLDS).orEmpty()
    }

    override fun onCreate(state: Bundle?) {
        super.onCreate(state)
        val app = application as LegworkApp
        val (sitting, pictures, outbox) = app.held(state?.getString(TOKEN))
        this.sitting = sitting
        this.pictures = pictures
        this.outbox = outbox
        others = Others(this, app.places, sitting, outbox, Awaited.read(state?.getStringArrayList(AWAITED)))
        begunAgain = state?.let(::Begun)
        own = state?.getString(OWN)
        tools = Tools(Paper(this), this, Slices({ main.post(it) }))
        light = Light(this) { sayOwn(getString(it)) }
        page = PageView(tools, light, sitting.readOut)
        setContentView(page)
        if (state == null) others.given(intent)
    }

    override fun onStart() {
        super.onStart()
        sitting.shows = this
        outbox.changed = ::sayAgain
        sitting.resume()
        (application as LegworkApp).readLabels()
        light.watch()
    }

    override fun onPause() {
        super.onPause()
        sitting.keepDrafts()
    }

    override fun onStop() {
        light.unwatch()
        if (!isChangingConfigurations) sitting.suspend()
        if (sitting.shows === this) {
            sitting.shows = null
            outbox.changed = {}
        }
        super.onStop()
    }

    override fun onDestroy() {
        large?.dismiss()
        tools.slices.drop()
        super.onDestroy()
    }

    public override fun onNewIntent(intent: Intent) {
        super.onNewIntent(intent)
        others.given(intent)
    }

    override fun onSaveInstanceState(out: Bundle) {
        super.onSaveInstanceState(out)
        out.putString(TOKEN, sitting.token)
        out.putStringArrayList(AWAITED, others.awaited?.written())
        out.putString(PLACE, sitting.screen?.place)
        out.putInt(SCROLL, page.stands)
        val focus = window.decorView.findFocus()
        out.putString(FOCUS, focus?.tag as? String)
        (focus as? EditText)?.let { out.putIntArray(CURSOR, intArrayOf(it.selectionStart, it.selectionEnd)) }
        out.putStringArrayList(FOLDS, page.folds.all())
        out.putString(OWN, own)
    }

    @Deprecated("the platform's own way of being answered")
    public override fun onActivityResult(request: Int, result: Int, data: Intent?) = others.answered(result, data)

    @Deprecated("the platform's own way back")
    override fun onBackPressed() {
        if (sitting.screen?.back == true) act(Deed.Back) else moveTaskToBack(true)
    }

    // What is drawn.

    override fun show(screen: Screen) {
        if (page.parent == null) setContentView(page)
        val begun = begunAgain
        if (begun != null && begun.place == screen.place) page.folds.restore(begun.folds)
        page.show(screen, own, outbox.offers)
        if (begun != null) {
            begunAgain = null
            if (begun.place == screen.place) page.stand(PageView.Stood(begun.scroll, begun.focus, begun.cursor))
        }
        others.shown(screen)
    }

    override fun say(said: Said) = sayOwn(words(said))

    override fun written(written: Written) = others.written(written)

    private fun words(said: Said): String = when (said) {
        is Said.Words -> said.words
        Said.Fault -> getString(R.string.fault)
        Said.Elsewhere -> getString(R.string.brought_elsewhere)
        Said.PhotoElsewhere -> getString(R.string.photo_elsewhere)
        Said.NoPlace -> getString(R.string.file_no_place)
    }

    private fun sayOwn(words: String) {
        own = words
        sayAgain()
    }

    private fun sayAgain() { sitting.screen?.let { page.show(it, own, outbox.offers) } }

    /** Something is done: what the shell said of the last deed goes. */
    private fun moveOn() {
        own = null
        outbox.moveOn()
    }

    override fun notBegun(said: Said) {
        val column = stack(this)
        val side = tools.paper.px(R.dimen.s4)
        column.setPadding(side, side, side, side)
        column.setBackgroundColor(tools.paper.ink(R.color.surface))
        column.below(tools.paper.text(getString(R.string.not_begun), Type.LEAD))
        column.below(framedNote(tools, words(said), problem = true), side)
        val again = button(tools, getString(R.string.again), PressWeight.MAIN) { sitting.begin() }
        again.says(legwork.door.Aloud(legwork.door.AloudRole.PRESS, getString(R.string.again), "", ""))
        column.below(again, side)
        setContentView(column)
    }

    // What the views ask for.

    override fun act(deed: Deed) {
        moveOn()
        sitting.act(deed)
    }

    override fun type(deed: Deed) = sitting.type(deed)

    override fun press(press: PressBlock) {
        moveOn()
        when (val need = press.need) {
            null -> act(Deed.Press(press.key))
            is Need.FileToRead -> others.chooseFile(press.key)
            is Need.FileToWrite -> others.write(press.key, need.name, need.kind.mediaType, Written.Way.PLACE)
            is Need.FileToShare -> others.write(press.key, need.name, need.kind.mediaType, Written.Way.SHARE)
            is Need.Photo -> others.takePhoto(press.key, need.burst)
        }
    }

    override fun takePhoto(slot: PhotoSlotBlock) {
        moveOn()
        others.takePhoto(slot.key, slot.burst)
    }

    override fun choosePhotos(slot: PhotoSlotBlock) {
        moveOn()
        others.choosePhotos(slot.key)
    }

    override fun does(what: Offered, offer: Offer) {
        own = null
        others.does(what, offer)
    }

    override fun figure(name: String, version: String, then: (Marks) -> Unit) {
        marks.get(name + version)?.let { return then(it) }
        sitting.figure(name, version, { Marks(tools.paper, it) }) { made ->
            if (made.figure.version == version) marks.put(name + version, made)
            then(made)
        }
    }

    override fun bar(bar: RowBar, then: (Marks) -> Unit) = sitting.bar(bar, { Marks(tools.paper, it) }, then)

    override fun smallPhoto(photo: String, then: (Bitmap) -> Unit) = pictures.small(photo, then)

    override fun piece(piece: PhotoPiece, then: (Bitmap) -> Unit) = pictures.piece(piece, then)

    override fun openPhoto(photo: String, name: String) = open(Large.photo(tools, name) { pictures.whole(photo, it) })

    override fun openFigure(figure: FigureBlock) = open(Large.figure(tools, figure))

    private fun open(next: Large) {
        large?.dismiss()
        large = next
        next.show()
    }

    private companion object {
        const val TOKEN = "token"
        const val AWAITED = "awaited"
        const val PLACE = "place"
        const val SCROLL = "scroll"
        const val FOCUS = "focus"
        const val CURSOR = "cursor"
        const val FOLDS = "folds"
        const val OWN = "own"
        const val DRAWINGS = 8
    }
}
