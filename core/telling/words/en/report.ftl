# The report, and the words in its figures.

report-language = en
report-untitled = A house’s coax wiring
report-page-title = { $name }: coax network report
report-contents = In this report
report-made = Made from a survey of the wiring. Every number is a forecast from what was seen, not a promise; where something is not known, a range is given.

# Page one
report-rooms = What each room gets
report-rooms-scale = Rates towards the room; a mark every { $step }.
report-room-no-outlet = no outlet there yet
report-room-measured = measured { $rate }
report-room-measured-capped = measured { $rate } or more (the test’s own network socket held it)
report-room-capped = measured: the test’s own network socket held it
report-room-after = after the work likely { $rate }
report-bar-name = What { $room } gets
report-key-wished = wished
report-key-forecast = forecast, eight tries in ten; the stroke is likely
report-key-measured = measured
report-key-after = likely after the work
report-more-rooms = { $count ->
    [one] One more room stands
   *[other] { $count } more rooms stand
} { $alone ->
    [yes] in the report
   *[no] in the table of the forecast
}.
report-first-steps = { $left ->
    [0] What to do
   *[other] { $count ->
        [one] The first step
       *[other] The first { $count } steps
    }
}
report-more-steps = { $count ->
    [one] One more step follows
   *[other] { $count } more steps follow
} { $alone ->
    [yes] in the report
   *[no] in the work list
}.
report-gain-short = { $room } likely { $after }
report-gain-short-beside = { $room } { $change }
report-gains-short = Then: { $gains }.
report-no-gain-short = No room gets faster by this alone.
report-care = Take care.
report-care-more-alone = All cautions with their reasons stand in the report.
report-to-get = What to get
report-care-more = All cautions with their reasons stand before the work list.
report-map-whole = The whole wiring map
report-map-now = The wiring as it is now
report-for-notes = Notes
report-block-house = House
report-block-day = As of
report-block-by = By
report-block-done = What was done
report-done-nothing = no change yet
report-done-told = { $told }
report-done-count = { $count ->
    [one] one change done
   *[other] { $count } changes done
}
report-could-not-count = { $count ->
    [one] one could not be done
   *[other] { $count } could not be done
}
report-put-back-count = { $count ->
    [one] one put back
   *[other] { $count } put back
}
report-sheet = Sheet { $number } of { $of }
text-said = { $text }

# Photos
report-photos = Photos, before and after
report-photos-beside = The photos lie in the same file as this page, in its folder of photos.
report-photos-left-out = { $count ->
    [one] One more photo stands in the survey’s file.
   *[other] { $count } more photos stand in the survey’s file.
}
report-photo = photo
report-photo-of = { $part }: { $role }
report-photo-after-none = after: not taken yet
report-photo-label = Its label says:

# Tags
report-tags = Tags to cut out
report-tags-how = Two of each, one for either end of the cable. Cut along the dashes, lay the middle round the cable, and stick the ends back to back.
report-tag-to = to { $tag }, { $what }
report-tag-from = from { $part }
report-tag-from-port = from { $part }, { port-alone }
report-tag-from-outside = from outside
report-tag-from-not-known = from ______

# 1. The job in words
report-job = The house, and what is asked
report-asked = What is asked
report-house = The house
report-place = The house: { $place }.
report-building-own = The wiring is the household’s own.
report-building-rented = The wiring is a landlord’s: ask before changing anything that stays.
report-building-shared = The coax is shared with other homes.
report-internet = The internet plan gives { $down } towards the house and { $up } from it.
report-services = On the coax today: { $services }.
report-services-none = No other service on the coax was named.
report-network = The network to be built: MoCA { $version } adapters{ $said ->
    [yes] {" "}with { $port } Ethernet ports
   *[no] {" "}(nobody said with which Ethernet ports; { $port } is assumed)
}, one of them at the router (the bridge).
report-network-planned = The network to be built, as planned here: MoCA { $version } adapters with { $port } Ethernet ports, one of them at the router (the bridge). There are none yet, or nobody could say which they are, so version and port are assumed.
report-bridge = The adapter at the router (the bridge) stands at { $bridge }.
report-bridge-planned = The adapter at the router (the bridge) is to stand at { $bridge }.
report-bridge-place = At { $outlet } it could: { $says }
report-bridge-none = It is not known yet where the adapter at the router (the bridge) stands, so nothing can be forecast.
report-wish = { $room }: { $down } towards the room, { $up } from it
report-wish-none = No room’s wished speed was written down.

