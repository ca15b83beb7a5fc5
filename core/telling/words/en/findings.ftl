# Findings: what, .why, .do, .source. Written as to the person who owns the house.
# Plain words first, the trade's term in brackets. No blame; nothing that could hurt.

weight-grave = Serious
weight-costly = Costs speed
weight-minor = Small
weight-note = Good to know

source-practice = Common practice, no source.
source-survey = From what stands in this survey.
source-band = Adapters use { -band-adapters } (announcement of SCTE 235, 2017).
source-filter-use = SCTE 235 2017, abstract: a filter keeps the network from reaching a neighbour and protects receivers; it may sit at the entry, at a device, or both.
source-filter-sheet = Data sheet of a ground-block filter (2019, in the public repository N7Alpha/coaxial-cable-network): passes up to 1002 MHz, stops 1125 to 1675 MHz by at least 40 dB.
source-splits = Losses from “How much signal do I lose going through a splitter?”, skywarnforum.org: 3.5 dB for 2 outputs, 7 dB for 4, 10.5 dB for 8. Six outputs, 9 dB: common practice.
source-satellite = Satellite signals on the cable take 950 to 2150 MHz (makers’ data; EN 50494:2007 and EN 50607:2015 distribute it); adapters use 1125 to 1675 MHz (announcement of SCTE 235, 2017).

## Cautions

caution-who-depends-on-it = Before you unplug anything: does a phone line, an alarm or a medical call device work through this modem or amplifier? If so, leave it plugged in and first ask whoever looks after it.
    .head = Ask what must not fail before you unplug anything.
caution-supplies-first = First pull the mains plugs of everything that feeds the coax: the small power supply (inserter) of an amplifier, also of one at the antenna’s mast, and the satellite receiver. They can put power on the cable. If you see a spark or feel a tingle, stop, let go, and call an electrician. Nothing needs to be measured.
    .head = Pull the mains plugs of what feeds the coax first.
caution-look-what-goes-dead = To see what goes dead, and only for that, leave an amplifier’s own plug in: without it nothing arrives. Do it only where nothing puts power on the cable: no inserter, no satellite receiver, no amplifier or antenna that is fed over it. Unscrew one output of a splitter at a time, and screw it on again before the next. Leave everything at an amplifier, and the cable from the street, as it is. If you see a spark or feel a tingle, stop, let go, and call an electrician.
    .head = See what goes dead only with no power on the cable.
caution-supplies-for-tracer = With a tone tracer, and before anything is joined, cut or capped, pull the mains plugs of everything that feeds the coax: an amplifier’s supply or inserter, also of one at the antenna’s mast, and the satellite receiver. The tracer goes on a cable that is unscrewed at both ends.
    .head = For a tone tracer or other work, pull mains plugs first.
caution-house-side-only = Work only on the house side of the ground block. Some cables from the street carry power from the provider’s side. Leave that cable and the provider’s box closed, and call the provider if something there is loose or damaged.
    .head = Work only on the house side of the ground block.
caution-keep-grounds = Leave every ground wire in its place: it leads lightning and stray mains current away. Local code and licensed trades come first.
    .head = Leave every ground wire where it is.
caution-thunderstorm = Leave coax alone while a thunderstorm is near: the cable leads outdoors.
    .head = No work on coax while a thunderstorm is near.
caution-heights = In an attic, step on the joists only, and mind heat and old wiring. Stay off roofs, and use a ladder only with somebody beside you.
    .head = In an attic only on the joists; stay off roofs.
caution-powered-leg = If an output may carry power (to an amplifier, an antenna preamplifier or a dish), use a cap that blocks DC (DC block); a plain cap would short the supply.
    .head = Where an output may carry power, use a cap that blocks DC.
caution-fibre = Leave the fibre plugged in, and never look into its end: the light cannot be seen and can hurt the eye.
    .head = Leave the fibre in, and never look into its end.
caution-blade = The cutter and the stripper have open blades. Cut away from hand and body, with the cable lying on something firm.
    .head = Cut away from hand and body.
caution-mains-near = Keep coax clear of mains cables. Where both share a way or a wall box, leave it closed and ask an electrician.
    .head = Keep coax clear of mains cables.

## The entry

# What another home gets its signal by.
another-home-ask = Another home gets its signal by { $port }. Leave this as it is, and ask whoever looks after the building.
another-home-may-be-ask = Nobody knows what { $port } feeds; it may be another home. Leave everything screwed on, and ask whoever looks after the building where it leads.

filter-goes-in = { $place ->
    [branch] Screw an entry filter on the cable of your own home, at { $behind }.
   *[line] Screw an entry filter on where everything comes in: right behind { $behind }, on the house side, before the first splitter.
} { $power ->
    [yes] DC power goes over this cable: take one that passes it (DC pass). Then
   *[no] Then
} check that TV and internet still work.

finding-entry-filter-missing = No entry filter (MoCA filter) was found at { $entry }.
    .why = Without it your room network can leave the house and meet a neighbour’s. With it, signals between rooms get stronger too, because the filter sends them back into the house.
    .why-head = The room network can leave the house
    .do = { $call ->
        [leave] Leave the filter out for now. { $reason }
       *[do] { filter-goes-in }
    }
    .do-head = { $call ->
        [leave] Leave the filter out for now
       *[do] Put an entry filter in
    }
    .source = { source-filter-use }

finding-entry-filter-if-connected = It is not yet known what comes in at { $entry } or whether it is joined, and no entry filter (MoCA filter) was found there.
    .why = If the cable is joined to the street or an antenna, your room network can leave the house by it.
    .do = { $call ->
        [leave] Find out what comes in, and leave the filter out for now. { $reason }
       *[do] Find out what comes in. A dish’s cable must not get this filter, and a cable that is cut off needs none. For a cable company or an antenna: { filter-goes-in }
    }
    .do-head = Find out what comes in, then choose
    .source = { source-filter-use }

finding-entry-filter-not-seen = Nobody could tell yet whether there is an entry filter (MoCA filter) at { $entry }.
    .why = Without one, your room network can leave the house and meet a neighbour’s. With one, signals between rooms get stronger too.
    .do = Look again where the cable comes in, or ask whoever has the key: a metal cylinder as long as a finger, in line with the cable. Until then, set the adapters’ privacy password before they are plugged in.
    .do-head = Look again; until then, set the password
    .source = { source-filter-use }

