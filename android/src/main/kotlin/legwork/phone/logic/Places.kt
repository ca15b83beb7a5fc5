package legwork.phone.logic

import java.io.File
import java.util.UUID

/** The folders of the app. Everything but the surveys is only on its way, and most of it is cleared away a day later. */
class Places(files: File, private val passing: File) {
    /** The surveys. */
    val home = File(files, "surveys")

    /** What is being written to documents of other programs: kept until it is whole there, or the user does without it. */
    val leaving = File(files, "leaving")

    /** The model that reads print, laid out of the app. */
    val model = File(files, "print-model")

    /** What the camera writes. */
    fun photo(): File = File(of(CAMERA), UUID.randomUUID().toString() + ".jpg")

    /** What another program gave, under its own name where it has one: a photo keeps that in the survey. */
    fun received(name: String?): File {
        val made = UUID.randomUUID().toString()
        return File(File(of(IN), made), if (name.isNullOrBlank()) made else plain(name).takeLast(MOST_LETTERS))
    }

    /** What is written for another program, under its own name. */
    fun toGive(name: String): File = File(File(of(OUT), UUID.randomUUID().toString()).apply { mkdirs() }, plain(name))

    /** A file that another program may open: what is named so in its address, and nothing beside it. */
    fun opened(segments: List<String>): File? {
        if (segments.isEmpty() || segments.first() !in listOf(CAMERA, OUT)) return null
        if (segments.any { it == ".." || it == "." || it.contains('/') || it.isEmpty() }) return null
        val file = segments.fold(passing) { folder, name -> File(folder, name) }
        return file.takeIf { it.canonicalPath.startsWith(passing.canonicalPath + File.separator) }
    }

    /** The address of a file, as segments. */
    fun segments(file: File): List<String> = file.relativeTo(passing).path.split(File.separatorChar)

    /** Clears away what is older than a day. */
    fun tidy(now: Long = System.currentTimeMillis()) {
        for (folder in listOf(CAMERA, IN, OUT)) {
            File(passing, folder).listFiles().orEmpty().filter { now - it.lastModified() > DAY }.forEach { it.deleteRecursively() }
        }
    }

    private fun of(folder: String) = File(passing, folder).apply { mkdirs() }

    private fun plain(name: String) = name.substringAfterLast('/').substringAfterLast('\\').trim().trimStart('.').ifEmpty { "file" }

    companion object {
        /** A file that was on its way is where it was to go: it goes, and so does the folder that was made for it alone. */
        fun arrived(file: File) {
            file.delete()
            file.parentFile?.takeIf { it.parentFile?.name == IN }?.delete()
        }

        private const val CAMERA = "camera"
        private const val IN = "in"
        private const val OUT = "out"
        /** With four bytes a letter still within the 255 of a name on the phone's disk. */
        private const val MOST_LETTERS = 60
        private const val DAY = 24L * 3600 * 1000
    }
}
