## What went wrong: what it was, where, and what to do. No path, no command, no word of the system's.

error-ours = This is a fault in this program, not a mistake of yours. Your survey is as it was. Please report what you did just before.
error-stopped = Stopped. Everything is as it was before.

## The device

error-full = There is no space left where “{ $name }” is kept. Nothing was written. Free some space and try again.
error-not-allowed = This device does not let us read or write “{ $name }”. Nothing was changed. Check whether you may read and write there.
error-busy = “{ $name }” is in use by another program. Nothing was changed. Try again when that is done.
error-missing = “{ $name }” is not there any more, or its folder is not. Nothing was changed. Check whether it was moved or its storage taken out.
error-name-taken = Something called “{ $name }” is there already, and was left as it is. Choose another name or place.
error-too-long = “{ $name }” is longer than anything that is read here. Nothing was changed.
error-system = This device could not read or write “{ $name }”. Nothing was changed. Check whether its storage is there, and try again.

## A survey

error-survey-missing = There is no survey “{ $name }”. Check whether it was moved or has another name.
error-survey-a-file = “{ $name }” is a file. A survey is a folder whose name ends in .legwork.
error-survey-name = “{ $name }” cannot be a survey’s folder: its name must end in .legwork.
error-survey-empty = There is a folder “{ $name }”, but no survey is in it. A file of this survey can bring it back.
error-survey-beginning = What is kept of “{ $name }” is not a survey, or its beginning is damaged. A file of this survey can bring it back.
error-survey-of-others = What is kept in “{ $name }” belongs to another program. It was left as it is.
error-survey-there = “{ $name }” exists already. Choose another name for the new survey.
error-survey-newer = “{ $name }” was written by a newer release. Bring this program up to date to open it. Nothing was changed.
error-survey-damaged = What is kept of “{ $name }” is damaged. Often everything in it can still be read. Leave its folder as it is and have it mended; a file of this survey can help.
error-database = What is kept of “{ $name }” could not be read or written. Nothing was changed. Try again; if it stays so, have this survey mended.
error-folder-name-too-long = Too long: this name takes up { $found } plain letters, and at most { $limit } fit. Nothing was changed. Shorten it.
error-folder-name = This name cannot be a folder’s on every device. Take 1 to 200 letters, digits or blanks, no dot at the beginning, no dot or blank at the end, and none of / \ < > : " | ? *
error-draft-too-long = Too long: this text takes up { $found } plain letters, and at most { $limit } fit. Shorten it.
error-too-many-parts = This survey has { $found } parts, and at most { $most } are taken. Split it into several surveys.
error-too-many-records = This survey has { $found } records, and at most { $most } are taken. Split it into several surveys.
error-too-many-photos = This survey has { $most } photos, which is as many as fit. Nothing was taken in. Split it into several surveys.
error-no-such-photo = There is no such photo in this survey, or it was forgotten.
error-photo-lost = The picture of this photo is missing or damaged. A file of this survey that has it can bring it back.
error-nothing-to-settle = There is nothing to settle here. It may have been settled meanwhile.
error-does-not-fit = This survey is larger than a file of a survey can be. No file was written. Leave out photos or notes, or split it into several surveys.

## One record

error-text-too-long = Too long: { $what } takes up { $found } plain letters, and at most { $limit } fit. Nothing was written. Shorten it.
error-record = A record of this survey cannot be read: it was altered, or a newer release wrote it. Nothing was changed.
error-number-inexact = The number { $number } is too large to be kept exactly. Write a smaller one.

## A file of a survey

error-file-not-a-zip = “{ $file }” is not a survey file, or its end is missing. Nothing was changed. Have it sent again.
error-file-other = “{ $file }” is not made the way survey files are. Nothing was changed. Ask the sender what it is.
error-file-no-survey = “{ $file }” holds no survey. Nothing was changed. Ask the sender for the file of the survey.
error-file-newer = “{ $file }” was written by a newer release. Bring this program up to date to read it. Nothing was changed.
error-file-strange = “{ $file }” holds something that no file of a survey holds. Nothing was changed. Ask the sender to write it again.
error-file-incomplete = Something is missing in “{ $file }”. Nothing was changed. Have it sent again.
error-file-too-large = Something in “{ $file }” is larger than in any survey. Nothing was changed. Ask the sender what it is.
error-file-too-large-in-all = “{ $file }” unpacks to more than is taken in. Nothing was changed. Take it in only if you trust the sender.
error-file-damaged = “{ $file }” is damaged or was altered. Nothing was changed. Have it sent again.
error-file-records = Line { $line } of the records in “{ $file }” cannot be read. Nothing was changed. Ask the sender to write the file again.
error-file-strange-photo = “{ $file }” holds a photo that belongs to nothing in it. Nothing was changed. Ask the sender to write it again.
error-file-no-picture = A photo in “{ $file }” is no JPEG or PNG picture. Nothing was changed. Ask the sender to write it again.
error-file-changed = Another program changed “{ $file }” while it was read. Nothing was changed here. Try again.
error-other-ending = Nothing was written: what goes there ends in .{ $ending }, and “{ $file }” does not. Choose a name that ends in .{ $ending }.
error-other-kind-there = Nothing was written: “{ $file }” is there already, and it is something else. It was left as it is. Choose another name that ends in .{ $ending }.
error-file-there = A file “{ $file }” is there already, and was left as it is. Choose another name.
error-other-survey = “{ $file }” holds another survey. Nothing was changed. Take it in as a survey of its own.
error-other-survey-than-damaged = This file holds another survey than the damaged one. Nothing was changed. Choose a file of this survey.
error-record-differs = Two different records call themselves the same, so one of the two copies was altered. Nothing was taken in. Ask the sender for a new file.
error-record-before-missing = A record builds on one that is not known here. Nothing was taken in. Ask the sender for a complete file.
error-record-elsewhere = A record replaces one about something else. Nothing was taken in. Ask the sender for a new file.
error-record-from-the-future = A record is dated more than a year ahead of this device. Nothing was taken in. Set the clock of this device right, or of the one that wrote it.