answer-all = { $asked ->
    [one] The one room that was asked about gets the speed wished for, as far as is known.
    [2] Both rooms get the speed wished for, as far as is known.
   *[other] All { $asked } rooms get the speed wished for, as far as is known.
}
answer-some = { $met } of { $asked } rooms { $met ->
    [one] gets
   *[other] get
} the speed wished for, surely or likely.
answer-none = { $asked ->
    [one] The one room that was asked about does not get the speed wished for, as the wiring is now.
   *[other] None of the { $asked } rooms gets the speed wished for, as the wiring is now.
}
answer-hangs-on-by-pass = { $asked ->
    [one] Whether the one room that was asked about gets the speed wished for depends on a MoCA by-pass: nobody knows yet whether the amplifier on the way has one.
   *[other] For { $hangs } of { $asked } rooms the speed wished for depends on a MoCA by-pass: nobody knows yet whether the amplifier on the way has one.
}
forecast-not-known = { $asked ->
    [one] It cannot be told yet what the room gets: the way to it is not traced, or it is not known yet which outlet is at the router.
   *[other] It cannot be told yet for { $unknown } of { $asked } rooms what they get: the way to them is not traced, or it is not known yet which outlet is at the router.
}
wish-met = Wished: { $down } to the room, { $up } back. Met.
wish-likely-met = Wished: { $down } to the room, { $up } back. Likely met.
wish-hangs-on-by-pass = Wished: { $down } to the room, { $up } back. Likely met if the amplifier on the way has a MoCA by-pass, likely not if it has none.
wish-not-met = Wished: { $down } to the room, { $up } back. Likely not met.
wish-met-measured = Measured: { $measured_down } to the room, { $measured_up } back. Wished: { $down } and { $up }. Met.
wish-not-met-measured = Measured: { $measured_down } to the room, { $measured_up } back. Wished: { $down } and { $up }. Not met yet.
wish-not-known = Wished: { $down } to the room, { $up } back. Not known yet.
answer-nothing-asked = No wished speed was written down for a room away from the router, so this report only says what gets through.
answer-surely = Surely: { $rooms }.
answer-not-together = Not all at once, though: together the wishes need more than the adapters can share.
answer-likely = Likely: { $rooms }.
answer-hang-on-by-pass = Not known before somebody looks whether the amplifier on the way has a MoCA by-pass: { $rooms }.
answer-unlikely = Likely not: { $rooms }.
answer-not-met = Not yet, as measured: { $rooms }.
answer-not-known = Not known: { $rooms }.
answer-first = First thing to do: { $step }
answer-when-done = When the whole work list is done, { $met } of { $asked } { $asked ->
    [one] room likely gets
   *[other] rooms likely get
} the speed wished for.
answer-nothing-to-do = No change was found that is worth the work.
answer-nothing-more = The changes that were worth the work are done; nothing more is worth it.
# What keeps rooms from a figure
lacking-all = What gets through, and what is worth doing, cannot be told for any room yet. It is not known { $why }.
lacking-some = For { $rooms } nothing can be told yet: it is not known { $why }.
lack-router = which outlet is at the router, where the network starts
lack-outlet-near-router = which outlet a network cable from the router is to reach
lack-feed = which cable leads to { $part }
lack-outlet = which cable leads to { $room }

# 2. The wiring map
report-map = The wiring as it was found

