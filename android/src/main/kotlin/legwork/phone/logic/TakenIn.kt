package legwork.phone.logic

import java.io.File
import java.io.IOException
import java.io.InputStream

/** What came of copying a stream. */
enum class Copied { DONE, NOTHING, UNREAD, TOO_LARGE, NO_ROOM }

/**
 * Copies what another program gives to a place of our own. How large it says to be is never asked: what counts is what
 * comes.
 */
class TakenIn(private val most: Long = MOST, private val room: (File) -> Long = { it.usableSpace }) {
    fun copy(from: () -> InputStream?, to: File): Copied {
        to.parentFile?.mkdirs()
        val result = try {
            val stream = from() ?: return Copied.UNREAD
            stream.use { write(it, to) }
        } catch (_: IOException) {
            if (room(to.parentFile ?: to) < LEFT) Copied.NO_ROOM else Copied.UNREAD
        } catch (_: RuntimeException) {
            // What goes wrong in another program comes here as it was thrown there: no leave, no such thing, anything.
            Copied.UNREAD
        }
        if (result != Copied.DONE) to.delete()
        return result
    }

    private fun write(from: InputStream, to: File): Copied {
        var whole = 0L
        val piece = ByteArray(PIECE)
        to.outputStream().use { out ->
            while (true) {
                val came = from.read(piece)
                if (came < 0) break
                whole += came
                if (whole > most) return Copied.TOO_LARGE
                if (whole % (PIECE * LOOK) < came && room(to.parentFile ?: to) < LEFT) return Copied.NO_ROOM
                out.write(piece, 0, came)
            }
            out.fd.sync()
        }
        return if (whole == 0L) Copied.NOTHING else Copied.DONE
    }

    private companion object {
        /** The largest file that is copied at all; the core has its own limits for what it takes. */
        const val MOST = 4L shl 30
        /** So much room is left to the rest of the phone. */
        const val LEFT = 32L shl 20
        const val PIECE = 64 * 1024
        const val LOOK = 64
    }
}

/** Whether a file begins like a picture of the kinds that a photo may be: a JPEG or a PNG. The name says nothing. */
fun isPicture(file: File): Boolean {
    val begin = ByteArray(8)
    val read = file.inputStream().use { it.read(begin) }
    if (read < 8) return false
    val jpeg = listOf(0xff, 0xd8, 0xff)
    val png = listOf(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)
    val bytes = begin.map { it.toInt() and 0xff }
    return bytes.take(3) == jpeg || bytes == png
}
