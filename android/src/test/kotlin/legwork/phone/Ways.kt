package legwork.phone

import java.io.File
import legwork.door.Block
import legwork.door.Deed

/** The ways on which every screen of the guide is seen, as the guide's own snapshot test found them (tests/shells). */
class Ways(shells: File = File("../tests/shells")) {
    val home = File(shells, "home")
    private val ways = File(shells, "ways").readLines().filter { it.isNotBlank() }.map { it.split(", ") }

    /** The names of all screens; what only shows while something goes on has a test of its own. */
    val names: List<String> = ways.flatten().filter { it.startsWith(SEE) }.map { it.removePrefix(SEE) } - "long-work"

    /** Walks through all of them; `seen` is called on each screen. Returns what was not come to, and what was there instead. */
    fun walk(phone: Phone, only: (String) -> Boolean = { true }, seen: (String) -> Unit): List<String> {
        val missed = mutableListOf<String>()
        fun isWanted(way: List<String>) = way.any { it.startsWith(SEE) && only(it.removePrefix(SEE)) }
        for (way in ways.take(ways.indexOfLast(::isWanted) + 1)) {
            // A later screen may stand on what was picked on the way to an earlier one.
            if (!isWanted(way) && way.none { it.startsWith("pick") || it.startsWith("file") }) continue
            for (step in way) {
                if (step.startsWith(SEE)) {
                    val name = step.removePrefix(SEE)
                    if (name == "long-work" || !only(name)) continue
                    if (phone.screen.name == name) seen(name) else missed += "$name: ${phone.screen.name} by $way"
                } else if (!go(phone, step)) {
                    missed += "$step leads nowhere on ${phone.screen.name} by $way"
                    break
                }
            }
        }
        return missed
    }

    private fun surveys(phone: Phone) {
        repeat(80) {
            if (phone.screen.name == "surveys") return
            val keys = keysOf(phone.screen)
            phone.act(if ("out" in keys) Deed.Press("out") else if ("overview" in keys) Deed.Press("overview") else Deed.Back)
        }
        error("no way to the surveys from ${phone.screen.name}")
    }

    /** To the whole job of the survey that has everything. */
    private fun overview(phone: Phone) {
        if (phone.screen.trail.firstOrNull()?.contains("Mill House") != true) {
            surveys(phone)
            phone.act(Deed.Press(phone.row("Mill House").key!!))
        }
        repeat(80) {
            if (phone.screen.name == "overview") return
            phone.act(if ("overview" in keysOf(phone.screen)) Deed.Press("overview") else Deed.Back)
        }
        error("no way to the whole job from ${phone.screen.name}")
    }

    private fun go(phone: Phone, step: String): Boolean {
        val words = step.split(" ")
        when (words[0]) {
            "surveys" -> surveys(phone)
            "overview" -> overview(phone)
            "press" -> {
                val key = step.removePrefix("press ")
                val keys = keysOf(phone.screen)
                // What was made on the way has another id each time.
                phone.act(Deed.Press(keys.find { it == key } ?: keys.find { withoutIds(it) == withoutIds(key) } ?: return false))
            }
            "pick" -> phone.act(Deed.Pick(words[1], words.drop(2)))
            "back" -> phone.act(Deed.Back)
            "file" -> {
                val needs = phone.screen.blocks.mapNotNull { (it as? Block.Press)?.block }.firstOrNull { it.need != null } ?: return false
                phone.act(Deed.File(needs.key, File(phone.app.cacheDir, words[1]).path))
            }
            else -> error(step)
        }
        return true
    }

    private companion object {
        const val SEE = "see "
        val ID = Regex("[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}")
        fun withoutIds(key: String) = ID.replace(key, "*")
    }
}

fun Phone.act(deed: Deed) {
    sitting.act(deed)
    settle()
}
