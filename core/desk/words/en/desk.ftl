# The `legwork` command: headings and hints, and what a sheet should have said. Every message `sheet-...` that tells
# what was expected has an attribute `do`: what to do about it.

## Where in a sheet

sheet-place-whole = the sheet
sheet-place-survey = [survey]
sheet-place-number = [[{ $heading }]] number { $number }
sheet-place-named = [[{ $heading }]] { $name }

## The sheet as a text

sheet-utf8 = text in UTF-8
    .do = Save the file as UTF-8 in your editor and try again.
sheet-toml = TOML
    .do = Put texts and quantities in "quotes", and close every quote and bracket. docs/sheet.md has an example.
sheet-too-many = at most { $most } tables [[{ $heading }]]
    .do = Split the building into several sheets, one for each home.
sheet-pieces = at most { $most } names, values, signs, spaces, comments and line ends in all
    .do = Split the building into several sheets, one for each home.
sheet-opened = at most { $most } tables and lists in all
    .do = Split the building into several sheets, one for each home.

## Tables and fields

sheet-rows = a table with a heading of its own: [[{ $heading }]]
    .do = Write the heading in double brackets on a line by itself.
sheet-survey-table = a table: [survey]
    .do = Write the heading on a line by itself.
sheet-missing = the field { $field }
    .do = Add it to this table.
sheet-field = one of these fields: { $names }
    .do = Remove this one, or put what it says into a note.
sheet-field-near = one of these fields: { $names }
    .do = Did you mean "{ $near }"?
sheet-one-of = one of: { $names }
    .do = Write one of these. Where you are not sure, leave the field out or write unknown where it is offered.
sheet-one-of-near = one of: { $names }
    .do = Did you mean "{ $near }"?
sheet-text = a text in "quotes" that is not empty
    .do = Put the text in quotes, or leave the field out.
sheet-text-long = a text that takes up at most { $most } plain letters; this one takes up { $found }
    .do = Shorten it, or make several notes of it.
sheet-list-long = a list of at most { $most } entries
    .do = Shorten it.
sheet-flag = true or false
    .do = Write true or false without quotes, or leave the field out where you are not sure.
sheet-whole = a whole number from { $low } to { $high }
    .do = Write the number without quotes.

## Quantities

sheet-in-doubt = a figure that can be read one way only
    .do = Write { $thousands } or { $decimal }, whichever is meant.
sheet-length = a length with its unit, such as "12 m", "40 ft", "5 ft 6 in", "10-15 m", "about 12 m" or "12 m measured"
    .do = Write the unit (m or ft) and how it is known: measured, paced or guessed.
sheet-length-limits = a length above 0 and at most { $most }
    .do = Measure or estimate the cable and write, for example, "about 12 m"; "none" where the two parts are screwed straight together.
sheet-length-order = the shorter length first, such as "10-15 m"
    .do = Turn the two around.
sheet-length-likely = what is likely within the range, such as "10-15 m, likely 11 m"
    .do = Write a likely length that is neither below the shorter nor above the longer.
sheet-frequency = a frequency above 0 and at most { $most }, such as "1218 MHz" or "1.2 GHz"
    .do = Write the number with its unit.
sheet-band = a band up to { $most }, such as "5-1000 MHz"
    .do = Write both edges, the lower one first, and the unit.
sheet-band-order = the lower edge of the band first, such as "5-1000 MHz"
    .do = Look at the label again: turn the two around, or leave the band out if it cannot be read.
sheet-decibels = a figure of 0 dB or more, such as "7 dB"
    .do = Write losses without a minus sign, with the unit dB.
sheet-signed-decibels = a figure in dB, such as "3 dB" or "-1 dB"
    .do = Write the number with its unit.
sheet-level = a level with its unit, such as "3 dBmV", "63 dBµV" or "-46 dBm"
    .do = Write the number with its unit.
sheet-rate = a rate above 0 and at most { $most }, such as "800 Mb/s" or "1 Gb/s"
    .do = Write the number with its unit: Mb/s is megabits a second.
sheet-rate-measured = a rate of at most { $most }, such as "800 Mb/s", or "0 Mb/s" where nothing got through
    .do = Write the number with its unit: Mb/s is megabits a second.
sheet-both-ways = one rate, or both: { "{" } down = "800 Mb/s", up = "100 Mb/s" { "}" }
    .do = Write the rate towards the room or house as down, the one from it as up.
sheet-milliseconds = a time such as "3.5 ms"
    .do = Write the number with its unit.
sheet-power-dbm = a power with its unit, such as "-40 dBm" or "8.75 dBmV"
    .do = Write the number as the adapter's own page shows it, with its unit.
sheet-percent = a share from 0 to 100 percent, such as 0.5
    .do = Write how many packets of a hundred were lost.
sheet-ethernet = the rate of an Ethernet port: 100 Mb/s, 1 Gb/s, 2.5 Gb/s or 10 Gb/s
    .do = Look at the adapter's data sheet, or leave the field out.

## Tables inside

sheet-building = a table such as { "{" } ownership = "own", shared = false { "}" }
    .do = Say whose wiring it is (own or rented), and whether other homes share it.
