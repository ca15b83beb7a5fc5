package legwork.phone.ui

import android.view.View
import android.widget.ImageView
import android.widget.LinearLayout
import legwork.door.Deed
import legwork.door.LabelBlock
import legwork.door.LabelFigure
import legwork.door.PartBlock
import legwork.door.PhotoPiece
import legwork.door.ReadingBlock
import legwork.phone.R

/** A label's photo beside its text, and a row for each figure in it. */
class LabelView(private val tools: Tools, private val setting: Setting, private val block: LabelBlock) : BlockView() {
    private val rows = mutableMapOf<String, View>()
    private val stack = stack(tools.context)

    override val view: View get() = stack
    override val beside: Boolean get() = block.photo != null

    init {
        val paper = tools.paper
        stack.background = tools.edges.sheet()
        val edge = paper.dp(2f)
        stack.setPadding(edge, edge, edge, edge)
        val pad = paper.px(R.dimen.s3)
        if (block.name != setting.lead) {
            val name = stack.below(paper.text(block.name, Type.SAYS, R.color.quiet, weight = 600))
            name.setPadding(pad, paper.px(R.dimen.s2), pad, paper.px(R.dimen.s2))
            name.says(block.aloud)
        }
        stack.below(shot(pad))
        for (figure in block.figures) {
            stack.ruled(tools)
            stack.below(row(figure).also { rows[figure.id] = it })
        }
        for (doubt in block.doubts) {
            val words = stack.below(paper.text(doubt, Type.ASIDE, R.color.quiet))
            words.setPadding(pad, paper.px(R.dimen.s2), pad, paper.px(R.dimen.s2))
        }
    }

    private fun shot(pad: Int): View {
        val paper = tools.paper
        val shot = Flow(tools.context, 0)
        block.photo?.let { photo ->
            val picture = ImageView(tools.context)
            picture.setBackgroundColor(paper.ink(R.color.sunk))
            val part = block.part
            if (part == null) {
                picture.scaleType = ImageView.ScaleType.CENTER_CROP
                picture.layoutParams = LinearLayout.LayoutParams(paper.dp(112f), paper.dp(84f))
                tools.hands.smallPhoto(photo) { picture.setImageBitmap(it) }
            } else {
                // The part that somebody chose is to be read: as wide as there is room.
                picture.adjustViewBounds = true
                picture.maxHeight = paper.dp(PART)
                picture.minimumHeight = paper.px(R.dimen.touch)
                picture.layoutParams = LinearLayout.LayoutParams(LinearLayout.LayoutParams.MATCH_PARENT, LinearLayout.LayoutParams.WRAP_CONTENT)
                tools.hands.piece(part) { picture.setImageBitmap(it) }
            }
            val frame = LinearLayout(tools.context).apply { addView(picture) }
            picture.touched(tools) { tools.hands.openPhoto(photo, block.name) }
            picture.says(legwork.door.Aloud(legwork.door.AloudRole.PRESS, tools.context.getString(R.string.large), block.name, ""))
            shot.addView(frame)
        }
        if (block.text.isNotEmpty()) {
            val text = paper.text(block.text, Type.TAG)
            text.setPadding(pad, paper.px(R.dimen.s2), pad, paper.px(R.dimen.s2))
            shot.addView(text)
        }
        return shot
    }

    private fun row(figure: LabelFigure): View {
        val paper = tools.paper
        val doubtful = figure.doubt.isNotEmpty()
        val row = stack(tools.context)
        val wash = if (doubtful) R.color.caution_wash else R.color.raised
        row.background = tools.edges.pressed(android.graphics.drawable.ColorDrawable(paper.ink(wash)), android.graphics.drawable.ColorDrawable(paper.ink(R.color.sunk)))
        val pad = paper.px(R.dimen.s3)
        row.setPadding(pad, paper.px(R.dimen.s2), pad, paper.px(R.dimen.s2))
        row.gravity = android.view.Gravity.CENTER_VERTICAL
        val top = line(tools.context)
        val words = Flow(tools.context, paper.px(R.dimen.s3), apart = true)
        words.addView(paper.text(figure.name, Type.SAYS, if (doubtful) R.color.text else R.color.quiet))
        val says = paper.text(figure.says, Type.TAG)
        if (doubtful) says.paintFlags = says.paintFlags or android.graphics.Paint.UNDERLINE_TEXT_FLAG
        words.addView(says)
        top.beside(words, 0, 1f)
        val marked = when {
            doubtful -> R.drawable.sign_doubt to R.color.caution
            figure.taken -> R.drawable.sign_tick to R.color.good
            // What no touch changes is only to be read.
            figure.key == null -> null
            else -> R.drawable.sign_pen to R.color.accent
        }
        marked?.let { (mark, ink) -> top.beside(sign(tools, mark, 20f, ink), paper.px(R.dimen.s2)) }
        top.unsaid()
        row.below(top)
        if (doubtful) row.below(paper.text(figure.doubt, Type.SAYS, R.color.caution)).unsaid()
        figure.piece?.let { row.below(cutOut(it), paper.px(R.dimen.s1)) }
        row.minimumHeight = paper.px(R.dimen.touch)
        figure.key?.let { key -> row.touched(tools) { tools.hands.act(Deed.Press(key)) } }
        row.says(figure.aloud, States(picked = figure.picked.takeIf { it }))
        return row
    }

