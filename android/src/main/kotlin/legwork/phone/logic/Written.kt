package legwork.phone.logic

import java.io.File

/** A file of some kind that the core was asked to write, and what becomes of it once it is there: the two are never parted. */
class Written(val file: File, val type: String, val way: Way) {
    enum class Way {
        /** It is for somebody else. */
        SHARE,
        /** It is for a place that the user names. */
        PLACE,
    }
}
