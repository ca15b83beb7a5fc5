# The work list: what to do, .why, .how, .check afterwards, and .back: how to put it back. The cautions stand in
# findings.ftl.

ask-provider-first = First ask the provider whether the service goes above { -filters-pass-top }, as newer modems may. If it does, leave this filter out and ask which one fits.
need-asked = ask the provider first: not this one if the service goes above { -filters-pass-top }

change-add-entry-filter = { $place ->
    [branch] Put an entry filter (a MoCA filter) on the cable of your own home, at { $behind }.
   *[line] Put an entry filter (a MoCA filter) right behind { $behind }, before the first split.
}
    .why = It keeps your network inside the house, and sends its signal back to the rooms.
    .how = { $sure ->
        [no] First make sure that no dish’s cable comes in here: it must not get this filter.{" "}
       *[yes] { "" }
    }{ $power ->
        [yes] DC power goes over this cable: take a filter that passes it (DC pass).{" "}
       *[no] { "" }
    }{ $ask ->
        [yes] { ask-provider-first } Then screw the filter to { $place ->
            [branch] { $behind }
           *[line] the house side
        }, and
       *[other] Screw the filter to { $place ->
            [branch] { $behind }
           *[line] the house side
        }, then
    } the cable to the filter. Tighten by hand, then a small turn with { -wrench }.
    .how-head = How to screw the filter in
    .check = Do TV and internet still work as before?
    .back = Unscrew the filter and screw the cable back to where it was.
change-move-entry-filter = { $place ->
    [branch] Move { $filter } to the cable of your own home, at { $behind }.
   *[line] Move { $filter } to right behind { $behind }, before the first split.
}
    .why = Where it is now, it stands between rooms that are to hear each other, or leaves a way out to the street.
    .how = Unscrew it, join the two cables with a barrel, and screw the filter in at its new place.
    .check = Do TV and internet still work as before?
    .back = Screw the filter back in where it was, and join the cables at the new place with a barrel.
change-swap-entry-filter = Swap { $filter } for an entry filter that stops the MoCA band.
    .why = { $fault ->
        [power] By its label the present one blocks the DC power that something needs.
       *[band] By its label the present one lets the network’s band through to the street.
    }
    .how = { $power ->
        [yes] DC power goes over this cable: take a filter that passes it (DC pass).{" "}
       *[no] { "" }
    }{ $ask ->
        [yes] { ask-provider-first } Then screw
       *[other] Screw
    } the new one in where the old one was.
    .check = Do TV and internet still work as before?
    .back = Screw the old filter back in. Keep it until everything has run for a week.
change-swap-splitter = Swap { $splitter } for a { $legs }-way splitter { -made-for-moca }.
    .why = { $fault ->
        [power] By its label the present one blocks the DC power that something needs.
       *[band] A splitter not made for the band may cost little or much; each output fewer is signal gained.
    }
    .how = { $power ->
        [yes] DC power goes over these cables: take a splitter that passes it (DC pass) on the outputs where it goes.{" "}
       *[no] { "" }
    }Note which cable was on which output (tape and pen). The cable to the modem goes to the output with the least loss; where there is none, the longest. { $power ->
        [yes] Cap what stays free with caps that block DC (DC block).
       *[no] Cap what stays free.
    }
    .how-head = Note which cable was where before you begin
    .check = Do TV and internet still work as before?
    .back = Screw the old splitter back in, each cable to the output that its tape names.
change-remove-splitter = Take out { $splitter } and join its two cables with a barrel.
    .why = Only one of its outputs is used: it takes signal and gives nothing.
    .how = Unscrew both cables and screw them to the barrel.
    .check = Do TV and internet still work as before?
    .back = Screw the old splitter back in where the barrel is.
change-merge-splitters = Replace { $upper } and { $lower } by one { $legs }-way splitter { -made-for-moca }.
    .why = Two splitters in a row cost the signal twice.
    .how = Note which cable was on which output (tape and pen). The cable to the modem goes to the output with the least loss; where there is none, the longest. { $power ->
        [yes] DC power goes over these cables: cap what stays free with caps that block DC (DC block).
       *[no] Cap what stays free.
    }
    .how-head = Note which cable was where before you begin
    .check = Do TV and internet still work as before?
    .back = Screw the two old splitters back in, each cable to the output that its tape names.
