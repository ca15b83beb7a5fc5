# What follows from the survey: forecast, findings, work list, privacy, outlet test, handover.

# --- the stages as rows of the whole job, and the presses that lead to them

forecast = What gets through
findings = What is wrong or at risk
work = The work list
private = Keep it private
tests = The outlet test
compare = Forecast against test
handover = Handover
to-forecast = To what gets through
to-findings = Go on to what is wrong or at risk
to-all-findings = All that was found
to-work = To the work list
to-private = Go on to privacy
to-tests = To the outlet test
to-compare = Go on to forecast against test
to-handover = Go on to the handover
to-map = See the wiring map
to-unknowns = See all that is not known
door-not-worked-out = not worked out yet
door-rooms = { $count ->
    [one] 1 room worked out
   *[other] { $count } rooms worked out
}
door-rooms-met = { $met } of { $of } rooms get what is wished
door-findings = { $count ->
    [0] nothing found
    [one] 1 found
   *[other] { $count } found
}
door-work-left = { $count ->
    [0] { $done } done, none left
   *[other] { $done } done, { $count } left
}
door-work-done = { $count } done
door-tested = { $count } of { $of } rooms tested
door-done = done
door-half = half done

# --- while something is worked out

work-running = Working it out
work-running-why = Hundreds of versions of the house are tried, since not everything is known exactly. You can leave this screen meanwhile.
work-stop = Stop
work-stopped = This was stopped, so nothing is shown. What you answered is kept.
work-not-begun = Something was changed since this was worked out.
work-failed = This could not be worked out. { $what } What you answered is kept.
work-out = Work it out

# --- what gets through

forecast-first = This is a first, wide forecast: not all is asked yet that may change it.
forecast-ask-on = Go on with the questions that may change it
forecast-no-bridge = It is not known yet which outlet is at the router. From there the network starts, so nothing can be told before.
forecast-rooms = Towards each room
forecast-without = Rooms without an outlet
forecast-no-outlet = no outlet is known there; the work list looks for the nearest
forecast-how = “Likely” is the middle of many tries over all that is not known exactly. Only one in ten came out below “at least”.
gets-nothing = likely nothing; { $limit }
gets-through = { $rate }; { $limit }
limited-by-place = { $place } limits it most
limited-by-own-run = its own cable limits it most
limited-by-own-thin-run = its own thin old cable limits it most
limited-by-thin-run = the thin old cable of { $place } limits it most
limited-by-way = the way through the cables limits it
limited-by-port = only the network socket of an adapter limits it, not the cables
limited-by-version = the version of the adapters limits it, not the cables
limited-by-band = other services leave few frequencies free, which limits it

room-title = { $outlet }: what gets through
room-down = To the room: { $rate }.
room-up = From the room: { $rate }.
room-limit = In short: { $limit }.
room-mend = One answer may mend this:
room-costs = Where the signal is lost on the way, most first
room-loss = { $loss }

map = The wiring map
map-lead = The weakest way leads to: { $outlet }.
map-lead-found = This is what was found.
map-lead-after = So it is after the work.
map-how = Choose a part to see what is known of it. The band leads to the weakest room; a flag says that something is weak or wrong, a question mark that it is to be found out.
    .after = All steps of the work list are done here. A triangle has the number of the step that changes a part; a line of long strokes is a new cable.
map-to-unfold = A touch shows them all.
map-unfold-all = Unfold all
map-fold-again = Fold again
map-after = After the work
map-now = As it is now
map-parts = All parts, from the street to the rooms
part-fed = gets its signal from { $port }
part-findings = What is wrong or at risk there
part-unknowns = What is not known there
part-questions = Questions about it

bar-words = { $told }
bar-range = at least { $low }, likely { $likely }, at most { $high }
bar-wish = wished { $rate }
bar-measured = measured { $rate }
bar-measured-capped = measured { $rate }, held by the test’s own network socket
bar-after = likely { $rate } after the work

# --- what is not known

unknowns = What is not known
unknowns-worth = Worth going back for
unknowns-lead = These few make the forecast unsure. If you go back for anything, go back for them.
unknowns-why = Each was tried again and again as it may turn out to be, with all else left as it was. What makes a rate most unsure comes first.
unknowns-none = Nothing is left open.
unknowns-none-matters = What is left open hardly changes the forecast. There is no need to go back.
unknowns-first = What matters most
unknowns-rest = The rest
worth-stake = Until it is known, what { $room } gets is unsure by about { $rate }.
worth-failed = It is on the way to { $rooms }, where not all is as expected.
worth-weakest = It is on the way to the weakest room.
worth-way = It is on the way to { $rooms }.
worth-loose = It may be the missing link to a room.
worth-pass = If it does not stop the room network’s band, signals leave the house there.
worth-leak = If it is joined, signals leave the house there.
worth-echo = It is on no way to a room; only what it throws back (its echo) gets there.
worth-little = It hardly changes the forecast.