finding-filter-after-split = Behind a split, not before the first one, sits { $filter }.
    .why = An entry filter there guards only its own branch, and separates the rooms behind it from the others.
    .do = { $call ->
        [leave] Leave it where it is for now. { $reason }
        [none] Take it out, and join its two cables with a barrel (cable joiner): none is needed there.
        [several] Move one of them to where everything comes in: on the house side of the ground block, before the first splitter. Take the others out.
       *[do] { $place ->
            [branch] Move it to the cable of your own home, at { $behind }.
           *[line] Move it to where everything comes in: on the house side of the ground block, before the first splitter.
        }
    }
    .do-head = { $call ->
        [leave] Leave it where it is for now
        [none] Take the filter out
       *[do] Move the filter in front of the first splitter
    }
    .source = { source-practice }

finding-filter-street-side = On the street side of the ground block sits { $filter }.
    .why = It does its work there too, but that side belongs to the provider and should stay closed.
    .do = Leave it where it is. Ask the provider to move it to the house side at the next visit.
    .source = { source-practice }

finding-filter-in-satellite-line = In a satellite line sits { $filter }.
    .why = It stops most of what comes from the dish, so channels will be missing.
    .do = Take it out of the satellite line. A dish’s cable needs no entry filter.
    .source = { source-satellite }

finding-filter-not-for-band = The band of the room network, { $band }, is not fully stopped by { $filter }.
    .why = Part of your network can still leave the house.
    .do = { $call ->
        [leave] Leave it as it is for now. { $reason }
       *[do] Swap it for a filter that passes TV and internet{ $power ->
            [yes] {" "}and DC power (DC pass)
           *[no] { "" }
        } and stops { $band }.
    }
    .source = { source-filter-sheet }

finding-filter-weak = Weaker than usual: { $filter } takes off { $rejection }; most entry filters take off { $standard } or more.
    .why = A little of your network may still be heard outside.
    .do = If it is swapped one day, choose one with { $standard } or more. In a shared building, swap it now.
    .source = { source-filter-sheet }

finding-filter-cuts-service = Signals pass { $filter } up to { $ends }, but { $service } uses the cable up to { $top }.
    .why = The top part of that service may not get through.
    .do = Ask the provider how high the service goes today. If it needs more than { $ends }, use a filter made for that, or one at each device instead of at the entry.
    .do-head = Ask how high the service goes
    .source = { source-filter-sheet } Cable systems to 1218 and 1794 MHz: SCTE 153 2021, classes.

finding-filter-may-hold-return = The label of { $filter } begins at { $begins }. A cable modem also sends, below that: at { $return }.
    .why = Some filters hold back what a modem sends (its return path); most let it pass, and their label names what comes in alone.
    .do = Check whether the internet over this cable works. If it does, the filter lets the modem send, and nothing needs to be done. If not, ask the provider for a filter that passes { $return } too.
    .do-head = Check whether the internet works
    .source = DOCSIS Radio Frequency Interface Specification, read second-hand: upstream 5 to 42 MHz in North America, to 65 MHz in Europe, higher in newer plans.

finding-filter-label-unknown = It is not yet known which band is stopped by { $filter }.
    .why = Only a filter that stops { $band } keeps the room network in the house.
    .do = Read its label without unscrewing anything, and note what it says. “MoCA”, or a stop band up to { -band-top }, is what you hope for.
    .source = { source-survey }

finding-ground-block-not-seen = No ground block is noted at { $entry }.
    .why = The ground block ties the cable’s shield to the ground of the house, against lightning and stray current.
    .do = Check whether there is one, without touching it. If you see none, ask a licensed electrician or the provider.
    .source = US National Electrical Code 820.93, as quoted in trade texts: the shield is bonded where the cable enters the building. Local code comes first.

finding-shared-building-open = Other homes share this coax, and nothing separates them from { $entry } yet.
    .why = Neighbours’ adapters could find yours, and yours theirs.
    .do = Set the same privacy password on all your own adapters first. { $call ->
        [leave] Leave the filter out for now. { $reason }
       *[do] Then put an entry filter { $place ->
            [branch] on the cable of your own home, at { $behind }
           *[line] where the cable of your own home comes in
        }.
    } Ask the building’s manager before you touch what is shared.
    .do-head = Set the password first
    .source = { source-filter-use }

finding-shared-building = Other homes share this coax.
    .why = A filter separates homes only if it sits where one home’s own cable comes in. One filter on a feed that several homes share does not separate them.
    .why-head = Where a filter separates homes
    .do = Check that the filter is on your own cable, not on the shared one. Set the same privacy password on all your own adapters.
    .source = { source-filter-use }

## Splitters

finding-splitter-not-for-band = The label of { $part } says { $band }; the room network uses { $wanted }.
    .why = Above what it is made for, it may cost little or much, and about one in five costs very much. The forecast allows for the whole range: a room that it tells well all the same has that much to spare. Between two outputs any splitter costs more than its label says: the label counts from input to output.
    .why-head = What it costs above its band is not sure
    .do = { $tested ->
        [yes] Leave it while forecast and outlet test give what is wished. Swap it where one of them falls short: for a splitter that says MoCA or reaches { -band-top }, with as many outputs as you use.
       *[no] Until a room over it is tested, what it costs is a guess, and the forecast with it. Test such a room before you rely on it; where the test falls short, or where you do not want to wait for one, swap it: for a splitter that says MoCA or reaches { -band-top }, with as many outputs as you use.
    }
    .do-head = { $tested ->
        [yes] Leave it while the rooms get what is wished
       *[no] Test a room over it before you rely on it
    }
    .source = { source-practice }

finding-splitter-label-unknown = It is not yet known for which band { $part } is made.
    .why = If it was not made for { $wanted }, it may cost some speed, or none.
    .do = Read its label and note the band. If there is none, the forecast allows for the whole range.
    .source = { source-survey }

