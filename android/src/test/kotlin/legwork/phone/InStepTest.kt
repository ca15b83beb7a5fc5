package legwork.phone

import java.io.File
import java.util.Properties
import javax.xml.parsers.DocumentBuilderFactory
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Test
import org.w3c.dom.Element

/** What makes the APK (Gradle) and what is run here (Maven) stand on the same sources, versions and manifest. */
class InStepTest {
    private val pom = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(File("pom.xml"))
    private val gradle = File("build.gradle.kts").readText()
    private val held = Properties().apply { File("gradle.properties").reader().use(::load) }

    private fun property(name: String) = pom.getElementsByTagName(name).item(0).textContent

    @Test fun versionsAreTheSame() {
        for (name in listOf("min.sdk", "target.sdk", "kotlin.version", "jna.version")) assertEquals(name, property(name), held.getProperty(name))
        for (name in listOf("min.sdk", "target.sdk", "jna.version")) assertTrue("build.gradle.kts reads $name", gradle.contains("held(\"$name\")"))
        assertTrue(File("settings.gradle.kts").readText().contains("gradleProperty(\"kotlin.version\")"))
    }

    @Test fun sourcesAreTheSame() {
        val compiled = pom.getElementsByTagName("execution").let { all -> (0 until all.length).map { all.item(it) as Element } }
            .first { it.getElementsByTagName("id").item(0).textContent == "kc" }.getElementsByTagName("sourceDir")
        val maven = (0 until compiled.length).map { compiled.item(it).textContent }.filter { !it.contains("\${") }
        assertEquals(listOf("src/main/kotlin", "core/src/main/kotlin"), maven)
        assertTrue(gradle.contains("kotlin.srcDirs(" + maven.joinToString(", ") { "\"$it\"" } + ")"))
        val resources = Regex("aapt2 compile --dir (\\S+)").findAll(File("tools/res.sh").readText()).map { it.groupValues[1] }.toList()
        assertTrue(gradle.contains("res.srcDirs(" + resources.joinToString(", ") { "\"$it\"" } + ")"))
        assertTrue(gradle.contains("manifest.srcFile(\"src/main/AndroidManifest.xml\")"))
        assertTrue(File("tools/res.sh").readText().contains("src/main/AndroidManifest.xml"))
    }

    @Test fun bothCarryTheModelThatReadsLabels() {
        val script = "tools/model.sh"
        assertTrue(gradle.contains("assets.srcDirs(\"target/assets\")"))
        assertTrue("before anything is built", gradle.contains("commandLine(\"sh\", \"$script\")") && gradle.contains("tasks.named(\"preBuild\") { dependsOn(model) }"))
        val arguments = pom.getElementsByTagName("argument").let { all -> (0 until all.length).map { all.item(it).textContent } }
        assertTrue(script in arguments)
        assertTrue(File(script).readText().contains("target/assets/print-model"))
    }

    @Test fun theManifestAsksForNothingThatIsNotUsed() {
        val manifest = File("src/main/AndroidManifest.xml").readText()
        assertTrue("no permission", !manifest.contains("uses-permission"))
        // The app's own code opens no connection, and none of it decides anything about cables.
        val sources = File("src/main/kotlin").walk().filter { it.extension == "kt" }.map { it.readText() }.toList()
        for (word in listOf("java.net", "HttpURL", "Socket(", "WebView")) assertTrue(word, sources.none { it.contains(word) })
    }

    @Test fun theShellDecidesNothingAboutCoax() {
        val words = Regex("moca|docsis|coax|splitter|dbmv|amplifier", RegexOption.IGNORE_CASE)
        val found = File("src/main/kotlin").walk().filter { it.extension == "kt" }.flatMap { file -> file.readLines().filter(words::containsMatchIn).map { "${file.name}: $it" } }.toList()
        assertEquals(emptyList<String>(), found)
        val keys = Regex("\\.key == \"|\\.name == \"")
        val compared = File("src/main/kotlin").walk().filter { it.extension == "kt" }.flatMap { file -> file.readLines().filter(keys::containsMatchIn).map { "${file.name}: $it" } }.toList()
        assertEquals("no key and no screen is known by name", emptyList<String>(), compared)
    }
}