change-cap = Cap { $port } with a 75-ohm terminator.
    .why = An open output sends echoes into the other rooms, and lets signal out and noise in.
    .how = { $power ->
        [yes] DC power goes over these cables and may stand on this output: take a cap that blocks DC (DC block), never a plain one. Screw it on, hand-tight and a small turn more.
       *[no] Screw the cap on, hand-tight and a small turn more. On an output that may carry DC power take a cap that blocks DC.
    }
    .how-head = { $power ->
        [yes] Take a cap that blocks DC
       *[no] How to screw the cap on
    }
    .check = Do TV and internet still work as before?
    .back = Unscrew the cap.
change-cap-outlet = Cap { $outlet } with a 75-ohm terminator.
    .why = An empty outlet sends echoes into the other rooms, and lets signal out and noise in.
    .how = { $power ->
        [yes] DC power goes over these cables and may stand on this outlet: take a cap that blocks DC (DC block), never a plain one. Screw it on, hand-tight and a small turn more.
       *[no] Screw the cap on, hand-tight and a small turn more.
    }
    .how-head = { $power ->
        [yes] Take a cap that blocks DC
       *[no] How to screw the cap on
    }
    .check = Do TV and internet still work as before?
    .back = Unscrew the cap.
change-swap-amplifier = { $bypass ->
    [unknown] If { $amplifier } has no by-pass, swap it for one that lets the MoCA band pass.
   *[no] Swap { $amplifier } for one that lets the MoCA band pass (by-pass).
}
    .why = { $bypass ->
        [unknown] Nobody knows whether it has a by-pass. Without one it lets next to nothing of the network through, and this gains what is told below; with one this gains nothing. Read its label first: “MoCA”, “by-pass” or a band up to { -band-top } says that it has one.
       *[no] Without a by-pass an amplifier lets next to nothing of the network through from its input to its outputs, and keeps its outputs apart.
    }
    .why-head = { $bypass ->
        [unknown] Read its label first: with a by-pass this gains nothing
       *[no] Without a by-pass next to nothing gets through
    }
    .how = Unplug its power supply first, and plug in the new one’s last. The new one needs the same gain and number of outputs, and a return path at least as wide. The power supply goes with the amplifier.
    .how-head = Its power supply comes out first and goes in last
    .check = Do TV and internet still work as before, on every set?
    .back = Put the old amplifier and its power supply back, each cable to the port that its tape names.
change-remove-amplifier = { $bypass ->
    [unknown] If { $amplifier } has no by-pass, take it out and join the cables.
   *[no] Take out { $amplifier } and join the cables.
}
    .why = { $bypass ->
        [unknown] Nothing here seems to need it, and nobody knows whether it has a by-pass. Without one it lets next to nothing of the network through; with one this gains little. Read its label first: “MoCA”, “by-pass” or a band up to { -band-top } says that it has one.
       *[no] Without a by-pass an amplifier lets next to nothing of the network through, and nothing here seems to need it.
    }
    .why-head = { $bypass ->
        [unknown] Read its label first: with a by-pass this gains little
       *[no] Without a by-pass next to nothing gets through
    }
    .how = Unplug its power supply first, then unscrew the cables and join them with a barrel.
    .check = Do TV and internet still work as before, on every set?
    .back = Screw the amplifier back in, and plug in its power supply last.
change-replace-run = Replace { $run } with 6-series cable.
    .why = Old or thin cable loses more signal, and the more the longer it is.
    .how = The old cable can pull the new one if it lies free in a tube. Put compression connectors on both ends.
    .check = Do TV and internet still work as before?
    .back = Leave the old cable in its place until the new one has proved itself; then it only needs to be screwed on again.
change-renew-connectors = Put { $count ->
    [one] a new compression connector
   *[other] new compression connectors
} on { $run }, { $ends }.
    .why = Twisted-on, corroded or loose connectors lose signal and let it out.
    .how = Two tools are needed: a coax stripper and a compression tool for F connectors. Cut the old connector off, strip the end, push the new one on and press it home with the tool; it must be made for the cable’s own series. Somebody who has the tools, such as an electrician or a TV installer, does this in minutes.
    .how-head = The tools it takes, and who has them
    .check = Do TV and internet still work as before?
    .back = A connector that was cut off does not come back; if something is worse, put another new one on.