# --- what is wrong or at risk

findings-lead = { $count ->
    [one] One thing was found. Choose it to see why it matters and what to do.
   *[other] { $count } things were found, the most serious first. Choose one to see why it matters and what to do.
}
finding = What was found
finding-gone = This is not found any more, as the house stands now.
finding-where = Where
finding-todo = What to do
finding-source = On what grounds: { $source }

# --- the work list

work-lead = { $count ->
    [one] One change is worth the work: about { $minutes } minutes.
   *[other] { $count } changes are worth the work: about { $minutes } minutes in all.
}
work-why = One change at a time. After each, TV and internet are checked and the forecast is worked out again, so you can stop wherever it is good enough.
    .head = One change at a time, and a check after each
work-lead-checks = { $count ->
    [one] One check comes first: about { $minutes } minutes. Nothing is bought for it.
   *[other] { $count } checks come first: about { $minutes } minutes in all. Nothing is bought for them.
}
work-nothing-for-tests = No change and no check is left for what the tests showed.
work-steps = In this order
work-step = { $number }. { $what }
work-remark = { $minutes } { $gain }
work-shopping = What to get, for all of it
work-levels = What TV and modem get
work-begin = Begin with the first
gain-room = { $room } { $rate }
gain-room-other = { $room } { $gain }
step-gain = Expected to gain: { $rooms }.

step = One change
step-of = Change { $number } of { $of }
step-gone = This change is not on the list any more, as the house stands now.
step-not-first = The changes before this one are expected to be done first; the gain is counted from there.
step-after-others = This change builds on one before it. Do that one first.
step-services = TV and modem
step-done = It is done
step-could-not = It cannot be done
step-all = All changes

after = After the work
after-why = If something is worse now, it is this one change, and it can be put back.
after-fine = Does everything still work?
after-yes = Yes, all works as before
after-no = No, something is worse
after-nothing = Nothing else uses the cable
after-not-fine = Then put this change back first, and look again. If it is no better after that, the cause lies elsewhere.
after-next = Go on with the list
put-back = Put it back
    .question = Has the change been undone on the wall? Then the survey goes back to how it was before.
    .yes = Yes, it is put back
    .no = No, leave it
put-back-by-hand = It now counts as put back. Other answers about the same parts came after this change, so please check them: the survey may still show the new state there.

ended = Work that is over
ended-done = Done
ended-could-not = Could not be done
ended-put-back = Put back
ended-fine = TV and internet were fine afterwards.
ended-not-fine = something was worse afterwards
ended-not-looked = It is not known whether TV and internet were fine afterwards.
ended-note = What stood in the way? It helps whoever comes next.
ended-check = Say whether TV and internet are fine
ended-again = Take it up again
ended-again-why = It is left out of the work list while this stands. Taken up again, it is considered like any other.

# --- place the adapters

placing = Place the adapters
to-placing = Go on to placing the adapters
placing-lead = Now the adapters go to their outlets: one at the router, one in each room that wants network.
placing-done = The adapters are placed.
placing-none = There is no adapter to place: no room has said yet what it wishes for, or they are there already.
placing-why = Together they make the network over the TV cable (MoCA). The one at the router is where it starts (the bridge).
placing-how = Each needs a mains socket nearby. Begin at the router. Once two adapters hear each other, most show it by a coax light.
placing-missing = { $owned ->
    [0] None is there yet
    [one] One is there
   *[other] { $owned } are there
}, and { $needed } are needed. The others are on the list of what to get.
placing-rows = Where each one goes
placing-placed = All are placed; go on to privacy
placing-later = Later; go on to privacy
placing-not-placed = Not all are placed yet

# --- keep it private

private-lead = Three things keep your network your own: a privacy password, the filter, and a count.
private-why = The TV cable may lead to the neighbours. Without these, their adapters could join your network.
private-how = Set the same privacy password on every adapter that is yours, on each adapter’s own page. The password is not asked for here, and not kept.
    .head = Where the password is set
