# What TV and modem get: levels, and what work on the coax changes of them.

levels-how = A level says how strong the signal is. It is only told where somebody measured it, or measured it elsewhere on the same coax; the change is told everywhere. A splitter taken out of the way means more signal, one put in means less.
levels-measured = { $level } measured here at { $frequency }
levels-worked-out = likely { $level } at { $frequency } ({ $low } to { $high })
levels-not-known = not known: nobody measured what comes in at { $entry }
levels-sends = the modem sends at { $level }, by its own page
levels-ratio = error ratio (MER) { $ratio } at { $frequency }
levels-then-nothing = gets nothing any more
levels-then-less = up to { $loss } less signal
levels-then-more = up to { $gain } more signal
levels-then-same = no change that it would notice
fits-inside = Yes
fits-likely = Likely
fits-outside = No
fits-not-known = Not known