# 3. The forecast
report-forecast = What gets through to each room
report-forecast-caption = Forecast for each outlet, both ways
report-forecast-how = “Likely” is the middle of { $draws } tries over everything not known exactly. “Nine times in ten” means that only a tenth of the tries came out below.
report-forecast-none = No outlet is to have an adapter yet, so there is nothing to forecast.
head-outlet = Outlet
head-wish = Wished
head-met = Is it met?
head-down = Towards the room
head-up = From the room
head-loss = Loss on the way
head-limit = What limits it
rate-likely = likely { $likely }, nine times in ten at least { $low }
loss-likely = likely { $likely }, nine times in ten at most { $high }
wish-both = { $down } towards, { $up } from the room
wish-of-none = nothing wished
met-yes = Yes
met-likely = Likely
met-hangs-on-by-pass = Depends on a by-pass
met-unlikely = Likely not
met-not-yet = Not yet
met-not-known = Not known
met-not-asked = Not asked
bridge-places = Where the network could start
bridge-places-why = One adapter stands at an outlet that the router, or a network cable from it, can reach. So much would get through from these outlets as the wiring is now, the best first.
bridge-places-rows = Outlets for it, the best first
bridge-place = { $modem ->
    [yes] The modem or fibre box is plugged in here.{" "}
   *[no] { "" }
}{ $asked ->
    [0] { "" }
    [one] The other room that wishes for a speed likely { $met ->
        [0] does not get it from here
       *[other] gets it from here
    }.{" "}
   *[other] { $met } of { $asked } other rooms that wish for a speed likely get it from here.{" "}
}{ $reached ->
    [0] { "" }
    [one] One room likely gets { $least }.
   *[other] Of { $reached } rooms the slowest likely gets { $least }.
}{ $out ->
    [0] { "" }
    [one] {" "}To one room likely nothing gets through.
   *[other] {" "}To { $out } rooms likely nothing gets through.
}
reach-no-bridge = not known yet: which outlet gets the adapter at the router (the bridge)?
reach-loose = not known: { $part } is not yet traced to a feed
reach-fed-by-nothing = nothing gets there: no cable leads to { $outlet }
reach-other-tree = nothing gets there: it is on another tree of cables than the adapter at the router
reach-no-channel = nothing gets there: the two adapters have no free channel in common
limit-path = the cables and splitters on the way
limit-version = the older adapter’s MoCA version
limit-ethernet = the slower Ethernet port
limit-band = the band: too few channels are free
hangs-on-by-pass = It depends on whether { $count ->
    [one] { $amplifiers } has a MoCA by-pass, which
   *[other] { $amplifiers } have MoCA by-passes, which
} nobody knows: with { $count ->
    [one] one
   *[other] them
} likely { $with } both ways, without likely { $without }.
links-share = The two adapters hear each other in { $share } of the tries.
report-channels = Channels used: { $channels }.
channels-left = { $left ->
    [0] No channel of { $full } is
    [one] 1 channel of { $full } is
   *[other] { $left } channels of { $full } are
} left for the room network beside { $services }.
report-round-trip = The coax adds about { $time } to each round trip.
shared-fits = All wishes at once fit into what the adapters share ({ $share } of the time on the coax).
shared-likely = All wishes at once likely fit into what the adapters share ({ $share } of the time on the coax), but not surely.
shared-never = All rooms share the time on the coax. At least one wish cannot be met even with the network to itself.
shared-not = All wishes at once do not fit: together they would need { $share } of the time on the coax. Each room has its forecast only while the others are idle.
street-leak = At { $entry }, the loss from the loudest adapter to the street is { $loss }: the more, the less leaves the house.

# 4. Loss over frequency
report-plot = Loss over frequency for the weakest rooms
report-plot-none = No room’s loss could be worked out yet.
report-plot-how = The lower a curve runs, the more is lost on the way. Narrow dips come from echoes: what comes back from splitters, filters and open ends.

