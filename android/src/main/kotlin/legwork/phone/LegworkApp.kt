package legwork.phone

import android.app.Application
import android.content.pm.ApplicationInfo
import android.content.res.Configuration
import android.icu.util.LocaleData
import android.icu.util.ULocale
import android.os.Build
import android.os.Handler
import android.os.Looper
import android.os.StrictMode
import java.util.concurrent.Executor
import java.util.Locale
import legwork.door.FirstLength
import legwork.door.Settings
import legwork.phone.logic.Laid
import legwork.phone.logic.NewerSdk
import legwork.phone.logic.Outbox
import legwork.phone.logic.Places
import legwork.phone.logic.PrintModel
import legwork.phone.logic.Sitting
import legwork.phone.logic.TakenIn
import legwork.phone.ui.Pictures

/** What outlives a turned phone: the guide behind its door. */
class LegworkApp : Application() {
    lateinit var places: Places
        private set
    private var held: Held? = null
    /** How files of the app are copied. */
    var takenIn = TakenIn()
    private val main = Handler(Looper.getMainLooper())

    override fun onCreate() {
        super.onCreate()
        places = Places(filesDir, cacheDir)
        if (applicationInfo.flags and ApplicationInfo.FLAG_DEBUGGABLE != 0) watch()
    }

    /** Whoever tries the app finds in the log what keeps the thread that draws. */
    private fun watch() = StrictMode.setThreadPolicy(
        StrictMode.ThreadPolicy.Builder().detectDiskReads().detectDiskWrites().detectNetwork().detectCustomSlowCalls().penaltyLog().build(),
    )

    /** The guide, what was drawn of photos, and the files on their way to other programs. */
    data class Held(val sitting: Sitting, val pictures: Pictures, val outbox: Outbox) {
        /** Whether the model that reads print is laid out, or is just being. */
        var isModelLaid = false
    }

    /** The guide, opened where the token says if it is not open yet. */
    fun held(token: String?): Held = held ?: run {
        val sitting = Sitting(settings(resources.configuration), token, Executor { main.post(it) })
        sitting.files({ places.tidy() }) {}
        val outbox = Outbox(places, SystemDocuments(contentResolver), sitting).also { it.look() }
        Held(sitting, Pictures(sitting), outbox).also { held = it }
    }

    /** Has labels read from photos, as soon as what reads them is laid out of the app; where there was no room, tries it again. */
    fun readLabels() {
        val held = held?.takeIf { !it.isModelLaid } ?: return
        held.isModelLaid = true
        held.sitting.files({ PrintModel(places.model, CarriedModel(this), takenIn).lay() }) { (folder, laid) ->
            held.sitting.readPrintWith(folder)
            if (laid == Laid.NO_ROOM || laid == Laid.BROKEN_OFF) held.isModelLaid = false
            if (laid == Laid.NO_ROOM) held.sitting.say(getString(R.string.labels_no_room))
        }
    }

    override fun onConfigurationChanged(next: Configuration) {
        super.onConfigurationChanged(next)
        held?.sitting?.settle(settings(next))
    }

    private fun settings(configuration: Configuration): Settings {
        val locale = configuration.locales[0]
        return Settings(places.home.path, locale.toLanguageTag(), if (hasFeet(locale)) FirstLength.FEET else FirstLength.METRES)
    }

    private fun hasFeet(locale: Locale): Boolean =
        if (Build.VERSION.SDK_INT >= 28) hasFeetBySystem(locale) else locale.country in FEET

    @NewerSdk
    private fun hasFeetBySystem(locale: Locale): Boolean =
        LocaleData.getMeasurementSystem(ULocale.forLocale(locale)) == LocaleData.MeasurementSystem.US

    private companion object {
        /** Where the customary measures hold (CLDR, `measurementData`). */
        val FEET = setOf("US", "LR", "MM")
    }
}