finding-splitter-for-satellite = Made for satellite signals too, by its label: { $part }.
    .why = { $low ->
        [yes] It starts at { $from }, so TV and internet below that hardly pass it. { "" }
       *[no] { "" }
    }It may be left over from a dish, or a dish’s signals may still pass it. The room network passes such a splitter, but cannot share it with a dish.{ $power ->
        [yes] {" "}Power (DC) passes it as well.
       *[no] { "" }
    }
    .why-head = It may be left over from a dish, or still serve one
    .do = Is a dish or a satellite receiver connected to these cables? If so, note where. If not, the splitter may stay where TV and internet work.{ $power ->
        [yes] {" "}Then also check whether any supply still feeds power through it.
       *[no] { "" }
    }
    .source = { source-practice }

finding-label-doubtful = The label of { $part } could be read in more than one way: “{ $label }”.
    .why = The forecast rests on it.
    .do = { $any ->
        [yes] It was taken as: { $read }. Where that is right, nothing is to be done; where it is not, look at the label once more and type what it says, or those figures by themselves.
       *[no] Look at the label once more and type what it says, or the figures on it by themselves.
    }
    .source = { source-survey }

finding-splitter-needless = Only one output of { $part } is used.
    .why = The signal is divided for nothing: about { $saving } could be saved.
    .do = Take it out and join the two cables with a barrel (cable joiner). Then check that TV and internet still work.
    .source = { source-splits }

finding-splitter-too-large = Only { $used } outputs of { $part } are used.
    .why = Every output takes its share, used or not: about { $saving } could be saved.
    .do = A { $legs }-way splitter made for the band up to { -band-top } would do.
    .source = { source-splits }

finding-splitters-in-cascade = Two splitters sit one behind the other at the same spot: { $upper } and { $lower }.
    .why = The signal is divided twice: about { $saving } could be saved for the weakest output.
    .do = One { $legs }-way splitter made for the band up to { -band-top } can do the work of both.
    .source = { source-splits }

finding-splits-many-met = Up to { $splits } splits in a row lie above { $outlets }, all made for the band.
    .why = Every split divides the signal again; here the rooms get what is wished all the same.
    .do = Nothing needs to be done. Where one more split would come, look first whether one of these can go.
    .source = { source-practice }

finding-splits-many = Up to { $splits } splits in a row lie above { $outlets }.
    .why = Every split divides the signal again; far rooms can become slow.
    .do = Check whether one of these splits can go, or whether two can become one. The work list says what each is worth.
    .source = { source-practice }

## Legs and outlets

finding-leg-open = { $count ->
    [one] On { $part } { $legs } is free and open.
   *[other] On { $part } { $legs } are free and open.
}
    .why = Signals come back from an open output (leg) and disturb the others a little; noise can get in there.
    .do = { $power ->
        [yes] Screw a 75-ohm cap (terminator) on, one that blocks DC (DC block): DC power may stand on this output.
       *[no] Screw a 75-ohm cap (terminator) on.
    }
    .source = { source-practice }

finding-leg-not-seen = { $count ->
    [one] It is not known yet whether { $legs } of { $part } is free, capped or open.
   *[other] It is not known yet whether { $legs } of { $part } are free, capped or open.
}
    .why = An open output disturbs the others a little; a cable there may lead to a further outlet.
    .do = Have a look and note it.
    .source = { source-survey }

finding-outlet-open = Nothing is plugged in at { $outlet }.
    .why = Signals come back from an empty outlet and disturb the others a little.
    .do = { $power ->
        [yes] Screw a 75-ohm cap (terminator) on, one that blocks DC (DC block): DC power may stand on this outlet.
       *[no] Screw a 75-ohm cap (terminator) on, or disconnect its cable at the splitter and cap that output.
    }
    .source = { source-practice }

finding-loose-end = { $count ->
    [one] A cable leaves { $legs } of { $part } and nobody knows yet where it goes.
   *[other] Cables leave { $legs } of { $part } and nobody knows yet where they go.
}
    .why = It may feed an outlet that you miss, or end open in a wall and disturb the others.
    .do = Trace it, either by seeing which outlet goes dead when it is unscrewed, or with a tone tracer. If it leads nowhere, unscrew it and cap the output.
    .do-head = Trace it, or cap its output
    .source = { source-practice }

finding-two-on-port = Two cables are noted on { $port }: { $parts }.
    .why = One port holds one cable, so one of the two notes needs another look.
    .do = Check which cable is really there, and note where the other one goes.
    .source = { source-survey }

## Amplifiers

finding-amplifier-no-bypass = Between rooms that are to be joined stands { $amplifier }, with no way round it for the room network (no MoCA by-pass).
    .why = An amplifier lets TV and internet through, but hardly anything of the room network. Rooms on its two sides may not reach each other.
    .why-head = Rooms on its two sides may not reach each other
    .do = Use an amplifier with a MoCA by-pass, or take it out if TV and modem work without it. Check both afterwards.
    .source = { source-practice }

finding-amplifier-bypass-decides = Nobody knows whether { $amplifier } has a way round it for the room network (MoCA by-pass), and this depends on it: { $outlets }.
    .why = With a by-pass the network passes it; without one hardly anything of it does. Until somebody looks, both are possible, and the forecast counts both.
    .why-head = Without a by-pass hardly anything passes it
    .do = Read its label before anything else. “MoCA”, “by-pass”, or a band up to { -band-top }, is what you hope for. If it names none of these, take it that there is none.
    .do-head = Read its label first
    .source = { source-practice }

finding-amplifier-bypass-unknown = It is not yet known whether { $amplifier } has a way round it for the room network (MoCA by-pass).
    .why = It stands between rooms that are to be joined. Without a by-pass they may not reach each other.
    .do = Read its label. “MoCA”, “by-pass”, or a band up to { -band-top }, is what you hope for.
    .source = { source-practice }

finding-amplifier-outputs-apart = Rooms that are to be joined are on different outputs of { $amplifier }.
    .why = An amplifier keeps its outputs apart, so these rooms may not hear each other.
    .do = Put all rooms below one output, with a splitter made for the band, or use an amplifier with a MoCA by-pass.
    .source = { source-practice }

finding-amplifier-above = Above all rooms that are to be joined stands { $amplifier }, which has no MoCA by-pass.
    .why = The rooms still reach each other below it. Only what is plugged in above it cannot join.
    .do = Nothing needs to be done. Keep all adapters below it, or use an amplifier with a by-pass.
    .source = { source-practice }

## Cables

