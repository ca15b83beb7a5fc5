// The door from Kotlin: the first steps of a survey, a deed that the screen does not offer, a file handed on and taken in
// on another phone, the app ended and opened again.

import java.awt.image.BufferedImage
import java.awt.image.DataBufferByte
import java.io.File
import java.nio.file.Files
import java.util.Random
import java.util.concurrent.Semaphore
import java.util.concurrent.TimeUnit
import javax.imageio.ImageIO
import legwork.door.*

/** Touches only what stands on the screen, and waits for long work by being told of it. */
class Hand(home: File, token: String? = null, language: String = "en-GB", fails: Boolean = false) {
    private val told = Semaphore(0)
    var timesTold = 0
    val door = Door(Settings(home.path, language, FirstLength.METRES), token, object : DrawAgain {
        override fun drawAgain() {
            told.release()
            if (fails) throw IllegalStateException("no window")
        }
    })
    var screen = settled(door.screen())

    fun settled(first: Screen): Screen {
        var screen = first
        while (door.work() != null) {
            waitToBeTold(screen)
            screen = door.screen()
        }
        return door.screen()
    }

    private fun waitToBeTold(shown: Screen) {
        check(told.tryAcquire(60, TimeUnit.SECONDS)) { "nobody said that long work is over: ${shown.name}" }
        timesTold++
    }

    fun act(deed: Deed): Screen {
        val shown = door.act(deed)
        // Whatever was shown as going on has an end that is told, though it may be over before anybody asks.
        if (shown.blocks.any { it is Block.HowFar }) waitToBeTold(shown)
        screen = settled(shown)
        return screen
    }

    fun keys(): List<String> = screen.blocks.flatMap { block ->
        when (block) {
            is Block.Press -> listOf(block.block.key)
            is Block.Rows -> block.block.rows.mapNotNull { it.key }
            else -> emptyList()
        }
    }

    fun press(key: String): Screen {
        check(key in keys()) { "$key on ${screen.name}: ${keys()}" }
        return act(Deed.Press(key))
    }

    fun ended(): String = door.token().also { door.close() }
}

/** A photo of six million points, each of another grey. */
fun photo(folder: File, number: Int): File {
    val side = 2400
    val grain = BufferedImage(side, side, BufferedImage.TYPE_BYTE_GRAY)
    Random(number.toLong()).nextBytes((grain.raster.dataBuffer as DataBufferByte).data)
    return File(folder, "$number.png").also { check(ImageIO.write(grain, "png", it)) }
}

fun main() {
    val one = Files.createTempDirectory("door").toFile()
    val two = Files.createTempDirectory("door").toFile()
    val three = Files.createTempDirectory("door").toFile()
    try {
        var hand = Hand(one)
        check(hand.screen.name == "surveys")
        hand.press("new")
        hand.act(Deed.Write("name", "Mill House"))
        val before = hand.screen
        check(hand.act(Deed.Press("no such key")) == before) { "what is not offered changed something" }
        hand = Hand(one, hand.ended())
        check(hand.screen.place == before.place) { hand.screen.name }
        check(hand.screen.blocks.filterIsInstance<Block.Writing>().single().block.text == "Mill House")
        hand.press("make")
        check(hand.screen.name == "ask-whose") { hand.screen.name }
        val choice = hand.screen.blocks.filterIsInstance<Block.Choice>().first().block
        hand.act(Deed.Pick(choice.key, listOf(choice.options.first().key)))
        val shown = hand.screen
        val token = hand.door.suspend()
        hand.door.close()
        hand = Hand(one, token)
        check(hand.screen.place == shown.place && hand.screen.blocks == shown.blocks)
        if ("overview" in hand.keys()) hand.press("overview") else hand.act(Deed.Back)
        try {
            hand.door.smallPhoto("no such photo")
            error("a photo that is not there")
        } catch (trouble: DoorException.Trouble) {
            check(trouble.said.isNotBlank())
        }
        repeat(10) {
            if (hand.screen.name != "share-pack") hand.press(listOf("pack", "more", "overview").first { it in hand.keys() })
        }
        check(hand.screen.name == "share-pack") { hand.screen.name }
        val press = hand.screen.blocks.filterIsInstance<Block.Press>().first { it.block.need is Need.FileToShare }.block
        val file = File(one, (press.need as Need.FileToShare).name)
        hand.act(Deed.File(press.key, file.path))
        check(file.length() > 100)
        val other = Hand(two, language = "en-US")
        other.screen = other.settled(other.door.receive(file.path))
        check(other.screen.name == "sent") { other.screen.name }
        other.press("take")
        check(other.screen.name == "overview") { other.screen.name }
        check(barDrawn(RowBar(2500.0, 400.0, 900.0, 1400.0, 1000.0, null, false, null, "400 to 1400 Mb/s")).marks.size > 3)
        check(other.door.settle(Settings(two.path, "ar-XB", FirstLength.FEET)).rightToLeft)
        // An error of the shell's own code is for it alone, and it is told again all the same.
        val failing = Hand(three, fails = true)
        failing.screen = failing.settled(failing.door.receive(file.path))
        failing.press("take")
        failing.press("forecast")
        check(failing.screen.name == "forecast") { failing.screen.name }
        if ("overview" in failing.keys()) failing.press("overview") else failing.act(Deed.Back)
        failing.press("free-burst")
        val slot = failing.screen.blocks.filterIsInstance<Block.PhotoSlot>().first().block
        // How long anything takes is the machine's: photos so large that nobody takes one in within a touch, until one did not.
        var photos = 0
        while (failing.timesTold == 0 && photos < 20) failing.act(Deed.Photo(slot.key, photo(three, ++photos).path))
        check(failing.timesTold > 0) { "nobody was told of any of $photos large photos" }
        failing.act(Deed.Back)
        check(failing.screen.name == "overview") { "nothing can be done after a shell that could not draw: ${failing.screen.name}" }
    } finally {
        one.deleteRecursively()
        two.deleteRecursively()
        three.deleteRecursively()
    }
    println("the door from Kotlin: passed")
}
