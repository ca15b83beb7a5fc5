# The wiring map: names of parts as they stand in a drawing, remarks of a few words, what is said of a part in full.

map-name = Wiring map
    .after = Wiring map after the work
map-description = { $parts ->
    [one] One part
   *[other] { $parts } parts
} from the street to the rooms; { $loose ->
    [0] none is loose
    [one] one is loose
   *[other] { $loose } are loose
}; { $ends ->
    [0] no cable has an unknown far end.
    [one] one cable has an unknown far end.
   *[other] { $ends } cables have an unknown far end.
} The lists of parts and cables say the same in words.
map-taken-out = Taken out by the work: { $parts }.
map-description-and = { $found } { $gone }

# A part as it is called in the drawing.
map-entry = Entry
map-ground-block = Ground block
    .short = Ground
map-entry-filter = Entry filter
    .short = Filter
map-splitter = { $legs ->
    [0] Splitter, not counted
   *[other] Splitter, { $legs } ways
}
    .short = { $legs ->
    [0] not counted
   *[other] { $legs }-way
}
map-tap = Tap
map-amplifier = Amplifier
    .short = Amp
map-barrel = Cable joiner
    .short = Joiner
map-outlet = Outlet
map-terminator = Cap, 75 ohm
    .short = Cap
map-high-pass-filter = High-pass filter
    .short = High-pass
map-satellite-combiner = Satellite combiner
    .short = Combiner
map-pad = Pad (fixed loss)
    .short = Pad
map-power-inserter = Power inserter
    .short = Power
map-unknown = Not identified
    .short = Unknown

map-own-words = { $text }

# What came of a part or cable: several of these stand side by side, so each is a few words.
map-entry-cable = from the street
map-entry-antenna = antenna
map-entry-satellite = dish
map-entry-fibre-box = fibre box
map-entry-kind-unknown = where from?
map-entry-cut-off = cut off outside
map-entry-unknown = joined outside?
map-bridge = adapter at the router
map-adapter = adapter
map-bypass = has a way round it
map-plugged-nothing = nothing plugged in
map-plugged = { $things }
map-loses = loses { $loss }
map-cable-loses = cable loses { $loss }
map-weakest = weakest room
map-shared-port = two on one port
map-poor-plug = poor connector
map-thin = thin cable
map-end-capped = { $count ->
    [one] { $ports } capped
   *[other] { $ports } capped
}
map-end-open = { $count ->
    [one] { $ports } open
   *[other] { $ports } open
}
map-end-loose = { $count ->
    [one] { $ports } leads where?
   *[other] { $ports } lead where?
}
map-end-another-home = { $count ->
    [one] { $ports } to another home
   *[other] { $ports } to another home
}
map-end-unknown = { $count ->
    [one] { $ports } not looked at
   *[other] { $ports } not looked at
}
# The tags of several outlets: all between the two, or these two and others.
map-tag-range = { $first }–{ $last }
map-tag-among = { $first }…{ $last }
map-loose-not-traced = what feeds it?
map-loose-loop = its feed closes a loop
map-loose-too-deep = too deep in the tree
map-loose-no-such-port = no such output
map-loose-feeder-gone = what fed it is gone
map-outlets = { $count ->
    [one] { $count } outlet
   *[other] { $count } outlets
}
map-outlets-unknown = { $count ->
    [one] { $count } outlet, cable not known
   *[other] { $count } outlets, cables not known
}
    .short = { $count ->
    [one] { $count } outlet
   *[other] { $count } outlets
}
map-more-parts = { $count ->
    [one] { $count } more part
   *[other] { $count } more parts
}
    .says = all well
map-behind = { $count ->
    [one] and { $count } part behind it
   *[other] and { $count } parts behind it
}
map-holds = { $count ->
    [one] and { $count } more, well
   *[other] and { $count } more, all well
}

# Why a part has its flag: one for each finding that weighs.
map-because-entry-filter-missing = no entry filter
map-because-shared-building-open = shared coax, no filter
map-because-filter-in-satellite-line = filter in a dish’s line
map-because-filter-not-for-band = does not stop the band
map-because-filter-cuts-service = stops a service
map-because-two-bridges = two at the router
map-because-other-tree = on another tree
map-because-satellite-on-tree = satellite on this tree
map-because-amplifier-no-bypass = no way round it
map-because-amplifier-bypass-decides = way round it not known
map-because-too-many-adapters = too many adapters
map-because-amplifier-return-narrow = returns too little
map-because-nodes-more-than-known = unknown members seen
map-because-no-channel = no channel left
map-because-entry-filter-if-connected = no entry filter seen
map-because-entry-filter-not-seen = entry filter there?
map-because-filter-after-split = behind a split
map-because-splitter-not-for-band = made for { $band }
map-because-splitter-needless = only one output used
map-because-splitter-too-large = { $used } outputs used
map-because-splitters-in-cascade = two splitters in a row
map-because-splits-many = { $splits } splits above it
map-because-amplifier-outputs-apart = keeps its outputs apart
map-because-run-thin-and-long = long and thin cable
map-because-run-very-long = very long cable
map-because-joint-bad = bad joint
map-because-connector-poor = poor connector
map-because-connector-street-side = poor connector, street side
map-because-service-in-band = a service in the band
map-because-version-too-slow = adapter too slow
map-because-networks-overlap = another network in the band
map-because-node-alone = sees no other adapter
map-because-level-below-rule = TV signal too weak
map-because-level-outside-guide = TV signal off the usual
map-because-modem-level-outside = modem’s signal is off
map-because-modem-sends-high = modem sends too loud
map-because-measured-below-forecast = slower than expected
map-because-loss-above-forecast = more loss than expected
map-because-one-way-slower = one way much slower
map-because-loss-under-load = packets get lost
map-because-wishes-do-not-fit = wishes do not all fit
map-because-outlet-fed-by-nothing = no cable leads to it
map-because-dc-broken = holds power back
map-because-level-below-wiring = signal lost on the way
map-because-level-above-wiring = more signal than explained
map-because-signal-not-clean = signal not clean
map-because-level-worked-out-outside = signal likely off
map-because-service-does-not-arrive = a service is lost on the way
map-because-amplifier-ends-below = ends below the band used
map-because-no-link = no link to the router
map-because-link-comes-and-goes = link comes and goes
map-because-nodes-fewer = a member is missing
map-because-hundred-somewhere = a slow socket on the way
map-because-loss-while-quiet = loses packets at rest
map-because-combiner-in-path = combiner on the way
map-because-modem-drops-out = modem drops out
# Where a finding has no words of its own here.
map-because-other = something is wrong

# The cable that leads to a part, in full.
map-over = over { $cable }, { $length }
map-over-jumper = over a short piece: { $cable }
map-over-unmeasured = over { $cable }, length not known
map-over-unnoted = over a cable that is not noted
map-length-paced = { $length } (paced)
map-length-guessed = { $length } (guessed)
map-cable-6 = 6 series
map-cable-59 = thin, 59 series
map-cable-7 = 7 series
map-cable-11 = 11 series
map-cable-unknown = a cable of unknown series
map-changed = changed by step { $step }

# Headings and the key.
map-loose-parts = Not traced yet
map-wrong-parts = Does not fit: look again
map-key-six = 6 series
map-key-stout = 7 or 11 series
map-key-thin = thin, 59 series
map-key-unknown = not known
map-key-provider = provider’s side: leave closed
map-key-weak = weakest way
map-key-loose = not traced
map-key-new = new
map-key-step = by this step
map-key-flag = weak or wrong
map-key-question = to be found out
