package legwork.phone

import android.content.Context
import java.io.InputStream
import legwork.phone.logic.Carried

/** The model that reads print, as the app carries it: its assets, which `tools/model.sh` puts there. */
class CarriedModel(private val app: Context) : Carried {
    override fun installed(): String = app.packageManager.getPackageInfo(app.packageName, 0).lastUpdateTime.toString()

    override fun names(): List<String> = app.assets.list(FOLDER).orEmpty().toList()

    override fun open(name: String): InputStream = app.assets.open("$FOLDER/$name")

    private companion object { const val FOLDER = "print-model" }
}