run-end-near = at the end nearer the street
run-end-far = at the end nearer the outlet
connector-twist-on = a twist-on connector
connector-push-on = a push-on connector
connector-corroded = a corroded or wet connector
connector-hand-tight = a connector turned by hand only

finding-run-thin-and-long = Thin cable (59 series): { $run } is { $length } long.
    .why = Thin cable loses more on the way than the usual 6 series.
    .do = If the room turns out slow, this cable is the one to replace with 6-series cable.
    .source = Loss of 59-series cable as far as we know, not checked against its standard (SCTE 74).

finding-run-unknown-and-long = Cable of a kind not yet known: { $run } is { $length } long.
    .why = If it is thin cable (59 series), it loses more than the usual 6 series.
    .do = Read what is printed on the jacket: “59”, “6”, “7” or “11”.
    .source = Loss of 59-series cable as far as we know, not checked against its standard (SCTE 74).

finding-run-very-long = A very long cable: { $run } is { $length } long.
    .why = Over such a length even good cable takes off a good part of the signal.
    .do = Look for a shorter way. If this cable must be long, thicker cable (11 series) loses less.
    .source = Worked out from typical figures of 6-series cable, as far as we know: 8.6 dB a 100 ft at 1675 MHz.

finding-connector-poor = A weak spot: { $run } has { $state } { $end }.
    .why = It costs signal, lets noise in, and gets worse with time.
    .do = If it is only turned by hand, tighten it with { -wrench }: snug, without force. Otherwise have a compression connector put on in its place.
    .do-head = Tighten it, or have a new one put on
    .source = { source-practice }

connector-bad-joint = a bad joint

finding-connector-street-side = A weak spot on the street’s side: { $run } has { $state } { $end }.
    .why = It can slow the internet or make it drop out. The room network is hardly touched by it.
    .do = Leave it closed. Tell the provider what you saw, and ask to have it put right.
    .source = { source-practice }

finding-joint-bad = A bad joint: { $run } has conductors twisted together, or a connector half off, { $end }.
    .why = Signal still passes, but badly and not evenly.
    .do = Have both cable ends fitted with compression connectors and joined with a barrel (cable joiner).
    .source = An account of a real house (a blog, May 2023): a service ran at 50 instead of 200 Mb/s until such a joint was made again.

## Trees and loose parts

loose-not-traced = it is not known yet what feeds it
loose-loop = what is noted as its feed sits below it
loose-too-deep = it would sit more parts deep than any house goes
loose-no-such-port = the part that feeds it has no such output
loose-feeder-gone = the part that fed it is no longer in the survey

finding-part-loose = Not yet traced: { $part }; { $reason }.
    .why = What gets through to it cannot be worked out until it is known what feeds it.
    .do = Find out which output its cable comes from, either by seeing whether it goes dead when an output is unscrewed, or with a tone tracer.
    .source = { source-survey }

finding-other-tree = Two separate coax trees: { $outlet } is on one; { $bridge }, where the room network starts, on another.
    .why = No signal goes from one tree to the other, so this room gets no network.
    .do = If only one of the two trees carries anything from outside, join them by a splitter made for the band. Otherwise leave them apart, and give this tree a start (bridge) of its own.
    .do-head = Join the two trees, or give each a start
    .source = { source-practice }

finding-outlet-fed-by-nothing = No cable leads to { $outlet }, by what stands in this survey: nothing feeds it.
    .why = A network over the coax cannot reach an outlet without a cable.
    .do = Serve this room from an outlet nearby with a network cable, or have a new coax cable laid to it. The work list says what each takes.
    .do-head = Serve it from nearby, or lay a new cable
    .source = { source-survey }

finding-bridge-not-chosen = It is not yet known at which outlet the room network starts.
    .why = One adapter near the router joins coax and router (the bridge). What gets through is counted from there.
    .do = Choose the outlet nearest the router, and note that the adapter at the router (the bridge) goes there.
    .source = { source-survey }

finding-two-bridges = More than one device joins this coax to the router: { $outlets }.
    .why = Data can then run in a circle (loop) and bring the whole home network to a halt.
    .do = Keep one: either the gateway’s own coax network or one adapter at the router (bridge), not both. Unplug the network cable of the other, or switch its coax network off.
    .do-head = Keep one of the two
    .source = { source-practice }

finding-tag-twice = The tag { $tag } stands on more than one thing: { $things }.
    .why = Notes and work can then go to another place than meant.
    .do = Give one of them a new tag, on the tape too.
    .source = { source-survey }

## Satellite

finding-satellite-on-tree = Satellite signals ({ $satellite }) and the room network ({ $outlets }) share one coax tree.
    .why = Both use the same band. Satellite TV and the room network would disturb each other.
    .do = Give the room network coax that carries no satellite signals, or leave these rooms out.
    .source = { source-satellite }

finding-satellite-not-placed = There is satellite TV in the house, but it is not yet known on which cables.
    .why = Satellite signals and the room network cannot share one cable.
    .do = Note where the dish’s cable comes in and where the receivers stand.
    .source = { source-satellite }

finding-combiner-in-path = Between rooms that are to be joined stands { $part }, and no dish is known here.
    .why = It separates TV from satellite signals, and the room network uses the band of the satellite. { $known ->
        [yes] By the forecast it costs up to { $cost } on the way.
       *[no] Between its two sides it takes off { $cost }, as a rule.
    }
    .why-head = It separates TV from the band of the network
    .do = Does a dish still use it? If so, note where the dish’s cable comes in. If not, take it out: join two cables with a barrel (cable joiner), or three with a splitter made for the band. Then check TV and internet.
    .do-head = Take it out where no dish uses it
    .source = { source-practice }

## Services and other networks

finding-modem-drops-out = The internet drops out, and the modem at { $outlet } shares an outlet or a splitter with an adapter and has no filter.
    .why = So near, the room network may be too loud for a modem, whatever its age. It may also be something else.
    .do = Put a filter (a MoCA filter) at the modem, and see whether it still drops out. If it does, ask the provider to measure.
    .do-head = Put a filter at the modem, then look again
    .source = { source-practice }

