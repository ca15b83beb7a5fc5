package legwork.phone

import android.app.Activity
import android.content.Intent
import android.graphics.Bitmap
import android.os.Bundle
import android.os.Looper
import android.os.SystemClock
import android.view.View
import android.view.ViewGroup
import android.view.inputmethod.EditorInfo
import android.widget.EditText
import android.widget.TextView
import java.io.File
import java.util.concurrent.TimeUnit
import legwork.door.Block
import legwork.door.ChoiceBlock
import legwork.door.RowEntry
import legwork.door.Screen
import legwork.phone.logic.Sitting
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Assert.fail
import org.robolectric.Robolectric
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf
import org.robolectric.android.controller.ActivityController
import org.robolectric.shadows.ShadowLooper

/** The app on a phone, used by hand: what is touched is a view on the screen, and behind it stands the real core. */
class Phone(home: File? = null, intent: Intent? = null) {
    val app: LegworkApp get() = RuntimeEnvironment.getApplication() as LegworkApp
    private var controller: ActivityController<MainActivity>

    val window: MainActivity get() = controller.get()
    val sitting: Sitting get() = app.held(null).sitting
    val screen: Screen get() = sitting.screen ?: error("nothing is shown")

    /** How long one call kept the thread that draws at most: nanoseconds of its own time. */
    var keptAtOnce = 0L

    /** After each message of that thread. */
    var each: () -> Unit = {}

    init {
        home?.copyRecursively(app.places.home)
        // What moves only costs time here; the test of the turned page turns it on again.
        android.animation.ValueAnimator.setDurationScale(0f)
        controller = Robolectric.buildActivity(MainActivity::class.java, intent).setup()
        settle()
    }

    /** One call on the thread that draws. */
    fun keeps(call: () -> Unit) {
        val before = THREADS.currentThreadCpuTime
        call()
        keptAtOnce = maxOf(keptAtOnce, THREADS.currentThreadCpuTime - before)
    }

    /** Runs what waits for the thread that draws, each message by itself, and what comes due within that time. */
    fun idle(milliseconds: Long = 0) {
        val looper = shadowOf(Looper.getMainLooper())
        val end = SystemClock.uptimeMillis() + milliseconds
        while (true) {
            while (!looper.isIdle) {
                keeps { looper.runOneTask() }
                each()
            }
            val next = looper.nextScheduledTaskTime.toMillis()
            if (next == 0L || next > end) break
            SystemClock.setCurrentTimeMillis(next)
        }
        if (end > SystemClock.uptimeMillis()) SystemClock.setCurrentTimeMillis(end)
    }

    /** Waits until nothing is being done and nothing is left to draw. */
    fun settle(works: Boolean = false) {
        val end = System.nanoTime() + TimeUnit.SECONDS.toNanos(600)
        // What is worked out beside a screen that does not show it is not waited for.
        fun isQuiet() = sitting.isIdle && (works || sitting.screen?.blocks?.none { it is Block.HowFar } ?: true)
        do {
            idle()
            if (isQuiet()) {
                idle(20)
                if (isQuiet()) return
            }
            Thread.sleep(1)
        } while (System.nanoTime() < end)
        fail("never quiet: ${sitting.screen?.name}")
    }

    // What is there.

    fun says(words: String) = assertTrue("$words is not on ${screen.name}: ${spoken(screen)}", spoken(screen).any { it.contains(words) })

    fun saysNot(words: String) = assertTrue("$words is on ${screen.name}", spoken(screen).none { it.contains(words) })

    fun on(name: String) = assertEquals(name, screen.name)

    fun choice(key: String): ChoiceBlock =
        screen.blocks.firstNotNullOfOrNull { (it as? Block.Choice)?.block?.takeIf { choice -> choice.key == key } } ?: error("no choice $key on ${screen.name}")

    fun row(words: String): RowEntry = rows().firstOrNull { it.key != null && it.head.contains(words) } ?: error("no row $words on ${screen.name}: ${rows().map { it.head }}")

    fun rows(): List<RowEntry> = screen.blocks.flatMap { (it as? Block.Rows)?.block?.rows.orEmpty() }

    // What hands do.

    /** Touches what answers with this key, wherever it stands on the screen. */
    fun press(key: String) {
        val id = idOfKey(screen, key) ?: error("$key is not on ${screen.name}: ${keysOf(screen)} ${own()}")
        touch(id)
    }

    fun touch(id: String) {
        val view = window.page.find(id) ?: error("$id is not drawn on ${screen.name}")
        tap(view)
    }

