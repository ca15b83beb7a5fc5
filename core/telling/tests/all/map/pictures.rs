//! The drawings as files, for whoever looks at them.

use std::collections::BTreeMap;

use advice::worklist::{Options, worklist};
use house::record::ServiceKind;
use telling::figure::map::{COLUMN, NARROW};
use telling::figure::{Figure, Folding, Layout, WiringMap, loss_plot, loss_plot_in, svg};

use super::drawn_houses::{HOUSES, Known, folded};
use super::measured::LAYOUTS;
use super::signs::house_with_a_room_to_come;
use crate::report_house::{english, forecast_of, house, house_by_chance};

/// Writes the drawings of the houses into the folder `LEGWORK_DRAWINGS`, to be looked at.
#[test]
#[ignore = "writes pictures for whoever looks at them"]
fn drawings() {
    let folder = std::path::PathBuf::from(std::env::var_os("LEGWORK_DRAWINGS").unwrap());
    let mut drawings: BTreeMap<String, String> = BTreeMap::new();
    let mut put = |name: String, figure: &Figure| {
        drawings.insert(name.clone(), svg(figure, &name, &english()));
    };
    let options = Options {
        stating: advice::forecast::Options { draws: 24, seed: 7, points: 111, settles: false },
        most_steps: 6,
        ..Options::default()
    };
    for known in HOUSES.iter() {
        let Known { survey, forecast, .. } = known;
        let many = survey.parts.len();
        for (name, layout) in ["narrow", "column", "page"].into_iter().zip(LAYOUTS) {
            put(format!("map-{many:03}-{name}"), &known.map(layout, folded()));
        }
        if many == 9 {
            let list = worklist(survey, &options).unwrap();
            for (name, layout) in ["narrow", "column", "page"].into_iter().zip(LAYOUTS) {
                let map = WiringMap::after(&list);
                put(format!("after-{many:03}-{name}"), &map.laid_out(layout).figure(&english()));
            }
        }
        if let Some(plot) = loss_plot(survey, forecast, &english()) {
            put(format!("plot-{many:03}"), &plot);
        }
        let lines =
            WiringMap::of(survey).with_forecast(Some(forecast)).with_findings(&known.found).lines(&english());
        std::fs::write(folder.join(format!("tree-{many:03}.txt")), lines.join("\n")).unwrap();
    }
    let survey = houses::good_house().service(ServiceKind::CableInternet, Some(1218.0)).survey();
    for (name, width) in [("narrow", NARROW), ("column", COLUMN)] {
        let plot = loss_plot_in(&survey, &forecast_of(&survey), width, &english()).unwrap();
        put(format!("taken-{name}"), &plot);
    }
    for (name, layout) in ["narrow", "column", "page"].into_iter().zip(LAYOUTS) {
        let list = house_with_a_room_to_come();
        let map = WiringMap::after(&list).laid_out(layout).figure(&english());
        put(format!("new-{name}"), &map);
    }
    // Any numbers would do: every kind of part, loose and wrong ones among them.
    let numbers: Vec<_> =
        (1..=40_u64).map(|number| number.wrapping_mul(0x9E37_79B9_7F4A_7C15) >> 7).collect();
    let survey = house_by_chance(&numbers, "Room");
    for (name, layout) in ["narrow", "column", "page"].into_iter().zip(LAYOUTS) {
        let map = WiringMap::of(&survey).laid_out(layout).folded(Folding::Nothing);
        put(format!("chance-{name}"), &map.figure(&english()));
    }
    put("house".into(), &Known::of(house()).map(Layout::Narrow, folded()));
    for (name, picture) in drawings {
        std::fs::write(folder.join(format!("{name}.svg")), picture).unwrap();
    }
}
