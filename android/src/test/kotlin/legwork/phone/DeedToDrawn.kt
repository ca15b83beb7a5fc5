package legwork.phone

import android.graphics.Bitmap
import android.graphics.Canvas
import java.io.File
import java.util.Locale
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner

/**
 * How long it takes from a deed until its screen is drawn, in a survey of 300 parts and 2,000 photos and in an empty one. This
 * computer is no phone and its library no app's: what counts is how many times as long the large one takes. And how long one
 * call keeps the thread that draws at most, of which a frame has 16 ms: its own time, so that nobody else's work counts.
 *
 * Not named *Test: `android/tools/bench.sh` runs it.
 */
@RunWith(RobolectricTestRunner::class)
class DeedToDrawn {
    private class Took(val whole: Double, val atOnce: Double)

    /** Milliseconds from a deed until what it led to is drawn. */
    private fun Phone.takes(deed: () -> Unit): Took {
        keptAtOnce = 0
        val begin = System.nanoTime()
        deed()
        settle()
        val page = window.page
        val bitmap = Bitmap.createBitmap(page.width, page.height, Bitmap.Config.ARGB_8888)
        page.draw(Canvas(bitmap))
        return Took((System.nanoTime() - begin) / 1e6, keptAtOnce / 1e6)
    }

    /** The deeds, and on which screen each ends. */
    private val deeds: List<Pair<String, Phone.() -> Unit>> = listOf(
        "to the parts" to { pressed("free-parts") },
        "back to the whole job" to { back() },
        "to a burst of photos" to { pressed("free-burst") },
        "to assigning them" to { pressed("assign") },
        "a word looked for" to { typed("find", "O29") },
        "back to the burst" to { back() },
        "back again" to { back() },
        "to the house" to { pressed("house") },
        "back from it" to { back() },
        "to the forecast" to { goes("forecast") },
        "to the map" to { goes("map") },
        "its parts as a list" to { unfolded() },
        "from there to the whole job" to { goes("overview") },
    )

    private fun Phone.pressed(key: String) = sitting.act(legwork.door.Deed.Press(key))

    /** Where this leads somewhere: not in an empty survey. */
    private fun Phone.goes(key: String) { if (key in keysOf(screen)) pressed(key) }

    private fun Phone.unfolded() {
        val list = window.getString(R.string.as_list)
        Phone.views(window.page).firstOrNull { it.isClickable && it.contentDescription?.startsWith(list) == true }?.performClick()
    }

    private fun Phone.typed(key: String, words: String) = sitting.type(legwork.door.Deed.Write(key, words))

    private fun Phone.back() = sitting.act(legwork.door.Deed.Back)

    @Test fun asRatioToAnEmptySurvey() {
        val phone = Phone(File(System.getProperty("large.home")!!))
        // A phone lays out what a slice made before the next slice; here all slices would come first.
        phone.each = { if (phone.window.page.isLayoutRequested) phone.keeps(phone::layOut) }
        val rows = deeds.associate { it.first to HashMap<String, MutableList<Took>>() }
        repeat(ROUNDS) { round ->
            for (survey in listOf("Empty", "Large")) {
                phone.overview(survey)
                check(phone.screen.trail.firstOrNull()?.contains(survey) == true) { phone.screen.trail }
                for ((name, deed) in deeds) {
                    val took = phone.takes { phone.deed() }
                    // The first ones are compiled while they run.
                    if (round >= WARM) rows.getValue(name).getOrPut(survey) { mutableListOf() } += took
                }
                repeat(20) { if (phone.screen.name != "surveys") phone.act(if ("out" in keysOf(phone.screen)) legwork.door.Deed.Press("out") else legwork.door.Deed.Back) }
            }
        }
        println("%-28s %9s %9s %8s   %s".format("median of ${ROUNDS - WARM}", "empty", "large", "ratio", "drawing thread kept by one call at most: empty, large (worst of all)"))
        for ((name, took) in rows) {
            val (empty, large) = listOf("Empty", "Large").map { took.getValue(it) }
            val whole = listOf(empty, large).map { all -> median(all.map { it.whole }) }
            val atOnce = listOf(empty, large).map { all -> median(all.map { it.atOnce }) }
            val worst = took.values.flatten().maxOf { it.atOnce }
            println("%-28s %6.1f ms %6.1f ms %6.1f x   %.1f ms, %.1f ms (%.1f ms)".format(Locale.ROOT, name, whole[0], whole[1], whole[1] / whole[0], atOnce[0], atOnce[1], worst))
        }
    }

    private fun median(all: List<Double>) = all.sorted()[all.size / 2]

    private companion object {
        const val ROUNDS = 12
        const val WARM = 4
    }
}
