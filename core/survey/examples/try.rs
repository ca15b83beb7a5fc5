//! Scratch.
use survey::fact::*;
use survey::forecast;
use survey::rating::*;
use survey::record::*;
use survey::words::*;
use survey::worklist;
use uuid::Uuid;
fn id(n: u128) -> SubjectId {
    SubjectId::from_uuid(Uuid::from_u128(n))
}
fn main() {
    let mut s = Survey::new(id(1));
    let mut add = |n: u128, kind, from: Option<(u128, u8, f64, CableKind)>, f: &mut dyn FnMut(&mut Part)| {
        let mut p = Part::new(id(n), kind);
        if let Some((f, port, len, c)) = from {
            let rid = id(1000 + n);
            let mut r = Run::new(rid);
            r.cable = c;
            r.length = Some(RunLength::stated(len, LengthKnown::Paced));
            s.runs.insert(rid, r);
            p.feed = Some(Feed::From(FeedFrom { part: id(f), port, run: Some(rid) }));
        }
        f(&mut p);
        s.parts.insert(id(n), p);
    };
    let six = CableKind::Six;
    add(10, PartKind::Entry, None, &mut |p| {
        p.entry_kind = EntryKind::Cable;
        p.entry_state = EntryState::Connected;
    });
    let old = || PartRating {
        legs: 4,
        leg_losses_db: vec![7.0; 4],
        band: Some(Band { low_mhz: 5., high_mhz: 1000. }),
        ..Default::default()
    };
    add(11, PartKind::Splitter, Some((10, 1, 5., six)), &mut |p| {
        p.rating = old();
        p.ends.insert(4, PortEnd::Open);
        p.tag = Some("S1".into())
    });
    add(12, PartKind::Splitter, Some((11, 1, 1., six)), &mut |p| {
        p.rating = PartRating {
            legs: 2,
            leg_losses_db: vec![3.5; 2],
            band: Some(Band { low_mhz: 5., high_mhz: 1000. }),
            ..Default::default()
        };
        p.tag = Some("S2".into())
    });
    for (n, f, port, len, room) in [
        (20u128, 12u128, 1u8, 8., 100u128),
        (21, 12, 2, 14., 101),
        (22, 11, 2, 20., 102),
        (23, 11, 3, 25., 103),
    ] {
        add(
            n,
            PartKind::Outlet,
            Some((f, port, len, if n == 23 { CableKind::FiftyNine } else { six })),
            &mut |p| {
                p.room = Some(id(room));
                p.plugged = Some(if n == 20 { vec![Plugged::Modem] } else { vec![] });
                if n != 22 {
                    p.adapter = Some(Adapter { version: "2.5".into(), ethernet_mbps: 2500, bridge: n == 20 })
                }
            },
        );
    }
    for (n, name) in [(100, "Living"), (101, "Office"), (102, "Kitchen"), (103, "Attic")] {
        s.rooms.insert(
            id(n),
            Room {
                id: id(n),
                name: name.into(),
                wish: (n != 102).then_some(Wish { down_mbps: 900., up_mbps: 500. }),
            },
        );
    }
    s.rewire();
    let l = Language::english(Figures::default());
    let t = std::time::Instant::now();
    let f = forecast::forecast(&s, &forecast::Options::default()).unwrap();
    println!("{:?} {:?}", t.elapsed(), f.channels);
    for r in &f.rooms {
        if let forecast::Reach::Estimated(p) = &r.reach {
            println!(
                "{:?} down {:?} up {:?} loss {:?} links {} limit {:?} costs {:?}",
                r.room.map(|r| s.rooms[&r].name.clone()),
                p.down,
                p.up,
                p.loss,
                p.links,
                p.limit,
                p.costs.iter().map(|c| (c.db * 10.).round() / 10.).collect::<Vec<_>>()
            );
        } else {
            println!("{:?}", r.reach)
        }
    }
    println!("{:?} {:?}", f.street, f.shared);
    let t = std::time::Instant::now();
    let w = worklist::worklist(&s, &worklist::Options::default()).unwrap();
    println!("{:?}", t.elapsed());
    for st in &w.steps {
        println!(
            "{} {:?} {:?}min",
            l.say(&st.change.phrase(&st.before)),
            st.gains.iter().map(|g| (g.before_mbps.round(), g.after_mbps.round())).collect::<Vec<_>>(),
            st.effort.minutes
        );
    }
    for (c, r) in &w.refused {
        println!("refused {} : {}", l.say(&c.phrase(&s)), l.say(&r.why(&s)));
    }
}
