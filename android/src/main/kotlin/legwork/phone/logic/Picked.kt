package legwork.phone.logic

import legwork.door.ChoiceBlock
import legwork.door.ChoiceOption

/** All that is picked once somebody has touched an option. “Not sure” excludes all others. */
fun picked(choice: ChoiceBlock, touched: ChoiceOption): List<String> {
    if (!choice.several) return listOf(touched.key)
    if (touched.picked) return choice.options.filter { it.picked && it.key != touched.key }.map { it.key }
    val stays = choice.options.filter { it.picked && it.unsure == touched.unsure }
    val with = if (touched.unsure) listOf(touched.key) else stays.map { it.key } + touched.key
    return choice.options.map { it.key }.filter { it in with }
}