finding-service-in-band = On these cables { $service } goes up to { $top }, into { $band }, the band of the room network.
    .why = The two may disturb each other where they meet.
    .do = Give the modem a line of its own straight from the entry. Or ask the provider for a filter that lets this service through, and put it at the modem. Where the adapters can, keep them above { $top }.
    .do-head = Separate the modem from the network
    .source = { source-band } SCTE 235 2017, abstract: channels that do not overlap, and home-run wiring, wherever possible.

finding-provider-network = The provider already runs a network of its own on the coax, as for TV boxes that talk to each other.
    .why = It belongs to your service. It takes some of the channels, and its boxes count as members.
    .do = Leave it as it is: its password, filters and boxes stay untouched. Ask the provider which channels it uses.
    .source = { source-practice }

finding-fibre-link = A fibre box reaches the router over coax.
    .why = That link is your internet. It is a network of its own and belongs on the router’s internet side (WAN port).
    .do = Leave it as it is. Start the room network from one of the router’s LAN ports, on other channels.
    .source = { source-practice }

## Adapters

finding-too-many-adapters = { $count } adapters are planned or present on one tree; such a network takes { $most }.
    .why = The ones beyond that number would be left out. The provider’s boxes count too.
    .do = Leave some rooms out, or serve several rooms from one adapter with a network switch.
    .source = Broadband Forum TR-181 Issue 2: 16 members, 8 for version 1.0. One 1.0 adapter brings all down to 8, as far as we know.

finding-versions-mixed = Older and newer adapters share this coax: versions { $versions }.
    .why = They work together, but each pair runs at the speed of the older one: the oldest at { $slowest } Mb/s at most. While such a pair sends, the others wait.
    .why-head = Each pair runs at the speed of the older one
    .do = Nothing needs to be done. Put the older ones where least speed is wanted.
    .source = MoCA 2.0 press release, June 2010: 2.0 works with 1.0 and 1.1.

finding-version-too-slow = At { $outlet } { $wanted } is wanted; version { $version } gives about { $likely } over the best of cables.
    .why = Even perfect cable cannot lift this limit.
    .do = Use newer adapters there and at the start of the network, or make do with { $likely }.
    .source = MoCA 2.0 press release, June 2010 (1.1, 2.0); encyclopedia article on MoCA (1.0, 2.5).

finding-ethernet-slower = At { $outlet } { $wanted } is wanted; { $known ->
    [behind] what lies behind the adapter is made for
    [usual] nobody said which network port the adapter has, and most of its version have one of
   *[stated] the adapter’s network port is made for
} { $port }, which passes about { $payload }.
    .why = { $known ->
    [behind] That is the limit there, not the coax.
    [usual] If it has one, that is the limit there, not the coax.
   *[stated] The port is the limit there, not the coax.
}
    .do = { $known ->
    [behind] Use a faster switch or network cable there, if that speed matters.
    [usual] Check which port stands on the adapter, and note it.
   *[stated] Use an adapter with a faster port there, if that speed matters.
}
    .do-head = What to look at or to use there
    .source = RFC 6349 (2011), section 4.1.1: 94.9 % of the line rate is left for data.

## From the forecast

finding-no-channel = No channel is left for { $outlet }.
    .why = Every channel its adapter could use is taken by another service on the same cables, or the two adapters have none in common.
    .do = Give the other service cables of its own, or serve this room another way.
    .source = { source-survey }

finding-wishes-do-not-fit = All rooms at full speed at once would need { $share } of what the coax gives.
    .why = All adapters share one capacity. { $alone ->
    [yes] One room alone still gets its full speed.
   *[no] Some rooms would not get theirs even alone: look at those first.
}
    .why-head = All adapters share one capacity
    .do = Nothing needs to be done if the rooms are rarely busy at once. Otherwise wish for less, or use newer adapters.
    .source = { source-survey }

## Levels of TV and modem

level-between = between { $low } and { $high }
level-at-least = { $low } or more
level-at-most = { $high } or less

window-analog-tv = analogue TV at the set: 0 dBmV or more (47 CFR 76.605)
window-digital-tv = digital TV at the set: -12 to +15 dBmV (a guide figure, as far as we know)
window-both-tv = analogue and digital TV at the set: 0 to +15 dBmV (47 CFR 76.605 for analogue channels; a guide figure, as far as we know, for digital ones)
window-modem-receives = what the modem receives: -15 to +15 dBmV (DOCSIS, as quoted in “Broadband: Total Power”, cablefax.com)
    .recommended = recommended: -7 to +7 dBmV (common practice, no source)
window-modem-sends = what the modem sends: 50 dBmV or less (“DOCSIS 3.1 cable modem transmit power”, volpefirm.com)
    .recommended = recommended: 40 to 50 dBmV (the same article)
window-satellite = satellite at the outlet: -13 to +17 dBmV, that is 47 to 77 dBµV (EN 60728-1, read second-hand)
window-en-analog-tv = at an outlet in Europe, analogue TV: 0 to +17 dBmV, that is 60 to 77 dBµV (EN 60728-1, read second-hand)
window-en-256-qam = at an outlet in Europe, 256-QAM: -6 to +14 dBmV, that is 54 to 74 dBµV (EN 60728-1, read second-hand)
window-en-64-qam = at an outlet in Europe, 64-QAM: -13 to +7 dBmV, that is 47 to 67 dBµV (EN 60728-1, read second-hand)
window-en-antenna-tv = at an outlet in Europe, DVB-T: -15 to +14 dBmV, that is 45 to 74 dBµV (EN 60728-1, read second-hand)
window-antenna-tv = antenna TV at the set: -34 to +43 dBmV (ATSC A/74:2010)
    .recommended = recommended: -19 to +40 dBmV, since reception fades and stations add up (the weak and the strong signal of ATSC A/74)

finding-level-below-rule = At { $outlet } { $service } was measured at { $level } ({ $frequency }); { $needs } is the rule for analogue channels.
    .why = The picture can turn grainy, and any further loss is seen at once.
    .do = Look at connectors and splits on the way there. If all are sound, ask the provider to look at the level at the entry.
    .source = 47 CFR 76.605(a)(3), 2015: 1 mV across 75 ohm at the set. For analogue channels only.

level-too-much = Check whether an amplifier on the way is needed at all, or set too high. A pad (attenuator) at the device takes off what is too much.

