package legwork.phone.logic

import java.io.File

/** A file that the core was asked to write, and what becomes of it once it is there: the two are never parted. */
class Written(val file: File, val way: Way) {
    sealed class Way {
        /** It is for somebody else, and is of this kind. */
        data class Share(val type: String) : Way()
        /** It is for a place that the user has named, by its address. */
        data class Place(val address: String) : Way()
    }
}