private-not-theirs = Leave the provider’s own network and boxes as they are: they get no password from you. They are counted, and that is all.
private-password = Do all your own adapters have the same privacy password?
private-yes = Yes, all of them
private-no = Not yet
private-none = There are no adapters yet
private-filters = Entry filters (MoCA filters)
private-filter-in = the filter is in
private-filter-unread = a filter is there; whether it stops the room network is not known: read its label
private-filter-missing = no filter yet; answer again once it is in
private-filter-dish = carries satellite signals; no filter may go here
private-filter-amplifier = the antenna’s or the line’s amplifier lets nothing out; needs none
private-filter-waits = leave it out for now; the findings say why
private-filter-fibre = from a fibre box inside; no filter is needed here
private-filter-cut-off = cut off; needs none
private-nodes = Who is on the cable?
private-nodes-how = An adapter’s own page lists the devices on its network, often called nodes. { $known ->
    [0] None are known here yet.
    [one] One is known here.
   *[other] { $known } are known here{ $placed ->
        [yes] { "" }
       *[no] , with the adapters still to come
    }.
}
    .head = Where to see who is on the cable
private-nodes-seen = How many does it show, itself included?
private-nodes-same = It shows { $seen }, no more than are known here.
private-nodes-fewer = It shows { $seen }, fewer than the { $known } known here. That is fine while an adapter is still to come or has no power.
private-nodes-missing = It shows { $seen }, fewer than the { $known } that should be there by now: one has no power, or hears no other.
private-nodes-uncounted = It shows { $seen }, more than the { $known } known here. Boxes of the provider’s may be among them; count those first.
private-nodes-more = It shows { $seen }, more than the { $known } known here. Somebody else may be on your network.
private-next = Go on to the outlet test

# --- the outlet test

tests-lead = Test each room, and write down what the test says.
tests-none = No room has an adapter, or is to have one. Say first what the rooms wish for and which outlets they have.
tests-why = Only a test proves what a room really gets.
tests-rooms = Rooms
tests-open = not tested yet
tests-told = { $told }
tests-next = Go on: is everything else fine?

test-title = { $outlet }: outlet test
test-kind = What kind of test is it?
test-kind-why = A test to the internet is limited by your plan, and one by radio by the radio. Only a test over wire within the house shows what the cable does.
    .head = Only a test over wire in the house shows what the cable does
test-kind-house = Within the house, over a network cable
    .about = from a computer at this outlet’s adapter to one at the router: the best test
test-kind-house-radio = Within the house, partly by radio
    .about = one of the two devices is on wireless
test-kind-internet = To the internet, over a network cable
    .about = a speed test in the browser, wired to the adapter
test-kind-internet-radio = To the internet, partly by radio
    .about = a speed test on a phone
test-kind-page = The adapter’s own page
    .about = its PHY rate, and the power that it sends and receives
test-kind-link = No link, or one that comes and goes
    .about = what the adapter’s coax light shows
test-how-link = The coax light is usually marked “coax” or “MoCA”: on means that it hears another adapter. Watch it for a few minutes.
test-link = How does its link stand?
test-link-none = No link: it hears no other adapter
test-link-comes-and-goes = It comes and goes
test-link-steady = It is steady
test-behind = What is between the adapter and the computer?
    .why = The slowest piece ends the test. An old switch, or a network cable in the wall with only four good wires, passes 100 Mb/s and no more.
test-behind-nothing = A short network cable, nothing more
test-behind-run = A network cable in the wall
test-behind-switch = A switch
test-behind-both = Both
test-behind-rate = How fast is the slowest of it?
test-readings = Written down already; choose one to take it out
test-how-house = Let the test run both ways, each for ten seconds or longer. What you do not have, leave empty.
test-how-house-radio = Note it all the same: it shows what people there get. It is not held against the cable.
test-how-internet = Use a wired computer, and let nothing else run meanwhile. What you do not have, leave empty.
test-how-internet-radio = Note it all the same: it shows what people there get. It is not held against the cable.
test-how-page = Open the page of the adapter in this room. What it does not show, leave empty.
test-down = To the room (download)
test-up = From the room (upload)
test-latency = Round trip (latency, ping)
test-lost = Packets lost while the network is busy
    .hint = 0 if none
test-lost-quiet = Packets lost while nothing else runs
    .hint = 0 if none
test-phy = PHY rate
test-sent = Power that the adapter at the router sends
test-received = Power that this adapter receives
    .hint = mostly below zero, such as -35
test-socket = How fast is the slowest network socket in the test?
    .why = The computers’ sockets count too. Most have 1 Gb/s, and such a test ends near 940 Mb/s however good the cable is.
test-socket-1g = 1 Gb/s
test-socket-2-5g = 2.5 Gb/s
test-socket-100m = 100 Mb/s
test-over-socket = { $how }; slowest network socket { $socket }
test-keep = Write it down
test-later = Not now
test-both-ways = Please write both, to the room and from the room. A test that ran one way only can run once more the other way.
test-both-powers = Please write both powers, sent and received: only the difference tells how much is lost on the way.
reading = One reading
reading-remove = Take this reading out
    .question = Take it out? It no longer counts then.
    .yes = Yes, take it out
    .no = No, keep it