sheet-network = a table such as { "{" } version = "2.5", ethernet = "2.5 Gb/s" { "}" }
    .do = Write what your adapters are, or leave the field out.
sheet-adapter = a table such as { "{" } version = "2.5", ethernet = "2.5 Gb/s", bridge = true { "}" }
    .do = Write what the adapter is; { "{" } { "}" } stands for a usual one.
sheet-behind-adapter = a table such as { "{" } pieces = ["run", "switch"], slowest = "1 Gb/s" { "}" }
    .do = Write what lies between the adapter and the device there, and how fast the slowest piece is.
sheet-connectors = one state for both ends, or both: { "{" } near = "compression", far = "twist_on" { "}" }
    .do = near is the end nearer the street, far the one nearer the outlet.
sheet-ends = a table of ports, such as { "{" } 3 = "open", 4 = "capped" { "}" }
    .do = Name each free port with what is on it.
sheet-reading = exactly one of level with frequency, mer with frequency, throughput, phy_rate, round_trip, modem_sends, power, nodes_seen, packet_loss, link, swings
    .do = Write one [[reading]] for each thing measured.
sheet-modem = a table such as { "{" } generation = "3.1", sends_to = "85 MHz" { "}" }
    .do = Write what stands on the modem or its own page; leave out what you do not know.
sheet-other-network = a table such as { "{" } version = "2.0", bands = ["1400-1500 MHz"], nodes = 3 { "}" }
    .do = Write what is known of the network that is there already; { "{" } { "}" } says that nothing is.
sheet-power = a table such as { "{" } from = "O3", to = "A1" { "}" }
    .do = from is the part where the power goes in, to the part that needs it.
sheet-power-itself = another part than the one that the power comes from
    .do = from is the part where the power goes in, to the part that needs it.
sheet-powers = a table such as { "{" } sent = "-10 dBm", received = "-40 dBm" { "}" }
    .do = Write both figures from the adapters' own pages: only their difference tells the loss.
sheet-packet-loss = a table such as { "{" } percent = 0.5, busy = true { "}" }
    .do = busy says whether the network was carrying much at that time.
sheet-swings = a table such as { "{" } low = "6 Mb/s", high = "100 Mb/s", with_heat_or_hour = true { "}" }
    .do = Write the slowest and the fastest rate seen, and whether it goes with heat or the time of day.
sheet-swings-order = a low rate below the high one
    .do = Turn the two around.
sheet-how = a table such as { "{" } reach = "house", radio = false { "}" }
    .do = reach says between what the test ran (internet, house, adapter_page), radio whether any of the way was by radio, socket = "1 Gb/s" the slowest network socket of the test, where you know it.

## Parts

sheet-tag = a short tag without line breaks, at most { $most } letters; this one has { $found }
    .do = Write what stands on the tape, such as S1.
sheet-tag-twice = a tag of its own; this one stands on line { $line } already
    .do = Give one of the two another tag, on the tape too.
sheet-room-twice = a name of its own; this one stands on line { $line } already
    .do = Give one of the two rooms another name.
sheet-no-part = the tag of a part, such as { $names }
    .do = Add a [[part]] with this tag, or leave the feed out while it is not traced.
sheet-no-part-near = the tag of a part
    .do = Did you mean "{ $near }"?
sheet-no-room = the name of a room
    .do = Add a [[room]] with this name: in this sheet, or to a survey that is there with a sheet of these two lines and legwork sheet --change.
sheet-no-room-near = the name of a room
    .do = Did you mean "{ $near }"?
sheet-legs-label = { $legs } legs, as the label says
    .do = Count the outputs (legs) and read the label again; correct the one that is wrong.
sheet-loss-count = one loss for all outputs, or one for each of the { $legs } outputs (legs)
    .do = Write the losses in the order of the outputs.
sheet-of-kind = no such field here: it belongs to kind = "{ $kind }"
    .do = Remove the field, or correct the kind.
sheet-measured = a Touchstone file that can be read ({ $reason })
    .do = Put right what is said of the file, or leave the field out: the part then counts as what it is rated for.
sheet-measured-beside = the name of a file that lies beside the sheet or in a folder under it, such as splitter.s3p
    .do = Copy the file to where the sheet lies.
sheet-measured-ports = a file of { $ports } ports: one towards the street and one for each output; this one has { $found }
    .do = Measure every port, or correct legs.
sheet-measured-lifts = a file in which no more comes out than goes in: only an amplifier lifts a signal
    .do = Calibrate the instrument and measure again, or correct the kind.
sheet-measured-kind = no such field here: an entry, outlet or terminator is not measured
    .do = Remove the field, or correct the kind.
sheet-of-kinds = no such field here: it belongs to services of kind { $kinds }
    .do = Remove the field, or correct the kind.
sheet-part-of-kind = the tag of a part of kind "{ $kind }"
    .do = Write the tag of such a part, or leave the field out.
sheet-feed = feed = "nothing", where somebody looked and nothing feeds the part
    .do = Write from = "TAG" for a part that feeds it; leave both out while it is not traced.
sheet-feed-and-from = either feed = "nothing" or from = "TAG"
    .do = Remove one of the two.