# 5. Costs
report-costs = Where the loss arises
report-costs-how = Between two outputs a splitter costs more than its label says: the label counts from input to output, and the outputs are kept apart from each other. Worked out with every unknown at its likely value. The forecast above is the middle of many tries with their echoes, so its loss can differ.
report-costs-none = No path was worked out yet.
report-costs-caption = On the way from the adapter at the router to { $place }
report-costs-total = All together
head-place = Place
head-share = Share
cost-more-than-all = an echo helps here

# 6. Levels
report-levels = What TV and modem get
report-levels-none = No TV and no modem was written down on the coax.
report-levels-caption = Levels at each TV and modem
head-service = Service
head-level = Level there now
report-levels-needs = What each service needs
head-fits = Within what it needs?
head-when-done = When the work list is done

# 7. Findings
report-findings = What is wrong or at risk
report-findings-none = Nothing was found wrong.
report-finding-heading = { $number }. { $what }
term-weight = Weight
term-where = Where
term-why = Why it matters
term-todo = What to do
term-source = Source
term-caution = Caution
term-back = Put it back
term-services = TV and modem

# 8. What was done
report-done = What was done
done-nothing = No change was made yet.
done-done = Done
done-could-not = Could not be done
done-put-back = Put back as it was
done-fine = TV and internet were fine afterwards.
done-not-fine = Something was worse afterwards.
done-nothing-else = Nothing else used the cable.
done-not-looked = Nobody said whether TV and internet were fine afterwards.
done-standing = How it stands
done-still-fine-yes = After all work TV and internet work as before.
done-still-fine-no = After all work something is worse than before: see what was done, and put back the change after which it began.
done-still-fine-nothing = Nothing else uses the cable, so nothing else can have become worse.
done-still-fine-unsure = Whether TV and internet work as before is not sure.
done-still-fine-open = Whether TV and internet work as before is not known yet.
done-private-password-yes = Private: all adapters have the same privacy password.
done-private-password-no = Not private yet: not all adapters have the same privacy password.
done-private-password-none = Private or not is still open: there were no adapters yet.
done-private-password-unsure = Whether all adapters have the same privacy password is not sure.
done-private-password-open = Whether the adapters have a privacy password is not known yet.
done-adapters-yes = The adapters are placed.
done-adapters-open = The adapters are still to be bought and placed.

# 9. Work list
report-work = Work list, in order
report-work-failed = Where a test failed
report-work-how = Do one change at a time. After each, check that TV and internet still work.
report-step-number = Step { $number }:
report-gain = { $room } from { $before } to { $after }: { $change }.
report-term-rest = Why, how, what to check, how to put it back
report-as-in-step = as in step { $number }.
report-gain-beside = { $room }: { $change }.
report-gain-others = No change in the other rooms.
report-no-gain = No room gets faster by this alone; the reason is another one.
report-tick-before = photo before
report-tick-done = done
report-tick-fine = TV and internet as before
report-tick-after = photo after
step-minutes = { $minutes ->
    [one] About one minute.
   *[other] About { $minutes } minutes.
}
step-parts = Parts to get
step-no-parts = No parts needed.
step-gain-caption = What step { $number } gains, likely rate towards the room
step-no-gain = No room gets faster by this step. The reason for it: { $why }
head-before = Before
head-after = After
head-gain = Gain
gain-more = { $rate } more
gain-less = { $rate } less
gain-none = no change
gain-low-more = nine times in ten at least { $after } (before: { $before })
gain-phy-more = { $after } on the coax (PHY rate; before: { $before }); the adapter’s socket passes no more
report-refused = Changes that were left out, and why
report-work-all = All steps together
report-work-minutes = About { $minutes } minutes of work in all, and these parts:
term-how = How
term-check = Then check
term-time = Time

# 9. Cautions
report-cautions = Cautions
report-cautions-how = Read these before touching anything. Local code and the practice of licensed people always come first.

