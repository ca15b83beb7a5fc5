# Numbers with their units, ranges and lists. Each number is already written with the marks of the locale.

written-metres = { $number } m
written-feet = { $number } ft
written-metres-range = { $likely } m, { $low } to { $high }
written-feet-range = { $likely } ft, { $low } to { $high }
# The reader's own unit first.
written-length = { $first } ({ $second })
written-length-about = about { $first } ({ $second })
written-loss = { $number } dB
written-loss-range = { $likely } dB ({ $low } to { $high })
# Beyond all that is told apart.
written-loss-beyond = more than 100
written-level = { $number } dBmV
written-rate = { $number } Mb/s
written-rate-range = { $likely } Mb/s ({ $low } to { $high })
written-frequency = { $number } MHz
written-band = { $low } to { $high } MHz
written-milliseconds = { $number } ms
written-milliseconds-range = { $likely } ms ({ $low } to { $high })
written-share = { $number } %

# Between all but the last of a list; its space must not be cut.
list-comma = ,{ " " }

# Figures of the trade that several messages say. A test holds them against the figures that the core works with.
-wrench = an 11 mm (7/16 in) wrench
-band-top = 1675 MHz
-band-adapters = 1125 to { -band-top }
-band-parts = 5 to { -band-top }
-made-for-moca = made for { -band-parts } or more and marked MoCA
-filters-pass-top = 1002 MHz
-band-filters-pass = 5 to { -filters-pass-top }
-filters-stop-by = 40 dB
-days-to-put-back = 30 days
