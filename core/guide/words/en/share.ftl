# The surveys of a device, the device itself, and working with others.

# --- surveys

surveys-sent = Take in a file that somebody sent
surveys-order = Rename, copy, set aside or delete
surveys-order-title = Manage a survey
surveys-order-lead = Choose a survey to see what can be done with it as a whole.
surveys-aside = What was set aside
surveys-aside-none = Nothing is set aside.
surveys-in-trouble = cannot be opened; choose it to see why
surveys-place-and-day = { $place }; last written on { $day }
surveys-day = last written on { $day }

survey-open = Open it
survey-rename = Give it another name
survey-rename-why = The survey and its folder on this device get the new name. Others see it with your next file.
survey-rename-do = Use this name
survey-leave = Leave it as it is
survey-copy = Make a copy
survey-copy-lead = The copy is a survey of its own: what stands is copied, with its photos; who said what before is not. A file from one is never taken into the other.
survey-copy-name = { $name }, copy
survey-copy-do = Make the copy
survey-set-aside = Set it aside
survey-is-aside = This survey is set aside. Bring it back to work on it.
survey-bring-back = Bring it back
survey-check = Check it and mend what is damaged
survey-mend = Try to mend it
survey-delete = Delete it
    .question = Delete this survey and its photos from this device? This cannot be taken back; setting it aside can. Files that you sent stay with whoever has them.
    .yes = Delete it
    .no = Keep it

survey-was-set-aside = “{ $survey }” is set aside. It can be brought back at any time.
survey-was-brought-back = “{ $survey }” is back.
survey-was-deleted = “{ $survey }” is deleted.
survey-kept-beside = What lay in its folder and was not its own is kept in “{ $folder }”.
survey-was-renamed = It is now called “{ $name }”.
survey-was-copied = “{ $name }” is made.


mend = Check and mend
mend-lead = Everything that can still be read of this survey is read, and it is rebuilt from that. The damaged part is kept beside it.
mend-how = If that is not enough, a file of this survey helps: one that you sent to somebody, or one that somebody sent to you.
mend-from-itself = Mend it from what is here
mend-from-file = Mend it with a file
mend-with-this-file = Mend it with this file
    .question = Is this a file of the damaged survey, and of no other? It is rebuilt from the file and from what can still be read. The damaged part is kept.
    .yes = Mend it
    .no = Not now
mend-without-lost = Mend it, and give up what is lost
    .question = Give up what cannot be read? Of each such detail, what was said before counts again. The damaged part is kept, and a file may still bring it back.
    .yes = Give it up
    .no = Not now
mend-lost =
    { $count ->
        [one] 1 detail is lost. What was said before it counts again.
       *[other] { $count } details are lost. What was said before them counts again.
    }
mend-whole =
    This survey is whole: { $facts ->
        [one] its one detail
       *[other] all its { $facts } details
    } can be read.
mend-mended-from-nothing =
    Nothing was left of this survey here. It was rebuilt from the file, { $facts ->
        [one] 1 detail
       *[other] { $facts } details
    } in all.
mend-mended-with-file =
    This survey was damaged. It was rebuilt from what could be read and from the file, { $facts ->
        [one] 1 detail
       *[other] { $facts } details
    } in all. The damaged part was kept as { $damaged }.

sent = A file that somebody sent
sent-lead = Choose the file. You see what is in it first; nothing is taken in yet.
sent-is-here = This survey is on this device already, as “{ $survey }”. Look there what the file brings to it.
sent-take-there = Go there
sent-take = Take it in as a new survey
sent-taken =
    Taken in: { $facts ->
        [one] 1 detail
       *[other] { $facts } details
    } and { $photos ->
        [0] no photos
        [one] 1 photo
       *[other] { $photos } photos
    }. It is the same survey as the sender’s: files can go to and fro between you.

# --- this device

device = This device
device-was-damaged = What was settled for this device could not be read: your name, units, how to begin. It was set aside as “{ $file }”, and your surveys are untouched. Set it again under “This device”.
device-lead = This holds for this device only, and is kept as soon as you choose it.
device-name = What others should see as your name
device-name-hint = it goes along with what you write; leave it empty to give none
device-unit = Which unit of length comes first
device-metres = Metres
device-feet = Feet
device-working = How a new survey begins
device-led = Lead me
    .about = one question after the other
device-freely = Let me work freely
    .about = the whole job first, every stage open

# --- handing on and taking in