    fun tap(view: View) {
        assertTrue("cannot be seen: ${view.contentDescription}", view.isShown && view.width > 0 && view.height > 0)
        assertTrue("cannot be touched: ${view.contentDescription}", view.isEnabled && view.isClickable)
        view.performClick()
        settle()
    }

    /** Touches what says exactly this, or begins so: for what is the shell's own, and for second questions. */
    fun tapWords(words: String, within: View = window.window.decorView) {
        val said = views(within).filter { it.isClickable && it.isShown }.map { it to it.contentDescription?.toString().orEmpty() }
        val found = said.firstOrNull { it.second == words } ?: said.firstOrNull { it.second.startsWith(words) }
        tap(found?.first ?: error("nothing says $words on ${screen.name}"))
    }

    fun pick(key: String, vararg options: String) {
        for (option in options) {
            val id = choice(key).options.firstOrNull { it.key == option }?.id ?: error("no $option in ${choice(key).options.map { it.key }}")
            touch(id)
        }
    }

    /** The option that says this. */
    fun pickWords(key: String, words: String) = touch(choice(key).options.first { it.words.contains(words, ignoreCase = true) }.id)

    /** Types as an on-screen keyboard does. */
    fun type(key: String, words: String) {
        val field = field(key)
        field.requestFocus()
        val keyboard = field.onCreateInputConnection(EditorInfo())!!
        field.setSelection(0, field.text.length)
        for (letter in words.chunked(3)) keyboard.commitText(letter, 1)
        settle()
        assertEquals(words, field.text.toString())
    }

    fun field(key: String): EditText {
        val id = screen.blocks.firstNotNullOfOrNull { block ->
            when (block) {
                is Block.Writing -> block.block.takeIf { it.key == key }?.id
                is Block.Number -> block.block.takeIf { it.key == key }?.id
                else -> null
            }
        } ?: error("no place for $key on ${screen.name}: ${keysOf(screen)}")
        return window.page.find(id) as EditText
    }

    fun back() {
        window.onBackPressed()
        settle()
    }

    /** To the whole job; of this survey, where none is open any more. */
    fun overview(survey: String? = null) {
        repeat(80) {
            if (screen.name == "overview") return
            if (screen.name == "surveys" && survey != null) press(row(survey).key!!)
            if (screen.name == "overview") return
            if ("overview" in keysOf(screen)) press("overview") else back()
        }
        fail("no way to the whole job from ${screen.name}")
    }

    // What happens to a phone.

    fun turn(qualifiers: String, type: Float = 1f) {
        RuntimeEnvironment.setQualifiers(qualifiers)
        if (app.resources.configuration.fontScale != type) RuntimeEnvironment.setFontScale(type)
        // As the platform does: the app first, then its windows.
        app.onConfigurationChanged(app.resources.configuration)
        controller.configurationChange()
        controller.visible()
        settle(works = true)
    }

    /** Another program stands before the app while something happens. */
    fun away(meanwhile: () -> Unit) {
        controller.pause().stop()
        meanwhile()
        settle(works = true)
        controller.restart().start().resume()
        settle()
    }

    /** Touches something, and turns the phone before anything came of it. */
    fun pressAndTurn(key: String, qualifiers: String) {
        window.page.find(idOfKey(screen, key)!!)!!.performClick()
        turn(qualifiers)
    }

    /** The system ends the app and begins it anew, with what it kept. */
    fun killed() {
        val kept = Bundle()
        controller.pause().stop().saveInstanceState(kept)
        settle(works = true)
        controller.saveInstanceState(kept)
        controller.destroy()
        // The app's process goes: whatever it held in memory is gone.
        sitting.close()
        LegworkApp::class.java.getDeclaredField("held").apply { isAccessible = true }.set(app, null)
        controller = Robolectric.buildActivity(MainActivity::class.java).setup(kept)
        settle()
    }

    fun asked(): Intent? = shadowOf(window).nextStartedActivityForResult?.intent

    fun started(): Intent? = shadowOf(window).nextStartedActivity

    fun answers(asked: Intent, data: Intent?, result: Int = Activity.RESULT_OK) {
        shadowOf(window).receiveResult(asked, result, data)
        settle()
    }

    /** The camera takes a picture: another number is another one. */
    fun cameraTakes(number: Int, asked: Intent = asked() ?: error("the camera was not asked for on ${screen.name}: ${own()}")) {
        takesPicture(number, asked)
        answers(asked, null)
    }