# A part to get, with how many of it.
need-counted = { $count } × { $what }
change-filter-at-modem = Put a filter (a MoCA filter) at the port of the modem at { $outlet }.
    .why = { $drops ->
        [yes] The internet drops out, and the room network may be too loud for the modem here, whatever its age.
       *[no] This modem is made to listen in the band of the room network, which could disturb it.
    }
    .how = { $ask ->
        [yes] { ask-provider-first } Then screw the filter to the modem, and
       *[other] Screw the filter to the modem, then
    } the cable to the filter.
    .how-head = How to screw the filter in
    .check = Does the internet still work as before?
    .back = Unscrew the filter and screw the cable to the modem again.
change-filter-at-tv = Put a filter (a MoCA filter) at the port of the TV or TV box at { $outlet }.
    .why = The room network is loud where TV and adapter share an outlet. It may be too much for the TV, and the picture may break up.
    .how = Screw the filter to the TV or its box, then the cable to the filter. If the TV is connected to the adapter’s own through port, leave the filter out only where the adapter’s manual says that this port keeps the network from the TV.
    .how-head = How to screw the filter in, and when to leave it out
    .check = Are all channels there, and is the picture as before?
    .back = Unscrew the filter and screw the cable to the TV or its box again.
change-modem-own-line = Give the modem at { $outlet } a line of its own straight from the entry.
    .why = The modem and the room network then no longer share a cable, and nothing of your network leaves the house.
    .how = Join the cable from the entry to the modem’s cable with a barrel. Screw a filter (a MoCA filter) with a cap on its far side to the input of the splitter that is left, and cap the output that the modem leaves.
    .how-head = How to join the modem’s line, and what to cap
    .check = Does the internet still work as before? TVs on the rest of the coax get nothing from the street from now on: does nobody miss them?
    .back = Screw the entry’s cable to the input of the splitter again, and the modem’s cable to its output.
change-share-outlet = Let the adapter and what is plugged in share { $outlet }: by the adapter’s own through port, or by a small splitter.
    .why = Both need the same cable. The forecast already allows for the loss.
    .how = { $power ->
        [yes] DC power goes over this outlet: use a splitter that passes it (DC pass), with the device that sends it on the output that does. The adapter’s own through port will do only if its manual says that it passes DC.
       *[no] With a through port: wall to adapter, adapter to device. Without: wall to splitter, one output to the adapter, one to the device.
    }
    .how-head = { $power ->
        [yes] Keep the way for DC power
       *[no] How to share the outlet
    }
    .check = Do TV and internet still work as before at this outlet?
    .back = Screw the device straight to the wall again.
change-join-loose = Trace the cable of { $part }, and join it to the one that leaves { $port }, if they belong together.
    .why = Here is a cable whose far end is not known, and there a part whose feed is not known.
    .how = See what goes dead when the output is unscrewed, or use a tone tracer. Put tape marks on both ends. Then, with the supplies pulled, fit a connector where one is missing, and join.
    .how-head = How to find its other end
    .check = Do TV and internet still work as before?
    .back = Unscrew the cable from the output again, and cap the output.
change-move-bridge = Move the adapter where the network starts (bridge) from { $from } to { $to }.
    .why = From there more gets through to the rooms.
    .how = The router, or a network cable from one of its LAN ports, must reach the new place.
    .check = Do the internet and all rooms work as before or better?
    .back = Move the adapter back.
change-use-outlet-nearby = Serve { $room } from { $outlet }.
    .why = There is no coax in this room; a network cable from an outlet nearby is less work than new coax.
    .how = Put the adapter at that outlet, and lead a network cable from it to the room. If another outlet is nearer, use that one.
    .check = Does whatever is plugged in at that outlet still work as before?
    .back = Unplug the adapter and screw what was there back on.
change-new-run = Lay a new coax cable from { $from } to { $room }, with an outlet there.
    .why = There is no coax in this room.
    .how = 6-series cable on the shortest dry way, without sharp bends, with compression connectors at both ends. A network cable on the same way would serve as well.
    .how-head = Which cable to lay, and how
    .check = Do TV and internet still work as before?
    .back = Unscrew the new cable from the splitter, and cap the output.

