# What TV and modem get: levels, and what work on the coax changes of them.

levels-how = A level says how strong the signal is. It is only told where somebody measured it, or measured it elsewhere on the same coax; the change is told everywhere. A splitter taken out of the way means more signal, one put in means less.
levels-measured = { $level } measured here at { $frequency }
levels-worked-out = likely { $level } at { $frequency } ({ $low } to { $high })
levels-not-known = not known: nobody measured what comes in at { $entry }
levels-sends = the modem sends at { $level }, by its own page
levels-broken = { $way ->
        [back] at { $frequency } { $loss } is lost on the modem’s way back: it is not heard
       *[here] at { $frequency } { $loss } is lost on the way here: nothing gets through
    }
levels-broken-by = { $way ->
        [back] { $amplifier } ends before { $frequency } on the modem’s way back, where { $loss } is lost: it is not heard
       *[here] { $amplifier } ends before { $frequency }, where { $loss } is lost: nothing gets through
    }
levels-broken-if-used = { $way ->
        [back] at { $frequency } { $loss } is lost on the modem’s way back; whether it sends so high nobody said
       *[here] at { $frequency } { $loss } is lost on the way here; whether the service goes so far nobody said
    }
levels-broken-perhaps = { $way ->
        [back] whether { $amplifier } lets { $frequency } through on the modem’s way back is not known; most do not
       *[here] whether { $amplifier } lets { $frequency } through is not known; most do not
    }
levels-ratio = error ratio (MER) { $ratio } at { $frequency }
levels-missing = { $sure ->
        [yes] in what is worked out here, about { $loss } is counted as lost on the way, as measured at { $places }
       *[no] about { $loss } may be lost on the way, as measured at { $places }: how much of it here, nobody knows
    }
levels-then-nothing = gets nothing any more
levels-then-less = up to { $loss } less signal
levels-then-more = up to { $gain } more signal
levels-then-same = no change that it would notice
levels-then-level = then about { $level } at { $frequency } ({ $low } to { $high })
levels-then-sends = the modem then sends at about { $level } ({ $low } to { $high })
levels-of = { $service } at { $outlet }
levels-short = Within what it needs? Now: { $now }. When the work list is done: { $then } ({ $change }).
levels-short-not-known = Level not known. When the work list is done: { $change }.
levels-fits-then = Within what it needs then? { $fits }
levels-moved-out = { $service } at { $outlet }: with this step about { $after }, outside what the device needs ({ $before } as found). Check there when it is done. The choice is yours: leave the step out, or ask whoever brings the service for a stronger signal
levels-moved-sends = The modem at { $outlet }: with this step it sends at about { $after }, more than is good ({ $before } as found). Read its page when it is done. The choice is yours: leave the step out, or ask the provider
levels-narrowed = { $service } at { $outlet }: with this step about { $after } ({ $before } as found). That is still within what the device needs, but leaves less of a margin than is good. See when it is done that nothing breaks up or drops out; if it does, take the step back
levels-narrowed-sends = The modem at { $outlet }: with this step it sends at about { $after } ({ $before } as found). That is still within what it may, but outside what is recommended. Read its page when it is done, and watch whether the internet drops out
fits-inside = Yes
fits-marginal = Marginal
fits-outside = No
fits-not-known = Not known