finding-level-outside-guide = At { $outlet } { $service } was measured at { $level } ({ $frequency }); { $needs } is usual.
    .why = { $side ->
        [high] So much overdrives the set: channels may freeze or be missing.
       *[low] Channels may freeze or be missing, and there is no room for further loss.
    }
    .do = { $side ->
        [high] { level-too-much }
       *[low] Look at connectors and splits on the way there. If all are sound, ask the provider, or whoever looks after the antenna.
    }
    .source = Guide figures as far as we know (SCTE 40 for cable, ATSC A/74 for antenna, EN 60728-1 for satellite), not checked against them.

finding-modem-level-outside = The modem at { $outlet } receives { $level } ({ $frequency }); { $needs } is what it is made for.
    .why = The internet may be slow or drop out, whatever the room network does.
    .do = { $side ->
        [high] { level-too-much } If none is there, ask the provider.
       *[low] Look at connectors and splits on the way to the modem. If all are sound, ask the provider.
    }
    .source = DOCSIS Radio Frequency Interface Specification, as quoted in “Broadband: Total Power”, cablefax.com: -15 to +15 dBmV.

stretch-in-part = in { $part }
stretch-run = on { $run }
stretch-between = between { $from } and { $to }
stretch-through = between { $from } and the outputs of { $to }

finding-level-below-wiring = { $shared ->
        [yes] By what was measured at { $known }, more should arrive at { $places }. Each misses about as much (at { $place } { $apart } at { $frequency }): most likely it is one loss on what they share, { $stretch }.
       *[no] At { $place } { $level } was measured ({ $frequency }). By what was measured at { $known } it should be about { $expected }: { $apart } is missing, lost { $stretch }.
    }
    .why = { $amplifier ->
        [yes] A poor connector, a crushed or wet cable, a part that nobody noted or an amplifier without its power takes it. The room network may lose there too.
       *[no] A poor connector, a crushed or wet cable or a part that nobody noted takes it. The room network loses there too.
    }
    .do = { $whose ->
        [provider] Only the provider works on that stretch: ask for a look at it.
       *[house] { $shared ->
            [yes] Look first at { $first }: at its connectors, then for a part there that is not noted.
           *[no] Look there: first at the connectors, then for a part that is not noted.
        } { $amplifier ->
            [yes] See whether the amplifier’s lamp is on and its supply is plugged in. Measure again after each change.
           *[no] Measure again after each change.
        }
    }
    .source = { source-survey }

finding-level-above-wiring = At { $place } { $level } was measured ({ $frequency }). By what was measured at { $known } it should be about { $expected }: { $apart } more comes from somewhere { $stretch }.
    .why = Most likely an amplifier that nobody noted, or one that gives more than its label says. It may stop the room network.
    .do = Look there for an amplifier, also behind a TV or in a wall box, and write it down. If there is none, measure again.
    .source = { source-survey }

clean-cable = error ratio (MER): 28 dB or more, 31 dB recommended, both for 256-QAM (“Broadband: Making MER Better, Part 1”, cablefax.com: 3 dB or more above where reception fails)
clean-antenna = error ratio (MER): 15 dB or more, 21 dB recommended (guide figures for 8-VSB, as far as we know)

signal-noise-from = { $from ->
    [way] Before { $place } it is cleaner. Look at connectors, open ends and the cable on the way there.
    [outside] It comes that way from further up. Ask the provider, or whoever looks after the antenna.
   *[unknown] Measure it further up too, at best where it comes in: that tells whether the house adds it.
}

finding-signal-not-clean = At { $place } { $service } has an error ratio (MER) of { $ratio } ({ $frequency }); below { $least } it is not received.
    .why = Noise or echoes cover the signal: pictures freeze, and the internet drops out, however strong it is.
    .do = { signal-noise-from }
    .source = For cable an article on cablefax.com and a meter’s manual, for antennas ATSC A/53 as far as we know.

finding-signal-hardly-clean = At { $place } { $service } has an error ratio (MER) of { $ratio } ({ $frequency }); { $recommended } or more is recommended.
    .why = It works, with little to spare on a bad day.
    .do = { signal-noise-from }
    .source = For cable an article on cablefax.com and a meter’s manual, for antennas ATSC A/53 as far as we know.

finding-level-before-work = What was measured at { $place } was measured before this was done: { $work }
    .why = The work lies on the way there, so what was measured describes the wiring as it was. It no longer counts.
    .do = Measure there once more.
    .source = { source-survey }

finding-level-not-recommended = At { $outlet } { $service } was measured at { $level } ({ $frequency }): enough, but outside { $needs }, which is recommended.
    .why = { $side ->
        [high] Little more would overdrive the device.
       *[low] Levels move with heat and season, and any further loss may be seen.
    }
    .do = Nothing needs to be done while all works. If it drops out now and then, look here first.
    .source = { source-practice }

finding-measured-part-not-used = What was measured of { $part } { $lacks ->
        [ports] has another number of ports than it
       *[band] reaches over { $reaches }, not over all of { $needed }
    }; { $for ->
        [network] for the room network
        [levels] for the levels of TV and modem
       *[both] for the room network and for levels
    } it counts as its label says.
    .why = A label says less than an instrument, so the ranges are wider there.
    .do = Nothing needs to be done. Whoever has the instrument can measure it once more over the whole band.
    .source = { source-survey }

finding-modem-sends-low = The modem at { $outlet } sends at { $level }; { $needs } is what is recommended.
    .why = That does no harm. But at so low a level, noise from the house is loud beside it.
    .do = Nothing needs to be done while the internet works. If it drops out, tell the provider this figure.
    .source = “DOCSIS 3.1 cable modem transmit power”, volpefirm.com: 40 to 50 dBmV is recommended for up to 4 channels.

finding-modem-sends-high = The modem at { $outlet } sends at { $level }; { $needs } is what is recommended{ $known ->
        [yes] , and { $most } is the most that such a modem can send on one channel
       *[no] {""}
    }.
    .why = It nearly shouts to be heard: too much is lost on its way to the street.
    .do = Look at connectors and splits between modem and entry. Every split fewer helps. If all are sound, ask the provider.
    .source = “DOCSIS 3.1 cable modem transmit power”, volpefirm.com: 40 to 50 dBmV is recommended for up to 4 channels.

