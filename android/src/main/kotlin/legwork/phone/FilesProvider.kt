package legwork.phone

import android.content.ContentProvider
import android.content.ContentValues
import android.database.Cursor
import android.database.MatrixCursor
import android.net.Uri
import android.os.ParcelFileDescriptor
import android.provider.OpenableColumns
import android.webkit.MimeTypeMap
import java.io.File
import java.io.FileNotFoundException
import legwork.phone.logic.Places

/**
 * Lets another program open one file of ours for which it was given leave: the camera to write a photo, whoever gets a file
 * to read it. Nobody else may ask (it is not exported), and it knows the files on their way alone, never the surveys.
 */
class FilesProvider : ContentProvider() {
    override fun onCreate() = true

    private fun file(uri: Uri): File {
        val places = Places(context!!.filesDir, context!!.cacheDir)
        return places.opened(uri.pathSegments) ?: throw FileNotFoundException("no such file")
    }

    override fun openFile(uri: Uri, mode: String): ParcelFileDescriptor =
        ParcelFileDescriptor.open(file(uri), ParcelFileDescriptor.parseMode(mode))

    override fun getType(uri: Uri): String = typeOf(uri.lastPathSegment ?: "")

    override fun query(uri: Uri, wanted: Array<String>?, selection: String?, arguments: Array<String>?, order: String?): Cursor {
        val file = file(uri)
        val columns = wanted ?: arrayOf(OpenableColumns.DISPLAY_NAME, OpenableColumns.SIZE)
        val cursor = MatrixCursor(columns)
        cursor.addRow(
            columns.map {
                when (it) {
                    OpenableColumns.DISPLAY_NAME -> file.name
                    OpenableColumns.SIZE -> file.length()
                    else -> null
                }
            },
        )
        return cursor
    }

    override fun insert(uri: Uri, values: ContentValues?): Uri? = null
    override fun update(uri: Uri, values: ContentValues?, selection: String?, arguments: Array<String>?) = 0
    override fun delete(uri: Uri, selection: String?, arguments: Array<String>?) = 0

    companion object {
        const val AUTHORITY = "legwork.phone.files"

        fun address(places: Places, file: File): Uri = Uri.Builder().scheme("content").authority(AUTHORITY)
            .apply { places.segments(file).forEach(::appendPath) }.build()

        fun typeOf(name: String): String {
            val end = name.substringAfterLast('.', "")
            return MimeTypeMap.getSingleton().getMimeTypeFromExtension(end) ?: "application/octet-stream"
        }
    }
}
