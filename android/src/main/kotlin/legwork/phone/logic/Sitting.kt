package legwork.phone.logic

import java.io.File
import java.util.concurrent.Executor
import java.util.concurrent.Executors
import java.util.concurrent.atomic.AtomicInteger
import legwork.door.Block
import legwork.door.Deed
import legwork.door.Door
import legwork.door.DoorException
import legwork.door.DrawAgain
import legwork.door.FigureDrawn
import legwork.door.PhotoPiece
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
    /** What another program brought belongs to a screen that is not there any more. */
    data object Elsewhere : Said()
    /** The same of a photo: it is not kept. */
    data object PhotoElsewhere : Said()
    /** The screen has no place for the photos that another program handed over. */
    data object NoPlace : Said()
}

/** Who draws. All of it is called on the thread that draws. */
interface Shows {
    fun show(screen: Screen)
    /** Something to say that stands on no screen of the core. */
    fun say(said: Said)
    /** The surveys cannot be opened at all. */
    fun notBegun(said: Said)
    /** A file that was asked for is written. */
    fun written(written: Written)
}

/**
 * The guide behind its door, on a thread of its own: no call of it is ever made on the thread that draws, which makes this.
 * Deeds are done one after the other; what was typed before a deed is done before it. It outlives a turned phone, and comes
 * back after the app's death by its token.
 */
class Sitting(private var settings: Settings, token: String?, private val main: Executor) {
    private val guide = Executors.newSingleThreadExecutor { Thread(it, "guide") }
    private val pictures = Executors.newSingleThreadExecutor { Thread(it, "pictures") }
    private val waiting = AtomicInteger()
    private val typed = LinkedHashMap<String, Pair<String, Deed>>()
    private val figures = HashMap<String, FigureDrawn>()
    private val bars = HashMap<RowBar, FigureDrawn>()

    private val drawing = Thread.currentThread()

    /** Made and let go of on the guide's thread alone; and never asked for on the one that draws, which it would keep. */
    private var door: Door? = null
        get() = field.also { check(Thread.currentThread() !== drawing) { "the door is called on the thread that draws" } }
    /** Where the model that reads print lies, once it is laid out; on the guide's thread. */
    private var model: File? = null
    private var stands: Screen? = null
    private val place get() = stands?.place.orEmpty()
    private var asked: Written? = null
    private val given = mutableListOf<File>()
    private val held = ArrayDeque<Brought>()
    /** Put aside: what is brought meanwhile waits. The core would open the survey for it, and a deed counts for nothing until that is open. */
    private var isAside = false
    /** Where the photos belong that are being taken in: the core lets others of that place wait in line. */
    private var line: String? = null
    /** Photos that nobody asked for, until a screen stands that can say whether it has a place for them. */
    private val unasked = mutableListOf<File>()

    /** What another program brought for the screen of a place. */
    private class Brought(val deed: Deed, val place: String, val written: Written?)

    private val again = object : DrawAgain {
        override fun drawAgain() = does { shown(it.screen()) }
    }

    /** Where one is, for after the app's death. */
    @Volatile var token: String? = token
        private set

    /** The screen that was drawn last; on the drawing thread. */
    var screen: Screen? = null
        private set

    /** Where a burst of photos goes on as soon as its place shows again; on the drawing thread. */
    var burst: Awaited? = null

    /** The ids of notices that were read out; on the drawing thread. The core counts anew in each process, so they end with it. */
    val readOut = mutableSetOf<String>()

    /** What there was to tell while nobody drew; on the drawing thread. */
    private val untold = ArrayDeque<(Shows) -> Unit>()

