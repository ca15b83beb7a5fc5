package legwork.phone

import android.view.View
import android.view.View.MeasureSpec
import legwork.door.Screen
import legwork.phone.logic.Slices

/** Runs what follows from showing something, one step a slice: as on the slowest of phones. `each` comes after each message. */
fun Phone.stepByStep(each: () -> Unit = {}, shows: () -> Unit) {
    val slices = window.page.slices
    val (clock, before) = slices.clock to this.each
    var time = 0L
    // Each look at this clock finds the slice over.
    slices.clock = { time += 2 * Slices.SLICE; time }
    this.each = each
    shows()
    each()
    idle()
    this.each = before
    slices.clock = clock
    check(slices.isDone)
}

/**
 * Shows a screen, and returns how many views one message of the drawing thread made at most. By it no call of that thread grows
 * with the screen, however fast or busy the computer is that tells.
 */
fun Phone.mostMadeAtOnce(screen: Screen): Int {
    val page = window.page
    var before = Phone.views(page).size
    var most = 0
    stepByStep({
        val now = Phone.views(page).size
        most = maxOf(most, now - before)
        before = now
    }) { page.show(screen.copy(place = screen.place + " step by step"), null) }
    return most
}

/** Lays the page out at once, as a phone does between two slices. */
fun Phone.layOut() {
    val page = window.page
    fun exactly(px: Int) = MeasureSpec.makeMeasureSpec(px, MeasureSpec.EXACTLY)
    val (wide, high) = page.width to page.height
    (page as View).measure(exactly(wide), exactly(high))
    page.layout(page.left, page.top, page.left + wide, page.top + high)
}
