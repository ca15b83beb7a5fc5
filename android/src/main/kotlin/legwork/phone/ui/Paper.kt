package legwork.phone.ui

import android.content.Context
import android.graphics.Typeface
import android.os.Build
import android.util.TypedValue
import android.view.ContextThemeWrapper
import android.view.Gravity
import android.view.View
import android.widget.TextView
import legwork.phone.R
import legwork.phone.logic.NewerSdk
import kotlin.math.roundToInt

/** How type is set; sizes, leading and weight are those of the look. */
enum class Type(val size: Int, val line: Int, val weight: Int, val family: Family) {
    LEAD(R.dimen.type_lead, R.dimen.line_lead, R.integer.weight_lead, Family.LEAD),
    HEAD(R.dimen.type_head, R.dimen.line_head, R.integer.weight_head, Family.LEAD),
    PRESS(R.dimen.type_press, R.dimen.line_press, R.integer.weight_press, Family.TEXT),
    TEXT(R.dimen.type_text, R.dimen.line_text, R.integer.weight_text, Family.TEXT),
    ROW(R.dimen.type_row, R.dimen.line_row, R.integer.weight_row, Family.TEXT),
    SAYS(R.dimen.type_says, R.dimen.line_says, R.integer.weight_says, Family.TEXT),
    ASIDE(R.dimen.type_aside, R.dimen.line_aside, R.integer.weight_aside, Family.TEXT),
    TAG(R.dimen.type_tag, R.dimen.line_tag, R.integer.weight_tag, Family.TAG),
    NUMBER(R.dimen.type_number, R.dimen.line_number, R.integer.weight_number, Family.TEXT),
}

/** The families of the system that the look asks for. */
enum class Family(val face: Typeface) { LEAD(Typeface.SERIF), TEXT(Typeface.SANS_SERIF), TAG(Typeface.MONOSPACE) }

/** The look's numbers on this device. */
class Paper(val context: Context) {
    private val resources = context.resources

    /**
     * For words, boxes and pictures: what they look like is all said here, and looking through the platform's whole theme for it
     * is most of what making a view costs.
     */
    val plain: Context = ContextThemeWrapper(context, resources.newTheme().apply { applyStyle(R.style.Plain, true) })

    fun ink(id: Int): Int = context.getColor(id)

    fun px(id: Int): Int = resources.getDimensionPixelSize(id)

    fun exact(id: Int): Float = resources.getDimension(id)

    fun dp(dp: Float): Int = (dp * resources.displayMetrics.density).roundToInt()

    private fun sp(sp: Float): Float = TypedValue.applyDimension(TypedValue.COMPLEX_UNIT_SP, sp, resources.displayMetrics)

    /** Lead and answers grow less than text with the user's own size: half of them is of the paper. */
    private fun size(type: Type): Float {
        val grown = resources.getDimension(type.size)
        val share = when (type) {
            Type.LEAD -> LEAD_GROWS
            Type.PRESS -> PRESS_GROWS
            else -> return grown
        }
        val plain = grown / sp(1f) * resources.displayMetrics.density
        return plain * (1 - share) + grown * share
    }

    /** Sets a text as the look wants it. */
    fun <T : TextView> set(view: T, type: Type, ink: Int = R.color.text, weight: Int? = null): T {
        val size = size(type)
        view.setTextSize(TypedValue.COMPLEX_UNIT_PX, size)
        view.typeface = face(type.family.face, weight ?: resources.getInteger(type.weight))
        view.setTextColor(ink(ink))
        view.gravity = Gravity.START or Gravity.CENTER_VERTICAL
        view.textAlignment = View.TEXT_ALIGNMENT_VIEW_START
        view.includeFontPadding = false
        // The leading grows as the type does.
        val line = resources.getDimension(type.line) / resources.getDimension(type.size) * size
        val own = view.paint.getFontMetrics(null)
        view.setLineSpacing((line - own).coerceAtLeast(0f), 1f)
        return view
    }

    fun text(words: CharSequence, type: Type, ink: Int = R.color.text, weight: Int? = null): TextView =
        set(TextView(plain), type, ink, weight).apply { text = together(words) }

    /** A unit such as “Mb/s” stays on one line: a word joiner behind its stroke (Unicode line breaking, WJ). */
    private fun together(words: CharSequence): CharSequence =
        if ('/' in words) UNIT.replace(words, "/\u2060") else words

    private fun face(family: Typeface, weight: Int): Typeface = when {
        Build.VERSION.SDK_INT >= 28 -> weighted(family, weight)
        weight >= 600 -> Typeface.create(family, Typeface.BOLD)
        else -> family
    }

    @NewerSdk
    private fun weighted(family: Typeface, weight: Int): Typeface = Typeface.create(family, weight, false)

    private companion object {
        val UNIT = Regex("(?<=\\p{L})/(?=\\p{L})")
        const val LEAD_GROWS = 16f / 28f
        const val PRESS_GROWS = 14f / 18f
    }
}