# 10. Unknown
report-unknown = What is not known
report-unknown-none = Nothing that this report asks about is unknown.
report-unknown-caption = What is not known, what matters most first
report-unknown-how = Where it could be worked out, each was tried again and again as it may turn out to be, with all else left as it was. What makes a rate most unsure comes first; look there first.
head-unknown = Not known
head-matters = Does it matter?
unknown-label = what its label says
unknown-band = the band it is made for (its label does not say)
unknown-bypass = whether it has a MoCA by-pass
unknown-doubtful = its label was read with doubt
unknown-kind = what it is
unknown-length = the length of the cable
unknown-length-guessed = the length of the cable: guessed as { $length }
unknown-cable = the series of the cable
unknown-run = the cable: nothing was written down about it
unknown-end = { $ports ->
    [one] what is on one free output: not looked at yet
   *[other] what is on { $ports } free outputs: not looked at yet
}
unknown-order = which of its outputs lead to { $outlets }: one order is taken, and since the outputs are alike, another changes little
unknown-loose-end = where the cable on { port-alone } goes
unknown-loose = what feeds it
unknown-entry = whether it is joined to the world outside
unknown-plugged = what is plugged in
unknown-field = { $field }: written by a newer version, and kept
unknown-impossible = { $field }: it cannot be so, so nothing is worked out from it; it is kept as written
matters-stake = Yes: until it is known, what { $room } gets is unsure by about { $rate }
matters-hardly = Little: it hardly changes the forecast
matters-failed = Yes: in { $rooms } not all is as expected, and it is on the way there
matters-weakest = Yes: on the way to the weakest room
matters-way = Yes: on the way to { $rooms }
matters-loose = Perhaps: it may be the missing link to a room
matters-pass = Perhaps: if it does not stop the room network’s band, signals leave the house there
matters-leak = Perhaps: if it is joined, signals leave the house there
matters-echo = A little: its echo reaches the way to a room
matters-little = Little: on no way between the router and a room

# 11. Parts
report-parts = All parts and cables
report-parts-none = No part was written down yet.
report-parts-caption = Parts, each tree from the street to the rooms
report-runs-caption = The cable to it
head-part = Part
head-where = Where
head-fed = Fed from
head-label = What the label says
head-rated = Taken as
head-run = Cable
head-series = Series
head-length = Length
head-connectors = Connectors
fed-from-nothing = nothing: it heads a tree
fed-loose = not traced yet
label-none = not read
rated-none = not known
rated-measured = measured by an instrument
rated-band = made for { $band }
rated-moca = marked for MoCA
rated-legs-loss = loses { $losses } to its outputs
rated-tap = takes { $loss } off for each tap
rated-gain = lifts by { $gain }
rated-rejection = stops { $band } by { $loss }
rated-stops = stops { $band }
rated-bypass = has a by-pass for MoCA
rated-no-bypass = has no by-pass for MoCA
rated-outputs = { $count ->
    [one] one output
   *[other] { $count } outputs
}
rated-return-gain = lifts the return path by { $loss }
rated-return-path = return path up to { $frequency }
rated-isolation = { $loss } between two outputs (isolation)
rated-return-loss = return loss { $loss }
rated-rejection-alone = takes off { $loss } where it stops
rated-modem-port = has a port that is not amplified
rated-power = passes DC power
rated-no-power = passes no DC power
rated-passes-on = passes the cable on
rated-doubtful = the label could be read in more than one way
length-unknown = not known
run-not-told = not written down: counted as 2 to 30 m (7 to 98 ft) of cable
run-screwed-on = no cable: screwed straight on
length-short = assumed short: at most 1 m (3 ft)
length-paced = { $length }, paced
length-guessed = { $length }, guessed
length-measured = { $length }, measured
series-6 = 6 series
series-59 = 59 series (thin, more loss)
series-7 = 7 series
series-11 = 11 series (thick, less loss)
series-unknown = not known
connectors-alike = { $both } at both ends
connectors = { $near } (street end), { $far } (room end)
run-connector-compression = compression
run-connector-crimp = crimp
run-connector-push-on = push-on (poor)
run-connector-twist-on = twist-on (poor)
run-connector-corroded = corroded (poor)
run-connector-hand-tight = hand-tight only (poor)
run-connector-bad-joint = bad joint (poor)
run-connector-unknown = not looked at

