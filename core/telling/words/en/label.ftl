# What may be wrong in a label's reading, in plain words. "written" is the label's own text.

-label-left-out = It was left out.

label-doubt-truncated = The text is very long; only its first { $bytes } bytes were read.
label-doubt-nothing-read = Nothing on this label could be read. Type in what you see: the frequencies in MHz and the figures in dB.
label-doubt-letters-for-digits = “{ $written }” has letters where digits belong and was read as { $read }. Please look at the label again.
label-doubt-unit-misread = “{ $written }” was read as { $read }. Please look at the label again.
label-doubt-unreadable = “{ $written }” cannot be read safely. { -label-left-out }
label-doubt-thousands = “{ $written }” was read as { $read } MHz; its dot, comma or gap could mean something else.
label-doubt-band-without-unit = “{ $written }” has no unit; it was read as a band in MHz.
label-doubt-band-units-mixed = In “{ $written }” the unit seems to belong to the upper edge only; the lower edge was read as { $low } MHz.
label-doubt-band-backwards = “{ $written }” runs backwards. { -label-left-out }
label-doubt-edge-unusual = { $edge } MHz is an unusual edge of a band. Please look at the label again.
label-doubt-bands-unclear = There are two bands, “{ $first }” and “{ $second }”, and no word says which one the part passes. Both were left out.
label-doubt-bands-joined = “{ $first }” and “{ $second }” were read as one band.
label-doubt-paths-assumed = No word says which way the two bands run; “{ $lower }” was taken as the return band (towards the street) and “{ $upper }” as the forward band (towards the rooms).
label-doubt-upper-edge-alone = Only one frequency, “{ $written }”, is given; it was taken as the upper edge of the band.
label-doubt-lower-edge-alone = Only one frequency, “{ $written }”, is given; it was taken as the lower edge of the band.
label-doubt-frequency-unplaced = “{ $written }” is a frequency, but not clearly an edge of a band. { -label-left-out }
label-doubt-loss-unusual = { $loss } dB is an unusual loss for a part with { $legs ->
    [1] one output
   *[other] { $legs } outputs
}. Please look at the label again.
label-doubt-decibels-without-unit = “{ $written }” has no unit; it was read as dB.
label-doubt-legs-disagree = The label counts { $legs } outputs, but the losses are { $losses } dB. The losses were left out.
label-doubt-legs-not-stated = A loss of { $loss } dB is given, but not for how many outputs.
label-doubt-unbalanced-assumed = Three outputs but two losses ({ $losses } dB): the larger one was taken for two outputs.
label-doubt-outputs-incomplete = Not every output has its own loss. The losses were left out.
label-doubt-ports-as-outputs = “{ $written }” was taken as the number of outputs; it might count the input too.
label-doubt-leg-counts-differ = The label seems to count both { $first } and { $second } outputs. The count was left out.
label-doubt-loss-by-band = The losses differ from band to band; those for “{ $taken }” were taken.
label-doubt-decibel-range = “{ $written }” is a range, not one figure. { -label-left-out }
label-doubt-two-figures = Two figures are given for { $what ->
    [tap] the tap loss
    [gain] the gain
    [return-gain] the gain of the return path
    [rejection] the rejection (loss in the stopped band)
    [isolation] the isolation (loss between outputs)
    [return-loss] the return loss (how little is thrown back)
   *[loss] the loss
}: { $first } dB and { $second } dB. Both were left out.
label-doubt-guaranteed-taken = A typical and a guaranteed figure are given for { $what ->
    [tap] the tap loss
    [gain] the gain
    [return-gain] the gain of the return path
    [rejection] the rejection (loss in the stopped band)
    [isolation] the isolation (loss between outputs)
    [return-loss] the return loss (how little is thrown back)
   *[loss] the loss
}; the guaranteed one was taken.
label-doubt-figure-unusual = { $figure } dB is unusual for { $what ->
    [tap] a tap loss
    [gain] a gain
    [return-gain] the gain of a return path
    [rejection] a rejection (loss in the stopped band)
    [isolation] an isolation (loss between outputs)
    [return-loss] a return loss (how little is thrown back)
   *[loss] a loss
}. Please look at the label again.
label-doubt-figure-unplaced = No word says what “{ $written }” is. { -label-left-out }
label-doubt-figure-assumed = “{ $written }” was taken as { $what ->
    [tap] the tap loss
    [gain] the gain
    [return-gain] the gain of the return path
    [rejection] the rejection (loss in the stopped band)
    [isolation] the isolation (loss between outputs)
    [return-loss] the return loss (how little is thrown back)
   *[loss] the loss
}; no word says so.
label-doubt-kind-unclear = The words fit both { $other ->
    [splitter] a splitter
    [tap] a tap
    [amplifier] an amplifier
    [entry_filter] an entry filter
    [high_pass_filter] a high-pass filter
    [ground_block] a ground block
    [pad] a pad
    [terminator] a 75-ohm cap
    [satellite_splitter] a satellite splitter
    [satellite_combiner] a satellite combiner
    [wall_plate] a wall plate
    [barrel] a barrel
    [power_inserter] a power inserter
    [dc_block] a DC block
   *[cable] a cable
} and { $taken ->
    [splitter] a splitter
    [tap] a tap
    [amplifier] an amplifier
    [entry_filter] an entry filter
    [high_pass_filter] a high-pass filter
    [ground_block] a ground block
    [pad] a pad
    [terminator] a 75-ohm cap
    [satellite_splitter] a satellite splitter
    [satellite_combiner] a satellite combiner
    [wall_plate] a wall plate
    [barrel] a barrel
    [power_inserter] a power inserter
    [dc_block] a DC block
   *[cable] a cable
}; the second was taken.
label-doubt-kind-from-bands = No word names the part; by its figures it was taken as { $taken ->
    [amplifier] an amplifier
    [entry_filter] an entry filter
   *[high_pass_filter] a high-pass filter
}.
label-doubt-passive-unclear = A by-pass is named, and the word for a port that is not amplified. Only the by-pass was taken: whether there is such a port, too, has to be said (modem_port).
label-doubt-power-pass-unclear = The label seems to say both that power (DC) passes and that it does not. That was left out.

