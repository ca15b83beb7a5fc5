# Who said what, and when; photos; forgetting; the list of surveys.

author-you = you
author-named = { $name }
author-unnamed = somebody who gave no name ({ $id })

said-set = { $author } wrote { $field }: { $value } ({ $when } UTC)
said-emptied = { $author } emptied { $field } ({ $when } UTC)
said-removed = { $author } removed it ({ $when } UTC)
said-brought-back = { $author } brought it back ({ $when } UTC)
said-forgotten = { $author } wrote { $field } ({ $when } UTC); what it said was forgotten
said-forgets = { $author }: { $what } ({ $when } UTC)
said-replaced = { $said }, until { $author } changed it ({ $when } UTC)

disagreement = { $thing }, { $field }: { $sides }. Before, it was { $origin }. Which one is right?
disagreement-from-nothing = { $thing }, { $field }: { $sides }. Which one is right?
disagreement-side = { $author } said { $value }
removed-thing = { $thing }, removed by { $author } ({ $when } UTC)
changed-after-removal = { $thing } was removed by { $remover } and changed by { $changer }. It stays until somebody removes it again.

# Things that are not parts.
thing-run = { $tag } (a cable)
thing-run-untagged = a cable that joins nothing
thing-room = the room { $name }
thing-survey = the survey
thing-note = an empty note
thing-note-on = an empty note on { $thing }
thing-photo = a photo not assigned yet
thing-photo-file = the photo { $file }, not assigned yet
thing-measurement = a measurement by an instrument
thing-measurement-of = the measurement of { $part }
thing-reading-level = the level reading at { $place } of { $frequency }
thing-reading-error_ratio = the MER reading (how clean it arrives) at { $place } of { $frequency }
thing-reading-modem_sends = the reading of what the modem sends at { $place }
thing-reading-throughput = the speed test at { $place }
thing-reading-phy_rate = the PHY rate (raw speed on the coax) read at { $place }
thing-reading-round_trip = the round trip measured at { $place }
thing-reading-power = the power readings at { $place }
thing-reading-nodes_seen = the count of network members at { $place }
thing-reading-packet_loss = the packet loss measured at { $place }
thing-reading-link = the link as seen at { $place }
thing-reading-swings = the swings of speed seen at { $place }
thing-work = the step “{ $what }”
thing-gone = something that is no longer in the survey
# What it was is known, and no more.
thing-forgotten = something that was forgotten
thing-forget = a wish to forget
thing-was-survey = the survey
thing-was-part = a part of which all was forgotten
thing-was-run = a cable of which all was forgotten
thing-was-room = a room of which all was forgotten
thing-was-service = a service of which all was forgotten
thing-was-reading = a reading of which all was forgotten
thing-was-note = a note of which all was forgotten
thing-was-photo = a photo of which the picture was forgotten
thing-was-measurement = a measurement of which all was forgotten
thing-was-work = a step of which all was forgotten

# Names of fields.
field-is = what it is
field-name = the name
field-place = the place
field-internet = the internet plan
field-building = the building
field-network = the planned network
field-kind = the kind
field-tag = the tag
field-feed = where it gets its signal
field-label = the label
field-rating = the rating
field-where = where it sits
field-room = the room
field-plugged = what is plugged in
field-adapter = the adapter
field-entry_kind = what comes in
field-entry_state = whether it is connected
field-cable = the cable
field-length = the length
field-connector_near = the connector nearer the street
field-connector_far = the connector nearer the outlet
field-wish = the speed wished for
field-text = the text
field-about = what it is about
field-measured = the reading
field-port = the output that it was taken at
field-top_mhz = the highest frequency
field-image = the picture
field-of = what the photo shows
field-role = what kind of photo it is
field-file_name = the name of its file
field-print = what a program read in it
field-taken = when it was taken
field-entry = by which entry it comes in
field-signal = how the TV is sent
field-modem = the modem
field-drops_out = drop-outs of the internet
field-single_cable = how receivers share one cable
field-other_network = the other network
field-power = who powers whom
field-how = how it was measured
field-served_from = from which outlet it is served
field-behind_adapter = what lies behind the adapter
field-sharing = how the outlet is shared
field-measurement = the measurement by an instrument
field-ports = how many ports were measured
field-asked = how a question was answered
field-change = the change of the work list
field-outcome = how the work ended
field-digest = the mark of the measurement’s file
field-text-piece = a piece of the measurement’s file
field-device_filter = the filter at the device
field-end = what is on output { $port }
field-removed = whether it was removed
field-forget = what was to be forgotten
field-unnamed = what was written
field-other = a detail of a newer release (“{ $name }”)