sheet-entry-fed = no feed: an entry is where the cable comes in from outside
    .do = Remove the field, or correct the kind. Tell the cable with the part that the entry feeds.
sheet-run-of-nothing = from = "TAG" as well: a port and a cable need a part that they come from
    .do = Add from, or put what is known into a note while the cable is not traced.
sheet-loop = a way that leads up to an entry ("<" reads "is fed from")
    .do = Follow the cable again: one of these is fed from somewhere else.
sheet-too-deep = at most { $most } parts in a row
    .do = Check the fields "from" of this part and those above it.

## Ports

sheet-port = one of the { $count } outputs (legs) of { $tag }: port = 1 to { $count }
    .do = Follow the cable to { $tag } and write the number of the output.
sheet-port-one = port = 1: { $tag } has one way out
    .do = Leave the port out, or correct "from".
sheet-port-none = another part: { $tag } feeds nothing on
    .do = Correct "from". An outlet that passes the cable on needs passes_on = true.
sheet-port-unknown = the number of outputs (legs) of { $tag } first; as long as it is not known, only ports 1 and 2 are taken
    .do = Add legs or the label to { $tag }, and port here.
sheet-port-modem = a port of { $tag }: 1 to { $count }, the last of which is also called "modem"
    .do = Follow the cable to { $tag } and write the port.
sheet-port-twice = one cable on each port, but { $one } and { $other } are both on port { $port } of { $tag }
    .do = Look again which output each cable is on; if there is a small splitter between, add it as a part.
sheet-end-taken = nothing here: { $tag } is fed from this port
    .do = Remove this end, or correct the port of { $tag }.

## Problems

desk-problem = Line { $line }, { $place }
desk-problem-of-value = { $place }, { $field }
desk-problem-of-thing = { $place }
desk-problem-field = Line { $line }, { $place }, { $field }
desk-found = found
desk-expected = expected
desk-to-do = to do
desk-more-problems = And { $count } more { $count ->
    [one] problem
   *[other] problems
}: put these right first, then try again.

## legwork sheet

desk-sheet-made = Made { $survey }: { $parts } { $parts ->
    [one] part
   *[other] parts
}, { $runs } { $runs ->
    [one] cable
   *[other] cables
}, { $rooms } { $rooms ->
    [one] room
   *[other] rooms
}.
desk-sheet-loose = Not yet traced to an entry: { $tags }. That is no mistake; they count once something feeds them.
desk-sheet-doubts = The label of { $tag } was read with doubt:
desk-sheet-next = Next:

## legwork demo

desk-demo-invented = This house is invented: nobody lives in it, and no such house was measured.
desk-demo-survey = The survey: { $survey }
desk-demo-report = The report: { $report } (open it in a browser)
desk-demo-own = For your own house: write it down as docs/sheet.md describes, then run
desk-page-at = The page is at this address, for a browser on this computer:
desk-page-secret = Whoever has the address can change the surveys as long as this runs: keep it to yourself.
desk-page-end = End it with Ctrl-C. Whatever was answered is kept.
desk-page-demo = The house is invented, and gone when this ends.
desk-page-ended = The page is closed. Everything is kept.
desk-page-demo-ended = The page is closed, and the invented house is gone.
desk-demo-wrote = What was written

## legwork forecast

desk-forecast = What gets through
desk-forecast-from = From { $bridge }, where the adapter at the router joins the coax, to each room:
desk-forecast-no-bridge = Nobody has said yet at which outlet the adapter near the router will stand, so no rates can be told. Add bridge = true to the adapter of that outlet.
desk-forecast-no-rooms = No room asks for the network yet: give a room a wish, or an outlet an adapter.
desk-down = to the room
desk-up = from the room
desk-rate = likely { $rate }
desk-wish = wished
desk-wish-told = { $down } to the room, { $up } from it: { $met }
desk-met-yes = met, in nine cases of ten or more
desk-met-likely = likely met
desk-met-hangs = depends on a by-pass that nobody has checked
desk-met-unlikely = unlikely to be met
desk-met-not-known = not known
desk-met-measured = met, as measured: { $down } and { $up }
desk-not-met-measured = not met yet, as measured: { $down } and { $up }
desk-loss = loss
desk-loss-only = { $loss }
desk-loss-most = { $loss }; most of it: { $costs }
desk-cost-run = { $tag } (the cable to { $to })
desk-cost = { $place } { $loss }
desk-limit = limited by
desk-links = link
desk-hangs = not known
desk-links-share = the two adapters hear each other in { $share } of the cases that fit what is known
desk-street = From the loudest adapter to the street at { $entry }: { $loss } of loss. The more, the less leaves the house.
desk-round-trip = The coax adds { $time } to a round trip.
desk-forecast-ranges = In brackets: a tenth of all cases that fit what is known lies below the first figure, a tenth above the second.

## legwork findings

desk-findings = What was found
desk-findings-count = { $count ->
    [0] Nothing wrong was found, as far as is known.
    [one] One thing, the survey being as it is.
   *[other] { $count } things, most serious first.
}
desk-finding = { $weight }: { $what }
desk-why = why
desk-source = source
desk-cautions = Before you touch anything
desk-cautions-first = Local code and licensed trades come first.