change-newer-adapter = Put a newer adapter at { $outlet }{ $bridge ->
    [yes] {" "}and another at the start of the network, { $start }
   *[no] { "" }
}.
    .why = The version of the adapters is what limits this room; the coax could give more. Two adapters speak the newest version that both know.
    .why-head = The version of the adapters is the limit here
    .how = Unplug the old adapter, screw the new one on in its place, and give it the privacy password of the others. The old one still serves where less speed is wanted.
    .check = Do TV and internet still work as before, and is the room faster?
    .back = Put the old adapter back.
change-exchange-adapters = Let the adapters at { $outlet } and { $other } change places.
    .why = As far as was said of them, the adapter at { $other } can do more than the one at { $outlet }, where more is wished for. Nothing has to be bought.
    .how = Unplug both, and screw each on where the other stood. Each takes its own power supply along: another one may ruin it. The network cables stay where they are. Both keep their privacy password.
    .check = Do TV and internet still work as before, and is the room faster?
    .back = Let them change places again.
change-look-at-part = Look at { $part }, on the way to { $outlet }, and test there again.
    .why = Something is wrong on the way to { $outlet }, and of all on it this is among the likeliest to be at fault, or the least known.
    .how = See that every cable is screwed on straight and hand-tight, and look for corrosion, a bent pin or a connector half off. { $splits ->
        [yes] Read what is printed on it, its band above all, and write it down here.
       *[no] Write down here what it is and what is printed on it.
    } Then test at { $outlet } again.
    .how-head = What to look for
    .check = Is the test as expected now? Then take the old reading out and write down the new one.
    .back = Nothing was changed; there is nothing to put back.
change-look-at-run = Look along { $run }, on the way to { $outlet }, and test there again.
    .why = Something is wrong on the way to { $outlet }, and of all on it this is among the likeliest to be at fault, or the least known.
    .how = Look at the connectors on both ends: corroded, twisted on, loose or crooked ones are poor. Look along the cable for kinks, staples and nails as far as it shows. Write down its series, its length and how the connectors are. Then test at { $outlet } again.
    .how-head = What to look for
    .check = Is the test as expected now? Then take the old reading out and write down the new one.
    .back = Nothing was changed; there is nothing to put back.
change-check-adapter = Check the adapter at { $outlet }: power, connectors, password.
    .why = An adapter that is off, not screwed on, or has another password than the others hears nobody. That is quickly checked.
    .how = See whether its power light is on and its coax connector sits. Compare its privacy password with that of the others on their own pages. Then pull its power, wait ten seconds, plug it in again, and give it three minutes.
    .how-head = What to check
    .check = Is its coax light on now? Then take the old reading out and test the room.
    .back = Nothing was changed; there is nothing to put back.
change-check-short-cable = Try another short coax cable at the adapter at { $outlet }, and test again.
    .why = The short cable between wall and adapter is moved most and is often the one that fails. Swapping it for one known to be good tells at once.
    .how = Take the short cable of a room that tests well. Screw it on hand-tight at the wall and at the adapter, without a splitter between if that can be. Then test again.
    .how-head = Which cable to take
    .check = Is the test as expected now? Then keep the good cable, take the old reading out and write down the new one.
    .back = Screw the old cable on again.
change-check-network-cable = Try another network cable at the adapter at { $outlet }, look at sockets and switches, and test again.
    .why = A network cable with only four good wires, an old switch or an old socket passes 100 Mb/s and no more, whatever the coax gives.
    .how = Take network cables known to be good at the adapter, at the computer and at the router. Leave out every switch and every network cable in the wall for the test. See that both computers have sockets of 1 Gb/s or more; their network settings show the speed of the link. Then test again.
    .how-head = What to swap, and what to leave out
    .check = Is the test as expected now? Then note what was slow, take the old reading out and write down the new one.
    .back = Plug everything in as it was.
change-check-other-adapter = Let the adapter at { $outlet } and one of a room that tests well change places, and test both.
    .why = Either the adapter is at fault or the way to this room. If the fault goes along with the adapter, it is the adapter.
    .how = Take both adapters with their power supplies and short cables to the other room. Give each three minutes, then test both rooms.
    .check = In which room is the test bad now? Note it at that room.
    .back = Take both back to their places.
