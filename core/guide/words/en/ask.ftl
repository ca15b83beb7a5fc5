# The questions. Each has .title, mostly .why, and .how where it helps to say what to look at.

# --- the house

ask-whose = Whose wiring is it?
    .title = Whose wiring
    .how = We build a network over the TV cable that is already in the walls. The standard for it is called MoCA; the small boxes that turn the cable into a network socket are called adapters.
    .how-head = What we are going to build
    .why = In a shared building a signal can reach the neighbours, and some work needs the owner’s leave.
whose-own = Our own house or flat, with wiring of its own
whose-rented = Rented; the wiring is used by us alone
whose-shared = Shared: the same TV cable also serves other flats

ask-uses = What uses the TV cable today?
    .title = What uses the cable
    .why = It must still work when we are done, and it decides which frequencies are free.
    .how = Look behind the TV and the router: a thin round cable with a screw-on connector is the one we mean.
uses-cable_tv = Cable TV
    .about = a TV or TV box gets its channels from the cable company
uses-cable_internet = Cable internet
    .about = the modem is screwed to the TV cable
uses-antenna_tv = An antenna
    .about = on the roof, in the attic or at a window
uses-satellite_tv = A satellite dish
    .about = a receiver box stands at the TV
uses-provider_network = TV boxes of the provider that find each other over the cable
    .about = one main box and smaller ones in other rooms
uses-fibre_link = A fibre box that reaches the router over the TV cable
    .about = fibre comes in, and from there the TV cable goes to the router
uses-nothing = Nothing uses it

ask-modem-age = How new is the cable modem?
    .title = The cable modem
    .why = Newer modems may use higher frequencies, close to those of the network we want to build.
    .how = Look for “DOCSIS” and a number on its label or in its manual.
modem-30 = DOCSIS 3.0 or older
modem-31 = DOCSIS 3.1
modem-40 = DOCSIS 4.0

ask-plan = What speed does your internet plan give?
    .title = The internet plan
    .why = The network in the house should not be slower than what comes in.
    .hint = it is on the bill; 1 Gb/s is 1000
plan-down = Down, to the house
plan-up = Up, from the house

ask-depends = Does one of these work through the modem, the router, the fibre box, the TV cable or an amplifier?
    .title = What must not fail
    .why = If it does, tell everyone in the house before anything is unplugged, and unplug for minutes only. Where a life may depend on it, let the company that looks after it say when.
    .why-head = Tell everyone before anything is unplugged
depends-phone = A phone line
    .short = a phone line
depends-alarm = An alarm
    .short = an alarm
depends-medical = A medical call device
    .short = a medical call device
depends-nothing = None of these

ask-rooms = Which rooms have a TV cable outlet, or should get a good network?
    .title = The rooms
    .why = We work out what gets through to each of them.
    .hint = separated by commas
rooms-others = Other rooms, by your own names
rooms-known = So far: { $rooms }
rooms-wish = What should the network be good for in these rooms?
room-living = Living room
room-office = Office
room-bedroom = Bedroom
room-child = Child’s room
room-kitchen = Kitchen
room-basement = Basement
room-attic = Attic
room-guest = Guest room

ask-wish = { $room }: what should the network be good for there?
    .title = { $room }: what is wished for
    .why = So that nothing is changed for the sake of speed that nobody needs.
wish-light = Browsing and one TV (100 Mb/s to the room, 20 back)
wish-work = Work from home, video calls, several TVs (300 Mb/s to it, 50 back)
wish-fast = As fast as a network cable (900 Mb/s to it, 300 back)
wish-none = No network needed there
wish-differ = It differs from room to room; ask me for each
wish-unsure-taken = { $down } to it and { $up } back are taken then, until somebody says more
wish-other = Another speed
wish-down = To the room
wish-up = From the room

ask-wish-other = { $room }: which speed is wished for?
    .title = { $room }: another speed
    .why = Any two numbers will do; the work list aims at them.

# --- where the cable comes in