## legwork worklist

desk-worklist = Work list
desk-worklist-count = { $count ->
    [one] One step, about { $minutes } minutes. Afterwards check that TV and internet still work.
   *[other] { $count } steps in order, about { $minutes } minutes in all. Do one at a time; after each, check that TV and internet still work.
}
desk-adapter = { $place }: { $how }
desk-failed = Where a test failed
desk-worklist-checks = { $count ->
    [one] No change was found that is worth the work before one check, about { $minutes } minutes.
   *[other] No change was found that is worth the work before { $count } checks, about { $minutes } minutes in all. Make one at a time.
}
desk-gain = gain
desk-gain-none = none in speed; done for the reason above
desk-gain-list = { $gains }
desk-gain-one = { $outlet } from { $before } to { $after }
desk-gain-other = { $outlet } { $gain }
desk-how = how
desk-caution = caution
desk-services = TV, modem
desk-back = put it back
desk-caution-again = { $head } (in full at step { $step })
desk-check = check
desk-takes = takes
desk-minutes = about { $minutes } minutes
desk-when-done = When all is done: likely rate to each room
desk-shopping = To buy
desk-other-option = All of it, step by step: { $options }
desk-refused = Not offered, and why
desk-refused-one = { $change } { $why }

## legwork levels

desk-levels = What TV and modem get
desk-levels-none = No TV and no modem was written down on the coax: there is nothing to tell. Say of each outlet what is plugged in.
desk-levels-outlet = { $outlet }: { $service }
desk-levels-short = { $of }. { $short }
desk-levels-now = level there now
desk-levels-needs = what it needs
desk-levels-fits = within that?
desk-levels-then = when the work list is done

## legwork report

desk-report-made = Wrote { $report }: open it in a browser, print it, or send it on.

## legwork label

desk-label-doubt = doubt: { $doubt }
desk-label-kind = what it is
desk-label-kind-name = { $kind ->
    [splitter] splitter
    [tap] tap
    [amplifier] amplifier
    [entry_filter] entry filter (MoCA filter)
    [high_pass_filter] high-pass filter
    [ground_block] ground block
    [pad] pad (fixed loss, attenuator)
    [terminator] 75-ohm cap (terminator)
    [satellite_splitter] splitter for the satellite band alone
    [satellite_combiner] satellite combiner (diplexer)
    [wall_plate] wall plate of an outlet
    [barrel] barrel (cable joiner)
    [power_inserter] power inserter
    [dc_block] DC block
    [cable] cable
   *[other] { $kind }
}
desk-label-legs = outputs
desk-label-band = passes
desk-label-stop-band = stops
desk-label-return-band = return path
desk-label-satellite-band = satellite band
desk-label-losses = loss to each output
desk-label-tap = loss to the tap
desk-label-gain = gain
desk-label-return-gain = gain of the return path
desk-label-rejection = rejection
desk-label-isolation = isolation
desk-label-return-loss = return loss
desk-label-power = passes DC power
desk-label-bypass = by-pass for MoCA
desk-label-passive-port = port not amplified
desk-label-moca = made for MoCA
desk-label-indoor = indoor use only
desk-label-series = cable series
desk-label-text = the text
desk-label-turned = turned by
desk-label-turned-by = { $degrees }° clockwise
desk-label-sure = { $value }; sure
desk-label-asked = { $value }; to be asked
desk-label-why-of = { $of }: { $why }
desk-label-at = at { $place }
desk-label-mark = mark on the jacket
desk-label-mark-value = { $mark } { $unit }
desk-label-length = Both photos
desk-label-between = between the marks
desk-label-suggestion = This is a suggestion and nothing was written: look at the part itself for whatever is to be asked. Places are X,Y,W,H in pixels of the photo, as --crop takes them.
desk-up-to = up to { $edge }
desk-from = from { $edge }
desk-list = { $items }
desk-yes = yes
desk-no = no

## The record: who said what

desk-field-of = { $thing }: { $field }
desk-said = Who did what, newest first
desk-said-act = { $act }: { $author }, { $when } UTC
desk-said-line = { $thing }: { $said }
desk-said-more = and { $count } more
desk-said-undo = To undo one: legwork undo { $survey } and the eight letters and digits before it.
desk-undone = Undone: action { $act }. { $count ->
    [one] One record says
   *[other] { $count } records say
} again what stood before. What is taken back:
desk-undone-again = To take that back: legwork undo { $survey } { $act }
desk-disagreements = Disagreements
desk-disagreements-count = { $count ->
    [0] Nobody disagrees.
    [one] On one thing people say different things. The newest word counts until it is settled.
   *[other] On { $count } things people say different things. The newest word counts until they are settled.
}
desk-authors = Who wrote here
desk-authors-claim = Names are what people say of themselves, and no proof.
desk-author = { $author }
desk-author-you = { $name } (you)
desk-author-you-unnamed = you, without a name
desk-author-records = { $count ->
    [0] no record
    [one] one record, { $when } UTC
   *[other] { $count } records, the last { $when } UTC
}
desk-author-named = You are { $name } in this survey now. Whoever takes in a file of it will read that.
desk-author-unnamed = You have no name in this survey now.
desk-side = { $author }: { $value } ({ $when } UTC)
desk-changed-after-removal = Removed and changed
desk-settled = Settled ({ $thing }, { $field }): { $value }.
desk-removed = What was removed
desk-removed-count = { $count ->
    [0] Nothing is removed.
    [one] One thing. To bring it back: legwork bring-back { $survey } and its tag, or the eight letters and digits before it.
   *[other] { $count } things. To bring one back: legwork bring-back { $survey } and its tag, or the eight letters and digits before it.
}
desk-removed-done = Removed: { $things }. To bring back: legwork undo { $survey } { $act }, or legwork bring-back.
desk-brought-back = Brought back: { $things }.