plugged-tv = a TV set
plugged-tv-box = a TV box
plugged-modem = the cable modem
plugged-moca-gateway = a gateway that speaks MoCA
plugged-satellite-receiver = a satellite receiver
plugged-fibre-box = a fibre box
plugged-power-supply = a power supply (DC)
plugged-other = a device not known

# 12. Notes
report-notes = Notes and readings
report-notes-none = No notes were written and nothing was measured.
report-notes-caption = Notes
report-readings-caption = What was measured
head-about = About
head-note = Note
head-reading = Reading
head-beside = Beside the forecast
about-survey = the whole survey
reading-level = { $level } at { $frequency }
reading-throughput = { $down } towards the room, { $up } from it
reading-error-ratio = MER { $ratio } (how clean it arrives) at { $frequency }
reading-phy = PHY rate { $rate }
reading-round-trip = round trip { $time }

# 13. Sources
report-sources = How each figure is backed
report-sources-how = Every figure in the forecast that no published document fixes is listed here with its range. The lengths, labels and wishes come from the survey.
report-estimate = { $name }: { $likely } ({ $low } to { $high })
report-estimate-fixed = { $name }: { $likely }
report-sources-paper = On paper, figures without a range and delays are left out, and those of parts, cables, connectors and adapters that this house does not have; they stand in the file.
report-sources-caption = Figures that are estimated, with range and source
report-seed = The tries (draws) are made from seed { $seed }: the same survey gives the same report.
head-figure = Figure
head-lowest = Lowest
head-usual = Likely
head-highest = Highest
head-backing = What stands behind it
backing-sources = With a source
backing-published = Published: { $source }
backing-derived = Worked out from published figures: { $source }
backing-practice = Common practice, no source
backing-memory = From memory
backing-estimate = Held against: { $source }