    /** Who draws now: another window after a turn, none while the app is put aside. */
    var shows: Shows? = null
        set(value) {
            field = value
            screen?.let { value?.show(it) }
            while (value != null && untold.isNotEmpty()) untold.removeFirst()(value)
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
            val isLate = from != null && from != place
            shown(if (isLate) door.screen() else door.act(deed))
        }
    }

    /**
     * A photo or a file of another program, for the screen of the place where it was asked for; `written` if the core is to
     * write there. While long work goes on it waits; on another screen nothing is done but saying so, since keys are alike
     * on many.
     */
    fun bring(deed: Deed, at: String, written: Written? = null) = does { door ->
        writeTyped(door)
        brought(door, Brought(deed, at, written))
    }

    /**
     * Photos that another program handed over: for the place for photos that is shown. All of them go there, though the first may
     * lead to another screen; while something goes on that shows no such place, they wait.
     */
    fun photos(files: List<File>) = does { door ->
        writeTyped(door)
        unasked += files
        placed(door)
    }

    private fun placed(door: Door) {
        val slot = stands?.blocks?.firstNotNullOfOrNull { (it as? Block.PhotoSlot)?.block }
        if (unasked.isEmpty() || isAside || (slot == null && works)) return
        val (photos, at) = unasked.toList() to place
        unasked.clear()
        if (slot != null) return photos.forEach { brought(door, Brought(Deed.Photo(slot.key, it.path), at, null)) }
        photos.forEach { Places.arrived(it) }
        tell { it.say(Said.NoPlace) }
    }

    private fun brought(door: Door, one: Brought) {
        if (isAside) {
            held += one
            return
        }
        val waitsInCore = works && one.deed is Deed.Photo && one.place == line
        if (one.place != place && !waitsInCore) {
            if (works) {
                held += one
                return
            }
            fileOf(one.deed)?.let { Places.arrived(it) }
            return tell { it.say(if (one.deed is Deed.Photo) Said.PhotoElsewhere else Said.Elsewhere) }
        }
        if (one.deed is Deed.Photo) {
            line = one.place
            given += File(one.deed.file)
        }
        if (one.written != null) asked = one.written
        shown(door.act(one.deed))
    }

    private fun fileOf(deed: Deed): File? = when (deed) {
        is Deed.Photo -> File(deed.file)
        is Deed.File -> File(deed.file)
        else -> null
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
        isAside = true
    }

    /** It is taken up again. */
    fun resume() = does {
        isAside = false
        shown(it.resume())
    }

    /** Reads print by the model in this folder from now on; also where the door is opened only later. */
    fun readPrintWith(folder: File) = inTurn {
        model = folder
        door?.let { shown(it.readPrintWith(folder.path)) }
    }

    /** What is half typed is kept. */
    fun keepDrafts() = does { it.keepDrafts() }

    /** Another language. */
    fun settle(settings: Settings) {
        if (settings == this.settings) return
        this.settings = settings
        does { shown(it.settle(settings)) }
    }

    /** What is made of the marks of a drawing, away from the drawing thread. */
    fun <T : Any> figure(name: String, version: String, make: (FigureDrawn) -> T, then: (T) -> Unit) {
        val known = figures[name + version]
        if (known != null) return fetch(pictures, { make(known) }, then)
        fetch(guide, { door?.figure(name)?.let { it to make(it) } }) { (drawn, made) ->
            if (drawn.version == version) figures[name + version] = drawn
            then(made)
        }
    }

    /** The same of the bar of a row. */
    fun <T : Any> bar(bar: RowBar, make: (FigureDrawn) -> T, then: (T) -> Unit) {
        val known = bars[bar]
        fetch(pictures, { (known ?: barDrawn(bar)).let { it to make(it) } }) { (drawn, made) ->
            bars[bar] = drawn
            then(made)
        }
    }

    /** Something made of the file of a photo, away from both the guide's and the drawing thread. */
    fun <T : Any> photo(photo: String, small: Boolean, make: (File) -> T?, then: (T) -> Unit) {
        fetch(pictures, { door?.let { make(File(if (small) it.smallPhoto(photo) else it.wholePhoto(photo))) } }, then)
    }

    /** The same of a piece of a photo. */
    fun <T : Any> piece(piece: PhotoPiece, make: (File) -> T?, then: (T) -> Unit) {
        fetch(pictures, { door?.let { make(File(it.photoPiece(piece))) } }, then)
    }

    /** Reads or writes files away from the drawing thread. */
    fun <T : Any> files(work: () -> T?, then: (T) -> Unit) = fetch(pictures, work, then)

    private fun <T : Any> fetch(thread: Executor, get: () -> T?, then: (T) -> Unit) {
        waiting.incrementAndGet()
        thread.execute {
            var got: T? = null
            try {
                got = get()
            } catch (_: DoorException) {
                // A drawing or a photo that is gone meanwhile is not shown; the screen says what there is.
            } catch (_: java.io.IOException) {
                // The same of a file.
            } finally {
                main.execute {
                    try {
                        got?.let(then)
                    } finally {
                        waiting.decrementAndGet()
                    }
                }
            }
        }
    }

    private fun does(work: (Door) -> Unit) = inTurn { work(opened()) }

    private fun inTurn(work: () -> Unit) {
        waiting.incrementAndGet()
        guide.execute {
            try {
                work()
            } catch (fault: DoorException) {
                val said = if (fault is DoorException.Trouble) Said.Words(fault.said) else Said.Fault
                val begun = door != null
                tell { if (begun) it.say(said) else it.notBegun(said) }
            } finally {
                main.execute { waiting.decrementAndGet() }
            }
        }
    }

    private fun opened(): Door = door ?: Door(settings, token, again).also { opened ->
        door = opened
        model?.let { opened.readPrintWith(it.path) }
    }

    private fun shown(next: Screen) {
        stands = next
        token = door?.token() ?: token
        works = door?.work() != null
        var over: Written? = null
        if (!works) {
            over = asked
            asked = null
            line = null
            given.onEach { Places.arrived(it) }.clear()
        }
        main.execute {
            screen = next
            shows?.show(next)
        }
        if (over != null && over.file.isFile) tell { it.written(over) }
        door?.let { door ->
            while (!works && !isAside && held.isNotEmpty()) brought(door, held.removeFirst())
            placed(door)
        }
    }

    /** Tells whoever draws now, or does next. */
    private fun tell(what: (Shows) -> Unit) = main.execute { shows?.let(what) ?: run { untold += what } }

    /** Something of the shell's own to say. On the drawing thread. */
    fun say(words: String) = tell { it.say(Said.Words(words)) }

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