## The record: values, tables, patterns, searching

desk-set = What is said now:
desk-set-nothing = That is said already. Nothing was changed.
desk-changes-none = The sheet says nothing otherwise than the survey.
desk-changes = { $count ->
    [one] The sheet says one thing otherwise:
   *[other] The sheet says { $count } things otherwise:
}
desk-changes-made = { $count ->
    [one] One thing was changed:
   *[other] { $count } things were changed:
}
desk-change-new = new: { $thing }
desk-change-of = { $thing }
desk-change-said = { $what }: { $after }
desk-change-otherwise = { $what }: { $before } becomes { $after }
desk-changes-loose = What would then no longer be traced to a feed: { $tags }
desk-changes-two = What would then share one port with another part: { $tags }
desk-changes-yes = Nothing was changed. Say --yes to make these changes; what the sheet leaves out stays as it is.
desk-part-copied = { $part } is like { $like }, and not traced to a feed yet.
desk-survey-pattern = Made { $survey }, built like the first: its parts, cables, labels and rooms. Nothing of who lives there, and nothing that was measured, photographed or noted, went along.
desk-search = “{ $word }” stands { $count ->
    [0] nowhere here.
    [one] in one place:
   *[other] in { $count } places:
}
desk-search-hit = { $thing }, { $field }: { $text }
desk-table-written = Wrote { $file }, { $rows ->
    [one] one row
   *[other] { $rows } rows
}.
desk-tags-made = The tags are in { $tags }: print it, cut along the lines, and stick one round each end of a cable.
desk-man-written = { $count ->
    [one] One page of the manual is in { $folder }.
   *[other] { $count } pages of the manual are in { $folder }.
}

## The record: photos and notes

desk-photos = Photos
desk-photos-count = { $count ->
    [0] No photos.
    [one] One photo, by id.
   *[other] { $count } photos, by id, in the order in which they were taken in.
}
desk-photo = { $shows }; { $file }, { $width } x { $height }, here since { $when } UTC
desk-photo-with-role = { $of }: { $role }
desk-photo-named = { $name }
desk-photo-named-and-taken = { $name }, taken { $taken } by the camera’s clock
desk-photo-taken = taken { $taken } by the camera’s clock
desk-photo-unnamed = its file’s name is not known
desk-photo-of-nothing = no part yet
desk-photos-added = Took in { $count ->
    [one] one photo, without what it told about place and camera. Its id:
   *[other] { $count } photos, without what they told about place and camera. Their ids:
}
desk-photos-added-none = Took in no photo.
desk-photos-already = { $count ->
    [one] One picture is there already and was not taken in again (--again takes it in):
   *[other] { $count } pictures are there already and were not taken in again (--again takes them in):
}
desk-photo-already = { $file } is photo { $photo }: { $shows }
desk-photos-assigned = What the photos show now:
desk-photos-left-out = Line { $line } was left out: “{ $word }” is no photo of this survey. A picture that was there already was not taken in a second time.
desk-photo-written = Wrote { $file }.
desk-notes = Notes
desk-notes-count = { $count ->
    [0] No notes.
    [one] One note.
   *[other] { $count } notes, oldest first.
}
desk-note = { $note }: on { $thing }, by { $author }, { $when } UTC
desk-note-added = Noted on { $thing } ({ $note }).

## The record: forgetting

desk-forgot-field = Dropped { $field } of { $thing }: { $count ->
    [one] one record.
   *[other] { $count } records.
}
desk-forgot-thing = Dropped { $thing }: { $count ->
    [one] one record.
   *[other] { $count } records.
}
desk-forgot-copies = Also in { $count ->
    [one] one other copy
   *[other] { $count } other copies
} of this survey in the same folder.

## The record: the list of surveys

