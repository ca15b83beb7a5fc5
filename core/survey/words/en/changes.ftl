# The work list: what to do, why, how, what to watch, what to check afterwards.

# Cautions that several changes share. Local code and licensed practice go first.
caution-before-unplugging = Before you unplug anything: does a phone line, an alarm or a medical call device hang on this modem or amplifier? Then first make sure that nobody depends on it.
caution-unplug-mains = First pull the mains plugs of everything on the coax: the amplifier's power supply, the satellite receiver, the modem. A spark or a tingle: stop, and call an electrician.
caution-entry = Work only on the house side of the ground block. The provider's cable and box stay closed; some carry dangerous voltage (up to 90 V AC, from memory). Never take off a ground wire. No work on coax in a thunderstorm. Where local rules want a licensed person, ask one.
caution-attic = In attics step on joists only, and mind heat and old wiring. Not on a ladder or a roof alone.

change-add-entry-filter = Put an entry filter (a MoCA filter) right behind { $behind }, before the first split.
    .why = It keeps your network inside the house, and sends its signal back to the rooms.
    .how = Screw the filter to the house side, then the cable to the filter. Tighten by hand, then a small turn with an 11 mm (7/16 in) wrench.
    .caution = { caution-entry }
    .check = Do TV and internet still work as before?
change-move-entry-filter = Move { $filter } to right behind { $behind }, before the first split.
    .why = Where it is now, it stands between rooms that shall hear each other, or leaves a way out to the street.
    .how = Unscrew it, join the two cables with a barrel, and screw the filter in at its new place.
    .caution = { caution-entry }
    .check = Do TV and internet still work as before?
change-swap-entry-filter = Swap { $filter } for an entry filter that stops the MoCA band.
    .why = By its label the present one lets the network's band through to the street.
    .how = Screw the new one in where the old one was.
    .caution = { caution-entry }
    .check = Do TV and internet still work as before?
change-swap-splitter = Swap { $splitter } for a { $legs }-way splitter made for 5 to 1675 MHz or more.
    .why = { "" }A splitter not made for the band may cost little or much; each leg fewer is signal gained.
    .how = Note which cable was on which leg (tape and pen). The longest run goes to the leg with the least loss. Cap what stays free.
    .caution = { caution-unplug-mains }
    .check = Do TV and internet still work as before?
change-remove-splitter = Take out { $splitter } and join its two cables with a barrel.
    .why = Only one of its legs is used: it takes signal and gives nothing.
    .how = Unscrew both cables and screw them to the barrel.
    .caution = { caution-unplug-mains }
    .check = Do TV and internet still work as before?
change-merge-splitters = Replace { $upper } and { $lower } by one { $legs }-way splitter made for 5 to 1675 MHz or more.
    .why = Two splitters in a row cost the signal twice.
    .how = Note which cable was on which leg (tape and pen). The longest run goes to the leg with the least loss. Cap what stays free.
    .caution = { caution-unplug-mains }
    .check = Do TV and internet still work as before?
change-cap = Cap { $port } with a 75-ohm terminator.
    .why = An open leg sends echoes into the other rooms, and lets signal out and noise in.
    .how = Screw the cap on, hand-tight and a small turn more. On a leg that may carry DC power take a cap that blocks DC.
    .caution = { caution-unplug-mains }
    .check = Do TV and internet still work as before?
change-cap-outlet = Cap { $outlet } with a 75-ohm terminator.
    .why = An empty outlet sends echoes into the other rooms, and lets signal out and noise in.
    .how = Screw the cap on, hand-tight and a small turn more.
    .caution = { caution-unplug-mains }
    .check = Do TV and internet still work as before?
change-swap-amplifier = Swap { $amplifier } for one that lets the MoCA band pass (by-pass).
    .why = Without a by-pass an amplifier lets next to nothing of the network through.
    .how = Same gain, same number of outputs, return path at least as wide. The power supply goes with the amplifier.
    .caution = { caution-before-unplugging } { caution-unplug-mains }
    .check = Do TV and internet still work as before, on every set?
change-remove-amplifier = Take out { $amplifier } and join the cables.
    .why = Without a by-pass an amplifier lets next to nothing of the network through, and nothing here seems to need it.
    .how = Unplug its power supply first, then unscrew the cables and join them with a barrel.
    .caution = { caution-before-unplugging } { caution-unplug-mains }
    .check = Do TV and internet still work as before, on every set?
change-replace-run = Replace { $run } with 6-series cable.
    .why = Old or thin cable loses more signal, and the more the longer it is.
    .how = The old cable can pull the new one if it lies free in a tube. Put compression connectors on both ends.
    .caution = { caution-attic } Keep clear of mains cables; where they share a way, ask an electrician.
    .check = Do TV and internet still work as before?
change-renew-connectors = Put new compression connectors on { $run }.
    .why = Twisted-on, corroded or loose connectors lose signal and let it out.
    .how = Cut the old ends off, strip and press on new compression connectors of the cable's own series.
    .caution = { caution-unplug-mains }
    .check = Do TV and internet still work as before?

# A part to get, with how many of it.
need-counted = { $count } × { $what }

need-entry-filter = entry filter (MoCA filter), F connectors, passes 5 to 1002 MHz, stops 1125 to 1675 MHz by 40 dB or more
need-splitter = { $legs }-way splitter, 75 ohm, F connectors, made for 5 to 1675 MHz or more
need-barrel = barrel (cable joiner), F connectors, made for 5 to 1675 MHz or more
need-cap = 75-ohm cap (terminator), F connector
need-connector = compression F connector of the cable's series
need-cable = 6-series coaxial cable, { $length } and some spare
need-cable-unmeasured = 6-series coaxial cable, as long as the run and some spare
need-amplifier = amplifier with { $outputs ->
    [one] one output
   *[other] { $outputs } outputs
} and a by-pass for 1125 to 1675 MHz

refusal-filter-in-satellite-line = { $entry } brings satellite signals, which use the band that the filter stops: TV would be gone.
refusal-filter-cuts-service = { $service } here reaches up to { $top }, and such a filter passes only up to { $passes }. Ask the provider for a filter made for this service.
refusal-levels-unknown = A TV or modem at { $outlet } would get { $loss } less signal, and nobody has measured whether that is enough.
refusal-cuts-power = { $amplifier } gets its power through this cable.
refusal-cuts-device = { $outlet } is in use.
refusal-not-yours = The wiring is rented: new cable in the walls is for the owner to decide. Ask first.
