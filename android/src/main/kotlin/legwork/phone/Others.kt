package legwork.phone

import android.content.ActivityNotFoundException
import android.content.ClipData
import android.content.Intent
import android.net.Uri
import android.os.Build
import android.provider.MediaStore
import java.io.File
import legwork.door.Block
import legwork.door.Deed
import legwork.door.Screen
import legwork.phone.logic.Awaited
import legwork.phone.logic.Awaited.What
import legwork.phone.logic.Copied
import legwork.phone.logic.NewerSdk
import legwork.phone.logic.Offer
import legwork.phone.logic.Offered
import legwork.phone.logic.Outbox
import legwork.phone.logic.Places
import legwork.phone.logic.Sitting
import legwork.phone.logic.TakenIn
import legwork.phone.logic.Written
import legwork.phone.logic.isPicture

/** What other programs of the phone do for us: camera, photo picker, file chooser, sharing, and what they hand over. */
class Others(
    private val window: MainActivity,
    private val places: Places,
    private val sitting: Sitting,
    private val outbox: Outbox,
    var awaited: Awaited?,
) {
    private val takenIn = TakenIn()
    private val documents = SystemDocuments(window.contentResolver)

    /** Where one is: what is asked for now belongs there. */
    private val place get() = sitting.screen?.place.orEmpty()

    private fun say(words: Int) = sitting.say(window.getString(words))

    // The camera.

    fun takePhoto(key: String, burst: Boolean, at: String = place) = sitting.files({ places.photo() }) { file ->
        val address = FilesProvider.address(places, file)
        val ask = Intent(MediaStore.ACTION_IMAGE_CAPTURE).putExtra(MediaStore.EXTRA_OUTPUT, address)
        ask.clipData = ClipData.newRawUri(null, address)
        ask.addFlags(Intent.FLAG_GRANT_WRITE_URI_PERMISSION or Intent.FLAG_GRANT_READ_URI_PERMISSION)
        ask(Awaited(What.CAMERA, key, at, file.path, burst), ask, R.string.camera_none)
    }

    fun choosePhotos(key: String) {
        val pick = if (Build.VERSION.SDK_INT >= 33) picker() else {
            Intent(Intent.ACTION_GET_CONTENT).setType("image/*").addCategory(Intent.CATEGORY_OPENABLE).putExtra(Intent.EXTRA_ALLOW_MULTIPLE, true)
        }
        ask(Awaited(What.PICK, key, place), pick, R.string.choose_none)
    }

    @NewerSdk
    private fun picker() = Intent(MediaStore.ACTION_PICK_IMAGES).putExtra(MediaStore.EXTRA_PICK_IMAGES_MAX, MediaStore.getPickImagesMaxLimit())

    // Files.

    fun chooseFile(key: String) {
        // Any kind: mail programs and drives do not know ours, and its content decides.
        val open = Intent(Intent.ACTION_OPEN_DOCUMENT).setType("*/*").addCategory(Intent.CATEGORY_OPENABLE)
        ask(Awaited(What.READ, key, place), open, R.string.choose_none)
    }

    /** Has a file written to a place of ours first; it goes on once it is whole there. */
    fun write(key: String, name: String, type: String, way: Written.Way, at: String = place) = sitting.files({ places.toGive(name) }) { file ->
        sitting.bring(Deed.File(key, file.path), at, Written(file, type, way))
    }

    /** What was asked for is written. */
    fun written(written: Written) = when (written.way) {
        Written.Way.SHARE -> {
            handOn(written.file, written.type)
            outbox.made(written.file, written.type)
        }
        Written.Way.PLACE -> chooseWhereTo(written.file, written.type)
    }

    private fun chooseWhereTo(file: File, type: String) {
        val create = Intent(Intent.ACTION_CREATE_DOCUMENT).setType(type).addCategory(Intent.CATEGORY_OPENABLE).putExtra(Intent.EXTRA_TITLE, file.name)
        ask(Awaited(What.WRITE, "", place, file.path, type = type), create, R.string.choose_none)
        if (awaited == null) outbox.made(file, type)
    }

    /** What was offered is done. */
    fun does(what: Offered, offer: Offer) {
        if (offer is Offer.Made) when (what) {
            Offered.KEEP -> chooseWhereTo(offer.file, offer.type)
            else -> handOn(offer.file, offer.type)
        }
        if (offer is Offer.Broken) when (what) {
            Offered.AGAIN -> outbox.again(offer)
            Offered.WITHOUT -> outbox.doWithout(offer)
            else -> outbox.copy(offer) { file -> if (file == null) say(R.string.file_no_room) else handOn(file, offer.leaving.type) }
        }
    }

    private fun handOn(file: File, type: String) {
        val address = FilesProvider.address(places, file)
        val send = Intent(Intent.ACTION_SEND).setType(type).putExtra(Intent.EXTRA_STREAM, address).putExtra(Intent.EXTRA_TITLE, file.name)
        send.clipData = ClipData.newRawUri(file.name, address)
        send.addFlags(Intent.FLAG_GRANT_READ_URI_PERMISSION)
        try {
            window.startActivity(Intent.createChooser(send, file.name).addFlags(Intent.FLAG_GRANT_READ_URI_PERMISSION))
        } catch (_: ActivityNotFoundException) {
            say(R.string.share_none)
        }
    }

    // Answers.

    private fun ask(next: Awaited, intent: Intent, none: Int) {
        awaited = next
        try {
            window.startActivityForResult(intent, REQUEST)
        } catch (_: ActivityNotFoundException) {
            awaited = null
            say(none)
        } catch (_: SecurityException) {
            awaited = null
            say(none)
        }
    }

    fun answered(result: Int, data: Intent?) {
        val asked = awaited ?: return
        awaited = null
        if (result != android.app.Activity.RESULT_OK) {
            if (asked.what == What.WRITE) outbox.made(File(asked.file), asked.type)
            return
        }
        when (asked.what) {
            What.CAMERA -> photographed(asked, data)
            What.PICK -> picked(asked, data)
            What.READ -> data?.data?.let { read(asked, it) }
            What.WRITE -> data?.data?.let { outbox.keep(File(asked.file), asked.type, it.toString()) }
        }
    }

    /** Some cameras write where they were told to, some give an address of their own, and some give nothing. */
    private fun photographed(asked: Awaited, data: Intent?) {
        val file = File(asked.file)
        sitting.files({
            if (file.length() > 0) Copied.DONE
            else data?.data?.let { copied(it, file) } ?: Copied.NOTHING
        }) { copied ->
            if (copied != Copied.DONE) return@files say(if (copied == Copied.NOTHING) R.string.camera_empty else fault(copied))
            if (asked.burst) sitting.burst = asked
            sitting.bring(Deed.Photo(asked.key, file.path), asked.place)
        }
    }

    private fun picked(asked: Awaited, data: Intent?) {
        val all = addresses(data)
        each(all) { file -> sitting.bring(Deed.Photo(asked.key, file.path), asked.place) }
    }

    private fun read(asked: Awaited, from: Uri) = each(listOf(from)) { file -> sitting.bring(Deed.File(asked.key, file.path), asked.place) }

    private fun addresses(data: Intent?): List<Uri> {
        val clip = data?.clipData ?: return listOfNotNull(data?.data)
        return (0 until clip.itemCount).mapNotNull { clip.getItemAt(it).uri }
    }

    /** Each is copied to a place of ours and then given away; what cannot be read is said. */
    private fun each(all: List<Uri>, give: (File) -> Unit) {
        for (from in all) {
            sitting.files({ received(from) }) { (file, copied) ->
                if (copied == Copied.DONE) give(file) else say(fault(copied))
            }
        }
    }

    private fun received(from: Uri): Pair<File, Copied> {
        val name = try {
            documents.name(from.toString())
        } catch (_: RuntimeException) {
            // What goes wrong in the other program comes here as it was thrown there: then it has no name.
            null
        }
        val file = places.received(name)
        return file to copied(from, file).also { if (it != Copied.DONE) Places.arrived(file) }
    }

    private fun copied(from: Uri, to: File): Copied = takenIn.copy({ window.contentResolver.openInputStream(from) }, to)

    private fun fault(copied: Copied): Int = when (copied) {
        Copied.NO_ROOM -> R.string.file_no_room
        Copied.TOO_LARGE -> R.string.file_too_large
        else -> R.string.file_unread
    }

    /** A screen is shown: where a burst goes on, the camera comes up again by itself. */
    fun shown(screen: Screen) {
        val on = sitting.burst ?: return
        // What was taken is being taken in: the place for photos comes back after that.
        if (screen.blocks.any { it is Block.HowFar }) return
        sitting.burst = null
        val slot = screen.blocks.firstNotNullOfOrNull { block -> (block as? Block.PhotoSlot)?.block?.takeIf { it.key == on.key } }
        val isThere = screen.place == on.place && slot?.burst == true
        if (isThere && screen.notices.none { it.role == legwork.door.NoticeRole.PROBLEM }) takePhoto(on.key, burst = true)
    }

    // What another program hands over.

    fun given(intent: Intent?) {
        @Suppress("DEPRECATION")
        val all = when (intent?.action) {
            Intent.ACTION_VIEW -> listOfNotNull(intent.data)
            Intent.ACTION_SEND -> listOfNotNull(intent.getParcelableExtra(Intent.EXTRA_STREAM) as? Uri)
            Intent.ACTION_SEND_MULTIPLE -> intent.getParcelableArrayListExtra<Uri>(Intent.EXTRA_STREAM).orEmpty()
            else -> return
        }
        // All are copied first: what becomes of one may be another screen, without a place for the next.
        val ours = all.filter { it.scheme == "content" }
        sitting.files({ ours.map(::received) }) { got ->
            got.filter { it.second != Copied.DONE }.forEach { say(fault(it.second)) }
            sort(got.filter { it.second == Copied.DONE }.map { it.first })
        }
    }

    /** Pictures go to the place for photos that is shown; whatever else it is, the core looks into it. */
    private fun sort(files: List<File>) = sitting.files({ files.partition(::isPicture) }) { (pictures, rest) ->
        if (pictures.isNotEmpty()) sitting.photos(pictures)
        rest.forEach(sitting::receive)
    }

    private companion object { const val REQUEST = 7 }
}