desk-surveys = Surveys
desk-surveys-count = { $count ->
    [0] No surveys in this folder.
    [one] One survey.
   *[other] { $count } surveys, the last one written first.
}
desk-surveys-aside = Set aside
desk-surveys-name = name
desk-surveys-place = place
desk-surveys-written = last written
desk-surveys-when = { $when } UTC
desk-surveys-progress = holds
desk-surveys-renamed = The survey is now { $survey }.
desk-surveys-copied = Made { $survey }: a survey of its own, which never merges with the first.
desk-surveys-set-aside = Set aside. It is now { $survey }.
desk-surveys-brought-back = Brought back. It is now { $survey }.
desk-surveys-deleted = Deleted.
desk-surveys-deleted-kept = Deleted. What lay in its folder and was not its own is kept in { $kept }.
desk-repair-whole = This survey is whole: all its { $facts } records and all its photos are what was written. Nothing was changed.
desk-repair-records-whole = All { $facts } records of this survey can be read and are what was written.
desk-repair-whole-with-file = This survey is whole: all its { $facts } records can be read. The file was taken in.
desk-repair-photos-back = { $count ->
    [one] One photo that was missing or damaged is back.
   *[other] { $count } photos that were missing or damaged are back.
}
desk-repair-photos-lacking = { $count ->
    [one] One photo is missing or damaged, and nothing here has it: a file of this survey may bring it back. It is named below.
   *[other] { $count } photos are missing or damaged, and nothing here has them: a file of this survey may bring them back. They are named below.
}
desk-repair-put-right = { $count ->
    [one] In one record one bit had changed; it was put right.
   *[other] In { $count } records one bit had changed; they were put right.
}
desk-repair-lost = { $count ->
    [one] One record is lost; where nothing was said after it, what was said before it counts. As far as it can be read, it was:
   *[other] { $count } records are lost; where nothing was said after them, what was said before them counts. As far as they can be read, they were:
}
desk-repair-unreadable = { $count ->
    [one] One record is not what was written, and nothing here puts it right. As far as it can be read, it is:
   *[other] { $count } records are not what was written, and nothing here puts them right. As far as they can be read, they are:
}
desk-repair-lost-one = { $field } of { $thing } (record { $record })
desk-repair-said-again = { $count ->
    [one] One field was said again in your name, because what it replaced is lost.
   *[other] { $count } fields were said again in your name, because what they replaced is lost.
}
desk-repair-needs = Nothing on this computer has what is lost. Nothing was changed.
desk-repaired-from-nothing = The database of this survey was gone. It was rebuilt from the file, { $facts } records in all.
desk-repaired-from = The database of this survey was damaged. It was rebuilt from what could be read and from the file, { $facts } records in all. The damaged one was kept as { $damaged }.
desk-upheaval = If that is meant, say --rearrange. It can be taken back for { -days-to-put-back }.
desk-damaged = Try: legwork surveys repair { $survey }. If records are lost, a file of this survey may have them: legwork surveys repair { $survey } --from FILE. To go on without them: legwork surveys repair { $survey } --without-lost.

## The record: files

desk-packed = Packed into { $file }: { $facts } records, { $photos ->
    [0] no photos
    [one] one photo
   *[other] { $photos } photos
}, { $size }.
desk-look = What the file holds
desk-look-of = { $name }: { $facts } records, { $photos ->
    [0] no photos
    [one] one photo
   *[other] { $photos } photos
}.
desk-look-without-owner = Left out: name and place of the survey, names of authors.
desk-look-without-notes = Left out: all notes.
desk-look-without-photos = Left out: the pictures. That there are photos, and of what, stays.
desk-look-without-places = Left out: where parts sit.
desk-look-without-photo-records = Left out: the pictures and all that is said of them.
desk-still-told = Without its owner the file still tells:
desk-still-times = when each thing was written (it stands in every id, and cannot be left out)
desk-still-hands = which things one person wrote, under an id that they have in this survey alone (it cannot be left out)
desk-still-rooms = what rooms are called (it cannot be left out: outlets are told apart by it)
desk-still-places = where parts sit, in people’s words (--without places)
desk-still-notes = notes (--without notes)
desk-still-photos = what photos show (--without photos, --without photo-records)
desk-still-photo-hashes = the hashes and sizes of photos that are left out, so that whoever has a picture can tell that it was there (--without photo-records)
desk-look-brings = It brings { $facts ->
    [0] nothing new
    [one] 1 new record
   *[other] { $facts } new records
}, { $photos ->
    [0] no new photo
    [one] 1 new photo
   *[other] { $photos } new photos
}, { $disagreements ->
    [0] no new disagreement
    [one] 1 new disagreement
   *[other] { $disagreements } new disagreements
}; { $forgotten ->
    [0] it asks that nothing be forgotten
    [one] it asks that 1 thing that is known here be forgotten for ever
   *[other] it asks that { $forgotten } things that are known here be forgotten for ever
}.
desk-look-brings-all = As a survey of its own it brings { $facts ->
    [one] 1 record
   *[other] { $facts } records
}, { $photos ->
    [0] no photos
    [one] 1 photo
   *[other] { $photos } photos
}.
desk-look-author = from { $author }: { $count ->
    [one] 1 record
   *[other] { $count } records
} (who wrote it is a claim, no proof)
desk-look-disagreements = People would disagree on
desk-look-settled = It settles
desk-look-forgotten = It asks to be forgotten for ever
desk-look-upheaval = It changes most of this survey: { $gone } of { $things } things would go, and { $changed } of { $parts } parts would go or be fed from elsewhere. Taking it in needs --rearrange.
desk-wish-to-forget = { $what }, asked by { $author } (who asks is a claim, no proof)
desk-wish-nobody = nobody by name: it came without what was said
desk-look-nothing-changed = This was a look; nothing was changed.
desk-taken = Taken into { $survey }: { $facts ->
    [0] no new record
    [one] 1 new record
   *[other] { $facts } new records
}, { $photos ->
    [0] no new photo
    [one] 1 new photo
   *[other] { $photos } new photos
}.
desk-taken-new = Made { $survey } from the file: { $facts ->
    [one] 1 record
   *[other] { $facts } records
}, { $photos ->
    [0] no photos
    [one] 1 photo
   *[other] { $photos } photos
}.
desk-taken-waiting = { $count ->
    [one] 1 thing that it asks to be forgotten was not forgotten: it waits
   *[other] { $count } things that it asks to be forgotten were not forgotten: they wait
} for your answer. To see what, and to answer:
desk-taken-back = For { -days-to-put-back } this takes it back:
desk-taken-disagreements = To see what people disagree on:
desk-wishes = Asked to be forgotten
desk-wishes-count = { $count ->
    [0] No file asks that anything be forgotten here.
    [one] One thing, which waits for your answer. Names are a claim and no proof, so nothing is forgotten before you say so.
   *[other] { $count } things, which wait for your answer. Names are a claim and no proof, so nothing is forgotten before you say so.
}
desk-wishes-how = To forget all of this for ever, or to keep it:
desk-wishes-forgotten = Forgotten for ever: { $count ->
    [one] one record.
   *[other] { $count } records.
}
desk-wishes-refused = Kept. You are not asked about it again.
desk-put-back-later = Taken back: what stood before the last file is written again, wherever what it brought still stood ({ $facts ->
    [one] 1 record
   *[other] { $facts } records
} of the file).
desk-put-back-kept = Kept for good: what the last file brought ({ $facts ->
    [one] 1 record
   *[other] { $facts } records
}) can be undone in single steps only.
desk-put-back = Taken back: the { $facts ->
    [one] record
   *[other] { $facts } records
} that the last file brought { $facts ->
    [one] is
   *[other] are
} gone again.

