//! The loss over frequency: panels, channels, bands that others need.

use house::rating::Band;
use house::record::{OtherNetwork, ServiceKind};
use telling::figure::loss_plot_in;
use telling::figure::map::{COLUMN, NARROW, PAGE};

use super::measured::{outside, overlaps, texts};
use crate::report_house::{english, forecast_of, house};

#[test]
fn the_plot_has_a_panel_for_each_weak_room_and_nothing_overlaps() {
    let survey = house();
    let forecast = forecast_of(&survey);
    for width in [NARROW, COLUMN, PAGE] {
        let figure = loss_plot_in(&survey, &forecast, width, &english()).unwrap();
        assert_eq!(overlaps(&figure), []);
        assert_eq!(outside(&figure), [""; 0]);
        let panels = texts(&figure).iter().filter(|text| text.starts_with("To ")).count();
        assert_eq!(panels, forecast.weakest_first().len().min(3));
        let of_ours = texts(&figure).iter().filter(|text| **text == "our channels").count();
        assert_eq!(of_ours, panels);
    }
}

#[test]
fn bands_that_others_need_are_hatched_and_named_in_the_plot() {
    let of = |top_mhz: f64| {
        let house = houses::good_house().service(ServiceKind::CableInternet, Some(top_mhz));
        let survey = house
            .service(ServiceKind::ProviderNetwork, None)
            .about_service(ServiceKind::ProviderNetwork, |service| {
                let band = Band { low_mhz: 1125.0, high_mhz: 1225.0 };
                service.network = Some(OtherNetwork { bands: vec![band], ..OtherNetwork::default() });
            })
            .survey();
        let forecast = forecast_of(&survey);
        let figure = loss_plot_in(&survey, &forecast, NARROW, &english()).unwrap();
        assert_eq!(overlaps(&figure), []);
        assert_eq!(outside(&figure), [""; 0]);
        (figure, forecast)
    };
    // 1218 MHz is the upper edge of DOCSIS 3.1 (CM-SP-PHYv3.1), which lies in the band of adapters, 1125 to 1675 MHz
    // (SCTE 235 2017 announcement); 1002 MHz, that of 3.0, lies below it.
    let (figure, forecast) = of(1218.0);
    let said = texts(&figure);
    assert!(said.contains(&"cable internet, 0 to 1218 MHz"), "{said:?}");
    assert!(said.contains(&"the provider’s own network, 1125 to 1225 MHz"), "{said:?}");
    // No channel of ours reaches into either.
    assert!(forecast.channels.iter().all(|(centre, width)| centre - width / 2.0 >= 1225.0));
    let (figure, _) = of(1002.0);
    let said = texts(&figure);
    assert!(!said.iter().any(|text| text.starts_with("cable internet")), "{said:?}");
    assert!(said.iter().any(|text| text.starts_with("the provider’s own network")));
}