# Print and a typed field that differ: what was typed counts.
label-against-kind = The label says { $printed ->
    [splitter] a splitter
    [tap] a tap
    [amplifier] an amplifier
    [entry_filter] an entry filter
    [high_pass_filter] a high-pass filter
    [satellite_combiner] a satellite combiner
   *[pad] a pad
}, but { $typed ->
    [splitter] a splitter
    [tap] a tap
    [amplifier] an amplifier
    [entry_filter] an entry filter
    [high_pass_filter] a high-pass filter
    [satellite_combiner] a satellite combiner
   *[pad] a pad
} was entered. What was entered counts; please look again which is right.
label-against-figure = The label gives { $printed } for the { $field ->
    [legs] number of outputs
    [losses] losses
    [band] band
    [stop_band] stopped band
    [rejection] rejection (loss in the stopped band)
    [tap_loss] tap loss
    [gain] gain
    [return_gain] gain of the return path
    [isolation] isolation (loss between outputs)
    [return_loss] return loss (how little is thrown back)
   *[return_top] upper edge of the return band
}, but { $typed } was entered. What was entered counts; please look again which is right.
label-against-mark = { $field ->
    [moca_bypass] { $typed ->
        [yes] The label says that there is no by-pass for MoCA, but one was entered.
       *[no] The label says that there is a by-pass for MoCA, but none was entered.
    }
   *[power_pass] { $typed ->
        [yes] The label says that power (DC) does not pass, but that it does was entered.
       *[no] The label says that power (DC) passes, but that it does not was entered.
    }
} What was entered counts; please look again which is right.

## Why something that was read from a photo is asked. Said beside the piece of the photo in which it stands.

label-unsure-faint = It was not read clearly.
label-unsure-seen-once = It was seen in only one of two looks at the photo.
label-unsure-seen-otherwise = A second look at the photo read “{ $other }”.
label-unsure-read-otherwise = A second look at the photo does not say the same.
label-unsure-cut = More of it may stand beside it: the photo ends there, something covers it, or there is a gap in the print.
label-unsure-perhaps-longer = A digit may be missing: with one more it would be { $perhaps }.
label-unsure-letters-for-digits = It has letters where digits belong.
label-unsure-unusual = Labels do not usually carry this number.
label-unsure-does-not-fit = It does not fit what else the label says.
label-unsure-meaning-unclear = It is not clear what this number is for.

## The length between two marks on a cable’s jacket.

label-length-mark-asked = One of the two marks was not read for certain: please look at both.
label-length-two-series = The photos name two kinds of cable, so they may show two cables.
label-length-one-end = These marks are so near each other that both photos may show the same end.
label-length-units-disagree = In feet and in metres the marks give two lengths: please look at all of them.
label-length-other-mark = Another photo of this cable shows a mark that is at neither end: please look at all of them.
label-no-length-mark = On the { $end ->
    [first] first
   *[second] second
} photo no mark of length was found. Take it where the jacket has a number with feet or metres behind it.
label-no-length-two-units = One of the two marks has feet and the other metres. Please look again: both ends of one cable count the same.
label-no-length-same-mark = Both ends show the same mark. Read it at each end of the cable.
label-no-length-too-far-apart = These two marks are more than 500 m (1,640 ft) apart. Please read them again.

## Why nothing was read from a photo.

print-model-missing = Labels cannot be read from photos here: the file “{ $file }”, which that needs, is missing. Type in what you see; all else works.
print-model-unreadable = Labels cannot be read from photos here: this device does not let us read the file “{ $file }”, which that needs. Type in what you see; all else works.
print-model-changed = Labels cannot be read from photos here: the file “{ $file }”, which that needs, is not the one of this release. Type in what you see; all else works.
print-model-fails = This label could not be read from its photo. That is a fault in this program. Type in what you see.
print-no-text = No text was found in this photo. Take it closer to the label and straight from above, or type in what you see.