    /** The same, before the camera says so. */
    fun takesPicture(number: Int, asked: Intent) {
        assertEquals(android.provider.MediaStore.ACTION_IMAGE_CAPTURE, asked.action)
        @Suppress("DEPRECATION")
        val to = asked.getParcelableExtra<android.net.Uri>(android.provider.MediaStore.EXTRA_OUTPUT)!!
        window.contentResolver.openOutputStream(to)!!.use { picture(number).compress(Bitmap.CompressFormat.JPEG, 90, it) }
    }

    fun own(): String = spokenViews(window.page).joinToString(" | ")

    companion object {
        private val THREADS = java.lang.management.ManagementFactory.getThreadMXBean()

        fun picture(number: Int, wide: Int = 160, high: Int = 120): Bitmap = Bitmap.createBitmap(wide, high, Bitmap.Config.ARGB_8888).apply {
            for (y in 0 until high) for (x in 0 until wide) setPixel(x, y, android.graphics.Color.rgb((x + number * 37) % 256, (y * 2 + number) % 256, number % 256))
        }

        fun views(root: View): List<View> =
            listOf(root) + ((root as? ViewGroup)?.let { group -> (0 until group.childCount).flatMap { views(group.getChildAt(it)) } }.orEmpty())

        fun spokenViews(root: View): List<String> =
            views(root).filter { it.isShown }.mapNotNull { it.contentDescription?.toString() ?: (it as? TextView)?.text?.toString() }
    }
}

/** The keys of a screen, in the order of the core's `Block::keys`: the ways of tests/shells count by it. */
fun keysOf(screen: Screen): List<String> = screen.blocks.flatMap { block ->
    when (block) {
        is Block.Choice -> listOf(block.block.key)
        is Block.Writing -> listOf(block.block.key)
        is Block.Number -> listOf(block.block.key)
        is Block.PhotoSlot -> listOfNotNull(block.block.key, block.block.printKey) + block.block.photos.mapNotNull { it.key }
        is Block.PhotoPart -> listOf(block.block.key)
        is Block.Label -> block.block.figures.mapNotNull { it.key }
        is Block.Part -> listOfNotNull(block.block.key)
        is Block.Rows -> block.block.rows.mapNotNull { it.key }
        is Block.Figure -> block.block.keys
        is Block.HowFar -> listOfNotNull(block.block.stop?.key)
        is Block.Press -> listOf(block.block.key)
        is Block.Confirm -> listOf(block.block.key)
        is Block.Words, is Block.Caution, is Block.Reading -> emptyList()
    }
}

private fun idOfKey(screen: Screen, key: String): String? = screen.blocks.firstNotNullOfOrNull { block ->
    when (block) {
        is Block.PhotoSlot -> block.block.photos.firstOrNull { it.key == key }?.id
        is Block.Label -> block.block.figures.firstOrNull { it.key == key }?.id
        is Block.Part -> block.block.id.takeIf { block.block.key == key }
        is Block.Rows -> block.block.rows.firstOrNull { it.key == key }?.id
        is Block.HowFar -> block.block.stop?.takeIf { it.key == key }?.id
        is Block.Press -> block.block.id.takeIf { block.block.key == key }
        is Block.Confirm -> block.block.id.takeIf { block.block.key == key }
        else -> null
    }
}

/** Every sentence of a screen. */
fun spoken(screen: Screen): List<String> = listOf(screen.title) + screen.notices.map { it.words } + screen.blocks.flatMap { block ->
    when (block) {
        is Block.Words -> listOf(block.block.words, block.block.head)
        is Block.Caution -> listOf(block.block.head, block.block.words)
        is Block.Choice -> listOf(block.block.name) + block.block.options.flatMap { listOf(it.words, it.about) }
        is Block.Writing -> listOf(block.block.name, block.block.text)
        is Block.Number -> listOf(block.block.name, block.block.text)
        is Block.PhotoSlot -> listOf(block.block.name) + block.block.photos.map { it.name }
        is Block.PhotoPart -> listOf(block.block.name)
        is Block.Label -> listOf(block.block.name, block.block.text) + block.block.figures.flatMap { listOf(it.name, it.says, it.doubt) }
        is Block.Reading -> listOf(block.block.name, block.block.says, block.block.remark)
        is Block.Part -> listOf(block.block.tag, block.block.name) + block.block.lines
        is Block.Rows -> listOf(block.block.name) + block.block.rows.flatMap { listOf(it.head, it.says, it.remark) }
        is Block.Figure -> listOf(block.block.name, block.block.description)
        is Block.HowFar -> listOf(block.block.name)
        is Block.Press -> listOf(block.block.words)
        is Block.Confirm -> listOf(block.block.words, block.block.question)
    }
}
