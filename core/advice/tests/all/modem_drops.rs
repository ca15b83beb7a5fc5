//! A modem whose internet drops out beside an adapter gets a filter, whatever its generation.

use advice::finding::{FindingKind, findings, is_modem_beside_adapter};
use advice::forecast::Options as Draws;
use advice::worklist::{Options, applied, worklist};
use house::record::{CableKind, ChangeKind, ModemBands, ModemGeneration, Plugged, ServiceKind, Survey};
use houses::{House, good_house, part_id};

/// A third outlet with an old modem, on the splitter of the adapters or on one of its own.
fn modem(beside: bool, drops: bool) -> House {
    let house = good_house().at("O1").plugged(&[]).at("S1").with(|splitter| splitter.rating.legs = 3);
    let house = if beside {
        house.outlet("O3", "Hall").from("S1", 3)
    } else {
        let house =
            house.splitter("S2", 2).made_for(5.0, 1675.0).from("S1", 3).over(CableKind::Six, 8.0).cap(2);
        house.outlet("O3", "Hall").from("S2", 1)
    };
    house.over(CableKind::Six, 8.0).plugged(&[Plugged::Modem]).about_service(
        ServiceKind::CableInternet,
        move |service| {
            service.top_mhz = Some(1002.0);
            service.modem =
                Some(ModemBands { generation: Some(ModemGeneration::V3_0), upstream_top_mhz: None });
            service.drops_out = drops;
        },
    )
}

fn is_named(survey: &Survey) -> bool {
    findings(survey, None).iter().any(|finding| finding.kind == FindingKind::ModemDropsOut)
}

#[test]
fn it_is_named_and_filtered_where_it_drops_out_beside_an_adapter_only() {
    let draws = Draws { draws: 8, seed: 1, points: 89, settles: false };
    let options = Options { screening: draws, stating: draws, most_steps: 12, ..Options::default() };
    for (beside, drops) in [(true, true), (true, false), (false, true)] {
        let survey = modem(beside, drops).survey();
        let wanted = beside && drops;
        assert_eq!(is_named(&survey), wanted, "{beside} {drops}");
        // So it is asked whether it drops out only where that would matter.
        assert_eq!(is_modem_beside_adapter(&survey), beside);
        let filter = ChangeKind::FilterAtDevice { outlet: part_id(&survey, "O3") };
        let steps = worklist(&survey, &options).expect("a sound survey").steps;
        assert_eq!(steps.iter().any(|step| step.change == filter), wanted, "{beside} {drops}");
        let filtered = applied(filter, &survey);
        assert!(!is_named(&filtered) && !is_modem_beside_adapter(&filtered));
    }
}