share-pack = Hand it on in a file
share-pack-lead = One file holds the whole survey as it is now, with a report that anyone can read. It may be half done: the next person goes on from here.
share-leave-out = What should be left out?
share-leave-out-owner = Who and where
    .about = name and place of the survey, phone, address, people’s names; what you wrote in notes stays
share-leave-out-notes = All notes
    .about = notes may say more than the next person needs
share-leave-out-places = Where parts sit
    .about = what you wrote of places in the house, such as “behind the wardrobe”
share-leave-out-photos = The photos
    .about = the file gets much smaller; that there were some, and of what, stays
share-leave-out-photo-records = The photos and all that is said of them
    .about = nothing then tells that there were any
share-still-told = Without who and where, the file still tells:
share-still-times = When each thing was written. That is part of how files are put together, and cannot be left out.
share-still-hands = Which things one person wrote. They have an id in this survey alone; it cannot be left out.
share-still-rooms = What rooms are called. Outlets are told apart by it, so it cannot be left out.
share-still-places = Where parts sit, in your words.
share-still-notes = Your notes.
share-still-photos = What the photos show.
share-still-photo-hashes = Of each photo that is left out, a number made from it and its size: whoever has the picture can tell that it was here.
share-pack-do = Write the file
share-pack-there = There is a file of that name already: { $file }
share-pack-replace = Replace that file
    .question = Replace it? What it holds now is gone then.
    .yes = Replace it
    .no = Keep it
share-pack-elsewhere = Write it somewhere else
share-packed =
    Written to { $file }: { $facts ->
        [one] 1 detail
       *[other] { $facts } details
    }, { $photos ->
        [0] no photos
        [one] 1 photo
       *[other] { $photos } photos
    }, { $size }.
share-size-kb = { $size } kB
share-size-mb = { $size } MB
share-size-gb = { $size } GB
share-needs-place = Please say where the file should go.
share-needs-file = Please choose the file.
share-choose = Choose the file
share-choose-other = Choose another file

share-take-in = Take in a file that somebody sent
share-take-in-lead = Choose the file. You see what it would bring first; nothing is taken in before you say so.
share-look-of =
    { $name }: { $facts ->
        [one] 1 detail
       *[other] { $facts } details
    }, { $photos ->
        [0] no photos
        [one] 1 photo
       *[other] { $photos } photos
    } in the file.
share-without-owner = The sender left out who and where.
share-without-notes = The sender left out all notes.
share-without-photos = The sender left out the photos.
share-without-places = The sender left out where parts sit.
share-without-photo-records = The sender left out the photos and all that was said of them.
share-look-brings =
    It would bring { $facts ->
        [0] no new details
        [one] 1 new detail
       *[other] { $facts } new details
    }, { $disagreements ->
        [0] no disagreements
        [one] 1 disagreement
       *[other] { $disagreements } disagreements
    }, { $photos ->
        [0] no new photos
        [one] 1 new photo
       *[other] { $photos } new photos
    }, { $forgotten ->
        [0] nothing to forget
        [one] the wish that 1 thing be forgotten
       *[other] the wish that { $forgotten } things be forgotten
    }.
share-look-from = From whom (as they call themselves)
share-records =
    { $count ->
        [one] 1 detail
       *[other] { $count } details
    }
share-look-disagreements = You would then disagree on
share-look-settles = It settles
share-look-forgets = It asks that this be forgotten for ever
wish-by = asked by { $author }
wish-by-nobody = it came without what was said
share-and-more =
    and { $count ->
        [one] 1 more
       *[other] { $count } more
    }
share-look-only = This was only a look. Nothing was changed.
share-look-is-old = Something was written since you looked into the file. Look again to see what it would bring now.
share-look-again = Look again
share-other-survey = This file holds another survey than the one that is open. It can be taken in as a survey of its own.
share-take-apart = Go on with it as a survey of its own
share-nothing-new = Everything in this file is here already.
share-take = Take it in
    .question = Take all of it in? It can be taken back within { -days-to-put-back }.
    .yes = Take it in
    .no = Not now
share-take-upheaval = Take it in
    .question =
        This file changes most of the survey: { $gone ->
            [0] nothing
            [one] 1 thing
           *[other] { $gone } things
        } of { $things } would go, and { $changed ->
            [0] no part
            [one] 1 part
           *[other] { $changed } parts
        } of { $parts } would go or be fed from elsewhere. Is that what the sender meant? It can be taken back within { -days-to-put-back }.
    .yes = Take it in
    .no = Not now
