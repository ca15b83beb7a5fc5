package legwork.phone.logic

import java.io.File
import java.io.IOException
import java.io.InputStream

/** What the app carries of the model. */
interface Carried {
    /** When this release of the app was installed: another one carries another model, perhaps. */
    fun installed(): String

    /** The names of its files; none where the app was built without it. */
    fun names(): List<String>

    /** One of them. */
    fun open(name: String): InputStream
}

/** What came of laying the model out. */
enum class Laid { WHOLE, NOT_CARRIED, NO_ROOM, BROKEN_OFF }

/**
 * The model that reads print. The app carries it where the core cannot read it, so it is laid out as files, once for each release
 * that is installed: beside, and under its name only when all of it is on the disk. The core checks the sums.
 */
class PrintModel(private val kept: File, private val carried: Carried, private val takenIn: TakenIn = TakenIn()) {
    /** Lays it out where that was not done, and clears away what an older release had; away from the thread that draws. */
    fun lay(): Pair<File, Laid> {
        val whole = File(kept, carried.installed())
        if (whole.isDirectory) return whole to Laid.WHOLE
        kept.listFiles().orEmpty().forEach { it.deleteRecursively() }
        val begun = File(kept, BEGUN)
        val laid = copied(begun)
        if (laid == Laid.WHOLE && begun.renameTo(whole)) return whole to Laid.WHOLE
        begun.deleteRecursively()
        return whole to if (laid == Laid.WHOLE) Laid.BROKEN_OFF else laid
    }

    private fun copied(begun: File): Laid = try {
        val names = carried.names()
        val refused = names.map { takenIn.copy({ carried.open(it) }, File(begun, it)) }.firstOrNull { it != Copied.DONE }
        when {
            names.isEmpty() -> Laid.NOT_CARRIED
            refused == Copied.NO_ROOM -> Laid.NO_ROOM
            refused != null -> Laid.BROKEN_OFF
            else -> Laid.WHOLE
        }
    } catch (_: IOException) {
        Laid.BROKEN_OFF
    }

    private companion object { const val BEGUN = "begun" }
}