    /** The piece of the photo in which a figure stands: beside its words, which say the same to who does not see it. */
    private fun cutOut(piece: PhotoPiece): View {
        val picture = ImageView(tools.context)
        picture.adjustViewBounds = true
        picture.maxHeight = tools.paper.dp(PIECE)
        picture.scaleType = ImageView.ScaleType.FIT_START
        picture.unsaid()
        tools.hands.piece(piece) { picture.setImageBitmap(it) }
        return picture
    }

    override fun find(id: String): View? = rows[id]

    private companion object {
        const val PIECE = 72f
        const val PART = 240f
    }
}

/** Something measured: a pen bar at its start, the value in pen. */
class ReadingView(tools: Tools, block: ReadingBlock) : BlockView() {
    override val view: View = stack(tools.context).apply {
        val paper = tools.paper
        val bar = paper.px(R.dimen.stroke_focus)
        val pad = paper.px(R.dimen.s1)
        setPaddingRelative(bar + paper.px(R.dimen.s3), pad, 0, pad)
        background = StartBar(paper.ink(R.color.measured), bar.toFloat(), this)
        val row = Flow(tools.context, paper.px(R.dimen.s3), apart = true)
        row.addView(paper.text(block.name, Type.TEXT))
        row.addView(paper.text(block.says, Type.TEXT, R.color.measured, weight = 700).apply { fontFeatureSettings = "tnum" })
        below(row)
        row.unsaid()
        if (block.remark.isNotEmpty()) below(paper.text(block.remark, Type.ASIDE, R.color.quiet)).unsaid()
        says(block.aloud)
    }
}

/** One part: its picture, tag, name and what is known of it. */
class PartView(tools: Tools, private val block: PartBlock) : BlockView() {
    override val view: View = line(tools.context).apply {
        val paper = tools.paper
        val gap = paper.px(R.dimen.s3)
        setPadding(0, paper.px(R.dimen.s2), 0, paper.px(R.dimen.s2))
        block.photo?.let { photo ->
            val picture = ImageView(tools.context)
            picture.scaleType = ImageView.ScaleType.CENTER_CROP
            picture.background = tools.edges.sheet(R.color.sunk, R.color.edge, R.dimen.stroke_hair, corner = R.dimen.radius_none)
            picture.unsaid()
            tools.hands.smallPhoto(photo) { picture.setImageBitmap(it) }
            addView(picture, LinearLayout.LayoutParams(paper.dp(SIDE), paper.dp(SIDE)))
        }
        val words = stack(tools.context)
        val head = Flow(tools.context, paper.px(R.dimen.s2))
        if (block.tag.isNotEmpty()) head.addView(tag(tools, block.tag))
        head.addView(paper.text(block.name, Type.ROW))
        words.below(head)
        block.lines.forEach { words.below(paper.text(it, Type.SAYS, R.color.quiet)) }
        words.unsaid()
        beside(words, gap, 1f)
        block.key?.let { key ->
            background = tools.edges.bare()
            beside(sign(tools, R.drawable.sign_on, 20f, R.color.quiet), gap)
            touched(tools) { tools.hands.act(Deed.Press(key)) }
        }
        says(block.aloud)
    }

    override fun find(id: String): View? = view.takeIf { id == block.id }

    private companion object { const val SIDE = 56f }
}

/** The mark on a tape, framed as on the cable. */
fun tag(tools: Tools, words: String): View = tools.paper.text(words, Type.TAG).apply {
    background = tools.edges.sheet(width = R.dimen.stroke_hair, corner = R.dimen.radius_tag)
    setPadding(tools.paper.dp(5f), 0, tools.paper.dp(5f), 0)
}