finding-amplifier-ends-below = On the way to { $outlet }, { $amplifier } passes only up to { $ends }; { $service } reaches up to { $top }.
    .why = Nearly nothing of what lies above gets through to the device, so channels are missing or the internet is slower.
    .do = Use an amplifier that reaches { $top }, or put the device before it. Ask the provider which one fits.
    .source = { source-survey }

finding-modem-reach-unknown = Nobody knows how far the modem at { $outlet } reaches; the room network uses channels from { $used }.
    .why = The newest modems may listen up to { $reaches }. Such a modem hears the room network and may suffer.
    .do = Read the version (DOCSIS 3.0, 3.1 or 4.0) on the modem or its page, and write it down. Or ask the provider.
    .source = Upper edges of 1218 and 1794 MHz: broadbandtechreport.com, 2015-06-03. Which generation has which, as far as we know.

finding-level-worked-out-outside = At { $outlet } { $service } should come to about { $level } ({ $frequency }), worked out from what was measured elsewhere; { $needs } is what the device there needs.
    .why = If it is so, channels may freeze or be missing, or the internet drops out; nobody has looked there yet.
    .do = Measure the level there first. If it is so, look at connectors and splits on the way there. If all are sound, ask the provider, or whoever looks after the antenna, to look at the level at the entry.
    .source = { source-survey }

finding-service-does-not-arrive = { $way ->
        [back] On the way from the modem at { $outlet } to the street about { $loss } is lost at { $frequency }: nothing of that gets there.
       *[here] On the way to { $outlet } about { $loss } is lost at { $frequency }: of { $service } nothing gets through there.
    }
    .why = No device makes up such a loss: channels are missing, or the internet does not work. It is worked out from what is noted of the wiring.
    .do = See whether what lies on the way is noted right, above all filters, amplifiers, and parts whose kind is not known. If it is, ask the provider, or whoever looks after the antenna, which of them does not belong there.
    .source = { source-survey }

finding-amplifier-return-narrow = On the way from the modem at { $outlet } to the street, { $amplifier } returns only up to { $returns }; the modem sends up to { $sends }.
    .why = The upper part of what the modem sends does not get through, so uploads can be slow or fail.
    .do = Use an amplifier whose return path reaches { $sends }, or put the modem before it. Ask the provider which one fits.
    .source = { source-survey }

finding-modem-may-reach-band = The modem at { $outlet } is of a generation that may listen up to { $reaches }, and no filter stands before it.
    .why = It then hears the room network in { $band }, and may suffer.
    .do = Ask the provider how high the service goes. If not above { -filters-pass-top }, put a filter (MoCA filter) at the modem.
    .source = { source-filter-use } Modems to 1218 and later 1794 MHz: a trade report of 2015.

finding-dc-broken = Power for { $to } comes over the coax from { $from }, and on the way { $part } is stated to block DC.
    .why = If that is so, no power arrives, and what { $to } serves stays dark.
    .do = Check whether TV and what is connected behind it work. If they do, look again at the label and at the way that is noted. If not, put a part that passes DC in place of { $part }.
    .do-head = Check whether power arrives
    .source = { source-survey }

finding-dc-feed = Power for { $to } goes over the coax from { $from }, by way of { $over }.
    .why = A filter, a cap or a splitter that blocks DC on this way would switch it off.
    .do = Leave this way as it is, or use parts there that pass power.
    .source = { source-practice }

finding-dc-feed-direct = Power for { $to } goes over the coax from { $from }.
    .why = Anything put between the two that blocks DC would switch it off.
    .do = Leave this way as it is, or use parts there that pass power.
    .source = { source-practice }

## Several networks, and what adapters see

finding-networks-overlap = On the same cables runs { $service }; beside it { $left ->
    [0] no channel is free for the room network.
    [one] one channel of { $full } is free for the room network.
   *[other] { $left } channels of { $full } are free for the room network.
}
    .why = Two networks on one wire need channels of their own. With fewer channels the room network is slower.
    .do = If the fibre box or the provider’s box can use a network cable instead, that frees its channels. Otherwise this works, only slower.
    .do-head = Free its channels, if you can
    .source = Five channels of 100 MHz for version 2.5 (encyclopedia article on MoCA) in 1125 to 1675 MHz (announcement of SCTE 235, 2017).

finding-network-channels-unknown = On the same cables runs { $service }, and it is not yet known on which channels.
    .why = A room network of version 2.5 wants { $full } channels, nearly all of { $band }; the two might meet.
    .do = Look on the box’s own page which channels it uses, or ask the provider, and note them.
    .source = Five channels of 100 MHz for version 2.5 (encyclopedia article on MoCA) in 1125 to 1675 MHz (announcement of SCTE 235, 2017).

finding-nodes-more-than-known = The adapter at { $outlet } sees { $seen } network members; { $known } are known here.
    .why = There may be a box that was forgotten, or a neighbour’s adapter may have joined.
    .do = First look for boxes in the house that speak MoCA. If there are none, set one privacy password on all your own adapters, and check the entry filter.
    .do-head = Look for boxes that speak MoCA, then set a password
    .source = { source-practice }

finding-nodes-fewer = The adapter at { $outlet } sees { $seen } network members; { $known } adapters should be there.
    .why = { $count ->
    [0] One of them is off, or hears no other.
   *[other] One of them is off, or hears no other. It may be the one at { $missing }: nothing written down here shows that it has a link.
}
    .why-head = One adapter is off, or hears no other
    .do = See at each adapter whether it has power and whether its coax light is on. Where it is not, look at its password and its short coax cable first. If one is still to come, all is well.
    .do-head = See at which adapter the coax light is off
    .source = { source-survey }

finding-node-alone = The adapter at { $outlet } sees no other, though { $known } adapters are noted on this coax.
    .why = It cannot hear the others, and may form a network of its own beside theirs.
    .do = Check that it has the same privacy password as the others. Then try it at an outlet near the start of the network (bridge): if it works there, the cable between is the place to look.
    .do-head = Check its password, then try it elsewhere
    .source = Such an adapter may form a second network, as far as we know.

## From the outlet test

place-house = the house
way-to-room = towards the room
way-from-room = from the room

measured-phy-rate = a PHY rate (raw speed on the coax) of { $rate }