# Figures that are estimated: one message for each name in coax::estimates.
estimate-cable-impedance = Impedance of a cable
estimate-cable-six-spread = 6-series cable: loss against the fitted figures
estimate-cable-fifty-nine-k1 = 59-series cable: part of the loss that grows with the root of the frequency (k1)
estimate-cable-fifty-nine-k2 = 59-series cable: part of the loss that grows with the frequency (k2)
estimate-cable-seven-k1 = 7-series cable: part of the loss that grows with the root of the frequency (k1)
estimate-cable-seven-k2 = 7-series cable: part of the loss that grows with the frequency (k2)
estimate-cable-eleven-k1 = 11-series cable: part of the loss that grows with the root of the frequency (k1)
estimate-cable-eleven-k2 = 11-series cable: part of the loss that grows with the frequency (k2)
estimate-cable-unknown-series = Cable of unknown series
estimate-cable-six-low-power = 6-series cable below 55 MHz: power of the frequency that its loss follows
estimate-cable-fifty-nine-low-power = 59-series cable below 55 MHz: power of the frequency that its loss follows
estimate-cable-seven-low-power = 7-series cable below 55 MHz: power of the frequency that its loss follows
estimate-cable-eleven-low-power = 11-series cable below 55 MHz: power of the frequency that its loss follows
estimate-cable-velocity = How fast signals run in cable (velocity factor)
estimate-splitter-stated-at = Splitter: frequency at which its label states its losses
estimate-splitter-slope = Splitter: how its loss grows with frequency
estimate-splitter-isolation = Splitter: loss between two outputs (isolation)
estimate-splitter-isolation-wide = Splitter whose label reaches over the MoCA band and does not name it: loss between two outputs (isolation)
estimate-splitter-isolation-rated-for-moca = Splitter marked for MoCA: loss between two outputs (isolation)
estimate-splitter-return-loss = Splitter: how weak its echo is (return loss)
estimate-splitter-extra-above-rating = Splitter above the band on its label: extra loss a pass
estimate-splitter-heavy-above-odds = Splitter above the band on its label: chance that it is one that costs very much
estimate-splitter-heavy-above-rating = Splitter that costs very much above the band on its label: extra loss a pass
estimate-splitter-isolation-above-rating = Splitter above the band on its label: loss between two outputs
estimate-splitter-return-loss-above-rating = Splitter above the band on its label: return loss
estimate-splitter-ramp = Splitter: how far above its band that holds in full
estimate-splitter-delay = Splitter: delay half way through
estimate-splitter-stage-excess = Splitter known by its whole loss: loss of each split in two beyond the ideal
estimate-splitter-new-one-stage = Splitter to get, or at an outlet: loss behind one split in two
estimate-splitter-new-two-stages = Splitter to get, or at an outlet: loss behind two splits in two
estimate-splitter-new-six-way = Splitter to get with five or six outputs: loss to each
estimate-splitter-new-eight-way = Larger splitter to get: loss to each output
estimate-splitter-unknown-top = Splitter with an unread label: top of its band
estimate-filter-return-loss = Entry filter: return loss where it passes
estimate-filter-margin = Entry filter: how much more than its label it takes off
estimate-filter-delay = Entry filter: delay
estimate-amplifier-opaque = Amplifier: loss outside its bands
estimate-amplifier-return-loss = Amplifier: return loss
estimate-amplifier-delay = Amplifier: delay
estimate-amplifier-turnover = Amplifier: width between the bands of its two ways
estimate-amplifier-stage = Amplifier: loss of each dividing stage inside
estimate-joint-return-loss = Sound joint: return loss
estimate-barrel-loss = Barrel (cable joiner): loss
estimate-wall-plate-loss = Wall plate: loss
estimate-ground-block-loss = Ground block: loss
estimate-condition-sound = Sound connectors: added loss
estimate-condition-unsure = Connectors nobody looked at: added loss
estimate-condition-hand-tight = Connector tightened by hand only: added loss
estimate-condition-twist-on = Twist-on connector: added loss
estimate-condition-corroded = Corroded connector: added loss
estimate-condition-bad-return-loss = Connector by hand only, twist-on or corroded: return loss
estimate-unknown-run-length = Length of a cable that nobody measured, paced or guessed
estimate-length-measured = Length of a cable that was measured
estimate-length-paced = Length of a cable that was paced
estimate-length-guessed = Length of a cable that was guessed
estimate-missing-elsewhere = A level that is missing at one frequency: what of that is missing at others
estimate-new-run-length = Length of a cable to be laid that nobody has paced; its range is that of a guess
estimate-jumper-length = Length of a jumper between two parts put side by side
estimate-loose-end-length = Length of a cable whose far end is not known
estimate-cable-temperature = Temperature of cable in the house
estimate-device-reflection = What a TV, TV box or modem sends back in the MoCA band (of the amplitude)
estimate-cap-reflection = What a 75-ohm cap sends back (of the amplitude)
estimate-entry-return-loss = What the street behind an entry sends back (return loss)
estimate-entry-delay = How long what the street sends back is on its way, one way
estimate-model-error = How far the loss between two adapters is from what is worked out here
estimate-unseen-port-open = Chance that a free port nobody looked at is open
estimate-unknown-part-loss = A part not identified: loss
estimate-label-spread = How far a part’s loss is from its label
estimate-unread-leg-excess = Splitter with an unread label: loss beyond the ideal split
estimate-filter-pass-loss = Entry filter with an unread label: loss where it passes
estimate-amplifier-gain = Amplifier with an unread label: gain
estimate-amplifier-gain-spread = Amplifier: how far its gain is from its label
estimate-amplifier-split = Amplifier whose label does not say: top of the return path
estimate-amplifier-top = Amplifier whose label does not say: where its gain ends
estimate-amplifier-least-band = Amplifier: least width of what it amplifies
estimate-amplifier-return-gain = Amplifier whose label does not say: gain of the return path
estimate-amplifier-bypass-unread = Amplifier on which nobody read anything: chance that it has a by-pass
estimate-amplifier-bypass-not-named = Amplifier whose label was read and names no by-pass: chance that it has one
estimate-amplifier-bypass-loss = Amplifier’s by-pass: loss in the MoCA band, without the housing’s splits
estimate-transmit-power = What an adapter sends in each channel
estimate-adapter-return-loss = Adapter: how weak its echo is (return loss)
estimate-adapter-delay = Adapter: delay to what sends the echo back
estimate-noise-figure = Noise of an adapter’s receiver (noise figure)
estimate-ingress = Noise that leaks into the wiring, over thermal noise
estimate-gap = What the code needs beyond the theoretical limit (gap)
estimate-margin = What an adapter leaves unused to be safe (margin)
estimate-snr-cap-1x = Versions 1.x: signal over the adapter’s own imperfection
estimate-phy-full-1x = Versions 1.x: PHY rate over the best of cables
estimate-snr-cap-2x = Versions 2.x: signal over the adapter’s own imperfection
estimate-subcarrier-spread = How noise differs between subcarriers, up and down
estimate-mac-position = Version 2.0: where the share of useful data lies between its ends (0 to 1)
estimate-mac-position-1-0 = Version 1.0: where the share of useful data lies between its ends (0 to 1)
estimate-mac-position-1-1 = Version 1.1: where the share of useful data lies between its ends (0 to 1)
estimate-mac-position-2-5 = Version 2.5: where the share of useful data lies between its ends (0 to 1)
estimate-least-received = The least power of a channel that an adapter still works with
estimate-usable-rate = The least rate that counts as a link
estimate-round-trip = What the coax adds to a round trip

