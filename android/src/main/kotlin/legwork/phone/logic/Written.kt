package legwork.phone.logic

import java.io.File

/** A file of some kind that the core was asked to write, and what becomes of it once it is there: the two are never parted. */
class Written(val file: File, val type: String, val way: Way) {
    sealed class Way {
        /** It is for somebody else. */
        data object Share : Way()
        /** It is for a place that the user names. */
        data object Place : Way()
    }
}
