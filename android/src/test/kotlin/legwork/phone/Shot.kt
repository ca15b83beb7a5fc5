package legwork.phone

import android.graphics.Bitmap
import android.graphics.Canvas
import android.view.View
import android.view.ViewGroup
import java.io.File
import java.util.concurrent.TimeUnit
import org.robolectric.shadows.ShadowLooper

private val folder = File(System.getProperty("pictures.dir")!!)

/** Draws what is in the window as a phone would show it, smaller by `scale`, to `pictures/NAME.png`. */
fun shot(view: View, name: String, scale: Float = 1f): Bitmap {
    still(view)
    val bitmap = Bitmap.createBitmap((view.width * scale).toInt(), (view.height * scale).toInt(), Bitmap.Config.ARGB_8888)
    val canvas = Canvas(bitmap)
    canvas.scale(scale, scale)
    view.draw(canvas)
    return save(bitmap, name)
}

/** The whole screen, however long: all of what scrolls, and the dock below it. */
fun whole(phone: Phone, name: String?, scale: Float = 0.5f): Bitmap {
    val page = phone.window.page
    still(page)
    val content = page.scroll.getChildAt(0)
    val dock = page.dock.takeUnless { it.parent === content } ?: View(page.context)
    val wide = maxOf(content.width, dock.width)
    val bitmap = Bitmap.createBitmap((wide * scale).toInt(), ((content.height + dock.height) * scale).toInt().coerceAtLeast(1), Bitmap.Config.ARGB_8888)
    val canvas = Canvas(bitmap)
    canvas.drawColor(page.context.getColor(R.color.surface))
    canvas.scale(scale, scale)
    content.draw(canvas)
    canvas.translate(0f, content.height.toFloat())
    dock.draw(canvas)
    return if (name == null) bitmap else save(bitmap, name)
}

/** Windows as small pictures on one sheet, in the order in which they come. */
class ContactSheet(private val columns: Int, private val wide: Int, private val high: Int, private val scale: Float, count: Int) {
    private val gap = 8
    private val sheet = Bitmap.createBitmap(
        columns * ((wide * scale).toInt() + gap), ((count + columns - 1) / columns) * ((high * scale).toInt() + gap), Bitmap.Config.ARGB_8888,
    ).apply { eraseColor(android.graphics.Color.rgb(0x80, 0x84, 0x80)) }
    private var place = 0

    fun put(view: View) {
        still(view)
        val canvas = Canvas(sheet)
        canvas.translate((place % columns * ((wide * scale).toInt() + gap)).toFloat(), (place / columns * ((high * scale).toInt() + gap)).toFloat())
        canvas.scale(scale, scale)
        canvas.clipRect(0, 0, view.width, view.height)
        view.draw(canvas)
        place++
    }

    fun save(name: String) = save(sheet, name)
}

private fun still(view: View) {
    ShadowLooper.idleMainLooper(20, TimeUnit.MILLISECONDS)
    view.jumpDrawablesToCurrentState()
    ShadowLooper.idleMainLooper()
}

fun save(bitmap: Bitmap, name: String): Bitmap {
    val file = File(folder, "$name.png")
    file.parentFile!!.mkdirs()
    file.outputStream().use { bitmap.compress(Bitmap.CompressFormat.PNG, 100, it) }
    return bitmap
}

/** Every view that is shown, its parents before it. */
fun shownViews(root: View): List<View> {
    if (root.visibility != View.VISIBLE) return emptyList()
    val within = (root as? ViewGroup)?.let { group -> (0 until group.childCount).flatMap { shownViews(group.getChildAt(it)) } }.orEmpty()
    return listOf(root) + within
}