change-check-measure = Have the coax to { $outlet } measured by somebody who has a meter for it.
    .why = What can be looked at and swapped has been. A meter shows where along the cable something is wrong.
    .how = A TV installer measures the loss between two outlets up to { -band-top } and finds a bad joint in the wall. Show the report: it says what was looked at already. If that is no way, a new cable or another outlet nearby serves the room.
    .how-head = Who measures, and what to show
    .check = What did the meter show? Note it, and test the room again.
    .back = Nothing was changed; there is nothing to put back.

worklist-searched = { $houses ->
    [one] One way
   *[other] { $houses } ways
} to change this house for more speed { $houses ->
    [one] was
   *[other] were
} tried in the forecast, by what the rooms get and what it costs in work and parts. { $best ->
    [yes] No other choice of the changes that this program knows is better.
   *[no] Not every choice was tried: another may be better by at most { $more } over all rooms, to them and from them together.
}
worklist-cut-steps = More may be worth doing than these steps. When they are done, look at the work list again.
worklist-cut-size = This house has so many parts that not every further change was tried. When these steps are done, look at the work list again.

# Lists that leave some kind of work out, and what they are beside the list that is shown.
without-new-cable = no new cable
without-heights = nothing that may need an attic, a ladder or a roof
without-nothing = With all work that is worth it
without-list = With { $kinds }
worklist-chosen = You chose a list with { $kinds }. Whatever else might be worth doing is left out of it.
other-lists = Other lists to choose from
other-lists-caption = Each beside the list above
head-other-list = List
head-other-takes = What it takes
head-other-differs = What differs
other-head = { $name }: { $takes }.
other-takes = { $count ->
    [0] Nothing to do
    [one] 1 step, about { $minutes } minutes
   *[other] { $count } steps, about { $minutes } minutes in all
}, { $things ->
    [0] nothing to get
    [one] 1 thing to get
   *[other] { $things } things to get
}
other-leaves-out = Not done: { $change }
other-adds = Also done: { $change }
other-not-private = Your network is then not kept inside the house.
other-room = { $room } then likely gets { $likely }, nine times in ten at least { $low }.
other-rooms-alike = { $rooms ->
    [one] The room gets about what this list gives it.
   *[other] Every room gets about what this list gives it.
}
other-rooms-else-alike = { $rooms ->
    [one] The other room gets about what this list gives it.
   *[other] Every other room gets about what this list gives it.
}
other-not-met = The speed wished for is then not reached in { $rooms }.
other-met = The speed wished for is then reached in { $rooms } too.

failed-next = { $how ->
    [not_seen] The adapter at { $outlet } is not among those that were counted
   *[other] The test at { $outlet } failed
}. Next for it: { $step }
    .short = Next: { $step }
failed-nothing-left = { $how ->
    [not_seen] The adapter at { $outlet } is not among those that were counted
   *[other] The test at { $outlet } failed
}, and every change and check that this list knows for it was made or given up. Show the report to somebody with a meter for coax, or serve this room with another cable.
    .short = Every change and check that this list knows for it was made or given up.
failed-wish = At { $outlet } the test gives less than is wished, and no change was found that gives more. Wish less there, or lead a network cable to it.
    .short = The test gives less than is wished, and no change was found that gives more.

service-change-loses = { $service } at { $outlet }: up to { $loss } less signal
service-change-gains = { $service } at { $outlet }: up to { $gain } more signal
service-change-none = nothing that TV or modem would notice

# Where each adapter goes
adapters-to-place = Place the adapters
adapter-near-router = The outlet nearest the router
adapter-at-router = Network cable from a LAN port of the router to the adapter; coax cable from the adapter to the outlet.
adapter-in-room = Coax cable from the outlet to the adapter; network cable from the adapter to the device, or to a switch for several.
adapter-through-port = It shares the outlet: outlet to adapter, then from the adapter’s own through port to what was plugged in there.
adapter-splitter = It shares the outlet: outlet to the small splitter, one output to the adapter, one to what was plugged in there. With a through port on the adapter no splitter is needed.

