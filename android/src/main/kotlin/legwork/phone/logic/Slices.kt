package legwork.phone.logic

import java.util.concurrent.Executor

/**
 * What the thread that draws has to make, in slices: each ends at the first look at the clock once its time is over, and the
 * next one waits in line behind whatever else that thread has to do. What a step asks for is made right after it: so a screen
 * comes from its top to its foot, however deep a part of it lies. All of it on the thread that draws.
 */
class Slices(private val later: Executor, var clock: () -> Long = System::nanoTime) {
    private class Step(val isLong: Boolean, val make: () -> Unit)

    private val waiting = ArrayDeque<Step>()
    private var within: MutableList<Step>? = null
    private var isInLine = false

    /** Done before each slice, and after it. */
    var before: () -> Unit = {}
    var after: () -> Unit = {}

    /** Goes up whenever what waits is dropped: whoever asked before that has to ask again. */
    var round = 0
        private set

    /** Nothing is left to make. */
    val isDone: Boolean get() = waiting.isEmpty() && within == null

    /** Asks for a step: something small, since no slice ends within one. What is long all the same begins a slice of its own. */
    fun ask(isLong: Boolean = false, make: () -> Unit) {
        val step = Step(isLong, make)
        within?.let { it += step; return }
        waiting += step
        standInLine()
    }

    /** Drops what waits. */
    fun drop() {
        waiting.clear()
        round++
    }

    /** Makes one slice at once, of what is asked for; within a step it has its turn anyway. */
    fun slice() {
        if (within != null) return
        before()
        val end = clock() + SLICE
        var isBegun = false
        while (waiting.isNotEmpty() && !(isBegun && waiting.first().isLong)) {
            made(waiting.removeFirst())
            isBegun = true
            if (clock() >= end) break
        }
        if (waiting.isNotEmpty()) standInLine()
        after()
    }

    private fun made(step: Step) {
        val asked = mutableListOf<Step>()
        within = asked
        try {
            step.make()
        } finally {
            within = null
        }
        waiting.addAll(0, asked)
    }

    private fun standInLine() {
        if (isInLine) return
        isInLine = true
        later.execute {
            isInLine = false
            if (waiting.isNotEmpty()) slice()
        }
    }

    companion object {
        /** Nanoseconds after which a slice ends: a frame has 16 ms, and what was made in it has to be measured and drawn. */
        const val SLICE = 5_000_000L
    }
}