## Long work

desk-doing = { $what }: { $percent } % (Ctrl-C stops it)
desk-doing-in-walk = { $what }: { $percent } % (Ctrl-C ends the walk; what was answered is kept)
desk-doing-forecast = working out what gets through
desk-doing-worklist = working out what to change
desk-doing-search = looking through the surveys
desk-doing-walk = working it out
desk-doing-check-photos = looking at the pictures
desk-doing-add-photos = taking the pictures in
desk-doing-label-photo = reading the photo
desk-doing-look = looking through the file
desk-doing-take = taking the file in
desk-doing-pack = packing

## What went wrong. The user typed paths, options and commands, so they stand here; all else is said as the guide says it.

desk-error-not-set = what { $field } of “{ $word }” is to say was not taken. Nothing was changed.
desk-error-not-set-field = “{ $field }” cannot be set of “{ $word }”; what can be set of it: { $known }. Nothing was changed.
desk-error-not-set-thing = nothing of “{ $word }” is set so; what a photo shows says legwork photo assign. Nothing was changed.
desk-error-not-set-needed = { $field } of “{ $word }” cannot be left open. Nothing was changed.
desk-error-not-set-taken = { $field } of “{ $word }”: something else here is called so already. Nothing was changed.
desk-error-not-set-run = { $field } of “{ $word }” is told of the cable that leads to it, and it is not known what feeds it. Say that first: legwork set NAME.legwork THING from TAG port NUMBER
desk-error-tag-twice = two parts here have the tag “{ $tag }”, so that a sheet cannot tell which it means. Give one of them another tag first. Nothing was changed.
desk-error-no-tags = nothing here has a tag, so there is none to print.
desk-error-empty-word = say what to look for.
desk-read-only = nothing can be written in { $path }; it is only read.
desk-error-at = { $path }: { $what }
desk-error-sheet = { $path } was refused ({ $count ->
    [one] 1 problem
   *[other] { $count } problems
}). Nothing was written.
desk-error-sheet-too-long = { $path } is { $bytes } bytes long, and a sheet has at most { $most }. Nothing was written.
desk-error-label-not-text = line { $line } of the labels is not text in UTF-8. Save the list as UTF-8 and try again from that line.
desk-error-label-too-long = line { $line } of the labels is longer than { $most } plain letters, which is the longest label that is read. Write one label on each line.
desk-error-label-long = this label takes up { $found } plain letters, and at most { $most } are read. Shorten it.
desk-error-photos-many = { $found } photos were given, and at most { $most } are read together: the marks at both ends of one cable. Read the others by themselves.
desk-error-crops-of-photos = there are { $photos ->
    [one] one photo
   *[other] { $photos } photos
} and { $crops ->
    [one] one crop
   *[other] { $crops } crops
}. Give each photo its own --crop, in the same order, or none.
desk-error-crop = “{ $given }” is no crop. A crop is X,Y,W,H in whole pixels: from the left, from the top, width, height, as in --crop 120,40,600,300
desk-error-crop-outside = { $path }: nothing of the photo lies in the crop. It is { $width } pixels wide and { $height } high as it is shown; X and Y count from its upper left corner.
desk-error-no-text = { $path }: no text was found in this photo. Crop it to the label (--crop X,Y,W,H), take it closer and straight from above, with more light and without glare, or type in what you see: legwork label TEXT
desk-error-print-model = { $why } It was looked for in { $path }; core/print/model/make makes it again, in target/print-model of the sources, and LEGWORK_PRINT_MODEL names another folder.
desk-error-exists = { $path } already exists and was left as it is; { $advice }.
desk-error-other-out = choose another folder with --out
desk-error-other-name = choose another name for the new survey
desk-error-replace = choose another name, or say --replace
desk-error-packed = { $path } is a survey packed into one file. Make a survey of it first: legwork take { $path } NAME.legwork
desk-error-read = { $path } cannot be read: { $why }. Check the name and that you may read it.
desk-error-write = { $path } cannot be written: { $why }. Check that its folder is there and that you may write in it.
desk-error-output = the answer cannot be written: { $why }.
desk-error-no-home = there is no folder to keep this computer’s author id in: set HOME, XDG_CONFIG_HOME or LEGWORK_HOME.
desk-error-no-such-thing = nothing here has the tag, name or id “{ $word }”. Nothing was changed.
desk-error-no-such-thing-near = nothing here has the tag, name or id “{ $word }”; did you mean “{ $near }”? Nothing was changed.
desk-error-ambiguous = “{ $word }” may mean { $count } things here; use more of an id instead: { $ids }. Nothing was changed.
desk-error-no-such-field = nobody ever said anything about “{ $field }” of this; what was said: { $known }. Nothing was changed.
desk-field-known = { $name } ({ $field })
desk-id = { $id }
desk-id-named = { $id } ({ $thing })
desk-thing-lost = something whose name is lost too ({ $id })
desk-error-wrong-thing = “{ $word }” is { $what }. Nothing was changed.
desk-error-not-for-photos = neither a part nor a cable, and photos show parts and cables (or the house as a whole: survey)
desk-error-room-for-photos = a room with no outlet or with several: name the outlet
desk-error-not-a-part = no part
desk-error-not-a-photo = no photo; legwork photo list shows their ids
desk-error-whole-survey = the survey as a whole; name one field of it, such as place, or see legwork surveys --help
desk-error-not-removed = not removed
desk-error-removed-already = removed already
desk-error-forgotten-already = forgotten already
desk-error-no-side = no side of this disagreement; legwork disagreements numbers them
desk-error-picture = { $path }: { $why } Nothing was written.
desk-error-no-pictures = { $path }: there is no JPEG or PNG picture. Nothing was written.
desk-error-list = { $path }, line { $line }: { $why }
desk-error-list-line = there are { $found } words, and a line is PHOTO THING, or PHOTO THING ROLE; a name of several words stands in quotes. Nothing was changed.
desk-error-list-no-photo = “{ $word }” is no photo; legwork photo list shows their ids and names. Nothing was changed.
desk-error-list-and =
    { $before }
    { $next }