## A picture

error-picture-empty = This picture was not taken in: its file is empty. Take it again.
error-picture-too-long = This picture was not taken in: it has more than { $most } MB. Save it smaller or at a lower quality and try again.
error-picture-too-many-pixels = This picture was not taken in: it has { $width } × { $height } pixels, and at most { $most } million are taken, { $side } on a side. Save it smaller and try again.
error-picture-heic = This picture was not taken in: it is a HEIC picture, which this program cannot read. In the camera’s settings choose the format that works everywhere (often called “most compatible”), or save or share the picture as JPEG.
error-picture-other-kind = This was not taken in: it is { $found }, and pictures are taken as JPEG or PNG. Save it as one of these and try again.
error-picture-none = This was not taken in: it is no JPEG or PNG picture. Choose a picture.
error-picture-unusual = This picture was not taken in: it is a kind of { $kind } that few programs read. Open it, save it again as an ordinary { $kind } and try again.
error-picture-cut-short = This picture was not taken in: its end is missing. Copy it again, or take it again.
error-picture-nothing-there = Nothing of the picture lies in the part that was asked for.
error-picture-damaged = This picture was not taken in: it is damaged. Copy it again, or take it again.
error-kind-avif = an AVIF picture
error-kind-film = a film
error-kind-webp = a WebP picture
error-kind-gif = a GIF picture
error-kind-tiff = a TIFF or raw picture
error-kind-bmp = a BMP picture
error-kind-pdf = a PDF document

## Taking back

error-undo-nothing = This cannot be taken back: it changed nothing here.
error-undo-replaced = This cannot be taken back: what it said was changed again since. Take that back first, or write the older value again.
error-undo-changed = This cannot be taken back: what it added was added to or removed since. Take that back first, or remove it.
error-undo-forgets = This cannot be taken back: forgetting is for ever.
error-undo-forgotten = This cannot be taken back: what it said was forgotten, and what stood before may not come back.
error-put-back-nothing = Nothing was taken back: no file was taken in during the last { -days-to-put-back } that brought anything.
error-upheaval = { $file } would change most of this survey: { $gone } of { $things } things would go, and { $changed } of { $parts } parts would go or be fed from elsewhere. Nothing was taken in.

## What follows from a survey

error-wiring-figure = What is recorded of this wiring cannot be worked out: some length, loss or frequency is one that no part can have. Look through what was written of the parts last.
error-wiring-loop = This wiring cannot be worked out: its cables form a loop. Look through what feeds what.
error-wiring-rings = This wiring cannot be worked out at { $frequency }: an amplifier howls, or a signal runs to and fro without loss. Look through the gain of the amplifiers and the loss of the parts around them.
error-wiring-too-large = This wiring is too large to be worked out here. Split it into several surveys.

## A measurement

error-measured-too-large = this file holds more than is read: export fewer frequencies
error-measured-ports = this file is of a part with { $ports } ports, and 1 to { $most } are read: choose the file of the part itself
error-measured-ports-unclear = the number of ports cannot be told from this file: give it its usual name, such as part.s2p for two ports
error-measured-no-data = this file holds no measured values: choose a Touchstone file
error-measured-option = line { $line }: “{ $word }” cannot stand in the option line: such a line looks like # MHz S RI R 75
error-measured-not-scattering = line { $line }: this file holds { $kind } parameters: export S (scattering) parameters
error-measured-keyword = line { $line }: [{ $keyword }] is not followed by what it needs, or is not of Touchstone 1 or 2.0: export it again
error-measured-keyword-missing = the line [{ $keyword }] is missing, which version 2 of the format requires: export it again
error-measured-number = line { $line }: “{ $text }” is not a number that a measurement can give: export it again
error-measured-cut-short = line { $line }: there are { $given } values for this frequency, and a part with { $ports } ports has { $needed }: export it again; its end may be missing
error-measured-not-rising = line { $line }: the frequency { $frequency } is not above the one before it: export it again, each frequency once
error-measured-count = it announces { $announced } frequencies and holds { $given }: export it again; its end may be missing
error-measured-reference = the reference resistances are not { $ports } numbers of ohms above zero, one for each port, or one for all: export it again
error-measured-not-convertible = at { $frequency } the values cannot be turned to 75 ohm: measure it again
error-measured-no-part = these numbers are no part’s: measure it again
