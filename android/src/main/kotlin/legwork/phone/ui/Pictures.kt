package legwork.phone.ui

import android.graphics.Bitmap
import android.graphics.BitmapFactory
import android.graphics.Matrix
import android.media.ExifInterface
import android.util.LruCache
import java.io.File
import legwork.door.PhotoPiece
import legwork.phone.logic.Sitting

/** Photos as bitmaps, made away from the drawing thread, never larger than they are shown. */
class Pictures(private val sitting: Sitting) {
    private val small = object : LruCache<String, Bitmap>(SMALL_BYTES) {
        override fun sizeOf(key: String, value: Bitmap) = value.byteCount
    }

    fun small(photo: String, then: (Bitmap) -> Unit) {
        small.get(photo)?.let { return then(it) }
        sitting.photo(photo, small = true, { BitmapFactory.decodeFile(it.path) }) { bitmap ->
            small.put(photo, bitmap)
            then(bitmap)
        }
    }

    fun piece(piece: PhotoPiece, then: (Bitmap) -> Unit) {
        val key = with(piece) { "$photo/$left/$top/$width/$height" }
        small.get(key)?.let { return then(it) }
        sitting.piece(piece, { BitmapFactory.decodeFile(it.path) }) { bitmap ->
            small.put(key, bitmap)
            then(bitmap)
        }
    }

    fun whole(photo: String, then: (Bitmap) -> Unit) = sitting.photo(photo, small = false, ::large, then)

    /** At most so large as fits in memory and can be read; the right way up. */
    private fun large(file: File): Bitmap? {
        val size = BitmapFactory.Options().apply { inJustDecodeBounds = true }
        BitmapFactory.decodeFile(file.path, size)
        if (size.outWidth <= 0) return null
        var step = 1
        while (size.outWidth / step > LARGEST || size.outHeight / step > LARGEST) step *= 2
        val bitmap = BitmapFactory.decodeFile(file.path, BitmapFactory.Options().apply { inSampleSize = step }) ?: return null
        val turn = when (ExifInterface(file.path).getAttributeInt(ExifInterface.TAG_ORIENTATION, ExifInterface.ORIENTATION_NORMAL)) {
            ExifInterface.ORIENTATION_ROTATE_90 -> 90f
            ExifInterface.ORIENTATION_ROTATE_180 -> 180f
            ExifInterface.ORIENTATION_ROTATE_270 -> 270f
            else -> return bitmap
        }
        return Bitmap.createBitmap(bitmap, 0, 0, bitmap.width, bitmap.height, Matrix().apply { postRotate(turn) }, true)
    }

    private companion object {
        const val SMALL_BYTES = 24 shl 20
        const val LARGEST = 3000
    }
}
