package legwork.phone.ui

import android.annotation.SuppressLint
import android.view.View
import android.widget.LinearLayout
import legwork.door.Aloud
import legwork.door.AloudRole
import legwork.door.PressWeight
import legwork.phone.R
import legwork.phone.logic.Offer
import legwork.phone.logic.Offered

/** What is said of a file that was made, and beneath it what can be done with that file. */
@SuppressLint("ViewConstructor")
class OfferView(tools: Tools, offer: Offer, isNew: Boolean) : LinearLayout(tools.context) {
    init {
        orientation = VERTICAL
        val says = context.getString(saidOf(offer), offer.name)
        val isProblem = offer is Offer.Broken || offer is Offer.Made && offer.isRefused
        val note = below(framedNote(tools, says, isProblem))
        note.says(Aloud(if (isProblem) AloudRole.ALERT else AloudRole.STATUS, says, "", ""))
        if (!isNew) note.accessibilityLiveRegion = View.ACCESSIBILITY_LIVE_REGION_NONE
        for ((what, words) in pressesOf(offer)) {
            val word = context.getString(words)
            val press = button(tools, word, if (what == Offered.WITHOUT) PressWeight.QUIET else PressWeight.OTHER) { tools.hands.does(what, offer) }
            below(press, tools.paper.px(R.dimen.s2)).says(Aloud(AloudRole.PRESS, word, "", ""))
        }
    }
}

private fun saidOf(offer: Offer): Int = when (offer) {
    is Offer.Kept -> R.string.file_kept
    is Offer.Broken -> if (offer.isHere) R.string.file_broken else R.string.file_broken_gone
    is Offer.Made -> when {
        !offer.isRefused -> R.string.file_made
        offer.isHere -> R.string.file_unwritten
        else -> R.string.file_unwritten_gone
    }
}

private fun pressesOf(offer: Offer): List<Pair<Offered, Int>> = when (offer) {
    is Offer.Kept -> emptyList()
    is Offer.Made -> listOf(Offered.KEEP to R.string.file_keep, Offered.SEND to R.string.file_send).takeIf { offer.isHere }.orEmpty()
    is Offer.Broken ->
        listOf(Offered.AGAIN to R.string.file_again, Offered.SEND to R.string.file_send).takeIf { offer.isHere }.orEmpty() + (Offered.WITHOUT to R.string.file_without)
}
