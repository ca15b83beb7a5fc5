package legwork.phone.ui

import android.graphics.drawable.LayerDrawable
import android.view.Gravity
import android.view.View
import android.widget.FrameLayout
import android.widget.FrameLayout.LayoutParams
import android.widget.ImageView
import android.widget.LinearLayout
import legwork.door.AloudRole
import legwork.door.Block
import legwork.door.Deed
import legwork.door.PhotoShown
import legwork.door.PhotoSlotBlock
import legwork.phone.R

/** A place for photos: those that are there, and a dashed place for new ones. */
class PhotosView(private val tools: Tools, private var block: PhotoSlotBlock) : BlockView() {
    private val stack = stack(tools.context)
    private val grid = Columns(tools.context, tools.paper.px(R.dimen.s2), tools.paper.dp(LEAST))
    private val tiles = Children(tools, grid) { null }

    override val view: View get() = stack
    override val beside: Boolean get() = block.photos.isNotEmpty()

    init {
        stack.below(tools.paper.text(block.name, Type.SAYS, R.color.quiet, weight = 600)).says(block.aloud)
        val gap = tools.paper.px(R.dimen.s2)
        stack.below(grid, gap)
        val add = Columns(tools.context, gap, tools.paper.dp(ADD))
        add.addView(place(R.drawable.sign_camera, R.string.take_photo) { tools.hands.takePhoto(block) })
        add.addView(place(R.drawable.sign_pictures, R.string.choose_photo) { tools.hands.choosePhotos(block) })
        stack.below(add, gap)
        draw()
    }

    /** Tiles that are the same stay: with two thousand photos, nothing else is drawn anew. */
    private fun draw() {
        tiles.show(block.photos.map { photo -> Child(photo.id, photo) { tile(photo) } })
        grid.visibility = if (block.photos.isEmpty()) View.GONE else View.VISIBLE
    }

    private fun tile(photo: PhotoShown): View {
        val paper = tools.paper
        val picked = photo.picked == true
        val tile = stack(tools.context)
        tile.background = tools.edges.pressed(
            if (picked) tools.edges.sheet(R.color.accent_wash, R.color.accent, R.dimen.stroke_focus, corner = R.dimen.radius_none)
            else tools.edges.sheet(R.color.raised, R.color.edge, R.dimen.stroke_hair, corner = R.dimen.radius_none),
        )
        val edge = paper.px(R.dimen.stroke_focus)
        tile.setPadding(edge, edge, edge, edge)
        val frame = FrameLayout(tools.context)
        val picture = Square(tools)
        picture.scaleType = ImageView.ScaleType.CENTER_CROP
        tools.hands.smallPhoto(photo.photo) { picture.setImageBitmap(it) }
        frame.addView(picture, LayoutParams(LayoutParams.MATCH_PARENT, LayoutParams.WRAP_CONTENT))
        if (photo.picked != null) frame.addView(tick(picked), LayoutParams(paper.dp(28f), paper.dp(28f), Gravity.TOP or Gravity.END).apply { setMargins(paper.dp(6f), paper.dp(6f), paper.dp(6f), paper.dp(6f)) })
        tile.addView(frame)
        val name = tile.below(paper.text(photo.name, Type.ASIDE, if (picked) R.color.text else R.color.quiet))
        val pad = paper.px(R.dimen.s1)
        name.setPadding(pad, pad, pad, pad)
        name.unsaid()
        tile.touched(tools) {
            val key = photo.key
            if (key == null) tools.hands.openPhoto(photo.photo, photo.name) else tools.hands.act(Deed.Press(key))
        }
        tile.setOnLongClickListener { tools.hands.openPhoto(photo.photo, photo.name); true }
        // A photo that only opens large is a press to the platform; a picture to it would answer to no touch.
        val aloud = if (photo.key == null) photo.aloud.copy(role = AloudRole.LEADS_ON) else photo.aloud
        tile.says(aloud, States(picked = photo.picked))
        if (photo.key != null) withLarge(tile, photo)
        return tile
    }

    /** Where a touch picks or leads on, the photo is opened large by a press of its own, and by a long touch. */
    private fun withLarge(tile: LinearLayout, photo: PhotoShown) {
        val large = tools.paper.text(tools.context.getString(R.string.large), Type.ASIDE, R.color.accent)
        large.paintFlags = large.paintFlags or android.graphics.Paint.UNDERLINE_TEXT_FLAG
        val pad = tools.paper.px(R.dimen.s1)
        large.setPadding(pad, 0, pad, 0)
        large.background = tools.edges.bare()
        large.touched(tools) { tools.hands.openPhoto(photo.photo, photo.name) }
        large.says(legwork.door.Aloud(legwork.door.AloudRole.PRESS, "${large.text}: ${photo.name}", "", ""))
        tile.below(large)
    }

    private fun tick(picked: Boolean): View = ImageView(tools.context).apply {
        background = tools.edges.sheet(if (picked) R.color.accent else R.color.raised, if (picked) R.color.accent else R.color.edge, corner = R.dimen.radius_none)
        if (picked) {
            setImageResource(R.drawable.sign_tick)
            imageTintList = tools.edges.tint(R.color.on_accent)
        }
        val pad = tools.paper.dp(4f)
        setPadding(pad, pad, pad, pad)
        unsaid()
    }

    private fun place(drawable: Int, name: Int, does: () -> Unit): View {
        val paper = tools.paper
        val place = stack(tools.context)
        place.gravity = Gravity.CENTER
        place.background = tools.edges.pressed(
            LayerDrawable(arrayOf(tools.edges.sheet(R.color.surface, R.color.edge, run = Edge.DASHED, corner = R.dimen.radius_none))),
        )
        val pad = paper.px(R.dimen.s3)
        place.setPadding(pad, pad, pad, pad)
        place.addView(sign(tools, drawable, 30f, R.color.accent))
        val words = paper.text(tools.context.getString(name), Type.SAYS, R.color.accent, weight = 600)
        words.gravity = Gravity.CENTER
        words.textAlignment = View.TEXT_ALIGNMENT_CENTER
        words.unsaid()
        place.below(words, paper.px(R.dimen.s1))
        place.touched(tools, R.dimen.answer, does)
        place.says(legwork.door.Aloud(legwork.door.AloudRole.PRESS, tools.context.getString(name), block.name, ""))
        return place
    }

    override fun change(block: Block): Boolean {
        val next = (block as? Block.PhotoSlot ?: return false).block
        if (next.copy(photos = emptyList()) != this.block.copy(photos = emptyList())) return false
        this.block = next
        draw()
        return true
    }

    override fun resume() = tiles.resume()

    override fun find(id: String): View? = tiles.find(id)

    private companion object {
        const val LEAST = 100f
        const val ADD = 140f
    }
}

/** As high as it is wide. */
private class Square(tools: Tools) : ImageView(tools.context) {
    init {
        setBackgroundColor(tools.paper.ink(R.color.sunk))
        unsaid()
    }

    override fun onMeasure(widthSpec: Int, heightSpec: Int) {
        val side = MeasureSpec.getSize(widthSpec)
        setMeasuredDimension(side, side)
    }
}
