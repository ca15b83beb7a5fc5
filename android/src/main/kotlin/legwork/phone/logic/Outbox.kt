package legwork.phone.logic

import java.io.DataInputStream
import java.io.DataOutputStream
import java.io.File
import java.io.FileOutputStream
import java.io.IOException
import java.io.OutputStream
import java.util.UUID

/** Documents of other programs, by their addresses. What goes wrong comes as it is thrown there. */
interface Documents {
    /** Opens one to write it anew: from then on what was in it is gone. */
    fun open(address: String): OutputStream?
    /** What its program calls it. */
    fun name(address: String): String?
    fun isEmpty(address: String): Boolean
    fun delete(address: String)
    /** Keeps the leave to write there beyond the app's death, where its program gives it; and lets go of it. */
    fun hold(address: String)
    fun letGo(address: String)
}

/** A file that is being written to a document of another program: all that has to be known of it after the app's death. */
class Leaving(val folder: File, val name: String, val type: String, val address: String, fileName: String) {
    /** The whole file, in a folder of ours. */
    val file = File(File(folder, "file"), fileName)

    /** That the document was opened: what was in it is gone. */
    val begun = File(folder, "begun")
}

/** What is said of a file that was made, and what can be done with it; `isHere` if it is at hand. */
sealed class Offer(val name: String, val isHere: Boolean) {
    /** It is made; `isRefused` if the document that was to take it did not. */
    class Made(val file: File, val type: String, val isRefused: Boolean, isHere: Boolean = true) : Offer(file.name, isHere)
    /** It stands where the user wanted it. */
    class Kept(name: String) : Offer(name, isHere = false)
    /** The app was ended while it was being written. */
    class Broken(val leaving: Leaving, isHere: Boolean) : Offer(leaving.name, isHere)
}

/** What can be done with it. */
enum class Offered { KEEP, SEND, AGAIN, WITHOUT }

/**
 * Files on their way to documents of other programs. A document is emptied before it is written, and both at once cannot be
 * had: so each is noted before it is opened, and the note goes once it is whole or taken away. A note that is there when the app
 * begins tells of a document that is not whole.
 */
class Outbox(private val places: Places, private val documents: Documents, private val sitting: Sitting) {
    /** What is said of the last file, until something else is done. */
    private var last: Offer? = null
    private val broken = ArrayDeque<Offer.Broken>()

    /** What there is to say and to do; on the thread that draws, as all that is called here. */
    val offers: List<Offer> get() = listOfNotNull(last) + broken

    /** Whoever draws. */
    var changed: () -> Unit = {}

    /** A file is made: it can be kept in a document, or handed on, until something else is done. */
    fun made(file: File, type: String) = sitting.files({ if (file.isFile) Offer.Made(file, type, isRefused = false) else null }, ::say)

    /** Something else is done: what was only said of the last file goes. */
    fun moveOn() { last = null }

    private fun say(next: Offer) {
        last = next
        changed()
    }

    /** Looks for what the app's death has left, once when it begins: nothing else is on its way then. */
    fun look() = sitting.files({ found() }) { found ->
        broken += found
        if (found.isNotEmpty()) changed()
    }

    private fun found(): List<Offer.Broken> = places.leaving.listFiles().orEmpty().mapNotNull { folder ->
        val leaving = read(folder)
        // Without a note nothing was opened.
        if (leaving == null) folder.deleteRecursively()
        leaving?.let { Offer.Broken(it, it.file.isFile) }
    }

    /** Writes a file to the document that the user has chosen for it. */
    fun keep(file: File, type: String, address: String) = sitting.files({
        begun(file, type, address)?.let(::carried) ?: run {
            takeAway(address, isOurs = false)
            Offer.Made(file, type, isRefused = true, isHere = file.isFile)
        }
    }, ::say)

    /** Writes it again, where it was to go. */
    fun again(one: Offer.Broken) {
        decided(one)
        sitting.files({ carried(one.leaving) }, ::say)
    }

    /** It is not wanted any more: nor is what was begun. */
    fun doWithout(one: Offer.Broken) {
        decided(one)
        sitting.files({
            takeAway(one.leaving.address, one.leaving.begun.exists())
            end(one.leaving)
        }) {}
    }

    private fun decided(one: Offer.Broken) {
        broken.remove(one)
        last = null
        changed()
    }

    /** A copy for another program, which may read it much later; none where there is no room for one. */
    fun copy(one: Offer.Broken, then: (File?) -> Unit) {
        val from = one.leaving.file
        sitting.files({ listOfNotNull(quietly { places.toGive(from.name).also { from.copyTo(it) } }) }) { then(it.firstOrNull()) }
    }

    /** Takes the file in and notes where it goes; `null` where there is no room even for that. */
    private fun begun(file: File, type: String, address: String): Leaving? {
        val name = quietly { documents.name(address) } ?: file.name
        val leaving = Leaving(File(places.leaving, UUID.randomUUID().toString()), name, type, address, file.name)
        return try {
            leaving.file.parentFile?.mkdirs()
            write(leaving)
            move(file, leaving.file)
            quietly { documents.hold(address) }
            leaving
        } catch (_: IOException) {
            leaving.folder.deleteRecursively()
            null
        }
    }

    /** Carries it there. What does not come to be whole is taken away, and the file is at hand again. */
    private fun carried(leaving: Leaving): Offer {
        val isWhole = quietly {
            documents.open(leaving.address)?.use { to ->
                leaving.begun.createNewFile()
                leaving.file.inputStream().use { it.copyTo(to) }
                to.flush()
                // Where it is no file but a program that listens, there is nothing to sync: that program has it now.
                quietly { (to as? FileOutputStream)?.fd?.sync() }
            } != null
        } == true
        if (isWhole) return Offer.Kept(leaving.name).also { end(leaving) }
        takeAway(leaving.address, leaving.begun.exists())
        val back = places.toGive(leaving.file.name)
        val isHere = quietly { move(leaving.file, back) } != null
        end(leaving)
        return Offer.Made(back, leaving.type, isRefused = true, isHere)
    }

    private fun move(from: File, to: File) {
        if (!from.renameTo(to)) from.copyTo(to)
    }

    /** The note goes first: without it nothing is said any more. */
    private fun end(leaving: Leaving) {
        File(leaving.folder, NOTE).delete()
        leaving.folder.deleteRecursively()
        quietly { documents.letGo(leaving.address) }
    }

    /** Takes away a document that the system made for us. The user may have chosen one with something in it instead: that stays. */
    private fun takeAway(address: String, isOurs: Boolean) {
        // Where its place does not let go of it, it stays.
        quietly { if (isOurs || documents.isEmpty(address)) documents.delete(address) }
    }

    /** Another program throws what it likes: then there is nothing. */
    private fun <T> quietly(ask: () -> T): T? = try {
        ask()
    } catch (_: IOException) {
        null
    } catch (_: RuntimeException) {
        null
    }

    private fun write(leaving: Leaving) {
        val begun = File(leaving.folder, "$NOTE.new")
        FileOutputStream(begun).use { file ->
            DataOutputStream(file).apply { listOf(leaving.name, leaving.type, leaving.address, leaving.file.name).forEach(::writeUTF) }
            file.fd.sync()
        }
        if (!begun.renameTo(File(leaving.folder, NOTE))) throw IOException("not noted")
    }

    private fun read(folder: File): Leaving? = try {
        DataInputStream(File(folder, NOTE).inputStream()).use { Leaving(folder, it.readUTF(), it.readUTF(), it.readUTF(), it.readUTF()) }
    } catch (_: IOException) {
        null
    }

    private companion object { const val NOTE = "note" }
}