share-take-asks-to-forget = What it asks to be forgotten is not forgotten by this: you are asked about that alone.
share-taken =
    Taken in: { $facts ->
        [0] no new details
        [one] 1 new detail
       *[other] { $facts } new details
    }, { $photos ->
        [0] no new photos
        [one] 1 new photo
       *[other] { $photos } new photos
    }.
share-put-back = Take back what the last file brought
    .question =
        Take it back? { $count ->
            [one] The 1 detail that it brought goes again. The file can be taken in again.
           *[other] The { $count } details that it brought go again. The file can be taken in again.
        }
    .yes = Take it back
    .no = Keep it
share-put-back-later = Take back what the last file brought
    .question =
        Take it back? Since then more was written or forgotten, so what stood before is written again: of { $count ->
            [one] the 1 detail
           *[other] the { $count } details
        } that it brought, those that still stand. Whoever takes in a file from here reads that too.
    .yes = Take it back
    .no = Keep it
share-was-put-back-later = Taken back: what stood before the last file stands again, wherever nothing was written since.
share-keep-taken = Keep for good what the last file brought
    .question = Keep it? It can then not be taken back as a whole any more; single steps can.
    .yes = Keep it
    .no = Not now
share-was-put-back =
    Taken back: { $count ->
        [one] 1 detail is gone again.
       *[other] { $count } details are gone again.
    }
share-wishes = Asked to be forgotten
share-wishes-open =
    { $count ->
        [0] nothing asked
        [one] 1 thing asked
       *[other] { $count } things asked
    }
share-wishes-none = No file asks that anything be forgotten here.
share-wishes-lead =
    A file asks that { $count ->
        [one] 1 thing
       *[other] { $count } things
    } here be forgotten for ever. Names in a file are a claim and no proof, so nothing is forgotten before you say so.
share-wishes-rows = What would be gone
share-wishes-forget = Forget all of this for ever
    .question = Forget it now, for ever, here and for everybody who takes in a file from here and agrees? Nobody can bring it back.
    .yes = Forget it
    .no = Not now
share-wishes-keep = Keep it all
share-wishes-kept = It stays here, and you are not asked about it again.

# --- while a file is read or written

long-work-pack = Writing the file
    .stop = If you stop, no file is left, and the survey stays as it is.
long-work-look = Looking into the file
    .stop = This is only a look: nothing is changed, whether you stop or not.
long-work-take = Taking the file in
    .stop = It is taken in as a whole or not at all. If you stop, the survey stays as it was.
long-work-take-new = Taking the file in as a new survey
    .stop = It is taken in as a whole or not at all. If you stop, no new survey is made.
long-work-mend = Mending the survey
    .stop = If you stop, the survey is as it was, or mended, and never half of each.
long-work-list = Looking at your surveys
    .stop = If you stop, the list shows those that were looked at so far.
long-work-open = Opening the survey
    .stop = If you stop, it stays closed. Nothing is changed.
long-work-make = Making the survey
    .stop = If you stop in time, no survey is made.
long-work-copy = Copying the survey with its photos
    .stop = If you stop, there is no copy. The survey stays as it is.
long-work-rename = Giving the survey its new name
    .stop = If you stop in time, it keeps the old one.
long-work-delete = Deleting the survey and its photos
    .stop = If you stop in time, it stays.
long-work-photo = Taking the photo in
    .stop = If you stop in time, it is not taken in, nor are those that wait. What was taken in before stays.
long-work-report = Writing the report
    .stop = If you stop, no report is written.
long-work-forget = Forgetting it, and clearing what it left
    .stop = If you stop in time, nothing is forgotten.
long-work-stop = Stop
long-work-stopping = It stops in a moment.
long-work-over = This is done.
long-work-is-stopped = This was stopped.
long-work-failed = This could not be done.
long-work-on = Go on
long-work-was-stopped = Stopped. Nothing was changed.

# --- disagreements

share-to-settle =
    { $count ->
        [0] nothing to settle
        [one] 1 to settle
       *[other] { $count } to settle
    }
