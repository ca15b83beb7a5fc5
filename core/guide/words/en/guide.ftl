# The frame of the guide: what stands on many screens.

text = { $text }
caution = Take care
caution-unread = Take care, and read this before you go on
caution-read = I have read this. { $press }
head-why = Why this matters
head-how = What to look for
head-more = More about it
go-on = Go on
later = Later
not-sure = I am not sure
to-overview = The whole job
to-surveys = All surveys
answered = answered
said-not-sure = not sure
open = open
device-name-too-long = Too long: your name has { $found } letters, and at most { $limit } fit. It was left as it was. Shorten it under “This device”.
device-full = There is no space left to keep what holds for this device. Nothing was changed. Free some space and try again.
device-not-kept = What holds for this device could not be read or written. Nothing was changed. Check whether its storage is there, and try again.
gone = This is not there any more. Go on to what is open.
not-answered = Please choose or write something first, or leave it for later.
more-rows = Show more
first-rows = From the beginning
how-far = { $round ->
    [forecast] Part { $number } of { $rounds }, for a first forecast
    [worth] Part { $number } of { $rounds }, what may change it
   *[rest] Part { $number } of { $rounds }, the rest
}: { $done } of { $of } answered{ $little ->
    [0] { "" }
    [one] , 1 hardly matters
   *[other] , { $little } hardly matter
}{ $unsure ->
    [0] { "" }
   *[other] ; “not sure” in all: { $unsure }
}
survey-untitled = A survey without a name

surveys = Surveys
surveys-none = No survey is here yet. A survey holds everything about one house: what is in its walls, what should change, and how it was proved.
surveys-rows = On this device
surveys-not-all = Not all surveys were looked at yet.
surveys-again = Look at all of them
surveys-new = Start a new survey
surveys-parts =
    { $parts ->
        [0] nothing found yet
        [one] 1 part found
       *[other] { $parts } parts found
    }

new-survey = A new survey
new-survey-lead = What should this survey be called?
new-survey-why = Any name by which you find it again. It is kept on this device only; nothing is sent anywhere.
new-survey-name = Name
new-survey-hint = for example: Our house
new-survey-make = Start
new-survey-no-name = Please write a name first.

overview = The whole job
overview-lead = Start anywhere and leave anything for later. Whatever you answered is kept.
overview-stages = What to find out
overview-results = What follows from it
overview-field = Working freely
overview-share = Working with others
overview-next = Go on with the next question
overview-more = More: cables, rooms, who did what
more = More
more-things = Lists of things
stage-how-far = { $done } of { $of } answered
stage-house = The house
stage-way-in = Where the cable comes in
stage-splits = Where the cable divides
stage-cables = The cables
stage-outlets = The outlets
stage-router = At the router
stage-questions = Questions
put-off = What you put off
put-off-lead = These were left for later. Take up one, or all in order.
put-off-questions = Left for later
put-off-all = Take up all in order

take-photo-before = Photo of how it is now
take-photo-after = Photo of how it is after the work
take-photo-label = Photo of its label
take-photo-jacket = Photo of the print on its jacket, one at each end
take-photo-place = Photo of where it is
photo-before = photo from before the work
photo-after = photo from after the work
photo-label = photo of its label
photo-jacket = photo of the print on its jacket
photo-place = photo of its place
photo-of-part = photo of it

unit-m = m
    .aloud = metres
unit-ft = ft
    .aloud = feet
unit-db = dB
    .aloud = decibels
unit-dbmv = dBmV
    .aloud = decibels over a millivolt
unit-dbuv = dBµV
    .aloud = decibels over a microvolt
unit-dbm = dBm
    .aloud = decibels over a milliwatt
unit-mhz = MHz
    .aloud = megahertz
unit-ghz = GHz
    .aloud = gigahertz
unit-mbps = Mb/s
    .aloud = megabits a second
unit-gbps = Gb/s
    .aloud = gigabits a second
unit-ms = ms
    .aloud = milliseconds
unit-percent = %
    .aloud = percent
unit-count = { "" }
    .aloud = a number of things

number-not-read = “{ $typed }” cannot be read as a number. Write it like 12 or 12.5; lengths also like 40 ft or 12 ft 6 in.
number-in-doubt = “{ $typed }” can be read as { $thousands } or as { $decimal }. Please write the one that you mean: { $thousands } or { $decimal }.
number-bytes = “{ $typed }” counts bytes. Please write it in bits: 1 MB/s is 8 Mb/s.
number-out-of-range = Please write a number from { $least } to { $most }.
number-not-whole = Please write a whole number.

# --- what a screen reader says besides

aloud-and = { $one }; { $other }
aloud-typed = { $typed } { $unit }
aloud-photos =
    { $count ->
        [0] no photo yet
        [one] 1 photo
       *[other] { $count } photos
    }
aloud-takes-photo = Takes a photo.
aloud-asks-file = Asks for a file first.
aloud-asks-place = Asks where to write it.
aloud-shares = Writes a file and hands it on.
aloud-asks-again = Asks once more first.
mark-box = to do
mark-done = done
mark-weak = weak
mark-not-known = not known

# --- in a terminal

plain-problem = Please note:
plain-several = { $name } (one or several, separated by spaces)
plain-one = { $name } (one of these)
plain-caution = ! { $name }: { $head } (type ! to read all of it)
plain-touch = how far across and down, in per cent: for example corner = 10,20
plain-photo = the picture’s file
plain-done = { $share } done
plain-back =   <  Back
plain-no-way-on = This screen goes on when you choose; g goes on where there is something to leave.
plain-help = Type a number or word from the screen, or NAME = your answer. g goes on, l leaves it for later, u says that you are not sure, w leads to the whole job, s gives the same answer as last, < goes back, ! shows the cautions in full, quit ends.
plain-write-how = Type its name, then = and your answer: for example length = 12.
plain-which-figure = Several figures are asked for here. Type the name, then = and the figure: for example down = 300.
plain-no-such-name = Nothing on this screen has that name. The names stand before each line, for example length = 12. A text that holds = itself is written with the name before it.
plain-not-here = That word does nothing on this screen. If it is what you want to write, type the name of the place before it, then = and the word.
plain-clear-how = Type the name of what you want to empty, then = and nothing more.
plain-cannot-write = Nothing can be written there. Type only its number or word.
plain-one-choice = Choose from one question at a time.
plain-only-one = Only one of these can be chosen.
plain-yes-or-no = Type yes or no.
plain-yes = yes y
plain-kept = Everything you answered is kept. What is only typed waits on its screen.
