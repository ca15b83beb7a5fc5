package legwork.phone.ui

import android.content.Context
import android.hardware.camera2.CameraAccessException
import android.hardware.camera2.CameraCharacteristics
import android.hardware.camera2.CameraManager
import android.os.Handler
import android.os.Looper
import android.view.View
import android.widget.ImageView
import legwork.phone.R

/** The light of the device: it needs no permission. The system turns it off where the camera needs it. */
class Light(private val context: Context, private val cannot: (Int) -> Unit) {
    private val cameras = context.getSystemService(Context.CAMERA_SERVICE) as CameraManager?
    private var key: View? = null
    private var isOn = false
    private val seen = object : CameraManager.TorchCallback() {
        override fun onTorchModeChanged(camera: String, on: Boolean) {
            if (camera == lamp()) set(on)
        }
    }
    private var lamp: String? = null

    private fun lamp(): String? {
        if (lamp == null) {
            lamp = try {
                cameras?.cameraIdList?.firstOrNull { cameras.getCameraCharacteristics(it).get(CameraCharacteristics.FLASH_INFO_AVAILABLE) == true }
            } catch (_: CameraAccessException) {
                null
            } catch (_: IllegalArgumentException) {
                null
            }
        }
        return lamp
    }

    fun watch() { cameras?.registerTorchCallback(seen, Handler(Looper.getMainLooper())) }

    fun unwatch() { cameras?.unregisterTorchCallback(seen) }

    /** Its key in the dock. */
    fun key(tools: Tools): View {
        val name = context.getString(R.string.light)
        val made = iconKey(tools, R.drawable.sign_light, name) { turn() }
        key = made
        set(isOn)
        return made
    }

    private fun turn() {
        val lamp = lamp() ?: return cannot(R.string.light_none)
        // Once: the system may report the change before the call returns.
        val next = !isOn
        try {
            cameras?.setTorchMode(lamp, next)
            set(next)
        } catch (_: CameraAccessException) {
            cannot(R.string.light_none)
        } catch (_: IllegalArgumentException) {
            cannot(R.string.light_none)
        }
    }

    private fun set(on: Boolean) {
        isOn = on
        val key = key as? android.widget.LinearLayout ?: return
        (key.getChildAt(0) as ImageView).setImageResource(if (on) R.drawable.sign_light_on else R.drawable.sign_light)
        key.isSelected = on
        key.says(
            legwork.door.Aloud(legwork.door.AloudRole.SWITCH, context.getString(R.string.light), "", ""), States(picked = on),
        )
    }
}
