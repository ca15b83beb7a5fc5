package legwork.phone

import android.content.ContentResolver
import android.content.Intent
import android.database.Cursor
import android.net.Uri
import android.provider.DocumentsContract
import android.provider.OpenableColumns
import legwork.phone.logic.Documents

/** Documents as the system's chooser names them. */
class SystemDocuments(private val resolver: ContentResolver) : Documents {
    override fun open(address: String) = resolver.openOutputStream(Uri.parse(address), "wt")

    override fun name(address: String): String? = asked(address, OpenableColumns.DISPLAY_NAME) { row, at -> row.getString(at) }

    override fun isEmpty(address: String): Boolean = asked(address, OpenableColumns.SIZE) { row, at -> row.getLong(at) } == 0L

    override fun delete(address: String) { DocumentsContract.deleteDocument(resolver, Uri.parse(address)) }

    override fun hold(address: String) = resolver.takePersistableUriPermission(Uri.parse(address), BOTH)

    override fun letGo(address: String) = resolver.releasePersistableUriPermission(Uri.parse(address), BOTH)

    private fun <T : Any> asked(address: String, column: String, read: (Cursor, Int) -> T?): T? =
        resolver.query(Uri.parse(address), arrayOf(column), null, null, null)?.use {
            val at = it.getColumnIndex(column)
            if (at >= 0 && it.moveToFirst() && !it.isNull(at)) read(it, at) else null
        }

    private companion object { const val BOTH = Intent.FLAG_GRANT_READ_URI_PERMISSION or Intent.FLAG_GRANT_WRITE_URI_PERMISSION }
}
