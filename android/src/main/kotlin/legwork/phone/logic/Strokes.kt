package legwork.phone.logic

import kotlin.math.hypot
import legwork.door.MarkDash
import legwork.door.Spot

/** Lines that are drawn in pieces: struck ones and double ones. In units of 1/96 inch, as `docs/screens.md` says. */
object Strokes {
    private const val APART = 12.0
    private const val REACH = 3.0
    private const val HALF = 2.0
    private const val MOST = 1000

    data class Piece(val from: Spot, val to: Spot)

    /** The pieces of a line through these spots; none where it is not drawn in pieces. */
    fun pieces(way: List<Spot>, dash: MarkDash): List<Piece> {
        val legs = way.zipWithNext().map { (from, to) -> Piece(from, to) }.filter { length(it) > 0.0 }
        return when (dash) {
            MarkDash.STRUCK -> legs.flatMap(::struck)
            MarkDash.DOUBLE -> legs.flatMap(::double)
            else -> emptyList()
        }
    }

    private fun length(leg: Piece) = hypot(leg.to.x - leg.from.x, leg.to.y - leg.from.y)

    private fun struck(leg: Piece): List<Piece> {
        val whole = length(leg)
        val along = (leg.to.x - leg.from.x) / whole
        val down = (leg.to.y - leg.from.y) / whole
        // Slanting: as far along the line as across it.
        val right = (along - down) * REACH
        val under = (down + along) * REACH
        val pieces = mutableListOf(leg)
        var at = APART / 2
        while (at < whole && pieces.size < MOST) {
            val x = leg.from.x + along * at
            val y = leg.from.y + down * at
            pieces += Piece(Spot(x - right, y - under), Spot(x + right, y + under))
            at += APART
        }
        return pieces
    }

    private fun double(leg: Piece): List<Piece> {
        val whole = length(leg)
        val right = -(leg.to.y - leg.from.y) / whole * HALF
        val under = (leg.to.x - leg.from.x) / whole * HALF
        return listOf(1, -1).map { by ->
            Piece(Spot(leg.from.x + right * by, leg.from.y + under * by), Spot(leg.to.x + right * by, leg.to.y + under * by))
        }
    }
}