desk-error-list-more = { $count ->
    [one] One more line cannot be done.
   *[other] { $count } more lines cannot be done.
}
desk-error-list-role = “{ $word }” is no role; a role is before, after, label or place, and a name of several words stands in quotes. Nothing was changed.
desk-error-list-twice = the photo “{ $word }” stands on line { $first } already. Nothing was changed.
desk-error-list-text = the list is not text in UTF-8. Save it as UTF-8 and try again. Nothing was changed.
desk-error-list-empty = { $path }: the list names no photo. Nothing was changed.
desk-error-pictures-partly = { $done } of { $of } pictures were taken in, then it ended: { $why }
desk-error-page = The page cannot be served on this computer: { $why }
desk-error-page-folder = There is no place for the page’s own files: { $why }
desk-error-page-random = This computer gives no random numbers, without which the page could not be kept from strangers. Nothing was begun.
desk-error-stopped = stopped as you wished.
desk-error-not-confirmed = { $what }. Nothing was changed; say --yes to do it.
desk-error-would-forget = records that would be forgotten for ever: { $records }
desk-error-would-put-back = more was written, or something was forgotten, since the file was taken in, so what stood before it would be written again as records of yours, which others read too
desk-remove-carries = to { $thing } belong { $things }
desk-error-would-remove = before it is removed: { $things }; all of it would stay, and wait there without it
desk-error-would-delete = the survey would be deleted for ever, photos and all; legwork surveys aside only sets it aside
desk-error-empty-note = an empty note says nothing. Write what it is to say; to list the notes, leave TEXT out.
desk-error-no-name = a name is at most { $most } letters on one line, and this one has { $found }. Nothing was changed.
desk-error-aside-already = { $path } is set aside already; legwork surveys back brings it back.
desk-error-nothing-done = you have done nothing here that could be undone; legwork said lists all actions.
desk-error-not-aside = { $path } does not lie in a folder named { $aside }; surveys that were set aside do.
desk-error-signals = this system does not let the program listen to Ctrl-C: { $why }.
desk-system-full = there is no space left
desk-system-not-allowed = you may not
desk-system-busy = another program has it
desk-system-missing = it is not there, or its folder is not
desk-system-there = something of that name is there already
desk-system-too-long = it is too long
desk-system-other = the system cannot do it