# Values.
value-empty = nothing
value-text = { $text }
value-unread = details that this release cannot tell
value-digest = a checksum
value-several = { $several }
hangs = To it belong { $things }. They stay in the survey, and wait there without it.
hangs-nothing = Nothing else belongs to it.
hangs-parts = { $count ->
    [one] 1 part
   *[other] { $count } parts
}
hangs-runs = { $count ->
    [one] 1 cable
   *[other] { $count } cables
}
hangs-photos = { $count ->
    [one] 1 photo
   *[other] { $count } photos
}
hangs-readings = { $count ->
    [one] 1 reading
   *[other] { $count } readings
}
hangs-notes = { $count ->
    [one] 1 note
   *[other] { $count } notes
}
value-length = { $length }, { $known }
value-length-screwed-on = no cable: screwed straight on
value-known-measured = measured
value-known-paced = paced
value-known-guessed = guessed
value-frequency = { $mhz }
value-feed-nothing = nothing feeds it
value-feed-from = from { $port }
value-plugged-nothing = nothing is plugged in
value-plugged-tv = a TV set
value-plugged-tv_box = a TV box
value-plugged-modem = a cable modem
value-plugged-moca_gateway = a gateway that speaks MoCA itself
value-plugged-satellite_receiver = a satellite receiver
value-plugged-fibre_box = a fibre box
value-plugged-power_supply = an amplifier’s power supply
value-plugged-other = another device
value-adapter = { $version ->
    [none] MoCA as planned
   *[other] MoCA { $version }
}{ $port ->
    [none] { "" }
   *[said] , Ethernet { $ethernet }
}
value-network = MoCA { $version } adapters{ $port ->
    [none] { "" }
   *[said] , Ethernet { $ethernet }
}{ $counted ->
    [yes] , { $owned } there already
   *[no] { "" }
}
value-network_piece-run = a network cable in the wall
value-network_piece-switch = a switch
value-behind-nothing = nothing but a short network cable
value-behind-rate = the slowest of it { $rate }
value-rates = { $down } to the room, { $up } from it
value-building-own = your own, coax not shared
value-building-own_shared = your own, coax shared with other homes
value-building-rented = rented, coax not shared
value-building-rented_shared = rented, coax shared with other homes
value-level = { $level } at { $mhz }
value-error_ratio = { $ratio } MER (how clean it arrives) at { $mhz }
value-phy_rate = { $rate } on the coax (PHY rate)
value-round_trip = { $time } there and back
value-signal-analog = analogue channels
value-signal-digital = digital channels
value-signal-both = analogue and digital channels
value-single_cable-en50494 = by EN 50494
value-single_cable-en50607 = by EN 50607
value-sharing-through_port = by the adapter’s through port
value-sharing-splitter = by a splitter
value-there = there
value-work-done = done
value-work-could_not = could not be done
value-work-put_back = put back as it was
value-asked-yes = yes
value-asked-no = no
value-asked-unsure = looked, and could not tell
value-asked-phone = a phone line
value-asked-alarm = an alarm
value-asked-medical = a medical call device
value-asked-nothing = nothing
value-asked-six = 6 series
value-asked-fifty_nine = 59 series
value-asked-seven = 7 series
value-asked-eleven = 11 series
value-asked-differ = they differ
value-asked-good = all good
value-asked-some = some are bad
value-asked-plug = its own supply
value-asked-coax = over the coax
value-asked-off = not powered
value-asked-guessed = a guess: one of several alike
value-asked-none = none
value-asked-25 = version 2.5
value-asked-20-bonded = version 2.0 bonded
value-asked-20 = version 2.0
value-asked-11 = version 1.1
value-asked-new-cable = no new cable
value-asked-heights = nothing in an attic, on a ladder or a roof
value-not-there = not there
value-modem-generation = generation { $version } (DOCSIS)
value-modem-sends = sends up to { $mhz }
value-network-version = version { $version }
value-network-band = uses { $band }
value-network-nodes = { $count ->
    [one] one member
   *[other] { $count } members
}
value-power = from { $from } to { $to }
value-reach-internet = to the internet
value-reach-house = within the house
value-reach-adapter_page = from an adapter’s page
value-how-wire = { $reach }, by wire
value-how-radio = { $reach }, partly by radio
value-how-socket = { $how }, the slowest network socket { $socket }
value-text-piece = figures
value-image = a picture of { $width } x { $height } pixels
value-cable-six = 6 series
value-cable-fifty_nine = 59 series
value-cable-seven = 7 series
value-cable-eleven = 11 series
value-cable-unknown = not known
value-connector-compression = a compression connector, tight
value-connector-crimp = a crimped connector, tight
value-connector-push_on = a push-on connector
value-connector-twist_on = a twist-on connector
value-connector-corroded = corroded or wet
value-connector-hand_tight = turned by hand only
value-connector-bad_joint = a bad joint
value-connector-unknown = not looked at
value-entry_kind-cable = the cable company’s line
value-entry_kind-antenna = an antenna
value-entry_kind-satellite = a satellite dish
value-entry_kind-fibre_box = a fibre box
value-entry_kind-unknown = not known
value-entry_state-connected = connected
value-entry_state-cut_off = cut off
value-entry_state-unknown = not known
value-end-capped = a 75-ohm cap (terminator)
value-end-open = nothing: the output is open
value-end-loose_end = a cable whose far end is not known
value-end-another_home = a cable to another home
value-role-before = before the work
value-role-after = after the work
value-role-label = the label
value-role-place = the place