need-adapter = MoCA adapter (coax to a network socket), version { $version }, its network socket (Ethernet) { $port } or faster, with a short coax cable and a network cable
need-entry-filter = entry filter (MoCA filter), F connectors, passes { -band-filters-pass }{ $power ->
    [yes] {" "}and DC power (DC pass)
   *[no] { "" }
}, stops { -band-adapters } by { -filters-stop-by } or more{ $ask ->
    [yes] {" "}({ need-asked })
   *[other] { "" }
}
need-splitter = { $legs }-way splitter, 75 ohm, F connectors, { -made-for-moca }
need-splitter-power = { $legs }-way splitter, 75 ohm, F connectors, { -made-for-moca }, with power passing on the output that needs it (DC pass)
need-device-filter = filter for one device (MoCA filter), F connectors, passes { -band-filters-pass }, stops { -band-adapters } by { -filters-stop-by } or more{ $ask ->
    [yes] {" "}({ need-asked })
   *[other] { "" }
}
need-share = { $legs }-way splitter and a short coax cable, { -made-for-moca } (neither is needed where the adapter has a through port)
need-share-power = { $legs }-way splitter and a short coax cable, { -made-for-moca }, with power passing on the output that needs it (DC pass)
need-network-cable = network cable, long enough to reach the room
need-wall-plate = wall plate with an F connector, made for { -band-parts } or more
need-barrel = barrel (cable joiner), F connectors, made for { -band-parts } or more
need-cap = 75-ohm cap (terminator), F connector
need-cap-power = 75-ohm cap (terminator) that blocks DC (DC block), F connector
need-connector = compression F connector of the cable’s series
need-cable = 6-series coaxial cable, { $length } and some spare
need-cable-unmeasured = 6-series coaxial cable, as long as the old one and some spare
need-amplifier = amplifier with { $outputs ->
    [one] one output
   *[other] { $outputs } outputs
} and a by-pass for { -band-adapters }

refusal-filter-in-satellite-line = { $entry } brings satellite signals, which use the band that the filter stops: TV would be gone.
refusal-filter-cuts-service = Here { $service } reaches up to { $top }, and such a filter passes only up to { $passes }. Ask the provider for a filter made for this service.
refusal-filter-satellite-may-be = Satellite signals may come in at { $entry }, and such a filter would stop them. Find out what comes in there first.
refusal-amplifier-isolates = Before the first split stands { $amplifier }, without a by-pass: it already keeps the network in the house.
refusal-preamplifier-outside = Behind { $entry } an antenna’s amplifier stands outside and gets its power over this cable. It already keeps the network in the house.
refusal-another-home = Another home gets its signal through here, by { $port }. This stays as it is; ask whoever looks after the building.
refusal-another-home-may-be = Nobody knows what { $port } feeds, and other homes share this coax: it may be one of them. Look, or ask whoever looks after the building where it leads.
refusal-shares-with-satellite = Satellite signals come to { $outlet }, in the very band of the adapters: the two cannot share it.
refusal-cuts-provider-network = What is plugged in at { $outlet } may need { $service }, which runs in the band that such a filter stops.
refusal-levels-unknown = A TV or modem at { $outlet } would get { $loss } less signal, and nobody has measured whether that is enough.
refusal-cuts-power = { $powered } gets its power through this cable.
refusal-cuts-power-outside = What stands outside behind { $powered } (a dish or an antenna’s amplifier) gets its power through this cable.
refusal-cuts-service = Nothing of { $service } would arrive any more at { $outlet }.
refusal-cuts-return = The modem at { $outlet } could no longer be heard by the provider.
refusal-level-out = { $service } at { $outlet } was measured at { $before }; it would be about { $after }, outside what the device needs.
refusal-level-out-worked-out = { $service } at { $outlet } should be about { $before } now; it would be about { $after }, outside what the device needs. Measure there before you think of it again.
refusal-sends-too-much = The modem at { $outlet } sends at { $before } now and would have to send at about { $after }, more than is good.
refusal-cuts-device = { $outlet } is in use.
refusal-street-side = It is on the street’s side: { $run }. That side stays closed; ask the provider to put it right.
refusal-narrows-satellite = { $outlet } gets satellite signals through it, and a splitter made for the room network does not pass all of them.
left-out-not-worth = When all steps are done, it gives all rooms together { $gain } more, for about { $minutes } minutes of work and its parts: too little for what is wished.
refusal-cuts-network = { $outlet } would get no network any more.
refusal-without-new-cable = It lays, replaces or traces cable, and you chose a list with no new cable.
refusal-without-heights = It may need an attic, a ladder or a roof, and you chose a list with nothing of the kind.
refusal-not-yours = The wiring is rented: new cable in the walls is for the owner to decide. Ask first.
