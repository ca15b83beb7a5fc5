package legwork.phone

import java.io.File
import legwork.door.Block
import legwork.door.Deed

/** The ways to every screen of the guide, as the guide's own snapshot test found them. */
class Ways(shells: File = File("../tests/shells")) {
    val home = File(shells, "home")
    private val ways = File(shells, "ways").readLines().filter { it.isNotBlank() }.map { line ->
        val (name, steps) = line.split(": ", limit = 2)
        name to steps.split(", ")
    }
    val names: List<String> get() = ways.map { it.first }

    /** Walks through all of them; `seen` is called on each screen. What only shows while something goes on is not waited for. */
    fun walk(phone: Phone, seen: (String) -> Unit): List<String> {
        val missed = mutableListOf<String>()
        for ((name, steps) in ways) {
            if (steps.first() == "surveys") surveys(phone) else overview(phone)
            for (step in steps.drop(1)) go(phone, step)
            if (phone.screen.name == name) seen(name) else missed += "$name (${phone.screen.name})"
        }
        return missed
    }

    private fun surveys(phone: Phone) {
        repeat(80) {
            if (phone.screen.name == "surveys") return
            if ("out" in keysOf(phone.screen)) phone.act(Deed.Press("out"))
            else if ("overview" in keysOf(phone.screen)) phone.act(Deed.Press("overview"))
            else phone.act(Deed.Back)
        }
        error("no way to the surveys from ${phone.screen.name}")
    }

    private fun overview(phone: Phone) {
        if (phone.screen.trail.isEmpty() || phone.screen.name in OUTSIDE) {
            surveys(phone)
            phone.act(Deed.Press(phone.row("Mill House").key!!))
        }
        repeat(80) {
            if (phone.screen.name == "overview") return
            if ("overview" in keysOf(phone.screen)) phone.act(Deed.Press("overview")) else phone.act(Deed.Back)
        }
        error("no way to the whole job from ${phone.screen.name}")
    }

    private fun go(phone: Phone, step: String) {
        val words = step.split(" ")
        when (words[0]) {
            "press" -> phone.act(Deed.Press(keysOf(phone.screen)[words[1].toInt()]))
            "pick" -> phone.act(Deed.Pick(words[1], words.drop(2)))
            "back" -> phone.act(Deed.Back)
            "file" -> {
                val key = phone.screen.blocks.firstNotNullOf { block -> (block as? Block.Press)?.block?.takeIf { it.need != null }?.key }
                phone.act(Deed.File(key, File(phone.app.cacheDir, words[1]).path))
            }
            else -> error(step)
        }
    }

    private companion object { val OUTSIDE = setOf("surveys") }
}

fun Phone.act(deed: Deed) {
    sitting.act(deed)
    settle()
}