finding-no-link = The adapter at { $outlet } has no link: it hears no other adapter.
    .why = As long as that is so, nothing of the network reaches this room. The adapter may be off or have another password, a connector may be loose, or something on the way lets nothing through.
    .why-head = Nothing of the network reaches this room
    .do = First see whether the adapter has power, is screwed on, and has the same privacy password as the others. Then try another short coax cable. The work list goes on from there.
    .do-head = Check power, connectors and password first
    .source = { source-survey }

finding-link-comes-and-goes = The link of the adapter at { $outlet } comes and goes.
    .why = A link that drops out usually has a loose or corroded connector on its way. Or so little gets through that small things decide.
    .why-head = Usually a connector on the way is loose
    .do = Screw the connectors at the wall and at the adapter hand-tight, and try another short coax cable. Then look at the connectors on the way, one place after the other.
    .do-head = Check the connectors, the nearest first
    .source = { source-practice }

finding-hundred-somewhere = { $wish ->
    [met] The wish at { $outlet } is met: { $measured } was measured. Still, { $expected } was expected.
   *[other] At { $outlet } { $measured } was measured; { $expected } was expected.
} That looks like a network socket or network cable of 100 Mb/s somewhere on the way, not like the coax.
    .why = One old socket, a small switch, or a network cable with only four good wires makes everything behind it run at 100 Mb/s. What such a piece passes in a test is 75 to 95 Mb/s.
    .why-head = One slow piece outside the coax holds all behind it
    .do = Look outside the coax first: at the network cables of adapter, computer and router, also in the wall; at the sockets of both computers, and at any switch between. Then test again. Only if nothing of that helps, look at the coax.
    .do-head = Look at network cables, sockets and switches first
    .source = RFC 6349 (2011), section 4.1.1: 94.9 Mb/s of a 100 Mb/s line is left for data. That tests end at 75 or more: common practice, no source.

finding-measured-below-forecast = { $wish ->
    [met] The wish at { $outlet } is met: { $measured } was measured. Still, { $expected } was expected.
   *[other] At { $outlet } { $measured } was measured; { $expected } was expected.
}
    .why = { $wish ->
    [met] Nothing needs to be done for the wish. Something on the way takes more than this survey knows of, or something else slowed the test.
   *[other] Something on the way takes more than this survey knows of, or something else slowed the test.
}
    .why-head = Something on the way takes more than is known
    .do = { $wish ->
    [met] If more is wanted one day, look at the connectors and parts on the way that were not looked at yet.
   *[other] First test once more with another computer. Then look at the connectors and parts on the way that were not looked at yet. Measuring a neighbouring outlet tells which part it is.
}
    .do-head = What to try next
    .source = { source-survey }

finding-measured-above-forecast = At { $outlet } { $measured } was measured, more than expected: { $expected }.
    .why = The wiring is better than noted, so other figures here may be too low as well.
    .do = Nothing needs to be done. If cable lengths or labels were guessed, look once more.
    .source = { source-survey }

finding-socket-holds-test = { $wish ->
    [met] The wish at { $outlet } is met: { $measured } was measured.
   *[other] At { $outlet } { $measured } was measured.
} { $said ->
    [yes] That is what the network socket of the test, made for { $socket }, lets pass.
   *[other] That is about what a network socket made for { $socket } lets pass, such as most computers have.
}
    .why = Such a socket ends a test before the coax does. It says nothing against the coax.
    .do = { $said ->
    [yes] Nothing needs to be done. Only a test with faster sockets at both ends shows what the coax gives.
   *[other] Check which sockets the two computers of the test have, and note it with the test. Nothing else needs to be done.
}
    .do-head = Whether anything is to be done
    .source = RFC 6349 (2011), section 4.1.1: 94.9 % of the line rate is left for data.

finding-loss-above-forecast = On the way to { $outlet } { $measured } is lost, by the power sent and received; { $expected } was expected.
    .why = Something on the way takes more than this survey knows of.
    .do = Look at the connectors and parts on the way that were not looked at yet.
    .source = { source-survey }

finding-one-way-slower = At { $outlet } the way { $way } is much slower: { $slow } against { $fast }.
    .why = Noise or a poor connector near the receiving end often harms one direction only.
    .do = Look at the connectors near the slower receiver, and at what else is plugged in there.
    .source = { source-practice }

finding-loss-under-load = At { $outlet } { $share } of packets get lost while the network is busy.
    .why = A sound coax network loses next to none, even when busy.
    .do = Look for loose or corroded connectors and open outputs on the way, then test again.
    .source = MoCA 2.0 press release, June 2010: the target is one packet lost in 100 million.

finding-loss-while-quiet = At { $outlet } { $share } of packets get lost though nothing else runs.
    .why = A sound coax network loses next to none. Loss even at rest points to a bad connector, a poor adapter or noise on the cable.
    .do = Screw the connectors at the wall and at the adapter hand-tight, try another short coax cable, and test again. Then look at the connectors on the way.
    .do-head = Check the connectors at this outlet first
    .source = MoCA 2.0 press release, June 2010: the target is one packet lost in 100 million.

finding-internet-below-plan = At { $outlet } a test to the internet gave { $measured }; the plan gives { $plan }.{ $wish ->
    [met] {" "}What is wished there is met all the same.
   *[other] { "" }
}
    .why = Between here and there lie the coax, the router, the modem and the street, and the other end may be busy. Such a test does not say which of them was slow.
    .why-head = Such a test does not say what was slow
    .do = Test within the house, between a computer here and one at the router. If that is fast, the cause lies at the router or outside; then ask the provider.
    .do-head = Test within the house, then ask the provider
    .source = { source-practice }

finding-internet-loses-packets = At { $outlet } { $share } of packets get lost on the way to the internet.
    .why = The way there goes over much more than the coax of this house. Such a test says nothing against the coax.
    .do = Test within the house. If nothing gets lost there, ask the provider.
    .source = { source-practice }

finding-speed-swings = The internet at { $outlet } swings between { $low } and { $high }, with heat or the time of day.
    .why = That points to the street’s cable or its fittings, not to the room network.
    .do = Test between two adapters within the house. If that is steady, ask the provider to check the line.
    .source = An account of a real house (“Speed up your cable internet”, a blog, 14 December 2014): 6 to 100 Mb/s, worst in the hot part of the day, from one weak modem channel.
