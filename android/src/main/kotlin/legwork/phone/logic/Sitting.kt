package legwork.phone.logic

import java.io.File
import java.util.concurrent.Executor
import java.util.concurrent.Executors
import java.util.concurrent.atomic.AtomicInteger
import legwork.door.Deed
import legwork.door.Door
import legwork.door.DoorException
import legwork.door.DrawAgain
import legwork.door.FigureDrawn
import legwork.door.RowBar
import legwork.door.Screen
import legwork.door.Settings
import legwork.door.barDrawn

/** What the shell itself has to say; the words stand in its resources. */
sealed class Said {
    /** Words of the core, as they are. */
    data class Words(val words: String) : Said()
    /** Something went wrong inside the program. */
    data object Fault : Said()
}

/** Who draws. All of it is called on the thread that draws. */
interface Shows {
    fun show(screen: Screen)
    /** Something to say that stands on no screen of the core. */
    fun say(said: Said)
    /** The surveys cannot be opened at all. */
    fun notBegun(said: Said)
    /** A file that was asked for is written. */
    fun written(file: File)
}

/**
 * The guide behind its door, on a thread of its own: no call of it is ever made on the thread that draws. Deeds are done one
 * after the other; what was typed before a deed is done before it. It outlives a turned phone, and comes back after the
 * app's death by its token.
 */
class Sitting(private var settings: Settings, token: String?, private val main: Executor) {
    private val guide = Executors.newSingleThreadExecutor { Thread(it, "guide") }
    private val pictures = Executors.newSingleThreadExecutor { Thread(it, "pictures") }
    private val waiting = AtomicInteger()
    private val typed = LinkedHashMap<String, Pair<String, Deed>>()
    private val figures = HashMap<String, FigureDrawn>()
    private val bars = HashMap<RowBar, FigureDrawn>()

    /** On the guide's thread alone. */
    private var door: Door? = null
    private var place = ""
    private var asked: File? = null
    private val given = mutableListOf<File>()

    private val again = object : DrawAgain {
        override fun drawAgain() = does { shown(it.screen()) }
    }

    /** Where one is, for after the app's death. */
    @Volatile var token: String? = token
        private set

    /** The screen that was drawn last; on the drawing thread. */
    var screen: Screen? = null
        private set

    var shows: Shows? = null
        set(value) {
            field = value
            screen?.let { value?.show(it) }
        }

    /** Long work goes on beside. */
    @Volatile var works = false
        private set

    /** Nothing is being done: for tests. */
    val isIdle: Boolean get() = waiting.get() == 0

    init { begin() }

    /** Opens the door, or tries it again. */
    fun begin() = does { shown(it.screen()) }

    /** Does something that was done on the screen of this place; on another one it is left. */
    fun act(deed: Deed) {
        val from = screen?.place
        does { door ->
            writeTyped(door)
            val isLate = deed !is Deed.Photo && from != null && from != place
            if (deed is Deed.Photo) given += File(deed.file)
            if (deed is Deed.File) asked = File(deed.file)
            shown(if (isLate) door.screen() else door.act(deed))
        }
    }

    /** Keeps what is being typed; only the last of what waits is done. */
    fun type(deed: Deed) {
        val key = (deed as? Deed.Write)?.key ?: (deed as? Deed.Measure)?.key ?: return act(deed)
        synchronized(typed) { typed[key] = (screen?.place ?: "") to deed }
        does { door -> writeTyped(door)?.let(::shown) }
    }

    private fun writeTyped(door: Door): Screen? {
        val deeds = synchronized(typed) { typed.values.toList().also { typed.clear() } }
        return deeds.filter { (at, _) -> at == place }.map { (_, deed) -> door.act(deed) }.lastOrNull()
    }

    /** A file that another program handed over. */
    fun receive(file: File) = does { shown(it.receive(file.path)) }

    /** The app is put aside. */
    fun suspend() = does { door ->
        writeTyped(door)
        token = door.suspend()
    }

    /** It is taken up again. */
    fun resume() = does { shown(it.resume()) }

    /** What is half typed is kept. */
    fun keepDrafts() = does { it.keepDrafts() }

    /** Another language. */
    fun settle(settings: Settings) {
        if (settings == this.settings) return
        this.settings = settings
        does { shown(it.settle(settings)) }
    }

    /** The marks of a drawing: at once if they are known, else soon. */
    fun figure(name: String, version: String, then: (FigureDrawn) -> Unit) {
        figures[name + version]?.let { return then(it) }
        fetch(guide, { door?.figure(name) }) { drawn ->
            if (drawn.version == version) figures[name + version] = drawn
            then(drawn)
        }
    }

    fun bar(bar: RowBar, then: (FigureDrawn) -> Unit) {
        bars[bar]?.let { return then(it) }
        fetch(pictures, { barDrawn(bar) }) { drawn ->
            bars[bar] = drawn
            then(drawn)
        }
    }

    /** Something made of the file of a photo, away from both the guide's and the drawing thread. */
    fun <T : Any> photo(photo: String, small: Boolean, make: (File) -> T?, then: (T) -> Unit) {
        fetch(pictures, { door?.let { make(File(if (small) it.smallPhoto(photo) else it.wholePhoto(photo))) } }, then)
    }

    /** Reads or writes files away from the drawing thread. */
    fun <T : Any> files(work: () -> T?, then: (T) -> Unit) = fetch(pictures, work, then)

    private fun <T : Any> fetch(thread: Executor, get: () -> T?, then: (T) -> Unit) {
        waiting.incrementAndGet()
        thread.execute {
            // A drawing or a photo that is gone meanwhile is not shown; the screen says what there is.
            val got = try { get() } catch (_: DoorException) { null } catch (_: java.io.IOException) { null }
            main.execute {
                got?.let(then)
                waiting.decrementAndGet()
            }
        }
    }

    private fun does(work: (Door) -> Unit) {
        waiting.incrementAndGet()
        guide.execute {
            try {
                work(opened())
            } catch (fault: DoorException) {
                val said = if (fault is DoorException.Trouble) Said.Words(fault.said) else Said.Fault
                val begun = door != null
                tell { if (begun) it.say(said) else it.notBegun(said) }
            }
            main.execute { waiting.decrementAndGet() }
        }
    }

    private fun opened(): Door = door ?: Door(settings, token, again).also { door = it }

    private fun shown(next: Screen) {
        place = next.place
        token = door?.token() ?: token
        works = door?.work() != null
        val file = asked?.takeIf { it.isFile }
        if (file != null || !works) asked = null
        if (!works) given.onEach { it.delete() }.clear()
        main.execute {
            screen = next
            shows?.show(next)
            file?.let { shows?.written(it) }
        }
    }

    private fun tell(what: (Shows) -> Unit) = main.execute { shows?.let(what) }

    /** Lets go of the door without a word, as the system does with an app. */
    fun close() {
        guide.execute {
            door?.destroy()
            door = null
        }
        listOf(guide, pictures).forEach { it.shutdown() }
        guide.awaitTermination(10, java.util.concurrent.TimeUnit.SECONDS)
    }
}