share-disagreements = Said differently
share-disagreements-lead = Two people wrote different things without seeing each other’s. The later one counts until somebody settles it.
share-disagreements-rows = To settle
share-all-settled = All agree. There is nothing to settle.
share-is-settled = This is settled.
share-which-is-right = Which one is right?
share-origin = Before, it was { $value }, as { $author } wrote on { $day }.
share-no-origin = Before, nothing was written here.
share-said-by = { $author }, { $day }
share-right = What is right
share-settle-why = Your choice counts for everybody who takes in a file from here. What was said stays in the story.
share-settle = Settle it so
share-leave-open = Leave it open
share-choose-one = Please choose what is right first. It can also stay open.
share-see-story = See all that was said about it
share-go-settle = Settle what was said differently
share-was-settled = Settled. { $about }: { $value }.
share-said-differently = said differently by two people

# --- who said what

share-acts = Who did what
share-acts-lead = The newest comes first. Choose one to see all of it, and to take it back.
share-acts-none = Nothing was written yet.
share-acts-rows = Steps
share-act = One step
share-act-gone = This step is not there any more.
share-act-rows = What it said
share-undo = Take this step back
share-undo-of-others = Somebody else did this. If you take it back, it is taken back for them too once they take in a file from here.
share-undone = Taken back. This is a step too, and can be taken back in turn.
share-no-undo = This step cannot be taken back.
share-no-undo-begun = With this step the survey began, so it is not taken back. A survey can be set aside or deleted as a whole, from the list of surveys.
share-no-undo-replaced = This step cannot be taken back as a whole, because what it said was changed again later. Take that back first, or write the older value again.
share-no-undo-changed = This step cannot be taken back as a whole, because what it added was added to later. Take that back first, or remove the thing.
share-no-undo-forgets = This step made something forgotten, and that is for ever.
share-no-undo-forgotten = What this step said was forgotten, so it cannot be taken back.

share-things = What was said about each thing
share-things-lead = Choose a thing to see what was said about it, by whom and when. From there it can also be forgotten.
share-things-rows = Things
share-who-writes = who writes here
share-thing-lead = How it stands, and who said so. Choose a row to see all that was said before.
share-thing-rows = What was said
share-nothing-said = Nothing was said about this.
share-field-lead = The oldest comes first.
share-field-rows = All that was said
share-whole-thing = All about this thing
share-until = until { $author } changed it, { $when } UTC
share-by-and-before =
    { $before ->
        [0] { $by }
        [one] { $by }; said otherwise once before
       *[other] { $by }; said { $before } times before
    }
share-is-forgotten = was forgotten

share-removed = What was removed
share-removed-none = Nothing was removed.
share-removed-lead = Whatever was removed can be brought back.
share-removed-rows = Removed
share-changed-after = Removed by one, changed by another: please look
share-removed-and-changed = removed by { $remover }, changed by { $changer }
share-removed-by = Removed by { $by }.
share-bring-back = Bring it back
share-bring-back-how = It comes back as it was. What it fed may have to be joined to it again.
share-changed-since = One person removed it while another changed it. It stays until somebody decides.
share-changed-rows = What happened
share-keep-it = Keep it
share-remove-again = Remove it all the same
share-is-there = It is there; nobody removed it.
share-was-brought-back = It is there: { $thing }.
share-was-removed = Removed: { $thing }.

# --- forgetting

forget-thing = Forget all of it for ever
forget-field = Forget this for ever
forget-title = Forget: { $what }
forget-nothing = There is nothing left here that could be forgotten.
forget-what =
    { $count ->
        [one] 1 detail would be forgotten: what it said is gone, that something was said stays.
       *[other] { $count } details would be forgotten: what they said is gone, that something was said stays.
    }
forget-own-name = The name that you gave under “This device” stays there, and goes along again with what you write next. Empty it there first if it should not.
forget-keep = Keep it
forget-first = Forget it for ever
    .question = This is for ever: neither you nor anyone else can bring it back. Go on?
    .yes = Go on
    .no = Keep it
forget-others = Everybody who takes in a file from here is asked to forget it too. Files that were sent before are out of reach.
forget-second = Forget it here, and ask it of others
    .question = Forget it now, for ever, here, and ask it of everybody who takes in a file from here?
    .yes = Forget it
    .no = Keep it
forget-copies =
    { $count ->
        [one] Another copy of this survey on this device was told too.
       *[other] { $count } other copies of this survey on this device were told too.
    }
forget-not-everywhere = Another copy of this survey on this device could not be told. { $what }

# --- in a terminal

plain-file = { "     " }(type { $mark } = and the file)
plain-file-how = This needs a file. Type its word, then = and the file: for example file = house.lwk