ask-ways-in = How does TV cable come into the house?
    .title = The ways in
    .why = Each way in is a way out for our signals too, so each needs a look.
    .how = Follow the cable from an outlet, the modem or the first splitter towards the street, the roof or the fibre box. It may be in the basement, a cupboard, the garage or outside on the wall. Only look. If the place is locked, “I am not sure” is a good answer: you can ask whoever has the key later.
    .how-head = Where to look, and what to do if it is locked
way-in-cable = From the street or the building: the cable company’s line
    .about = also if the contract ended long ago, and if it comes from a cellar or riser that others use too
way-in-antenna = From an antenna
    .about = roof, attic or window
way-in-satellite = From a dish
    .about = one or several cables from the roof or wall
way-in-fibre_box = From a fibre box inside the house
    .about = only if the TV cable is screwed to that box

ask-joined = Is { $part } still joined to the world outside?
    .title = { $part }: joined or cut off
    .why = A way in that is cut off needs no filter; one that is joined does.
    .how = Follow the cable with your eyes. Cut off means that you can see its end hanging free.
joined-connected = Yes, something comes in or the cable goes on outside
joined-cut_off = No, I see its end hanging free

ask-ground-block = Is there a ground block (earthing block) behind { $part }?
    .title = { $part }: ground block
    .why = It leads a lightning surge away before it reaches the house. Only look; it stays as it is.
    .how = A small metal block with a screw connector on both sides and a wire, often green or bare, clamped to it.
ground-block-yes = Yes, I see it
ground-block-no = No, there is none

ask-entry-filter = Is there an entry filter behind { $part }?
    .title = { $part }: entry filter
    .why = It keeps your network in the house and strangers out of it, and it sends the signal back to your rooms.
    .how = A metal cylinder as long as a finger, screwed in line with the cable, on the house side of the ground block. Its label may say “MoCA”, “PoE” (point of entry) or a range up to 1002 MHz.
    .how-head = What an entry filter looks like
entry-filter-yes = Yes, I see it
entry-filter-no = No, there is none

seen-is = Yes, it is { $part }, found before

# --- where the cable divides

ask-label = What is printed on { $part }?
    .title = { $part }: its label
    .why = Its numbers say how much signal it costs and which frequencies it is made for.
    .how = Take a photo first: you can read it later in good light. Then copy the label as it stands, with all numbers.
    .hint = for example: 4-WAY SPLITTER 5-1000MHz 7dB
label-text = The label, word for word
label-recognised = Read from the photo: choose each number that is right
label-part = Choose the label in the photo
label-part-chosen = Choose another part of the photo
label-in-photo = The label in the photo
photo-part = Where in the photo is the print?
    .title = The print in the photo
photo-part-first = Touch one corner of the print. Then touch the corner opposite.
photo-part-second = One corner is chosen. Now touch the corner opposite.
photo-part-again = Begin again with the first corner
photo-part-small = That is too small to show any print. Touch one corner of it, then the corner opposite.
photo-part-photo = the whole photo
photo-part-pieces = Or choose a piece of the photo
photo-part-whole = The whole photo
photo-part-middle = Its middle
photo-part-upper = Its upper half
photo-part-lower = Its lower half
photo-part-left = Its left half
photo-part-right = Its right half
photo-piece = in the photo { $down ->
        [top] { $across ->
            [left] at the upper left
            [right] at the upper right
           *[middle] above its middle
        }
        [bottom] { $across ->
            [left] at the lower left
            [right] at the lower right
           *[middle] below its middle
        }
       *[middle] { $across ->
            [left] at the left
            [right] at the right
           *[middle] in its middle
        }
    }
label-take-sure = Take all that was read clearly
label-being-read = Reading what is printed in the photo
label-stands-otherwise = The survey says { $value }. Choose this number only if you know better now.
label-typed-otherwise = The text that was typed says { $value }, and typed text counts.
label-reading-stopped = Reading the photo was stopped. Type in what is printed, have it read again, or leave it to the photo.
label-read-again = Read the photo again
label-photo-no-figures = Nothing of what is asked stands in what was read from the photo: “{ $text }”.
label-as-read = What the label says
write-tag = Write { $tag } on a piece of tape and stick it on, so that everyone finds it again.