# The plot
plot-name = Loss over frequency
plot-description = Loss in dB between the adapter at the router and { $rooms } over frequency in MHz, each with a likely curve and the range in which eight of ten tries lie. Channels used: { $channels }. { $many ->
    [0] {""}
   *[other] Taken by others: { $taken }.
}
plot-panel = To { $place }: { $loss }
plot-likely = likely
plot-range = eight tries in ten lie here
plot-ours = our channels
plot-others = needed by others
plot-channel = { $mhz }
plot-taken = { $service }, { $band }
plot-x-axis = frequency, MHz
plot-y-axis = loss, dB
reading-modem-sends = the modem sends at { $level }
reading-power = lost on the way from the adapter at the router { $loss }, from the power sent and received
reading-nodes-seen = { $count ->
    [one] one network member seen
   *[other] { $count } network members seen
}
reading-link-none = no link
reading-link-comes_and_goes = the link comes and goes
reading-link-steady = the link is steady
reading-packet-loss = { $share } of packets lost
reading-packet-loss-busy = { $share } of packets lost while busy
reading-swings = swings between { $low } and { $high }

# A change that is not offered, with the reason.
report-refused-change = { $change } Not offered: { $why }

estimate-band-filter-loss = Band filter: loss in its pass band
estimate-filter-rejection = Filter without a figure on its label: what it rejects
estimate-filter-gap = Band filter: from the pass band’s edge to where it rejects
estimate-tap-directivity = Tap: how much better it hears its input than its output
estimate-tap-through-excess = Tap: loss on the way through beyond what the taps take
estimate-combiner-low-loss = Satellite combiner: loss to the lower band’s port
estimate-combiner-satellite-loss = Satellite combiner: loss to the satellite port
estimate-combiner-isolation = Satellite combiner: isolation between its ports
estimate-combiner-return-loss = Satellite combiner: return loss
estimate-combiner-low-top = Satellite combiner with an unread label: top of its lower band
estimate-combiner-least-gap = Satellite combiner: least width between its bands
estimate-pad-return-loss = Pad: return loss
estimate-power-inserter-loss = Power inserter: loss to everything but power
estimate-passed-on-loss = Device that passes the cable on: loss to its socket
estimate-passing-device-loss = Device that passes the cable on: loss to itself
estimate-condition-bad-joint = Conductors twisted together, or shield off: loss
estimate-condition-bad-joint-echo = Conductors twisted together, or shield off: return loss
estimate-unread-tap-loss = Tap without a figure on its label: loss to a tap