still-fine = Everything else
still-fine-ask = Do TV and internet still work as before, on every set?
still-fine-why = The new network must not cost anybody what worked before.
still-fine-no = Then look at the changes that were done, the newest first, and put back the one after which it went wrong.

# --- forecast against test

compare-none = Nothing is measured yet, so there is nothing to hold against the forecast.
compare-all-fine = No room that was measured over the cable falls short of its forecast.
compare-some-below = { $below ->
    [one] One room gets less than was expected.
   *[other] { $below } rooms get less than was expected.
}
compare-below-as-wished = Every room that was measured over the cable gets what is wished; { $below ->
    [one] one of them gets
   *[other] { $below } of them get
} less than was expected.
compare-why = Less than the whole range means that something on the way is other than the survey says, or that something else slowed the test.
compare-rooms = Measured, beside what was expected
compare-wish-met = What is wished here is met.
compare-no-forecast = No forecast was possible here.
compare-culprit-if-wanted = If you want more: { $place } costs most on the way ({ $loss }).{ $splitter ->
    [yes] {" "}{ splitter-above-print }
   *[no] { "" }
}
splitter-above-print = Between two outputs a splitter costs more than its label says: the label counts from input to output, and the outputs are kept apart from each other.
    .head = Why a splitter costs more than its label says
compare-suspect = Look first at { $place }: { $ground ->
    [poor] it is poor, or not made for the band.
    [shared] other rooms that get their signal over it fall short, too.
    [not_known] too little is known of it.
   *[nothing] nothing is known against it, nor against anything else on the way.
} { $next }
compare-to-work = Go on to what comes next for it
compare-unknown = Not known on the way; an answer may explain it
compare-findings = What the tests show

# --- handover

handover-lead = Two things to hand over: a report to read, and one file with everything for the next person.
handover-all = All is there: the report and the file. What is left open stands in both.
handover-why = Half done is fine too. Whoever opens the file goes on where you are.
handover-report = Write the report
handover-report-again = Write the report again
handover-report-waits = What the report tells is still being worked out. Write it once that is done; nothing was written yet.
handover-report-written = The report is written to { $file }: the forecast, the findings, the work list and the map{ $photos ->
        [0] , without photos
        [one] , with 1 photo
       *[other] , with up to { $photos } photos
    }.
handover-report-there = The report is written.
handover-file = Write the file for the next person
handover-file-again = Write the file again
handover-file-there = The file for the next person is written.
handover-where = Please say where it should go: choose a place and a name that is not taken yet.
handover-finish = All done
handover-counts = { $done ->
    [0] No change was done
    [one] One change was done
   *[other] { $done } changes were done
}, { $not ->
    [0] none was given up.
    [one] one was given up.
   *[other] { $not } were given up.
}
handover-extent = How much of the report
handover-whole = All of it
    .about = for whoever goes on from here: every part, finding, step and figure
handover-one-page = Its first page alone
    .about = to hang up or take to the shop: the answer, the rooms, the next steps, what to get, the map
handover-one-page-written = The one page is written to { $file }. The whole report is still there to be written.
handover-options = What goes along; choose one to change it
handover-owner = Name of the survey, address, people’s names
handover-photos = Photos
handover-notes = Notes
handover-places = Where parts sit
handover-photo-records = What is said of photos
handover-goes-along = goes along
handover-stays-out = stays out
handover-left = Left open
left-failed = { $how ->
    [not_seen] The adapter at { $outlet } is not among those that were counted
   *[other] The test at { $outlet } failed
}
left-steps = { $count ->
    [one] One change of the work list
   *[other] { $count } changes of the work list
}
left-tests = { $count ->
    [one] One room is not tested
   *[other] { $count } rooms are not tested
}
left-questions = { $count ->
    [one] One question not answered
   *[other] { $count } questions not answered
}
left-unknown = { $count ->
    [one] One thing that is not known
   *[other] { $count } things that are not known
}

forecast-no-outlet-there = There is no outlet at the router. One that is near will do, with a network cable from the router to it: say which.
to-ask = To ask whoever looks after the building
to-ask-rows = Their answers end what you cannot look at
to-ask-branch = Where does the cable of this flat branch off, and may it be looked at together?
to-ask-filter = Is there an entry filter (MoCA filter) for this flat? If not, may one be put in, and where?
to-ask-amplifier = Whom do the amplifier and the splitter feed? May they be unplugged for minutes, and when?
to-ask-leave = Who may change something, and who has to be told?