# Photos.
photo-unassigned = { $count ->
    [one] One photo is not assigned to a part yet.
   *[other] { $count } photos are not assigned to a part yet.
}
photo-missing = { $count ->
    [one] The file of one photo is missing or cut short. A file or a copy of this survey that has it brings it back.
   *[other] The files of { $count } photos are missing or cut short. A file or a copy of this survey that has them brings them back.
}

# Forgetting.
forget-warning = Forgetting is for ever: nobody can bring it back, and no older file will. It is dropped here, and in every copy that takes in a file from here. Files and copies that were already sent are out of reach: what they hold stays there until whoever has them takes in a newer file, or deletes them.
forget-also = On this device it is also dropped from drafts, small pictures, surveys set aside, and copies made for safety.
forget-done = Forgotten.
forget-later = Forgotten, but its bytes may still lie on this disk, because another program has the survey open. They are cleared when the survey is opened next.

# The list of surveys.
home-untitled = a survey without a name
home-progress = { $rooms ->
    [one] 1 room
   *[other] { $rooms } rooms
}, { $parts ->
    [one] 1 part
   *[other] { $parts } parts
}, { $runs ->
    [one] 1 cable
   *[other] { $runs } cables
}, { $photos ->
    [one] 1 photo
   *[other] { $photos } photos
}
home-repaired = The database of this survey was damaged. It was rebuilt from { $facts ->
    [one] its one record
   *[other] all its { $facts } records
}; nothing was lost. The damaged one was kept as { $damaged }.
home-repaired-and-forgotten = The database of this survey was damaged. It was rebuilt, { $facts ->
    [one] 1 record
   *[other] { $facts } records
} in all. The damaged one is gone: it still held what was to be forgotten.
home-needs-file = The database of this survey is damaged, and not all of its records can be read. A file or a copy of this survey is needed to repair it.

# The page in a file of a survey that cannot be worked out.
file-page-why = There is no report here, because this survey could not be worked out. { $why }
file-page-kept = Nothing that was recorded is missing for that: all of it is in this file, the records in facts.jsonl beside this page, the pictures in the folder photos. Whoever takes the file in has it as it is.
file-page-parts = Parts and cables
file-page-notes = Notes

# Facts and things in words, wherever a story is told.
told-by = { $author }, { $when } UTC
told-thing-new = something new
told-photo-of = a photo of { $thing }
told-note = the note “{ $text }”
told-note-longer = the note “{ $text } …”
told-own-name = your own name
told-name-of = the name of { $author }
told-field-of = { $thing }, { $field }
told-is = that it is there
told-fact = { $about }: { $value }
told-fact-added = { $thing } was added
told-fact-begun = the survey was begun
told-fact-removed = { $thing } was removed
told-fact-brought-back = { $thing } was brought back
told-fact-forgotten = { $about }: what was said was forgotten
told-fact-forgets =
    { $count ->
        [one] 1 detail was made forgotten
       *[other] { $count } details were made forgotten
    }
