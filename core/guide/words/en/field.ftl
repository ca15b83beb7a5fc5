# Working freely: parts, photos in a row, readings. Any stage, any order.

# --- the rows of the overview, and the titles of their screens
free-here = Start where you stand
free-burst = Photos in a row
free-assign = Say what the photos show
free-parts = Parts
free-runs = Cables
free-rooms = Rooms
free-services = What else uses the cable
free-meter = Readings of a meter
free-count = { $count }
free-unassigned =
    { $count ->
        [0] no photo waits
        [one] 1 photo waits
       *[other] { $count } photos wait
    }

free-line = { $field }: { $value }
free-gone = This is not there any more. If it was removed by mistake, it can be brought back from the whole job, under “What was removed”.
free-save = Keep
free-add = Add
free-undo = Take back: { $what }
free-did-add =
    { $more ->
        [0] added { $thing }
       *[other] added { $thing }, with what belongs to it
    }
free-did-remove =
    { $more ->
        [0] removed { $thing }
       *[other] removed { $thing }, with what changed by it
    }
free-did-bring-back = brought back { $thing }
free-did-write =
    { $more ->
        [0] { $field }, { $thing }
        [one] { $field }, { $thing } and 1 more
       *[other] { $field }, { $thing } and { $more } more
    }

# --- finding a part
free-find = Find by tag, kind, room or place
    .hint = for example: S2, or Office; left empty, all are shown
free-find-none = Nothing fits. Write less, or clear it to see all.
free-find-no-part = No part fits. Cables that fit stand below.
free-parts-none = No part was found yet.
free-parts-rows = By tag
free-part-remark =
    { $loose ->
        [yes] not traced yet{ $photos ->
            [0] { "" }
            [one] , 1 photo
           *[other] , { $photos } photos
        }
       *[no] { $photos ->
            [0] { "" }
            [one] 1 photo
           *[other] { $photos } photos
        }
    }

# --- one part
free-part = { $part }
    .gone = A part
free-fed = gets its signal from: { $port }
free-rated = rated: { $rated }
free-not-rated = its numbers (rating) are not known yet; a range is assumed
free-measured = measured by an instrument
free-no-length = the length: not known yet; a range is assumed
free-wiring = Port by port
free-port-in = Input
free-port = { $kind ->
    [passive] The passive port (not amplified)
    [through] The way through (OUT)
    [tap] Tap { $port } (TAP)
   *[output] Output (leg) { $port }
}
free-port-unknown = not looked at yet
free-questions = Questions about it
free-note = Note: { $text }
free-note-new = A note
free-note-write = Write a note
free-note-add = Keep the note
free-measure-here = Measure here
free-add-behind = Add a part behind it
free-add-loose = Add a part, not traced yet
free-edit = Change its tag, place or kind
free-remove-part = Remove it from the survey
    .question = Remove { $part }? { $hangs } It can be brought back at any time.
    .yes = Remove
    .no = Keep it

free-edit-part = { $part }: tag, place, kind
free-tag = The mark on its tape (tag)
    .hint = short, for example: S2
free-where = Where it is
    .hint = for example: basement, behind the boiler
free-room-of = In which room?
free-kind = What is it?
free-entry-kind = What comes in?

# --- a new part
free-new-part = A new part
free-new-loose = It is kept as found, and not traced yet. What feeds it can be said later.
free-new-behind = A new part behind { $part }
free-which-port = On which output (leg)?
free-port-free = { $kind ->
    [passive] The passive port (not amplified)
    [through] The way through (OUT)
    [tap] Tap { $port } (TAP)
   *[output] Output { $port }
}
free-port-before = { free-port-free }, in front of { $part }
free-between = It is put in front of { $part }, which it then feeds.
free-port-taken = Something is connected there already, and such a part feeds nothing on. Choose a free output.
free-entry-hangs-on-nothing = Nothing in the house feeds an entry: it is where the cable comes in. Add it from the list of parts.

# --- cables
free-runs-rows = By tag, or by what they feed
free-run = { $run }
    .gone = A cable
free-add-run = Add a cable that was found
free-run-feeds = It feeds
free-run-may-feed = If you know which one it is, choose it
free-remove-run = Remove it from the survey
    .question = Remove { $run }? { $hangs } What it feeds stays fed, over a cable about which nothing is known. It can be brought back.
    .yes = Remove
    .no = Keep it

# --- rooms
free-rooms-rows = By name
free-room = { $room }
    .gone = A room
free-room-new = A new room
free-room-add = Add the room
free-room-name = Its name
free-room-no-name = Please write a name; a room without one cannot be found again.
free-room-outlets = Outlets in it
free-wish = What the network should be good for
free-wishes = Wished for
free-no-wish = nothing said
free-served = No outlet is in this room. From which outlet of another room is it served?
free-served-none = From none yet
free-remove-room = Remove it from the survey
    .question = Remove { $room }? { $hangs } It can be brought back at any time.
    .yes = Remove
    .no = Keep it

# --- services
free-services-rows = Uses the cable today
free-service = { $service }
    .gone = A service
free-service-new = Something else that uses the cable
free-by-entry = Where does it come in?
free-top = The highest frequency that it uses
    .hint = often 862, 1002, 1218 or 1794