label-is-right = Yes, it says this
ask-label-read = Is this what the label says?
    .title = { $part }: its numbers
    .why = The forecast rests on these numbers. Choose one to correct it or to fill it in.
figure-says = { $value }
figure-not-stated = not stated
figure-legs = outputs
figure-leg-loss = loss to each output
figure-leg-loss-of = loss to output { $port }
figure-low = made for, from
figure-high = made for, up to
figure-stop-low = stops, from
figure-stop-high = stops, up to
figure-tap-loss = loss to the tap
figure-gain = gain
figure-return-high = return path up to

ask-legs = How many outputs has { $part }, used and free?
    .title = { $part }: outputs
    .how = Count the screw connectors, without the one marked IN.
ask-shared = This cable or amplifier may feed other flats too. Unscrew and unplug nothing until whoever looks after the building says whom it feeds. Looking is always fine.
    .head = This may feed others too: unplug nothing yet.
ask-dependents = You said that this may depend on it: { $what }. Leave it plugged in, and first ask the company that looks after it.
    .head = Leave it plugged in: something may depend on it.
legs-out-of-range = Please count again: there are 1 to 16 outputs.

ask-leads-to = { $only ->
        [yes] Follow the cable from { $part } into the house. What does it reach first?
        [through] The way through { $part } (OUT): where does its cable lead?
        [tap] The tap output (TAP) of { $part }: where does its cable lead?
        [passive] The port of { $part } that is not amplified (passive port, often marked MODEM or VOIP): where does its cable lead?
       *[no] Output { $port } of { $part }{ $printed ->
            [yes] , where { $loss } is printed
           *[no] { "" }
        }: where does its cable lead?
    }
    .title = { $only ->
        [yes] Behind { $part }
        [through] { $part }: the way through
        [tap] { $part }: tap output
        [passive] { $part }: passive port
       *[no] { $part }: output { $port }
    }
    .why = From this we draw the map of your wiring.
    .how = If you cannot see it, there are two ways, each with its own caution. See what goes dead: a TV or the modem runs at an outlet, and one output of the splitter is unscrewed at a time. Or use a tone tracer, a small sender and a listening pen for finding cables.
    .how-head = How to find out if you cannot see it
leads-room = An outlet in: { $room }
leads-outlet = An outlet in a room that is not listed
leads-ground-block = A ground block (earthing block)
    .about = a small metal block with a screw connector on both sides and a wire, often green
leads-splitter = A splitter
    .about = a metal box, one connector marked IN and two or more marked OUT
leads-filter = A filter, screwed straight on
    .about = a metal cylinder as long as a finger, with a connector at both ends and no cable before it
leads-filter-behind-cable = A filter, at the end of a cable
    .about = the same, with a cable before it
leads-amplifier = An amplifier
    .about = it has a power supply, or a connector marked PWR
leads-tap = A tap
    .about = like a splitter, but with a number such as 12 or 16 at one output
leads-other = Something else, or I cannot tell what it is
    .about = take a photo of it
leads-part = { $part }, found before
leads-capped = Nothing; a small metal cap is screwed on
    .about = a 75-ohm terminator
leads-open = Nothing; the output is open
    .about = no cable and no cap
leads-another_home = To another home in the building
    .about = it stays screwed on, and nothing that feeds it is touched
leads-loose_end = A cable, and I do not know where it goes

ask-outputs = Where do the outputs of { $part } lead?
    .title = { $part }: its outputs
    .why = From this we draw the map of your wiring.
    .how = Follow each cable to what it reaches first. If you cannot see it, there are two ways, each with its own caution. See what goes dead: a TV or the modem runs at an outlet, and one output of the splitter is unscrewed at a time. Or use a tone tracer, a small sender and a listening pen for finding cables.
    .how-head = How to find out if you cannot see it
outputs-port = { $only ->
        [through] The way through (OUT)
        [tap] The tap output (TAP)
        [passive] The port that is not amplified (passive port, often marked MODEM or VOIP)
       *[other] Output { $port }{ $printed ->
            [yes] , where { $loss } is printed
           *[no] { "" }
        }
    }
