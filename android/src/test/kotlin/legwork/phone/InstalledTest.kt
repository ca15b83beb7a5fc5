package legwork.phone

import android.content.Intent
import android.content.pm.ApplicationInfo
import android.net.Uri
import android.os.StrictMode
import java.io.ByteArrayInputStream
import java.io.File
import javax.xml.parsers.DocumentBuilderFactory
import legwork.door.NoticeRole
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertNotEquals
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf
import org.w3c.dom.Element

/** What the system knows of the app from its manifest, and what it does by that. */
@RunWith(RobolectricTestRunner::class)
class InstalledTest {
    private val app get() = RuntimeEnvironment.getApplication() as LegworkApp

    /** Whether the system offers the app for this. */
    private fun isFound(action: String, type: String?, address: String = "content://mail/1"): Boolean {
        val ask = Intent(action).setDataAndType(if (action == Intent.ACTION_VIEW) Uri.parse(address) else null, type)
        @Suppress("DEPRECATION") return app.packageManager.queryIntentActivities(ask, 0).any { it.activityInfo.packageName == app.packageName }
    }

    @Test fun theSystemOffersTheAppForWhatItOpens() {
        val surveys = listOf("application/octet-stream", "application/zip", "application/vnd.legwork.survey+zip")
        for (type in surveys) for (action in listOf(Intent.ACTION_VIEW, Intent.ACTION_SEND, Intent.ACTION_SEND_MULTIPLE)) assertTrue("$action $type", isFound(action, type))
        for (action in listOf(Intent.ACTION_SEND, Intent.ACTION_SEND_MULTIPLE)) assertTrue(action, isFound(action, "image/jpeg"))
        // A picture is opened by others, and so is a page; and nothing comes by a path or over a network.
        assertFalse(isFound(Intent.ACTION_VIEW, "image/jpeg"))
        assertFalse(isFound(Intent.ACTION_SEND, "text/html"))
        for (address in listOf("file:///sdcard/a.lwk", "http://example.org/a.lwk")) assertFalse(address, isFound(Intent.ACTION_VIEW, surveys[0], address))
    }

    @Test fun theAppIsBegunByAFile() {
        shadowOf(app.contentResolver).registerInputStreamSupplier(Uri.parse("content://mail/1")) { ByteArrayInputStream("no survey".toByteArray()) }
        val phone = Phone(Ways().home, Intent(Intent.ACTION_VIEW).setData(Uri.parse("content://mail/1")))
        assertEquals(listOf(NoticeRole.PROBLEM), phone.screen.notices.map { it.role })
    }

    @Test fun nobodyElseMayAskForFiles() {
        val provider = app.packageManager.resolveContentProvider(FilesProvider.AUTHORITY, 0)!!
        assertFalse(provider.exported)
        assertTrue("but by leave for one", provider.grantUriPermissions)
    }

    private fun rules(file: String): Element = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(File("src/main/res/xml/$file")).documentElement

    private fun Element.all(name: String): List<Pair<String, String>> =
        getElementsByTagName(name).let { found -> (0 until found.length).map { found.item(it) as Element } }.map { it.getAttribute("domain") to it.getAttribute("path") }

    @Test fun nothingGoesToACloudAndSurveysGoAlongToAnotherPhone() {
        // All that an app may have (developer.android.com, "Back up user data with Auto Backup"), but what only direct boot has: from memory.
        val everything = listOf("root", "file", "database", "sharedpref", "external").map { it to "." }.toSet()
        val older = rules("full_backup_content.xml")
        assertEquals(everything to 0, older.all("exclude").toSet() to older.all("include").size)
        val rules = rules("data_extraction_rules.xml")
        val (cloud, transfer) = listOf("cloud-backup", "device-transfer").map { rules.getElementsByTagName(it).item(0) as Element }
        assertEquals(everything to 0, cloud.all("exclude").toSet() to cloud.all("include").size)
        // Whoever includes one thing includes nothing else: not what is on its way.
        val home = app.places.home.relativeTo(app.filesDir).path
        assertEquals(listOf("file" to home), transfer.all("include"))
        assertEquals(listOf("file" to "$home/device.json"), transfer.all("exclude"))
        Phone(Ways().home)
        assertTrue("as it is called", File(app.places.home, "device.json").isFile)
    }

    @Test fun whoTriesTheAppIsToldWhatKeepsTheThreadThatDraws() {
        val before = StrictMode.getThreadPolicy()
        try {
            StrictMode.setThreadPolicy(StrictMode.ThreadPolicy.LAX)
            val lax = StrictMode.getThreadPolicy().toString()
            // As it is released nothing is looked for.
            app.applicationInfo.flags = app.applicationInfo.flags and ApplicationInfo.FLAG_DEBUGGABLE.inv()
            app.onCreate()
            assertEquals(lax, StrictMode.getThreadPolicy().toString())
            app.applicationInfo.flags = app.applicationInfo.flags or ApplicationInfo.FLAG_DEBUGGABLE
            app.onCreate()
            assertNotEquals(lax, StrictMode.getThreadPolicy().toString())
        } finally {
            StrictMode.setThreadPolicy(before)
        }
    }
}
