package legwork.phone.logic

/**
 * What another program was asked for, and where its answer goes: a key, on the screen of a place; of a place for a file, that file
 * and its type. It outlives the app's death.
 */
data class Awaited(val what: What, val key: String, val place: String, val file: String = "", val burst: Boolean = false, val type: String = "") {
    enum class What { CAMERA, PICK, READ, WRITE }

    fun written(): ArrayList<String> = arrayListOf(what.name, key, place, file, burst.toString(), type)

    companion object {
        fun read(written: List<String>?): Awaited? {
            if (written == null || written.size != 6) return null
            val what = What.entries.find { it.name == written[0] } ?: return null
            return Awaited(what, written[1], written[2], written[3], written[4].toBoolean(), written[5])
        }
    }
}