outputs-others-loose = A cable on all the others, and I do not know where they go
outputs-others-open = Nothing on all the others; they are open
outputs-next = { $only ->
        [through] The way through (OUT) comes next.
        [tap] The tap output (TAP) comes next.
        [passive] The port that is not amplified comes next.
       *[other] Output { $port } comes next.
    }
outputs-not-told = { $only ->
        [through] Please say where the way through (OUT) leads, too, or what holds of all the others.
        [tap] Please say where the tap output (TAP) leads, too, or what holds of all the others.
        [passive] Please say where the port that is not amplified leads, too, or what holds of all the others.
       *[other] Please say where output { $port } leads, too, or what holds of all the others.
    }
outputs-before = The outputs so far
outputs-after = The other outputs
outputs-open = not told yet
outputs-guessed = a guess: one of several alike
outputs-to-order = I know the rooms on the others, but not which cable goes to which
outputs-in-order = The rooms that the outputs not told yet lead to, in some order
outputs-order-too-many = There are more rooms than outputs left. Please pick no more rooms than there are outputs.
outputs-order-not-alike = The outputs left are not alike, so the order matters. Please say of one with another loss where it leads.
outputs-twice = One part cannot be fed from two outputs. Please check which of them it is.

ask-by-pass = Does { $part } let the room network pass?
    .title = { $part }: way round for the network
    .why = An amplifier stops the room network unless it has a way round for it, a by-pass. Whole rooms can depend on that.
    .how = Read what is printed on it. Those that have one say so, by the word “MoCA” or “by-pass”, or by a band up to { -band-top }.
by-pass-yes = Yes: “MoCA”, “by-pass” or a band up to { -band-top } is printed on it
by-pass-no = No: nothing of the kind is printed on it

ask-powered = How does { $part } get its power?
    .title = { $part }: power
    .why = Some are fed over the TV cable itself. Such a cable carries current, and a plain cap or the wrong splitter would short it.
powered-plug = From its own supply, plugged in beside it
powered-coax = Over the TV cable, from a supply in another place
powered-off = It is not powered at all

ask-fed-by = Where does { $part } get its signal?
    .title = { $part }: where it is fed
    .why = A part that is not traced cannot be counted on.
fed-by-how = If you cannot see it, there are two ways, each with its own caution. See what goes dead: a TV or the modem runs here, and one output of the splitter is unscrewed at a time. Or use a tone tracer, a small sender and a listening pen for finding cables.
    .head = How to find out if you cannot see it
fed-by-nothing = Nothing feeds it; its cable ends
fed-by-outside = A cable that comes from the street, the building, the roof or a dish

# --- the cables

cable-series = Kind of cable, as printed on its jacket
cable-six = 6 series
    .about = “RG-6”, about 7 mm (0.27 in) thick, the most common
cable-fifty_nine = 59 series
    .about = “RG-59”, about 6 mm (0.24 in), thinner and older
cable-seven = 7 series
    .about = about 8 mm (0.32 in)
cable-eleven = 11 series
    .about = about 10 mm (0.4 in), stiff

jacket-recognised = Read from the photos of the jacket: choose what is right
jacket-series = kind of cable
jacket-length = length between the marks
jacket-mark = mark at { $end ->
    [one] one end
   *[other] the other end
}
jacket-mark-says = { $mark } { $unit }
jacket-other-end = A photo of the mark at the other end too gives the length.
jacket-stands-otherwise = Something else stands in the survey: choose this only if you know better now.
jacket-part = { $photo ->
    [last] Choose where the print is in the last photo
   *[before] Choose where the print is in the photo before
}

length-range = Somebody gave a range: { $length }. It stays unless you type another length.
ask-cable = { $run }: which kind is it, and how long?
    .title = { $run }: kind and length
    .why = Thin, old cable loses more signal, and a long one more than a short one. A guess is fine: we work with a range. Pacing it narrows the range.
    .how = Look for a 6 or a 59 in the print, such as “RG-6” or “RG59”. What you leave empty counts as not known.
    .hint = one long step is about 0.8 m or 2.5 ft
