//! How far services reach, both ways, and what on the way ends before them.
#![expect(clippy::expect_used, reason = "a failed test is what is wanted")]

use advice::level::{Fit, LevelTold, Levels, Options, OutletLevels, change, levels, served_outlets, told};
use house::record::{CableKind, EntryKind, ModemBands, Part, Plugged, ServiceKind, Survey};
use houses::House;

/// A modem behind an amplifier of which more is said.
fn behind_an_amplifier(top_mhz: f64, sends_to_mhz: f64, say: impl FnOnce(&mut Part)) -> Survey {
    House::new()
        .entry("E1", EntryKind::Cable)
        .amplifier("A1", 1)
        .with(|amplifier| amplifier.rating.gain_db = Some(10.0))
        .with(say)
        .from("E1", 1)
        .over(CableKind::Six, 1.0)
        .outlet("O1", "Study")
        .from("A1", 1)
        .over(CableKind::Six, 10.0)
        .plugged(&[Plugged::Modem])
        .about_service(ServiceKind::CableInternet, |service| {
            service.top_mhz = Some(top_mhz);
            service.modem = Some(ModemBands { generation: None, upstream_top_mhz: Some(sends_to_mhz) });
        })
        .survey()
}

/// An amplifier for a way back to one frequency and a way to the house to another.
fn made_for(returns_mhz: f64, low_mhz: f64, high_mhz: f64) -> impl FnOnce(&mut Part) {
    move |amplifier| {
        amplifier.rating.return_high_mhz = Some(returns_mhz);
        amplifier.rating.band = Some(house::rating::Band { low_mhz, high_mhz });
    }
}

fn found(survey: &Survey) -> Levels {
    levels(survey, &Options::default()).expect("a sound survey")
}

fn modem(survey: &Survey) -> OutletLevels {
    found(survey).outlets.first().expect("a modem").clone()
}

fn row(survey: &Survey) -> LevelTold {
    told(survey, &found(survey), &[]).into_iter().next().expect("a modem")
}

/// Splits of DOCSIS 3.1 and 4.0: 85/108, 204/258 (blueflymedia.com), 396 and 684 ("a tester-maker's knowledge base") with
/// 492 and 834 above them (from memory); 1794 MHz at the top.
#[test]
fn services_are_looked_at_as_far_as_they_reach() {
    for (sends, listens, top) in [
        (42.0, 54.0, 1002.0),
        (85.0, 108.0, 1218.0),
        (204.0, 258.0, 1218.0),
        (396.0, 492.0, 1794.0),
        (684.0, 834.0, 1794.0),
    ] {
        let survey = behind_an_amplifier(top, sends, |_| {});
        let served = served_outlets(&survey).into_iter().next().expect("a modem");
        let up = served.up_mhz.expect("a modem sends");
        assert!(up[1] < sends && up[1] > sends - 6.0, "{up:?}");
        let [low, _, high] = served.down_mhz;
        assert!(low >= listens && low < listens + 6.0, "{low} over {sends}");
        assert!(high < top && high > top - 6.0, "{high}");
    }
}

#[test]
fn an_amplifier_that_returns_too_little_leaves_the_modem_unheard() {
    let narrow = behind_an_amplifier(1002.0, 204.0, made_for(42.0, 54.0, 1002.0));
    let broken = modem(&narrow).broken.expect("nothing comes back");
    assert!(broken.back && broken.stated && broken.loss_db > 45.0, "{broken:?}");
    assert_eq!(row(&narrow).fits_phrase(), Fit::Outside.phrase());
    let wide = behind_an_amplifier(1002.0, 204.0, made_for(204.0, 258.0, 1002.0));
    assert_eq!(modem(&wide).broken, None);
}

#[test]
fn a_break_stays_until_work_mends_it() {
    let narrow = behind_an_amplifier(1002.0, 204.0, made_for(42.0, 54.0, 1002.0));
    let wide = behind_an_amplifier(1002.0, 204.0, made_for(204.0, 258.0, 1002.0));
    let fits_after = |after: &Survey| {
        let changes = change(&narrow, after, &Options::default()).expect("two sound surveys");
        found(&narrow).when_done(&changes).first().expect("a modem").fits()
    };
    assert_eq!(fits_after(&narrow), Fit::Outside);
    assert_eq!(fits_after(&wide), Fit::NotKnown);
}

#[test]
fn an_amplifier_that_ends_before_a_service_is_the_break() {
    for (ends, top) in [(1002.0, 1218.0), (1218.0, 1794.0)] {
        let narrow = behind_an_amplifier(top, 85.0, made_for(85.0, 108.0, ends));
        let broken = modem(&narrow).broken.expect("nothing gets through");
        assert!(!broken.back && broken.stated && broken.mhz > ends, "{broken:?}");
        assert!(row(&narrow).now.iter().any(|phrase| phrase.id == "levels-broken-by"));
        let wide = behind_an_amplifier(ends, 85.0, made_for(85.0, 108.0, ends));
        assert_eq!(modem(&wide).broken, None);
    }
}

/// What no label says is not known: it is no break, and neither is it sure.
#[test]
fn an_amplifier_without_a_label_is_a_doubt() {
    let unread = behind_an_amplifier(1218.0, 204.0, |_| {});
    assert!(!modem(&unread).broken.expect("a doubt").stated);
    assert!(row(&unread).now.iter().any(|phrase| phrase.id == "levels-broken-perhaps"));
    assert_ne!(row(&unread).fits_phrase(), Fit::Outside.phrase());
}

/// Where nobody said how far a service reaches it may end before the amplifier does: a doubt, and no break.
#[test]
fn a_reach_that_nobody_stated_is_a_doubt() {
    let stated = behind_an_amplifier(1002.0, 85.0, made_for(85.0, 108.0, 862.0));
    let mut unsaid = stated.clone();
    unsaid.services.values_mut().for_each(|service| service.top_mhz = None);
    for (survey, fits, told) in
        [(&stated, Fit::Outside, "levels-broken-by"), (&unsaid, Fit::Marginal, "levels-broken-if-used")]
    {
        assert_eq!(modem(survey).fits(), fits);
        assert!(row(survey).now.iter().any(|phrase| phrase.id == told), "{:?}", row(survey).now);
    }
}

/// An outlet of which a level is known is told what Europe's rule wants there, beside what decides.
#[test]
fn what_is_wanted_in_europe_is_told_beside() {
    let house = behind_an_amplifier(1002.0, 42.0, made_for(42.0, 54.0, 1002.0));
    let needs: Vec<_> = row(&house).needs.into_iter().map(|phrase| phrase.id).collect();
    assert!(needs.starts_with(&["window-modem-receives".into(), "window-modem-receives.recommended".into()]));
    assert!(needs.contains(&"window-en-256-qam".into()), "{needs:?}");
}
