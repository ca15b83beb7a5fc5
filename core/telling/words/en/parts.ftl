# Parts, places and lists: how a thing is named in a sentence.

list-last = { $rest } and { $last }

part-entry = the entry
part-ground_block = the ground block
part-entry_filter = the entry filter
part-splitter = { $legs ->
    [0] a splitter
    [8] an 8-way splitter
    [11] an 11-way splitter
    [18] an 18-way splitter
   *[other] a { $legs }-way splitter
}
part-tap = a tap
part-amplifier = an amplifier
part-barrel = a barrel (cable joiner)
part-outlet = an outlet
part-terminator = a 75-ohm cap (terminator)
part-high_pass_filter = a high-pass filter
part-satellite_combiner = a satellite combiner
part-pad = a pad (fixed loss)
part-power_inserter = a power inserter
part-unknown = a part not yet identified

# A part with its tag: S2 (a 4-way splitter).
part-tagged = { $tag } ({ $part })
part-in-room = { $part } in { $room }
part-port = output { $port } of { $part }
part-through-port = the way through (OUT) of { $part }
part-tap-port = tap { $port } (TAP) of { $part }
part-passive-port = the passive port (not amplified) of { $part }
mark = { $tag }
run-tagged = { $tag } (the cable to { $part })
run-to = the cable to { $part }

service-cable-tv = cable TV
service-cable-internet = cable internet
service-antenna-tv = antenna TV
service-satellite-tv = satellite TV
service-provider-network = the provider's own network
service-fibre-link = the fibre box's link
service-power-over-coax = power over the coax