cable-others-too = Take this, and the same kind for all other cables found so far
cable-all-short = So short, and so { $others ->
    [one] is the other cable
   *[other] are the { $others } other cables
} between two boxes found so far
cable-short = It is a short, ready-made cable between two boxes, no longer than an arm
length = Length
how-long-known = How do you know?
how-long-measured = Measured
how-long-paced = Paced
how-long-guessed = Guessed
how-long-from-marks = Work it out from the marks on the jacket

ask-marks = { $run }: what do the marks at its two ends say?
    .title = { $run }: marks on the jacket
    .how-far = Many cables carry a running number every foot or metre. The difference of the two ends is the length.
marks-one-end = The number at one end
marks-other-end = The number at the other end
marks-unit = What do the numbers count?
marks-ft = feet
marks-m = metres
marks-not-read = { $given ->
    [no] The number at { $end ->
        [one] one end
       *[other] the other end
    } is missing. If it cannot be read, go back and say how long the cable is about.
   *[yes] “{ $typed }”, at { $end ->
        [one] one end
       *[other] the other end
    }, is no such number: the jacket has whole ones, for example 1208, 1,208 or 77 m.
}

ask-connectors = How do the connectors at the ends of the cables look?
    .title = The connectors
    .why = A bad connector loses signal and lets it leak. It is the most common fault, and cheap to mend.
    .how = Good: pressed-on metal, firm, clean, tight. Bad: it turns or pulls off by hand, is green or white, was twisted on, or bare wire sticks out.
    .how-head = Good and bad connectors, by their looks
connectors-good = All that I can see are good
connectors-some = Some are bad; ask me for each cable

ask-connectors-of = How are the connectors of { $run }?
    .title = { $run }: connectors
    .why = A bad connector loses signal and lets it leak.
plug-at-near = At the end nearer the street
plug-at-far = At the other end, nearer the outlet
plug-compression = Firm and clean, pressed on all around
plug-crimp = Firm and clean, squeezed on in six flats
plug-push_on = Only pushed on; it has no thread
plug-twist_on = It turns on its cable, or pulls off
plug-corroded = Green, white or wet
plug-hand_tight = Good, but not screwed tight
plug-bad_joint = Half off, or bare wires twisted together

# --- the outlets

ask-plugged = What is plugged in at { $part }?
    .title = { $part }: what is plugged in
    .why = It must still work afterwards, and an open outlet disturbs the rest.
at-outlet-tv = A TV
at-outlet-tv_box = A TV box
at-outlet-modem = The cable modem, or modem and router in one
at-outlet-moca_gateway = A router that speaks MoCA itself
at-outlet-satellite_receiver = A satellite receiver
at-outlet-fibre_box = A fibre box
at-outlet-power_supply = A small supply that feeds an amplifier over the cable
at-outlet-other = Something else
at-outlet-nothing = Nothing; it is free

ask-room-of = Which room is { $part } in?
    .title = { $part }: room
room-new = Or a room that is not listed

ask-more-outlets = Are there other outlets of the TV cable in the house?
    .title = Other outlets
    .why = An outlet not found yet may be open, or just the one that is needed. Boxes with a mains plug and TV cables on them, in a cupboard or behind furniture, count too: you find “Start where you stand” on the page of the whole job.
    .why-head = What counts as an outlet
more-outlets-no = No, that is all

# --- at the router

ask-router-at = Which outlet is next to the router?
    .title = The outlet at the router
    .why = One adapter is placed there: it joins the TV cable to a LAN port of the router, and with that every room.
    .how = Behind the wall or some steps away will do, with a network cable between. The LAN ports are the row of equal sockets. The WAN or INTERNET socket stands apart and is left alone.
    .how-head = Which socket of the router it is
router-at-modem = the modem or fibre box is plugged in here
router-at-none = None of them; the router is in a place without one