free-signal = How is the TV sent?
free-generation = Generation of the modem
free-drops = Does the internet drop out now and then?
free-drops-yes = Yes
free-drops-no = No, or not that I know
free-upstream = The modem sends up to (return band)
    .hint = often 42, 65, 85 or 204
free-single = How do several receivers share one cable?
free-version = Version of that network
free-band-low = Its channel, from
free-band-high = Its channel, up to
free-add-band = Keep this channel as one more
free-band-order = Please give both ends of the channel, the lower one first.
free-nodes = How many boxes are on it (nodes)
free-power-from = The current comes from
free-power-to = It powers
free-power-both = Please choose both: where the current comes from, and what it powers.
free-remove-service = It does not use the cable: remove it
    .question = Remove { $service } from the survey? { $hangs } It will no longer be kept safe from changes. It can be brought back.
    .yes = Remove
    .no = Keep it

# --- photos
free-burst-lead = Take one photo after the other. What they show is said later, many at once.
free-burst-photo = Photo
free-assign-lead = Choose the photos, then the part or cable that they show.
free-assign-none = No photo waits. New ones can be taken here.
free-photo-reads = { $name }. Printed in it, as read: { $words }
free-photo-name = Photo { $number }, added { $when } UTC
free-photo-name-own = Photo { $number }, “{ $name }”, added { $when } UTC
free-photo-name-taken = Photo { $number }, taken { $taken }
free-photo-name-both = Photo { $number }, “{ $name }”, taken { $taken }
free-photos-rest =
    { $rest ->
        [one] 1 more comes when these are done.
       *[other] { $rest } more come when these are done.
    }
free-cables-rest =
    { $rest ->
        [one] 1 more cable is found by looking for a part at its end.
       *[other] { $rest } more cables are found by looking for a part at their end.
    }
free-choose-all = Choose all
free-choose-none = Choose none
free-choose-first = Please choose one or more photos first, then what they show.
free-role = What do they show?
free-role-label = The label
free-role-place = The place
free-role-before = Before the work
free-role-after = After the work
free-assign-to-new =
    { $count ->
        [0] They show something new
        [one] The chosen photo shows something new
       *[other] The { $count } chosen photos show something new
    }
free-assign-new = New: { $part }
free-assign-to =
    { $count ->
        [0] They show a part that is known
        [one] The chosen photo shows
       *[other] The { $count } chosen photos show
    }
free-assign-to-cable =
    { $count ->
        [0] They show a cable
        [one] The chosen photo shows a cable
       *[other] The { $count } chosen photos show a cable
    }
free-prints = Labels still to be typed
free-photo = A photo
    .gone = A photo
free-photo-of = shows { $thing }
free-photo-when = added { $when } UTC
free-photo-taken = taken { $taken } by the camera’s clock
free-photo-file = its file was called “{ $name }”
photo-already = This picture is here already. It was not added again.
photo-already-of = This picture is here already: it shows { $thing }. It was not added again.
photo-already-now-of = This picture was here already. It now stands with { $thing }.
photo-already-elsewhere = This picture is here already with { $thing }. It now stands here, too.
free-photo-unassign = It shows something else
free-remove-photo = Remove it from the survey
    .question = Remove this photo? It can be brought back at any time.
    .yes = Remove
    .no = Keep it

# --- prints seen before, the same as last
free-seen = Prints typed on this device before; choose one if it is the same, word for word
free-same = The same as last: { $value }

# --- readings
free-meter-lead = Where do you measure?
free-meter-so-far = Measured so far, the newest first
free-meter-at = Readings at { $part }
free-meter-how = Type what the meter shows and keep it; then the next frequency. Only level and error ratio of the TV cable: nothing of the mains.
free-meter-port = At which of its connectors?
free-mhz = Frequency
free-dbmv = Level
free-mer = How clean it arrives (error ratio, MER)
    .hint = if the meter shows it
free-sends = At what level the modem sends
    .hint = from the modem’s own page
free-keep = Keep and go on
free-meter-other = Measure at another place
free-no-mhz = Please write the frequency too: a level says little without it.
free-nothing-measured = Please write a level, an error ratio, or what the modem sends.
free-read-level = Level, { $place }
free-read-mer = Error ratio (MER), { $place }
free-read-sends = What the modem sends, { $place }
free-read-other = Reading, { $place }
free-read-when = { $when } UTC, { $author }

# --- where one stands
free-here-lead = What do you stand in front of?
free-here-why = Any place is good to start. If a door is locked today, the rest can be done all the same.
free-here-rows = In front of me is
free-at-outlet = An outlet
    .about = a socket where a TV, modem or adapter is screwed on
free-at-splitter = A splitter
    .about = a metal box, one connector marked IN and two or more marked OUT
free-at-amplifier = An amplifier
    .about = it has a power supply, or a connector marked PWR
free-at-other = Something else, or I cannot tell what it is
free-at-entry = The place where the cable comes in
free-stand = In front of { $part }
free-cannot-reach = I cannot get to it now: start where I stand

# --- what was removed
free-undone = Taken back: { $what }.
