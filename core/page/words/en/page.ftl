# What only the page in the browser says.

page-back = Back
page-ways = The way on
page-take-file = Choose a file
page-drop = Drop photos here, or choose them
page-add-photos = Add these photos
page-file-ready = { $name } is written.
page-download = Save it
page-stale = This tab was out of date, so nothing was changed. Here is where the survey stands now.
page-too-large = That is too large for this page. Nothing was changed.
page-broken = What the browser sent could not be read. Nothing was changed.
page-fault = Something went wrong inside the program. What you answered before is kept.
page-disk-full = No space is left on this computer’s disk for that file, so it was not done. What you answered before is kept.
page-disk = That file could not be put down on this computer, so it was not done. What you answered before is kept. The system says: { $says }
page-all-of-it = Open it large
page-closed = This page is closed
page-closed-how = Go back to the terminal and open the address that stands there.
page-larger = Larger
page-smaller = Smaller
page-turn = Turn
page-crop = Cut out the label
page-crop-take = Keep what is in the frame
page-crop-frame = Frame around the label; arrow keys move it, with Shift they size it
