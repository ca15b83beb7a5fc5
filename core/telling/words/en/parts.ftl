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
part-port = { port-alone } of { $part }
port-alone = { $kind ->
    [passive] the passive port (not amplified)
    [through] the way through (OUT)
    [tap] tap { $port } (TAP)
   *[output] output { $port }
}
port-range = outputs { $first }–{ $last }
port-several = outputs { $ports }
port-list = { $ports }
mark = { $tag }
run-tagged = { $tag } (the cable to { $part })
run-between = the cable from { $from } to { $part }
run-to = the cable to { $part }
# Nobody is fed over it any more.
run-former = { $run }, as it was
room-named = { $name }
room-of = the room of { $outlets }
room-unnamed = a room without a name
naming-house = the house

service-cable_tv = cable TV
service-cable_internet = cable internet
service-antenna_tv = antenna TV
service-satellite_tv = satellite TV
service-provider_network = the provider’s own network
service-fibre_link = the fibre box’s link
service-power_over_coax = power over the coax
service-at = { $service } by { $entry }