ask-router-speaks = Can the router itself send its network over the TV cable?
    .title = The router’s own MoCA
    .why = If it can, it takes the place of the adapter there. Both together would disturb each other.
    .how = Look for the word “MoCA” in its manual or on its settings page. A socket for the TV cable alone is no sign: every cable modem has one.
    .how-head = Where to look for the word “MoCA”
router-speaks-no = No
router-speaks-yes = Yes, and it is or will be switched on

ask-drops-out = Does the internet drop out now and then?
    .title = A modem beside an adapter
    .why = The modem shares its outlet or a splitter with an adapter. So close by, the room network may disturb it; a small filter at the modem keeps it out.

ask-ports = Which network sockets are at hand?
    .title = The network sockets
    .why = The slowest socket on the way ends every speed, however good the cable is.
    .how = The speed of a LAN socket stands beside it, on the box’s label or in its manual: 100 Mb/s, 1 Gb/s (1G, GbE) or 2.5 Gb/s (2.5G).
ports-router = The router’s LAN socket where the adapter is plugged in
ports-adapters = The network socket of the adapters
how-many = How many of these adapters are there? { $needed ->
        [0] None is needed so far.
        [one] One is needed.
       *[other] { $needed } are needed: one at the router, one in each room that wants network.
    }
how-many-in-use = { $count } or more, all plugged in and running
how-many-enough = { $count } or more, not all of them plugged in yet
how-many-only = { $count } only; the others go on the list of what to get
port-1g = 1 Gb/s
port-2-5g = 2.5 Gb/s
port-100m = 100 Mb/s

ask-adapters = Do you have MoCA adapters already?
    .title = The adapters
    .why = An adapter turns the TV cable into a network socket. One stands at the router, one in each room.
adapters-none = None yet
adapters-25 = Yes, version 2.5
adapters-20-bonded = Yes, version 2.0 bonded
adapters-20 = Yes, version 2.0
adapters-11 = Yes, version 1.1

# --- enough is asked

enough-forecast = Enough for a first forecast
    .lead = That is enough for a first, wide forecast.
    .left = { $open ->
        [0] Nothing else is open.
        [one] 1 question is open. It makes the forecast narrower, and shows what may be at risk.
       *[other] { $open } questions are open. They make the forecast narrower, and show what may be at risk. What makes a rate most unsure comes first.
    }
    .to-forecast = See the first forecast
    .on = Go on with the questions
enough-lacking = Not enough for a figure yet
enough-worth = Good enough
    .lead = All is asked that may change a rate, a risk or a caution by much.
    .left = { $open ->
        [0] Nothing else is open.
        [one] 1 question is left. Its answer changes little.
       *[other] { $open } questions are left. Their answers change little.
    }
    .to-forecast = See what gets through, and then what to do
    .on = Go on asking all the same
enough-rest = All is asked
    .lead = All is asked.
    .left = Nothing else is open.
    .to-forecast = See what gets through, and then what to do
    .on = Go on
enough-not-told = { $later ->
    [0] { "" }
    [one] 1 question was put off.{ " " }
   *[other] { $later } questions were put off.{ " " }
}{ $unsure ->
    [0] { "" }
    [one] 1 answer is “not sure”: it counts with all that it may turn out to be.
   *[other] { $unsure } answers are “not sure”: they count with all that they may turn out to be.
}
granted = What the forecast takes for granted
granted-cables = { $cables ->
    [one] 1 cable may be of any usual kind, and { $length } long.
   *[other] { $cables } cables may be of any usual kind, and { $length } long each.
}
granted-lengths = { $cables ->
    [one] 1 cable may be { $length } long.
   *[other] { $cables } cables may be { $length } long each.
}
granted-order = Which output of { $part } leads to which room is a guess. The outputs are alike, so another order would change little.
granted-plugs = The connectors may be good or bad, as they mostly are in houses.
granted-filter = Whether there is an entry filter is open. Switch on no adapter before it is known.
granted-uses = What else uses the cable is open. Change nothing before it is known.
reason-not-weighed = Asked now because it may change what gets through; how much is not worked out yet.
